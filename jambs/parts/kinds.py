"""What a part is, which side of the opening it is on, where it belongs: as data, with its words in one place.

Nothing in the house compares these words; they are for printing.
"""

from __future__ import annotations

from enum import Enum


class Where(Enum):
    """Which set a part belongs to."""

    INTERIOR = "interior"
    EXTERIOR = "exterior"
    BUCK = "buck"


class PartKind(Enum):
    """The kinds of parts, by their trade words."""

    EXTENSION_JAMB = "extension jamb"
    STOOL = "stool"
    CASING = "casing"
    APRON = "apron"
    EXTERIOR_JAMB = "exterior extension jamb"
    EXTERIOR_SILL = "exterior sill"
    HEAD_FLASHING = "head flashing"
    LINER_BUCK = "liner buck"
    OUTBOARD_BUCK = "outboard buck"

    @property
    def words(self) -> str:
        """The part in trade words."""
        return self.value

    @property
    def is_jamb(self) -> bool:
        """Say whether it is an extension jamb, inside or outside."""
        return self in (PartKind.EXTENSION_JAMB, PartKind.EXTERIOR_JAMB)

    @property
    def is_buck(self) -> bool:
        """Say whether it is a board of a buck."""
        return self in (PartKind.LINER_BUCK, PartKind.OUTBOARD_BUCK)

    @property
    def is_at_sill(self) -> bool:
        """Say whether it lies at the sill only, and is said to lie there; all others go round the opening."""
        return self in (PartKind.STOOL, PartKind.APRON, PartKind.EXTERIOR_SILL)


class BoardEnd(Enum):
    """An end of a board by where it sits in the opening, left and right as seen from inside."""

    LEFT = "left"
    RIGHT = "right"
    BOTTOM = "bottom"
    TOP = "top"

    @property
    def words(self) -> str:
        """The end in words."""
        return self.value


class Side(Enum):
    """The sides of an opening; the values are the keys of a measured side in the job file."""

    HEAD = "head"
    LEFT = "left"
    RIGHT = "right"
    SILL = "sill"

    @property
    def words(self) -> str:
        """The side itself, as of a depth or a shim space: ``left``, ``sill``."""
        return self.value

    @property
    def board_words(self) -> str:
        """The board on the side: ``left leg``, ``bottom``."""
        return _BOARD_WORDS[self]

    @property
    def wall_words(self) -> str:
        """The side as a line along the wall: ``left leg``, ``sill``."""
        return self.board_words if self.is_leg else self.words

    @property
    def is_leg(self) -> bool:
        """Say whether the side stands upright."""
        return self in LEGS

    @property
    def ends(self) -> tuple[BoardEnd, BoardEnd]:
        """Where a measured side begins and ends: left → right on head and sill, bottom → top on the legs."""
        return (BoardEnd.BOTTOM, BoardEnd.TOP) if self.is_leg else (BoardEnd.LEFT, BoardEnd.RIGHT)

    @property
    def is_start(self) -> bool:
        """Say whether the sides that meet this one begin here: they run left → right and bottom → top."""
        return self in (Side.LEFT, Side.SILL)


_BOARD_WORDS = {Side.HEAD: "head", Side.LEFT: "left leg", Side.RIGHT: "right leg", Side.SILL: "bottom"}
LEGS = (Side.LEFT, Side.RIGHT)
ACROSS = (Side.HEAD, Side.SILL)
CORNERS = tuple((across, leg) for across in ACROSS for leg in LEGS)
"""The corners of an opening: which sides meet there."""


def position_words(kind: PartKind, side: Side) -> str:
    """Say where a part is: ``left leg``, ``bottom`` of what goes round the opening, ``sill`` of what lies there."""
    return side.words if kind.is_at_sill else side.board_words
