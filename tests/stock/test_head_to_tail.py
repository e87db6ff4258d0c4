"""Flat mitered pieces in pairs: laps worked out by hand, and laid as polygons that keep their kerf."""

from __future__ import annotations

import json
import math
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from lot_cases import inside_job, lots_of
from shapely import Polygon
from shapely.affinity import rotate, translate

from jambs.app.basis import SAW as SAW_GROUP
from jambs.app.basis import shop_basis
from jambs.job import Job, read_job
from jambs.job.models.shop import Shop
from jambs.length import Units
from jambs.parts.board.part import Part
from jambs.sheets.cutting_lot import lot_record
from jambs.sheets.cutting_money import boards_of
from jambs.stock import Piece, SawSettings, Stock, StockPlan, StockProblem, check_certificate, plan_stock
from jambs.stock.checker import blanks
from jambs.stock.house.head_to_tail import chosen, head_to_tail, laid_best
from jambs.stock.house.house_plan import Effort, PlannedLot, plan_house
from jambs.stock.house.lots import Lot
from jambs.stock.layout import lay_out
from jambs.stock.plan import Bound, PlacedPiece
from jambs.stock.planfile import plan_from_dict, plan_to_dict, problem_to_dict
from jambs.stock.problem import LotKind, Pair
from jambs.stock.remainder import remaining_problem
from jambs.stock.solver.integer_sizes import item_sizes
from jambs.stock.verify import verify_plan

EXAMPLES = Path(__file__).parents[2] / "examples"
KERF = 8
SAW = SawSettings(crosscut_kerf=KERF, rip_kerf=KERF, end_trim=32)
WIDTH = 224
"""A casing 3 1/2 in wide, in 1/64 in."""
ALLOWANCE = 4
"""8 (√2 - 1) = 3.3, up to 1/16 in."""


def leg(mark: str, length: int, slants: tuple[int, int] = (0, -WIDTH), **changes: Any) -> Piece:
    """A leg mitered at its finish, its far edge the long one."""
    return Piece(
        mark=mark, length=length, width=WIDTH, is_mitered=True, miter_allowance=ALLOWANCE, slants=slants, **changes
    )


def problem(*pieces: Piece, length: int = 9216, kind: LotKind = LotKind.LENGTHS) -> StockProblem:
    stock = (Stock(name="1x4", length=length, width=WIDTH, price_cents=1000),)
    return StockProblem(kind=kind, pieces=pieces, stock=stock, saw=SAW, group="poplar")


SHOP = inside_job(shop__grid="1/32").shop


@pytest.fixture(scope="module")
def shop() -> Shop:
    return SHOP


def pairs_of(asked: StockProblem, shop: Shop) -> tuple[Pair, ...]:
    return head_to_tail(asked, shop, Units.INCH)


def test_the_lap_of_two_legs(shop: Shop) -> None:
    """Across 3 1/2 in a miter of 45° runs 224 steps; the kerf takes 8 √2 = 11.3 of them along the grain, 12.

    212 are left, 3 5/16 in, on the grid of 1/32 in. Both lie with their mitered ends together, so one is turned.
    """
    assert pairs_of(problem(leg("A", 4000), leg("B", 3900)), shop) == (
        Pair(first="A", second="B", lap=212, is_second_turned=True),
    )


def test_a_lap_is_down_on_the_grid_of_the_shop(shop: Shop) -> None:
    """A run of 223 leaves 223 - 12 = 211, which a rule of 1/32 in does not have: 210."""
    (pair,) = pairs_of(problem(leg("A", 4000, (0, -223)), leg("B", 3900, (0, -223))), shop)
    assert pair.lap == 210


@pytest.mark.parametrize(
    ("first", "second", "turned"),
    [
        ((0, -224), (0, -224), (False, True)),
        ((-224, 0), (-224, 0), (True, False)),
        ((0, 224), (-224, 0), (False, False)),
        ((0, -224), (-224, 0), None),  # a left and a right leg: mirrored, no turn of a face-up board joins them
        ((0, -224), (0, -112), None),
        ((0, -224), (0, 0), None),
    ],
)
def test_which_ends_are_one_cut(
    shop: Shop, first: tuple[int, int], second: tuple[int, int], turned: tuple[bool, bool] | None
) -> None:
    found = pairs_of(problem(leg("A", 4000, first), leg("B", 3900, second)), shop)
    assert [(one.is_first_turned, one.is_second_turned) for one in found] == ([turned] if turned else [])


def test_what_lies_in_no_pair(shop: Shop) -> None:
    """Sheets; pieces of other widths; a gain under a kerf; two that no board holds; a third one alone."""
    two = (leg("A", 4000), leg("B", 3900))
    assert pairs_of(problem(*two, kind=LotKind.SHEETS), shop) == ()
    assert pairs_of(problem(two[0], replace(two[1], width=220)), shop) == ()
    # 4000 - 212 + 3900 + 4 = 7692 between two trims of 32
    assert len(pairs_of(problem(*two, length=7756), shop)) == 1
    assert pairs_of(problem(*two, length=7755), shop) == ()
    three = pairs_of(problem(*two, leg("C", 2000)), shop)
    assert [(one.first, one.second) for one in three] == [("A", "B"), ("A", "C"), ("B", "C")]


def test_a_gain_of_a_kerf_at_least(shop: Shop) -> None:
    """Run r, kerf 8: the lap and the square kerf are saved, less nothing: r - 8.x down to 1/32 in, and 8, and no more.

    A run of 9 leaves 9 - 9 = 0: the square kerf is saved all the same, and the allowance of one of the two.
    """
    small = [leg(mark, 4000, (0, -9)) for mark in "AB"]
    (pair,) = pairs_of(problem(*small), shop)
    assert pair.lap == 0
    less = [leg(mark, 4000, (0, -5)) for mark in "AB"]  # 5 - 9 is no lap at all: 4 + 4 + 8 saved less 4
    assert all(one.lap <= 5 for one in pairs_of(problem(*less), shop))


def test_two_boards_instead_of_three(shop: Shop) -> None:
    """Four legs of 4000 on boards of 8064: two of them take 4004 + 8 + 4004 = 8016 apart, 16 over 8000 between trims.

    In pairs 4000 - 212 + 4004 = 7792: two boards do.
    """
    asked = problem(*(leg(mark, 4000) for mark in "ABCD"), length=8064)
    plan = laid_best(asked, pairs_of(asked, shop), lambda one: plan_stock(one, seconds=None, stages=1))
    assert [one.cost_cents for one in (plan_stock(asked, seconds=None, stages=1), plan)] == [4000, 2000]
    assert plan.is_optimal
    assert verify_plan(plan) == ()
    (strip,) = plan.boards[0].strips
    assert strip.pieces == (
        PlacedPiece(mark="A", start=32, end=4036),
        PlacedPiece(mark="B", start=32 + 4000 - 212, end=32 + 4000 - 212 + 4004),
    )
    assert "crosscut only, like slants head to tail in these pairs" in plan.statement


def test_pairs_that_save_nothing_are_left_apart(shop: Shop) -> None:
    asked = problem(leg("A", 4000), leg("B", 3900), length=9216)
    plan = laid_best(asked, pairs_of(asked, shop), lambda one: plan_stock(one, seconds=None, stages=1))
    assert plan.problem.pairs == ()
    assert "head to tail" not in plan.statement


def test_file_and_remainder_keep_the_pairs(shop: Shop) -> None:
    asked = problem(*(leg(mark, 4000) for mark in "ABCD"), length=8064)
    plan = plan_stock(replace(asked, pairs=chosen(pairs_of(asked, shop))), seconds=None, stages=1)
    assert plan_from_dict(plan_to_dict(plan)) == plan
    left = remaining_problem(plan, done=[1])
    assert [(one.first, one.second) for one in left.pairs] == [("C", "D")]
    assert remaining_problem(plan, spoiled=[1], saved={"A": 1}).pairs == left.pairs  # B is alone now
    apart = plan_to_dict(plan_stock(problem(Piece(mark="A", length=400, width=WIDTH)), seconds=None, stages=1))
    assert "pairs" not in apart["problem"] and "slants" not in apart["problem"]["pieces"][0]


def test_the_proof_refuses_a_lap_that_is_not_there(shop: Shop) -> None:
    """The page that needs no solver works the slant out by itself: 213 leave 11 along the grain, 7.8 across the cut."""
    asked = problem(*(leg(mark, 4000) for mark in "ABCD"), length=8064)
    plan = plan_stock(replace(asked, pairs=chosen(pairs_of(asked, shop))), seconds=None, stages=1)
    assert check_certificate(plan_to_dict(plan)) == 2000
    for change in ({"lap": 213}, {"is_second_turned": False}, {"second": "C"}):
        told = json.loads(json.dumps(plan_to_dict(plan)))
        told["problem"]["pairs"][0] |= change
        with pytest.raises(ValueError, match=r"no one cut parts A from B|in two pairs"):
            check_certificate(told)


def test_the_proof_refuses_slants_that_lean_apart() -> None:
    """Two of 45° at both ends, far edges long: unturned they meet point to point, and no one cut parts them."""
    both = problem(*(leg(mark, 4000, (-224, -224)) for mark in "AB"))
    told = problem_to_dict(replace(both, pairs=(Pair(first="A", second="B", lap=212),)))
    with pytest.raises(ValueError, match="no one cut parts A from B"):
        list(blanks(told))
    told["pairs"][0]["is_second_turned"] = True
    assert list(blanks(told)) == [(224, 4000 - 212 + 4004, 1)]


def test_the_steeper_other_end_lies_last(shop: Shop) -> None:
    """A takes 8 beyond a square kerf at its other end and B 4: behind A the 8 count, 3900 - 212 + 4008 in all."""
    steep = replace(leg("A", 4000), miter_allowance=8)
    (pair,) = pairs_of(problem(steep, leg("B", 3900)), shop)
    assert (pair.first, pair.second) == ("B", "A")


def shape(piece: Piece, placed: PlacedPiece, *, is_turned: bool) -> Polygon:
    """The face of a piece where it lies, near edge at 0, from its own slants; turned by half a circle where it is."""
    (start, finish), long = piece.slants, piece.length
    corners = [
        (max(0, -start), 0),
        (long - max(0, -finish), 0),
        (long - max(0, finish), piece.width),
        (max(0, start), piece.width),
    ]
    turned = [(long - x, piece.width - y) for x, y in corners] if is_turned else corners
    return Polygon([(placed.start + x, y) for x, y in turned])


def assert_kept(plan: StockPlan, kerf: int) -> None:
    pieces = {one.mark: one for one in plan.problem.pieces}
    turned = {one.first: one.is_first_turned for one in plan.problem.pairs}
    turned |= {one.second: one.is_second_turned for one in plan.problem.pairs}
    for board in plan.boards:
        for strip in board.strips:
            faces = [shape(pieces[one.mark], one, is_turned=turned.get(one.mark, False)) for one in strip.pieces]
            for number, face in enumerate(faces):
                assert face.bounds[0] >= SAW.end_trim and face.bounds[2] <= board.stock.length - SAW.end_trim
                assert all(face.distance(other) >= kerf - 1e-9 for other in faces[number + 1 :])


runs = st.sampled_from([0, 37, 128, 224, -37, -128, -224])
ends = st.tuples(runs, runs)


@settings(max_examples=25)
@given(st.lists(st.tuples(st.integers(600, 4000), ends), min_size=2, max_size=8), st.sampled_from([2, 8, 11]))
def test_no_two_pieces_overlap_and_every_kerf_is_kept(drawn: Sequence[tuple[int, tuple[int, int]]], kerf: int) -> None:
    """All pairs that are found, in one long strip with what is left alone: each at least a kerf from every other."""
    pieces = [
        replace(leg(f"P{n}", long, slants), miter_allowance=_beyond(slants, kerf))
        for n, (long, slants) in enumerate(drawn)
    ]
    asked = replace(problem(*pieces, length=40_000), saw=replace(SAW, crosscut_kerf=kerf))
    asked = replace(asked, pairs=chosen(pairs_of(asked, SHOP)))
    counts = tuple(enumerate(item_sizes(asked).values()))
    bound = Bound(certified_cents=0, solver_cents=0, prices={})
    plan = StockPlan(problem=asked, boards=lay_out(asked, ((0, ((0, counts),)),)), bound=bound)
    assert verify_plan(plan) == ()
    assert_kept(plan, kerf)


def _beyond(slants: tuple[int, int], kerf: int) -> int:
    return math.ceil(kerf * (max(math.hypot(WIDTH, run) for run in slants) / WIDTH - 1))


GABLE = "gable-house"
"""Raked windows, an octagon, arches, and flared openings whose casing waits for the depth of the wall."""


@pytest.fixture(scope="module")
def gable() -> tuple[Job, Lot]:
    """The gable house where pieces may lie head to tail, and its casing, crosscut from 1x4."""
    read = read_job(EXAMPLES / GABLE / "job.yaml")
    job = replace(read, shop=read.shop.model_copy(update={"head_to_tail": True}))
    return job, next(lot for lot in lots_of(job) if lot.problem.kind is LotKind.LENGTHS)


def test_slants_are_those_of_the_parts(gable: tuple[Job, Lot]) -> None:
    """By hand: 3 1/2 in at 45° run 224 steps, at 28.155° 3.5 tan = 1.8731 in, 119 steps, at 22.5° 1.4497 in, 92 steps.

    The end of G4-7 at 61.8° is steeper than a saw turns and counts as square; G1 is flared and only planned.
    """
    slants = {one.mark: one.slants for one in gable[1].problem.pieces}
    assert slants["G4-6"] == (-224, -119)
    assert slants["G4-7"] == (0, -224)
    assert slants["G6-10"] == (-92, -92)
    assert slants["G1-6"] == (0, 0)
    others = [one for lot in lots_of(gable[0]) if lot.problem.kind is LotKind.BOARDS for one in lot.pieces]
    assert any(one.piece.is_mitered and not one.is_planned for one in others)  # segments of arches, rabbeted jambs
    assert not any(any(one.piece.slants) for one in others)
    assert [one.slants for lot in lots_of(inside_job()) for one in lot.problem.pieces if any(one.slants)] == []
    assert [lot.pairs for lot in lots_of(inside_job()) if lot.pairs] == []


def test_the_plan_of_a_house_keeps_its_parts_apart(gable: tuple[Job, Lot]) -> None:
    """The outlines of the parts themselves, as the cut sheet has them, each where the plan lays it, a kerf apart."""
    job, lot = gable[0], _of_openings(gable[1], ("G3", "G4", "G6", "G7"))
    (planned,) = plan_house([lot], Effort(stages=0))
    apart = plan_stock(lot.problem, seconds=None, stages=0)
    assert planned.plan.problem.pairs and planned.plan.cost_cents < apart.cost_cents
    assert verify_plan(planned.plan) == ()
    assert check_certificate(plan_to_dict(planned.plan)) == planned.plan.bound.certified_cents
    parts = {one.piece.mark: one.part for one in lot.pieces}
    placed = {one.mark: one.start for board in planned.plan.boards for strip in board.strips for one in strip.pieces}
    for pair in planned.plan.problem.pairs:
        first, second = (
            _outline(parts[mark], placed[mark] / 64, is_turned=is_turned)
            for mark, is_turned in ((pair.first, pair.is_first_turned), (pair.second, pair.is_second_turned))
        )
        assert job.shop.kerf - 1e-9 <= first.distance(second) < job.shop.kerf + 1 / 8, pair
    assert_said(planned, job)


def _of_openings(lot: Lot, openings: Sequence[str]) -> Lot:
    pieces = tuple(one for one in lot.pieces if one.piece.mark.startswith(tuple(openings)))
    marks = {one.piece.mark for one in pieces}
    pairs = tuple(pair for pair in lot.pairs if {pair.first, pair.second} <= marks)
    return replace(
        lot, pieces=pieces, pairs=pairs, problem=replace(lot.problem, pieces=tuple(one.piece for one in pieces))
    )


def _outline(part: Part, start: float, *, is_turned: bool) -> Polygon:
    face = Polygon(part.outline)
    turned = rotate(face, 180, origin=(part.length / 2, part.width / 2)) if is_turned else face
    return translate(turned, start)


def assert_said(planned: PlannedLot, job: Job) -> None:
    """The record says and draws what the plan has, and names no other piece."""
    record = lot_record(planned, job, boards_of([planned], (), 1))
    laid = {
        piece["mark"]: piece
        for board in record["boards"]
        for strip in board["strips"]
        for piece in strip["pieces"]
        if "head_to_tail_with" in piece
    }
    pairs = planned.plan.problem.pairs
    assert sorted(laid) == sorted(mark for pair in pairs for mark in (pair.first, pair.second))
    for pair in pairs:
        first, second = laid[pair.first], laid[pair.second]
        assert (first["is_turned"], second["is_turned"]) == (pair.is_first_turned, pair.is_second_turned)
        (low, high), (start_low, start_high) = first["slants"][1], second["slants"][0]
        assert (low, high) == pytest.approx((start_high, start_low))
        assert abs(low - high) > 1  # no mitered end of this casing runs less
    (note,) = (one for one in record["notes"] if one.startswith("Head to tail"))
    assert all(pair.first in note and pair.second in note for pair in pairs)
    turned = [pair.first for pair in pairs if pair.is_first_turned]
    turned += [pair.second for pair in pairs if pair.is_second_turned]
    assert turned and all(f"{mark} turned" in note for mark in turned) and note.count(" turned") == len(turned)
    assert not any("Flat stock nests" in one for one in record["notes"])
    assert record["scope"] == "crosscut only, like slants head to tail in these pairs"


def test_a_plan_goes_stale_where_the_setting_changes() -> None:
    job = inside_job()
    nested = inside_job(shop__head_to_tail="yes")
    assert differing_keys(shop_basis(job), shop_basis(nested)) == [SAW_GROUP]
    assert shop_basis(inside_job(shop__head_to_tail="no")) == shop_basis(job)


def differing_keys(one: dict[str, str], other: dict[str, str]) -> list[str]:
    return [key for key in one if one[key] != other[key]]
