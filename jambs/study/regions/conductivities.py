"""Conductivities of the joint between window and wall, where neither job nor catalog gives one. [W/(m K)]"""

from jambs.section.part_regions import WOOD as WOOD_CONDUCTIVITY

FOAM_CONDUCTIVITY = 0.035
"""Low-expansion foam in the shim space: common design value, from memory."""
SEALANT_CONDUCTIVITY = 0.35
"""Silicone: ISO 10077-2, from memory."""
STILL_AIR_CONDUCTIVITY = 0.07
"""Still air in a narrow space, radiation across it counted in: common design value, from memory."""

__all__ = ["FOAM_CONDUCTIVITY", "SEALANT_CONDUCTIVITY", "STILL_AIR_CONDUCTIVITY", "WOOD_CONDUCTIVITY"]
