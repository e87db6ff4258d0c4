"""What stands in a cut file: closed outlines by the work they ask for, the grain, the mark, and what to know; inches.

Origin: the start end and the edge that is near as the board lies. The board's own box is the box of the drawing; the
notes stand inside it, or above it where they could not be read inside. All words are plain
letters, which every reader has.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from enum import Enum

from jambs.arcs import with_arcs
from jambs.geometry import Outline, Point
from jambs.length import Grid, Units, decimal_text, length_text
from jambs.parts.board.bending_form import bending_form
from jambs.parts.board.cuts import EdgeGroove, MidNotch, Notch
from jambs.parts.board.kinds import told_name, told_position
from jambs.parts.board.part import Part
from jambs.parts.board.worked_faces import BoardFace, FlatBevel, FlatPocket, WorkedFace, worked_face


class Work(Enum):
    """What a machine does along the outlines of a layer."""

    CUT = "CUT"
    POCKET = "POCKET"
    BEVEL = "BEVEL"
    ENGRAVE = "ENGRAVE"
    GRAIN = "GRAIN"
    NOTE = "NOTE"
    OUTLINE = "OUTLINE"
    SHEET = "SHEET"


@dataclass(frozen=True, slots=True, kw_only=True)
class CutLayer:
    """A layer of a cut file: the work, the size that goes with it, and whether it is shown when the file is opened.

    ``size``: how deep or how many degrees, as words.
    """

    work: Work
    size: str = ""
    is_on: bool = True

    @property
    def name(self) -> str:
        """The layer's name: ``POCKET 3-8 DEEP``. No name of a layer may hold a slash or an inch mark."""
        words = (self.work.value, self.size.replace("/", "-").replace('"', "").upper(), _BEHIND.get(self.work, ""))
        return " ".join(word for word in words if word)

    @property
    def old_name(self) -> str:
        """The name in the oldest files, where it holds no space and no point either: ``POCKET_3-8_DEEP``."""
        return self.name.replace(" ", "_").replace(".", "_")


_BEHIND = {Work.POCKET: "DEEP"}
ENGRAVED = CutLayer(work=Work.ENGRAVE)
CUT, GRAIN, NOTE = CutLayer(work=Work.CUT), CutLayer(work=Work.GRAIN), CutLayer(work=Work.NOTE)
OUTLINE, SHEET = CutLayer(work=Work.OUTLINE), CutLayer(work=Work.SHEET)


@dataclass(frozen=True, slots=True, kw_only=True)
class Stroke:
    """A line on a layer [in]; what is closed is an outline, counter-clockwise.

    ``bulges``: tangent of a quarter of the arc from each point on, where pieces are arcs; 0 of a straight piece.
    """

    layer: CutLayer
    points: tuple[Point, ...]
    is_closed: bool = True
    bulges: tuple[float, ...] = ()

    def moved(self, u: float, v: float) -> Stroke:
        """Return the stroke moved along and across [in]."""
        return replace(self, points=tuple((x + u, y + v) for x, y in self.points))


@dataclass(frozen=True, slots=True, kw_only=True)
class Words:
    """A line of words on a layer: its lower left corner and the height of its letters [in]."""

    layer: CutLayer
    text: str
    at: Point
    height: float


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


_PLAIN = str.maketrans({"–": "-", "·": "-", "×": "x"})
LETTER = 0.85
"""Width of a letter as a share of its height, at most: words are kept within the board by it."""
LINE = 1.7
"""From one line of words to the next, in heights."""
TALLEST, LEAST = 0.3, 0.04
"""Letters on the board: the notes at their tallest, a mark at its least [in]."""
READ = 0.1
"""Notes on the board are at least so high: ISO 3098 begins little lower, at 2.5 mm and 1.8 mm (from memory) [in]."""
ABOVE = 0.2
"""Height of notes that stand above a board on which they would be lower [in]."""
MARK = 1.6
"""Height of the mark, in heights of the notes under it."""
ARROW_SHARE, ARROW_HEAD = 0.3, 0.12
"""The grain arrow: its length as a share of the board's, its head as a share of the arrow's."""
WORDS_SHARE = 0.6
"""Share of the board's length that words may take: ends are often notched or slanted."""


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
    face, back = worked_face(part, BoardFace.FACE), worked_face(part, BoardFace.BACK)
    plain = [plain_letters(note) for note in notes]
    shown = (face, back) if back.is_worked else (face,)
    return tuple(_figure(part, one, units, [*plain, *_note_lines(part, one, units, back, grid)]) for one in shown)


def plain_letters(text: str) -> str:
    """Return a text in letters that every reader has."""
    return text.translate(_PLAIN)


def has_shape(part: Part) -> bool:
    """Say whether a part is of wood and more than a plain board, so that a machine has something to follow."""
    return part.is_wood and not part.is_plain


def file_name(mark: str, face: BoardFace) -> str:
    """Return the name of a cut file without its ending: ``W02-1``, ``W02-1 back``."""
    return mark if face is BoardFace.FACE else f"{mark} {face.value}"


def _figure(part: Part, worked: WorkedFace, units: Units, notes: Sequence[str]) -> CutFigure:
    is_face = worked.face is BoardFace.FACE
    outline = _outline(CUT if is_face else OUTLINE, worked.outline)
    work = [*_pockets(worked.pockets, units), *_bevels(worked.bevels)]
    sizes = part.silhouettes.sizes
    middle = min(sizes.start_width, sizes.finish_width) / 2
    if not is_face:
        middle = sizes.width - middle
    arrow, words = _inside(part, notes, middle, has_engraving_on=_hides(part, worked))
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


def _form(part: Part, units: Units, notes: Sequence[str], grid: Grid | None) -> CutFigure:
    """Return the cut file of the form that a part is bent over, center line and spring lines to be marked on it."""
    form = bending_form(part)
    wide, high = form.size
    pieces = part.blank.plies.pieces if part.blank.plies else ()
    told = f"radius {_told(form.radius, units, grid)}"
    if pieces:
        told = "radii " + ", ".join(_told(one, units, grid) for one, _ in pieces)
    lines = [*notes, f"form to bend {part.mark} over, {told}", drawn_in(units)]
    words = tuple(
        Words(layer=NOTE, text=line, at=(wide / 4, high / 2 - number * LINE * TALLEST), height=TALLEST)
        for number, line in enumerate(lines)
    )
    center_line = ((form.crown[0], 0.0), form.crown)
    marked = (Stroke(layer=ENGRAVED, points=line, is_closed=False) for line in (center_line, *form.spring_lines))
    strokes = (_outline(CUT, form.outline), *marked)
    return CutFigure(name=file_name(part.mark, BoardFace.FACE), size=(wide, high), strokes=strokes, words=words)


def _on_edge(part: Part, units: Units, notes: Sequence[str], grid: Grid | None) -> CutFigure:
    """Return the cut file of a board whose face and back are sawn to arcs: its edge, on which it stands."""
    sizes = part.silhouettes.sizes
    lines = [
        *notes,
        *_own_lines(part, units, grid),
        f"ON EDGE: cut {_told(sizes.width, units, grid)} deep, hollow face at 0",
    ]
    outline = part.curved_outline
    share, low, high = _clear_band(outline, max(len(line) for line in lines), len(lines))
    if _letters(part.mark, lines, high - low, share * sizes.length) < READ:  # the notes go above: a place for the mark
        share, low, high = _clear_band(outline, math.ceil(MARK * len(part.mark)), 0)
    arrow, words = _inside(
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


# ---- words and arrow, within the board


def _clear_band(outline: Outline, longest: int, count: int) -> tuple[float, float, float]:
    """Return where words stand tallest in an outline that bows: their share of its length, and from where to where up.

    ``longest``, ``count``: letters of the longest line, lines.
    """
    length = max(u for u, _ in outline)

    def band(share: float) -> tuple[float, float]:
        places = [length * (0.5 + share * at / BAND_STEPS) for at in range(-BAND_STEPS // 2, BAND_STEPS // 2 + 1)]
        rungs = [_rung(outline, u) for u in places]
        return max(low for low, _ in rungs), min(high for _, high in rungs)

    def letters(share: float) -> float:
        low, high = band(share)
        return min((high - low) / (LINE * (count + 4)), share * length / (longest * LETTER))

    best = max((number * WORDS_SHARE / BAND_STEPS for number in range(1, BAND_STEPS + 1)), key=letters)
    return (best, *band(best))


def _rung(outline: Outline, at: float) -> tuple[float, float]:
    """Return between what heights an outline lies at a place along it [in]."""
    edges = zip(outline, (*outline[1:], outline[0]), strict=True)
    met = [
        v0 + (v1 - v0) * (at - u0) / (u1 - u0)
        for (u0, v0), (u1, v1) in edges
        if min(u0, u1) <= at <= max(u0, u1) and u0 != u1
    ]
    return min(met), max(met)


BAND_STEPS = 24
"""Shares of the length that are tried for words, and places at which each is held to the outline."""


def _inside(
    part: Part,
    lines: Sequence[str],
    middle: float,
    *,
    has_engraving_on: bool,
    across: float | None = None,
    low: float = 0.0,
    share: float = WORDS_SHARE,
) -> tuple[list[Stroke], tuple[Words, ...]]:
    """Return arrow, mark and notes, one below the other about the middle of the board; or the notes above it.

    ``low``: from the near edge to where words may begin [in]; ``share``: of the board's length that they may take.
    """
    wide = part.width if across is None else across
    length, room = part.length, 2 * min(middle, wide - middle)
    is_above = _letters(part.mark, lines, room, share * length) < READ
    inside = () if is_above else lines
    height = max(_letters(part.mark, inside, room, share * length), LEAST)
    pitch = LINE * height
    top = low + middle + pitch * (len(inside) + 3) / 2
    engrave = CutLayer(work=Work.ENGRAVE, is_on=has_engraving_on)
    left = length / 2 - _longest(part.mark, inside) * LETTER * height / 2
    mark = Words(layer=engrave, text=part.mark, at=(left, top - 2.5 * pitch), height=MARK * height)
    notes = [
        Words(layer=NOTE, text=line, at=(left, top - (number + 3.5) * pitch), height=height)
        for number, line in enumerate(inside)
    ]
    if is_above:
        notes = _above(
            lines, part.silhouettes.sizes.thickness if part.is_sawn_on_edge else part.silhouettes.sizes.width
        )
    return grain_arrow((length / 2, top - pitch / 2), min(ARROW_SHARE, share) * length, pitch), (mark, *notes)


def _longest(mark: str, lines: Sequence[str]) -> float:
    return max(MARK * len(mark), *(len(line) for line in lines)) if lines else MARK * len(mark)


def _letters(mark: str, lines: Sequence[str], room: float, along: float) -> float:
    """Return how high letters are that fit ``room`` across the board under arrow and mark, and ``along`` it [in]."""
    return min(room / (LINE * (len(lines) + 4)), along / (_longest(mark, lines) * LETTER), TALLEST)


def _above(lines: Sequence[str], top: float) -> list[Words]:
    """Return notes above a board, ``top``: its upper edge [in]."""
    lowest = top + ABOVE
    return [
        Words(layer=NOTE, text=line, at=(0.0, lowest + number * LINE * ABOVE), height=ABOVE)
        for number, line in zip(reversed(range(len(lines))), lines, strict=True)
    ]


def grain_arrow(middle: Point, length: float, wide: float) -> list[Stroke]:
    """Return an arrow along the grain, pointing from the start end to the finish end."""
    (u, v), half = middle, length / 2
    head, side = min(ARROW_HEAD * length, 2 * wide), wide / 3
    tip = (u + half, v)
    return [
        Stroke(layer=GRAIN, points=((u - half, v), tip), is_closed=False),
        Stroke(layer=GRAIN, points=((tip[0] - head, v + side), tip, (tip[0] - head, v - side)), is_closed=False),
    ]


def _note_lines(part: Part, worked: WorkedFace, units: Units, back: WorkedFace, grid: Grid | None = None) -> list[str]:
    """Return what has to be known at the machine."""
    lines = _own_lines(part, units, grid)
    if worked.face is BoardFace.BACK:
        lines.append("BACK UP: turned over about its length, start end still at 0; OUTLINE is cut from the face")
    else:
        lines += _face_lines(part, back, units)
    return lines


def _told(length: float, units: Units, grid: Grid | None) -> str:
    """Print a size of a part as its cut sheet does, on the shop's grid."""
    return grid.text(length) if grid else length_text(length, units=units)


def _own_lines(part: Part, units: Units, grid: Grid | None) -> list[str]:
    """Say what part it is, of what sizes, and how it is drawn."""
    name, where = told_name(part.name, part.where.value), told_position(part.name, part.position)
    sizes = " x ".join(_told(one, units, grid) for one in (part.thickness, part.width, part.length))
    return [
        ", ".join(one for one in (part.mark, name, where, part.stock) if one),
        f"{sizes}, {drawn_in(units)}",
    ]


def drawn_in(units: Units) -> str:
    """Say the units and the scale of a cut file."""
    return f"drawn in {'inches' if units is Units.INCH else 'millimeters'}, 1:1"


def _face_lines(part: Part, back: WorkedFace, units: Units) -> Iterator[str]:
    if back.is_worked:
        yield f"FACE UP; there is work in the back: {file_name(part.mark, BoardFace.BACK)}"
    grooves = [cut for cut in part.cuts if isinstance(cut, EdgeGroove)]
    if grooves:  # it is seen on no face
        where = "both edges" if len(grooves) > 1 else f"the {grooves[0].edge.value} edge"
        wide, deep, off = (
            length_text(one, units=units) for one in (grooves[0].width, grooves[0].depth, grooves[0].from_face)
        )
        yield f"ON EDGE: groove in {where}, {wide} x {deep} deep, {off} from the face"
    if any(isinstance(cut, Notch | MidNotch) for cut in part.cuts):
        yield "square the inside corners of the notches by hand"
    if not part.kind.is_buck:
        yield "FACE UP, a face that is seen: ENGRAVE is off, write the mark on the back"
