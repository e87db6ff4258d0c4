"""Why the sheets of an opening changed, came or went with an issue."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Reason
from jambs.length import Units

STATED_WORDS = dict(
    (
        ("room", "room changed"),
        ("rough_opening", "rough opening changed"),
        ("sill_height", "sill height changed"),
        ("floor_below_frame", "height over the floor changed"),
        ("faces_deg", "compass direction changed"),
        ("wall", "layers of the wall changed"),
        ("buck", "buck changed"),
        ("trim", "trim changed"),
    )
)
"""What was decided, in the order of the pipeline, behind the window and before its place in the wall."""
WINDOW_WORDS = {
    "hinge": "hinge changed",
    "escape": "escape opening changed",
    "weight": "weight changed",
    "name": "window has another name",
}
"""What of a window leaves its frame as it is."""
FOLLOWING = {
    "findings": "findings",
    "assumed": "assumed",
    "cautions": "cautions",
    "reasons": "why it stands there",
    "alternatives": "other positions",
    "install": "install sheet",
    "figures": "figures",
    "swing": "swing of the sash",
    "shims": "shim space",
    "planes": "planes",
    "depths": "depths",
    "framing_opening": "framing opening",
}
"""What follows from what is stated, in words."""


def why_text(reasons: Iterable[Reason], units: Units) -> str:
    """Return reasons in one line."""
    return "; ".join(one.sentence(units) for one in reasons)


@dataclass(frozen=True, slots=True, kw_only=True)
class IssueReason(Reason):
    """Why the sheets of an opening are not those of the issue before."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Added(IssueReason):
    """The job did not have it before."""

    code: ClassVar[str] = "added"

    def sentence(self, units: Units) -> str:
        """Say so."""
        return "added"


@dataclass(frozen=True, slots=True, kw_only=True)
class Removed(IssueReason):
    """The job has it no more."""

    code: ClassVar[str] = "removed"

    def sentence(self, units: Units) -> str:
        """Say so."""
        return "removed"


@dataclass(frozen=True, slots=True, kw_only=True)
class RenamedTo(IssueReason):
    """It is gone under this mark, and has another one now."""

    code: ClassVar[str] = "renamed-to"
    mark: str

    def sentence(self, units: Units) -> str:
        """Say which."""
        return f"renamed, now {self.mark}"


@dataclass(frozen=True, slots=True, kw_only=True)
class RenamedFrom(IssueReason):
    """It had another mark before."""

    code: ClassVar[str] = "renamed-from"
    mark: str

    def sentence(self, units: Units) -> str:
        """Say which."""
        return f"renamed, was {self.mark}"


@dataclass(frozen=True, slots=True, kw_only=True)
class MarksExchanged(IssueReason):
    """It is now what another mark was."""

    code: ClassVar[str] = "marks-exchanged"
    mark: str

    def sentence(self, units: Units) -> str:
        """Say which, and what to do with the boards."""
        return (
            f"marks exchanged: it is what {self.mark} was; boards labeled {self.mark}-… were cut for it, give them "
            "new labels before you recut any"
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class BackAgain(IssueReason):
    """It was gone; ``number``: the last issue that had it."""

    code: ClassVar[str] = "back-again"
    number: int

    def sentence(self, units: Units) -> str:
        """Say since when, and what that means for its parts."""
        return f"back again, last in issue {self.number}; its parts have their old marks"


@dataclass(frozen=True, slots=True, kw_only=True)
class BeforeNotOnRecord(IssueReason):
    """Its former figures cannot be read."""

    code: ClassVar[str] = "before-not-on-record"

    def sentence(self, units: Units) -> str:
        """Say so."""
        return "what it was before is not on record"


@dataclass(frozen=True, slots=True, kw_only=True)
class WithdrawnTo(IssueReason):
    """An earlier issue holds again."""

    code: ClassVar[str] = "withdrawn-to"
    number: int

    def sentence(self, units: Units) -> str:
        """Say which."""
        return f"withdrawn to issue {self.number}"


@dataclass(frozen=True, slots=True, kw_only=True)
class NowMeasured(IssueReason):
    """It was measured, or measured again, on a day; ``also``: the side, inside or outside, that was still planned."""

    code: ClassVar[str] = "now-measured"
    day: str
    is_again: bool
    also: str = ""

    def sentence(self, units: Units) -> str:
        """Say when."""
        what = f"{self.also} too " if self.also else "again " if self.is_again else ""
        return f"measured {what}{self.day}"


@dataclass(frozen=True, slots=True, kw_only=True)
class NowHalfMeasured(IssueReason):
    """Some of its depths were measured."""

    code: ClassVar[str] = "now-half-measured"

    def sentence(self, units: Units) -> str:
        """Say so."""
        return "half measured"


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuresWithdrawn(IssueReason):
    """It was measured and is as planned again: the readings were set aside, or are not in the job any more."""

    code: ClassVar[str] = "measures-withdrawn"

    def sentence(self, units: Units) -> str:
        """Say so."""
        return "measured depths no longer hold, planned again"


@dataclass(frozen=True, slots=True, kw_only=True)
class StatedChanged(IssueReason):
    """Somebody decided otherwise; ``key``: what of the opening's record."""

    code: ClassVar[str] = "stated-changed"
    key: str

    def sentence(self, units: Units) -> str:
        """Say what."""
        return STATED_WORDS[self.key]


@dataclass(frozen=True, slots=True, kw_only=True)
class WindowDetailChanged(IssueReason):
    """Something of the window that leaves its frame as it is; ``key``: what of its record."""

    code: ClassVar[str] = "window-detail-changed"
    key: str

    def sentence(self, units: Units) -> str:
        """Say what."""
        return WINDOW_WORDS[self.key]


@dataclass(frozen=True, slots=True, kw_only=True)
class WindowChanged(IssueReason):
    """Another window, or another frame."""

    code: ClassVar[str] = "window-changed"

    def sentence(self, units: Units) -> str:
        """Say so."""
        return "window or its frame changed"


@dataclass(frozen=True, slots=True, kw_only=True)
class NeighborsChanged(IssueReason):
    """Another opening that is trimmed as one with it is another, came or went, or stands elsewhere."""

    code: ClassVar[str] = "neighbors-changed"

    def sentence(self, units: Units) -> str:
        """Say so."""
        return "what it is trimmed as one with changed"


@dataclass(frozen=True, slots=True, kw_only=True)
class TrimmedTogether(IssueReason):
    """It is trimmed as one with others, and was trimmed by itself; ``marks``: of these."""

    code: ClassVar[str] = "trimmed-together"
    marks: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Say with which."""
        return f"trimmed as one with {', '.join(self.marks)} now"


@dataclass(frozen=True, slots=True, kw_only=True)
class TrimmedAlone(IssueReason):
    """It is trimmed by itself, and was trimmed as one with others; ``marks``: those they had."""

    code: ClassVar[str] = "trimmed-alone"
    marks: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Say with which no more."""
        return f"no longer trimmed as one with {', '.join(self.marks)}"


@dataclass(frozen=True, slots=True, kw_only=True)
class NeighborsRenamed(IssueReason):
    """Others that are trimmed as one with it have other marks, which its sheets name; ``marks``: until now, now."""

    code: ClassVar[str] = "neighbors-renamed"
    marks: tuple[tuple[str, str], ...]

    def sentence(self, units: Units) -> str:
        """Say which."""
        said = ", ".join(f"{now} (was {was})" for was, now in self.marks)
        return f"what it is trimmed as one with has another mark, {said}"


@dataclass(frozen=True, slots=True, kw_only=True)
class MovedInWall(IssueReason):
    """Its flange is on another plane; both as they were printed."""

    code: ClassVar[str] = "moved-in-wall"
    was: str
    now: str

    def sentence(self, units: Units) -> str:
        """Say from where to where."""
        return f"window moved in the wall, flange from {self.was} to {self.now}"


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitsChanged(IssueReason):
    """The job is in other units; ``was``: those it was in."""

    code: ClassVar[str] = "units-changed"
    was: str

    def sentence(self, units: Units) -> str:
        """Say from which to which."""
        was, now = ("inches", "millimeters") if Units(self.was) is Units.INCH else ("millimeters", "inches")
        return f"units of the job changed from {was} to {now}"


@dataclass(frozen=True, slots=True, kw_only=True)
class GridChanged(IssueReason):
    """The shop rounds to another grid; both as they were printed."""

    code: ClassVar[str] = "grid-changed"
    was: str
    now: str

    def sentence(self, units: Units) -> str:
        """Say from which to which."""
        return f"grid of the shop changed from {self.was} to {self.now}"


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherBoards(IssueReason):
    """A cutting plan, or the shop, names other boards, and all else is as it was."""

    code: ClassVar[str] = "other-boards"

    def sentence(self, units: Units) -> str:
        """Say so."""
        return "cut from other boards"


@dataclass(frozen=True, slots=True, kw_only=True)
class CoursesChanged(IssueReason):
    """Other courses of cladding pass it, and all else is as it was."""

    code: ClassVar[str] = "courses-changed"

    def sentence(self, units: Units) -> str:
        """Say so."""
        return "courses of the cladding changed"


@dataclass(frozen=True, slots=True, kw_only=True)
class ShopChanged(IssueReason):
    """Its parts changed although nobody stated anything else of it."""

    code: ClassVar[str] = "shop-changed"

    def sentence(self, units: Units) -> str:
        """Say what else there is."""
        return "settings of the shop or the cutting plan changed"


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetsSayOtherwise(IssueReason):
    """Only what follows from all else changed; ``keys``: what of the opening's record."""

    code: ClassVar[str] = "sheets-say-otherwise"
    keys: tuple[str, ...]

    def sentence(self, units: Units) -> str:
        """Say what."""
        return f"changed on the sheets: {', '.join(FOLLOWING.get(key, key.replace('_', ' ')) for key in self.keys)}"


@dataclass(frozen=True, slots=True, kw_only=True)
class HeadOfJobChanged(IssueReason):
    """Nothing of the opening changed: what stands over all sheets did."""

    code: ClassVar[str] = "head-of-job-changed"

    def sentence(self, units: Units) -> str:
        """Say what that is."""
        return "name or address of the job changed"
