"""Tables nobody would fill in by hand: too large, too long, lying of their size; told before they are read."""

from __future__ import annotations

import re
import time
import zipfile
from pathlib import Path
from typing import Any

import pytest
from houses import HOUSE, spoiled
from openpyxl import Workbook

from jambs.job import Job, JobFaults, read_job
from jambs.job.models.readings import MOST_PLACES
from jambs.job.reading.faults import MOST_QUOTED
from jambs.job.reading.table_limits import MOST_COLUMNS, MOST_LETTERS, MOST_ROWS

HEADER = ["mark", "room", "wall", "window", "frame"]
NAMESPACE = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"


def row_of(number: int) -> list[Any]:
    return [f"V{number}", "Attic", "main", "fixed", "30 x 40"]


def job_with(schedule: str, folder: Path) -> Job:
    text = spoiled(("openings:\n", f"schedule: {schedule}\nopenings:\n"), text=HOUSE)
    (folder / "job.yaml").write_text(text, encoding="utf-8")
    return read_job(str(folder))


def told(schedule: str, folder: Path) -> str:
    with pytest.raises(JobFaults) as caught:
        job_with(schedule, folder)
    return str(caught.value)


def xlsx(folder: Path, rows: list[list[Any]]) -> Path:
    book = Workbook()
    sheet: Any = book.active
    for row in rows:
        sheet.append(row)
    book.save(folder / "v.xlsx")
    return folder / "v.xlsx"


def sheet_exchanged(path: Path, change: Any) -> None:
    """Write a spreadsheet again with the text of its sheet changed."""
    with zipfile.ZipFile(path) as old:
        pieces = {one: old.read(one) for one in old.namelist()}
    name = "xl/worksheets/sheet1.xml"
    pieces[name] = change(pieces[name].decode()).encode()
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as new:
        for one, content in pieces.items():
            new.writestr(one, content)


def test_a_stored_range_that_is_too_small_loses_no_opening(tmp_path: Path) -> None:
    path = xlsx(tmp_path, [HEADER, *map(row_of, range(15))])
    sheet_exchanged(path, lambda text: re.sub(r'<dimension ref="[^"]*"', '<dimension ref="A1:C4"', text))
    job = job_with("v.xlsx", tmp_path)
    assert len([one for one in job.openings if one.mark.startswith("V")]) == 15
    assert [table.words for table in job.tables] == ["v.xlsx: 15 rows read"]


def test_how_many_rows_were_read_is_said_of_csv_too(tmp_path: Path) -> None:
    lines = [",".join(HEADER), *(",".join(row_of(one)) for one in range(1)), ""]
    (tmp_path / "v.csv").write_text("\n".join(lines), encoding="utf-8")
    assert [table.words for table in job_with("v.csv", tmp_path).tables] == ["v.csv: 1 row read"]


def test_a_row_numbered_past_any_house_is_told_at_once(tmp_path: Path) -> None:
    path = xlsx(tmp_path, [HEADER, row_of(1)])
    cell = '<row r="99999999"><c r="A99999999" t="inlineStr"><is><t>V2</t></is></c></row></sheetData>'
    sheet_exchanged(path, lambda text: text.replace("</sheetData>", cell))
    started = time.monotonic()
    assert f"v.xlsx: is filled as far as row 99,999,999, the most that is read is {MOST_ROWS:,} rows" in told(
        "v.xlsx", tmp_path
    )
    assert time.monotonic() - started < 5


def test_an_empty_row_far_down_that_only_has_a_format_is_no_fault(tmp_path: Path) -> None:
    path = xlsx(tmp_path, [HEADER, row_of(1)])
    empty = '<row r="1048576"><c r="A1048576" s="0"/></row></sheetData>'
    sheet_exchanged(path, lambda text: text.replace("</sheetData>", empty))
    assert len(job_with("v.xlsx", tmp_path).openings) == len(HOUSE.split("- mark:"))


def test_a_column_past_any_schedule(tmp_path: Path) -> None:
    path = xlsx(tmp_path, [HEADER, row_of(1)])
    cell = '<row r="9"><c r="ZZZZZZ9"><v>1</v></c></row></sheetData>'
    sheet_exchanged(path, lambda text: text.replace("</sheetData>", cell))
    assert f"the most that is read is {MOST_COLUMNS}" in told("v.xlsx", tmp_path)


def test_a_small_file_that_unpacks_to_a_large_one(tmp_path: Path) -> None:
    """200 MB in one cell are 0.2 MB packed; nothing of it is unpacked."""
    path = xlsx(tmp_path, [HEADER, row_of(1)])
    with zipfile.ZipFile(path, "a", zipfile.ZIP_DEFLATED) as more, more.open("xl/more.xml", "w") as file:
        for _ in range(200):
            file.write(b"a" * 1_000_000)
    started = time.monotonic()
    assert re.search(r"v.xlsx: unpacks to 200 MB, the most that is read is 30 MB; keep only", told("v.xlsx", tmp_path))
    assert time.monotonic() - started < 5


def test_a_long_text_in_the_sheet_itself(tmp_path: Path) -> None:
    path = xlsx(tmp_path, [HEADER, row_of(1)])
    cell = f'<row r="9"><c r="A9" t="inlineStr"><is><t>{"a" * 2_000_000}</t></is></c></row></sheetData>'
    sheet_exchanged(path, lambda text: text.replace("</sheetData>", cell))
    assert f"the most that is read is {MOST_LETTERS:,}; shorten it" in told("v.xlsx", tmp_path)


def test_a_long_text_among_the_shared_ones(tmp_path: Path) -> None:
    xlsx(tmp_path, [HEADER, ["V1", "a" * (MOST_LETTERS + 1), "main", "fixed", "30 x 40"]])
    assert f"v.xlsx:2: has a cell of {MOST_LETTERS + 1:,} characters" in told("v.xlsx", tmp_path)


def test_entities_are_declared_in_no_sheet(tmp_path: Path) -> None:
    path = xlsx(tmp_path, [HEADER, row_of(1)])
    bomb = '<!DOCTYPE worksheet [<!ENTITY a "aaaaaaaaaa">]><worksheet '
    sheet_exchanged(path, lambda text: text.replace("<worksheet ", bomb, 1))
    assert "is not a spreadsheet" in told("v.xlsx", tmp_path)


@pytest.mark.parametrize(
    ("content", "sentence"),
    [
        ("mark,room,frame\n" + "V1,a,30 x 40\n" * (MOST_ROWS + 5), f"the most that is read is {MOST_ROWS:,} rows"),
        ("mark,room,frame\n" + "a," * 300 + "b\n", f"the most that is read is {MOST_COLUMNS}"),
        ("mark,room,frame\nV1," + "a" * 5000 + "\n", "has a cell of 5,000 characters"),
        ("mark,room,frame\nV1," + "a" * 500_000 + ",30 x 40\n", f"more than {MOST_LETTERS:,} characters"),
        ("mark,room\n" + "a" * 11_000_000, "holds 11 MB, the most that is read is 10 MB"),
    ],
    ids=["rows", "columns", "letters", "field", "bytes"],
)
def test_a_csv_past_a_limit(content: str, sentence: str, tmp_path: Path) -> None:
    (tmp_path / "v.csv").write_text(content, encoding="utf-8")
    assert sentence in told("v.csv", tmp_path)


def test_a_complaint_never_quotes_more_than_a_line(tmp_path: Path) -> None:
    word, words = "x" * 900, "much too long " * 60
    lines = [",".join([*HEADER, word]), f"V1,Attic,{words},fixed,{word}", f"V2,Attic,main,fixed,30 x 40,a,b,{words}"]
    (tmp_path / "v.csv").write_text("\n".join(lines), encoding="utf-8")
    for line in told("v.csv", tmp_path).splitlines():
        assert max(len(one) for one in line.split()) <= MOST_QUOTED
        assert line.count("much too long") <= 4, line


@pytest.mark.parametrize("sure", ["[~]", "[[1]]", "[{a: 1}]", "[1.5]", "[one]", "[-1]"])
def test_sure_places_are_numbers_or_are_told(sure: str, tmp_path: Path) -> None:
    assert "measured:" in HOUSE
    text = re.sub(r"( +)(measured:\n)", rf"\1\2\1  sure: {sure}\n", HOUSE, count=1)
    (tmp_path / "job.yaml").write_text(text, encoding="utf-8")
    with pytest.raises(JobFaults, match=r"is not a place; write the number of a place|has no value"):
        read_job(tmp_path)


def test_readings_along_a_side_have_a_limit(tmp_path: Path) -> None:
    points = ", ".join(["4 5/8"] * (MOST_PLACES + 1))
    whole = f"{{date: 2026-03-20, interior_depth: {{head: [{points}]}}}}"
    text = re.sub(r"    measured:\n(      .*\n)+", f"    measured: {whole}\n", HOUSE, count=1)
    (tmp_path / "job.yaml").write_text(text, encoding="utf-8")
    with pytest.raises(JobFaults, match=f"has {MOST_PLACES + 1} readings, the most along one side is {MOST_PLACES}"):
        read_job(tmp_path)
