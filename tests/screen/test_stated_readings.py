"""Where readings stand that are written with their opening: file and line, as an editor counts them."""

from __future__ import annotations

from pathlib import Path

import pytest
from openpyxl import Workbook

from jambs.job import JobFaults, read_job
from jambs.screen.desk import Desk
from jambs.screen.measuring import Measuring
from jambs.screen.sent_reading import NotTaken, SentReading
from jambs.screen.stated_readings import where_stated

EXAMPLES = Path(__file__).parents[2] / "examples"


def reading(mark: str) -> SentReading:
    return SentReading(id=mark, mark=mark, place=1, text="3 1/2", was="", is_sure=False, day="2026-06-01", by="Ann")


def test_in_the_job_file() -> None:
    file = EXAMPLES / "harbour-house" / "job.yaml"
    lines = file.read_text(encoding="utf-8").splitlines()
    start = next(at for at, line in enumerate(lines) if "mark: W02" in line)
    line = next(at for at in range(start, len(lines)) if "measured:" in lines[at]) + 1
    assert where_stated(file, "W02") == f"job.yaml, line {line}"


def test_in_a_row_of_the_schedule(tmp_path: Path) -> None:
    text = (EXAMPLES / "garden-studio" / "job.yaml").read_text(encoding="utf-8")
    (tmp_path / "job.yaml").write_text(f"{text[: text.index('openings:')]}schedule: rows.csv\n", encoding="utf-8")
    head = "mark,room,frame,sill_height,measured_date,head_left,head_right,sill_right,sill_left\n"
    (tmp_path / "rows.csv").write_text(f"{head}W1,Hall,24 x 36,30,2026-06-01,3 3/8,3 1/2,3 5/8,3 1/2\n")
    assert where_stated(tmp_path / "job.yaml", "W1") == "rows.csv, line 2"


def test_in_a_row_of_a_spreadsheet_as_it_numbers_them(tmp_path: Path) -> None:
    """Empty rows above the head and between the openings count, and a mark may be a number."""
    text = (EXAMPLES / "garden-studio" / "job.yaml").read_text(encoding="utf-8")
    (tmp_path / "job.yaml").write_text(f"{text[: text.index('openings:')]}schedule: rows.xlsx\n", encoding="utf-8")
    book = Workbook()
    head = (
        "mark",
        "room",
        "frame",
        "sill_height",
        "measured_date",
        "head_left",
        "head_right",
        "sill_right",
        "sill_left",
    )
    read = (101, "Hall", "24 x 36", 30, "2026-06-01", "3 3/8", "3 1/2", "3 5/8", "3 1/2")
    rows: dict[int, tuple[str | int, ...]] = {3: head, 6: read, 8: ("W2", "Hall", "24 x 36", "thirty")}
    for row, values in rows.items():
        for column, value in enumerate(values, start=1):
            book.worksheets[0].cell(row, column, value)
    book.save(tmp_path / "rows.xlsx")
    with pytest.raises(JobFaults) as caught:
        read_job(tmp_path)
    assert [(fault.file, fault.line) for fault in caught.value.faults] == [("rows.xlsx", 8)]
    book.worksheets[0].cell(8, 4, 30)
    book.save(tmp_path / "rows.xlsx")
    assert where_stated(tmp_path / "job.yaml", "101") == "rows.xlsx, row 6"

    measuring = Measuring(Desk(file=tmp_path / "job.yaml", target=tmp_path / "output"))
    before = (tmp_path / "job.yaml").read_bytes()
    with pytest.raises(
        NotTaken, match=r"The readings of 101 stand in rows.xlsx, row 6, .*: change them there, or take"
    ):
        measuring.take(reading("101"))
    assert (tmp_path / "job.yaml").read_bytes() == before and not (tmp_path / "measures.csv").exists()
    measuring.take(reading("W2"))
    assert [opening.readings is not None for opening in read_job(tmp_path).openings] == [True, True]


def test_a_table_beside_the_job_that_says_the_same_opening_again_is_not_named(tmp_path: Path) -> None:
    """What the command line would refuse to read is not made so by a telephone."""
    text = (EXAMPLES / "garden-studio" / "job.yaml").read_text(encoding="utf-8")
    stated = ", measured: {date: 2026-06-01, interior_depth: {head: [3 1/2, 3 1/2]}}}\n"
    text = text.replace("sill_height: 30}\n", f"sill_height: 30{stated}  - {{mark: W2, room: Den, frame: 24 x 36}}\n")
    assert stated in text
    (tmp_path / "job.yaml").write_text(text, encoding="utf-8")
    table = tmp_path / "measures.csv"
    table.write_text("mark,place,what,planned,measured,sure\nW1,1,,,3 1/2,\n", encoding="utf-8")
    measuring = Measuring(Desk(file=tmp_path / "job.yaml", target=tmp_path / "output"))
    before = table.read_bytes()
    with pytest.raises(NotTaken, match=r'measures.csv:2: opening "W1": is measured in the job file and in this table'):
        measuring.take(reading("W2"))
    assert (tmp_path / "job.yaml").read_text(encoding="utf-8") == text and table.read_bytes() == before
    table.write_text("mark,place,what,planned,measured,sure\nW1,1,,,,\n", encoding="utf-8")
    measuring.take(reading("W2"))
    assert [opening.readings is not None for opening in read_job(tmp_path).openings] == [True, True]
