"""The rule of thumb for the least heat loss: most of the wall's resistance inside of the frame. A cross-check."""

from __future__ import annotations

from jambs.study.wall.stack import HeatStack

RULE_FRACTION = 0.60
"""Share of the wall's resistance on the inside of the frame's middle, near the best position in 27 computed cases."""


def rule_position(stack: HeatStack, frame_depth: float) -> float:
    """Exterior depth that puts RULE_FRACTION of the resistance inside of the frame's middle. [m]

    From the outside face of the stack in to the outside face of a frame ``frame_depth`` deep.
    """
    middle = stack.depth_at_resistance_fraction(RULE_FRACTION)
    return stack.thickness - middle - frame_depth / 2
