"""A board is spoiled: the lots it belongs to are planned again from what is left, the others stay as they are."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from string import ascii_lowercase

from jambs.findings import FindingsError
from jambs.job import Job
from jambs.job.models.shop import Shop
from jambs.length import Units
from jambs.parts.kit.kit import Kit
from jambs.sheets.cutting_lot import kept_drops
from jambs.sheets.cutting_money import OWN, SPARE
from jambs.sheets.cutting_record import FORMAT, VERSION, Round
from jambs.sheets.rest_findings import (
    NamesNoBoard,
    NoSuchBoard,
    NoSuchPiece,
    PieceForBoard,
    PiecesChanged,
    PlanOfAnotherVersion,
    RestFinding,
    SpoiledAndCut,
)
from jambs.stock.house.head_to_tail import head_to_tail
from jambs.stock.house.house_pieces import CutPiece, house_pieces
from jambs.stock.house.house_plan import Effort, LotProgress, PlannedLot, plan_house
from jambs.stock.house.lots import Lot, materials
from jambs.stock.house.lumber import Lumber, straight_drop
from jambs.stock.house.material import LotName
from jambs.stock.house.side_by_side import side_by_side
from jambs.stock.planfile import plan_from_dict
from jambs.stock.problem import Stock
from jambs.stock.remainder import remaining_problem
from jambs.values import Record


class SpoiledError(FindingsError):
    """Spoiled boards that cannot be planned round."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Spoiled:
    """What happened at the saw: marks of spoiled boards, of boards that are cut, of pieces saved from spoiled ones.

    ``short``: boards as they were written where that is how the mark of a piece is written too, ``A1-6``.
    """

    boards: tuple[str, ...]
    cut: tuple[str, ...] = ()
    saved: tuple[str, ...] = ()
    short: tuple[str, ...] = ()


def short_ranges(written: Iterable[str]) -> tuple[str, ...]:
    """Return those of some texts that are written as the marks of pieces are: ``A1-6``."""
    texts = (one.strip().upper() for some in written for one in some.split(","))
    return tuple(text for text in texts if re.fullmatch(r"[A-Z]+\d+-\d+", text))


def board_marks(written: Iterable[str]) -> tuple[str, ...]:
    """Return the marks that some texts name: ``A7``, ``A1-A6``, ``A1-6``, also with commas.

    Raises:
        SpoiledError: a text names no boards.
    """
    marks: list[str] = []
    for text in (one.strip() for some in written for one in some.split(",")):
        found = re.fullmatch(r"([A-Z]+)(\d+)(?:-(?:\1)?(\d+))?", text.upper())
        if not found:
            raise SpoiledError(NamesNoBoard(text=text))
        letter, first, last = found[1], int(found[2]), int(found[3] or found[2])
        marks += [f"{letter}{number}" for number in range(first, last + 1)]
    return tuple(dict.fromkeys(marks))


def planned_rest(
    old: Record,
    kits: Sequence[Kit],
    job: Job,
    spoiled: Spoiled,
    effort: Effort,
    *,
    progress: LotProgress | None = None,
) -> tuple[tuple[PlannedLot, ...], Round]:
    """Plan the lots of spoiled boards again; return all lots, and which round this is.

    Raises:
        SpoiledError: the file is of another version, a mark is not in the plan, or the job has changed since.
        StockFault: what is left cannot yield all pieces.
    """
    _same_version(old)
    pieces = {one.piece.mark: one for one in house_pieces(kits, job)}
    before = [_planned(lot, pieces) for lot in old["lots"]]
    _known(before, spoiled)
    again = [
        _rest(one, spoiled, old["spares"], job.shop, job.units) if _marks(one, spoiled.boards) else None
        for one in before
    ]
    planned = iter(plan_house([one for one in again if one], effort, progress=progress))
    lots = [next(planned) if left else one for one, left in zip(before, again, strict=True)]
    turn = Round(
        number=old["round"] + 1,
        made=(*old["made"], *(mark for one in before for mark in _made(one, spoiled))),
        cut=(*old["cut"], *spoiled.cut),
        spoiled=(*old["spoiled"], *spoiled.boards),
        stays=tuple(one.lot.letter for one, left in zip(before, again, strict=True) if left is None),
        spares=_spares_left(old["spares"], [one for one, left in zip(before, again, strict=True) if left]),
    )
    return tuple(one for one in lots if one.lot.pieces), turn


def _same_version(old: Record) -> None:
    if old.get("format") != FORMAT or old.get("version") != VERSION:
        raise SpoiledError(PlanOfAnotherVersion())


# ---- the plan as the file has it


def _planned(record: Record, pieces: dict[str, CutPiece]) -> PlannedLot:
    plan = plan_from_dict(record["plan"])
    known = {mark: one.piece for mark, one in pieces.items()}
    changed = tuple(piece.mark for piece in plan.problem.pieces if known.get(piece.mark) != piece)
    if changed:
        raise SpoiledError(PiecesChanged(marks=changed))
    mine = tuple(pieces[piece.mark] for piece in plan.problem.pieces)
    lumber = tuple(
        Lumber(stock=stock, **values) for stock, values in zip(plan.problem.stock, record["lumber"], strict=True)
    )
    lot = Lot(
        letter=record["letter"],
        title=record["title"],
        name=LotName(kind=plan.problem.kind, material=materials(mine)[0]),
        pieces=mine,
        lumber=lumber,
        problem=plan.problem,
        first_number=record["first_number"],
    )
    return PlannedLot(lot=lot, plan=plan, cheapest=plan, choices=())


def _known(before: Sequence[PlannedLot], spoiled: Spoiled) -> None:
    boards = tuple(one.lot.board_mark(board.number) for one in before for board in one.plan.boards)
    pieces = tuple(piece.mark for one in before for piece in one.plan.problem.pieces)
    out_of = _boards_of_parts(before)
    if meant := [PieceForBoard(mark=mark, boards=out_of[mark]) for mark in spoiled.short if mark in out_of]:
        raise SpoiledError(*meant)
    faults: list[RestFinding] = []
    faults += [NoSuchBoard(mark=mark, known=boards) for mark in (*spoiled.boards, *spoiled.cut) if mark not in boards]
    faults += [NoSuchPiece(mark=mark, known=pieces) for mark in spoiled.saved if mark not in pieces]
    faults += [SpoiledAndCut(mark=mark) for mark in spoiled.boards if mark in spoiled.cut]
    if faults:
        raise SpoiledError(*faults)


def _boards_of_parts(before: Sequence[PlannedLot]) -> dict[str, tuple[str, ...]]:
    """Return the boards that each part comes out of, by its mark; strips of one have a letter behind it."""
    found: dict[str, dict[str, None]] = {}
    for one in before:
        for board in one.plan.boards:
            for piece in (piece for strip in board.strips for piece in strip.pieces):
                found.setdefault(piece.mark.rstrip(ascii_lowercase), {})[one.lot.board_mark(board.number)] = None
    return {mark: tuple(boards) for mark, boards in found.items()}


def _marks(one: PlannedLot, marks: Sequence[str]) -> tuple[int, ...]:
    """Numbers of those boards of a lot that some marks name."""
    return tuple(board.number for board in one.plan.boards if one.lot.board_mark(board.number) in marks)


def _made(one: PlannedLot, spoiled: Spoiled) -> Sequence[str]:
    """Marks of pieces of a lot that is planned again which are made already."""
    if not _marks(one, spoiled.boards):
        return ()
    done = _marks(one, spoiled.cut)
    pieces = {piece.mark for piece in one.plan.problem.pieces}
    cut = [p.mark for board in one.plan.boards if board.number in done for s in board.strips for p in s.pieces]
    return [*cut, *(mark for mark in spoiled.saved if mark in pieces and mark not in cut)]


# ---- what is left of it


def _rest(one: PlannedLot, spoiled: Spoiled, spares: Mapping[str, int], shop: Shop, units: Units) -> Lot:
    """The lot with the pieces not made yet; drops of cut boards, spares, whole and new boards to cut them from."""
    done = _marks(one, spoiled.cut)
    saved = Counter(mark for mark in spoiled.saved if mark in {piece.mark for piece in one.plan.problem.pieces})
    left = remaining_problem(one.plan, done=done, spoiled=_marks(one, spoiled.boards), saved=saved)
    lumber = (*_drops(one, spoiled.cut, shop, units), *_spares(one.lot, spares), *_lumber(one.lot, left.stock))
    wanted = {piece.mark for piece in left.pieces}
    problem = replace(left, stock=tuple(kind.stock for kind in lumber), pairs=())
    return replace(
        one.lot,
        pieces=tuple(piece for piece in one.lot.pieces if piece.piece.mark in wanted),
        lumber=lumber,
        problem=problem,
        pairs=(*head_to_tail(problem, shop, units), *side_by_side(problem, shop, units)) if shop.head_to_tail else (),
        first_number=one.lot.first_number + len(one.plan.boards),
    )


def _drops(one: PlannedLot, cut: Sequence[str], shop: Shop, units: Units) -> tuple[Lumber, ...]:
    """Drops of boards that are cut, each a board of its own; in a lot that is only crosscut those of its width."""
    kept = [drop for drop in kept_drops(one, shop, units) if drop.mark in cut]
    saw = one.lot.problem.saw if one.lot.problem.is_ripped else None
    return tuple(
        straight_drop(drop.mark, drop.width, drop.length, saw, number=number, units=units)
        for number, drop in enumerate(kept, start=1)
    )


def _lumber(lot: Lot, stock: Sequence[Stock]) -> tuple[Lumber, ...]:
    """What the boards that are left really are; those bought and still whole are like those of their name."""
    known = {one.stock.name: one for one in lot.lumber}
    return tuple(replace(known.get(one.name) or known[one.name.removesuffix(OWN)], stock=one) for one in stock)


def _spares(lot: Lot, spares: Mapping[str, int]) -> tuple[Lumber, ...]:
    """Spare boards of the kinds of a lot; at half price, so that they go before new ones and after drops."""
    return tuple(
        replace(one, stock=_as_spare(one.stock, count))
        for one in lot.lumber
        if (count := spares.get(one.stock.name, 0))
    )


def _as_spare(stock: Stock, count: int) -> Stock:
    price = stock.price_cents // 2
    return replace(stock, name=stock.name + SPARE, price_cents=price, supply=count, on_hand=True)


def _spares_left(spares: Mapping[str, int], again: Sequence[PlannedLot]) -> dict[str, int]:
    """Spares of kinds that no lot which is planned again could take."""
    given = {kind.stock.name for one in again for kind in one.lot.lumber}
    return {name: count for name, count in spares.items() if name not in given}
