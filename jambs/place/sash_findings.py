"""What keeps a sash from opening at all."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import Units
from jambs.place.swing import Obstacle


@dataclass(frozen=True, slots=True, kw_only=True)
class SashCannotOpen(Finding):
    """The sash meets something before it has opened by a degree."""

    code: ClassVar[str] = "sash-cannot-open"
    severity: Severity = Severity.STOP
    met: Obstacle

    def sentence(self, units: Units) -> str:
        """Say what it meets, and what to change."""
        return (
            f"The sash cannot open: it meets {self.met} at once; write a greater frame_reveal or casing_reveal, or set "
            "the window nearer to the side it opens to."
        )
