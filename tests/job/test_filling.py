"""Readings put into tables of measures of every hand: the cell, its line, nothing else."""

from __future__ import annotations

import io
from dataclasses import replace
from pathlib import Path

import pytest
from openpyxl import Workbook, load_workbook

from jambs.job import read_job
from jambs.job.editing.file_text import EditRefused, FileText
from jambs.job.measured.filling import Filled, cells_of, filled_table
from jambs.job.measured.measures import COLUMNS
from jambs.job.models.openings import Opening

JOB = read_job(Path(__file__).parents[2] / "examples" / "garden-studio")
ROWS = [["W1", "date", "day", "", "", ""], ["W1", "1", "depth", '4"', "", ""], ["W1", "2", "depth", '4"', "", ""]]


def csv_table(text: str) -> FileText:
    return FileText(name="measures.csv", content=text.encode())


def opening(mark: str) -> Opening:
    return replace(JOB.openings[0], mark=mark)


def rows_of(mark: str) -> list[list[str]]:
    return [[mark, *row[1:]] for row in ROWS]


def test_a_table_of_another_hand_keeps_its_columns_and_its_line_ends() -> None:
    table = csv_table("Place;Mark;Measured;note\r\n1;w1;;by the door\r\n")
    new = filled_table(table, [Filled(mark="W1", place="1", text="4 1/8")], rows_of)
    assert new.text == "Place;Mark;Measured;note\r\n1;w1;4 1/8;by the door\r\n"
    sure = filled_table(new, [Filled(mark="W1", place="1", text="4 1/8", is_sure=True)], rows_of)
    assert sure.text == "Place;Mark;Measured;note;sure\r\n1;w1;4 1/8;by the door;yes\r\n"
    (cell,) = cells_of(sure, opening("W1"))
    assert (cell.place, cell.text, cell.is_sure) == ("1", "4 1/8", True)


def test_an_opening_that_the_table_lacks_gets_all_its_rows() -> None:
    table = csv_table(",".join(COLUMNS) + "\nW1,1,depth,4,4,\n")
    new = filled_table(table, [Filled(mark="K1", place="2", text="5 1/2")], rows_of)
    assert new.text == table.text + 'K1,date,day,,,\nK1,1,depth,"4""",,\nK1,2,depth,"4""",5 1/2,\n'


def test_a_place_that_the_table_lacks_gets_a_row() -> None:
    table = csv_table(",".join(COLUMNS) + "\nW1,1,depth,4,4,\n")
    new = filled_table(table, [Filled(mark="W1", place="9", text="5 1/2")], rows_of)
    assert new.text == table.text + "W1,9,,,5 1/2,\n"


def test_what_stands_there_already_is_not_written_again() -> None:
    table = csv_table('mark,place,measured,sure\nW1,1,"4",yes\n')
    assert filled_table(table, [Filled(mark="W1", place="1", text="4", is_sure=True)], rows_of) == table


def test_a_spreadsheet_is_filled_in_cell_by_cell() -> None:
    made = Workbook()
    sheet = made.active
    assert sheet is not None
    sheet.append(list(COLUMNS))
    sheet.append(["W1", 1, "depth", '4"', None, None])
    out = io.BytesIO()
    made.save(out)
    table = FileText(name="measures.xlsx", content=out.getvalue())
    fillings = [Filled(mark="W1", place="1", text="4 1/8"), Filled(mark="K1", place="date", text="2026-06-01")]
    new = filled_table(table, fillings, rows_of)
    found = [[cell or "" for cell in row] for row in load_workbook(io.BytesIO(new.content)).worksheets[0].values]
    assert found[1] == ["W1", 1, "depth", '4"', "4 1/8", ""]
    assert found[2] == ["K1", "date", "day", "", "2026-06-01", ""]
    assert [cell.text for cell in cells_of(new, opening("K1"))] == ["2026-06-01"]


def test_a_table_without_the_columns_is_refused() -> None:
    with pytest.raises(EditRefused, match="there is no column measured; the columns are mark, place"):
        filled_table(csv_table("mark,place\nW1,1\n"), [Filled(mark="W1", place="1", text="4")], rows_of)
