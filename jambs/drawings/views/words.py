"""Names on drawings."""

from __future__ import annotations

from collections.abc import Iterable

from jambs.length import Grid, Units, length_text
from jambs.parts.board.part import Part
from jambs.parts.words.ply_words import strip_size
from jambs.wall.planes import PlacedLayer

LEAST_PRINTED = 1 / 64
"""Layers thinner than this are named without a thickness [in]."""

ARCS_OF_A_RING = 2
"""A piece of a ring is sawn to two arcs of one center."""


def size_words(part: Part, *, grid: Grid, with_length: bool = False) -> str:
    """Write thickness x width as a section shows them, or, with the length, of the board that the part is sawn from."""
    if with_length:
        return _sizes(part.thickness, (part.width, part.length), grid)
    thickness, width = _as_cut_through(part)
    return _sizes(thickness, (width,), grid)


def _as_cut_through(part: Part) -> tuple[float, float]:
    """Thickness and width of a part [in]: between its two arcs where it is sawn to them, and not those of its blank."""
    if len(part.arcs) != ARCS_OF_A_RING:
        return part.thickness, part.width
    one, two = (arc.radius for arc in part.arcs)
    across = abs(one - two)
    return (across, part.width) if part.is_sawn_on_edge else (part.thickness, across)


def sawn_first(part: Part, *, grid: Grid) -> str:
    """Write thickness x width x length of what the saw is set to first: a part, or the strips its plies come out of."""
    if not part.is_laminated or not part.strips:
        return size_words(part, grid=grid, with_length=True)
    thickness, *sides = strip_size(part)
    return _sizes(thickness, sides, grid)


def _sizes(thickness: float, sides: Iterable[float], grid: Grid) -> str:
    is_inch = grid.units is Units.INCH
    # A thickness is what the board or the sheet has, whatever the shop saws to.
    texts = (length_text(thickness, units=grid.units, mark=is_inch), *(grid.text(one, mark=is_inch) for one in sides))
    text = " × ".join(texts)
    return text if grid.units is Units.INCH else f"{text} mm"


def layer_words(placed: PlacedLayer, *, units: Units) -> str:
    """Name a layer with its own thickness, once; a membrane without."""
    layer = placed.layer
    thickness = length_text(layer.thickness, units=units)
    name = layer.name
    for ending in (thickness, length_text(layer.thickness, units=units, mark=False)):
        name = name.removesuffix(f" {ending}")
    words = f"{name}, {layer.cavity.name}" if layer.cavity else name
    return words if layer.thickness < LEAST_PRINTED else f"{thickness} {words}"
