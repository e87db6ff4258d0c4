"""The shop drawings as PDF: the sheets of one opening, and all of them in one file with a bookmark for each."""

from __future__ import annotations

from collections.abc import Sequence
from io import BytesIO
from pathlib import Path

from pypdf import PdfReader

from jambs.job.models.openings import Job
from jambs.parts.kit.cut_kit import CutKit
from jambs.sheets.drawing_cover import KeyOf, drawing_cover_pdf
from jambs.sheets.joining import AUTHOR, Chapter, join_chapters
from jambs.sheets.press import press
from jambs.sheets.stamp import NOT_ISSUED, Stamps
from jambs.values import Record
from jambs.vector_page import PageText, VectorPage

NOTES = "Notes"
"""What the first sheet of all drawings is called by."""


def write_drawing_sheets(pages: Sequence[VectorPage], title: str, path: Path) -> None:
    """Write the sheets of one drawing.

    Raises:
        PressError: the sheets cannot be printed.
    """
    path.write_bytes(drawing_sheets_pdf(pages, title))


def drawing_sheets_pdf(pages: Sequence[VectorPage], title: str) -> bytes:
    """Return the sheets of one drawing as PDF bytes, each page of the size of its paper."""
    return press("drawing_sheets", {"title": title, "author": AUTHOR, "sheets": [_sheet(page) for page in pages]})


def write_all_drawings(
    kits: Sequence[CutKit],
    files: Sequence[tuple[str, Path]],
    job: Job,
    path: Path,
    *,
    stamps: Stamps = NOT_ISSUED,
    key: KeyOf = (),
) -> None:
    """Write the drawings of a house as one file: notes, ``key`` and index, then the sheets of each opening, by mark.

    Raises:
        PressError: the first sheet cannot be printed.
    """
    title = f"{job.name}: all drawings"
    counts = {mark: len(PdfReader(file).pages) for mark, file in files}
    cover = drawing_cover_pdf(kits, job, counts, title=title, stamps=stamps, key=key)
    join_drawing_sheets(files, title, path, cover=cover)


def join_drawing_sheets(files: Sequence[tuple[str, Path]], title: str, path: Path, *, cover: bytes = b"") -> None:
    """Join the sheets of all openings, by mark: the bookmarks of the files, pages called by opening and number."""
    chapters = [Chapter(name=mark, file=file) for mark, file in files]
    first = [Chapter(name=NOTES, file=BytesIO(cover))] if cover else []
    join_chapters([*first, *chapters], path, title=title)


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
