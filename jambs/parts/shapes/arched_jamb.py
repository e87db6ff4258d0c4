"""What is asked of the curved head of a jamb."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.job.models.curved import Curved
from jambs.job.models.openings import Opening
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.touches import Scribe


@dataclass(frozen=True, slots=True, kw_only=True)
class ArchedJamb:
    """The curved head of a jamb: ``width`` through the wall, its edge at the frame at the depth ``edge`` [in].

    ``scribe``: the most that is scribed off its other edge to fit it to a wall that is no plane square to it [in].
    ``rise``: how much higher a sloping sill is at the frame than at its other edge, where it stands on one [in].
    """

    opening: Opening
    kind: PartKind
    where: Where
    stock: str
    thickness: float
    width: float
    edge: float
    curved: Curved | None
    scribe: float
    rise: float = 0.0

    @property
    def touches(self) -> tuple[Scribe, ...]:
        """What is done to its boards by hand."""
        return (Scribe(most=self.scribe),) if self.scribe else ()

    @property
    def sign(self) -> float:
        """1 where its boards run clockwise seen from inside, as inside; -1 outside."""
        return 1.0 if self.where is Where.INTERIOR else -1.0
