"""Flared jambs round arcs in flat segments against closed forms: regular frames, and the development of a cone.

Miter and tilt of a regular frame of n sides that lean by a: tan m = sin a tan(180/n), sin b = cos a sin(180/n). For
four sides it is the chart printed in manuals of table and miter saws, of which some rows stand here. Development of a
frustum of a cone, as in sheet-metal handbooks, from memory: a sector of radius r / sin a, its angle the arc's times
sin a.

The base case by hand: frame 36 wide, faces 2 1/2, reveal 1/8, so the clear radius is 18 - 2 3/8 = 15 5/8; on the
sheathing the interior depth is 1 15/16, jambs 1/32 proud, so that 15° make the radius at the room 15 5/8 + 0.5275.
"""

from __future__ import annotations

import math

import pytest
from flat_segments import SHAPES, flat, flat_on_stool

from jambs.geometry import Point
from jambs.job.models.path import corner_turn_deg
from jambs.parts.board.arrises import Arris
from jambs.parts.board.cuts import Edge, EdgeBevel, End, PlaneCut, saw_angles
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.jambs.flat_jambs import flat_path
from jambs.parts.jambs.shaped_jambs import clear_path
from jambs.parts.kit.kit import FigureKind, Kit
from jambs.parts.shapes.flat_segments import FlatPath, flat_round
from jambs.place.flares import Flares
from jambs.sides import Side

RADIUS, DEPTH, FLARE = 15.625, 1.9375 + 1 / 32, 15.0
PRINTED = [(45.0, 35.26, 30.0), (15.0, 14.51, 43.08), (30.0, 26.57, 37.76), (60.0, 40.89, 20.7), (70.0, 43.22, 14.0)]
"""Lean of a four-sided box off upright, miter and tilt as charts print them [degrees]."""


def regular(half: float, lean_deg: float) -> Point:
    """Miter and tilt of a frame whose sides turn by twice ``half`` [radians] and lean [degrees]."""
    lean = math.radians(lean_deg)
    miter, tilt = math.atan(math.sin(lean) * math.tan(half)), math.asin(math.cos(lean) * math.sin(half))
    return math.degrees(miter), math.degrees(tilt)


def of(kit: Kit) -> FlatPath:
    opening, frame = kit.placement.opening, kit.frames[0]
    found = flat_path(opening, clear_path(opening, frame.clear), frame, kit.flares)
    assert found is not None
    return found


def segments(kit: Kit, side: Side = Side.HEAD) -> list[Part]:
    return [part for part in kit.parts if part.kind is PartKind.EXTENSION_JAMB and part.side is side]


@pytest.mark.parametrize(("lean", "miter", "tilt"), PRINTED)
def test_the_closed_form_is_the_printed_chart(lean: float, miter: float, tilt: float) -> None:
    assert regular(math.pi / 4, lean) == pytest.approx((miter, tilt), abs=0.006)


@pytest.mark.parametrize("name", ["half round", "full round", "segment arch", "quarter round"])
@pytest.mark.parametrize("flare", ["15 deg", "35 deg"])
def test_segments_are_cut_as_a_regular_frame_that_leans(name: str, flare: str) -> None:
    """All but those at the ends are alike: cut at both ends by the settings of a regular frame."""
    kit = flat(name, flare).kit
    found, sides = of(kit), Side.HEAD
    middle = segments(kit, sides)[1:-1]
    assert len(middle) >= 5
    asked = regular(math.radians(found.turn_deg / 2), next(iter(found.flares.values())))
    for part in middle:
        cuts = [cut for cut in part.cuts if isinstance(cut, PlaneCut) and isinstance(cut.at, End)]
        assert len(cuts) == 2
        for cut in cuts:
            assert saw_angles(cut.flat) == pytest.approx(asked, abs=1e-6)


def test_a_half_round_by_hand() -> None:
    """13 segments of 180° / 13: the least odd number that keeps 16.15 (1 - cos(90° / 13)) = 0.1177 within 1/8."""
    kit = flat("half round").kit
    found, head = of(kit), segments(kit)
    half, wide = math.pi / 26, RADIUS + DEPTH * math.tan(math.radians(FLARE))
    assert len(head) == found.count == 13
    assert wide * (1 - math.cos(math.pi / 22)) > 1 / 8 > found.off_room
    assert found.off_room == pytest.approx(wide * (1 - math.cos(half)))
    assert found.off_frame == pytest.approx(RADIUS * (1 - math.cos(half)))
    assert found.turn_deg == pytest.approx(180 / 13)
    lean = math.atan(math.tan(math.radians(FLARE)) * math.cos(half))
    assert [*found.flares.values()] == pytest.approx([math.degrees(lean)] * 13)
    bevels = [cut.angle_deg for part in head for cut in part.cuts if isinstance(cut, EdgeBevel)]
    assert bevels == pytest.approx([math.degrees(lean)] * 26)
    # The blank is as wide as the slant and what both bevels need.
    assert [part.width for part in head] == pytest.approx([DEPTH / math.cos(lean) + 0.75 * math.tan(lean)] * 13)


def arrises(part: Part) -> tuple[Point, float, float]:
    """Length of the face at the frame and at the room, and along its joints [in]."""
    near, far = (part.corners[Arris(edge=edge, on_back=False)] for edge in (Edge.NEAR, Edge.FAR))
    (a, b), (c, d) = near, far
    return (math.dist(a, b), math.dist(c, d)), math.dist(a, c), math.dist(b, d)


@pytest.mark.parametrize("flare", ["5 deg", "15 deg", "45 deg"])
def test_the_faces_developed_are_the_sector_of_the_cone(flare: str) -> None:
    """Their joints are the slant of the frustum, R - r over sin a; laid side by side they fill the angle of its sector.

    A face of half angle h on a cone takes asin(sin h sin a) twice of it: a little less than 2 h sin a.
    """
    kit = flat("full round", flare).kit
    found, lean = of(kit), math.radians(float(flare.split()[0]))
    half, wide = math.radians(found.turn_deg / 2), RADIUS + DEPTH * math.tan(lean)
    inner, outer = RADIUS / math.sin(lean), wide / math.sin(lean)
    parts = [*segments(kit), *segments(kit, Side.SILL)]
    angle = 0.0
    for part in parts:
        chords, first, last = arrises(part)
        assert chords == pytest.approx((2 * RADIUS * math.sin(half), 2 * wide * math.sin(half)))
        assert (first, last) == pytest.approx((outer - inner, outer - inner))
        assert chords[0] / inner == pytest.approx(chords[1] / outer)
        angle += 2 * math.asin(chords[0] / 2 / inner)
    assert angle == pytest.approx(2 * math.pi * math.sin(lean), rel=0.003)


def test_the_opening_at_the_wall_is_the_larger_arch() -> None:
    """Casing goes round it: radius 15 5/8 + 1.96875 tan 15° = 16.1525, and 3/16 more at its inner edge."""
    kit = flat("half round").kit
    casing = next(part for part in kit.parts if part.kind is PartKind.CASING and part.arcs)
    assert min(arc.radius for arc in casing.arcs) == pytest.approx(16.1525 + 3 / 16, abs=1e-4)
    room = clear_path(kit.placement.opening, kit.room)[1]
    assert room.circle and room.circle.radius == pytest.approx(16.1525, abs=1e-4)
    wide = next(one.value for one in kit.figures if one.kind is FigureKind.FLARED_OPENING_WIDTH)
    assert wide == pytest.approx(2 * 16.1525, abs=1e-4)
    # Its spring line is level to the last bit, so that no leg of the casing is mitered by nothing.
    assert room.start[1] == room.finish[1]


@pytest.mark.parametrize("name", SHAPES)
def test_no_face_stands_out_of_the_cone(name: str) -> None:
    """At both edges corners lie on the arcs, and no corner, where a leg or a sill is met, outside of them."""
    kit = flat(name, "30 deg").kit
    found, opening, frame = of(kit), kit.placement.opening, kit.frames[0]
    depth = frame.sides[Side.HEAD].greatest + frame.proud
    for path, clear in ((found.path, frame.clear), (found.at(kit.flares, depth), kit.room)):
        arcs = clear_path(opening, clear)
        for i, at in found.arcs.items():
            circle = arcs[at].circle
            assert circle is not None
            corners = circle.past(path[i].start), circle.past(path[i].finish)
            assert max(corners) < 1e-9
            assert min(corners) > -found.off_room - 1e-9
            assert max(corners) > -1e-9


def test_ends_at_legs_that_flare_take_more_of_the_arc_at_the_wall() -> None:
    """Of a segment arch all chords take one angle at the room; at the frame those beside the legs are shorter."""
    kit = flat("segment arch", "30 deg").kit
    chords = [arrises(part)[0] for part in segments(kit)]
    assert chords[0][0] < chords[1][0] - 0.4 and chords[-1][0] == pytest.approx(chords[0][0])
    assert [far for _, far in chords] == pytest.approx([chords[1][1]] * len(chords))


def test_a_corner_beside_a_leg_turns_by_half_of_what_others_do() -> None:
    found = of(flat("half round").kit)
    turns = [corner_turn_deg(found.path, i) for i in range(len(found.path))]
    assert turns[:2] == pytest.approx([90.0, 90 / 13], abs=1e-6)
    assert turns[2:14] == pytest.approx([180 / 13] * 12)


def test_a_large_arc_is_in_segments_of_no_less_than_3_inches() -> None:
    """A clear radius of 9 5/8 would take 17 of 1 25/32 in to come within 1/8: it has nine of 3 11/32."""
    kit = flat("full round", openings__0__frame="24 x 24").kit
    chords = [arrises(part)[0][0] for part in segments(kit)]
    assert chords == pytest.approx([2 * 9.625 * math.sin(math.pi / 18)] * 9)
    assert of(kit).off_room > 1 / 8


def test_the_stool_is_notched_along_the_backs_of_flat_segments() -> None:
    """At the sill the first segment stands off upright and leans: its back is so much farther along the stool."""
    kit = flat_on_stool("half round without legs").kit
    found = of(kit)
    stool = next(part for part in kit.parts if part.kind is PartKind.STOOL)
    i = next(i for i, edge in enumerate(found.path) if edge.side is Side.SILL)
    lean, chord = math.radians(found.flares[i - 1]), found.path[i - 1]
    back = chord.finish[0] + 0.75 / math.cos(lean) / abs(chord.way[1])
    corners = {round(stool.seat.at(u, v, 0.0)[0], 6) for u, v in stool.outline}
    assert any(abs(x - back) < 1e-4 for x in corners)


def test_an_arc_that_stands_square_is_flat_segments_that_do_not_lean() -> None:
    path = clear_path(flat("half round").kit.placement.opening, flat("half round").kit.frames[0].clear)
    found = flat_round(path, Flares(), 4.0)
    assert set(found.flares.values()) == {0.0}
    assert found.off_frame == found.off_room
