"""Everything inside: extension jambs, stool and apron, casing, and the figures they follow."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.findings import Subject
from jambs.job.models.shop import Shop
from jambs.job.models.trim import Corner, InteriorStyle, InteriorTrim
from jambs.length import Grid
from jambs.parts.casing import CasedOpening, casing, outside_width
from jambs.parts.clear import ClearOpening, clear_opening
from jambs.parts.cuts import CannotBeCut
from jambs.parts.findings import NothingBetweenJambs
from jambs.parts.interior_jamb import interior_jambs
from jambs.parts.kinds import Where
from jambs.parts.kit import Figure, FigureKind, FittedSide
from jambs.parts.part import Part
from jambs.parts.stool import make_apron, make_stool, stool_length
from jambs.place.placement import Placement
from jambs.sides import Side


@dataclass(frozen=True, slots=True, kw_only=True)
class Inside:
    """The interior parts of one opening, its clear opening and figures."""

    clear: ClearOpening
    parts: tuple[Part, ...]
    figures: tuple[Figure, ...]


def interior_clear(placement: Placement, grid: Grid) -> ClearOpening:
    """The clear opening between the interior extension jambs; a door's reaches down to the floor."""
    opening = placement.opening
    floor = opening.floor_below_frame
    return clear_opening(
        opening.frame,
        opening.window.frame_face,
        frame_reveal=opening.interior.frame_reveal,
        grid=grid,
        bottom=None if floor is None else -floor,
    )


def make_inside(placement: Placement, sides: dict[Side, FittedSide], shop: Shop) -> Inside:
    """Make all interior parts; without interior depth there is only casing on the frame.

    Raises:
        CannotBeCut: nothing is left between the jambs, or the stool cannot lap under the frame.
    """
    trim = placement.opening.interior
    clear = interior_clear(placement, shop.grid)
    _hold_open(clear, placement)
    parts: list[Part] = []
    has_jamb = max(side.start_depth for side in sides.values()) > 0
    if has_jamb:
        parts += interior_jambs(clear, sides, trim, placement.inside_edge, shop.proud)
        if trim.stool and trim.apron:
            parts.append(make_stool(clear, sides[Side.SILL], trim, trim.stool, placement.inside_edge))
    parts += casing(_cased(clear, trim, shop.proud), trim.casing, Where.INTERIOR)
    if has_jamb and trim.stool and trim.apron:
        parts.append(make_apron(clear, trim, trim.apron, trim.stool))
    return Inside(clear=clear, parts=tuple(parts), figures=_figures(clear, trim, shop.proud))


def _hold_open(clear: ClearOpening, placement: Placement) -> None:
    if clear.width <= 0 or clear.height <= 0:
        frame, about = placement.opening.frame, Subject.opening(placement.opening.mark)
        raise CannotBeCut(NothingBetweenJambs(subject=about, width=frame.width, height=frame.height))


def _cased(clear: ClearOpening, trim: InteriorTrim, proud: float) -> CasedOpening:
    reveal, picture = trim.casing_reveal, trim.style is InteriorStyle.PICTURE_FRAMED
    return CasedOpening(
        left=clear.left - reveal,
        right=clear.right + reveal,
        bottom=clear.bottom - reveal if picture else clear.bottom,
        top=clear.top + reveal,
        back=-proud,
        has_bottom=picture,
    )


def _figures(clear: ClearOpening, trim: InteriorTrim, proud: float) -> tuple[Figure, ...]:
    cased, thickness = _cased(clear, trim, proud), trim.jamb.thickness
    overhang = trim.casing.overhang if trim.casing.corner is Corner.BUTT else 0.0
    above = cased.height + trim.casing.width * (2 if cased.has_bottom else 1)
    figures = [
        Figure(kind=FigureKind.CLEAR_OPENING_WIDTH, value=clear.width, note="between extension jambs"),
        Figure(kind=FigureKind.CLEAR_OPENING_HEIGHT, value=clear.height, note=_height_note(trim)),
        Figure(kind=FigureKind.JAMB_BOX_WIDTH, value=clear.width + 2 * thickness, note="outside of the legs"),
        Figure(kind=FigureKind.FRAME_REVEAL, value=clear.frame_reveal, note="frame to jamb face"),
        Figure(kind=FigureKind.CASING_REVEAL, value=trim.casing_reveal, note="jamb face to casing"),
        Figure(kind=FigureKind.PROUD, value=proud, note="jamb past the finished wall"),
        Figure(kind=FigureKind.CASING_OUTSIDE_WIDTH, value=outside_width(cased, trim.casing), note="edge to edge"),
        Figure(kind=FigureKind.CASING_OUTSIDE_HEIGHT, value=above, note="edge to edge"),
    ]
    if overhang:
        figures.append(Figure(kind=FigureKind.HEAD_CASING_OVERHANG, value=overhang, note="past the legs, each end"))
    if trim.stool:
        length = stool_length(clear, trim, trim.stool)
        figures.append(Figure(kind=FigureKind.STOOL_LENGTH, value=length, note="horn to horn"))
    return tuple(figures)


def _height_note(trim: InteriorTrim) -> str:
    return {
        InteriorStyle.PICTURE_FRAMED: "between extension jambs",
        InteriorStyle.STOOL_AND_APRON: "stool to head jamb",
        InteriorStyle.THREE_SIDED: "floor to head jamb",
    }[trim.style]
