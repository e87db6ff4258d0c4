"""The tables beside a job file, as they were read."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class TableRead:
    """A table that was read whole: its file, and how many filled rows it has under its column names.

    ``aside``: rows besides, of openings that are gone.
    """

    file: str
    rows: int
    aside: int = 0

    @property
    def words(self) -> str:
        """Say how much was read, to hold against the table itself."""
        kept = f", {self.aside} of openings that were removed left aside" if self.aside else ""
        return f"{self.file}: {self.rows} {'row' if self.rows == 1 else 'rows'} read{kept}"
