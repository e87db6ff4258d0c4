"""Exterior sills under triangles and arches without legs, by trigonometry and by right triangles in circles.

The sill of the plain job falls 10° from 1/4" under the frame: 4 1/4 x tan 10° = 0.7494 to the trim plane, where
casing 1" thick and 4 1/2" wide stands on it. The frame face is 2 1/2", the reveals of frame and casing are 1/4" each.
"""

from __future__ import annotations

import math
from typing import Any

import pytest
from sills_under_shapes import on_sill

from jambs.geometry import added
from jambs.parts.board.cuts import Notch, PlaneCut, saw_angles
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part

TAN, SIN, COS = math.tan(math.radians(10)), math.sin(math.radians(10)), math.cos(math.radians(10))
BACK = -0.25 - 4.25 * TAN
FACE = BACK - TAN
AT_JOINT = -0.25 - 0.25 * TAN
QUARTER = {"kind": "quarter round", "high_side": "left"}


def outside(shape: Any, width: float, height: float) -> list[Part]:
    return [part for part in on_sill(shape, width, height).kit.parts if part.where is Where.EXTERIOR]


def of_kind(parts: list[Part], kind: PartKind) -> list[Part]:
    return [part for part in parts if part.kind is kind]


def foot(part: Part) -> tuple[float, float]:
    """Miter and bevel of the end that is cut to a plane [degrees]."""
    (cut,) = (cut for cut in part.cuts if isinstance(cut, PlaneCut))
    return saw_angles(cut.flat)


def test_boards_of_a_triangle_come_down_on_its_sill() -> None:
    """Half span 24, rise 30: a slope of 51.34°. Casing: 90° less that, and the sill's fall through its thickness.

    A jamb stands square to the wall: the sill's plane crosses its edges by tan 10° / sin 51.34°, and its thickness by
    cos 10° x cos 51.34°, the angles between planes (as of hip and valley rafters in any roof framing book).
    """
    parts = outside("triangle", 48, 30)
    assert not [part for part in parts if part.side.value == "sill" and part.kind is not PartKind.EXTERIOR_SILL]
    slope = math.atan2(30, 24)
    for casing in of_kind(parts, PartKind.CASING):
        assert foot(casing) == pytest.approx((90 - math.degrees(slope), 10))
    for jamb in of_kind(parts, PartKind.EXTERIOR_JAMB):
        angles = (math.atan2(TAN, math.sin(slope)), math.asin(COS * math.cos(slope)))
        assert foot(jamb) == pytest.approx([math.degrees(one) for one in angles])


def test_the_sill_of_a_triangle_goes_past_the_feet_of_its_casing() -> None:
    """Where the frame's bottom is, a slope moved out by o lies o / sin 51.34° farther; so much lower, y / tan more.

    From the frame in: 2 1/2 face less 1/4 reveal and 1/4 casing reveal; out again 4 1/2 of casing: 2 1/2 out in all,
    at the casing's face, then a horn of 1. The notches end at the backs of the jambs: 2 1/2 - 1/4 - 3/4 = 1 1/2 in.
    """
    (sill,) = of_kind(outside("triangle", 48, 30), PartKind.EXTERIOR_SILL)
    sine, tangent = 30 / math.hypot(24, 30), 30 / 24
    half = 24 + 2.5 / sine - FACE / tangent + 1
    assert sill.length == pytest.approx(2 * half)
    notches = [cut.along for cut in sill.cuts if isinstance(cut, Notch)]
    assert notches == pytest.approx([half - (24 - 1.5 / sine - BACK / tangent)] * 2)


def test_the_arc_of_a_half_round_goes_on_down_to_the_sill() -> None:
    """Casing inside on a radius of 18 - 2 1/2 + 1/4 + 1/4 = 16: past level by asin(1.1757 / 16) = 4.21° at each end.

    So five segments share 188.43° in place of 180. Each of the last ones ends level, fallen 10° through its thickness.
    """
    parts = outside("half round", 36, 18)
    casing = of_kind(parts, PartKind.CASING)
    sweep = 180 + 2 * math.degrees(math.asin(-FACE / 16))
    assert len(casing) == 5
    half = sweep / 5 / 2
    assert casing[2].length == pytest.approx(2 * 20.5 * math.tan(math.radians(half)))
    # The middle of the last one lies 2 x 37.69° off upright: level is that much off square to it.
    assert foot(casing[0]) == pytest.approx((90 - 4 * half, 10))
    (sill,) = of_kind(parts, PartKind.EXTERIOR_SILL)
    # Below its center the circle of the outer edge comes in again: the back of the casing reaches farthest.
    assert sill.length == pytest.approx(2 * math.sqrt(20.5**2 - BACK**2) + 2)
    (left, right) = (cut.along for cut in sill.cuts if isinstance(cut, Notch))
    # Jambs begin a joint of 1/4" outside the frame.
    assert left == pytest.approx(sill.length / 2 - math.sqrt(16.5**2 - AT_JOINT**2)) and left == pytest.approx(right)


def test_a_jamb_along_an_arc_falls_with_the_sill_across_its_width() -> None:
    """Faces on a radius of 15 3/4: at the trim plane 0.9994 below its center, at the joint of 1/4 outside the frame

    4 x tan 10° higher. The end is a plane: its corners at both edges of the board lie on both levels.
    """
    jambs = of_kind(outside("half round", 36, 18), PartKind.EXTERIOR_JAMB)
    last = jambs[0]
    cut = next(cut for cut in last.cuts if isinstance(cut, PlaneCut))
    flat = cut.flat
    at_trim, at_frame = (last.seat.at(*point) for point in (flat.start, added(flat.start, flat.way)))
    assert at_trim[1] == pytest.approx(BACK) and at_frame[1] == pytest.approx(BACK + 4 * TAN)
    assert at_trim[2] - at_frame[2] == pytest.approx(4)


def test_a_quarter_round_has_a_leg_and_a_foot_on_its_sill() -> None:
    """Its notches differ: left the leg's casing, 1/4 + 4 1/2 less the jamb's 3/4 and the horn; right by the circles."""
    parts = outside(QUARTER, 30, 30)
    (sill,) = of_kind(parts, PartKind.EXTERIOR_SILL)
    left, right = (cut.along for cut in sill.cuts if isinstance(cut, Notch))
    # From the jamb's face: 1/4 casing reveal, 4 1/2 casing, 1 horn, less 3/4 of jamb.
    assert left == pytest.approx(5.0)
    # The arcs have radii of 30 - 2 1/4 + 3/4 = 28 1/2 at the jamb's back, 32 1/2 at the casing's outer edge.
    assert right == pytest.approx(math.sqrt(32.5**2 - BACK**2) + 1 - math.sqrt(28.5**2 - AT_JOINT**2))
    assert {part.side.value for part in of_kind(parts, PartKind.EXTERIOR_JAMB)} == {"left", "head"}
