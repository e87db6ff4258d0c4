"""What is said of courses, by hand on boards that show 5 in only, so that lines stand at every 5 in."""

from __future__ import annotations

from dataclasses import replace

import pytest
from houses_outside import SHINGLES, elevation, opening, plan

from jambs.courses.plan import CoursePlan
from jambs.courses.plan_words import cure_words, proof_words, start_cure_words
from jambs.courses.pole_words import mark_words
from jambs.courses.story_pole import story_pole
from jambs.courses.views import pole_figure
from jambs.length import Units

FIVES = {"kind": "boards", "widths": ["5 1/2"], "least_lap": "1/2"}


def cures(sill: float, head: float, eave: float = 105.0) -> list[tuple[str, float, str]]:
    found = plan(elevation(opening("W01", sill, head), eave=eave), FIVES)
    return [(one.wanted.words, one.off, cure_words(one, found.grid)) for one in found.missed]


@pytest.mark.parametrize(
    ("head", "off", "cure"),
    [
        (84.5, 0.5, 'head casing 1/2" wider, or the head up by 1/2"'),
        (85.5, -0.5, 'head casing 1/2" narrower, or the head down by 1/2"'),
        (85.75, -0.75, 'head casing 3/4" narrower, or the head down by 3/4"'),
        (85 + 25 / 32, -25 / 32, 'the head down by 25/32"'),
        (84.25, 0.75, 'head casing 3/4" wider, or the head up by 3/4"'),
        (84 + 7 / 32, 25 / 32, 'the head up by 25/32"'),
    ],
)
def test_a_head_that_is_missed(head: float, off: float, cure: str) -> None:
    assert cures(30.0, head) == [("W01 head", off, cure)]


@pytest.mark.parametrize(
    ("sill", "off", "cure"),
    [
        (29.5, 0.5, 'sill 1/2" thinner, or the sill up by 1/2"'),
        (30.5, -0.5, 'a band of 1/2" under the sill, or the sill down by 1/2"'),
        (32.0, -2.0, 'the sill down by 2"'),
        (33.0, 2.0, 'the sill up by 2"'),
    ],
)
def test_a_sill_that_is_missed(sill: float, off: float, cure: str) -> None:
    assert cures(sill, 85.0) == [("W01 sill", off, cure)]


def test_a_line_that_no_move_alone_lets_be_met_has_no_cure() -> None:
    found = plan(elevation(opening("W01", 29.5, 85.0), eave=105.0), FIVES)
    (missed,) = found.missed
    assert cure_words(missed, found.grid) and cure_words(replace(missed, move=None), found.grid) == ""


def test_an_eave_that_is_missed() -> None:
    """Higher or lower to the next line; a cut course of 4 is enough, one of 3 is a sliver and costs a line more."""
    assert cures(30.0, 85.0, 104.0) == [
        ("eave", 0.0, 'end the cladding 1" higher, or cover the cut course with a frieze')
    ]
    assert cures(30.0, 85.0, 101.0) == [
        ("eave", 0.0, 'end the cladding 1" lower, or cover the cut course with a frieze')
    ]


@pytest.mark.parametrize(
    ("eave", "words"), [(101.0, '1" lower'), (102.0, '2" lower'), (103.0, '2" higher'), (104.0, '1" higher')]
)
def test_where_nothing_is_met_only_heights_that_courses_reach_cure_it(eave: float, words: str) -> None:
    """Courses of 5 end at 100 or 105; cut to less than 4 the last one is a sliver, which weighs less than nothing."""
    found = plan(elevation(eave=eave), FIVES)
    (missed,) = found.missed
    assert cure_words(missed, found.grid).startswith(f"end the cladding {words}, or")


def test_a_head_and_a_sill_are_moved_to_courses_where_no_line_at_all_is_met() -> None:
    """Sill, head and eave 1, 1 and 2 past multiples of 5, and a sliver of 2."""
    assert [(mark, move) for mark, _, move in cures(31.0, 86.0, 102.0)] == [
        ("W01 sill", 'the sill down by 1"'),
        ("W01 head", 'the head down by 1"'),
        ("eave", 'end the cladding 2" lower, or cover the cut course with a frieze'),
    ]


@pytest.mark.parametrize(
    ("openings", "eave", "words"),
    [
        # 1 past a multiple of 5, the eave on one: moved up by 1, the eave is lost and its course shows 4.
        ([(31.0, 86.0)], 105.0, 'move the start line up by 1": 1 line is still missed'),
        # One more of the four stands 3 past a multiple.
        ([(31.0, 86.0), (36.0, 88.0)], 105.0, 'move the start line up by 1": 2 lines are still missed'),
        ([(34.0, 89.0)], 109.0, 'move the start line down by 1": all lines are met'),
        # Two are missed either way: no move is better than none.
        ([(31.0, 83.0)], 105.0, ""),
        ([(30.0, 85.0)], 105.0, ""),
    ],
)
def test_moving_the_start_line(openings: list[tuple[float, float]], eave: float, words: str) -> None:
    placed = [opening(f"W0{n}", sill, head) for n, (sill, head) in enumerate(openings, start=1)]
    assert start_cure_words(plan(elevation(*placed, eave=eave), FIVES)) == words


def rising(*marks: str) -> CoursePlan:
    """Boards that show 5 to 6: sill 10 up, so 5 + 5; head 22 up, so 6 + 6; eave 34 up, so 6 + 6. A change of 1."""
    boards = {"kind": "clapboards", "widths": ["7"], "least_lap": "1", "greatest_lap": "2", "greatest_change": "1"}
    return plan(elevation(*(opening(mark, 10.0, 22.0) for mark in marks), eave=34.0), boards)


def test_the_proof_says_what_less_change_would_cost() -> None:
    """With a change of 31/32 one height is missed: 5 1/2 four times up to 22 misses the sills."""
    assert [line.exposure for line in rising("W01").lines[1:]] == [5.0, 5.0, 6.0, 6.0, 6.0, 6.0]
    assert proof_words(rising("W01")) == (
        '3 of 3 heads and sills fall on a course line. Neighboring courses differ by 1" at most; '
        'with 31/32" at most 1 more line would be missed.'
    )
    assert proof_words(rising("W01", "W02")) == (
        '5 of 5 heads and sills fall on a course line. Neighboring courses differ by 1" at most; '
        'with 31/32" at most 2 more lines would be missed.'
    )


def test_the_proof_of_courses_that_do_not_change() -> None:
    even = plan(elevation(opening("W01", 35.0, 84.0), eave=112.0), SHINGLES)
    assert (
        proof_words(even) == '3 of 3 heads and sills fall on a course line. Neighboring courses differ by 0" at most.'
    )
    missed = plan(elevation(opening("W01", 31.0, 85.0), eave=105.0), FIVES)
    assert proof_words(missed) == (
        '2 of 3 heads and sills fall on a course line; no layout with exposures within 1/2" does better. '
        'Neighboring courses differ by 0" at most.'
    )


@pytest.mark.parametrize(("eave", "shown"), [(108.0, 'only 3"'), (109.0, ""), (106.0, 'only 1"'), (105.0, "")])
def test_a_sliver_is_less_than_four_inches(eave: float, shown: str) -> None:
    told = [one.sentence(Units.INCH) for one in plan(elevation(eave=eave), FIVES).findings]
    slivers = [text for text in told if "The last course shows" in text]
    assert len(slivers) == bool(shown)
    assert all(shown in text for text in slivers)


@pytest.mark.parametrize(
    ("sill", "head", "outside"),
    [
        (30.0, 105.0, ["W01 head"]),
        (0.0, 85.0, ["W01 sill"]),
        (1 / 32, 105 - 1 / 32, []),
        (-1.0, 106.0, ["sill", "head"]),
    ],
)
def test_lines_at_the_ends_of_the_cladding_are_outside_it(sill: float, head: float, outside: list[str]) -> None:
    told = [one.sentence(Units.INCH) for one in plan(elevation(opening("W01", sill, head), eave=105.0), FIVES).findings]
    beyond = [text for text in told if "Beyond the cladding" in text]
    assert len(beyond) == bool(outside)
    assert all(word in beyond[0] for word in outside)


def test_a_pole_is_as_long_as_the_cladding_is_high() -> None:
    """From 8 under the floor to 97 over it: 105 on the stick, drawn as a closed outline 2 1/2 wide."""
    pole = story_pole(plan(elevation(start=-8.0, eave=97.0), FIVES))
    assert (pole.length, pole.marks[-1].running) == (105.0, 105.0)
    outline = pole_figure(pole).strokes[0]
    assert outline.is_closed and outline.points == ((0.0, 0.0), (2.5, 0.0), (2.5, 105.0), (0.0, 105.0))
    assert not any(stroke.is_closed for stroke in pole_figure(pole).strokes[1:])


def test_texts_on_a_pole_stand_at_their_marks_or_just_clear_of_the_text_below() -> None:
    """Letters 3/16 high, lines 9/32 apart. A head missed 1/8 over the mark at 85: its text stands 9/32 over that one.

    Its leader runs from the mark at the edge of the stick, 2 1/2 from its other one, to the text 3/16 out and up.
    """
    pole = story_pole(plan(elevation(opening("W01", 30.0, 85.125), eave=105.0), FIVES))
    figure = pole_figure(pole)
    heights = {note.text.split()[0]: note.at for note in figure.notes[1:]}
    assert figure.notes[0].at == (0.0, -0.375)
    marks = [(mark.running, note.at) for mark, note in zip(pole.marks, figure.notes[1:], strict=True)]
    assert all(x == 2.5 + 0.28125 for _, (x, _) in marks)
    assert [(running, y) for running, (_, y) in marks if y != running] == [(85.125, 85.28125)]
    assert len(heights) == len(pole.marks)
    assert figure.strokes[-1].points == ((2.5, 105.0), (2.6875, 105.0))
    assert ((2.5, 85.125), (2.6875, 85.28125)) in [stroke.points for stroke in figure.strokes]
    assert ((0.0, 85.125), (2.5, 85.125)) in [stroke.points for stroke in figure.strokes]


def test_beside_a_mark_stands_what_its_line_meets_or_what_no_line_does() -> None:
    """Boards of 5: lines at 30 and 85; a sill at 32 lies between the lines at 30 and 35."""
    pole = story_pole(plan(elevation(opening("W01", 32.0, 85.0), eave=105.0), FIVES))
    said = {mark.running: mark_words(mark, pole.grid) for mark in pole.marks}
    assert said[0.0] == "start line: butts of course 1"
    assert said[32.0] == "W01 sill: no course line here"
    assert (said[30.0], said[85.0]) == ('course 6 shows 5"', 'course 17 shows 5"; W01 head')
