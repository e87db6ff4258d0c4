"""The papers of the outside, read back from the printed PDF and from the CSV: the same figures as the plans have."""

from __future__ import annotations

import csv
import io
import re
from dataclasses import replace

import pytest
from cases import changed, job_of, kit_of
from metal import lined
from outside_houses import HOUSES, house, planned
from paper import collisions, runs, words

from jambs.app.outside_papers import _blank_papers, _laps_papers, _picture
from jambs.courses.plan_words import cure_words, proof_words
from jambs.courses.pole_words import datum_words, mark_words, running_text
from jambs.courses.story_pole import story_pole
from jambs.drawings.course_elevation import course_elevation
from jambs.fasten.furring_words import EDITION
from jambs.flashing.make import blank_list, make_flashings
from jambs.length import Units, read_length
from jambs.movement.joint_words import joint_words
from jambs.outside.register import Register
from jambs.sheets.course_sheets import ROOM, ElevationPaper, _missed, course_data
from jambs.sheets.fastener_sheets import fastener_data, fasteners_csv
from jambs.sheets.flashing_sheets import blanks_csv, flashing_data
from jambs.sheets.labels import label_data
from jambs.sheets.movement_sheets import _runs, movement_data
from jambs.sheets.press import press
from jambs.sheets.record import job_record

EACH = pytest.mark.parametrize("name", HOUSES)


def courses_pdf(name: str) -> bytes:
    job, _, outside = house(name)
    papers = [
        ElevationPaper(plan=plan, picture=_picture(course_elevation(plan), job, *ROOM[job.shop.paper]))
        for plan in outside.courses
    ]
    return press("courses", course_data(papers, planned(name)[1].register, job))


def flashing_pdf(name: str) -> bytes:
    job, kits, outside = house(name)
    blanks, laps = _blank_papers(outside.flashings, job), _laps_papers(outside.flashings, kits, job)
    return press("flashing", flashing_data(outside.flashings, blanks, laps, planned(name)[1].register, job))


def fasteners_pdf(name: str) -> bytes:
    job, _, outside = house(name)
    return press("fasteners", fastener_data(outside.fasteners, planned(name)[1].register, job))


def movement_pdf(name: str) -> bytes:
    job, _, outside = house(name)
    assert job.outside.climate is not None
    return press("movement", movement_data(outside.movements, job.outside.climate, planned(name)[1].register, job))


@EACH
@pytest.mark.parametrize("pdf", [courses_pdf, flashing_pdf, fasteners_pdf, movement_pdf])
def test_no_text_lies_on_another(name: str, pdf: object) -> None:
    assert callable(pdf)
    assert collisions(runs(pdf(name))) == []


@EACH
def test_every_mark_of_the_story_poles_is_printed_in_order(name: str) -> None:
    job, _, outside = house(name)
    text = words(courses_pdf(name))
    for plan in outside.courses:
        pole = story_pole(plan)
        start = text.index(f"Story pole {plan.elevation.name}:")
        for mark in pole.marks:
            line = f"{running_text(mark, pole.grid)} {mark_words(mark, pole.grid)}"
            assert line in text[start:], line
            start = text.index(line, start)
            assert read_length(running_text(mark, pole.grid), units=job.units) == pytest.approx(mark.running, abs=1e-9)
        assert datum_words(pole) in text and proof_words(plan) in text


@EACH
def test_missed_lines_are_named_with_their_cure(name: str) -> None:
    text = words(courses_pdf(name))
    for plan in house(name)[2].courses:
        for missed in plan.missed:
            assert cure_words(missed, plan.grid) in text
        assert all(finding.sentence(Units.INCH) in text for finding in plan.findings)


@EACH
def test_a_blank_has_one_girth_and_its_bends_add_up_to_it(name: str) -> None:
    """What is drawn is marked out on the shop's grid: every leg is the nearest, no leg takes what others leave over."""
    job, _, outside = house(name)
    grid = job.shop.grid
    for blank in (blank for made in outside.flashings for blank in made.blanks):
        marked = blank.on(grid)
        for exact, leg in zip(blank.legs, marked.legs, strict=True):
            assert grid.holds(leg.width) and abs(leg.width - exact.width) <= grid.step / 2 + 1e-9
        assert marked.girth == pytest.approx(sum(leg.width for leg in marked.legs), abs=1e-9)
        assert [bend.turn_deg for bend in marked.bends] == [bend.turn_deg for bend in blank.bends]
    text = words(flashing_pdf(name))
    for made in outside.flashings:
        for blank in made.blanks:
            assert text.count(grid.text(blank.on(grid).girth)) >= 2  # to cut, and beside the drawing


@EACH
def test_the_cut_list_holds_every_blank_once(name: str) -> None:
    """As many blanks as the openings have, each as wide as its legs are marked out and long enough for its dams."""
    job, _, outside = house(name)
    rows = list(csv.DictReader(io.StringIO(blanks_csv(outside.flashings, job.shop.grid, job.units))))
    unit = "in" if job.units == "inch" else "mm"
    blanks = [blank for made in outside.flashings for blank in made.blanks]
    assert sum(int(row["count"]) for row in rows) == len(blanks)
    for blank in blanks:
        (row,) = (each for each in rows if each["blank"] == blank.name and blank.mark in each["openings"].split())
        factor = 1.0 if unit == "in" else 25.4
        assert float(row[f"girth [{unit}]"]) == pytest.approx(blank.on(job.shop.grid).girth * factor, abs=1e-6)
        over = float(row[f"length [{unit}]"]) - blank.length * factor
        assert -1e-6 <= over < job.shop.grid.step * factor + 1e-6
    text = words(flashing_pdf(name))
    for one in blank_list(outside.flashings, job.shop.grid):
        assert f"{one.name} {job.shop.grid.text(one.girth)} {job.shop.grid.text(one.length)}" in text
    for lap in (lap for made in outside.flashings for lap in made.laps):
        assert f"{lap.step.what}: {lap.step.over(job.units)}" in text


@EACH
def test_fasteners_add_up(name: str) -> None:
    """The counts of the places on paper add up to those of the house, kind by kind and length by length."""
    job, _, outside = house(name)
    data = fastener_data(outside.fasteners, planned(name)[1].register, job)
    counts: dict[tuple[str, str], int] = {}
    for line in data["lines"]:
        for place in line["places"]:
            found = re.search(r"\d+", place["count"])
            assert found is not None
            key = (line["fastener"], line["length"])
            counts[key] = counts.get(key, 0) + int(found[0])
    said = {(row["fastener"], row["length"]): int(row["count"].removeprefix("about ")) for row in data["house"]}
    assert said == counts
    rows = list(csv.DictReader(io.StringIO(fasteners_csv(outside.fasteners, job.units))))
    assert len(rows) == len(outside.fasteners)
    assert sum(int(row["count"]) for row in rows) == sum(counts.values())


def test_a_missed_line_under_three_feet_is_told_in_the_style_of_the_pole() -> None:
    plan = next(plan for plan in house(HOUSES[0])[2].courses if plan.missed)
    missed = plan.missed[0]
    low = replace(missed, wanted=replace(missed.wanted, height=plan.elevation.start_line + 20.0))
    assert _missed(plan, low)["running"] == "1'-8\""


@EACH
def test_what_is_gone_through_adds_up_to_the_length(name: str) -> None:
    """The row names every thickness and ends with how far the length sold reaches, which the sheet says below."""
    outside = house(name)[2]
    for line in outside.fasteners:
        reached = sum(one.thickness for one in line.through) + line.penetration
        assert reached == pytest.approx(line.needed if line.length is None else line.length, abs=1e-9)
    assert "into the framing: as far as that length reaches" in words(fasteners_pdf(name))


@EACH
def test_the_edition_stands_there_and_who_decides(name: str) -> None:
    text = words(fasteners_pdf(name))
    assert EDITION in text and "the local code decides" in EDITION
    assert "needs design" in text


@EACH
def test_boards_that_move_stand_in_the_order_of_their_width_and_joints_are_told_once(name: str) -> None:
    """By width, not by letters: 4 23/32, 4 3/4, 4 25/32."""
    job, _, outside = house(name)
    assert job.outside.climate is not None
    data = movement_data(outside.movements, job.outside.climate, planned(name)[1].register, job)
    found = [(one["name"], read_length(one["width"], units=job.units)) for one in data["boards"]]
    assert found == sorted(found)
    told = [(one["name"], one["words"]) for one in data["joints"]]
    assert len(told) == len(set(told))


@EACH
def test_boards_that_move_are_called_as_on_their_labels(name: str) -> None:
    job, _, outside = house(name)
    assert job.outside.climate is not None
    data = movement_data(outside.movements, job.outside.climate, planned(name)[1].register, job)
    records = job_record(planned(name)[1].kits, job)["openings"]
    labels = {
        part["mark"]: label_data(part, room="", is_planned=False)["name"] for one in records for part in one["parts"]
    }
    rows = [(mark, one["name"]) for one in data["boards"] for mark in one["marks"]]
    assert rows and [(mark, labels[mark].partition(",")[0]) for mark, _ in rows] == rows


def test_wood_that_moves_says_the_moisture_of_the_handbook() -> None:
    """70 °F and 30 %: 6.2 % in Wood Handbook (FPL-GTR-190) table 4-2; 30 °F and 80 %: 16.5 %."""
    text = words(movement_pdf("harbour-house"))
    assert "inside, winter 70 °F, 30 % 6.2 %" in text
    assert "outside, winter 30 °F, 80 % 16.5 %" in text
    for one in house("harbour-house")[2].movements:
        for joint in one.joints:
            assert joint_words(joint, Units.INCH) in text


def test_an_opening_with_two_blanks_alike_is_named_once_beside_their_count() -> None:
    """Both sides of an opening lined with bent metal are cut alike: a count of 2, its mark once in list and table."""
    job = job_of(changed(exterior_trim__outside=lined()))
    made = make_flashings(kit_of(exterior_trim__outside=lined()), None, job.units)
    rows = list(csv.DictReader(io.StringIO(blanks_csv([made], job.shop.grid, job.units))))
    sides = [(row["count"], row["openings"]) for row in rows if row["blank"] == "side return"]
    assert sides == [("2", "W1")]
    papers = _blank_papers([made], job)
    headed = {one["name"]: one["marks"] for one in flashing_data([made], papers, [], Register(), job)["blanks"]}
    assert headed["side return"] == ["W1"]


def test_boards_that_move_alike_are_told_by_their_ends_where_they_are_in_a_row() -> None:
    """Members of a jamb with panels have letters, and stay."""
    assert _runs(["W2-1", "W1-4", "W1-3", "W1-2", "W2-3b", "W2-2"]) == "W1-2 to W1-4, W2-1, W2-2, W2-3b"
    assert _runs(["W2-3a"]) == "W2-3a"
