"""Boards along a path: the printed compound-angle chart, closed forms, the plain rectangle, paths that are none."""

from __future__ import annotations

import csv
import math
from dataclasses import replace
from pathlib import Path

import pytest

from jambs.geometry import Plane, Point
from jambs.parts.board.arrises import Arris, arris_lengths
from jambs.parts.board.cuts import Crosscut, Edge, EdgeBevel, End, EndBevel, EndRabbet, Miter, PlaneCut, Rip, saw_angles
from jambs.parts.board.sawing import board_sizes
from jambs.parts.shapes.opening_path import CornerJoint, PathEdge, lie, path_boards, path_fault, turn_deg
from jambs.parts.shapes.path_cuts import PathBoard, sawn_board
from jambs.sides import Side

CHART = Path(__file__).parents[1] / "authorities" / "compound_angles.csv"
THICKNESS, DEPTH = 0.75, 5.0
HALF_A_HUNDREDTH = 0.0061
"""Half of the last digit that the chart prints, and a little: some are rounded the wrong way [degrees]."""


def chart() -> list[tuple[float, int, float | None, float]]:
    lines = [line for line in CHART.read_text().splitlines() if not line.startswith("#")]
    return [
        (
            float(row["pitch_deg"]),
            int(row["sides"]),
            float(row["miter_deg"]) if row["miter_deg"] else None,
            float(row["bevel_deg"]),
        )
        for row in csv.DictReader(lines)
    ]


def regular(sides: int, flare_deg: float, *, radius: float = 20.0) -> tuple[PathEdge, ...]:
    """A regular frame, clockwise, all sides flared alike, all corners mitered."""
    corners = [
        (radius * math.cos(-2 * math.pi * i / sides), radius * math.sin(-2 * math.pi * i / sides)) for i in range(sides)
    ]
    return tuple(edge(corner, flare_deg) for corner in corners)


def edge(corner: Point, flare_deg: float, joint: CornerJoint = CornerJoint.MITER, rabbet: float = 0.0) -> PathEdge:
    return PathEdge(
        side=Side.HEAD,
        corner=corner,
        flare_deg=flare_deg,
        joint=joint,
        rabbet=rabbet,
        thickness=THICKNESS,
        depths=(DEPTH, DEPTH),
    )


def sawn(path: tuple[PathEdge, ...]) -> list[PathBoard]:
    return [sawn_board(board, 0.0) for board in path_boards(path)]


def end_planes(board: PathBoard) -> list[Plane]:
    return [cut.flat for cut in board.cuts if isinstance(cut, PlaneCut) and isinstance(cut.at, End)]


CELLS = [
    (row, setting) for row in chart() for setting in ("miter", "bevel") if row[2] is not None or setting == "bevel"
]


def test_the_chart_is_long_enough() -> None:
    assert len(CELLS) >= 60


@pytest.mark.parametrize("row", chart(), ids=lambda row: f"{row[1]} sides at {row[0]:g}")
def test_against_the_printed_chart_of_compound_angles(row: tuple[float, int, float | None, float]) -> None:
    """The general function and the closed form both give what the chart prints; its pitch is 90° less our flare."""
    pitch, sides, miter, bevel = row
    flare = math.radians(90.0 - pitch)
    closed = (
        math.degrees(math.atan(math.sin(flare) * math.tan(math.pi / sides))),
        math.degrees(math.asin(math.cos(flare) * math.sin(math.pi / sides))),
    )
    for board in sawn(regular(sides, 90.0 - pitch)):
        for plane in end_planes(board):
            found = saw_angles(plane)
            assert found == pytest.approx(closed, abs=1e-9)
            assert found[1] == pytest.approx(bevel, abs=HALF_A_HUNDREDTH)
            assert miter is None or found[0] == pytest.approx(miter, abs=HALF_A_HUNDREDTH)


@pytest.mark.parametrize("flare", [5.0, 15.0, 30.0, 60.0])
def test_width_and_length_of_a_regular_frame_by_closed_form(flare: float) -> None:
    """Slant = depth / cos; the blank is wider by thickness x tan; long point at the room, on the back."""
    radians = math.radians(flare)
    radius, sides = 20.0, 6
    for board in sawn(regular(sides, flare, radius=radius)):
        assert board.slant == pytest.approx((DEPTH / math.cos(radians),) * 2)
        assert board.width == pytest.approx(DEPTH / math.cos(radians) + THICKNESS * math.tan(radians))
        # The back at the room stands out of the frame's edge by depth x tan + thickness / cos; a side is 2 x out x tan.
        out = DEPTH * math.tan(radians) + THICKNESS / math.cos(radians)
        apothem = radius * math.cos(math.pi / sides)
        assert board.length == pytest.approx(2 * (apothem + out) * math.tan(math.pi / sides))


@pytest.mark.parametrize("depths", [(5.0, 4.0), (4.0, 5.0)])
def test_a_board_reaches_out_at_each_end_as_its_depth_there_does(depths: tuple[float, float]) -> None:
    """Four corners of 90° flared by 10°: a back at the room lies depth x tan + thickness / cos outside the frame.

    5 tan 10° + 0.75 / cos 10° = 1.6432 at the deep end, 4 tan 10° + 0.7616 = 1.4669 at the other; as wide as the deep
    one: 5 / cos 10° + 0.75 tan 10° = 5.2094.
    """
    flare = math.radians(10.0)
    corners = ((0.0, 0.0), (0.0, 40.0), (30.0, 40.0), (30.0, 0.0))
    path = tuple(replace(edge(corner, 10.0), depths=depths) for corner in corners)
    starts, finishes = (depth * math.tan(flare) + THICKNESS / math.cos(flare) for depth in depths)
    leg, head = sawn(path)[:2]
    assert (leg.length, head.length) == pytest.approx((40 + starts + finishes, 30 + starts + finishes))
    assert (leg.seat.origin[1], head.seat.origin[0]) == pytest.approx((-starts, -starts))
    assert leg.slant == pytest.approx([depth / math.cos(flare) for depth in depths])
    assert leg.width == head.width == pytest.approx(5 / math.cos(flare) + THICKNESS * math.tan(flare))
    assert next(cut.width for cut in leg.cuts if isinstance(cut, Rip)) == leg.width


@pytest.mark.parametrize("flare", [0.0, 10.0, 45.0])
@pytest.mark.parametrize("way", [(0.0, 2.0), (2.0, 0.0), (0.0, -2.0), (-2.0, 0.0)])
def test_no_direction_of_a_board_is_minus_nothing(way: Point, flare: float) -> None:
    """It would be written as ``-0.0``. The board looks to the right of its way, leaned out by its flare."""
    found = lie((1.0, 1.0), (1.0 + way[0], 1.0 + way[1]), flare)
    x, y = way[0] / 2, way[1] / 2
    sine, cosine = math.sin(math.radians(flare)), math.cos(math.radians(flare))
    assert found.along == (x, y, 0.0)
    assert found.outward == (-y, x, 0.0)
    assert found.through == pytest.approx((-y * cosine, x * cosine, sine))
    assert found.across == pytest.approx((-y * sine, x * sine, -cosine))
    ways = (found.along, found.across, found.through, found.outward)
    assert [one for several in ways for one in several if str(one) == "-0.0"] == []


def test_a_board_of_another_thickness_meets_at_both_arrises() -> None:
    """A half inch head on 3/4 in legs: the joint goes from the corner of the faces to that of the backs."""
    corners = ((0.0, 0.0), (0.0, 40.0), (30.0, 40.0), (30.0, 0.0))
    sizes = (0.75, 0.5, 0.75, 0.5)
    path = tuple(
        PathEdge(side=Side.HEAD, corner=corner, joint=CornerJoint.MITER, thickness=thick, depths=(4.0, 4.0))
        for corner, thick in zip(corners, sizes, strict=True)
    )
    leg, head = sawn(path)[:2]
    assert (leg.length, head.length) == pytest.approx((40.0 + 2 * 0.5, 30.0 + 2 * 0.75))
    bevels = [cut.angle_deg for cut in (*leg.cuts, *head.cuts) if isinstance(cut, EndBevel)]
    assert bevels == pytest.approx([math.degrees(math.atan(0.5 / 0.75))] * 2 + [math.degrees(math.atan(1.5))] * 2)


def test_a_rectangle_without_flare_is_the_plain_case() -> None:
    corners = ((1.0, 2.0), (1.0, 42.0), (31.0, 42.0), (31.0, 2.0))
    mitered = sawn(tuple(edge(corner, 0.0) for corner in corners))
    assert [board.length for board in mitered] == [41.5, 31.5, 41.5, 31.5]
    assert mitered[0].cuts == (
        Rip(width=DEPTH),
        Crosscut(length=41.5),
        EndBevel(end=End.START, angle_deg=45.0, face_short=True),
        EndBevel(end=End.FINISH, angle_deg=45.0, face_short=True),
    )
    butted = [CornerJoint.BEFORE_RUNS_THROUGH, CornerJoint.AFTER_RUNS_THROUGH] * 2
    plain = sawn(tuple(edge(corner, 0.0, joint) for corner, joint in zip(corners, butted, strict=True)))
    assert [board.length for board in plain] == [40.0, 31.5, 40.0, 31.5]
    assert all(board.cuts == (Rip(width=DEPTH), Crosscut(length=board.length)) for board in plain)
    assert [board.seat.origin for board in plain] == [
        (1.0, 2.0, 0.0),
        (0.25, 42.0, 0.0),
        (31.0, 42.0, 0.0),
        (31.75, 2.0, 0.0),
    ]
    let_in = sawn(tuple(edge(corner, 0.0, joint, 0.375) for corner, joint in zip(corners, butted, strict=True)))
    assert [board.length for board in let_in] == [40.75, 31.5, 40.75, 31.5]
    assert let_in[1].cuts[2:] == tuple(EndRabbet(end=end, along=THICKNESS, depth=0.375) for end in End)


def test_a_raked_corner_without_flare_is_a_plain_bevel() -> None:
    """Half the angle at which the edges meet: a head that rises 30° over an upright leg turns 60° there."""
    rise = math.tan(math.radians(30))
    path = tuple(edge(corner, 0.0) for corner in ((0.0, 0.0), (0.0, 40.0), (30.0, 40.0 + 30 * rise), (30.0, 0.0)))
    assert turn_deg(tuple(one.corner for one in path), 1) == pytest.approx(60.0)
    leg = sawn(path)[0]
    bevels = [cut for cut in leg.cuts if isinstance(cut, EndBevel)]
    assert [cut.angle_deg for cut in bevels] == pytest.approx([45.0, 30.0])
    assert all(cut.face_short for cut in bevels) and len(leg.cuts) == 4


def test_legs_flared_under_a_plumb_head_are_mitered_by_hand() -> None:
    """Legs at 20°, head at none: the joint leans from the corner of the faces to that of the backs.

    It is square to the difference of the two directions that stand square on the faces, (-cos 20, 0, sin 20) and
    (0, 1, 0). On the leg: 1 along, 0 across, 1 through, so an end bevel of 45°; on the head: cos 20, sin 20, 1.
    """
    corners = ((0.0, 0.0), (0.0, 40.0), (30.0, 40.0), (30.0, 0.0))
    flares = (20.0, 0.0, 20.0, 0.0)
    leg, head = sawn(tuple(edge(corner, flare) for corner, flare in zip(corners, flares, strict=True)))[:2]
    assert [type(cut) for cut in leg.cuts] == [Rip, EdgeBevel, EdgeBevel, Crosscut, EndBevel, EndBevel]
    assert [cut.angle_deg for cut in leg.cuts if isinstance(cut, EndBevel)] == pytest.approx([45.0, 45.0])
    sine, cosine = math.sin(math.radians(20)), math.cos(math.radians(20))
    for plane in end_planes(head):
        assert saw_angles(plane) == pytest.approx(
            (math.degrees(math.atan(sine / cosine)), math.degrees(math.asin(math.sqrt(0.5))))
        )
    # Head: its far back corners stand out by depth tan 20 + thickness (1 + sin 20) / cos 20 ... at w = thickness.
    assert head.length == pytest.approx(30 + 2 * (DEPTH * sine / cosine + THICKNESS / cosine))


def test_a_miter_that_is_flat_on_the_bench() -> None:
    """A head that leans by all of its flare over legs that stand square: its end is the leg's face, off square."""
    corners = ((0.0, 0.0), (0.0, 40.0), (30.0, 40.0), (30.0, 0.0))
    joints = (CornerJoint.BEFORE_RUNS_THROUGH,) * 4
    flares = (0.0, 15.0, 0.0, 0.0)
    path = tuple(edge(*one) for one in zip(corners, flares, joints, strict=True))
    leg, head = sawn(path)[:2]
    # The head stops on the left leg and runs through past the right one; the leg runs past the head's leaning back.
    miter = leg.cuts[-1]
    assert isinstance(miter, Miter) and (miter.end, miter.long_edge) == (End.FINISH, Edge.FAR)
    assert miter.angle_deg == pytest.approx(15.0)
    assert head.length == pytest.approx(30.0 + THICKNESS)
    assert leg.length == pytest.approx(40 + DEPTH * math.tan(math.radians(15)) + THICKNESS / math.cos(math.radians(15)))


def test_the_long_points_of_a_flared_board_are_those_of_its_bevelled_edges() -> None:
    board = sawn(regular(4, 20.0))[0]
    sizes_of = [cut for cut in board.cuts if isinstance(cut, Crosscut)]
    lengths = arris_lengths(board_sizes(board.cuts, thickness=THICKNESS), board.cuts)
    assert max(lengths.values()) == pytest.approx(sizes_of[0].length)
    edge_of_path = 20.0 * math.sqrt(2)
    assert lengths[Arris(edge=Edge.NEAR, on_back=False)] == pytest.approx(edge_of_path)
    room = edge_of_path + 2 * DEPTH * math.tan(math.radians(20))
    assert lengths[Arris(edge=Edge.FAR, on_back=False)] == pytest.approx(room)


@pytest.mark.parametrize(
    ("corners", "words"),
    [
        (((0.0, 0.0), (0.0, 1.0)), "a path of 2 corners closes round nothing"),
        (((0.0, 0.0), (0.0, 2.0), (0.0, 2.0), (2.0, 0.0)), "corners 2 and 3 are one point"),
        (((0.0, 0.0), (2.0, 2.0), (2.0, 0.0), (0.0, 2.0)), "the path crosses itself"),
        (((0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0)), "the path runs counterclockwise"),
        (((0.0, 0.0), (0.0, 1.0), (0.0, 2.0), (2.0, 2.0), (2.0, 0.0)), "corner 2 lies on a straight edge"),
    ],
)
def test_paths_that_are_none(corners: tuple[Point, ...], words: str) -> None:
    assert path_fault(corners).startswith(words)
    with pytest.raises(ValueError, match=words):
        path_boards(tuple(edge(corner, 0.0) for corner in corners))


def test_a_good_path_has_no_fault() -> None:
    assert path_fault(((0.0, 0.0), (0.0, 2.0), (2.0, 2.0), (2.0, 0.0))) == ""


@pytest.mark.parametrize(("corner", "turn"), [(0, 90.0), (1, 126.8699), (2, 143.1301)])
def test_turns_of_a_three_four_five_triangle(corner: int, turn: float) -> None:
    """Up 3, down to 4 across, back: 90°, 180° - atan(4/3), 180° - atan(3/4); together once round."""
    assert turn_deg(((0.0, 0.0), (0.0, 3.0), (4.0, 0.0)), corner) == pytest.approx(turn, abs=1e-4)


def test_a_path_of_three_corners_closes_round_a_triangle() -> None:
    """Up the plumb leg of a 3-4-5 triangle and down its slope; two corners are a line there and back."""
    triangle = ((0.0, 0.0), (0.0, 4.0), (3.0, 0.0))
    assert path_fault(triangle) == ""
    assert path_fault(triangle[:2]).startswith("a path of 2 corners closes round nothing")


def test_corners_on_one_line_are_told_as_such() -> None:
    """They go round nothing, neither clockwise nor the other way."""
    assert path_fault(((0.0, 0.0), (1.0, 0.0), (2.0, 0.0))) == "corner 2 lies on a straight edge; leave it out"


@pytest.mark.parametrize(("degrees", "is_fault"), [(0.99, True), (1.01, False), (1.5, False), (-0.99, True)])
def test_an_edge_that_hardly_turns_is_one_with_the_next(degrees: float, is_fault: bool) -> None:
    """Under a degree a corner is none: which one it is, is said."""
    up = 15 * math.tan(math.radians(degrees) / 2)
    fault = path_fault(((0.0, 0.0), (0.0, 40.0), (15.0, 40.0 + up), (30.0, 40.0), (30.0, 0.0)))
    assert fault == ("corner 3 lies on a straight edge; leave it out" if is_fault else "")
