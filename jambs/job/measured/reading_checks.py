"""Likely misreadings of tape and pencil: each reading held against the plan and its neighbors, and asked about by name.

A wall that differs from its plan does so smoothly: all depths of an opening are off by much the same, they change
steadily across it, and between them remain bows of a sixteenth or so. The spreads of the three are stated below; what a
reading should be follows from them and from the other readings (least squares with those spreads), and so does how far
an honest one may be off.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from jambs.job.measured.measuring_points import DEPTHS, FINISHED, LEANS, Kind, Place
from jambs.length import MM_PER_INCH, OFF_GRID, ROUND_OFF, LengthError, Units, length_text, read_length

OFFSET_SPREAD = 0.25
"""How far walls differ from their plan as a whole: standard deviation [in]; common practice, no source."""
LEAN_SPREAD = 0.125
"""How far they differ from the middle of an opening to its edge [in]; common practice, no source."""
BOW_SPREAD = 0.0625
"""What remains at single places [in]; common practice, no source."""
FRAME_SPREAD = 0.0625
"""Of a frame's size and face [in]; common practice, no source."""
FINISHED_SPREAD = 0.125
"""Of an opening that is lined in board and coated [in]; common practice, no source."""
ODD = 3.2
"""A reading farther off than so many spreads is asked about."""
WALL_EXPLAINS = ODD * OFFSET_SPREAD
"""A wall alone puts the depths of a whole opening off their plan by this much at the most [in]."""
ODD_AND_NAMED = 2.4
"""So is a nearer one that a misreading of the usual kinds would explain this well."""
EXPLAINED = 2.0
"""A misreading explains a reading if the right value is then within so many spreads."""
GREATEST_LEAN = 0.5
"""Out of plumb or level by more is asked about [in]; common practice, no source."""
TAPE = (1, 2, 4, 8, 16, 32, 64)
READ_IN = 16
"""A tape is read in sixteenths, reduced or not: 5 4/16 stands for 5 1/4, but 5 16/64 does not."""
Basis = tuple[float, float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
    """A reading with its planned value [in]."""

    place: Place
    value: float
    planned: float

    @property
    def off(self) -> float:
        """How much more was read than planned [in]."""
        return self.value - self.planned


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingQuestion:
    """A reading to ask about: place, the likely misreading in words, what was probably meant [in] or None."""

    place: Place
    value: float
    expected: float
    misreading: str
    meant: float | None = None

    def words(self, *, units: Units) -> str:
        """Ask in one sentence: what was read, what was expected, the likely misreading."""
        read, expected = (length_text(one, units=units) for one in (self.value, self.expected))
        where = f"place {self.place.number} ({self.place.kind.value}, {self.place.words})"
        if self.place.kind not in DEPTHS:
            where = f"place {self.place.number} ({self.place.words})"
        meant = "" if self.meant is None else f" Was {length_text(self.meant, units=units)} meant?"
        told = f"{where} reads {read}, expected from the plan and its neighbors about {expected}"
        return f"{told}: {self.misreading}?{meant}"


def find_misreadings(
    readings: Sequence[Held], *, units: Units, sure: Sequence[int] = ()
) -> tuple[ReadingQuestion, ...]:
    """Ask about every reading that is likely a misreading; those that are ``sure`` are believed."""
    found: list[ReadingQuestion] = []
    for kind in DEPTHS:
        found += _depth_misreadings([one for one in readings if one.place.kind is kind], units, sure)
    for one in readings:
        if one.place.kind not in DEPTHS and one.place.number not in sure:
            found += _single_misreadings(one, units)
    return tuple(sorted(found, key=lambda one: one.place.number))


def _single_misreadings(one: Held, units: Units) -> Iterator[ReadingQuestion]:
    """A reading that only its plan speaks for: sizes and faces of the frame, plumb and level."""
    is_lean = one.place.kind in LEANS
    if is_lean and abs(one.value) <= GREATEST_LEAN:
        return
    if is_lean:
        yield ReadingQuestion(place=one.place, value=one.value, expected=0.0, misreading="is it really so far out")
        return
    spread = FRAME_SPREAD * (2 if one.place.kind is Kind.DIAGONAL else 1)
    spread = FINISHED_SPREAD if one.place.kind in FINISHED else spread
    question = _asked(one, one.planned, spread, units)
    if question:
        yield question


# ---- depths round an opening


def _basis(place: Place) -> Basis:
    """Offset, change left to right, change bottom to top: what a flat wall may do."""
    return (1.0, 2 * place.x - 1, 2 * place.y - 1)


@dataclass(frozen=True, slots=True)
class _Wall:
    """What is known of a wall from some readings: mean and covariance of offset and leans."""

    mean: Basis
    spread: tuple[Basis, Basis, Basis]

    def expected(self, place: Place) -> tuple[float, float]:
        """How far off its plan a place should be, and the spread of an honest reading there [in]."""
        basis = _basis(place)
        return _dot(basis, self.mean), math.sqrt(_dot(basis, _times(self.spread, basis)) + BOW_SPREAD**2)

    def with_reading(self, one: Held) -> _Wall:
        """Learn from one more reading."""
        basis = _basis(one.place)
        reach = _times(self.spread, basis)
        weight = 1 / (_dot(basis, reach) + BOW_SPREAD**2)
        miss = one.off - _dot(basis, self.mean)
        mean = tuple(m + weight * r * miss for m, r in zip(self.mean, reach, strict=True))
        rows = tuple(
            tuple(s - weight * r * q for s, q in zip(row, reach, strict=True))
            for row, r in zip(self.spread, reach, strict=True)
        )
        return _Wall(mean, rows)  # type: ignore[arg-type]


def _dot(one: Basis, other: Basis) -> float:
    return sum(a * b for a, b in zip(one, other, strict=True))


def _times(rows: tuple[Basis, Basis, Basis], basis: Basis) -> Basis:
    first, second, third = (_dot(row, basis) for row in rows)
    return first, second, third


_UNREAD = _Wall((0.0, 0.0, 0.0), ((OFFSET_SPREAD**2, 0.0, 0.0), (0.0, LEAN_SPREAD**2, 0.0), (0.0, 0.0, LEAN_SPREAD**2)))


def _wall(readings: Sequence[Held]) -> _Wall:
    wall = _UNREAD
    for one in readings:
        wall = wall.with_reading(one)
    return wall


def _misses(one: Held, others: Sequence[Held]) -> float:
    """How many spreads a reading is from what the others and the plan expect."""
    expected, spread = _wall(others).expected(one.place)
    return abs(one.off - expected) / spread


def _without(readings: Sequence[Held], *out: Held) -> list[Held]:
    return [one for one in readings if one not in out]


def _depth_misreadings(readings: Sequence[Held], units: Units, sure: Sequence[int]) -> list[ReadingQuestion]:
    """Ask about the oddest reading, leave it out, look again; pairs that were swapped first.

    One that is sure is left out too: it is right, but says nothing of its neighbors.
    """
    if whole := _whole_off(readings, units, sure):
        return whole
    found = _swapped(readings, sure)
    odd = {question.place.number for question in found}
    kept = [one for one in readings if one.place.number not in odd]
    while kept:
        worst = max(kept, key=lambda one: _misses(one, _without(kept, one)))
        question = _odd_depth(worst, _without(kept, worst), units)
        if question is None:
            break
        found += [question] if worst.place.number not in sure else []
        kept = _without(kept, worst)
    return found


def _odd_depth(one: Held, others: Sequence[Held], units: Units) -> ReadingQuestion | None:
    expected, spread = _wall(others).expected(one.place)
    return _asked(one, one.planned + expected, spread, units)


def _asked(one: Held, expected: float, spread: float, units: Units) -> ReadingQuestion | None:
    """Ask about a reading if it is odd, or less odd and well explained by a misreading of the usual kinds."""
    misses = abs(one.value - expected) / spread
    if misses <= ODD_AND_NAMED:
        return None
    explained = _explanation(one.value, expected, spread, units)
    if explained:
        misreading, meant = explained
        return ReadingQuestion(place=one.place, value=one.value, expected=expected, misreading=misreading, meant=meant)
    if misses <= ODD:
        return None
    return ReadingQuestion(place=one.place, value=one.value, expected=expected, misreading="is it right")


def _whole_off(readings: Sequence[Held], units: Units, sure: Sequence[int]) -> list[ReadingQuestion]:
    """All readings of an opening off alike: the tape was burned an inch and nobody took it off again, or the like."""
    open_ones = [one for one in readings if one.place.number not in sure]
    if len(open_ones) < 3 or len(open_ones) < len(readings):
        return []
    middle = sorted(one.off for one in readings)[len(readings) // 2]
    if abs(middle) <= ODD * OFFSET_SPREAD:
        return []
    numbers = ", ".join(str(one.place.number) for one in readings)
    misreading = f"are places {numbers} all off alike, {_whole_step(middle, units)}"
    first = readings[0]
    return [ReadingQuestion(place=first.place, value=first.value, expected=first.planned, misreading=misreading)]


def _whole_step(middle: float, units: Units) -> str:
    off, unit = abs(middle), "an inch" if units is Units.INCH else "10 mm"
    if abs(off - _step(units)) <= OFFSET_SPREAD:
        return f"{unit} too {'much' if middle > 0 else 'little'}"
    return f"by {length_text(off, units=units)}"


def _swapped(readings: Sequence[Held], sure: Sequence[int]) -> list[ReadingQuestion]:
    """Find places left and right of each other whose readings fit far better the other way round."""
    found: list[ReadingQuestion] = []
    at = {(one.place.x, one.place.y): one for one in readings if one.place.number not in sure}
    for left in at.values():
        right = at.get((1 - left.place.x, left.place.y))
        if right is None or left.place.x >= 0.5:
            continue
        others = _without(readings, left, right)
        if len(others) < 3:
            continue
        wall = _wall(others)
        (one, spread), (two, _) = wall.expected(left.place), wall.expected(right.place)
        as_read = (left.off - one) ** 2 + (right.off - two) ** 2
        turned = (right.value - left.planned - one) ** 2 + (left.value - right.planned - two) ** 2
        if as_read > (ODD_AND_NAMED * spread) ** 2 and turned < (EXPLAINED * spread) ** 2 and as_read > 4 * turned:
            misreading = f"are left and right swapped, places {left.place.number} and {right.place.number}"
            found += [
                ReadingQuestion(
                    place=a.place, value=a.value, expected=a.planned + e, misreading=misreading, meant=b.value
                )
                for a, b, e in ((left, right, one), (right, left, two))
            ]
    return found


# ---- what a misreading would have made of the right value


def _step(units: Units) -> float:
    """The whole unit that is misread on a tape: an inch, ten millimeters [in]."""
    return 1.0 if units is Units.INCH else 10 / MM_PER_INCH


def _explanation(value: float, expected: float, spread: float, units: Units) -> tuple[str, float] | None:
    """Name the misreading that best explains a reading, and what was meant [in]."""
    near = [
        (abs(meant - expected) * trouble, misreading, meant)
        for trouble, misreading, meant in _meanings(value, units)
        if abs(meant - expected) <= EXPLAINED * spread
    ]
    return min(near)[1:] if near else None


def _meanings(value: float, units: Units) -> Iterator[tuple[float, str, float]]:
    """Yield what may have been meant: how little likely (1 or more), the misreading in words, the value [in]."""
    step = _step(units)
    unit = "an inch" if units is Units.INCH else "10 mm"
    yield 1.0, f"{unit} too little", value + step
    yield 1.0, f"{unit} too much", value - step
    if units is Units.MM:
        yield 1.5, "100 mm too little", value + 10 * step
        yield 1.5, "100 mm too much", value - 10 * step
        yield 1.0, "inches typed in a job in mm", value * MM_PER_INCH
        yield 1.0, "centimeters typed as mm", value * 10
    else:
        yield 1.0, "millimeters typed in a job in inches", value / MM_PER_INCH
        yield 1.5, "half an inch too little", value + step / 2
        yield 1.5, "half an inch too much", value - step / 2
    for text in sorted(_spellings(abs(value), units)):
        for meant in sorted(_transposed(text, units)):
            yield 1.5, "are two digits transposed", math.copysign(meant, value)


def _spellings(value: float, units: Units) -> set[str]:
    """Write a length in every way a tape lets it be read: 5 1/4, 5 2/8, 5 4/16, 5.25."""
    if units is Units.MM:
        return {f"{value * MM_PER_INCH:.1f}".removesuffix(".0")}
    found = {f"{value:.3f}".rstrip("0").rstrip(".")}
    reduced = next((bottom for bottom in TAPE if abs(round(value * bottom) / bottom - value) < ROUND_OFF), TAPE[-1])
    for bottom in TAPE:
        if bottom == reduced or reduced < bottom <= READ_IN:
            whole, rest = divmod(round(value * bottom), bottom)
            found.add(f"{whole} {rest}/{bottom}" if rest else str(whole))
    return found


def _transposed(text: str, units: Units) -> set[float]:
    """Return the lengths that two neighboring digits in the other order would make; a tape's fractions only."""
    places = [at for at, letter in enumerate(text) if letter.isdigit()]
    found = set()
    for one, two in pairwise(places):
        letters = list(text)
        letters[one], letters[two] = letters[two], letters[one]
        try:
            length = read_length("".join(letters), units=units)
        except (LengthError, ZeroDivisionError):
            continue
        if any(abs(length * bottom - round(length * bottom)) < OFF_GRID for bottom in TAPE) or units is Units.MM:
            found.add(length)
    return found
