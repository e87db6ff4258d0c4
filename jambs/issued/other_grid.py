"""A job whose shop has another grid: what only rounding made another size was not decided by anybody."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from jambs.issued.other_units import alike

Record = Mapping[str, Any]
ROUNDED = ("wall", "planes", "buck")
"""What of an opening's record is on the shop's grid whatever is stated."""


def as_rounded_now(old: Record, new: Record, then: Record, now: Record) -> Record:
    """Return an old record in which what differs from the new one by no more than rounding is told as now.

    ``then``, ``now``: the shop's grid, as it was printed. A plane is a rounded face and a rounded depth: each is half a
    step of its grid off at the most, so that two planes are as far apart as both steps together.
    """
    near = then["value"] + now["value"]
    return {key: alike(one, new.get(key), near) if key in ROUNDED else one for key, one in old.items()}
