"""Honest walls and misreadings of the tape, seeded: made without looking at how misreadings are found.

Walls: off their plan by up to 3/8 in, leaning up to 3/16 in from the middle to the edge, one diagonal up to 1/16 in
lower, each side bowed by up to 3/32 in, every reading off by up to 1/32 in and read to a sixteenth (common practice, no
source). Misreadings: those that the trade's own stories are about.
"""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from jambs.job.measured.measuring_points import Kind, Place
from jambs.job.measured.reading_checks import Held
from jambs.length import Units, length_text, read_length

MM = 25.4
MISREADINGS = ("an inch off", "transposed digits", "the other unit", "left and right swapped")
AROUND = ((0, 1), (0.5, 1), (1, 1), (1, 0.5), (1, 0), (0.5, 0), (0, 0), (0, 0.5))


@dataclass(frozen=True)
class Seeded:
    """Readings with one misreading in them: its kind and the numbers of the places it spoiled."""

    kind: str
    readings: tuple[Held, ...]
    spoiled: tuple[int, ...]
    is_out_of_range: bool = False


def honest(dice: random.Random, units: Units) -> tuple[Held, ...]:
    """Eight depths round an opening whose wall is no worse than walls are."""
    planned = round(dice.uniform(2, 9) * 32) / 32 if units is Units.INCH else round(dice.uniform(50, 230)) / MM
    offset, twist = dice.uniform(-3 / 8, 3 / 8), dice.uniform(-1 / 16, 1 / 16)
    across, up = dice.uniform(-3 / 16, 3 / 16), dice.uniform(-3 / 16, 3 / 16)
    bows = [dice.uniform(-3 / 32, 3 / 32) for _ in range(4)]
    readings = []
    for number, (x, y) in enumerate(AROUND, start=1):
        depth = planned + offset + across * (2 * x - 1) + up * (2 * y - 1) + twist * (2 * x - 1) * (2 * y - 1)
        depth += bows[number // 2 - 1] if number % 2 == 0 else 0.0
        depth += dice.uniform(-1 / 32, 1 / 32)
        read = round(depth * 16) / 16 if units is Units.INCH else round(depth * MM) / MM
        place = Place(number=number, kind=Kind.INTERIOR_DEPTH, words=str(number), keys=(), x=x, y=y)
        readings.append(Held(place=place, value=read, planned=planned))
    return tuple(readings)


def with_misreading(kind: str, readings: Sequence[Held], dice: random.Random, units: Units) -> Seeded | None:
    """Spoil honest readings; nothing where the misreading would not change a reading by a sixteenth."""
    at = dice.randrange(8)
    one = readings[at]
    if kind == "left and right swapped":
        mirrored = next(o for o in readings if (o.place.x, o.place.y) == (1 - one.place.x, one.place.y))
        values = {one.place.number: mirrored.value, mirrored.place.number: one.value}
    elif kind == "an inch off":
        values = {one.place.number: one.value + dice.choice((-1, 1)) * (1 if units is Units.INCH else 10 / MM)}
    elif kind == "the other unit":
        values = {one.place.number: round(one.value * MM) if units is Units.INCH else round(one.value, 1) / MM}
    else:
        turned = _turned(one.value, dice, units)
        values = {one.place.number: turned} if turned is not None else {}
    spoiled = tuple(replace(o, value=values[o.place.number]) if o.place.number in values else o for o in readings)
    changed = tuple(o.place.number for o, n in zip(readings, spoiled, strict=True) if abs(o.value - n.value) > 0.06)
    if not changed:
        return None
    return Seeded(kind, spoiled, changed, is_out_of_range=any(o.value > 36 for o in spoiled))


def _turned(value: float, dice: random.Random, units: Units) -> float | None:
    """Exchange two neighboring digits of a reading as it is typed, if that can still be read."""
    text = length_text(value, units=units, mark=False)
    digits = [at for at, letter in enumerate(text) if letter.isdigit()]
    pairs = list(pairwise(digits))
    dice.shuffle(pairs)
    for one, two in pairs:
        letters = list(text)
        letters[one], letters[two] = letters[two], letters[one]
        try:
            length = read_length("".join(letters), units=units)
        except (ValueError, ZeroDivisionError):
            continue
        if math.isfinite(length) and abs(length - value) > 0.06:
            return length
    return None


def seeded(count: int, seed: int) -> list[tuple[Units, Seeded]]:
    """Return so many openings with one misreading each, the kinds in turn, two thirds of them in inches."""
    dice = random.Random(seed)
    found: list[tuple[Units, Seeded]] = []
    while len(found) < count:
        units = Units.MM if len(found) % 3 == 2 else Units.INCH
        misreading = with_misreading(MISREADINGS[len(found) % 4], honest(dice, units), dice, units)
        if misreading:
            found.append((units, misreading))
    return found
