"""What a row of the table says it is of holds, when an opening has other places and others numbers by then."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from jambs.job import Job, JobFaults, read_job
from jambs.job.editing.file_text import FileText
from jambs.job.measured.carrying import with_places_now
from jambs.job.measured.filling import filled_rows
from jambs.job.measured.measures import measures_csv, measures_rows
from jambs.job.measured.measuring_points import measure_places, place_words
from jambs.job.measured.places_said import places_said

EXAMPLES = Path(__file__).parents[2] / "examples"
ONE = "{mark: W1, room: Studio, frame: 24 x 36, sill_height: 30}"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    shutil.copytree(EXAMPLES / "garden-studio", tmp_path / "studio", ignore=shutil.ignore_patterns("output"))
    return tmp_path / "studio"


def write(folder: Path, entry: str) -> Job:
    text = (EXAMPLES / "garden-studio" / "job.yaml").read_text(encoding="utf-8").replace(ONE, entry)
    assert entry in text
    text = text.replace("units: inch\n", "units: inch\nmeasures: measures.csv\n")
    casing = "    casing: {width: 2 1/2, thickness: 3/4, stock: pine, corner: miter}\n"
    assert casing in text
    text = text.replace(
        casing, f"{casing}    mull_casing: {{thickness: 3/4, stock: pine}}\n" if "units:" in entry else casing
    )
    (folder / "job.yaml").write_text(text, encoding="utf-8")
    if not (folder / "measures.csv").exists():
        (folder / "measures.csv").write_text("mark,place,measured\n")
    return read_job(folder)


def fill(folder: Path, job: Job, readings: dict[str, str]) -> None:
    """Write a measure sheet's table with readings in it, by the words of their places."""
    rows = [list(row) for row in measures_rows(job.openings, {}, units=job.units)]
    for row in rows[1:]:
        row[4] = readings.get(row[2], "2026-06-01" if row[1] == "date" else "")
    (folder / "measures.csv").write_bytes(measures_csv(tuple(row) for row in rows))
    assert sum(row[4] != "" for row in rows[1:]) == len(readings) + 1


DEPTHS = {
    "interior depth, head left": "3 1/2",
    "interior depth, left leg middle": "3 9/16",
    "interior depth, sill left": "3 5/8",
    "frame width at the head": "24",
    "frame width at the sill": "24 1/16",
}


def test_a_taller_frame_has_more_places_and_no_width_becomes_a_depth(folder: Path) -> None:
    fill(folder, write(folder, ONE), DEPTHS)
    job = write(folder, ONE.replace("24 x 36", "24 x 70"))
    found = job.openings[0].readings
    assert found and found.frame_width == (24.0, 24.0625) and found.interior_depth
    # ends, thirds between them: what was read at the middle was read at none of them
    assert found.interior_depth.left == (3.625, None, None, 3.5)
    assert [one.words for one in job.tables] == ["measures.csv: 5 rows read, 1 left aside of what is gone since (W1)"]
    back = write(folder, ONE).openings[0].readings
    assert back and back.interior_depth and back.interior_depth.left == (3.625, 3.5625, 3.5)


PAIR = "{mark: W1, room: Studio, sill_height: 30, mull: {gap: 1/2}, units: [{frame: 24 x 36}, {frame: 24 x 36}]}"
MULL = {
    "interior depth, head left": "3 1/2",
    "left edge of the frames to mull of units 1 | 2": "24",
    "mull of units 1 | 2, frame to frame": "1/2",
    "frame width at the head": "48 1/2",
}


def test_units_that_are_joined_leave_what_was_read_between_them_aside(folder: Path) -> None:
    fill(folder, write(folder, PAIR), MULL)
    before = write(folder, PAIR).openings[0].readings
    assert before and before.mull_edges == (24.0,) and before.mull_gaps == (0.5,)
    job = write(folder, "{mark: W1, room: Studio, frame: 48 1/2 x 36, sill_height: 30}")
    found = job.openings[0].readings
    assert found and found.mull_edges is None and found.frame_width == (48.5, None)
    assert [one.words for one in job.tables] == ["measures.csv: 3 rows read, 2 left aside of what is gone since (W1)"]


def test_an_opening_parted_into_units_keeps_what_was_read_around_it(folder: Path) -> None:
    whole = "{mark: W1, room: Studio, frame: 48 1/2 x 36, sill_height: 30}"
    fill(folder, write(folder, whole), {"interior depth, sill right": "3 5/8", "frame width at the sill": "48 1/2"})
    job = write(folder, PAIR)
    found = job.openings[0].readings
    assert found and found.frame_width == (None, 48.5) and found.interior_depth
    assert found.interior_depth.sill and found.interior_depth.sill[-1] == 3.625
    assert [one.words for one in job.tables] == ["measures.csv: 3 rows read"]


def test_where_rows_speak_words_of_their_own_the_number_counts(folder: Path) -> None:
    job = write(folder, ONE)
    places = measure_places(job.openings[0])
    count, words = len(places), place_words(places[0])
    assert places_said(job.openings[0], [("1", "by the stove"), ("9", ""), ("date", "day")]) == ["1", "9", "date"]
    assert places_said(job.openings[0], [("1", "by the stove"), ("9", words)]) == [None, "1"]
    # as many rows as there are places: an earlier edition, that called some of them otherwise
    rows = [(str(n), words if n == 1 else "otherwise") for n in range(1, count + 1)]
    assert places_said(job.openings[0], rows) == [str(n) for n in range(1, count + 1)]
    assert places_said(job.openings[0], rows[:-1]) == ["1", *[None] * (count - 2)]


def test_a_row_without_words_past_the_last_place_is_told_as_ever(folder: Path) -> None:
    write(folder, ONE)
    (folder / "measures.csv").write_text("mark,place,measured\nW1,date,2026-06-01\nW1,24,3\n")
    with pytest.raises(JobFaults, match="W1 has no place '24'; it has date, by and 1 to 23"):
        read_job(folder)


def test_rows_are_numbered_anew_before_one_is_filled_in_and_the_others_stay_as_they_stand(folder: Path) -> None:
    fill(folder, write(folder, ONE), DEPTHS)
    job = write(folder, ONE.replace("24 x 36", "24 x 70"))
    table = FileText(name="measures.csv", content=(folder / "measures.csv").read_bytes())
    new = with_places_now(table, job.openings[0])
    rows = {row.cells["what"]: (row.cells["mark"], row.cells["place"]) for row in filled_rows(new)}
    assert rows["frame width at the head"] == ("W1", "11")
    assert rows["interior depth, left leg middle"] == ("removed W1", "8")
    assert rows["interior depth, head left"] == ("W1", "1")
    assert with_places_now(new, job.openings[0]) == new
