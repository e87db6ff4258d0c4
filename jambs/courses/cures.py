"""What would let more lines be met: the start line moved, or one head or sill moved; the least move there is.

Two sweeps answer for every height at once: what the courses below it can have met, and what those above it can meet.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np

from jambs.courses.course_search import FAR_SMALL, climb, counting, met_weights, skewed
from jambs.courses.spread import Costs
from jambs.courses.task import Target, Task


@dataclass(frozen=True, slots=True, kw_only=True)
class Move:
    """A move up (+) or down (−) [steps], and the weight of targets that is still missed after it."""

    by: int
    missed: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Outlook:
    """For one task: the most weight of targets met by courses through each height, and by courses from each start.

    ``through``: a line stands at that height above the start line. ``up_to``: met by the courses up to that height,
    taken as the eave. ``onward``: met above a start line at each height,
    the first of them ``reach`` steps below the planned one. Where no courses fit, far below nothing: a sliver under the
    eave alone weighs less than nothing.
    """

    task: Task
    through: Costs
    up_to: Costs
    onward: Costs
    reach: int

    def start_move(self, missed: int) -> Move | None:
        """Return the least move of the start line that leaves fewest lines missed, if fewer than now."""
        best = int(self.onward.max())
        if self.task.weight - best >= missed:
            return None
        moves = np.flatnonzero(self.onward == best) - self.reach
        return Move(by=_least(moves), missed=self.task.weight - best)

    def target_move(self, target: Target, missed: int) -> Move | None:
        """Return the least move of one missed target that lets it be met with no more missed of the others than now.

        It stays so near that no second line can meet the target where it was, which would count it twice.
        """
        task, is_eave = self.task, target.at == self.task.top
        met, near = self.up_to if is_eave else self.through, task.least - task.tolerance - 1
        low = max(target.at - near, 1)
        high = target.at + near if is_eave else min(target.at + near, task.top)
        heights = np.arange(low, high + 1)
        cured = (met[heights] >= task.weight - missed) & (np.abs(heights - target.at) > task.tolerance)
        if not cured.any():
            return None
        return Move(by=_least(heights[cured] - target.at), missed=missed - target.weight)


def _least(moves: Iterable[int]) -> int:
    return min((int(move) for move in moves), key=lambda move: (abs(move), move))


def outlook(task: Task) -> Outlook:
    """Look up from every height and down from it; every change of exposure up to the greatest is allowed."""
    below = climb(task, counting(task, task.greatest_change))
    above, onward, reach = _descend(task)
    through = -(below.astype(np.int32) + above[:, reach : reach + below.shape[1]]).min(axis=0)
    up_to = -below.min(axis=0).astype(np.int32)
    up_to[max(task.top - task.least_top + 1, 0) : task.top] += 1
    return Outlook(task=task, through=through, up_to=up_to, onward=-onward, reach=reach)


def _descend(task: Task) -> tuple[Costs, Costs, int]:
    """Return the least cost above every height, by the exposure under it, and with none under it (a start line)."""
    toll = counting(task, task.greatest_change)
    reach = task.exposures[-1]
    length = reach + task.top + task.exposures[-1] + 1
    line = -met_weights(task, length, base=reach)
    costs = np.full((task.span, length), FAR_SMALL, dtype=np.int16)
    costs[:, reach + task.top :] = 0
    landed = np.full_like(costs, FAR_SMALL)
    landed[:, reach + task.top :] = line[reach + task.top :]
    onward = np.full(length, FAR_SMALL, dtype=np.int16)
    for end in range(reach + task.top, 0, -task.least):
        first = max(end - task.least, 0)
        ahead = np.minimum(skewed(landed, task.least, first, end - first) + toll.exposure[:, None], FAR_SMALL)
        onward[first:end] = ahead.min(axis=0)
        costs[:, first:end] = toll.spread(ahead)
        landed[:, first:end] = costs[:, first:end] + line[first:end]
    return costs, onward, reach
