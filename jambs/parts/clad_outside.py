"""Exterior trim whose reveal is lined with the cladding itself: returns, corner, furring, sill, head flashing."""

from __future__ import annotations

from dataclasses import replace

from jambs.job.models.cladding_returns import CladdingReturnsEntry
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.parts.board.part import Part
from jambs.parts.board.touches import StripOverReturn
from jambs.parts.clad_checks import hold_deep_enough, hold_under_the_legs
from jambs.parts.kit.kit import Figure, FigureKind, FittedSide
from jambs.parts.outside_checks import hold_clear_of_the_flange
from jambs.parts.outside_figures import casing_width, sill_figures
from jambs.parts.outside_trim import (
    Outside,
    cased_outside,
    covers_over,
    depths_at_feet,
    exterior_casing,
    exterior_clear,
    head_flashing_of,
    on_frames,
)
from jambs.parts.shapes.arch import Rack
from jambs.parts.shapes.clear import ClearOpening
from jambs.parts.trim.casing import CasedOpening
from jambs.parts.trim.cladding_returns import ReturnLayers, corner_clear, corner_past, reveal_of
from jambs.parts.trim.exterior_sill import SillPlace, make_sill
from jambs.parts.trim.flashing import make_flashing
from jambs.parts.trim.metal_returns import over_the_head
from jambs.parts.trim.sill_place import sill_place
from jambs.place.placement import Placement
from jambs.sides import Side


def clad_outside(placement: Placement, sides: dict[Side, FittedSide], trim: ExteriorTrim, rack: Rack) -> Outside:
    """Line the reveal with cladding out to the corner, where its boards or a miter meet that of the wall.

    Raises:
        CannotBeCut: the reveal is too shallow, or the sill too short under what stands over it.
    """
    entry, grid, mark = trim.cladding_returns, rack.shop.grid, placement.opening.mark
    assert entry is not None
    reveal = reveal_of(sides, trim, entry, grid.units)
    hold_deep_enough(reveal, mark, grid.units)
    slope, under = (trim.sill.slope, trim.sill.under_frame) if trim.sill else (0.0, 0.0)
    hold_clear_of_the_flange(under, placement.opening.window.frame_projection)
    clear = exterior_clear(placement, trim, grid)
    standing = replace(clear, bottom=clear.bottom + entry.gap_at_sill) if trim.sill else clear
    lining = ReturnLayers(
        clear=standing, sides=sides, reveal=reveal, placement=placement, trim=trim, entry=entry, slope_deg=slope
    )
    cased = cased_outside(corner_clear(standing, entry), placement, trim, sides, slope)
    place = _sill_place(clear, cased, placement, trim, sides, entry)
    sill: tuple[Part, ...] = ()
    if place and trim.sill:
        hold_under_the_legs(place, mark)
        sill = (make_sill(place, trim.sill, grid),)
    covers = on_frames(covers_over(placement, trim, clear, grid), placement, trim, slope)
    over = (*exterior_casing(cased, placement, trim, rack), *head_flashing_of(cased, placement, trim))
    if entry.is_mitered:
        deeper = sides[Side.HEAD].greatest - placement.exterior_depth
        over = (_flashing(clear, placement, trim, entry, deeper),)
    parts = (*lining.parts(), *sill, *covers, *over)
    return Outside(clear=clear, parts=parts, figures=_figures(placement, clear, cased, place, trim, entry))


def _sill_place(
    clear: ClearOpening,
    cased: CasedOpening,
    placement: Placement,
    trim: ExteriorTrim,
    sides: dict[Side, FittedSide],
    entry: CladdingReturnsEntry,
) -> SillPlace | None:
    """Lay the sill under returns and furring, its horns past the casing or, where that is mitered, past the corner."""
    if trim.sill is None:
        return None
    backs = (clear.left - entry.back, clear.right + entry.back)
    depth, at_feet = sides[Side.SILL].greatest, depths_at_feet(placement, sides)
    return sill_place(clear, backs, cased, placement, trim, depth, at_feet)


def _flashing(
    clear: ClearOpening, placement: Placement, trim: ExteriorTrim, entry: CladdingReturnsEntry, deeper: float
) -> Part:
    """Lay metal over the head of a reveal without casing: on the head return, its drip down over the return's edge.

    ``deeper``: how much deeper the wall was read to be over the head than it was planned [in].
    """
    return make_flashing(
        middle=(clear.left + clear.right) / 2,
        top=clear.top + entry.thickness,
        back=placement.planes.trim_plane + deeper,
        casing_length=clear.width + 2 * entry.thickness,
        casing_thickness=over_the_head(trim, placement),
        flashing=trim.head_flashing,
        bend=StripOverReturn,
    )


def _figures(
    placement: Placement,
    clear: ClearOpening,
    cased: CasedOpening,
    place: SillPlace | None,
    trim: ExteriorTrim,
    entry: CladdingReturnsEntry,
) -> tuple[Figure, ...]:
    frame = placement.opening.frame
    found = [
        Figure(kind=FigureKind.EXTERIOR_CLEAR_WIDTH, value=clear.width, note="between cladding returns"),
        Figure(kind=FigureKind.EXTERIOR_FRAME_REVEAL, value=clear.frame_reveal, note="frame to face of the return"),
        Figure(kind=FigureKind.SEALANT_JOINT, value=trim.sealant_joint, note="frame to return, backer behind"),
    ]
    if not entry.is_mitered:
        past, wide = corner_past(entry), casing_width(placement, cased, trim)
        found += [
            Figure(kind=FigureKind.CORNER_BOARD_PROUD, value=past, note="into the opening"),
            Figure(kind=FigureKind.EXTERIOR_CASING_REVEAL, value=trim.casing_reveal, note="corner board to casing"),
            Figure(kind=FigureKind.EXTERIOR_CASING_OUTSIDE_WIDTH, value=wide, note="edge to edge"),
        ]
    at_sides, at_head = entry.back - clear.left, clear.top + entry.back - frame.height
    return (
        *found,
        _outer_layers(FigureKind.OUTER_LAYERS_AT_SIDES, at_sides),
        _outer_layers(FigureKind.OUTER_LAYERS_AT_HEAD, at_head),
        *sill_figures(place, trim),
    )


def _outer_layers(kind: FigureKind, off: float) -> Figure:
    """Tell where the layers of the wall outside the frame stop: at the back of the furring, off the frame's edge."""
    where = "clear of the frame's edge" if off >= 0 else "in over the frame's edge"
    return Figure(kind=kind, value=abs(off), note=f"{where}, at the back of the furring")
