"""A joined PDF leads a screen reader as its single files do: each mark has its element (ISO 32000-1, 14.7)."""

from __future__ import annotations

from collections.abc import Iterator
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
import typst
from pypdf import PdfReader, PdfWriter

from jambs.sheets.joining import join_pdfs
from jambs.sheets.press import fonts

SHEET = """#set document(title: "Sheets")
#set page(width: 4in, height: 3in)
#set text(lang: "en")
= Sheet NAME
#table(columns: 2, table.header([mark], [width]), [NAME-1], [4 3/4])
#pagebreak()
== Page two of NAME
#link("https://example.com")[words]
"""


@pytest.fixture
def joined(tmp_path: Path) -> PdfReader:
    """Two files of two pages, each with a heading, a table whose cells name their headings, and a link."""
    files = [tmp_path / f"{name}.pdf" for name in ("W1", "W2")]
    for file in files:
        source = SHEET.replace("NAME", file.stem).encode()
        file.write_bytes(typst.compile(source, font_paths=fonts(), ignore_system_fonts=True, timestamp=0))
    join_pdfs(files, tmp_path / "all.pdf")
    return PdfReader(tmp_path / "all.pdf", strict=True)


def elements(node: Any) -> Iterator[Any]:
    """Yield the elements of a tree in reading order."""
    kids = node.get("/K", [])
    for kid in kids if isinstance(kids, list) else [kids]:
        found = kid.get_object()
        if isinstance(found, dict) and "/S" in found:
            assert found["/P"] == node
            yield found
            yield from elements(found)


def leaves(node: Any, key: str) -> list[tuple[Any, Any]]:
    found = node.get(key, [])
    pairs = list(zip(found[0::2], found[1::2], strict=True))
    return [*pairs, *(pair for kid in node.get("/Kids", []) for pair in leaves(kid.get_object(), key))]


def test_the_headings_of_all_files_stand_in_one_tree(joined: PdfReader) -> None:
    root: Any = joined.root_object["/StructTreeRoot"]
    kinds = [one["/S"] for one in elements(root)]
    assert [kind for kind in kinds if kind in ("/H1", "/H2", "/Table", "/Link")] == [
        "/H1",
        "/Table",
        "/H2",
        "/Link",
    ] * 2
    assert joined.root_object["/MarkInfo"]["/Marked"]  # type: ignore[index]
    assert str(joined.root_object["/Lang"]) == "en"


def test_every_page_finds_its_own_elements(joined: PdfReader) -> None:
    root: Any = joined.root_object["/StructTreeRoot"]
    by_number = dict(leaves(root["/ParentTree"], "/Nums"))
    numbers = [int(str(page["/StructParents"])) for page in joined.pages]
    assert len({*numbers}) == 4 and max(by_number) < root["/ParentTreeNextKey"]
    for page, number in zip(joined.pages, numbers, strict=True):
        assert page.indirect_reference is not None
        of_page = [one.get_object() for one in by_number[number]]
        assert of_page and {one["/Pg"].indirect_reference.idnum for one in of_page} == {page.indirect_reference.idnum}
    links = [note.get_object() for page in joined.pages for note in page.get("/Annots", [])]
    assert [by_number[link["/StructParent"]].get_object()["/S"] for link in links] == ["/Link", "/Link"]


def test_a_cell_finds_the_heading_of_its_own_table(joined: PdfReader) -> None:
    root: Any = joined.root_object["/StructTreeRoot"]
    by_name = leaves(root["/IDTree"], "/Names")
    names = [name for name, _ in by_name]
    assert names == sorted({*names}) and len(names) >= 4
    assert all(at.get_object()["/ID"] == name for name, at in by_name)
    asked = [name for one in elements(root) for kind in one.get("/A", []) for name in kind.get("/Headers", [])]
    assert asked and {*asked} <= {*names}


def test_a_file_without_marks_leaves_the_joined_one_unmarked(tmp_path: Path) -> None:
    for name, tags in (("W1", True), ("W2", False)):
        source = SHEET.replace("NAME", name).encode()
        pdf = typst.compile(source, font_paths=fonts(), ignore_system_fonts=True, timestamp=0)
        (tmp_path / f"{name}.pdf").write_bytes(pdf if tags else _without_tags(pdf, tmp_path))
    join_pdfs([tmp_path / "W1.pdf", tmp_path / "W2.pdf"], tmp_path / "all.pdf")
    catalog: Any = PdfReader(tmp_path / "all.pdf").root_object
    assert catalog["/MarkInfo"]["/Marked"].value is False


def _without_tags(pdf: bytes, folder: Path) -> bytes:
    writer = PdfWriter()
    for page in PdfReader(BytesIO(pdf)).pages:
        writer.add_page(page)
    out = BytesIO()
    writer.write(out)
    return out.getvalue()
