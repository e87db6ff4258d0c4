"""The papers of a cutting plan: boards add up as printed, PDF and file say the same, the certificate is proved."""

from __future__ import annotations

import json
import re
from collections import Counter
from collections.abc import Sequence
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from paper import collisions, pages, runs, words

from jambs.app.chain import make_kits
from jambs.job import Job, read_job
from jambs.length import Units
from jambs.sheets.cutting_money import Boards, sentences
from jambs.sheets.cutting_papers import (
    BOARD_ROOM,
    POINTS_PER_UNIT,
    buying_csv,
    cut_list_csv,
    drops_csv,
    scales,
    write_cutting_papers,
)
from jambs.sheets.cutting_record import Round, cutting_record
from jambs.sheets.marks import part_runs
from jambs.sheets.marks import runs as board_runs
from jambs.sheets.money import money_text, percent_text
from jambs.stock.check_file import check_house, main
from jambs.stock.house.house_plan import Effort, PlannedLot, plan_house
from jambs.stock.house.lots import house_lots
from jambs.stock.verify import verify_plan

EXAMPLES = Path(__file__).parents[2] / "examples"
NAMES = ("harbour-house", "hillside-house", "garden-studio")
EFFORT = Effort(stages=0)
Record = dict[str, Any]


class Printed:
    """A planned example with its record and its papers."""

    def __init__(self, name: str, folder: Path) -> None:
        self.job: Job = read_job(EXAMPLES / name)
        self.kits = make_kits(self.job)
        self.planned: tuple[PlannedLot, ...] = plan_house(house_lots(self.kits, self.job), EFFORT)
        self.folder = folder
        write_cutting_papers(cutting_record(self.planned, self.job, EFFORT, Round()), self.job, folder)
        self.record: Record = json.loads((folder / "plan.json").read_text(encoding="utf-8"))

    def pdf(self, name: str) -> bytes:
        return (self.folder / f"{name}.pdf").read_bytes()

    @property
    def boards(self) -> list[tuple[Record, Record]]:
        return [(lot, board) for lot in self.record["lots"] for board in lot["boards"]]


@pytest.fixture(scope="module", params=NAMES)
def printed(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Printed:
    return Printed(request.param, tmp_path_factory.mktemp(request.param))


def read(text: str) -> Fraction:
    """A printed length as an exact number; shares no code with the program."""
    feet = re.fullmatch(r"(\d+)'-(?:(.+))?", text)
    if feet:
        return 12 * Fraction(feet[1]) + read(feet[2])
    return sum((Fraction(part) for part in re.sub(r'"| mm', "", text).split()), Fraction(0))


def test_every_part_of_the_house_is_printed_once(printed: Printed) -> None:
    wanted = {part.mark for kit in printed.kits for part in kit.parts if part.is_wood and not part.strips}
    placed = Counter(p["mark"] for _, board in printed.boards for s in board["strips"] for p in s["pieces"])
    listed = Counter(piece["mark"] for lot in printed.record["lots"] for piece in lot["pieces"])
    stops = Counter(cut["mark"] for lot in printed.record["lots"] for stop in lot["stops"] for cut in stop["cuts"])
    assert placed == listed == stops
    assert set(placed.values()) == {1} and wanted <= set(placed)


def test_a_board_is_its_trims_pieces_kerfs_and_drop_as_printed(printed: Printed) -> None:
    """Length of the board = trim + pieces, each with its kerf (a slanted one more) + drop + trim."""
    for lot, board in printed.boards:
        plan = lot["plan"]["problem"]
        step = Fraction(1, 64) if printed.record["units"] == "inch" else Fraction(1, 10)
        kerf = plan["saw"]["crosscut_kerf"] * step
        slanted = {piece["mark"]: piece["miter_allowance"] * step for piece in plan["pieces"]}
        for strip in board["strips"]:
            at = read(board["end_trim"]["text"])
            for piece in strip["pieces"]:
                assert read(piece["start"]["text"]) == at
                assert read(piece["end"]["text"]) == at + read(piece["length"]["text"])
                at = read(piece["end"]["text"]) + slanted[piece["mark"]] + kerf
            left = read(board["length"]["text"]) - read(board["end_trim"]["text"]) - at
            assert left >= -kerf
            assert (read(strip["drop"]["length"]["text"]) if strip["drop"] else 0) == max(left, 0)


def test_strips_kerfs_and_the_rest_fill_the_width_as_printed(printed: Printed) -> None:
    for lot, board in printed.boards:
        saw = lot["plan"]["problem"]["saw"]
        step = Fraction(1, 64) if printed.record["units"] == "inch" else Fraction(1, 10)
        kerf, width = saw["rip_kerf"] * step, read(board["width"]["text"])
        ends = [read(strip["start"]["text"]) + read(strip["width"]["text"]) for strip in board["strips"]]
        starts = [read(strip["start"]["text"]) for strip in board["strips"]]
        assert all(start == end + kerf for end, start in zip(ends, starts[1:], strict=False))
        assert ends[-1] <= width
        if board["rest"]:
            assert read(board["rest"]["start"]["text"]) == ends[-1] + kerf
            far = saw["far_edge_loss"] * step
            assert read(board["rest"]["width"]["text"]) == width - far - ends[-1] - kerf


def test_every_plan_that_is_printed_is_verified(printed: Printed) -> None:
    assert [verify_plan(one.plan) for one in printed.planned] == [()] * len(printed.planned)


def test_the_file_proves_its_own_bounds(printed: Printed, capsys: pytest.CaptureFixture[str]) -> None:
    for _, proved, claimed, cost in check_house(printed.record):
        assert claimed == proved <= cost
    assert main(str(printed.folder / "plan.json")) == 0
    assert capsys.readouterr().out.count("as claimed") == len(printed.record["lots"])


def test_a_bound_that_claims_too_much_is_caught(printed: Printed, tmp_path: Path) -> None:
    forged = json.loads(json.dumps(printed.record))
    forged["lots"][0]["plan"]["bound"]["certified_cents"] += 10_000
    (tmp_path / "plan.json").write_text(json.dumps(forged), encoding="utf-8")
    assert main(str(tmp_path / "plan.json")) == 1
    for price in forged["lots"][0]["plan"]["bound"]["prices"]:
        price["price"] *= 2
    with pytest.raises(ValueError, match="can be filled with"):
        check_house(forged)


def _kind(board: Record) -> str:
    return f"{board['board']}, {board['sold_as']}"


def _kind_before(text: str, board: Record, boards: Sequence[Record]) -> str:
    """Return the kind of board that is said last before a board's mark and its first piece."""
    place = text.index(f"{board['mark']} {board['strips'][0]['pieces'][0]['mark']}")
    ends = {kind: text.rfind(kind, 0, place) + len(kind) for kind in map(_kind, boards) if kind in text[:place]}
    return max(ends, key=lambda kind: (ends[kind], len(kind)))


def test_the_pdf_says_what_the_file_says(printed: Printed) -> None:
    text = words(printed.pdf("cutting plan"))
    bare = text.replace(" ", "")
    for lot, board in printed.boards:
        assert _kind_before(text, board, lot["boards"]) == _kind(board)
        for strip in board["strips"]:
            for piece in strip["pieces"]:
                assert piece["mark"] in text
    for lot in printed.record["lots"]:
        for line in (*lot["sentences"], *lot["notes"], *lot["near"]):
            assert line.replace(" ", "") in bare
        for stop in lot["stops"]:
            assert stop["length"]["text"] in text
        for rip in lot["rips"]:
            assert rip["text"].replace(" ", "") in bare
    for line in (*printed.record["total"]["sentences"], *printed.record["cautions"]):
        assert line.replace(" ", "") in bare
    for one in printed.record["assumed"]:
        assert f"{one['what']}: {one['value']} ({one['why']})".replace(" ", "") in bare


def test_what_is_said_of_several_pieces_or_widths_is_said_once(printed: Printed) -> None:
    """Widths as much apart share a sentence, and so do the pieces that come out of one drop."""
    for lot in printed.record["lots"]:
        apart = [re.search(r"differ by ([^()]*?)( each)?: ", line) for line in lot["near"]]
        assert all(found and bool(found[2]) is (";" in found.string) for found in apart)
        assert len({found[1] for found in apart if found}) == len(apart)
        for note in lot["notes"]:
            givers = re.findall(r"out of the drop of (\w+)", note)
            assert len(givers) == len(set(givers))


def test_ends_are_drawn_at_their_own_slant(printed: Printed) -> None:
    """A miter of 45° stands in by its width, a leg on a sill by a sixth or less; none is steeper."""
    slants = [
        max(inward for end in piece["slants"] for inward in end) / strip["width"]["value"]
        for _, board in printed.boards
        for strip in board["strips"]
        for piece in strip["pieces"]
    ]
    assert max(slants) < 1.03  # a mitered board that tapers is ripped at its wide end
    assert {0.0} < {round(one, 2) for one in slants}
    if any(kit.placement.opening.exterior for kit in printed.kits):
        assert [one for one in slants if 0.1 < one < 0.25]


def test_pages_are_full(printed: Printed) -> None:
    """Nine boards to a page, rips and crosscuts counted in, and three pages for the head of the plan and its drops."""
    assert 9 * len(pages(printed.pdf("cutting plan"))) <= len(printed.boards) + 9 * 3


def test_two_boards_stand_in_a_row_where_their_pieces_stay_long_enough() -> None:
    """By hand: at 1:24, 3 pt to the inch, 96 in takes 288 of 299.5 pt, 34 in 102 pt, 33 in 99; else 1:11."""
    along = {shortest: scales(_lot_of(shortest, [96.0] * 2), "letter", Units.INCH)[0] for shortest in (34.0, 33.0)}
    assert along == {34.0: 24, 33.0: 11}
    assert scales(_lot_of(34.0, [96.0]), "letter", Units.INCH)[0] == 11


def test_shorter_boards_stand_in_pairs_where_the_lot_gets_a_little_smaller_by_it() -> None:
    """By hand, with 299.5 pt for one of two: 144 in fits the page at 1:16, 192 in at 1:22; 96 in half of it at 1:24.

    That is a tenth smaller for 16 ft boards, half as small again for 12 ft, where 29 in would take 87 pt, 28 in 84.
    """

    def along(lengths: list[float], shortest: float) -> float:
        return scales(_lot_of(shortest, lengths), "letter", Units.INCH)[0]

    assert along([96.0, 96.0, 192.0], 20.0) == 24
    assert along([96.0, 192.0, 192.0], 20.0) == 22  # there is none for it to stand beside
    assert along([96.0] * 2 + [192.0] * 4, 20.0) == 24
    assert along([96.0] * 2 + [192.0] * 5, 20.0) == 22  # too few for the others to get smaller
    assert along([96.0, 96.0, 144.0], 29.0) == 24
    assert along([96.0, 96.0, 144.0], 28.0) == 16


def _lot_of(shortest: float, lengths: Sequence[float]) -> Record:
    strip = {"width": {"value": 4.0}, "pieces": [{"length": {"value": shortest}}]}
    return {"boards": [{"length": {"value": one}, "width": {"value": 5.5}, "strips": [strip]} for one in lengths]}


def test_the_buying_list_says_what_the_file_says(printed: Printed) -> None:
    text = words(printed.pdf("buying list"))
    for line in printed.record["buying"]["lines"]:
        row = f"{line['buy']} {line['board']} {line['sold_as']}"
        assert row in text
        assert line["cost"]["text"] in text
    assert printed.record["buying"]["cost"]["text"] in text


@pytest.mark.parametrize("name", ["cutting plan", "buying list"])
def test_no_words_lie_over_others(printed: Printed, name: str) -> None:
    assert [(one.text, two.text) for one, two in collisions(runs(printed.pdf(name)))] == []


def test_the_buying_list_buys_the_plan_and_its_spares(printed: Printed) -> None:
    """Spares: the asked part of the boards of one kind, rounded up to whole boards."""
    bought = Counter((board["board"], board["sold_as"]) for _, board in printed.boards if not board["is_on_hand"])
    lines = printed.record["buying"]["lines"]
    assert {(line["board"], line["sold_as"]): line["count"] for line in lines} == bought
    share = printed.job.shop.spares or 0
    for kind in {line["board"] for line in lines}:
        mine = [line for line in lines if line["board"] == kind]
        asked = Fraction(str(share)) * sum(line["count"] for line in mine)
        assert sum(line["spares"] for line in mine) == -(-asked // 1)
    assert sum(line["plan_cost"]["cents"] for line in lines) == printed.record["total"]["cost"]["cents"]


def test_optimal_is_said_only_where_cost_and_bound_meet(printed: Printed) -> None:
    for lot in printed.record["lots"]:
        meets = lot["cost"]["cents"] == max(lot["certified"]["cents"], lot["solver_proved"]["cents"])
        assert ("Optimal for this kind of plan." in lot["sentences"]) == meets == lot["is_optimal"]


def test_drops_that_are_kept_are_on_the_boards(printed: Printed) -> None:
    drawn: Counter[str] = Counter()
    for _, board in printed.boards:
        drawn[board["mark"]] += sum(bool(s["drop"] and s["drop"]["is_kept"]) for s in board["strips"])
        drawn[board["mark"]] += bool(board["rest"] and board["rest"]["is_kept"])
    listed = Counter(mark for drop in printed.record["drops"] for mark in drop["marks"])
    assert +drawn == listed


def test_boards_are_drawn_within_the_page(printed: Printed) -> None:
    wide, high = BOARD_ROOM[printed.job.shop.paper]
    points = POINTS_PER_UNIT[printed.job.units]
    for lot in printed.record["lots"]:
        along, across = scales(lot, printed.job.shop.paper, printed.job.units)
        assert max(board["length"]["value"] for board in lot["boards"]) * points / along <= wide
        assert max(board["width"]["value"] for board in lot["boards"]) * points / across <= high
        assert across <= along


def test_tables_hold_every_piece_and_every_board(printed: Printed) -> None:
    pieces = sum(len(lot["pieces"]) for lot in printed.record["lots"])
    assert len(cut_list_csv(printed.record).splitlines()) == 1 + pieces
    assert len(buying_csv(printed.record).splitlines()) == 1 + len(printed.record["buying"]["lines"])
    rows = drops_csv(printed.record).splitlines()
    assert len(rows) == 1 + len(printed.record["drops"]) + len(printed.record["left_over"])


def test_money() -> None:
    assert [money_text(one, "$") for one in (0, 5, 123456, -250)] == ["$0.00", "$0.05", "$1,234.56", "-$2.50"]
    assert [money_text(one, "kr") for one in (26800, 123450)] == ["268 kr", "1 234.50 kr"]


def test_what_is_left_to_save_is_never_said_too_small() -> None:
    assert percent_text(1, 30_000) == "0.01 %"
    assert percent_text(0, 30_000) == "0.00 %"
    assert percent_text(1, 3) == "33.34 %"


def test_marks_in_short() -> None:
    assert board_runs(["A1", "A2", "A3", "A5", "B6", "B7"]) == "A1 to A3, A5, B6, B7"


def test_part_marks_in_short_opening_by_opening() -> None:
    assert part_runs(["W2-1", "W1-9", "W1-10", "W1-1", "W1-9", "W1-11"]) == "W1-1, W1-9 to W1-11, W2-1"
    assert part_runs([]) == ""
    # Strips of a part that is glued up are that part.
    assert part_runs(["W1-5b", "W1-4", "W1-5a"]) == "W1-4, W1-5"


THREE = Boards(to_buy=3, cost=3660, before=0, on_hand=0, round=1)


def test_boards_are_told_by_where_they_come_from() -> None:
    """41.20 is still to be paid; what was bought before and what is on hand stands by itself."""
    boards = Boards(to_buy=2, cost=4120, before=7, on_hand=1, round=3)
    assert boards.words("$") == "2 to buy for $41.20, 7 bought before, for rounds 1 to 2, 1 on hand"
    assert sentences("Here", boards, 4120, 4120, 4120, currency="$")[0].startswith("10 boards: 2 to buy")
    assert THREE.words("$") == "3 to buy for $36.60"


@pytest.mark.parametrize(
    ("cost", "certified", "solver", "left"),
    [
        (3660, 3340, 3660, []),
        (3660, 3340, 3500, ["at most 8.75 % is left to save", "at most 4.38 % is left"]),
        (3660, 3660, 3660, []),
    ],
)
def test_what_is_proved_optimal_has_nothing_left_to_save(
    cost: int, certified: int, solver: int, left: list[str]
) -> None:
    """320 of 3660 are 8.744 %, 160 are 4.372 %, rounded up."""
    said = " ".join(sentences("Here", THREE, cost, certified, solver, currency="$"))
    assert re.findall(r"at most [\d.]+ % is left(?: to save)?", said) == left
    assert ("Optimal for this kind of plan." in said) == (not left)
