"""How many hands a window needs, by its weight."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from jambs.length import Units
from jambs.parts.board.listing import and_list
from jambs.place.placement import Placement
from jambs.place.weight_words import weight_text

ONE_PERSON = 51.0
"""Most that one person lifts under the best conditions [lb]: 23 kg, load constant of the NIOSH lifting equation (1994),
from memory."""
TWO_PEOPLE = 100.0
"""Most for two people [lb]: 45 kg, under twice as much, as they never share it evenly; common practice, no source."""
MORE_PEOPLE = 200.0
"""Most for four people [lb]: 90 kg; past it lifting gear; common practice, no source."""

HANDLING = "gloves; never lean on a sash that is only tacked"


@dataclass(frozen=True, slots=True, kw_only=True)
class Lift:
    """What is lifted at once: a window, or units that may be joined before; weights [lb].

    ``words``: which units of an opening; empty where it is all there is. ``heaviest``: of the units, each by itself.
    """

    weight: float
    words: str = ""
    heaviest: float | None = None


def lifts_of(placement: Placement) -> tuple[Lift, ...]:
    """Return what is lifted at an opening: its window, or its units, those together that have but a gap between."""
    gang = placement.opening.gang
    if gang is None:
        return (Lift(weight=placement.weight),)
    weights = {unit.number: unit.weight for unit in placement.units}
    return tuple(_lift([(number, weights[number]) for number in numbers], len(weights)) for numbers in gang.lifts)


def _lift(units: Sequence[tuple[int, float]], count: int) -> Lift:
    words = f"unit{'s' * (len(units) > 1)} {and_list([str(number) for number, _ in units])}"
    weights = [weight for _, weight in units]
    return Lift(
        weight=sum(weights),
        words="" if len(units) == count else words,
        heaviest=max(weights) if len(units) > 1 else None,
    )


def lifting_words(lifts: Sequence[Lift], units: Units) -> str:
    """Say who lifts a window, or each of several units, and how."""
    return f"Glass: {'; '.join(_lift_words(lift, units) for lift in lifts)}; {HANDLING}."


def _lift_words(lift: Lift, units: Units) -> str:
    weight = f"about {weight_text(lift.weight, units)}: {hands_words(lift.weight)}"
    if lift.heaviest is None:
        return " ".join(filter(None, (lift.words, weight)))
    alone = f"the heaviest alone about {weight_text(lift.heaviest, units)}: {hands_words(lift.heaviest)}"
    return f"{lift.words or 'the units'} joined {weight}; {alone}"


def lifting_of_house(pounds: Mapping[str, float], units: Units) -> list[str]:
    """Say who lifts the windows of a house, by mark and weight [lb]: one line for windows that take as many hands."""
    by_hands: dict[str, list[str]] = {}
    for mark, weight in sorted(pounds.items(), key=lambda one: one[1]):
        by_hands.setdefault(hands_words(weight), []).append(f"{mark} about {weight_text(weight, units)}")
    return [f"Glass: {hands}; {HANDLING}: {', '.join(marks)}." for hands, marks in by_hands.items()]


def hands_words(pounds: float) -> str:
    """Say how many hands a weight [lb] takes."""
    if pounds <= ONE_PERSON:
        return "one person can lift it, two set it"
    if pounds <= TWO_PEOPLE:
        return "two people to lift it"
    if pounds <= MORE_PEOPLE:
        return "three or four people to lift it, or lifting gear"
    return "lifting gear, and people who know how to use it; never by hand alone"
