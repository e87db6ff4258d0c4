"""The tables beside a job file, as they were read."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class TableRead:
    """A table that was read whole: its file, and how many filled rows it has under its column names."""

    file: str
    rows: int

    @property
    def words(self) -> str:
        """Say how much was read, to hold against the table itself."""
        return f"{self.file}: {self.rows} {'row' if self.rows == 1 else 'rows'} read"
