"""The title block as a strip along the lower edge of a page: its fields, where they stand, and the key beside them."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.drawings.layout.boxes import Box, Segment
from jambs.drawings.layout.lettering import text_width
from jambs.drawings.layout.packing import STRIP
from jambs.drawings.layout.paper import Page

LABEL_HEIGHT = 0.065
"""Capitals of labels on paper [in]."""
INSET = 0.07
"""From the edge of a field to its words [in on paper]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TitleField:
    """A field: tag, label, column, row (0 above, 1 below, None: both); ``height``: most of its value [in on paper]."""

    tag: str
    label: str
    column: int
    row: int | None
    height: float = 0.11


SHARES = (0.08, 0.12, 0.095, 0.19, 0.07, 0.07, 0.085, 0.105, 0.06, 0.06, 0.065)
"""Widths of the columns, as shares of the strip; the last one holds the key."""
FIELDS = (
    TitleField(tag="OPENING", label="OPENING", column=0, row=None, height=0.22),
    TitleField(tag="JOB", label="JOB", column=1, row=0),
    TitleField(tag="ROOM", label="ROOM", column=1, row=1),
    TitleField(tag="WALL", label="WALL", column=2, row=0),
    TitleField(tag="SIDE", label="SIDE OF HOUSE", column=2, row=1),
    TitleField(tag="STATE", label="STATE OF THE DEPTHS", column=3, row=0),
    TitleField(tag="CAUTION", label="", column=3, row=1, height=0.09),
    TitleField(tag="SCALE", label="SCALE", column=4, row=0),
    TitleField(tag="UNITS", label="UNITS", column=4, row=1),
    TitleField(tag="SIZES", label="SIZES TO", column=5, row=0),
    TitleField(tag="CODE", label="CODE", column=5, row=1),
    TitleField(tag="ISSUE", label="ISSUE", column=6, row=0),
    TitleField(tag="REPLACES", label="", column=6, row=1, height=0.08),
    TitleField(tag="DATE", label="ISSUED", column=7, row=0),
    TitleField(tag="MEASURED", label="DEPTHS", column=7, row=1, height=0.09),
    TitleField(tag="DRAWN", label="DRAWN", column=8, row=0),
    TitleField(tag="CHECKED", label="CHECKED", column=8, row=1),
    TitleField(tag="SHEET", label="SHEET", column=9, row=None, height=0.16),
)
UNDIVIDED = {field.column for field in FIELDS if field.row is None} | {3, 6, len(SHARES) - 1}
"""Columns without a line between their rows."""


def strip_width(page: Page) -> float:
    """Return the width of the strip [in on paper]."""
    return page.width - 2 * page.margin


def cell_of(page: Page, column: int, row: int | None) -> Box:
    """Return the cell of a field, from the lower left corner of the strip [in on paper]."""
    left, width = sum(SHARES[:column]) * strip_width(page), SHARES[column] * strip_width(page)
    low = 0.0 if row in (None, 1) else STRIP / 2
    high = STRIP if row in (None, 0) else STRIP / 2
    return Box(left, low, left + width, high)


def strip_rules(page: Page) -> list[Segment]:
    """Return the lines of the strip, from its lower left corner [in on paper]."""
    rules = [((0.0, STRIP), (strip_width(page), STRIP))]
    for column in range(len(SHARES)):
        cell = cell_of(page, column, None)
        if column:
            rules.append(((cell.left, 0.0), (cell.left, STRIP)))
        if column not in UNDIVIDED:
            rules.append(((cell.left, STRIP / 2), (cell.right, STRIP / 2)))
    return rules


def label_at(page: Page, field: TitleField) -> tuple[float, float]:
    """Return the left end of a label on its base line, from the lower left corner of the strip [in on paper]."""
    cell = cell_of(page, field.column, field.row)
    return (cell.left + INSET, cell.top - INSET - LABEL_HEIGHT)


def value_at(page: Page, field: TitleField) -> tuple[float, float]:
    """Return the left end of a value on its base line, from the lower left corner of the strip [in on paper]."""
    cell = cell_of(page, field.column, field.row)
    low = 0.09 if field.row is not None else (cell.height - LABEL_HEIGHT - INSET - field.height) / 2
    return (cell.left + INSET, cell.bottom + low)


def value_height(text: str, page: Page, field: TitleField) -> float:
    """Return the height at which a text fits its field, at most the field's own [in on paper]."""
    wide = text_width(text, height=1.0, bold=True) or 1.0
    return min(field.height, (cell_of(page, field.column, field.row).width - 1.8 * INSET) / wide)


def key_room(page: Page) -> Box:
    """Return the room of the key, from the lower left corner of the strip [in on paper]."""
    return cell_of(page, len(SHARES) - 1, None).grown(-INSET)
