"""Plans of courses: a published worked example, by hand, and what is said of missed lines."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from houses_outside import SHINGLES, elevation, elevation_entry, harbour_house, opening, plan
from said import sentences

from jambs.courses.cladding import CourseError
from jambs.courses.course_search import STATES, best_ladder, is_too_large
from jambs.courses.plan import CoursePlan, plan_elevation
from jambs.courses.plan_words import cure_words, start_cure_words
from jambs.courses.task import Target, Task
from jambs.length import GRIDS, MM_PER_INCH, Units


def between(found: CoursePlan, low: float, high: float) -> list[float]:
    return [line.exposure or 0.0 for line in found.lines if low < line.running <= high]


def test_worked_example_of_a_training_manual() -> None:
    """Naval training manual NAVEDTRA 14044, chapter 4: 12 in siding, 31 in up to the sill, 61 in on to the drip cap.

    It divides 61 by the 10 in that such siding should show, takes six courses of 10 1/6, and three of 10 1/3 below.
    """
    boards = {"kind": "clapboards", "widths": ["12"], "least_lap": "1", "greatest_lap": "3", "wanted_exposure": "10"}
    found = plan(elevation(opening("W01", 31.0, 92.0), eave=92.0), boards)
    assert not found.missed
    below, beside = between(found, 0, 31), between(found, 31, 92)
    assert (len(below), len(beside)) == (3, 6)
    assert sum(below) / 3 == pytest.approx(float(Fraction(31, 3)), abs=1e-9)
    assert sum(beside) / 6 == pytest.approx(float(Fraction(61, 6)), abs=1e-9)


def test_one_exposure_where_it_divides_evenly() -> None:
    """Sill 35 up, head 84 up, eave 112: multiples of 7 by hand, so sixteen courses of 7."""
    found = plan(elevation(opening("W01", 35.0, 84.0), eave=112.0), SHINGLES)
    assert [line.exposure for line in found.lines[1:]] == [7.0] * 16
    assert [tuple(wanted.words for wanted in line.meets) for line in found.lines if line.meets] == [
        ("W01 sill",),
        ("W01 head",),
        ("eave",),
    ]
    assert found.greatest_change == 0
    assert not found.missed and not found.start_move


def test_the_least_and_the_greatest_exposure_of_a_plan_are_those_of_its_courses() -> None:
    """Boards that show 5 or 6 in, a sill at 11 and an eave at 21: one of 6 and one of 5 below, two of 5 above."""
    boards = {"kind": "boards", "widths": ["5 1/2", "6 1/2"], "least_lap": "1/2", "greatest_change": "1"}
    found = plan(elevation(opening("W01", 11.0, 16.0), eave=21.0), boards)
    assert not found.missed
    assert sorted(line.exposure or 0.0 for line in found.lines[1:]) == [5.0, 5.0, 5.0, 6.0]
    assert (found.least, found.greatest, found.greatest_change) == (5.0, 6.0, 1.0)


def test_lines_and_exposures_add_up() -> None:
    job, kits = harbour_house()
    for side in ("north", "east", "south", "west"):
        found = plan_elevation(side, elevation_entry(faces=side), kits, job)
        assert found.lines[0].height == found.elevation.start_line
        assert found.lines[-1].height == pytest.approx(found.elevation.eave, abs=1e-9)
        total = sum(line.exposure or 0.0 for line in found.lines)
        assert total == pytest.approx(found.elevation.eave - found.elevation.start_line, abs=1e-9)
        for line in found.lines:
            for wanted in line.meets:
                assert line.height == pytest.approx(wanted.height, abs=found.grid.step / 2 + 1e-9)
        assert 5 <= found.least <= found.greatest <= 8.5


def test_fixed_boards_miss_and_say_by_how_much_and_what_cures_it() -> None:
    """Boards that show 5 in only: lines at multiples of 5, by hand. A sill at 31 is missed by 1, a head at 85 met."""
    boards = {"kind": "boards", "widths": ["5 1/2"], "least_lap": "1/2"}
    found = plan(elevation(opening("W01", 31.0, 85.0), eave=105.0), boards)
    assert [one.wanted.words for one in found.missed] == ["W01 sill"]
    assert found.missed[0].off == -1.0
    assert cure_words(found.missed[0], found.grid) == 'the sill down by 1"'
    assert found.start_move is None
    assert found.findings[0].sentence(Units.INCH) == "Full course lines miss W01 sill."


def test_moving_the_start_line_cures_all() -> None:
    """Boards that show 5 in: sill 31, head 86, eave 106 are all 1 past a multiple of 5."""
    boards = {"kind": "boards", "widths": ["5 1/2"], "least_lap": "1/2"}
    place = elevation(opening("W01", 31.0, 86.0), eave=106.0)
    found = plan(place, boards)
    assert start_cure_words(found) == 'move the start line up by 1": all lines are met'
    assert not plan(replace(place, start_line=1.0), boards).missed


def test_a_cut_course_under_the_eave() -> None:
    """Boards that show 5 in only, 109 to cover: twenty-one whole courses and one that shows 4, by hand."""
    boards = {"kind": "boards", "widths": ["5 1/2"], "least_lap": "1/2"}
    found = plan(elevation(eave=109.0), boards)
    assert (found.courses, found.lines[-1].exposure, found.lines[-1].is_cut) == (22, 4.0, True)
    cure = cure_words(found.missed[0], found.grid)
    assert cure == 'end the cladding 1" higher, or cover the cut course with a frieze'


def test_a_tolerance_lets_a_line_be_met() -> None:
    boards = {"kind": "boards", "widths": ["5 1/2"], "least_lap": "1/2"}
    place = elevation(opening("W01", 30.125, 85.0), eave=105.0)
    assert plan(place, boards).missed
    assert not plan(place, {**boards, "line_tolerance": "1/8"}).missed


def test_metric_boards_on_a_metric_grid() -> None:
    """Boards of 145 mm lapped 20 to 30 mm, a sill 940 mm, a head 2170 mm, an eave 2410 mm up, all whole."""
    boards = {"kind": "boards", "widths": ["145"], "least_lap": "20", "greatest_lap": "30"}
    sill, head, eave = (size / MM_PER_INCH for size in (940, 2170, 2410))
    place = elevation(opening("W01", sill, head), eave=eave)
    found = plan(place, boards, units=Units.MM, grid=GRIDS["1 mm"])
    assert not found.missed
    shown = [round((line.exposure or 0) * MM_PER_INCH, 6) for line in found.lines[1:]]
    assert all(size == int(size) and 115 <= size <= 125 for size in shown)
    assert sum(shown) == 2410


def test_a_sliver_under_the_eave_is_told() -> None:
    """Boards that show 5 in only, 106 to cover: the last one shows 1, by hand."""
    found = plan(elevation(eave=106.0), {"kind": "boards", "widths": ["5 1/2"], "least_lap": "1/2"})
    assert 'The last course shows only 1" under the eave.' in [one.sentence(Units.INCH) for one in found.findings]


def test_too_tall_for_its_grid() -> None:
    """Two hundred feet of exposures from 1 to 23 in on 1/32: fifty-four million states, by hand."""
    boards = {"kind": "boards", "widths": ["24"], "least_lap": "1", "greatest_lap": "4", "least_exposure": "1"}
    wide = {**boards, "widths": ["5", "8", "11", "14", "17", "20", "24"]}
    with pytest.raises(CourseError, match=r"200'-0\" of courses on a grid of 1/32\" are too many to plan at once"):
        plan(elevation(start=-8.0, eave=2392.0), wide)


def test_a_line_outside_the_cladding_is_told() -> None:
    found = plan(elevation(opening("W01", 35.0, 113.0), eave=112.0), SHINGLES)
    assert not found.missed
    (said,) = sentences(found.findings)
    assert said == 'Beyond the cladding, which goes from the start line to the eave: W01 head at 113".'


def test_a_last_course_may_reach_as_far_past_the_eave_as_it_goes() -> None:
    """Courses of 4 only: 4, 8 … 24, 28, three past the eave at 25; each one off the wanted 5 by 1; the eave is missed.

    24 meets the eave within 1, and is a sliver under it at once: the one met is taken back, and its 1 off counts.
    """
    task = Task(
        top=25, targets=(Target(at=25, weight=1),), exposures=(4,), wanted=5, unseen=0, greatest_change=1, tolerance=1,
        least_top=2,
    )  # fmt: skip
    found = best_ladder(task)
    assert found.lines == (0, 4, 8, 12, 16, 20, 24, 28)
    assert (found.missed, found.off, found.unrest) == (1, 7 + 1, 0)


def wide_task(top: int, greatest: int, weight: int) -> Task:
    return Task(
        top=top, targets=(Target(at=top, weight=weight),), exposures=(5, greatest), wanted=5, unseen=0,
        greatest_change=1, tolerance=0, least_top=1,
    )  # fmt: skip


def test_heights_up_to_the_last_line_past_the_eave_are_worked_for_every_exposure() -> None:
    """Exposures of 5 to 2004 are 2000; with lines up to 2004 past the eave 7996 up that makes 20 million just."""
    assert STATES == 20_000_000
    assert not is_too_large(wide_task(7996, 2004, 1))
    assert is_too_large(wide_task(7997, 2004, 1))


def test_costs_have_to_fit_one_number() -> None:
    """Up to 9 in courses of 5 or 6, three at most: unrest up to 3, off the wanted 5 up to 3; so a missed line weighs
    4 x 4 x 4 = 2^6, and all that are missed, and one more, stay under 2^60: with 2^54 of them they come to just that.
    """
    most = 2**54 - 2
    assert not is_too_large(wide_task(9, 6, most))
    assert is_too_large(wide_task(9, 6, most + 1))
