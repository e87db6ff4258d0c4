"""A part: its kind, its blank and its cuts, and where it sits; everything else of it follows from these.

Board coordinates as in ``jambs.parts.board.cuts``. The finished solid is *outline × profile less pockets*, less the
wedges of its end bevels: the outline (u, v) swept through the thickness, met with the profile (v, w) swept along the
grain, less boxes.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from jambs.geometry import Outline, Plane, Vector, added, dot, minus
from jambs.job.models.shop import Board
from jambs.length import ROUND_OFF
from jambs.outlines import from_lowest
from jambs.parts.board.arrises import Arris, arris_ends
from jambs.parts.board.cuts import ArcCut, Crosscut, Cut, EdgeBevel, PlaneCut, Rip, Taper
from jambs.parts.board.kinds import (
    Crew,
    PartKind,
    Where,
    is_one_of_several,
    member_words,
    position_words,
    run_words,
    told_name,
)
from jambs.parts.board.panel_layout import PanelLayout
from jambs.parts.board.plies import Plies
from jambs.parts.board.sawing import CutListError, Pocket, Silhouettes, pockets_of, profile_of, saw
from jambs.parts.board.touches import Return, ReturnBend, Scribe, ToOpening, Touch
from jambs.sides import BoardEnd, Side


@dataclass(frozen=True, slots=True, kw_only=True)
class Seat:
    """Where a part sits: the wall coordinates (x, y, d) of its board's corner (0, 0, 0) and of its three directions.

    x right, y up, d outward; origin at the lower left corner of the window frame and the finished face.
    """

    origin: Vector
    along: Vector
    across: Vector
    through: Vector

    def at(self, u: float, v: float, w: float) -> Vector:
        """Return the wall coordinates of a point of the board."""
        o, a, b, c = self.origin, self.along, self.across, self.through
        x, y, d = (o[i] + u * a[i] + v * b[i] + w * c[i] for i in range(3))
        return (x, y, d)

    def board_point(self, point: Vector) -> Vector:
        """Return the board coordinates of a point of the wall."""
        from_corner = minus(point, self.origin)
        return (dot(from_corner, self.along), dot(from_corner, self.across), dot(from_corner, self.through))

    def plane_on_board(self, plane: Plane) -> Plane:
        """Return a plane of the wall in board coordinates: a joint as the saw has to follow it."""
        tip = added(plane.start, plane.way)
        start, finish, keep = (self.board_point(point) for point in (plane.start, plane.finish, plane.keep))
        return Plane(start=start, finish=finish, way=minus(self.board_point(tip), start), keep=keep)

    @property
    def outward(self) -> Vector:
        """The side of the opening to which its back looks: up, down, left or right, leaned though it may be."""
        x, y, _ = self.through
        return (0.0, math.copysign(1.0, y), 0.0) if abs(y) > abs(x) else (math.copysign(1.0, x), 0.0, 0.0)

    @property
    def ends(self) -> tuple[BoardEnd, BoardEnd]:
        """Where the start and the finish of the board are."""
        across, up, _ = self.along
        # At 45° all are called left and right, whichever way the sum of their sine and cosine fell.
        if abs(up) > abs(across) + ROUND_OFF:
            low, high, ahead = BoardEnd.BOTTOM, BoardEnd.TOP, up
        else:
            low, high, ahead = BoardEnd.LEFT, BoardEnd.RIGHT, across
        return (low, high) if ahead > 0 else (high, low)


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelFrame:
    """A frame with panels that a jamb is cut from: how it is laid out, and its stiles, rails and panels as parts.

    Every member has the jamb's mark and a letter, and a seat where it stands in the wall.
    """

    layout: PanelLayout
    members: tuple[Part, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PartBlank:
    """What a part is cut from: its stock, its thickness [in], and the board at hand it comes out of.

    ``board``: None where none of that stock and thickness is listed. ``strips``: widths to glue up where no board at
    hand is wide enough, else empty; as they are ripped, before ``jointing`` comes off each edge that is glued.
    ``strip_length``: of each, longer than the part [in]. ``is_metal``: a strip of sheet, which is bent.
    ``plies``: of a bent lamination, resawn from the strips; ``thickness`` is then that of the board.
    ``panels``: of a jamb that is a frame with panels, glued up before it is cut as one board.
    ``crew``: who makes it. ``courses``: widths of the boards that its pieces are crosscut from, from below, of cladding
    that is laid in courses along it [in].
    """

    stock: str
    thickness: float
    board: Board | None = None
    strips: tuple[float, ...] = ()
    strip_length: float = 0.0
    jointing: float = 0.0
    is_metal: bool = False
    plies: Plies | None = None
    panels: PanelFrame | None = None
    crew: Crew = Crew.CARPENTER
    courses: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PartIdentity:
    """What a part is, whatever its sizes and its mark: the same from one issue of the papers to the next.

    ``is_one_of_several``: its side is parted into segments, edges or stacked frames, none of which is the board that
    runs along a whole side.
    """

    opening: str
    kind: PartKind
    where: Where
    side: Side
    member: int
    is_one_of_several: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One board of an opening's kit.

    ``mark``: opening mark and a running number, given when the kit is complete, as is ``opening``. ``member``: which
    one, where a side has several of a kind, and ``members`` how many. ``runs``: into how many edges its side is parted
    in a shape that is no rectangle; ``member`` then counts them from left to right. ``is_on_wall``: a mull casing
    lies on the wall between openings that are trimmed as one. ``touches``: what is done by hand and leaves the modeled
    shape as it is. ``in_place``: cuts of the strip that is seen in place, where ``cuts`` make the flat blank of bent
    metal; or of a bent lamination the block around it, ``in_place_rise`` thick, less all but it.
    """

    mark: str = ""
    opening: str = ""
    kind: PartKind
    side: Side
    where: Where
    member: int = 1
    members: int = 1
    runs: int | None = None
    is_on_wall: bool = False
    blank: PartBlank
    cuts: tuple[Cut, ...]
    touches: tuple[Touch, ...] = ()
    in_place: tuple[Cut, ...] = ()
    in_place_rise: float = 0.0
    seat: Seat

    @property
    def identity(self) -> PartIdentity:
        """What the part is, whatever its sizes and its mark."""
        return PartIdentity(
            opening=self.opening,
            kind=self.kind,
            where=self.where,
            side=self.side,
            member=self.member,
            is_one_of_several=is_one_of_several(self.kind, self.members, self.runs),
        )

    @property
    def name(self) -> str:
        """The part in trade words, for printing."""
        return self.kind.words

    @property
    def position(self) -> str:
        """Head, left leg, …, for printing."""
        where = position_words(self.kind, self.side, is_on_wall=self.is_on_wall)
        where += member_words(self.kind, self.member, self.members, is_on_wall=self.is_on_wall)
        return where + run_words(self.member, self.runs) if self.runs else where

    @property
    def told(self) -> str:
        """The part with its set and its place: ``interior casing, left leg``; ``stool``."""
        name = told_name(self.name, self.where.value)
        return name if self.kind.says_side else f"{name}, {self.position}"

    @property
    def stock(self) -> str:
        """What it is made of."""
        return self.blank.stock

    @property
    def thickness(self) -> float:
        """Thickness of the blank [in]."""
        return self.blank.plies.total if self.blank.plies else self.blank.thickness

    @property
    def strips(self) -> tuple[float, ...]:
        """Widths of the strips to glue up where no board at hand is wide enough, as ripped [in]."""
        return self.blank.strips

    @property
    def frame_members(self) -> tuple[Part, ...]:
        """Stiles, rails and panels of a jamb that is made as a frame; nothing of one board."""
        return self.blank.panels.members if self.blank.panels else ()

    @property
    def is_wood(self) -> bool:
        """Say whether the carpenter saws it from wood: it is not bent, nor left by another crew."""
        return not self.is_bent and self.crew is Crew.CARPENTER

    @property
    def is_bent(self) -> bool:
        """Say whether it is a strip of metal, which is bent."""
        return self.blank.is_metal

    @property
    def is_lining(self) -> bool:
        """Say whether it is bent by a profile of its own: metal that lines the opening, or covers a mull."""
        return any(isinstance(touch, ReturnBend) for touch in self.touches)

    @property
    def crew(self) -> Crew:
        """Who makes it."""
        return self.blank.crew

    @property
    def width(self) -> float:
        """The rip: the board's greatest width [in]."""
        return next(cut.width for cut in self.cuts if isinstance(cut, Rip))

    @property
    def length(self) -> float:
        """The crosscut: the board's greatest length, long point to long point [in]."""
        return next(cut.length for cut in self.cuts if isinstance(cut, Crosscut))

    @property
    def taper(self) -> Taper | None:
        """The taper of its far edge, where it has one."""
        return next((cut for cut in self.cuts if isinstance(cut, Taper)), None)

    @property
    def silhouettes(self) -> Silhouettes:
        """The board as its cut list leaves it, seen on the face, on the end and on the edge.

        Raises:
            CutListError: the list has no rip or no crosscut.
        """
        try:
            return saw(self.shown_cuts, thickness=self._shown_thickness)
        except CutListError as error:
            raise CutListError(f"{self.mark}: {error}") from None

    @property
    def is_leaned(self) -> bool:
        """Say whether it is a jamb that leans: flared, its long edges beveled."""
        return self.kind.is_jamb and any(isinstance(cut, EdgeBevel) for cut in self.cuts)

    @property
    def is_compound(self) -> bool:
        """Say whether it is an interior jamb that leans or meets one that does: no outline shows all of it."""
        is_jamb = self.kind is PartKind.EXTENSION_JAMB or (self.kind is PartKind.EXTERIOR_JAMB and self.is_leaned)
        return is_jamb and any(isinstance(cut, EdgeBevel | PlaneCut) for cut in self.cuts)

    @property
    def corners(self) -> dict[Arris, tuple[Vector, Vector]]:
        """Both ends of each of its four arrises, as beveled and cut to length (u, v, w) [in]."""
        return arris_ends(self.silhouettes.sizes, self.cuts)

    @property
    def outline(self) -> Outline:
        """The face of the board (u, v) [in]."""
        return from_lowest(self.silhouettes.face)

    @property
    def profile(self) -> Outline:
        """The end of the board (v, w), without grooves [in]."""
        return profile_of(self.shown_cuts, thickness=self._shown_thickness)

    @property
    def pockets(self) -> tuple[Pocket, ...]:
        """Rabbets of the ends and grooves, as boxes [in]."""
        return pockets_of(self.shown_cuts, thickness=self._shown_thickness)

    @property
    def is_plain(self) -> bool:
        """Say whether the part is a plain board: ripped parallel and cut square."""
        return not any(not isinstance(cut, Rip | Crosscut) for cut in self.shown_cuts)

    @property
    def arcs(self) -> tuple[ArcCut, ...]:
        """The curves that its sides are sawn to."""
        return tuple(cut for cut in self.shown_cuts if isinstance(cut, ArcCut))

    @property
    def is_sawn_on_edge(self) -> bool:
        """Say whether its curves are sawn with the board on its edge: its face is hollow."""
        return any(not cut.side.is_on_face for cut in self.arcs)

    @property
    def is_bent_in_one(self) -> bool:
        """Say whether it is one lamination that is bent to several arcs."""
        return self.blank.plies is not None and bool(self.blank.plies.pieces)

    @property
    def curved_outline(self) -> Outline:
        """The outline that shows its curves: of its edge (u, w) if it is sawn on it, else of its face (u, v) [in]."""
        return from_lowest(self.silhouettes.edge if self.is_sawn_on_edge else self.silhouettes.face)

    def standing_outlines(self) -> tuple[tuple[Vector, ...], tuple[Vector, ...]]:
        """Return the outline that shows its shape, on both of its sides, where they stand in the wall [in]."""
        if self.is_sawn_on_edge:
            near, far = (tuple(self.seat.at(u, v, w) for u, w in self.curved_outline) for v in (0.0, self.width))
            return near, far
        face, back = (tuple(self.seat.at(u, v, w) for u, v in self.outline) for w in (0.0, self.thickness))
        return face, back

    @property
    def is_scribed(self) -> bool:
        """Say whether its far edge is scribed to the wall."""
        return any(isinstance(touch, Scribe) for touch in self.touches)

    @property
    def is_cut_to_opening(self) -> bool:
        """Say whether it is cut to length to the opening that another crew finishes."""
        return any(isinstance(touch, ToOpening) for touch in self.touches)

    @property
    def is_returned(self) -> bool:
        """Say whether its ends are returned to the wall."""
        return any(isinstance(touch, Return) for touch in self.touches)

    @property
    def is_laminated(self) -> bool:
        """Say whether it is bent from plies."""
        return self.blank.plies is not None

    @property
    def shown_cuts(self) -> tuple[Cut, ...]:
        """The cuts that leave it as it is seen in place."""
        return self.in_place or self.cuts

    @property
    def _shown_thickness(self) -> float:
        return self.in_place_rise or self.thickness


def sawn_of(part: Part) -> tuple[Part, ...]:
    """Return what is sawn of boards for a part: the part, or the stiles, rails and panels that it is made of."""
    return part.frame_members or (part,)
