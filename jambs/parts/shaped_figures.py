"""The figures of an opening that is no rectangle: heights over all, where a rectangle has one height everywhere."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from jambs.job.models.openings import Opening
from jambs.job.models.path import size_over_all
from jambs.job.models.trim import InteriorTrim
from jambs.parts.casing import CasedOpening
from jambs.parts.clear import ClearOpening
from jambs.parts.kit import Figure, FigureKind
from jambs.parts.shaped_casing import casing_box
from jambs.parts.shaped_jambs import clear_path


def shaped_figures(
    figures: Iterable[Figure],
    opening: Opening,
    clear: ClearOpening,
    room: ClearOpening,
    cased: CasedOpening,
    trim: InteriorTrim,
) -> tuple[Figure, ...]:
    """Return figures as they are for a shape: heights from lowest to highest corner; no head casing runs past."""
    box = casing_box(opening, cased, trim.casing)
    heights = {
        FigureKind.CLEAR_OPENING_HEIGHT: size_over_all(clear_path(opening, clear)).height,
        FigureKind.FLARED_OPENING_HEIGHT: size_over_all(clear_path(opening, room)).height,
        FigureKind.CASING_OUTSIDE_HEIGHT: box.height,
    }
    return tuple(
        replace(one, value=heights[one.kind], note="lowest to highest corner") if one.kind in heights else one
        for one in figures
        if one.kind is not FigureKind.HEAD_CASING_OVERHANG
    )
