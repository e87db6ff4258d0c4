"""The title block as a strip along the lower edge of a page: its fields, the table of issues, the key beside them."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.drawings.elements.boxes import Box, Segment
from jambs.drawings.elements.lettering import text_width
from jambs.drawings.elements.paper import Page
from jambs.drawings.layout.packing import STRIP
from jambs.geometry import Point

LABEL_HEIGHT = 0.06
"""Capitals of labels on paper [in]."""
INSET = 0.05
"""From the edge of a field to its words [in on paper]."""
ROWS = 3
"""Rows of fields over each other."""
LINE_PITCH = 1.5
"""From one line of a value to the next, as a share of the capital height."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TitleField:
    """A field: tag, label, column, first row from above and how many it takes.

    ``height``: most of its value; ``lines``: most lines of it.
    """

    tag: str
    label: str
    column: int
    row: int
    rows: int = 1
    height: float = 0.095
    lines: int = 1


SHARES = (0.075, 0.14, 0.115, 0.145, 0.125, 0.085, 0.165, 0.08, 0.07)
"""Widths of the columns, as shares of the strip; the last one holds the key. That of the issues holds the commonest
reason, *cut from other boards*, on a letter page."""
REVISIONS = 6
"""Column of the table of issues."""
KEY_ROWS = 2
"""Rows of the last column that the key takes, under the number of the sheet."""
FIELDS = (
    TitleField(tag="OPENING", label="OPENING", column=0, row=0, rows=ROWS, height=0.22),
    TitleField(tag="JOB", label="JOB", column=1, row=0),
    TitleField(tag="ROOM", label="ROOM", column=1, row=1),
    TitleField(tag="WALL", label="WALL", column=1, row=2),
    TitleField(tag="ADDRESS", label="ADDRESS", column=2, row=0, rows=2, height=0.085, lines=4),
    TitleField(tag="SIDE", label="SIDE OF HOUSE", column=2, row=2),
    TitleField(tag="STATE", label="STATE OF THE DEPTHS", column=3, row=0),
    TitleField(tag="CAUTION", label="", column=3, row=1, height=0.085, lines=2),
    TitleField(tag="MEASURED", label="DEPTHS", column=3, row=2, height=0.085),
    TitleField(tag="SCALE", label="SCALE", column=4, row=0),
    TitleField(tag="UNITS", label="UNITS", column=4, row=1, height=0.085),
    TitleField(tag="TOLERANCE", label="TOLERANCE", column=4, row=2, height=0.085),
    TitleField(tag="ISSUE", label="ISSUE", column=5, row=0),
    TitleField(tag="CODE", label="CODE", column=5, row=1),
    TitleField(tag="DATE", label="ISSUED", column=5, row=2, height=0.085),
    TitleField(tag="DRAWN", label="DRAWN", column=7, row=0),
    TitleField(tag="CHECKED", label="CHECKED", column=7, row=1),
    TitleField(tag="REPLACES", label="", column=7, row=2, height=0.07),
    TitleField(tag="PLACE", label="", column=8, row=1, rows=KEY_ROWS, height=0.07, lines=3),
    TitleField(tag="SHEET", label="SHEET", column=8, row=0, height=0.1),
)
UNDIVIDED = {(3, 1), (REVISIONS, 1), (REVISIONS, 2), (0, 1), (0, 2), (2, 1), (len(SHARES) - 1, 2)}
"""Column and row of cells without a line over them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StripText:
    """Words of the table of issues: left end on the base line, capital height [in on paper]."""

    words: str
    at: Point
    height: float
    bold: bool = False


def strip_width(page: Page) -> float:
    """Return the width of the strip [in on paper]."""
    return page.width - 2 * page.margin


def cell_of(page: Page, column: int, row: int, rows: int = 1) -> Box:
    """Return a cell, from the lower left corner of the strip [in on paper]; rows count from above."""
    left, width = sum(SHARES[:column]) * strip_width(page), SHARES[column] * strip_width(page)
    high = STRIP - row * STRIP / ROWS
    return Box(left, high - rows * STRIP / ROWS, left + width, high)


def field_cell(page: Page, field: TitleField) -> Box:
    """Return the cell of a field, from the lower left corner of the strip [in on paper]."""
    return cell_of(page, field.column, field.row, field.rows)


def strip_rules(page: Page) -> list[Segment]:
    """Return the lines of the strip, from its lower left corner [in on paper]."""
    rules = [((0.0, STRIP), (strip_width(page), STRIP))]
    for column in range(len(SHARES)):
        whole = cell_of(page, column, 0, ROWS)
        if column:
            rules.append(((whole.left, 0.0), (whole.left, STRIP)))
        for row in range(1, ROWS):
            if (column, row) not in UNDIVIDED:
                level = cell_of(page, column, row).top
                rules.append(((whole.left, level), (whole.right, level)))
    return rules


def label_at(page: Page, field: TitleField) -> Point:
    """Return the left end of a label on its base line, from the lower left corner of the strip [in on paper]."""
    cell = field_cell(page, field)
    return (cell.left + INSET, cell.top - INSET - LABEL_HEIGHT)


def value_at(page: Page, field: TitleField, *, line: int = 0, count: int = 1, height: float = 0.0) -> Point:
    """Return the left end of a line of a value on its base line, from the lower left corner of the strip [in].

    ``count`` lines of a capital ``height``; the last one stands lowest.
    """
    cell = field_cell(page, field)
    is_tall = field.rows > 1 and field.lines == 1
    low = (cell.height - LABEL_HEIGHT - INSET - field.height) / 2 if is_tall else INSET
    if field.rows > 1 and field.lines > 1:
        low = cell.height - LABEL_HEIGHT - 3 * INSET - height * (1 + LINE_PITCH * (count - 1))
    return (cell.left + INSET, cell.bottom + low + (count - 1 - line) * LINE_PITCH * height)


def value_height(text: str, page: Page, field: TitleField) -> float:
    """Return the height at which the lines of a text fit their field, at most the field's own [in on paper]."""
    lines = text.split("\n")
    wide = max(text_width(line, height=1.0, bold=True) for line in lines) or 1.0
    cell = field_cell(page, field)
    taken = LABEL_HEIGHT + 2.5 * INSET if field.label else 2 * INSET
    room = (cell.height - taken) / (1 + LINE_PITCH * (len(lines) - 1))
    return min(field.height, (cell.width - 1.8 * INSET) / wide, room)


def value_lines(text: str, page: Page, field: TitleField) -> list[StripText]:
    """Return the lines of a value in their places."""
    lines, height = text.split("\n"), value_height(text, page, field)
    return [
        StripText(words=words, at=value_at(page, field, line=n, count=len(lines), height=height), height=height)
        for n, words in enumerate(lines)
    ]


def key_room(page: Page) -> Box:
    """Return the room of the key, from the lower left corner of the strip [in on paper]."""
    return cell_of(page, len(SHARES) - 1, ROWS - KEY_ROWS, KEY_ROWS).grown(-INSET)
