"""Find the solids of a kit by the trade's names, and where they reach."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from jambs.parts.part import Where
from jambs.solids.model import KitSolids, Solid

X, Y, D = 0, 1, 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Set:
    """The solids of one part of the trim, by position: head, left leg, right leg, bottom."""

    by_position: dict[str, Solid]

    def __bool__(self) -> bool:
        """Say whether there are any."""
        return bool(self.by_position)

    def __getitem__(self, position: str) -> Solid:
        """Return the one at a position."""
        return self.by_position[position]

    def __contains__(self, position: str) -> bool:
        """Say whether there is one at a position."""
        return position in self.by_position

    @property
    def all(self) -> tuple[Solid, ...]:
        """All of them."""
        return tuple(self.by_position.values())

    def low(self, axis: int) -> float:
        """Least coordinate of all [in]."""
        return min(solid.low[axis] for solid in self.all)

    def high(self, axis: int) -> float:
        """Greatest coordinate of all [in]."""
        return max(solid.high[axis] for solid in self.all)


def pick(solids: KitSolids, where: Where, *names: str) -> Set:
    """Find the solids of a set with one of the names."""
    found = {
        solid.part.position: solid
        for solid in solids.parts
        if solid.part and solid.part.where is where and solid.part.name in names
    }
    return Set(by_position=found)


def one_of(solids: KitSolids, where: Where, name: str) -> Solid | None:
    """Find the only solid with a name."""
    found: Sequence[Solid] = pick(solids, where, name).all
    return found[0] if found else None
