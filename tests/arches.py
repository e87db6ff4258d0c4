"""Openings with a curved head, made for the tests."""

from __future__ import annotations

from typing import Any

from random_kits import RandomKit, kit_from

BOARDS: list[dict[str, Any]] = [
    *({"nominal": name, "stock": "poplar", "lengths": ["8'", "10'"]} for name in ("1x4", "1x6", "1x8", "1x10", "1x12")),
    *({"nominal": name, "stock": "cedar", "lengths": ["8'", "10'"]} for name in ("5/4x6", "5/4x12")),
    {"nominal": "8/4x8", "stock": "poplar", "thickness": "1 3/4", "width": "7 1/4", "lengths": ["8'"]},
    {"nominal": "8/4x8", "stock": "cedar", "thickness": "1 3/4", "width": "7 1/4", "lengths": ["8'"]},
]
HALF_ROUND = {"kind": "half round"}


def arched(
    shape: Any = HALF_ROUND, width: float = 36, height: float = 60, *, curved: str = "sawn segments", **more: Any
) -> RandomKit:
    """Make a kit under an arch, its flange on the sheathing; inside the jamb is ``curved`` so."""
    return kit_from(arch_changes(shape, width, height, curved=curved, **more))


def arch_changes(
    shape: Any, width: float, height: float, *, curved: str = "sawn segments", **more: Any
) -> dict[str, Any]:
    """Return what of the tests' plain job changes for an arch."""
    return {
        "openings__0__rough_opening": None,
        "openings__0__shape": shape,
        "openings__0__frame": f"{width:g} x {height:g}",
        "shop__boards": BOARDS,
        "position": "on the sheathing",
        "interior_trim__inside__jamb__curved": curved,
        "exterior_trim__outside__jamb__curved": "sawn segments",
        **more,
    }
