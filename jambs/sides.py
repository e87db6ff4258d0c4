"""The sides of an opening and the ends of what runs along them, with their words.

Nothing in the house compares these words; they are for printing, and the keys of measured sides in the job file.
"""

from __future__ import annotations

from enum import Enum


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
