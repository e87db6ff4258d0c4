"""Boards of a curved side, numbered from left to right as the edges of any other side are."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from jambs.parts.board.part import Part
from jambs.sides import Side


def numbered(parts: Iterable[Part]) -> tuple[Part, ...]:
    """Number the boards of each side, which come clockwise as seen from inside: along the sill from the right."""
    sides: dict[Side, list[Part]] = {}
    for part in parts:
        sides.setdefault(part.side, []).append(part)
    return tuple(
        replace(part, member=member, runs=len(boards))
        for side, boards in sides.items()
        for member, part in enumerate(boards[::-1] if side is Side.SILL else boards, start=1)
    )
