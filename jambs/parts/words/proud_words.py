"""How far something stands past a surface, in words: proud of it, or flush with it."""

from __future__ import annotations

from jambs.length import Units


def proud_words(proud: float, surface: str, units: Units) -> str:
    """Say how it stands [in]: ``1/32" proud of the wall``, ``flush with the wall``."""
    return f"{units.text(proud)} proud of {surface}" if proud else f"flush with {surface}"


def width_words(proud: float, units: Units, *, what: str = "depth") -> str:
    """Say what a depth and what stands past it come to: ``depth + 1/32" proud``; ``depth`` where it stands flush."""
    return f"{what} + {units.text(proud)} proud" if proud else what
