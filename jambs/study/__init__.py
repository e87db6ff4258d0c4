"""What a window position does to heat, damp and sun.

Everything in this room is SI: metres, watts, kelvin or degrees Celsius, pascals. ``heat/``: a cut, given as rectangles
of material (`Block`) and of air (`AirRegion`), and its heat flow between two limits. ``wall/``: the wall alone, its
damp and drying. ``sun/``: sun and sky on the glass. Here: a window at a position, over positions, and side by side.
"""

from jambs.study.heat.conduction import coupling, solve
from jambs.study.heat.cut import HeatCut, Reference, linear_transmittance, surface_factors
from jambs.study.heat.region import AirRegion, Block

__all__ = [
    "AirRegion",
    "Block",
    "HeatCut",
    "Reference",
    "coupling",
    "linear_transmittance",
    "solve",
    "surface_factors",
]
