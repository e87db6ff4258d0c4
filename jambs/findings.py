"""What the reader of a sheet must know, as data: a code, how much it matters, what it is about, and its values.

Arithmetic makes findings from values; the sentence is put to them where people read, in the units of the job. Each room
keeps its own in ``findings.py``, and what speaks for a choice in ``reasons.py``.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from typing import ClassVar

from jambs.length import Units


class Severity(StrEnum):
    """How much a finding matters: to know, to see to before it is cut, to settle before it is built."""

    NOTE = "note"
    CHECK = "check"
    STOP = "stop"


class SubjectKind(StrEnum):
    """What a finding can be about."""

    OPENING = "opening"
    PART = "part"
    WALL = "wall"
    STOCK = "stock"
    ELEVATION = "elevation"
    HOUSE = "house"
    SECTION = "section"
    GLASS = "glass"
    PLAN = "plan"


@dataclass(frozen=True, slots=True, kw_only=True)
class Subject:
    """What a finding is about: a mark of an opening or a part, the name of a wall, a stock, an elevation, the house.

    Of a section the side of the opening it is cut at; a glass has no name.
    """

    kind: SubjectKind
    name: str

    @classmethod
    def opening(cls, mark: str) -> Subject:
        """An opening, by its mark."""
        return cls(kind=SubjectKind.OPENING, name=mark)

    @classmethod
    def wall(cls, name: str) -> Subject:
        """A wall of the job, by its name."""
        return cls(kind=SubjectKind.WALL, name=name)

    @classmethod
    def stock(cls, name: str) -> Subject:
        """A stock that parts are made of, by its name."""
        return cls(kind=SubjectKind.STOCK, name=name)

    @classmethod
    def elevation(cls, name: str) -> Subject:
        """An elevation, by its name."""
        return cls(kind=SubjectKind.ELEVATION, name=name)

    @classmethod
    def house(cls, name: str) -> Subject:
        """The whole house, by the name of the job."""
        return cls(kind=SubjectKind.HOUSE, name=name)

    @classmethod
    def section(cls, side: str) -> Subject:
        """A section, by the side of the opening it is cut at."""
        return cls(kind=SubjectKind.SECTION, name=side)

    @property
    def words(self) -> str:
        """The subject in words: ``opening W1``, ``wall 'main'``."""
        return f"{self.kind} {self.name!r}" if self.kind is SubjectKind.WALL else f"{self.kind} {self.name}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Statement(ABC):
    """Something the papers say: a code that stays, values in inches and degrees, and a sentence made of them."""

    code: ClassVar[str]

    @abstractmethod
    def sentence(self, units: Units) -> str:
        """Return the whole sentence, lengths in these units."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reason(Statement):
    """What speaks for a choice, or against another one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding(Statement):
    """Something the reader of the sheet must know, of one subject."""

    subject: Subject
    severity: Severity


class FindingsError(Exception):
    """Work that cannot go on; ``findings`` says why, one or several."""

    def __init__(self, *findings: Finding) -> None:
        super().__init__(*findings)  # the arguments travel when another process raised it
        self.findings = findings

    def sentences(self, units: Units) -> tuple[str, ...]:
        """Return what is wrong, one whole sentence for each finding."""
        return tuple(one.sentence(units) for one in self.findings)

    def __str__(self) -> str:
        return "\n".join(self.sentences(Units.INCH))


def urgent(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Return what has to be settled before anything is built, each once."""
    return tuple(dict.fromkeys(one for one in findings if one.severity is Severity.STOP))
