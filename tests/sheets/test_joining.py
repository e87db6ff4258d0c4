"""PDFs joined a file at a time: the pages are those of the single files, as a reader that shares no code shows them."""

from __future__ import annotations

import tracemalloc
from pathlib import Path

import pytest
import typst
from pypdf import PdfReader

from jambs.sheets.joining import join_pdfs
from jambs.sheets.press import fonts

PAGES = '#set document(title: "Cut sheets, House")\n#set page(width: 4in, height: 3in)\n#set text(lang: "en")\n'


@pytest.fixture
def singles(tmp_path: Path) -> list[Path]:
    """Three PDFs of one to three pages, with text, lines and a picture."""
    svg = '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><path d="M0 0L9 9" stroke="red"/></svg>'
    made = []
    for number in (1, 2, 3):
        body = "#pagebreak()\n".join(f"= Sheet {number}, page {page}\n*35 1/2*\n" for page in range(number))
        source = f'{PAGES}{body}#image(bytes("{svg.replace(chr(34), chr(92) + chr(34))}"), format: "svg")'
        path = tmp_path / f"W{number}.pdf"
        path.write_bytes(typst.compile(source.encode(), font_paths=fonts(), ignore_system_fonts=True, timestamp=0))
        made.append(path)
    return made


def shown(path: Path, page: int) -> bytes:
    """Return a page as typst, which reads PDF with code of its own, shows it."""
    source = f'#set page(width: auto, height: auto, margin: 0pt)\n#image("{path.name}", page: {page})'
    (path.parent / "show.typ").write_text(source, encoding="utf-8")
    picture = typst.compile(path.parent / "show.typ", root=path.parent, format="png", ppi=40)
    assert isinstance(picture, bytes)
    return picture


def test_joined_pages_look_like_those_of_the_single_files(singles: list[Path], tmp_path: Path) -> None:
    joined = tmp_path / "all.pdf"
    join_pdfs(singles, joined)
    of_singles = [shown(path, page) for number, path in enumerate(singles, 1) for page in range(1, number + 1)]
    assert [shown(joined, page) for page in range(1, 7)] == of_singles
    assert len(set(of_singles)) == 6


def test_a_joined_file_keeps_title_and_language_and_is_the_same_in_every_run(
    singles: list[Path], tmp_path: Path
) -> None:
    join_pdfs(singles, tmp_path / "all.pdf")
    join_pdfs(singles, tmp_path / "again.pdf")
    join_pdfs(singles[:2], tmp_path / "fewer.pdf")
    read = PdfReader(tmp_path / "all.pdf", strict=True)
    assert read.metadata is not None
    assert read.metadata.title == "Cut sheets, House"
    assert str(read.root_object["/Lang"]) == "en"
    assert len(read.pages) == 6
    assert (tmp_path / "all.pdf").read_bytes() == (tmp_path / "again.pdf").read_bytes()
    assert read.trailer["/ID"] != PdfReader(tmp_path / "fewer.pdf").trailer["/ID"]


def test_what_is_held_does_not_grow_with_the_files(singles: list[Path], tmp_path: Path) -> None:
    def most(count: int) -> int:
        tracemalloc.start()
        join_pdfs(singles * count, tmp_path / "all.pdf")
        held = tracemalloc.get_traced_memory()[1]
        tracemalloc.stop()
        return held

    most(1)
    # Four times the files; read files wait for the collector, and each leaves some numbers of its branch.
    assert most(120) < 3 * most(30)
