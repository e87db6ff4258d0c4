"""Bent metal round an opening of straight edges, or of chords of arcs: a strip along each, lapped like shingles.

At a corner the face legs of both strips are mitered at half of what the path turns there, so that they cover the wall
between them; the upper one goes on past that line by the corner lap, and its return is turned over the lower by as
much.
"""

from __future__ import annotations

import math
from dataclasses import replace

from jambs.geometry import tangent
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.metal_returns import MetalReturnsEntry
from jambs.job.models.path import corner_turn_deg
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.length import ROUND_OFF, Grid
from jambs.parts.board.cuts import Crosscut, Cut, Edge, End, Notch, Rip, Taper
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.board.touches import MetalCorner, ReturnBend
from jambs.parts.jambs.shaped_jambs import clear_path, shaped_exterior_jambs
from jambs.parts.kit.kit import FittedSide
from jambs.parts.shapes.arch import Rack
from jambs.parts.shapes.clear import ClearOpening
from jambs.parts.shapes.flat_segments import FlatPath
from jambs.parts.trim.metal_returns import as_boards, deep_sides, metal_blank, return_profile, sill_slope
from jambs.place.placement import Placement
from jambs.sides import Side


def shaped_returns(
    clear: ClearOpening,
    sides: dict[Side, FittedSide],
    placement: Placement,
    trim: ExteriorTrim,
    rack: Rack,
    flat: FlatPath | None = None,
) -> tuple[Part, ...]:
    """Make a strip along every edge of a clear opening; none along a sill of metal, or where it is open below.

    ``flat``: along which arcs are followed by chords.
    """
    entry = trim.returns
    assert entry is not None
    slope = sill_slope(entry)
    deep = deep_sides(sides, placement, entry)
    strips = shaped_exterior_jambs(placement, clear, deep, as_boards(trim, entry), slope, rack, flat=flat)
    path = flat.path if flat else clear_path(placement.opening, clear)
    laid = {(one.side, one.member) for one in strips}
    return tuple(_bent(strip, path, laid, entry, rack.shop.grid) for strip in strips)


def _bent(strip: Part, path: FramePath, laid: set[tuple[Side, int]], entry: MetalReturnsEntry, grid: Grid) -> Part:
    """Make the blank of one strip. Outside it starts where its edge finishes, as the path is walked from inside."""
    i = next(i for i, edge in enumerate(path) if (edge.side, edge.run) == (strip.side, strip.member))
    after = (i + 1) % len(path)
    corners = (_corner(path, after, path[i], laid, entry), _corner(path, i, path[i], laid, entry))
    start, finish = strip.silhouettes.sizes.start_width, strip.silhouettes.sizes.finish_width
    profile = return_profile(max(start, finish), entry)
    girths = [return_profile(width, entry).girth for width in (start, finish)]
    tapers: tuple[Cut, ...] = (Taper(start_width=girths[0], finish_width=girths[1]),) if start != finish else ()
    length = grid.round(strip.length + sum(one.past + one.lap for one in corners if one))
    foot = sill_slope(entry) if not all(corners) else 0.0
    return replace(
        strip,
        kind=PartKind.METAL_RETURN,
        blank=metal_blank(entry),
        cuts=(Rip(width=max(girths)), *tapers, Crosscut(length=length), *_notches(corners, profile.flat_widths)),
        in_place=strip.cuts,
        touches=(ReturnBend(profile=profile, lap=0.0, foot_deg=foot, corners=corners),),
    )


def _corner(
    path: FramePath, at: int, own: FrameEdge, laid: set[tuple[Side, int]], entry: MetalReturnsEntry
) -> MetalCorner | None:
    """Return how the strip of an edge ends at the corner where edge ``at`` starts; nothing where it meets no other."""
    before, after = path[at - 1], path[at]
    if not all((one.side, one.run) in laid for one in (before, after)):
        return None
    turn = corner_turn_deg(path, at)
    other = after if own is before else before
    rise = _middle(own) - _middle(other)
    laps = rise > ROUND_OFF or (abs(rise) <= ROUND_OFF and own is after)
    return MetalCorner(turn_deg=turn, past=entry.face_leg * tangent(turn / 2), lap=entry.corner_lap if laps else 0.0)


def _middle(edge: FrameEdge) -> float:
    return (edge.start[1] + edge.finish[1]) / 2


def _notches(corners: tuple[MetalCorner | None, ...], flat: tuple[float, ...]) -> tuple[Cut, ...]:
    """The leg at the frame ends at the corner, and so does the return of the strip that is lapped."""
    return tuple(
        Notch(end=end, edge=Edge.NEAR, along=one.past + one.lap, across=flat[0] if one.lap else flat[0] + flat[1])
        for end, one in zip(End, corners, strict=True)
        if one and not math.isclose(one.past + one.lap, 0.0)
    )
