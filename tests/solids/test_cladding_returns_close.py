"""Kits whose cladding returns to the frame, sawn from their cut lists alone: they close to a thousandth of an inch."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest
from cases import changed, job_of
from clad import DEEP, clad, clad_kits, mitered
from hypothesis import given, settings
from random_kits import RandomKit

from jambs.job.models.trim import Corner
from jambs.parts.board.cuts import EdgeBevel, Rip
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.solids.fit import FitReport, fit_report
from jambs.solids.model import model_kit
from jambs.solids.part_checks import bench_faults


def made(trim: dict[str, Any], **paths: Any) -> RandomKit:
    changes = {**DEEP, "exterior_trim__outside": trim, **paths}
    job = job_of(changed(**changes))
    return RandomKit(changes, make_kit(place_windows(job)[0], job), job)


def report_of(one: RandomKit, kit: Kit | None = None) -> FitReport:
    return fit_report(model_kit(kit or one.kit, one.job))


def test_corner_boards_are_measured_on_every_side() -> None:
    report = report_of(made(clad()))
    assert report.faults == ()
    names = [*(joint.name for joint in report.joints), *(measure.name for measure in report.measures)]
    for what, count in (
        ("gap at the corner board", 3),
        ("corner board past the return", 3),
        ("outer edge of the corner board", 3),
        ("foot of", 4),
        ("the cladding return's", 5),
        ("the return furring's", 4),
        ("the corner board's", 2),
        ("sill past the casing", 2),
        ("flashing past the casing", 2),
        ("sill between its horns", 1),
    ):
        assert sum(name.startswith(what) for name in names) == count, what


def test_a_miter_is_measured_to_the_face_of_the_cladding() -> None:
    report = report_of(made(mitered()))
    assert report.faults == ()
    names = [measure.name for measure in report.measures]
    assert sum(name.endswith("of the returns to the cladding's face") for name in names) == 3
    assert sum(name.startswith("sill past the casing") for name in names) == 2


def moved(kind: PartKind, by: tuple[float, float, float]) -> Callable[[Part], Part]:
    def shift(part: Part) -> Part:
        if part.kind is not kind or not part.side.is_leg:
            return part
        x, y, d = part.seat.origin
        return replace(part, seat=replace(part.seat, origin=(x + by[0], y + by[1], d + by[2])))

    return shift


def wider(part: Part) -> Part:
    if part.kind is not PartKind.CORNER_BOARD:
        return part
    cuts = tuple(Rip(width=cut.width + 0.01) if isinstance(cut, Rip) else cut for cut in part.cuts)
    return replace(part, cuts=cuts)


def steeper(part: Part) -> Part:
    cuts = tuple(replace(cut, angle_deg=46.0) if isinstance(cut, EdgeBevel) else cut for cut in part.cuts)
    return replace(part, cuts=cuts) if part.kind is PartKind.CLADDING_RETURN else part


@pytest.mark.parametrize(
    ("trim", "change", "told"),
    [
        (clad(), moved(PartKind.CLADDING_RETURN, (0.0, 0.0, 0.01)), "sealant joint at the left leg"),
        (clad(), moved(PartKind.CORNER_BOARD, (0.0, 0.0, 0.01)), "gap at the corner board, left leg"),
        (clad(), moved(PartKind.CORNER_BOARD, (0.01, 0.0, 0.0)), "corner board past the return"),
        (clad(), moved(PartKind.RETURN_FURRING, (0.0, -0.01, 0.0)), "the return furring's left leg"),
        (clad(), moved(PartKind.CLADDING_RETURN, (0.0, -0.01, 0.0)), "foot of W1-10 over the sill"),
        (clad(), wider, "outer edge of the corner board, head, to the trim plane"),
        (
            mitered(),
            moved(PartKind.CLADDING_RETURN, (0.0, 0.0, 0.01)),
            "left leg of the returns to the cladding's face",
        ),
        (mitered(), steeper, "the cladding return's left leg W1-10 and the head"),
    ],
)
def test_what_is_off_by_a_hundredth_is_told(trim: dict[str, Any], change: Callable[[Part], Part], told: str) -> None:
    one = made(trim)
    kit = replace(one.kit, parts=tuple(map(change, one.kit.parts)))
    assert any(told in fault.sentence(one.job.units) for fault in report_of(one, kit).faults)


def test_a_leg_of_two_slants_has_the_volume_that_is_left_of_it() -> None:
    """The miter of its foot takes a corner that the bevel of its edge has taken already."""
    one = made(mitered())
    assert bench_faults(model_kit(one.kit, one.job)) == []


def test_a_mitered_leg_that_reaches_past_the_head_loses_less_under_it() -> None:
    """Taken as parallel, the right leg is 1/32 wider than the head over it."""
    depths = {"head_left": "4 1/4", "head_right": "4 1/4", "sill_left": "4 1/4", "sill_right": "4 9/32"}
    read = {"date": "2026-01-05", "exterior_depth": depths}
    assert report_of(made(mitered(), openings__0__measured=read)).faults == ()


def test_casing_is_mitered_over_corner_boards_as_over_jambs() -> None:
    casing = {"width": "4 1/2", "thickness": "1", "stock": "cedar", "corner": "miter"}
    one = made({**clad(), "casing": casing, "casing_reveal": "1/4"})
    trim = one.kit.placement.opening.exterior
    assert trim and trim.casing.corner is Corner.MITER
    assert report_of(one).faults == ()


@given(clad_kits())
@settings(max_examples=10)
def test_random_kits_close(one: RandomKit) -> None:
    assert report_of(one).faults == ()
