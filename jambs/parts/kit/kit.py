"""All parts of one opening, and the figures they were made from."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from enum import Enum

from jambs.findings import Finding
from jambs.job.models.openings import Assumed
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.kit.cautions import Caution
from jambs.parts.kit.drywall import DrywallWork
from jambs.parts.shapes.clear import ClearOpening
from jambs.parts.shapes.flat_segments import FlatPath
from jambs.place.flares import Flares, flares_at, flares_outside
from jambs.place.placement import Placement
from jambs.sides import Side


@dataclass(frozen=True, slots=True, kw_only=True)
class FittedSide:
    """What one side of the kit was made from: depths at its first and last end as sawn [in], and whether it tapers.

    ``scribe_allowance``: the most that is scribed off to fit a crooked wall [in]. ``runs``: of a side that is parted
    into several straight edges each of them, from the left.
    """

    start_depth: float
    finish_depth: float
    is_tapered: bool
    scribe_allowance: float = 0.0
    runs: tuple[FittedSide, ...] = ()

    def run(self, number: int) -> FittedSide:
        """Return one of its edges, counted from the left; the only one is the side itself."""
        return self.runs[number - 1] if self.runs else self

    def depth_at(self, corner: Side) -> float:
        """Depth at the end where another side of the opening is met [in]."""
        return self.start_depth if corner.is_start else self.finish_depth

    def less(self, depth: float) -> FittedSide:
        """The same side less a depth that something else takes [in]."""
        return replace(
            self,
            start_depth=self.start_depth - depth,
            finish_depth=self.finish_depth - depth,
            runs=tuple(run.less(depth) for run in self.runs),
        )

    @property
    def _corners(self) -> tuple[float, ...]:
        return tuple(depth for one in self.runs or (self,) for depth in (one.start_depth, one.finish_depth))

    @property
    def greatest(self) -> float:
        """The greatest depth at any of its corners [in]."""
        return max(self._corners)

    @property
    def least(self) -> float:
        """The least depth at any of its corners [in]."""
        return min(self._corners)


@dataclass(frozen=True, slots=True, kw_only=True)
class JambFrame:
    """One frame of interior extension jambs: the only one, or one of those that are stacked, from the window on.

    ``clear``: between its faces. ``edge``: depth of its edge toward the window [in]. ``sides``: its own depths by side,
    to which its boards add ``proud`` [in].
    """

    member: int
    clear: ClearOpening
    edge: float
    sides: dict[Side, FittedSide]
    proud: float

    @property
    def width(self) -> float:
        """The greatest width of its boards [in]."""
        return max(side.greatest for side in self.sides.values()) + self.proud

    @property
    def least_depth(self) -> float:
        """Its least depth at any corner [in]."""
        return min(side.least for side in self.sides.values())


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitted:
    """An opening where it stands; ``inner``, ``outer``: depths by side, inside and outside [in].

    ``planned_depth``: interior depth before anything was read [in].
    """

    placement: Placement
    inner: dict[Side, FittedSide]
    outer: dict[Side, FittedSide]
    planned_depth: float
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RunMember:
    """One of the openings that are trimmed as one.

    ``clear``: between its interior jambs, from the lower left corner of its own frame, which stands at ``x`` from that
    of the opening at hand [in].
    """

    fitted: Fitted
    clear: ClearOpening
    x: float

    @property
    def mark(self) -> str:
        """The opening's mark."""
        return self.placement.opening.mark

    @property
    def placement(self) -> Placement:
        """Where it stands."""
        return self.fitted.placement


@dataclass(frozen=True, slots=True, kw_only=True)
class WallBetween:
    """The wall between two of them, face of one jamb → face of the next: x from the opening at hand [in]."""

    low: float
    high: float

    @property
    def width(self) -> float:
        """From face to face [in]."""
        return self.high - self.low


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningRun:
    """Openings that are trimmed as one, left to right; ``at``: which of them is at hand, from 0."""

    members: tuple[RunMember, ...]
    at: int

    @property
    def hand(self) -> RunMember:
        """The opening at hand."""
        return self.members[self.at]

    @property
    def is_lead(self) -> bool:
        """Say whether the one at hand is the leftmost, which has the boards over all."""
        return self.at == 0

    @property
    def lead(self) -> str:
        """The mark of the leftmost."""
        return self.members[0].mark

    @property
    def walled(self) -> tuple[Side, ...]:
        """The sides of the one at hand at which a wall between lies."""
        at_last = self.at == len(self.members) - 1
        return (*(() if self.is_lead else (Side.LEFT,)), *(() if at_last else (Side.RIGHT,)))

    @property
    def others(self) -> tuple[RunMember, ...]:
        """All but the one at hand."""
        return (*self.members[: self.at], *self.members[self.at + 1 :])

    def seen_from(self, at: int) -> OpeningRun:
        """The same run with another opening at hand."""
        off = self.members[at].x
        return OpeningRun(members=tuple(replace(one, x=one.x - off) for one in self.members), at=at)


class FigureKind(Enum):
    """The sizes that a sheet names, by their trade words."""

    SEALANT_JOINT = "sealant joint"
    EXTERIOR_CASING_OUTSIDE_WIDTH = "exterior casing outside width"
    EXTERIOR_CLEAR_WIDTH = "exterior clear width"
    EXTERIOR_CLEAR_AT_TRIM = "exterior clear width at the trim plane"
    EXTERIOR_FRAME_REVEAL = "exterior frame reveal"
    EXTERIOR_CASING_REVEAL = "exterior casing reveal"
    CORNER_BOARD_PROUD = "corner board past the return"
    OUTER_LAYERS_AT_SIDES = "outer layers stop at the sides"
    OUTER_LAYERS_AT_HEAD = "outer layers stop at the head"
    SILL_RUN = "sill run"
    SILL_FALL = "sill fall"
    SILL_NOSING = "sill nosing"
    INTERIOR_DEPTH = "interior depth"
    FRAME_DEPTH = "frame depth"
    EXTERIOR_DEPTH = "exterior depth"
    FLANGE_PLANE = "flange plane"
    SHIM_SPACE_LEFT = "shim space left"
    SHIM_SPACE_RIGHT = "shim space right"
    SHIM_SPACE_HEAD = "shim space head"
    SHIM_SPACE_SILL = "shim space sill"
    CLEAR_OPENING_WIDTH = "clear opening width"
    CLEAR_OPENING_HEIGHT = "clear opening height"
    JAMB_BOX_WIDTH = "jamb box width"
    FLARED_OPENING_WIDTH = "flared opening width"
    FLARED_OPENING_HEIGHT = "flared opening height"
    FLARED_BOX_WIDTH = "flared jamb box width"
    FRAME_REVEAL = "frame reveal"
    CASING_REVEAL = "casing reveal"
    PROUD = "proud"
    CASING_OUTSIDE_WIDTH = "casing outside width"
    BUILT_UP_WIDTH = "built-up casing width over all"
    BUILT_UP_HEIGHT = "built-up casing height over all"
    CASING_OUTSIDE_HEIGHT = "casing outside height"
    HEAD_CASING_OVERHANG = "head casing overhang"
    STOOL_LENGTH = "stool length"
    HORN_PLAY = "play behind the horns"
    FRAME_AT_WINDOW = "jamb frame at the window"
    FRAME_BETWEEN = "jamb frame between"
    FRAME_AT_WALL = "jamb frame against the wall"
    RETURN_COAT = "coat on the returns"
    GAP_AT_FRAME = "gap between frame and return"
    BOARDS_WIDTH = "between return boards, width"
    BOARDS_HEIGHT = "between return boards, height"
    WALL_BOARD_WIDTH = "opening in the wall board, width"
    WALL_BOARD_HEIGHT = "opening in the wall board, height"
    FURRING_LEFT = "furring behind the left return"
    FURRING_RIGHT = "furring behind the right return"
    FURRING_HEAD = "furring behind the head return"
    FURRING_SILL = "furring under the sill"
    STACK_REVEAL = "reveal between jamb frames"
    WALL_BETWEEN = "jamb to jamb over the wall between"
    MULL_ACROSS = "left side of the opening to mull casing"
    TRANSOM_BAR_UP = "bottom of the opening to transom bar casing"


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """A named size on the sheet [in]: ``clear opening width``, ``casing outside height``, ``sill fall``, …"""

    kind: FigureKind
    value: float
    note: str = ""

    @property
    def name(self) -> str:
        """The figure in words, for printing."""
        return self.kind.value


@dataclass(frozen=True, slots=True, kw_only=True)
class Kit:
    """All parts of one opening and the figures they were made from.

    ``is_measured``: the interior depths are from the wall, not from the plan. ``clear_width``, ``clear_height``:
    between the faces of the interior extension jambs at the frame [in]; ``room``: the faces at their room edges, which
    stand farther apart where they flare. ``sides``: depths by side; first → last runs left → right on head and sill,
    bottom → top on the legs. ``frames``: of interior extension jambs, from the window to the room. ``drywall``: what
    the drywall crew leaves where there is no casing. ``run``: the openings it is trimmed with, as one; ``lent``: boards
    of the leftmost of them that lie at this opening too, ``beside``: all other boards of the others, both in the
    coordinates of this one. ``flat_outside``: along which flared exterior jambs follow arcs in flat segments.
    """

    placement: Placement
    parts: tuple[Part, ...]
    is_measured: bool
    clear_width: float
    clear_height: float
    room: ClearOpening
    figures: tuple[Figure, ...]
    findings: tuple[Finding, ...]
    assumed: tuple[Assumed, ...]
    cautions: tuple[Caution, ...]
    sides: dict[Side, FittedSide] = field(default_factory=dict)
    frames: tuple[JambFrame, ...] = ()
    drywall: DrywallWork | None = None
    run: OpeningRun | None = None
    lent: tuple[Part, ...] = ()
    beside: tuple[Part, ...] = ()
    flat_outside: FlatPath | None = None

    @property
    def as_trimmed(self) -> Kit:
        """The kit with all boards that lie at its opening: its own, and those that another one has for both.

        A mull casing on the wall between is told to lie at the side of the opening at which it is. What lies at others
        is ``beside``.
        """
        if self.run is None:
            return self
        here, elsewhere = list[Part](), list[Part]()
        sides = {self.run.at: Side.LEFT, self.run.at + 1: Side.RIGHT}
        for part in (*self.parts, *self.lent):
            if part.kind is PartKind.MULL_CASING and part.member in sides:
                here.append(replace(part, side=sides[part.member]))
            elif part.kind is PartKind.MULL_CASING or (part.kind is PartKind.CASING and part.side in self.run.walled):
                elsewhere.append(part)
            else:
                here.append(part)
        return replace(self, parts=tuple(here), lent=(), beside=(*self.beside, *elsewhere))

    @property
    def whole(self) -> Kit:
        """The kit with all that is seen of the openings it is trimmed with, as one."""
        everything = (*self.parts, *self.lent, *self.beside)
        return replace(self, parts=everything, lent=(), beside=()) if self.run else self

    @property
    def mark(self) -> str:
        """The opening's mark."""
        return self.placement.opening.mark

    @property
    def flares(self) -> Flares:
        """How far the interior jambs of each side lean out."""
        return flares_at(self.placement.opening.interior, self.placement.interior_depth)

    @property
    def outside_flares(self) -> Flares:
        """How far the exterior jambs of each side lean out."""
        return flares_outside(self.placement.opening, self.placement.exterior_depth)

    @property
    def outside_is_measured(self) -> bool:
        """Say whether the exterior depths are from the wall, not from the plan."""
        measured = self.placement.opening.measured
        return measured is not None and measured.outside_is_read
