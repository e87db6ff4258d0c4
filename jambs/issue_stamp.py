"""What every paper says of its issue: number, day, a short code, the day it was measured, the issue it replaces."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Revision:
    """One issue of an opening as the table of issues has it: its number, its day, what changed then in words.

    ``mark``: what the opening had then.
    """

    number: int
    day: str
    words: str
    mark: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class IssueStamp:
    """The issue of a paper. ``day``: date of issue; ``measured``: day of its readings, empty where it is planned.

    ``replaces``: number of the issue that this one takes the place of, None for the first; ``replaced_mark``: the mark
    of the opening in it, where it was another one. Number 0 is not issued: a drawing that a script made.
    """

    number: int
    day: str
    code: str
    measured: str = ""
    replaces: int | None = None
    replaced_mark: str = ""

    @property
    def text(self) -> str:
        """The stamp as it stands at the foot of a page: ``issue 4 · 2026-05-18 · 7F3A``."""
        return f"issue {self.number} · {self.day} · {self.code}"

    @property
    def plain(self) -> str:
        """All of it in letters that every reader has: ``issue 4, 7F3A, of 2026-05-18, replaces issue 3``."""
        if not self.number:
            return f"not issued, {self.day}"
        return ", ".join(one for one in (f"issue {self.number}, {self.code}, of {self.day}", *self._more) if one)

    @property
    def _more(self) -> tuple[str, str]:
        return (f"measured {self.measured}" if self.measured else ""), self.replaced

    @property
    def replaced(self) -> str:
        """What it takes the place of: ``replaces issue 3``, where the opening had another mark ``… of W1``."""
        return "" if self.replaces is None else f"replaces issue {self._replaced_issue}"

    @property
    def _replaced_issue(self) -> str:
        return f"{self.replaces} of {self.replaced_mark}" if self.replaced_mark else str(self.replaces)

    @property
    def fields(self) -> dict[str, str]:
        """All of it by name, for files that hold names with values."""
        return {
            "issue": str(self.number),
            "code": self.code,
            "date of issue": self.day,
            "date measured": self.measured or "planned",
            "replaces issue": "none" if self.replaces is None else self._replaced_issue,
        }
