"""Named material regions of a cut through an opening: what is drawn is what is computed."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from jambs.geometry import Point
from jambs.parts.kinds import Where
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

    ``across``: in a jamb section from the frame's outer edge into the wall; in head and sill sections the height y.
    ``conductivity`` [W/mK] where known. ``mark``, ``where``: the part's, where the region is a part.
    """

    name: str
    stuff: Stuff
    outline: tuple[Point, ...]
    conductivity: float | None = None
    mark: str = ""
    where: Where | None = None


class SectionCut(StrEnum):
    """Through which side of the opening the section is cut."""

    JAMB = "jamb"
    HEAD = "head"
    SILL = "sill"

    @property
    def side(self) -> Side:
        """The side of the opening that is cut; of the legs, the right one."""
        return _SIDES[self]


_SIDES = {SectionCut.JAMB: Side.RIGHT, SectionCut.HEAD: Side.HEAD, SectionCut.SILL: Side.SILL}


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """A cut through one side of an opening. Regions listed back to front: a later one lies over an earlier one.

    Depth planes worth a dimension, by name [in]: finished face, inside edge, flange plane, outside edge, trim plane, …
    """

    cut: SectionCut
    mark: str
    regions: tuple[Region, ...]
    depths: dict[str, float]
