"""Which pieces lie head to tail: flat ones of a width, whose slanted ends are one cut when one is turned end for end.

Only mitered pieces of flat stock take part, cut square through the thickness and to their planned width: a molded
piece cannot be turned, a compound end is another one when it is, and what is ripped narrower moves its long point.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import combinations

from jambs.job.models.shop import Shop
from jambs.length import Units
from jambs.outlines import rectangle
from jambs.parts.board.cuts import Crosscut, Edge, End, EndBevel, Miter, Rip, end_of
from jambs.parts.board.end_slants import end_slants
from jambs.parts.board.part import Part
from jambs.parts.shapes.shape_checks import MOST_MITER_DEG
from jambs.stock.faults import clear_length, kerf_along, share_a_cut
from jambs.stock.house.lumber import steps_down
from jambs.stock.plan import StockPlan
from jambs.stock.problem import LotKind, Pair, Piece, StockFault, StockProblem

MOST_PLANS = 5
"""Of one lot: its pieces apart, three rounds of pairs, and all in pairs."""
Strips = Mapping[str, tuple[int, int]]
"""Board and strip of every piece, by its mark."""
TURNS = ((False, True), (True, False), (False, False))
"""Which of two pieces is turned end for end; both turned are the same pair seen from its other end."""


def slants_of(part: Part, units: Units) -> tuple[int, int]:
    """Whole steps that the short edge stands in from the long point at both ends, as `Piece.slants`; 0 where square.

    Never more than it is, so that no kerf is taken for granted that is not there. An end that is steeper than a miter
    saw turns counts as square: it is cut in a jig, by itself.
    """
    if not _is_flat(part):
        return (0, 0)
    slants = end_slants(part)
    steep = {end_of(cut) for cut in part.cuts if isinstance(cut, Miter) and cut.angle_deg > MOST_MITER_DEG}
    runs = {end: slants[end][Edge.FAR] - slants[end][Edge.NEAR] for end in End if end not in steep}
    start, finish = (_steps(runs.get(end, 0.0), units) for end in (End.START, End.FINISH))
    return (start, finish)


def _steps(run: float, units: Units) -> int:
    return steps_down(run, units=units) if run >= 0 else -steps_down(-run, units=units)


def _is_flat(part: Part) -> bool:
    """Say whether a part is a plain board: ripped, crosscut, and with no other cut than one at an end."""
    ends = [end_of(cut) for cut in part.cuts if not isinstance(cut, Rip | Crosscut)]
    are_plain = all(isinstance(cut, Rip | Crosscut | Miter | EndBevel) for cut in part.cuts)
    return are_plain and len(ends) == len(set(ends)) and part.profile == rectangle(part.width, part.thickness)


def head_to_tail(problem: StockProblem, shop: Shop, units: Units) -> tuple[Pair, ...]:
    """Return every pair of pieces that may lie head to tail, the longest first; none on sheets, whose parts are routed.

    Each pair saves a kerf at least, and fits a board.
    """
    if problem.kind is LotKind.SHEETS:
        return ()
    longest = max((clear_length(problem.saw, stock) for stock in problem.stock if stock.supply != 0), default=0)
    slanted = sorted((one for one in problem.pieces if any(one.slants)), key=lambda one: (-one.width, -one.length))
    found = ((one, other, _pair(one, other, problem, shop, units)) for one, other in combinations(slanted, 2))
    return tuple(pair for one, other, pair in found if pair and _length(pair, one, other) <= longest)


def _length(pair: Pair, piece: Piece, other: Piece) -> int:
    """Length that a pair takes of a strip, without the square kerf."""
    first, second = (piece, other) if pair.first == piece.mark else (other, piece)
    return first.length - pair.lap + second.sawn_length


def _pair(piece: Piece, other: Piece, problem: StockProblem, shop: Shop, units: Units) -> Pair | None:
    """Lay a piece to another, so that their lap is most; the one with the steeper ends last, where its kerf counts."""
    first, second = sorted((piece, other), key=lambda one: one.miter_allowance)
    kerf, found = problem.saw.crosscut_kerf, list(_laid(first, second, problem, shop, units))
    best = max(found, key=lambda pair: pair.lap, default=None)
    apart = piece.sawn_length + kerf + other.sawn_length
    return best if best and apart - _length(best, piece, other) >= max(1, kerf) else None


def _laid(first: Piece, second: Piece, problem: StockProblem, shop: Shop, units: Units) -> Iterator[Pair]:
    kerf = problem.saw.crosscut_kerf
    for is_first, is_second in TURNS:
        run = first.laid(is_turned=is_first)[1]
        room = abs(run) - kerf_along(first.width, run, kerf)
        lap = _on_grid(room, shop, units)
        pair = Pair(first=first.mark, second=second.mark, lap=lap, is_first_turned=is_first, is_second_turned=is_second)
        if share_a_cut(first, second, pair, kerf):
            yield pair


def _on_grid(steps: int, shop: Shop, units: Units) -> int:
    """Down to the shop's grid, so that running lengths can be read off a tape."""
    return steps_down(shop.grid.down(shop.grid.fine.at(steps)), units=units)


def laid_best(problem: StockProblem, pairs: Sequence[Pair], plan: Callable[[StockProblem], StockPlan]) -> StockPlan:
    """Plan a problem with its pieces apart and with some in pairs, which are kept where they save money or a board.

    Paired are pieces that lie in one strip of the plan before, round by round: that plan stays possible, and what its
    strips save may let a shorter board do; at last all pieces, the longest first.

    Raises:
        StockFault: nothing can be cut; told of the pieces apart.
        KeyboardInterrupt: interrupted before there was any plan.
    """
    plans: list[StockPlan] = []
    faults: list[StockFault] = []
    for turn in range(MOST_PLANS if pairs else 1):
        is_last = turn == MOST_PLANS - 1
        some = chosen(pairs) if is_last else chosen(pairs, _beside(plans[-1]) if plans else {})
        if any(some == one.problem.pairs for one in plans):
            continue
        try:
            plans.append(plan(replace(problem, pairs=some)))
        except StockFault as fault:
            faults.append(fault)
        except KeyboardInterrupt:
            if not plans:
                raise
            return replace(_cheapest(plans), is_interrupted=True)
        if plans and plans[-1].is_interrupted:
            break
    if not plans:
        raise faults[0]
    return _cheapest(plans)


def _cheapest(plans: Sequence[StockPlan]) -> StockPlan:
    """The first of the plans that cost least and take the fewest boards."""
    return min(plans, key=lambda plan: (plan.cost_cents, len(plan.boards)))


def _beside(plan: StockPlan) -> Strips:
    """Board and strip of every piece."""
    return {
        piece.mark: (board.number, number)
        for board in plan.boards
        for number, strip in enumerate(board.strips)
        for piece in strip.pieces
    }


def chosen(pairs: Sequence[Pair], strip_of: Strips | None = None) -> tuple[Pair, ...]:
    """Return pairs that have no piece in common, in their order; where strips are given of pieces in one only."""
    taken: set[str] = set()
    found: list[Pair] = []
    for pair in pairs:
        is_free = pair.first not in taken and pair.second not in taken
        if is_free and (strip_of is None or _lie_together(pair, strip_of)):
            found.append(pair)
            taken |= {pair.first, pair.second}
    return tuple(found)


def _lie_together(pair: Pair, strip_of: Strips) -> bool:
    return pair.first in strip_of and strip_of[pair.first] == strip_of.get(pair.second)
