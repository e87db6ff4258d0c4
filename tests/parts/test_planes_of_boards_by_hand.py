"""Boards lie square in the wall, and their slanting cuts come out plumb, level or as long as they should."""

from __future__ import annotations

import math
from typing import Any

import pytest
from cases import METRIC, STOOL, kit_of, part_of
from gangs import ganged

from jambs.geometry import Outline, Plane, Vector
from jambs.outlines import area
from jambs.parts.board.cuts import (
    BoardSizes,
    Crosscut,
    Edge,
    EdgeBevel,
    EdgeRabbet,
    End,
    EndRabbet,
    PlaneCut,
    Rip,
    Taper,
)
from jambs.parts.board.kinds import Where
from jambs.parts.board.part import Part
from jambs.parts.board.sawing import saw
from jambs.parts.findings.style_findings import NarrowerThanSafe

NARROWER = NarrowerThanSafe.code
MITERED = {"thickness": "3/4", "stock": "poplar", "joint": "miter"}
OCTAGON: dict[str, Any] = {
    "openings__0__shape": "octagon",
    "openings__0__frame": "30 x 30",
    "openings__0__rough_opening": None,
    "exterior_trim__outside__sill": None,
    "interior_trim__inside__jamb": MITERED,
}
LINER = {"kind": "liner", "thickness": "3/4", "stock": "plywood"}
KITS: list[dict[str, Any]] = [
    {},
    {"interior_trim__inside": STOOL},
    METRIC,
    {"walls__main__buck": LINER},
    ganged(),
    OCTAGON,
    {"interior_trim__inside__jamb": MITERED, "interior_trim__inside__flare": {"sides": "20 deg", "head": "10 deg"}},
]


def dot(one: Vector, other: Vector) -> float:
    return sum(a * b for a, b in zip(one, other, strict=True))


@pytest.mark.parametrize("paths", KITS)
def test_the_three_ways_of_a_board_are_square_to_each_other_and_of_length_one(paths: dict[str, Any]) -> None:
    for part in kit_of(**paths).parts:
        ways = (part.seat.along, part.seat.across, part.seat.through)
        products = [dot(one, other) for one in ways for other in ways]
        assert products == pytest.approx([1, 0, 0, 0, 1, 0, 0, 0, 1], abs=1e-12), part


@pytest.mark.parametrize("paths", KITS)
def test_left_and_right_are_mirrored_about_the_middle_of_the_frame(paths: dict[str, Any]) -> None:
    """A window that is as its mirror has boards that are: each box of one has its twin across the middle."""
    kit = kit_of(**paths)
    width = kit.placement.opening.frame.width
    boxes = []
    for part in kit.parts:
        points = [part.seat.at(u, v, w) for u, v in part.outline for w in (0.0, part.thickness)]
        x, y, d = ([way(point[axis] for point in points) for way in (min, max)] for axis in range(3))
        boxes.append(((part.kind, part.where), x, y, d))
    for what, (left, right), y, d in boxes:
        twin = pytest.approx([width - right, width - left, *y, *d], abs=1e-6)
        assert any([*x, *other_y, *other_d] == twin for other, x, other_y, other_d in boxes if other == what), what


def exterior_sill() -> Part:
    return part_of(kit_of(), "exterior sill", "sill", Where.EXTERIOR)


def test_both_long_edges_of_a_sloping_sill_stand_plumb() -> None:
    """Each edge lies at one depth in the wall, at the top and at the bottom of it."""
    sill = exterior_sill()
    points = [sill.seat.at(0.0, v, w) for v, w in sill.profile]
    depths = sorted(depth for _, _, depth in points)
    assert depths[:2] == pytest.approx([depths[0]] * 2, abs=1e-9)
    assert depths[-2:] == pytest.approx([depths[-1]] * 2, abs=1e-9)
    # Out of 1 1/2 thick stock, 10 degrees: a plumb edge is 1 1/2 / cos 10° high.
    for edge in (depths[0], depths[-1]):
        heights = [y for _, y, depth in points if depth == pytest.approx(edge, abs=1e-9)]
        assert max(heights) - min(heights) == pytest.approx(1.5 / math.cos(math.radians(10)), abs=1e-9)


def test_a_sill_is_notched_alike_at_both_ends() -> None:
    sill = exterior_sill()
    there = {(round(u, 9), round(v, 9)) for u, v in sill.outline}
    assert there == {(round(sill.length - u, 9), v) for u, v in there}
    assert len(there) == 8


def test_a_taper_is_sawn_from_the_width_at_one_end_to_that_at_the_other_on_the_face() -> None:
    board = BoardSizes(length=48, width=4, thickness=0.75, start_width=3, finish_width=4)
    plane = Taper(start_width=3, finish_width=4).plane(board)
    assert (plane.start, plane.finish, plane.keep) == ((0, 3, 0), (48, 4, 0), (0, 0, 0))


@pytest.mark.parametrize(
    ("joint", "low", "high"),
    [
        # Clear from 2 1/2 - 1/8 to 47 1/2 - 2 1/2 + 1/8; legs through pass head and bottom by 3/4.
        ({"joint": "butt, head over legs"}, 2.375, 45.125),
        ({"joint": "butt, legs through"}, 1.625, 45.875),
    ],
)
def test_both_legs_of_a_jamb_reach_from_and_to_the_same_heights(joint: dict[str, str], low: float, high: float) -> None:
    kit = kit_of(interior_trim__inside__jamb={"thickness": "3/4", "stock": "poplar", **joint})
    for side in ("left leg", "right leg"):
        leg = part_of(kit, "extension jamb", side)
        heights = [leg.seat.at(u, v, 0.0)[1] for u, v in leg.outline]
        assert (min(heights), max(heights)) == (low, high)


def test_a_beveled_edge_is_planed_along_the_grain_and_nowhere_else() -> None:
    board = BoardSizes(length=48, width=4, thickness=0.75, start_width=4, finish_width=4)
    plane = EdgeBevel(edge=Edge.NEAR, angle_deg=10, face_short=True).plane(board)
    assert plane.way == (1, 0, 0)


def test_a_metric_saw_holds_what_is_twenty_wide_unless_the_shop_says_otherwise() -> None:
    """The boards of the metric window are 95 wide and more; casing of 20 is just held, casing of 19 is not."""

    def told(**paths: Any) -> bool:
        return NARROWER in {one.code for one in kit_of(**{**METRIC, **paths}).findings}

    assert not told()
    casing = {"thickness": "18", "stock": "pine", "corner": "miter"}
    widths = {width: told(interior_trim__inside__casing={**casing, "width": width}) for width in ("20", "19")}
    assert widths == {"20": False, "19": True}


def test_a_head_is_rabbeted_alike_at_both_ends_as_wide_as_the_legs_are_thick() -> None:
    """Legs 3/4 thick, rabbets 3/8 deep: from each end 3/4 along the whole width."""
    head = part_of(kit_of(), "extension jamb", "head")
    there = sorted((one.low[0], one.high[0], one.high[2] - one.low[2]) for one in head.pockets)
    assert there == [(0.0, 0.75, 0.375), (head.length - 0.75, head.length, 0.375)]


def test_the_back_of_an_apron_lies_on_the_finished_wall() -> None:
    """An apron 3/4 thick stands from the wall into the room."""
    apron = part_of(kit_of(interior_trim__inside=STOOL), "apron", "sill")
    depths = {apron.seat.at(u, v, w)[2] for u, v in apron.outline for w in (0.0, apron.thickness)}
    assert depths == {-0.75, 0.0}


BOARD = (Rip(width=4.0), Crosscut(length=10.0))
"""A board 10 x 4 and 3/4 thick."""


@pytest.mark.parametrize(
    ("end", "outline"),
    [
        (End.START, ((0.0, 0.375), (0.75, 0.375), (0.75, 0.0), (10.0, 0.0), (10.0, 0.75), (0.0, 0.75))),
        (End.FINISH, ((0.0, 0.0), (9.25, 0.0), (9.25, 0.375), (10.0, 0.375), (10.0, 0.75), (0.0, 0.75))),
    ],
)
def test_a_rabbet_is_taken_out_of_the_end_from_the_face(end: End, outline: Outline) -> None:
    """Seen from the edge, 3/4 along and 3/8 deep: face up at w = 0."""
    found = saw((*BOARD, EndRabbet(end=end, along=0.75, depth=0.375)), thickness=0.75)
    assert area(found.edge) == 10 * 0.75 - 0.75 * 0.375
    assert set(found.edge) == set(outline)


@pytest.mark.parametrize(
    ("edge", "from_back", "corner"),
    [
        (Edge.NEAR, False, ((0.5, 0.25), (0.5, 0.0), (0.0, 0.25))),
        (Edge.FAR, False, ((3.5, 0.25), (3.5, 0.0), (4.0, 0.25))),
        (Edge.NEAR, True, ((0.5, 0.5), (0.5, 0.75), (0.0, 0.5))),
        (Edge.FAR, True, ((3.5, 0.5), (3.5, 0.75), (4.0, 0.5))),
    ],
)
def test_a_rabbet_along_an_edge_by_hand(edge: Edge, from_back: bool, corner: Outline) -> None:
    """Seen from the end, 1/2 across and 1/4 deep, out of the face or the back: one corner makes three."""
    found = saw((*BOARD, EdgeRabbet(edge=edge, across=0.5, depth=0.25, from_back=from_back)), thickness=0.75)
    gone = (0.0 if edge is Edge.NEAR else 4.0, 0.75 if from_back else 0.0)
    assert set(found.end) == ({(0.0, 0.0), (4.0, 0.0), (4.0, 0.75), (0.0, 0.75)} - {gone}) | set(corner)


@pytest.mark.parametrize(("end", "at", "way"), [(End.START, 0.0, 1.0), (End.FINISH, 10.0, -1.0)])
def test_a_compound_cut_is_seen_on_the_face_where_it_leaves_the_board_longest(end: End, at: float, way: float) -> None:
    """4 across takes 2 along and 3/4 through takes 3/4: long point at the back, and there from (0, 0) to (2, 4).

    Laid out on the face it starts 3/4 farther in.
    """
    flat = Plane(
        start=(at + way * 0.75, 0.0, 0.0), finish=(at + way * 2.75, 4.0, 0.0), way=(-way * 0.75, 0.0, 0.75),
        keep=(5.0, 2.0, 0.375),
    )  # fmt: skip
    found = saw((*BOARD, PlaneCut(at=end, flat=flat)), thickness=0.75)
    assert area(found.face) == pytest.approx(10 * 4 - 2 * 4 / 2)
    assert area(found.edge) == pytest.approx(10 * 0.75 - 0.75 * 0.75 / 2)
    for corner in ((at, 0.0), (at + way * 2.0, 4.0)):
        assert any(one == pytest.approx(corner) for one in found.face)


def test_the_tongue_of_a_sill_lies_between_the_backs_of_the_jambs() -> None:
    """Clear 35 1/2 - 5 + 2 x 1/4 = 31, jambs 3/4: 32 1/2; casing 1/4 + 4 1/2 past it and horns of 1: 42 1/2 long."""
    sill = exterior_sill()
    assert sill.length == 42.5
    tongue = [u for u, v in sill.outline if v == 0.0]
    assert (min(tongue), max(tongue)) == (5.0, 37.5)


@pytest.mark.parametrize(
    ("below", "foot"), [({}, -0.25), ({"openings__0__sill_height": None, "openings__0__floor_below_frame": "3/4"}, 0.0)]
)
def test_exterior_legs_without_a_sill_go_past_a_window_and_stand_at_the_bottom_of_a_door(
    below: dict[str, Any], foot: float
) -> None:
    """A window's legs end a sealant joint of 1/4 below its frame; a door stands on its threshold."""
    three_sided = {key: value for key, value in STOOL.items() if key not in ("stool", "apron")} | {
        "style": "three-sided"
    }
    kit = kit_of(exterior_trim__outside__sill=None, interior_trim__inside=three_sided, **below)
    for side in ("left leg", "right leg"):
        leg = part_of(kit, "exterior extension jamb", side, Where.EXTERIOR)
        assert min(leg.seat.at(u, v, 0.0)[1] for u, v in leg.outline) == foot
