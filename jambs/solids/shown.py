"""The solids as files show them: a jamb that is a frame with panels by its members, cut with it as one board."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from jambs.solids import kernel
from jambs.solids.model import KitSolids, Solid, board_shape, stood


def as_shown(solids: KitSolids) -> KitSolids:
    """Return the solids of a kit, the members of a frame with panels in place of the board that it is cut as."""
    parts, beside = (tuple(one for solid in some for one in _shown(solid)) for some in (solids.parts, solids.beside))
    return replace(solids, parts=parts, beside=beside)


def _shown(solid: Solid) -> Iterator[Solid]:
    members = solid.part.frame_members if solid.part else ()
    if not members:
        yield solid
    for part in members:
        # Horns, bevels and ends go off when the frame is cut as one board: what is left lies within that board.
        into_member = kernel.location(part.seat).Inverted().Multiplied(kernel.location(solid.seat))
        shape = kernel.common(board_shape(part.silhouettes), solid.bench.Located(into_member))
        yield stood(name=part.mark, material=part.stock, part=part, bench=shape, seat=part.seat)
