"""Lengths as the trade writes them: reading, rounding, printing.

One internal unit: the inch, as a float (n/64 in is exact in binary; millimeters are not).
Rounding happens here and nowhere else: to an integer count of a grid, then split. Never floor first.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

MM_PER_INCH = 25.4
METERS_PER_INCH = MM_PER_INCH / 1000
HALF_64TH = 1 / 128
"""Half a sixty-fourth [in]: two sizes nearer than this are one size on paper."""
ROUND_OFF = 1e-9
"""What floats leave over in a sum, a share or a count: two values nearer than this are equal."""
OFF_GRID = 1e-6
"""Nearer to a step of the grid than this, a length is on it: a stated millimeter is not exact in inches [in, steps]."""


def whole_up(count: float) -> int:
    """Return the least whole number that is not under a count."""
    return math.ceil(count - ROUND_OFF)


def whole_down(count: float) -> int:
    """Return the greatest whole number that is not over a count."""
    return math.floor(count + ROUND_OFF)


class LengthError(ValueError):
    """A text that is not a length; its message says what was found and what is allowed."""


class Units(StrEnum):
    """The unit a job is written and printed in."""

    INCH = "inch"
    MM = "mm"

    def text(self, length: float) -> str:
        """Print a length [in] in this unit: ``4 11/16"``, ``119 mm``."""
        return length_text(length, units=self)


_PRIME = str.maketrans({"′": "'", "’": "'", "″": '"', "”": '"', "“": '"', "–": "-", "−": "-", "⁄": "/"})
_VULGAR = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}
_NUMBER = r"\d+(?:\.\d+)?|\.\d+"
_METRIC = re.compile(rf"(-?)({_NUMBER})\s*(mm|cm|m)")
_IMPERIAL = re.compile(
    rf"(?P<sign>-?)(?:(?P<feet>{_NUMBER})\s*(?:'|ft\b)\s*-?\s*)?"
    rf"(?:(?P<whole>{_NUMBER})(?![\d/]))?"
    r"(?:(?:(?<=\d)(?:\s+|-)|(?<![\d.]))(?P<top>\d+)/(?P<bottom>\d+))?"
    r"\s*(?:\"|in\b|inch\b|inches\b)?"
)
TAPE = (2, 4, 8, 16, 32, 64)
"""What an inch is divided by on a tape; another fraction is a typing mistake."""
_MM = {"mm": 1.0, "cm": 10.0, "m": 1000.0}


def _plain(text: str) -> str:
    for glyph, plain in _VULGAR.items():
        text = re.sub(rf"(?<=\d)\s*{glyph}", f" {plain}", text).replace(glyph, plain)
    return text.translate(_PRIME).strip().lower()


def read_length(text: str | float, *, units: Units, is_taped: bool = True) -> float:
    """Read one length [in].

    Accepts ``5 1/2``, ``4-9/16"``, ``2'-11 1/2"``, ``902 mm``, ``90.2 cm``, ``7.5``; a bare number is in
    the job's units, a fraction or a foot or inch mark is always inches. ``is_taped``: fractions are those of a tape;
    labels, which nobody measures, come in thirds too.

    Raises:
        LengthError: the text is not a length.
    """
    if isinstance(text, int | float):
        text = repr(text)
    plain = _plain(text)
    if metric := _METRIC.fullmatch(plain):
        sign, number, unit = metric.groups()
        return math.copysign(float(number) * _MM[unit] / MM_PER_INCH, -1.0 if sign else 1.0)
    bare = re.fullmatch(rf"-?(?:{_NUMBER})", plain)
    if bare and units is Units.MM:
        return float(plain) / MM_PER_INCH
    if units is Units.MM and not re.search(r"['\"]|in", plain):
        raise LengthError(_not_a_length(text, "in a mm job inches carry their mark"))
    return _read_imperial(plain, text, is_taped=is_taped)


def _read_imperial(plain: str, text: str, *, is_taped: bool) -> float:
    found = _IMPERIAL.fullmatch(plain)
    if not found or not any(found[name] for name in ("feet", "whole", "top")):
        raise LengthError(_not_a_length(text))
    if found["top"] and int(found["top"]) >= int(found["bottom"]):
        raise LengthError(_not_a_length(text, "the fraction is not less than one; is a space missing?"))
    if is_taped and found["bottom"] and int(found["bottom"]) not in TAPE:
        raise LengthError(_not_a_length(text, "a tape is divided in halves, quarters, to sixty-fourths"))
    if found["top"] and found["whole"] and "." in found["whole"]:
        raise LengthError(_not_a_length(text))
    inches = 12 * float(found["feet"] or 0) + float(found["whole"] or 0)
    if found["top"]:
        inches += int(found["top"]) / int(found["bottom"])
    return -inches if found["sign"] else inches


def _not_a_length(text: str, why: str = "") -> str:
    reason = f" ({why})" if why else ""
    return f'{text!r} is not a length{reason}; write it like 5 1/2, 4-9/16", 2\'-11 1/2", 7.5 or 902 mm'


@dataclass(frozen=True, slots=True)
class Grid:
    """The step sizes are rounded to: ``numerator/denominator`` of an inch or of a millimeter."""

    units: Units
    numerator: int
    denominator: int

    @property
    def step(self) -> float:
        """One step of the grid [in]."""
        size = self.numerator / self.denominator
        return size if self.units is Units.INCH else size / MM_PER_INCH

    def count(self, length: float) -> int:
        """Return the whole number of steps nearest to a length [in]; a half step goes up."""
        return math.floor(_in_units(length, self.units) * self.denominator / self.numerator + 0.5 + ROUND_OFF)

    def at(self, count: int) -> float:
        """Return the length of a whole number of steps [in]."""
        size = count * self.numerator / self.denominator
        return size if self.units is Units.INCH else size / MM_PER_INCH

    def round(self, length: float) -> float:
        """Return the grid length nearest to a length [in]."""
        return self.at(self.count(length))

    def up(self, length: float) -> float:
        """Return the least grid length that is not shorter than a length [in]."""
        return self.at(math.ceil(_in_units(length, self.units) * self.denominator / self.numerator - OFF_GRID))

    def down(self, length: float) -> float:
        """Return the greatest grid length that is not longer than a length [in]."""
        return -self.up(-length)

    def holds(self, length: float) -> bool:
        """Say whether a length [in] lies on the grid."""
        return abs(self.round(length) - length) < OFF_GRID

    @property
    def fine(self) -> Grid:
        """The finest step that is ever printed: 1/64 in or 0.1 mm."""
        return FINE[self.units]

    def as_sawn(self, length: float) -> float:
        """Return a length [in] as it is read off and sawn.

        What was stated, and every sum of it, is on the finest grid of a shop and stays; what an angle made goes here.
        """
        return length if GRIDS[_FINEST[self.units]].holds(length) else self.round(length)

    def odd_in_row(self, lengths: Sequence[float]) -> list[int]:
        """Return which of the lengths [in] of a row keep them from adding up, as read, to their whole as read.

        Where each rounded by itself comes to a step more or less, it is those that an angle made and that were rounded
        farthest that way, of equals the last; never what was stated.
        """
        read = [self.as_sawn(one) for one in lengths]
        over = (sum(read) - self.as_sawn(sum(lengths))) / self.step
        way = math.copysign(1.0, over)
        rounded = [(way * (was - one), number) for number, (was, one) in enumerate(zip(read, lengths, strict=True))]
        free = sorted((one for one in rounded if abs(one[0]) > OFF_GRID), reverse=True)
        return sorted(number for _, number in free[: int(abs(over) + ROUND_OFF)])

    def text(self, length: float, *, mark: bool = True) -> str:
        """Print a length [in] as the shop reads it: ``4 11/16"``, ``119 mm``; what an angle made, on the grid."""
        return length_text(self.as_sawn(length), units=self.units, mark=mark)


FINE = {Units.INCH: Grid(Units.INCH, 1, 64), Units.MM: Grid(Units.MM, 1, 10)}
GRIDS = {
    "1/16": Grid(Units.INCH, 1, 16),
    "1/32": Grid(Units.INCH, 1, 32),
    "1/64": Grid(Units.INCH, 1, 64),
    "0.5 mm": Grid(Units.MM, 1, 2),
    "1 mm": Grid(Units.MM, 1, 1),
}
_FINEST = {Units.INCH: "1/64", Units.MM: "0.5 mm"}

FRAMING_GRIDS = {
    "1/16": Grid(Units.INCH, 1, 16),
    "1/8": Grid(Units.INCH, 1, 8),
    "1/4": Grid(Units.INCH, 1, 4),
    "1/2": Grid(Units.INCH, 1, 2),
    "1 mm": Grid(Units.MM, 1, 1),
    "5 mm": Grid(Units.MM, 5, 1),
    "10 mm": Grid(Units.MM, 10, 1),
}
"""What framing is sawn to; openings are rounded up to it."""
TAPE_GRIDS = {Units.INCH: FRAMING_GRIDS["1/16"], Units.MM: FRAMING_GRIDS["1 mm"]}
"""What is marked on a framer's tape."""


def _in_units(length: float, units: Units) -> float:
    return length if units is Units.INCH else length * MM_PER_INCH


def length_text(length: float, *, units: Units, mark: bool = True) -> str:
    """Print a length [in]: inches to 1/64 with a reduced fraction, millimeters to 0.1; ``mark`` adds the unit."""
    count = FINE[units].count(abs(length))
    sign = "-" if length < 0 and count else ""
    if units is Units.MM:
        whole, tenth = divmod(count, 10)
        number = f"{sign}{whole}.{tenth}" if tenth else f"{sign}{whole}"
        return f"{number} mm" if mark else number
    whole, rest = divmod(count, 64)
    fraction = Fraction(rest, 64)
    parts = [str(whole)] if whole or not rest else []
    if rest:
        parts.append(f"{fraction.numerator}/{fraction.denominator}")
    return sign + " ".join(parts) + ('"' if mark else "")


def feet_text(length: float, *, units: Units, least: float = 36.0) -> str:
    """Print a long length: ``2'-11 1/2"`` from three feet up, as ``length_text`` below that and in millimeters.

    ``least``: another length from which feet are printed; 0 in a column of heights, which are in one style [in].
    """
    if units is Units.MM or abs(length) < least:
        return length_text(length, units=units)
    count = FINE[units].count(abs(length))
    feet, rest = divmod(count, 12 * 64)
    inches = length_text(rest / 64, units=units)
    return f"{'-' if length < 0 else ''}{feet}'-{'0 ' if 0 < rest < 64 else ''}{inches}"


def decimal_text(value: float, digits: int) -> str:
    """Print a number that is not a length (an angle, a weight) with at most so many decimals, no trailing zeros."""
    text = f"{value:.{digits}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text in ("-0", "") else text


def share_text(share: float, digits: int = 0) -> str:
    """Print a share of one in percent: ``25 %``."""
    return f"{share * 100:.{digits}f} %"


def least_text(millimeters: float, *, units: Units) -> str:
    """Print a least length that a standard gives in millimeters, in the job's units: ``13/64" (5 mm)``.

    In inches it is rounded up, never below what the standard asks.
    """
    there = f"{millimeters:g} mm"
    if units is Units.MM:
        return there
    return f"{length_text(FINE[units].up(millimeters / MM_PER_INCH), units=units)} ({there})"
