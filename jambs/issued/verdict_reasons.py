"""What to do with a part that is cut already, once its figures changed."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import ClassVar

from jambs.findings import Reason
from jambs.length import Units


@dataclass(frozen=True, slots=True, kw_only=True)
class CutPartVerdict(Reason):
    """What to do with a part, or with a board that has its label."""


class RecutWhy(StrEnum):
    """What keeps a cut part from being used."""

    STOCK = "other stock"
    THICKNESS = "other thickness"
    SHAPE = "cut otherwise"
    NARROW = "too narrow"
    SHORT = "too short"
    ENDS = "its ends are cut for another length"
    PIECES = "other courses pass it"


class Trim(StrEnum):
    """How a board that is too large gets its new size."""

    RIP = "rip"
    CROSSCUT = "crosscut"


@dataclass(frozen=True, slots=True, kw_only=True)
class Recut(CutPartVerdict):
    """It has to be cut anew."""

    code: ClassVar[str] = "recut"
    why: RecutWhy

    def sentence(self, units: Units) -> str:
        """Say why."""
        return f"recut: {self.why}"


def trim_words(trims: tuple[Trim, ...]) -> str:
    """Return what to do with a board that is larger: ``rip and crosscut to the new size``."""
    return f"{' and '.join(trims)} to the new size"


@dataclass(frozen=True, slots=True, kw_only=True)
class StillGood(CutPartVerdict):
    """It can be used, trimmed where it is larger."""

    code: ClassVar[str] = "still-good"
    trims: tuple[Trim, ...] = ()

    def sentence(self, units: Units) -> str:
        """Say so, and how it is trimmed."""
        return f"still good: {trim_words(self.trims)}" if self.trims else "still good"


@dataclass(frozen=True, slots=True, kw_only=True)
class TrimIt(CutPartVerdict):
    """What is said on a list of labels where a board is larger than what its part is now."""

    code: ClassVar[str] = "trim-it"
    trims: tuple[Trim, ...]

    def sentence(self, units: Units) -> str:
        """Say how."""
        return trim_words(self.trims)


@dataclass(frozen=True, slots=True, kw_only=True)
class NoLongerNeeded(CutPartVerdict):
    """The opening has no such part any more."""

    code: ClassVar[str] = "no-longer-needed"

    def sentence(self, units: Units) -> str:
        """Say so."""
        return "no longer needed"


@dataclass(frozen=True, slots=True, kw_only=True)
class ThrowAway(CutPartVerdict):
    """A label whose part there is no more."""

    code: ClassVar[str] = "throw-away"

    def sentence(self, units: Units) -> str:
        """Say what to do."""
        return "throw away"


@dataclass(frozen=True, slots=True, kw_only=True)
class CutIt(CutPartVerdict):
    """A part that there was not before."""

    code: ClassVar[str] = "cut-it"

    def sentence(self, units: Units) -> str:
        """Say what to do."""
        return "cut it"
