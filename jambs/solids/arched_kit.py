"""The curved boards of a kit, inside and outside, measured on the solids."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from jambs.geometry import tangent
from jambs.job.models.arc_outset import backs_of, stands_on
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.path import area_of, outset
from jambs.job.models.path_edge import FramePath
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.jambs.shaped_jambs import clear_path, goes_all_round
from jambs.parts.shapes.clear import clear_opening
from jambs.parts.shapes.feet import feet
from jambs.place.frame_path import frame_path, path_at
from jambs.sides import Side
from jambs.solids.arch_checks import (
    BoardOnPath,
    arch_joints,
    arch_measures,
    bearing,
    boards_on,
    casing_measures,
    depth_measures,
)
from jambs.solids.depths_round import exterior_depths, exterior_sides, interior_depths
from jambs.solids.flat_segments import flat_bearing, flat_measures
from jambs.solids.jambs_round import flat_inside, flat_outside
from jambs.solids.lookup import X, Y
from jambs.solids.model import KitSolids
from jambs.solids.report import TIGHT, JointCheck, Measure
from jambs.solids.shape_measures import asked_gap, near_reveal
from jambs.solids.shape_sill import path_on_sill, stands_on_sill


def is_arched(solids: KitSolids) -> bool:
    """Say whether an edge of the opening is curved."""
    shape = solids.kit.placement.opening.shape
    return shape is not None and shape.is_arched


def _even(out: float, sill: float) -> dict[Side, float]:
    return {**dict.fromkeys(Side, out), Side.SILL: sill}


def inside_arch_joints(solids: KitSolids) -> list[JointCheck]:
    """Measure the joints of curved boards inside."""
    if not is_arched(solids):
        return []
    placement = solids.kit.placement
    trim, clear = placement.opening.interior, clear_path(placement.opening, solids.kit.room)
    cased = outset(clear, dict.fromkeys(Side, trim.casing_reveal))
    casing = boards_on(solids, Where.INTERIOR, PartKind.CASING)
    jambs = boards_on(solids, Where.INTERIOR, PartKind.EXTENSION_JAMB)
    found = arch_joints("casing", casing, cased, trim.casing.width, trim.casing.thickness)
    if not jambs:
        return found
    if side := flat_inside(solids):
        return [*found, *flat_bearing(solids, side)]
    found += arch_joints("jamb", jambs, clear, trim.jamb.thickness, interior_depths(solids))
    box = _Box(clear=clear, thickness=trim.jamb.thickness, has_bottom=trim.style.has_bottom)
    if solids.inside_slack.gap > TIGHT:
        return found  # it bears when the arc is scribed to the wall
    return [*found, box.bears("casing", casing, jambs, reveal=trim.casing_reveal, way=1.0)]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Box:
    """A box of jambs: its clear opening, how thick they are [in], and whether one lies along the sill."""

    clear: FramePath
    thickness: float
    has_bottom: bool

    @property
    def area(self) -> float:
        """Area inside the backs of the jambs [sq in].

        On a stool that is what lies over it: of boards all round, less the board below, which ends square under the
        outer corners of what stands on it.
        """
        over = outset(self.clear, _even(self.thickness, 0.0))
        if self.has_bottom:
            return area_of(backs_of(self.clear, self.thickness))
        if not any(stands_on(self.clear, i) for i in range(len(self.clear))):
            return area_of(over)
        below = self.thickness * next(edge.length for edge in over if edge.side is Side.SILL)
        return area_of(backs_of(self.clear, self.thickness)) - below

    def bears(
        self,
        what: str,
        casing: Sequence[BoardOnPath],
        jambs: Sequence[BoardOnPath],
        *,
        reveal: float,
        way: float,
        slope: float = 0.0,
    ) -> JointCheck:
        """Measure the casing on the edges of the jambs."""
        inner = outset(self.clear, _even(reveal, reveal if self.has_bottom else 0.0))
        near = 0.0
        if slope:
            (left, right), (far, end) = feet(inner, 0.0), feet(self.clear, self.thickness)
            near = slope * (left - far + end - right)
        return bearing(what, casing, jambs, self.area - area_of(inner), way, near)


def outside_arch_joints(solids: KitSolids) -> list[JointCheck]:
    """Measure the joints of curved boards outside."""
    placement = solids.kit.placement
    trim = placement.opening.exterior
    if not is_arched(solids) or trim is None or trim.returns:  # strips of metal meet as boards do at straight edges
        return []
    casing = boards_on(solids, Where.EXTERIOR, PartKind.CASING)
    jambs = boards_on(solids, Where.EXTERIOR, PartKind.EXTERIOR_JAMB)
    if not jambs:
        cased = outset(frame_path(placement.opening), dict.fromkeys(Side, trim.sealant_joint))
        return arch_joints("exterior casing", casing, cased, trim.casing.width, trim.casing.thickness)
    side = flat_outside(solids)
    clear = side.ends if side else _outside_clear(solids, jambs, casing, trim)
    cased = outset(clear, dict.fromkeys(Side, trim.casing_reveal))
    found = arch_joints("exterior casing", casing, cased, trim.casing.width, trim.casing.thickness)
    if side:
        return [*found, *flat_bearing(solids, side)]
    found += arch_joints("exterior jamb", jambs, clear, trim.jamb.thickness, exterior_depths(solids))
    box = _Box(clear=clear, thickness=trim.jamb.thickness, has_bottom=_goes_round(solids))
    if solids.outside_slack.gap > TIGHT:
        return found
    slope = tangent(trim.sill.slope) if trim.sill else 0.0
    return [*found, box.bears("exterior casing", casing, jambs, reveal=trim.casing_reveal, way=-1.0, slope=slope)]


def _goes_round(solids: KitSolids) -> bool:
    """Say whether boards go all round outside."""
    opening = solids.kit.placement.opening
    return opening.exterior is not None and goes_all_round(opening, opening.exterior)


def _outside_clear(
    solids: KitSolids, jambs: Sequence[BoardOnPath], casing: Sequence[BoardOnPath], trim: ExteriorTrim
) -> FramePath:
    """The path between the exterior jambs, from the faces of the legs and the crown down to where the casing ends."""
    opening = solids.kit.placement.opening
    if _goes_round(solids):
        grid = solids.job.shop.grid
        face = opening.window.outside_face
        return clear_path(opening, clear_opening(opening.frame, face, frame_reveal=trim.frame_reveal, grid=grid))
    if stands_on_sill(solids):
        return path_on_sill(solids, trim, exterior_sides(solids)[Side.SILL].greatest)
    left, right = jambs[0].solid, jambs[-1].solid
    slope = trim.sill.slope if trim.sill else 0.0
    return path_at(
        opening,
        left=left.high[X],
        right=right.low[X],
        bottom=casing[0].solid.low[Y] + trim.casing.thickness * tangent(slope),
        top=max(board.solid.high[Y] for board in jambs) - trim.jamb.thickness,
    )


def inside_arch_measures(solids: KitSolids) -> list[Measure]:
    """Measure reveals, shim space and depths along curved jambs inside."""
    if not is_arched(solids):
        return []
    placement = solids.kit.placement
    trim, clear = placement.opening.interior, clear_path(placement.opening, solids.kit.room)
    casing = boards_on(solids, Where.INTERIOR, PartKind.CASING)
    jambs = boards_on(solids, Where.INTERIOR, PartKind.EXTENSION_JAMB)
    if not jambs:
        return []
    if side := flat_inside(solids):
        return flat_measures(solids, side)
    gap = asked_gap(solids, Side.HEAD)
    found = arch_measures(solids, jambs, solids.frame[0], asked=trim.frame_reveal, shim=gap, outside=False)
    found += depth_measures(jambs, clear, interior_depths(solids), outside=False)
    near = near_reveal(solids, solids.inside_slack)
    return [*found, *casing_measures("casing reveal", casing, jambs, clear, trim.casing_reveal, near)]


def outside_arch_measures(solids: KitSolids) -> list[Measure]:
    """Measure reveals and depths along curved jambs outside."""
    placement = solids.kit.placement
    trim = placement.opening.exterior
    jambs = boards_on(solids, Where.EXTERIOR, PartKind.EXTERIOR_JAMB)
    if side := flat_outside(solids):
        return flat_measures(solids, side)
    if not is_arched(solids) or trim is None or not jambs:
        return []
    casing = boards_on(solids, Where.EXTERIOR, PartKind.CASING)
    clear = _outside_clear(solids, jambs, casing, trim)
    found = arch_measures(solids, jambs, solids.frame[-1], asked=trim.frame_reveal, shim=None, outside=True)
    found += depth_measures(jambs, clear, exterior_depths(solids), outside=True)
    near = near_reveal(solids, solids.outside_slack)
    return [*found, *casing_measures("exterior casing reveal", casing, jambs, clear, trim.casing_reveal, near)]
