"""Views put onto pages: rows of cells, views over each other in a cell, none overlapping, first page first."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial

from jambs.drawings.layout.boxes import Box
from jambs.drawings.layout.paper import Page
from jambs.drawings.layout.placed import PlacedView
from jambs.drawings.views.view import ViewKind
from jambs.geometry import Point
from jambs.length import ROUND_OFF

STRIP = 0.9
"""Height of the title block along the lower edge of a page [in]."""
CLEAR = 0.05
"""Least space between a view and the border [in]."""
BETWEEN = 0.15
"""Least space between two views on a page [in]."""


def room_on(page: Page) -> Box:
    """Return where views may stand on a page: inside the border, above the title block."""
    inset = page.margin + CLEAR
    return Box(inset, page.margin + STRIP + CLEAR, page.width - inset, page.height - inset)


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


class _Cell:
    """Views of one row that stand over each other; its sizes are worked out when one is added."""

    __slots__ = ("height", "views", "width")

    def __init__(self, view: PlacedView) -> None:
        self.views: list[PlacedView] = []
        self.add(view)

    def add(self, view: PlacedView) -> None:
        self.views.append(view)
        self.width = max(view.paper_width for view in self.views)
        self.height = sum(view.paper_height for view in self.views) + BETWEEN * (len(self.views) - 1)


class _Row:
    """Cells side by side; its sizes are worked out when a view is added."""

    __slots__ = ("cells", "height", "width")

    def __init__(self, view: PlacedView) -> None:
        self.cells: list[_Cell] = []
        self.add_beside(view)

    def add_beside(self, view: PlacedView) -> None:
        self.cells.append(_Cell(view))
        self._measure()

    def add_to(self, cell: _Cell, view: PlacedView) -> None:
        cell.add(view)
        self._measure()

    def _measure(self) -> None:
        self.width = sum(cell.width for cell in self.cells) + BETWEEN * (len(self.cells) - 1)
        self.height = max(cell.height for cell in self.cells)

    def grown_on(self, cell: _Cell, view: PlacedView) -> tuple[float, float]:
        """Return how much wider and higher the row gets by a view that stands under those of a cell."""
        wider = max(0.0, view.paper_width - cell.width)
        return wider, max(0.0, cell.height + BETWEEN + view.paper_height - self.height)

    def grown_beside(self, view: PlacedView) -> tuple[float, float]:
        """Return how much wider and higher the row gets by a view beside its cells."""
        return BETWEEN + view.paper_width, max(0.0, view.paper_height - self.height)


def packed(views: Sequence[PlacedView], page: Page) -> list[list[OnPage]]:
    """Put views onto as many pages as they need, each into the first row with room for it.

    A view never stands on an earlier page than one of its kind before it, but where it shows one part by itself.

    Raises:
        ValueError: a view is larger than the page.
    """
    room = room_on(page)
    pages: list[list[_Row]] = []
    latest: dict[ViewKind, int] = {}
    for view in views:
        if view.paper_width > room.width + ROUND_OFF or view.paper_height > room.height + ROUND_OFF:
            raise ValueError(f"view {view.name!r} is larger than a {page.name} page")
        first = 0 if view.kind.is_of_part else latest.get(view.kind, 0)
        number = next((n for n in range(first, len(pages)) if _into(pages[n], view, room)), len(pages))
        if number == len(pages):
            pages.append([_Row(view)])
        latest[view.kind] = number
    return [_set_out(rows, room) for rows in pages]


def _into(rows: list[_Row], view: PlacedView, room: Box) -> bool:
    """Add a view to a page where it makes the rows least higher, beside or under others; say whether it found room.

    Of places that are alike the first is taken; a row of its own comes last.
    """
    free = room.height - sum(row.height for row in rows) - BETWEEN * (len(rows) - 1)
    places: list[tuple[float, Callable[[], None]]] = []
    for row in rows:
        spare = room.width - row.width
        wider, higher = row.grown_beside(view)
        if wider <= spare and higher <= free:
            places.append((higher, partial(row.add_beside, view)))
        for cell in row.cells:
            wider, higher = row.grown_on(cell, view)
            if wider <= spare and higher <= free:
                places.append((higher, partial(row.add_to, cell, view)))
    if BETWEEN + view.paper_height <= free:
        places.append((BETWEEN + view.paper_height, lambda: rows.append(_Row(view))))
    if not places:
        return False
    min(places, key=lambda place: place[0])[1]()
    return True


def _set_out(rows: Sequence[_Row], room: Box) -> list[OnPage]:
    """Share the free space out evenly between rows, between the cells of a row and between the views of a cell."""
    gap = (room.height - sum(row.height for row in rows)) / (len(rows) + 1)
    placed = []
    top = room.top - gap
    for row in rows:
        space = (room.width - sum(cell.width for cell in row.cells)) / (len(row.cells) + 1)
        left = room.left + space
        for cell in row.cells:
            placed += _stacked(cell, middle=left + cell.width / 2, top=top, height=row.height)
            left += cell.width + space
        top -= row.height + gap
    return placed


def _stacked(cell: _Cell, *, middle: float, top: float, height: float) -> list[OnPage]:
    """Stand the views of a cell over each other, the free height between them and at both ends."""
    gap = (height - sum(view.paper_height for view in cell.views)) / (len(cell.views) + 1)
    if len(cell.views) > 1:
        gap = (height - sum(view.paper_height for view in cell.views)) / (len(cell.views) - 1)
        top += gap
    placed = []
    for view in cell.views:
        top -= gap + view.paper_height / 2
        placed.append(OnPage(view=view, middle=(middle, top)))
        top -= view.paper_height / 2
    return placed
