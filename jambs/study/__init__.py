"""What a window position does to heat, damp and sun.

Everything in this room is SI: metres, watts, kelvin or degrees Celsius, pascals. Heat goes through a cut, given as
rectangles of material (`Block`) and of air (`Air`); where the rectangles come from is not this room's business, but
`wall_cut` builds those of a usual opening. Further files: `stack` and `transmittance` (the wall alone), `damp`,
`drying`, `vapour` (water), `installation` (positions and details), `sun_position` and `daylight`.
"""

from jambs.study.heat.conduction import coupling, solve
from jambs.study.heat.cut import Cut, Reference, linear_transmittance, surface_factors
from jambs.study.heat.region import Air, Block

__all__ = [
    "Air",
    "Block",
    "Cut",
    "Reference",
    "coupling",
    "linear_transmittance",
    "solve",
    "surface_factors",
]
