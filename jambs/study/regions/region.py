"""What the heat solver is given: rectangles of material and rectangles of air, in a cut through the wall."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import Enum, auto

from jambs.findings import FindingsError, Subject
from jambs.study.heat_findings import BlockWithoutConductivity, FilmBelowZero, RectangleWithoutExtent


class StudyError(FindingsError):
    """A section, stack or climate that cannot be studied; its findings say where, what was found and what to do."""

    def about(self, subject: Subject) -> StudyError:
        """Return the same of a subject that is known by now."""
        return StudyError(*(replace(one, subject=subject) for one in self.findings))


class BlockKind(Enum):
    """What a block is, where that decides what its surface faces; all others are layers of the wall."""

    LAYER = auto()
    FRAME = auto()
    PANEL = auto()
    SEALANT = auto()
    INTERIOR_TRIM = auto()
    EXTERIOR_JAMB = auto()
    EXTERIOR_SILL = auto()
    EXTERIOR_METAL = auto()


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """A rectangle of one material; a later block covers an earlier one where they overlap.

    Edges x0 < x1 and y0 < y1 in the plane of the cut [m]; conductivity [W/(m K)].
    Raises StudyError when an extent or the conductivity is not above zero.
    """

    name: str
    conductivity: float
    x0: float
    x1: float
    y0: float
    y1: float
    kind: BlockKind = BlockKind.LAYER

    def __post_init__(self) -> None:
        _check_extent(self)
        if not self.conductivity > 0:
            raise StudyError(BlockWithoutConductivity(block=self.name, conductivity=self.conductivity))


@dataclass(frozen=True, slots=True, kw_only=True)
class AirRegion:
    """A rectangle of air at one temperature; blocks cover it where they overlap.

    `resistance` is that of the film between this air and any block it touches [m2 K/W]; 0 holds the surface at
    the air's temperature. `films`: kinds of blocks that have another resistance, as (BlockKind.FRAME, 0.13).
    Edges in the plane of the cut [m]. Airs of one name are counted as one boundary.
    Raises StudyError when an extent is not above zero or a resistance is below zero.
    """

    name: str
    temperature: float
    resistance: float
    x0: float
    x1: float
    y0: float
    y1: float
    films: tuple[tuple[BlockKind, float], ...] = ()

    def __post_init__(self) -> None:
        _check_extent(self)
        for resistance in (self.resistance, *(value for _, value in self.films)):
            if not resistance >= 0:
                raise StudyError(FilmBelowZero(air=self.name, resistance=resistance))

    def film(self, kind: BlockKind) -> float:
        """Film resistance between this air and a block of a kind. [m2 K/W]"""
        return dict(self.films).get(kind, self.resistance)


def edges_x(rectangles: Sequence[Block | AirRegion]) -> list[float]:
    """Every edge of the rectangles along x. [m]"""
    return [edge for rectangle in rectangles for edge in (rectangle.x0, rectangle.x1)]


def edges_y(rectangles: Sequence[Block | AirRegion]) -> list[float]:
    """Every edge of the rectangles along y. [m]"""
    return [edge for rectangle in rectangles for edge in (rectangle.y0, rectangle.y1)]


def _check_extent(rectangle: Block | AirRegion) -> None:
    if not (rectangle.x1 > rectangle.x0 and rectangle.y1 > rectangle.y0):
        edges = {key: getattr(rectangle, key) for key in ("x0", "x1", "y0", "y1")}
        raise StudyError(RectangleWithoutExtent(region=rectangle.name, **edges))
