"""Patterns near the bound: all of them that a plan within the slack can use, against trying every filling."""

from __future__ import annotations

from itertools import product

import numpy as np
import pytest
from stock_cases import few_jambs, house

from jambs.stock import plan_stock
from jambs.stock.solver import near_patterns
from jambs.stock.solver.certificate import Certificate, certify
from jambs.stock.solver.core import Core, Ints, State, whole_state
from jambs.stock.solver.integer_sizes import fold
from jambs.stock.solver.master import solve_master
from jambs.stock.solver.near_patterns import Fillings, NearColumn, TooManyError, near_columns, near_pool
from jambs.stock.solver.pool import CrosscutColumn, Pool, RipColumn
from jambs.stock.solver.solvers import backend


def numbers(*values: int) -> Ints:
    return np.array(values, dtype=np.int64)


def every_full_filling(sizes: Ints, values: Ints, copies: Ints, room: int, least: int) -> set[tuple[object, int]]:
    found: set[tuple[object, int]] = set()
    for counts in product(*(range(count + 1) for count in copies.tolist())):
        left = room - int(np.dot(counts, sizes))
        value = int(np.dot(counts, values))
        has_room = any(size <= left and n < most for size, n, most in zip(sizes, counts, copies, strict=True))
        if any(counts) and left >= 0 and not has_room and value >= least:
            found.add((tuple((thing, n) for thing, n in enumerate(counts) if n), value))
    return found


@pytest.mark.parametrize("least", [0, 11, 15, 16, 17])
def test_every_full_filling_worth_enough_is_found_once(least: int) -> None:
    """Room 10; one thing is worth nothing, one is too long, of one there is none left."""
    sizes, values, copies = numbers(3, 4, 2, 11, 5, 1), numbers(5, 6, 3, 99, 7, 0), numbers(2, 1, 3, 1, 0, 2)
    found = [(pattern, value) for value, pattern in Fillings(sizes, values, copies, 1000).near(10, least)]
    assert len(found) == len(set(found))
    assert set(found) == every_full_filling(sizes, values, copies, 10, least)
    assert bool(found) == (least < 17)  # by hand: 3 + 3 + 4 is worth 16, and is full


def test_more_steps_than_wanted_end_the_enumeration() -> None:
    sizes = values = copies = np.arange(1, 40)
    with pytest.raises(TooManyError):
        list(Fillings(sizes, values, copies, 10).near(200, 0))


def solved(core: Core) -> tuple[State, Certificate]:
    state = whole_state(core)
    answer = solve_master(core, state, Pool(core), backend())
    return state, certify(core, state, answer.duals)


def test_the_best_plan_of_a_house_is_made_of_near_patterns() -> None:
    """A plan costs the bound and the reduced costs of its patterns, so none of them is dearer than the slack."""
    problem = few_jambs()
    core = fold(problem)
    state, certificate = solved(core)
    best = plan_stock(problem, seconds=None, stages=5).cost_cents // core.price_unit
    slack = certificate.slack(core, best)
    columns = [one.column for one in near_columns(core, state, certificate, slack, 10_000)]
    assert len(columns) == len(set(columns))
    assert {type(one) for one in columns} == {CrosscutColumn, RipColumn}
    fewer = near_columns(core, state, certificate, slack // 2, 10_000)
    assert {one.column for one in fewer} < set(columns)
    assert all(one.reduced <= slack // 2 for one in fewer)


def test_the_pool_keeps_those_of_least_reduced_cost_and_says_within_which_slack() -> None:
    core = fold(house("house60_25_2"))
    state, certificate = solved(core)
    wide = 20 * certificate.unit_steps(core)
    everything = near_columns(core, state, certificate, wide, 10_000)
    pool, slack = near_pool(core, state, certificate, wide, 10_000)
    assert slack == wide and set(pool.columns) == {one.column for one in everything}
    pool, slack = near_pool(core, state, certificate, wide, 50)
    assert 0 <= slack < wide
    assert set(pool.columns) == {one.column for one in everything if one.reduced <= slack}
    assert len(pool) > 50


def test_where_there_are_too_many_less_slack_is_tried(monkeypatch: pytest.MonkeyPatch) -> None:
    tried = []

    def too_many(core: Core, state: State, certificate: Certificate, slack: int, most: int) -> list[NearColumn]:
        tried.append(slack)
        raise TooManyError

    monkeypatch.setattr(near_patterns, "near_columns", too_many)
    core = fold(house("house60_25_2"))
    state, certificate = solved(core)
    pool, slack = near_pool(core, state, certificate, 100, 50)
    assert tried == [100, 12, 1, 0] and len(pool) == 0 and slack < 0
