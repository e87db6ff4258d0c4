"""The fewest sheets: the same views in some shapes and orders, and the try that takes the least paper."""

from __future__ import annotations

import itertools
import math
import random
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import partial

from jambs.drawings.layout.packing import BETWEEN, RULES, OnPage, PackingRule, Sized, packed, room_on, sized
from jambs.drawings.layout.paper import Page
from jambs.drawings.layout.placed import PlacedView
from jambs.length import ROUND_OFF

Pages = list[list[OnPage]]
"""The views of each page."""
FIRST = 1e6
"""More than any view measures: elevations open every set [in, sq in]."""


def _in_order(view: Sized) -> float:
    return 0.0


def _tallest_first(view: Sized) -> float:
    return -FIRST if view[0].kind.is_elevation else -view[2]


def _largest_first(view: Sized) -> float:
    return -FIRST if view[0].kind.is_elevation else -view[1] * view[2]


ORDERS: tuple[Callable[[Sized], float], ...] = (_in_order, _tallest_first, _largest_first)
"""What views are put onto pages by; of two that are alike the one that is asked for first comes first."""
SHUFFLES = 60
"""So many ways more are tried while views seem to fit fewer pages."""
LOADS = (0.3, 1.0)
"""The larger views come first in a shuffled order too, each counted for some of its size."""


FILLED = 0.9
"""Views are not looked for a way to fill more of their pages than this: none was seen that does."""


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
            pages = _fewer(views, sizes, best[1] if best else None)
        except ValueError as too_large:
            fault = fault or too_large
            continue
        best = (views, pages) if pages else best
    if best is None:
        raise fault or ValueError("there are no views to put onto pages")
    return best


def _fewer(views: Sequence[PlacedView], sizes: Sequence[Page], than: list[Pages] | None) -> list[Pages] | None:
    """Return the pages of each size, or None where they are no fewer than those of another try."""
    found: list[Pages] = []
    is_fewer = than is None
    for number, size in enumerate(sizes):
        most = math.inf if is_fewer or than is None else len(than[number])
        pages = _fewest(views, size, most)
        if pages is None:
            return None
        is_fewer = is_fewer or len(pages) < most
        found.append(pages)
    return found if is_fewer else None


def _fewest(views: Sequence[PlacedView], page: Page, most: float) -> Pages | None:
    """Return the pages of the way that takes fewest, or None where it takes more than ``most``.

    They follow each other as their first views were asked for.
    """
    place = {view.name: number for number, view in enumerate(views)}
    all_of_them = sized(views)
    least = _least_pages(all_of_them, page)
    best: Pages | None = None
    for order, rules in _ways(all_of_them) if least <= most else ():
        best = packed(order, page, rules, fewer_than=len(best) if best else most + 1) or best
        if best and len(best) <= least:
            break
    return sorted(best, key=lambda on_page: min(place[one.view.name] for one in on_page)) if best else None


def _least_pages(views: Sequence[Sized], page: Page) -> int:
    """Return the number of pages under which none are looked for: the views would fill them nearly whole."""
    room = room_on(page)
    taken = sum((width + BETWEEN) * (height + BETWEEN) for _, width, height in views)
    return max(1, math.ceil(taken / ((room.width + BETWEEN) * (room.height + BETWEEN) * FILLED) - ROUND_OFF))


def _ways(views: Sequence[Sized]) -> Iterator[tuple[Sequence[Sized], Iterable[PackingRule]]]:
    """Return the orders and rules that are tried: plain ones, then shuffled ones, the same in every run."""
    for order, rule in itertools.product(ORDERS, RULES):
        yield sorted(views, key=order), itertools.repeat(rule)
    chance = random.Random(len(views))
    for _ in range(SHUFFLES):
        loads = {view[0].name: _largest_first(view) * chance.uniform(*LOADS) for view in views}
        yield sorted(views, key=partial(_loaded, loads)), chance.choices(RULES, k=len(views))


def _loaded(loads: Mapping[str, float], view: Sized) -> tuple[bool, float]:
    return (not view[0].kind.is_elevation, loads[view[0].name])
