"""Openings from CSV and XLSX: the ways spreadsheets write them, and the ways they spoil them."""

from __future__ import annotations

import datetime
from pathlib import Path
from typing import Any

import pytest
from houses import HOUSE, METRIC, spoiled
from openpyxl import Workbook

from jambs.job import JobFaults, read_job
from jambs.job.models.fields import Size
from jambs.job.models.openings import Opening

COMMON = {"mark": "W09", "room": "Attic", "wall": "main", "window": "fixed"}


def read_with(schedule: str, folder: Path, base: str = HOUSE) -> tuple[Opening, ...]:
    """Read the house with a schedule beside it; return the openings of the schedule."""
    text = spoiled(("openings:\n", f"schedule: {schedule}\nopenings:\n"), text=base)
    (folder / "job.yaml").write_text(text, encoding="utf-8")
    listed = text.count("  - mark:")
    return read_job(folder).openings[listed:]


def workbook(path: Path, rows: list[list[Any]]) -> None:
    """Write a spreadsheet with openpyxl."""
    book = Workbook()
    sheet = book.active
    assert sheet is not None
    for row in rows:
        sheet.append(row)
    book.save(path)


@pytest.mark.parametrize("separator", [",", ";", "\t"], ids=["comma", "semicolon", "tab"])
@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig"])
@pytest.mark.parametrize("newline", ["\n", "\r\n"])
def test_csv_as_spreadsheets_save_it(separator: str, encoding: str, newline: str, tmp_path: Path) -> None:
    rows = [
        ["Mark", "Room", "Wall", "Window", "Frame", "Sill Height"],
        ["W09", "Büro", "main", "fixed", '"35 1/2"" x 47 1/2"""', '"36"""'],
        ["", "", "", "", "", ""],
        ["W10", "Attic", "main", "fixed", "30 x 40", ""],
    ]
    text = newline.join(separator.join(row) for row in rows) + newline
    (tmp_path / "windows.csv").write_bytes(text.encode(encoding))
    first, second = read_with("windows.csv", tmp_path)
    assert (first.mark, first.room, first.frame) == ("W09", "Büro", Size(width=35.5, height=47.5))
    assert (first.sill_height, second.sill_height) == (36.0, None)


def test_sizes_in_two_columns_and_measured_corners(tmp_path: Path) -> None:
    columns = [*COMMON, "frame width", "frame height", "measured date", "measured by"]
    corners = ["head_left", "head_right", "sill_left", "sill_right"]
    cells = [*COMMON.values(), "30", "40 1/2", "2026-03-20", "shop", "4 5/8", "4 11/16", "4 3/4", "4 13/16"]
    text = ",".join(columns + corners) + "\n" + ",".join(cells) + "\n"
    (tmp_path / "windows.csv").write_text(text, encoding="utf-8")
    (opening,) = read_with("windows.csv", tmp_path)
    assert opening.frame == Size(width=30.0, height=40.5)
    assert opening.measured is not None
    assert (opening.measured.date, opening.measured.by) == (datetime.date(2026, 3, 20), "shop")
    assert opening.measured.interior_depth is not None
    assert opening.measured.interior_depth.sill == (4.75, 4 + 13 / 16)


def test_a_schedule_may_be_all_there_is(tmp_path: Path) -> None:
    text = HOUSE[: HOUSE.index("openings:\n")] + "schedule: windows.csv\n"
    (tmp_path / "job.yaml").write_text(text, encoding="utf-8")
    (tmp_path / "windows.csv").write_text(
        "mark,room,wall,window,frame\nW09,Attic,main,fixed,30 x 40\n", encoding="utf-8"
    )
    assert [opening.mark for opening in read_job(tmp_path).openings] == ["W09"]


@pytest.mark.parametrize(
    ("cell", "rule", "value"),
    [("share 1/4", "share", 0.25), ("interior_depth: 4", "interior_depth", 4.0), ("choose", "choose", True)],
)
def test_a_position_fits_a_cell(cell: str, rule: str, value: Any, tmp_path: Path) -> None:
    text = f"mark,room,wall,window,frame,position\nW09,Attic,main,fixed,30 x 40,{cell}\n"
    (tmp_path / "windows.csv").write_text(text, encoding="utf-8")
    (opening,) = read_with("windows.csv", tmp_path)
    assert (opening.position.rule, getattr(opening.position, rule)) == (rule, value)


def test_numbers_truths_and_dates_of_a_spreadsheet(tmp_path: Path) -> None:
    workbook(
        tmp_path / "windows.xlsx",
        [
            [
                *COMMON,
                "Frame Width",
                "Frame Height",
                "Escape",
                "measured date",
                *["head left", "head right"],
                "sill left",
                "sill right",
            ],
            [*COMMON.values(), 30, 40.5, True, datetime.datetime(2026, 3, 20), 4.625, "4 5/8", 4.625, 4.625],
        ],
    )
    (opening,) = read_with("windows.xlsx", tmp_path, HOUSE.replace("    sash: fixed", "    sash: slider"))
    assert opening.frame == Size(width=30.0, height=40.5)
    assert opening.escape is True
    assert opening.measured is not None
    assert opening.measured.date == datetime.date(2026, 3, 20)
    assert opening.measured.interior_depth is not None
    assert opening.measured.interior_depth.head == (4.625, 4.625)


def test_numbers_of_a_metric_spreadsheet_are_millimeters(tmp_path: Path) -> None:
    workbook(tmp_path / "windows.xlsx", [["mark", "room", "frame width", "frame height"], ["W09", "Attic", 902, 610.5]])
    (opening,) = read_with("windows.xlsx", tmp_path, METRIC)
    assert opening.frame.width == pytest.approx(902 / 25.4, abs=1e-12)
    assert opening.frame.height == pytest.approx(610.5 / 25.4, abs=1e-12)


def said_about(cells: dict[str, Any], folder: Path) -> str:
    row = COMMON | {"frame": "30 x 40"} | cells
    workbook(folder / "windows.xlsx", [[*row], [*row.values()]])
    with pytest.raises(JobFaults) as caught:
        read_with("windows.xlsx", folder)
    return str(caught.value)


@pytest.mark.parametrize(
    ("cells", "said"),
    [
        (
            {"sill height": datetime.datetime(2026, 5, 1)},
            "column sill_height: holds the date 2026-05-01; spreadsheets turn 5-1/2 and the like into dates, "
            "format the cell as text and type the length again",
        ),
        (
            {"sill height": datetime.time(5, 30)},
            "column sill_height: holds the time 05:30:00; format the cell as text and type it again",
        ),
        (
            {"sill height": "=A1+1"},
            "column sill_height: holds a formula that was never worked out; open the file in a spreadsheet and save it",
        ),
        (
            {"frame": 30},
            "column frame: '30' is not a size; write width x height, like 35 1/2 x 47 1/2 or 902 mm x 1207 mm",
        ),
        (
            {"sill height": "#REF!"},
            "column sill_height: '#REF!' is not a length; write it like 5 1/2, 4-9/16\", 2'-11 1/2\", 7.5 or 902 mm",
        ),
        ({"escape": 1}, "column escape: '1' is neither yes nor no; write yes or no"),
    ],
    ids=["date", "time", "formula", "number for a size", "broken reference", "one for yes"],
)
def test_cells_that_a_spreadsheet_spoiled(cells: dict[str, Any], said: str, tmp_path: Path) -> None:
    assert said_about(cells, tmp_path) == f'windows.xlsx:2: opening "W09", {said}'


def test_a_file_that_is_no_spreadsheet(tmp_path: Path) -> None:
    (tmp_path / "windows.xlsx").write_text("mark,room,frame\n", encoding="utf-8")
    with pytest.raises(JobFaults) as caught:
        read_with("windows.xlsx", tmp_path)
    assert str(caught.value) == "windows.xlsx: is not a spreadsheet (BadZipFile); save it as .xlsx again"


def test_a_schedule_in_another_encoding(tmp_path: Path) -> None:
    (tmp_path / "windows.csv").write_bytes("mark,room,frame\nW09,Küche,30 x 40\n".encode("utf-16"))
    with pytest.raises(JobFaults) as caught:
        read_with("windows.csv", tmp_path)
    assert str(caught.value) == "windows.csv: is not UTF-8 text; save it as CSV UTF-8"


def test_rows_are_told_by_the_line_they_start_on(tmp_path: Path) -> None:
    """A cell in quotes may run over several lines; the rows below it keep their own."""
    rows = 'mark,room,wall,window,frame\nW09,"Attic,\nnorth",main,fixed,30 x 40\nW10,Attic,main,fixd,30 x 40\n'
    (tmp_path / "windows.csv").write_text(rows, encoding="utf-8")
    with pytest.raises(JobFaults) as caught:
        read_with("windows.csv", tmp_path)
    assert [(fault.line, fault.where) for fault in caught.value.faults] == [
        (2, 'opening "W09", column room'),
        (4, 'opening "W10", column window'),
    ]
