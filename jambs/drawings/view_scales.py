"""The scales at which views are drawn: the best that fit the page, and smaller ones where that saves sheets."""

from __future__ import annotations

from collections.abc import Callable, Container, Sequence
from dataclasses import replace
from functools import cache

from jambs.drawings.elements.paper import HALF_SIZE, PAGES, Page, Scale, scales_of
from jambs.drawings.elements.placed import PlacedView
from jambs.drawings.elements.view import NARROW_WORDS, View, ViewKind
from jambs.drawings.layout.arrange import arrange
from jambs.drawings.layout.packing import room_on, share_of
from jambs.length import Units

ELEVATIONS = (ViewKind.INTERIOR, ViewKind.EXTERIOR)
SECTIONS = (ViewKind.SECTION,)
LEAST_LEGIBLE = 24.0
"""A detail that could only share a page at a smaller scale than this takes the width it needs."""
SMALLEST_OF_SECTIONS = 16.0
"""Under this scale the boards of a section are no thicker than their lines: none is drawn so to save a sheet."""
NO_ROOM = "too many parts to mark them here: see the parts table and the cut sheet"


def small_picture(asked: Sequence[View], units: Units) -> PlacedView:
    """Draw the exploded picture at the smallest scale."""
    (picture,) = (view for view in asked if view.kind is ViewKind.EXPLODED)
    return arrange(picture, scale=scales_of(units)[-1], units=units, with_unit=False)


def with_smaller_sections(views: Sequence[PlacedView], asked: Sequence[View], units: Units) -> list[PlacedView]:
    """Draw the sections at the next smaller scale that is legible, with narrower words beside them.

    The corners have their details.
    """
    scales = scales_of(units)
    scale = next(view.scale for view in views if view.kind is ViewKind.SECTION)
    smaller = scales[min(scales.index(scale) + 1, len(scales) - 1)]
    if smaller.factor > SMALLEST_OF_SECTIONS:
        smaller = scale
    found = [
        _with_narrow_words(view, smaller, units) if view.kind is ViewKind.SECTION else one
        for one, view in zip(views, asked, strict=True)
    ]
    return _if_it_fits(found, views, PAGES[units][0])


def one_smaller(
    views: Sequence[PlacedView], asked: Sequence[View], units: Units, kinds: Container[ViewKind]
) -> list[PlacedView]:
    """Draw the views of some kinds at the scale next to the largest of theirs."""
    scales = (HALF_SIZE[units], *scales_of(units))
    scale = min((view.scale for view in views if view.kind in kinds), key=lambda one: one.factor, default=scales[0])
    smaller = scales[min(scales.index(scale) + 1, len(scales) - 1)]
    found = [
        arrange(view, scale=smaller, units=units, with_unit=False) if view.kind in kinds else one
        for one, view in zip(views, asked, strict=True)
    ]
    return _if_it_fits(found, views, PAGES[units][0])


def _if_it_fits(found: list[PlacedView], before: Sequence[PlacedView], page: Page) -> list[PlacedView]:
    """Return what was found, or all as it was: words beside smaller shapes may take more paper, too much of it."""
    return found if all(fits(view, page) for view in found) else list(before)


def _with_narrow_words(view: View, scale: Scale, units: Units) -> PlacedView:
    """Arrange a view with narrow words beside it, as narrow as takes the least paper.

    More lines of them may make it higher than the smaller page; then with its own.
    """
    room = room_on(PAGES[units][0])
    narrow = (
        arrange(view.with_narrow_words(width), scale=scale, units=units, with_unit=False)
        for width in (NARROW_WORDS, view.widest_words)
    )
    low = [one for one in narrow if one.paper_height <= room.height]
    if low:
        return min(low, key=lambda one: one.paper_width * one.paper_height)
    return arrange(view, scale=scale, units=units, with_unit=False)


def with_smaller_details(views: Sequence[PlacedView], asked: Sequence[View], units: Units) -> list[PlacedView]:
    """Draw the details of the outside at the largest standard scale, not half size."""
    return [
        arrange(view, scale=scales_of(units)[0], units=units, with_unit=False) if view.is_half_size_if_room else one
        for one, view in zip(views, asked, strict=True)
    ]


def at_scales(wanted: Sequence[View], units: Units, page: Page) -> tuple[tuple[View, ...], list[PlacedView]]:
    """Arrange all views at their best scales, elevations at one and sections at one; return them as they are drawn."""
    asked, views = zip(*(at_best_scale(view, units, page) for view in wanted), strict=True)
    return asked, alike(alike(views, asked, units, page, ELEVATIONS), asked, units, page, SECTIONS)


def at_best_scale(view: View, units: Units, page: Page) -> tuple[View, PlacedView]:
    """Arrange a view at its best scale; where it fits at none, without marks and call-outs: see the parts table.

    Raises:
        ValueError: the view fits the page at no scale, its marks left out.
    """
    if found := _best(view, units, page):
        return view, found
    bare = replace(view, marks=(), call_outs=(), remarks=(*view.remarks, NO_ROOM))
    if found := _best(bare, units, page):
        return bare, found
    raise ValueError(f"view {view.name!r} fits no {page.name} page at 1:{scales_of(units)[-1].factor:g}")


def _best(view: View, units: Units, page: Page) -> PlacedView | None:
    """Arrange a view at the largest standard scale at which it keeps to its share of the page, else fits the page.

    None where it fits at no scale.
    """

    @cache
    def at(scale: Scale) -> PlacedView:
        return arrange(view, scale=scale, units=units, with_unit=False)

    if view.half_size:
        placed = at(HALF_SIZE[units])
        if fits(placed, page):
            return placed
    whole = (1.0, 1.0)
    found = _fitting(view, at, units, page, view.share)
    if found is None or (found.scale.factor > LEAST_LEGIBLE and view.kind.is_of_part):
        found = _fitting(view, at, units, page, whole)
    return found


def alike(
    placed: Sequence[PlacedView], asked: Sequence[View], units: Units, page: Page, kinds: Container[ViewKind]
) -> list[PlacedView]:
    """Draw the views of some kinds at one scale, the largest from the smallest of theirs on at which all fit a page.

    Smaller shapes have less room for what stands in them, so that a view may take more paper at a smaller scale: where
    no scale serves all, each keeps its own.
    """
    smallest = max((view.scale for view in placed if view.kind in kinds), key=lambda scale: scale.factor)
    for scale in (smallest, *(one for one in scales_of(units) if one.factor > smallest.factor)):
        found = [
            arrange(view, scale=scale, units=units, with_unit=False)
            if one.kind in kinds and one.scale != scale
            else one
            for one, view in zip(placed, asked, strict=True)
        ]
        if all(fits(view, page) for view in found if view.kind in kinds):
            return found
    return list(placed)


def fits(view: PlacedView, page: Page) -> bool:
    """Say whether a view has room on a page by itself."""
    room = room_on(page)
    return view.paper_width <= room.width and view.paper_height <= room.height


def has_room(view: View, scale: Scale, page: Page) -> bool:
    """Say whether the bare shapes of a view have room on a page at a scale: what stands beside them takes more."""
    room = room_on(page)
    return view.core.width <= room.width * scale.factor and view.core.height <= room.height * scale.factor


def _fitting(
    view: View, at: Callable[[Scale], PlacedView], units: Units, page: Page, share: tuple[float, float]
) -> PlacedView | None:
    """Return a view ``at`` the largest standard scale at which it keeps to a share of the page's room.

    What stands beside the shapes takes no less paper at a smaller scale: where that alone is too large, none is tried.
    """
    room, scales = room_on(page), scales_of(units)
    width, height = share_of(room.width, share[0]), share_of(room.height, share[1])
    core = view.core
    for scale in scales[min(view.largest, len(scales) - 1) :]:
        wide, high = core.width / scale.factor, core.height / scale.factor
        if max(wide, high) > view.widest and scale is not scales[-1]:
            continue
        if wide > width or high > height:
            continue  # the bare shapes are too large already
        placed = at(scale)
        if placed.paper_width <= width and placed.paper_height <= height:
            return placed
        if placed.paper_width - wide > width or placed.paper_height - high > height:
            return None
    return None
