"""Names on drawings."""

from __future__ import annotations

from jambs.length import Grid, Units, length_text
from jambs.parts.part import Part
from jambs.wall.planes import PlacedLayer

LEAST_PRINTED = 1 / 64
"""Layers thinner than this are named without a thickness [in]."""


def size_words(part: Part, *, grid: Grid, with_length: bool = False) -> str:
    """Write thickness x width, and length where asked."""
    is_inch = grid.units is Units.INCH
    sides = (part.width, part.length) if with_length else (part.width,)
    # A thickness is what the board or the sheet has, whatever the shop saws to.
    texts = (
        length_text(part.thickness, units=grid.units, mark=is_inch),
        *(grid.text(one, mark=is_inch) for one in sides),
    )
    text = " x ".join(texts)
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
