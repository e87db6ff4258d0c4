"""Exterior trim of cladding that returns to the frame, for the tests: what stands in the place of the base job's."""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st
from random_kits import RandomKit, inches, kit_from

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


DEPTHS = {"0": 4.25, "1/4": 2.875}
"""Exterior depth of the base job's window by its share [in]."""
CORNERS = ("head_left", "head_right", "sill_left", "sill_right")


@st.composite
def clad_kits(draw: st.DrawFn) -> RandomKit:
    """Draw windows whose cladding is returned, to corner boards or mitered, in planned walls and in crooked ones."""
    trim = draw(st.sampled_from([clad(), mitered()]))
    returns = {
        **trim["cladding_returns"],
        "laid": draw(st.sampled_from(["along the side", "in courses"])),
        "gap_at_sill": draw(inches(0, 3 / 8)),
        "furring": {"thickness": draw(inches(3 / 8, 3 / 4)), "width": draw(inches(1, 4)), "stock": "spruce"},
    }
    if "casing" in trim:
        thick = draw(inches(1 / 2, 1))
        returns |= {"thickness": thick, "corner_board": draw(_corner_boards(float(thick)))}
        trim |= {"casing_reveal": draw(inches(0, 7 / 16))}
    share = draw(st.sampled_from([*DEPTHS]))
    changes: dict[str, Any] = {
        "exterior_trim__outside": {
            **trim,
            "cladding_returns": returns,
            "frame_reveal": draw(inches(1 / 8, 1 / 2)),
            "sealant_joint": draw(inches(0, 3 / 8)),
            "sill": {**trim["sill"], "slope": f"{draw(st.integers(0, 15))} deg", "under_frame": draw(inches(0, 1))},
        },
        "position__share": share,
    }
    if draw(st.booleans()):
        near = inches(DEPTHS[share] - 3 / 16, DEPTHS[share] + 3 / 16)
        changes["openings__0__measured"] = {
            "date": "2026-01-05",
            "exterior_depth": {one: draw(near) for one in CORNERS},
        }
    return kit_from(changes)


@st.composite
def _corner_boards(draw: st.DrawFn, least: float) -> dict[str, str]:
    """Draw boards no thinner than the cladding between them."""
    return {
        "width": draw(inches(3 / 4, 1.25)),
        "thickness": draw(inches(least, least + 1 / 2)),
        "stock": "cedar",
        "gap": draw(inches(0, 1 / 4)),
    }
