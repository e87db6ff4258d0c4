"""The record of a cutting plan: everything its papers print, as one JSON document. It is ``plan.json``.

Layout::

    format     always "jambs cutting plan"
    version    1; grows when a reader of the older one would go wrong
    round      1; each time the rest is planned again after a board was spoiled, one more
    issue      which issue of the papers the parts are of
    planned    marks of the parts whose depth is only planned, in short, and the words for that
    made       marks of pieces that were cut in earlier rounds
    total      boards of the whole house: to buy (with their cost), bought before, on hand; cost, bounds and sentences
               of the lots that this round planned
    stays      letters of lots that stay as in the round before, their boards bought already
    buying     boards to buy, with spares; on_hand: boards to take from the rack; left_over: boards not needed
    spares     boards bought beyond the plan that no lot has been given yet, by kind
    drops      rests worth keeping
    lots       what is cut from one material in one way: boards, rips, stops, patterns, notes
    lots[].plan   the plan in whole steps, with the certificate: what ``jambs.stock.check_certificate`` proves

A *size* is ``{"value": 4.6875, "text": "4 11/16\\""}``, as in ``parts.json``; an amount ``{"cents": …, "text": …}``.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from jambs.job.models.openings import Job
from jambs.job.models.shop import Shop
from jambs.length import Units, whole_up
from jambs.parts.readings.as_built import PLANNED
from jambs.sheets.cutting_lot import KeptDrop, kept_drops, lot_record
from jambs.sheets.cutting_money import boards_of, sentences
from jambs.sheets.marks import part_runs, runs
from jambs.sheets.money import money
from jambs.sheets.record import assumed_records
from jambs.stock.house.house_plan import Effort, PlannedLot
from jambs.stock.house.lot_words import lumber_text, plan_assumed, saw_cautions
from jambs.stock.house.lumber import Lumber
from jambs.values import Record, size

FORMAT = "jambs cutting plan"
VERSION = 1
PLANNED_AGAIN = (
    "Each lot that is planned again by itself, spare boards at half their price and all others on hand at none"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Round:
    """Which round of planning this is; marks of the pieces made before it, of the boards cut and of those spoiled.

    ``stays``: letters of the lots that stay as they were, their boards bought already. ``spares``: bought and not
    given to a lot yet, by kind.
    """

    number: int = 1
    stays: tuple[str, ...] = ()
    spares: Mapping[str, int] = field(default_factory=dict)
    made: tuple[str, ...] = ()
    cut: tuple[str, ...] = ()
    spoiled: tuple[str, ...] = ()


def cutting_record(planned: Sequence[PlannedLot], job: Job, effort: Effort, turn: Round) -> Record:
    """Return the record of a planned house."""
    lots = [one.lot for one in planned]
    buying = _buying([one for one in planned if one.lot.letter not in turn.stays], job, with_spares=turn.number == 1)
    return {
        "format": FORMAT,
        "version": VERSION,
        "job": {"name": job.name, "date": job.date.isoformat() if job.date else None},
        "units": job.units.value,
        "currency": job.shop.currency,
        "search": {"seconds": effort.seconds, "stages": effort.stages, "seed": effort.seed},
        "is_interrupted": any(one.plan.is_interrupted for one in planned),
        "round": turn.number,
        "made": list(turn.made),
        "cut": list(turn.cut),
        "spoiled": list(turn.spoiled),
        "planned": part_runs(planned_marks(planned)),
        "planned_words": PLANNED,
        "total": _total(planned, job.shop.currency, turn),
        "stays": list(turn.stays),
        "buying": buying,
        "spares": _spares_left(buying, turn),
        "on_hand": _on_hand(planned, job.units),
        "left_over": _left_over(planned, job.units),
        "drops": _drops(planned, job.shop, job.units),
        "assumed": assumed_records(plan_assumed(lots, job)),
        "cautions": list(saw_cautions(lots, job.units)),
        "lots": [lot_record(one, job, boards_of([one], turn.stays, turn.number)) for one in planned],
    }


def planned_marks(planned: Sequence[PlannedLot]) -> list[str]:
    """Return the marks of the parts whose width makes up a depth that is only planned."""
    return [piece.part.mark for one in planned for piece in one.lot.pieces if piece.is_planned]


def _total(planned: Sequence[PlannedLot], currency: str, turn: Round) -> Record:
    """Costs and bounds are those of the lots that this round planned: nothing of it was paid before."""
    now = [one for one in planned if one.lot.letter not in turn.stays]
    cost = sum(one.plan.cost_cents for one in now)
    certified = sum(one.plan.bound.certified_cents for one in now)
    solver = sum(one.plan.bound.best_cents for one in now)
    boards = boards_of(planned, turn.stays, turn.number)
    return {
        "boards": boards.count,
        "to_buy": boards.to_buy,
        "bought_before": boards.before,
        "on_hand": boards.on_hand,
        "to_buy_cost": money(boards.cost, currency),
        "pieces": sum(len(one.lot.pieces) for one in planned),
        "cost": money(cost, currency),
        "certified": money(certified, currency),
        "solver_proved": money(solver, currency),
        "sentences": sentences(
            "Each lot by itself" if turn.number == 1 else PLANNED_AGAIN,
            boards,
            cost,
            certified,
            solver,
            currency=currency,
        ),
    }


# ---- what to buy and what to take


def _kinds(planned: Sequence[PlannedLot]) -> dict[str, tuple[Lumber, PlannedLot]]:
    """Kinds of boards by name; a kind that several lots may take stands once."""
    found: dict[str, tuple[Lumber, PlannedLot]] = {}
    for one in planned:
        for lumber in one.lot.lumber:
            found.setdefault(lumber.stock.name, (lumber, one))
    return found


def _taken(planned: Sequence[PlannedLot]) -> dict[str, list[str]]:
    """Marks of the boards of the plan by the name of their kind."""
    marks: dict[str, list[str]] = {}
    for one in planned:
        for board in one.plan.boards:
            marks.setdefault(board.stock.name, []).append(one.lot.board_mark(board.number))
    return marks


def _spares_left(buying: Record, turn: Round) -> dict[str, int]:
    """Spares by kind that no lot has yet: those of this buying list and those of earlier ones."""
    bought = Counter({line["kind"]: line["spares"] for line in buying["lines"] if line["spares"]})
    return dict(bought + Counter(turn.spares))


def _buying(planned: Sequence[PlannedLot], job: Job, *, with_spares: bool) -> Record:
    taken, currency = _taken(planned), job.shop.currency
    kinds = {name: kind for name, kind in _kinds(planned).items() if name in taken and not kind[0].stock.on_hand}
    spares = (
        _spares({name: lumber for name, (lumber, _) in kinds.items()}, taken, job.shop.spares) if with_spares else {}
    )
    lines = [
        _line(lumber, one, taken[name], spares.get(name, 0), currency, job.units)
        for name, (lumber, one) in kinds.items()
    ]
    plan, all_in = (sum(line[key]["cents"] for line in lines) for key in ("plan_cost", "cost"))
    return {
        "lines": lines,
        "plan_cost": money(plan, currency),
        "spares_cost": money(all_in - plan, currency),
        "cost": money(all_in, currency),
    }


def _spares(kinds: Mapping[str, Lumber], taken: Mapping[str, Sequence[str]], spares: float | None) -> dict[str, int]:
    """Spare boards by kind: the asked part of all lengths together, in the longest, which stands in for any of them.

    Rounded up to whole boards, within the supply.
    """
    found: dict[str, int] = {}
    for words in dict.fromkeys(lumber.words for lumber in kinds.values()):
        lengths = {name: lumber for name, lumber in kinds.items() if lumber.words == words}
        longest = max(lengths, key=lambda name: lengths[name].length)
        count = whole_up((spares or 0.0) * sum(len(taken[name]) for name in lengths))
        supply = lengths[longest].stock.supply
        found[longest] = count if supply is None else max(0, min(count, supply - len(taken[longest])))
    return found


def _line(lumber: Lumber, one: PlannedLot, marks: Sequence[str], spares: int, currency: str, units: Units) -> Record:
    price = lumber.stock.price_cents
    return {
        **_board(lumber, one, units),
        "kind": lumber.stock.name,
        "count": len(marks),
        "spares": spares,
        "buy": len(marks) + spares,
        "price": money(price, currency),
        "price_is_assumed": lumber.price_is_assumed,
        "plan_cost": money(price * len(marks), currency),
        "cost": money(price * (len(marks) + spares), currency),
        "marks": list(marks),
        "marks_text": runs(marks),
    }


def _board(lumber: Lumber, one: PlannedLot, units: Units) -> Record:
    material = one.lot.material
    return {
        "board": lumber.words,
        "stock": material.stock,
        "nominal": lumber.nominal,
        "is_sheet": lumber.is_sheet,
        "is_straight": lumber.is_straight,
        "thickness": size(material.thickness, units=units),
        "width": size(lumber.width, units=units),
        "length": size(lumber.length, units=units),
        "sold_as": lumber_text(lumber, units=units),
    }


def _on_hand(planned: Sequence[PlannedLot], units: Units) -> list[Record]:
    taken = _taken(planned)
    return [
        {**_board(lumber, one, units), "count": len(taken[name]), "marks": taken[name], "marks_text": runs(taken[name])}
        for name, (lumber, one) in _kinds(planned).items()
        if name in taken and lumber.stock.on_hand
    ]


def _left_over(planned: Sequence[PlannedLot], units: Units) -> list[Record]:
    counts = Counter({name: len(marks) for name, marks in _taken(planned).items()})
    return [
        {**_board(lumber, one, units), "count": (lumber.stock.supply or 0) - counts[name]}
        for name, (lumber, one) in _kinds(planned).items()
        if lumber.stock.on_hand and (lumber.stock.supply or 0) > counts[name]
    ]


def _drops(planned: Sequence[PlannedLot], shop: Shop, units: Units) -> list[Record]:
    """Return the rests worth keeping, those of one size together."""
    found: dict[tuple[object, ...], list[KeptDrop]] = {}
    for one in planned:
        for drop in kept_drops(one, shop, units):
            found.setdefault((drop.stock, drop.thickness, drop.width, drop.length, drop.edges), []).append(drop)
    return [_drop(some, units) for some in found.values()]


def _drop(drops: Sequence[KeptDrop], units: Units) -> Record:
    kept = drops[0]
    return {
        "marks": [one.mark for one in drops],
        "marks_text": runs(list(dict.fromkeys(one.mark for one in drops))),
        "count": len(drops),
        "stock": kept.stock,
        "thickness": size(kept.thickness, units=units),
        "width": size(kept.width, units=units),
        "length": size(kept.length, units=units),
        "edges": kept.edges,
    }
