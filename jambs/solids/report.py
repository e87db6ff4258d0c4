"""What a fit report is made of: measures, joints, clashes; and how sizes are told to a thousandth."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.length import MM_PER_INCH, Units

TIGHT = 0.001
"""A measure on the solids is right within a thousandth of an inch [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """Something measured on the solids: what and where, asked and found, and the tolerance [in or degrees]."""

    name: str
    asked: float
    found: float
    tolerance: float = TIGHT
    is_angle: bool = False

    @property
    def is_right(self) -> bool:
        """Say whether what was found is what was asked."""
        return abs(self.found - self.asked) <= self.tolerance


@dataclass(frozen=True, slots=True, kw_only=True)
class JointCheck:
    """Two parts that should touch: over what area they should and do [sq in], and how far apart they stand [in].

    ``gap`` is that of the faces nearest to each other, None where no faces look at each other.
    """

    name: str
    asked: float
    found: float
    tolerance: float
    gap: float | None

    @property
    def is_right(self) -> bool:
        """Say whether they touch as they should."""
        return abs(self.found - self.asked) <= self.tolerance


@dataclass(frozen=True, slots=True, kw_only=True)
class Clash:
    """Two solids that take the same room: names, common volume [cu in], size of the box around it [in]."""

    one: str
    two: str
    volume: float
    box: tuple[float, float, float]


FREE_OF_NOISE = 6
"""Decimal places to which what the kernel measures is free of the noise of its sums."""


def _told(value: float, digits: int) -> str:
    """Print a number with so many decimals: halves as what they are a hair from, and nothing less than zero as zero."""
    text = f"{round(value, FREE_OF_NOISE):.{digits}f}"
    return text.removeprefix("-") if float(text) == 0 else text


def sized(length: float, units: Units) -> str:
    """Print a length to a thousandth of an inch or a hundredth of a millimeter."""
    return f"{_told(length * MM_PER_INCH, 2)} mm" if units is Units.MM else f"{_told(length, 3)} in"


def sized_area(area: float, units: Units) -> str:
    """Print an area."""
    return f"{_told(area * MM_PER_INCH**2, 0)} mm²" if units is Units.MM else f"{_told(area, 3)} sq in"


def sized_volume(volume: float, units: Units) -> str:
    """Print a volume."""
    return f"{_told(volume * MM_PER_INCH**3, 0)} mm³" if units is Units.MM else f"{_told(volume, 4)} cu in"
