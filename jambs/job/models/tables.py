"""The tables beside a job file, as they were read."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class TableRead:
    """A table that was read whole: its file, and how many filled rows it has under its column names.

    ``aside``: the marks of filled rows besides, whose opening is gone or has their place no more.
    """

    file: str
    rows: int
    aside: tuple[str, ...] = ()

    @property
    def words(self) -> str:
        """Say how much was read, to hold against the table itself."""
        gone = ", ".join(dict.fromkeys(self.aside))
        kept = f", {len(self.aside)} left aside of what is gone since ({gone})" if self.aside else ""
        return f"{self.file}: {self.rows} {'row' if self.rows == 1 else 'rows'} read{kept}"
