"""How cold a frame is by itself, nothing lost at its outer edge: what the joint with the wall is held against."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from jambs.study.heat.conduction import solve
from jambs.study.heat.frame import FrameBlock, airs_alone

FROM_GLASS = 0.025
"""The frame's own temperature for the corner estimate is read this far from the glass [m]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AloneFactors:
    """Temperature factors of a frame by itself.

    ``frame_face``: on its inside face, FROM_GLASS from the glass or in the middle of a narrow face; ``coldest``: the
    coldest place on its inside surfaces.
    """

    frame_face: float
    coldest: float


@lru_cache(maxsize=256)
def factors_alone(frame: FrameBlock) -> AloneFactors:
    """Compute a frame with its panel, alone."""
    field = solve(frame.blocks(0.0), airs_alone(frame))
    place = max(frame.face - FROM_GLASS, frame.face / 2)
    return AloneFactors(
        frame_face=field.temperature_along(frame.depth, place),
        coldest=field.coldest("inside", without=("panel",)).temperature,
    )
