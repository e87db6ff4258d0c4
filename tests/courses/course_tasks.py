"""Small and larger course tasks at random, and two independent ways to solve them."""

from __future__ import annotations

import random
from collections.abc import Iterator
from itertools import pairwise

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp

from jambs.courses.task import Ladder, Target, Task

Cost = tuple[int, ...]


def random_task(seed: int, *, top: int, exposures: tuple[int, int], targets: int, gaps: bool = False) -> Task:
    """Return a task whose targets stand at random heights."""
    draw = random.Random(seed)
    allowed = tuple(e for e in range(exposures[0], exposures[1] + 1) if not gaps or draw.random() < 0.7)
    heights = draw.sample(range(1, top), targets)
    return Task(
        top=top,
        targets=(*(Target(at=at, weight=draw.randint(1, 3)) for at in sorted(heights)), Target(at=top, weight=1)),
        exposures=allowed or exposures,
        wanted=draw.randint(*exposures),
        unseen=draw.randint(0, 1),
        greatest_change=draw.randint(1, exposures[1] - exposures[0]),
        tolerance=draw.randint(0, 1),
        least_top=draw.randint(1, exposures[0]),
    )


def cost_of(task: Task, lines: tuple[int, ...]) -> Cost:
    """Return missed, greatest change (none under the unseen one), seen, off and unrest, straight from their words."""
    shown = [above - below for below, above in pairwise(lines)]
    changes = [abs(second - first) for first, second in pairwise(shown)]
    pairs = [(abs(line - t.at), t.weight) for t in task.targets for line in lines[1:]]
    met = [(off, weight) for off, weight in pairs if off <= task.tolerance]
    sliver = any(task.top - task.least_top < line < task.top for line in lines[1:])
    return (
        task.weight - sum(weight for _, weight in met) + sliver,
        max([task.unseen, *changes]),
        sum(max(change - task.unseen, 0) for change in changes),
        sum(abs(one - task.wanted) for one in shown) + sum(off * weight for off, weight in met),
        sum(changes),
    )


def cost_of_ladder(task: Task, ladder: Ladder) -> Cost:
    """Return what the program says its ladder costs, in the same order."""
    return (ladder.missed, max(task.unseen, ladder.change), ladder.seen, ladder.off, ladder.unrest)


def all_ladders(task: Task, lines: tuple[int, ...] = (0,)) -> Iterator[tuple[int, ...]]:
    """Yield every ladder within the limits, one course at a time: nothing is left out and nothing is clever."""
    at = lines[-1]
    if at >= task.top:
        yield lines
        return
    for exposure in task.exposures:
        change = abs(exposure - (at - lines[-2])) if len(lines) > 1 else 0
        if change <= task.greatest_change:
            yield from all_ladders(task, (*lines, at + exposure))


class CourseProgram:
    """A mixed-integer program for a fixed number of courses: HiGHS through scipy, course by course, no heights.

    Whole variables: exposures. Yes or no: line k meets target t. Continuous: changes, seen changes, offs.
    """

    def __init__(self, task: Task, courses: int) -> None:
        self.task, self.courses = task, courses
        self.names: dict[tuple[object, ...], int] = {}
        self.rows: list[dict[int, float]] = []
        self.lows: list[float] = []
        self.highs: list[float] = []
        self.bounds: dict[int, tuple[float, float]] = {}
        self.whole: set[int] = set()
        self._build()

    def _variable(self, *name: object, low: float = 0, high: float = np.inf, whole: bool = False) -> int:
        place = self.names.setdefault(name, len(self.names))
        self.bounds[place] = (low, high)
        if whole:
            self.whole.add(place)
        return place

    def _row(self, terms: dict[int, float], low: float = -np.inf, high: float = np.inf) -> None:
        self.rows.append(terms)
        self.lows.append(low)
        self.highs.append(high)

    def _distance(self, name: tuple[object, ...], terms: dict[int, float], at: float) -> int:
        """Bring in a variable that is no less than the distance of a sum from a number."""
        place = self._variable(*name)
        for sign in (1, -1):
            self._row({place: 1, **{v: -sign * c for v, c in terms.items()}}, low=-sign * at)
        return place

    def _build(self) -> None:
        task, n = self.task, self.courses
        e = [self._variable("e", k, low=task.exposures[0], high=task.exposures[-1], whole=True) for k in range(n)]
        self._row({v: 1.0 for v in e}, low=task.top)
        self.sliver = self._variable("sliver", high=1, whole=True)
        under = {**{v: 1.0 for v in e[:-1]}, self.sliver: 1.0 - task.least_top}
        self._row(under, high=task.top - task.least_top if n > 1 else np.inf)
        self.changes = [self._distance(("c", k), {e[k]: 1, e[k - 1]: -1}, 0) for k in range(1, n)]
        self.greatest = self._variable("G", low=task.unseen, high=task.greatest_change)
        for change in self.changes:
            self._row({self.greatest: 1, change: -1}, low=0)
        self.seen = [self._variable("s", k) for k in range(len(self.changes))]
        for s, change in zip(self.seen, self.changes, strict=True):
            self._row({s: 1, change: -1}, low=-task.unseen)
        self.offs = {self._distance(("w", k), {e[k]: 1}, task.wanted): 1.0 for k in range(n)}
        self.met: dict[int, float] = {}
        far = task.top + task.exposures[-1] + task.tolerance
        for t, target in enumerate(task.targets):
            for k in range(n):
                z = self._variable("z", t, k, high=1, whole=True)
                off = self._variable("o", t, k)
                self.met[z], self.offs[off] = target.weight, target.weight
                for sign in (1, -1):
                    line = {v: sign * 1.0 for v in e[: k + 1]}
                    self._row({**line, z: far}, high=sign * target.at + task.tolerance + far)
                    self._row({**line, z: far, off: -1}, high=sign * target.at + far)

    def least(self, aim: dict[int, float]) -> float | None:
        """Return the least of a sum of variables, None where there are no courses."""
        c = np.zeros(len(self.names))
        for place, factor in aim.items():
            c[place] = factor
        matrix = np.zeros((len(self.rows), len(c)))
        for row, terms in enumerate(self.rows):
            for place, factor in terms.items():
                matrix[row, place] = factor
        low, high = zip(*(self.bounds[v] for v in range(len(c))), strict=True)
        whole = np.array([v in self.whole for v in range(len(c))], dtype=int)
        rows = LinearConstraint(matrix, self.lows, self.highs)
        found = milp(c, constraints=rows, integrality=whole, bounds=Bounds(low, high))
        return float(found.fun) if found.success else None

    def hold(self, aim: dict[int, float], value: float) -> None:
        """Hold a sum at no more than a value from now on."""
        self._row(aim, high=value + 0.25)

    @property
    def aims(self) -> list[dict[int, float]]:
        """The costs, first to last."""
        sums = [{v: 1.0 for v in group} for group in (self.seen, self.changes)]
        return [
            {self.sliver: 1.0, **{v: -w for v, w in self.met.items()}},
            {self.greatest: 1.0},
            sums[0],
            self.offs,
            sums[1],
        ]


def cost_by_milp(task: Task) -> Cost | None:
    """Return the best cost by HiGHS, cost after cost, over every number of courses there can be."""
    most = (task.top - 1) // task.exposures[0] + 1
    programs = [CourseProgram(task, n) for n in range(max(task.top // task.exposures[-1], 1), most + 1)]
    best: list[int] = []
    for place in range(5):
        values = [program.least(program.aims[place]) for program in programs]
        found = [round(value) for value in values if value is not None]
        if not found:
            return None
        best.append(min(found))
        programs = [
            p for p, value in zip(programs, values, strict=True) if value is not None and round(value) == best[-1]
        ]
        for program in programs:
            program.hold(program.aims[place], best[-1])
    return (task.weight + best[0], *best[1:])
