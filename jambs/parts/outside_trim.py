"""What all exterior trim of wood has, whatever lines the opening: its clear opening, casing, covers, head flashing."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.geometry import Point
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.length import Grid
from jambs.parts.board.kinds import Where
from jambs.parts.board.part import Part
from jambs.parts.jambs.shaped_jambs import goes_all_round
from jambs.parts.kit.kit import Figure, FittedSide
from jambs.parts.mulls.mull import Cover, mull_covers, outside_covers
from jambs.parts.shapes.arch import Rack
from jambs.parts.shapes.clear import ClearOpening, clear_opening
from jambs.parts.shapes.flat_segments import FlatPath
from jambs.parts.trim.casing import CasedOpening, casing, outside_width
from jambs.parts.trim.exterior_sill import sill_fall
from jambs.parts.trim.flashing import make_flashing
from jambs.parts.trim.shaped_casing import shaped_casing
from jambs.place.flares import SQUARE, Flares
from jambs.place.frame_path import frame_path
from jambs.place.placement import Placement
from jambs.sides import Side


@dataclass(frozen=True, slots=True, kw_only=True)
class Outside:
    """The exterior parts of one opening and their figures; ``clear`` is None where the frame has no exterior jamb."""

    clear: ClearOpening | None
    parts: tuple[Part, ...]
    figures: tuple[Figure, ...]
    flat: FlatPath | None = None


def exterior_clear(placement: Placement, trim: ExteriorTrim, grid: Grid) -> ClearOpening:
    """The clear opening between the exterior jambs, from the lower left corner of the frame [in]."""
    under, slope = (trim.sill.under_frame, trim.sill.slope) if trim.sill else (0.0, 0.0)
    return clear_opening(
        placement.opening.frame,
        placement.opening.window.outside_face,
        frame_reveal=trim.frame_reveal,
        grid=grid,
        # The joint is left where the sloping sill is highest: at its edge under the frame.
        bottom=-trim.sealant_joint - sill_fall(under, slope) if trim.sill else without_sill(placement, trim),
    )


def covers_over(placement: Placement, trim: ExteriorTrim, clear: ClearOpening, grid: Grid) -> list[Cover]:
    """Lay covers over the mulls of ganged units."""
    if trim.mull_casing is None:
        return []
    return [*mull_covers(placement.opening, clear, reveal=trim.frame_reveal, grid=grid, from_outside=True)]


def on_frames(
    covers: list[Cover], placement: Placement, trim: ExteriorTrim, slope_deg: float, flares: Flares = SQUARE
) -> list[Part]:
    """Cover mulls that are not boxed: the boards lie on the outside edges of the frames, in sealant."""
    if trim.mull_casing is None:
        return []
    return outside_covers(covers, trim.mull_casing, placement.outside_edge, slope_deg, flares, trim.sealant_joint)


def without_sill(placement: Placement, trim: ExteriorTrim) -> float | None:
    """Height at which legs end that stand on no sill: a door's at the bottom of its frame, on the threshold or deck.

    None where a board lies along the sill as along the head.
    """
    opening, joint = placement.opening, trim.sealant_joint
    if goes_all_round(opening, trim):
        return None
    return 0.0 if opening.floor_below_frame is not None else -joint


def cased_outside(
    at_trim: ClearOpening, placement: Placement, trim: ExteriorTrim, sides: dict[Side, FittedSide], slope: float
) -> CasedOpening:
    """Each leg stands where the sill has fallen to at its own side: a measured trim plane may be deeper at one."""
    left, right = depths_at_feet(placement, sides)
    all_round = goes_all_round(placement.opening, trim)
    below = trim.casing_reveal if all_round else 0.0
    return CasedOpening(
        left=at_trim.left - trim.casing_reveal,
        right=at_trim.right + trim.casing_reveal,
        bottom=at_trim.bottom - (below if below else sill_fall(left, slope)),
        right_bottom=at_trim.bottom - sill_fall(right, slope),
        top=at_trim.top + trim.casing_reveal,
        back=placement.planes.trim_plane,
        has_bottom=all_round,
        slope_deg=slope,
    )


def depths_at_feet(placement: Placement, sides: dict[Side, FittedSide]) -> Point:
    """Return how deep the trim plane lies where casing stands on a sill, at the left and at the right [in].

    By the legs; where there are not two by the sill, which an arc, scribed to the wall, meets at one depth.
    """
    shape = placement.opening.shape
    if shape is None or not shape.is_cut_below(placement.opening.frame):
        return sides[Side.LEFT].start_depth, sides[Side.RIGHT].start_depth
    sill = sides[Side.SILL]
    return (sill.greatest, sill.greatest) if shape.is_arched else (sill.start_depth, sill.finish_depth)


def ends_at_feet(placement: Placement, sides: dict[Side, FittedSide]) -> Point:
    """Return how deep the jambs end that stand on a sill, at the left and at the right [in]: an arc's all at one."""
    shape = placement.opening.shape
    if shape is None or not shape.is_arched:
        return depths_at_feet(placement, sides)
    path = frame_path(placement.opening)
    at = next(i for i, edge in enumerate(path) if edge.side is Side.SILL)
    left, right = path[(at + 1) % len(path)], path[at - 1]
    return (
        sides[left.side].greatest if left.center else sides[left.side].start_depth,
        sides[right.side].greatest if right.center else sides[right.side].start_depth,
    )


def exterior_casing(cased: CasedOpening, placement: Placement, trim: ExteriorTrim, rack: Rack) -> tuple[Part, ...]:
    """Make the casing outside, of a rectangle or round a shape."""
    if placement.opening.shape:
        return shaped_casing(placement.opening, cased, trim.casing, Where.EXTERIOR, rack)
    return casing(cased, trim.casing, Where.EXTERIOR)


def head_flashing_of(cased: CasedOpening, placement: Placement, trim: ExteriorTrim) -> tuple[Part, ...]:
    """Make the head flashing; over a head that is not one level edge it is laid out on site (a finding says so)."""
    if placement.opening.shape:
        return ()
    return (
        make_flashing(
            middle=(cased.left + cased.right) / 2,
            top=cased.top + trim.casing.width,
            back=placement.planes.trim_plane,
            casing_length=outside_width(cased, trim.casing) + 2 * trim.casing.overhang,
            casing_thickness=trim.casing.thickness,
            flashing=trim.head_flashing,
        ),
    )
