"""What the reader must know of what carries a window."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.job.models.path_edge import FramePath
from jambs.job.models.shape import ShapeKind
from jambs.length import Grid, Units
from jambs.place.shape_words import outline_words
from jambs.place.weight_words import weight_over_text, weight_text
from jambs.sides import Side


@dataclass(frozen=True, slots=True, kw_only=True)
class NeedsEngineer(Finding):
    """The window stands too far past the sheathing [in], or weighs too much [lb]; None where that is within its limit.

    ``units``: how many frames there are in the opening; they are weighed together.
    """

    code: ClassVar[str] = "needs-engineer"
    severity: Severity = Severity.CHECK
    overhang: float | None
    overhang_limit: float
    pounds: float | None
    pounds_limit: float
    units: int

    def sentence(self, units: Units) -> str:
        """Say what is past which limit."""
        past, is_one = [], self.units == 1
        stands, weighs = ("stands", "weighs") if is_one else ("stand", "weigh")
        if self.overhang is not None:
            limit = units.text(self.overhang_limit)
            past.append(f"{stands} {units.text(self.overhang)} past the sheathing (limit {limit})")
        if self.pounds is not None:
            limit = weight_text(self.pounds_limit, units)
            past.append(f"{weighs} about {weight_over_text(self.pounds, self.pounds_limit, units)} (limit {limit})")
        what = "the window" if is_one else f"the {self.units} units together"
        return f"Needs an engineer: {what} {' and '.join(past)}."


@dataclass(frozen=True, slots=True, kw_only=True)
class HoleOutline:
    """The outline of a hole in the framing that is no rectangle: its kind and its edges."""

    kind: ShapeKind
    path: FramePath

    def words(self, units: Units, framed_to: Grid | None = None) -> str:
        """Say it, exactly or to the next mark out."""
        return outline_words(self.path, self.kind, units, framed_to=framed_to)

    def is_marked_by(self, grid: Grid) -> bool:
        """Say whether all of its sizes are marks of a grid."""
        return self.words(grid.units) == self.words(grid.units, grid)


@dataclass(frozen=True, slots=True, kw_only=True)
class OffTheTape(Finding):
    """A hole in the framing, and its sill over the floor, that a framer cannot mark to ``step`` of his tape [in].

    ``outline``: of a hole that is no rectangle, whose edges run along the frame's.
    """

    code: ClassVar[str] = "off-the-tape"
    severity: Severity = Severity.NOTE
    width: float
    height: float
    sill: float | None
    step: float
    outline: HoleOutline | None = None

    def sentence(self, units: Units) -> str:
        """Say what he would have to mark, and what mends it: a setting, or his next mark."""
        sill = "" if self.sill is None else f", its sill {units.text(self.sill)} over the floor"
        size, step = f"{units.text(self.width)} × {units.text(self.height)}{sill}", units.text(self.step)
        if self.outline:
            return (
                f"The hole in the framing runs along the frame's edges and is exactly {size}, "
                f"{self.outline.words(units)}: frame it to the next mark of {step} out, as the rough openings have it; "
                "shims take the rest."
            )
        wanted = "framing_grid: 1/8" if units is Units.INCH else "framing_grid: 5 mm"
        return (
            f"The hole in the framing is {size}: framing is marked to {step} at the finest. Write {wanted} under shop: "
            "and it is rounded up, shims take the rest."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FlangeBearsPartly(Finding):
    """A nailing flange bears on too little: its width, the gap under it, what bears, what lies past the gap [in]."""

    code: ClassVar[str] = "flange-bears-partly"
    severity: Severity = Severity.CHECK
    flange: float
    gap: float
    bears: float
    past_gap: float
    buck_is_thin: bool

    def sentence(self, units: Units) -> str:
        """Say how it would bear."""
        cure = (
            f"a buck {units.text(self.past_gap)} thick, or a strip beside it, bears all of it."
            if self.buck_is_thin
            else "bring the buck nearer to the frame: smaller rough opening, less set back."
        )
        return (
            f"The nailing flange is {units.text(self.flange)} wide, lies over a gap of {units.text(self.gap)} and "
            f"bears on {units.text(self.bears)} of buck; {cure}"
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FlangeWidthAssumed(Finding):
    """The job does not give the width of a flange [in] that a buck has to bear."""

    code: ClassVar[str] = "flange-width-assumed"
    severity: Severity = Severity.CHECK
    flange: float

    def sentence(self, units: Units) -> str:
        """Ask for it."""
        return (
            f"Whether the buck bears the nailing flange rests on its width, and {units.text(self.flange)} is assumed: "
            "give flange_width before the buck is sawn."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class LinerStandsOut(Finding):
    """A liner buck stands past the sheathing by a length [in], fastened on so many sides.

    ``is_bare``: the framing has no sheathing, and its own outer face is meant.
    """

    code: ClassVar[str] = "liner-stands-out"
    severity: Severity = Severity.NOTE
    overhang: float
    sides: int
    is_bare: bool

    def sentence(self, units: Units) -> str:
        """Say how it is fastened."""
        sides = {3: "three", 4: "four"}[self.sides]
        return (
            f"The liner buck stands {units.text(self.overhang)} past the {'framing' if self.is_bare else 'sheathing'}: "
            f"fasten it to the studs on all {sides} sides."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class OutboardBuckDepth(Finding):
    """An outboard buck is so deep [in]."""

    code: ClassVar[str] = "outboard-buck-depth"
    severity: Severity = Severity.NOTE
    depth: float

    def sentence(self, units: Units) -> str:
        """Say what its screws must reach."""
        return (
            f"The outboard buck is {units.text(self.depth)} deep: screws through it must reach the framing behind the "
            "sheathing with the penetration the local code or an engineer requires."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ThresholdStandsOut(Finding):
    """A door's frame stands outside the sheathing by a length [in], its threshold with it, and no part carries it."""

    code: ClassVar[str] = "threshold-stands-out"
    severity: Severity = Severity.CHECK
    overhang: float

    def sentence(self, units: Units) -> str:
        """Say that it has to be carried."""
        return (
            f"The threshold stands {units.text(self.overhang)} outside the sheathing: carry it over its whole "
            "width, with a pan under it; nothing in this kit carries it."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class NoRoomForShims(Finding):
    """The gap [in] from frame to rough opening at head or sill, or at both legs (None), takes no shims."""

    code: ClassVar[str] = "no-room-for-shims"
    severity: Severity = Severity.CHECK
    side: Side | None
    gap: float
    wanted: float

    def sentence(self, units: Units) -> str:
        """Say what there is and what the shop wants."""
        where = self.side.words if self.side else "sides"
        return (
            f"The frame has {units.text(self.gap)} to its rough opening at the {where}; needed: "
            f"{units.text(self.wanted)} for shims."
        )
