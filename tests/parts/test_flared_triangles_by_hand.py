"""Stools under triangles with flared jambs, by trigonometry: half span 24, rise 30, so slopes of sine 0.78087."""

from __future__ import annotations

import math

import pytest
from flared_triangles import flared_triangle

from jambs.parts.board.cuts import End, PlaneCut, SlantedNotch, saw_angles
from jambs.parts.board.kinds import PartKind

SINE, TAN, COS = 30 / math.hypot(24, 30), math.tan(math.radians(15)), math.cos(math.radians(15))


@pytest.mark.parametrize("rabbet", [0.0, 0.25])
def test_notches_follow_the_backs_of_flared_slants(rabbet: float) -> None:
    """From the horn's end in: 3/4 of horn, casing and reveal, 3 11/16, less the jamb's 3/4 / cos 15°, on the slope.

    That is at the room edge, 1/32 past the wall; each inch toward the frame the back comes in by tan 15° / sine.
    """
    made = flared_triangle("24", f"{rabbet:g}", head="15 deg")
    (stool,) = (part for part in made.kit.parts if part.kind is PartKind.STOOL)
    at_room = 0.75 + (3.6875 - 0.75 / COS) / SINE
    depth = made.kit.placement.interior_depth
    notches = [cut for cut in stool.cuts if isinstance(cut, SlantedNotch)]
    assert {cut.end for cut in notches} == set(End)
    for cut in notches:
        assert cut.along_inside == pytest.approx(at_room + TAN / 32 / SINE)
        assert cut.along == pytest.approx(at_room + (1 / 32 + depth + rabbet) * TAN / SINE)
        assert cut.across == pytest.approx(depth + rabbet)


def test_a_leg_and_a_slant_take_their_own_notches() -> None:
    """An upright leg at the left flares by 10°, the slant over it by 15°: 58° off upright, so tan 15° / sin 32°."""
    made = flared_triangle("0", head="15 deg", sides="10 deg")
    (stool,) = (part for part in made.kit.parts if part.kind is PartKind.STOOL)
    depth = made.kit.placement.interior_depth
    left, right = (
        next(cut for cut in stool.cuts if isinstance(cut, SlantedNotch) and cut.end is end)
        for end in (End.FINISH, End.START)
    )
    assert left.along - left.along_inside == pytest.approx(depth * math.tan(math.radians(10)))
    assert right.along - right.along_inside == pytest.approx(depth * TAN / (30 / math.hypot(48, 30)))


def test_feet_of_flared_slants_are_cut_level() -> None:
    """The miter of a hopper's corner, general compound angles: a face that leans 15° on a slope of 51.34°, cut level.

    Along the slope up is its sine, across the face sin 15° of its cosine, through the board cos 15° of it.
    """
    made = flared_triangle("24", head="15 deg")
    jambs = [part for part in made.kit.parts if part.kind is PartKind.EXTENSION_JAMB]
    along, other = SINE, 24 / math.hypot(24, 30)
    across, through = math.sin(math.radians(15)) * other, COS * other
    asked = (math.atan2(across, along), math.atan2(through, math.hypot(along, across)))
    for jamb, end in zip(jambs, (End.START, End.FINISH), strict=True):
        cut = next(cut for cut in jamb.cuts if isinstance(cut, PlaneCut) and cut.at is end)
        assert saw_angles(cut.flat) == pytest.approx([math.degrees(one) for one in asked])
