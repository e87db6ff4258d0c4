"""A drawing larger than a sheet of paper, in tiles that overlap, to be printed at full scale and taped together."""

from __future__ import annotations

import math
from dataclasses import dataclass

from jambs.geometry import Point
from jambs.length import ROUND_OFF

QUARTERS = (0.25, 0.75)
"""Where the crosses of a strip stand, as shares of its length."""
COLUMNS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


@dataclass(frozen=True, slots=True, kw_only=True)
class Tile:
    """One sheet of a tiled drawing: its column and row from the lower left, and the corner it shows from [in]."""

    column: int
    row: int
    low: Point

    @property
    def name(self) -> str:
        """Name of the tile: ``B1``, the second from the left in the lowest row."""
        return f"{COLUMNS[self.column]}{self.row + 1}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Tiling:
    """How a drawing is parted [in]: its size, what one sheet shows, what two neighbors both show."""

    size: Point
    room: Point
    overlap: float

    @property
    def count(self) -> tuple[int, int]:
        """Sheets across and down."""
        across, down = (_count(size, room, self.overlap) for size, room in zip(self.size, self.room, strict=True))
        return across, down

    @property
    def tiles(self) -> tuple[Tile, ...]:
        """All sheets, the lowest row first, from the left."""
        step = (self.room[0] - self.overlap, self.room[1] - self.overlap)
        across, down = self.count
        return tuple(
            Tile(column=column, row=row, low=(column * step[0], row * step[1]))
            for row in range(down)
            for column in range(across)
        )

    def own(self, tile: Tile) -> tuple[Point, Point]:
        """Return the lower left and upper right corner of what a sheet shows and none left of it or below does [in]."""
        (x, y), (wide, high) = tile.low, self.room
        left, below = (self.overlap if number else 0.0 for number in (tile.column, tile.row))
        return (x + left, y + below), (x + wide, y + high)

    def crosses(self, tile: Tile) -> tuple[Point, ...]:
        """Return where the crosses of a sheet stand, from its own lower left corner: each is on its neighbor too [in].

        Two in the middle of each strip that it shares, a quarter in from the ends of the strip.
        """
        (wide, high), half = self.room, self.overlap / 2
        across, down = self.count
        beside = [x for x, is_there in ((half, tile.column > 0), (wide - half, tile.column < across - 1)) if is_there]
        over = [y for y, is_there in ((half, tile.row > 0), (high - half, tile.row < down - 1)) if is_there]
        return (
            *((x, share * high) for x in beside for share in QUARTERS),
            *((share * wide, y) for y in over for share in QUARTERS),
        )


def _count(size: float, room: float, overlap: float) -> int:
    return max(1, math.ceil((size - overlap) / (room - overlap) - ROUND_OFF))
