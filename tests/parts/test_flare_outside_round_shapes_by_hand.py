"""Exterior jambs that flare round shapes, ganged units and openings trimmed as one, worked by hand from the base job.

As beside a rectangle (``test_flare_outside_by_hand.py``) the jambs begin 1/4 off the frame and are 1 1/4 deep, of 3/4.
"""

from __future__ import annotations

import math

import pytest
from arches import arch_changes
from cases import changed, figure, job_of, kit_of, part_of
from gangs import boxed, ganged_kit
from trimmed_as_one import run_kits

from jambs.job import JobFaults
from jambs.parts.board.cuts import EndBevel, Miter, PlaneCut, saw_angles
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.planned import length_is_planned

DEEP = 1.25
SQUARE = {"sides": "0", "head": "0"}
FLARED = {"sides": "15 deg", "head": "10 deg"}
RAKED = {
    "openings__0__shape": {"kind": "raked", "left": "30", "right": "48"},
    "openings__0__frame": "24 x 48",
    "openings__0__rough_opening": None,
}


def tangent(deg: float) -> float:
    return math.tan(math.radians(deg))


def part(made: Kit, kind: PartKind, position: str) -> Part:
    return part_of(made, kind.words, position, Where.EXTERIOR)


def bar_of(made: Kit) -> Part:
    return next(one for one in outside(made) if one.kind is PartKind.TRANSOM_BAR_CASING)


def outside(made: Kit) -> list[Part]:
    return [one for one in made.parts if one.where is Where.EXTERIOR]


def flared(**paths: object) -> Kit:
    return kit_of(exterior_trim__outside__flare=FLARED, **paths)


def test_the_clear_opening_of_a_raked_unit_grows_to_both_sides() -> None:
    """Frame 24, faces 2 1/2 less 1/4: clear 19 1/2 at the frame."""
    made = flared(**RAKED)
    assert figure(made, "exterior clear width") == pytest.approx(19.5)
    assert figure(made, "exterior clear width at the trim plane") == pytest.approx(19.5 + 2 * DEEP * tangent(15))


def test_every_board_round_a_shape_is_as_wide_as_its_own_slant() -> None:
    made = flared(**RAKED)
    for position, lean in (("left leg", 15), ("right leg", 15), ("head", 10)):
        wide = DEEP / math.cos(math.radians(lean)) + 0.75 * tangent(lean)
        assert part(made, PartKind.EXTERIOR_JAMB, position).width == pytest.approx(wide)


def test_jambs_of_a_gable_keep_their_places_in_the_row() -> None:
    gable = {"openings__0__shape": {"kind": "gable", "sides": "30"}, "openings__0__frame": "36 x 48"}
    made = flared(**{**RAKED, **gable})
    heads = [one for one in made.parts if one.kind is PartKind.EXTERIOR_JAMB and not one.side.is_leg]
    assert [(one.member, one.runs) for one in heads] == [(1, 2), (2, 2)]


def test_the_corner_of_two_flared_sides_of_an_octagon_is_the_hopper_of_the_handbooks() -> None:
    """Eight sides that all lean by s off the normal, 22.5° half turn: a mitered hopper.

    Off square on the face by atan(tan 22.5° · sin s), blade tilted by asin(sin 22.5° · cos s); closed forms as in
    ``tests/authorities``.
    """
    octagon = {"openings__0__shape": "octagon", "openings__0__frame": "30 x 30"}
    all_round = {"sides": "20 deg", "head": "20 deg"}
    changes = {**RAKED, **octagon, "exterior_trim__outside__sill": None}
    made = kit_of(**changes, exterior_trim__outside__flare=all_round)
    middle = part(made, PartKind.EXTERIOR_JAMB, "head, middle")
    planes = [cut.plane(middle.silhouettes.sizes) for cut in middle.cuts if isinstance(cut, PlaneCut)]
    lean, half = math.radians(20), math.radians(22.5)
    for plane in planes:
        gauge, tilt = saw_angles(plane)
        assert gauge == pytest.approx(math.degrees(math.atan(math.tan(half) * math.sin(lean))), abs=1e-6)
        assert tilt == pytest.approx(math.degrees(math.asin(math.sin(half) * math.cos(lean))), abs=1e-6)
    assert len(planes) == 2


def test_all_round_a_shape_lengths_wait_for_the_depth() -> None:
    """A slope meets the legs out at the trim plane: with the head alone flared by an angle a leg waits too."""
    made = kit_of(**RAKED, exterior_trim__outside__flare={"sides": "15 deg"})
    assert length_is_planned(part(made, PartKind.CASING, "left leg"), made.placement.opening)
    assert not length_is_planned(part(kit_of(), PartKind.CASING, "left leg"), kit_of().placement.opening)


def test_what_stands_between_flared_legs_is_beveled_as_they_lean() -> None:
    """Of 3/4 the cover begins at the frame, the jambs 1/4 farther out: its face ends 1/2 · tan f past them there."""
    square, made = ganged_kit(), ganged_kit(exterior_trim__outside__flare=FLARED)
    bar = bar_of(made)
    plain = bar_of(square)
    assert bar.length == pytest.approx(plain.length + 2 * 0.5 * tangent(15))
    assert [cut.angle_deg for cut in bar.cuts if isinstance(cut, EndBevel)] == pytest.approx([15, 15])
    assert bar.seat.origin[0] == pytest.approx(plain.seat.origin[0] - 0.5 * tangent(15))
    mull, upright = (part(one, PartKind.MULL_CASING, "between units") for one in (made, square))
    assert [cut.angle_deg for cut in mull.cuts if isinstance(cut, EndBevel)] == [
        cut.angle_deg for cut in upright.cuts if isinstance(cut, EndBevel)
    ]  # it ends under a bar, which is square


def test_a_mull_under_a_flared_head_is_beveled_at_its_top() -> None:
    bare = {"openings__0__transom": None, "openings__0__transom_bar": None}
    made, square = (ganged_kit(**bare, exterior_trim__outside__flare=one) for one in (FLARED, SQUARE))
    mull, plain = (part(one, PartKind.MULL_CASING, "between units") for one in (made, square))
    assert mull.length == pytest.approx(plain.length + 0.5 * tangent(10))


def test_boxed_mull_jambs_stand_square_and_reach_up_to_the_flared_head() -> None:
    made, square = (kit_of(**boxed(exterior_trim__outside__flare=one)) for one in (FLARED, SQUARE))
    one, plain = (part(kit, PartKind.MULL_JAMB, "left side of the mull") for kit in (made, square))
    assert one.width == pytest.approx(plain.width)
    assert one.length == pytest.approx(plain.length + DEEP * tangent(10))
    assert 10.0 in [cut.angle_deg for cut in one.cuts if isinstance(cut, Miter)]


def test_boards_over_openings_trimmed_as_one_go_by_what_is_left_of_the_wall() -> None:
    """Faces 10 1/2 apart at the frame, at the trim plane less by both sides; two reveals less is the mull casing."""
    made = run_kits(exterior_trim__outside__flare=FLARED)[0]
    mull = next(one for one in made.parts if one.kind is PartKind.MULL_CASING and one.where is Where.EXTERIOR)
    assert mull.width == pytest.approx(10.5 - 2 * DEEP * tangent(15) - 2 * 0.25)
    square = run_kits()[0]
    sill, plain = (part(one, PartKind.EXTERIOR_SILL, "sill") for one in (made, square))
    # One head over both: as much longer as one opening alone.
    assert sill.length == pytest.approx(plain.length + 2 * DEEP * tangent(15))


@pytest.mark.parametrize("shape", ["half round", {"kind": "segment arch", "rise": "8"}])
def test_round_an_arch_a_flare_outside_is_one_cone(shape: object) -> None:
    entry = {"kind": shape} if isinstance(shape, str) else shape
    with pytest.raises(JobFaults, match="part of a cone, which has one flare all round; write the same flare for left"):
        job_of(changed(**arch_changes(entry, 36, 60), exterior_trim__outside__flare=FLARED))


def test_round_an_arch_a_flare_outside_is_made_in_flat_segments() -> None:
    alike = {"sides": "15 deg", "head": "15 deg"}
    with pytest.raises(JobFaults, match=r"write jamb: \{…, curved: flat segments\}"):
        job_of(changed(**arch_changes({"kind": "half round"}, 36, 60), exterior_trim__outside__flare=alike))
