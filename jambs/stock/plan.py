"""A plan of cuts: boards, strips, pieces with their running positions, and the bound on its cost."""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass

from jambs.stock.problem import LotKind, Pair, Stock, StockProblem


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedPiece:
    """One piece on a strip; `start` and `end` are measured from one end of the board, as sawn."""

    mark: str
    start: int
    end: int


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedStrip:
    """One strip; `start` is measured across the board from its straightened side (rough edge = 0)."""

    start: int
    width: int
    pieces: tuple[PlacedPiece, ...]

    @property
    def lengths(self) -> tuple[int, ...]:
        """Sawn lengths along the strip."""
        return tuple(piece.end - piece.start for piece in self.pieces)


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedBoard:
    """One board with its strips; boards are numbered from 1 in the order they are cut."""

    number: int
    stock: Stock
    strips: tuple[PlannedStrip, ...]

    @property
    def rip_pattern(self) -> tuple[str, tuple[int, ...]]:
        """Stock name and strip widths: boards alike in this are ripped alike."""
        return self.stock.name, tuple(strip.width for strip in self.strips)


@dataclass(frozen=True, slots=True, kw_only=True)
class Bound:
    """What no plan of this kind can cost less than.

    `certified_cents` follows from `prices` (steps of a millionth of a cent, by strip width and sawn length)
    and can be checked with whole numbers alone; `solver_cents` trusts the solver's floating point.
    """

    certified_cents: int
    solver_cents: int
    prices: Mapping[tuple[int, int], int]

    @property
    def best_cents(self) -> int:
        """The better of the two."""
        return max(self.certified_cents, self.solver_cents)


@dataclass(frozen=True, slots=True, kw_only=True)
class StockPlan:
    """A verified plan and its bound."""

    problem: StockProblem
    boards: tuple[PlannedBoard, ...]
    bound: Bound
    is_interrupted: bool = False

    @property
    def cost_cents(self) -> int:
        """Cost of all boards."""
        return sum(board.stock.price_cents for board in self.boards)

    @property
    def is_optimal(self) -> bool:
        """Whether cost and bound meet."""
        return self.cost_cents <= self.bound.best_cents

    @property
    def gap(self) -> float:
        """Part of the cost that is at most left to save."""
        return (self.cost_cents - self.bound.best_cents) / max(1, self.cost_cents)

    @property
    def rip_patterns(self) -> int:
        """Number of different ways boards are ripped.

        A board that is ripped like another of its stock but for some strips left out counts with it.
        """
        return count_patterns({board.rip_pattern for board in self.boards})

    @property
    def _scope(self) -> str:
        return _SCOPE[self.problem.kind] + pairs_words(self.problem.pairs)

    @property
    def statement(self) -> str:
        """The cost and its bounds in words, with the kind of plan they hold for."""
        certified, best = self.bound.certified_cents, self.bound.best_cents
        lines = [
            f"Plan: {len(self.boards)} boards, {dollars(self.cost_cents)}.",
            f"No plan of this kind ({self._scope}, these prices, kerfs and trims) can cost less "
            f"than {dollars(certified)} (certificate in the file, checked with whole numbers), so at most "
            f"{_percent(self.cost_cents - certified, self.cost_cents)} is left.",
        ]
        if best > certified:
            lines.append(
                f"Solver-proved bound {dollars(best)} ({_percent(self.cost_cents - best, self.cost_cents)} left)."
            )
        if self.is_optimal:
            lines.append("Proven optimal for this kind of plan.")
        return "\n".join(lines)


def count_patterns(patterns: Iterable[tuple[Hashable, tuple[int, ...]]]) -> int:
    """Patterns (stock, strip widths) that are not part of another one of the same stock."""
    different = set(patterns)
    return sum(not any(_is_part(one, other) for other in different) for one in different)


def _is_part(one: tuple[Hashable, tuple[int, ...]], other: tuple[Hashable, tuple[int, ...]]) -> bool:
    return one != other and one[0] == other[0] and not Counter(one[1]) - Counter(other[1])


def pairs_words(pairs: Sequence[Pair]) -> str:
    """Go on with the kind of plan where pieces may lie in pairs: head to tail, side by side, or both."""
    slants = "like slants head to tail" if any(not pair.across for pair in pairs) else ""
    tapers = "tapered boards side by side" if any(pair.across for pair in pairs) else ""
    said = " and ".join(filter(None, (slants, tapers)))
    return f", {said} in these pairs" if said else ""


_SCOPE = {
    LotKind.LENGTHS: "crosscut only",
    LotKind.BOARDS: "rip first, strip as wide as its piece",
    LotKind.SHEETS: "rip along the grain first, strip as wide as its piece",
}


def dollars(cents: int) -> str:
    """Cents as dollars."""
    return f"${cents // 100:,}.{cents % 100:02d}"


def _percent(part: int, whole: int) -> str:
    return f"{100 * part / max(1, whole):.2f} %"
