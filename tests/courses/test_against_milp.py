"""Courses against an independent mixed-integer program (HiGHS through scipy), on larger elevations at random."""

from __future__ import annotations

import pytest
from course_tasks import cost_by_milp, cost_of, cost_of_ladder, random_task

from jambs.courses.course_search import best_ladder


@pytest.mark.parametrize("seed", range(12))
def test_best_by_highs(seed: int) -> None:
    task = random_task(seed, top=96 + 5 * seed, exposures=(12, 19), targets=2 + seed % 3)
    best = cost_by_milp(task)
    ladder = best_ladder(task)
    assert best == cost_of_ladder(task, ladder)
    assert best == cost_of(task, ladder.lines)
