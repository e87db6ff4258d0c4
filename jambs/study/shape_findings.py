"""What the study leaves out of an opening that is no rectangle."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import Units


@dataclass(frozen=True, slots=True, kw_only=True)
class StudiedByItsBox(Finding):
    """The sun and the daylight of a shape are those of the rectangle round its frame."""

    code: ClassVar[str] = "studied-by-its-box"
    severity: Severity = Severity.NOTE
    shape: str
    is_arched: bool = False

    def sentence(self, units: Units) -> str:
        """Say what goes by which size."""
        crown = " At the head the section through its crown is computed, for all of the arc." if self.is_arched else ""
        return (
            f"{self.subject.name} ({self.shape}): its heat goes by the length of its edges; its sun and daylight go by "
            f"the rectangle round its frame, and come out too large.{crown}"
        )
