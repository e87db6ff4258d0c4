"""The steps that make an opening shed water, as data: what goes on and what it laps over; words only when printed."""

from __future__ import annotations

from abc import ABC, abstractmethod
from dataclasses import dataclass
from enum import Enum
from typing import ClassVar

from jambs.flashing.blank import BlankKind
from jambs.flashing.membrane import is_behind
from jambs.length import Units
from jambs.parts.board.kinds import PartKind


class LapKind(Enum):
    """What goes on, for drawings and sketches; nothing compares its words."""

    PAN = "pan"
    WINDOW = "window"
    SIDE_TAPE = "side tape"
    HEAD_TAPE = "head tape"
    HEAD_MEMBRANE = "head membrane"
    SILL_FLASHING = "sill flashing"
    SILL = "sill"
    TRIM = "trim"
    HEAD_FLASHING = "head flashing"
    UPSTAND = "upstand"
    CLADDING = "cladding"


class FlangePath(Enum):
    """What the flanges run round: a rectangle, a path of straight edges, an arch over a level bottom, a full round."""

    RECTANGLE = "rectangle"
    EDGES = "edges"
    ARCH = "arch"
    RING = "ring"


SET = "set it on shims, level and plumb, and fasten it as its maker says before anything is taped"
"""Common practice, no source."""
SLOPE_FIRST = "the bottom of the rough opening sloped out or lined first, as its maker says"
"""Where no metal of the kit lies there; common practice, no source."""
PIECES = {
    FlangePath.RECTANGLE: "",
    FlangePath.EDGES: ", along every edge that slants too, from the lowest upward, each piece over the one below",
    FlangePath.ARCH: "",
    FlangePath.RING: ", in short pieces round the curve from the lowest upward, each over the one below",
}
OVER_THE_CURVE = ", in short pieces round the curve from both its ends upward, each over the one below"
"""Tape does not bend in its plane: common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LapStep(ABC):
    """One step, whatever its number."""

    kind: ClassVar[LapKind]

    @property
    @abstractmethod
    def what(self) -> str:
        """What goes on."""

    @abstractmethod
    def over(self, units: Units) -> str:
        """Say what it laps over, and how."""


def _under(behind: float | None, units: Units) -> str:
    """Name what lies under the opening where the window is fastened, so far out of the weather membrane [in]."""
    if behind is None:
        return "the layer that sheds the water under the opening"
    if is_behind(behind):
        return f"a strip under the opening that comes {units.text(behind)} out from the wall's membrane"
    return "the membrane under the opening"


@dataclass(frozen=True, slots=True, kw_only=True)
class PanLaps(LapStep):
    """The pan: its front leg, and the weather membrane → that leg [in], None without one."""

    kind: ClassVar[LapKind] = LapKind.PAN
    front: float
    behind: float | None

    @property
    def what(self) -> str:
        """What goes on."""
        return BlankKind.SILL_PAN.value

    def over(self, units: Units) -> str:
        """Say how far its leg comes down."""
        return f"front leg {units.text(self.front)} down over {_under(self.behind, units)}"


@dataclass(frozen=True, slots=True, kw_only=True)
class WindowLaps(LapStep):
    """The window or door on its flange or on clips; ``behind``: weather membrane → where it is fastened [in]."""

    kind: ClassVar[LapKind] = LapKind.WINDOW
    is_door: bool
    has_flange: bool
    has_pan: bool
    behind: float | None
    round: FlangePath = FlangePath.RECTANGLE

    @property
    def what(self) -> str:
        """What goes on."""
        name = "door" if self.is_door else "window"
        return f"{name}, nailing flange" if self.has_flange else f"{name} on its clips"

    def over(self, units: Units) -> str:
        """Say what it stands on, and how that drains; a door's threshold is sealed where it has no pan."""
        return f"{self._on_what(units)}; {SET}"

    def _on_what(self, units: Units) -> str:
        left_open = self._gap if self.has_flange else "open at the bottom"
        if self.has_pan:
            return f"over the pan; {self._bed}{left_open}, so that the pan drains"
        if self.is_door:
            return f"{self._bed}its threshold bedded in sealant over its whole width, on what carries it"
        under = f"over {_under(self.behind, units)}, {SLOPE_FIRST}"
        return f"{under}; {self._bed}{left_open}, so that water drains out"

    @property
    def _gap(self) -> str:
        """Where the flange has no sealant: level at the bottom, of a full round at its lowest place."""
        return {
            FlangePath.RECTANGLE: "no sealant under the bottom flange",
            FlangePath.EDGES: "no sealant under the level flange at the bottom",
            FlangePath.ARCH: "no sealant under the bottom flange",
            FlangePath.RING: "a gap in it at the lowest place",
        }[self.round]

    @property
    def _bed(self) -> str:
        """What lies behind the flanges; nothing without one.

        A continuous bed of sealant behind head and side flanges, none at the sill: ASTM E2112, from memory.
        """
        if not self.has_flange:
            return ""
        flanges = {
            FlangePath.RECTANGLE: "the head and side flanges, unbroken",
            FlangePath.EDGES: "all other flanges, those that slant too, unbroken",
            FlangePath.ARCH: "the flanges of sides and curve, unbroken",
            FlangePath.RING: "the flange all around",
        }[self.round]
        return f"sealant behind {flanges}, as its maker says; "


@dataclass(frozen=True, slots=True, kw_only=True)
class SideTapeLaps(LapStep):
    """The tape at the sides."""

    kind: ClassVar[LapKind] = LapKind.SIDE_TAPE
    has_flange: bool
    has_pan: bool
    round: FlangePath = FlangePath.RECTANGLE

    @property
    def what(self) -> str:
        """What goes on."""
        return "tape at the side flanges" if self.has_flange else "tape at the sides"

    def over(self, units: Units) -> str:
        """Say what it laps."""
        if self.has_flange:
            dams = " and the pan's end dams" if self.has_pan else ""
            return f"over the flanges{dams}{PIECES[self.round]}"
        dams = ", over the pan's end dams" if self.has_pan else ""
        return f"from the frame onto what sheds the water beside it{dams}{PIECES[self.round]}"


@dataclass(frozen=True, slots=True, kw_only=True)
class HeadTapeLaps(LapStep):
    """The tape at the head."""

    kind: ClassVar[LapKind] = LapKind.HEAD_TAPE
    has_flange: bool
    round: FlangePath = FlangePath.RECTANGLE

    @property
    def what(self) -> str:
        """What goes on."""
        return "tape at the head flange" if self.has_flange else "tape at the head"

    def over(self, units: Units) -> str:
        """Say what it laps."""
        curve = OVER_THE_CURVE if self.round is FlangePath.ARCH else ""
        return f"over the tape at the sides{curve}"


@dataclass(frozen=True, slots=True, kw_only=True)
class HeadMembraneLaps(LapStep):
    """What comes down over the head flange; ``behind``: weather membrane → flange plane [in], None without one."""

    kind: ClassVar[LapKind] = LapKind.HEAD_MEMBRANE
    behind: float | None

    @property
    def what(self) -> str:
        """What goes on."""
        if self.behind is None:
            return "layer that sheds the water"
        return "strip of membrane at the head" if is_behind(self.behind) else "membrane at the head"

    def over(self, units: Units) -> str:
        """Say where it is from and what it laps."""
        over = "down over the head flange and its tape"
        if self.behind is not None and is_behind(self.behind):
            return f"from the wall's membrane, {units.text(self.behind)} farther in, {over}"
        return over


@dataclass(frozen=True, slots=True, kw_only=True)
class SillFlashingLaps(LapStep):
    """The flashing under the exterior sill: its front leg [in]."""

    kind: ClassVar[LapKind] = LapKind.SILL_FLASHING
    front: float

    @property
    def what(self) -> str:
        """What goes on."""
        return BlankKind.SILL_FLASHING.value

    def over(self, units: Units) -> str:
        """Say what it laps, by how much."""
        return f"over the cladding under the sill, by {units.text(self.front)}"


@dataclass(frozen=True, slots=True, kw_only=True)
class SillLaps(LapStep):
    """The exterior sill."""

    kind: ClassVar[LapKind] = LapKind.SILL
    has_flashing: bool

    @property
    def what(self) -> str:
        """What goes on."""
        return PartKind.EXTERIOR_SILL.words

    def over(self, units: Units) -> str:
        """Say what it lies on."""
        on = "on the sill flashing, its" if self.has_flashing else "its"
        return f"{on} back at the frame with a sealant joint"


class Foot(Enum):
    """What the legs of the casing come down on, or past."""

    SILL = "on the sill"
    BOTTOM_PIECE = "on the bottom piece"
    PAST_FRAME = "down past the frame"
    FEET_ON_SILL = "every foot cut to the sill's slope and bedded on it in sealant"
    HEAD_ON_BOTTOM = "the bottom piece first, the head on it"
    RING = "from its lowest piece upward"


@dataclass(frozen=True, slots=True, kw_only=True)
class TrimLaps(LapStep):
    """Exterior jambs and casing."""

    kind: ClassVar[LapKind] = LapKind.TRIM
    has_jambs: bool
    foot: Foot
    is_butt: bool
    leans: bool = False

    @property
    def what(self) -> str:
        """What goes on."""
        return "exterior jambs and casing" if self.has_jambs else "exterior casing"

    def over(self, units: Units) -> str:
        """Say how its legs and its head meet, or how it goes on where it has no legs."""
        if self.foot in (Foot.HEAD_ON_BOTTOM, Foot.RING, Foot.FEET_ON_SILL):
            return f"{self.foot.value}, every joint sealed"
        top = "head casing over the legs" if self.is_butt else "head casing mitered to them, sealed in the miter"
        back = "; the layers behind cut back to the lean of the jambs first" if self.leans else ""
        return f"legs {self.foot.value}, {top}{back}"


@dataclass(frozen=True, slots=True, kw_only=True)
class ReturnLaps(LapStep):
    """Bent metal that lines the opening: its laps at the corners [in]; ``is_shaped``: along more edges than four."""

    kind: ClassVar[LapKind] = LapKind.TRIM
    has_sill: bool
    lap: float
    has_mulls: bool = False
    is_shaped: bool = False

    @property
    def what(self) -> str:
        """What goes on."""
        return "metal returns"

    def over(self, units: Units) -> str:
        """Say how they lap from below."""
        sill = "sill first, its ends up behind the sides; " if self.has_sill else ""
        mulls = "strips over the mulls, on the frames in sealant; " if self.has_mulls else ""
        order = f"sides, then the head {units.text(self.lap)} over them"
        if self.is_shaped:
            order = f"the lowest strips, then from below each one {units.text(self.lap)} over the next lower"
        return (
            f"{sill}{mulls}{order}; every lap in sealant; nailed in slots of the face legs, so that the metal may move"
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class CladReturnLaps(LapStep):
    """Cladding that returns to the frame: gap over the sill, joint at the frame, gap at the corner board [in]."""

    kind: ClassVar[LapKind] = LapKind.TRIM
    gap_at_sill: float
    joint: float
    gap_at_corner: float
    is_mitered: bool
    is_in_courses: bool
    is_butt: bool

    @property
    def what(self) -> str:
        """What goes on."""
        return "cladding returns" if self.is_mitered else "cladding returns and corner boards"

    def over(self, units: Units) -> str:
        """Say the order from behind outward, what stays open and what is sealed; common practice, no source."""
        feet = f", feet {units.text(self.gap_at_sill)} over the sill" if self.gap_at_sill else ""
        screen = f"furring first, insect screen at its feet and the cavity open there{feet}"
        courses = " piece by piece, butts on the lines of the wall" if self.is_in_courses else ""
        seal = f"{units.text(self.joint)} off the frame, backer and sealant"
        if self.is_mitered:
            corner = "mitered to the wall's cladding at the sides, ends primed and the miter glued or sealed"
        else:
            gap = f", {units.text(self.gap_at_corner)} of sealant at them" if self.gap_at_corner else ""
            head = "the head over the legs" if self.is_butt else "the head mitered to the legs"
            corner = f"between corner boards{gap}; the corner's boards glued or sealed to each other, {head}"
        return f"{screen}; head return first, then the sides{courses}, {seal}; {corner}"
