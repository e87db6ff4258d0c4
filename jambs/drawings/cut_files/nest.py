"""A sheet of the cutting plan as a cut file: every part where the plan has it, a kerf apart, the grain along the sheet.

Origin: the left end of the sheet and the edge that is straightened first, as running lengths in the plan have them.
"""

from __future__ import annotations

from collections.abc import Iterator

from jambs.drawings.cut_files.figure import CutFigure, face_strokes
from jambs.drawings.cut_files.layers import CUT, NOTE, SHEET, CutLayer, Stroke, Words, Work
from jambs.drawings.cut_files.lettering import grain_arrow
from jambs.drawings.cut_files.notes import drawn_in, plain_letters
from jambs.geometry import Point
from jambs.length import FINE, Units, length_text
from jambs.outlines import rectangle
from jambs.parts.board.worked_faces import BoardFace, worked_face
from jambs.stock.house.house_pieces import CutPiece
from jambs.stock.house.house_plan import PlannedLot
from jambs.stock.plan import PlannedBoard
from jambs.stock.problem import LotKind

LETTERS, NOTES = 0.5, 0.6
"""Height of a mark and of the sheet's notes, at most [in]."""
MARK_SHARE = 0.3
"""Height of a mark as a share of the width of its part."""
LINE, LEAST = 1.7, 0.1
"""From one line of the notes to the next, in heights; letters under this [in] are not read: they go over the parts."""
LETTER = 0.95
"""Width of a letter as a share of its height, at most."""


def sheet_figures(planned: PlannedLot, *, units: Units, stamp: str = "") -> tuple[CutFigure, ...]:
    """Return a cut file for each sheet of a lot; none of a lot that is sawn from boards.

    ``stamp``: what the plan says of its issue, which every sheet says too.
    """
    if planned.lot.problem.kind is not LotKind.SHEETS:
        return ()
    return tuple(_Sheet(planned, board, units, stamp).figure() for board in planned.plan.boards)


class _Sheet:
    """One sheet of a plan: whole steps of the planner become inches."""

    def __init__(self, planned: PlannedLot, board: PlannedBoard, units: Units, stamp: str) -> None:
        self.lot, self.board, self.units, self.stamp = planned.lot, board, units, plain_letters(stamp)
        self.own = {one.piece.mark: one for one in planned.lot.pieces}
        self.at = FINE[units].at
        lumber = planned.lot.lumber_of(board.stock)
        self.size: Point = (lumber.length, lumber.width)

    def figure(self) -> CutFigure:
        sheet = Stroke(layer=SHEET, points=rectangle(*self.size))
        strokes, words = [sheet], []
        for mark, place in self._places():
            piece = self.own[mark]
            strokes += [one.moved(*place) for one in _strokes(piece, self.units)]
            words.append(_mark(piece, place))
        middle = (self.size[0] / 2, self.size[1] - self._free() / 2)
        return CutFigure(
            name=self.lot.board_mark(self.board.number),
            size=self.size,
            strokes=(*strokes, *grain_arrow(middle, self.size[0] / 4, min(1.0, self._free() / 4))),
            words=(*words, *self._notes()),
        )

    def _places(self) -> Iterator[tuple[str, Point]]:
        """Yield each piece with the corner at which its start end and near edge lie [in]."""
        for strip in self.board.strips:
            for piece in strip.pieces:
                yield piece.mark, (self.at(piece.start), self.at(strip.start))

    def _free(self) -> float:
        """Width that is left over past the last strip [in]."""
        last = self.board.strips[-1]
        return self.size[1] - self.at(last.start + last.width)

    def _notes(self) -> list[Words]:
        saw = self.lot.problem.saw
        apart = length_text(self.at(min(saw.rip_kerf, saw.crosscut_kerf)), units=self.units)
        mark = self.lot.board_mark(self.board.number)
        lines = [
            f"{mark}, {self.lot.title}, {drawn_in(self.units)}, grain along the arrow",
            f"parts stand {apart} apart and face up: no cutter thicker than that; ENGRAVE is off where faces are seen",
        ]
        if any(_is_left_wide(self.own[mark]) for mark, _ in self._places()):
            lines.append("+ : wider than the part, to be ripped when the wall is measured")
        lines += [self.stamp] if self.stamp else []
        fits = self._free() / (LINE * len(lines) + 1) if self._free() > LEAST * LINE * len(lines) else NOTES
        height = min(NOTES, self.size[0] / 2 / (LETTER * max(map(len, lines))), fits)
        return [
            Words(layer=NOTE, text=line, at=(height, self.size[1] - (number + 1) * LINE * height), height=height)
            for number, line in enumerate(lines)
        ]


def _is_left_wide(piece: CutPiece) -> bool:
    return piece.allowance > 0 or piece.longer > 0


def _strokes(piece: CutPiece, units: Units) -> tuple[Stroke, ...]:
    """Return what is cut of a piece: the part; of one that is cut to size later, or glued up, its blank."""
    if _is_left_wide(piece) or piece.glued:
        return (Stroke(layer=CUT, points=rectangle(piece.length, piece.width)),)
    return face_strokes(piece.part, units=units)


def _mark(piece: CutPiece, place: Point) -> Words:
    text = piece.piece.mark + ("+" if _is_left_wide(piece) else "")
    if worked_face(piece.part, BoardFace.BACK).is_worked:
        text += " (back too)"
    height = min(LETTERS, MARK_SHARE * piece.width, piece.length / (LETTER * (len(text) + 2)))
    u, v = place[0] + piece.length / 2, place[1] + piece.width / 2
    layer = CutLayer(work=Work.ENGRAVE, is_on=piece.part.kind.is_buck)
    return Words(layer=layer, text=text, at=(u - len(text) * LETTER * height / 2, v - height / 2), height=height)
