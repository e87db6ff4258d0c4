"""What a window position does to heat, damp and sun.

The joint of window and wall is a thermal bridge: its linear thermal transmittance (psi-value, W/mK) says what it loses
beyond wall and window, its temperature factor (fRsi) how cold its inside gets, and with it when condensation or mold
begin.

Everything in this room is SI: meters, watts, kelvin or degrees Celsius, pascals. ``heat/``: a cut, given as rectangles
of material (`Block`) and of air (`AirRegion`), and its heat flow between two limits. ``wall/``: the wall alone, its
damp and drying. ``sun/``: sun and sky on the glass. Here: a window at a position, over positions, and side by side.
"""

from jambs.study.heat.conduction import coupling, solve
from jambs.study.heat.cut import HeatCut, Reference, linear_transmittance, surface_factors
from jambs.study.regions.region import AirRegion, Block

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
