"""What papers tell of the exterior trim of one opening: widths, reveals, the sill's run and fall."""

from __future__ import annotations

from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.path import has_two_legs, size_over_all
from jambs.parts.jambs.shaped_jambs import clear_path
from jambs.parts.kit.kit import Figure, FigureKind
from jambs.parts.shapes.clear import ClearOpening
from jambs.parts.trim.casing import CasedOpening, outside_width
from jambs.parts.trim.exterior_sill import SillPlace, sill_fall
from jambs.parts.trim.metal_returns import metal_sill
from jambs.parts.trim.shaped_casing import casing_box
from jambs.place.frame_path import frame_path
from jambs.place.placement import Placement


def metal_sill_figures(placement: Placement, trim: ExteriorTrim) -> list[Figure]:
    """Tell the run, fall and nosing of a sill of bent metal."""
    place, sill = metal_sill(placement, trim), trim.returns.sill if trim.returns else None
    if place is None or sill is None:
        return []
    run = place.start + place.run - placement.outside_edge
    return [
        Figure(kind=FigureKind.SILL_RUN, value=run, note="frame's outside edge to front of nosing, level"),
        Figure(kind=FigureKind.SILL_FALL, value=sill_fall(run, sill.slope), note="over the run"),
        Figure(kind=FigureKind.SILL_NOSING, value=sill.nosing, note="past the cladding face"),
    ]


def casing_width(
    placement: Placement, cased: CasedOpening, trim: ExteriorTrim, place: SillPlace | None = None
) -> float:
    """Width of the casing over its legs, or of a shape without two legs where it is widest [in].

    Of slants on a sill that is at their feet, each as low as the sill is there.
    """
    shape = placement.opening.shape
    if place and trim.sill and shape and shape.is_cut_below(placement.opening.frame) and not shape.is_arched:
        return place.length - 2 * trim.sill.horn
    if has_two_legs(frame_path(placement.opening)):
        return outside_width(cased, trim.casing)
    return casing_box(placement.opening, cased, trim.casing).width


def _clear_width(placement: Placement, clear: ClearOpening) -> float:
    if has_two_legs(frame_path(placement.opening)):
        return clear.width
    return size_over_all(clear_path(placement.opening, clear)).width


def _flared_figures(at_trim: ClearOpening | None) -> list[Figure]:
    if at_trim is None:
        return []
    note = "between flared jambs, where they end"
    return [Figure(kind=FigureKind.EXTERIOR_CLEAR_AT_TRIM, value=at_trim.width, note=note)]


def outside_figures(
    placement: Placement,
    clear: ClearOpening,
    at_trim: ClearOpening | None,
    cased: CasedOpening,
    place: SillPlace | None,
    trim: ExteriorTrim,
) -> tuple[Figure, ...]:
    """Tell the widths and reveals of an exterior jamb with casing; ``at_trim``: the opening where flared jambs end."""
    wide = _clear_width(placement, clear)
    figures = [
        Figure(kind=FigureKind.EXTERIOR_CLEAR_WIDTH, value=wide, note="between exterior jambs"),
        *_flared_figures(at_trim),
        Figure(kind=FigureKind.EXTERIOR_FRAME_REVEAL, value=clear.frame_reveal, note="frame to jamb face"),
        Figure(kind=FigureKind.EXTERIOR_CASING_REVEAL, value=trim.casing_reveal, note="jamb face to casing"),
        Figure(kind=FigureKind.SEALANT_JOINT, value=trim.sealant_joint, note="frame to jamb, backer behind"),
        Figure(
            kind=FigureKind.EXTERIOR_CASING_OUTSIDE_WIDTH,
            value=casing_width(placement, cased, trim, place),
            note="edge to edge",
        ),
    ]
    return (*figures, *sill_figures(place, trim))


def sill_figures(place: SillPlace | None, trim: ExteriorTrim) -> list[Figure]:
    """Tell the run, fall and nosing of a wooden sill; nothing where there is none."""
    if place is None or trim.sill is None:
        return []
    run = place.run - trim.sill.under_frame
    return [
        Figure(kind=FigureKind.SILL_RUN, value=run, note="frame's outside edge to front of nosing, level"),
        Figure(kind=FigureKind.SILL_FALL, value=sill_fall(run, trim.sill.slope), note="over the run"),
        Figure(kind=FigureKind.SILL_NOSING, value=trim.sill.nosing, note="past the cladding face"),
    ]
