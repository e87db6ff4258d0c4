"""What a position must respect: each limit as a range of the flange plane [in]."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from jambs.job.models.layers import BuckKind
from jambs.job.models.openings import Job, Opening
from jambs.length import HALF_64TH
from jambs.place.sash import escape_faults, swing_at
from jambs.wall.planes import WallPlanes

FAR = 1e6
"""Further than any wall is deep [in]: no limit on that side."""
SAME_PLANE = HALF_64TH
"""Two planes nearer than this are one plane [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Range:
    """The flange planes one limit allows, low … high [in]; ``name`` says which limit, for which opening."""

    name: str
    low: float = -FAR
    high: float = FAR

    def miss(self, flange_plane: float) -> float:
        """How far a flange plane lies outside the range [in]; 0 inside."""
        return max(self.low - flange_plane, flange_plane - self.high, 0.0)


def widest_jamb(opening: Opening, job: Job) -> float | None:
    """The widest jamb that comes out of one board at hand, edge straightened [in]; None: no such board is listed."""
    widths = jamb_boards(opening, job)
    return max(widths, default=0.0) - job.shop.edge_allowance if widths else None


def jamb_boards(opening: Opening, job: Job) -> tuple[float, ...]:
    """Widths of the boards at hand that the interior jamb can come out of, narrow → wide [in]."""
    jamb = opening.interior.jamb
    fits = (b for b in job.boards if b.stock == jamb.stock and abs(b.thickness - jamb.thickness) < SAME_PLANE)
    return tuple(sorted({board.width for board in fits}))


def ranges(opening: Opening, planes: WallPlanes, job: Job, *, proud_outside: bool = False) -> tuple[Range, ...]:
    """All limits on the flange plane of one opening; ``proud_outside``: the frame stands at or past the trim plane."""
    found = [
        _wall_range(opening, planes),
        *_interior_ranges(opening, job),
        *_exterior_ranges(opening, planes, job, proud_outside),
        _carrying_range(planes, job),
        *_sash_ranges(opening, planes, job),
    ]
    return tuple(found)


def _wall_range(opening: Opening, planes: WallPlanes) -> Range:
    low = planes.sheathing_plane if opening.window.nailing_flange else planes.stud_face
    where = "sheathing" if opening.window.nailing_flange else "inside of the studs"
    return Range(name=f"between {where} and trim plane", low=low, high=planes.trim_plane)


def _interior_ranges(opening: Opening, job: Job) -> list[Range]:
    jamb_depth, limits = opening.window.jamb_depth, job.limits
    found = [
        Range(name="least interior depth", low=jamb_depth + limits.least_interior_depth),
        Range(name="greatest interior depth", high=jamb_depth + limits.greatest_interior_depth),
    ]
    widest = widest_jamb(opening, job)
    if widest is not None:
        high = jamb_depth + widest - job.shop.proud
        found.append(Range(name="interior jamb out of one board", high=high))
    return found


def _exterior_ranges(opening: Opening, planes: WallPlanes, job: Job, proud: bool) -> list[Range]:
    if opening.exterior is None:
        return []
    flush = planes.trim_plane - opening.window.frame_projection
    if proud:
        return [Range(name="frame at the trim plane or proud of it", low=flush)]
    return [
        Range(name="least exterior depth", high=flush - job.limits.least_exterior_depth),
        Range(name="greatest exterior depth", low=flush - job.limits.greatest_exterior_depth),
    ]


def _carrying_range(planes: WallPlanes, job: Job) -> Range:
    carrying = [one.outer for one in planes.layers if one.layer.carries]
    buck = planes.wall.buck
    if buck is None or buck.kind is BuckKind.NONE:
        return Range(name="what carries the flange", high=max([planes.sheathing_plane, *carrying]))
    return Range(name="greatest overhang", high=planes.sheathing_plane + job.limits.overhang)


def _sash_ranges(opening: Opening, planes: WallPlanes, job: Job) -> list[Range]:
    if not opening.window.sash.swings:
        return []
    asked: list[tuple[str, Callable[[float], bool]]] = [
        ("sash opening", lambda depth: _degrees(opening, depth) >= job.limits.sash_opening_deg),
    ]
    if opening.escape:
        asked.append(("escape opening", lambda depth: not _escape_at(opening, depth, job)))
    return [one for name, holds in asked if (one := _depth_range(name, holds, opening, planes))]


def _degrees(opening: Opening, depth: float) -> float:
    swing = swing_at(opening, interior_depth=depth, exterior_depth=depth)
    return swing.greatest_deg if swing else 180.0


def _escape_at(opening: Opening, depth: float, job: Job) -> tuple[str, ...]:
    swing = swing_at(opening, interior_depth=depth, exterior_depth=depth)
    return escape_faults(opening, swing, job.limits.escape, job.units)


def _depth_range(name: str, holds: Callable[[float], bool], opening: Opening, planes: WallPlanes) -> Range | None:
    """Find the depth up to which a wish holds; no limit where it holds at every depth, or at none."""
    deepest = planes.trim_plane
    if holds(deepest) or not holds(0.0):
        return None
    low, high = 0.0, deepest
    while high - low > SAME_PLANE:
        middle = (low + high) / 2
        low, high = (middle, high) if holds(middle) else (low, middle)
    if opening.window.sash.outward:
        return Range(name=name, low=planes.trim_plane - opening.window.frame_projection - low)
    return Range(name=name, high=opening.window.jamb_depth + low)
