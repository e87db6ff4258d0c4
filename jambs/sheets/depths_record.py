"""Planes and depths of an opening as records: planned, fitted and read."""

from __future__ import annotations

from jambs.job.models.openings import SIDES, SideDepths
from jambs.length import Units
from jambs.parts.board.kinds import PartKind
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.kit.kit import FittedSide
from jambs.place.placement import Placement
from jambs.values import Record, dump, size, sized


def planes_record(placement: Placement, *, units: Units) -> Record:
    """Return the planes of the wall and of the window, from the finished face outward."""
    planes = placement.planes
    return {
        "finished_face": size(0.0, units=units),
        "stud_face": size(planes.stud_face, units=units),
        "sheathing_plane": size(planes.sheathing_plane, units=units),
        "trim_plane": size(planes.trim_plane, units=units),
        "cladding_face": size(planes.cladding_face, units=units),
        "inside_edge": size(placement.inside_edge, units=units),
        "flange_plane": size(placement.flange_plane, units=units),
        "outside_edge": size(placement.outside_edge, units=units),
    }


def depths_record(kit: CutKit, *, units: Units) -> Record:
    """Return the depths of an opening: as planned, as sawn along each side, as read."""
    placement = kit.placement
    return {
        "interior": size(placement.interior_depth, units=units),
        "exterior": size(placement.exterior_depth, units=units),
        "added": size(placement.planes.added_depth, units=units),
        "overhang": size(placement.overhang, units=units),
        "share": placement.share,
        "measured": _measured_record(kit, units=units),
        "sides": {side.value: _fitted_record(fitted, units=units) for side, fitted in kit.sides.items()},
        **_frames_record(kit, units=units),
    }


def _frames_record(kit: CutKit, *, units: Units) -> Record:
    """Return stacked jamb frames from the window to the room; nothing where there is but one."""
    if len(kit.frames) < 2:
        return {}
    frames = [
        {
            "member": one.member,
            "width": size(one.width, units=units),
            "clear_opening": sized(one.clear.width, one.clear.height, units=units),
            "window_edge": size(one.edge, units=units),
            "parts": [
                part.mark for part in kit.parts if part.kind is PartKind.EXTENSION_JAMB and part.member == one.member
            ],
        }
        for one in kit.frames
    ]
    return {"frames": frames}


def _fitted_record(fitted: FittedSide, *, units: Units) -> Record:
    """Return what a side was cut by; its edges from the left, where it is parted into several."""
    record: Record = dump(fitted, units=units)
    return record if fitted.runs else {key: value for key, value in record.items() if key != "runs"}


def _measured_record(kit: CutKit, *, units: Units) -> Record | None:
    """Return the depths that were read: along head and sill left to right, along the legs bottom to top.

    Nothing stands at a point that nobody read.
    """
    measured = kit.placement.opening.measured
    if measured is None:
        return None
    return {
        "interior": _read_record(measured.interior_depth, units=units),
        "exterior": _read_record(measured.exterior_depth, units=units),
    }


def _read_record(depths: SideDepths | None, *, units: Units) -> Record | None:
    if depths is None:
        return None
    return {
        side.value: [None if one is None else size(one, units=units) for one in depths.read(side)]
        if depths.points(side)
        else None
        for side in SIDES
    }
