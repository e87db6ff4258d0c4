"""A wall as the job file lists it: layers, inside → outside."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Annotated, Any

from pydantic import BeforeValidator, Field, model_validator

from jambs.job.models.fields import NUMBER, Amount, BoardWidth, LayerThickness, Model, ModelOrText, Small, Text, YesNo
from jambs.job.models.position import PositionRule
from jambs.length import MM_PER_INCH, Units


class Role(StrEnum):
    """What a layer does in the wall."""

    FINISH = "inside finish"
    CAVITY = "service cavity"
    FRAMING = "framing"
    SHEATHING = "sheathing"
    MEMBRANE = "membrane"
    INSULATION = "insulation"
    STRAPPING = "strapping"
    COVER = "cover sheet"
    CLADDING = "cladding"


USUAL_SPACING = {Units.INCH: 16.0, Units.MM: 600 / MM_PER_INCH}
"""Of studs and strapping, centre to centre [in]: common practice, no source. Nothing is sawn to it."""


class LayerEntry(ModelOrText):
    """One line of a wall's ``layers``: a name of the catalogue, and what differs from it."""

    material: Text
    thickness: LayerThickness | None = None
    role: Role | None = None
    spacing: BoardWidth | None = None
    member_width: BoardWidth | None = None
    cavity: Text | None = None
    conductivity: Annotated[float, BeforeValidator(Amount(0.001, 400)), NUMBER] | None = None
    permeance: Annotated[float, BeforeValidator(Amount(0, 1000)), NUMBER] | None = None
    carries: YesNo = False

    @model_validator(mode="before")
    @classmethod
    def _one_word(cls, value: Any) -> Any:
        """A layer with nothing to add is its name alone."""
        return {"material": value} if isinstance(value, str) else value


class BuckEntry(Model):
    """What carries a window that stands outside the sheathing."""

    kind: BuckKind
    thickness: BoardWidth
    stock: Text
    set_back: Small = 0.0


class BuckKind(StrEnum):
    """How a flange off the sheathing is carried."""

    NONE = "none"
    LINER = "liner"
    OUTBOARD = "outboard"


class WallEntry(Model):
    """A wall type: its layers and what carries a window in it."""

    layers: Annotated[tuple[LayerEntry, ...], Field(min_length=1)]
    buck: BuckEntry | None = None
    position: PositionRule | None = None


BuckEntry.model_rebuild()


@dataclass(frozen=True, slots=True, kw_only=True)
class Layer:
    """One layer of a wall with all its values looked up.

    ``thickness`` [in], inner face → outer face; ``conductivity`` [W/mK]; ``permeance`` [perm] of the whole layer;
    ``spacing`` and ``member_width`` [in] of studs or strapping; ``source`` says where the catalogue's values are from.
    """

    name: str
    role: Role
    thickness: float
    conductivity: float | None = None
    permeance: float | None = None
    spacing: float | None = None
    member_width: float | None = None
    cavity: Layer | None = None
    carries: bool = False
    source: str = "job file"


@dataclass(frozen=True, slots=True, kw_only=True)
class Wall:
    """A wall type of the job: layers inside → outside."""

    name: str
    layers: tuple[Layer, ...]
    buck: BuckEntry | None = None
