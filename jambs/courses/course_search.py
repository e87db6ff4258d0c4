"""The best courses by dynamic programming over every grid step and every exposure: exact, no search is cut short.

State: a course line stands at a height, and the course under it has an exposure. Between neighboring courses lies a
change of exposure. Heights nearer than the least exposure do not touch each other, so a whole band of them is worked
at once; within a band the change of exposure is a min-plus product (``spread``).
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np
from numpy.typing import DTypeLike

from jambs.courses.spread import Costs, spread
from jambs.courses.task import Ladder, Task

FAR = 1 << 60
"""A cost no courses reach."""
STATES = 20_000_000
"""Heights by exposures that are worked at most: some 160 MB."""
FAR_SMALL = 1 << 13
"""The same where only missed targets are counted."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Toll:
    """What courses cost: met targets by height (negative), exposures, the change between neighbors.

    A change up to ``unseen`` costs one a step, past it ``steep`` a step; nothing where that is nothing; none is past
    ``greatest``.
    """

    line: Costs
    exposure: Costs
    steep: int
    unseen: int
    greatest: int
    far: int

    @property
    def gentle(self) -> int:
        """What a step of a change that is not seen costs."""
        return int(bool(self.steep))

    def spread(self, costs: Costs) -> Costs:
        """Return the least cost of the neighbor and the change, for every exposure."""
        first = min(self.unseen, self.greatest)
        costs = spread(costs, window=first, slope=self.gentle)
        return spread(costs, window=self.greatest - first, slope=self.steep)

    def change(self, steps: Costs) -> Costs:
        """Return the cost of changes that are not past the greatest."""
        past = np.maximum(steps - self.unseen, 0)
        cost: Costs = np.where(steps > self.greatest, self.far, self.gentle * (steps - past) + self.steep * past)
        return cost


def met_weights(task: Task, length: int, *, base: int = 0) -> Costs:
    """Return the weight of targets that a line at each height meets; the height 0 stands at ``base``.

    A line so near under the eave that only a sliver shows above it counts against.
    """
    met = np.zeros(length, dtype=np.int16)
    met[max(base + task.top - task.least_top + 1, 0) : base + task.top] = -1
    for target in task.targets:
        low, high = (base + target.at + sign * task.tolerance for sign in (-1, 1))
        met[max(low, 0) : high + 1] += target.weight
    return met


def _near(task: Task, length: int) -> Costs:
    """Distance of each height from the target it meets within the tolerance [steps], by weight."""
    near = np.zeros(length, dtype=np.int64)
    for target in task.targets:
        for at in range(max(target.at - task.tolerance, 0), min(target.at + task.tolerance, length - 1) + 1):
            near[at] += abs(at - target.at) * target.weight
    return near


def _barred(task: Task, far: int, kind: DTypeLike) -> Costs:
    cost = np.full(task.span, far, dtype=kind)
    cost[np.array(task.exposures) - task.least] = 0
    return cost


def counting(task: Task, greatest: int) -> Toll:
    """Return the toll that counts met targets only."""
    return Toll(
        line=-met_weights(task, task.top + task.exposures[-1] + 1),
        exposure=_barred(task, FAR_SMALL, np.int16),
        steep=0, unseen=greatest, greatest=greatest, far=FAR_SMALL,
    )  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class CourseScale:
    """Weights that put one cost before the next: each is past all that the later ones can add up to."""

    off: int
    seen: int
    missed: int

    @staticmethod
    def of(task: Task) -> CourseScale:
        """Return the weights for the longest ladder there can be."""
        courses = task.top // task.least + 2
        unrest = courses * min(task.greatest_change, task.span) + 1
        farthest = max(abs(task.wanted - one) for one in (task.exposures[0], task.exposures[-1]))
        off = courses * farthest + task.weight * task.tolerance + 1
        return CourseScale(off=unrest, seen=unrest * off, missed=unrest * off * unrest)


def weighing(task: Task, greatest: int, scale: CourseScale) -> Toll:
    """Return the toll that puts missed targets first, then seen changes, then the wanted exposure, then unrest."""
    length = task.top + task.exposures[-1] + 1
    shown = np.arange(task.least, task.least + task.span)
    line = -met_weights(task, length).astype(np.int64) * scale.missed + _near(task, length) * scale.off
    return Toll(
        line=line,
        exposure=_barred(task, FAR, np.int64) + np.abs(shown - task.wanted) * scale.off,
        steep=scale.seen,  # unrest decides between courses that have as many steps past what is seen
        unseen=task.unseen,
        greatest=greatest,
        far=FAR,
    )


def skewed(costs: Costs, least: int, first: int, heights: int) -> Costs:
    """Return a view whose row e, column p is the state that a course of that exposure from height p leads to."""
    span, length = costs.shape
    step = costs.strides[1]
    return np.lib.stride_tricks.as_strided(
        costs[:, first + least :], shape=(span, heights), strides=((length + 1) * step, step)
    )


def climb(task: Task, toll: Toll) -> Costs:
    """Return the least cost to stand with every exposure (row) at every height (column), all targets so far counted."""
    length = task.top + task.exposures[-1] + 1
    costs = np.full((task.span, length), toll.far, dtype=toll.exposure.dtype)
    exposure = toll.exposure[:, None]
    skewed(costs, task.least, 0, 1)[:] = exposure
    for first in range(task.least, length, task.least):
        band = costs[:, first : first + task.least]
        band += toll.line[first : first + task.least]
        heights = min(task.least, task.top - first)
        if heights > 0:
            onward = toll.spread(np.ascontiguousarray(band[:, :heights])) + exposure
            np.minimum(onward, toll.far, out=skewed(costs, task.least, first, heights))
    return costs


def _most_met(task: Task, greatest: int) -> int:
    """Return the greatest weight of targets that can be met."""
    return -int(climb(task, counting(task, greatest))[:, task.top :].min())


def _trace(task: Task, toll: Toll, costs: Costs) -> tuple[int, ...]:
    """Walk the best way back from the eave to the start line."""
    exposures = np.arange(task.span)
    end = costs[:, task.top :]
    row, past = divmod(int(end.argmin()), end.shape[1])
    lines = [task.top + past]
    while True:
        lines.append(lines[-1] - task.least - row)
        if lines[-1] == 0:
            return tuple(reversed(lines))
        row = int((costs[:, lines[-1]] + toll.change(np.abs(exposures - row))).argmin())


def _least_change(task: Task, met: int) -> tuple[int, int | None]:
    """Return the least greatest change that still meets as much, and what one step less would meet."""
    low, high = min(task.unseen, task.greatest_change), task.greatest_change
    less: dict[int, int] = {}
    while low < high:
        middle = (low + high) // 2
        less[middle] = _most_met(task, middle)
        if less[middle] == met:
            high = middle
        else:
            low = middle + 1
    return low, less.get(low - 1)


def is_too_large(task: Task) -> bool:
    """Say whether a task is past what is worked: too many states, or costs that no longer fit one number."""
    states = (task.top + task.exposures[-1]) * task.span
    return states > STATES or CourseScale.of(task).missed * (task.weight + 1) >= FAR


def best_ladder(task: Task) -> Ladder:
    """Return the best courses for a task; no others are better, cost by cost (see ``Ladder``)."""
    limited = _limited(task)
    met = _most_met(limited, limited.greatest_change)
    change, less = _least_change(limited, met)
    toll = weighing(limited, change, CourseScale.of(limited))
    lines = _trace(limited, toll, climb(limited, toll))
    return _ladder(limited, lines, met, less)


def _limited(task: Task) -> Task:
    """Let no change be past what the exposures allow."""
    most = task.span - 1
    return replace(task, unseen=min(task.unseen, most), greatest_change=min(task.greatest_change, most))


def _ladder(task: Task, lines: tuple[int, ...], met: int, less: int | None) -> Ladder:
    exposures = [above - below for below, above in pairwise(lines)]
    changes = [abs(second - first) for first, second in pairwise(exposures)]
    near = _near(task, task.top + task.exposures[-1] + 1)
    return Ladder(
        lines=lines,
        missed=task.weight - met,
        change=max(changes, default=0),
        seen=sum(max(change - task.unseen, 0) for change in changes),
        off=sum(abs(shown - task.wanted) for shown in exposures) + int(sum(near[at] for at in lines[1:])),
        unrest=sum(changes),
        missed_with_less=None if less is None else task.weight - less,
    )
