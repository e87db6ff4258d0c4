"""Files of the user's that stand where papers should go."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from jambs.issued.findings import Conflict
from jambs.length import Units


class InTheWay(Exception):
    """Files of the user's are in the way, nothing was written; ``conflicts`` names them, ``target`` their folder."""

    def __init__(self, found: Sequence[Conflict], target: Path) -> None:
        self.conflicts = tuple(found)
        self.target = target
        super().__init__("\n".join(self.sentences))

    @property
    def sentences(self) -> tuple[str, ...]:
        """Name the files, and say what to do with them."""
        files = (one.sentence(Units.INCH) for one in self.conflicts)
        return (*files, f"nothing was written to {self.target}; move them away, or give --overwrite")
