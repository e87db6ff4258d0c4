"""The table of issues within the title block: number, day, what changed; the latest at the top."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.drawings.elements.boxes import Segment
from jambs.drawings.elements.lettering import text_width
from jambs.drawings.elements.paper import Page
from jambs.drawings.layout.packing import STRIP
from jambs.drawings.layout.title_strip import INSET, LABEL_HEIGHT, REVISIONS, ROWS, StripText, cell_of
from jambs.issue_stamp import Revision

SHOWN = 4
"""Issues that the table has room for; of more than these the earliest are left out."""
HEIGHT = 0.065
"""Capitals of the table [in on paper]."""
NUMBERS, DAYS = 0.14, 0.56
"""Where the day and what changed begin, after the left end of the number [in on paper]."""
MORE = "…"


def issue_texts(page: Page, revisions: Sequence[Revision]) -> list[StripText]:
    """Return the table in its place, from the lower left corner of the strip [in on paper]."""
    cell = cell_of(page, REVISIONS, 0, ROWS)
    left, top = cell.left + INSET, cell.top - INSET - LABEL_HEIGHT
    columns = (left, left + NUMBERS, left + NUMBERS + DAYS)
    texts = [StripText(words="ISSUES: DAY, WHAT CHANGED", at=(left, top), height=LABEL_HEIGHT)]
    for row, one in enumerate([*revisions][::-1][:SHOWN], start=1):
        level = top - row * _pitch()
        words = (str(one.number), one.day, _cut_to(one.words, cell.right - INSET - columns[2]))
        texts += [
            StripText(words=word, at=(x, level), height=HEIGHT) for word, x in zip(words, columns, strict=True) if word
        ]
    return texts


def issue_rules(page: Page) -> list[Segment]:
    """Return the lines between the rows, from the lower left corner of the strip [in on paper]."""
    cell = cell_of(page, REVISIONS, 0, ROWS)
    first = cell.top - INSET - LABEL_HEIGHT - INSET
    return [((cell.left, first - row * _pitch()), (cell.right, first - row * _pitch())) for row in range(SHOWN)]


def _pitch() -> float:
    """Return the height of a row."""
    return (STRIP - INSET - LABEL_HEIGHT - INSET) / SHOWN


def _cut_to(words: str, width: float) -> str:
    """Return as many whole words as a width has room for; three dots stand for the rest."""
    if text_width(words, height=HEIGHT) <= width:
        return words
    kept = words.split(" ")
    while kept and text_width(" ".join(kept) + MORE, height=HEIGHT) > width:
        kept.pop()
    return " ".join(kept) + MORE
