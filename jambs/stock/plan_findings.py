"""What is wrong with a plan of cuts that was found or read: a fault of the plan, not of what was asked for.

Sizes are whole numbers of the problem's own unit, as the plan has them, and run from one end or edge of a board.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import Units


@dataclass(frozen=True, slots=True, kw_only=True)
class OnBoard:
    """Where on a plan: a board by its number, a strip of it by its number, or the way across its strips."""

    board: int
    strip: int | None = None
    is_across: bool = False

    @property
    def words(self) -> str:
        """``board 2``, ``board 2, strip 1``, ``board 2, across``."""
        further = ", across" if self.is_across else "" if self.strip is None else f", strip {self.strip}"
        return f"board {self.board}{further}"


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanFinding(Finding):
    """A plan that does not add up and must not be sawn; the subject is the stock."""

    severity: Severity = Severity.STOP


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardFinding(PlanFinding):
    """A fault on one board."""

    where: OnBoard


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardNotGiven(BoardFinding):
    """A board is of no stock of the problem."""

    code: ClassVar[str] = "board-not-given"
    name: str

    def sentence(self, units: Units) -> str:
        """Say what it is called."""
        return f"{self.where.words}: {self.name} is not among the stock given."


@dataclass(frozen=True, slots=True, kw_only=True)
class NothingCut(BoardFinding):
    """Nothing is cut from a board, or from a strip of it."""

    code: ClassVar[str] = "nothing-cut"

    def sentence(self, units: Units) -> str:
        """Say which."""
        return f"{self.where.words}: nothing is cut from it."


@dataclass(frozen=True, slots=True, kw_only=True)
class LengthRipped(BoardFinding):
    """A length that is only crosscut has more than one strip."""

    code: ClassVar[str] = "length-ripped"
    count: int

    def sentence(self, units: Units) -> str:
        """Say how many."""
        return f"{self.where.words}: {self.count} strips on a length that is only crosscut."


@dataclass(frozen=True, slots=True, kw_only=True)
class StripUnderSafe(BoardFinding):
    """A strip is narrower than the saw holds safely."""

    code: ClassVar[str] = "strip-under-safe"
    width: int
    least: int

    def sentence(self, units: Units) -> str:
        """Say both widths."""
        return f"{self.where.words}: a strip {self.width} wide is under the safe {self.least}."


@dataclass(frozen=True, slots=True, kw_only=True)
class OutsideTrims(BoardFinding):
    """A piece or a strip reaches into what is trimmed off: ``start`` → ``end``, and ``first`` → ``last`` is left."""

    code: ClassVar[str] = "outside-trims"
    name: str
    start: int
    end: int
    first: int
    last: int

    def sentence(self, units: Units) -> str:
        """Say from where to where, and what is left."""
        return f"{self.where.words}: {self.name} at {self.start} to {self.end} is outside {self.first} to {self.last}."


@dataclass(frozen=True, slots=True, kw_only=True)
class KerfLost(BoardFinding):
    """Less than a kerf lies between two pieces or strips."""

    code: ClassVar[str] = "kerf-lost"
    between: int
    name: str
    following: str
    kerf: int

    def sentence(self, units: Units) -> str:
        """Say between which, and the kerf."""
        gap = f"{self.between} between {self.name} and {self.following}"
        return f"{self.where.words}: {gap}, but the kerf is {self.kerf}."


@dataclass(frozen=True, slots=True, kw_only=True)
class SlantsApart(BoardFinding):
    """Two pieces lie head to tail, and no one cut is the end of both; ``finish``, ``start``: slant, and width."""

    code: ClassVar[str] = "slants-apart"
    first: str
    second: str
    finish: tuple[int, int]
    start: tuple[int, int]

    def sentence(self, units: Units) -> str:
        """Say how the two ends lie."""
        (run, width), (other_run, other_width) = self.finish, self.start
        return (
            f"{self.where.words}: {self.first} and {self.second} lie head to tail, but the first ends {run} in {width} "
            f"off square and the second begins {other_run} in {other_width}: no one cut parts them."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceNotGiven(BoardFinding):
    """A piece on a strip is none of the problem."""

    code: ClassVar[str] = "piece-not-given"
    mark: str

    def sentence(self, units: Units) -> str:
        """Say which."""
        return f"{self.where.words}: {self.mark} is not among the pieces."


@dataclass(frozen=True, slots=True, kw_only=True)
class CutToAnotherLength(BoardFinding):
    """A piece is not cut to its sawn length."""

    code: ClassVar[str] = "cut-to-another-length"
    mark: str
    cut: int
    wanted: int

    def sentence(self, units: Units) -> str:
        """Say both lengths."""
        return f"{self.where.words}: {self.mark} is cut {self.cut} long, not {self.wanted}."


@dataclass(frozen=True, slots=True, kw_only=True)
class StripOfAnotherWidth(BoardFinding):
    """A piece lies on a strip that is not as wide as it is."""

    code: ClassVar[str] = "strip-of-another-width"
    mark: str
    width: int
    strip_width: int

    def sentence(self, units: Units) -> str:
        """Say both widths."""
        return f"{self.where.words}: {self.mark} is {self.width} wide, but the strip {self.strip_width}."


@dataclass(frozen=True, slots=True, kw_only=True)
class CutAnotherNumber(PlanFinding):
    """A piece is cut too often, or not often enough."""

    code: ClassVar[str] = "cut-another-number"
    mark: str
    cut: int
    wanted: int

    def sentence(self, units: Units) -> str:
        """Say both counts."""
        return f"{self.mark}: cut {self.cut} times, but {self.wanted} are wanted."


@dataclass(frozen=True, slots=True, kw_only=True)
class SupplyPassed(PlanFinding):
    """More boards are taken than there are."""

    code: ClassVar[str] = "supply-passed"
    name: str
    taken: int
    supply: int

    def sentence(self, units: Units) -> str:
        """Say both counts."""
        return f"{self.name}: {self.taken} boards are taken, but there are only {self.supply}."


@dataclass(frozen=True, slots=True, kw_only=True)
class NumbersAskew(PlanFinding):
    """Boards are not numbered in the order that they are cut, from 1 on."""

    code: ClassVar[str] = "numbers-askew"
    numbers: tuple[int, ...]

    def sentence(self, units: Units) -> str:
        """Say how they are."""
        return f"boards are numbered {', '.join(map(str, self.numbers))}, not from 1 on."


@dataclass(frozen=True, slots=True, kw_only=True)
class BoundOverCost(PlanFinding):
    """The bound says that no plan can be as cheap as this one is [cents]."""

    code: ClassVar[str] = "bound-over-cost"
    bound: int
    cost: int

    def sentence(self, units: Units) -> str:
        """Say both."""
        return f"the bound {self.bound} is over the cost {self.cost}: one of them is wrong."
