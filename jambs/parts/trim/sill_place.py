"""Where an exterior sill lies: under the jambs that stand on it, its horns past the casing."""

from __future__ import annotations

from dataclasses import replace

from jambs.geometry import Point, tangent
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.path import outset
from jambs.job.models.path_edge import FramePath
from jambs.parts.jambs.shaped_jambs import clear_path
from jambs.parts.shapes.clear import ClearOpening
from jambs.parts.shapes.feet import feet, feet_over
from jambs.parts.shapes.flat_segments import FlatPath, flat_feet
from jambs.parts.trim.casing import CasedOpening, outside_width
from jambs.parts.trim.exterior_sill import SillPlace, sill_fall
from jambs.parts.trim.shaped_casing import cased_path
from jambs.place.flares import SQUARE, Flares
from jambs.place.placement import Placement
from jambs.sides import Side


def sill_place(
    clear: ClearOpening,
    backs: Point,
    cased: CasedOpening,
    placement: Placement,
    trim: ExteriorTrim,
    depth: float,
    ends: Point,
    flares: Flares = SQUARE,
    flat: FlatPath | None = None,
) -> SillPlace:
    """Return where a sill lies; ``depth``: frame's outside edge → trim plane at the sill, at most [in].

    ``backs``: the x of the backs of both legs of a rectangle as they end at the trim plane [in].
    ``flat``: path of flared jambs that follow arcs in flat segments.
    ``ends``: that depth where jambs on it end, at the left and at the right [in].
    """
    assert trim.sill is not None
    shape = placement.opening.shape
    if shape and shape.is_cut_below(placement.opening.frame):
        left, right, backs = _under_feet(clear, cased, placement, trim, ends, flares, flat)
        length, notches = right - left, (backs[0] - left, right - backs[1])
    else:
        length = outside_width(cased, trim.casing) + 2 * trim.sill.horn
        left = (backs[0] + backs[1]) / 2 - length / 2
        notches = ((length - (backs[1] - backs[0])) / 2,) * 2
    return SillPlace(
        left=left,
        top=clear.bottom + sill_fall(trim.sill.under_frame, trim.sill.slope),
        start=placement.outside_edge - trim.sill.under_frame,
        run_to_trim=depth + trim.sill.under_frame,
        run_past_trim=placement.planes.cladding_depth + trim.sill.nosing,
        length=length,
        notches=notches,
    )


def _under_feet(
    clear: ClearOpening,
    cased: CasedOpening,
    placement: Placement,
    trim: ExteriorTrim,
    ends: Point,
    flares: Flares,
    flat: FlatPath | None,
) -> tuple[float, float, Point]:
    """Return the ends of a sill under slants or an arc, and the backs of the jambs on it, left and right (x) [in].

    Such boards reach farther out, or less far, where the sill has fallen: the widest place counts.
    """
    assert trim.sill is not None
    trim_slope, opening = trim.sill.slope, placement.opening
    slope = tangent(trim_slope)

    def jambs_at(run: float) -> FramePath:
        fallen = clear_path(opening, replace(clear, bottom=clear.bottom - run * slope))
        return outset(fallen, {**flares.all_out(run - trim.sealant_joint), Side.SILL: 0.0}) if flares else fallen

    thick = {side: flares.across(side, trim.jamb.thickness) for side in Side}

    def backs_at(run: float) -> Point:
        if flat:
            return flat_feet(flat, replace(flares, sill=trim_slope), trim.jamb.thickness, run - trim.sealant_joint)
        return feet(jambs_at(run), thick)

    near, *far = (backs_at(run) for run in (trim.sealant_joint, *ends))
    backs = [(min(near[0], one[0]), max(near[1], one[1])) for one in far]
    fallen = (0.0, cased.bottom - (cased.bottom if cased.right_bottom is None else cased.right_bottom))
    (left, _), (_, right) = (_casing_feet(cased_path(opening, cased), drop, trim, slope) for drop in fallen)
    return left - trim.sill.horn, right + trim.sill.horn, (backs[0][0], backs[1][1])


def _casing_feet(path: FramePath, drop: float, trim: ExteriorTrim, slope: float) -> Point:
    """Return the outer edges of casing on a sill, at its back, so far below the path, and at its face (x) [in]."""
    at_back, at_face = (
        outset(path, {**dict.fromkeys(Side, 0.0), Side.SILL: drop + out * slope})
        for out in (0.0, trim.casing.thickness)
    )
    return feet_over((at_back, at_face), trim.casing.width)
