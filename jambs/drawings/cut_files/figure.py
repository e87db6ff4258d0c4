"""What stands in a cut file: closed outlines by the work they ask for, the grain, the mark, and what to know; inches.

Origin: the start end and the edge that is near as the board lies. The board's own box is the box of the drawing; the
notes stand inside it, or above it where they could not be read inside.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from jambs.arcs import with_arcs
from jambs.drawings.cut_files.layers import CUT, ENGRAVED, NOTE, OUTLINE, CutLayer, Stroke, Words, Work
from jambs.drawings.cut_files.lettering import (
    LETTER,
    LINE,
    MARK,
    READ,
    TALLEST,
    clear_band,
    letters_high,
    words_and_arrow,
)
from jambs.drawings.cut_files.notes import drawn_in, file_name, note_lines, own_lines, plain_letters, size_told
from jambs.geometry import Outline, Point
from jambs.length import Grid, Units, decimal_text, length_text
from jambs.parts.board.bending_form import bending_form
from jambs.parts.board.part import Part
from jambs.parts.board.worked_faces import BoardFace, FlatBevel, FlatPocket, WorkedFace, worked_face


@dataclass(frozen=True, slots=True, kw_only=True)
class CutFigure:
    """Everything that stands in one cut file, in inches; ``name``: of the file, without its ending."""

    name: str
    size: Point
    strokes: tuple[Stroke, ...]
    words: tuple[Words, ...]

    @property
    def layers(self) -> tuple[CutLayer, ...]:
        """The layers that are used, each once."""
        used = [one.layer for one in self.strokes] + [one.layer for one in self.words]
        return tuple(dict.fromkeys(used))

    @property
    def shown(self) -> Point:
        """Upper right corner of what is shown, notes above the board among it [in]."""
        ends = [(one.at[0] + LETTER * one.height * len(one.text), one.at[1] + one.height) for one in self.words]
        return (max(self.size[0], *(u for u, _ in ends)), max(self.size[1], *(v for _, v in ends)))


def part_figures(
    part: Part, *, units: Units, notes: Sequence[str] = (), grid: Grid | None = None
) -> tuple[CutFigure, ...]:
    """Return the cut files of a part of wood: seen on its face, and on its back where that is worked too.

    ``notes``: what stands first among the notes in the file. ``grid``: the shop's, on which the notes tell the sizes of
    the part as its cut sheet and its label do; what is drawn is exact.
    """
    if part.is_laminated:
        return (_form(part, units, [plain_letters(note) for note in notes], grid),)
    if part.is_sawn_on_edge:
        return (_on_edge(part, units, [plain_letters(note) for note in notes], grid),)
    back = worked_face(part, BoardFace.BACK)
    plain = [plain_letters(note) for note in notes]
    shown = (back if face is BoardFace.BACK else worked_face(part, face) for face in faces_cut(part))
    return tuple(_figure(part, one, units, [*plain, *note_lines(part, one, units, back, grid)]) for one in shown)


def faces_cut(part: Part) -> tuple[BoardFace, ...]:
    """Return the faces that a part of wood has a cut file of."""
    is_seen_once = part.is_laminated or part.is_sawn_on_edge
    if is_seen_once or not worked_face(part, BoardFace.BACK).is_worked:
        return (BoardFace.FACE,)
    return (BoardFace.FACE, BoardFace.BACK)


def has_shape(part: Part) -> bool:
    """Say whether a part is of wood and more than a plain board, so that a machine has something to follow."""
    return part.is_wood and not part.is_plain


def _figure(part: Part, worked: WorkedFace, units: Units, notes: Sequence[str]) -> CutFigure:
    is_face = worked.face is BoardFace.FACE
    outline = _outline(CUT if is_face else OUTLINE, worked.outline)
    work = [*_pockets(worked.pockets, units), *_bevels(worked.bevels)]
    sizes = part.silhouettes.sizes
    middle = min(sizes.start_width, sizes.finish_width) / 2
    if not is_face:
        middle = sizes.width - middle
    arrow, words = words_and_arrow(part, notes, middle, has_engraving_on=_hides(part, worked))
    return CutFigure(
        name=file_name(part.mark, worked.face),
        size=(sizes.length, sizes.width),
        strokes=(outline, *work, *arrow),
        words=words,
    )


def _outline(layer: CutLayer, points: Outline) -> Stroke:
    """Return the outline of a board, its arcs as arcs."""
    found = with_arcs(points)
    return Stroke(layer=layer, points=found.points, bulges=found.bulges)


LEFT_HALF = 0.6
"""How much of a form's half its notes may take: they end before the center line and begin within the outline."""


def _form(part: Part, units: Units, notes: Sequence[str], grid: Grid | None) -> CutFigure:
    """Return the cut file of the form that a part is bent over, center line and spring lines to be marked on it."""
    form = bending_form(part)
    wide, high = form.size
    pieces = part.blank.plies.pieces if part.blank.plies else ()
    told = f"radius {size_told(form.radius, units, grid)}"
    if pieces:
        told = "radii " + ", ".join(size_told(one, units, grid) for one, _ in pieces)
    lines = [*notes, f"form to bend {part.mark} over, {told}", drawn_in(units)]
    middle, longest = form.crown[0], LETTER * max(map(len, lines))
    # Left of the center line, which is engraved: no word lies over it.
    height = min(TALLEST, LEFT_HALF * middle / longest)
    left = middle - (longest + 1) * height
    words = tuple(
        Words(layer=NOTE, text=line, at=(left, high / 2 - number * LINE * height), height=height)
        for number, line in enumerate(lines)
    )
    center_line = ((middle, 0.0), form.crown)
    marked = (Stroke(layer=ENGRAVED, points=line, is_closed=False) for line in (center_line, *form.spring_lines))
    strokes = (_outline(CUT, form.outline), *marked)
    return CutFigure(name=file_name(part.mark, BoardFace.FACE), size=(wide, high), strokes=strokes, words=words)


def _on_edge(part: Part, units: Units, notes: Sequence[str], grid: Grid | None) -> CutFigure:
    """Return the cut file of a board whose face and back are sawn to arcs: its edge, on which it stands."""
    sizes = part.silhouettes.sizes
    lines = [
        *notes,
        *own_lines(part, units, grid),
        f"ON EDGE: cut {size_told(sizes.width, units, grid)} deep, hollow face at 0",
    ]
    outline = part.curved_outline
    share, low, high = clear_band(outline, max(len(line) for line in lines), len(lines))
    if letters_high(part.mark, lines, high - low, share * sizes.length) < READ:
        # The notes go above: a place for the mark.
        share, low, high = clear_band(outline, math.ceil(MARK * len(part.mark)), 0)
    arrow, words = words_and_arrow(
        part, lines, (high - low) / 2, has_engraving_on=False, across=high - low, low=low, share=share
    )
    return CutFigure(
        name=file_name(part.mark, BoardFace.FACE),
        size=(sizes.length, sizes.thickness),
        strokes=(_outline(CUT, outline), *arrow),
        words=words,
    )


def face_strokes(part: Part, *, units: Units) -> tuple[Stroke, ...]:
    """Return what is cut from the face of a part: its outline, its pockets, its bevels."""
    worked = worked_face(part, BoardFace.FACE)
    outline = _outline(CUT, worked.outline)
    return (outline, *_pockets(worked.pockets, units), *_bevels(worked.bevels))


def _hides(part: Part, worked: WorkedFace) -> bool:
    """Say whether what lies up is never seen in the finished wall, so that a mark may be cut into it."""
    return part.kind.is_buck or worked.face is BoardFace.BACK


def depth_layer(depth: float, *, units: Units) -> CutLayer:
    """Return the layer of pockets of a depth [in]."""
    return CutLayer(work=Work.POCKET, size=length_text(depth, units=units))


def _pockets(pockets: Sequence[FlatPocket], units: Units) -> Iterator[Stroke]:
    for one in pockets:
        yield Stroke(layer=depth_layer(one.depth, units=units), points=one.outline)


def _bevels(bevels: Sequence[FlatBevel]) -> Iterator[Stroke]:
    for one in bevels:
        layer = CutLayer(work=Work.BEVEL, size=decimal_text(one.angle_deg, 2))
        yield Stroke(layer=layer, points=one.outline)
