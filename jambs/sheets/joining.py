"""Many PDFs into one, a file at a time: a house of thousands of sheets takes no more memory than one of them.

Pages, fonts, pictures, title and language come along, and the marks by which a screen reader finds its way.
"""

from __future__ import annotations

import hashlib
from array import array
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from io import SEEK_END, BytesIO
from pathlib import Path
from typing import BinaryIO

from pypdf import PdfReader
from pypdf.generic import (
    ArrayObject,
    ByteStringObject,
    DictionaryObject,
    IndirectObject,
    NameObject,
    NumberObject,
    PdfObject,
    TextStringObject,
)

from jambs.sheets.bookmarks import Bookmark, bookmark_item, bookmarks_of, by_chapter
from jambs.sheets.joined_tags import JoinedTags

AUTHOR = "jambs"
HEADER = b"%PDF-1.7\n%\x80\x80\x80\x80\n"
FROM_CATALOG = ("/Lang", "/Metadata", "/ViewerPreferences")
"""What the first file says of all of it."""
CATALOG, TREE = IndirectObject(1, 0, None), IndirectObject(2, 0, None)
"""The numbers of the catalog and of the tree of pages."""


def join_pdfs(files: Iterable[Path], path: Path) -> None:
    """Write the pages of some PDFs, in order, into one; its title and language are those of the first."""
    with path.open("wb") as out:
        joined = JoinedFile(out)
        for file in files:
            joined.add(PdfReader(file))
        joined.finish()


@dataclass(frozen=True, slots=True, kw_only=True)
class Chapter:
    """A PDF that becomes a chapter of a joined one; ``name``: what its pages are called by, before their number."""

    name: str
    file: Path | BytesIO


def join_chapters(chapters: Iterable[Chapter], path: Path, *, title: str = "") -> None:
    """Write PDFs as the chapters of one: a bookmark for each, and pages that readers call ``W04, 2``.

    ``title``: empty for that of the first.
    """
    with path.open("wb") as out:
        joined = JoinedFile(out)
        for chapter in chapters:
            joined.add(PdfReader(chapter.file), name=chapter.name)
        if title:
            joined.entitle(title)
        joined.finish()


class JoinedFile:
    """A PDF while it is written: holds where each object begins, the numbers of the pages, bookmarks, no more."""

    def __init__(self, out: BinaryIO) -> None:
        self._labels: list[PdfObject] = []
        self._bookmarks: list[Bookmark] = []
        self._out, self._begins = out, array("Q", [0, 0])
        self._hash = hashlib.md5(usedforsecurity=False)
        self._pages: list[IndirectObject] = []
        self._root: dict[str, PdfObject] = {"/Type": NameObject("/Catalog"), "/Pages": TREE}
        self._info: PdfObject | None = None
        self._tags = JoinedTags(self)
        out.write(HEADER)

    def add(self, reader: PdfReader, *, name: str = "") -> None:
        """Write the pages of a file and all that they use; those of a chapter have its name.

        Its bookmarks come along; where it has none its name becomes one.
        """
        first, own = len(self._pages), self._tags.begin(reader)
        moving = _Moving(self, self._tags)
        if own:
            moving.moved[own.idnum] = self._tags.root
        if name:
            label: dict[str, PdfObject] = {"/S": NameObject("/D"), "/P": TextStringObject(f"{name}, ")}
            self._labels += [NumberObject(first), _dictionary(label)]
        self._add_pages(reader, moving)
        if name:
            self._bookmarks += [
                Bookmark(words=words, depth=depth, page=self._pages[first + number])
                for words, depth, number in [*bookmarks_of(reader)] or [(name, 0, 0)]
            ]
        if self._info is None:
            catalog = reader.root_object
            self._root |= {key: moving.move(catalog.raw_get(key)) for key in FROM_CATALOG if key in catalog}
            self._info = moving.move(reader.trailer.raw_get("/Info"))
        if own:
            self._tags.end(reader, moving.move)
        moving.put_waiting()

    def _add_pages(self, reader: PdfReader, moving: _Moving) -> None:
        """Reserve all pages first: a link must find the page that is written, and not make a second one."""
        for page in reader.pages:
            assert page.indirect_reference is not None
            moving.moved[page.indirect_reference.idnum] = self.reserve()
        for page in reader.pages:
            assert page.indirect_reference is not None
            at = moving.moved[page.indirect_reference.idnum]
            self._tags.renamed(page)
            kept = {key: moving.move(page.raw_get(key)) for key in page if key != "/Parent"}
            self.put(at, _dictionary(kept | {"/Parent": TREE}))
            self._pages.append(at)

    def entitle(self, title: str) -> None:
        """Give the joined file a title of its own."""
        self._root = {key: value for key, value in self._root.items() if key != "/Metadata"}
        self._info = self.reserve()
        self.put(self._info, _dictionary({"/Title": TextStringObject(title), "/Author": TextStringObject(AUTHOR)}))

    def finish(self) -> None:
        """Write the tree of pages, the catalog and the table of where all objects begin."""
        if self._labels:
            self._root["/PageLabels"] = _dictionary({"/Nums": ArrayObject(self._labels)})
        if self._bookmarks:
            self._root["/Outlines"] = self._outlines()
        self._root |= self._tags.finish()
        count = NumberObject(len(self._pages))
        tree: dict[str, PdfObject] = {"/Type": NameObject("/Pages"), "/Kids": ArrayObject(self._pages), "/Count": count}
        self.put(TREE, _dictionary(tree))
        self.put(CATALOG, _dictionary(self._root))
        table, size, digest = self._out.tell(), len(self._begins) + 1, ByteStringObject(self._hash.digest())
        self._out.write(b"xref\n0 %d\n0000000000 65535 f \n" % size)
        self._out.writelines(b"%010d 00000 n \n" % begin for begin in self._begins)
        trailer: dict[str, PdfObject] = {"/Size": NumberObject(size), "/Root": CATALOG}
        trailer |= {"/ID": ArrayObject([digest, digest])} | ({"/Info": self._info} if self._info else {})
        self._out.write(b"trailer\n")
        _dictionary(trailer).write_to_stream(self._out)
        self._out.write(b"\nstartxref\n%d\n%%%%EOF\n" % table)

    def _outlines(self) -> IndirectObject:
        """Write the bookmarks: a chapter holds those deeper ones that follow it, and is closed."""
        top = self.reserve()
        chapters = by_chapter(self._bookmarks)
        places = [self.reserve() for _ in chapters]
        for number, (head, inner) in enumerate(chapters):
            below = [self.reserve() for _ in inner]
            for at, one in enumerate(inner):
                self.put(below[at], _dictionary(bookmark_item(one, places[number], below, at)))
            item = bookmark_item(head, top, places, number)
            if below:
                item |= {"/First": below[0], "/Last": below[-1], "/Count": NumberObject(-len(below))}
            self.put(places[number], _dictionary(item))
        count = NumberObject(len(places))
        self.put(top, _dictionary({"/First": places[0], "/Last": places[-1], "/Count": count}))
        return top

    def reserve(self) -> IndirectObject:
        """Return the number of an object that is written later."""
        self._begins.append(0)
        return IndirectObject(len(self._begins), 0, None)

    def put(self, at: IndirectObject, found: PdfObject) -> None:
        """Write an object under its number."""
        self._begins[at.idnum - 1] = self._out.tell()
        text = BytesIO(b"%d 0 obj\n" % at.idnum)
        text.seek(0, SEEK_END)
        found.write_to_stream(text)
        text.write(b"\nendobj\n")
        self._hash.update(text.getbuffer())
        self._out.write(text.getbuffer())


class _Moving:
    """The objects of one file on their way into the joined one: the number that each has there, and what waits."""

    def __init__(self, joined: JoinedFile, tags: JoinedTags) -> None:
        self._joined, self._tags = joined, tags
        self.moved: dict[int, IndirectObject] = {}
        self._waiting: list[IndirectObject] = []

    def move(self, found: PdfObject) -> PdfObject:
        """Return an object with the numbers of the joined file; what it names waits to be written."""
        if isinstance(found, IndirectObject):
            if found.idnum not in self.moved:
                self.moved[found.idnum] = self._joined.reserve()
                self._waiting.append(found)
            return self.moved[found.idnum]
        if isinstance(found, DictionaryObject):
            self._tags.renamed(found)
            for key in found:
                found[NameObject(key)] = self.move(found.raw_get(key))
        elif isinstance(found, ArrayObject):
            found[:] = [self.move(one) for one in found]
        return found

    def put_waiting(self) -> None:
        """Write what was named, and what that names in turn."""
        while self._waiting:
            reference = self._waiting.pop()
            found = reference.get_object()
            assert found is not None
            self._joined.put(self.moved[reference.idnum], self.move(found))


def _dictionary(values: Mapping[str, PdfObject]) -> DictionaryObject:
    return DictionaryObject({NameObject(key): value for key, value in values.items()})
