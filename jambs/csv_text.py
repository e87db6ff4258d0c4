"""Tables as CSV text in which no cell starts a formula: spreadsheets run what begins with = + - or @."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable

STARTS = "=+-@＝＋－＠\t\r"
"""What a cell of text may not begin with, blanks before it or not.

Source: the advice of the OWASP community on CSV injection; from memory.
"""
FIGURE = re.compile(r"""[+-]?(\d+'-?)?\s*\d*([ -]?\d+/\d+|\.\d+)?(e[+-]?\d+)?\s*("|mm|cm|in|°|%)?|[-–]""")
"""A number, a length or a dash for nothing: these stay as they are."""
GUARD = "'"
"""Before a text it says that it is one; spreadsheets know the mark."""


def csv_text(rows: Iterable[Iterable[object]], *, line_end: str = "\n") -> str:
    """Return rows as CSV text; numbers stay numbers, texts that would start a formula are guarded."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator=line_end)
    writer.writerows([guarded(cell) for cell in row] for row in rows)
    return text.getvalue()


def guarded(cell: object) -> object:
    """Return a cell that starts no formula."""
    return f"{GUARD}{cell}" if isinstance(cell, str) and _starts(cell) else cell


def unguarded(text: str) -> str:
    """Return a text as it was before it was guarded."""
    return text[1:] if text.startswith(GUARD) and _starts(text[1:]) else text


def _starts(text: str) -> bool:
    first = text[:1] if text[:1] in ("\t", "\r") else text.lstrip()[:1]
    return bool(first) and first in STARTS and not FIGURE.fullmatch(text.strip(" "))
