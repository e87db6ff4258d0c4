"""Faults of a problem in words: where, what was found, what is allowed, what to do."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator

from jambs.stock.problem import Piece, SawSettings, Stock, StockProblem


def problem_faults(problem: StockProblem) -> tuple[str, ...]:
    """Everything that makes a problem impossible before any planning, in the order of its pieces."""
    faults = [*_saw_faults(problem.saw), *_stock_faults(problem), *_mark_faults(problem)]
    for piece in problem.pieces:
        faults += _size_faults(problem, piece) or _fit_faults(problem, piece)
    return tuple(faults)


def _saw_faults(saw: SawSettings) -> Iterator[str]:
    for name in SawSettings.__dataclass_fields__:
        if getattr(saw, name) < 0:
            yield f"saw settings: {name} is {getattr(saw, name)}, but it cannot be negative. Give 0 or more."


def _stock_faults(problem: StockProblem) -> Iterator[str]:
    if problem.pieces and not problem.stock:
        yield f"{problem.group or 'stock'}: no board is given to cut from. Add at least one with its price."
    for stock in problem.stock:
        if stock.length <= 0 or (problem.is_ripped and stock.width <= 0):
            yield f"{stock.name}: its size is {_size(stock.width, stock.length)}. Give its actual sizes."
        if stock.price_cents < 0:
            yield f"{stock.name}: its price is {stock.price_cents} cents. Give 0 or more."
        if stock.supply is not None and stock.supply < 0:
            yield f"{stock.name}: its supply is {stock.supply}. Give 0 or more, or leave it out for no limit."


def _mark_faults(problem: StockProblem) -> Iterator[str]:
    for mark, times in Counter(piece.mark for piece in problem.pieces).items():
        if times > 1:
            yield f"{mark}: {times} pieces bear this mark. Give each its own, or one piece with a count."


def _size_faults(problem: StockProblem, piece: Piece) -> list[str]:
    faults = []
    if piece.length <= 0 or piece.miter_allowance < 0 or (problem.is_ripped and piece.width <= 0):
        faults.append(f"{piece.mark}: its size is {_size(piece.width, piece.length)}. Sizes must be over 0.")
    if piece.count <= 0:
        faults.append(f"{piece.mark}: its count is {piece.count}. Give 1 or more, or leave the piece out.")
    return faults


def _fit_faults(problem: StockProblem, piece: Piece) -> list[str]:
    saw, unit = problem.saw, problem.unit
    faults = []
    if problem.is_ripped and piece.width < saw.least_strip:
        faults.append(
            f"{piece.mark}: a strip {piece.width} wide is narrower than the {saw.least_strip} (x {unit}) that the "
            f"saw holds safely. Rip it wider and plane it down, or cut it from a glued blank."
        )
    if not any(_fits(problem, piece, stock) for stock in problem.stock):
        faults.append(_no_fit(problem, piece))
    return faults


def _fits(problem: StockProblem, piece: Piece, stock: Stock) -> bool:
    is_there = stock.supply is None or stock.supply > 0
    is_wide = not problem.is_ripped or piece.width <= clear_width(problem.saw, stock)
    return is_there and is_wide and piece.sawn_length <= clear_length(problem.saw, stock)


def clear_length(saw: SawSettings, stock: Stock) -> int:
    """Length of a board between its end trims."""
    return stock.length - 2 * saw.end_trim


def clear_width(saw: SawSettings, stock: Stock) -> int:
    """Width of a board between its edge losses."""
    return stock.width - saw.edge_loss - saw.far_edge_loss


def _no_fit(problem: StockProblem, piece: Piece) -> str:
    there = [stock for stock in problem.stock if stock.supply is None or stock.supply > 0]
    longest = max((clear_length(problem.saw, stock) for stock in there), default=0)
    widest = max((clear_width(problem.saw, stock) for stock in there), default=0)
    found = _size(piece.width if problem.is_ripped else 0, piece.sawn_length)
    if piece.sawn_length > longest:
        allowed, cure = f"the longest is {longest} between trims", "Add a longer board, or join the part."
    elif problem.is_ripped and piece.width > widest:
        allowed, cure = f"the widest is {widest} between edges", "Add a wider board, or glue it up from strips."
    else:
        allowed, cure = "none is both long and wide enough", "Add one board of both sizes."
    return f"{piece.mark}: {found} (x {problem.unit}) fits no stock; {allowed}. {cure}"


def _size(width: int, length: int) -> str:
    return f"{width} wide, {length} long" if width else f"{length} long"


def shortage(marks: Iterable[str]) -> str:
    """Said when the boards given cannot yield all pieces."""
    names = ", ".join(marks)
    return (
        f"the supply runs out: not all of {names} can be cut from the boards given. "
        f"Raise the supply of a board that holds them, or add another board."
    )
