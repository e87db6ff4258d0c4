"""What a planned depth may turn out to be, and how much width to leave on stock milled before the wall is measured."""

from __future__ import annotations

import csv
import math
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from jambs.job.models.layers import BuckKind
from jambs.job.reading.catalog import find_layer
from jambs.length import ROUND_OFF, Grid, Units, read_length
from jambs.place.placement import Placement
from jambs.wall.planes import PlacedLayer

BUCK, WINDOW, WALL = "buck", "window", "wall"


@dataclass(frozen=True, slots=True, kw_only=True)
class Tolerance:
    """How far one piece of the way from the finished face to the frame may be off, either way [in]."""

    name: str
    plus_minus: float
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DepthRange:
    """What the interior depth may turn out to be [in].

    ``worst``: every piece off by all it may, the same way. ``likely``: root of the sum of squares, as if each were off
    by chance alone. ``pieces``: what it is made of.
    """

    planned: float
    pieces: tuple[Tolerance, ...]

    @property
    def worst(self) -> float:
        """Plus or minus this much at worst [in]."""
        return sum(one.plus_minus for one in self.pieces)

    @property
    def likely(self) -> float:
        """Plus or minus this much by root of squares [in]."""
        return math.sqrt(sum(one.plus_minus**2 for one in self.pieces))

    def width_to_leave(self, grid: Grid) -> float:
        """Return what to leave on stock milled before the wall is measured: the worst case, up to the grid [in]."""
        return grid.up(self.worst)


@cache
def _table() -> dict[str, Tolerance]:
    text = files("jambs.data").joinpath("layer_tolerances.csv").read_text(encoding="utf-8")
    return {
        row["layer"]: Tolerance(
            name=row["layer"],
            plus_minus=read_length(row["plus_minus_in"], units=Units.INCH),
            source=row["source"],
        )
        for row in csv.DictReader(text.splitlines())
    }


def depth_range(placement: Placement) -> DepthRange:
    """Add up what stands between the finished face and the frame: layers to the window's seat, buck, window, wall."""
    pieces = [_layer(one) for one in placement.planes.layers if one.outer <= _bearing(placement) + ROUND_OFF]
    if placement.buck is not None:
        pieces.append(_table()[BUCK])
    pieces += [_table()[WINDOW], _table()[WALL]]
    return DepthRange(planned=placement.interior_depth, pieces=tuple(one for one in pieces if one.plus_minus > 0))


def _bearing(placement: Placement) -> float:
    """Depth of the plane that the window's seat is measured from: a buck stands on it, else the seat itself [in]."""
    buck = placement.buck
    if buck is None:
        return placement.flange_plane
    return buck.inner if buck.kind is BuckKind.OUTBOARD else placement.planes.stud_face


def _layer(placed: PlacedLayer) -> Tolerance:
    """Return the tolerance of a layer of the catalog that has one of its own, else by what it does in the wall."""
    layer, known = placed.layer, find_layer(placed.layer.name)
    found = _table()[known.tolerance if known and known.tolerance else layer.role.value]
    return Tolerance(name=layer.name, plus_minus=found.plus_minus, source=found.source)
