"""Where an exterior sill lies: under the jambs that stand on it, its horns past the casing."""

from __future__ import annotations

from dataclasses import replace

from jambs.geometry import Point, tangent
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.path import outset
from jambs.parts.jambs.shaped_jambs import clear_path
from jambs.parts.shapes.clear import ClearOpening
from jambs.parts.shapes.feet import feet_over
from jambs.parts.trim.casing import CasedOpening, outside_width
from jambs.parts.trim.exterior_sill import SillPlace, sill_fall
from jambs.parts.trim.shaped_casing import cased_path
from jambs.place.flares import Flares
from jambs.place.placement import Placement
from jambs.sides import LEGS, Side


def sill_place(
    clear: ClearOpening,
    at_trim: ClearOpening,
    flares: Flares,
    cased: CasedOpening,
    placement: Placement,
    trim: ExteriorTrim,
    depth: float,
) -> SillPlace:
    """Return where a sill lies; ``depth``: frame's outside edge → trim plane at the sill [in].

    ``clear`` is the clear opening at the frame, ``at_trim`` where flared jambs end.
    """
    assert trim.sill is not None
    shape = placement.opening.shape
    if shape and shape.is_cut_below(placement.opening.frame):
        left, right, backs = _under_feet(clear, cased, placement, trim, depth)
        length, notches = right - left, (backs[0] - left, right - backs[1])
    else:
        length = outside_width(cased, trim.casing) + 2 * trim.sill.horn
        left = (at_trim.left + at_trim.right) / 2 - length / 2
        # Under the feet of both legs, backs and all, as they end; as far at both sides as at the one that leans more.
        between = at_trim.width + 2 * max(flares.across(leg, trim.jamb.thickness) for leg in LEGS)
        notches = ((length - between) / 2,) * 2
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
    clear: ClearOpening, cased: CasedOpening, placement: Placement, trim: ExteriorTrim, depth: float
) -> tuple[float, float, Point]:
    """Return the ends of a sill under slants or an arc, and the backs of the jambs on it, left and right (x) [in].

    Such boards reach farther out, or less far, where the sill has fallen: the widest place counts.
    """
    assert trim.sill is not None
    slope, opening = tangent(trim.sill.slope), placement.opening
    near, far = (
        clear_path(opening, replace(clear, bottom=clear.bottom - run * slope)) for run in (trim.sealant_joint, depth)
    )
    backs = feet_over((near, far), trim.jamb.thickness)
    at_back = cased_path(opening, cased)
    at_face = outset(at_back, {**dict.fromkeys(Side, 0.0), Side.SILL: trim.casing.thickness * slope})
    left, right = feet_over((at_back, at_face), trim.casing.width)
    return left - trim.sill.horn, right + trim.sill.horn, backs
