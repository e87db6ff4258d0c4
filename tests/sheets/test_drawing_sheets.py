"""Drawings as PDF: pages of the size of their paper, texts that can be read back, bookmarks, names of pages."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from jambs.sheets.drawing_sheets import drawing_sheets_pdf, join_drawing_sheets, write_drawing_sheets
from jambs.vector_page import PageText, VectorPage

SVG = '<svg xmlns="http://www.w3.org/2000/svg" width="{w}mm" height="{h}mm" viewBox="0 0 {w} {h}"><path d="{d}"/></svg>'


def page(words: str, *, upright: bool = False, width: float = 279.4, height: float = 215.9) -> VectorPage:
    text = PageText(x=50.8, y=25.4, size=3.5, words=words, upright=upright)
    svg = SVG.format(w=width, h=height, d="M0 0L10 10L0 10Z")
    return VectorPage(width=width, height=height, svg=svg, texts=(text,), shows=f"sheet with {words}")


def written(folder: Path, mark: str, *pages: VectorPage) -> Path:
    write_drawing_sheets(pages, f"{mark}  Kitchen", folder / f"{mark}.pdf")
    return folder / f"{mark}.pdf"


def bookmarks(read: PdfReader) -> list[tuple[str, int, int]]:
    """Return words, depth and page of every bookmark."""

    def told(items: list[Any], depth: int) -> list[tuple[str, int, int]]:
        found = []
        for one in items:
            if isinstance(one, list):
                found += told(one, depth + 1)
            else:
                found.append((str(one.title), depth, read.get_destination_page_number(one) or 0))
        return found

    return told(read.outline, 0)


def places(path: Path) -> list[tuple[str, float, float]]:
    """Return every text of the first page with its left end on its base line [pt from the lower left corner]."""
    found: list[tuple[str, float, float]] = []

    def visit(text: str, transform: list[float], line: list[float], *_: object) -> None:
        if text.strip():
            x = transform[0] * line[4] + transform[2] * line[5] + transform[4]
            y = transform[1] * line[4] + transform[3] * line[5] + transform[5]
            found.append((text.strip(), x, y))

    PdfReader(path).pages[0].extract_text(visitor_text=visit)
    return found


def test_a_page_has_the_size_of_its_paper_and_its_texts_stand_where_they_should(tmp_path: Path) -> None:
    """By hand: 50.8 mm are 144 pt from the left; 25.4 mm from above are 612 - 72 = 540 pt from below."""
    path = written(tmp_path, "W01", page('35 1/2"'), page("foot", width=420, height=297))
    first, second = PdfReader(path).pages
    assert [float(side) for side in first.mediabox[2:]] == pytest.approx([792, 612], abs=0.01)
    assert [float(side) for side in second.mediabox[2:]] == pytest.approx([1190.55, 841.89], abs=0.01)
    ((words, x, y),) = places(path)
    assert words == '35 1/2"'
    assert (x, y) == pytest.approx((144, 540), abs=0.1)


def test_an_upright_text_turns_about_the_left_end_of_its_base_line(tmp_path: Path) -> None:
    ((words, x, y),) = places(written(tmp_path, "W01", page("W01-6", upright=True)))
    assert words == "W01-6"
    assert (x, y) == pytest.approx((144, 540), abs=0.1)


def test_the_same_sheets_are_the_same_bytes() -> None:
    assert drawing_sheets_pdf([page("a")], "W01") == drawing_sheets_pdf([page("a")], "W01")
    assert drawing_sheets_pdf([page("a")], "W01") != drawing_sheets_pdf([page("b")], "W01")


def test_title_author_fonts_and_a_bookmark_for_every_sheet(tmp_path: Path) -> None:
    read = PdfReader(written(tmp_path, "W01", page("a"), page("b")))
    assert read.metadata is not None
    assert (read.metadata.title, read.metadata.author) == ("W01  Kitchen", "jambs")
    assert bookmarks(read) == [("W01  Kitchen", 0, 0), ("sheet with a", 1, 0), ("sheet with b", 1, 1)]
    resources: Any = read.pages[0]["/Resources"]
    fonts = resources["/Font"]
    assert all("LiberationSans" in str(font.get_object()["/BaseFont"]) for font in fonts.values())


def test_all_drawings_have_the_bookmarks_and_the_names_of_every_opening(tmp_path: Path) -> None:
    files = [("W01", written(tmp_path, "W01", page("a"), page("b"))), ("D01", written(tmp_path, "D01", page("c")))]
    join_drawing_sheets(files, "House: all drawings", tmp_path / "all.pdf")
    join_drawing_sheets(files, "House: all drawings", tmp_path / "again.pdf")
    read = PdfReader(tmp_path / "all.pdf", strict=True)
    assert (tmp_path / "all.pdf").read_bytes() == (tmp_path / "again.pdf").read_bytes()
    assert read.metadata is not None
    assert read.metadata.title == "House: all drawings"
    assert read.page_labels == ["W01, 1", "W01, 2", "D01, 1"]
    first = [("W01  Kitchen", 0, 0), ("sheet with a", 1, 0), ("sheet with b", 1, 1)]
    assert bookmarks(read) == [*first, ("D01  Kitchen", 0, 2), ("sheet with c", 1, 2)]
