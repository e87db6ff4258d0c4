"""*Choose for me*: the position nearest to an equal share that respects every limit, and saves a board where it can."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from jambs.job.models.openings import Job, Opening
from jambs.length import length_text
from jambs.place.depths import flange_at_share
from jambs.place.limits import SAME_PLANE, Range, jamb_boards, ranges
from jambs.wall.planes import WallPlanes


class LimitClash(ValueError):
    """Limits that cannot all hold; the message names two of them and says by how much they clash."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Chosen:
    """A flange plane [in] and why it was chosen."""

    flange_plane: float
    reasons: tuple[str, ...]


def choose(openings: Sequence[Opening], planes: WallPlanes, job: Job) -> Chosen:
    """Choose one flange plane for all openings of a wall.

    Raises:
        LimitClash: no position respects all limits.
    """
    low, high = within_limits(openings, planes, job)
    return _within(low, high, openings[0], planes, job)


def within_limits(openings: Sequence[Opening], planes: WallPlanes, job: Job) -> tuple[Range, Range]:
    """Return the limit that binds a wall's flange plane inward and the one that binds it outward.

    Raises:
        LimitClash: no position respects all limits.
    """
    inside = _all_ranges(openings, planes, job, proud_outside=False)
    clash = _clash(inside, job)
    if clash:
        proud = _all_ranges(openings, planes, job, proud_outside=True)
        if _clash(proud, job):
            raise LimitClash(clash)
        inside = proud
    return max(inside, key=lambda one: one.low), min(inside, key=lambda one: one.high)


def _all_ranges(openings: Sequence[Opening], planes: WallPlanes, job: Job, *, proud_outside: bool) -> list[Range]:
    return [
        Range(name=f"{one.name} ({opening.mark})", low=one.low, high=one.high)
        for opening in openings
        for one in ranges(opening, planes, job, proud_outside=proud_outside)
    ]


def _clash(found: Sequence[Range], job: Job) -> str:
    low = max(found, key=lambda one: one.low)
    high = min(found, key=lambda one: one.high)
    if low.low <= high.high + SAME_PLANE:
        return ""
    text = length_text(low.low - high.high, units=job.units)
    return (
        f"no position respects all limits: '{low.name}' asks for a flange plane at {_text(low.low, job)} or further "
        f"out, '{high.name}' for {_text(high.high, job)} or further in; they clash by {text}"
    )


def _within(low: Range, high: Range, lead: Opening, planes: WallPlanes, job: Job) -> Chosen:
    wanted = flange_at_share(planes, 0.5)
    plane = min(max(wanted, low.low), high.high)
    plane = _on_grid(plane, low.low, high.high, lead, job)
    reasons = [_why(plane, wanted, low, high, job)]
    saved = _saved_board(plane, low.low, lead, job)
    if saved is not None:
        plane, board = saved
        reasons.append(board)
    return Chosen(flange_plane=plane, reasons=tuple(reasons))


def _on_grid(plane: float, low: float, high: float, lead: Opening, job: Job) -> float:
    """Put the interior depth of the leading window on the shop's grid, inside the limits where the grid allows."""
    grid, jamb_depth = job.shop.grid, lead.window.jamb_depth
    snapped = jamb_depth + grid.round(plane - jamb_depth)
    if snapped < low - SAME_PLANE:
        return snapped + grid.step
    if snapped > high + SAME_PLANE:
        return snapped - grid.step
    return snapped


def _why(plane: float, wanted: float, low: Range, high: Range, job: Job) -> str:
    if abs(plane - wanted) <= job.shop.grid.step:
        return "The added depth is shared equally inside and outside; no limit stands in the way."
    bound, limit, side = (low, low.low, "out") if plane > wanted else (high, high.high, "in")
    moved = length_text(abs(plane - wanted), units=job.units)
    return (
        f"Nearest to an equal share: '{bound.name}' asks for a flange plane at {_text(limit, job)} or further {side}, "
        f"{moved} {side} from the equal share."
    )


def _saved_board(plane: float, low: float, lead: Opening, job: Job) -> tuple[float, str] | None:
    """Move in a little where the interior jamb then comes out of the next narrower board."""
    shop, jamb_depth = job.shop, lead.window.jamb_depth
    rip = plane - jamb_depth + shop.proud
    widths = jamb_boards(lead, job)
    now = next((width for width in widths if width - shop.edge_allowance >= rip - SAME_PLANE), math.inf)
    narrower = [width for width in widths if width < now]
    if not narrower:
        return None
    depth = shop.grid.at(shop.grid.count(narrower[-1] - shop.edge_allowance - shop.proud - shop.grid.step / 2))
    moved = plane - jamb_depth - depth
    if not 0 < moved <= job.limits.shift_for_board or jamb_depth + depth < low - SAME_PLANE:
        return None
    text = (
        f"Moved in by {length_text(moved, units=job.units)} so that the interior jamb comes out of a board "
        f"{_text(narrower[-1], job)} wide instead of a wider one."
    )
    return jamb_depth + depth, text


def _text(length: float, job: Job) -> str:
    return length_text(length, units=job.units)
