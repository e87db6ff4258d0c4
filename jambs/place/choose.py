"""*Choose for me*: the position nearest to an equal share that respects every limit, and saves a board where it can."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from jambs.findings import FindingsError, Reason, Subject
from jambs.job.models.openings import Job, Opening
from jambs.length import Grid
from jambs.place.depths import flange_at_share
from jambs.place.findings import NoPosition
from jambs.place.flares import deepest_of, jamb_rip
from jambs.place.limit_kinds import LimitKind
from jambs.place.limits import SAME_PLANE, Range, jamb_boards, ranges
from jambs.place.reasons import BindingLimit, BoundByLimit, LeastHeat, MovedForBoard, SharedEqually
from jambs.wall.planes import WallPlanes


class LimitClash(FindingsError):
    """Limits that cannot all hold."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Chosen:
    """A flange plane [in] and why it was chosen."""

    flange_plane: float
    reasons: tuple[Reason, ...]


def choose(openings: Sequence[Opening], planes: WallPlanes, job: Job) -> Chosen:
    """Choose one flange plane for all openings of a wall.

    Raises:
        LimitClash: no position respects all limits.
    """
    low, high = carried_within_limits(openings, planes, job)
    return _within(low, high, openings[0], planes, job)


def carried_within_limits(openings: Sequence[Opening], planes: WallPlanes, job: Job) -> tuple[Range, Range]:
    """Return the limits between which every flange plane can be built.

    Without a buck a window stands only where a layer ends that carries it: of those planes the one nearest to an
    equal share, which then is both limits.

    Raises:
        LimitClash: no position respects all limits, or no layer that carries ends between them.
    """
    low, high = within_limits(openings, planes, job)
    if planes.wall.buck is not None:
        return low, high
    ends = sorted(planes.carrying, key=lambda plane: abs(plane - flange_at_share(planes, 0.5)))
    marked = [Range(limit=LimitKind.CARRIED, mark=openings[0].mark, low=plane, high=plane) for plane in ends]
    found = next((one for one in marked if not _clash(low, one) and not _clash(one, high)), None)
    if found is None:
        end = marked[0]
        pair = (low, end) if _clash(low, end) else (end, high)
        raise LimitClash(NoPosition(subject=asked_by(openings[0]), low=pair[0].low_end, high=pair[1].high_end))
    return found, found


def within_limits(openings: Sequence[Opening], planes: WallPlanes, job: Job) -> tuple[Range, Range]:
    """Return the limit that binds a wall's flange plane inward and the one that binds it outward.

    Raises:
        LimitClash: no position respects all limits.
    """
    inside = _all_ranges(openings, planes, job, proud_outside=False)
    low, high = _ends(inside)
    if not _clash(low, high):
        return low, high
    proud = _ends(_all_ranges(openings, planes, job, proud_outside=True))
    if _clash(*proud):
        raise LimitClash(NoPosition(subject=asked_by(openings[0]), low=low.low_end, high=high.high_end))
    return proud


def asked_by(opening: Opening) -> Subject:
    """What the position rule of an opening is of: the opening itself, or its wall."""
    return Subject.opening(opening.mark) if opening.position_is_own else Subject.wall(opening.wall.name)


def as_told_by(opening: Opening, chosen: Chosen, planes: WallPlanes, job: Job) -> tuple[Reason, ...]:
    """Return the reasons of a wall's position as the sheet of one opening tells them: no other opening's limits."""
    if not any(isinstance(one, BoundByLimit | LeastHeat) for one in chosen.reasons):
        return chosen.reasons
    own = [one for proud in (False, True) for one in ranges(opening, planes, job, proud_outside=proud)]
    return tuple(_told(one, own) for one in chosen.reasons)


def _told(reason: Reason, own: Sequence[Range]) -> Reason:
    def seen(bound: BindingLimit) -> BindingLimit:
        is_own = bound.limit is LimitKind.CARRIED or any(one.allows(bound) for one in own)
        return bound if is_own else replace(bound, plane=None)

    if isinstance(reason, BoundByLimit):
        return replace(reason, bound=seen(reason.bound))
    return replace(reason, low=seen(reason.low), high=seen(reason.high)) if isinstance(reason, LeastHeat) else reason


def _all_ranges(openings: Sequence[Opening], planes: WallPlanes, job: Job, *, proud_outside: bool) -> list[Range]:
    return [one for opening in openings for one in ranges(opening, planes, job, proud_outside=proud_outside)]


def _ends(found: Sequence[Range]) -> tuple[Range, Range]:
    return max(found, key=lambda one: one.low), min(found, key=lambda one: one.high)


def _clash(low: Range, high: Range) -> bool:
    return low.low > high.high + SAME_PLANE


def _within(low: Range, high: Range, lead: Opening, planes: WallPlanes, job: Job) -> Chosen:
    wanted = flange_at_share(planes, 0.5)
    plane = min(max(wanted, low.low), high.high)
    plane = _on_grid(plane, low.low, high.high, lead, job.shop.grid)
    reasons = [_why(plane, wanted, low, high, job.shop.grid.step)]
    saved = _saved_board(plane, low.low, lead, job)
    if saved is not None:
        plane, board = saved
        reasons.append(board)
    return Chosen(flange_plane=plane, reasons=tuple(reasons))


def _on_grid(plane: float, low: float, high: float, lead: Opening, grid: Grid) -> float:
    """Put the interior depth of the leading window on the shop's grid, inside the limits where the grid allows."""
    jamb_depth = lead.window.jamb_depth
    snapped = jamb_depth + grid.round(plane - jamb_depth)
    near = (snapped, snapped + grid.step, snapped - grid.step)
    return next((one for one in near if low - SAME_PLANE <= one <= high + SAME_PLANE), plane)


def _why(plane: float, wanted: float, low: Range, high: Range, step: float) -> Reason:
    if abs(plane - wanted) <= step:
        return SharedEqually()
    is_out = plane > wanted
    bound = low.low_bound if is_out else high.high_bound
    return BoundByLimit(bound=bound, moved=abs(plane - wanted), is_moved_out=is_out)


def _saved_board(plane: float, low: float, lead: Opening, job: Job) -> tuple[float, MovedForBoard] | None:
    """Move in a little where the interior jamb then comes out of the next narrower board."""
    shop, jamb_depth = job.shop, lead.window.jamb_depth
    rip = jamb_rip(lead, plane - jamb_depth, shop.proud)
    widths = jamb_boards(lead, job)
    now = next((width for width in widths if width - shop.edge_allowance >= rip - SAME_PLANE), math.inf)
    narrower = [width for width in widths if width < now]
    if not narrower or lead.interior.stack or lead.interior.panels:
        return None  # neither of stacked frames nor of panels is there a jamb that a narrower board would save
    deepest = deepest_of(lead, narrower[-1] - shop.edge_allowance, shop.proud)
    depth = shop.grid.at(shop.grid.count(deepest - shop.grid.step / 2))
    moved = plane - jamb_depth - depth
    if moved > job.limits.shift_for_board or jamb_depth + depth < low - SAME_PLANE:
        return None
    return jamb_depth + depth, MovedForBoard(moved=moved, board=narrower[-1])
