"""Bent metal that lines an opening outside, from the frame to the wall, in place of wooden jambs and casing.

Legs are told as they are measured on the bent piece, outside face to outside face.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated

from pydantic import model_validator

from jambs.job.models.curved import Curved
from jambs.job.models.fields import BendRadius, Model, Offered, Reveal, SheetThickness, Slope, Small, Text, fault


class CladdingAtLeg(StrEnum):
    """Which runs through at the outside corner of a metal return: cladding covers its face leg, or lies behind it."""

    OVER_LEG = "over the leg"
    BEHIND_LEG = "behind the leg"


class SheetMetal(StrEnum):
    """What sheet metal is of, as far as heat asks."""

    ALUMINUM = "aluminum"
    STEEL = "steel"
    STAINLESS_STEEL = "stainless steel"
    COPPER = "copper"
    ZINC = "zinc"

    @classmethod
    def _missing_(cls, value: object) -> SheetMetal | None:
        """Take the other spelling of aluminum for the same word."""
        return cls.ALUMINUM if value == "aluminium" else None


class MetalSillEntry(Model):
    """The sill of bent metal [in]: falls outward by ``slope``, its front past the cladding face by ``nosing``.

    ``front``: leg down at the front, hemmed; ``back_leg``: leg up behind its upper edge, at the frame.
    """

    slope: Slope
    nosing: Small
    front: Small
    back_leg: Small


class MetalReturnsEntry(Model):
    """Sheet metal round the opening outside [in].

    ``frame_leg``: along the frame, behind the return; ``face_leg``: on the wall; ``hem``: folded back under its edge.
    ``metal``: what the sheet is of, where its name does not tell.
    ``corner_lap``: what head and sill turn onto the sides, and reach past them on the wall. ``curved``: how they follow
    an arc: in flat segments, since legs are bent along straight lines.
    """

    material: Text
    metal: SheetMetal | None = None
    thickness: SheetThickness
    bend_radius: BendRadius
    frame_leg: Small
    face_leg: Small
    corner_lap: Small
    cladding: CladdingAtLeg
    hem: Reveal = 0.0
    sill: MetalSillEntry | None = None
    curved: Annotated[Curved, Offered(words=(Curved.FLAT_SEGMENTS,))] | None = None

    @model_validator(mode="after")
    def _legs_can_be_bent(self) -> MetalReturnsEntry:
        bend = self.thickness + self.bend_radius
        legs = {"frame_leg": self.frame_leg, "face_leg": self.face_leg, "corner_lap": self.corner_lap}
        if self.sill:
            legs |= {"sill.front": self.sill.front, "sill.back_leg": self.sill.back_leg}
        short = [name for name, leg in legs.items() if leg <= 2 * bend]
        if short:
            raise fault(
                f"{' and '.join(short)} no longer than a bend takes; write more than twice thickness and bend_radius "
                "together"
            )
        if self.hem and not 2 * bend < self.hem < min(self.face_leg, self.sill.front if self.sill else self.face_leg):
            raise fault(
                "hem does not lie on the leg that it is folded back under; write less than face_leg and the sill's "
                "front, and more than twice thickness and bend_radius together, or leave it out"
            )
        return self
