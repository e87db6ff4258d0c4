"""What each cut takes out of the face and out of the back of a board, by hand.

The board is 20 long, 4 wide and 1 thick. Seen from the back it is turned over about its length, so that what lies at
its near edge lies at the far one: v is 4 less what it was.
"""

from __future__ import annotations

from math import radians, tan

import pytest
from test_board_faces import board

from jambs.outlines import area
from jambs.parts.board.cuts import Cut, Edge, EdgeBevel, EdgeRabbet, End, EndBevel, EndRabbet, Groove, Tenon
from jambs.parts.board.worked_faces import BoardFace, worked_face

FACE, BACK = BoardFace.FACE, BoardFace.BACK
TAN_30 = tan(radians(30))
Box = tuple[float, float, float, float]


def _box(outline: tuple[tuple[float, float], ...]) -> Box:
    us, vs = [u for u, _ in outline], [v for _, v in outline]
    assert abs(area(outline)) == pytest.approx((max(us) - min(us)) * (max(vs) - min(vs))), "no box"
    return min(us), min(vs), max(us), max(vs)


@pytest.mark.parametrize(
    ("cut", "face", "box", "depth"),
    [
        (EndRabbet(end=End.START, along=0.75, depth=0.375), FACE, (0, 0, 0.75, 4), 0.375),
        (EndRabbet(end=End.FINISH, along=0.75, depth=0.375), FACE, (19.25, 0, 20, 4), 0.375),
        (EdgeRabbet(edge=Edge.NEAR, across=0.5, depth=0.25, from_back=False), FACE, (0, 0, 20, 0.5), 0.25),
        (EdgeRabbet(edge=Edge.FAR, across=0.5, depth=0.25, from_back=False), FACE, (0, 3.5, 20, 4), 0.25),
        (EdgeRabbet(edge=Edge.NEAR, across=0.5, depth=0.25, from_back=True), BACK, (0, 3.5, 20, 4), 0.25),
        (EdgeRabbet(edge=Edge.FAR, across=0.5, depth=0.25, from_back=True), BACK, (0, 0, 20, 0.5), 0.25),
        (Tenon(end=End.START, along=0.5, face=0.25, back=0.0), FACE, (0, 0, 0.5, 4), 0.25),
        (Tenon(end=End.FINISH, along=0.5, face=0.0, back=0.125), BACK, (19.5, 0, 20, 4), 0.125),
        (Groove(edge=Edge.NEAR, from_edge=0.5, width=0.25, depth=0.375), BACK, (0, 3.25, 20, 3.5), 0.375),
        (Groove(edge=Edge.FAR, from_edge=0.5, width=0.25, depth=0.375), BACK, (0, 0.5, 20, 0.75), 0.375),
    ],
)
def test_a_pocket_lies_in_one_face(cut: Cut, face: BoardFace, box: Box, depth: float) -> None:
    found = worked_face(board(cut), face)
    (pocket,) = found.pockets
    assert _box(pocket.outline) == pytest.approx(box)
    assert pocket.depth == depth
    assert found.is_worked and found.bevels == ()
    other = worked_face(board(cut), BACK if face is FACE else FACE)
    assert not other.is_worked and _box(other.outline) == (0.0, 0.0, 20.0, 4.0)


@pytest.mark.parametrize(
    ("cut", "face", "box"),
    [
        (EdgeBevel(edge=Edge.NEAR, angle_deg=30.0, face_short=True), FACE, (0, 0, 20, TAN_30)),
        (EdgeBevel(edge=Edge.FAR, angle_deg=30.0, face_short=True), FACE, (0, 4 - TAN_30, 20, 4)),
        (EdgeBevel(edge=Edge.NEAR, angle_deg=30.0, face_short=False), BACK, (0, 4 - TAN_30, 20, 4)),
        (EdgeBevel(edge=Edge.FAR, angle_deg=30.0, face_short=False), BACK, (0, 0, 20, TAN_30)),
        (EndBevel(end=End.START, angle_deg=30.0, face_short=True), FACE, (0, 0, TAN_30, 4)),
        (EndBevel(end=End.FINISH, angle_deg=30.0, face_short=False), BACK, (20 - TAN_30, 0, 20, 4)),
    ],
)
def test_a_bevel_goes_off_the_face_that_comes_out_short(cut: Cut, face: BoardFace, box: Box) -> None:
    found = worked_face(board(cut), face)
    (bevel,) = found.bevels
    assert _box(bevel.outline) == pytest.approx(box)
    assert bevel.angle_deg == 30.0
    assert not worked_face(board(cut), BACK if face is FACE else FACE).is_worked


def test_a_tenon_is_met_on_both_faces_with_its_own_depth() -> None:
    cut = board(Tenon(end=End.START, along=0.5, face=0.25, back=0.125))
    depths = [[one.depth for one in worked_face(cut, face).pockets] for face in BoardFace]
    assert depths == [[0.25], [0.125]]
