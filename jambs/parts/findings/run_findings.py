"""What is to be known of openings that are trimmed as one."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import Units
from jambs.parts.board.listing import and_list


@dataclass(frozen=True, slots=True, kw_only=True)
class GoesPastNeighbors(Finding):
    """Boards with these ``marks`` go past ``others``, whose frames stand ``apart`` over the walls between [in].

    ``planned``: those among them that follow the depths of all, where somebody read them at some openings and nobody at
    ``unread``.
    """

    code: ClassVar[str] = "goes-past-neighbors"
    severity: Severity = Severity.CHECK
    marks: tuple[str, ...]
    others: tuple[str, ...]
    apart: tuple[float, ...]
    planned: tuple[str, ...] = ()
    unread: tuple[str, ...] = ()

    def sentence(self, units: Units) -> str:
        """Say which, past what, and what to tape before they are cut."""
        texts = [units.text(one) for one in self.apart]
        several = len(texts) > 1
        apart = f"{texts[0]} each" if several and len(set(texts)) == 1 else and_list(texts)
        return (
            f"Trimmed as one with {and_list(self.others)}: {', '.join(self.marks)} lie over all of them and the "
            f"{'walls' if several else 'wall'} between. Before they are cut, tape from frame to frame over "
            f"{'each wall' if several else 'that wall'}: they are made for {apart}, and no reading tells it."
            f"{self._waiting}"
        )

    @property
    def _waiting(self) -> str:
        """What else to read, behind a space."""
        if not self.planned:
            return ""
        follow = "follows" if len(self.planned) == 1 else "follow"
        said = f"{', '.join(self.planned)} {follow} the depths at {and_list(self.unread)} too"
        return f" {said}, which nobody has measured: read them first."


@dataclass(frozen=True, slots=True, kw_only=True)
class TrimmedByAnother(Finding):
    """The boards over all openings, ``marks``, are on the sheets of ``lead``; ``has_stool``: a stool among them."""

    code: ClassVar[str] = "trimmed-by-another"
    severity: Severity = Severity.NOTE
    lead: str
    marks: tuple[str, ...]
    has_stool: bool

    def sentence(self, units: Units) -> str:
        """Say whose they are, and what is set first."""
        stool = " Its stool lies under the jambs: it is set before them." if self.has_stool else ""
        return f"Trimmed as one with {self.lead}: {', '.join(self.marks)} are on the sheets of {self.lead}.{stool}"


@dataclass(frozen=True, slots=True, kw_only=True)
class NoRoomForMullCasing(Finding):
    """The casing reveals leave nothing for the mull casing: ``between`` the jambs' faces over a wall [in]."""

    code: ClassVar[str] = "no-room-for-mull-casing"
    severity: Severity = Severity.STOP
    between: float
    reveal: float

    def sentence(self, units: Units) -> str:
        """Say both and what to change."""
        return (
            f"{self.subject.name}: the jambs of two openings that are trimmed as one stand {units.text(self.between)} "
            f"apart, face to face, and a casing reveal of {units.text(self.reveal)} at each leaves nothing for the "
            "mull casing; write a smaller casing_reveal, or a wider wall."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FlaresMeetBetween(Finding):
    """Exterior jambs flare so far that their backs meet in a wall between, ``overlap`` too far at the trim plane [in].

    ``between``: from back to back of the two jambs at the frame [in].
    """

    code: ClassVar[str] = "flares-meet-between"
    severity: Severity = Severity.STOP
    between: float
    overlap: float

    def sentence(self, units: Units) -> str:
        """Say how far apart they begin, how far they go too far and what to change."""
        return (
            f"{self.subject.name}: the exterior jambs of two openings that are trimmed as one stand "
            f"{units.text(self.between)} apart at the frame, back to back, and flare until they overlap by "
            f"{units.text(self.overlap)} where they end; write a smaller flare at the sides, or a wider "
            "wall."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class WallHoldsNoTrimmers(Finding):
    """A ``wall`` between two holes in the framing is less than two studs, ``least`` together [in]."""

    code: ClassVar[str] = "wall-holds-no-trimmers"
    severity: Severity = Severity.CHECK
    wall: float
    least: float

    def sentence(self, units: Units) -> str:
        """Say both, and whose decision it is."""
        return (
            f"The wall between two openings is {units.text(self.wall)}, and the studs that carry the headers at both "
            f"sides of it take {units.text(self.least)}: ask whoever designs the framing, or enter the windows as "
            "units of one opening."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class BucksMeetBetween(Finding):
    """Outboard bucks round two neighbors take more of the wall between than it has: ``bucks`` both together [in]."""

    code: ClassVar[str] = "bucks-meet-between"
    severity: Severity = Severity.STOP
    wall: float
    bucks: float

    def sentence(self, units: Units) -> str:
        """Say both and what to change."""
        return (
            f"The bucks at both sides of a wall between are {units.text(self.bucks)} together, and the wall is "
            f"{units.text(self.wall)}: they take the same room; write a wider wall or a thinner buck."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FramesOffStool(Finding):
    """The frame of ``mark`` stands off the straight edge of the stool over all: deeper (+) or into it (-) [in]."""

    code: ClassVar[str] = "frames-off-stool"
    severity: Severity = Severity.CHECK
    mark: str
    off: float

    def sentence(self, units: Units) -> str:
        """Say where, by how much and which way, and what to do before the stool is cut."""
        way = "more" if self.off > 0 else "less"
        return (
            f"At the sill of {self.mark} the interior depth is {units.text(abs(self.off))} {way} than along a straight "
            "line over all openings that are trimmed with it: set the frames in one plane, or scribe the stool to them "
            "before it is fixed."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class JambsBehindBoards(Finding):
    """A jamb of ``mark`` ends ``off`` behind the boards over all, more than casing is drawn down by, ``most`` [in]."""

    code: ClassVar[str] = "jambs-behind-boards"
    severity: Severity = Severity.CHECK
    is_outside: bool
    mark: str
    off: float
    most: float

    def sentence(self, units: Units) -> str:
        """Say whose, by how much, what is allowed, and what to do before the boards are nailed."""
        side = "Outside" if self.is_outside else "Inside"
        return (
            f"{side}, the walls of openings trimmed as one do not lie in one plane: casing over all bears on the "
            f"farthest jambs, and one of {self.mark} ends {units.text(self.off)} behind it, where nails draw it down "
            f"by {units.text(self.most)} at most. Before the boards are nailed glue tapered strips on that edge and "
            "plane them to a straight edge over all, or true up the wall and read it again."
        )
