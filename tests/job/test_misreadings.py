"""Likely misreadings are asked about by name; right readings are left alone.

The seeded misreadings come from ``seeded_site``, which knows nothing of how they are found. Both
counts are in the README.
"""

from __future__ import annotations

import random
from collections import Counter
from dataclasses import replace

import pytest
from seeded_site import AROUND, MISREADINGS, honest, seeded

from jambs.job.measured.measuring_points import Kind, Place
from jambs.job.measured.reading_checks import Held, ReadingQuestion, find_misreadings
from jambs.length import MM_PER_INCH, Units

CAUGHT, QUESTIONED = 187, 8
"""Measured with seed 6: of 200 misreadings, and of the 1350 right readings beside them."""


def around(*values: float, planned: float = 4.6875, kind: Kind = Kind.INTERIOR_DEPTH) -> tuple[Held, ...]:
    return tuple(
        Held(
            place=Place(number=number, kind=kind, words=f"place {number}", keys=(), x=x, y=y),
            value=value,
            planned=planned,
        )
        for number, ((x, y), value) in enumerate(zip(AROUND, values, strict=True), start=1)
    )


def asked(readings: tuple[Held, ...], units: Units = Units.INCH, **options: tuple[int, ...]) -> list[ReadingQuestion]:
    return list(find_misreadings(readings, units=units, **options))


def counts(seed: int) -> tuple[Counter[str], int, int]:
    """Return how many misreadings of each kind were asked about, and how many right readings of how many."""
    caught: Counter[str] = Counter()
    wrong = right = 0
    for units, misreading in seeded(200, seed):
        # What is past any depth is a fault when it is read, with the other unit named: nothing is left to ask.
        numbers = (
            set() if misreading.is_out_of_range else {one.place.number for one in asked(misreading.readings, units)}
        )
        caught[misreading.kind] += misreading.is_out_of_range or bool(numbers & set(misreading.spoiled))
        wrong += len(numbers - set(misreading.spoiled))
        right += len(misreading.readings) - len(misreading.spoiled)
    return caught, wrong, right


def test_two_hundred_seeded_misreadings() -> None:
    caught, wrong, right = counts(seed=6)
    assert sum(caught.values()) == CAUGHT
    assert (wrong, right) == (QUESTIONED, 1350)
    assert caught["the other unit"] == caught["an inch off"] == 50


@pytest.mark.parametrize("seed", [61, 62, 63])
def test_other_seeds_are_much_the_same(seed: int) -> None:
    caught, wrong, right = counts(seed)
    assert sum(caught.values()) >= 170
    assert wrong <= 0.025 * right
    assert set(caught) == set(MISREADINGS)


def test_an_honest_house_is_hardly_asked_about() -> None:
    dice = random.Random(1)
    houses = [honest(dice, units) for _ in range(200) for units in (Units.INCH, Units.MM)]
    assert sum(len(asked(house)) for house in houses[::2]) + sum(len(asked(h, Units.MM)) for h in houses[1::2]) <= 4


FLAT = (4.75, 4.75, 4.75, 4.8125, 4.8125, 4.8125, 4.8125, 4.75)


def test_an_inch_off() -> None:
    # Seven places near 4-3/4, the fifth an inch more.
    (question,) = asked(around(*FLAT[:4], 5.8125, *FLAT[5:]))
    assert (question.place.number, question.misreading, question.meant) == (5, "an inch too much", 4.8125)
    assert question.words(units=Units.INCH).endswith('an inch too much? Was 4 13/16" meant?')


def test_digits_exchanged() -> None:
    # 4-3/4 in millimeters is 121; typed 112, which is nine less than its neighbors.
    values = [value / MM_PER_INCH for value in (121, 121, 112, 121, 122, 122, 122, 121)]
    (question,) = asked(around(*values, planned=119 / MM_PER_INCH), Units.MM)
    assert question.misreading == "are two digits transposed"
    assert question.meant == pytest.approx(121 / MM_PER_INCH, abs=1e-9)


def test_millimeters_in_a_job_in_inches() -> None:
    (question,) = asked(around(*FLAT[:7], 32.0, planned=1.25))[-1:]
    assert question.misreading.startswith("are places ")  # every other one is off its plan of 1-1/4 as well
    (question,) = asked(around(1.25, 1.25, 1.25, 1.25, 1.25, 1.25, 1.25, 32.0, planned=1.25))
    assert question.misreading == "millimeters typed in a job in inches"
    assert question.meant == pytest.approx(32 / MM_PER_INCH, abs=1e-9)


def test_left_and_right_exchanged() -> None:
    # A wall that leans 3/8 from left to right; the two legs' middles are in each other's row.
    leaning = around(4.5, 4.6875, 4.875, 4.5, 4.875, 4.6875, 4.5, 4.875)
    found = asked(leaning)
    assert [(one.place.number, one.meant) for one in found] == [(4, 4.875), (8, 4.5)]
    assert found[0].misreading == "are left and right swapped, places 8 and 4"


def test_all_off_alike_is_one_question() -> None:
    (question,) = asked(around(*(value + 1 for value in FLAT)))
    assert question.misreading == "are places 1, 2, 3, 4, 5, 6, 7, 8 all off alike, an inch too much"


def test_who_is_sure_is_believed() -> None:
    spoiled = around(*FLAT[:4], 5.8125, *FLAT[5:])
    assert asked(spoiled, sure=(5,)) == []


def test_a_single_reading_has_only_its_plan() -> None:
    (one,) = around(*FLAT)[:1]
    assert asked((one,)) == []
    assert len(asked((replace(one, value=5.6875),))) == 1


@pytest.mark.parametrize(("value", "misreading"), [(36.5, "an inch too much"), (35.5, ""), (35.5625, "")])
def test_the_frame_is_held_against_its_size(value: float, misreading: str) -> None:
    place = Place(number=9, kind=Kind.FRAME_WIDTH, words="frame width at the head", keys=(), x=0.5, y=1)
    found = asked((Held(place=place, value=value, planned=35.5),))
    assert [one.misreading for one in found] == ([misreading] if misreading else [])


def test_out_of_plumb_by_more_than_half_an_inch() -> None:
    place = Place(number=15, kind=Kind.OUT_OF_PLUMB, words="wall out of plumb, left", keys=(), x=0, y=0.5)
    assert asked((Held(place=place, value=0.5, planned=0),)) == []
    assert len(asked((Held(place=place, value=0.625, planned=0),))) == 1
