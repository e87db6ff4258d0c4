"""The fewest sheets: the same views in some shapes and orders, and the try that takes the least paper."""

from __future__ import annotations

import itertools
import math
import random
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass

from jambs.drawings.elements.paper import Page
from jambs.drawings.elements.placed import PlacedView
from jambs.drawings.elements.view import ViewKind
from jambs.drawings.layout.least_pages import least_pages
from jambs.drawings.layout.packing import (
    RULES,
    Filling,
    OnPage,
    PackingRule,
    Sized,
    filled,
    set_out,
    sized,
)

Pages = list[list[OnPage]]
"""The views of each page."""
FIRST = 1e6
"""More than any view measures: elevations open the set [in, sq in]."""


def _in_order(view: Sized) -> float:
    return 0.0


def _tallest_first(view: Sized) -> float:
    return -FIRST if view[0].kind.is_elevation else -view[2]


def _largest_first(view: Sized) -> float:
    return -FIRST if view[0].kind.is_elevation else -view[1] * view[2]


ORDERS: tuple[Callable[[Sized], float], ...] = (_in_order, _tallest_first, _largest_first)
"""What views are put onto pages by; of two that are alike the one that is asked for first comes first."""
STEPS = 500
"""So many small changes of a plain way are tried while views seem to fit fewer pages."""
SMALLEST = 1
"""So many tries that take the least area are bettered, beside the one that takes the fewest pages plainly.

Three took no sheet less in 48 openings, and a fifth more time.
"""
SLACK = 0.02
"""How much worse, in pages, a change may be that is kept at the beginning."""
CHANGES = (1, 1, 2, 3)
"""How many views a step moves or packs by another rule."""


def fewest_sheets(
    tries: Iterable[Sequence[PlacedView]], sizes: Sequence[Page]
) -> tuple[Sequence[PlacedView], list[Pages]]:
    """Return the first try that takes the fewest pages, of the first size of paper before the others, and its pages.

    Raises:
        ValueError: a view is larger than a page, in every try.
    """
    plain, fault = _plain_tries(tries, sizes)
    if not plain:
        raise fault or ValueError("there are no views to put onto pages")
    best = min(plain, key=_counts)
    for views, ways in {id(one[0]): one for one in (best, *sorted(plain, key=_area)[:SMALLEST])}.values():
        if [way.least for way in ways] >= _counts(best):
            continue  # it may take as few at best
        bettered: list[_Way] = []
        for number, (way, size) in enumerate(zip(ways, sizes, strict=True)):
            bettered.append(_bettered(way, size, views))
            if _counts((views, bettered)) > _counts(best)[: number + 1]:
                break  # it takes more of the first paper, whatever it takes of the others
        else:
            best = min((best, (views, bettered)), key=_counts)
    return best[0], [_set_out(way, size, best[0]) for way, size in zip(best[1], sizes, strict=True)]


def in_as_few(views: Sequence[PlacedView], sizes: Sequence[Page], counts: Sequence[int]) -> list[Pages] | None:
    """Return the pages of some views, no more of each size than ``counts``; None where no such way is found."""
    given = sized(views)
    if any(least_pages(given, size) > count for size, count in zip(sizes, counts, strict=True)):
        return None
    found = fewest_sheets([views], sizes)[1]
    return found if all(len(pages) <= count for pages, count in zip(found, counts, strict=True)) else None


def plain_count(tries: Iterable[Sequence[PlacedView]], size: Page) -> int:
    """Return the fewest pages that any of some tries takes in plain orders.

    Raises:
        ValueError: a view is larger than a page, in every try.
    """
    plain, fault = _plain_tries(tries, [size])
    if not plain:
        raise fault or ValueError("there are no views to put onto pages")
    return min(len(one[1][0].pages) for one in plain)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Way:
    """An order of views and how each takes its room, the pages that it fills, and how many they fill at least."""

    order: tuple[Sized, ...]
    rules: tuple[PackingRule, ...]
    pages: Sequence[Filling]
    least: int

    @property
    def worth(self) -> float:
        """The less the better: fewer pages, then fuller ones, which leave the less on one that may go."""
        whole = max(page.size[0] * page.size[1] for page in self.pages)
        return len(self.pages) - sum((page.taken / whole) ** 2 for page in self.pages) / len(self.pages)


_Try = tuple[Sequence[PlacedView], list[_Way]]
"""Views, and a way to put them onto pages of each size of paper."""


def _counts(one: _Try) -> list[int]:
    return [len(way.pages) for way in one[1]]


def _area(one: _Try) -> float:
    return sum(page.taken for page in one[1][0].pages)


def _plain_tries(tries: Iterable[Sequence[PlacedView]], sizes: Sequence[Page]) -> tuple[list[_Try], ValueError | None]:
    """Return the plain way of each try whose views fit, and the first fault of one whose views do not."""
    found: list[_Try] = []
    fault: ValueError | None = None
    for views in tries:
        try:
            found.append((views, [_plain(sized(views), size) for size in sizes]))
        except ValueError as too_large:
            fault = fault or too_large
    return found, fault


def _set_out(way: _Way, page: Page, views: Sequence[PlacedView]) -> Pages:
    """Return the pages of a way; they follow each other as their first views were asked for."""
    place = {view.name: number for number, view in enumerate(views)}
    return in_reading_order(set_out(way.pages, page, place), place)


def in_reading_order(pages: Pages, place: Mapping[str, int]) -> Pages:
    """Put pages in the order of their first views; what is looked for one after the other stays so.

    ``place``: of every view among those that were asked for, by name.
    """
    at: list[int] = []
    latest: dict[ViewKind, int] = {}
    for on_page in pages:
        kinds = {one.view.kind for one in on_page if one.view.kind.is_in_order}
        first = min(place[one.view.name] for one in on_page)
        at.append(max([first, *(latest.get(kind, first) for kind in kinds)]))
        latest |= dict.fromkeys(kinds, at[-1])
    return [pages[number] for number in sorted(range(len(pages)), key=lambda number: at[number])]


def _plain(views: Sequence[Sized], page: Page) -> _Way:
    """Return the best of the plain ways: few orders, one rule for all views; the first that takes the least pages."""
    least = least_pages(views, page)
    (order, rule), *others = itertools.product(ORDERS, RULES)
    best = _way(sorted(views, key=order), [rule] * len(views), page, least)
    for order, rule in others:
        if len(best.pages) <= least:
            break
        way = _way(sorted(views, key=order), [rule] * len(views), page, least, most=len(best.pages) - 1)
        best = way if len(way.pages) < len(best.pages) else best
    return best


def _way(
    order: Sequence[Sized], rules: Sequence[PackingRule], page: Page, least: int, *, most: float = math.inf
) -> _Way:
    return _Way(order=tuple(order), rules=tuple(rules), pages=filled(order, page, rules, most=most), least=least)


def _bettered(way: _Way, page: Page, views: Sequence[PlacedView]) -> _Way:
    """Move views about by chance, the same in every run, till they take the least pages.

    A change is kept where it is no worse; a worse one may be kept too, the less the later.
    """
    place = {view.name: number for number, view in enumerate(views)}
    in_order = sorted((one for one in way.order if one[0].kind.is_in_order), key=lambda one: place[one[0].name])
    chance, best = random.Random(len(views)), way
    worth = least_worth = way.worth
    for step in range(STEPS):
        if len(best.pages) <= way.least:
            break
        other = _changed(way, page, chance, in_order)
        slack = SLACK * (1 - step / STEPS) * chance.random()
        if len(other.pages) > len(way.pages):
            continue  # a page more is worse by more than any slack, however full the pages are
        if (its_worth := other.worth) <= worth + slack:
            way, worth = other, its_worth
        if worth < least_worth:
            best, least_worth = way, worth
    return best


def _changed(way: _Way, page: Page, chance: random.Random, in_order: Sequence[Sized]) -> _Way:
    """Return a way with a few views moved or packed by another rule; where it takes a page more, as far as it is known.

    ``in_order``: the views that are looked for one after the other, as they were asked for; they keep to that.
    """
    order, rules = list(way.order), list(way.rules)
    for _ in range(chance.choice(CHANGES)):
        one, other = chance.randrange(len(order)), chance.randrange(len(order))
        order.insert(other, order.pop(one))
        rules.insert(other, rules.pop(one))
        rules[chance.randrange(len(rules))] = chance.choice(RULES)
    follow = iter(in_order)
    order = [next(follow) if view[0].kind.is_in_order else view for view in order]
    return _way(order, rules, page, way.least, most=len(way.pages))
