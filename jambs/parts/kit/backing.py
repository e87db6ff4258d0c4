"""Lumber that has to stand before the drywall crew comes to an opening without casing: their boards and beads are
fastened to it.

Behind a return in board it fills the rough opening to the back of that board, over its whole depth, and under a stool
or a tile between returns to the underside of stool or bed. At bare jambs the wall board stops short of the rough
opening's edge, in the air: a nailer there carries its edge and the leg of its bead.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from jambs.job.models.layers import Role
from jambs.length import HALF_64TH
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.kit.drywall import DrywallWork
from jambs.parts.kit.kit import FigureKind, Kit
from jambs.sides import Side


class BackingKind(Enum):
    """What the lumber is, by what it carries."""

    FURRING = "furring behind the returns"
    NAILER = "nailer behind the edge of the wall board"


@dataclass(frozen=True, slots=True, kw_only=True)
class Backing:
    """Lumber on one side. ``width``: edge of the rough opening → its face toward the opening [in].

    ``depth``: back of the wall board → as far toward the window as it has to reach [in]; of a nailer as deep as a
    member of the framing is thick, so that it comes out of the same stock, and no deeper than to the frame.
    ``under``: stool or tile that lies on it, where no board does.
    """

    kind: BackingKind
    side: Side
    width: float
    depth: float
    under: PartKind | None = None


MEMBER = 1.5
"""Thickness of a framing member where the layer does not say [in]: nominal 2 (PS 20, dry)."""
_FURRING = {
    Side.LEFT: FigureKind.FURRING_LEFT,
    Side.RIGHT: FigureKind.FURRING_RIGHT,
    Side.HEAD: FigureKind.FURRING_HEAD,
    Side.SILL: FigureKind.FURRING_SILL,
}


LININGS = (PartKind.RETURN, PartKind.STOOL, PartKind.TILE_SILL)
"""What lines an opening where other crews return the wall to the frame."""


def backing_of(kit: Kit) -> tuple[Backing, ...]:
    """Return what has to stand before the boards are hung; nothing under casing, or where framing is there already."""
    if kit.drywall is None:
        return ()
    if kit.drywall.boards is not None:
        return _behind_returns(kit)
    return _nailers(kit, kit.drywall)


def _behind_returns(kit: Kit) -> tuple[Backing, ...]:
    """Fur out each side that a board returns, and the sill where a stool or a tile lies between the returns."""
    inside = [part for part in kit.parts if part.where is Where.INTERIOR]
    lined = {part.side: part.kind for part in inside if part.kind in LININGS}
    wide = {one.kind: one.value for one in kit.figures}
    depth = kit.placement.inside_edge - kit.placement.planes.finish_back
    return tuple(
        Backing(
            kind=BackingKind.FURRING,
            side=side,
            width=wide[kind],
            depth=depth,
            under=None if lined[side] is PartKind.RETURN else lined[side],
        )
        for side, kind in _FURRING.items()
        if side in lined and wide[kind] > HALF_64TH
    )


def _nailers(kit: Kit, work: DrywallWork) -> tuple[Backing, ...]:
    """Return a nailer for every side whose wall board ends inside the rough opening; returns never flare."""
    placement, board = kit.placement, work.wall_board
    shims, frame = placement.shims, placement.opening.frame
    depth = placement.inside_edge - placement.planes.finish_back
    inside = {
        Side.LEFT: board.left + shims.left,
        Side.RIGHT: frame.width + shims.right - board.right,
        Side.HEAD: frame.height + shims.head - board.top,
        Side.SILL: board.bottom + shims.sill,
    }
    edged = {bead.side for bead in work.beads}
    wide = {side: inside[side] for side in inside if side in edged}
    return tuple(
        Backing(kind=BackingKind.NAILER, side=side, width=width, depth=min(depth, _member(kit)))
        for side, width in wide.items()
        if width > HALF_64TH
    )


def _member(kit: Kit) -> float:
    """Thickness of a member of the innermost framing [in]."""
    layers = (one.layer for one in kit.placement.planes.layers)
    framing = next((one for one in layers if one.role is Role.FRAMING), None)
    return (framing.member_width if framing else None) or MEMBER
