"""Courses against every ladder there is, on small elevations."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from course_tasks import all_ladders, cost_of, cost_of_ladder, random_task

from jambs.courses.course_search import best_ladder
from jambs.courses.cures import outlook
from jambs.courses.spread import spread
from jambs.courses.task import Target, Task


def small(seed: int) -> Task:
    return random_task(seed, top=19 + seed % 11, exposures=(4, 8), targets=seed % 4, gaps=seed % 3 == 0)


@pytest.mark.parametrize("seed", range(150))
def test_best_of_all_ladders(seed: int) -> None:
    task = small(seed)
    costs = [cost_of(task, lines) for lines in all_ladders(task)]
    ladder = best_ladder(task)
    assert min(costs) == cost_of_ladder(task, ladder)
    assert min(costs) == cost_of(task, ladder.lines)
    assert ladder.lines in set(all_ladders(task))
    if ladder.missed_with_less is not None:
        less = replace(task, greatest_change=ladder.change - 1)
        assert ladder.missed_with_less == min(cost_of(less, lines)[0] for lines in all_ladders(less))


@pytest.mark.parametrize("window", range(12))
@pytest.mark.parametrize("slope", [0, 1, 3])
def test_the_least_of_the_neighbors_within_a_window(window: int, slope: int) -> None:
    """Row by row over all rows, with windows that reach past the last one too."""
    draw = np.random.default_rng(12 * slope + window)
    for rows in range(1, 9):
        costs = draw.integers(-20, 20, size=(rows, 4))
        plain = [
            [min(row[k] + slope * abs(n - k) for k in range(rows) if abs(n - k) <= window) for n in range(rows)]
            for row in costs.T.tolist()
        ]
        assert spread(costs, window=window, slope=slope).T.tolist() == plain


def fewest_missed(task: Task) -> int:
    return min(cost_of(task, lines)[0] for lines in all_ladders(task))


@pytest.mark.parametrize("tolerance", [0, 1])
@pytest.mark.parametrize("seed", range(60))
def test_cures_are_the_least_moves(seed: int, tolerance: int) -> None:
    """The least move of the start line, and of each missed target, by trying every one of them."""
    task = replace(random_task(seed, top=22, exposures=(5, 7), targets=3), tolerance=tolerance)
    now = fewest_missed(task)
    assert now > 0 or tolerance, "a task with nothing to cure tests nothing"
    look = outlook(task)
    shifted = {by: fewest_missed(moved_start(task, by)) for by in range(-7, 8)}
    fewest = min(shifted.values())
    move = look.start_move(now)
    if fewest < now:
        least = min((abs(by), by) for by, missed in shifted.items() if missed == fewest)
        assert move is not None and (least[1], fewest) == (move.by, move.missed)
    else:
        assert move is None
    lines = best_ladder(task).lines
    for target in task.targets:
        if all(abs(target.at - line) > tolerance for line in lines):
            assert_least_target_move(task, target, now)


def moved_start(task: Task, by: int) -> Task:
    targets = tuple(replace(target, at=target.at - by) for target in task.targets)
    return replace(task, top=task.top - by, targets=targets)


def assert_least_target_move(task: Task, target: Target, now: int) -> None:
    others = tuple(one for one in task.targets if one is not target)
    cured = []
    is_eave = target.at == task.top
    near = 4 - task.tolerance
    for at in range(max(target.at - near, 1), min(target.at + near, 99 if is_eave else task.top) + 1):
        inside = tuple(one for one in others if one.at <= at or not is_eave)
        lost = sum(one.weight for one in others) - sum(one.weight for one in inside)
        top = at if is_eave else task.top
        alone = replace(task, top=top, targets=(*inside, replace(target, at=at)))
        met = [cost_of(alone, lines)[0] for lines in all_ladders(alone) if at in lines]
        if abs(at - target.at) > task.tolerance and met and min(met) + lost <= now - target.weight:
            cured.append((abs(at - target.at), at - target.at))
    move = outlook(task).target_move(target, now)
    assert (min(cured)[1] if cured else None) == (move.by if move else None)
    assert move is None or move.missed == now - target.weight
