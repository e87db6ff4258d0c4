"""The first sheet of all drawings: read back from its text; and marks of the index that lead to the drawings."""

from __future__ import annotations

from dataclasses import replace
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from hand_kits import make_job, make_kit
from paper import collisions, runs
from pypdf import PdfReader

from jambs.job.models.outside import OutsideEntry, WoodEntry
from jambs.sheets.drawing_cover import drawing_cover_pdf
from jambs.sheets.drawing_sheets import write_all_drawings, write_drawing_sheets
from jambs.sheets.issue_sheet import IndexRow, index_pdf
from jambs.sheets.stamp import NOT_ISSUED, Stamp, Stamps
from jambs.vector_page import VectorPage

ISSUED = Stamps(by_mark={"W01": Stamp(number=4, day="2026-06-03", code="7F3A", replaces=2, why="W01 measured")})
SVG = '<svg xmlns="http://www.w3.org/2000/svg" width="9mm" height="9mm"/>'


def words(pdf: bytes) -> str:
    return " ".join(" ".join(page.extract_text() for page in PdfReader(BytesIO(pdf)).pages).split())


def cover(stamps: Stamps = ISSUED) -> str:
    kits = [make_kit("W01"), make_kit("W02", measured=True)]
    return words(drawing_cover_pdf(kits, make_job(), {"W01": 7, "W02": 5}, title="House: all drawings", stamps=stamps))


def test_every_opening_stands_there_with_its_sheets_its_state_and_its_issue() -> None:
    said = cover()
    assert "W01" in said
    assert "7 4 · 2026-06-03 · 7F3A replaces issue 2; W01 measured" in said
    assert "INSIDE MEASURED" in said or "MEASURED 2026" in said
    assert said.count("not issued") == 1  # W02 has no stamp
    assert cover(NOT_ISSUED).count("not issued") == 2


@pytest.mark.parametrize("paper", ["letter", "A4"])
def test_no_text_of_the_index_lies_over_another_however_long_its_reason(paper: str) -> None:
    """The reason of a second issue left the room beside it no width: its words lay over the count of sheets."""
    why = "settings of the shop or the cutting plan changed"
    stamp = Stamp(number=2, day="2026-11-28", code="AD4B", replaces=1, why=why)
    marks = ["W01", "W02", "W03"]
    kits = [make_kit(mark, measured=mark == "W02") for mark in marks]
    stamps = Stamps(by_mark=dict.fromkeys(marks, stamp))
    pdf = drawing_cover_pdf(kits, make_job(paper=paper), dict.fromkeys(marks, 4), title="x", stamps=stamps)
    assert words(pdf).count("4 2 · 2026-11-28 · AD4B replaces issue 1; settings of the shop") == len(marks)
    assert collisions(runs(pdf)) == []
    assert [run for run in runs(pdf) if run.text.startswith("PLANNED – MEASURE")], (
        "a word a line: the column has no width"
    )


def test_the_general_notes_name_woods_and_what_nobody_stated() -> None:
    """The kit by hand has poplar inside; its grade is nowhere stated, so the sheet must not name one."""
    said = cover()
    stocks = {part.stock for part in make_kit("W01").parts if part.is_wood}
    assert all(stock in said for stock in stocks)
    assert "Grade, grain and finish are not stated in the job" in said
    assert "the local code and licensed practice decide" in said


def test_the_address_and_the_species_are_told_only_where_the_job_gives_them() -> None:
    job = make_job()
    (stock, *_) = sorted(part.stock for part in make_kit("W01").parts if part.is_wood)
    woods = {stock: WoodEntry(species="poplar, yellow")}
    full = replace(job, address=("Long Lane 12", "Small Town"), outside=replace_woods(job.outside, woods))
    told = words(drawing_cover_pdf([make_kit("W01")], full, {"W01": 1}, title="x", stamps=NOT_ISSUED))
    assert "Long Lane 12, Small Town" in told and f"{stock} (poplar, yellow, flat sawn)" in told
    assert "Long Lane" not in cover() and "sawn" not in cover()


def replace_woods(outside: OutsideEntry, woods: dict[str, WoodEntry]) -> OutsideEntry:
    return outside.model_copy(update={"woods": woods})


def test_each_kind_of_line_and_each_hatch_stands_in_the_key_with_its_words_and_its_picture() -> None:
    key = [(SVG, "membrane, where laps are drawn"), (SVG, "rigid insulation"), (SVG, "gypsum board")]
    pdf = drawing_cover_pdf([make_kit("W01")], make_job(), {"W01": 1}, title="x", stamps=NOT_ISSUED, key=key)
    assert all(one in words(pdf) for _, one in key)
    assert "Key: lines and what is cut" in words(pdf) and "Key: lines" not in cover()


@pytest.mark.parametrize("paper", ["letter", "A4"])
def test_the_first_sheet_lies_on_the_paper_of_the_job(paper: str) -> None:
    """Letter 11 x 8.5 in (ANSI Y14.1), A4 297 x 210 mm (ISO 216)."""
    pdf = drawing_cover_pdf([make_kit("W01")], make_job(paper=paper), {"W01": 1}, title="x", stamps=NOT_ISSUED)
    size = [float(side) for side in PdfReader(BytesIO(pdf)).pages[0].mediabox[2:]]
    assert size == pytest.approx([792, 612] if paper == "letter" else [841.89, 595.28], abs=0.1)


def test_all_drawings_begin_with_notes_and_count_the_sheets_of_each_opening(tmp_path: Path) -> None:
    page = VectorPage(width=279.4, height=215.9, svg=SVG, texts=(), shows="sheet")
    for mark, count in (("W01", 2), ("W02", 3)):
        write_drawing_sheets([page] * count, f"{mark}  Kitchen", tmp_path / f"{mark}.pdf")
    files = [(mark, tmp_path / f"{mark}.pdf") for mark in ("W01", "W02")]
    write_all_drawings([make_kit("W01"), make_kit("W02")], files, make_job(), tmp_path / "all.pdf")
    read = PdfReader(tmp_path / "all.pdf", strict=True)
    assert read.page_labels == ["Notes, 1", "W01, 1", "W01, 2", "W02, 1", "W02, 2", "W02, 3"]
    first = " ".join(read.pages[0].extract_text().split())
    assert "2 not issued" in first
    assert "3 not issued" in first
    chapter: Any = read.outline[0]
    assert chapter.title == "General notes and index"


def test_a_mark_of_the_index_leads_to_its_drawing_and_none_to_one_that_is_not_there() -> None:
    stamp = Stamp(number=4, day="2026-06-03", code="7F3A")
    rows = [IndexRow(mark=mark, room="Kitchen", current=stamp, void=()) for mark in ("W01", "W02")]
    pdf = index_pdf(rows, make_job(), number=4, day="2026-06-03", drawings={"W01": "drawings/W01.pdf"})
    links: list[Any] = [note.get_object() for note in PdfReader(BytesIO(pdf)).pages[0].get("/Annots", [])]
    assert [link["/A"]["/URI"] for link in links] == ["drawings/W01.pdf"]


def test_the_index_voids_sheets_of_openings_and_no_lists_of_the_house() -> None:
    rows = [IndexRow(mark="W01", room="Kitchen", current=Stamp(number=4, day="2026-06-03", code="7F3A"), void=())]
    pdf = index_pdf(rows, make_job(), number=4, day="2026-06-03")
    said = " ".join(PdfReader(BytesIO(pdf)).pages[0].extract_text().split())
    assert "Of the sheets of openings (cut and install sheets, drawings, templates) only those listed here hold" in said
    assert "Lists of the whole house have a code of their own" in said
    assert "foot. Only those" not in said
