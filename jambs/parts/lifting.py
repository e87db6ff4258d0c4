"""How many hands a window needs, by its weight."""

from __future__ import annotations

from collections.abc import Mapping

from jambs.length import Units
from jambs.place.weight_words import weight_text

ONE_PERSON = 51.0
"""Most that one person lifts under the best conditions [lb]: 23 kg, load constant of the NIOSH lifting equation (1994),
from memory."""
TWO_PEOPLE = 100.0
"""Most for two people [lb]: 45 kg, under twice as much, as they never share it evenly; common practice, no source."""
MORE_PEOPLE = 200.0
"""Most for four people [lb]: 90 kg; past it lifting gear; common practice, no source."""

HANDLING = "gloves; never lean on a sash that is only tacked"


def lifting_words(pounds: float, units: Units, *, heaviest: float | None = None) -> str:
    """Say who lifts a window of a weight [lb], and how; ``heaviest`` [lb]: the heaviest of several units."""
    if heaviest is None:
        return f"Glass: about {weight_text(pounds, units)}: {hands_words(pounds)}; {HANDLING}."
    return (
        f"Glass: the units joined about {weight_text(pounds, units)}: {hands_words(pounds)}; the heaviest alone about "
        f"{weight_text(heaviest, units)}: {hands_words(heaviest)}; {HANDLING}."
    )


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
