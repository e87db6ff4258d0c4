"""The steps of a part by their kind."""

from __future__ import annotations

from typing import TypeVar

from jambs.parts.board.part import Part

Step = TypeVar("Step")


def steps_of(part: Part, kind: type[Step]) -> list[Step]:
    """Return the cuts and touches of one kind."""
    return [step for step in (*part.cuts, *part.touches) if isinstance(step, kind)]
