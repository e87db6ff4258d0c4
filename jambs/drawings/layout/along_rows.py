"""A dimension at the side of a view whose text runs along its line and reads from below, the name of it beside it.

Such a row takes little room across: elevations have many. Where text and name are longer than the interval it is set
as other rows are.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from jambs.drawings.layout.boxes import Segment
from jambs.drawings.layout.paper import DESCENDER, Sizes
from jambs.drawings.layout.placed import Align, Dimension, Lettering
from jambs.drawings.layout.spacing import slot
from jambs.drawings.views.view import Chain, Ink
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
    chain: Chain, *, start: float, outward: int, sizes: Sizes, text_of: Callable[[float], str], outer: Sequence[float]
) -> AlongRow | None:
    """Lay a chain of one interval at ``start`` with its texts along the line; None where they do not fit."""
    if not chain.after or len(chain.intervals) != 1:
        return None
    low, high = sorted((chain.intervals[0].start, chain.intervals[0].finish), key=lambda point: point[1])
    value = Lettering(
        lines=(text_of(high[1] - low[1]),), at=(0.0, 0.0), height=sizes.text, upright=True, ink=Ink.DIMENSION
    )
    name = replace(value, lines=(chain.after,), align=Align.LEFT, ink=Ink.NOTE)
    between = BETWEEN * sizes.gap
    half = (value.width + between + name.width) / 2
    middle = slot(
        (low[1] + high[1]) / 2,
        half=half,
        low=low[1] + 2 * sizes.gap,
        high=high[1] - 2 * sizes.gap,
        lines=outer,
        clear=sizes.gap,
    )
    if middle is None:
        return None
    line = start + outward * sizes.row
    across = _across(line, outward, sizes)
    first = middle - half
    placed = Dimension(
        start=low,
        finish=high,
        is_vertical=True,
        line=((line, low[1]), (line, high[1])),
        extensions=tuple(_extension(point, line, outward, sizes) for point in (low, high)),
        text=replace(value, at=(across, first + value.width / 2)),
        leader=None,
        value=high[1] - low[1],
    )
    far = across + outward * (0.5 + DESCENDER) * sizes.text
    return AlongRow(dimension=placed, name=replace(name, at=(across, first + value.width + between)), reach=far)


def _across(line: float, outward: int, sizes: Sizes) -> float:
    """Return the middle of the texts: beside the line, their feet to the right."""
    foot = (0.5 + DESCENDER) * sizes.text
    return line + outward * (sizes.gap + (foot if outward < 0 else 0.55 * sizes.text))


def _extension(point: Point, line: float, outward: int, sizes: Sizes) -> Segment:
    x, y = point
    return ((x + outward * sizes.offset, y), (line + outward * sizes.overshoot, y))
