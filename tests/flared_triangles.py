"""Triangles whose flared jambs stand on a stool, made for the tests."""

from __future__ import annotations

from typing import Any

from cases import STOOL
from random_kits import RandomKit, kit_from
from rounds import inside_only, round_changes

JAMB = {"thickness": "3/4", "stock": "poplar", "joint": "miter"}
CASING = {"width": "3 1/2", "thickness": "3/4", "stock": "poplar", "corner": "miter"}


def flared_triangle_changes(peak: str, **flare: str) -> dict[str, Any]:
    """Return what changes for the inside of a triangle of 48 x 30, its peak so far from the left, in a thick wall."""
    shape: Any = {"kind": "triangle", "peak_from_left": peak}
    changes = inside_only(round_changes(shape, 48, 30, position={"share": "1/2"}))
    changes = {key: one for key, one in changes.items() if not key.startswith("interior_trim__inside__")}
    return {**changes, "interior_trim__inside": {**STOOL, "jamb": JAMB, "casing": CASING, "flare": flare}}


def flared_triangle(peak: str, **flare: str) -> RandomKit:
    """Make such a kit."""
    return kit_from(flared_triangle_changes(peak, **flare))
