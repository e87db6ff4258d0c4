"""The fewest sheets: the same views in some shapes and orders, and the try that takes the least paper."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from jambs.drawings.layout.packing import OnPage, packed
from jambs.drawings.layout.paper import Page
from jambs.drawings.layout.placed import PlacedView

Pages = list[list[OnPage]]
"""The views of each page."""
FIRST = 1e6
"""More than any view measures: elevations open every set [in, sq in]."""


def _in_order(view: PlacedView) -> float:
    return 0.0


def _tallest_first(view: PlacedView) -> float:
    return -FIRST if view.kind.is_elevation else -view.paper_height


def _largest_first(view: PlacedView) -> float:
    return -FIRST if view.kind.is_elevation else -view.paper_width * view.paper_height


ORDERS: tuple[Callable[[PlacedView], float], ...] = (_in_order, _tallest_first, _largest_first)
"""What views are put onto pages by; of two that are alike the one that is asked for first comes first."""


def fewest_sheets(
    tries: Iterable[Sequence[PlacedView]], sizes: Sequence[Page]
) -> tuple[Sequence[PlacedView], list[Pages]]:
    """Return the first try that takes the fewest pages, of the first size of paper before the others, and its pages.

    Raises:
        ValueError: a view is larger than a page, in every try.
    """
    best: tuple[Sequence[PlacedView], list[Pages]] | None = None
    fault: ValueError | None = None
    for views in tries:
        try:
            pages = [_fewest(views, size) for size in sizes]
        except ValueError as too_large:
            fault = fault or too_large
            continue
        if best is None or [len(some) for some in pages] < [len(some) for some in best[1]]:
            best = (views, pages)
    if best is None:
        raise fault or ValueError("there are no views to put onto pages")
    return best


def _fewest(views: Sequence[PlacedView], page: Page) -> Pages:
    """Return the pages of the order that takes fewest; they follow each other as their first views were asked for."""
    place = {view.name: number for number, view in enumerate(views)}
    found = min((packed(sorted(views, key=order), page) for order in ORDERS), key=len)
    return sorted(found, key=lambda on_page: min(place[one.view.name] for one in on_page))
