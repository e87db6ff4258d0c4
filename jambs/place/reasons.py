"""Why a window stands where it stands, and what speaks against the other positions."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import ClassVar

from jambs.findings import Reason
from jambs.length import Units, decimal_text
from jambs.place.limit_kinds import LimitKind


class PositionKind(StrEnum):
    """An honest candidate for the position of a window, by its name on the papers."""

    ON_SHEATHING = "flange on the sheathing"
    SHARED_EQUALLY = "added depth shared equally"
    EQUAL_DEPTHS = "interior and exterior depth equal"
    ON_TRIM_PLANE = "flange on the trim plane"
    ONE_BOARD = "deepest interior jamb out of a board"


@dataclass(frozen=True, slots=True, kw_only=True)
class PositionName:
    """A candidate by what it is; ``board``: width of the board its interior jamb comes out of [in]."""

    kind: PositionKind
    board: float | None = None

    def words(self, units: Units) -> str:
        """Name the candidate: ``flange on the sheathing``, ``deepest interior jamb out of a board 5 1/2" wide``."""
        return self.kind.value if self.board is None else f"{self.kind} {units.text(self.board)} wide"


@dataclass(frozen=True, slots=True, kw_only=True)
class LimitEnd:
    """One end of what the limits leave: which limit, of which opening, and the flange plane it allows [in]."""

    limit: LimitKind
    mark: str
    plane: float

    @property
    def name(self) -> str:
        """The limit and its opening: ``greatest overhang (W1)``."""
        return f"{self.limit} ({self.mark})"


@dataclass(frozen=True, slots=True, kw_only=True)
class BindingLimit:
    """A limit that binds the position of a wall, as the sheet of one opening tells it.

    ``plane``: the flange plane that it allows [in]; None where it is of another opening: what a sheet prints
    changes with its own opening, not with another's mark or limit.
    """

    limit: LimitKind
    plane: float | None

    def words(self, units: Units) -> str:
        """Say what it allows: ``9 1/2" (greatest overhang)``."""
        if self.plane is None:
            return f"what another opening of this wall allows ({self.limit})"
        return f"{units.text(self.plane)} ({self.limit})"


@dataclass(frozen=True, slots=True, kw_only=True)
class BrokenLimit(Reason):
    """A limit that a position misses by a length [in]."""

    code: ClassVar[str] = "limit-missed"
    limit: LimitKind
    miss: float

    def sentence(self, units: Units) -> str:
        """Name the limit and by how much it is missed; no full stop, it stands in lists."""
        return f"{self.limit}: missed by {units.text(self.miss)}"


@dataclass(frozen=True, slots=True, kw_only=True)
class SharedEqually(Reason):
    """*Choose for me* met no limit."""

    code: ClassVar[str] = "shared-equally"

    def sentence(self, units: Units) -> str:
        """Say that the equal share stands."""
        return "The added depth is shared equally inside and outside; no limit stands in the way."


@dataclass(frozen=True, slots=True, kw_only=True)
class BoundByLimit(Reason):
    """*Choose for me* went as near to an equal share as one limit lets it; ``moved`` from there [in]."""

    code: ClassVar[str] = "bound-by-limit"
    bound: BindingLimit
    moved: float
    is_moved_out: bool

    def sentence(self, units: Units) -> str:
        """Name the limit that bound, and how far from the equal share."""
        side, plane = "out" if self.is_moved_out else "in", self.bound.plane
        of = " of another opening of this wall" if plane is None else ""
        where = f"a flange plane at {units.text(plane)} or" if plane is not None else "a flange plane"
        return (
            f"Nearest to an equal share: the limit '{self.bound.limit}'{of} needs {where} farther {side}, "
            f"{units.text(self.moved)} {side} from the equal share."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class MovedForBoard(Reason):
    """Moved in by a length, so that the interior jamb comes out of a narrower board, ``board`` wide [in]."""

    code: ClassVar[str] = "moved-for-board"
    moved: float
    board: float

    def sentence(self, units: Units) -> str:
        """Say how far, and which board it saves."""
        return (
            f"Moved in by {units.text(self.moved)} so that the interior jamb comes out of a board "
            f"{units.text(self.board)} wide instead of a wider one."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ShareTakenInside(Reason):
    """The job gives the share (0 to 1) of the added depth [in] that is taken inside."""

    code: ClassVar[str] = "share-taken-inside"
    share: float
    added_depth: float

    def sentence(self, units: Units) -> str:
        """Say the share in percent."""
        share = decimal_text(self.share * 100, 1)
        return f"{share} % of the added depth of {units.text(self.added_depth)} is taken inside."


@dataclass(frozen=True, slots=True, kw_only=True)
class AskedInteriorDepth(Reason):
    """The job gives the interior depth [in]."""

    code: ClassVar[str] = "asked-interior-depth"
    depth: float

    def sentence(self, units: Units) -> str:
        """Say what the job asks for."""
        return f"The job asks for an interior depth of {units.text(self.depth)}."


@dataclass(frozen=True, slots=True, kw_only=True)
class AskedExteriorDepth(Reason):
    """The job gives the exterior depth [in]."""

    code: ClassVar[str] = "asked-exterior-depth"
    depth: float

    def sentence(self, units: Units) -> str:
        """Say what the job asks for."""
        return f"The job asks for an exterior depth of {units.text(self.depth)}."


@dataclass(frozen=True, slots=True, kw_only=True)
class DepthsMadeEqual(Reason):
    """The job asks for equal depths."""

    code: ClassVar[str] = "depths-made-equal"

    def sentence(self, units: Units) -> str:
        """Say so."""
        return "Interior and exterior depth are made equal."


@dataclass(frozen=True, slots=True, kw_only=True)
class OnFace(Reason):
    """The job puts the flange on the outer face of a layer; of a window without one, its clips."""

    code: ClassVar[str] = "on-face"
    face: str
    has_flange: bool

    def sentence(self, units: Units) -> str:
        """Name the face."""
        what = "the flange" if self.has_flange else "the bearing face of the clips"
        return f"The job puts {what} on the face of the {self.face}."


@dataclass(frozen=True, slots=True, kw_only=True)
class LeastHeat(Reason):
    """The heat study chose the interior depth [in] between two limits."""

    code: ClassVar[str] = "least-heat"
    interior_depth: float
    low: BindingLimit
    high: BindingLimit

    def sentence(self, units: Units) -> str:
        """Say the depth and what the limits leave."""
        low, high = (end.words(units) for end in (self.low, self.high))
        return (
            "Least heat through the joint of window and wall: interior depth "
            f"{units.text(self.interior_depth)}. Limits leave the flange plane from {low} to {high}."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnPosition(Reason):
    """The opening has a position of its own."""

    code: ClassVar[str] = "own-position"

    def sentence(self, units: Units) -> str:
        """Say so."""
        return "This opening has a position of its own."


@dataclass(frozen=True, slots=True, kw_only=True)
class SharedPosition(Reason):
    """The opening follows the position of its wall; ``window``: what that was worked out for, where it is another."""

    code: ClassVar[str] = "shared-position"
    wall: str
    window: str | None

    def sentence(self, units: Units) -> str:
        """Name the wall, and the window where it is another."""
        worked_out = "" if self.window is None else f", worked out for window {self.window!r}"
        return f"One position for all openings of wall {self.wall!r}{worked_out}."


@dataclass(frozen=True, slots=True, kw_only=True)
class NextBest(Reason):
    """The nearest other candidate that breaks no limit; None where there is none."""

    code: ClassVar[str] = "next-best"
    position: PositionName | None

    def sentence(self, units: Units) -> str:
        """Name it."""
        if self.position is None:
            return "No other candidate respects all limits."
        return f"Next best: {self.position.words(units)}."
