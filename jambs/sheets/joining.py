"""Many PDFs into one, a file at a time: a house of thousands of sheets takes no more memory than one of them.

Pages, fonts, pictures, title and language come along. The marks by which a screen reader finds its way through a page
stay in the single sheets: they would have to be held for all pages at once.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Mapping
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
)

HEADER = b"%PDF-1.7\n%\x80\x80\x80\x80\n"
LEFT_OUT = ("/Parent", "/StructParents", "/Tabs")
"""Of a page: it gets another parent, the marks of its structure stay behind."""
CATALOG, TREE = IndirectObject(1, 0, None), IndirectObject(2, 0, None)
"""The numbers of the catalogue and of the tree of pages."""


def join_pdfs(files: Iterable[Path], path: Path) -> None:
    """Write the pages of some PDFs, in order, into one; its title and language are those of the first."""
    with path.open("wb") as out:
        joined = JoinedFile(out)
        for file in files:
            joined.add(PdfReader(file))
        joined.finish()


class JoinedFile:
    """A PDF while it is written: holds no more than where each object begins and the numbers of the pages."""

    def __init__(self, out: BinaryIO) -> None:
        self._out, self._begins = out, [0, 0]
        self._hash = hashlib.md5(usedforsecurity=False)
        self._pages: list[IndirectObject] = []
        self._root: dict[str, PdfObject] = {"/Type": NameObject("/Catalog"), "/Pages": TREE}
        self._info: PdfObject | None = None
        out.write(HEADER)

    def add(self, reader: PdfReader) -> None:
        """Write the pages of a file and all that they use."""
        moved: dict[int, IndirectObject] = {}
        waiting: list[IndirectObject] = []

        def move(found: PdfObject) -> PdfObject:
            if isinstance(found, IndirectObject):
                if found.idnum not in moved:
                    moved[found.idnum] = self._reserve()
                    waiting.append(found)
                return moved[found.idnum]
            if isinstance(found, DictionaryObject):
                for key in found:
                    found[NameObject(key)] = move(found.raw_get(key))
            elif isinstance(found, ArrayObject):
                found[:] = [move(one) for one in found]
            return found

        for page in reader.pages:
            assert page.indirect_reference is not None
            at = moved[page.indirect_reference.idnum] = self._reserve()
            kept = {key: move(page.raw_get(key)) for key in page if key not in LEFT_OUT}
            self._put(at, _dictionary(kept | {"/Parent": TREE}))
            self._pages.append(at)
        if self._info is None:
            catalog = reader.root_object
            self._root |= {key: move(catalog.raw_get(key)) for key in ("/Lang", "/Metadata") if key in catalog}
            self._info = move(reader.trailer.raw_get("/Info"))
        while waiting:
            reference = waiting.pop()
            found = reference.get_object()
            assert found is not None
            self._put(moved[reference.idnum], move(found))

    def finish(self) -> None:
        """Write the tree of pages, the catalogue and the table of where all objects begin."""
        count = NumberObject(len(self._pages))
        tree: dict[str, PdfObject] = {"/Type": NameObject("/Pages"), "/Kids": ArrayObject(self._pages), "/Count": count}
        self._put(TREE, _dictionary(tree))
        self._put(CATALOG, _dictionary(self._root))
        table, size, digest = self._out.tell(), len(self._begins) + 1, ByteStringObject(self._hash.digest())
        self._out.write(b"xref\n0 %d\n0000000000 65535 f \n" % size)
        self._out.writelines(b"%010d 00000 n \n" % begin for begin in self._begins)
        trailer: dict[str, PdfObject] = {"/Size": NumberObject(size), "/Root": CATALOG}
        trailer |= {"/ID": ArrayObject([digest, digest])} | ({"/Info": self._info} if self._info else {})
        self._out.write(b"trailer\n")
        _dictionary(trailer).write_to_stream(self._out)
        self._out.write(b"\nstartxref\n%d\n%%%%EOF\n" % table)

    def _reserve(self) -> IndirectObject:
        self._begins.append(0)
        return IndirectObject(len(self._begins), 0, None)

    def _put(self, at: IndirectObject, found: PdfObject) -> None:
        self._begins[at.idnum - 1] = self._out.tell()
        text = BytesIO(b"%d 0 obj\n" % at.idnum)
        text.seek(0, SEEK_END)
        found.write_to_stream(text)
        text.write(b"\nendobj\n")
        self._hash.update(text.getbuffer())
        self._out.write(text.getbuffer())


def _dictionary(values: Mapping[str, PdfObject]) -> DictionaryObject:
    return DictionaryObject({NameObject(key): value for key, value in values.items()})
