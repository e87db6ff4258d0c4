"""Lots: what of the house is cut from one material in one way, each a problem of its own for the planner."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from jambs.job.models.openings import Job
from jambs.job.models.shop import Shop
from jambs.length import Units
from jambs.parts.kit.kit import Kit
from jambs.stock.house.head_to_tail import head_to_tail
from jambs.stock.house.house_pieces import CutPiece, house_pieces
from jambs.stock.house.lumber import Lumber, bought_lumber, lumber_on_hand, saw_settings
from jambs.stock.house.lumber_words import lot_title, step_text
from jambs.stock.house.material import SAME_SIZE, LotName, Material
from jambs.stock.house.side_by_side import side_by_side
from jambs.stock.problem import LotKind, Pair, Stock, StockProblem

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


@dataclass(frozen=True, slots=True, kw_only=True)
class Lot:
    """Pieces of one material that are cut in one way, the boards they may come from, and the problem they make.

    ``letter`` stands before the number of each of its boards: ``A7``. ``title``: its name as printed.
    ``first_number``: of its first board. ``pairs``: pieces that may lie head to tail, where that saves money.
    """

    letter: str
    title: str
    name: LotName
    pieces: tuple[CutPiece, ...]
    lumber: tuple[Lumber, ...]
    problem: StockProblem
    first_number: int = 1
    pairs: tuple[Pair, ...] = ()

    @property
    def material(self) -> Material:
        """What its parts and boards have in common."""
        return self.name.material

    def board_mark(self, number: int) -> str:
        """Mark of a board of the plan, which numbers its boards from 1."""
        return f"{self.letter}{number + self.first_number - 1}"

    def lumber_of(self, stock: Stock) -> Lumber:
        """What a kind of stock really is."""
        return next(one for one in self.lumber if one.stock == stock)

    def with_supply(self, left: Mapping[str, int]) -> Lot:
        """The lot when of some kinds, by name, only so many are left."""
        lumber = tuple(
            replace(one, stock=replace(one.stock, supply=left[one.stock.name])) if one.stock.name in left else one
            for one in self.lumber
        )
        problem = replace(self.problem, stock=tuple(one.stock for one in lumber))
        return replace(self, lumber=lumber, problem=problem)


def house_lots(kits: Iterable[Kit], job: Job) -> tuple[Lot, ...]:
    """Return all wooden parts of a house in lots; within a material first what is crosscut only."""
    pieces = house_pieces(kits, job)
    lots = [lot for material in materials(pieces) for lot in _material_lots(material, pieces, job)]
    return tuple(replace(lot, letter=lot_letter(place)) for place, lot in enumerate(lots))


def lot_letter(place: int) -> str:
    """Letter of a lot: A to Z, then AA."""
    turn, rest = divmod(place, len(LETTERS))
    return (LETTERS[turn - 1] if turn else "") + LETTERS[rest]


def materials(pieces: Iterable[CutPiece]) -> tuple[Material, ...]:
    """Return the materials of some pieces, by stock and thickness."""
    found: list[Material] = []
    for one in pieces:
        if not any(known.holds(one.part.stock, one.part.blank.thickness) for known in found):
            found.append(Material(stock=one.part.stock, thickness=one.part.blank.thickness))
    return tuple(sorted(found, key=lambda one: (one.stock, one.thickness)))


def _material_lots(material: Material, pieces: Sequence[CutPiece], job: Job) -> Iterator[Lot]:
    mine = [one for one in pieces if material.holds(one.part.stock, one.part.blank.thickness)]
    boards = bought_lumber((one for one in job.boards if material.holds(one.stock, one.thickness)), job.units)
    own = lumber_on_hand(
        (one for one in job.on_hand if material.holds(one.stock, one.thickness)),
        saw_settings(job.shop, job.units),
        job.units,
    )
    widths = sorted({one.width for one in boards if not one.is_sheet}, reverse=True)
    whole = {width: [one for one in mine if _is_as_wide(one.width, width)] for width in widths}
    whole = {width: some for width, some in whole.items() if some}
    for width, some in whole.items():
        lumber = [one for one in (*own, *boards) if _is_as_wide(one.width, width)]
        yield _lot(LotKind.LENGTHS, material, some, lumber, job.shop, job.units)
    ripped = [one for one in mine if not any(one in some for some in whole.values())]
    if ripped:
        kept = [one for one in own if not any(_is_as_wide(one.width, width) for width in whole)]
        lumber = [*kept, *boards]
        kind = LotKind.SHEETS if _are_sheets(boards) else LotKind.BOARDS
        yield _lot(kind, material, ripped, lumber, job.shop, job.units)


def _is_as_wide(one: float, other: float) -> bool:
    return abs(one - other) < SAME_SIZE


def _are_sheets(boards: Sequence[Lumber]) -> bool:
    return bool(boards) and all(one.is_sheet for one in boards)


def _lot(
    kind: LotKind, material: Material, pieces: Sequence[CutPiece], lumber: Sequence[Lumber], shop: Shop, units: Units
) -> Lot:
    name = _name(kind, material, lumber)
    title = lot_title(name, units)
    problem = StockProblem(
        kind=kind,
        pieces=tuple(one.piece for one in pieces),
        stock=tuple(one.stock for one in lumber),
        saw=saw_settings(shop, units),
        group=title,
        unit=step_text(units),
    )
    return Lot(
        letter="",
        title=title,
        name=name,
        pieces=tuple(pieces),
        lumber=tuple(lumber),
        problem=problem,
        pairs=(*head_to_tail(problem, shop, units), *side_by_side(problem, shop, units)) if shop.head_to_tail else (),
    )


def _name(kind: LotKind, material: Material, lumber: Sequence[Lumber]) -> LotName:
    if kind is not LotKind.LENGTHS:
        return LotName(kind=kind, material=material)
    bought = next(one for one in lumber if not one.stock.on_hand)
    return LotName(kind=kind, material=material, nominal=bought.nominal, width=bought.width)
