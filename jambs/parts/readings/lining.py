"""What lines a side of an opening inside, and what whoever makes it does about a wall that is not straight.

Boards are ripped and scribed; boards of the drywall crew and tile are not: the coat takes what the wall is off.
"""

from __future__ import annotations

from enum import Enum, auto

from jambs.job.models.trim import InteriorTrim
from jambs.parts.readings.edge import FittedEdge, remedy
from jambs.sides import Side


class Lining(Enum):
    """Boards of the carpenter, cased or bare at the wall, returns of the drywall crew, or a sill of tile."""

    BOARDS = auto()
    BARE = auto()
    RETURNS = auto()
    TILE = auto()


def lining_of(trim: InteriorTrim, side: Side) -> Lining:
    """Return what lines a side inside; a stool between returns is the carpenter's."""
    if trim.returns is None or (side is Side.SILL and trim.stool):
        return Lining.BOARDS if trim.wall_edge is None else Lining.BARE
    return Lining.TILE if side is Side.SILL and trim.tile_sill else Lining.RETURNS


PARALLEL = {
    Lining.BOARDS: "rip parallel at the wider width, plane or shim the rest",
    Lining.BARE: "rip parallel at the wider width, plane or shim the rest",
    Lining.RETURNS: "the return is cut parallel at the wider width, and the coat at the corner bead takes the rest",
    Lining.TILE: "the tile is cut parallel at the wider width, and its nosing takes the rest",
}
"""What is done where a side tapers within the shop's tolerance."""
STRAIGHT = {
    Lining.BOARDS: "straight: rip parallel",
    Lining.BARE: "straight: rip parallel",
    Lining.RETURNS: "straight: return cut parallel",
    Lining.TILE: "straight: tile cut parallel",
}
"""What is done along a straight wall."""
TWISTED = {
    Lining.BOARDS: "expect to ease the corners of the casing",
    Lining.BARE: "set the jambs true and float the wall to them",
    Lining.RETURNS: "set the corner beads true and float the wall to them",
}
"""What is done where the corners of a wall lie out of one plane: what lines the head."""
PROUD_CORNERS = {
    Lining.BOARDS: "plane the jambs there, or ease the back of the casing",
    Lining.BARE: TWISTED[Lining.BARE],
    Lining.RETURNS: TWISTED[Lining.RETURNS],
}
"""The same beside the picture of the wall, where the corners that stand proud are named."""
FLOATED = {
    Lining.RETURNS: "set the corner bead straight and float the wall to it",
    Lining.TILE: "float the wall straight before the tile is cut",
}


def bend_remedy(edge: FittedEdge, lining: Lining) -> str:
    """Say what to do about a wall that leaves its straight edge."""
    return FLOATED.get(lining) or remedy(edge)
