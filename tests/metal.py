"""Exterior trim of bent metal for the tests: what stands in the place of the base job's wooden trim."""

from __future__ import annotations

from typing import Any

RETURNS: dict[str, Any] = {
    "material": "coil aluminum",
    "thickness": "0.032",
    "bend_radius": "0.03",
    "frame_leg": "3/4",
    "face_leg": "1 1/2",
    "corner_lap": "1",
    "cladding": "behind the leg",
    "hem": "1/2",
    "sill": {"slope": "10 deg", "nosing": "1", "front": "1 1/2", "back_leg": "3/4"},
}
TRIM: dict[str, Any] = {
    "frame_reveal": "1/4",
    "sealant_joint": "1/4",
    "head_flashing": {"past_casing": "1/2", "upstand": "3", "drip": "1", "gap_to_cladding": "3/8"},
    "returns": RETURNS,
}


def in_metal(ganged: dict[str, Any], **returns: Any) -> dict[str, Any]:
    """Return the changes that make ganged units, lined outside with bent metal in the place of wooden trim."""
    wooden = "exterior_trim__outside__mull_casing"
    return {**{key: one for key, one in ganged.items() if key != wooden}, "exterior_trim__outside": lined(**returns)}


def lined(**returns: Any) -> dict[str, Any]:
    """Return the trim with keys of its returns changed; None leaves one out."""
    kept = {key: value for key, value in {**RETURNS, **returns}.items() if value is not None}
    return {**TRIM, "returns": kept}
