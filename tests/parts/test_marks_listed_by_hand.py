"""Marks in a list: many in a row by the first and the last."""

from __future__ import annotations

import pytest

from jambs.parts.board.listing import marks_listed


@pytest.mark.parametrize(
    ("numbers", "told"),
    [
        ((1, 2, 3, 4, 5, 6, 7), "A-1, A-2, A-3, A-4, A-5, A-6, A-7"),  # seven can be read
        ((1, 2, 3, 4, 5, 6, 7, 8), "A-1 to A-8"),
        ((1, 3, 4, 5, 6, 7, 8, 9, 10, 12), "A-1, A-3 to A-10, A-12"),
        ((), ""),
    ],
)
def test_many_in_a_row_are_told_by_their_ends(numbers: tuple[int, ...], told: str) -> None:
    assert marks_listed(f"A-{number}" for number in numbers) == told
