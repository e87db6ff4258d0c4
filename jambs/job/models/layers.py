"""A wall as the job file lists it: layers, inside → outside."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Annotated, Any

from pydantic import BeforeValidator, Field, model_validator

from jambs.job.models.fields import (
    NUMBER,
    Amount,
    BoardWidth,
    LayerThickness,
    Model,
    ModelOrText,
    Small,
    Text,
    YesNo,
    fault,
)
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
    COVER = "outer sheathing"
    CLADDING = "cladding"


class MadeOf(StrEnum):
    """What a layer is of, as far as hatch, fire and fasteners ask. Wood fiber, mineral wool, batts are *fiber*."""

    FOAM = "foam plastic"
    FIBER = "fiber"
    WOOD = "wood"
    MINERAL = "mineral"
    METAL = "metal"
    MEMBRANE = "membrane"

    @classmethod
    def _missing_(cls, value: object) -> MadeOf | None:
        """Take the other spelling of fiber for the same word."""
        return cls.FIBER if value == "fibre" else None


USUAL_SPACING = {Units.INCH: 16.0, Units.MM: 600 / MM_PER_INCH}
"""Of studs and strapping, center to center [in]: common practice, no source. Nothing is sawn to it."""


MOST_FRAMING = 0.6
"""Over this share a wall is not framed but solid."""


def _read_framing_share(value: Any) -> float:
    text = str(value).strip()
    number = Amount(0, 100)(text.removesuffix("%").strip())
    share = number / 100 if text.endswith("%") else number
    if share > MOST_FRAMING:
        raise fault(f"is {value}; write the share of the wall's area that is wood, from 0 % to 60 %, like 9.6 %")
    return share


FramingShare = Annotated[float, BeforeValidator(_read_framing_share), NUMBER]
"""Part of a wall's area that is wood: 9.6 % or 0.096."""


class FillEntry(ModelOrText):
    """What fills a cavity: an insulation of the catalog, or one of your own with its conductivity [W/mK]."""

    material: Text
    conductivity: Annotated[float, BeforeValidator(Amount(0.001, 1)), NUMBER] | None = None

    @model_validator(mode="before")
    @classmethod
    def _one_word(cls, value: Any) -> Any:
        """A fill with nothing to add is its name alone."""
        return {"material": value} if isinstance(value, str) else value


class LayerEntry(ModelOrText):
    """One line of a wall's ``layers``: a name of the catalog, and what differs from it.

    In framing, strapping and a service cavity ``conductivity`` [W/mK] is that of the wood, ``framing_share`` how much
    of the wall's area the wood takes up, plates and openings counted in.
    """

    material: Text
    thickness: LayerThickness | None = None
    role: Role | None = None
    made_of: MadeOf | None = None
    spacing: BoardWidth | None = None
    member_width: BoardWidth | None = None
    framing_share: FramingShare | None = None
    cavity: FillEntry | None = None
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

    @model_validator(mode="after")
    def _set_back_round_the_opening(self) -> BuckEntry:
        if self.kind is BuckKind.LINER and self.set_back:
            raise fault(
                "gives set_back for a liner, which lies in the rough opening itself; remove set_back, or write a "
                "larger rough_opening"
            )
        return self


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
    ``spacing`` and ``member_width`` [in] of studs or strapping, ``framing_share`` of their wood, 0 to 1; ``made_of``:
    nothing where it does not matter and the job does not say; ``source`` says where the catalog's values are from.
    """

    name: str
    role: Role
    thickness: float
    conductivity: float | None = None
    permeance: float | None = None
    spacing: float | None = None
    member_width: float | None = None
    framing_share: float | None = None
    cavity: Layer | None = None
    carries: bool = False
    made_of: MadeOf | None = None
    source: str = "job file"


@dataclass(frozen=True, slots=True, kw_only=True)
class Wall:
    """A wall type of the job: layers inside → outside."""

    name: str
    layers: tuple[Layer, ...]
    buck: BuckEntry | None = None
