"""A dimension at the side of a view whose text runs along its line and reads from below, the name of it beside it.

Such a row takes little room across: elevations have many. Where value and name together are longer than the interval
they stand one over the other; where one alone is, the row is set as others are.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from jambs.drawings.elements.boxes import Segment
from jambs.drawings.elements.paper import DESCENDER, Sizes
from jambs.drawings.elements.placed import Align, Dimension, Lettering
from jambs.drawings.elements.view import Chain, Ink
from jambs.drawings.layout.spacing import slot
from jambs.geometry import Point

BETWEEN = 2.0
"""Between a value and its name, in gaps of the paper."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AlongRow:
    """One named dimension and its name, and how far out they reach."""

    dimension: Dimension
    name: Lettering
    reach: float


def along_row(
    chain: Chain,
    *,
    start: float,
    outward: int,
    sizes: Sizes,
    words_of: Callable[[float, bool], str],
    outer: Sequence[float],
) -> AlongRow | None:
    """Lay a chain of one interval at ``start`` with its texts along the line; None where they do not fit."""
    if not chain.after or len(chain.intervals) != 1:
        return None
    low, high = sorted((chain.intervals[0].start, chain.intervals[0].finish), key=lambda point: point[1])
    words = words_of(high[1] - low[1], chain.is_stated)
    value = Lettering(lines=(words,), at=(0.0, 0.0), height=sizes.text, upright=True, ink=Ink.DIMENSION)
    name = replace(value, lines=(chain.after,), align=Align.LEFT, ink=Ink.NOTE)
    line = start + outward * sizes.row
    near = _across(line, outward, sizes)
    ends = (low[1], high[1])
    places = _in_one_line(value, name, ends, near, outer, sizes)
    across = near
    if places is None:
        across = near + outward * sizes.pitch
        places = _in_two_lines(value, name, ends, sorted((near, across)), outer, sizes)
    if places is None:
        return None
    placed = Dimension(
        start=low,
        finish=high,
        is_vertical=True,
        line=((line, low[1]), (line, high[1])),
        extensions=tuple(_extension(point, line, outward, sizes) for point in (low, high)),
        text=replace(value, at=places[0]),
        leader=None,
        value=high[1] - low[1],
    )
    far = across + outward * (0.5 + DESCENDER) * sizes.text
    return AlongRow(dimension=placed, name=replace(name, at=places[1]), reach=far)


def _in_one_line(
    value: Lettering, name: Lettering, ends: tuple[float, float], across: float, outer: Sequence[float], sizes: Sizes
) -> tuple[Point, Point] | None:
    """Return where a value stands, and its name behind it, if both fit between the ends of a line."""
    between = BETWEEN * sizes.gap
    both = value.width + between + name.width
    middle = _slot(*ends, both, outer, sizes)
    if middle is None:
        return None
    first = middle - both / 2
    return (across, first + value.width / 2), (across, first + value.width + between)


def _in_two_lines(
    value: Lettering,
    name: Lettering,
    ends: tuple[float, float],
    across: Sequence[float],
    outer: Sequence[float],
    sizes: Sizes,
) -> tuple[Point, Point] | None:
    """Return where a value stands over its name: at the left, as texts that run up read from the right."""
    middle = _slot(*ends, max(value.width, name.width), outer, sizes)
    return None if middle is None else ((across[0], middle), (across[1], middle - name.width / 2))


def _slot(low: float, high: float, long: float, outer: Sequence[float], sizes: Sizes) -> float | None:
    """Return the middle of texts that are so long along a line, clear of its ends and of lines further out."""
    ends = 2 * sizes.gap
    return slot((low + high) / 2, half=long / 2, low=low + ends, high=high - ends, lines=outer, clear=sizes.gap)


def _across(line: float, outward: int, sizes: Sizes) -> float:
    """Return the middle of the texts: beside the line, their feet to the right."""
    foot = (0.5 + DESCENDER) * sizes.text
    return line + outward * (sizes.gap + (foot if outward < 0 else 0.55 * sizes.text))


def _extension(point: Point, line: float, outward: int, sizes: Sizes) -> Segment:
    x, y = point
    return ((x + outward * sizes.offset, y), (line + outward * sizes.overshoot, y))
