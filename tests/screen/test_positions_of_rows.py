"""A window alone that is a row of a schedule, or one of several under one entry: its cell, its entry change alone."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import Any

import pytest
from openpyxl import Workbook

from jambs.face.screen import Desk, put
from jambs.job import read_job
from jambs.job.editing.file_text import EditRefused, FileText
from jambs.job.editing.row_cells import SetRowCell, with_row_cell
from jambs.screen.draft_data import draft_record

EXAMPLES = Path(__file__).parents[2] / "examples"


ROWS = b'mark,room,frame,sill_height\r\nW1,"Studio, north",24 x 36,30\r\n\r\nW2,Studio,24 x 36,30\r\n'


def desk_at(folder: Path, example: str) -> Desk:
    shutil.copytree(EXAMPLES / example, folder / example, ignore=shutil.ignore_patterns("output"))
    return Desk(file=folder / example / "job.yaml", target=folder / "output")


def desk_with_schedule(folder: Path) -> Desk:
    """The garden studio with its opening in a table beside the job file, two of it."""
    desk = desk_at(folder, "garden-studio")
    text = desk.file.read_text(encoding="utf-8")
    desk.file.write_text(f"{text[: text.index('openings:')]}schedule: rows.csv\n", encoding="utf-8")
    desk.file.with_name("rows.csv").write_bytes(ROWS)
    return desk


def moved(desk: Desk, mark: str, plane: float) -> str:
    found, status = put(desk, mark, {"plane": plane, "reach": 0, "alone": True})
    assert status == 200, found
    return str(found["now"]["figures"][0]["text"])


def test_a_row_of_a_schedule_gets_its_position_and_nothing_else_changes(tmp_path: Path) -> None:
    desk = desk_with_schedule(tmp_path)
    file, table = desk.file, desk.file.with_name("rows.csv")
    before, rows = file.read_bytes(), table.read_bytes().splitlines()
    shown = moved(desk, "W2", 4.75)
    assert table.read_bytes().splitlines() == rows and draft_record(desk)["tables"] == ["rows.csv"]
    desk.save()
    now = table.read_bytes().splitlines()
    changed = [(one, two) for one, two in zip(rows, now, strict=True) if one != two]
    assert [two.removeprefix(one).split(b":")[0] for one, two in changed] == [b",position", b",interior_depth"]
    assert file.read_bytes() == before
    job = read_job(file)
    opening = next(one for one in job.openings if one.mark == "W2")
    assert opening.position_is_own and opening.position.interior_depth is not None
    assert job.units.text(opening.position.interior_depth) == shown
    desk.back()
    desk.save()
    assert table.read_bytes().splitlines() == rows


def test_an_editor_that_changes_the_schedule_meanwhile_is_seen(tmp_path: Path) -> None:
    desk = desk_with_schedule(tmp_path)
    moved(desk, "W2", 4.75)
    table = desk.file.with_name("rows.csv")
    theirs = table.read_text(encoding="utf-8").replace("north", "south")
    table.write_text(theirs, encoding="utf-8")
    assert desk.is_changed_meanwhile and draft_record(desk)["theirs"]
    desk.put_onto_theirs()
    desk.save()
    assert "south" in table.read_text(encoding="utf-8") and "interior_depth" in table.read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("marks", "mark", "left"),
    [
        ("W1..W3", "W1", ["W1", "W2..W3"]),
        ("W1..W3", "W2", ["W1", "W2", "W3"]),
        ("W1..W3", "W3", ["W1..W2", "W3"]),
        ("[W1, W5, W9]", "W1", ["W1", ["W5", "W9"]]),
    ],
)
def test_an_entry_for_several_is_parted(marks: str, mark: str, left: list[object], tmp_path: Path) -> None:
    desk = desk_at(tmp_path, "garden-studio")
    text = desk.file.read_text(encoding="utf-8")
    desk.file.write_text(text.replace("mark: W1", f"mark: {marks}"), encoding="utf-8")
    before = {one.mark: one for one in read_job(desk.file).openings}
    moved(desk, mark, 4.6)
    desk.save()
    import yaml

    entries = yaml.safe_load(desk.file.read_text(encoding="utf-8"))["openings"]
    assert [one["mark"] for one in entries] == left
    assert [one["mark"] for one in entries if "position" in one] == [mark]
    now = read_job(desk.file).openings
    assert [one.mark for one in now] == list(before)
    assert [one.mark for one in now if one.position_is_own] == [mark]
    assert all(one == before[one.mark] for one in now if one.mark != mark)


def test_a_row_that_cannot_be_written_says_what_to_do(tmp_path: Path) -> None:
    table = FileText(name="openings.csv", content=b"mark,room,frame\r\nW1..W3,Hall,24 x 36\r\n")
    with pytest.raises(EditRefused, match=r"W2 has no row of its own: .*give it one of its own"):
        with_row_cell(table, SetRowCell(file="openings.csv", mark="W2", column="position", value="choose"))


def test_a_cell_that_is_there_is_changed_in_its_place() -> None:
    table = FileText(name="t.csv", content=b'Mark;Position;room\r\n"W1";equal depths;"Hall; long"\r\n\r\nW2;;x\r\n')
    new = with_row_cell(table, SetRowCell(file="t.csv", mark="W2", column="position", value="interior_depth: 4 3/4"))
    assert new.content == table.content.replace(b"W2;;x", b"W2;interior_depth: 4 3/4;x")


@pytest.mark.parametrize(("marks", "row"), [(("W1", "W2"), 4), (("W1", "W2..W3"), 4)])
def test_a_row_of_a_spreadsheet_is_named_by_its_number(tmp_path: Path, marks: tuple[str, ...], row: int) -> None:
    """The header is row 1, an empty one stands between: it is told where to write, in words, and nothing changes."""
    desk = desk_at(tmp_path, "garden-studio")
    text = desk.file.read_text(encoding="utf-8")
    desk.file.write_text(f"{text[: text.index('openings:')]}schedule: rows.xlsx\n", encoding="utf-8")
    book = Workbook()
    sheet: Any = book.active
    for cells in (("mark", "room", "frame", "sill_height"), *((mark, "Studio", "24 x 36", "30") for mark in marks)):
        sheet.append(cells)
    sheet.insert_rows(3)
    book.save(desk.file.with_name("rows.xlsx"))
    desk = Desk(file=desk.file, target=tmp_path / "output")
    found, status = put(desk, "W2", {"plane": 4.75, "reach": 0, "alone": True})
    assert status == 409
    (said,) = found["wrong"]
    assert f"W2 is row {row} of it: write " in said and "in the column position there" in said
