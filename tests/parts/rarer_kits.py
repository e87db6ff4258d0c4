"""Kits of rarer kinds that stand on record beside those of ``recorded_kits.py``: changes of the base job.

Flared jambs in flat segments at every form of arc, arcs of several centers, straight bucks round them, openings trimmed
as one that are not alike, bent metal that was read, and boards whose ends only few kinds have.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from arches import arch_changes
from cases import BASE, STOOL
from flat_segments import JAMB, all_round, flat_changes
from metal import lined
from rounds import inside_only, round_changes
from trimmed_as_one import side_by_side

RABBETED = {**STOOL, "jamb": BASE["interior_trim"]["inside"]["jamb"]}
RAKED = {"kind": "raked", "left": "30", "right": "48"}
STEEP = {"kind": "gable", "left": "30", "right": "36", "peak_from_left": "14"}
ELLIPSE = {"kind": "ellipse arch", "rise": "14"}
NARROWER: dict[str, Any] = {"openings__1__frame": "23 1/2 x 47 1/2", "openings__1__rough_opening": "24 x 48"}
FLARED_OUT: dict[str, Any] = {"exterior_trim__outside__flare": {"sides": "10 deg", "head": "5 deg"}}
DATE = {"date": "2026-06-01"}


def _shaped(shape: Any, frame: str, **more: Any) -> dict[str, Any]:
    return {"openings__0__rough_opening": None, "openings__0__shape": shape, "openings__0__frame": frame, **more}


def _corners(*depths: str) -> dict[str, str]:
    return dict(zip(("head_left", "head_right", "sill_left", "sill_right"), depths, strict=True))


def _row(wall: str, *, from_right: bool = False, **more: Any) -> dict[str, Any]:
    """Return the changes of two windows trimmed as one; the kit is that of the left one, or of the right one."""
    data = side_by_side(2, wall, **more)
    found = {key: data[key] for key in ("openings", "interior_trim", "exterior_trim")}
    return {**found, "openings": found["openings"][::-1]} if from_right else found


def _on_stool(changes: dict[str, Any], trim: dict[str, Any]) -> dict[str, Any]:
    kept = {key: one for key, one in changes.items() if not key.startswith("interior_trim__inside__")}
    return {**kept, "interior_trim__inside": trim}


READ_IN_A_ROW: dict[str, Any] = {
    "openings__0__measured": {
        **DATE,
        "interior_depth": _corners("4 11/16", "4 3/4", "4 5/8", "4 11/16"),
        "exterior_depth": _corners("1 1/2", "1 9/16", "1 1/2", "1 1/2"),
    },
    "openings__1__measured": {
        **DATE,
        "interior_depth": _corners("4 3/4", "4 3/4", "4 11/16", "4 23/32"),
        "exterior_depth": _corners("1 9/16", "1 5/8", "1 1/2", "1 9/16"),
    },
}
ROUND_A_RAKE = {
    "head": ["1 1/2", "1 5/8"],
    "left": ["1 1/2", "1 1/2"],
    "right": ["1 1/2", "1 5/8"],
    "sill": ["1 1/2", "1 1/2"],
}
FLAT_ON_STOOL = {**STOOL, "jamb": JAMB, "flare": all_round("15 deg")}
ROUND_A_QUARTER = {
    "head": ["2", "1 15/16", "1 15/16"],
    "left": ["1 15/16", "2"],
    "sill": ["1 15/16", "1 15/16"],
}
RARER: Mapping[str, dict[str, Any]] = {
    "on a stool, rabbeted": {"interior_trim__inside": RABBETED},
    "raked on a stool, rabbeted": _shaped(RAKED, "24 x 48", interior_trim__inside=RABBETED),
    "raked, its head flared": _shaped(RAKED, "24 x 48", interior_trim__inside__flare={"head": "15 deg"}),
    "low gable, its legs flared": _shaped(
        {"kind": "gable", "sides": "30"},
        "36 x 36",
        interior_trim__inside__flare={"sides": "15 deg"},
        interior_trim__inside__jamb={"thickness": "3/4", "stock": "poplar", "joint": "head over legs"},
    ),
    "gable, peak off its middle": _shaped(STEEP, "36 x 48", **FLARED_OUT),
    "half round in flat segments": inside_only(flat_changes("half round")),
    "full round in flat segments": inside_only(flat_changes("full round")),
    "quarter round in flat segments": inside_only(flat_changes("quarter round")),
    "ellipse arch in flat segments": inside_only(flat_changes("ellipse arch")),
    "half round in flat segments on a stool": _on_stool(
        inside_only(flat_changes("half round without legs")), FLAT_ON_STOOL
    ),
    "quarter round in flat segments on a stool, read": {
        **_on_stool(inside_only(flat_changes("quarter round")), FLAT_ON_STOOL),
        "openings__0__measured": {**DATE, "interior_depth": ROUND_A_QUARTER},
    },
    "ellipse arch of five centers": arch_changes({**ELLIPSE, "centers": "5"}, 48, 54),
    "ellipse arch of five centers, bent in one": inside_only(
        arch_changes({"kind": "ellipse arch", "rise": "24", "centers": "5"}, 72, 80, curved="bent in one")
    ),
    "quarter round on a buck": round_changes(
        {"kind": "quarter round", "high_side": "left"}, 36, 36, position={"share": "1/2"}
    ),
    "ellipse arch on a buck": arch_changes(ELLIPSE, 40, 40, position={"share": "1/2"}),
    "two widths trimmed as one": _row("5 1/2", **NARROWER),
    "two trimmed as one, the right one": _row("5 1/2", from_right=True),
    "two trimmed as one, read": _row("5 1/2", **READ_IN_A_ROW),
    "two trimmed as one, flared outside": _row("8", **FLARED_OUT),
    "raked in metal, read": _shaped(
        RAKED,
        "24 x 48",
        exterior_trim__outside=lined(),
        openings__0__measured={**DATE, "exterior_depth": ROUND_A_RAKE},
    ),
    "triangle in metal": round_changes(
        {"kind": "triangle", "peak_from_left": "12"}, 48, 30, exterior_trim__outside=lined(sill=None)
    ),
}
