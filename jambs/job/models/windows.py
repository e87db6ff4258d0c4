"""A window or door as it is bought: depths, faces, flange, sash, weight."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated, Any, Self

from pydantic import BeforeValidator, ModelWrapValidatorHandler, PrivateAttr, ValidationInfo, model_validator

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
    units_of,
)
from jambs.job.models.makers_sheet import depths_that_differ, stated_depths, with_flange_depths
from jambs.length import MM_PER_INCH, Units
from jambs.sides import Side


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
    TILT_AND_TURN = "tilt and turn"

    @classmethod
    def _missing_(cls, value: object) -> Sash | None:
        """Read ``tilt-turn`` and ``tilt turn`` too."""
        words = str(value).lower().replace("-", " ").split()
        return cls.TILT_AND_TURN if words in (["tilt", "turn"], ["tilt", "and", "turn"]) else None

    @property
    def swings(self) -> bool:
        """Say whether the sash turns on hinges."""
        return self not in (Sash.FIXED, Sash.DOUBLE_HUNG, Sash.SLIDER)

    @property
    def slides(self) -> bool:
        """Say whether one sash slides behind another."""
        return self in (Sash.DOUBLE_HUNG, Sash.SLIDER)

    @property
    def outward(self) -> bool:
        """Say whether the sash turns to the outside."""
        return self in (Sash.CASEMENT_OUT, Sash.AWNING, Sash.DOOR_OUT)

    @property
    def is_door(self) -> bool:
        """Say whether it is a door by its name; a slider may be one too, and then says how its floor lies."""
        return self in (Sash.DOOR_OUT, Sash.DOOR_IN)

    @property
    def is_side_hung(self) -> bool:
        """Say whether the sash hangs on its left or right side, so that the side has to be ordered."""
        return self.swings and self not in (Sash.AWNING, Sash.HOPPER)


FLANGE_DEPTHS = ("jamb_depth", "frame_projection")


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

    def at(self, side: Side) -> float:
        """Return the width on a side [in]."""
        return float(getattr(self, side.value))

    @property
    def least(self) -> float:
        """The narrowest of the four [in]."""
        return min(self.left, self.right, self.head, self.sill)


class Handle(Model):
    """A crank or handle: how far it stands in from the frame's inside edge and reaches below the sill's face [in]."""

    projection: Depth
    below_sill_face: SignedDepth = 0.0


class Glass(Model):
    """The make-up of the glazing, for its weight and its heat; ``space``: between two panes [in]."""

    panes: Annotated[int, BeforeValidator(Amount(1, 4, whole=True)), NUMBER]
    pane_thickness: PaneThickness
    space: PaneThickness | None = None


USUAL_PANES = 2
USUAL_PANE = {Units.INCH: 1 / 8, Units.MM: 4 / MM_PER_INCH}
USUAL_SPACE = {Units.INCH: 1 / 2, Units.MM: 12 / MM_PER_INCH}
"""Of the glazing where the job gives none [in], by the unit of the job: common practice, no source. Float glass is made
3, 4, 5, 6 mm thick among others (EN 572-2, from memory)."""


class WindowType(Model):
    """A window type. Depths along the depth axis [in].

    ``jamb_depth``: bearing face of the nailing flange → inside edge of the frame. ``frame_projection``: from that
    face → outer edge of the frame. Makers' sheets have the whole ``frame_depth`` and ``flange_set_back`` (outside edge
    → bearing face) instead: any two of them give the rest. Without a flange the bearing face is the plane of the clips
    or straps. ``frame_face``: seen from inside; ``exterior_frame_face``: from outside. ``sash_face``: frame's outer
    edge → edge of the sash (as ``frame_face`` if not given), or ``sash_overlap``: how far the sash laps over the
    frame's inner edge. ``sash_set_back``: edge of the frame on the side it opens to → that face of the sash, negative
    where the sash stands proud of the frame. ``meeting_rail``: how far two sashes that slide overlap, height of the
    meeting rail or width of the meeting stile. ``flange_width`` and the sash's sizes are assumed where nothing rests on
    them.
    """

    jamb_depth: Depth
    frame_projection: Depth
    frame_depth: Depth | None = None
    flange_set_back: Depth | None = None
    frame_face: FrameFace
    exterior_frame_face: FrameFace | None = None
    nailing_flange: YesNo
    flange_width: Small | None = None
    sash: Sash
    sash_thickness: Thickness | None = None
    sash_face: Small | None = None
    sash_overlap: Small | None = None
    sash_set_back: SignedDepth | None = None
    meeting_rail: Small | None = None
    handle: Handle | None = None
    glass: Glass | None = None
    weight: Weight | None = None
    u_frame: Annotated[float, BeforeValidator(Amount(0.01, 12)), NUMBER] | None = None
    material: Text | None = None
    _stated: dict[str, float] = PrivateAttr(default_factory=dict)

    @classmethod
    def __get_pydantic_json_schema__(cls, core_schema: Any, handler: Any) -> dict[str, Any]:
        """Let an editor accept any two of the depths."""
        whole = dict(handler.resolve_ref_schema(handler(core_schema)))
        whole["required"] = [key for key in whole["required"] if key not in FLANGE_DEPTHS]
        projections = [{"required": ["frame_projection"]}, {"required": ["flange_set_back"]}]
        depths = [{"required": ["jamb_depth"]}, {"required": ["frame_depth"]}]
        both = {"required": ["jamb_depth", "frame_depth"]}
        whole["anyOf"] = [both, {"allOf": [{"anyOf": depths}, {"anyOf": projections}]}]
        return whole

    @model_validator(mode="wrap")
    @classmethod
    def _keep_stated(cls, value: Any, read: ModelWrapValidatorHandler[Self], info: ValidationInfo) -> Self:
        """Keep the depths as the maker states them: they are ordered so, and the wall is summed in the job's unit."""
        found = read(value)
        if isinstance(value, dict):
            found._stated = stated_depths(value, units_of(info))
        return found

    @model_validator(mode="before")
    @classmethod
    def _as_makers_write(cls, value: Any, info: ValidationInfo) -> Any:
        return with_flange_depths(value, units_of(info)) if isinstance(value, dict) else value

    @model_validator(mode="after")
    def _adds_up(self, info: ValidationInfo) -> WindowType:
        depths = (*FLANGE_DEPTHS, "frame_depth", "flange_set_back")
        if wrong := depths_that_differ({key: getattr(self, key) for key in depths}, units_of(info)):
            raise fault(wrong)
        return self

    @model_validator(mode="after")
    def _one_sash_edge(self) -> WindowType:
        if self.sash_overlap is None:
            return self
        if self.sash_face is not None:
            raise fault("gives sash_face and sash_overlap; both say where the sash's edge is, keep one")
        if self.sash_overlap > min(self.outside_face.least, self.frame_face.least):
            raise fault("sash_overlap is wider than the frame's face that it laps over; correct one of them")
        return self

    @property
    def stated_jamb_depth(self) -> float:
        """The jamb depth as the maker states it, in whichever unit [in]."""
        return self._stated.get("jamb_depth", self.jamb_depth)

    @property
    def stated_projection(self) -> float:
        """The frame projection as the maker states it, in whichever unit [in]."""
        return self._stated.get("frame_projection", self.frame_projection)

    @property
    def whole_depth(self) -> float:
        """Inside edge → outside edge of the frame, as the maker states it or its parts [in]."""
        return self.frame_depth or self.stated_jamb_depth + self.stated_projection

    def sash_edge(self, face: float) -> float:
        """Frame's outer edge → edge of the sash [in], on a side where the frame's face is this wide."""
        return face - (self.sash_overlap or 0.0) if self.sash_face is None else self.sash_face

    @property
    def outside_face(self) -> FrameFace:
        """The frame's faces seen from outside; as from inside where the job says nothing else."""
        return self.exterior_frame_face or self.frame_face
