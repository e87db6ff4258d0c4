"""Small pictures of shaped parts for the cut sheet: both ends as they are cut, the middle left out, and a worked end.

Seen on the face and turned as the drawing is, left at the left. What is worked in the back is drawn broken. Sketches:
ends are true to their own width, the length is not.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from jambs.geometry import Outline, Point
from jambs.parts.board.cuts import EdgeBevel, EdgeGroove, EdgeRabbet, Groove, Molded
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.board.worked_faces import BoardFace, WorkedFace, turned_over, worked_face
from jambs.parts.words.edge_names import is_turned
from jambs.sheets.metal_pictures import bent_picture
from jambs.sheets.panel_pictures import framed_picture
from jambs.values import Record

HIGH, WIDE = 17.0, 92.0
"""The board's width on the picture, and the most that both ends take together [pt]."""
MARGIN, GAP, WORDS = 0.3, 9.0, 8.0
"""Board shown past what is cut, as a share of its width; the middle left out; height of the words below [pt]."""
LEAST_WIDE = 46.0
"""A picture is at least so wide [pt]."""
PEN, TEXT = 0.8, 6.5
FILLED = "#c8c8c8"


@dataclass(frozen=True, slots=True)
class _Scale:
    """From places on the board [in] to places on the picture [pt]: the middle of the board is left out."""

    length: float
    width: float
    first: float
    last: float
    points: float
    is_turned: bool = False

    def at(self, point: Point) -> Point:
        """Return a place on the picture, y downward."""
        u, v = point
        x = u * self.points if u <= self.length / 2 else self.wide - (self.length - u) * self.points
        y = (self.width - v) * self.points
        return (self.wide - x, self.width * self.points - y) if self.is_turned else (x, y)

    @property
    def wide(self) -> float:
        """Width of the whole picture of the face [pt]."""
        return (self.first + self.last) * self.points + self.gap

    @property
    def gap(self) -> float:
        """Room for the middle that is left out, so that the words of both ends stand clear of each other [pt]."""
        return max(GAP, LEAST_WIDE - (self.first + self.last) * self.points)


def part_picture(part: Part, *, names_ends: bool = True) -> Record | None:
    """Return the picture of a part of wood that is more than a plain board, and of metal that lines an opening.

    ``names_ends``: not where it stands for pieces round a shape, whose ends lie every way.
    """
    if part.is_lining:
        return bent_picture(part)
    if not part.is_wood or (part.is_plain and not part.frame_members):
        return None
    if part.frame_members:
        return framed_picture(part)
    if part.arcs:
        return _arced_picture(part, names_ends=names_ends)
    face, back = worked_face(part, BoardFace.FACE), worked_face(part, BoardFace.BACK)
    scale = _scale(part, face, back)
    width = part.silhouettes.sizes.width
    hidden = [turned_over(outline, width) for outline in _worked(back)]
    shapes = [_shape((one.outline for one in face.pockets), scale, f'fill="{FILLED}"')]
    shapes.append(_shape((one.outline for one in face.bevels), scale, f'fill="{FILLED}"'))
    shapes.append(_shape(hidden, scale, 'fill="none" stroke-dasharray="2 1.4"'))
    shapes += [_lines(face.outline, scale), _break(scale)]
    wide, high = scale.wide, width * scale.points
    left, right = part.seat.ends[::-1] if scale.is_turned else part.seat.ends
    is_named = names_ends and part.kind is not PartKind.RAIL  # it lies across its jamb, and both its ends are alike
    words = WORDS if is_named else 0.0
    if words:
        shapes += [_word(0.0, high + words - 1, left.words, "start")]
        shapes += [_word(wide, high + words - 1, right.words, "end")]
    if any(isinstance(cut, EdgeBevel | EdgeGroove | EdgeRabbet | Groove | Molded) for cut in part.cuts):
        shapes.append(_end(part, scale, wide + GAP))
        wide += GAP + width * scale.points
    box = f"{-PEN:g} {-PEN:g} {wide + 2 * PEN:.2f} {high + words + 2 * PEN:.2f}"
    size = f'width="{wide + 2 * PEN:.2f}pt" height="{high + words + 2 * PEN:.2f}pt"'
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" {size} viewBox="{box}">{"".join(shapes)}</svg>'
    return {"svg": svg, "width": wide + 2 * PEN, "height": high + words + 2 * PEN}


def _arced_picture(part: Part, *, names_ends: bool) -> Record:
    """Draw the whole of a piece that is sawn to arcs, in its blank: face up, or on its edge, the hollow side below."""
    sizes = part.silhouettes.sizes
    across = sizes.thickness if part.is_sawn_on_edge else part.width
    points = min(HIGH / across, WIDE / sizes.length)
    wide, high = sizes.length * points, across * points

    def drawn(outline: Iterable[Point]) -> str:
        return " ".join(f"{u * points:.2f},{high - v * points:.2f}" for u, v in outline)

    blank = drawn(((0.0, 0.0), (sizes.length, 0.0), (sizes.length, across), (0.0, across)))
    start, finish = (end.words for end in part.seat.ends)
    shapes = [
        f'<polygon points="{blank}" fill="none" stroke="black" stroke-width="0.4" stroke-dasharray="2 1.4"/>',
        f'<polygon points="{drawn(part.curved_outline)}" fill="none" stroke="black" stroke-width="{PEN}"/>',
    ]
    wide = max(wide, LEAST_WIDE)
    words = WORDS if names_ends else 0.0
    if names_ends:
        shapes += [_word(0.0, high + words - 1, start, "start"), _word(wide, high + words - 1, finish, "end")]
    box = f"{-PEN:g} {-PEN:g} {wide + 2 * PEN:.2f} {high + words + 2 * PEN:.2f}"
    size = f'width="{wide + 2 * PEN:.2f}pt" height="{high + words + 2 * PEN:.2f}pt"'
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" {size} viewBox="{box}">{"".join(shapes)}</svg>'
    return {"svg": svg, "width": wide + 2 * PEN, "height": high + words + 2 * PEN}


def _worked(face: WorkedFace) -> list[Outline]:
    return [one.outline for one in face.pockets] + [one.outline for one in face.bevels]


def _scale(part: Part, face: WorkedFace, back: WorkedFace) -> _Scale:
    """Show each end as far as it is cut, and a little more; ends that reach far are drawn smaller."""
    sizes = part.silhouettes.sizes
    cut = (face.outline, *_worked(face), *_worked(back))
    places = [u for outline in cut for u, _ in outline]
    past, half = MARGIN * sizes.width, sizes.length / 2
    first = max(u for u in places if u < half) + past
    last = sizes.length - min(u for u in places if u > half) + past
    points = min(HIGH / sizes.width, (WIDE - GAP) / (first + last))
    return _Scale(sizes.length, sizes.width, first, last, points, is_turned(part))


def _shape(outlines: Iterable[Outline], scale: _Scale, style: str) -> str:
    return "".join(
        f'<polygon points="{_points(outline, scale)}" {style} stroke="black" stroke-width="0.5"/>'
        for outline in outlines
    )


def _points(points: Sequence[Point], scale: _Scale) -> str:
    return " ".join(f"{x:.2f},{y:.2f}" for x, y in map(scale.at, points))


def _lines(outline: Outline, scale: _Scale) -> str:
    return f'<polygon points="{_points(outline, scale)}" fill="none" stroke="black" stroke-width="{PEN}"/>'


def _break(scale: _Scale) -> str:
    """The middle that is left out: white, between two slanted strokes."""
    left = (scale.last if scale.is_turned else scale.first) * scale.points
    high = scale.width * scale.points
    right = left + scale.gap
    white = f'<polygon points="{left:.2f},-1 {right:.2f},-1 {right:.2f},{high + 1:.2f} {left:.2f},{high + 1:.2f}"'
    strokes = "".join(
        f'<path d="M{x + 1.5:.2f} -1 L{x - 1.5:.2f} {high + 1:.2f}" stroke="black" stroke-width="0.5"/>'
        for x in (left, right)
    )
    return f'{white} fill="white"/>{strokes}'


def _end(part: Part, scale: _Scale, left: float) -> str:
    """The start end as one looks at it: the face above, the near edge at the left."""
    points = [(left + v * scale.points, w * scale.points) for v, w in part.silhouettes.end]
    text = " ".join(f"{x:.2f},{y:.2f}" for x, y in points)
    return f'<polygon points="{text}" fill="none" stroke="black" stroke-width="{PEN}"/>'


def _word(x: float, y: float, text: str, anchor: str) -> str:
    return (
        f'<text x="{x:.2f}" y="{y:.2f}" font-family="Liberation Sans" font-size="{TEXT}" '
        f'text-anchor="{anchor}">{text}</text>'
    )
