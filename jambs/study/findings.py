"""What keeps the heat study from giving a position."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import Units


@dataclass(frozen=True, slots=True, kw_only=True)
class PositionNotStudied(Finding):
    """The rule *least heat loss* asks for a wall or a window that cannot be studied; ``why`` in a sentence."""

    code: ClassVar[str] = "position-not-studied"
    severity: Severity = Severity.STOP
    why: str

    def sentence(self, units: Units) -> str:
        """Say what stands in the way of the study."""
        return f"{self.subject.words}: least_heat_loss: {self.why.rstrip('.')}."
