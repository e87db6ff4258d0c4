"""A line picture as SVG: seen lines solid, covered lines dashed or left out, marks with a line to their part."""

from __future__ import annotations

from collections.abc import Callable
from xml.sax.saxutils import escape

from jambs.geometry import Point
from jambs.solids.labels import MarkPlace
from jambs.solids.picture import LinePicture, PictureLine

MARGIN = 0.01
"""Left free around a picture, as a share of its width."""
POINTS = 72.0
Place = Callable[[Point], Point]


def picture_svg(picture: LinePicture, *, width: float, hidden: bool = False) -> str:
    """Write a picture as SVG, ``width`` on paper [in]; ``hidden``: covered lines too, dashed."""
    margin = MARGIN * (picture.high[0] - picture.low[0])
    scale = width * POINTS / (picture.high[0] - picture.low[0] + 2 * margin)
    tall = (picture.high[1] - picture.low[1] + 2 * margin) * scale

    def at(point: Point) -> Point:
        return (
            (point[0] - picture.low[0] + margin) * scale,
            (picture.high[1] - point[1] + margin) * scale,
        )

    seen = [line for line in picture.lines if not line.is_hidden]
    covered = [line for line in picture.lines if line.is_hidden] if hidden else []
    body = [
        _path(covered, at, 'stroke-width="0.25" stroke-dasharray="2 1.5" stroke="#888"'),
        _path(seen, at, 'stroke-width="0.6" stroke="#000"'),
        *(_mark(mark, at, scale) for mark in picture.marks),
    ]
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width * POINTS:.2f}pt" height="{tall:.2f}pt" '
        f'viewBox="0 0 {width * POINTS:.2f} {tall:.2f}" fill="none" stroke-linecap="round">\n'
        f"<title>{escape(picture.name)}</title>\n" + "\n".join(one for one in body if one) + "\n</svg>\n"
    )


def _path(lines: list[PictureLine], at: Place, style: str) -> str:
    if not lines:
        return ""
    pieces = []
    for line in lines:
        (x0, y0), (x1, y1) = (at(point) for point in line.points)
        pieces.append(f"M{x0:.2f} {y0:.2f}L{x1:.2f} {y1:.2f}")
    return f'<path {style} d="{"".join(pieces)}"/>'


def _mark(mark: MarkPlace, at: Place, scale: float) -> str:
    (x0, y0), (x1, y1) = at(mark.target), at(mark.at)
    size = mark.height * scale
    low, high = (at(corner) for corner in mark.box)
    return (
        f'<path stroke="#06c" stroke-width="0.35" d="M{x0:.2f} {y0:.2f}L{x1:.2f} {y1:.2f}"/>'
        f'<circle cx="{x0:.2f}" cy="{y0:.2f}" r="1" fill="#06c"/>'
        f'<rect x="{low[0]:.2f}" y="{high[1]:.2f}" width="{high[0] - low[0]:.2f}" '
        f'height="{low[1] - high[1]:.2f}" fill="#fff"/>'
        f'<text x="{x1:.2f}" y="{y1 + size * 0.36:.2f}" font-family="sans-serif" font-size="{size:.2f}" '
        f'text-anchor="middle" fill="#06c">{escape(mark.text)}</text>'
    )
