"""Readings of telephones: each written once, none over another's, all as a filled measure sheet would have them."""

from __future__ import annotations

import csv
import datetime
import threading
from pathlib import Path

import pytest
from pages import EXAMPLES

from jambs.app.chain import kits_as_cut
from jambs.job import JobFaults, read_job
from jambs.job.editing.edits import SetValue
from jambs.job.editing.file_text import FileText
from jambs.job.measured.measures import measures_csv, measures_rows, measures_xlsx
from jambs.length import Units
from jambs.screen.desk import Desk
from jambs.screen.measuring import Measuring
from jambs.screen.sent_reading import Changed, NotTaken, ReadOtherwise, SentReading
from jambs.sheets.record import opening_record

CORNERS = {1: "3 3/8", 3: "3 1/2", 5: "3 5/8", 7: "3 1/2"}
"""Of the garden studio's window, planned 3 1/2: the places of its corners, clockwise from the upper left."""


@pytest.fixture
def measuring(tmp_path: Path) -> Measuring:
    text = (EXAMPLES / "garden-studio" / "job.yaml").read_text()
    (tmp_path / "job.yaml").write_text(text)
    return Measuring(
        Desk(file=tmp_path / "job.yaml", target=tmp_path / "output"), today=lambda: datetime.date(2026, 6, 3)
    )


def entry(place: int, text: str, *, was: str = "", sure: bool = False, **others: str) -> SentReading:
    said = {"id": f"{place} {text} {sure}", "mark": "W1", "day": "2026-06-01", "by": "Ann"} | others
    return SentReading(place=place, text=text, was=was, is_sure=sure, **said)


def table(folder: Path) -> dict[tuple[str, str], list[str]]:
    rows = list(csv.reader((folder / "measures.csv").read_text(encoding="utf-8-sig").splitlines()))
    return {(row[0], row[1]): row for row in rows[1:]}


def test_the_first_reading_writes_the_table_that_a_measure_sheet_comes_with(
    measuring: Measuring, tmp_path: Path
) -> None:
    before = (tmp_path / "job.yaml").read_text()
    answer = measuring.take(entry(1, "3 3/8"))
    assert (tmp_path / "job.yaml").read_text() == before.replace(
        "units: inch\n", "units: inch\nmeasures: measures.csv\n"
    )
    rows = table(tmp_path)
    assert rows["W1", "1"] == ["W1", "1", "interior depth, head left", '3 1/2"', "3 3/8", ""]
    assert rows["W1", "date"][4] == "2026-06-01" and rows["W1", "by"][4] == "Ann"
    assert answer["state"] == "half measured" and answer["next"] == 3
    assert answer["read"]["1"] == "3 3/8"
    left = next(one for one in answer["boards"] if one["words"] == "left leg")
    assert {end["at"]: end["is_read"] for end in left["ends"]} == {"top": True, "bottom": False}


def test_four_corners_are_answered_with_the_widths_that_the_cut_sheet_prints(
    measuring: Measuring, tmp_path: Path
) -> None:
    for place, text in CORNERS.items():
        answer = measuring.take(entry(place, text))
    assert answer["state"] == "measured" and answer["questions"] == []
    (kit,) = kits_as_cut(read_job(tmp_path))
    record = opening_record(kit, grid=read_job(tmp_path).shop.grid)
    assert record["state"]["banner"][0]["text"] == "MEASURED 2026-06-01 by Ann"
    printed = {
        part["position"]: (part["taper"] or {}, part["width"]["text"])
        for part in record["parts"]
        if part["name"] == "extension jamb"
    }
    boards = {one["words"]: one for one in answer["boards"]}
    assert list(boards) == ["left leg", "right leg", "head", "bottom"]
    left = {end["at"]: end["width"] for end in boards["left leg"]["ends"]}
    # 3 1/2 below and 3 3/8 above, each 1/16 proud; the straight edge stands nowhere short of a reading
    assert left == {"top": '3 7/16"', "bottom": '3 9/16"'}
    assert boards["left leg"]["how"] == 'taper 1/8"'
    taper, _ = printed["left leg"]
    assert {taper["start"]: taper["start_width"]["text"], taper["finish"]: taper["finish_width"]["text"]} == left


def test_the_table_is_to_the_byte_what_a_filled_sheet_gives(measuring: Measuring, tmp_path: Path) -> None:
    for place, text in CORNERS.items():
        measuring.take(entry(place, text))
    job = read_job(tmp_path)
    planned = {"W1": {int(place): row[3] for (_, place), row in table(tmp_path).items() if place.isdigit()}}
    wanted = measures_csv(measures_rows(job.openings, planned, units=job.units)).decode("utf-8-sig").splitlines()
    found = (tmp_path / "measures.csv").read_text(encoding="utf-8-sig").splitlines()
    # nobody said of the finish whether it is on, and the sheet then says what is assumed
    assert [line for line in found if ",wall finish" not in line] == [
        one for one in wanted if ",wall finish" not in one
    ]


def test_the_same_reading_sent_twice_is_written_once(measuring: Measuring, tmp_path: Path) -> None:
    measuring.take(entry(1, "3 3/8"))
    measuring.take(entry(1, "3 7/16", was="3 3/8"))
    measuring.take(entry(1, "3 3/8"))
    assert table(tmp_path)["W1", "1"][4] == "3 7/16"


def test_a_reading_does_not_go_over_one_that_its_telephone_has_not_seen(measuring: Measuring, tmp_path: Path) -> None:
    measuring.take(entry(1, "3 3/8"))
    with pytest.raises(ReadOtherwise) as told:
        measuring.take(entry(1, "3 9/16", by="Bert"))
    assert (told.value.there, told.value.by) == ("3 3/8", "Ann")
    assert table(tmp_path)["W1", "1"][4] == "3 3/8"
    measuring.take(entry(1, "3 3/8", by="Bert"))
    measuring.take(entry(1, "3 9/16", was='3 3/8"', by="Bert"))
    assert table(tmp_path)["W1", "1"][4] == "3 9/16" and table(tmp_path)["W1", "by"][4] == "Bert"


def test_an_odd_reading_is_asked_about_until_it_is_said_to_be_right(measuring: Measuring, tmp_path: Path) -> None:
    for place, text in {**CORNERS, 5: "4 5/8"}.items():
        answer = measuring.take(entry(place, text))
    assert answer["state"] == "to check" and [one["place"] for one in answer["questions"]] == [5]
    assert 'reads 4 5/8"' in answer["questions"][0]["text"] and answer["boards"] == []
    answer = measuring.take(entry(5, "4 5/8", was="4 5/8", sure=True))
    assert answer["questions"] == [] and table(tmp_path)["W1", "5"][5] == "yes"
    measuring.take(entry(5, "3 5/8", was="4 5/8"))
    assert table(tmp_path)["W1", "5"][4:] == ["3 5/8", ""]


def test_a_day_never_goes_back(measuring: Measuring, tmp_path: Path) -> None:
    measuring.take(entry(1, "3 3/8", day="2026-06-03"))
    measuring.take(entry(3, "3 3/8", day="2026-06-01"))
    assert table(tmp_path)["W1", "date"][4] == "2026-06-03"


@pytest.mark.parametrize(
    ("one", "said"),
    [
        (entry(1, "3 3/17"), "a tape is divided"),
        (entry(1, "44"), "44"),
        (entry(99, "2"), "W1 has no place 99."),
        (entry(1, "2", mark="W9"), "There is no opening W9"),
        (entry(1, "2", day="yesterday"), "yesterday"),
        (entry(23, "maybe"), "Say yes or no"),
    ],
)
def test_what_cannot_be_read_is_not_written(one: SentReading, said: str, measuring: Measuring, tmp_path: Path) -> None:
    before = (tmp_path / "job.yaml").read_bytes()
    with pytest.raises(NotTaken) as told:
        measuring.take(one)
    assert said in str(told.value)
    assert (tmp_path / "job.yaml").read_bytes() == before and not (tmp_path / "measures.csv").exists()


def test_a_telephone_with_another_clock_may_be_a_day_ahead_and_no_more(measuring: Measuring, tmp_path: Path) -> None:
    with pytest.raises(NotTaken, match="2026-06-05 is not yet"):
        measuring.take(entry(1, "3 3/8", day="2026-06-05"))
    measuring.take(entry(1, "3 3/8", day="2026-06-04"))
    assert table(tmp_path)["W1", "date"][4] == "2026-06-04"


def test_what_the_desk_has_not_saved_yet_and_what_a_telephone_reads_are_both_kept(tmp_path: Path) -> None:
    (tmp_path / "job.yaml").write_text((EXAMPLES / "garden-studio" / "job.yaml").read_text())
    desk = Desk(file=tmp_path / "job.yaml", target=tmp_path / "output")
    desk.change("a sill lower", [SetValue(path=("openings", 0, "sill_height"), value="28")])
    Measuring(desk).take(entry(1, "3 3/8"))
    desk.save()  # the line that names the table is no conflict
    text = (tmp_path / "job.yaml").read_text()
    assert "measures: measures.csv\n" in text and "sill_height: 28}" in text
    assert table(tmp_path)["W1", "1"][4] == "3 3/8"
    desk.close()


def test_a_name_that_starts_a_formula_starts_none(measuring: Measuring, tmp_path: Path) -> None:
    answer = measuring.take(entry(1, "3 3/8", by="=1+1 \n x"))
    assert table(tmp_path)["W1", "by"][4] == "'=1+1 x"
    assert answer["by"] == "=1+1 x"


def test_readings_of_the_job_file_are_left_alone(tmp_path: Path) -> None:
    depths = "{head_left: 3 3/8, head_right: 3 1/2, sill_left: 3 1/2, sill_right: 3 1/2}"
    measured = f"sill_height: 30, measured: {{date: 2026-05-01, interior_depth: {depths}}}}}"
    text = (EXAMPLES / "garden-studio" / "job.yaml").read_text().replace("sill_height: 30}", measured)
    (tmp_path / "job.yaml").write_text(text)
    found = Measuring(Desk(file=tmp_path / "job.yaml", target=tmp_path / "output"))
    with pytest.raises(NotTaken, match=r"The readings of W1 stand in job\.yaml, line 48, and"):
        found.take(entry(1, "3 3/8"))
    assert (tmp_path / "job.yaml").read_text() == text
    assert found.rows() == [{"mark": "W1", "room": "Studio", "state": "measured"}]


def test_a_table_in_a_spreadsheet_is_filled_in_too(tmp_path: Path) -> None:
    text = (EXAMPLES / "garden-studio" / "job.yaml").read_text()
    (tmp_path / "job.yaml").write_text(text.replace("units: inch\n", "units: inch\nmeasures: site.xlsx\n"))
    rows = measures_rows(read_job(EXAMPLES / "garden-studio").openings, {}, units=Units.INCH)
    (tmp_path / "site.xlsx").write_bytes(measures_xlsx(rows))
    found = Measuring(Desk(file=tmp_path / "job.yaml", target=tmp_path / "output"))
    for place, reading in CORNERS.items():
        answer = found.take(entry(place, reading))
    assert answer["state"] == "measured"
    readings = read_job(tmp_path).openings[0].readings
    assert readings and readings.by == "Ann" and readings.interior_depth
    assert readings.interior_depth.head == (3.375, None, 3.5)


def test_many_telephones_and_an_editor_lose_nothing(measuring: Measuring, tmp_path: Path) -> None:
    """Three telephones read at once; meanwhile somebody adds a comment to the job file."""
    measuring.take(entry(1, "3 3/8"))
    places = [place for place in range(2, 9)]

    def read(some: list[int]) -> None:
        for place in some:
            while True:
                try:
                    measuring.take(entry(place, "3 1/2"))
                    break
                except JobFaults:  # the editor has half the file on the disk; a telephone waits and sends it again
                    continue

    telephones = [threading.Thread(target=read, args=(places[at::3],)) for at in range(3)]
    for one in telephones:
        one.start()
    job = FileText(name="job.yaml", content=(tmp_path / "job.yaml").read_bytes())
    (tmp_path / "job.yaml").write_bytes(job.content + b"# seen\n")
    for one in telephones:
        one.join()
    rows = table(tmp_path)
    assert all(rows["W1", str(place)][4] for place in range(1, 9))
    assert (tmp_path / "job.yaml").read_text().endswith("# seen\n")


def test_a_reading_of_an_opening_that_has_other_places_now_goes_to_its_own_row(
    measuring: Measuring, tmp_path: Path
) -> None:
    """Frame width stood under number 9, which a taller frame has at its leg."""
    measuring.take(entry(9, "24"))
    text = (tmp_path / "job.yaml").read_text()
    (tmp_path / "job.yaml").write_text(text.replace("frame: 24 x 36", "frame: 24 x 70"))
    answer = measuring.take(entry(9, "3 5/8"))
    assert answer["read"]["9"] == "3 5/8" and answer["read"]["11"] == "24"
    assert table(tmp_path)["W1", "11"][2] == "frame width at the head"
    assert table(tmp_path)["W1", "9"][2:] == [
        "interior depth, left leg, 1 of 3 steps from bottom",
        '3 1/2"',
        "3 5/8",
        "",
    ]


@pytest.mark.parametrize(
    ("read", "how", "told"),
    [
        ({}, "straight: rip parallel", ""),
        ({1: "3 3/8"}, 'taper 1/8"', '1/8" out of one plane (twist): expect to ease the corners of the casing'),
        ({8: "3 7/16"}, "straight: rip parallel", ""),  # 1/16 off: the tolerance of the shop
        (
            {8: "3 3/8"},
            'hollow 1/8": leave the width on and scribe',
            'along the left leg: 1/8" off a straight edge',
        ),  # more than that, and as much as is scribed
        ({8: "3 5/8"}, 'bulge 1/8": leave the width on and scribe', 'along the left leg: 1/8" off a straight edge'),
        ({8: "3 1/4"}, 'hollow 1/4": fur the wall out', "is hollow along the left leg: 1/4"),
        ({8: "3 3/4"}, 'bulge 1/4": plane the wall down', "bulges into the room along the left leg: 1/4"),
        ({1: "3 1/4", 5: "3 1/4", 3: "3 3/4", 7: "3 3/4"}, 'taper 1/2"', "Wall fault: the four corners are 1"),
    ],
)
def test_the_answer_says_how_the_room_edge_of_a_leg_is_made(
    read: dict[int, str], how: str, told: str, measuring: Measuring
) -> None:
    """Places 1 and 7 are the ends of the left leg, 8 is its middle; all others read 3 1/2."""
    for place, text in ({1: "3 1/2", 3: "3 1/2", 5: "3 1/2", 7: "3 1/2"} | read).items():
        answer = measuring.take(entry(place, text, sure=True))
    (left,) = [board for board in answer["boards"] if board["words"] == "left leg"]
    assert left["how"].startswith(how), left["how"]
    said = " ".join(answer["told"])
    assert told in said and (told or not said)


def test_two_reasons_why_a_window_cannot_stand_as_read_are_two_sentences(measuring: Measuring) -> None:
    for place in (1, 3, 5, 7):
        answer = measuring.take(entry(place, "-1/16", sure=True))
    (said,) = [one for one in answer["told"] if one.startswith("As read the window stands")]
    assert "change its position. The frame would stand" in said


def test_a_reading_sent_again_after_its_opening_got_another_mark_is_said_to_be_written(
    measuring: Measuring, tmp_path: Path
) -> None:
    """The answer was lost on the way, and somebody at the desk renamed the opening before it was sent once more."""
    measuring.take(entry(1, "3 3/8"))
    for name in ("job.yaml", "measures.csv"):
        text = (tmp_path / name).read_text(encoding="utf-8-sig")
        (tmp_path / name).write_text(text.replace("mark: W1", "mark: K1").replace("W1,", "K1,"))
    before = (tmp_path / "measures.csv").read_text()
    with pytest.raises(Changed, match="It was written down; W1 is no longer in the job by that mark since"):
        measuring.take(entry(1, "3 3/8"))
    with pytest.raises(Changed, match="There is no opening W1 in this job any more"):
        measuring.take(entry(3, "3 1/2"))
    assert (tmp_path / "measures.csv").read_text() == before and "K1,1," in before
