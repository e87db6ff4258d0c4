"""The extension jambs inside of an opening that is no rectangle, along the edges of their path, and how they lean."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.job.models.path_edge import FrameEdge
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.jambs.flat_jambs import flat_path
from jambs.parts.jambs.shaped_jambs import clear_path
from jambs.parts.kit.kit import Kit
from jambs.parts.shapes.flat_segments import FlatPath
from jambs.place.frame_path import frame_path
from jambs.solids.model import KitSolids
from jambs.solids.shape_lookup import BoardsRound, boards_round


def flat_of(kit: Kit) -> FlatPath | None:
    """Return the path of flared jambs in flat segments; None of any other opening."""
    opening, frames = kit.placement.opening, kit.frames
    if opening.shape is None or not frames:
        return None
    return flat_path(opening, clear_path(opening, frames[0].clear), frames[0], kit.flares)


@dataclass(frozen=True, slots=True, kw_only=True)
class JambsRound:
    """The extension jambs along the edges of their path, and how far each leans out [degrees].

    Their path is the frame's; where flat segments follow its arcs, that of the clear opening with chords there.
    """

    boards: BoardsRound
    flares: dict[FrameEdge, float]

    @classmethod
    def of(cls, solids: KitSolids) -> JambsRound:
        """Return those of a kit."""
        kit, flat = solids.kit, flat_of(solids.kit)
        path = flat.path if flat else frame_path(kit.placement.opening)
        leaned = flat.flares if flat else {}
        return cls(
            boards=boards_round(solids, Where.INTERIOR, PartKind.EXTENSION_JAMB, path=path),
            flares={edge: leaned.get(i, kit.flares.at(edge.side)) for i, edge in enumerate(path)},
        )
