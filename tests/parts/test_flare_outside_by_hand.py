"""Exterior jambs that flare, worked by hand from the base job, and held against the solids.

The frame is 35 1/2 wide and shows 2 1/2, less 1/4 of reveal: clear 31 at the frame, its head at 45 1/4. The jambs are
1 1/2 deep less a joint of 1/4: 1 1/4. Butted compound cuts by the closed form of a hopper whose boards lean unalike
(derived from the normals of their faces; for a = b it is the butted hopper of the handbooks).
"""

from __future__ import annotations

import math
from typing import Any

import pytest
from arches import arch_changes
from cases import changed, figure, job_of, kit_of, part_of
from part_cases import THREE_SIDED

from jambs.drawings.elements.view import ViewSide
from jambs.drawings.views.reveals import reveal_chains
from jambs.flashing.laps import lap_order
from jambs.job import JobFaults
from jambs.length import Units
from jambs.parts.board.cuts import PlaneCut, saw_angles
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.planned import length_is_planned
from jambs.parts.make import PartsError, make_kit
from jambs.place.solve import place_windows
from jambs.section.cut import cut_sections
from jambs.section.region import SectionCut, Stuff

DEEP = 1.25
FLARED = {"sides": "15 deg", "head": "10 deg"}


def tangent(deg: float) -> float:
    return math.tan(math.radians(deg))


def kit(**flare: str) -> Kit:
    return kit_of(exterior_trim__outside__flare=flare or FLARED)


def part(made: Kit, name: PartKind, position: str) -> Part:
    return part_of(made, name.words, position, Where.EXTERIOR)


def test_the_opening_grows_to_the_trim_plane() -> None:
    made = kit()
    assert figure(made, "exterior clear width") == 31
    assert figure(made, "exterior clear width at the trim plane") == pytest.approx(31 + 2 * DEEP * tangent(15))


def test_without_flare_nothing_is_told_of_it() -> None:
    assert "exterior clear width at the trim plane" not in {one.name for one in kit_of().figures}
    square = kit_of(exterior_trim__outside__flare={"sides": "0", "head": "0"})
    assert [one.cuts for one in square.parts] == [one.cuts for one in kit_of().parts]


def test_a_side_is_as_wide_as_its_slant_and_both_bevels() -> None:
    left = part(kit(), PartKind.EXTERIOR_JAMB, "left leg")
    cosine = math.cos(math.radians(15))
    assert left.width == pytest.approx(DEEP / cosine + 0.75 * tangent(15))
    assert left.is_leaned


def test_a_leg_is_cut_to_the_head_by_the_closed_form() -> None:
    """Boards that lean by a and b: off square in its face by atan(tan b × cos a), tilted by asin(sin a × sin b)."""
    left = part(kit(), PartKind.EXTERIOR_JAMB, "left leg")
    planes = [cut.plane(left.silhouettes.sizes) for cut in left.cuts if isinstance(cut, PlaneCut)]
    gauge, tilt = saw_angles(planes[0])
    assert gauge == pytest.approx(math.degrees(math.atan(tangent(10) * math.cos(math.radians(15)))), abs=1e-6)
    assert tilt == pytest.approx(
        math.degrees(math.asin(math.sin(math.radians(15)) * math.sin(math.radians(10)))), abs=1e-6
    )


def test_casing_and_flashing_go_round_the_wider_opening() -> None:
    """At the trim plane 31.67 wide and 0.22 higher: reveals of 1/4 and the boards from there."""
    made, wide, high = kit(), 31 + 2 * DEEP * tangent(15), DEEP * tangent(10)
    head = part(made, PartKind.CASING, "head")
    assert head.length == pytest.approx(wide + 0.5 + 2 * 4.5 + 2 * 0.5)
    assert head.seat.at(0, 0, 0)[1] == pytest.approx(45.25 + high + 0.25)
    assert part(made, PartKind.HEAD_FLASHING, "head").length == pytest.approx(head.length + 1)


def test_the_sill_lies_under_the_feet_as_they_end() -> None:
    """Between its horns: the opening at the trim plane, and on each side a leg of 3/4 across its lean."""
    sill = part(kit(), PartKind.EXTERIOR_SILL, "sill")
    notch = next(cut.along for cut in sill.cuts if hasattr(cut, "along"))
    wide = 31 + 2 * DEEP * tangent(15) + 2 * 0.75 / math.cos(math.radians(15))
    assert sill.length - 2 * notch == pytest.approx(wide)


def test_a_flare_by_length_goes_from_the_joint_to_the_trim_plane() -> None:
    made = kit(left="1 in")
    assert figure(made, "exterior clear width at the trim plane") == pytest.approx(32)
    assert made.outside_flares.left == pytest.approx(math.degrees(math.atan(1 / DEEP)))
    assert made.outside_flares.right == 0


def test_a_flare_by_length_that_comes_out_too_steep_is_refused() -> None:
    """1 1/4 × tan 60° = 2.165: 2 1/8 leans by 59.5°, 2 1/4 by 60.9°."""
    assert kit(head="2 1/8 in").outside_flares.head < 60
    with pytest.raises(PartsError) as raised:
        kit(head="2 1/4 in")
    assert [one.code for one in raised.value.findings] == ["flare-too-steep"]


def test_lengths_that_go_by_an_angle_wait_for_the_depth() -> None:
    """A casing head goes by the sides, a leg by the head; a flare that is a length does not change them."""
    made = kit(sides="15 deg")
    opening = made.placement.opening
    assert length_is_planned(part(made, PartKind.CASING, "head"), opening)
    assert not length_is_planned(part(made, PartKind.CASING, "left leg"), opening)
    made = kit(sides="1/2 in")
    assert not length_is_planned(part(made, PartKind.CASING, "head"), made.placement.opening)


def test_the_layers_follow_the_back_of_a_flared_jamb() -> None:
    """The outer face of the insulation is cut back farther than its inner: by 1.25 × tan 10° over the jamb's depth."""
    sections = {one.cut: one for one in cut_sections(kit())}
    boards = [one for one in sections[SectionCut.HEAD].regions if one.stuff is Stuff.JAMB]
    jamb = max(boards, key=lambda one: max(d for _, d in one.outline))
    low = {round(d, 3): min(y for y, at in jamb.outline if abs(at - d) < 1e-6) for _, d in jamb.outline}
    assert low[12.0] - low[10.75] == pytest.approx(DEEP * tangent(10))


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"exterior_trim__outside__flare": {"sill": "5 deg"}}, "flare leans the sill"),
        (
            {
                "exterior_trim__outside__flare": FLARED,
                **arch_changes({"kind": "half round"}, 36, 60),
            },
            "flares round the half round .*, where its jamb is part of a cone, which has one flare all round",
        ),
    ],
)
def test_flares_that_are_not_made_are_refused(changes: dict[str, Any], said: str) -> None:
    with pytest.raises(JobFaults, match=said):
        job_of(changed(**changes))


def test_a_door_flares_to_its_threshold() -> None:
    job = job_of(
        changed(
            exterior_trim__outside__flare=FLARED,
            exterior_trim__outside__sill=None,
            openings__0__floor_below_frame="1",
            openings__0__sill_height=None,
            interior_trim__inside=THREE_SIDED,
        )
    )
    made = make_kit(place_windows(job)[0], job)
    assert part(made, PartKind.EXTERIOR_JAMB, "left leg").is_leaned


def test_the_order_of_laps_has_the_layers_cut_to_the_lean() -> None:
    for made, is_told in ((kit(), True), (kit_of(), False)):
        said = " ".join(lap.step.over(Units.INCH) for lap in lap_order(made, ()))
        assert ("layers behind cut back to the lean" in said) is is_told


def test_the_section_tells_reveals_and_flare_apart() -> None:
    """At the head: 1/4 of frame reveal, 1.25 × tan 10° = 0.22 of flare, 1/4 of casing reveal."""
    made = kit()
    section = next(one for one in cut_sections(made) if one.cut is SectionCut.HEAD)
    intervals = [
        one for chain in reveal_chains(section, made) if chain.side is ViewSide.RIGHT for one in chain.intervals
    ]
    told = [(round(abs(one.finish[1] - one.start[1]), 4), one.name) for one in intervals]
    assert told[:3] == [(0.25, ""), (round(DEEP * tangent(10), 4), "flare"), (0.25, "")]
