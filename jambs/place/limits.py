"""What a position must respect: each limit as a range of the flange plane [in]."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from jambs.job.models.layers import BuckKind
from jambs.job.models.openings import Job, Opening
from jambs.job.models.shop import Escape, Limits
from jambs.length import HALF_64TH
from jambs.place.escape import EscapeFault, escape_faults
from jambs.place.flares import deepest_of
from jambs.place.limit_kinds import LimitKind
from jambs.place.placement import Swing
from jambs.place.reasons import BindingLimit, LimitEnd
from jambs.place.sash import swing_at
from jambs.place.units import unit_openings
from jambs.wall.planes import WallPlanes

FAR = 1e6
"""Further than any wall is deep [in]: no limit on that side."""
SAME_PLANE = HALF_64TH
"""Two planes nearer than this are one plane [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Range:
    """The flange planes one limit allows the opening of a mark, low … high [in]."""

    limit: LimitKind
    mark: str
    low: float = -FAR
    high: float = FAR

    def miss(self, flange_plane: float) -> float:
        """How far a flange plane lies outside the range [in]; 0 inside."""
        return max(self.low - flange_plane, flange_plane - self.high, 0.0)

    @property
    def low_end(self) -> LimitEnd:
        """The end that asks for a plane further out."""
        return LimitEnd(limit=self.limit, mark=self.mark, plane=self.low)

    @property
    def high_end(self) -> LimitEnd:
        """The end that asks for a plane further in."""
        return LimitEnd(limit=self.limit, mark=self.mark, plane=self.high)

    @property
    def low_bound(self) -> BindingLimit:
        """That end, as its own opening tells it."""
        return BindingLimit(limit=self.limit, plane=self.low)

    @property
    def high_bound(self) -> BindingLimit:
        """That end, as its own opening tells it."""
        return BindingLimit(limit=self.limit, plane=self.high)

    def allows(self, bound: BindingLimit) -> bool:
        """Say whether a limit that binds is this one, or one that is just the same."""
        at = bound.plane
        assert at is not None  # what binds has a plane until it is told of another opening
        return bound.limit is self.limit and any(abs(end - at) <= SAME_PLANE for end in (self.low, self.high))


def widest_jamb(opening: Opening, job: Job) -> float | None:
    """The widest jamb that comes out of one board at hand, edge straightened [in]; None: no such board is listed.

    Where jamb frames are stacked, one board for each of them; one that is a frame with panels needs no wide board.
    """
    if opening.interior.panels:
        return None
    widths, stack = jamb_boards(opening, job), opening.interior.stack
    frames = stack.frames if stack else 1
    return frames * (max(widths, default=0.0) - job.shop.edge_allowance) if widths else None


def jamb_boards(opening: Opening, job: Job) -> tuple[float, ...]:
    """Widths of the boards at hand that the interior jamb can come out of, narrow → wide [in]."""
    jamb = opening.interior.jamb
    fits = (b for b in job.boards if b.stock == jamb.stock and abs(b.thickness - jamb.thickness) < SAME_PLANE)
    return tuple(sorted({board.width for board in fits}))


def ranges(opening: Opening, planes: WallPlanes, job: Job, *, proud_outside: bool) -> tuple[Range, ...]:
    """All limits on the flange plane of one opening; ``proud_outside``: the frame stands at or past the trim plane."""
    found = [
        _wall_range(opening, planes),
        *_interior_ranges(opening, job),
        *_exterior_ranges(opening, planes, job.limits, proud_outside),
        _carrying_range(opening, planes, job.limits),
        *_sash_ranges(opening, planes, job.limits),
    ]
    return tuple(found)


def _wall_range(opening: Opening, planes: WallPlanes) -> Range:
    if opening.window.nailing_flange:
        limit, low = LimitKind.WALL, planes.sheathing_plane
    else:
        limit, low = LimitKind.WALL_BY_CLIPS, planes.stud_face
    return Range(limit=limit, mark=opening.mark, low=low, high=planes.trim_plane)


def _interior_ranges(opening: Opening, job: Job) -> list[Range]:
    mark, jamb_depth, limits = opening.mark, opening.window.jamb_depth, job.limits
    least, greatest = limits.least_interior_depth, limits.greatest_interior_depth
    found = [
        Range(limit=LimitKind.LEAST_INTERIOR_DEPTH, mark=mark, low=jamb_depth + least),
        Range(limit=LimitKind.GREATEST_INTERIOR_DEPTH, mark=mark, high=jamb_depth + greatest),
    ]
    widest = widest_jamb(opening, job)
    if widest is not None:
        high = jamb_depth + deepest_of(opening, widest, job.shop.proud)
        found.append(Range(limit=LimitKind.ONE_BOARD, mark=mark, high=high))
    return found


def _exterior_ranges(opening: Opening, planes: WallPlanes, limits: Limits, proud: bool) -> list[Range]:
    if opening.exterior is None:
        return []
    mark, flush = opening.mark, planes.trim_plane - opening.window.frame_projection
    if proud:
        return [Range(limit=LimitKind.FRAME_PROUD, mark=mark, low=flush)]
    return [
        Range(limit=LimitKind.LEAST_EXTERIOR_DEPTH, mark=mark, high=flush - limits.least_exterior_depth),
        Range(limit=LimitKind.GREATEST_EXTERIOR_DEPTH, mark=mark, low=flush - limits.greatest_exterior_depth),
    ]


def _carrying_range(opening: Opening, planes: WallPlanes, limits: Limits) -> Range:
    buck = planes.wall.buck
    if buck is None or buck.kind is BuckKind.NONE:
        return Range(limit=LimitKind.CARRIED, mark=opening.mark, high=planes.carrying[-1])
    return Range(limit=LimitKind.OVERHANG, mark=opening.mark, high=planes.sheathing_plane + limits.overhang)


def _sash_ranges(opening: Opening, planes: WallPlanes, limits: Limits) -> list[Range]:
    if opening.gang is None:
        return _ranges_of_sash(opening, planes, limits)
    # Any one unit is the way out, so a limit of one of them alone would be too narrow: what is chosen is checked.
    units = (replace(one, escape=False) for one in unit_openings(opening))
    return [found for unit in units for found in _ranges_of_sash(unit, planes, limits)]


def _ranges_of_sash(opening: Opening, planes: WallPlanes, limits: Limits) -> list[Range]:
    if not opening.window.sash.swings:
        return []
    asked: list[tuple[LimitKind, Callable[[float], bool]]] = [
        (LimitKind.SASH_OPENING, lambda depth: _opens(opening, depth, planes, limits.sash_opening_deg)),
    ]
    if opening.escape:
        asked.append((LimitKind.ESCAPE_OPENING, lambda depth: not _escape_at(opening, depth, planes, limits.escape)))
    return [one for limit, holds in asked if (one := _depth_range(limit, holds, opening, planes))]


def _opens(opening: Opening, depth: float, planes: WallPlanes, least_deg: float) -> bool:
    swing = _swing(opening, depth, planes)
    return swing is not None and swing.greatest_deg >= least_deg


def _escape_at(opening: Opening, depth: float, planes: WallPlanes, escape: Escape) -> tuple[EscapeFault, ...]:
    return escape_faults(opening, _swing(opening, depth, planes), escape)


def _swing(opening: Opening, depth: float, planes: WallPlanes) -> Swing | None:
    """Open the sash at a depth on the side it opens to [in]."""
    return swing_at(opening, interior_depth=depth, exterior_depth=depth, cladding_depth=planes.cladding_depth)


def _depth_range(
    limit: LimitKind, holds: Callable[[float], bool], opening: Opening, planes: WallPlanes
) -> Range | None:
    """Find the depth up to which a wish holds; no limit where it holds at every depth, or at none."""
    deepest = planes.trim_plane
    if holds(deepest) or not holds(0.0):
        return None
    low, high = 0.0, deepest
    while high - low > SAME_PLANE:
        middle = (low + high) / 2
        low, high = (middle, high) if holds(middle) else (low, middle)
    if opening.window.sash.outward:
        out = planes.trim_plane - opening.window.frame_projection
        return Range(limit=limit, mark=opening.mark, low=out - low)
    return Range(limit=limit, mark=opening.mark, high=opening.window.jamb_depth + low)
