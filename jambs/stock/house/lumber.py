"""Boards of a job as stock of the planner: lengths in whole steps, prices in cents, and what had to be assumed."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from jambs.job.models.on_hand import OnHand
from jambs.job.models.shop import Board, Shop
from jambs.length import FINE, MM_PER_INCH, Grid, Units
from jambs.parts.style_checks import USUAL_LEAST_STRIP
from jambs.stock.house.lumber_words import board_words, drop_name, sold_name
from jambs.stock.problem import SawSettings, Stock

USUAL_LENGTHS = {
    Units.INCH: tuple(12.0 * feet for feet in (8, 10, 12, 16)),
    Units.MM: tuple(mm / MM_PER_INCH for mm in (3000, 3600, 4200, 4800)),
}
"""Lengths boards are sold in where the job gives none [in]; common practice, no source."""
USUAL_END_TRIM = {Units.INCH: 1 / 2, Units.MM: 12 / MM_PER_INCH}
"""Cut off each end of a board [in]; common practice, no source."""
RACK = ", on hand ("
"""Stands in the name of boards that the shop has, before their number."""
CENTS_PER_SQUARE_FOOT = 100
"""Price of a face where no board of a material has one, so that plans differ by the area they take."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lumber:
    """A kind of board as the planner sees it (``stock``) and as it is (actual sizes [in]).

    ``is_straight``: nothing is lost to straighten its edges; in ``stock`` it is so much wider instead.
    """

    stock: Stock
    words: str
    nominal: str | None
    width: float
    length: float
    is_straight: bool = False
    is_sheet: bool = False
    price_is_assumed: bool = False
    lengths_are_assumed: bool = False


def printed_steps(length: float, *, grid: Grid) -> int:
    """Whole steps of 1/64 in or 0.1 mm of a length [in] as every paper prints it: for pieces, on the grid of the shop.

    A cut at an angle keeps its exact length until it is printed; a plan that rounds it its own way tells another size.
    """
    return grid.fine.count(grid.as_sawn(length))


def steps_up(length: float, *, units: Units) -> int:
    """Whole steps of 1/64 in or 0.1 mm that are not shorter than a length [in]: for losses."""
    fine = FINE[units]
    return fine.count(fine.up(length))


def steps_down(length: float, *, units: Units) -> int:
    """Whole steps of 1/64 in or 0.1 mm that are not longer than a length [in]: for boards."""
    return -steps_up(-length, units=units)


def saw_settings(shop: Shop, units: Units) -> SawSettings:
    """Return what the shop's saw takes, every loss rounded up to a whole step."""
    trim = USUAL_END_TRIM[units] if shop.end_trim is None else shop.end_trim
    least = USUAL_LEAST_STRIP[units] if shop.least_strip is None else shop.least_strip
    return SawSettings(
        crosscut_kerf=steps_up(shop.kerf, units=units),
        rip_kerf=steps_up(shop.kerf if shop.rip_kerf is None else shop.rip_kerf, units=units),
        edge_loss=steps_up(shop.edge_allowance, units=units),
        far_edge_loss=steps_up(shop.far_edge_allowance or 0.0, units=units),
        end_trim=steps_up(trim, units=units),
        least_strip=steps_up(least, units=units),
    )


def bought_lumber(boards: Iterable[Board], units: Units) -> tuple[Lumber, ...]:
    """Return boards that can be bought, one kind for each length."""
    boards = tuple(boards)
    face_price = _face_price(boards)
    return tuple(
        _bought(board, place, length, face_price, units)
        for board in boards
        for place, length in enumerate(board.lengths or USUAL_LENGTHS[units])
    )


def _bought(board: Board, place: int, length: float, face_price: float, units: Units) -> Lumber:
    words = board_words(board.nominal, board.stock, board.thickness, board.width, units=units)
    price = _price_cents(board, place, length)
    stock = Stock(
        name=sold_name(words, length, units=units),
        length=steps_down(length, units=units),
        width=steps_down(board.width, units=units),
        price_cents=round(face_price * board.width * length) if price is None else price,
        supply=board.supply,
    )
    return Lumber(
        stock=stock,
        words=words,
        nominal=board.nominal,
        width=board.width,
        length=length,
        is_sheet=board.is_sheet,
        price_is_assumed=price is None,
        lengths_are_assumed=not board.lengths,
    )


def _price_cents(board: Board, place: int, length: float) -> int | None:
    if board.prices:
        return round(100 * board.prices[place])
    return None if board.price_per_foot is None else round(100 * board.price_per_foot * length / 12)


def _face_price(boards: Sequence[Board]) -> float:
    """Cents a square inch where a board has no price: the mean of those that have one."""
    known = [
        cents / (board.width * length)
        for board in boards
        for place, length in enumerate(board.lengths)
        if (cents := _price_cents(board, place, length)) is not None
    ]
    return sum(known) / len(known) if known else CENTS_PER_SQUARE_FOOT / 144


def lumber_on_hand(boards: Iterable[OnHand], saw: SawSettings, units: Units) -> tuple[Lumber, ...]:
    """Return boards on hand; no two kinds bear one name."""
    found: list[Lumber] = []
    for board in boards:
        if board.count:
            lumber = _on_hand(board, saw, units, others=len(found))
            found.append(lumber)
    return tuple(found)


def _on_hand(board: OnHand, saw: SawSettings, units: Units, *, others: int) -> Lumber:
    words = board_words(board.nominal, board.stock, board.thickness, board.width, units=units)
    spared = saw.edge_loss + saw.far_edge_loss if board.is_straight else 0
    stock = Stock(
        name=f"{sold_name(words, board.length, units=units)}{RACK}{others + 1})",
        length=steps_down(board.length, units=units),
        width=steps_down(board.width, units=units) + spared,
        price_cents=round(100 * board.price),
        supply=board.count,
        on_hand=True,
    )
    return Lumber(
        stock=stock,
        words=words,
        nominal=board.nominal,
        width=board.width,
        length=board.length,
        is_straight=board.is_straight,
    )


def straight_drop(
    mark: str, width: float, length: float, saw: SawSettings | None, *, number: int, units: Units
) -> Lumber:
    """Return the drop of a board as stock of its own; ``saw``: where it may be ripped, as its edges are straight."""
    words = f"drop of {mark}"
    spared = saw.edge_loss + saw.far_edge_loss if saw else 0
    stock = Stock(
        name=drop_name(words, length, number, units=units),
        length=steps_down(length, units=units),
        width=steps_down(width, units=units) + spared,
        price_cents=0,
        supply=1,
        on_hand=True,
    )
    return Lumber(stock=stock, words=words, nominal=None, width=width, length=length, is_straight=saw is not None)
