"""What parts and boards have in common to be cut from each other, and what the boards of one lot are."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.length import HALF_64TH
from jambs.stock.problem import LotKind

SAME_SIZE = HALF_64TH
"""Two sizes nearer than this are one size [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """What parts and boards have in common to be cut from each other: the stock and its thickness [in]."""

    stock: str
    thickness: float

    def holds(self, stock: str, thickness: float) -> bool:
        """Say whether a board or a part is of this material."""
        return self.stock == stock and abs(self.thickness - thickness) < SAME_SIZE


@dataclass(frozen=True, slots=True, kw_only=True)
class LotName:
    """What a lot is cut from, and how; ``nominal``, ``width`` [in]: of boards that are crosscut only."""

    kind: LotKind
    material: Material
    nominal: str | None = None
    width: float = 0.0
