"""Findings and reasons for tests that only need something to print."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Reason, Statement, Subject, SubjectKind
from jambs.length import Units

ABOUT = Subject(kind=SubjectKind.OPENING, name="W01")


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidFinding(Finding):
    """A finding whose sentence is given."""

    code: ClassVar[str] = "said-in-a-test"
    subject: Subject = ABOUT
    text: str

    def sentence(self, units: Units) -> str:
        return self.text


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidReason(Reason):
    """A reason whose sentence is given."""

    code: ClassVar[str] = "reason-in-a-test"
    text: str

    def sentence(self, units: Units) -> str:
        return self.text


def sentences(found: Iterable[Statement], units: Units = Units.INCH) -> list[str]:
    """The sentences of findings or reasons, in inches unless told."""
    return [one.sentence(units) for one in found]
