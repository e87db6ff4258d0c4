"""What the reader must know of flared jambs: the hole they need, flares that are too steep, walls that taper."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import ClassVar

from jambs.findings import Finding, Severity
from jambs.length import TAPE_GRIDS, Units, decimal_text
from jambs.sides import Side

SAME_PLACE = 1e-9
"""A side that stands out by less stands in the same place [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RoughOpeningFlares(Finding):
    """The framing must give way to flared jambs: rough opening at the frame, and at the inside face of the framing.

    ``width``, ``height``: at the frame's inside edge; ``room_width``, ``room_height``: at the inside face of the
    framing, ``depth`` nearer the room [in]. ``out``: how far the larger hole stands out of the other, by side;
    ``room_sill``, ``room_head``: finished floor → its bottom, its top; None where nobody gave a height [in].
    ``is_standing``: the wall was measured, so that its framing stands.
    """

    code: ClassVar[str] = "rough-opening-flares"
    severity: Severity = Severity.CHECK
    width: float
    height: float
    room_width: float
    room_height: float
    depth: float
    out: Mapping[Side, float]
    room_sill: float | None = None
    room_head: float | None = None
    is_standing: bool

    def sentence(self, units: Units) -> str:
        """Say both openings and how to get from one to the other; of a standing wall, what to check and cut back."""
        frame = f"{units.text(self.width)} × {units.text(self.height)}"
        room = f"{units.text(self.room_width)} × {units.text(self.room_height)}"
        both = (
            f"{frame} at the inside edge of the frame, at least {room} at the inside face of the framing, "
            f"{units.text(self.depth)} toward the room"
        )
        where = self.where(units)
        if self.is_standing:
            return (
                f"The jambs flare, and the framing stands: check that the rough opening is {both} as measured; "
                f"{where}. Cut the framing back where it is short."
            )
        return (
            f"The jambs flare, so the rough opening must too: {both}; {where}. Frame it flared, or frame the larger "
            "hole and fur it out to the frame."
        )

    def where(self, units: Units) -> str:
        """Say where the larger hole lies: how far out at each side, and how high over the finished floor."""
        sides = [(side, length) for side in Side if (length := self.out[side]) > SAME_PLACE]
        out = ", ".join(f"{units.text(length)} at the {side.words}" for side, length in sides)
        heights = self.heights(units)
        return f"there it stands out {out}" + (f", {heights}" if heights else "")

    def heights(self, units: Units) -> str:
        """Say how high the larger hole lies over the finished floor; nothing where nobody gave a height."""
        if self.room_sill is None or self.room_head is None:
            return ""
        sill, head = units.text(self.room_sill), units.text(self.room_head)
        return f"its sill {sill} and its head {head} above the finished floor"


@dataclass(frozen=True, slots=True, kw_only=True)
class FlareTooSteep(Finding):
    """A flare that was given by length is steeper at this depth than a jamb may lean [in, degrees].

    ``is_outside``: of an exterior jamb, whose depth runs from its sealant joint at the frame to the trim plane.
    """

    code: ClassVar[str] = "flare-too-steep"
    severity: Severity = Severity.STOP
    side: Side
    wider: float
    depth: float
    flare_deg: float
    greatest_deg: float
    is_outside: bool = False

    def sentence(self, units: Units) -> str:
        """Say what it comes to, what is allowed and both ways out."""
        jamb, over, way = (
            ("exterior jamb", "a depth", "in") if self.is_outside else ("jamb", "an interior depth", "out")
        )
        return (
            f"{self.subject.name}: at the {self.side.words} the {jamb} flares by {units.text(self.wider)} over {over} "
            f"of {units.text(self.depth)}, {decimal_text(self.flare_deg, 1)}°; the most is {self.greatest_deg:g}°: "
            f"write a smaller flare, or set the window farther {way}."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FlareMeetsBuck(Finding):
    """At a side a flared jamb runs into the buck, which stands square: by so much at the buck's inside edge [in]."""

    code: ClassVar[str] = "flare-meets-buck"
    severity: Severity = Severity.STOP
    side: Side
    overlap: float

    def sentence(self, units: Units) -> str:
        """Say where, by how much, and the ways out."""
        return (
            f"{self.subject.name}: at the {self.side.words} the flared jamb runs {units.text(self.overlap)} into the "
            "buck, which stands square; write a smaller flare, a buck that does not line the opening, or a larger "
            "rough_opening."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FlaresCloseEdge(Finding):
    """Flared jambs beside an edge of a shape come together before they end: that edge has no length there."""

    code: ClassVar[str] = "flares-close-edge"
    severity: Severity = Severity.STOP
    is_outside: bool = False

    def sentence(self, units: Units) -> str:
        """Say where, and what would do."""
        where = "outside, before they reach the trim plane" if self.is_outside else "before they reach the room"
        return (
            f"{self.subject.name}: along an edge of the opening the jambs at both its ends meet {where}, and no "
            "board is left between; write a smaller flare, flare the edges beside it too, or set the window farther "
            f"{'out' if self.is_outside else 'in'}."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FlaredWallTapers(Finding):
    """Along a side the measured wall is deeper at one end, so that the opening flares out more there [in]."""

    code: ClassVar[str] = "flared-wall-tapers"
    severity: Severity = Severity.NOTE
    side: Side
    more: float

    def sentence(self, units: Units) -> str:
        """Say what it does to the casing's reveal."""
        return (
            f"The wall tapers along the flared {self.side.wall_words}: at its shallow end the casing reveal comes out "
            f"{units.text(self.more)} wider than at its deep end."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FlaredArcOfFlats(Finding):
    """A flared jamb follows its arcs in ``count`` flat segments, whose middles stand in off the curve.

    ``turn_deg``: from one to the next at most [degrees]; ``at_frame``, ``at_room``: off the curve at most; ``reveal``:
    frame reveal that is asked for [in]. ``is_outside``: exterior jambs, whose far edge is at the trim plane.
    """

    code: ClassVar[str] = "flared-arc-of-flats"
    severity: Severity = Severity.NOTE
    count: int
    turn_deg: float
    at_frame: float
    at_room: float
    reveal: float
    is_outside: bool

    def sentence(self, units: Units) -> str:
        """Say how it is put together, how round it is, and what of the frame reveal is left."""
        tape = TAPE_GRIDS[units]
        jamb, far = ("exterior jamb", "trim plane") if self.is_outside else ("jamb", "room")
        left, asked = self.reveal - self.at_frame, f"the frame reveal of {units.text(self.reveal)}"
        reveal = f"which leaves {tape.text(left)} of {asked}" if tape.round(left) > 0 else f"which takes all of {asked}"
        return (
            f"Round the curve the flared {jamb} is {self.count} flat segments with compound miters, turning "
            f"{decimal_text(self.turn_deg, 1)}° from one to the next: join them with splines or biscuits and glue over "
            "the curve drawn full size, corners on it. Their middles stand in off the curve by up to "
            f"{tape.text(self.at_frame)} at the frame, {reveal}, and {tape.text(self.at_room)} at the {far}: leave the "
            "faces flat, or plane them round before the box is set. The casing is sawn to the curve."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class MetalFollowsArc(Finding):
    """Bent metal follows arcs in ``count`` flat strips, that turn from one to the next at most by ``turn_deg``.

    ``off``: how far their middles stand in off the curve at most, of ``reveal`` [in].
    """

    code: ClassVar[str] = "metal-follows-arc"
    severity: Severity = Severity.NOTE
    count: int
    turn_deg: float
    off: float
    reveal: float

    def sentence(self, units: Units) -> str:
        """Say why, how round it comes out, and what a metal shop would do instead; common practice, no source."""
        tape = TAPE_GRIDS[units]
        return (
            f"A brake bends along straight lines, so round the curve the metal is {self.count} flat strips, turning "
            f"{decimal_text(self.turn_deg, 1)}° from one to the next, the upper lapped over the lower; their middles "
            f"stand in off the curve by up to {tape.text(self.off)} of the frame reveal of {tape.text(self.reveal)}. A "
            "smooth one is a flat strip rolled to the curve, as long as its middle plane is there, with its face leg "
            "cut as a ring and soldered or riveted on: a metal shop makes it over the curve drawn full size."
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class FlatSegmentsTooCoarse(Finding):
    """Flat segments no shorter than ``least`` would stand ``off`` the curve; ``most``: as far as may be planed [in].

    ``radius``: of the arc at the frame. ``is_outside``: of exterior jambs; ``is_metal``: strips of bent metal.
    """

    code: ClassVar[str] = "flat-segments-too-coarse"
    severity: Severity = Severity.STOP
    radius: float
    least: float
    off: float
    most: float
    may_rise: bool
    is_outside: bool = False
    is_metal: bool = False

    def sentence(self, units: Units) -> str:
        """Say how far off they are, what is allowed, and the ways out."""
        tape, rise = TAPE_GRIDS[units], ", let its arch rise more" if self.may_rise else ""
        if self.is_metal:
            return (
                f"{self.subject.name}: outside, the bent metal round a radius of {units.text(self.radius)} is made in "
                f"flat strips at least {units.text(self.least)} long, which stand {tape.text(self.off)} in off the "
                f"curve at the frame; the most is the frame_reveal of {tape.text(self.most)}: make the frame wider"
                f"{rise}, write a larger frame_reveal, or give it wooden exterior trim with curved: sawn segments."
            )
        jamb, far = ("exterior jamb", "trim plane") if self.is_outside else ("jamb", "room")
        return (
            f"{self.subject.name}: the flared {jamb} round a radius of {units.text(self.radius)} is made in flat "
            f"segments at least {units.text(self.least)} long, which stand {tape.text(self.off)} in off the curve at "
            f"the {far}; the most is {tape.text(self.most)}, a quarter of the jamb's thickness: make the frame wider"
            f"{rise} or the jamb thicker, write a smaller flare, or flare: none."
        )
