"""The table of measures: written, filled in, read back; half-filled, damaged, locked; never changed by us."""

from __future__ import annotations

import csv
import datetime
import io
from pathlib import Path
from typing import Any

import pytest
from cases import changed
from openpyxl import load_workbook
from yaml import safe_dump

from jambs.job import Job, JobFaults, read_job
from jambs.job.measured.measures import COLUMNS, measures_csv, measures_rows, measures_xlsx
from jambs.job.measured.measuring_points import measure_places, places_along, reading_at
from jambs.job.reading.rows import table_rows

FILLED = {
    "date": "2026-06-01",
    "by": "second floor crew",
    "1": "4 3/4",
    "2": '4 25/32"',
    "3": "4 13/16",
    "4": "4-13/16",
    "5": "4 7/8",
    "6": "4.8125",
    "7": "121 mm",
    "8": "4 3/4",
    "13": "35 1/2",
    "15": "47 1/2",
    "17": "59 1/4",
    "18": "59 3/8",
    "19": "1/16",
    "23": "2 1/2",
    "27": "yes",
}


def job_in(folder: Path, table: str = "", **paths: Any) -> Job:
    data = changed(**paths)
    if table:
        data["measures"] = table
    (folder / "job.yaml").write_text(safe_dump(data, sort_keys=False, allow_unicode=True), encoding="utf-8")
    return read_job(folder)


def empty_rows(job: Job) -> list[tuple[str, ...]]:
    return list(measures_rows(job.openings, {}, units=job.units))


def filled(job: Job, values: dict[str, str]) -> list[list[str]]:
    rows = [list(row) for row in empty_rows(job)]
    for row in rows[1:]:
        row[4] = values.get(row[1], row[4])
    return rows


def write_csv(path: Path, rows: list[list[str]]) -> None:
    text = io.StringIO()
    csv.writer(text).writerows(rows)
    path.write_text(text.getvalue(), encoding="utf-8")


def faults(folder: Path, table: str = "measures.csv") -> list[str]:
    with pytest.raises(JobFaults) as caught:
        job_in(folder, table)
    return [str(fault) for fault in caught.value.faults]


def test_places_are_numbered_clockwise_from_the_upper_left(tmp_path: Path) -> None:
    places = measure_places(job_in(tmp_path).openings[0])
    assert [place.number for place in places] == list(range(1, 28))
    assert [(place.x, place.y) for place in places[:8]] == [
        (0, 1), (0.5, 1), (1, 1), (1, 0.5), (1, 0), (0.5, 0), (0, 0), (0, 0.5),
    ]  # fmt: skip
    assert places[0].keys == (("interior_depth", "head", 0), ("interior_depth", "left", 2))


@pytest.mark.parametrize(("length", "count"), [(20, 3), (60, 3), (60.5, 4), (90, 4), (95, 5)])
def test_no_two_places_are_more_than_thirty_inches_apart(length: float, count: int) -> None:
    assert places_along(length) == count


def test_there_and_back_through_csv(tmp_path: Path) -> None:
    """Sheet → table → job → table: what was typed comes back as the same lengths, in the same rows."""
    rows = filled(job_in(tmp_path), FILLED)
    write_csv(tmp_path / "measures.csv", rows)
    job = job_in(tmp_path, "measures.csv")
    again = empty_rows(job)
    assert [row[:3] for row in again] == [tuple(row[:3]) for row in rows]
    typed = {row[1]: row[4] for row in again[1:] if row[4]}
    assert typed == FILLED | {"2": "4 25/32", "4": "4 13/16", "6": "4 13/16", "7": "4 49/64"}
    write_csv(tmp_path / "measures.csv", [list(row) for row in again])
    assert empty_rows(job_in(tmp_path, "measures.csv")) == again


def test_there_and_back_through_a_spreadsheet(tmp_path: Path) -> None:
    """The spreadsheet is filled in by another library's hand, numbers and a date as a spreadsheet keeps them."""
    job = job_in(tmp_path)
    (tmp_path / "measures.xlsx").write_bytes(measures_xlsx(iter(empty_rows(job))))
    book = load_workbook(tmp_path / "measures.xlsx")
    typed: dict[str, Any] = {**FILLED, "date": datetime.datetime(2026, 6, 1), "6": 4.8125, "27": True}
    for row in book.active.iter_rows(min_row=2):  # type: ignore[union-attr]
        if str(row[1].value) in typed:
            row[4].value = typed[str(row[1].value)]
    book.save(tmp_path / "measures.xlsx")
    write_csv(tmp_path / "measures.csv", filled(job, FILLED))
    one, other = (job_in(tmp_path, f"measures.{kind}").openings[0].readings for kind in ("csv", "xlsx"))
    assert one == other and one is not None


def test_the_same_keys_in_the_job_file(tmp_path: Path) -> None:
    write_csv(tmp_path / "measures.csv", filled(job_in(tmp_path), FILLED))
    by_table = job_in(tmp_path, "measures.csv").openings[0].readings
    assert by_table is not None
    measured = {
        "date": "2026-06-01",
        "by": "second floor crew",
        "interior_depth": {
            "head": ["4 3/4", "4 25/32", "4 13/16"],
            "right": ["4 7/8", "4 13/16", "4 13/16"],
            "sill": ["121 mm", "4 13/16", "4 7/8"],
            "left": ["121 mm", "4 3/4", "4 3/4"],
        },
        "frame_width": ["35 1/2", "-"],
        "frame_height": ["47 1/2", "-"],
        "diagonals": ["59 1/4", "59 3/8"],
        "out_of_plumb": ["1/16", "-"],
        "frame_face": {"left": "2 1/2"},
        "wall_finish": "yes",
    }
    assert job_in(tmp_path, openings__0__measured=measured).openings[0].readings == by_table


def test_half_filled_is_fine(tmp_path: Path) -> None:
    write_csv(tmp_path / "measures.csv", filled(job_in(tmp_path), {"date": "2026-06-01", "3": "4 3/4"}))
    opening = job_in(tmp_path, "measures.csv").openings[0]
    assert opening.measured is None
    read = {place.number: reading_at(place, opening.readings) for place in measure_places(opening)}
    assert {number for number, value in read.items() if value is not None} == {3, 27}
    assert read[3] == 4.75


def test_nothing_filled_in_is_as_if_there_were_no_table(tmp_path: Path) -> None:
    (tmp_path / "measures.csv").write_bytes(measures_csv(iter(empty_rows(job_in(tmp_path)))))
    assert job_in(tmp_path, "measures.csv") == job_in(tmp_path)


def test_the_table_is_only_read(tmp_path: Path) -> None:
    path = tmp_path / "measures.csv"
    write_csv(path, filled(job_in(tmp_path), FILLED))
    path.chmod(0o444)
    before = path.read_bytes(), path.stat().st_mtime_ns
    job_in(tmp_path, "measures.csv")
    assert (path.read_bytes(), path.stat().st_mtime_ns) == before


@pytest.mark.parametrize(
    ("values", "message"),
    [
        ({"1": "4 3/4"}, "date is missing"),
        ({"date": "2026-06-01", "1": "4 31/16"}, "the fraction is not less than one"),
        ({"date": "2026-06-01", "1": "121"}, "or 121 mm if millimeters are meant"),
        ({"date": "2026-06-01", "1": "5-Jan"}, "spreadsheets turn 5-1/2 and the like into dates"),
        ({"date": "2026-06-01", "1": "=B2+1"}, "holds a formula that was never worked out"),
        ({"date": "first of June", "1": "4 3/4"}, "'first of June' is not a date"),
        ({"date": "2026-06-01", "27": "perhaps"}, "'perhaps' is neither yes nor no"),
    ],
)
def test_what_cannot_be_read_is_told_with_its_line(tmp_path: Path, values: dict[str, str], message: str) -> None:
    write_csv(tmp_path / "measures.csv", filled(job_in(tmp_path), values))
    (fault,) = faults(tmp_path)
    assert fault.startswith("measures.csv:") and message in fault


NO_W9 = (
    "no opening has the mark 'W9', and a row of it is filled in: write the mark that the opening has now, or "
    "'removed W9' if it is gone; there are W1"
)


@pytest.mark.parametrize(
    ("row", "message"),
    [
        (["W9", "1", "", "", "4 3/4", ""], NO_W9),
        (["W1", "99", "", "", "4 3/4", ""], "W1 has no place '99'; it has date, by and 1 to 27"),
        (["W1", "1", "", "", "4 3/4", ""], "place 1 is filled in twice; keep one of the rows"),
    ],
)
def test_a_row_that_belongs_nowhere(tmp_path: Path, row: list[str], message: str) -> None:
    rows = filled(job_in(tmp_path), FILLED)
    write_csv(tmp_path / "measures.csv", [*rows, row])
    assert faults(tmp_path) == [f"measures.csv:{len(rows) + 1}: {message}"]


def test_rows_of_an_opening_that_is_gone_are_told_of_once_and_only_where_they_are_filled(tmp_path: Path) -> None:
    """Eight places of it filled are one thing to do; its empty rows, which `measure` leaves, are none."""
    rows = filled(job_in(tmp_path), FILLED)
    gone = [["W9", str(place), "", "", "4 3/4", ""] for place in range(1, 9)]
    write_csv(tmp_path / "measures.csv", [*rows, *gone])
    (fault,) = faults(tmp_path)
    assert fault.startswith(f"measures.csv:{len(rows) + 1}: ") and "8 rows of it are filled in" in fault
    write_csv(tmp_path / "measures.csv", [*rows, *[[*one[:4], "", ""] for one in gone]])
    job_in(tmp_path, "measures.csv")


def test_measured_in_two_places(tmp_path: Path) -> None:
    write_csv(tmp_path / "measures.csv", filled(job_in(tmp_path), FILLED))
    measured = {"date": "2026-06-01", "interior_depth": {side: ["4", "4"] for side in ("head", "left", "right")}}
    with pytest.raises(JobFaults) as caught:
        job_in(tmp_path, "measures.csv", openings__0__measured=measured)
    assert "is measured in the job file and in this table; keep one of them" in str(caught.value)


@pytest.mark.parametrize(
    ("content", "message"),
    [
        (b"", "is empty; let `jambs measure` write it again"),
        (b"PK\x03\x04 half a zip", "is not a spreadsheet (BadZipFile); save it as .xlsx again"),
    ],
)
def test_a_damaged_spreadsheet(tmp_path: Path, content: bytes, message: str) -> None:
    (tmp_path / "measures.xlsx").write_bytes(content)
    (fault,) = faults(tmp_path, "measures.xlsx")
    expected = "is not a spreadsheet" if not content else message
    assert fault.startswith("measures.xlsx: ") and expected in fault


def test_a_table_without_its_columns(tmp_path: Path) -> None:
    (tmp_path / "measures.csv").write_text("mark,reading\nW1,4\n", encoding="utf-8")
    columns = ", ".join(COLUMNS)
    assert faults(tmp_path) == [f"measures.csv:1: there is no column place, measured; the columns are {columns}"]


@pytest.mark.parametrize("kind", ["csv", "xlsx"])
def test_a_locked_table(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, kind: str) -> None:
    """A spreadsheet program may keep others out of the file it has open."""
    path = tmp_path / f"measures.{kind}"
    path.write_bytes(measures_xlsx(iter(empty_rows(job_in(tmp_path)))))

    def locked(*given: Any, **named: Any) -> None:
        raise PermissionError(13, "Permission denied", str(path))

    monkeypatch.setattr(Path, "read_text", locked)
    monkeypatch.setattr("openpyxl.load_workbook", locked)
    with pytest.raises(JobFaults) as caught:
        list(table_rows(path))
    assert str(caught.value) == (
        f"measures.{kind}: cannot be opened (Permission denied); close it in the spreadsheet, or give it back its "
        "read permission"
    )


def test_a_table_that_is_not_there(tmp_path: Path) -> None:
    (fault,) = faults(tmp_path, "measure.csv")
    assert "there is no file 'measure.csv' beside the job file; let `jambs measure` write it" in fault


def test_cells_of_the_spreadsheet_are_text(tmp_path: Path) -> None:
    (tmp_path / "measures.xlsx").write_bytes(measures_xlsx(iter(empty_rows(job_in(tmp_path)))))
    sheet = load_workbook(tmp_path / "measures.xlsx").active
    assert {cell.number_format for row in sheet.iter_rows() for cell in row} == {"@"}  # type: ignore[union-attr]
