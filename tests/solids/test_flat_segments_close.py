"""Flared jambs round arcs in flat segments, sawn from their cut lists alone: they close to a thousandth of an inch."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from flat_segments import ELLIPSE, SHAPES, SILL, flat, flat_kits, flat_kits_outside, flat_on_stool, flat_outside
from hypothesis import given, settings
from measured_kits import Wall, measured
from metal import lined
from random_kits import RandomKit, kit_from
from rounds import round_changes

from jambs.length import Units
from jambs.parts.board.cuts import ArcCut, EdgeBevel
from jambs.parts.board.kinds import PartKind, Where
from jambs.solids.fit import FitReport, fit_report
from jambs.solids.model import model_kit


def report_of(made: RandomKit) -> FitReport:
    return fit_report(model_kit(made.kit, made.job))


@pytest.mark.parametrize("name", SHAPES)
def test_a_flared_kit_round_arcs_closes(name: str) -> None:
    made = flat(name)
    report = report_of(made)
    assert report.faults == ()
    names = [*(joint.name for joint in report.joints), *(measure.name for measure in report.measures)]
    count = sum(part.kind is PartKind.EXTENSION_JAMB and (part.runs or 0) > 1 for part in made.kit.parts)
    assert count >= 9
    for what in ("frame reveal at the corners", "shim space behind the corners", "radius of the corners at the room"):
        assert sum(name.startswith(what) for name in names) == count
    assert sum(name.startswith("casing reveal along the arc") for name in names) >= 2
    assert sum(name.startswith("the casing and the edges of the jambs") for name in names) == 1


@pytest.mark.parametrize("name", ["half round", "segment arch", "half round without legs", "quarter round"])
def test_flat_segments_stand_on_a_stool(name: str) -> None:
    report = report_of(flat_on_stool(name))
    assert report.faults == ()
    assert any("and the stool" in joint.name for joint in report.joints)


@pytest.mark.parametrize("name", ["half round", "segment arch", "full round"])
def test_flat_segments_follow_a_wall_that_leans(name: str) -> None:
    assert report_of(measured(flat(name), (0.03, 0.002, 0.001))).faults == ()


def test_a_flare_as_steep_as_any_closes() -> None:
    assert report_of(flat("half round", "60 deg")).faults == ()


def test_a_segment_that_is_beveled_too_much_is_told() -> None:
    """The witness sees: an edge that is beveled half a degree too much no longer lies on the frame."""
    made = flat("half round")
    first = next(part for part in made.kit.parts if part.position.startswith("head, 7"))
    cuts = tuple(
        replace(cut, angle_deg=cut.angle_deg + 0.5) if isinstance(cut, EdgeBevel) else cut for cut in first.cuts
    )
    parts = tuple(replace(part, cuts=cuts) if part is first else part for part in made.kit.parts)
    found = fit_report(model_kit(replace(made.kit, parts=parts), made.job)).faults
    assert any("head, 7 of 13" in fault.sentence(Units.INCH) for fault in found)


OVERLOOKED: list[tuple[float, float, int, int, dict[str, str], str]] = [
    (38, 46, 4, 5, {"width": "4", "thickness": "1 1/8", "corner": "miter"}, "1/4"),
    (38, 44, 4, 5, {"width": "4", "thickness": "1 1/8", "corner": "miter"}, "1/4"),
]
"""Of 1 140 segment arches of low rise, drawn at random, two of those of which the kernel finds no common volume of the
casing and an end segment that it is pressed into by a hair: frame, rise, flare, casing, frame reveal."""


@pytest.mark.parametrize(("wide", "high", "rise", "flare", "casing", "reveal"), OVERLOOKED)
def test_the_casing_bears_on_flat_segments_of_a_low_arch(
    wide: float, high: float, rise: int, flare: int, casing: dict[str, str], reveal: str
) -> None:
    changes = {
        "openings__0__frame": f"{wide:g} x {high:g}",
        "openings__0__shape": {"kind": "segment arch", "rise": str(rise)},
        "interior_trim__inside__casing": {**casing, "stock": "poplar"},
        "interior_trim__inside__frame_reveal": reveal,
        "position": {"share": "0"},
    }
    made = flat("segment arch", f"{flare} deg", **changes)
    (bears,) = (joint for joint in report_of(made).joints if joint.name.startswith("the casing and the edges"))
    assert bears.found == pytest.approx(bears.asked, abs=0.02)
    assert bears.is_right


@pytest.mark.parametrize("has_sill", [False, True])
@pytest.mark.parametrize("name", SHAPES)
def test_exterior_jambs_that_flare_round_arcs_close(name: str, *, has_sill: bool) -> None:
    if name == "full round" and has_sill:
        pytest.skip("a full round has no room for a sill")
    made = flat_outside(name, has_sill=has_sill)
    report = report_of(made)
    assert report.faults == ()
    names = [*(joint.name for joint in report.joints), *(measure.name for measure in report.measures)]
    count = sum(part.kind is PartKind.EXTERIOR_JAMB and (part.runs or 0) > 1 for part in made.kit.parts)
    assert count >= 7
    for what in ("exterior frame reveal at the corners", "radius of the corners at the trim plane"):
        assert sum(name.startswith(what) for name in names) == count
    assert sum(name.startswith("the exterior casing and the edges of the jambs") for name in names) == 1


LEANING = [(0.03, 0.1, 0.05), (-0.25, -0.1, 0.2)]
"""How much more than planned is read at the lower left, and more from there to the other side, and to the top [in]."""


@pytest.mark.parametrize("wall", LEANING)
@pytest.mark.parametrize("name", ["half round", "segment arch", "quarter round"])
def test_exterior_flat_segments_follow_a_wall_that_leans(name: str, wall: Wall) -> None:
    assert report_of(measured(flat_outside(name, has_sill=True), wall)).faults == ()


def test_a_wall_that_is_read_shallower_all_round_a_quarter_round_keeps_its_casing_reveal() -> None:
    """It lacks a leg at its low side: what was planned there is no depth that casing goes by."""
    report = report_of(measured(flat_outside("quarter round", has_sill=True), (0.25, 0.0, 0.0)))
    assert report.faults == ()
    reveals = [one for one in report.measures if one.name.startswith("exterior casing reveal along the arc")]
    assert [one.asked for one in reveals] == [pytest.approx(0.25)] * 2
    assert [one.found for one in reveals] == [pytest.approx(0.25, abs=1e-3)] * 2


@pytest.mark.parametrize("wall", [(0.0, 0.0, 0.0), *LEANING])
def test_casing_round_flared_flats_that_reaches_a_64th_too_far_in_is_told(wall: Wall) -> None:
    """The least that a rule shows is more than what a leaning wall is allowed."""
    made = measured(flat_outside("segment arch", has_sill=True), wall)
    assert any("casing reveal" in one for one in with_wider_casing(made, 1 / 64))


@pytest.mark.parametrize(("shape", "wide", "high"), [("half round", 36, 60), (ELLIPSE, 44, 54)])
def test_casing_that_bears_a_64th_too_far_in_on_an_arch_on_a_sill_is_told(shape: Any, wide: float, high: float) -> None:
    """What a sill that falls is allowed for, 0.002 sq in, is far less than a 64th of the narrowest segment."""
    made = kit_from(round_changes(shape, wide, high, exterior_trim__outside__sill=SILL))
    assert report_of(made).faults == ()
    faults = with_wider_casing(made, 1 / 64)
    assert any("the exterior casing and the edges of the jambs" in one for one in faults)


def with_wider_casing(made: RandomKit, by: float) -> list[str]:
    """What the report tells of a kit one segment of whose exterior casing reaches so much farther in [in]."""
    piece = next(
        part
        for part in made.kit.parts
        if part.kind is PartKind.CASING and part.where is Where.EXTERIOR and part.position.startswith("head, ")
    )
    cuts = tuple(
        replace(cut, radius=cut.radius - by) if isinstance(cut, ArcCut) and cut.side.is_hollow else cut
        for cut in piece.cuts
    )
    parts = tuple(replace(part, cuts=cuts) if part is piece else part for part in made.kit.parts)
    found = fit_report(model_kit(replace(made.kit, parts=parts), made.job)).faults
    return [fault.sentence(Units.INCH) for fault in found]


def test_an_exterior_segment_that_is_beveled_too_much_is_told() -> None:
    made = flat_outside("half round")
    first = next(
        part for part in made.kit.parts if part.kind is PartKind.EXTERIOR_JAMB and part.position.startswith("head, 6")
    )
    cuts = tuple(
        replace(cut, angle_deg=cut.angle_deg + 0.5) if isinstance(cut, EdgeBevel) else cut for cut in first.cuts
    )
    parts = tuple(replace(part, cuts=cuts) if part is first else part for part in made.kit.parts)
    found = fit_report(model_kit(replace(made.kit, parts=parts), made.job)).faults
    assert any("exterior" in fault.sentence(Units.INCH) for fault in found)


@given(flat_kits_outside())
@settings(max_examples=3, deadline=None)
def test_every_exterior_flare_round_arcs_closes(made: RandomKit) -> None:
    assert report_of(made).faults == ()


@given(flat_kits())
@settings(max_examples=4, deadline=None)
def test_every_flared_kit_round_arcs_closes(made: RandomKit) -> None:
    assert report_of(made).faults == ()


@pytest.mark.parametrize("name", SHAPES)
def test_bent_metal_round_arcs_closes(name: str) -> None:
    shape, wide, high = SHAPES[name]
    is_cut = name in ("full round", "half round without legs", "quarter round")
    sill = {"sill": None} if is_cut else {}
    changes = round_changes(shape, wide, high, exterior_trim__outside=lined(curved="flat segments", **sill))
    made = kit_from({key: one for key, one in changes.items() if not key.startswith("exterior_trim__outside__")})
    report = report_of(made)
    assert report.faults == ()
    count = sum(part.kind is PartKind.METAL_RETURN and (part.runs or 0) > 1 for part in made.kit.parts)
    assert count >= 7
    names = [measure.name for measure in report.measures]
    assert sum(one.startswith("exterior frame reveal at the corners") for one in names) == count
