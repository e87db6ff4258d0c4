"""Full, half and quarter rounds, ellipse arches by three arcs and triangles against school geometry."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from rounds import rounded
from test_arches import even, heads, path_of

from jambs.job.models.arc_outset import arc_outside, backs_of, stands_on
from jambs.job.models.fields import Size
from jambs.job.models.path import (
    area_of,
    corner_turn_deg,
    corners_of,
    has_collapsed,
    has_two_legs,
    outset,
    size_over_all,
)
from jambs.job.models.round_paths import five_arcs, three_arcs
from jambs.parts.board.cuts import ArcCut, EndBevel, Miter
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.shapes.arch import arches_of, counts_of
from jambs.sides import Side


def test_a_full_round_is_a_circle_of_two_halves() -> None:
    path = path_of(36.0, 36.0, kind="full round")
    assert [edge.side for edge in path] == [Side.HEAD, Side.SILL]
    assert [edge.length for edge in path] == pytest.approx([math.pi * 18] * 2)
    assert area_of(path) == pytest.approx(math.pi * 18**2)
    assert [corner_turn_deg(path, i) for i in range(2)] == pytest.approx([0, 0], abs=1e-9)
    grown = outset(path, even(1.5))
    assert size_over_all(grown) == Size(width=39.0, height=39.0)
    assert corners_of(grown) == ((-1.5, 18.0), (37.5, 18.0))
    assert has_collapsed(outset(path, even(-18.5)), path) and not has_collapsed(outset(path, even(-17.0)), path)


def test_a_circle_that_rounding_moved_more_at_the_head_than_at_the_sill_stays_one() -> None:
    """Head out 1 1/4 and sill 3/4: a radius larger by 1, its center 1/4 higher."""
    moved = outset(path_of(36.0, 36.0, kind="full round"), {**even(1.0), Side.HEAD: 1.25, Side.SILL: 0.75})
    assert {edge.center for edge in moved} == {(18.0, 18.25)}
    assert [edge.circle.radius for edge in moved if edge.circle] == pytest.approx([19.0, 19.0])


def test_a_half_round_on_its_sill_has_no_legs() -> None:
    path = path_of(36.0, 18.0, kind="half round")
    assert [edge.side for edge in path] == [Side.HEAD, Side.SILL] and not has_two_legs(path)
    assert area_of(path) == pytest.approx(math.pi * 18**2 / 2)
    assert [corner_turn_deg(path, i) for i in range(2)] == pytest.approx([90, 90])
    # In by 2 its sill lies 2 above the center of a radius of 16: a chord of 2 √(16² - 2²).
    inner = outset(path, even(-2.0))
    assert inner[1].length == pytest.approx(2 * math.sqrt(16**2 - 2**2))
    assert inner[0].center == (18.0, 0.0)
    # Out by 2 it bulges past its corners: as wide as the circle of 20.
    assert size_over_all(outset(path, even(2.0))) == Size(width=40.0, height=22.0)


def test_what_stands_on_the_sill_ends_level_and_the_sill_square() -> None:
    path = path_of(36.0, 18.0, kind="half round")
    assert all(stands_on(path, i) for i in range(2))
    outer = arc_outside(path, 0, 3.0)
    assert (outer.start, outer.finish) == ((-3.0, 0.0), (39.0, 0.0))
    # Half a disk of 21, and under it a board of 3 x 42.
    assert area_of(backs_of(path, 3.0)) == pytest.approx(math.pi * 21**2 / 2 + 3 * 42)


def test_a_quarter_round_has_one_leg() -> None:
    left = path_of(30.0, 30.0, kind="quarter round", high_side="left")
    right = path_of(30.0, 30.0, kind="quarter round", high_side="right")
    for path, leg in ((left, Side.LEFT), (right, Side.RIGHT)):
        assert {edge.side for edge in path} == {leg, Side.HEAD, Side.SILL}
        assert area_of(path) == pytest.approx(math.pi * 30**2 / 4)
        assert [corner_turn_deg(path, i) for i in range(3)] == pytest.approx([90, 90, 90])
        assert size_over_all(path) == Size(width=30.0, height=30.0)
    assert max(x for x, y in corners_of(right) if y == 30.0) == 30.0


def test_the_three_arcs_of_a_three_four_five_triangle() -> None:
    """Half span 20, rise 15: 25 to the spring point, 5 laid off, 10 the half of what is left.

    The ends have 10 x 25/20 = 12 1/2, the crown 15 x 25/15 = 25; their centers lie 12 1/2 apart, 7 1/2 across and 10
    up, so they meet 5 in from the spring point and 10 up.
    """
    found = three_arcs(20.0, 15.0)
    assert (found.end_radius, found.crown_radius) == pytest.approx((12.5, 25.0))
    assert found.meet == pytest.approx((5.0, 10.0))


def test_the_five_arcs_of_an_arch_with_axes_of_a_square_and_its_quarter() -> None:
    """Half span 32, rise 18: the ends have 18²/32 = 10 1/8, the crown 32²/18 = 56 8/9, between √(32 x 18) = 24.

    Its center lies as far from the others as their radii differ; arcs meet on lines through two centers, so that both
    are as far from there as their radii.
    """
    ends, between, crown = five_arcs(32.0, 18.0)
    assert [one.radius for one in (ends, between, crown)] == pytest.approx([10.125, 24.0, 1024 / 18])
    assert ends.center == pytest.approx((10.125, 0.0)) and crown.center == pytest.approx((32.0, 18 - 1024 / 18))
    assert math.dist(ends.center, between.center) == pytest.approx(24 - 10.125)
    assert math.dist(between.center, crown.center) == pytest.approx(1024 / 18 - 24)
    for one, two in ((ends, between), (between, crown)):
        meets = one.meets(two)
        assert [math.dist(meets, arc.center) for arc in (one, two)] == pytest.approx([one.radius, two.radius])
    # From the spring point on they come in and up.
    assert 0 < ends.meets(between)[0] < between.meets(crown)[0] < 32 and between.meets(crown)[1] < 18


@pytest.mark.parametrize(("centers", "near"), [("3", 0.05), ("5", 0.03)])
@settings(max_examples=20)
@given(span=st.floats(24, 96), share=st.floats(0.3, 0.95), out=st.floats(-3, 6))
def test_the_arcs_of_an_ellipse_go_on_from_each_other_and_from_the_legs(
    centers: str, near: float, span: float, share: float, out: float
) -> None:
    rise = span / 2 * share
    path = path_of(span, 40 + rise, kind="ellipse arch", rise=rise, centers=centers)
    assume(out > -min(edge.circle.radius for edge in path if edge.circle))
    count = int(centers)
    for one in (path, outset(path, even(out))):
        turns = [corner_turn_deg(one, i) for i in range(count + 3)]
        assert turns == pytest.approx([90, *[0] * (count + 1), 90], abs=1e-5)
        assert max(edge.crown[1] for edge in one) == pytest.approx(40 + rise + (out if one is not path else 0))
    # They keep near the ellipse over the same axes: of the way out from its center three within 5 %, five within 3 %.
    half = span / 2
    for edge in path[1 : count + 1]:
        for x, y in edge.points[::10]:
            assert math.hypot((x - half) / half, (y - 40) / rise) == pytest.approx(1.0, abs=near)


def test_a_segment_arch_without_legs_springs_from_its_sill() -> None:
    """Span 32, rise 8: (16² + 8²) / 16 = 20, its center 12 under the sill, which it leaves at 53.13°: 3-4-5."""
    path = path_of(32.0, 8.0, kind="segment arch", rise=8)
    assert [edge.side for edge in path] == [Side.HEAD, Side.SILL]
    head = path[0]
    assert (
        head.circle is not None and head.circle.radius == pytest.approx(20) and head.center == pytest.approx((16, -12))
    )
    assert [corner_turn_deg(path, i) for i in range(2)] == pytest.approx([180 - math.degrees(math.atan2(4, 3))] * 2)
    # Moved in by 2 and its sill up by 1 it has a radius of 18 about the same center, which lies 13 below the sill.
    moved = outset(path, {**dict.fromkeys(Side, -2.0), Side.SILL: -1.0})
    half = math.sqrt(18**2 - 13**2)
    assert [corner for corner in corners_of(moved)] == [pytest.approx((16 - half, 1)), pytest.approx((16 + half, 1))]


def test_triangles_of_three_four_five() -> None:
    """Run 16, rise 12: 20 along the slope, 36.87° at the sill; the path turns by what is left of 180°."""
    path = path_of(32.0, 12.0, kind="triangle")
    assert [edge.length for edge in path] == pytest.approx([20, 20, 32])
    sharp = math.degrees(math.atan2(12, 16))
    assert [corner_turn_deg(path, i) for i in range(3)] == pytest.approx([180 - sharp, 2 * sharp, 180 - sharp])
    at_left = path_of(16.0, 12.0, kind="triangle", peak_from_left=0)
    assert [(edge.side, edge.length) for edge in at_left] == [(Side.LEFT, 12), (Side.HEAD, 20), (Side.SILL, 16)]
    at_right = path_of(16.0, 12.0, kind="triangle", peak_from_left=16)
    assert [(edge.side, edge.length) for edge in at_right] == [(Side.HEAD, 20), (Side.RIGHT, 12), (Side.SILL, 16)]


def test_the_casing_of_a_full_round_is_a_hexagon() -> None:
    """Six segments: each as long inside as the radius, mitered at 180°/6."""
    path = path_of(36.0, 36.0, kind="full round")
    head, sill = arches_of(path, 3.5)
    assert list(counts_of(head))[:2] == list(counts_of(sill))[:2] == [3, 5]
    for arch in (head, sill):
        assert [one.chord for one in arch.segments(3)] == pytest.approx([18.0] * 3)
    parts = rounded("full round").kit.parts
    casing = [one for one in parts if one.kind is PartKind.CASING and one.where is Where.INTERIOR]
    assert sorted((one.side.value, one.member) for one in casing) == [
        (side, member) for side in ("head", "sill") for member in (1, 2, 3)
    ]
    assert [cut.angle_deg for one in casing for cut in one.cuts if isinstance(cut, Miter)] == pytest.approx([30.0] * 12)
    assert len({round(one.length, 9) for one in casing}) == 1
    # Along the bottom too they are counted from left to right.
    lower = {one.member: one.seat.at(one.length / 2, 0, 0)[0] for one in casing if one.side is Side.SILL}
    assert lower[1] < lower[2] < lower[3]


def test_the_ring_is_bent_in_two_halves_over_one_form() -> None:
    """Frame 36, face 2 1/2, reveal 1/8: a radius of 15 5/8, and half its circle is what each half develops to."""
    parts = rounded("full round", curved="bent laminations").kit.parts
    halves = [one for one in parts if one.kind is PartKind.EXTENSION_JAMB]
    assert [one.side for one in halves] == [Side.HEAD, Side.SILL]
    plies = [one.blank.plies for one in halves]
    assert plies[0] == plies[1] and plies[0] is not None
    assert plies[0].inner_length == pytest.approx(math.pi * 15.625)


def test_a_quarter_is_bent_with_both_ends_along_its_boards() -> None:
    kit = rounded({"kind": "quarter round", "high_side": "left"}, 30, 30, curved="bent laminations").kit
    (head,) = heads(kit.parts, PartKind.EXTENSION_JAMB, Where.INTERIOR)
    # Its face has a radius of 30 - 2 1/2 + 1/8; leg and bottom lie 2 3/8 in from the center: asin of that off 90°.
    radius, off = 27.625, math.asin(2.375 / 27.625)
    assert head.blank.plies is not None
    assert head.blank.plies.inner_length == pytest.approx(radius * (math.pi / 2 - 2 * off))
    # Its chord lies radius x cos of half its sweep out from the center, on the line at 45° through it.
    low = radius * math.cos(math.pi / 4 - off)
    (x, y, _), (along, up, _) = head.seat.origin, head.seat.along
    half = (0.0 - x) * along + (0.0 - y) * up
    middle = (x + half * along, y + half * up)
    assert middle == pytest.approx((low * math.sqrt(0.5),) * 2, abs=1e-9)
    straight = [one for one in kit.parts if one.kind is PartKind.EXTENSION_JAMB and not one.arcs]
    assert all(not any(isinstance(cut, EndBevel | Miter | ArcCut) for cut in one.cuts) for one in straight)


def test_both_slopes_of_a_triangle_come_down_on_its_bottom() -> None:
    """A rise of 12 on 16 is 36.87°: jambs butted on the bottom one tilt the blade by the rest of 90°."""
    kit = rounded("triangle", 48, 18, interior_trim__inside__jamb__joint="butt, head over legs").kit
    jambs = [one for one in kit.parts if one.kind is PartKind.EXTENSION_JAMB]
    (bottom,) = (one for one in jambs if one.side is Side.SILL)
    sharp = math.degrees(math.atan2(18, 24))
    ends = [cut.angle_deg for cut in bottom.cuts if isinstance(cut, EndBevel)]
    assert ends == pytest.approx([90 - sharp] * 2)
    assert len({one.length for one in jambs if one.side is Side.HEAD}) == 1
