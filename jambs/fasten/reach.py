"""What a fastener goes through on its way to the framing, and the next length that is sold."""

from __future__ import annotations

import csv
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from jambs.job.models.layers import BuckKind, Role
from jambs.job.models.outside import Fixed
from jambs.length import HALF_64TH, Units, read_length
from jambs.parts.board.kinds import PartKind
from jambs.parts.kit.kit import Kit
from jambs.sides import Side
from jambs.wall.planes import WallPlanes

READ = "read"
"""A row of the table whose source was read; the others are from memory."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Through:
    """A layer or board on the fastener's way, outside → inside, and its thickness there [in]."""

    name: str
    thickness: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Sold:
    """A fastener of the table: the lengths it is sold in, ascending [in]; where they are from, and if that was read.

    Where jobs are in millimeters other lengths are sold: those of the table, where it has some.
    """

    fastener: str
    diameter: float
    lengths: tuple[float, ...]
    source: str
    is_read: bool


@cache
def sold_fasteners(units: Units = Units.INCH) -> tuple[Sold, ...]:
    """Return the fasteners of the table, with the lengths that are sold where jobs are in these units."""
    text = files("jambs.data").joinpath("fastener_lengths.csv").read_text(encoding="utf-8")
    return tuple(
        Sold(
            fastener=row["fastener"],
            diameter=float(row["diameter_in"]),
            lengths=_lengths(row, units),
            source=row["source"],
            is_read=row["status"] == READ,
        )
        for row in csv.DictReader(text.splitlines())
    )


def _lengths(row: Mapping[str, str], units: Units) -> tuple[float, ...]:
    key = "lengths_mm" if units is Units.MM and row["lengths_mm"] else "lengths_in"
    unit = Units.MM if key == "lengths_mm" else Units.INCH
    return tuple(read_length(one, units=unit) for one in row[key].split("; "))


def find_sold(fastener: str, units: Units = Units.INCH) -> Sold | None:
    """Return the fastener of the table that a job names, whatever its capitals and spaces."""
    wanted = _plain(fastener)
    return next((one for one in sold_fasteners(units) if _plain(one.fastener) == wanted), None)


def _plain(name: str) -> str:
    return name.lower().replace(" ", "").replace(".", "").replace("#", "no")


def next_length(needed: float, lengths: Sequence[float]) -> float | None:
    """Return the least length that reaches [in], None where none does."""
    return min((one for one in lengths if one >= needed - HALF_64TH), default=None)


def framing_face(planes: WallPlanes) -> float:
    """Depth of the outer face of the framing; of the sheathing where the wall has none [in]."""
    framing = [one.outer for one in planes.layers if one.layer.role is Role.FRAMING]
    return max(framing, default=planes.sheathing_plane)


def layers_to_framing(planes: WallPlanes, outer: float) -> tuple[Through, ...]:
    """Return the layers between a depth and the framing, outside → inside [in]."""
    face = framing_face(planes)
    found = [
        Through(name=one.layer.name, thickness=min(one.outer, outer) - max(one.inner, face))
        for one in reversed(planes.layers)
        if one.inner < outer and one.outer > face
    ]
    return tuple(one for one in found if one.thickness > 0)


def through_field(planes: WallPlanes) -> tuple[Through, ...]:
    """Return what a fastener of strapping or outer sheathing goes through, from the trim plane in."""
    return layers_to_framing(planes, planes.trim_plane)


def through_opening(fixed: Fixed, kit: Kit) -> tuple[Through, ...] | None:
    """Return what a fastener of casing, buck or return furring goes through; None where the opening has none."""
    placement = kit.placement
    if fixed is Fixed.RETURN_FURRING:
        return through_return_furring(kit)
    if fixed is Fixed.CASING:
        trim = placement.opening.exterior
        if trim is None or not trim.is_cased:
            return None
        return (Through(name="casing", thickness=trim.casing.thickness), *through_field(placement.planes))
    buck = placement.buck
    if fixed is not Fixed.BUCK or buck is None:
        return None
    if buck.kind is BuckKind.LINER:
        return (Through(name="liner buck", thickness=buck.thickness),)
    depth = Through(name="outboard buck", thickness=buck.outer - buck.inner)
    return (depth, *layers_to_framing(placement.planes, buck.inner))


def through_return_furring(kit: Kit) -> tuple[Through, ...] | None:
    """Return what a screw of furring behind returned cladding goes through to the edge of the rough opening.

    Where the layers of the wall stop at its back they fill what is left over; the widest side counts.
    """
    strips = [part for part in kit.parts if part.kind is PartKind.RETURN_FURRING]
    if not strips:
        return None
    shims, frame = kit.placement.shims, kit.placement.opening.frame
    gap = 0.0
    for part in strips:
        x, y, _ = part.seat.at(0.0, 0.0, part.thickness)
        left_over = {Side.LEFT: x + shims.left, Side.RIGHT: frame.width + shims.right - x}
        gap = max(gap, left_over.get(part.side, frame.height + shims.head - y))
    furring = Through(name="furring", thickness=strips[0].thickness)
    return (furring, *((Through(name="shims or layers", thickness=gap),) if gap > HALF_64TH else ()))
