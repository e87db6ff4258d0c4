"""Triangles whose flared jambs stand on a stool, made for the tests."""

from __future__ import annotations

from typing import Any

from cases import STOOL
from random_kits import RandomKit, kit_from
from rounds import inside_only, round_changes

JAMB = {"thickness": "3/4", "stock": "poplar", "joint": "miter"}
CASING = {"width": "3 1/2", "thickness": "3/4", "stock": "poplar", "corner": "miter"}


def flared_triangle_changes(peak: str, rabbet: str = "0", **flare: str) -> dict[str, Any]:
    """Return what changes for the inside of a triangle of 48 x 30, its peak so far from the left, in a thick wall."""
    shape: Any = {"kind": "triangle", "peak_from_left": peak}
    changes = inside_only(round_changes(shape, 48, 30, position={"share": "1/2"}))
    changes = {key: one for key, one in changes.items() if not key.startswith("interior_trim__inside__")}
    face = {"left": "2 1/2", "right": "2 1/2", "head": "2 1/2", "sill": "1/2"}
    stool = {**STOOL["stool"], "thickness": "1", "rabbet": rabbet}
    trim = {**STOOL, "jamb": JAMB, "casing": CASING, "flare": flare}
    if rabbet != "0":
        changes, trim = {**changes, "windows__fixed__frame_face": face}, {**trim, "stool": stool}
    return {**changes, "interior_trim__inside": trim}


def flared_triangle(peak: str, rabbet: str = "0", **flare: str) -> RandomKit:
    """Make such a kit."""
    return kit_from(flared_triangle_changes(peak, rabbet, **flare))
