"""Bookmarks of PDFs: read from single files, written into a joined one."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from pypdf import PdfReader
from pypdf.generic import ArrayObject, Destination, IndirectObject, NameObject, PdfObject, TextStringObject


@dataclass(frozen=True, slots=True, kw_only=True)
class Bookmark:
    """A bookmark on its way into a joined file: its words, how deep it stands (0: a chapter), its page."""

    words: str
    depth: int
    page: IndirectObject


def bookmarks_of(reader: PdfReader) -> Iterator[tuple[str, int, int]]:
    """Return words, depth and number of the page of every bookmark of a file, in order."""

    def told(items: Iterable[object], depth: int) -> Iterator[tuple[str, int, int]]:
        for one in items:
            if isinstance(one, list):
                yield from told(one, depth + 1)
            elif isinstance(one, Destination):
                number = reader.get_destination_page_number(one)
                yield str(one.title), depth, number or 0

    yield from told(reader.outline, 0)


def by_chapter(bookmarks: Iterable[Bookmark]) -> list[tuple[Bookmark, list[Bookmark]]]:
    """Return the chapters, each with the deeper bookmarks that follow it."""
    found: list[tuple[Bookmark, list[Bookmark]]] = []
    for one in bookmarks:
        if one.depth == 0 or not found:
            found.append((one, []))
        else:
            found[-1][1].append(one)
    return found


def bookmark_item(one: Bookmark, parent: IndirectObject, row: list[IndirectObject], at: int) -> dict[str, PdfObject]:
    """Return a bookmark with its neighbors in its row (ISO 32000-1, table 153)."""
    item: dict[str, PdfObject] = {
        "/Title": TextStringObject(one.words),
        "/Parent": parent,
        "/Dest": ArrayObject([one.page, NameObject("/Fit")]),
    }
    if at > 0:
        item["/Prev"] = row[at - 1]
    if at + 1 < len(row):
        item["/Next"] = row[at + 1]
    return item
