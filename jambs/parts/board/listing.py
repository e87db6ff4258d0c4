"""Things told one after the other: the last behind *and*; numbers that follow each other, row by row."""

from __future__ import annotations

from collections.abc import Sequence


def and_list(words: Sequence[str]) -> str:
    """List some words, one at least: ``W1``, ``W1 and W2``, ``W1, W2 and W3``."""
    *first, last = words
    return f"{', '.join(first)} and {last}" if first else last


def in_rows(numbers: Sequence[int | None]) -> list[list[int]]:
    """Return where numbers that follow each other stand, row by row; what has no number is a row of its own."""
    rows: list[list[int]] = []
    for at, number in enumerate(numbers):
        before = numbers[at - 1] if at else None
        if number is not None and before is not None and number == before + 1:
            rows[-1].append(at)
        else:
            rows.append([at])
    return rows
