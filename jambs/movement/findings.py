"""What the reader must know of wood that moves, one class for each finding."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import Units
from jambs.movement.joint_words import joint_name, joint_words
from jambs.movement.joints import JointMovement


@dataclass(frozen=True, slots=True, kw_only=True)
class JointMoves(Finding):
    """A joint that does not take what its boards move: one that fails has to be looked at, others are mended."""

    code: ClassVar[str] = "joint-moves"
    joint: JointMovement

    def sentence(self, units: Units) -> str:
        """Say what moves and what to do."""
        return f"Wood movement, {joint_name(self.joint)}: {joint_words(self.joint, units)}."


@dataclass(frozen=True, slots=True, kw_only=True)
class WoodsUnknown(Finding):
    """Stocks that the table of woods does not have."""

    code: ClassVar[str] = "woods-unknown"
    severity: Severity = Severity.NOTE
    stocks: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Name them."""
        return f"No movement figures for {', '.join(self.stocks)}; seasonal movement not computed."
