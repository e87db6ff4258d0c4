"""Ganged openings in the wall of the base job, for tests of every room."""

from __future__ import annotations

from typing import Any

from cases import changed, kit_of

from jambs.parts.kit.kit import Kit

OVER = {"thickness": "3/4", "stock": "poplar"}


def unit(frame: str, **more: str) -> dict[str, str]:
    return {"window": "fixed", "frame": frame, **more}


def ganged(**paths: Any) -> dict[str, Any]:
    """Two fixed units of 30 x 48, a gap of 1/2, a transom of 60 1/2 x 16 over a bar of 1/2: frame 60 1/2 x 64 1/2."""
    opening = changed()["openings"][0]
    without = {key: value for key, value in opening.items() if key not in ("window", "frame", "rough_opening")}
    whole = {
        **without,
        "units": [unit("30 x 48"), unit("30 x 48")],
        "mull": {"gap": "1/2"},
        "transom": [unit("60 1/2 x 16")],
        "transom_bar": {"gap": "1/2"},
    }
    exterior = changed().get("exterior_trim", {})
    covered = {f"exterior_trim__{name}__mull_casing": dict(OVER) for name in exterior}
    return {"openings__0": whole, "interior_trim__inside__mull_casing": dict(OVER), **covered, **paths}


def boxed(on: str = "both", /, **paths: Any) -> dict[str, Any]:
    """Two fixed units of 30 x 48 beside a post of 4 with joints of 1/4, boxed; no transom."""
    mull = {"post": "4", "joint": "1/4", "boxed": on}
    bare = {"openings__0__transom": None, "openings__0__transom_bar": None}
    return ganged(**bare, **{"openings__0__mull": mull, **paths})


def ganged_kit(**paths: Any) -> Kit:
    return kit_of(**ganged(**paths))


RETURNS = {
    "style": "returns",
    "frame_reveal": "1/8",
    "returns": {
        "material": "gypsum board",
        "thickness": "1/2",
        "corner_bead": {"leg": "1 1/4", "nose": "1/16"},
        "wall_board": "over the return",
        "gap_at_frame": "1/4",
    },
    "mull_casing": dict(OVER),
}


def lined(finished: list[str] | None = None, **more: Any) -> dict[str, Any]:
    """Two units and a transom: 60 1/2 x 64 1/2, faces of 2 1/2 and a reveal of 1/8: 55 3/4 x 59 3/4 in the clear."""
    read = {"date": "2026-06-01", **({"finished_opening": finished} if finished else {}), **more}
    return {**ganged(interior_trim__inside=RETURNS), **({"openings__0__measured": read} if finished or more else {})}
