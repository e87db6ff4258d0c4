"""A reading as a telephone sends it: held against what stands in the table, and turned into the table's text."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from jambs.job.measured.filling import Filled
from jambs.job.measured.measures import BY as WHO
from jambs.job.measured.measures import DATE
from jambs.job.measured.measuring_points import Kind, Place, place_words
from jambs.length import OFF_GRID, LengthError, Units, length_text, read_length

LONGEST_NAME = 60
"""Letters of a name under *measured by*."""
TYPED = {Units.INCH: "in", Units.MM: "mm"}
"""How a unit is typed behind a figure."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SentReading:
    """A reading as a telephone sends it. ``was``: what it saw at that place before; ``day``: ``2026-06-01``.

    It may have waited for a network while the job changed: so ``asked`` says which place the telephone asked for, in
    its words, and ``units`` what a figure without a unit was typed in, as its page was then; nothing: as the job is.
    """

    id: str
    mark: str
    place: int
    text: str
    was: str
    is_sure: bool
    day: str
    by: str
    asked: str = ""
    units: str = ""


class NotTaken(Exception):
    """A reading that cannot be written; its message is a sentence for whoever holds the tape."""


class Changed(NotTaken):
    """A reading of a place that is gone or another one by now: the opening has another mark, another shape."""


class ReadOtherwise(Exception):
    """Somebody else has read another length at the same place meanwhile; ``there``: what stands in the table."""

    def __init__(self, there: str, by: str) -> None:
        super().__init__(there, by)  # the arguments travel when the process aside raised it
        self.there, self.by = there, by


def hold_to_asked(entry: SentReading, place: Place) -> None:
    """See that the number still means the place that was read: another shape of the opening counts others.

    Raises:
        Changed: it does not.
    """
    now = place_words(place)
    if entry.asked and entry.asked != now:
        raise Changed(
            f"{entry.mark} has changed since this was read: place {entry.place} was {entry.asked}, now it is {now}."
        )


def table_text(entry: SentReading, place: Place, units: Units) -> str:
    """Return a reading as the table has it.

    Raises:
        NotTaken: it is none.
    """
    if place.kind is Kind.WALL_FINISH:
        if entry.text not in ("yes", "no"):
            raise NotTaken("Say yes or no: is the wall finish on?")
        return entry.text
    typed_in = Units(entry.units) if entry.units in tuple(Units) else units
    try:
        length = read_length(entry.text, units=typed_in)
    except LengthError as error:
        raise NotTaken(f"{error}.") from None
    plain = length_text(length, units=units, mark=False)
    with_unit = f"{entry.text} {TYPED[typed_in]}"
    return next((one for one in (plain, entry.text) if _is_length(one, length, units)), with_unit)


def _is_length(text: str, length: float, units: Units) -> bool:
    try:
        return abs(read_length(text, units=units) - length) < OFF_GRID
    except LengthError:
        return False


def hold_against_others(entry: SentReading, text: str, held: Mapping[str, object], units: Units) -> None:
    """Let a reading in where its telephone saw what stands there, or where the same stands there."""
    cell = held.get(str(entry.place))
    there = getattr(cell, "text", "")
    if there and not _is_same(there, entry.was, units) and not _is_same(there, text, units):
        raise ReadOtherwise(there, getattr(held.get(WHO), "text", ""))


def _is_same(one: str, other: str, units: Units) -> bool:
    try:
        return one == other or _is_length(one, read_length(other, units=units), units)
    except LengthError:
        return False


def day_and_name(entry: SentReading, held: Mapping[str, str]) -> list[Filled]:
    """Fill in the day, the last one that something was read on, and who read it."""
    found = []
    if entry.day > held.get(DATE, ""):
        found.append(Filled(mark=entry.mark, place=DATE, text=entry.day))
    name = " ".join(entry.by.split())[:LONGEST_NAME]
    if name and name != held.get(WHO, ""):
        found.append(Filled(mark=entry.mark, place=WHO, text=name))
    return found
