"""Things told one after the other: the last behind *and*; numbers that follow each other, row by row."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence


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


MANY = 8
"""From so many marks in a row on, a list names the first and the last."""


def by_ends(told: Sequence[str]) -> Iterator[str]:
    """Tell marks that follow each other by the first and the last, where they are many: ``A2-1 to A2-26``."""
    numbers = [mark.rpartition("-")[2] for mark in told]
    for row in in_rows([int(number) if number.isdigit() else None for number in numbers]):
        if len(row) < MANY:
            yield from (told[at] for at in row)
        else:
            yield f"{told[row[0]]} to {told[row[-1]]}"


def marks_listed(marks: Iterable[str]) -> str:
    """List marks as they stand on labels: ``W1-1, W1-2``; ``A2-1 to A2-26``."""
    return ", ".join(by_ends(tuple(marks)))
