"""What keeps a lot from being cut: mark, what was found, what is allowed, the cure; one class for each."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import Units
from jambs.stock.house.lumber_words import lot_title
from jambs.stock.house.material import LotName


@dataclass(frozen=True, slots=True, kw_only=True)
class LotFault(Finding):
    """Pieces that cannot be cut, by their marks; the subject is their stock."""

    severity: Severity = Severity.STOP
    marks: tuple[str, ...] = ()

    def of_pieces(self, text: str) -> str:
        """Say which pieces."""
        return f"{', '.join(self.marks)}: {text}"


@dataclass(frozen=True, slots=True, kw_only=True)
class NoBoardListed(LotFault):
    """No board of a stock and thickness [in] is listed."""

    code: ClassVar[str] = "no-board-listed"
    thickness: float

    def sentence(self, units: Units) -> str:
        """Say what to list."""
        stock, thickness = self.subject.name, units.text(self.thickness)
        return self.of_pieces(
            f"no board of {stock} {thickness} thick is listed. Add one under shop: boards, "
            f"like {{stock: {stock}, thickness: {thickness.strip(chr(34))}, width: …, lengths: […]}}."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class StripTooNarrow(LotFault):
    """A strip is narrower than the saw holds safely [in]."""

    code: ClassVar[str] = "strip-too-narrow"
    width: float
    least: float

    def sentence(self, units: Units) -> str:
        """Say both ways out."""
        return self.of_pieces(
            f"a strip {units.text(self.width)} wide is narrower than the {units.text(self.least)} that the saw holds "
            "safely. Rip it wider and plane it down, or give a smaller least_strip under shop."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceTooLong(LotFault):
    """A piece is longer than any board between its end trims [in]."""

    code: ClassVar[str] = "piece-too-long"
    lot: LotName
    length: float
    longest: float

    def sentence(self, units: Units) -> str:
        """Say what the longest board holds."""
        return self.of_pieces(
            f"{units.text(self.length)} long fits no board of {lot_title(self.lot, units)}; the longest is "
            f"{units.text(self.longest)} between its end trims. List a longer board."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceTooWide(LotFault):
    """A piece is wider than any board with a straight edge [in]; ``allowance``: left on it as its depth is planned."""

    code: ClassVar[str] = "piece-too-wide"
    lot: LotName
    width: float
    widest: float
    allowance: float

    def sentence(self, units: Units) -> str:
        """Say what the widest board holds, and what is left on."""
        left, out = "", "List a wider board"
        if self.allowance:
            left = f", with {units.text(self.allowance)} left on as the depth is planned"
            out += ", or measure the opening"
        return self.of_pieces(
            f"{units.text(self.width)} wide fits no board of {lot_title(self.lot, units)}{left}; the widest is "
            f"{units.text(self.widest)} once an edge is straight. {out}."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceFitsNone(LotFault):
    """A piece [in] that some board is long enough for and another is wide enough for, and none is both."""

    code: ClassVar[str] = "piece-fits-none"
    lot: LotName
    width: float
    length: float

    def sentence(self, units: Units) -> str:
        """Say its size."""
        return self.of_pieces(
            f"{units.text(self.width)} × {units.text(self.length)} fits no board of {lot_title(self.lot, units)}; "
            "none is both long and wide enough. List one board that is both."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class LotNotPlanned(Finding):
    """A lot that cannot be planned; ``why``: what its problem lacks."""

    code: ClassVar[str] = "lot-not-planned"
    severity: Severity = Severity.STOP
    lot: LotName
    why: Finding

    def sentence(self, units: Units) -> str:
        """Say which lot, and why."""
        return f"{lot_title(self.lot, units)}: {self.why.sentence(units)}"
