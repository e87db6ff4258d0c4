"""The shop drawings as PDF: the sheets of one opening, and all of them in one file with a bookmark for each."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from jambs.sheets.joining import AUTHOR, Chapter, join_chapters
from jambs.sheets.press import press
from jambs.values import Record
from jambs.vector_page import PageText, VectorPage


def write_drawing_sheets(pages: Sequence[VectorPage], title: str, path: Path) -> None:
    """Write the sheets of one drawing.

    Raises:
        PressError: the sheets cannot be printed.
    """
    path.write_bytes(drawing_sheets_pdf(pages, title))


def drawing_sheets_pdf(pages: Sequence[VectorPage], title: str) -> bytes:
    """Return the sheets of one drawing as PDF bytes, each page of the size of its paper."""
    return press("drawing_sheets", {"title": title, "author": AUTHOR, "sheets": [_sheet(page) for page in pages]})


def join_drawing_sheets(files: Sequence[tuple[str, Path]], title: str, path: Path) -> None:
    """Join the sheets of all openings, by mark: the bookmarks of the files, pages called by opening and number."""
    join_chapters([Chapter(name=mark, file=file) for mark, file in files], title, path)


def _sheet(page: VectorPage) -> Record:
    return {
        "width": page.width,
        "height": page.height,
        "svg": page.svg,
        "shows": page.shows,
        "texts": [_text(text) for text in page.texts],
    }


def _text(text: PageText) -> list[object]:
    return [round(text.x, 3), round(text.y, 3), round(text.size, 3), text.words, text.bold, text.upright]
