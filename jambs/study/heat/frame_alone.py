"""How cold a frame is by itself, nothing lost at its outer edge: what the joint with the wall is held against."""

from __future__ import annotations

from functools import lru_cache

from jambs.study.heat.conduction import solve
from jambs.study.heat.frame import FrameBlock, airs_alone


@lru_cache(maxsize=256)
def coldest_alone(frame: FrameBlock) -> float:
    """Compute a frame with its panel, alone: the temperature factor of the coldest place inside but the panel's."""
    field = solve(frame.blocks(0.0), airs_alone(frame))
    return field.coldest("inside", without=("panel",)).temperature
