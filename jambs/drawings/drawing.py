"""The shop drawing of one opening: its views at their scales, and the pages they stand on."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial

from jambs.drawings.elements.paper import PAGES, Page, Scale, scales_of
from jambs.drawings.elements.placed import PlacedView
from jambs.drawings.elements.view import View, ViewKind
from jambs.drawings.layout.arrange import arrange
from jambs.drawings.layout.fewest import Pages, fewest_sheets, in_as_few, plain_count
from jambs.drawings.layout.off_edges import off_edges
from jambs.drawings.layout.packing import OnPage, room_on
from jambs.drawings.title import TitleBlock, title_block
from jambs.drawings.view_scales import (
    ELEVATIONS,
    at_scales,
    fits,
    has_room,
    one_smaller,
    small_picture,
    with_smaller_details,
    with_smaller_sections,
)
from jambs.drawings.views.corner_details import corner_details
from jambs.drawings.views.details import details
from jambs.drawings.views.elevations import exterior_elevation, interior_elevation
from jambs.drawings.views.exploded import exploded_view
from jambs.drawings.views.measured import warning_of
from jambs.drawings.views.miter_details import miter_details
from jambs.drawings.views.mull_sections import mull_view, with_mull_tags
from jambs.drawings.views.notes import note_paragraphs
from jambs.drawings.views.on_grid import on_grid
from jambs.drawings.views.outside_details import outside_details
from jambs.drawings.views.return_details import return_details
from jambs.drawings.views.section_tags import with_tags
from jambs.drawings.views.sections import section_view, sections_shown
from jambs.drawings.views.table import NOTE_WIDTHS, notes_view, parts_tables
from jambs.drawings.views.threshold import threshold_views, with_threshold_tag
from jambs.geometry import Point
from jambs.issue_stamp import IssueStamp, Revision
from jambs.job.models.openings import Job
from jambs.length import Units
from jambs.parts.kit.cut_kit import CutKit
from jambs.section.mull import mull_sections
from jambs.section.region import Section, SectionCut

DOWNWARD = (SectionCut.HEAD, SectionCut.LEFT_JAMB, SectionCut.JAMB, SectionCut.SILL)
"""The sections in the order in which they stand on the sheets."""
CLEAR_OF_PAPER = 24.0
"""Model views stand this far from the origin: simple readers lay the paper over the model there [in]."""
FEW = 4
"""So many sheets of the smaller size a plain opening takes; one that takes more may have smaller sections.

Corners are smaller than half size only where that takes fewer sheets.
"""
APART = 6.0
"""Least space between two views in model space [in]."""
Found = tuple[Sequence[PlacedView], list[Pages]]
"""Views as they are drawn, and the pages of each size that they stand on."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """One page of paper: its layout's name, its number and how many there are of its size."""

    name: str
    page: Page
    views: tuple[OnPage, ...]
    number: int
    count: int

    @property
    def words(self) -> str:
        """Number and count as the title block says them."""
        return f"{self.number} of {self.count}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """The shop drawing of one opening.

    ``asked``: with all marks, though sheets have no room for them;
    ``views``: at the scale they are drawn; ``shifts``: where each stands in model space [in], by name;
    ``sheets``: pages in the order they are printed.
    """

    units: Units
    title: TitleBlock
    asked: tuple[View, ...]
    views: tuple[PlacedView, ...]
    shifts: dict[str, Point]
    sheets: tuple[Sheet, ...]

    def asked_view(self, name: str) -> View:
        """Return what was asked of a view: not yet at a scale.

        Raises:
            KeyError: there is no such view, or it is the table or the notes; the message lists those there are.
        """
        for view in self.asked:
            if view.name == name:
                return view
        raise KeyError(f"no view {name!r}; there are {', '.join(view.name for view in self.asked)}")

    def view(self, name: str) -> PlacedView:
        """Return a view by its name.

        Raises:
            KeyError: there is no such view; the message lists those there are.
        """
        for view in self.views:
            if view.name == name:
                return view
        raise KeyError(f"no view {name!r}; there are {', '.join(view.name for view in self.views)}")


def draw_opening(
    kit: CutKit,
    sections: Iterable[Section],
    job: Job,
    *,
    issue: IssueStamp,
    revisions: Sequence[Revision] = (),
    pictures: Iterable[View] = (),
) -> Drawing:
    """Draw one opening: elevations, sections, details, parts table and notes, on both sizes of paper.

    ``issue``: what its title block says of it, ``revisions``: of it and those before.
    ``pictures``: further views that are made elsewhere, such as the kit in three dimensions.
    """
    wanted = (*_asked(kit, sections, job), exploded_view(kit), *pictures)
    wanted = tuple(on_grid(replace(view, number=number), job.shop.grid) for number, view in enumerate(wanted, start=1))
    pages = PAGES[job.units]
    plain = replace(scales_of(job.units)[0], words="")
    told, warning = note_paragraphs(kit, job, issue=issue), warning_of(kit)
    notes = [notes_view(told, warning=warning, scale=plain, width=width) for width in NOTE_WIDTHS]
    tables = parts_tables(kit.parts, grid=job.shop.grid, scale=plain, tallest=room_on(pages[0]).height)
    asked, views = at_scales(wanted, job.units, pages[0])
    tried = partial(_tries, small=small_picture(asked, job.units), notes=notes, tables=tables)
    found = _on_fewest(views, asked, tried, pages, job.units)
    ordered, laid_out = _off_edges(*_with_best_picture(found, asked, pages, job.units))
    return Drawing(
        units=job.units,
        title=title_block(kit, job, issue, revisions),
        asked=wanted,
        views=tuple(ordered),
        shifts=_shifts(ordered),
        sheets=tuple(sheet for page, some in zip(pages, laid_out, strict=True) for sheet in _sheets(some, page)),
    )


def _on_fewest(
    views: Sequence[PlacedView],
    asked: Sequence[View],
    tried: Callable[[Iterable[Sequence[PlacedView]]], Iterable[list[PlacedView]]],
    pages: Sequence[Page],
    units: Units,
) -> Found:
    """Put views onto the fewest sheets, of more than a few with smaller sections and corners, then elevations too."""
    tries = list(tried([views]))
    if plain_count(tries, pages[0]) <= FEW:
        return fewest_sheets(tries, pages)
    smaller = with_smaller_sections(views, asked, units)
    less = with_smaller_details(smaller, asked, units)
    tries += tried(_unlike(smaller, less))
    found = fewest_sheets(tries, pages)
    if len(found[1][0]) <= FEW:
        return found
    low = one_smaller(less, asked, units, ELEVATIONS)
    lower = one_smaller(low, asked, units, ELEVATIONS)
    return min(found, fewest_sheets(tried(_unlike(low, lower)), pages), key=_sheet_counts)


def _unlike(*some: Sequence[PlacedView]) -> Iterable[Sequence[PlacedView]]:
    """Leave out what is at the scales of another."""
    return {tuple(view.scale for view in views): views for views in some}.values()


def _sheet_counts(found: Found) -> list[int]:
    return [len(one) for one in found[1]]


def _tries(
    some: Iterable[Sequence[PlacedView]],
    *,
    small: PlacedView,
    notes: Sequence[PlacedView],
    tables: Sequence[PlacedView],
) -> Iterator[list[PlacedView]]:
    """Yield views with each width of the notes: with all pictures, without the assembled kit, the exploded one small.

    The assembled kit stands where it costs no sheet; the exploded one on every set: it says where marks belong.
    """
    for views in some:
        less = [view for view in views if view.kind is not ViewKind.ASSEMBLED]
        least = [small if view.kind is ViewKind.EXPLODED else view for view in less]
        for kept in (views, *([less] if len(less) < len(views) else []), least):
            for note in notes:
                yield _ordered(kept, [note, *tables])


def _with_best_picture(best: Found, asked: Sequence[View], pages: Sequence[Page], units: Units) -> Found:
    """Draw the exploded picture at the largest scale at which the set takes no sheet more."""
    views, _ = best
    (picture,) = (view for view in asked if view.kind is ViewKind.EXPLODED)
    (now,) = (view.scale for view in views if view.kind is ViewKind.EXPLODED)
    for scale in scales_of(units)[picture.largest :]:
        if scale.factor >= now.factor:
            break
        if not has_room(picture, scale, pages[0]):
            continue
        other = arrange(picture, scale=scale, units=units, with_unit=False)
        larger = [other if one.kind is picture.kind else one for one in views]
        if fits(other, pages[0]) and (found := in_as_few(larger, pages, _sheet_counts(best))):
            return larger, found
    return best


def _off_edges(views: Sequence[PlacedView], laid_out: Sequence[Pages]) -> Found:
    """Take leaders off the lines that they lie along; every view stays where it is and as large."""
    clear = {view.name: off_edges(view) for view in views}
    pages = [[[replace(one, view=clear[one.view.name]) for one in on_page] for on_page in some] for some in laid_out]
    return list(clear.values()), pages


def _ordered(views: Sequence[PlacedView], tables: Sequence[PlacedView]) -> list[PlacedView]:
    """Put notes and tables before the details of single parts."""
    whole = [view for view in views if not view.kind.is_of_part]
    return [*whole, *tables, *(view for view in views if view.kind.is_of_part)]


def _asked(kit: CutKit, sections: Iterable[Section], job: Job) -> tuple[View, ...]:
    cuts = sorted(sections, key=lambda section: DOWNWARD.index(section.cut))
    is_both = not any(section.cut is SectionCut.LEFT_JAMB for section in cuts)
    shown = sections_shown(cuts, kit)
    cut = [section.cut for section in shown]
    mulls = mull_sections(kit)
    elevations = (view(kit, job.units) for view in (interior_elevation, exterior_elevation))
    return (
        *(with_mull_tags(with_threshold_tag(with_tags(view, kit, cut), kit), kit, mulls) for view in elevations),
        *(
            section_view(one, kit, job, is_both_jambs=is_both, layers_at=None if one is cuts[0] else cut[0])
            for one in shown
        ),
        *threshold_views(kit, job),
        *(mull_view(one, kit, job) for one in mulls),
        *corner_details(kit, cuts, job),
        *return_details(kit),
        *miter_details(kit),
        *outside_details(kit, cuts, job),
        *details(kit, grid=job.shop.grid),
    )


def _sheets(pages: Sequence[Sequence[OnPage]], page: Page) -> list[Sheet]:
    return [
        Sheet(name=f"{page.name} {number}", page=page, views=tuple(on_page), number=number, count=len(pages))
        for number, on_page in enumerate(pages, start=1)
    ]


def _shifts(views: Iterable[PlacedView]) -> dict[str, Point]:
    """Stand the views of one kind in a column of model space, the columns side by side, clear of the origin.

    Sections stand with their finished faces over each other.
    """
    columns: dict[ViewKind, list[PlacedView]] = {}
    for view in views:
        columns.setdefault(ViewKind.DETAIL if view.kind.is_of_part else view.kind, []).append(view)
    shifts: dict[str, Point] = {}
    left = CLEAR_OF_PAPER
    for column in columns.values():
        top = 0.0
        is_aligned = column[0].kind is ViewKind.SECTION
        inset = max(-view.box.left for view in column)
        for view in column:
            shifts[view.name] = (left + (inset if is_aligned else -view.box.left), top - view.box.top)
            top -= view.box.height + APART
        left = max(shifts[view.name][0] + view.box.right for view in column) + APART
    return shifts


def numbers_on(drawing: Drawing, page: Page) -> dict[str, tuple[int, int]]:
    """Return the number of every view and the sheet it is on, by name; for one size of paper."""
    numbers = {view.name: view.number for view in drawing.asked}
    sheets = [sheet for sheet in drawing.sheets if sheet.page == page]
    on = {one.view.name: sheet.number for sheet in sheets for one in sheet.views}
    return {name: (numbers[name], sheet) for name, sheet in on.items() if name in numbers}


def used_scales(drawing: Drawing) -> list[Scale]:
    """Return every scale of a drawing once, that of the sections first."""
    factors = {view.scale.factor: view.scale for view in drawing.views}
    main = next((view.scale.factor for view in drawing.views if view.kind is ViewKind.SECTION), min(factors))
    return sorted(factors.values(), key=lambda scale: (scale.factor != main, scale.factor))
