"""The page that proves a bound: rooms filled, prices weighed, all by hand on boards of a few inches."""

from __future__ import annotations

import json
import runpy
from pathlib import Path
from typing import Any

import pytest

from jambs.stock import checker
from jambs.stock.checker import STEPS, blanks, check_certificate, fill
from jambs.stock.problem import LotKind


def test_rooms_are_filled_with_the_most_worth() -> None:
    """Things of 3 worth 4 (two of them) and of 5 worth 7 (one): by hand for every room up to 11.

    Room 3 holds a 4, room 5 the 7 (more than a 4), room 6 two 4s, room 8 one of each, room 11 all three: 15.
    """
    assert fill([(3, 4, 2), (5, 7, 1)], 11) == [0, 0, 0, 4, 4, 7, 8, 8, 11, 11, 11, 15]


def test_no_more_than_there_are_and_nothing_that_is_worth_nothing() -> None:
    """Seven of size 1 worth 1: seven in a room of 7 and no eighth in a room of 9."""
    assert fill([(1, 1, 7)], 9) == [0, 1, 2, 3, 4, 5, 6, 7, 7, 7]
    assert fill([(1, 1, 5)], 9) == [0, 1, 2, 3, 4, 5, 5, 5, 5, 5]
    assert fill([(1, 0, 5), (2, -3, 5)], 3) == [0, 0, 0, 0]


def lengths(**changes: Any) -> dict[str, Any]:
    """Pieces of 300 (4) and 200 (2), kerf 10, on boards of 960 with 5 off each end for 8 cents.

    Sizes with their kerf are 310 and 210, in steps of 10: 31 and 21. A board has 960 - 10 + 10 = 960: 96 steps,
    three of 31. At 2 cents a long piece a board is filled with 6, at 8/3 with 8.
    """
    plan: dict[str, Any] = {
        "problem": {
            "kind": "lengths",
            "saw": {"crosscut_kerf": 10, "end_trim": 5, "rip_kerf": 7, "edge_loss": 0, "far_edge_loss": 0},
            "pieces": [
                {"width": 50, "length": 295, "miter_allowance": 5, "count": 4},
                {"width": 50, "length": 200, "miter_allowance": 0, "count": 2},
            ],
            "stock": [{"name": "casing", "width": 60, "length": 960, "price_cents": 8, "supply": None}],
        },
        "bound": {"prices": [{"width": 0, "length": 300, "price": 2 * STEPS}]},
    }
    plan["problem"] |= {key: value for key, value in changes.items() if key in plan["problem"]}
    if "prices" in changes:
        plan["bound"]["prices"] = [
            {"width": width, "length": length, "price": price} for (width, length), price in changes["prices"].items()
        ]
    return plan


def stock(**changes: Any) -> list[dict[str, Any]]:
    return [{"name": "casing", "width": 60, "length": 960, "price_cents": 8, "supply": None, **changes}]


def test_what_is_proved_goes_up_to_what_boards_can_cost() -> None:
    """Four pieces at 2 cents prove 8, one board; at 2 cents and a step they prove a little more, so two: 16."""
    assert check_certificate(lengths()) == 8
    assert check_certificate(lengths(prices={(0, 300): 2 * STEPS + 1})) == 16
    assert check_certificate(lengths(prices={})) == 0


def test_three_pieces_fill_a_board_to_its_price_and_no_further() -> None:
    """Three at 8/3 are 8 cents; a step more and the board is worth more than it costs."""
    third = 8 * STEPS // 3
    assert check_certificate(lengths(prices={(0, 300): third})) == 16
    with pytest.raises(ValueError, match="casing can be filled with 1 steps more than it costs"):
        check_certificate(lengths(prices={(0, 300): third + 1}))


@pytest.mark.parametrize(("length", "fits"), [(930, 3), (929, 2), (931, 3)])
def test_ends_and_kerfs_are_counted(length: int, fits: int) -> None:
    """Three of 300 with two kerfs of 10 and 5 off each end are 930."""
    price = 8 * STEPS // fits
    plan = lengths(prices={(0, 300): price}, stock=stock(length=length))
    assert check_certificate(plan) == -(-4 * price // (8 * STEPS)) * 8
    with pytest.raises(ValueError, match="more than it costs"):
        check_certificate(lengths(prices={(0, 300): price + 2}, stock=stock(length=length)))


@pytest.mark.parametrize(("length", "fits"), [(929, 2), (930, 3)])
def test_steps_are_of_sizes_with_their_kerf(length: int, fits: int) -> None:
    """One size of 301 and a kerf of 7: steps of 308, and three of them are 10 + 3 x 308 - 7 = 927 with the end trims.

    Steps of 301 less 7 would put three on a board of 889.
    """
    saw = {"crosscut_kerf": 7, "end_trim": 5, "rip_kerf": 7, "edge_loss": 0, "far_edge_loss": 0}
    pieces = [{"width": 50, "length": 301, "miter_allowance": 0, "count": 4}]
    price = 8 * STEPS // fits
    change: dict[str, Any] = {"saw": saw, "pieces": pieces, "stock": stock(length=length - 3)}
    assert check_certificate(lengths(prices={(0, 301): price}, **change)) == -(-4 * price // (8 * STEPS)) * 8
    with pytest.raises(ValueError, match="more than it costs"):
        check_certificate(lengths(prices={(0, 301): price + 2}, **change))


def test_boards_that_run_out_take_off_what_they_are_worth_too_much() -> None:
    """At 4 cents, three pieces on a board of 8 are worth 4 too much; one such board: 16 - 4 = 12, so two boards."""
    prices = {(0, 300): 4 * STEPS}
    endless = stock()[0] | {"name": "dear", "price_cents": 12}
    assert check_certificate(lengths(prices=prices, stock=[stock(supply=1)[0], endless])) == 12
    assert check_certificate(lengths(prices=prices, stock=[stock(supply=2)[0], endless])) == 8
    assert check_certificate(lengths(prices=prices, stock=stock(supply=5))) == 0


def test_boards_that_are_not_worth_too_much_take_nothing_off() -> None:
    """Four pieces at 2 cents and a step prove 16, two boards of 8, however many dear boards there are beside them."""
    prices = {(0, 300): 2 * STEPS + 1}
    dear = stock()[0] | {"name": "dear", "price_cents": 80, "supply": 9}
    assert check_certificate(lengths(prices=prices, stock=[*stock(), dear])) == 16


def test_a_board_of_which_there_is_none_takes_nothing_off() -> None:
    """At 4 cents three pieces are worth 4 more than a board, and none is left: 16, in steps of 4 as 8 and 12 are."""
    endless = stock()[0] | {"name": "dear", "price_cents": 12}
    assert check_certificate(lengths(prices={(0, 300): 4 * STEPS}, stock=[stock(supply=0)[0], endless])) == 16


def test_prices_in_a_plan_file_are_in_millionths_of_a_cent() -> None:
    """Files of earlier issues are held to it: four pieces at 2 cents prove 8, a millionth more than that 16."""
    assert check_certificate(lengths(prices={(0, 300): 2_000_000})) == 8
    assert check_certificate(lengths(prices={(0, 300): 2_000_001})) == 16


def test_a_piece_without_a_price_is_worth_nothing_on_a_board_either() -> None:
    """Four of 310 and one of 210 less a kerf and 5 off each end are 1450: filled at 4 x 2 to the price of 8."""
    assert check_certificate(lengths(stock=stock(length=1450))) == 8


def test_a_board_that_no_piece_fits_proves_nothing_against_any_price() -> None:
    """One size of 300; 309 with 5 off each end holds none of it, 310 holds one."""
    one = [{"width": 50, "length": 300, "miter_allowance": 0, "count": 4}]
    dear = {(0, 300): 9 * STEPS}
    assert check_certificate(lengths(pieces=one, prices=dear, stock=stock(length=309))) == 40
    with pytest.raises(ValueError, match="more than it costs"):
        check_certificate(lengths(pieces=one, prices=dear, stock=stock(length=310)))


def test_of_boards_that_cost_nothing_a_cent_is_a_cent() -> None:
    """Four pieces at 1 cent; one such board is there, which three of them fill: 4 - 3."""
    free = stock(price_cents=0, supply=1)
    assert check_certificate(lengths(prices={(0, 300): STEPS}, stock=free)) == 1


def leg(mark: str, length: int, width: int, **keys: Any) -> dict[str, Any]:
    return {"mark": mark, "length": length, "width": width, "miter_allowance": 0, "count": 1, **keys}


def paired(first: dict[str, Any], second: dict[str, Any], **pair: Any) -> dict[str, Any]:
    saw = {"crosscut_kerf": 6, "rip_kerf": 8}
    turned = {"is_first_turned": False, "is_second_turned": False}
    return {"saw": saw, "pieces": [first, second], "pairs": [{"first": "A", "second": "B", **turned, **pair}]}


def head_to_tail(lap: int, **changes: Any) -> dict[str, Any]:
    """A slant of 400 in 300 is 500 long, 3-4-5: a kerf of 6 square to it takes 10 along the grain."""
    ends = {"A": (0, 400), "B": (-400, 0)}
    first, second = (leg(mark, 1000, 300, slants=slants, **changes) for mark, slants in ends.items())
    return paired(first, second, lap=lap)


def test_a_kerf_that_is_just_whole_parts_two_pieces_head_to_tail() -> None:
    """Of a run of 400 a lap of 390 leaves the 10."""
    assert list(blanks(head_to_tail(390))) == [(300, 1000 - 390 + 1000, 1)]
    for lap in (391, 400, 401):
        with pytest.raises(ValueError, match="no one cut parts A from B"):
            list(blanks(head_to_tail(lap)))


def side_by_side(across: int, **changes: Any) -> dict[str, Any]:
    """A taper of 300 in a length of 400 is 500 long: a kerf of 8 square to it takes 10 across."""
    first, second = (leg(mark, 400, 400, ends=(100, 400), **changes) for mark in "AB")
    return paired(first, second, lap=0, across=across, is_second_over=False)


def test_a_kerf_that_is_just_whole_parts_two_pieces_side_by_side() -> None:
    """The wide end of one beside the narrow end of the other: 500 and the 10."""
    assert list(blanks(side_by_side(510))) == [(510, 400, 1)]
    for across in (509, 500, 490):
        with pytest.raises(ValueError, match="no rip parts A from B"):
            list(blanks(side_by_side(across)))


@pytest.mark.parametrize("pair", [head_to_tail(390), side_by_side(510)], ids=["head to tail", "side by side"])
@pytest.mark.parametrize("counts", [(2, 2), (2, 1), (1, 2)])
def test_a_pair_is_of_one_piece_and_one(pair: dict[str, Any], counts: tuple[int, int]) -> None:
    pieces = [{**piece, "count": count} for piece, count in zip(pair["pieces"], counts, strict=True)]
    with pytest.raises(ValueError, match="A"):
        list(blanks({**pair, "pieces": pieces}))


def test_a_price_below_nothing_counts_as_nothing() -> None:
    assert check_certificate(lengths(prices={(0, 300): 2 * STEPS, (0, 200): -STEPS})) == 8


def boards(width: int, price: int) -> dict[str, Any]:
    """Strips of 50 with a rip kerf of 7, 3 off one edge and 2 off the other: two want 3 + 50 + 7 + 50 + 2 = 112."""
    plan = lengths(prices={(50, 300): price}, stock=stock(width=width), kind=LotKind.BOARDS)
    plan["problem"]["saw"] |= {"edge_loss": 3, "far_edge_loss": 2}
    return plan


@pytest.mark.parametrize(("width", "strips"), [(54, 0), (55, 1), (111, 1), (112, 2), (168, 2)])
def test_rips_are_counted_across_the_board(width: int, strips: int) -> None:
    """Three pieces on a strip: at 8 / 3 / strips cents a board is filled to its price; just more is too much.

    A board takes 4 pieces at most, since there are no more: two strips hold 3 and 1 at best, 3 + 3 for the bound.
    """
    if strips == 0:
        assert check_certificate(boards(width, 100 * STEPS)) == 400
        return
    price = 8 * STEPS // (3 * strips)
    assert check_certificate(boards(width, price)) == -(-4 * price // (8 * STEPS)) * 8
    with pytest.raises(ValueError, match="more than it costs"):
        check_certificate(boards(width, price + 1))


def test_a_piece_of_another_width_goes_on_a_strip_of_its_own() -> None:
    """Widths 50 and 30, each three to a strip, on one board: 3 + 50 + 7 + 30 + 2 = 92 wide, and 91 is one too few."""
    plan = boards(92, 0)
    plan["problem"]["pieces"][1] |= {"width": 30, "length": 300}
    plan["bound"]["prices"] = [
        {"width": 50, "length": 300, "price": 2 * STEPS},
        {"width": 30, "length": 300, "price": STEPS},
    ]
    assert check_certificate(plan) == 16  # 3 x 2 and 2 x 1 (there are two) fill a board to 8; 4 x 2 + 2 x 1 = 10
    plan["bound"]["prices"][1]["price"] += 1
    with pytest.raises(ValueError, match="with 2 steps more"):
        check_certificate(plan)
    plan["problem"]["stock"][0]["width"] = 91
    assert check_certificate(plan) == 16


def test_the_page_proves_a_plan_file_by_itself(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Whoever doubts a plan runs this one file on it, with nothing else of the house."""
    file = tmp_path / "plan.json"
    file.write_text(json.dumps(lengths()), encoding="utf-8")
    monkeypatch.setattr("sys.argv", ["checker.py", str(file)])
    runpy.run_path(checker.__file__, run_name="__main__")
    assert capsys.readouterr().out == "proved: no plan of this kind costs less than 8 cents\n"
