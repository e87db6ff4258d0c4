"""What keeps the movement of wood from being worked out; the subject is the stock."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.job.reading.faults import advice
from jambs.length import Units


@dataclass(frozen=True, slots=True, kw_only=True)
class SeveralWoods(Finding):
    """A stock by whose name yards sell several woods; ``species``: those the table has."""

    code: ClassVar[str] = "several-woods"
    severity: Severity = Severity.STOP
    species: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Ask which it is."""
        stock = self.subject.name
        return (
            f'woods "{stock}": yards sell several woods by this name, and they move differently; say which under '
            f'woods, like {stock}: {{species: "{self.species[0]}"}}. The table has {"; ".join(self.species)}'
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NoSuchSpecies(Finding):
    """A species that the table does not have; ``known``: those it has."""

    code: ClassVar[str] = "no-such-species"
    severity: Severity = Severity.STOP
    species: str
    known: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Say which one may be meant."""
        near = advice(self.species, self.known, otherwise=f"write one of {'; '.join(self.known)}")
        return f'woods "{self.subject.name}": the table has no species {self.species!r}; {near}'
