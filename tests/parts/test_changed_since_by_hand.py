"""What a reading was taken of, and how that is another thing now, by hand: moved, exchanged, in another wall.

The base window: frame 35 1/2 x 47 1/2. A window that moved along its wall by less than its own width is in the same
hole still: the plan was put right. Common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from cases import placed
from part_cases import level

from jambs.findings import Subject
from jambs.length import Units
from jambs.parts.readings.changed_since_words import MovedAlong, OtherElevation, OtherOpening, Taken
from jambs.parts.readings.measured_against import MeasuredAgainst, without_void_readings
from jambs.parts.readings.reading_findings import ReadingsOfAlike, ReadingsSetAside
from jambs.place.placement import Placement

READ = {"interior_depth": {"left": ["4 3/4", "4 11/16"]}, "frame_width": ["35 1/2", "35 1/2"], "date": "2026-06-01"}
HERE = placed(openings__0__measured=READ)
NOTED = MeasuredAgainst.of(HERE)


def at(from_left: float | None, elevation: str | None = None, room: str = "Room", mark: str = "W1") -> Placement:
    opening = replace(HERE.opening, from_left=from_left, elevation=elevation, room=room, mark=mark)
    return replace(HERE, opening=opening, findings=())


def void(was: Placement, now: Placement, *others: Placement, under: str | None = None) -> Placement:
    """Set aside what was read inside of an opening as it was."""
    marks = {Taken.INSIDE: under} if under else {}
    return without_void_readings(now, {Taken.INSIDE: MeasuredAgainst.of(was)}, others, marks)


def said(was: Placement, now: Placement, *others: Placement, under: str | None = None) -> list[str]:
    """Return what changed, in words; nothing where the reading holds."""
    found = [one for one in void(was, now, *others, under=under).findings if isinstance(one, ReadingsSetAside)]
    return [change.words(Units.INCH) for one in found for change in one.changes]


@pytest.mark.parametrize(
    ("was", "now", "words"),
    [
        (20.0, 55.25, []),
        (20.0, 55.5, ['the opening moved 35 1/2" to the right, as its wall is seen from outside']),
        (60.0, 24.5, ['the opening moved 35 1/2" to the left, as its wall is seen from outside']),
        (60.0, 24.75, []),
        (None, 55.5, []),
        (20.0, None, []),
    ],
)
def test_a_window_that_moved_by_its_own_width_is_in_another_hole(
    was: float | None, now: float | None, words: list[str]
) -> None:
    assert said(at(was), at(now)) == words


@pytest.mark.parametrize(
    ("was", "now", "is_another"), [("north", "east", True), ("north", "north", False), (None, "east", False)]
)
def test_another_side_of_the_house_is_another_wall(was: str | None, now: str | None, is_another: bool) -> None:
    """One that the job named only later is the side that it always was."""
    words = ["the opening moved from north to east"] if is_another else []
    assert said(at(20.0, was), at(20.0, now)) == words


def test_where_the_mark_stands_in_another_room_the_one_in_the_old_room_is_named() -> None:
    was, now = at(20.0, room="Kitchen"), at(100.0, room="Hall")
    there = at(20.0, room="Kitchen", mark="W2")
    words = ["W2 is the opening in the room where they were read (Kitchen), and they may belong to it"]
    assert said(was, now, now, there) == words
    assert said(was, replace(now, opening=replace(now.opening, from_left=20.0)), now) == []  # a room of another name


def test_where_nobody_names_rooms_the_one_at_the_old_place_is_named() -> None:
    was, now = at(20.0, "north", room=""), at(100.0, "north", room="")
    there = at(20.0, "north", room="", mark="W2")
    words = ["W2 is the opening that they were read at, and they may belong to it"]
    assert said(was, now, now, there) == words
    for elsewhere in (at(20.0, "east", room="", mark="W2"), at(21.0, "north", room="", mark="W2")):
        moved = ['the opening moved 80" to the right, as its wall is seen from outside']
        assert said(was, now, now, elsewhere) == moved
    assert said(at(None, room=""), at(None, "east", room=""), at(None, room="", mark="W2")) == []


def test_a_mark_that_is_known_to_be_of_another_opening_says_which() -> None:
    was, now = at(20.0, room="Kitchen"), at(20.0, room="Hall")
    assert said(was, now, under="W7") == [
        "W7 is the opening in the room where they were read (Kitchen), and they may belong to it"
    ]
    assert said(at(20.0), at(20.0), under="W7") == [
        "W7 is the opening that they were read at, and they may belong to it"
    ]


def test_only_what_fell_is_set_aside() -> None:
    """The depths go with a window that moved; its own width stays, and is read by itself."""
    opening = void(at(20.0), at(100.0)).opening
    assert opening.readings is not None and opening.measured is None
    assert opening.readings.interior_depth is None and opening.readings.frame_width is not None
    assert HERE.opening.readings is not None
    alone = replace(HERE.opening, readings=HERE.opening.readings.model_copy(update={"frame_width": None}))
    assert void(at(20.0), replace(at(100.0), opening=replace(alone, from_left=100.0))).opening.readings is None


def test_what_was_read_inside_stays_measured_where_only_the_outside_fell() -> None:
    read = {"date": "2026-06-01", "interior_depth": level("4 3/4"), "exterior_depth": level("1 5/8")}
    here = placed(openings__0__measured=read)
    was, now = (replace(here, opening=replace(here.opening, from_left=along), findings=()) for along in (20.0, 100.0))
    opening = without_void_readings(now, {Taken.OUTSIDE: MeasuredAgainst.of(was)}).opening
    assert opening.readings and opening.readings.exterior_depth is None and opening.readings.interior_depth
    assert opening.measured is not None and opening.measured == here.opening.measured


def test_an_opening_without_readings_stays_as_it_is() -> None:
    bare = placed()
    assert without_void_readings(bare, {Taken.INSIDE: NOTED}) is bare


@pytest.mark.parametrize(
    ("was", "now", "is_asked"),
    [
        (("W1", "W2"), ("W1", "W2"), False),
        (("W1", "W2"), ("W2", "W1"), True),
        (("W1", "W2", "W3"), ("W1", "W3"), False),
        (("W1", "W2", "W3"), ("W3", "W1"), True),
    ],
)
def test_it_is_asked_where_openings_that_are_alike_changed_places(
    was: tuple[str, ...], now: tuple[str, ...], is_asked: bool
) -> None:
    """One that went, or that came, changes no order."""
    others = [replace(at(20.0), opening=replace(HERE.opening, mark=mark, readings=None)) for mark in now]
    placement = replace(HERE, findings=())
    found = without_void_readings(placement, {Taken.INSIDE: replace(NOTED, alike=was)}, others)
    asked = [one for one in found.findings if isinstance(one, ReadingsOfAlike)]
    assert bool(asked) is is_asked
    assert all((one.alike, one.subject) == (now, Subject.opening("W1")) for one in asked)


def test_what_is_where_in_words() -> None:
    assert (
        MovedAlong(to_the_right=-2.0)
        .words(Units.INCH)
        .endswith('moved 2" to the left, as its wall is seen from outside')
    )
    assert OtherElevation(was="a", now="b").words(Units.INCH) == "the opening moved from a to b"
    assert OtherOpening(mark="W2").words(Units.MM) == (
        "W2 is the opening that they were read at, and they may belong to it"
    )
