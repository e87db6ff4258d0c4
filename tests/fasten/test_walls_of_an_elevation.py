"""An elevation of two walls: each has its own way to the framing, whichever opening is listed first."""

from __future__ import annotations

import itertools
from typing import Any

import pytest
from cases import changed, job_of
from fasten_house import elevation, entries
from said import sentences

from jambs.fasten.elevation import elevation_fasteners
from jambs.fasten.fastener_words import count_words
from jambs.fasten.plan import FastenerLine
from jambs.findings import Severity
from jambs.job.models.outside import Fixed
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows


def wall(foam: str) -> dict[str, Any]:
    """Gypsum, studs, 1/2 of plywood, foam, 1/2 of plywood as outer sheathing, shingles."""
    layers = [
        "gypsum board 1/2",
        {"material": "stud 2x6", "spacing": "16"},
        "plywood 1/2",
        {"material": "EPS", "thickness": foam},
        {"material": "plywood 1/2", "role": "outer sheathing"},
        "wood shingles",
    ]
    return {"layers": layers, "buck": {"kind": "outboard", "thickness": "1 1/2", "stock": "spruce"}}


def planned(marks: tuple[str, ...], lengths: tuple[str, ...] = (), **keys: Any) -> tuple[FastenerLine, ...]:
    """Two openings in the thick wall and two in the thin one, listed in any order."""
    one = changed()["openings"][0]
    walls = {"W1": "thick", "W2": "thick", "W3": "thin"}
    openings = [{**one, "mark": mark, "wall": walls[mark]} for mark in marks]
    job = job_of(changed(walls={"thick": wall("3"), "thin": wall("1")}, openings=openings))
    kits = [make_kit(placement, job) for placement in place_windows(job)]
    fastened = entries(Fixed.COVER, lengths=list(lengths))
    return elevation_fasteners("north", elevation(**keys), kits, kits, fastened, job.units)


def test_each_wall_has_its_own_line_in_any_order() -> None:
    """By hand: 1/2 + 3 + 1/2 and 1 1/2 into the stud are 5 1/2; with 1 of foam 3 1/2."""
    for marks in itertools.permutations(("W1", "W2", "W3")):
        found = {line.where: line.needed for line in planned(marks)}
        assert found == {"north, thick": 5.5, "north, thin": 3.5}


def test_widths_of_walls_are_asked_once() -> None:
    lines = planned(("W1", "W2", "W3"), width="20'")
    assert [line.count for line in lines] == [None, None]
    assert {count_words(line) for line in lines} == {"count: give the elevation's walls"}
    (asked,) = [one for line in lines for one in line.findings]
    assert asked.severity is Severity.CHECK
    assert sentences([asked]) == [
        "Several walls stand in it, thick and thin, and the job does not say how wide thick and thin are there: "
        "give the elevation walls: {thick: …, thin: …} with the width of each; until then these are not counted."
    ]


def test_what_is_asked_of_an_elevation_stands_behind_what_is_said_of_its_first_wall() -> None:
    """Screws of 4 in: the thick wall wants 5 1/2, the thin one 3 1/2."""
    thick, thin = planned(("W1", "W3"), ("4",))
    assert [one.code for one in thick.findings] == ["none-long-enough", "widths-of-walls-not-given"]
    assert thin.findings == ()


def test_given_widths_are_counted_apart_and_nothing_is_asked() -> None:
    """Studs at 16, 8 ft high, screws at 16: 7 on a stud. 10 ft have 8 studs, 12 ft have 10.

    A rough opening of 36 x 48 takes out 2 studs of 3 screws: two in the thick wall, one in the thin one.
    """
    thick, thin = planned(("W3", "W1", "W2"), walls={"thick": "10'", "thin": "12'"})
    assert (thick.count, thin.count) == (8 * 7 - 2 * 6, 10 * 7 - 6)
    assert not thick.findings and not thin.findings


def test_one_wall_given_one_asked() -> None:
    thick, thin = planned(("W1", "W3"), walls={"thick": "10'"})
    assert thick.count == 8 * 7 - 6 and thin.count is None
    assert "how wide thin is there" in sentences(thick.findings)[0]


@pytest.mark.parametrize(("keys", "count"), [({"width": "10'"}, 8 * 7 - 12), ({}, None)])
def test_an_elevation_of_one_wall_needs_no_more_than_its_width(keys: dict[str, Any], count: int | None) -> None:
    (line,) = planned(("W1", "W2"), **keys)
    assert (line.where, line.count, line.findings) == ("north", count, ())


def test_an_elevation_without_openings_has_the_walls_it_names() -> None:
    job = job_of(changed(walls={"thick": wall("3")}))
    kits = [make_kit(placement, job) for placement in place_windows(job)]
    named = elevation(walls={"thick": "10'"})
    (line,) = elevation_fasteners("north", named, [], kits, entries(Fixed.COVER), job.units)
    assert (line.where, line.count) == ("north", 8 * 7)
    assert elevation_fasteners("north", elevation(width="10'"), [], kits, entries(Fixed.COVER), job.units) == ()
