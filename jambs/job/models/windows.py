"""A window or door as it is bought: depths, faces, flange, sash, weight."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated, Any

from pydantic import BeforeValidator, model_validator

from jambs.job.models.fields import (
    NUMBER,
    Amount,
    Depth,
    Face,
    Model,
    ModelOrText,
    PaneThickness,
    SignedDepth,
    Small,
    Text,
    Thickness,
    Weight,
    YesNo,
    fault,
)


class Sash(StrEnum):
    """How the sash or leaf opens."""

    FIXED = "fixed"
    CASEMENT_OUT = "casement out"
    CASEMENT_IN = "casement in"
    AWNING = "awning"
    HOPPER = "hopper"
    DOUBLE_HUNG = "double hung"
    SLIDER = "slider"
    DOOR_OUT = "door out"
    DOOR_IN = "door in"

    @property
    def swings(self) -> bool:
        """Say whether the sash turns on hinges."""
        return self not in (Sash.FIXED, Sash.DOUBLE_HUNG, Sash.SLIDER)

    @property
    def outward(self) -> bool:
        """Say whether the sash turns to the outside."""
        return self in (Sash.CASEMENT_OUT, Sash.AWNING, Sash.DOOR_OUT)


class FrameFace(ModelOrText):
    """Width of the frame seen square on, on each side, frame's outer edge → its inner edge [in]."""

    left: Face
    right: Face
    head: Face
    sill: Face

    @model_validator(mode="before")
    @classmethod
    def _one_for_all(cls, value: Any) -> Any:
        if isinstance(value, dict | FrameFace):
            return value
        return {"left": value, "right": value, "head": value, "sill": value}


class Handle(Model):
    """A crank or handle: how far it stands in from the frame's inside edge and reaches below the sill's face [in]."""

    projection: Depth
    below_sill_face: SignedDepth = 0.0


class Glass(Model):
    """The make-up of the glazing, for its weight."""

    panes: Annotated[int, BeforeValidator(Amount(1, 4, whole=True)), NUMBER]
    pane_thickness: PaneThickness


class WindowType(Model):
    """A window type. Depths along the depth axis [in].

    ``jamb_depth``: bearing face of the nailing flange → inside edge of the frame. ``frame_projection``: from that
    face → outer edge of the frame. ``frame_face``: seen from inside; ``exterior_frame_face``: from outside.
    Without a flange the bearing face is the plane of the clips or straps. ``sash_face``: frame's outer edge → edge of
    the sash (as ``frame_face`` if not given). ``sash_set_back``: edge of the frame on the side it opens to → that face
    of the sash, negative where the sash stands proud of the frame.
    """

    jamb_depth: Depth
    frame_projection: Depth
    frame_face: FrameFace
    exterior_frame_face: FrameFace | None = None
    nailing_flange: YesNo
    flange_width: Small | None = None
    sash: Sash
    sash_thickness: Thickness | None = None
    sash_face: Small | None = None
    sash_set_back: SignedDepth | None = None
    handle: Handle | None = None
    glass: Glass | None = None
    weight: Weight | None = None
    u_frame: Annotated[float, BeforeValidator(Amount(0.01, 12)), NUMBER] | None = None
    material: Text | None = None

    @model_validator(mode="after")
    def _needs(self) -> WindowType:
        if self.nailing_flange and self.flange_width is None:
            raise fault(
                "has a nailing_flange and no flange_width; add it: frame's outer edge → outer edge of the flange"
            )
        if self.sash.swings and (self.sash_thickness is None or self.sash_set_back is None):
            raise fault(
                f"sash {self.sash.value!r} swings and its depths are missing; give sash_thickness and sash_set_back "
                "(frame's edge on the side it opens to → that face of the sash)"
            )
        return self

    @property
    def outside_face(self) -> FrameFace:
        """The frame's faces seen from outside; as from inside where the job says nothing else."""
        return self.exterior_frame_face or self.frame_face
