"""Tables of findings: for every code when it appears, when it just does not, and its sentence in both units.

A row is made of two cases on both sides of one limit, as near to it as the grid allows.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from types import ModuleType

import pytest

from jambs.findings import Severity, Statement, Subject
from jambs.length import Units

Case = Callable[[], Iterable[Statement]]
"""Gives all findings and reasons of one case."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One finding: ``appears`` has it, ``quiet`` has not (None: it is always said); the whole sentence in both units.

    ``mm`` may be left out where the sentence holds no length.
    """

    code: str
    appears: Case
    quiet: Case | None
    inch: str
    mm: str = ""
    severity: Severity | None = None
    about: Subject | None = None


def each(rows: Sequence[Row]) -> pytest.MarkDecorator:
    """Run a test for every row of a table."""
    return pytest.mark.parametrize("row", rows, ids=[f"{number} {row.code}" for number, row in enumerate(rows, 1)])


def check(row: Row) -> None:
    """Hold a row: the finding is there with its sentence, and just on the good side of the limit it is not."""
    found = [one for one in row.appears() if one.code == row.code]
    assert [one.sentence(Units.INCH) for one in found] == [row.inch]
    assert [one.sentence(Units.MM) for one in found] == [row.mm or row.inch]
    if row.severity is not None:
        assert [getattr(one, "severity", None) for one in found] == [row.severity]
    if row.about is not None:
        assert [getattr(one, "subject", None) for one in found] == [row.about]
    quiet = row.quiet() if row.quiet else ()
    assert [one.sentence(Units.INCH) for one in quiet if one.code == row.code] == []


def statements_in(module: ModuleType) -> list[type[Statement]]:
    """The findings and reasons that a register defines."""
    found = [one for one in vars(module).values() if isinstance(one, type) and one.__module__ == module.__name__]
    return [one for one in found if issubclass(one, Statement) and "code" in vars(one)]


def codes_in(*modules: ModuleType) -> set[str]:
    """The codes of registers."""
    return {one.code for module in modules for one in statements_in(module)}
