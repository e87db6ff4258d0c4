"""Find the solids of a kit by what they are, and where they reach."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.kit.kit import JambFrame
from jambs.sides import Side
from jambs.solids.model import KitSolids, Solid

X, Y, D = 0, 1, 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Set:
    """The solids of one kind of part, by the side of the opening they are on."""

    by_side: dict[Side, Solid]

    def __bool__(self) -> bool:
        """Say whether there are any."""
        return bool(self.by_side)

    def __getitem__(self, side: Side) -> Solid:
        """Return the one on a side."""
        return self.by_side[side]

    def __contains__(self, side: Side) -> bool:
        """Say whether there is one on a side."""
        return side in self.by_side

    @property
    def all(self) -> tuple[Solid, ...]:
        """All of them."""
        return tuple(self.by_side.values())

    def low(self, axis: int) -> float:
        """Least coordinate of all [in]."""
        return min(solid.low[axis] for solid in self.all)

    def high(self, axis: int) -> float:
        """Greatest coordinate of all [in]."""
        return max(solid.high[axis] for solid in self.all)


def pick(solids: KitSolids, where: Where, *kinds: PartKind, member: int = 1) -> Set:
    """Find the solids of a set that are of one of the kinds; where a side has several of a kind, one of them."""
    found = {
        solid.part.side: solid
        for solid in solids.parts
        if solid.part and solid.part.where is where and solid.part.kind in kinds and solid.part.member == member
    }
    return Set(by_side=found)


def over_all(solids: KitSolids, where: Where, *kinds: PartKind) -> Set:
    """Find the solids of a set over all openings that are trimmed as one: of the jambs the outermost."""
    found: dict[Side, Solid] = {}
    for solid in sorted((*solids.parts, *solids.beside), key=lambda one: one.low[X]):
        if solid.part and solid.part.where is where and solid.part.kind in kinds and solid.part.member == 1:
            side = solid.part.side
            found[side] = found.get(side, solid) if side is Side.LEFT else solid
    return Set(by_side=found)


def has_all(solids: KitSolids) -> bool:
    """Say whether the boards over all openings that are trimmed as one are the kit's own."""
    return solids.kit.run is None or solids.kit.run.is_lead


Framed = tuple[JambFrame, Set]
"""A frame of interior extension jambs and its boards."""


def jambs_of(solids: KitSolids) -> list[Framed]:
    """Find the boards of every interior jamb frame, from the window to the room."""
    kind = PartKind.EXTENSION_JAMB
    return [(frame, pick(solids, Where.INTERIOR, kind, member=frame.member)) for frame in solids.kit.frames]


def one_of(solids: KitSolids, where: Where, kind: PartKind) -> Solid | None:
    """Find the only solid of a kind."""
    found: Sequence[Solid] = pick(solids, where, kind).all
    return found[0] if found else None


def corner_words(what: str, pieces: Set, across: Side, leg: Side) -> str:
    """Name the joint of two pieces at a corner: ``the casing's head and left leg, W01-5 and W01-6,``."""
    marks = f"{pieces[across].name} and {pieces[leg].name}"
    return f"the {what}'s {across.board_words} and {leg.board_words}, {marks},"
