"""Along which arc of a path a straight board lies, by hand: a quarter of a circle, and beside it another.

Both arcs go round the origin, 10 from it: up from the left to the crown, down from there to the right. A tie between
them is the crown itself, which begins the second.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from jambs.job.models.path_edge import FrameEdge
from jambs.parts.board.cuts import Crosscut
from jambs.parts.board.edge_of import edge_of
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.sides import Side

ARC = FrameEdge(side=Side.HEAD, start=(-10.0, 0.0), finish=(0.0, 10.0), run=1, runs=2, center=(0.0, 0.0))
PATH = (
    FrameEdge(side=Side.LEFT, start=(-10.0, -9.0), finish=(-10.0, 0.0)),
    ARC,
    replace(ARC, start=(0.0, 10.0), finish=(10.0, 0.0), run=2),
    FrameEdge(side=Side.RIGHT, start=(10.0, 0.0), finish=(10.0, -9.0)),
    FrameEdge(side=Side.SILL, start=(10.0, -9.0), finish=(-10.0, -9.0)),
)


def board(start: float, length: float, side: Side = Side.HEAD) -> Part:
    """A board that lies level over the crown, from ``start`` on."""
    ways = {"along": (1.0, 0.0, 0.0), "across": (0.0, 0.0, -1.0), "through": (0.0, 1.0, 0.0)}
    blank, seat = PartBlank(stock="poplar", thickness=0.75), Seat(origin=(start, 10.0, 0.0), **ways)
    cuts = (Crosscut(length=length),)
    return Part(kind=PartKind.EXTENSION_JAMB, side=side, where=Where.INTERIOR, blank=blank, cuts=cuts, seat=seat)


@pytest.mark.parametrize(
    ("start", "length", "run"),
    [
        (-6.0, 4.0, 1),
        (2.0, 4.0, 2),
        (-5.0, 12.0, 2),  # a third of it lies on the first arc, its middle on the second
        (-7.0, 12.0, 1),
        (-6.0, 12.0, 2),  # its middle is the crown
    ],
)
def test_a_board_follows_the_arc_that_its_middle_lies_on(start: float, length: float, run: int) -> None:
    assert edge_of(board(start, length), PATH).run == run


def test_a_board_beside_arcs_has_the_straight_edge_of_its_side() -> None:
    assert edge_of(board(-6.0, 4.0, Side.SILL), PATH) is PATH[-1]
    assert edge_of(board(-6.0, 4.0, Side.LEFT), PATH) is PATH[0]
