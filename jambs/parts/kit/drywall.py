"""What the drywall crew has to leave at an opening without casing: sizes of openings, beads, gaps."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from jambs.parts.shapes.clear import ClearOpening
from jambs.sides import Side


class BeadKind(Enum):
    """Beads by where they are and what they do."""

    CORNER = "corner bead"
    FRAME = "bead at the frame"
    SHADOW_GAP = "shadow gap bead"
    TRIMLESS = "trimless bead"


@dataclass(frozen=True, slots=True, kw_only=True)
class Bead:
    """One length of bead [in]: ``leg`` on the board, ``nose`` out from its face, where it has one."""

    kind: BeadKind
    side: Side
    leg: float
    nose: float
    length: float


@dataclass(frozen=True, slots=True, kw_only=True)
class DrywallWork:
    """What is left for the carpenter [in].

    ``wall_board``: opening that is cut in the board of the wall. ``boards``: between the bare boards of the returns;
    None where jambs are of wood. ``gap_at_frame``: frame → edge of the returns. ``beads``: lengths, side by side.
    """

    wall_board: ClearOpening
    boards: ClearOpening | None
    gap_at_frame: float
    beads: tuple[Bead, ...]
