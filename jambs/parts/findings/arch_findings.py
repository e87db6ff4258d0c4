"""What keeps an arch from being made, and what the reader must know of one."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import TAPE_GRIDS, Units, decimal_text


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardsTooNarrowForArch(Finding):
    """No board at hand gives segments of a curved casing, ``width`` wide on a ``radius``; ``widest``: of those [in]."""

    code: ClassVar[str] = "boards-too-narrow-for-arch"
    severity: Severity = Severity.STOP
    what: str
    stock: str
    width: float
    radius: float
    widest: float
    needed: float

    def sentence(self, units: Units) -> str:
        """Say which width would do."""
        return (
            f"{self.subject.name}: the head of the {self.what}, {units.text(self.width)} wide on a radius of "
            f"{units.text(self.radius)}, is sawn in segments, and the widest {self.stock} board of its thickness, "
            f"{units.text(self.widest)}, is too narrow for one: list a board {units.text(self.needed)} or wider under "
            "boards, or make the casing narrower."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ArchTooTightToSaw(Finding):
    """Segments of a curved head would be shorter than ``least`` at its hollow side, on its ``radius`` [in]."""

    code: ClassVar[str] = "arch-too-tight-to-saw"
    severity: Severity = Severity.STOP
    what: str
    radius: float
    least: float
    may_rise: bool

    def sentence(self, units: Units) -> str:
        """Say what is too short to hold, and what would do."""
        rise = ", let its arch rise more" if self.may_rise else ""
        return (
            f"{self.subject.name}: the head of the {self.what} would be sawn in segments on a radius of "
            f"{units.text(self.radius)}, shorter than {units.text(self.least)} on the hollow side and too short to "
            f"hold at the saw: make the frame wider{rise}, or its edges straight."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardsTooThinForArch(Finding):
    """No board at hand is thick enough for sawn segments of a jamb on a ``radius``; ``thickest``: of those [in]."""

    code: ClassVar[str] = "boards-too-thin-for-arch"
    severity: Severity = Severity.STOP
    what: str
    stock: str
    radius: float
    thickest: float
    needed: float
    may_bend: bool

    def sentence(self, units: Units) -> str:
        """Say which thickness would do, and the other way to make it."""
        has = (
            f"the thickest {self.stock} listed is {units.text(self.thickest)}"
            if self.thickest
            else f"no {self.stock} is listed"
        )
        return (
            f"{self.subject.name}: the head of the {self.what} on a radius of {units.text(self.radius)} is sawn hollow "
            f"from thick boards, and {has}: list {self.stock} {units.text(self.needed)} or thicker under boards"
            + (", or write curved: bent laminations." if self.may_bend else ".")
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class BuckOfStraightBoards(Finding):
    """The buck goes round arcs in ``count`` straight boards, whose corners stand ``off`` the arcs at most [in].

    ``turn_deg``: how far its boards turn from one to the next at most along an arc [degrees].
    """

    code: ClassVar[str] = "buck-of-straight-boards"
    severity: Severity = Severity.NOTE
    count: int
    off: float
    turn_deg: float

    def sentence(self, units: Units) -> str:
        """Say how it is built, and what is left behind the frame."""
        half = decimal_text(self.turn_deg / 2, 1)
        return (
            f"The buck follows the curve in {self.count} straight boards, ends cut up to {half}° off square: join them "
            "over the curve of the rough opening drawn full size, the middle of each board on it. Their corners stand "
            f"up to {TAPE_GRIDS[units].text(self.off)} off it: shim at the middles, and fasten the flange where it "
            "lies on wood."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class SegmentedHead:
    """A curved head: what it is, its segments, how far their ends are off square [degrees], the waste as a share."""

    what: str
    count: int
    half_deg: float
    waste: float

    @property
    def words(self) -> str:
        """Say what it is sawn from."""
        waste = f"{decimal_text(100 * self.waste, 0)} % of the blanks wasted"
        if self.count == 1:
            return f"{self.what} from one board, {waste}"
        return f"{self.what} from {self.count}, ends {decimal_text(self.half_deg, 1)}° off square, {waste}"


@dataclass(frozen=True, slots=True, kw_only=True)
class ArchMadeOfSegments(Finding):
    """Which curved heads are sawn from segments, how many, and at what angle they meet."""

    code: ClassVar[str] = "arch-made-of-segments"
    severity: Severity = Severity.NOTE
    heads: tuple[SegmentedHead, ...]

    def sentence(self, units: Units) -> str:
        """Say how they are sawn and put together."""
        heads = "; ".join(head.words for head in self.heads)
        return (
            f"The curved head is sawn in segments: {heads}. Cut the ends straight first, glue them with splines or "
            "dowels, then saw both curves by the template and fair them."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class ArchOutsideNotLaidOut(Finding):
    """Outside, flashing and cladding over an arch are left to the site.

    ``across``: upstand, top and front leg of the metal there together; ``along``: the curve it lies on [in].
    """

    code: ClassVar[str] = "arch-outside-not-laid-out"
    severity: Severity = Severity.CHECK
    shape: str
    is_round: bool
    has_legs: bool
    across: float
    along: float
    is_cased: bool = True

    def sentence(self, units: Units) -> str:
        """Say what is not on the sheets and how it is done."""
        over = "casing" if self.is_cased else "face legs of the metal returns"
        by = "the template of the casing" if self.is_cased else "those legs"
        tape = TAPE_GRIDS[units]
        long = f", about {tape.text(self.along)} along the curve" if self.along else ""
        low = "spring line" if self.has_legs else "level diameter" if self.is_round else "foot of the curve"
        return (
            f"No head flashing is laid out over the {self.shape}: bends are straight and do not follow a curve. Dress "
            f"soft metal over the {over}, or have one made from soldered segments, in pieces lapped upward from the "
            f"{low}, its upstand behind the membrane: {tape.text(self.across)} across upstand, top and front leg, hem "
            f"and laps besides{long}. Courses of cladding are planned to the "
            f"crown and to the lowest edge of the trim: cut them along the curve on the wall, by {by}."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundIsFramedSquare(Finding):
    """How the framing round a curve is closed: square, with blocks across its corners that touch the curve.

    ``width``, ``height``: inside the square framing; ``radius``: of the rough opening; ``face``: length of a block on
    the face that touches, ``cut``: from the corner to where it meets stud and header [in]; ``blocks``: how many.
    """

    code: ClassVar[str] = "round-is-framed-square"
    severity: Severity = Severity.NOTE
    shape: str
    width: float
    height: float
    radius: float
    blocks: int
    face: float
    cut: float

    def sentence(self, units: Units) -> str:
        """Say how it is framed, and where the shims stand."""
        many, tape = self.blocks > 1, TAPE_GRIDS[units]
        corners = {1: "the corner over the arc", 2: "both upper corners"}.get(self.blocks, "all four corners")
        return (
            f"Frame the {self.shape} square, {units.text(self.width)} × {units.text(self.height)} inside, and nail "
            f"{'blocks' if many else 'a block'} across {corners} at 45°, {tape.text(self.face)} long on the face that "
            f"looks in, {tape.text(self.cut)} from the corner along both sides: so all of it touches the curve of the "
            f"rough opening, radius {units.text(self.radius)}. Shim there; fill what is left behind the jamb with "
            "insulation, and have sheathing and wall board cut to the curve."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class PliesTooThin(Finding):
    """A jamb is bent to a radius that asks for plies thinner than are resawn; ``needed``: least radius [in]."""

    code: ClassVar[str] = "plies-too-thin"
    severity: Severity = Severity.STOP
    radius: float
    least: float
    needed: float
    may_saw: bool

    def sentence(self, units: Units) -> str:
        """Say which radius would do, and the other way to make it where the boards at hand give it."""
        return (
            f"{self.subject.name}: the head of the interior jamb is bent to a radius of {units.text(self.radius)}, too "
            f"tight for plies of {units.text(self.least)}, the thinnest that are resawn: they bend to "
            f"{units.text(self.needed)}. "
            + ("Write curved: sawn segments, or a wider frame." if self.may_saw else "Make the frame wider.")
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class PliesTooWide(Finding):
    """No board at hand is wide enough for the plies of a bent jamb, ``width`` as ripped [in]."""

    code: ClassVar[str] = "plies-too-wide"
    severity: Severity = Severity.STOP
    stock: str
    width: float
    may_saw: bool

    def sentence(self, units: Units) -> str:
        """Say which width would do, and the other way to make it where the boards at hand give it."""
        return (
            f"{self.subject.name}: the head of the interior jamb is bent from plies {units.text(self.width)} wide, and "
            f"no {self.stock} board listed gives them: list a wider one under boards"
            + (", or write curved: sawn segments." if self.may_saw else ".")
        )
