"""Where jamb screws find wood, in words."""

from __future__ import annotations

from jambs.length import Units
from jambs.outside.wood_behind import wood_behind
from jambs.parts.kit.kit import Kit


def wood_words(kit: Kit, units: Units) -> str:
    """Say where jamb screws find wood, and what to do between; nothing where they find it everywhere."""
    spans = wood_behind(kit)
    if not spans:
        return ""
    where = " and ".join(f"from {units.text(start)} to {units.text(finish)}" for start, finish in spans)
    words = (
        f"wood stands behind them only {where} from the frame edge, square to the wall: screw there, or set blocks "
        "between the rows of studs or a box of plywood first"
    )
    if kit.flares:
        words += "; behind a flare furring on the slant carries the shims, or screws longer by what the studs stand off"
    return words
