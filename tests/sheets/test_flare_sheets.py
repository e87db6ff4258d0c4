"""What papers say of flared jambs: the framer's list, the measure sheet, the cut sheet's lines, parts.json."""

from __future__ import annotations

import json
from functools import cache
from typing import Any

import jsonschema
from cases import changed, job_of, strips

from jambs.job import Job
from jambs.length import Units
from jambs.parts.board.kinds import PartKind
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.make import make_kit
from jambs.place.findings import JambWiderThanBoards
from jambs.place.solve import place_windows
from jambs.sheets.install_steps import inside_steps
from jambs.sheets.measure_sheet import measure_data
from jambs.sheets.parts_file import parts_schema
from jambs.sheets.record import job_record
from jambs.sheets.rough_openings import rough_opening_data
from jambs.sheets.trim_lines import interior_lines

FLARE = {"sides": "45 deg", "head": '1"'}


def flared(**paths: Any) -> tuple[tuple[CutKit, ...], Job]:
    return built(interior_trim__inside__flare=FLARE, **paths)


@cache
def plain() -> tuple[tuple[CutKit, ...], Job]:
    return built()


def built(**paths: Any) -> tuple[tuple[CutKit, ...], Job]:
    job = job_of(changed(**paths))
    return strips(make_kit(one, job) for one in place_windows(job)), job


def test_the_framer_reads_how_far_the_hole_opens() -> None:
    """4 11/16 less the board of 1/2: 4 3/16 at 45° on both sides; of 1 in at the head: 57/64, on a tape 15/16."""
    kits, job = flared()
    (row,) = rough_opening_data(kits, job)["rows"]
    assert (row["window"], row["flared"]) == ('36" × 48"', '44 3/8" × 48 15/16"')
    # Sill 36 less 1/4 of shims and no flare there; 48 of the hole and 15/16 above it.
    assert (row["framing_sill"], row["flared_sill"], row["flared_head"]) == ('35 3/4"', '35 3/4"', '84 11/16"')
    assert row["flared_aside"] == '4 3/16" out at the left, 4 3/16" out at the right'
    square = rough_opening_data(*plain())["rows"][0]
    assert [square[one] for one in ("flared", "flared_sill", "flared_head", "flared_aside")] == [""] * 4


def test_the_framer_reads_the_shape_of_the_larger_hole_too() -> None:
    """A gable of 36 x 48, 30 at the sides, 1/4 of shims. 12° over 4 3/16 is 57/64, up to the mark 15/16.

    At the sides the corner rises by shim and flare times tan 22 1/2°, as under any slope of 45°: 30 + 1/4 + 1/4 x 0.414
    is 30 23/64, and 31 11/16 with 15/16 below and 15/16 x 0.414 more. The peak by sqrt 2: 48 39/64, 50 7/8.
    """
    shape = {"kind": "gable", "sides": "30"}
    square = {"openings__0__rough_opening": None, "openings__0__frame": "36 x 48", "exterior_trim": None}
    kits, job = built(
        **{
            "openings__0__shape": shape,
            "interior_trim__inside__flare": dict.fromkeys(("sides", "head", "sill"), "12 deg"),
        },
        **square,
    )
    (row,) = rough_opening_data(kits, job)["rows"]
    assert row["framing_outline"].startswith('gable, sides 30 3/8" high, peak 48 5/8" high')
    assert row["flared_outline"] == (
        'gable, sides 31 11/16" high, peak 50 7/8" high, 19 3/16" from the left, slope 12 in 12 (45°)'
    )
    record = json.loads(json.dumps(job_record(kits, job)))
    jsonschema.validate(record, parts_schema())
    assert record["openings"][0]["flared_outline"]["text"] == row["flared_outline"]
    assert rough_opening_data(*flared())["rows"][0]["flared_outline"] == ""


def test_the_measure_sheet_asks_for_the_hole_and_reads_depths_square() -> None:
    kits, job = flared()
    data = measure_data(kits[0].placement, job)
    assert data["flare"] == (
        'Flared jambs: depths are read square to the wall, not along the slant. Is the rough opening at least 44 3/8" '
        '× 48 15/16" at the inside face of the framing, and straight from there to the frame? There it stands out '
        '15/16" at the head, 4 3/16" at the left, 4 3/16" at the right, its sill 35 3/4" and its head 84 11/16" above '
        "the finished floor."
    )
    (kit,), plain_job = plain()
    square = measure_data(kit.placement, plain_job)
    assert square["flare"] == ""
    # Legs: (4 11/16 + 11/32 left on + 1/32 proud) / cos 45° = 7.1594, and 3/4 tan 45° for the bevels; up
    # to 7 15/16: 1x8 gives 7 1/4 - 1/8, and 4 23/32 / cos 45° + 3/4 = 7 27/64 is glued up.
    legs = next(one for one in data["range"]["milling"] if "left leg" in one["who"])
    assert (legs["who"], legs["width"]) == ("left leg, right leg: glue up to", '7 15/16"')
    # The head leans by 1 in over 4 3/16, the bottom stands square: each has a width of its own.
    assert len(data["range"]["milling"]) == 3
    assert square["range"]["milling"] == [
        {"who": "all jambs: rip to", "width": '5 1/16"', "rest": ', that leaves 11/32"'}
    ]


def test_parts_json_has_the_flare_and_the_larger_hole() -> None:
    kits, job = flared()
    record = json.loads(json.dumps(job_record(kits, job)))
    jsonschema.validate(record, parts_schema())
    (opening,) = record["openings"]
    assert opening["flared_rough_opening"]["text"] == '44 3/8" × 48 15/16"'
    assert opening["flared_rough_opening"]["out"]["head"]["text"] == '15/16"'
    assert opening["trim"]["interior"]["flare"]["sides"]["angle_deg"]["value"] == 45.0
    lines = {one["name"]: one["value"] for one in interior_lines(opening["trim"]["interior"])}
    assert (lines["flare, sides"], lines["flare, head"]) == ("45°", '1" wider')


def tilted_jambs(kit: CutKit) -> set[str]:
    """The jambs inside that the caution of a tilted blade names."""
    said = next((one.text for one in kit.cautions if one.text.startswith("Blade tilted:")), ":")
    marks = said.rpartition(":")[2].strip(" .").split(", ")
    jambs = (one for one in kit.parts if one.kind is PartKind.EXTENSION_JAMB)
    return {one.position for one in jambs if one.mark in marks}


def test_the_blade_that_is_tilted_has_a_caution() -> None:
    """Of square jambs none; the sill outside has its bevels all the same."""
    assert tilted_jambs(flared()[0][0]) == {"head", "left leg", "right leg"}
    assert tilted_jambs(plain()[0][0]) == set()


def test_the_install_sheet_builds_a_box_that_opens() -> None:
    """At the frame 30 3/4, at the room edge 2 x (4 11/16 + 1/32) wider at 45°: 40 3/16."""
    kits, job = flared()
    steps = " ".join(inside_steps(kits[0], job.shop))
    assert 'square to the wall: faces of flared jambs are cut to the slant of depth + 1/32" proud' in steps
    assert 'clear inside 30 3/4" × 42 3/4"' in steps and 'at the room edge 40 3/16" ×' in steps
    assert "jambs straight and at their flare" in steps
    square = " ".join(inside_steps(plain()[0][0], job.shop))
    assert "flare" not in square and "slant" not in square and "square to the frame" in square


def test_a_jamb_wider_than_boards_is_told_as_the_cut_sheet_tells_it() -> None:
    """4 11/16 and 1/32 proud at 45°: 6.6732 and 3/4 for the bevels, 7 27/64; on the grid of 1/32 it is 7 7/16."""
    kits, _ = flared()
    (wide,) = [one for one in kits[0].findings if isinstance(one, JambWiderThanBoards)]
    assert (
        wide.sentence(Units.INCH) == 'The interior jamb is 7 7/16" wide, wider than any board in stock: glued strips.'
    )
