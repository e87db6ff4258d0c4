"""Views put onto pages: each page is cut into rooms beside and under each other, none overlapping, first page first."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from jambs.drawings.elements.boxes import Box
from jambs.drawings.elements.paper import Page
from jambs.drawings.elements.placed import PlacedView
from jambs.drawings.elements.view import ViewKind
from jambs.geometry import Point
from jambs.length import ROUND_OFF

STRIP = 0.9
"""Height of the title block along the lower edge of a page [in]."""
CLEAR = 0.05
"""Least space between a view and the border [in]."""
BETWEEN = 0.1
"""Least space between two views on a page, beside what each keeps clear around itself [in]."""


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


Size = tuple[float, float]
"""Width and height on paper [in]."""
Sized = tuple[PlacedView, float, float]
"""A view with its width and height on paper, worked out once [in]."""


def sized(views: Iterable[PlacedView]) -> list[Sized]:
    """Return views with their sizes on paper."""
    return [(view, view.paper_width, view.paper_height) for view in views]


class Room:
    """A piece of a page: free, taken by a view, or parted into rooms, a row side by side or a stack one under another.

    ``width`` and ``height``: what it was given, or what its view takes [in on paper].
    """

    __slots__ = ("height", "is_row", "parts", "view", "width")

    def __init__(self, width: float, height: float, view: PlacedView | None = None) -> None:
        self.width, self.height, self.view = width, height, view
        self.parts: list[Room] = []
        self.is_row = False

    def take(self, view: Sized, *, is_column: bool) -> tuple[Room, Room]:
        """Put a view at the upper left and return the rooms that are left near it and past it, free or of no size."""
        shown, width, height = view
        near, far = (Room(*size) for size in _left((self.width, self.height), (width, height), is_column=is_column))
        own = Room(width, height, shown)
        self.parts = [_parted(own, near, is_row=not is_column), *_real(far)]
        self.is_row = is_column
        return near, far

    def needs(self) -> tuple[float, float]:
        """Return the width and height that its views take, with the least space between them [in on paper]."""
        if self.view:
            return self.width, self.height
        sizes = [part.needs() for part in self.taken()]
        widths, heights = [width for width, _ in sizes], [height for _, height in sizes]
        if self.is_row:
            return sum(widths) + BETWEEN * (len(widths) - 1), max(heights)
        return max(widths), sum(heights) + BETWEEN * (len(heights) - 1)

    def taken(self) -> list[Room]:
        """Return the rooms in it that have a view."""
        return [part for part in self.parts if part.view or part.taken()]


def _left(room: Size, view: Size, *, is_column: bool) -> tuple[Size, Size]:
    """Return the sizes of what a view leaves of a room, near it and past it.

    ``is_column``: what is under the view goes no further across than the view, else what is beside it no lower.
    """
    across, down = room[0] - view[0] - BETWEEN, room[1] - view[1] - BETWEEN
    return ((view[0], down), (across, room[1])) if is_column else ((across, view[1]), (room[0], down))


def _real(room: Room) -> list[Room]:
    return [room] if min(room.width, room.height) > 0.0 else []


def _parted(own: Room, other: Room, *, is_row: bool) -> Room:
    """Return a room for a view and what is free beside or under it."""
    whole = Room(0.0, 0.0)
    whole.parts, whole.is_row = [own, *_real(other)], is_row
    return whole


@dataclass(frozen=True, slots=True, kw_only=True)
class PackingRule:
    """How a view takes a room: ``is_column`` of ``Room.take``; the tightest room either way, or the lowest."""

    is_column: bool
    is_tightest: bool


RULES = tuple(
    PackingRule(is_column=is_column, is_tightest=is_tightest)
    for is_column in (True, False)
    for is_tightest in (True, False)
)
"""The rules that are tried: columns or rows first; the tightest fit either way, or the lowest room."""


class Filling:
    """A page that is filled: its size, free pieces by number, what was put where, the area taken and the most [sq in].

    ``greatest``: width and height that no free piece goes over; most views that find no room need not look further.
    The whole page is piece 0; of what a view leaves of its piece the near one is numbered before the far one.
    """

    __slots__ = ("free", "greatest", "most", "put", "size", "taken")

    def __init__(self, width: float, height: float) -> None:
        self.size = self.greatest = (width, height)
        self.free = [(0, width, height)]
        self.put: list[tuple[int, Sized, bool]] = []
        self.taken, self.most = 0.0, (width + BETWEEN) * (height + BETWEEN) + ROUND_OFF

    def takes(self, view: Sized, area: float, rule: PackingRule) -> bool:
        """Put a view, with the area it takes, into the free piece that a rule prefers; say whether there is one."""
        _, width, height = view
        best, found, is_tightest = math.inf, -1, rule.is_tightest
        least_wide, least_high = width - ROUND_OFF, height - ROUND_OFF
        for place, (_, wide, high) in enumerate(self.free):
            if wide < least_wide or high < least_high:
                continue
            across, down = wide - width, high - height
            left = across if is_tightest and across < down else down
            if left < best:
                best, found = left, place
        if found < 0:
            return False
        number, wide, high = self.free[found]
        fresh = 1 + 2 * len(self.put)
        near, far = _left((wide, high), (width, height), is_column=rule.is_column)
        left_over = ((fresh, *near), (fresh + 1, *far))
        self.free[found : found + 1] = [one for one in left_over if one[1] > 0.0 and one[2] > 0.0]
        self.greatest = (
            max([one[1] for one in self.free], default=0.0),
            max([one[2] for one in self.free], default=0.0),
        )
        self.put.append((number, view, rule.is_column))
        self.taken += area
        return True

    @property
    def whole(self) -> Room:
        """The page as a room, parted as its views were put."""
        rooms = [Room(*self.size)]
        for number, view, is_column in self.put:
            rooms += rooms[number].take(view, is_column=is_column)
        return rooms[0]


def filled(
    views: Sequence[Sized], page: Page, rules: Iterable[PackingRule], *, most: float = math.inf
) -> list[Filling]:
    """Fill as many pages as views need, each view on the first page with room for it.

    ``rules``: how each takes its room. A section never stands on an earlier page than one before it, nor a piece of
    the parts table; all else may. ``most``: where views need a page more, it is left empty and no other is filled.

    Raises:
        ValueError: a view is larger than the page.
    """
    room = room_on(page)
    pages: list[Filling] = []
    latest: dict[ViewKind, int] = {}
    for view, rule in zip(views, rules, strict=False):
        shown, width, height = view
        kind, area = shown.kind, (width + BETWEEN) * (height + BETWEEN)
        is_in_order = kind.is_in_order
        least_wide, least_high = width - ROUND_OFF, height - ROUND_OFF
        for number in range(latest.get(kind, 0) if is_in_order else 0, len(pages)):
            one = pages[number]
            if one.taken + area > one.most or one.greatest[0] < least_wide or one.greatest[1] < least_high:
                continue  # the most of them need not look at its pieces
            if one.takes(view, area, rule):
                break
        else:
            number = len(pages)
            pages.append(Filling(room.width, room.height))
            if number >= most:
                return pages
            if not pages[number].takes(view, area, rule):
                raise ValueError(f"view {view[0].name!r} is larger than a {page.name} page")
        if is_in_order:
            latest[kind] = number
    return pages


def set_out(pages: Iterable[Filling], page: Page, place: Mapping[str, int]) -> list[list[OnPage]]:
    """Return where the views of filled pages stand, the free space between them shared out.

    ``place``: of every view among those that were asked for, by name; rows and stacks follow it.
    """
    room = room_on(page)
    return [_set_out(one.whole, room, place, is_page=True) for one in pages]


def _first(room: Room, place: Mapping[str, int]) -> int:
    """Return the place of the first view in a room."""
    return place[room.view.name] if room.view else min(_first(part, place) for part in room.taken())


def _set_out(room: Room, box: Box, place_of: Mapping[str, int], *, is_page: bool = False) -> list[OnPage]:
    """Share the free space of a box out evenly among the rooms that have views, the first at the left or on top.

    A stack beside other views reaches from the top to the bottom of its box; else there is space at both ends too.
    """
    if room.view:
        return [OnPage(view=room.view, middle=box.center)]
    parts = sorted(room.taken(), key=lambda part: _first(part, place_of))
    sizes = [part.needs()[0 if room.is_row else 1] for part in parts]
    free = (box.width if room.is_row else box.height) - sum(sizes)
    has_ends = room.is_row or is_page or len(parts) == 1
    gap = free / (len(parts) + 1 if has_ends else len(parts) - 1)
    place = (box.left if room.is_row else box.top) + gap * has_ends * (1 if room.is_row else -1)
    placed = []
    for part, size in zip(parts, sizes, strict=True):
        if room.is_row:
            placed += _set_out(part, Box(place, box.bottom, place + size, box.top), place_of)
            place += size + gap
        else:
            placed += _set_out(part, Box(box.left, place - size, box.right, place), place_of)
            place -= size + gap
    return placed
