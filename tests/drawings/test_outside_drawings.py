"""Story poles, elevations, bends and laps: read back from their files, and looked at for what touches what."""

from __future__ import annotations

import re
from pathlib import Path

import dxfgrabber
import pytest
from collisions import collisions, crossings
from ezdxf.filemanagement import readfile
from outside_houses import ELEVATIONS, HOUSES, house
from samples import ISSUE

from jambs.courses.plan import CoursePlan
from jambs.courses.plan_words import cure_words, proof_words
from jambs.courses.pole_words import datum_words, mark_words, running_text
from jambs.courses.story_pole import story_pole
from jambs.drawings.course_elevation import course_elevation, write_course_elevation
from jambs.drawings.elements.view import Ink
from jambs.drawings.plates import HALF, fitted, plate_picture, write_plate
from jambs.drawings.poles import pole_view, write_story_pole
from jambs.drawings.views.bends import bend_words, bent_view, flat_view
from jambs.drawings.views.laps import laps_view
from jambs.flashing.blank import Bend, Blank
from jambs.flashing.make import Flashings
from jambs.length import MM_PER_INCH, Units, read_length

TINY = 1e-6
"""Of a coordinate in the file [drawing units]."""
EACH = pytest.mark.parametrize(("name", "side"), ELEVATIONS)


def plan_of(name: str, side: str) -> CoursePlan:
    return next(plan for plan in house(name)[2].courses if plan.elevation.name == side)


def unit(units: Units) -> float:
    return 1.0 if units is Units.INCH else MM_PER_INCH


def level_lines(path: Path, layer: str) -> list[tuple[float, float, float]]:
    """Left end, right end and height of the level lines of a layer, by a reader that shares no code with the writer."""
    found = []
    for one in dxfgrabber.readfile(str(path)).modelspace():
        if one.dxftype == "LWPOLYLINE" and one.layer == layer:
            (x0, y0), (x1, y1) = one.points
            assert y0 == pytest.approx(y1, abs=TINY)
            found.append((min(x0, x1), max(x0, x1), y0))
    return sorted(found, key=lambda line: (line[2], line[0]))


def texts(path: Path) -> list[str]:
    return [one.text for one in dxfgrabber.readfile(str(path)).modelspace() if one.dxftype == "TEXT"]


def assert_sound(path: Path) -> None:
    auditor = readfile(path).audit()
    assert ([str(one) for one in auditor.errors], [str(one) for one in auditor.fixes]) == ([], [])


@EACH
def test_marks_of_a_story_pole_read_back_are_the_list(name: str, side: str, tmp_path: Path) -> None:
    """Full scale: a mark's height in the file is its running height, and the text beside it reads as that height."""
    plan, path = plan_of(name, side), tmp_path / "pole.dxf"
    pole, units = story_pole(plan), plan.grid.units
    write_story_pole(pole, units=units, path=path, issue=ISSUE)
    assert_sound(path)
    for layer, is_course in (("COURSES", True), ("COURSES-MISSED", False)):
        wanted = [mark.running * unit(units) for mark in pole.marks if mark.is_course is is_course]
        assert [line[2] for line in level_lines(path, layer)] == pytest.approx(wanted, abs=TINY)
    said = sorted(texts(path))
    foot = [f"{side}: 0 = {datum_words(pole)}", ISSUE.plain]
    assert said == sorted(
        [f"{running_text(one, pole.grid)}  {mark_words(one, pole.grid)}" for one in pole.marks] + foot
    )
    assert dict(readfile(path).header.custom_vars.properties) == ISSUE.fields
    for mark in pole.marks:
        assert read_length(running_text(mark, pole.grid), units=units) == pytest.approx(mark.running, abs=1e-9)
    assert readfile(path).header["$INSUNITS"] == (1 if units is Units.INCH else 4)


@EACH
def test_nothing_touches_on_a_story_pole(name: str, side: str) -> None:
    plan = plan_of(name, side)
    assert collisions(pole_view(story_pole(plan), scale=HALF[plan.grid.units][0])) == []


def lengths_by_height(lines: list[tuple[float, float, float]]) -> dict[int, float]:
    """Add up how much of each line is drawn, by its height in hundredths."""
    found: dict[int, float] = {}
    for left, right, height in lines:
        found[round(height * 100)] = found.get(round(height * 100), 0.0) + right - left
    return found


@EACH
def test_course_lines_read_back_stop_at_the_trim(name: str, side: str, tmp_path: Path) -> None:
    """By hand: a course line is as long as the wall less the widths of the trim it would run through."""
    plan, path = plan_of(name, side), tmp_path / "elevation.dxf"
    write_course_elevation(plan, path, issue=ISSUE)
    assert_sound(path)
    elevation, factor = plan.elevation, unit(plan.grid.units)
    assert elevation.width is not None
    wanted = {
        round(line.height * factor * 100): factor
        * (
            elevation.width
            - sum(one.trim[2] - one.trim[0] for one in elevation.openings if one.trim[1] < line.height < one.trim[3])
        )
        for line in plan.lines[1:-1]
    }
    found = lengths_by_height(level_lines(path, "COURSES"))
    assert found.keys() == wanted.keys()
    for height, length in wanted.items():
        assert found[height] == pytest.approx(length, abs=1e-4)
    missed = [line[2] / factor for line in level_lines(path, "COURSES-MISSED")]
    assert missed == pytest.approx(sorted(one.wanted.height for one in plan.missed), abs=TINY)


@EACH
def test_an_elevation_names_its_openings_and_every_missed_line_with_its_cure(
    name: str, side: str, tmp_path: Path
) -> None:
    plan, path = plan_of(name, side), tmp_path / "elevation.dxf"
    write_course_elevation(plan, path, issue=ISSUE)
    said = " ".join(texts(path))
    for one in plan.elevation.openings:
        assert one.mark in said
    assert plan.missed
    for missed in plan.missed:
        assert f"{missed.wanted.words} missed" in said
        assert cure_words(missed, plan.grid) in said
    assert proof_words(plan) in said


@EACH
def test_where_frames_stand_is_dimensioned_from_the_corner(name: str, side: str) -> None:
    """The row adds up to the width of the wall; every frame's width is in it."""
    plan = plan_of(name, side)
    view = course_elevation(plan)
    assert view.brief().chains == view.chains  # on the printed sheet, too: who has no CAD has no other
    placed = fitted(view, units=plan.grid.units, width=10.0, height=6.5)
    rows: dict[float, list[float]] = {}
    for one in placed.dimensions:
        rows.setdefault(one.line[0][1], []).append(one.value)
    assert {round(sum(row), 6) for row in rows.values()} == {round(plan.elevation.width or 0.0, 6)}
    values = [value for row in rows.values() for value in row]
    for opening in plan.elevation.openings:
        assert any(value == pytest.approx(opening.frame[2] - opening.frame[0]) for value in values), opening.mark


@EACH
def test_every_height_is_called_out_in_one_style_and_every_missed_one_once(name: str, side: str) -> None:
    plan = plan_of(name, side)
    called = course_elevation(plan).call_outs
    missed = [one for one in called if "missed" in one.lines[0]]
    assert len(missed) == len({one.wanted.height for one in plan.missed})
    heights = [one.lines[0].split(",")[0] for one in called if "top of" in one.lines[0]]
    assert heights
    assert all(
        re.fullmatch(r"\d+'-\d[\d /]*\"" if plan.grid.units is Units.INCH else r"[\d.]+ mm", one) for one in heights
    )


@EACH
def test_the_mark_of_an_opening_stands_in_it(name: str, side: str) -> None:
    plan = plan_of(name, side)
    placed = fitted(course_elevation(plan).brief(), units=plan.grid.units, width=10.0, height=5.0)
    for one in plan.elevation.openings:
        (text,) = (text for text in placed.texts if text.lines == (one.mark,))
        left, bottom, right, top = one.frame
        assert left < text.at[0] < right and bottom < text.at[1] < top, one.mark


@EACH
def test_nothing_touches_on_an_elevation(name: str, side: str) -> None:
    plan = plan_of(name, side)
    for view in (course_elevation(plan), course_elevation(plan).brief()):
        assert collisions(fitted(view, units=plan.grid.units, width=10.0, height=6.5)) == []


BLANKS = [(name, one, blank) for name in HOUSES for one in house(name)[2].flashings for blank in one.blanks]


@pytest.mark.parametrize(("name", "one", "blank"), BLANKS, ids=lambda value: getattr(value, "mark", str(value)))
def test_nothing_touches_on_a_blank(name: str, one: Flashings, blank: Blank) -> None:
    units = house(name)[0].units
    for view, width in ((bent_view(blank, units=units), 3.0), (flat_view(blank, units=units), 4.3)):
        placed = fitted(view.brief(), units=units, width=width, height=2.0)
        assert collisions(placed) == []
        assert crossings(placed) == []
        assert placed.paper_width <= width and placed.paper_height <= 2.0


def test_a_flat_blank_is_as_high_as_its_legs_together(tmp_path: Path) -> None:
    """The head flashing of W01 by hand: 3 + √(1 + 0.1²) + 1/2 + √2/4 + 3/8."""
    (blank,) = (one for one in house("harbour-house")[2].flashings[0].blanks if one.name == "head flashing")
    girth = 3 + (1 + 0.1**2) ** 0.5 + 0.5 + 2**0.5 / 4 + 0.375
    placed = fitted(flat_view(blank, units=Units.INCH), units=Units.INCH, width=4.3, height=2.0)
    assert [one.value for one in placed.dimensions] == pytest.approx([girth], abs=1e-9)
    write_plate([placed], units=Units.INCH, path=tmp_path / "blank.dxf", issue=ISSUE)
    assert_sound(tmp_path / "blank.dxf")
    lines = level_lines_of_blank(tmp_path / "blank.dxf")
    assert lines == pytest.approx([-3, -4.004988, -4.504988, -4.858541], abs=1e-5)


def level_lines_of_blank(path: Path) -> list[float]:
    return [line[2] for line in level_lines(path, "HIDDEN")][::-1]


@pytest.mark.parametrize(
    ("turn", "words"),
    [(84.3, "84.3° toward you"), (-84.3, "84.3° away"), (180.0, "fold flat, back"), (45.0, "45° toward you")],
)
def test_how_a_bend_is_said(turn: float, words: str) -> None:
    assert bend_words(Bend(at=1.0, turn_deg=turn)) == words


LAPS = [(name, one) for name in HOUSES for one in house(name)[2].flashings]


@pytest.mark.parametrize(("name", "one"), LAPS, ids=lambda value: getattr(value, "mark", str(value)))
def test_every_lap_has_its_number_on_the_drawing_and_nothing_touches(name: str, one: Flashings) -> None:
    job, kits, _ = house(name)
    view = laps_view(next(kit for kit in kits if kit.mark == one.mark), one, job)
    placed = fitted(view.brief(), units=job.units, width=4.6, height=4.2)
    said = [line for text in placed.texts for line in text.lines]
    assert sorted(said) == sorted(f"{lap.number}  {lap.step.what}" for lap in one.laps)
    assert collisions(placed) == []
    assert crossings(placed) == []
    assert placed.paper_width <= 4.6 and placed.paper_height <= 4.4


def test_head_and_sill_stand_two_and_a_half_apart() -> None:
    """The glass ends 2 1/2 over the one of the sill section; the head section of W01 is wholly above that."""
    job, kits, outside = house("harbour-house")
    view = laps_view(kits[0], outside.flashings[0], job)
    glass = sorted(
        (min(y for _, y in one.points), max(y for _, y in one.points)) for one in view.shapes if one.ink is Ink.GLASS
    )
    ends = [(low, high) for low, high in glass if high > low]
    lower, upper = max(high for _, high in ends[: len(ends) // 2]), min(low for low, _ in ends[len(ends) // 2 :])
    assert upper - lower == pytest.approx(2.5, abs=1e-9)


def test_a_picture_has_the_size_it_says() -> None:
    """The wall of the west side is 360 in: at 3/16" = 1'-0" 5 5/8 in on paper, read off the picture's own border."""
    drawn = plate_picture(course_elevation(plan_of("harbour-house", "west")), units=Units.INCH, width=10, height=5)
    assert drawn.scale == '3/16" = 1\'-0"'
    placed = fitted(course_elevation(plan_of("harbour-house", "west")).brief(), units=Units.INCH, width=10, height=5)
    width = float(re.search(r'width="([\d.]+)mm"', drawn.svg)[1])  # type: ignore[index]
    beside = (placed.box.width - 360) / 64
    assert width / MM_PER_INCH - beside == pytest.approx(5.625, abs=0.01)
