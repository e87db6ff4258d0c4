"""One lot of the cutting plan as a record: boards with running lengths, rips by fence, crosscuts by stop, choices."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, fields
from itertools import groupby

from jambs.job.models.openings import Job
from jambs.job.models.shop import Shop
from jambs.length import FINE, Units, length_text
from jambs.parts.board.cuts import Edge, End
from jambs.parts.board.end_slants import end_slants
from jambs.sheets.cutting_money import Boards, sentences
from jambs.sheets.marks import part_runs, runs
from jambs.sheets.money import money, percent_text
from jambs.stock.house.house_pieces import CutPiece
from jambs.stock.house.house_plan import PlannedLot
from jambs.stock.house.lot_words import least_drop, lot_notes, lumber_text
from jambs.stock.house.lumber import Lumber, steps_up
from jambs.stock.plan import PlannedBoard, PlannedStrip, pairs_words
from jambs.stock.planfile import plan_to_dict
from jambs.stock.problem import LotKind
from jambs.stock.views import LaidPiece, drops, laid_pieces, near_equal_widths, rip_list
from jambs.values import Record, number, size

SCOPE = {
    LotKind.LENGTHS: "crosscut only",
    LotKind.BOARDS: "ripped first, each strip as wide as its pieces",
    LotKind.SHEETS: "ripped along the grain first, each strip as wide as its pieces",
}
"""The kinds of plan that the bounds hold for."""
NEAR_WIDTH = 1 / 16
"""Strips that differ by no more may be ripped at one setting and planed [in]; common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptDrop:
    """A rest worth keeping: the board it is of, its sizes [in], and whether its edges are straight."""

    mark: str
    stock: str
    thickness: float
    width: float
    length: float
    edges: str


def kept_drops(planned: PlannedLot, shop: Shop, units: Units) -> tuple[KeptDrop, ...]:
    """Return the rests of a lot's boards that are worth keeping; what was ripped has straight edges."""
    length, width = (steps_up(one, units=units) for one in least_drop(shop, units))
    at, lot = FINE[units].at, planned.lot
    return tuple(
        KeptDrop(
            mark=lot.board_mark(drop.board),
            stock=lot.material.stock,
            thickness=lot.material.thickness,
            width=at(drop.width),
            length=at(drop.length),
            edges="straight" if lot.problem.is_ripped or lot.lumber_of(drop.stock).is_straight else "rough",
        )
        for drop in drops(planned.plan, least_length=length, least_width=width)
    )


def lot_record(planned: PlannedLot, job: Job, boards: Boards) -> Record:
    """Return the record of one lot; ``boards``: where its boards come from."""
    lot, plan, currency = planned.lot, planned.plan, job.shop.currency
    bench = _Bench(planned, job.shop, job.units)
    scope = SCOPE[lot.problem.kind] + pairs_words(plan.problem.pairs)
    return {
        "letter": lot.letter,
        "title": lot.title,
        "kind": lot.problem.kind,
        "stock": lot.material.stock,
        "thickness": lot.material.thickness,
        "scope": scope,
        "first_number": lot.first_number,
        "lumber": [_lumber(one) for one in lot.lumber],
        "cost": money(plan.cost_cents, currency),
        "certified": money(plan.bound.certified_cents, currency),
        "solver_proved": money(plan.bound.best_cents, currency),
        "is_optimal": plan.is_optimal,
        "sentences": sentences(
            scope[0].upper() + scope[1:],
            boards,
            plan.cost_cents,
            plan.bound.certified_cents,
            plan.bound.best_cents,
            currency=currency,
        ),
        "used": percent_text(*_used(planned)),
        "boards": [bench.board(board) for board in plan.boards],
        "rips": bench.rips(),
        "stops": bench.stops(),
        "near": bench.near(),
        "patterns": _patterns(planned, currency),
        "notes": list(lot_notes(planned, job.shop.grid)),
        "pieces": bench.pieces(),
        "planned": part_runs(one.part.mark for one in lot.pieces if one.is_planned),
        "plan": {
            **plan_to_dict(plan),
            "statement": plan.statement.replace("$", "") if currency != "$" else plan.statement,
        },
    }


def _lumber(lumber: Lumber) -> Record:
    """Return what a kind of board really is, in inches, in the order of the problem's stock."""
    return {one.name: getattr(lumber, one.name) for one in fields(lumber) if one.name != "stock"}


def _used(planned: PlannedLot) -> tuple[int, int]:
    """Face of the pieces and of the boards, in square steps."""
    lot = planned.lot
    at = {one.stock: one for one in lot.lumber}
    pieces = sum(one.width * one.length for one in lot.pieces)
    boards = sum(at[board.stock].width * at[board.stock].length for board in planned.plan.boards)
    return round(pieces), max(1, round(boards))


def _patterns(planned: PlannedLot, currency: str) -> list[Record]:
    cheapest = planned.cheapest.cost_cents
    return [
        {
            "patterns": choice.patterns,
            "board_kinds": choice.board_kinds,
            "cost": money(choice.cost_cents, currency),
            "more": money(choice.cost_cents - cheapest, currency),
            "is_taken": choice.plan is planned.plan,
        }
        for choice in planned.choices
        if planned.lot.problem.is_ripped
    ]


class _Bench:
    """A plan's figures as they are read at the saw: whole steps become sizes, numbers become marks."""

    def __init__(self, planned: PlannedLot, shop: Shop, units: Units) -> None:
        self.planned, self.plan, self.lot, self.units = planned, planned.plan, planned.lot, units
        self.saw = planned.lot.problem.saw
        self.laid = laid_pieces(planned.plan)
        self.by_mark = {one.piece.mark: one for one in planned.lot.pieces}
        self.least_length, self.least_width = (steps_up(one, units=units) for one in least_drop(shop, units))
        self.near_steps = steps_up(max(NEAR_WIDTH, shop.taper_tolerance), units=units)

    def size(self, steps: int) -> Record:
        return size(FINE[self.units].at(steps), units=self.units) or {}

    def text(self, steps: int) -> str:
        return length_text(FINE[self.units].at(steps), units=self.units)

    def board(self, board: PlannedBoard) -> Record:
        """One board from its left end; across from the edge that is straightened first."""
        lumber = self.lot.lumber_of(board.stock)
        strips = [self._strip(board, number) for number in range(len(board.strips))]
        return {
            "mark": self.lot.board_mark(board.number),
            "board": lumber.words,
            "sold_as": lumber_text(lumber, units=self.units),
            "is_on_hand": board.stock.on_hand,
            "width": self.size(board.stock.width - self._spared(board)),
            "length": self.size(board.stock.length),
            "end_trim": self.size(self.saw.end_trim),
            "strips": strips,
            "rest": self._rest(board),
        }

    def _spared(self, board: PlannedBoard) -> int:
        """Width that only the planner knows: a board with straight edges loses none of its own."""
        is_straight = self.lot.lumber_of(board.stock).is_straight
        return self.saw.edge_loss + self.saw.far_edge_loss if is_straight else 0

    def _across(self, board: PlannedBoard, strip: PlannedStrip) -> int:
        """Start of a strip across the board as it is."""
        if not self.lot.problem.is_ripped:
            return 0
        return strip.start - (self.saw.edge_loss if self._spared(board) else 0)

    def _strip(self, board: PlannedBoard, number: int) -> Record:
        strip = board.strips[number]
        width = strip.width if self.lot.problem.is_ripped else board.stock.width - self._spared(board)
        return {
            "number": number + 1,
            "start": self.size(self._across(board, strip)),
            "width": self.size(width),
            "pieces": [self._placed(placed.mark, placed.start) for placed in strip.pieces],
            "drop": self._end_drop(board, strip, width),
        }

    def _placed(self, mark: str, start: int) -> Record:
        one, laid = self.by_mark[mark], self.laid.get(mark)
        return {
            "mark": mark,
            "start": self.size(start),
            "end": self.size(start + one.piece.length),
            "length": self.size(one.piece.length),
            "slants": _laid_slants(one, laid, self.units) if laid and not laid.across else _slants(one, self.units),
            "plus": bool(one.allowance or one.longer),
            "is_planned": one.is_planned,
            **({} if laid is None else self._laid(one, laid)),
        }

    def _laid(self, one: CutPiece, laid: LaidPiece) -> Record:
        """How a piece lies in its pair; of two side by side where its edges run across their strip, at both ends."""
        if not laid.across:
            return {"head_to_tail_with": laid.beside, "is_turned": laid.is_turned}
        ends = one.piece.ends[::-1] if laid.is_turned else one.piece.ends
        near = [laid.across - wide for wide in ends] if laid.is_far else [0, 0]
        far = [laid.across] * 2 if laid.is_far else list(ends)
        return {
            "side_by_side_with": laid.beside,
            "is_turned": laid.is_turned,
            "is_turned_over": laid.is_over,
            "near": [self.size(place) for place in near],
            "far": [self.size(place) for place in far],
        }

    def _end_drop(self, board: PlannedBoard, strip: PlannedStrip, width: int) -> Record | None:
        """What is left at the end of a strip after the kerf that frees it, without the trim."""
        start = strip.pieces[-1].end + self.saw.crosscut_kerf
        length = board.stock.length - self.saw.end_trim - start
        if length <= 0:
            return None
        kept = length >= self.least_length and width >= self.least_width
        return {"start": self.size(start), "length": self.size(length), "is_kept": kept}

    def _rest(self, board: PlannedBoard) -> Record | None:
        """What is left beside the last strip, after its kerf."""
        if not self.lot.problem.is_ripped:
            return None
        last = board.strips[-1]
        start = self._across(board, last) + last.width + self.saw.rip_kerf
        width = board.stock.width - self.saw.far_edge_loss - last.start - last.width - self.saw.rip_kerf
        if width <= 0:
            return None
        kept = board.stock.length >= self.least_length and width >= self.least_width
        return {"start": self.size(start), "width": self.size(width), "is_kept": kept}

    def rips(self) -> list[Record]:
        return [
            {
                "width": self.size(setting.width),
                "count": setting.count,
                "boards": [{"mark": self.lot.board_mark(number), "strips": count} for number, count in setting.boards],
                "text": self._rip_text(setting.boards),
            }
            for setting in rip_list(self.plan)
        ]

    def _rip_text(self, boards: Sequence[tuple[int, int]]) -> str:
        """Name boards in short: ``A1 to A4, A6 ×2``."""
        said = []
        for count, some in groupby(boards, key=lambda one: one[1]):
            marks = [self.lot.board_mark(number) for number, _ in some]
            said += [f"{mark} ×{count}" for mark in marks] if count > 1 else [runs(marks)]
        return ", ".join(said)

    def stops(self) -> list[Record]:
        """All pieces at one stop, then the next, longest first; a mitered one at its long point."""
        found: dict[tuple[int, int], list[Record]] = {}
        for board in self.plan.boards:
            for strip in board.strips:
                for placed in strip.pieces:
                    piece = self.by_mark[placed.mark].piece
                    cut = {"mark": placed.mark, "board": self.lot.board_mark(board.number)}
                    found.setdefault((piece.length, piece.width), []).append(cut)
        return [self._stop(*key, found[key]) for key in sorted(found, reverse=True)]

    def _stop(self, length: int, width: int, cuts: list[Record]) -> Record:
        mitered = any(self.by_mark[cut["mark"]].piece.is_mitered for cut in cuts)
        return {
            "length": self.size(length),
            "width": self.size(width),
            "count": len(cuts),
            "is_mitered": mitered,
            "cuts": cuts,
        }

    def near(self) -> list[str]:
        """Widths that one fence setting might do for, those that are as much apart in one sentence."""
        if not self.lot.problem.is_ripped:
            return []
        counts = {one["width"]["text"]: one["count"] for one in self.rips()}
        apart: dict[str, list[str]] = {}
        for wide, narrow in near_equal_widths(self.lot.problem, within=self.near_steps):
            both = (self.text(wide), self.text(narrow))
            if set(both) <= set(counts):  # of pieces side by side neither is ripped alone
                told = " and ".join(f"{one} ({counts[one]}×)" for one in both)
                apart.setdefault(self.text(wide - narrow), []).append(told)
        return [
            f"{'; '.join(pairs)} differ by {text}{' each' if len(pairs) > 1 else ''}: one fence setting does"
            f"{' for two' if len(pairs) > 1 else ''} if the narrow ones may be planed down."
            for text, pairs in apart.items()
        ]

    def pieces(self) -> list[Record]:
        """Every piece with its board, strip and place, in the order of marks."""
        placed = {
            piece.mark: (board, number, strip, piece)
            for board in self.plan.boards
            for number, strip in enumerate(board.strips, start=1)
            for piece in strip.pieces
        }
        rows = []
        for one in self.lot.pieces:
            board, number, _, piece = placed[one.piece.mark]
            rows.append(
                {
                    "mark": one.piece.mark,
                    "of": one.part.mark,
                    "part": one.words,
                    "board": self.lot.board_mark(board.number),
                    "strip": number,
                    "start": self.size(piece.start),
                    "end": self.size(piece.start + one.piece.length),
                    "width": self.size(one.piece.width),
                    "length": self.size(one.piece.length),
                    "allowance": size(one.allowance, units=self.units),
                    "is_planned": one.is_planned,
                    "is_mitered": one.piece.is_mitered,
                }
            )
        return rows


def _laid_slants(one: CutPiece, laid: LaidPiece, units: Units) -> list[list[float]]:
    """Slants of a piece as it lies in a pair: the near edge is drawn below, of one that is turned the far edge."""
    slants = end_slants(one.part)
    ends, edges = (End.START, End.FINISH), (Edge.NEAR, Edge.FAR)
    if laid.is_turned:
        ends, edges = ends[::-1], edges[::-1]
    return [[number(slants[end][edge], units=units) for edge in edges] for end in ends]


def _slants(one: CutPiece, units: Units) -> list[list[float]]:
    """How far the start and the finish stand in from the piece's length, each at the lower and the upper edge as it is
    drawn, in the units of the job; the longer edge is drawn below. Strips to glue up are cut square, as are
    pieces of courses.
    """
    if one.glued or one.is_of_course:
        return [[0.0, 0.0], [0.0, 0.0]]
    slants = end_slants(one.part)
    below, above = sorted(Edge, key=lambda edge: sum(slants[end][edge] for end in End))
    return [[number(slants[end][edge], units=units) for edge in (below, above)] for end in (End.START, End.FINISH)]
