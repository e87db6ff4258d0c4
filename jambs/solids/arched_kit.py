"""The curved heads of a kit, inside and outside, measured on the solids."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.geometry import tangent
from jambs.job.models.path import FramePath, outset
from jambs.job.models.trim import CasingEntry
from jambs.parts.kinds import PartKind, Where
from jambs.parts.shaped_jambs import clear_path
from jambs.place.frame_path import frame_path, path_at
from jambs.sides import Side
from jambs.solids.arch_checks import (
    arch_boards,
    arch_joints,
    arch_measures,
    bearing,
    casing_measures,
    depth_measures,
)
from jambs.solids.lookup import X, Y
from jambs.solids.model import KitSolids, Solid
from jambs.solids.report import JointCheck, Measure
from jambs.solids.shape_measures import asked_gap


def is_arched(solids: KitSolids) -> bool:
    """Say whether the opening has a curved head."""
    shape = solids.kit.placement.opening.shape
    return shape is not None and shape.is_arched


def _even(out: float, sill: float) -> dict[Side, float]:
    return {**dict.fromkeys(Side, out), Side.SILL: sill}


def _of_kind(solids: KitSolids, where: Where, kind: PartKind) -> list[Solid]:
    return [one for one in solids.parts if one.part and one.part.where is where and one.part.kind is kind]


def inside_arch_joints(solids: KitSolids) -> list[JointCheck]:
    """Measure the joints of a curved head inside."""
    if not is_arched(solids):
        return []
    placement = solids.kit.placement
    trim, clear = placement.opening.interior, clear_path(placement.opening, solids.kit.room)
    cased = outset(clear, dict.fromkeys(Side, trim.casing_reveal))
    casing = arch_boards(solids, Where.INTERIOR, PartKind.CASING)
    jambs = arch_boards(solids, Where.INTERIOR, PartKind.EXTENSION_JAMB)
    found = arch_joints("casing", casing, cased, trim.casing.width, trim.casing.thickness)
    if not jambs:
        return found
    width = placement.interior_depth + solids.job.shop.proud
    found += arch_joints("jamb", jambs, clear, trim.jamb.thickness, width)
    below = trim.style.has_bottom
    return [
        *found,
        _bears(
            "casing",
            _of_kind(solids, Where.INTERIOR, PartKind.CASING),
            _of_kind(solids, Where.INTERIOR, PartKind.EXTENSION_JAMB),
            clear,
            reveal=trim.casing_reveal,
            thickness=trim.jamb.thickness,
            has_bottom=below,
            way=1.0,
        ),
    ]


def _bears(
    what: str,
    casing: Sequence[Solid],
    jambs: Sequence[Solid],
    clear: FramePath,
    *,
    reveal: float,
    thickness: float,
    has_bottom: bool,
    way: float,
) -> JointCheck:
    inner = outset(clear, _even(reveal, reveal if has_bottom else 0.0))
    outer = outset(clear, _even(thickness, thickness if has_bottom else 0.0))
    return bearing(what, casing, jambs, inner, outer, way)


def outside_arch_joints(solids: KitSolids) -> list[JointCheck]:
    """Measure the joints of a curved head outside."""
    placement = solids.kit.placement
    trim = placement.opening.exterior
    if not is_arched(solids) or trim is None:
        return []
    casing = arch_boards(solids, Where.EXTERIOR, PartKind.CASING)
    jambs = arch_boards(solids, Where.EXTERIOR, PartKind.EXTERIOR_JAMB)
    if not jambs:
        cased = outset(frame_path(placement.opening), dict.fromkeys(Side, trim.sealant_joint))
        return arch_joints("exterior casing", casing, cased, trim.casing.width, trim.casing.thickness)
    clear = _outside_clear(solids, jambs, casing, trim.casing, trim.jamb.thickness)
    cased = outset(clear, dict.fromkeys(Side, trim.casing_reveal))
    found = arch_joints("exterior casing", casing, cased, trim.casing.width, trim.casing.thickness)
    found += arch_joints(
        "exterior jamb", jambs, clear, trim.jamb.thickness, placement.exterior_depth - trim.sealant_joint
    )
    return [
        *found,
        _bears(
            "exterior casing",
            casing,
            jambs,
            clear,
            reveal=trim.casing_reveal,
            thickness=trim.jamb.thickness,
            has_bottom=False,
            way=-1.0,
        ),
    ]


def _outside_clear(
    solids: KitSolids, jambs: Sequence[Solid], casing: Sequence[Solid], entry: CasingEntry, thickness: float
) -> FramePath:
    """The path between the exterior jambs, from the faces of the legs and the crown down to where the casing ends."""
    trim = solids.kit.placement.opening.exterior
    slope = trim.sill.slope if trim and trim.sill else 0.0
    left, right = jambs[0], jambs[-1]
    return path_at(
        solids.kit.placement.opening,
        left=left.high[X],
        right=right.low[X],
        bottom=casing[0].low[Y] + entry.thickness * tangent(slope),
        top=max(board.high[Y] for board in jambs) - thickness,
    )


def inside_arch_measures(solids: KitSolids) -> list[Measure]:
    """Measure reveals, shim space and depths along a curved head inside."""
    if not is_arched(solids):
        return []
    placement = solids.kit.placement
    trim, clear = placement.opening.interior, clear_path(placement.opening, solids.kit.room)
    casing = arch_boards(solids, Where.INTERIOR, PartKind.CASING)
    jambs = arch_boards(solids, Where.INTERIOR, PartKind.EXTENSION_JAMB)
    if not jambs:
        return []
    gap = asked_gap(solids, Side.HEAD)
    found = arch_measures(solids, jambs, solids.frame[0], asked=trim.frame_reveal, shim=gap, prefix="")
    found += depth_measures(jambs, placement.interior_depth + solids.job.shop.proud, "")
    return [*found, *casing_measures("casing reveal", casing, jambs, clear, trim.casing_reveal)]


def outside_arch_measures(solids: KitSolids) -> list[Measure]:
    """Measure reveals and depths along a curved head outside."""
    placement = solids.kit.placement
    trim = placement.opening.exterior
    jambs = arch_boards(solids, Where.EXTERIOR, PartKind.EXTERIOR_JAMB)
    if not is_arched(solids) or trim is None or not jambs:
        return []
    casing = arch_boards(solids, Where.EXTERIOR, PartKind.CASING)
    clear = _outside_clear(solids, jambs, casing, trim.casing, trim.jamb.thickness)
    found = arch_measures(solids, jambs, solids.frame[-1], asked=trim.frame_reveal, shim=None, prefix="exterior ")
    found += depth_measures(jambs, placement.exterior_depth - trim.sealant_joint, "exterior ")
    return [*found, *casing_measures("exterior casing reveal", casing, jambs, clear, trim.casing_reveal)]
