"""Curves over the position, as plain SVG, with the faces of the wall behind and the candidates on the first one."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import floor, log10

from jambs.length import ROUND_OFF, whole_down, whole_up
from jambs.values import Record

FONT = "Liberation Sans"
DASHES = ("", "5,2.5", "1.5,2", "7,2,1.5,2")
LEAST_SPAN = 1e-6
"""A curve that stays level still gets an axis."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CurveLine:
    """One curve: its name and its points (position, value); None leaves a gap."""

    name: str
    points: tuple[tuple[float, float | None], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Chart:
    """A chart over the flange plane: title with its unit, curves, candidates (letter, position), a band of positions.

    ``ends``: first and last position; ``text``: how a position is printed; ``step`` between the lines across.
    """

    title: str
    lines: tuple[CurveLine, ...]
    candidates: tuple[tuple[str, float], ...]
    ends: tuple[float, float]
    step: float
    text: Callable[[float], str]
    value_text: Callable[[float], str]
    band: tuple[float, float] | None = None
    marks: tuple[tuple[float, str], ...] = ()
    from_zero: bool = False


LEFT, RIGHT, TOP, BOTTOM = 34.0, 8.0, 33.0, 22.0
"""Margins of a chart. [pt]"""
CIRCLE = 4.6
"""Radius round a letter. [pt]"""
BAND_LINES = 3.0
"""How far apart the lines of a band are [pt]; gray is black where nothing else prints."""
CLEAR = CIRCLE + 1.5
"""From an axis to the words beside it: a letter on the axis touches none. [pt]"""
NEAR = 10.5
"""Letters nearer than this would lie on each other. [pt]"""


def chart_svg(chart: Chart, *, width: float, height: float) -> str:
    """Return a chart as SVG. [pt]"""
    low, high, step = _range(chart)
    x0, x1 = chart.ends

    def at(position: float, value: float) -> tuple[float, float]:
        across = (position - x0) / (x1 - x0 or 1.0) * (width - LEFT - RIGHT)
        up = (value - low) / (high - low) * (height - TOP - BOTTOM)
        return LEFT + across, height - BOTTOM - up

    parts = [_text(0, 9, chart.title, size=8.5, weight="bold")]
    parts += _band(chart, at, low, high)
    parts += _grid(chart, at, low, high, step)
    for place, line in enumerate(chart.lines):
        parts.append(_curve(line, at, DASHES[place % len(DASHES)]))
    parts += _legend(chart, width)
    parts += _candidates(chart, at, low)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.1f}pt" height="{height:.1f}pt" '
        f'viewBox="0 0 {width:.1f} {height:.1f}" font-family="{FONT}">{"".join(parts)}</svg>'
    )


At = Callable[[float, float], tuple[float, float]]


def _range(chart: Chart) -> tuple[float, float, float]:
    """Least and greatest value shown, and the step between the lines: 1, 2 or 5 times a power of ten."""
    values = [value for line in chart.lines for _, value in line.points if value is not None] or [0.0, 1.0]
    low, high = min(values), max(values)
    if chart.from_zero:
        low = min(low, 0.0)
    span = max(high - low, LEAST_SPAN)
    power = 10 ** floor(log10(span / 3))
    step = next(power * factor for factor in (1, 2, 5, 10) if span / (power * factor) <= 4.01)
    return whole_down(low / step) * step, whole_up(high / step) * step, step


def _band(chart: Chart, at: At, low: float, high: float) -> list[str]:
    if chart.band is None:
        return []
    (left, bottom), (right, top) = at(chart.band[0], low), at(chart.band[1], high)
    upright = "".join(
        f"M{left + BAND_LINES * i:.1f},{top:.1f}V{bottom:.1f}" for i in range(int((right - left) / BAND_LINES) + 1)
    )
    ends = f"M{right:.1f},{top:.1f}V{bottom:.1f}"
    return [f'<path d="{upright}{ends}" stroke="#777" stroke-width="0.25"/>']


def _grid(chart: Chart, at: At, low: float, high: float, step: float) -> list[str]:
    parts = []
    x0, x1 = chart.ends
    for count in range(round((high - low) / step) + 1):
        value = low + count * step
        (left, y), (right, _) = at(x0, value), at(x1, value)
        parts.append(f'<path d="M{left:.1f},{y:.1f} H{right:.1f}" stroke="#bbb" stroke-width="0.5"/>')
        parts.append(_text(left - CLEAR, y + 2.5, chart.value_text(value), size=7, anchor="end"))
    position = whole_up(x0 / chart.step) * chart.step
    while position <= x1 + ROUND_OFF:
        x, y = at(position, low)
        parts.append(f'<path d="M{x:.1f},{y:.1f} v3" stroke="#000" stroke-width="0.5"/>')
        parts.append(_text(x, y + 10, chart.text(position), size=7, anchor="middle"))
        position += chart.step
    (x, y), (_, top) = at(x0, low), at(x0, high)
    parts.append(
        f'<path d="M{x:.1f},{top:.1f} V{y:.1f} H{at(x1, low)[0]:.1f}" fill="none" stroke="#000" stroke-width="0.7"/>'
    )
    for place, name in chart.marks:
        if x0 <= place <= x1:
            x, y = at(place, low)
            parts.append(
                f'<path d="M{x:.1f},{y:.1f} V{top:.1f}" stroke="#000" stroke-width="0.4" stroke-dasharray="2,2"/>'
            )
            late = place > (x0 + x1) / 2
            parts.append(
                _text(x + 3 if late else x - 3, top - CLEAR, name, size=6.5, anchor="end" if late else "start")
            )
    return parts


def _curve(line: CurveLine, at: At, dashes: str) -> str:
    path, pen_down = [], False
    for position, value in line.points:
        if value is None:
            pen_down = False
            continue
        x, y = at(position, value)
        path.append(f"{'L' if pen_down else 'M'}{x:.1f},{y:.1f}")
        pen_down = True
    dashed = f' stroke-dasharray="{dashes}"' if dashes else ""
    return f'<path d="{" ".join(path)}" fill="none" stroke="#000" stroke-width="1.3"{dashed}/>'


def _legend(chart: Chart, width: float) -> list[str]:
    """Names of the curves in a line under the title, as far apart as the longest lets them be."""
    lengths = [len(line.name) for line in chart.lines]
    letter = min(3.4, (width - RIGHT - 22 * len(lengths)) / max(sum(lengths), 1))
    parts, x = [], 0.0
    for place, line in enumerate(chart.lines):
        dashes = DASHES[place % len(DASHES)]
        dashed = f' stroke-dasharray="{dashes}"' if dashes else ""
        parts.append(f'<path d="M{x:.1f},17 h14" stroke="#000" stroke-width="1.3"{dashed}/>')
        parts.append(_text(x + 16, 19.5, line.name, size=min(7.0, 7.0 * letter / 3.4)))
        x += 22 + letter * len(line.name)
    return parts


def _candidates(chart: Chart, at: At, low: float) -> list[str]:
    """A letter on the first curve for each candidate; one that would lie on another is lifted off, on a leader."""
    parts: list[str] = []
    placed: list[tuple[float, float]] = []
    for letter, position in chart.candidates:
        value = _value_at(chart.lines[0], position) if chart.lines else None
        if value is None:
            continue
        x, on_curve = at(position, value)
        y = _free_height(x, on_curve, placed)
        if y != on_curve:
            parts.insert(0, f'<path d="M{x:.1f},{on_curve:.1f} V{y:.1f}" stroke="#000" stroke-width="0.6"/>')
        parts.append(f'<circle cx="{x:.1f}" cy="{y:.1f}" r="{CIRCLE}" fill="#fff" stroke="#000" stroke-width="0.9"/>')
        parts.append(_text(x, y + 2.5, letter, size=7, anchor="middle", weight="bold"))
        placed.append((x, y))
    return parts


def _free_height(x: float, y: float, placed: Sequence[tuple[float, float]]) -> float:
    """The height nearest to the curve, above it before below it, at which no other letter is in the way. [pt]"""
    steps = [y, *(y + sign * count * NEAR for count in range(1, 8) for sign in (-1, 1))]
    free = (high for high in steps if all(abs(x - a) >= NEAR or abs(high - b) >= NEAR - 0.1 for a, b in placed))
    return next((high for high in free if high > TOP), y)


def _value_at(line: CurveLine, position: float) -> float | None:
    """Value of a curve at a position, straight between its points; its first or last just beyond them."""
    known = [(place, value) for place, value in line.points if value is not None]
    if not known:
        return None
    for (x0, y0), (x1, y1) in pairwise(known):
        if x0 <= position <= x1:
            return y0 + (y1 - y0) * (position - x0) / (x1 - x0)
    nearest = min(known, key=lambda one: abs(one[0] - position))
    return nearest[1]


def _text(
    x: float, y: float, words: str, *, size: float, anchor: str = "start", weight: str = "normal", fill: str = "#000"
) -> str:
    plain = words.replace("&", "&amp;").replace("<", "&lt;")
    return (
        f'<text x="{x:.1f}" y="{y:.1f}" font-size="{size}" text-anchor="{anchor}" font-weight="{weight}" '
        f'fill="{fill}">{plain}</text>'
    )


def values_of(points: Sequence[Record], *path: str) -> tuple[tuple[float, float | None], ...]:
    """Return the curve of one figure of the record: flange plane and value; None where there is none."""
    found = []
    for point in points:
        value: Record | None = point
        for key in path:
            value = value.get(key) if value else None
        found.append((point["flange_plane"]["value"], value["value"] if value else None))
    return tuple(found)
