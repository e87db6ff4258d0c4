"""Views put onto pages: rows of views, none overlapping, first page first."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from jambs.drawings.layout.boxes import Box
from jambs.drawings.layout.paper import Page
from jambs.drawings.layout.placed import PlacedView
from jambs.drawings.views.view import ViewKind
from jambs.geometry import Point
from jambs.length import ROUND_OFF

STRIP = 0.9
"""Height of the title block along the lower edge of a page [in]."""
BETWEEN = 0.2
"""Least space between two views on a page [in]."""


def room_on(page: Page) -> Box:
    """Return where views may stand on a page: inside the border, above the title block."""
    inset = page.margin + 0.1
    return Box(inset, page.margin + STRIP + 0.1, page.width - inset, page.height - inset)


def share_of(length: float, share: float) -> float:
    """Return what a share of a page's room leaves a view, the space to its neighbors taken off [in]."""
    return length * share - BETWEEN * (1 - share)


@dataclass(frozen=True, slots=True, kw_only=True)
class OnPage:
    """A view on a page: its middle on paper [in]."""

    view: PlacedView
    middle: Point

    @property
    def box(self) -> Box:
        """The room it takes on paper."""
        half = (self.view.paper_width / 2, self.view.paper_height / 2)
        x, y = self.middle
        return Box(x - half[0], y - half[1], x + half[0], y + half[1])


@dataclass(slots=True)
class _Row:
    views: list[PlacedView] = field(default_factory=list)

    @property
    def width(self) -> float:
        return sum(view.paper_width for view in self.views) + BETWEEN * (len(self.views) - 1)

    @property
    def height(self) -> float:
        return max(view.paper_height for view in self.views)


def packed(views: Sequence[PlacedView], page: Page) -> list[list[OnPage]]:
    """Put views onto as many pages as they need, each into the first row with room for it.

    A view never stands on an earlier page than one of its kind before it.

    Raises:
        ValueError: a view is larger than the page.
    """
    room = room_on(page)
    pages: list[list[_Row]] = []
    latest: dict[ViewKind, int] = {}
    for view in views:
        if view.paper_width > room.width + ROUND_OFF or view.paper_height > room.height + ROUND_OFF:
            raise ValueError(f"view {view.name!r} is larger than a {page.name} page")
        first = latest.get(view.kind, 0)
        number = next((n for n in range(first, len(pages)) if _into(pages[n], view, room)), len(pages))
        if number == len(pages):
            pages.append([_Row([view])])
        latest[view.kind] = number
    return [_set_out(rows, room) for rows in pages]


def _into(rows: list[_Row], view: PlacedView, room: Box) -> bool:
    """Add a view to the first row of a page that takes it, or as a new row; say whether it found room."""
    used = sum(row.height for row in rows) + BETWEEN * (len(rows) - 1)
    for row in rows:
        grows = max(0.0, view.paper_height - row.height)
        if row.width + BETWEEN + view.paper_width <= room.width and used + grows <= room.height:
            row.views.append(view)
            return True
    if used + BETWEEN + view.paper_height <= room.height:
        rows.append(_Row([view]))
        return True
    return False


def _set_out(rows: Sequence[_Row], room: Box) -> list[OnPage]:
    """Share the free space out evenly between rows and between the views of a row."""
    gap = (room.height - sum(row.height for row in rows)) / (len(rows) + 1)
    placed = []
    top = room.top - gap
    for row in rows:
        space = (room.width - sum(view.paper_width for view in row.views)) / (len(row.views) + 1)
        left = room.left + space
        for view in row.views:
            middle = (left + view.paper_width / 2, top - row.height / 2)
            placed.append(OnPage(view=view, middle=middle))
            left += view.paper_width + space
        top -= row.height + gap
    return placed
