"""Everything that is wrong with a job, gathered while it is read."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any, TypeVar

from jambs.job.models.fields import Model
from jambs.job.models.tables import TableRead
from jambs.job.reading.faults import Fault, JobFaults, Location
from jambs.job.reading.sentences import check
from jambs.job.reading.tree import TextSource
from jambs.length import Units

Checked = TypeVar("Checked", bound=Model)


class Complaints:
    """The faults found so far, the units in which they are told, and the tables that were read."""

    def __init__(self, *, units: Units, first_file: str, faults: Iterable[Fault] = ()) -> None:
        self.units = units
        self.first_file = first_file
        self.faults = list(faults)
        self.tables: list[TableRead] = []

    def say(self, source: TextSource, location: Location, sentence: str) -> None:
        """Note a fault at a location within a piece."""
        self.faults.append(source.fault(location, sentence))

    def check(self, model: type[Checked], source: TextSource) -> Checked | None:
        """Check a piece against its model; note what is wrong, return it if nothing is."""
        found, faults = check(model, source, units=self.units)
        self.faults += faults
        return found

    def check_merged(
        self, model: type[Checked], base: TextSource, own: TextSource, merged: Mapping[str, Any]
    ) -> Checked | None:
        """Check what an opening changes of a named piece; faults of the named piece itself are not told again."""
        told = {fault.sentence for fault in check(model, base, units=self.units)[1]}
        found, faults = check(model, own, units=self.units, value=merged)
        self.faults += [fault for fault in faults if fault.sentence not in told]
        return found

    def settle(self) -> None:
        """Let the job pass if nothing is wrong.

        Raises:
            JobFaults: everything that is wrong, in the order of the lines, the job file first.
        """
        if self.faults:
            place = {self.first_file: 0}
            raise JobFaults(sorted(self.faults, key=lambda f: (place.get(f.file, 1), f.file, f.line)))
