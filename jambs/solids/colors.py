"""Colors by material: the same board has the same color in every file."""

from __future__ import annotations

import hashlib

Color = tuple[float, float, float]
"""Red, green, blue from 0 to 1 (sRGB)."""

KNOWN: dict[str, Color] = {
    "poplar": (0.87, 0.84, 0.66),
    "pine": (0.93, 0.80, 0.56),
    "cedar": (0.76, 0.50, 0.34),
    "spruce": (0.94, 0.87, 0.70),
    "fir": (0.87, 0.68, 0.46),
    "oak": (0.74, 0.58, 0.38),
    "maple": (0.92, 0.82, 0.66),
    "plywood": (0.83, 0.70, 0.48),
    "sheet metal": (0.62, 0.66, 0.70),
    "window frame": (0.96, 0.96, 0.94),
}


def color_of(material: str) -> Color:
    """Return the color of a material; one that is not known gets a wood's tone of its own, always the same."""
    if material in KNOWN:
        return KNOWN[material]
    first, second = hashlib.sha256(material.encode()).digest()[:2]
    light = 0.60 + 0.30 * first / 255
    warm = 0.55 + 0.30 * second / 255
    return (light, light * (warm + 1) / 2, light * warm)
