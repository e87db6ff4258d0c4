"""Arches against school geometry and the trade's own rules: paths, segments, and the boards they are sawn from."""

from __future__ import annotations

import math
from typing import Any

import pytest
from arches import BOARDS, HALF_ROUND, arched
from cases import METRIC, kit_of

from jambs.job.models.fields import Size
from jambs.job.models.path import area_of, corner_turn_deg, outset, shaped_path, size_over_all
from jambs.job.models.path_edge import FramePath
from jambs.job.models.shape import ShapeEntry
from jambs.length import MM_PER_INCH, ROUND_OFF
from jambs.parts.board.cuts import ArcCut, EndBevel, Miter, PlaneCut
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.shapes.arch import arches_of, counts_of
from jambs.parts.shapes.lamination import RADIUS_OVER_PLY, sprung_share
from jambs.sides import Side


def path_of(width: float, height: float, **shape: object) -> FramePath:
    return shaped_path(Size(width=width, height=height), ShapeEntry.model_validate(shape))


def even(out: float) -> dict[Side, float]:
    return dict.fromkeys(Side, out)


def heads(parts: tuple[Part, ...], kind: PartKind, where: Where) -> list[Part]:
    return [one for one in parts if one.kind is kind and one.where is where and one.side is Side.HEAD]


def test_a_half_round_is_half_a_circle_over_its_legs() -> None:
    path = path_of(36.0, 60.0, kind="half round")
    left, head, right, sill = path
    assert (left.length, right.length, sill.length) == (42.0, 42.0, 36.0)
    assert head.length == pytest.approx(math.pi * 18)
    assert head.crown == pytest.approx((18.0, 60.0))
    assert area_of(path) == pytest.approx(36 * 42 + math.pi * 18**2 / 2)
    assert [corner_turn_deg(path, i) for i in range(4)] == pytest.approx([90, 0, 0, 90], abs=1e-9)
    grown = outset(path, even(2.0))
    assert grown[1].length == pytest.approx(math.pi * 20)
    assert size_over_all(grown) == Size(width=40.0, height=64.0)


def test_a_segment_arch_of_whole_numbers() -> None:
    """A chord of 48 that rises 18 has a radius of 25, and meets its legs at the angle of a 7-24-25 triangle."""
    path = path_of(48.0, 60.0, kind="segment arch", rise=18)
    head = path[1]
    assert head.circle is not None
    assert (head.circle.radius, head.circle.center) == (25.0, (24.0, 35.0))
    assert corner_turn_deg(path, 1) == pytest.approx(math.degrees(math.atan2(7, 24)))
    assert head.length == pytest.approx(25 * 2 * math.asin(24 / 25))
    # Its outer edge, a board's width out, is concentric and meets the legs' outer edges.
    outer = outset(path, even(4.0))
    assert outer[1].circle is not None
    assert outer[1].circle.center == head.circle.center
    assert math.dist(outer[1].start, head.circle.center) == pytest.approx(29.0)
    assert outer[1].start[0] == -4.0


def test_a_spring_line_says_what_a_rise_says() -> None:
    assert path_of(36.0, 60.0, kind="segment arch", spring_line=52) == path_of(36.0, 60.0, kind="segment arch", rise=8)


def test_segments_of_an_even_polygon_have_its_miter() -> None:
    """Three segments of a half circle are mitered at 180°/6, five at 180°/10: half of what the polygon turns."""
    path = path_of(36.0, 60.0, kind="half round")
    arch = arches_of(path, 3.5)[0]
    assert list(counts_of(arch))[:3] == [3, 5, 7]
    for count in (3, 5, 7):
        half = math.pi / count / 2
        segment = arch.segment(1, count)
        assert segment.finish.slope == pytest.approx(math.tan(half))
        assert segment.chord == pytest.approx(2 * 18 * math.sin(half))
        assert arch.depth(count) == pytest.approx(21.5 - 18 * math.cos(half))  # width and sagitta of the hollow side


def test_a_segment_is_seen_square_to_its_chord_in_the_plane_of_the_wall() -> None:
    path = path_of(48.0, 60.0, kind="segment arch", rise=18)
    for segment in arches_of(path, 4.0)[0].segments(3):
        assert segment.along == pytest.approx((math.cos(segment.middle), -math.sin(segment.middle), 0.0))
        assert segment.outward == pytest.approx((math.sin(segment.middle), math.cos(segment.middle), 0.0))


def test_at_the_spring_line_a_segment_ends_on_both_arcs() -> None:
    """The arch of radius 25 springs 7 over its center: a third of its sweep has its inner corners half of that off."""
    path = path_of(48.0, 60.0, kind="segment arch", rise=18)
    first, _, last = arches_of(path, 4.0)[0].segments(3)
    half = math.asin(24 / 25) / 3
    assert first.start.inner == pytest.approx((-25 * math.sin(half), 25 * math.cos(half)))
    assert last.finish.inner == pytest.approx((25 * math.sin(half), 25 * math.cos(half)))
    # The outer corners lie 28 off the middle, on the legs' outer edges: asin(28 / 29) off upright.
    across = math.asin(28 / 29) - math.asin(24 / 25) * 2 / 3
    assert first.start.outer == pytest.approx((-29 * math.sin(across), 29 * math.cos(across)))
    assert last.finish.outer == pytest.approx((29 * math.sin(across), 29 * math.cos(across)))


def test_the_casing_takes_the_fewest_segments_that_come_out_of_a_board() -> None:
    """Three segments need 5 5/8 in and an edge straightened: a 1x8; where the widest is a 1x6, five of them do."""
    wide = heads(arched().kit.parts, PartKind.CASING, Where.INTERIOR)
    assert [part.runs for part in wide] == [3, 3, 3]
    assert {part.blank.board.nominal for part in wide if part.blank.board} == {"1x8"}
    made = arched(shop__boards=[board for board in BOARDS if board["nominal"] not in ("1x8", "1x10", "1x12")])
    narrow = heads(made.kit.parts, PartKind.CASING, Where.INTERIOR)
    assert len(narrow) == 5
    miters = [cut.angle_deg for part in narrow for cut in part.cuts if isinstance(cut, Miter)]
    assert miters == pytest.approx([18.0] * 10)


def test_the_jamb_is_sawn_hollow_from_thick_boards() -> None:
    jambs = heads(arched().kit.parts, PartKind.EXTENSION_JAMB, Where.INTERIOR)
    assert len(jambs) == 5 and {part.thickness for part in jambs} == {1.75}
    radii = [cut.radius for cut in jambs[0].cuts if isinstance(cut, ArcCut)]
    # Frame 36, face 2 1/2, reveal 1/8 leave 31 1/4 between the legs: half of it, and the thickness of 3/4.
    assert radii == [15.625, 16.375]
    assert [cut.angle_deg for cut in jambs[0].cuts if isinstance(cut, EndBevel)] == pytest.approx([18.0, 18.0])
    crown = jambs[2].seat.at(jambs[2].length / 2, 0.0, jambs[2].thickness)
    assert crown[0] == pytest.approx(18.0)


def test_legs_end_at_the_spring_line() -> None:
    legs = [one for one in arched().kit.parts if one.side.is_leg and one.kind is PartKind.CASING]
    inside = [one for one in legs if one.where is Where.INTERIOR]
    assert all(len([cut for cut in leg.cuts if isinstance(cut, Miter)]) == 1 for leg in inside)  # at the bottom alone


# ---- bent from plies


def bent(**more: Any) -> Part:
    (head,) = heads(arched(curved="bent laminations", **more).kit.parts, PartKind.EXTENSION_JAMB, Where.INTERIOR)
    return head


def test_plies_are_no_thicker_than_the_radius_bears() -> None:
    """A radius of 15 5/8 bears plies of 1/8: six of them make 3/4, as the rule of 1/125 has it to the thousandth."""
    plies = bent().blank.plies
    assert plies is not None
    assert (plies.count, plies.thickness, plies.total) == (6, 0.125, 0.75)
    assert plies.thickness * RADIUS_OVER_PLY <= 15.625


def test_inside_and_outside_of_a_half_circle_are_developed() -> None:
    head = bent()
    assert head.blank.plies is not None
    assert head.blank.plies.inner_length == pytest.approx(math.pi * 15.625)
    assert head.length == pytest.approx(math.pi * 16.375)
    assert head.blank.strip_length >= head.length + 4
    assert head.blank.plies.sweep_deg == pytest.approx(180.0)


def test_the_form_is_tighter_by_what_springs_back() -> None:
    """Loose plies straighten with n t³, in one they resist with (n t)³: 1/36 of six plies' curvature goes."""
    assert sprung_share(6) == pytest.approx((6 * 1**3) / 6**3)
    plies = bent().blank.plies
    assert plies is not None
    assert plies.form_radius == 15.1875  # 15.625 * 35 / 36 = 15.191, on the shop's grid of 1/32
    stated = bent(shop__springback="5 %").blank.plies
    assert stated is not None
    assert stated.form_radius == 14.84375  # 15.625 * 0.95


def test_plies_are_wider_than_the_jamb_and_longer_than_its_arc_by_what_is_planed_and_sawn_off() -> None:
    """1/4 and 4 in a shop of inches, 6 and 100 mm in one of millimeters (common practice), up to its grid.

    900 over all less two faces of 60 and two reveals of 3 more, and 20 thick: the arc of the back has a radius of 413.
    """
    head = bent()
    assert head.blank.strips[0] == head.width + 0.25
    assert 4 <= head.blank.strip_length - math.pi * 16.375 < 4 + 1 / 32
    changes: dict[str, Any] = {
        **METRIC,
        "openings__0__shape": HALF_ROUND,
        "openings__0__rough_opening": None,
        "walls__main__buck": None,
        "position": "on the sheathing",
        "interior_trim__inside__jamb": {**METRIC["interior_trim__inside__jamb"], "curved": "bent laminations"},
    }
    (head,) = heads(kit_of(**changes).parts, PartKind.EXTENSION_JAMB, Where.INTERIOR)
    assert 6 <= (head.blank.strips[0] - head.width) * MM_PER_INCH + ROUND_OFF < 7
    assert 100 <= head.blank.strip_length * MM_PER_INCH - math.pi * 413 < 101


def test_plies_are_resawn_from_the_board_that_wastes_least() -> None:
    """A kerf of 1/8 and 1/32 planed off: 3/4 gives three of 1/8, 1 3/4 six; six plies take 1 1/2 or 1 3/4 of wood."""
    head = bent()
    assert head.blank.plies is not None
    assert (head.thickness, head.blank.thickness) == (0.75, 0.75)
    assert (head.blank.plies.per_strip, len(head.strips)) == (3, 2)


def test_a_segment_arch_is_bent_between_its_spring_lines() -> None:
    """Its ends are sawn on the lines from the inner to the outer corner, where the legs are too."""
    made = arched({"kind": "segment arch", "rise": "8"}, curved="bent laminations")
    (head,) = heads(made.kit.parts, PartKind.EXTENSION_JAMB, Where.INTERIOR)
    (left,) = (one for one in made.kit.parts if one.kind is PartKind.EXTENSION_JAMB and one.side is Side.LEFT)
    (cut,) = (one for one in left.cuts if isinstance(one, EndBevel))
    # The leg's end rises toward its back as the head's falls toward its face.
    ends = [one.flat for one in head.in_place if isinstance(one, PlaneCut)]
    run = abs(ends[0].finish[0] - ends[0].start[0])
    assert run == pytest.approx(0.75)
    assert math.degrees(math.atan2(ends[0].finish[2], run)) == pytest.approx(cut.angle_deg)
