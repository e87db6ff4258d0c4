"""Positions and changes of the detail in words, as the comparison names them."""

from __future__ import annotations

from jambs.job.models.layers import BuckKind
from jambs.length import Units
from jambs.parts.board.kinds import Where


def lap_words(lap: float, units: Units) -> str:
    """Name insulation that is lapped over the frame by a length [in]."""
    return f"insulation lapped {units.text(lap)} over the frame, no exterior jamb"


def buck_words(kind: BuckKind, thickness: float, units: Units) -> str:
    """Name a buck of a kind and thickness [in]."""
    return f"{kind.value} buck {units.text(thickness)} thick"


def jamb_words(where: Where, thickness: float, units: Units) -> str:
    """Name extension jambs inside or outside by their thickness [in]."""
    return f"{where.value} jamb {units.text(thickness)} thick"


def best_board_words(width: float, units: Units) -> str:
    """Name the best of the positions whose jambs come out of one board of a width [in]."""
    return f"best of one board, {units.text(width)} wide"
