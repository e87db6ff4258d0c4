"""What a job file may say about the outside: elevations and their cladding, flashing, fasteners, climate, woods."""

from __future__ import annotations

import re
from enum import StrEnum
from typing import Annotated, Any

from pydantic import BeforeValidator, Field, WithJsonSchema, model_validator

from jambs.job.models.fields import (
    NUMBER,
    Amount,
    Bearing,
    Between,
    BoardWidth,
    Depth,
    Distance,
    Long,
    Mark,
    Model,
    ModelOrText,
    Reveal,
    Slope,
    Small,
    Text,
    fault,
)
from jambs.length import HALF_64TH


def _written(description: str) -> WithJsonSchema:
    """Give an editor's schema for a value that is a number or a text."""
    return WithJsonSchema({"type": ["string", "number"], "description": description})


_LENGTH = _written('a length: 5 1/2, 4-9/16", 2\'-11 1/2", 7.5 or 902 mm')
Level = Annotated[float, BeforeValidator(Between(-240, 2400)), _LENGTH]
"""A height over the datum of the house, its ground floor [in]; below it is negative."""
Ceiling = Annotated[float, BeforeValidator(Between(60, 600)), _LENGTH]
"""Finished floor → ceiling [in]."""
Exposure = Annotated[float, BeforeValidator(Between(1, 30)), _LENGTH]
"""What is seen of a course, butt to butt [in]."""

KG_PER_M2 = 4.88243
"""Of one pound per square foot."""


class CladdingKind(StrEnum):
    """What covers an elevation in level courses."""

    SHINGLES = "shingles"
    SHAKES = "shakes"
    CLAPBOARDS = "clapboards"
    BOARDS = "boards"

    @property
    def is_shingle(self) -> bool:
        """Say whether the greatest exposure comes from the table of shingle lengths."""
        return self in (CladdingKind.SHINGLES, CladdingKind.SHAKES)


class Coursing(StrEnum):
    """How shingles are laid: one layer, or two of which the outer is the better."""

    SINGLE = "single"
    DOUBLE_NO_1 = "double no. 1"
    DOUBLE_NO_2 = "double no. 2"


class CladdingEntry(Model):
    """Cladding in level courses [in].

    Shingles and shakes: ``length`` and ``coursing`` give the greatest exposure, ``greatest_exposure`` may ask for less.
    Clapboards and boards: ``widths`` less ``least_lap`` … ``greatest_lap`` are what may be seen. ``wanted_exposure``:
    what one would like to see. ``greatest_change``: between neighboring courses; ``unseen_change``: nobody sees it.
    ``line_tolerance``: a course line this near to a head or a sill meets it. ``gap_over_flashing``: upper edge of the
    head casing → butts above it, instead of the trim's gap to the cladding.
    """

    kind: CladdingKind
    length: Long | None = None
    coursing: Coursing = Coursing.SINGLE
    widths: tuple[BoardWidth, ...] = ()
    least_lap: Small | None = None
    greatest_lap: Small | None = None
    greatest_exposure: Exposure | None = None
    least_exposure: Exposure | None = None
    wanted_exposure: Exposure | None = None
    greatest_change: Small | None = None
    unseen_change: Reveal | None = None
    line_tolerance: Reveal = 0.0
    gap_over_flashing: Small | None = None

    @model_validator(mode="after")
    def _whole(self) -> CladdingEntry:
        if self.kind.is_shingle:
            if self.length is None or self.least_exposure is None:
                raise fault(f"{self.kind.value} need length and least_exposure; give both")
            return self
        if not self.widths or self.least_lap is None:
            raise fault(f"{self.kind.value} need widths and least_lap; give both")
        if self.greatest_lap is not None and self.greatest_lap < self.least_lap:
            raise fault("greatest_lap is less than least_lap; write the greater one as greatest_lap")
        if min(self.widths) <= (self.greatest_lap or self.least_lap):
            raise fault("a board is no wider than it laps, so none of it shows; write a smaller greatest_lap")
        return self


class StoryEntry(Model):
    """A floor above the datum and the openings whose sill_height is measured from it; ``ceiling``: over that floor."""

    floor: Level
    ceiling: Ceiling | None = None
    openings: Annotated[tuple[Mark, ...], Field(min_length=1)]


class ElevationEntry(Model):
    """One side of the house. Heights over the datum (the ground floor) [in].

    ``start_line``: butts of the first course. ``eave``: where the cladding ends. ``width``: corner to corner.
    ``walls``: the width of each, where an elevation has more than one; an opening is on its own wall.
    ``cladding``: where it is laid in level courses; without it there are no courses, only fasteners. Its openings are
    those that name it, or else those that face the way it does; their ``from_left`` runs from the left corner as seen
    from outside to the left edge of the frame.
    """

    start_line: Level
    eave: Level
    cladding: CladdingEntry | None = None
    faces: Bearing | None = None
    width: Distance | None = None
    walls: dict[str, Distance] = Field(default_factory=dict)
    stories: tuple[StoryEntry, ...] = ()

    @model_validator(mode="after")
    def _upright(self) -> ElevationEntry:
        if self.eave <= self.start_line:
            raise fault("eave is not above start_line; both are heights over the ground floor")
        if self.width is not None and sum(self.walls.values()) > self.width + HALF_64TH:
            raise fault("the walls together are wider than the elevation; make them add up to no more than its width")
        return self


class FlashingEntry(Model):
    """How sheet metal is bent [in]; what is left out is assumed and said so.

    ``fall``: of the top of a head flashing. ``drip_out``: of the lower edge past what is under it. ``hem``: folded
    back. ``end_dam``: turned up at each end. ``driving_pressure`` [Pa]: the dam must hold back.
    """

    fall: Slope | None = None
    drip_out: Reveal | None = None
    hem: Reveal | None = None
    end_dam: Small | None = None
    driving_pressure: Annotated[float, BeforeValidator(Amount(0, 5000)), NUMBER] | None = None


class Fixed(StrEnum):
    """What the long fasteners hold."""

    CASING = "casing"
    STRAPPING = "strapping"
    COVER = "outer sheathing"
    BUCK = "buck"
    RETURN_FURRING = "return furring"


def _read_area_weight(value: Any) -> float:
    found = re.fullmatch(r"(\d{1,4}(?:\.\d+)?)\s*(psf|kg/m2|kg/m²)", str(value).strip().lower())
    if not found:
        raise fault(f"{value!r} is not a weight of a surface; write 3 psf or 15 kg/m2")
    return float(found[1]) / (1.0 if found[2] == "psf" else KG_PER_M2)


AreaWeight = Annotated[float, BeforeValidator(_read_area_weight), _written("3 psf or 15 kg/m2")]
"""[lb per sq ft]"""


FastenerLength = Annotated[float, BeforeValidator(Between(0.5, 40)), _LENGTH]


class FastenerEntry(Model):
    """Fasteners of one kind of part [in].

    ``penetration``: into the framing. ``spacing``: along the part. ``from_end``: first one. ``lengths``: at hand,
    instead of the table. ``cladding_weight`` [lb per sq ft]: what hangs on strapping, with it.
    """

    fastener: Text
    penetration: Depth
    spacing: BoardWidth
    from_end: Reveal = 2.0
    rows: Annotated[int, BeforeValidator(Amount(1, 4, whole=True)), NUMBER] = 1
    lengths: tuple[FastenerLength, ...] = ()
    cladding_weight: AreaWeight | None = None


def _read_temperature(value: Any) -> float:
    found = re.fullmatch(r"(-?\d{1,3}(?:\.\d+)?)\s*°?\s*([fc])", str(value).strip().lower())
    if not found:
        raise fault(f"{value!r} is not a temperature; write 68 F or 20 C")
    degrees = float(found[1])
    fahrenheit = degrees if found[2] == "f" else degrees * 9 / 5 + 32
    if not -60 <= fahrenheit <= 200:
        raise fault(f"is {value}; write a temperature from -60 F to 200 F (-51 C to 93 C)")
    return fahrenheit


Temperature = Annotated[float, BeforeValidator(_read_temperature), _written("68 F or 20 C")]
"""[degrees Fahrenheit]"""


def _read_humidity(value: Any) -> float:
    found = re.fullmatch(r"(\d{1,3}(?:\.\d+)?)\s*%", str(value).strip())
    if not found or not 0 <= float(found[1]) < 100:
        raise fault(f"{value!r} is not a relative humidity; write 0 % to 99 %, like 45 %")
    return float(found[1])


Humidity = Annotated[float, BeforeValidator(_read_humidity), _written("45 %")]
"""Relative [%]."""


class Air(ModelOrText):
    """Air that wood comes to rest in, written ``68 F, 35 %``."""

    temperature: Temperature
    humidity: Humidity

    @model_validator(mode="before")
    @classmethod
    def _one_text(cls, value: Any) -> Any:
        if not isinstance(value, str):
            return value
        halves = [half.strip() for half in value.split(",")]
        if len(halves) != 2:
            raise fault(
                f"{value!r} is not a temperature with a humidity; write temperature and relative humidity, "
                "like 68 F, 35 %"
            )
        return {"temperature": halves[0], "humidity": halves[1]}


class ClimateEntry(Model):
    """The air where the wood is worked, and in the house and outside it in its driest and dampest season."""

    shop: Air
    inside_winter: Air
    inside_summer: Air
    outside_winter: Air
    outside_summer: Air


class Sawn(StrEnum):
    """How a board was cut from the log, so which way it moves across its width."""

    FLAT = "flat"
    QUARTER = "quarter"


class WoodEntry(Model):
    """What a stock is: its species by the name in the table of woods, and how it is sawn."""

    species: Text
    sawn: Sawn = Sawn.FLAT


class OutsideEntry(Model):
    """The sections of a job file about the outside; all of them may be left out.

    ``ceiling``: finished floor → ceiling, on every floor whose story gives none of its own [in].
    ``sealant_movement``: what the sealant takes, as a share of the joint [%].
    """

    ceiling: Ceiling | None = None
    elevations: dict[str, ElevationEntry] = Field(default_factory=dict)
    flashing: FlashingEntry = FlashingEntry()
    fasteners: dict[Fixed, FastenerEntry] = Field(default_factory=dict)
    climate: ClimateEntry | None = None
    woods: dict[str, WoodEntry] = Field(default_factory=dict)
    sealant_movement: Annotated[float, BeforeValidator(Amount(1, 100)), NUMBER] | None = None
