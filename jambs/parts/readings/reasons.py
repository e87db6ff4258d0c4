"""Why a window stands elsewhere than it was planned."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Reason
from jambs.length import Units


@dataclass(frozen=True, slots=True, kw_only=True)
class StandsAsMeasured(Reason):
    """The readings put the flange plane here; ``outward``: past where it was planned, negative farther in [in]."""

    code: ClassVar[str] = "stands-as-measured"
    flange_plane: float
    outward: float

    def sentence(self, units: Units) -> str:
        """Say where, and how far off its plan."""
        way = "out" if self.outward > 0 else "in"
        return (
            f"As measured, the flange plane lies {units.text(self.flange_plane)} from the finished face, "
            f"{units.text(abs(self.outward))} farther {way} than planned; all figures follow from there."
        )
