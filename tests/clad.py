"""Exterior trim of cladding that returns to the frame, for the tests: what stands in the place of the base job's."""

from __future__ import annotations

from typing import Any

SILL: dict[str, Any] = {
    "thickness": "1 1/2",
    "stock": "cedar",
    "slope": "10 deg",
    "nosing": "1 1/4",
    "horn": "1",
    "drip_kerf": {"width": "1/4", "depth": "1/4", "set_back": "1/2"},
}
CORNER_BOARD: dict[str, Any] = {"width": "1", "thickness": "1", "stock": "cedar", "gap": "1/8"}
RETURNS: dict[str, Any] = {
    "thickness": "3/4",
    "stock": "siding",
    "laid": "along the side",
    "corner": "corner boards",
    "gap_at_sill": "1/4",
    "furring": {"thickness": "1/2", "width": "2", "stock": "spruce"},
    "corner_board": CORNER_BOARD,
}
TRIM: dict[str, Any] = {
    "frame_reveal": "1/4",
    "sealant_joint": "1/4",
    "casing_reveal": "0",
    "casing": {"width": "4 1/2", "thickness": "1", "stock": "cedar", "corner": "butt", "overhang": "1/2"},
    "sill": SILL,
    "head_flashing": {"past_casing": "1/2", "upstand": "3", "drip": "1/2", "gap_to_cladding": "3/8"},
}
BARE = ("casing", "casing_reveal")
"""What trim with a mitered corner does without."""


def clad(**returns: Any) -> dict[str, Any]:
    """Return trim with corner boards, keys of its returns changed; None leaves one out."""
    kept = {key: value for key, value in {**RETURNS, **returns}.items() if value is not None}
    return {**TRIM, "cladding_returns": kept}


def mitered(**returns: Any) -> dict[str, Any]:
    """Return trim whose corner is mitered, without casing; its horns reach past the furring."""
    trim = clad(**{"corner": "mitered", "corner_board": None, **returns})
    bare = {key: value for key, value in trim.items() if key not in BARE}
    return {**bare, "sill": {**SILL, "horn": "2"}}


DEEP: dict[str, Any] = {"position__share": "0"}
"""The base job's window at its sheathing: 4 1/4 in are left outside."""
