"""What an opening runs into: a neighbor, a corner, the floor, the ceiling, the eave; one class for each."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import ClassVar

from jambs.findings import Finding, Severity, SubjectKind
from jambs.length import Units
from jambs.parts.board.kinds import PartKind, Where, position_words
from jambs.sides import BoardEnd, Side


class Hole(StrEnum):
    """What stands in the wall and can have only one place in it."""

    FRAME = "frame"
    ROUGH_OPENING = "hole in the framing"


@dataclass(frozen=True, slots=True, kw_only=True)
class TrimPiece:
    """A board by its kind, its side and its set."""

    kind: PartKind
    side: Side
    where: Where

    @property
    def words(self) -> str:
        """The board in trade words: ``left leg of the interior casing``, ``stool``."""
        if self.kind.says_side:
            return self.kind.words
        words = f"{self.where.value} {self.kind.words}" if self.kind is PartKind.CASING else self.kind.words
        return f"{position_words(self.kind, self.side)} of the {words}"


@dataclass(frozen=True, slots=True, kw_only=True)
class HolesOverlap(Finding):
    """Frames of two openings, or their holes in the framing, lie over each other, across and up [in]."""

    code: ClassVar[str] = "holes-overlap"
    severity: Severity = Severity.STOP
    hole: Hole
    neighbor: str
    across: float
    up: float

    def sentence(self, units: Units) -> str:
        """Say by how much, and what to do."""
        cure = (
            "correct from_left or the heights"
            if self.hole is Hole.FRAME
            else "leave room for studs between them, or enter units that are joined as one opening"
        )
        return (
            f"The {self.hole.value} of {self.subject.name} and that of {self.neighbor} overlap by "
            f"{units.text(self.across)} across and {units.text(self.up)} in height; {cure}."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class TrimMeetsNeighbor(Finding):
    """A board of an opening lies over a board or the frame (None) of a neighbor, across and up [in]."""

    code: ClassVar[str] = "trim-meets-neighbor"
    severity: Severity = Severity.STOP
    neighbor: str
    own: TrimPiece
    other: TrimPiece | None
    across: float
    up: float

    def sentence(self, units: Units) -> str:
        """Name both, and say by how much."""
        other = self.other.words if self.other else "frame"
        return (
            f"The {self.own.words} runs into the {other} of {self.neighbor}: they overlap by "
            f"{units.text(self.across)} across and {units.text(self.up)} in height; move an opening, or make the trim "
            "narrower."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class StandsOtherwiseApart(Finding):
    """``from_left`` of two openings that are trimmed as one leaves another length between their frames than the wall
    that the job gives: ``told`` and ``made`` [in].
    """

    code: ClassVar[str] = "stands-otherwise-apart"
    severity: Severity = Severity.STOP
    neighbor: str
    told: float
    made: float

    def sentence(self, units: Units) -> str:
        """Say both lengths, and what to correct."""
        apart = f"{units.text(self.told)} apart" if self.told >= 0 else "in another order, or over each other"
        return (
            f"By from_left the frames of {self.subject.name} and {self.neighbor} stand {apart}, and with the wall "
            f"between them they stand {units.text(self.made)} apart, {self.subject.name} at the right of "
            f"{self.neighbor} as seen from inside: correct from_left, which is from the left corner seen from outside, "
            "or the wall of trim_with."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class PastEndOfWall(Finding):
    """The frame or the hole in the framing ends past a corner of the wall, left or right seen from outside [in]."""

    code: ClassVar[str] = "past-end-of-wall"
    severity: Severity = Severity.STOP
    hole: Hole
    end: BoardEnd
    past: float
    width: float | None

    def sentence(self, units: Units) -> str:
        """Say by how much, and how wide the wall is."""
        wide = f", {units.text(self.width)} wide" if self.width is not None else ""
        return (
            f"The {self.hole.value} ends {units.text(self.past)} past the {self.end.words} end of the wall, seen from "
            f"outside{wide}; correct from_left or the width."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class TrimPastCorner(Finding):
    """An exterior board ends past a corner of the wall, left or right seen from outside [in]."""

    code: ClassVar[str] = "trim-past-corner"
    severity: Severity = Severity.STOP
    piece: TrimPiece
    end: BoardEnd
    past: float

    def sentence(self, units: Units) -> str:
        """Say by how much."""
        return (
            f"The {self.piece.words} ends {units.text(self.past)} past the {self.end.words} corner of the wall, seen "
            "from outside; move the opening, or make the trim narrower."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class TrimInCorner(Finding):
    """An interior board runs into the wall beyond a corner, left or right seen from inside [in].

    ``thickness``: of that wall, taken to be as thick as this one.
    """

    code: ClassVar[str] = "trim-in-corner"
    severity: Severity = Severity.CHECK
    piece: TrimPiece
    end: BoardEnd
    past: float
    thickness: float

    def sentence(self, units: Units) -> str:
        """Say by how much, and what that rests on."""
        return (
            f"The {self.piece.words} runs {units.text(self.past)} into the wall at the {self.end.words} corner of the "
            f"room, if that wall is {units.text(self.thickness)} thick like this one; measure it, then cut the trim to "
            "the corner or move the opening."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class BelowFloor(Finding):
    """An interior board reaches below the finished floor [in]."""

    code: ClassVar[str] = "below-floor"
    severity: Severity = Severity.STOP
    piece: TrimPiece
    below: float

    def sentence(self, units: Units) -> str:
        """Say by how much, and what to do."""
        return (
            f"The {self.piece.words} reaches {units.text(self.below)} below the finished floor; set the window "
            "higher, or make the trim under it narrower."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class AboveCeiling(Finding):
    """An interior board, or the frame (None), reaches above the ceiling, which is ``ceiling`` over the floor [in]."""

    code: ClassVar[str] = "above-ceiling"
    severity: Severity = Severity.STOP
    piece: TrimPiece | None
    above: float
    ceiling: float

    def sentence(self, units: Units) -> str:
        """Say by how much, and what to do."""
        words = self.piece.words if self.piece else "frame"
        return (
            f"The {words} reaches {units.text(self.above)} above the ceiling, which is {units.text(self.ceiling)} over "
            "the finished floor; set the window lower, or make the trim over it narrower."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class AboveEave(Finding):
    """An exterior board, or the frame (None), reaches above the eave of an elevation [in]."""

    code: ClassVar[str] = "above-eave"
    severity: Severity = Severity.STOP
    piece: TrimPiece | None
    above: float
    elevation: str

    def sentence(self, units: Units) -> str:
        """Say by how much, and what to check."""
        words = self.piece.words if self.piece else "frame"
        return (
            f"The {words} reaches {units.text(self.above)} above the eave of elevation {self.elevation!r}; check "
            "eave, the story and the height of the opening."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NotCompared(Finding):
    """Openings, by their marks, whose place along the wall the job does not say; of an elevation or of the house."""

    code: ClassVar[str] = "not-compared"
    severity: Severity = Severity.NOTE
    marks: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Name them, and say what would let them be compared."""
        missing = "from_left" if self.subject.kind is SubjectKind.ELEVATION else "elevation and no from_left"
        return (
            f"{', '.join(self.marks)}: no {missing} in the job, so not compared with neighbors and the corners of the "
            "wall; from_left runs from the left corner of the wall, seen from outside, to the left edge of the frame."
        )
