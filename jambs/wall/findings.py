"""What keeps a stack of layers from being a wall."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import Units


@dataclass(frozen=True, slots=True, kw_only=True)
class NoStructure(Finding):
    """Neither framing nor sheathing is among the layers."""

    code: ClassVar[str] = "wall-without-structure"
    severity: Severity = Severity.STOP

    def sentence(self, units: Units) -> str:
        """Say that nothing can carry a window."""
        return f"{self.subject.words} has neither framing nor sheathing; nothing can carry a window"


@dataclass(frozen=True, slots=True, kw_only=True)
class SheathingOutsideInsulation(Finding):
    """A layer that the catalog calls sheathing lies outside the outboard insulation."""

    code: ClassVar[str] = "sheathing-outside-insulation"
    severity: Severity = Severity.STOP
    layer: str

    def sentence(self, units: Units) -> str:
        """Name the layer and the role it should be given."""
        return (
            f"{self.subject.words}: {self.layer!r} lies outside the insulation and is taken as sheathing; "
            "write role: outer sheathing beside it"
        )
