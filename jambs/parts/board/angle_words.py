"""Angles as a saw is set to them, in words: to a tenth of a degree, in both ways in which scales are made."""

from __future__ import annotations

from jambs.length import decimal_text

SQUARE_DEG = 90.0
SEEN_DEG = 0.05
"""A saw is set to tenths of a degree; less is square [degrees]."""


def angle_text(degrees: float) -> str:
    """Print an angle to a tenth of a degree."""
    return f"{decimal_text(degrees, 1)}°"


def both_ways(degrees: float) -> str:
    """Print an angle off a square cut, and as a scale reads it that has 90° for square: ``31.6° (58.4°)``."""
    return f"{angle_text(degrees)} ({angle_text(SQUARE_DEG - round(degrees, 1))})"


def setting_words(miter: float, bevel: float) -> str:
    """Say how a saw is set, both angles off square [degrees]; nothing of what is square."""
    settings = (("miter", miter), ("blade tilted", bevel))
    return ", ".join(f"{name} {both_ways(angle)}" for name, angle in settings if angle > SEEN_DEG)
