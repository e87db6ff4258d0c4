"""``jambs buy`` as it is used: papers, faults, drops taken up, a spoiled board, interrupt, the same plan again."""

# ruff: noqa: F401, F811 (fixtures are imported by name)

from __future__ import annotations

import json
import shutil
from pathlib import Path
from typing import Any

import pytest
from said import SaidFinding
from shops import Shop, shop
from test_site_verbs import text_of

from jambs.app.buy import MADE_ANEW, buy
from jambs.app.chain import Unbuildable
from jambs.app.writing import PaperFolder
from jambs.findings import Severity
from jambs.job import read_job
from jambs.sheets.cutting_rest import SpoiledError, board_marks
from jambs.stock import plan_stock
from jambs.stock.house.house_plan import LEAST_SECONDS, Effort

BOARDS = """    - {nominal: 1x4, stock: poplar}
    - {nominal: 1x6, stock: poplar}
"""
PRICED = """    - {nominal: 1x4, stock: poplar, lengths: [8'], price_per_foot: 2}
    - {nominal: 1x6, stock: poplar, lengths: [8'], price_per_foot: 3}
    - {nominal: 2x6, stock: spruce, lengths: [8', 12'], price_per_foot: 1}
"""
PAPERS = {"buying list.csv", "buying list.pdf", "cut list.csv", "cutting plan.pdf", "drops.csv", "plan.json"}


@pytest.fixture
def priced(shop: Shop) -> Shop:
    """The worked case with boards that can be bought."""
    shop.change(BOARDS, PRICED)
    return shop


def plan(shop: Shop, name: str = "plan.json") -> dict[str, Any]:
    found: dict[str, Any] = json.loads((shop.output / "cutting" / name).read_text(encoding="utf-8"))
    return found


def marks(record: dict[str, Any]) -> list[str]:
    return sorted(piece["mark"] for lot in record["lots"] for piece in lot["pieces"])


def bought(shop: Shop, *words: str) -> dict[str, Any]:
    result = shop.run("buy", "house", "--stages", "0", *words)
    assert result.exit_code == 0, result.output
    return plan(shop)


def test_help_has_an_example(shop: Shop) -> None:
    result = shop.run("buy", "--help")
    assert result.exit_code == 0 and "jambs buy house" in result.output


def test_all_papers_are_there(priced: Shop) -> None:
    bought(priced)
    assert {path.name for path in (priced.output / "cutting").iterdir()} == PAPERS


def test_the_terminal_tells_cost_and_bound(priced: Shop) -> None:
    result = priced.run("buy", "house", "--stages", "0")
    assert "To buy, with spares: $" in result.output
    assert "certified: prices in plan.json, checked with whole numbers" in result.output
    assert result.output.rstrip().endswith("are in output/house/cutting")


def test_a_missing_board_is_told_and_nothing_is_written(shop: Shop) -> None:
    result = shop.run("buy", "house")
    assert result.exit_code == 1
    assert result.stderr.startswith("W01-9, W01-10, W01-11, W01-12, W02-9")
    assert 'no board of spruce 1 1/2" thick is listed' in result.stderr
    assert not (shop.output / "cutting").exists()


def test_a_supply_that_runs_out_is_told(priced: Shop) -> None:
    priced.change("{nominal: 1x6, stock", "{nominal: 1x6, supply: 1, stock")
    result = priced.run("buy", "house", "--stages", "0")
    assert result.exit_code == 1
    assert "the supply runs out: not all of W01-" in result.stderr and "Raise the supply" in result.stderr


def test_what_is_assumed_is_printed(priced: Shop) -> None:
    said = {one["what"] for one in bought(priced)["assumed"]}
    assert {"end trim", "narrowest strip", "spare boards", "least drop kept"} <= said
    priced.change(", lengths: [8'], price_per_foot: 2}", "}")
    said = {one["what"] for one in bought(priced, "--overwrite")["assumed"]}
    assert {"price of 1x4 poplar", "lengths of 1x4 poplar"} <= said


def test_the_same_stages_and_seed_give_the_same_plan(priced: Shop) -> None:
    bought(priced, "--seed", "7")
    first = {path.name: path.read_bytes() for path in (priced.output / "cutting").iterdir() if path.name in PAPERS}
    shutil.rmtree(priced.output)
    bought(priced, "--seed", "7")
    again = {path.name: path.read_bytes() for path in (priced.output / "cutting").iterdir() if path.name in PAPERS}
    assert first == again


def test_drops_are_taken_up_by_the_next_plan(priced: Shop) -> None:
    priced.change("  boards:\n", "  least_drop: {length: 15, width: 1}\n  boards:\n")
    first = bought(priced)
    shutil.copy(priced.output / "cutting" / "drops.csv", priced.job.parent)
    priced.change("  boards:\n", "  on_hand: [drops.csv]\n  boards:\n")
    second = bought(priced)
    rack = sum(drop["count"] for drop in first["drops"])
    used = sum(line["count"] for line in second["on_hand"])
    left = sum(line["count"] for line in second["left_over"])
    assert 0 < used <= rack == used + left
    assert second["total"]["cost"]["cents"] < first["total"]["cost"]["cents"]
    assert marks(first) == marks(second)


def test_a_spoiled_board_and_the_rest_again(priced: Shop) -> None:
    before = bought(priced)
    lot = next(lot for lot in before["lots"] if len(lot["boards"]) > 2)
    cut, spoiled = (board["mark"] for board in lot["boards"][:2])
    saved = lot["boards"][1]["strips"][0]["pieces"][0]["mark"]
    after = bought(priced, "--spoiled", spoiled, "--cut", cut, "--saved", saved)
    cut_pieces = [piece["mark"] for strip in lot["boards"][0]["strips"] for piece in strip["pieces"]]
    assert sorted(after["made"]) == sorted([*cut_pieces, saved])
    assert sorted([*marks(after), *after["made"]]) == marks(before)
    assert (after["round"], after["spoiled"], after["cut"]) == (2, [spoiled], [cut])
    (again,) = (one for one in after["lots"] if one["letter"] == lot["letter"])
    old, new = ({board["mark"] for board in one["boards"]} for one in (lot, again))
    assert not old & new  # no mark on a board at the bench means two boards
    others = [one["letter"] for one in before["lots"] if one["letter"] != lot["letter"]]
    assert after["stays"] == others
    assert plan(priced, "plan of round 1.json") == before
    # What is to buy is what stands on the buying list, with its cost; all others were bought before, none is on hand.
    total, lines = after["total"], after["buying"]["lines"]
    to_buy, cost = sum(line["count"] for line in lines), sum(line["plan_cost"]["cents"] for line in lines)
    assert (total["to_buy"], total["to_buy_cost"]["cents"], total["on_hand"]) == (to_buy, cost, 0)
    there = sum(len(one["boards"]) for one in after["lots"]) - to_buy
    assert (total["boards"], total["bought_before"]) == (there + to_buy, there)
    assert total["cost"] == again["cost"]  # boards of the other lots are paid for
    bought_now = f"{to_buy} to buy for ${cost / 100:.2f}, " if to_buy else ""
    assert total["sentences"][0] == f"{there + to_buy} boards: {bought_now}{there} bought before, for round 1."
    for one in after["lots"]:
        if one["letter"] in others:
            count = len(one["boards"])
            assert one["sentences"][0] == f"{count} board{'s' * (count > 1)}: {count} bought before, for round 1."


def test_boards_on_hand_are_told_from_those_that_were_bought_before(priced: Shop) -> None:
    """Two boards of the rack and what was bought for two rounds; each board of a plan is counted once."""
    rack = "  on_hand:\n    - {nominal: 1x4, stock: poplar, length: 8', count: 2}\n"
    priced.change("  boards:\n", f"{rack}  boards:\n")
    first = bought(priced)
    assert (first["total"]["on_hand"], first["total"]["bought_before"]) == (2, 0)
    assert first["total"]["sentences"][0].endswith(", 2 on hand.")
    lot = next(one for one in first["lots"] if {board["is_on_hand"] for board in one["boards"]} == {True, False})
    spoiled = next(board["mark"] for board in lot["boards"] if not board["is_on_hand"])
    total = bought(priced, "--spoiled", spoiled)["total"]
    assert total["on_hand"] == 2
    assert total["to_buy"] + total["bought_before"] + total["on_hand"] == total["boards"]
    assert total["bought_before"] == first["total"]["to_buy"] - 1
    later = next(board["mark"] for one in plan(priced)["lots"] for board in one["boards"] if board["mark"] != spoiled)
    third = bought(priced, "--spoiled", later)["total"]
    assert "bought before, for rounds 1 to 2" in third["sentences"][0]


def test_boards_already_bought_are_not_bought_again(priced: Shop) -> None:
    before = bought(priced)
    lot = before["lots"][0]
    after = bought(priced, "--spoiled", lot["boards"][0]["mark"])
    assert after["buying"]["cost"]["cents"] < before["buying"]["cost"]["cents"]
    (again,) = (one for one in after["lots"] if one["letter"] == lot["letter"])
    assert sum(board["is_on_hand"] for board in again["boards"]) <= len(lot["boards"]) - 1 + len(after["spares"])


def test_a_plan_made_anew_says_that_boards_bought_for_the_one_before_are_not_counted(priced: Shop) -> None:
    """They may be in the shop: with another frame the house is planned from nothing."""
    assert MADE_ANEW not in bought(priced)["total"]["sentences"]
    assert MADE_ANEW not in bought(priced)["total"]["sentences"]  # the same boards are to be bought
    priced.change("frame: 35 1/2 x 47 1/2", "frame: 35 1/2 x 71 1/2")
    priced.change("rough_opening: 36 x 48", "rough_opening: 36 x 72")
    assert bought(priced)["total"]["sentences"][-1] == MADE_ANEW
    assert "are not counted" in text_of(priced.output / "cutting" / "buying list.pdf")


def test_a_spare_takes_the_place_of_a_spoiled_board(priced: Shop) -> None:
    priced.change("  boards:\n", "  spares: 100 %\n  boards:\n")
    before = bought(priced)
    assert {line["spares"] - line["count"] for line in before["buying"]["lines"]} == {0}
    after = bought(priced, "--spoiled", before["lots"][0]["boards"][0]["mark"])
    assert after["buying"]["lines"] == []


def test_slips_with_a_spoiled_board(priced: Shop) -> None:
    result = priced.run("buy", "house", "--spoiled", "A1")
    assert result.exit_code == 1 and "run jambs buy without --spoiled first" in result.stderr
    bought(priced)
    result = priced.run("buy", "house", "--spoiled", "Z9", "--saved", "W09-1")
    assert result.stderr.splitlines() == [
        "no board of the plan has the mark Z9; see the cutting plan",
        "no piece of the plan has the mark W09-1; see the cutting plan",
    ]
    assert priced.run("buy", "house", "--cut", "A1").exit_code == 2
    priced.change("frame: 35 1/2 x 47 1/2", "frame: 34 1/2 x 47 1/2")
    result = priced.run("buy", "house", "--spoiled", "A1")
    assert result.exit_code == 1 and "changed since the plan was made" in result.stderr


def test_a_piece_that_is_named_for_a_board_is_told_with_its_board_and_nothing_is_planned(priced: Shop) -> None:
    before = bought(priced)
    lot = before["lots"][0]
    piece = next(mark for mark in marks({"lots": [lot]}) if mark[-1].isdigit())
    for option in ("--spoiled", "--cut"):
        words = ("--spoiled", lot["boards"][0]["mark"]) if option == "--cut" else ()
        result = priced.run("buy", "house", *words, option, piece)
        assert result.exit_code == 1 and f"{piece} is a piece, cut from " in result.stderr, result.output
    assert plan(priced) == before
    board = lot["boards"][0]["mark"]
    assert bought(priced, "--spoiled", board)["spoiled"] == [board]  # a board is no piece


def test_marks_of_boards() -> None:
    assert board_marks(["a7", "B1-B3, C2-3"]) == ("A7", "B1", "B2", "B3", "C2", "C3")
    with pytest.raises(SpoiledError, match="'7' names no board; write a mark like A7, or A1-A6"):
        board_marks(["7"])


def test_an_interrupt_gives_the_best_plan_so_far(priced: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    """Ctrl-C while the first lot is searched: the others get a plan at once, all are verified."""
    told: list[Any] = []
    given: list[float] = []

    def watched(problem: Any, **options: Any) -> Any:
        given.append(options["seconds"])
        return plan_stock(problem, **options)

    def interrupt(lot: object, state: Any) -> None:
        told.append(state)
        if len(told) == 1:
            raise KeyboardInterrupt

    monkeypatch.setattr("jambs.stock.house.house_plan.plan_stock", watched)
    effort = Effort(seconds=60)
    record = buy(
        read_job(priced.job),
        PaperFolder(root=priced.output, inside="cutting"),
        effort,
        overwrite=False,
        progress=interrupt,
    )
    assert record["is_interrupted"] and told[0].cost_cents is not None
    assert given[0] > LEAST_SECONDS >= max(given[1:])
    assert len(marks(record)) == 24


def test_a_plan_that_does_not_add_up_is_not_printed(priced: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    fault = SaidFinding(severity=Severity.STOP, text="a kerf is lost.")
    monkeypatch.setattr("jambs.app.buy.verify_plan", lambda plan: (fault,))
    result = priced.run("buy", "house", "--stages", "0")
    assert result.exit_code == 1 and ": a kerf is lost.\n" in result.stderr
    assert not (priced.output / "cutting").exists()


def test_files_of_the_user_are_left_alone(priced: Shop) -> None:
    bought(priced)
    (priced.output / "cutting" / "drops.csv").write_text("mine", encoding="utf-8")
    result = priced.run("buy", "house", "--stages", "0")
    assert result.exit_code == 1 and "drops.csv (changed since it was written)" in result.stderr
    assert (priced.output / "cutting" / "drops.csv").read_text(encoding="utf-8") == "mine"
