"""Parts of all openings as pieces to cut: wide end, long point, strips to glue, width left where depths are planned."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from jambs.job.models.openings import Job
from jambs.parts.cuts import EndBevel, Miter
from jambs.parts.kinds import PartKind, Where
from jambs.parts.kit import Kit
from jambs.parts.part import Part
from jambs.stock.house.lumber import printed_steps, steps_up
from jambs.stock.problem import Piece

DEPTH_PARTS = (PartKind.EXTENSION_JAMB, PartKind.STOOL, PartKind.EXTERIOR_JAMB, PartKind.EXTERIOR_SILL)
"""Parts whose width makes up a depth of the wall, so that a planned depth may still change them."""
STRIP_LETTERS = "abcdefghijklmnopqrstuvwxyz"


@dataclass(frozen=True, slots=True, kw_only=True)
class CutPiece:
    """A piece and the part it is for; sizes as sawn first [in].

    ``width``: with the ``allowance`` that is left on where the depth is only planned; ``is_planned``: it is.
    ``length``: long point to long point of a mitered one. ``glued``: how many strips the part is glued up of, else 0.
    """

    piece: Piece
    part: Part
    width: float
    length: float
    allowance: float
    is_planned: bool
    glued: int = 0

    @property
    def words(self) -> str:
        """The part in trade words: ``extension jamb, left leg``."""
        return f"{self.part.name}, {self.part.position}"


def house_pieces(kits: Iterable[Kit], job: Job) -> tuple[CutPiece, ...]:
    """Return every wooden part of the house as pieces, in the order of openings and marks."""
    return tuple(piece for kit in kits for part in kit.parts if part.is_wood for piece in _pieces(part, kit, job))


def _pieces(part: Part, kit: Kit, job: Job) -> Iterator[CutPiece]:
    is_planned = part.kind in DEPTH_PARTS and not _is_measured(part, kit)
    allowance = (job.shop.planned_allowance or 0.0) if is_planned else 0.0
    widths = part.strips or (part.width,)
    for place, width in enumerate(widths):
        left = allowance if place == len(widths) - 1 else 0.0
        mark = part.mark + (STRIP_LETTERS[place] if part.strips else "")
        yield CutPiece(
            piece=_piece(mark, part, width + left, job),
            part=part,
            width=width + left,
            length=part.length,
            allowance=left,
            is_planned=is_planned,
            glued=len(part.strips),
        )


def _is_measured(part: Part, kit: Kit) -> bool:
    measured = kit.placement.opening.measured
    if part.where is Where.EXTERIOR:
        return kit.is_measured and measured is not None and measured.exterior_depth is not None
    return kit.is_measured


def _piece(mark: str, part: Part, width: float, job: Job) -> Piece:
    angles = [cut.angle_deg for cut in part.cuts if isinstance(cut, Miter | EndBevel)]
    return Piece(
        mark=mark,
        length=printed_steps(part.length, units=job.units),
        width=printed_steps(width, units=job.units),
        is_mitered=any(isinstance(cut, Miter) for cut in part.cuts),
        miter_allowance=miter_allowance(angles, job),
    )


def miter_allowance(angles_deg: Iterable[float], job: Job) -> int:
    """Steps that a slanted cut takes along the grain beyond the square kerf: kerf (1 / cos - 1), the steepest end.

    Up to the shop's grid, so that running lengths can be read off a tape.
    """
    steepest = max(angles_deg, default=0.0)
    beyond = job.shop.kerf * (1 / math.cos(math.radians(steepest)) - 1)
    return steps_up(job.shop.grid.up(beyond), units=job.units)
