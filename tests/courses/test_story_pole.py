"""The story pole and the drawings' lines say what the plan says."""

from __future__ import annotations

import itertools
from dataclasses import replace

import pytest
from houses_outside import SHINGLES, elevation, elevation_entry, harbour_house, opening, plan

from jambs.courses.elevation import LineKind
from jambs.courses.plan import Missed, plan_elevation
from jambs.courses.pole_words import datum_words, mark_words, running_text
from jambs.courses.story_pole import story_pole
from jambs.courses.views import LineInk, clear_runs, pole_figure
from jambs.length import Units, read_length


def test_marks_run_up_from_the_start_line() -> None:
    """Sixteen courses of 7, by hand: marks at 0, 7, 14, … 112."""
    pole = story_pole(plan(elevation(opening("W01", 35.0, 84.0), eave=112.0), SHINGLES))
    assert [7.0 * n for n in range(17)] == [mark.running for mark in pole.marks]
    assert [running_text(pole.marks[n], pole.grid) for n in (0, 1, 5, 6)] == ["0'-0\"", "0'-7\"", "2'-11\"", "3'-6\""]
    assert mark_words(pole.marks[5], pole.grid) == 'course 5 shows 7"; W01 sill'
    assert datum_words(pole) == "start line, at the ground floor"


def test_texts_read_back_to_the_heights() -> None:
    job, kits = harbour_house()
    pole = story_pole(plan_elevation("north", elevation_entry(faces="north"), kits, job))
    assert datum_words(pole) == 'start line, 8" below the ground floor'
    for mark in pole.marks:
        assert read_length(running_text(mark, pole.grid), units=Units.INCH) == pytest.approx(mark.running, abs=1e-9)
    assert sum(not mark.is_course for mark in pole.marks) == 3  # four heads and sills, two of them at one height


@pytest.mark.parametrize(("steps", "is_said"), [(0.49, False), (-0.49, False), (0.5, True), (-0.5, True)])
def test_a_foot_less_than_half_a_step_off_the_floor_stands_at_it(steps: float, is_said: bool) -> None:
    pole = story_pole(plan(elevation(opening("W01", 35.0, 84.0), eave=112.0), SHINGLES))
    words = datum_words(replace(pole, start_line=steps * pole.grid.step))
    assert (words != "start line, at the ground floor") is is_said


def test_a_course_that_is_cut_is_marked_before_the_eave_it_does_not_meet() -> None:
    """Both lie at one height."""
    planned = plan(elevation(opening("W01", 35.0, 84.0), eave=112.0), SHINGLES)
    eave = replace(planned.elevation.wanted[0], kind=LineKind.EAVE, height=112.0, mark="")
    last = replace(planned.lines[-1], is_cut=True, meets=())
    missed = Missed(wanted=eave, off=0.0, move=None)
    pole = story_pole(replace(planned, lines=(*planned.lines[:-1], last), missed=(missed,)))
    assert [mark.of for mark in pole.marks[-2:]] == [last, (eave,)]


def test_what_no_line_meets_at_one_height_is_one_mark() -> None:
    """Two heads at one height had two rows of words, one of them pushed up beside nothing; a third is 1/2 higher."""
    planned = plan(elevation(opening("W01", 35.0, 84.0), eave=112.0), SHINGLES)
    heads = [
        replace(planned.elevation.wanted[0], kind=LineKind.HEAD, height=height, mark=mark)
        for mark, height in (("W02", 80.0), ("W03", 80.0), ("W04", 80.5))
    ]
    missed = tuple(Missed(wanted=one, off=0.0, move=None) for one in heads)
    pole = story_pole(replace(planned, missed=missed))
    assert [(mark.running, mark_words(mark, pole.grid)) for mark in pole.marks if not mark.is_course] == [
        (80.0, "W02 head; W03 head: no course line here"),
        (80.5, "W04 head: no course line here"),
    ]


def test_the_strip_has_a_line_for_every_mark() -> None:
    job, kits = harbour_house()
    pole = story_pole(plan_elevation("west", elevation_entry(faces="west"), kits, job))
    strip = pole_figure(pole)
    lines = [stroke.points[0][1] for stroke in strip.strokes if stroke.ink in (LineInk.COURSE, LineInk.MISSED)]
    assert [mark.running for mark in pole.marks] == lines
    heights = [note.at[1] for note in strip.notes]
    assert all(above - below >= 1.4 * strip.notes[0].height for below, above in itertools.pairwise(heights))


def test_courses_stop_at_the_trim() -> None:
    """A wall of 240 with an opening from 60 to 100: by hand, two runs beside it and one whole above it."""
    one = opening("W01", 35.0, 84.0, left=60.0)
    assert clear_runs((0.0, 240.0), 50.0, (one,)) == [(0.0, 60.0), (100.0, 240.0)]
    assert clear_runs((0.0, 240.0), one.trim[3], (one,)) == [(0.0, 240.0)]
