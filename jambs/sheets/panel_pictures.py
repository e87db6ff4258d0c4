"""The picture of a frame-and-panel jamb on the cut sheet: its whole face, stiles, rails and panels on it."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.geometry import Outline, Point
from jambs.outlines import within, without_doubles
from jambs.parts.board.part import Part
from jambs.parts.words.edge_names import is_turned
from jambs.values import Record

WIDE, HIGH, WORDS = 104.0, 44.0, 8.0
"""The most that the face is wide and high, and the height of the words below it [pt]."""
PEN, THIN, TEXT = 0.8, 0.5, 6.5
PANEL = "#e4e4e4"


def framed_picture(part: Part) -> Record:
    """Draw the face of a jamb, left end at the left, bottom of a leg at the left: to scale, its panels shaded."""
    assert part.blank.panels
    layout, turned = part.blank.panels.layout, is_turned(part)
    scale = min(WIDE / layout.length, HIGH / layout.width)
    wide, high = layout.length * scale, layout.width * scale

    def at(point: Point) -> str:
        x, y = point[0] * scale, point[1] * scale
        return f"{wide - x:.2f},{y:.2f}" if turned else f"{x:.2f},{high - y:.2f}"

    def drawn(outline: Outline, fill: str, pen: float) -> str:
        points = " ".join(map(at, outline))
        return f'<polygon points="{points}" fill="{fill}" stroke="black" stroke-width="{pen}"/>'

    low, far = layout.across
    rails = [_box(part, (start, low), (finish, far)) for start, finish in layout.rails]
    panels = [_box(part, (start, low), (finish, far)) for start, finish in layout.openings]
    left, right = (end.words for end in (part.seat.ends[::-1] if turned else part.seat.ends))
    shapes = [
        *(drawn(one, "none", THIN) for one in rails),
        *(drawn(one, PANEL, THIN) for one in panels),
        drawn(part.outline, "none", PEN),
        _word(0.0, high + WORDS - 1, left, "start"),
        _word(wide, high + WORDS - 1, right, "end"),
    ]
    return _svg(shapes, wide, high + WORDS)


def _box(part: Part, low: Point, high: Point) -> Outline:
    return tuple(without_doubles(within(part.outline, low, high)))


def _svg(shapes: Sequence[str], wide: float, high: float) -> Record:
    wide, high = wide + 2 * PEN, high + 2 * PEN
    size = f'width="{wide:.2f}pt" height="{high:.2f}pt"'
    box = f"{-PEN:g} {-PEN:g} {wide:.2f} {high:.2f}"
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" {size} viewBox="{box}">{"".join(shapes)}</svg>'
    return {"svg": svg, "width": wide, "height": high}


def _word(x: float, y: float, text: str, anchor: str) -> str:
    return (
        f'<text x="{x:.2f}" y="{y:.2f}" font-family="Liberation Sans" font-size="{TEXT}" '
        f'text-anchor="{anchor}">{text}</text>'
    )
