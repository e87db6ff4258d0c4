"""Round, quarter round, triangular and elliptic openings, made for the tests."""

from __future__ import annotations

from typing import Any

from arches import arch_changes
from random_kits import RandomKit, kit_from

ALL_ROUND: dict[str, Any] = {
    "interior_trim__inside__style": "picture framed",
    "exterior_trim__outside__sill": None,
}


def round_changes(shape: Any, width: float, height: float, **more: Any) -> dict[str, Any]:
    """Return what of the tests' plain job changes for a shape whose boards go all round."""
    return arch_changes(shape, width, height, **{**ALL_ROUND, **more})


def inside_only(changes: dict[str, Any]) -> dict[str, Any]:
    """Leave out what is outside, which takes half the time of a kit in solids."""
    return {key: one for key, one in changes.items() if not key.startswith("exterior")} | {"exterior_trim": None}


def rounded_inside(shape: Any, width: float = 36, height: float = 36, **more: Any) -> RandomKit:
    """Make the inside of such a kit."""
    return kit_from(inside_only(round_changes(shape, width, height, **more)))


def rounded(shape: Any, width: float = 36, height: float = 36, **more: Any) -> RandomKit:
    """Make a kit whose boards go all round a shape."""
    return kit_from(round_changes(shape, width, height, **more))
