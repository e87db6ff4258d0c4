"""A measured opening that is given another mark: its readings go along, in one save, and nobody else's are touched."""

from __future__ import annotations

import csv
import json
import re
import shutil
import zipfile
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from openpyxl import Workbook, load_workbook
from openpyxl.styles import PatternFill

from jambs.app.whole_file import write_whole
from jambs.job import read_job
from jambs.job.editing.file_text import EditRefused, FileText
from jambs.job.measured.carrying import CarryRows, with_rows_carried
from jambs.screen.desk import Desk
from jambs.screen.draft_data import draft_record, take_up
from jambs.screen.job_edits import asked_edits
from jambs.screen.saving import ChangedMeanwhile

EXAMPLES = Path(__file__).parents[2] / "examples"
TABLE = (
    "\ufeffmark;place;what;planned;measured;sure\r\n"
    "W1;date;day it was measured;;2026-06-01;\r\n"
    'W1;1;"interior depth, head left";3 3/8;  3 3/8 ;\r\n'
    "W2;date;day it was measured;;2026-06-02;\r\n"
    'w2;1;"interior depth, head left";3 3/8;3 1/2;\r\n'
    "W3;date;day it was measured;;;\r\n"
    'W3;1;"interior depth, head left";3 3/8;;\r\n'
)
"""As a spreadsheet of another land saves it; the spaces are somebody's."""


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    shutil.copytree(EXAMPLES / "garden-studio", tmp_path / "studio", ignore=shutil.ignore_patterns("output"))
    file = tmp_path / "studio" / "job.yaml"
    text = file.read_text(encoding="utf-8").replace(
        "units: inch\n", "units: inch\nmeasures: measures.csv  # the tape\n"
    )
    one = "  - {mark: W1, room: Studio, frame: 24 x 36, sill_height: 30}\n"
    assert one in text
    file.write_text(text.replace(one, "".join(one.replace("W1", f"W{n}") for n in (1, 2, 3))), encoding="utf-8")
    table_of(file).write_bytes(TABLE.encode())
    return Desk(file=file, target=tmp_path / "output")


def table_of(file: Path) -> Path:
    return file.with_name("measures.csv")


def rename(desk: Desk, at: int, mark: str) -> None:
    house = desk.house()
    marks = [one.mark for one in house.job.openings] if house.job else []
    asked = {"act": "set", "path": ["openings", at, "mark"], "value": mark}
    words, edits = asked_edits(desk.draft.files["job.yaml"], asked, desk.table, marks=marks)
    desk.change(words, edits, may_be_wrong=True)


def read(desk: Desk) -> dict[str, str]:
    """Return the day on which each opening was measured, by its mark."""
    return {one.mark: f"{one.readings.date}" for one in read_job(desk.file).openings if one.readings}


def test_readings_go_along_in_the_same_save_and_undo_takes_both_back(desk: Desk) -> None:
    job = desk.file.read_bytes()
    rename(desk, 0, "W9")
    assert desk.house().wrong == () and desk.house().job
    record = draft_record(desk)
    new = [line["text"] for group in record["lines"] for line in group if line["kind"] == "new"]
    assert record["tables"] == ["measures.csv"] and len(new) == 3 and sum("W9;" in text for text in new) == 2
    assert table_of(desk.file).read_bytes() == TABLE.encode()  # nothing before it is saved
    desk.save()
    assert table_of(desk.file).read_bytes() == TABLE.replace("W1;", "W9;").encode()
    assert desk.file.read_bytes() == job.replace(b"mark: W1", b"mark: W9")
    assert read(desk) == {"W9": "2026-06-01", "W2": "2026-06-02"}
    desk.back()
    desk.save()
    assert (desk.file.read_bytes(), table_of(desk.file).read_bytes()) == (job, TABLE.encode())
    desk.forth()
    desk.save()
    assert read(desk) == {"W9": "2026-06-01", "W2": "2026-06-02"}


def test_two_openings_exchange_their_marks_each_with_its_readings(desk: Desk) -> None:
    before = table_of(desk.file).read_bytes()
    with pytest.raises(EditRefused, match="W2 is the mark of another opening"):
        rename(desk, 0, "W2")
    assert not desk.draft.changed
    for at, mark in ((0, "free"), (1, "W1"), (0, "W2")):
        rename(desk, at, mark)
    desk.save()
    assert read(desk) == {"W2": "2026-06-01", "W1": "2026-06-02"}
    rows = table_of(desk.file).read_text(encoding="utf-8")
    assert re.findall("^(.*?);date", rows, re.M) == ["W2", "W1", "W3"]
    for at, mark in ((0, "free"), (1, "W2"), (0, "W1")):
        rename(desk, at, mark)
    desk.save()
    assert table_of(desk.file).read_bytes() == before.replace(b"w2;", b"W2;")


def test_a_mark_of_the_schedule_is_another_openings_also_while_the_job_cannot_be_read(desk: Desk) -> None:
    text = desk.file.read_text(encoding="utf-8").replace("units: inch\n", "units: inch\nschedule: more.csv\nodd: 1\n")
    desk.file.write_text(text, encoding="utf-8")
    desk.file.with_name("more.csv").write_text("mark,window\nS1..S3,fixed\n", encoding="utf-8")
    assert desk.house().job is None
    with pytest.raises(EditRefused, match="S2 is the mark of another opening"):
        rename(desk, 0, "S2")


def test_where_nothing_was_measured_the_table_stays(desk: Desk) -> None:
    rename(desk, 2, "W9")
    rename(desk, 2, "W3")
    rename(desk, 2, "W4")
    assert [after.name for _, after in desk.draft.changed if after] == ["job.yaml"]
    rename(desk, 0, "w1")  # capitals count for nothing
    rename(desk, 0, "W1, again")
    desk.file.with_name("measures.csv").unlink()
    rename(desk, 2, "W5")  # no table: told beside its key, and no reason to keep a mark from being written


def test_empty_rows_under_the_new_mark_change_places_and_filled_ones_keep_it_from_being_given(desk: Desk) -> None:
    rename(desk, 2, "W4")  # the empty rows of W3 stay behind
    rename(desk, 0, "W3")
    desk.save()
    rows = table_of(desk.file).read_text(encoding="utf-8")
    assert re.findall("^(.*?);date", rows, re.M) == ["W3", "W2", "W1"]
    table = FileText(name="measures.csv", content=TABLE.encode())
    with pytest.raises(EditRefused, match="has readings under the mark 'W2' already"):
        with_rows_carried(table, CarryRows(file=table.name, old=("W1",), new=("W2",)))


def test_a_range_of_openings_carries_each(desk: Desk) -> None:
    text = desk.file.read_text(encoding="utf-8")
    head, _, _ = text.partition("  - {mark: W1")
    desk.file.write_text(
        f"{head}  - {{mark: W1..W3, room: Studio, frame: 24 x 36, sill_height: 30}}\n", encoding="utf-8"
    )
    rename(desk, 0, "K1..K3")
    assert desk.house().wrong == ()
    desk.save()
    assert read(desk) == {"K1": "2026-06-01", "K2": "2026-06-02"}


def test_a_reading_that_came_in_meanwhile_is_noticed_and_goes_along_too(desk: Desk) -> None:
    rename(desk, 0, "W9")
    job, theirs = desk.file.read_bytes(), TABLE.replace("  3 3/8 ", "3 1/4").encode()
    table_of(desk.file).write_bytes(theirs)
    assert draft_record(desk)["theirs"]
    with pytest.raises(ChangedMeanwhile):
        desk.save()
    assert (desk.file.read_bytes(), table_of(desk.file).read_bytes()) == (job, theirs)
    desk.put_onto_theirs()
    desk.save()
    assert table_of(desk.file).read_bytes() == theirs.replace(b"W1;", b"W9;")
    assert read(desk) == {"W9": "2026-06-01", "W2": "2026-06-02"}


def test_readings_after_the_save_stand_against_no_later_change(desk: Desk) -> None:
    rename(desk, 0, "W9")
    desk.save()
    rename(desk, 2, "W4")
    later = table_of(desk.file).read_bytes().replace(b"  3 3/8 ", b"3 1/4")
    table_of(desk.file).write_bytes(later)
    assert draft_record(desk)["theirs"] is None and desk.unsaved and len(desk.unsaved) == 1
    desk.save()
    assert table_of(desk.file).read_bytes() == later and "mark: W4" in desk.file.read_text(encoding="utf-8")
    desk.back()
    desk.back()  # the step that wrote the table is no longer taken back: what was read since would go with it
    desk.save()
    assert table_of(desk.file).read_bytes() == later and read(desk)["W9"] == "2026-06-01"


def test_where_the_table_cannot_be_written_the_job_file_stands(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    rename(desk, 0, "W9")
    job, write = desk.file.read_bytes(), write_whole

    def full(path: Path, content: bytes, *, keeps_mode: bool = False) -> None:
        if path.name == "measures.csv":
            raise OSError(28, "No space left on device", str(path))
        write(path, content, keeps_mode=keeps_mode)

    monkeypatch.setattr("jambs.screen.saving.write_whole", full)
    with pytest.raises(OSError, match="No space"):
        desk.save()
    assert (desk.file.read_bytes(), table_of(desk.file).read_bytes()) == (job, TABLE.encode())
    monkeypatch.undo()
    desk.save()
    assert read(desk)["W9"] == "2026-06-01"


def test_what_a_browser_kept_of_it_is_taken_up_again_for_this_table_alone(desk: Desk) -> None:
    rename(desk, 0, "W9")
    kept = json.loads(json.dumps(draft_record(desk)["unsaved"]))
    another = Desk(file=desk.file, target=desk.target)
    take_up(another, kept)
    assert another.draft.changed == desk.draft.changed
    carry = next(one for one in kept[0]["edits"] if one["kind"] == "CarryRows")
    wrongs: list[dict[str, Any]] = [{"file": "job.yaml"}, {"new": []}, {"old": "W1"}]
    for wrong in wrongs:
        with pytest.raises(EditRefused):
            take_up(Desk(file=desk.file, target=desk.target), [{"words": "x", "edits": [{**carry, **wrong}]}])


def remove(desk: Desk, at: int) -> str:
    words, edits = asked_edits(desk.draft.files["job.yaml"], {"act": "remove", "path": ["openings", at]}, desk.table)
    desk.change(words, edits, may_be_wrong=True)
    return words


def test_readings_of_a_removed_opening_are_kept_in_the_same_save_and_undo_brings_both_back(desk: Desk) -> None:
    job = desk.file.read_bytes()
    assert remove(desk, 0) == "remove openings W1, readings now under removed W1 in measures.csv"
    assert desk.house().wrong == () and desk.house().job
    record = draft_record(desk)
    new = [line["text"] for group in record["lines"] for line in group if line["kind"] == "new"]
    assert record["tables"] == ["measures.csv"] and len(new) == 2 and all(one.startswith("removed W1;") for one in new)
    assert table_of(desk.file).read_bytes() == TABLE.encode()  # nothing before it is saved
    desk.save()
    assert table_of(desk.file).read_bytes() == TABLE.replace("W1;", "removed W1;").encode()
    assert read(desk) == {"W2": "2026-06-02"}
    assert [one.words for one in read_job(desk.file).tables] == [
        "measures.csv: 2 rows read, 2 left aside of what is gone since (W1)"
    ]
    desk.back()
    desk.save()
    assert (desk.file.read_bytes(), table_of(desk.file).read_bytes()) == (job, TABLE.encode())
    desk.forth()
    desk.save()
    assert read(desk) == {"W2": "2026-06-02"}


def test_an_opening_that_was_not_measured_goes_without_a_word_of_readings(desk: Desk) -> None:
    assert remove(desk, 2) == "remove openings W3"
    assert [after.name for _, after in desk.draft.changed if after] == ["job.yaml"] and desk.house().wrong == ()
    desk.save()
    assert [one.words for one in read_job(desk.file).tables] == ["measures.csv: 4 rows read"]


def test_a_second_opening_of_a_mark_that_goes_leaves_the_readings_of_the_first_alone(desk: Desk) -> None:
    remove(desk, 0)
    rename(desk, 0, "W1")  # W2, read on another day
    assert remove(desk, 0).endswith("under removed W1 2 in measures.csv")
    desk.save()
    rows = table_of(desk.file).read_text(encoding="utf-8")
    assert re.findall("^(.*?);date", rows, re.M) == ["removed W1", "removed W1 2", "W3"] and read(desk) == {}


def test_of_a_range_that_is_shorter_the_readings_of_those_that_go_are_kept(desk: Desk) -> None:
    head, _, _ = desk.file.read_text(encoding="utf-8").partition("  - {mark: W1")
    one = "  - {mark: W1..W3, room: Studio, frame: 24 x 36, sill_height: 30}\n"
    desk.file.write_text(f"{head}{one}", encoding="utf-8")
    rename(desk, 0, "W1, W3")  # no range: a mark that nobody has, and a fault that is told
    desk.back()
    rename(desk, 0, "W2..W3")
    desk.save()
    assert read(desk) == {"W2": "2026-06-02"}
    assert "removed W1;date" in table_of(desk.file).read_text(encoding="utf-8")


def test_a_mark_that_readings_go_by_is_written_over_and_not_taken_out(desk: Desk) -> None:
    with pytest.raises(EditRefused, match=r"W1 was measured, and measures\.csv has its readings by its mark: write"):
        rename(desk, 0, "")
    assert not desk.draft.changed
    rename(desk, 2, "")  # nothing was read of it: what is wrong is told beside the field


def as_spreadsheet(desk: Desk) -> bytes:
    """Put the table into a spreadsheet of the user's, with a note beside it, a color, a width and a second sheet."""
    book = Workbook()
    sheet = book.active
    assert sheet is not None
    for row in csv.reader(TABLE.removeprefix("\ufeff").splitlines(), delimiter=";"):
        sheet.append([one or None for one in row])
    sheet["G3"] = "by the window"
    sheet["A3"].fill = PatternFill("solid", start_color="AABBCC")
    sheet.column_dimensions["C"].width = 33
    book.create_sheet("mine")["B2"] = "W1"
    file = table_of(desk.file).with_suffix(".xlsx")
    book.save(file)
    job = desk.file.read_text(encoding="utf-8")
    desk.file.write_text(job.replace("measures.csv", "measures.xlsx"), encoding="utf-8")
    return file.read_bytes()


def marks_in(desk: Desk) -> list[object]:
    return [row[0].value for row in load_workbook(desk.file.with_name("measures.xlsx")).worksheets[0].iter_rows()]


def test_a_spreadsheet_is_carried_too_with_all_that_the_user_put_there(desk: Desk) -> None:
    before = as_spreadsheet(desk)
    rename(desk, 0, "W9")
    job = desk.house().job
    assert desk.house().wrong == () and job
    assert [one.mark for one in job.openings if one.readings] == ["W9", "W2"]
    lines = [line["text"] for group in draft_record(desk)["lines"] for line in group if line["kind"] == "new"]
    assert 'W9,1,"interior depth, head left",3 3/8,3 3/8,,by the window' in lines
    assert desk.file.with_name("measures.xlsx").read_bytes() == before
    desk.save()
    assert read(desk) == {"W9": "2026-06-01", "W2": "2026-06-02"}
    book = load_workbook(desk.file.with_name("measures.xlsx"))
    sheet = book.worksheets[0]
    assert sheet["G3"].value == "by the window"
    assert sheet["A3"].fill.start_color.rgb == "00AABBCC" and sheet.column_dimensions["C"].width == 33
    assert book["mine"]["B2"].value == "W1"
    desk.back()
    desk.save()
    assert desk.file.with_name("measures.xlsx").read_bytes() == before
    remove(desk, 1)
    desk.save()
    assert read(desk) == {"W1": "2026-06-01"}
    assert marks_in(desk) == ["mark", "W1", "W1", "removed W2", "removed W2", "W3", "W3"]


def test_a_spreadsheet_that_is_not_written_here_keeps_the_mark_from_being_changed_and_says_why(desk: Desk) -> None:
    as_spreadsheet(desk)
    file = desk.file.with_name("measures.xlsx")
    with zipfile.ZipFile(file, "a") as packed:
        packed.writestr("xl/pivotTables/pivotTable1.xml", "<pivot/>")
    before = file.read_bytes(), desk.file.read_bytes()
    acts: tuple[Callable[[], object], ...] = (lambda: rename(desk, 0, "W9"), lambda: remove(desk, 0))
    for act in acts:
        with pytest.raises(
            EditRefused, match=r"measures\.xlsx: holds pivot tables, which would be lost; type the cells"
        ):
            act()
    assert not desk.draft.changed and (file.read_bytes(), desk.file.read_bytes()) == before


def test_a_spreadsheet_that_is_none_is_told_and_keeps_nothing_from_being_changed(desk: Desk) -> None:
    as_spreadsheet(desk)
    desk.file.with_name("measures.xlsx").write_bytes(b"PK nothing")
    rename(desk, 0, "W9")
    assert desk.house().job is None and "is not a spreadsheet" in desk.house().wrong[0]
