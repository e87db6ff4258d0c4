"""The figures of an opening that is no rectangle: heights over all, where a rectangle has one height everywhere."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from jambs.job.models.openings import Opening
from jambs.job.models.path import has_two_legs, size_over_all
from jambs.job.models.trim import InteriorTrim
from jambs.parts.jambs.shaped_jambs import clear_path
from jambs.parts.kit.kit import Figure, FigureKind
from jambs.parts.shapes.clear import ClearOpening
from jambs.parts.shapes.feet import feet
from jambs.parts.trim.casing import CasedOpening
from jambs.parts.trim.shaped_casing import casing_box
from jambs.parts.trim.stool import stool_length_at


def shaped_figures(
    figures: Iterable[Figure],
    opening: Opening,
    clear: ClearOpening,
    room: ClearOpening,
    cased: CasedOpening,
    trim: InteriorTrim,
) -> tuple[Figure, ...]:
    """Return figures as they are for a shape: heights from lowest to highest corner, widths where it is widest."""
    box = casing_box(opening, cased, trim.casing)
    at_frame, at_room = (clear_path(opening, one) for one in (clear, room))
    sizes = {
        FigureKind.CLEAR_OPENING_HEIGHT: size_over_all(at_frame).height,
        FigureKind.FLARED_OPENING_HEIGHT: size_over_all(at_room).height,
        FigureKind.CASING_OUTSIDE_HEIGHT: box.height,
    }
    notes = dict.fromkeys(sizes, "lowest to highest corner")
    if trim.stool and opening.shape and opening.shape.is_cut_below(opening.frame):
        sizes[FigureKind.STOOL_LENGTH] = stool_length_at(feet(at_room, trim.past_clear), trim.stool)
        notes[FigureKind.STOOL_LENGTH] = "horn to horn"
    if not has_two_legs(at_frame):
        widths = {
            FigureKind.CLEAR_OPENING_WIDTH: size_over_all(at_frame).width,
            FigureKind.FLARED_OPENING_WIDTH: size_over_all(at_room).width,
            FigureKind.CASING_OUTSIDE_WIDTH: box.width,
        }
        sizes |= widths
        notes |= dict.fromkeys(widths, "where it is widest")
    return tuple(
        replace(one, value=sizes[one.kind], note=notes[one.kind]) if one.kind in sizes else one
        for one in figures
        if one.kind is not FigureKind.HEAD_CASING_OVERHANG
    )
