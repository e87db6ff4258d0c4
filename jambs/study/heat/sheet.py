"""A bent sheet of metal as the rectangles the heat solver takes: a line of cells, one cell thick.

Along that line it conducts as thickness times conductivity; across, a tenth of a millimeter of insulation stops more
heat than all of the sheet. Where it slopes it becomes stairs, and a riser on every tread joins it to the next one, as
else a sheet thinner than its stairs would fall apart.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise
from math import hypot

from jambs.geometry import Point
from jambs.study.heat.outline import blocks_of_outline, slope_at
from jambs.study.regions.grid import SAME_EDGE
from jambs.study.regions.region import Block


def blocks_of_sheet(
    name: str, conductivity: float, outline: Sequence[Point], *, treads: Sequence[float]
) -> list[Block]:
    """Blocks of a sheet whose legs never turn back along x; what is toward low y of it is wall. [m]

    ``treads``: where its stairs, and those of what it lies on, turn. Stairs are a longer way than the slope, and their
    treads are thicker across it: both is put right in their conductivity, so that they conduct as the sheet does.
    """
    plain = blocks_of_outline(name, conductivity, outline, treads=treads)
    blocks = [replace(one, conductivity=conductivity * _along(outline, one)) for one in plain]
    return [*blocks, *_risers(blocks)]


def _along(outline: Sequence[Point], tread: Block) -> float:
    """How much better a tread and its riser have to conduct, to conduct as the slope they stand for."""
    rise = abs(slope_at(outline, (tread.x0 + tread.x1) / 2))
    cosine = 1 / hypot(1, rise)
    return cosine * cosine * (1 + rise)


def _risers(blocks: Sequence[Block]) -> Iterator[Block]:
    for low, high in pairwise(sorted(blocks, key=lambda one: one.x0)):
        lower, upper = sorted((low, high), key=lambda one: one.y1)
        thick = min(lower.y1 - lower.y0, upper.y1 - upper.y0)
        top = min(upper.y0 + thick, upper.y1)
        if top <= lower.y1 + SAME_EDGE:
            continue
        wide = min(thick, lower.x1 - lower.x0)
        x0 = lower.x1 - wide if lower is low else lower.x0
        yield replace(lower, x0=x0, x1=x0 + wide, y0=lower.y1, y1=top)
