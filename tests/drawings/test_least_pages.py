"""How many pages views take at least: never more than they were cut from, and as many as large ones need."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jambs.drawings.elements.boxes import Box
from jambs.drawings.elements.paper import PAGES, Page, Scale
from jambs.drawings.elements.placed import PlacedView
from jambs.drawings.elements.view import ViewKind
from jambs.drawings.layout.least_pages import FILLED, least_pages
from jambs.drawings.layout.packing import BETWEEN, Sized, room_on
from jambs.length import Units

LETTER = PAGES[Units.INCH][0]
ROOM = room_on(LETTER)
"""What the title block and the border leave of a page, 8 1/2 x 11 in (ANSI Y14.1) on its side."""


def view(width: float, height: float) -> Sized:
    scale = Scale(factor=1.0, words="full size")
    box = Box(0.0, 0.0, width, height)
    return PlacedView(name="any", title="any", scale=scale, box=box, kind=ViewKind.DETAIL), width, height


def least(*sizes: tuple[float, float]) -> int:
    return least_pages([view(*size) for size in sizes], LETTER)


@st.composite
def cut_up(draw: st.DrawFn) -> tuple[list[tuple[float, float]], int]:
    """Pieces that whole pages are cut into, side by side or one under another, and how many pages there were.

    A share of every page is left out, so that no page is filled more than the drawing room looks for.
    """
    count = draw(st.integers(1, 4))
    pieces: list[tuple[float, float]] = []
    for _ in range(count):
        page = [(ROOM.width, ROOM.height)]
        for _ in range(draw(st.integers(1, 6))):
            width, height = page.pop(draw(st.integers(0, len(page) - 1)))
            share = draw(st.floats(0.1, 0.9))
            if draw(st.booleans()):
                page += [(width * share - BETWEEN, height), (width * (1 - share), height)]
            else:
                page += [(width, height * share - BETWEEN), (width, height * (1 - share))]
        kept = [(width, height) for width, height in page if min(width, height) > 0.3]
        area = sum((width + BETWEEN) * (height + BETWEEN) for width, height in kept)
        while kept and area > FILLED * (ROOM.width + BETWEEN) * (ROOM.height + BETWEEN):
            width, height = kept.pop()
            area -= (width + BETWEEN) * (height + BETWEEN)
        pieces += kept
    return pieces or [(1.0, 1.0)], count


@given(cut_up())
def test_views_cut_from_some_pages_are_never_said_to_need_more(cut: tuple[list[tuple[float, float]], int]) -> None:
    pieces, count = cut
    assert least(*pieces) <= count


@pytest.mark.parametrize("count", [1, 2, 3, 5])
def test_views_over_half_a_page_each_way_need_a_page_each(count: int) -> None:
    """By area alone they would need about half as many: 0.55 x 0.55 of a page each."""
    assert least(*[(ROOM.width * 0.55, ROOM.height * 0.55)] * count) == count


def test_views_over_a_third_go_four_to_a_page() -> None:
    """Two side by side and two one under another; a fifth needs a page more, though the area would do."""
    size = (ROOM.width * 0.4, ROOM.height * 0.4)
    assert least(*[size] * 4) == 1
    assert least(*[size] * 5) == 2


def test_tall_views_beside_each_other_share_a_page_with_what_is_left_under_none() -> None:
    """Whole heights add up by their widths: 0.3 + 0.3 + 0.3 fit, a fourth does not."""
    size = (ROOM.width * 0.29, ROOM.height * 0.9)
    assert least(*[size] * 3) == 1
    assert least(*[size] * 4) == 2


def test_a_page_of_another_size_counts_by_its_own_room() -> None:
    page = Page(name="WIDE", width=LETTER.width * 3, height=LETTER.height, margin=LETTER.margin)
    one = view(ROOM.width * 0.55, ROOM.height * 0.55)
    assert least_pages([one] * 3, page) == 1


def test_small_views_are_not_looked_for_a_way_to_fill_a_page_whole() -> None:
    size = (ROOM.width / 10 - BETWEEN, ROOM.height / 10 - BETWEEN)
    assert least(*[size] * 85) == 1
    assert least(*[size] * 99) == 2
