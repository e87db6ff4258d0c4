"""Pictures for the list of keys, each dimension under the name of its key: of windows, bent metal, walls between.

Sketches, not to scale and of no house: what counts is from where to where an arrow runs.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

TEXT = 7.0
"""Height of the letters [pt]."""
SMALL = 6.0
LETTER = 0.56
"""Mean width of a bold letter, in heights: near enough to clear what lies behind a word."""
ARROW = 2.2
WALL, WOOD, FRAME, SASH, PALE = "wall", "wood", "frame", "sash", "pale"
HATCHES = {WOOD: (4.0, 1), FRAME: (6.0, -1), SASH: (9.0, 1)}
"""How far apart the lines of a hatch are, level [pt], and how they lean: 1 up to the right, -1 down.

Lines, as gray is black on printers and plotters that know black alone, and would swallow the words on it.
"""


@dataclass(slots=True)
class _Sketch:
    """An SVG that grows by lines, boxes, words and dimensions [pt], y downward."""

    width: float
    height: float
    shapes: list[str] = field(default_factory=list)

    def box(self, x: float, y: float, width: float, height: float, fill: str = "none", *, dashed: bool = False) -> None:
        dash = ' stroke-dasharray="3 2"' if dashed else ""
        color = "none" if fill == "none" else "white"
        self.shapes.append(
            f'<rect x="{x:.1f}" y="{y:.1f}" width="{width:.1f}" height="{height:.1f}" fill="{color}" '
            f'stroke="black" stroke-width="{0.9 if fill in HATCHES else 0.5}"{dash}/>'
        )
        if fill in HATCHES:
            self.shapes.append(_hatch(x, y, width, height, *HATCHES[fill]))

    def line(self, x1: float, y1: float, x2: float, y2: float, *, width: float = 0.4, dash: str = "") -> None:
        dashed = f' stroke-dasharray="{dash}"' if dash else ""
        self.shapes.append(
            f'<line x1="{x1:.1f}" y1="{y1:.1f}" x2="{x2:.1f}" y2="{y2:.1f}" stroke="black" '
            f'stroke-width="{width}"{dashed}/>'
        )

    def word(
        self, x: float, y: float, text: str, *, anchor: str = "middle", bold: bool = False, size: float = TEXT
    ) -> None:
        weight = ' font-weight="bold"' if bold else ""
        if text:
            self._clear(x, y, LETTER * size * len(text), anchor)
        self.shapes.append(
            f'<text x="{x:.1f}" y="{y:.1f}" font-family="Liberation Sans" font-size="{size}" '
            f'text-anchor="{anchor}"{weight}>{text}</text>'
        )

    def _clear(self, x: float, y: float, width: float, anchor: str) -> None:
        """Take away the lines behind a word."""
        left = x - {"start": 0.0, "middle": width / 2, "end": width}[anchor]
        self.shapes.append(
            f'<rect x="{left:.1f}" y="{y - TEXT + 1:.1f}" width="{width:.1f}" height="{TEXT + 0.5}" fill="white"/>'
        )

    def across(self, x1: float, x2: float, y: float, key: str, *, from_y: float, beside: bool = False) -> None:
        """Dimension from left to right: its ends run up to ``from_y``; ``beside``: the key stands right of it."""
        for x in (x1, x2):
            self.line(x, from_y, x, y + 2, width=0.25)
        self.line(x1, y, x2, y)
        self._head(x1, y, 1, 0)
        self._head(x2, y, -1, 0)
        if beside:
            self.word(x2 + 3, y + TEXT / 3, key, anchor="start", bold=True)
        else:
            self.word((x1 + x2) / 2, y - 2, key, bold=True)

    def up(
        self, y1: float, y2: float, x: float, key: str, *, from_x: float, at_left: bool = False, shift: float = 0
    ) -> None:
        """Dimension from top to bottom: its ends run from ``from_x``; the key stands beside it."""
        for y in (y1, y2):
            self.line(from_x, y, x + (-2 if x < from_x else 2), y, width=0.25)
        self.line(x, y1, x, y2)
        self._head(x, y1, 0, 1)
        self._head(x, y2, 0, -1)
        middle = (y1 + y2) / 2 + TEXT / 3 + shift
        self.word(x + 3, middle, key, anchor="start", bold=True)

    def _head(self, x: float, y: float, along: int, down: int) -> None:
        for side in (-1, 1):
            self.line(x, y, x + ARROW * (along + 0.5 * side * down), y + ARROW * (down + 0.5 * side * along), width=0.5)

    @property
    def svg(self) -> str:
        size = f'width="{self.width}pt" height="{self.height}pt" viewBox="0 0 {self.width} {self.height}"'
        return f'<svg xmlns="http://www.w3.org/2000/svg" {size}>{"".join(self.shapes)}</svg>'


def _hatch(x: float, y: float, width: float, height: float, apart: float, lean: int) -> str:
    """Return lines at 45° over a box as one path."""
    pieces = []
    for count in range(1, math.ceil((width + height) / apart)):
        along = count * apart
        start, finish = max(0.0, along - height), min(width, along)
        tops = [along - one if lean > 0 else height - along + one for one in (start, finish)]
        pieces.append(f"M{x + start:.1f},{y + tops[0]:.1f}L{x + finish:.1f},{y + tops[1]:.1f}")
    return f'<path d="{"".join(pieces)}" stroke="black" stroke-width="0.25"/>'


def depths_picture() -> str:
    """Draw a section through the side of a window, seen from above: everything that runs through the wall."""
    sketch, left, scale = _Sketch(340, 222), 34.0, 3.1

    def at(depth: float) -> float:
        return left + scale * depth

    def board(start: float, end: float, top: float, bottom: float, fill: str) -> None:
        sketch.box(at(start), top, scale * (end - start), bottom - top, fill)

    layers = [(0, 3, WALL), (3, 36, PALE), (36, 39, WOOD), (39, 57, WALL), (57, 78, WALL), (78, 81, WOOD)]
    for start, end, fill in layers:
        board(start, end, 28, 78, fill)
    board(81, 88, 28, 58, WALL)
    board(39, 60, 64, 78, WOOD)
    board(28, 70, 86, 108, FRAME)
    board(60, 61.2, 72, 86, FRAME)
    board(52, 67, 108, 136, SASH)
    board(58, 61, 136, 146, PALE)
    board(-0.6, 28, 94, 103, WOOD)
    board(-7.6, -0.6, 62, 99, WOOD)
    board(71.5, 81, 92, 101, WOOD)
    board(81, 88, 62, 97, WOOD)
    for depth, words in ((0, "finished wall face"), (39, "sheathing plane"), (60, "flange plane"), (81, "trim plane")):
        sketch.line(at(depth), 20, at(depth), 150, width=0.35, dash="4 2 1 2")
        sketch.word(at(depth), 17, words, size=SMALL)
    sketch.word(4, 50, "INSIDE", anchor="start", size=SMALL)
    sketch.word(337, 50, "OUTSIDE", anchor="end", size=SMALL)
    sketch.word(at(19.5), 50, "studs", size=SMALL)
    sketch.word(at(67.5), 50, "insulation", size=SMALL)
    sketch.word(at(49.5), 73, "buck", size=SMALL)
    sketch.word(at(13), 100.5, "interior jamb", size=SMALL)
    sketch.word(at(42), 99, "frame", size=SMALL)
    sketch.word(at(56.5), 118, "sash", size=SMALL)
    sketch.across(at(52), at(67), 130, "", from_y=130)
    sketch.word(at(51), 132.5, "sash_thickness", anchor="end", bold=True)
    sketch.across(at(67), at(70), 130, "sash_set_back", from_y=108, beside=True)
    sketch.across(at(0), at(28), 160, "interior_depth", from_y=104)
    sketch.across(at(28), at(70), 160, "frame_depth", from_y=108)
    sketch.across(at(70), at(81), 160, "exterior_depth", from_y=108, beside=True)
    sketch.across(at(28), at(60), 178, "jamb_depth", from_y=162)
    sketch.across(at(60), at(70), 178, "frame_projection", from_y=162, beside=True)
    sketch.word(at(70) + 3, 187, "= flange_set_back", anchor="start", size=SMALL)
    sketch.across(at(39), at(81), 202, "", from_y=190)
    sketch.word(at(60), 200, "added depth (shared by share:)", size=SMALL)
    return sketch.svg


def faces_picture() -> str:
    """Draw the same side larger: everything that runs across the face of the frame, wall above, glass below."""
    sketch = _Sketch(240, 222)
    sketch.box(44, 24, 66, 52, PALE)
    sketch.box(110, 24, 14, 52, WALL)
    sketch.box(66, 92, 66, 62, FRAME)
    sketch.box(124, 56, 4, 36, FRAME)
    sketch.box(56, 142, 38, 44, SASH)
    sketch.box(72, 186, 7, 22, PALE)
    sketch.box(43, 112, 23, 22, WOOD)
    sketch.box(33, 44, 10, 76, WOOD)
    sketch.word(78, 52, "wall", size=SMALL)
    sketch.word(106, 108, "frame", size=SMALL)
    sketch.word(75, 172, "sash", size=SMALL)
    sketch.word(42, 40, "casing", anchor="end", size=SMALL)
    sketch.word(54, 125, "jamb", size=SMALL)
    sketch.word(4, 12, "INSIDE", anchor="start", size=SMALL)
    sketch.up(56, 92, 140, "flange_width", from_x=128)
    sketch.up(92, 142, 140, "sash_face", from_x=94)
    sketch.up(142, 154, 140, "sash_overlap", from_x=94)
    sketch.up(92, 154, 192, "frame_face", from_x=132, shift=-6)
    sketch.up(134, 154, 22, "", from_x=66)
    sketch.word(4, 166, "frame_reveal", anchor="start", bold=True)
    sketch.up(120, 134, 22, "", from_x=43)
    sketch.word(2, 108, "casing_", anchor="start", bold=True)
    sketch.word(2, 116, "reveal", anchor="start", bold=True)
    return sketch.svg


def heights_picture() -> str:
    """Draw a window and a door from inside, over the finished floor."""
    sketch = _Sketch(196, 222)
    floor = 190.0
    sketch.line(4, floor, 192, floor, width=1.0)
    sketch.word(6, floor + 9, "finished floor", anchor="start", size=SMALL)
    sketch.box(44, 36, 76, 96, dashed=True)
    sketch.box(48, 40, 68, 86, FRAME)
    sketch.box(56, 48, 52, 70, PALE)
    sketch.word(82, 60, "frame", bold=True)
    sketch.word(82, 69, "width x height", size=SMALL)
    sketch.word(82, 78, "(outer edges)", size=SMALL)
    sketch.word(82, 31, "rough_opening", bold=True)
    sketch.word(82, 22, "width x height of the hole", size=SMALL)
    sketch.up(126, floor, 82, "sill_height", from_x=82)
    sketch.up(40, floor, 30, "", from_x=48)
    sketch.word(4, 156, "head_", anchor="start", bold=True)
    sketch.word(4, 164, "height", anchor="start", bold=True)
    sketch.box(142, 40, 38, 154, FRAME)
    sketch.box(147, 46, 28, 144, PALE)
    sketch.line(4, floor, 192, floor, width=1.0)
    sketch.word(161, 120, "door", size=SMALL)
    sketch.up(floor, floor + 4, 138, "", from_x=142)
    sketch.word(192, floor + 16, "floor_below_frame", anchor="end", bold=True)
    return sketch.svg


def bent_picture() -> str:
    """Draw bent metal that returns the wall outside: its side from above, its corner from outside, its sill."""
    sketch = _Sketch(250, 194)
    _bent_side(sketch)
    _bent_corner(sketch)
    _bent_sill(sketch)
    return sketch.svg


def _bent_side(sketch: _Sketch) -> None:
    sketch.word(4, 10, "INSIDE", anchor="start", size=SMALL)
    sketch.word(246, 10, "OUTSIDE", anchor="end", size=SMALL)
    sketch.box(34, 22, 116, 40, PALE)
    sketch.box(30, 68, 62, 30, FRAME)
    sketch.word(92, 46, "wall", size=SMALL)
    sketch.word(60, 86, "frame", size=SMALL)
    for x1, y1, x2, y2 in ((94, 70, 94, 92), (94, 92, 153, 92), (153, 92, 153, 34), (150, 34, 150, 48)):
        sketch.line(x1, y1, x2, y2, width=1.6)
    sketch.line(153, 34, 150, 34, width=1.6)
    sketch.word(122, 102, "return", size=SMALL)
    sketch.up(70, 92, 106, "frame_leg", from_x=96)
    sketch.up(34, 92, 196, "face_leg", from_x=155)
    sketch.up(34, 48, 164, "hem", from_x=150)


def _bent_corner(sketch: _Sketch) -> None:
    sketch.word(4, 116, "seen from outside", anchor="start", size=SMALL)
    sketch.box(40, 142, 20, 46, WALL)
    sketch.box(26, 124, 82, 18, WOOD)
    sketch.box(60, 142, 48, 46, PALE)
    sketch.word(84, 135.5, "head", size=SMALL)
    sketch.word(50, 168, "side", size=SMALL)
    sketch.across(26, 40, 154, "", from_y=142)
    sketch.word(4, 165, "corner_", anchor="start", bold=True)
    sketch.word(4, 173, "lap", anchor="start", bold=True)


def _bent_sill(sketch: _Sketch) -> None:
    sketch.word(136, 116, "sill, from its end", anchor="start", size=SMALL)
    sketch.box(126, 122, 34, 16, FRAME)
    sketch.box(136, 162, 62, 26, PALE)
    sketch.word(143, 132.5, "frame", size=SMALL)
    for x1, y1, x2, y2 in ((162, 142, 162, 152), (162, 152, 212, 164), (212, 164, 212, 178)):
        sketch.line(x1, y1, x2, y2, width=1.6)
    sketch.up(142, 152, 152, "", from_x=160)
    sketch.word(149, 149.5, "back_leg", anchor="end", bold=True)
    sketch.up(164, 178, 218, "front", from_x=213)
    sketch.across(198, 212, 187, "nosing", from_y=180, beside=True)
    sketch.line(162, 152, 204, 152, width=0.25, dash="2 2")
    sketch.word(206, 154.5, "slope", anchor="start", bold=True)


def clad_picture() -> str:
    """Draw cladding that returns to the frame: its side from above with the corner, its foot over the sill."""
    sketch = _Sketch(250, 136)
    sketch.word(4, 10, "INSIDE", anchor="start", size=SMALL)
    sketch.word(246, 10, "OUTSIDE", anchor="end", size=SMALL)
    sketch.box(34, 16, 126, 40, PALE)
    sketch.box(160, 16, 10, 14, WALL)
    sketch.box(160, 33, 14, 45, WOOD)
    for x in (62, 126):
        sketch.box(x, 56, 34, 10, WOOD)
    sketch.box(62, 66, 62, 9, WALL)
    sketch.box(132, 66, 28, 13, WOOD)
    sketch.box(24, 74, 34, 26, FRAME)
    sketch.word(98, 27, "wall", size=SMALL)
    sketch.word(41, 90, "frame", size=SMALL)
    sketch.word(92, 84, "return", size=SMALL)
    sketch.word(196, 25, "cladding", size=SMALL)
    sketch.word(178, 50, "casing", anchor="start", size=SMALL)
    sketch.word(111, 64, "furring", size=SMALL)
    sketch.across(62, 96, 46, "width", from_y=56)
    sketch.up(56, 66, 20, "", from_x=60)
    sketch.word(4, 52, "thickness", anchor="start", bold=True)
    sketch.across(124, 132, 88, "", from_y=76)
    sketch.word(120, 97, "gap", bold=True)
    sketch.across(132, 160, 100, "", from_y=80)
    sketch.word(146, 110, "width", bold=True)
    sketch.word(162, 110, "of the corner board", anchor="start", size=SMALL)
    sketch.up(66, 79, 180, "thickness", from_x=161)
    sketch.box(24, 106, 40, 12, WALL)
    sketch.line(16, 121, 84, 131, width=1.2)
    sketch.word(44, 114.5, "return", size=SMALL)
    sketch.word(96, 133, "sill", size=SMALL)
    sketch.up(118, 127, 72, "gap_at_sill", from_x=64, shift=-3)
    return sketch.svg


def between_picture() -> str:
    """Draw two openings that are trimmed as one, from inside: the keys stand with the right one."""
    sketch = _Sketch(250, 112)
    sketch.word(4, 8, "seen from inside, holes in the framing dashed", anchor="start", size=SMALL)
    sketch.box(14, 13, 222, 12, WOOD)
    sketch.word(125, 21.5, "one head over both", size=SMALL)
    for left in (26, 142):
        sketch.box(left, 27, 82, 58, dashed=True)
        sketch.box(left + 4, 31, 74, 50, FRAME)
        sketch.box(left + 12, 39, 58, 34, PALE)
    sketch.word(67, 54, "right_of", bold=True)
    sketch.word(67, 64, "names this one", size=SMALL)
    sketch.word(183, 54, "this opening", size=SMALL)
    sketch.word(183, 64, "says trim_with", size=SMALL)
    sketch.box(108, 27, 34, 58, WALL)
    sketch.across(108, 142, 98, "", from_y=85)
    sketch.word(125, 108, "wall", bold=True)
    return sketch.svg


PICTURES: Mapping[str, Callable[[], str]] = {
    "depths": depths_picture,
    "faces": faces_picture,
    "heights": heights_picture,
    "bent": bent_picture,
    "clad": clad_picture,
    "between": between_picture,
}
"""By the names that `jambs keys` and the messages use."""
