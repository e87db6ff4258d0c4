"""A position rule becomes a flange plane, with the reason in words."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from jambs.job.models.openings import Job, Opening
from jambs.job.models.position import PositionRule
from jambs.length import Grid, decimal_text, length_text
from jambs.place.choose import Chosen, choose, within_limits
from jambs.place.depths import flange_at_equal_depths, flange_at_share
from jambs.wall.planes import WallPlanes

LeastHeatLoss = Callable[[Opening, WallPlanes, float, float], float]
"""Finds the flange plane [in] at which an opening loses least heat, between a least and a greatest plane [in]."""


class RuleError(ValueError):
    """A rule that gives no position in this wall; the message says what was found and what is allowed."""


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
        Clash: *choose for me* or *least heat loss* finds no position.
    """
    if rule.choose:
        return choose(openings, planes, job)
    if rule.least_heat_loss:
        return _least_heat_loss(lead, openings, planes, job, least_heat_loss)
    if rule.flange_on is not None:
        return _on_face(rule.flange_on, planes)
    plane, reason = _wanted(rule, lead, planes, job)
    return Chosen(flange_plane=_snapped(plane, lead, planes, job.shop.grid), reasons=(reason,))


def _least_heat_loss(
    lead: Opening, openings: Sequence[Opening], planes: WallPlanes, job: Job, study: LeastHeatLoss | None
) -> Chosen:
    if study is None:
        raise RuleError("least_heat_loss: no heat study is at hand here; give another rule, like share: 1/2")
    low, high = within_limits(openings, planes, job)
    plane = study(lead, planes, low.low, high.high)
    depth = length_text(plane - lead.window.jamb_depth, units=job.units)
    ends = [f"{_text(end, job)} ({name})" for end, name in ((low.low, low.name), (high.high, high.name))]
    reason = (
        f"Least heat through the joint of window and wall: interior depth {depth}. "
        f"Limits leave the flange plane from {ends[0]} to {ends[1]}."
    )
    return Chosen(flange_plane=plane, reasons=(reason,))


def _text(length: float, job: Job) -> str:
    return length_text(length, units=job.units)


def _wanted(rule: PositionRule, lead: Opening, planes: WallPlanes, job: Job) -> tuple[float, str]:
    window = lead.window
    if rule.share is not None:
        share, added = decimal_text(rule.share * 100, 1), length_text(planes.added_depth, units=job.units)
        return flange_at_share(planes, rule.share), f"{share} % of the added depth of {added} is taken inside."
    if rule.interior_depth is not None:
        wish = length_text(rule.interior_depth, units=job.units)
        return window.jamb_depth + rule.interior_depth, f"The job asks for an interior depth of {wish}."
    if rule.exterior_depth is not None:
        wish = length_text(rule.exterior_depth, units=job.units)
        plane = planes.trim_plane - window.frame_projection - rule.exterior_depth
        return plane, f"The job asks for an exterior depth of {wish}."
    return flange_at_equal_depths(window, planes), "Interior and exterior depth are made equal."


def _snapped(plane: float, lead: Opening, planes: WallPlanes, grid: Grid) -> float:
    """Keep a plane that is already a face of the wall; else put the lead's interior depth on the grid."""
    if min(abs(plane - planes.sheathing_plane), abs(plane - planes.trim_plane)) < grid.fine.step / 4:
        return plane
    return lead.window.jamb_depth + grid.round(plane - lead.window.jamb_depth)


def _on_face(name: str, planes: WallPlanes) -> Chosen:
    """Put the flange on the outer face of a layer: by its name, its role, or *sheathing* or *trim plane*."""
    named = {"sheathing": planes.sheathing_plane, "trim plane": planes.trim_plane}
    for one in planes.layers:
        named.setdefault(one.layer.role.value, one.outer)
        named[one.layer.role.value] = max(named[one.layer.role.value], one.outer)
        named[one.layer.name] = one.outer
    if name not in named:
        raise RuleError(
            f"flange_on: wall {planes.wall.name!r} has no face {name!r}; allowed are {', '.join(sorted(named))}"
        )
    return Chosen(flange_plane=named[name], reasons=(f"The job puts the flange on the face of the {name}.",))
