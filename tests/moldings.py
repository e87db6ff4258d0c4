"""Casing run to a section, for tests of every room."""

from __future__ import annotations

import copy
from typing import Any

from cases import BASE

POINTS = [
    ["0", "0"],
    ["0", "1/4"],
    ["1/2", "3/8"],
    ["2 1/2", "1/2"],
    ["3", "3/4"],
    ["3 1/2", "3/4"],
    ["3 1/2", "0"],
]
"""3 1/2 by 3/4: 1/4 thick at the inner edge, two slopes, a band of 1/2 along the outer edge."""


def molded_trim(**more: Any) -> dict[str, Any]:
    """The picture-framed trim of the base job, its casing molded."""
    return {**copy.deepcopy(BASE["interior_trim"]["inside"]), "profile": POINTS, **more}
