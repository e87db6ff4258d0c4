"""Named material regions of a cut through an opening: what is drawn is what is computed."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from jambs.geometry import Point
from jambs.parts.board.kinds import Where
from jambs.sides import Side


class Stuff(StrEnum):
    """What a region is made of, for its hatch, its layer and its name on paper."""

    GYPSUM = "gypsum"
    FRAMING = "framing"
    CAVITY = "cavity insulation"
    AIR = "air"
    SHEATHING = "sheathing"
    MEMBRANE = "membrane"
    RIGID = "rigid insulation"
    FIBER = "fiber insulation"
    STRAPPING = "strapping"
    COVER = "outer sheathing"
    CLADDING = "cladding"
    BUCK = "buck"
    FRAME = "window frame"
    GLASS = "glass"
    JAMB = "extension jamb"
    CASING = "casing"
    SILL = "stool or sill"
    RETURN = "return"
    TILE = "tile"
    FURRING = "furring"
    SHIM = "shim space"
    SEALANT = "sealant joint"
    METAL = "flashing"


@dataclass(frozen=True, slots=True, kw_only=True)
class Region:
    """A polygon of one material in the plane of the cut, points (across, depth) [in].

    ``across``: in sections of jambs from the frame's outer edge into the wall; at head and sill the height y.
    ``conductivity`` [W/mK] where known. ``mark``, ``where``: the part's, where the region is a part.
    """

    name: str
    stuff: Stuff
    outline: tuple[Point, ...]
    conductivity: float | None = None
    mark: str = ""
    where: Where | None = None

    @property
    def is_clad_part(self) -> bool:
        """Say whether it is cladding that is a part of the kit, returned to the frame, and no layer of the wall."""
        return self.stuff is Stuff.CLADDING and bool(self.mark)


class SectionCut(StrEnum):
    """Through which side of the opening the section is cut."""

    JAMB = "jamb"
    LEFT_JAMB = "left jamb"
    HEAD = "head"
    SILL = "sill"

    @property
    def side(self) -> Side:
        """The side of the opening that is cut; of the legs, the right one unless it says left."""
        return _SIDES[self]

    @property
    def is_level(self) -> bool:
        """Say whether it is a plan: cut level through a jamb."""
        return self.side.is_leg

    def into_wall(self, x: float, y: float, *, width: float, height: float) -> float:
        """Return how far a point of the opening lies from the frame's edge, square to the side and into the wall [in].

        ``width``, ``height``: of the frame.
        """
        return {Side.RIGHT: x - width, Side.LEFT: -x, Side.HEAD: y - height, Side.SILL: -y}[self.side]


_SIDES = {
    SectionCut.JAMB: Side.RIGHT,
    SectionCut.LEFT_JAMB: Side.LEFT,
    SectionCut.HEAD: Side.HEAD,
    SectionCut.SILL: Side.SILL,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """A cut through one side of an opening. Regions listed back to front: a later one lies over an earlier one.

    Depth planes worth a dimension, by name [in]: finished face, inside edge, flange plane, outside edge, trim plane, …
    """

    cut: SectionCut
    mark: str
    regions: tuple[Region, ...]
    depths: dict[str, float]
