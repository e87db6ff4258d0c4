"""Openings trimmed as one in three dimensions: sawn from their cut lists they close, and nothing clashes."""

from __future__ import annotations

import dataclasses
from typing import Any

import pytest
from cases import BASE, METRIC
from random_kits import CORNERS
from trimmed_as_one import OVER, run_job, run_kits

pytest.importorskip("cadquery")

from jambs.app.chain import kits_at, placed
from jambs.parts.board.cuts import MidNotch
from jambs.parts.board.kinds import PartKind, Where
from jambs.solids.fit import FitReport, fit_report
from jambs.solids.model import model_kit

NARROW = {"openings__1__frame": "29 1/2 x 47 1/2", "openings__1__rough_opening": "30 1/4 x 48"}
PICTURE = {**BASE["interior_trim"]["inside"], "mull_casing": OVER}


def reports(count: int = 2, **paths: Any) -> list[FitReport]:
    job = run_job(count, **paths)
    return [fit_report(model_kit(kit, job)) for kit in kits_at(placed(job), job)]


@pytest.mark.parametrize(
    ("count", "paths"),
    [
        (2, {}),
        (3, NARROW),
        (2, {"interior_trim__inside": PICTURE}),
        (2, {"position": {"exterior_depth": "0"}}),
        (2, {"shop__horn_play": "1/16", "interior_trim__inside__apron__ends": "returned"}),
    ],
    ids=["stool", "three, one narrow", "picture framed", "proud", "play behind the horns"],
)
def test_runs_fit(count: int, paths: dict[str, Any]) -> None:
    found = reports(count, **paths)
    assert [one.faults for one in found] == [()] * count
    for one in found:
        assert [joint.name for joint in one.joints if "mull casing" in joint.name]
        assert [measure.name for measure in one.measures if "mull casing" in measure.name]


def read(*depths: str) -> dict[str, Any]:
    """Depths at the corners: head left and right, sill left and right."""
    corners = dict(zip(("head_left", "head_right", "sill_left", "sill_right"), depths, strict=True))
    return {"date": "2026-06-01", "interior_depth": corners}


@pytest.mark.parametrize(
    ("first", "second"),
    [
        (["4 3/4"] * 4, ["4 3/4"] * 4),
        (["4 3/4", "4 3/4", "4 11/16", "4 11/16"], ["4 3/4", "4 3/4", "4 11/16", "4 11/16"]),
        (["4 3/4"] * 4, ["4 5/8"] * 4),
        (["4 1/2", "4 9/16", "4 1/2", "4 9/16"], ["4 9/16", "4 5/8", "4 9/16", "4 5/8"]),
    ],
    ids=["deeper", "a wall that leans", "two depths", "a wall that tapers"],
)
def test_measured_runs_hang_on_the_jambs_of_all(first: list[str], second: list[str]) -> None:
    paths: dict[str, Any] = {"openings__0__measured": read(*first), "openings__1__measured": read(*second)}
    assert [one.faults for one in reports(**paths)] == [(), ()]


def test_one_measured_opening_moves_the_boards_over_both() -> None:
    assert [one.faults for one in reports(openings__0__measured=read(*["4 3/4"] * 4))] == [(), ()]


def test_the_notches_are_measured_at_the_backs_of_the_jambs() -> None:
    one, two = reports()
    at = [
        [(m.name, round(m.found, 6)) for m in found.measures if m.name.startswith("notch of")] for found in (one, two)
    ]
    assert [[(name.split("(")[1], size) for name, size in some] for some in at] == [
        [
            ("stool, sill) to the back of the jamb, right", 0.0),
            ("exterior sill, sill) to the back of the jamb, right", 0.0),
        ],
        [
            ("stool, sill) to the back of the jamb, left", 0.0),
            ("exterior sill, sill) to the back of the jamb, left", 0.0),
        ],
    ]


def spoiled(kind: PartKind, by: float) -> FitReport:
    """The leftmost kit with the notch of a board begun farther along."""
    job, (kit, _) = run_job(), run_kits()
    parts = tuple(
        dataclasses.replace(
            part,
            cuts=tuple(
                dataclasses.replace(cut, start=cut.start + by) if isinstance(cut, MidNotch) else cut
                for cut in part.cuts
            ),
        )
        if part.kind is kind
        else part
        for part in kit.parts
    )
    return fit_report(model_kit(dataclasses.replace(kit, parts=parts), job))


@pytest.mark.parametrize("kind", [PartKind.STOOL, PartKind.EXTERIOR_SILL])
def test_a_notch_in_another_place_is_found(kind: PartKind) -> None:
    assert not spoiled(kind, 1 / 64).fits
    assert spoiled(kind, 0.0).fits


def test_a_mull_casing_in_another_place_is_found() -> None:
    job, (kit, _) = run_job(), run_kits()
    parts = tuple(
        dataclasses.replace(
            part, seat=dataclasses.replace(part.seat, origin=(part.seat.origin[0] + 1 / 32, *part.seat.origin[1:]))
        )
        if part.kind is PartKind.MULL_CASING and part.where is Where.INTERIOR
        else part
        for part in kit.parts
    )
    found = fit_report(model_kit(dataclasses.replace(kit, parts=parts), job))
    assert [measure.name for measure in found.measures if not measure.is_right] == [
        "reveal at W1-8 (mull casing, between openings), right"
    ]


def test_files_of_an_opening_have_its_own_boards_alone() -> None:
    job = run_job()
    for kit in run_kits():
        solids = model_kit(kit, job)
        own = {part.mark for part in kit.parts}
        assert {solid.name for solid in solids.solids if solid.part} == own
        assert own < {solid.name for solid in solids.everything if solid.part}


def test_a_metric_run_fits() -> None:
    metric = {key: value for key, value in METRIC.items() if not key.startswith("openings") and key != "exterior_trim"}
    openings = [
        {
            "mark": mark,
            "room": "Room",
            "frame": "900 x 1200",
            "rough_opening": "920 x 1220",
            "sill_height": "800",
            **more,
        }
        for mark, more in (("W1", {}), ("W2", {"trim_with": {"right_of": "W1", "wall": "140"}}))
    ]
    over = {"thickness": "18", "stock": "pine"}
    paths = {**metric, "interior_trim__inside__mull_casing": over, "openings": openings}
    inside = {**PICTURE, "mull_casing": over}
    job = run_job(1, **{"interior_trim__inside": inside, **paths, "exterior_trim": None})
    from jambs.parts.make import make_kit
    from jambs.place.solve import place_windows

    kits = [make_kit(one, job) for one in place_windows(job)]
    assert [fit_report(model_kit(kit, job)).faults for kit in kits] == [(), ()]
    (between,) = (part for part in kits[0].parts if part.kind is PartKind.MULL_CASING)
    # 140 + 10 + 10 between the frames, 60 - 3 of face at each: 274 from jamb to jamb, less reveals of 5.
    assert round(between.width * 25.4, 6) == 264


@pytest.mark.parametrize("at", [0, 1])
@pytest.mark.parametrize("key", ["interior_depth", "exterior_depth"])
def test_a_run_fits_of_which_one_opening_was_measured_and_is_not_as_planned(at: int, key: str) -> None:
    """The casing goes by all of them, and the sill as far out as the deepest asks."""
    depth = "4 13/16" if key == "interior_depth" else "1 3/4"
    corners = dict.fromkeys(("head_left", "head_right", "sill_left", "sill_right"), depth)
    if key == "exterior_depth":
        inside = dict.fromkeys(corners, "4 11/16")
        one: dict[str, Any] = {"date": "2026-06-01", "interior_depth": inside, key: corners}
    else:
        one = {"date": "2026-06-01", key: corners}
    paths: dict[str, Any] = {f"openings__{at}__measured": one}
    assert [found.faults for found in reports(2, **paths)] == [()] * 2


@pytest.mark.parametrize("off", ["2 1/8", "2 1/4", "3"])
def test_walls_that_stand_apart_by_more_than_faces_are_looked_for_close(off: str) -> None:
    """5/8, 3/4 (19 mm) and 1 1/2 farther out at the second: its jambs take it, the gap behind the casing is told."""
    depths = {one: {"date": "2026-06-01", "exterior_depth": dict.fromkeys(CORNERS, one)} for one in ("1 1/2", off)}
    changes = {f"openings__{at}__measured": read for at, read in enumerate(depths.values())}
    job = run_job(2, **changes)
    for kit in run_kits(2, **changes):
        assert fit_report(model_kit(kit, job)).faults == ()
