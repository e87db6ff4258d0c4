"""A position rule becomes a flange plane, with the reason."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from jambs.findings import FindingsError, Reason
from jambs.job.models.openings import Job, Opening
from jambs.job.models.position import PositionRule
from jambs.length import Grid
from jambs.place.choose import Chosen, asked_by, carried_within_limits, choose
from jambs.place.depths import flange_at_equal_depths, flange_at_share
from jambs.place.findings import NoHeatStudy, NoSuchFace
from jambs.place.limits import SAME_PLANE
from jambs.place.reasons import (
    AskedExteriorDepth,
    AskedInteriorDepth,
    DepthsMadeEqual,
    LeastHeat,
    OnFace,
    ShareTakenInside,
)
from jambs.wall.planes import WallPlanes

LeastHeatLoss = Callable[[Opening, WallPlanes, float, float], float]
"""Finds the flange plane [in] at which an opening loses least heat, between a least and a greatest plane [in]."""


class RuleError(FindingsError):
    """A rule that gives no position in this wall."""


def flange_plane_for(
    rule: PositionRule,
    lead: Opening,
    openings: Sequence[Opening],
    planes: WallPlanes,
    job: Job,
    *,
    least_heat_loss: LeastHeatLoss | None = None,
) -> Chosen:
    """Find the flange plane for all openings of a wall that follow one rule, worked out for the ``lead``.

    The interior depth of the lead is put on the shop's grid, so that its jamb is; every other depth follows.

    Raises:
        RuleError: the rule names a face the wall does not have, or asks for a heat study that was not given.
        LimitClash: *choose for me* or *least heat loss* finds no position.
    """
    if rule.choose:
        return choose(openings, planes, job)
    if rule.least_heat_loss:
        return _least_heat_loss(lead, openings, planes, job, least_heat_loss)
    if rule.flange_on is not None:
        return _on_face(rule.flange_on, lead, planes)
    plane, reason = _wanted(rule, lead, planes)
    return Chosen(flange_plane=_snapped(plane, lead, planes, job.shop.grid), reasons=(reason,))


def _least_heat_loss(
    lead: Opening, openings: Sequence[Opening], planes: WallPlanes, job: Job, study: LeastHeatLoss | None
) -> Chosen:
    if study is None:
        raise RuleError(NoHeatStudy(subject=asked_by(lead)))
    low, high = carried_within_limits(openings, planes, job)
    plane = low.low if high.high - low.low < SAME_PLANE else study(lead, planes, low.low, high.high)
    depth = plane - lead.window.jamb_depth
    reason = LeastHeat(interior_depth=depth, low=low.low_bound, high=high.high_bound)
    return Chosen(flange_plane=plane, reasons=(reason,))


def _wanted(rule: PositionRule, lead: Opening, planes: WallPlanes) -> tuple[float, Reason]:
    window = lead.window
    if rule.share is not None:
        reason = ShareTakenInside(share=rule.share, added_depth=planes.added_depth)
        return flange_at_share(planes, rule.share), reason
    if rule.interior_depth is not None:
        return window.jamb_depth + rule.interior_depth, AskedInteriorDepth(depth=rule.interior_depth)
    if rule.exterior_depth is not None:
        plane = planes.trim_plane - window.frame_projection - rule.exterior_depth
        return plane, AskedExteriorDepth(depth=rule.exterior_depth)
    return flange_at_equal_depths(window, planes), DepthsMadeEqual()


def _snapped(plane: float, lead: Opening, planes: WallPlanes, grid: Grid) -> float:
    """Keep a plane that is already a face of the wall; else put the lead's interior depth on the grid."""
    if min(abs(plane - planes.sheathing_plane), abs(plane - planes.trim_plane)) < grid.fine.step / 4:
        return plane
    return lead.window.jamb_depth + grid.round(plane - lead.window.jamb_depth)


def _on_face(name: str, lead: Opening, planes: WallPlanes) -> Chosen:
    """Put the flange on the outer face of a layer: by its name, its role, or *sheathing* or *trim plane*."""
    named = {"sheathing": planes.sheathing_plane, "trim plane": planes.trim_plane}
    for one in planes.layers:
        named.setdefault(one.layer.role.value, one.outer)
        named[one.layer.role.value] = max(named[one.layer.role.value], one.outer)
        named[one.layer.name] = one.outer
    if name not in named:
        allowed = tuple(sorted(named))
        raise RuleError(NoSuchFace(subject=asked_by(lead), wall=planes.wall.name, face=name, allowed=allowed))
    reason = OnFace(face=name, has_flange=lead.window.nailing_flange)
    return Chosen(flange_plane=named[name], reasons=(reason,))
