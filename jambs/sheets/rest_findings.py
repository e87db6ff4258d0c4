"""What keeps the rest of a cutting plan from being planned again after boards were spoiled."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity, Subject, SubjectKind
from jambs.job.reading.faults import advice
from jambs.length import Units

THE_PLAN = Subject(kind=SubjectKind.PLAN, name="cutting plan")


@dataclass(frozen=True, slots=True, kw_only=True)
class RestFinding(Finding):
    """A finding of what is left of the cutting plan."""

    subject: Subject = THE_PLAN
    severity: Severity = Severity.STOP


@dataclass(frozen=True, slots=True, kw_only=True)
class NamesNoBoard(RestFinding):
    """A text is no mark of a board, nor of several."""

    code: ClassVar[str] = "names-no-board"
    text: str

    def sentence(self, units: Units) -> str:
        """Say how marks are written."""
        return f"{self.text!r} names no board; write a mark like A7, or A1-A6"


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanOfAnotherVersion(RestFinding):
    """The plan was written in another form."""

    code: ClassVar[str] = "plan-of-another-version"

    def sentence(self, units: Units) -> str:
        """Say what to run."""
        return "plan.json is of another version of jambs; run jambs buy without --spoiled again"


@dataclass(frozen=True, slots=True, kw_only=True)
class PiecesChanged(RestFinding):
    """Pieces of the plan are not what the job makes of them now; their marks."""

    code: ClassVar[str] = "pieces-changed"
    marks: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Say which, and how what is left of the boards is kept."""
        return (
            f"{', '.join(self.marks)}: changed since the plan was made. Run jambs buy without --spoiled, and list what "
            "is left of the boards under shop: on_hand."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NoSuchBoard(RestFinding):
    """No board of the plan has a mark; ``known``: those it has."""

    code: ClassVar[str] = "no-such-board"
    mark: str
    known: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Say which may be meant."""
        near = advice(self.mark, self.known, otherwise="see the cutting plan")
        return f"no board of the plan has the mark {self.mark}; {near}"


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceForBoard(RestFinding):
    """A piece is named where a board is meant, or boards are written like a piece; ``boards``: what it comes out of."""

    code: ClassVar[str] = "piece-for-board"
    mark: str
    boards: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Say which board to name, and how several are written."""
        start, _, last = self.mark.partition("-")
        several = f"{start}-{start.rstrip('0123456789')}{last}"
        return (
            f"{self.mark} is a piece, cut from {', '.join(self.boards)}: name the board that is spoiled "
            f"({' or '.join(self.boards)}); boards from one to another are written {several}"
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NoSuchPiece(RestFinding):
    """No piece of the plan has a mark; ``known``: those it has."""

    code: ClassVar[str] = "no-such-piece"
    mark: str
    known: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Say which may be meant."""
        near = advice(self.mark, self.known, otherwise="see the cutting plan")
        return f"no piece of the plan has the mark {self.mark}; {near}"


@dataclass(frozen=True, slots=True, kw_only=True)
class SpoiledAndCut(RestFinding):
    """A board is named as spoiled and as cut."""

    code: ClassVar[str] = "spoiled-and-cut"
    mark: str

    def sentence(self, units: Units) -> str:
        """Say which."""
        return f"{self.mark} cannot be both spoiled and cut; name it once"
