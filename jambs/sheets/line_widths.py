"""How wide the lines of a parts table are at most, so that the press sets only those that may take more than one."""

from __future__ import annotations

from jambs.letter_widths import size_in_capitals, width_in_capitals
from jambs.values import Record

BESIDE_FIGURES = frozenset({"×", "mm"})
"""Words without a figure that may stand within a length, which is set bold."""


def with_widths(row: Record) -> Record:
    """Return a line of the parts table with the widths of its texts, as shares of the sizes they are set in."""
    wide = {
        "name": _plain(row["name"]),
        "position": _plain(f"{row['position']} "),
        "board": _plain(f"· {row['board']}"),
        "work": [_work(text) for text in (row["ends"], *row["work"])],
        "asides": [_plain(text) for text in row["asides"]],
    }
    return {**row, "wide": wide}


def _work(text: str) -> Record:
    """Return the widths of words and of settings, which are set larger: at most, so every word with a figure is one."""
    words = [f"{word} " for word in text.split(" ")]
    is_set = [_may_be_set(word) for word in words]
    plain = sum(_plain(word) for word, it_is in zip(words, is_set, strict=True) if not it_is)
    return {"plain": plain, "bold": sum(_bold(word) for word, it_is in zip(words, is_set, strict=True) if it_is)}


def _may_be_set(word: str) -> bool:
    return word.strip() in BESIDE_FIGURES or any(letter.isdigit() for letter in word)


def _plain(text: str) -> float:
    return width_in_capitals(text, bold=False) / size_in_capitals()


def _bold(text: str) -> float:
    return width_in_capitals(text, bold=True) / size_in_capitals()
