"""Stool and apron: the flat board at the sill the legs stand on, and the casing under it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from jambs.findings import Subject, SubjectKind
from jambs.geometry import DOWN, HALF_RIGHT_DEG, INWARD, LEFT, OUTWARD, Point
from jambs.job.models.path_edge import FramePath
from jambs.job.models.shop import Shop
from jambs.job.models.trim import ApronEnds, ApronEntry, InteriorTrim, StoolEntry
from jambs.length import HALF_64TH
from jambs.parts.board.cuts import (
    CannotBeCut,
    Crosscut,
    Cut,
    Edge,
    EdgeRabbet,
    End,
    EndBevel,
    MidNotch,
    Notch,
    Rip,
    SlantedNotch,
    Taper,
)
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.parts.board.touches import Return
from jambs.parts.findings.kit_findings import StoolCannotLap
from jambs.parts.kit.kit import FittedSide, WallBetween
from jambs.parts.shapes.clear import ClearOpening
from jambs.parts.shapes.feet import feet
from jambs.place.flares import Flares
from jambs.sides import LEGS, Side

SAME_SIZE = HALF_64TH
RETURN_DEG = HALF_RIGHT_DEG
LEAST_TONGUE = 1 / 8
"""The tongue that laps under the frame is at least this thick [in]; common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NotchLengths:
    """How long a notch for a horn is, along the stool [in]: at the frame edge, and at the finished wall."""

    at_frame: float
    at_wall: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LegBacks:
    """What the legs on a stool take of it [in]: their thickness along the wall, and how they flare.

    ``depths``: frame → room edge of the boards of each side, where each is deepest. ``play``: horn → finished wall.
    """

    flares: Flares
    thickness: float
    depths: dict[Side, float]
    play: float

    @classmethod
    def of(cls, trim: InteriorTrim, flares: Flares, sides: dict[Side, FittedSide], shop: Shop) -> LegBacks:
        """Return the backs of the legs of an opening; between returns nothing stands on the stool."""
        depths = {side: fitted.greatest + shop.proud for side, fitted in sides.items()}
        return cls(flares=flares, thickness=trim.beside_stool, depths=depths, play=shop.horn_play or 0.0)

    def notch(self, leg: Side, length: float, room_width: float, sill: FittedSide, rabbet: float) -> NotchLengths:
        """Return the notch at one leg: it follows the leg's back, from the stool's edge under the frame to the horn."""
        flare = self.flares.at(leg)
        if not flare:
            square = (length - room_width - 2 * self.thickness) / 2
            return NotchLengths(at_frame=square, at_wall=square)
        at_room = (length - room_width) / 2 - self.flares.across(leg, self.thickness)
        at_edge = at_room + self.flares.out(leg, self.depths[leg] + rabbet)
        return NotchLengths(
            at_frame=at_edge, at_wall=at_edge - self.flares.out(leg, sill.depth_at(leg) + rabbet + self.play)
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class StoolEnds:
    """Where slants or an arc that stand on a stool cross its top, at the left and at the right (x) [in].

    ``backs``: of the jambs at the room, ``at_frame``: at the frame; ``outer``: edges of the casing. ``sides``: those
    of the opening that stand there.
    """

    backs: Point
    at_frame: Point
    outer: Point
    sides: tuple[Side, Side]

    @classmethod
    def of(cls, room: FramePath, frame: FramePath, trim: InteriorTrim, flares: Flares) -> StoolEnds:
        """Return them for the paths of the clear opening at room and frame, whose sill is the top of the stool."""
        thick = {side: flares.across(side, trim.beside_stool) for side in Side}
        sill = next(i for i, edge in enumerate(room) if edge.side is Side.SILL)
        return cls(
            backs=feet(room, thick),
            at_frame=feet(frame, thick),
            outer=feet(room, trim.past_clear),
            sides=(room[(sill + 1) % len(room)].side, room[sill - 1].side),
        )

    def with_backs(self, room: Point, frame: Point) -> StoolEnds:
        """Return them with the backs of other boards there, at the room and at the frame: of flat segments."""
        return replace(self, backs=room, at_frame=frame)

    def notches(self, legs: LegBacks, ends: Point, sill: FittedSide, rabbet: float) -> tuple[NotchLengths, ...]:
        """Return the notches at the right and at the left end (x) of a stool: along the backs of what stands there."""
        depths = (sill.start_depth, sill.finish_depth)
        found = [
            self._notch(at, legs.depths[side], end, (-rabbet, depth + legs.play))
            for at, (side, end, depth) in enumerate(zip(self.sides, ends, depths, strict=True))
        ]
        return tuple(found[::-1])

    def _notch(self, at: int, depth: float, end: float, runs: Point) -> NotchLengths:
        """``depth``: frame → room edge of the board; ``runs``: frame → both ends of the notch, toward the room [in]."""
        if self.backs[at] == self.at_frame[at]:
            square = abs(end - self.backs[at])
            return NotchLengths(at_frame=square, at_wall=square)
        lean = (self.backs[at] - self.at_frame[at]) / depth
        near, far = (abs(end - self.at_frame[at] - lean * run) for run in runs)
        return NotchLengths(at_frame=near, at_wall=far)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Sizes:
    """What a stool is cut to [in].

    It starts at the right, at ``start``. ``start_depth``, ``finish_depth``: of its notches, from its edge under the
    frame, play counted in. ``step``: its top → the bottom of the frame.
    """

    length: float
    start: float
    start_width: float
    finish_width: float
    notches: tuple[NotchLengths, NotchLengths]
    start_depth: float
    finish_depth: float
    step: float

    @property
    def is_tapered(self) -> bool:
        return self.start_width != self.finish_width


def stool_length(clear: ClearOpening, trim: InteriorTrim, stool: StoolEntry) -> float:
    """Horn end → horn end: clear width, casing reveals, casings and the horns past them [in].

    Without casing the horns go past the corners of the returns, or the backs of the jambs.
    """
    return clear.width + 2 * (trim.past_clear + stool.horn)


def stool_length_at(casing: Point, stool: StoolEntry) -> float:
    """Horn end → horn end under a shape without two legs: outer edges of the casing (x), and horns past them [in]."""
    return casing[1] - casing[0] + 2 * stool.horn


def make_stool(
    clear: ClearOpening,
    sill: FittedSide,
    trim: InteriorTrim,
    stool: StoolEntry,
    inside_edge: float,
    legs: LegBacks,
    ends: StoolEnds | None = None,
    walls: Sequence[WallBetween] = (),
) -> Part:
    """Make the stool: its straight near edge at the frame, notched at both ends for the horns, its far edge the nosing.

    Width = depth at the sill + rabbet under the frame + casing thickness + nosing. ``clear``: between the legs at the
    room, ``inside_edge``: depth of the frame's inside edge [in]; ``ends``: where no upright legs stand on it;
    ``walls``: between openings that it lies under, round which it is notched.

    Raises:
        CannotBeCut: the rabbet cannot lap under the frame.
    """
    sizes = _sizes(clear, sill, trim, stool, legs, ends)
    if stool.rabbet and sizes.step > stool.thickness - LEAST_TONGUE:
        about = Subject(kind=SubjectKind.PART, name=PartKind.STOOL.words)
        raise CannotBeCut(StoolCannotLap(subject=about, step=sizes.step, thickness=stool.thickness))
    return Part(
        kind=PartKind.STOOL,
        side=Side.SILL,
        where=Where.INTERIOR,
        blank=PartBlank(stock=stool.stock, thickness=stool.thickness),
        cuts=_cuts(sizes, stool, _round_walls(sizes, walls, legs.thickness)),
        seat=Seat(
            origin=(sizes.start, clear.bottom, inside_edge + stool.rabbet),
            along=LEFT,
            across=INWARD,
            through=DOWN,
        ),
    )


def _sizes(
    clear: ClearOpening,
    sill: FittedSide,
    trim: InteriorTrim,
    stool: StoolEntry,
    legs: LegBacks,
    ends: StoolEnds | None,
) -> _Sizes:
    front = trim.casing.thickness + stool.nosing
    start, finish = sill.finish_depth + stool.rabbet, sill.start_depth + stool.rabbet
    if ends is None:
        length = stool_length(clear, trim, stool)
        right = (clear.left + clear.right + length) / 2
        notches = tuple(legs.notch(leg, length, clear.width, sill, stool.rabbet) for leg in LEGS[::-1])
    else:
        length, right = stool_length_at(ends.outer, stool), ends.outer[1] + stool.horn
        notches = ends.notches(legs, (right - length, right), sill, stool.rabbet)
    return _Sizes(
        length=length,
        start=right,
        start_width=start + front,
        finish_width=finish + front,
        notches=(notches[0], notches[1]),
        start_depth=start + legs.play,
        finish_depth=finish + legs.play,
        step=max(clear.bottom, 0.0),
    )


def _round_walls(sizes: _Sizes, walls: Sequence[WallBetween], thickness: float) -> list[MidNotch]:
    """Notch it round walls between openings, from back of leg to back of leg, as deep as it is at their deeper edge."""
    found = []
    for wall in reversed(walls):
        start, along = sizes.start - (wall.high - thickness), wall.width - 2 * thickness
        slope = (sizes.finish_depth - sizes.start_depth) / sizes.length
        deep = max(sizes.start_depth + slope * place for place in (start, start + along))
        found.append(MidNotch(edge=Edge.NEAR, start=start, along=along, across=deep))
    return found


def _cuts(sizes: _Sizes, stool: StoolEntry, round_walls: Sequence[MidNotch]) -> tuple[Cut, ...]:
    cuts: list[Cut] = [Rip(width=max(sizes.start_width, sizes.finish_width))]
    if sizes.is_tapered:
        cuts.append(Taper(start_width=sizes.start_width, finish_width=sizes.finish_width))
    cuts.append(Crosscut(length=sizes.length))
    for end, depth, notch in zip(End, (sizes.start_depth, sizes.finish_depth), sizes.notches, strict=True):
        if notch.at_wall > SAME_SIZE:
            cuts.append(_notch(end, depth, notch))
    cuts += round_walls
    if stool.rabbet:
        cuts.append(EdgeRabbet(edge=Edge.NEAR, across=stool.rabbet, depth=sizes.step))
    return tuple(cuts)


def _notch(end: End, depth: float, lengths: NotchLengths) -> Notch:
    along, inner = lengths.at_frame, lengths.at_wall
    if along == inner:
        return Notch(end=end, edge=Edge.NEAR, along=along, across=depth)
    return SlantedNotch(end=end, edge=Edge.NEAR, along=along, across=depth, along_inside=inner)


def make_apron(
    clear: ClearOpening, trim: InteriorTrim, apron: ApronEntry, stool: StoolEntry, ends: StoolEnds | None = None
) -> Part:
    """Make the apron: casing outside → casing outside, under the stool."""
    length = clear.width + 2 * trim.past_clear if ends is None else ends.outer[1] - ends.outer[0]
    returned = apron.ends is ApronEnds.RETURNED
    cuts: list[Cut] = [Rip(width=apron.width), Crosscut(length=length)]
    if returned:
        cuts += [EndBevel(end=end, angle_deg=RETURN_DEG) for end in End]
    x = (clear.left + clear.right + length) / 2 if ends is None else ends.outer[1]
    return Part(
        kind=PartKind.APRON,
        side=Side.SILL,
        where=Where.INTERIOR,
        blank=PartBlank(stock=apron.stock, thickness=apron.thickness),
        cuts=tuple(cuts),
        touches=tuple(Return(end=end) for end in End) if returned else (),
        seat=Seat(
            origin=(x, clear.bottom - stool.thickness, -apron.thickness),
            along=LEFT,
            across=DOWN,
            through=OUTWARD,
        ),
    )
