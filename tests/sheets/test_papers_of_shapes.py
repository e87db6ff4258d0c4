"""What papers say of openings that are no rectangle: their outline, and nothing that holds for a rectangle alone."""

from __future__ import annotations

import math
from functools import cache
from typing import Any

import jsonschema
import pytest
from cases import changed, job_of, strips

from jambs.job import Job
from jambs.length import GRIDS
from jambs.outside.trim_fasteners import shim_places
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.sheets.house import order_data
from jambs.sheets.install_steps import inside_steps
from jambs.sheets.parts_file import parts_schema
from jambs.sheets.record import job_record
from jambs.sheets.rough_openings import rough_opening_data

SHAPES: dict[str, tuple[Any, str]] = {
    "raked": ({"kind": "raked", "left": "30", "right": "48"}, "24 x 48"),
    "gable": ({"kind": "gable", "sides": "30"}, "36 x 48"),
    "octagon": ({"kind": "octagon", "cut": "8"}, "30 x 30"),
}


@cache
def built(shape: str) -> tuple[tuple[CutKit, ...], Job]:
    given, frame = SHAPES[shape]
    changes = {"openings__0__rough_opening": None, "openings__0__shape": given, "openings__0__frame": frame}
    if shape == "octagon":
        changes["exterior_trim__outside__sill"] = None
    job = job_of(changed(**changes))
    return strips(make_kit(one, job) for one in place_windows(job)), job


@pytest.mark.parametrize("shape", SHAPES)
def test_the_record_of_a_shape_keeps_to_its_schema(shape: str) -> None:
    record = job_record(*built(shape))
    assert not [*jsonschema.Draft202012Validator(parts_schema()).iter_errors(record)]
    outline = record["openings"][0]["window"]["shape"]
    assert outline["kind"] == shape
    assert len(outline["corners"]) == {"raked": 4, "gable": 5, "octagon": 8}[shape]


@pytest.mark.parametrize(
    ("shape", "ordered", "framed"),
    [
        # 3-4-5: 1/4 outside, the low corner lies 1/4 (1 - 3/5) / (4/5) = 1/8 higher than the frame's, the high one
        # 1/4 (1 + 3/5) / (4/5) = 1/2; both 1/4 more over the rough sill.
        (
            "raked",
            'raked, 30" high at the left, 48" at the right',
            'raked, 30 3/8" high at the left, 48 3/4" at the right, slope 9 in 12 (36.9°)',
        ),
        # 12 in 12: at 45° the corner at the eaves lies 1/4 tan 22 1/2° = 0.1036 higher, the peak 1/4 √2 = 0.3536;
        # 30.3536 and 48.6036 with 1/4 over the rough sill, on a tape 30 3/8 and 48 5/8.
        (
            "gable",
            'gable, sides 30" high, peak 48" high, 18" from the left',
            'gable, sides 30 3/8" high, peak 48 5/8" high, 18 1/4" from the left, slope 12 in 12 (45°)',
        ),
        # Cut back 8 and 1/4 (1 - tan 22 1/2°) = 0.1464 more: 8.1464, on a tape 8 1/8, which is farther out.
        # Its slanted edges 8.1464 √2 = 11.52.
        (
            "octagon",
            'octagon, corners cut back 8"',
            'octagon, corners cut back 8 1/8", slanted edges about 11 1/2"',
        ),
    ],
)
def test_the_window_is_ordered_and_its_hole_framed_by_the_outline(shape: str, ordered: str, framed: str) -> None:
    assert order_data(*built(shape))["kinds"][0]["type"] == f"fixed: {ordered}, seen from inside"
    assert rough_opening_data(*built(shape))["rows"][0]["outline"] == framed


def test_a_liner_widens_the_outline_in_the_framing() -> None:
    """24 x 48 raked from 30 at 36.87°, shims 1/4 and a liner 3/4 thick all round: 1 out on every edge.

    Right: 48 + 1 + (1 / cos 36.87° + tan 36.87° = 1.25 + 0.75) = 51; left: 30 + 1 + (1.25 - 0.75) = 31 1/2. Without the
    liner 1/4 out: 48 3/4 and 30 3/8.
    """
    shape, frame = SHAPES["raked"]
    liner = {"kind": "liner", "thickness": "3/4", "stock": "spruce"}
    keys = {"openings__0__rough_opening": None, "openings__0__shape": shape, "openings__0__frame": frame}
    job = job_of(changed(**keys, walls__main__buck=liner))
    kits = strips(make_kit(one, job) for one in place_windows(job))
    (row,) = rough_opening_data(kits, job)["rows"]
    assert (
        row["framing"] == '26" × 51"'
        and row["framing_outline"] == 'raked, 31 1/2" high at the left, 51" at the right, slope 9 in 12 (36.9°)'
    )
    assert row["outline"] == 'raked, 30 3/8" high at the left, 48 3/4" at the right, slope 9 in 12 (36.9°)'
    record = job_record(kits, job)
    schema = parts_schema()
    jsonschema.validate(record["openings"][0], {**schema["properties"]["openings"]["items"], "$defs": schema["$defs"]})
    (plain,) = rough_opening_data(*built("raked"))["rows"]
    assert plain["framing_outline"] == plain["outline"]


def test_a_rectangle_is_ordered_and_framed_without_an_outline() -> None:
    job = job_of(changed())
    kits = strips(make_kit(one, job) for one in place_windows(job))
    assert order_data(kits, job)["kinds"][0]["type"] == "fixed"
    assert rough_opening_data(kits, job)["rows"][0]["outline"] == ""
    assert rough_opening_data(kits, job)["rows"][0]["framing_outline"] == ""
    assert "shape" not in job_record(kits, job)["openings"][0]["window"]


def test_the_box_of_a_shape_is_built_over_its_outline() -> None:
    """Every board is named; the diagonals of a rectangle are not, which would rack it."""
    (kit,), job = built("gable")
    (box,) = (step for step in inside_steps(kit, job.shop) if step.startswith("Build the jamb box"))
    assert "diagonal" not in box and all(f"W1-{number}" in box or "W1-1" in box for number in range(1, 6))
    # Clear width 36 - 5 + 1/4; each slope over half of it at 45°.
    assert job.shop.grid.text(31.25 / 2 * math.sqrt(2)) in box
    assert "to the corners that come after the next, in the same order, " in box


def test_a_shape_is_not_checked_for_what_it_is_not() -> None:
    """It has no four corners, is not square, and a raked one has a single diagonal from its first corner."""
    (kit,), job = built("octagon")
    steps = inside_steps(kit, job.shop)
    assert steps[0].endswith("check that the frame is plumb and level.") and "at every corner: " in steps[1]
    (kit,), job = built("raked")
    (box,) = (step for step in inside_steps(kit, job.shop) if step.startswith("Build the jamb box"))
    assert "to the opposite corner, " in box
    job = job_of(changed())
    (kit,) = strips(make_kit(one, job) for one in place_windows(job))
    plain = inside_steps(kit, job.shop)
    assert plain[0].endswith("plumb, level, square.") and "at the four corners: " in plain[1]


def test_a_short_side_is_shimmed_in_its_middle() -> None:
    """4 in from both ends of 12 leaves 4 between; a side of 12 1/8 gets two places, at 4 and 8."""
    assert shim_places(12.0, GRIDS["1/32"]) == (6.0,)
    assert shim_places(12.125, GRIDS["1/32"]) == (4.0, 8.0)


def test_shims_go_along_every_jamb_and_none_past_its_end() -> None:
    (kit,), job = built("raked")
    (shims,) = (step for step in inside_steps(kit, job.shop) if step.startswith("Shim in pairs"))
    for part in kit.parts:
        if part.mark in ("W1-1", "W1-2", "W1-3", "W1-4"):
            (at,) = (words for words in shims.split("; ") if f"{part.mark} " in words)
            last = at.split(", ")[-1] if part.mark != "W1-4" else at.split(", jambs")[0].split(", ")[-1]
            assert float(last.split('"')[0].split(" ")[0]) < part.length
