"""What of a job its papers cannot print."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import Units


@dataclass(frozen=True, slots=True, kw_only=True)
class LettersLacking(Finding):
    """The font of all papers lacks some letters of a text."""

    code: ClassVar[str] = "letters-lacking"
    severity: Severity = Severity.CHECK
    text: str
    letters: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Say which, what is printed instead, and what can be printed."""
        return (
            f"{self.text!r}: the letters of the papers have no {', '.join(self.letters)}, a box is printed instead; "
            "write it in Latin, Greek or Cyrillic letters"
        )
