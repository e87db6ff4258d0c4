"""What of a window or its wall is not any more as it was when somebody held the tape there."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from jambs.length import Units

Layers = tuple[tuple[str, float], ...]
"""Layers by name and thickness [in], inside → outside."""


class Taken(StrEnum):
    """What is read in one go and holds or falls together."""

    INSIDE = "interior depths"
    OUTSIDE = "exterior depths"
    FRAME = "sizes of the frame"
    MULLS = "sizes and depths at the mulls"


class Thing(StrEnum):
    """What a depth depends on beside where the window stands."""

    WINDOW = "window"
    FRAME = "frame"
    SHAPE = "shape"
    JAMB_DEPTH = "jamb depth"
    FRAME_PROJECTION = "frame projection"
    STRUCTURE = "framing with its sheathing"
    INNER_LAYERS = "wall finish"
    OUTER_LAYERS = "wall outside the sheathing"
    MULLS = "place of the mulls"


Value = str | float | tuple[float, float] | Layers


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """The window moved outward past the sheathing, inward where negative [in]."""

    outward: float

    def words(self, units: Units) -> str:
        """Say how far, and which way."""
        way = "outward" if self.outward > 0 else "inward"
        return f"the window moved {units.text(abs(self.outward))} {way}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Exchanged:
    """A thing is another one, or of another size [in]."""

    thing: Thing
    was: Value
    now: Value

    def words(self, units: Units) -> str:
        """Say what it was and what it is."""
        return f"the {self.thing.value} changed from {_text(self.was, units)} to {_text(self.now, units)}"


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherOpening:
    """The mark is of another opening now, while one with another ``mark`` is where the reading was taken.

    ``room``: where that is, empty where the mark is in that room still.
    """

    mark: str
    room: str = ""

    def words(self, units: Units) -> str:
        """Say which opening is there now, and that the reading may be of that one."""
        where = f"in the room where they were read ({self.room})" if self.room else "that they were read at"
        return f"{self.mark} is the opening {where}, and they may belong to it"


@dataclass(frozen=True, slots=True, kw_only=True)
class MovedAlong:
    """The opening is another hole in the wall: it moved along it, to the right where positive [in]."""

    to_the_right: float

    def words(self, units: Units) -> str:
        """Say how far."""
        way = "right" if self.to_the_right > 0 else "left"
        return f"the opening moved {units.text(abs(self.to_the_right))} to the {way}, as its wall is seen from outside"


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherElevation:
    """The opening is in another side of the house, each by its name in the job."""

    was: str
    now: str

    def words(self, units: Units) -> str:
        """Say which."""
        return f"the opening moved from {self.was} to {self.now}"


Change = Moved | MovedAlong | OtherElevation | Exchanged | OtherOpening


def _text(value: Value, units: Units) -> str:
    if isinstance(value, str):
        return value
    if isinstance(value, float):
        return units.text(value)
    if not value:
        return "none"
    if isinstance(value[0], float):
        return " × ".join(units.text(one) for one in value if isinstance(one, float))
    return ", ".join(f"{one[0]} {units.text(one[1])}" for one in value if isinstance(one, tuple))
