"""What makes a problem of the cutting plan impossible: where, what was found, what is allowed, what to do.

Sizes are whole numbers of the problem's own unit, as it has them: ``unit`` says which.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import Units


def _size(width: int, length: int) -> str:
    return f"{width} wide, {length} long" if width else f"{length} long"


@dataclass(frozen=True, slots=True, kw_only=True)
class ProblemFinding(Finding):
    """A finding of what is to be cut and what from; the subject is the stock."""

    severity: Severity = Severity.STOP


@dataclass(frozen=True, slots=True, kw_only=True)
class SawSettingNegative(ProblemFinding):
    """A setting of the saw is below zero."""

    code: ClassVar[str] = "saw-setting-negative"
    setting: str
    value: int

    def sentence(self, units: Units) -> str:
        """Say which."""
        return f"saw settings: {self.setting} is {self.value}, but it cannot be negative. Give 0 or more."


@dataclass(frozen=True, slots=True, kw_only=True)
class NothingToCutFrom(ProblemFinding):
    """There are pieces and no board."""

    code: ClassVar[str] = "nothing-to-cut-from"

    def sentence(self, units: Units) -> str:
        """Say of which stock."""
        return f"{self.subject.name}: no board is given to cut from. Add at least one with its price."


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardWithoutSize(ProblemFinding):
    """A size of a board is not over zero."""

    code: ClassVar[str] = "board-without-size"
    board: str
    width: int
    length: int

    def sentence(self, units: Units) -> str:
        """Say what it is."""
        return f"{self.board}: its size is {_size(self.width, self.length)}. Give its actual sizes."


@dataclass(frozen=True, slots=True, kw_only=True)
class PriceNegative(ProblemFinding):
    """The price of a board [cents] is below zero."""

    code: ClassVar[str] = "price-negative"
    board: str
    price: int

    def sentence(self, units: Units) -> str:
        """Say what it is."""
        return f"{self.board}: its price is {self.price} cents. Give 0 or more."


@dataclass(frozen=True, slots=True, kw_only=True)
class SupplyNegative(ProblemFinding):
    """The supply of a board is below zero."""

    code: ClassVar[str] = "supply-negative"
    board: str
    supply: int

    def sentence(self, units: Units) -> str:
        """Say what it is."""
        return f"{self.board}: its supply is {self.supply}. Give 0 or more, or leave it out for no limit."


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkTwice(ProblemFinding):
    """Several pieces bear one mark."""

    code: ClassVar[str] = "mark-twice"
    mark: str
    times: int

    def sentence(self, units: Units) -> str:
        """Say how many."""
        return f"{self.mark}: {self.times} pieces bear this mark. Give each its own, or one piece with a count."


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceWithoutSize(ProblemFinding):
    """A size of a piece is not over zero."""

    code: ClassVar[str] = "piece-without-size"
    mark: str
    width: int
    length: int

    def sentence(self, units: Units) -> str:
        """Say what it is."""
        return f"{self.mark}: its size is {_size(self.width, self.length)}. Sizes must be over 0."


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceNotCounted(ProblemFinding):
    """The count of a piece is not over zero."""

    code: ClassVar[str] = "piece-not-counted"
    mark: str
    count: int

    def sentence(self, units: Units) -> str:
        """Say what it is."""
        return f"{self.mark}: its count is {self.count}. Give 1 or more, or leave the piece out."


@dataclass(frozen=True, slots=True, kw_only=True)
class StripUnderLeast(ProblemFinding):
    """A strip is narrower than the saw holds safely."""

    code: ClassVar[str] = "strip-under-least"
    mark: str
    width: int
    least: int
    unit: str

    def sentence(self, units: Units) -> str:
        """Say both ways out."""
        return (
            f"{self.mark}: a strip {self.width} wide is narrower than the {self.least} (x {self.unit}) that the saw "
            "holds safely. Rip it wider and plane it down, or cut it from a glued blank."
        )


class Lacking(Enum):
    """What keeps a piece from fitting any board."""

    LENGTH = "length"
    WIDTH = "width"
    BOTH = "both"


@dataclass(frozen=True, slots=True, kw_only=True)
class FitsNoStock(ProblemFinding):
    """A piece fits no board; ``longest`` and ``widest`` that some board has between its trims and edges."""

    code: ClassVar[str] = "fits-no-stock"
    mark: str
    width: int
    length: int
    unit: str
    lacking: Lacking
    longest: int
    widest: int

    def sentence(self, units: Units) -> str:
        """Say what is allowed, and what to add."""
        allowed, cure = {
            Lacking.LENGTH: (f"the longest is {self.longest} between trims", "Add a longer board, or join the part."),
            Lacking.WIDTH: (
                f"the widest is {self.widest} between edges",
                "Add a wider board, or glue it up from strips.",
            ),
            Lacking.BOTH: ("none is both long and wide enough", "Add one board of both sizes."),
        }[self.lacking]
        return f"{self.mark}: {_size(self.width, self.length)} (x {self.unit}) fits no stock; {allowed}. {cure}"


class NoPair(Enum):
    """What keeps two pieces from lying head to tail."""

    NOT_SINGLE = "each must be a piece of the problem, wanted once and in one pair only"
    UNLIKE = "their widths and slants must be alike, with a kerf between them"
    TAPERS = "both must taper and be of one length, and their strip hold both and a kerf and come out of some board"
    TOO_LONG = "both together are longer than any board between its trims"


@dataclass(frozen=True, slots=True, kw_only=True)
class NotHeadToTail(ProblemFinding):
    """Two pieces of the problem cannot lie head to tail."""

    code: ClassVar[str] = "not-head-to-tail"
    first: str
    second: str
    why: NoPair

    def sentence(self, units: Units) -> str:
        """Say why, and what to do."""
        return f"{self.first} and {self.second} cannot lie head to tail: {self.why.value}. Leave the pair out."


@dataclass(frozen=True, slots=True, kw_only=True)
class SupplyRunsOut(ProblemFinding):
    """The boards given cannot yield all pieces; ``marks``: those that are left."""

    code: ClassVar[str] = "supply-runs-out"
    marks: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Say what to add."""
        return (
            f"the supply runs out: not all of {', '.join(self.marks)} can be cut from the boards given. "
            "Raise the supply of a board that holds them, or add another board."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NoPlanFound(ProblemFinding):
    """No plan was found within the limits of the search."""

    code: ClassVar[str] = "no-plan-found"

    def sentence(self, units: Units) -> str:
        """Say what to give."""
        return (
            "no plan was found within the limits: the boards given are barely enough, or too few. "
            "Add one more board of a size that holds the longest pieces, or give more seconds."
        )
