"""The returned end of an apron, half size, seen from above: the miter, and the piece that turns it back to the wall."""

from __future__ import annotations

from collections.abc import Iterator

from jambs.drawings.elements.boxes import box_around
from jambs.drawings.elements.view import CallOut, Chain, Fill, Hatch, Ink, Interval, Shape, View, ViewKind, ViewSide
from jambs.drawings.views.close_ups import PAST_EDGE, broken_line
from jambs.geometry import Point
from jambs.length import decimal_text
from jambs.parts.board.cuts import EndBevel
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit

SHOWN = 0.5
"""How much of the board is shown past the miter [in]."""
WIDEST_WORDS = 0.75
"""Lines of call-outs are broken here [in on paper]."""
TURNED = "seen from above, inside at the left; left end its mirror image"


def return_details(kit: Kit) -> list[View]:
    """Make the detail of each board whose ends are returned to the wall; none where they are cut square."""
    return [_view(part) for part in kit.parts if part.is_returned]


def _view(part: Part) -> View:
    """Lay depth level, the finished wall at 0 and the room at the left; the right end of the board lies below."""
    thick = part.thickness
    top = thick + SHOWN
    long, short = (-thick, 0.0), (0.0, thick)
    board = (long, short, (0.0, top), (-thick, top))
    piece = (long, (0.0, 0.0), short)
    box = box_around((*board, *piece)).grown(PAST_EDGE)
    return View(
        name=f"return {part.mark}",
        kind=ViewKind.CORNER,
        title="Returned end, inside",
        shapes=(
            Shape(points=(board[3], long, short, board[2]), ink=Ink.TRIM_INSIDE, closed=False),
            Shape(points=piece, ink=Ink.TRIM_INSIDE),
            Shape(points=((0.0, box.bottom), (0.0, box.top)), ink=Ink.LAYERS, closed=False),
            broken_line(box),
        ),
        fills=(
            Fill(pieces=(board,), hatch=Hatch.TRIM, ink=Ink.HATCH_TRIM),
            Fill(pieces=(piece,), hatch=Hatch.TRIM_CROSSWISE, ink=Ink.HATCH_TRIM),
        ),
        chains=(_to_wall(long, (0.0, 0.0)),),
        call_outs=tuple(_names(part, top)),
        remarks=(TURNED,),
        half_size=True,
        widest_words=WIDEST_WORDS,
    )


def _to_wall(long: Point, at_wall: Point) -> Chain:
    """Dimension the piece from its long point, at the face of the board, to the wall."""
    return Chain(side=ViewSide.BOTTOM, intervals=(Interval(start=long, finish=at_wall),), after="return, long point")


def _names(part: Part, top: float) -> Iterator[CallOut]:
    """Name board, miter, piece and wall, from above down."""
    thick, right = part.thickness, ViewSide.RIGHT
    bevel = next(cut.angle_deg for cut in part.cuts if isinstance(cut, EndBevel))
    yield CallOut(target=(-thick / 2, (thick + top) / 2), lines=(f"{part.mark}  {part.name}",), side=right)
    yield CallOut(target=(0.0, thick), lines=("finished wall",), side=right, on_edge=True)
    yield CallOut(target=(-thick / 2, thick / 2), lines=(f"bevel {decimal_text(bevel, 1)}°",), side=right, on_edge=True)
    yield CallOut(target=(-thick / 4, thick / 4), lines=("return",), side=right)
