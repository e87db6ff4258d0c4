"""Openings without casing: sides and head returned in gypsum board or plaster, or wooden jambs that end bare.

What the drywall crew leaves is named by its geometry alone: how wide a bead's legs are and how far its nose stands out.
"""

from __future__ import annotations

from enum import StrEnum

from pydantic import model_validator

from jambs.job.models.fields import Fit, Model, Reveal, Small, Text, Thickness, fault


class WallBoard(StrEnum):
    """Which board runs through at the outside corner of a return: it covers the edge of the other."""

    OVER_RETURN = "over the return"
    BEHIND_RETURN = "behind the return"


class WallEdgeKind(StrEnum):
    """How the wall ends at a wooden jamb without casing."""

    SHADOW_GAP = "shadow gap"
    TRIMLESS_BEAD = "trimless bead"


class BeadEntry(Model):
    """A bead along an edge of board [in]: ``leg`` on the board, ``nose`` out from its face, as thick as the coat."""

    leg: Small
    nose: Fit


class ReturnsEntry(Model):
    """Boards that return the wall to the frame, and the beads along them.

    ``gap_at_frame``: frame → edge of the return, filled with sealant or by ``frame_bead``, a bead or plaster stop.
    """

    material: Text
    thickness: Thickness
    corner_bead: BeadEntry
    wall_board: WallBoard
    gap_at_frame: Reveal
    frame_bead: BeadEntry | None = None


class TileSillEntry(Model):
    """A sill of tile [in]: ``bed`` under it, ``joint`` round it, ``nosing`` past the finished wall."""

    thickness: Thickness
    bed: Reveal
    joint: Fit
    nosing: Small


class WallEdgeEntry(Model):
    """The wall at a wooden jamb without casing: a shadow gap of a width, or a bead that the board butts with.

    ``gap``: back of the jamb → the bead on the wall board; ``leg``: of that bead, on the board [in].
    """

    kind: WallEdgeKind
    leg: Small
    gap: Reveal = 0.0

    @model_validator(mode="after")
    def _gap_is_a_shadow(self) -> WallEdgeEntry:
        if self.kind is WallEdgeKind.SHADOW_GAP and not self.gap:
            raise fault("kind is shadow gap and gap is missing; write how wide it is, like 3/8 in or 10 mm")
        if self.kind is WallEdgeKind.TRIMLESS_BEAD and self.gap:
            raise fault("kind is trimless bead, which butts to the jamb; remove gap or write kind: shadow gap")
        return self
