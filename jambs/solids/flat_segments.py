"""Flared jambs that follow an arc in flat segments, measured on the solids: their corners lie on the cone.

Radii are taken from the center of an arc to the corners of a segment's face and back, at the frame and at the room;
the frame's own inner edge, the rough opening and the casing are round. Inside and outside alike.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from jambs.geometry import FINE, Vector, dot, tangent
from jambs.job.models.arc_outset import meet
from jambs.job.models.path import area_of, outset
from jambs.job.models.path_edge import FrameEdge
from jambs.job.models.straight_round import ended
from jambs.job.models.windows import FrameFace
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.trim.sides import deepest
from jambs.place.frame_path import frame_path, rough_path
from jambs.sides import Side
from jambs.solids.arch_checks import boards_on, curved, from_center, sight_radius
from jambs.solids.depths_round import exterior_depths, exterior_sides
from jambs.solids.jambs_round import FlatSide, JambsRound
from jambs.solids.joints import joint
from jambs.solids.lookup import D
from jambs.solids.model import KitSolids, Solid
from jambs.solids.report import TIGHT, JointCheck, Measure
from jambs.solids.shape_measures import near_reveal

FACING = 1e-9
"""A facet looks in a direction within this, as a cosine."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Piece:
    """A flat segment, its chord, and the number of the arc that it follows in the frame's path.

    ``way``: -1 where it runs out toward the room, 1 outside.
    """

    at: int
    solid: Solid
    chord: FrameEdge
    flare_deg: float
    way: float

    @property
    def name(self) -> str:
        """Where it lies and what it is."""
        assert self.solid.part is not None
        return f"{self.solid.part.position} {self.solid.part.name}"

    def radius(self, arc: FrameEdge, depth: float, asked: float, *, is_back: bool = False) -> float:
        """How far a corner of its face, or of its back, lies from the center of an arc at a depth of the wall [in].

        Of its corners there the one that is nearest to what was asked: toward a leg it ends on the leg.
        """
        lean, (x, y) = math.radians(self.flare_deg), self.chord.outward
        out: Vector = (math.cos(lean) * x, math.cos(lean) * y, -self.way * math.sin(lean))
        sign = 1.0 if is_back else -1.0
        assert arc.center is not None
        corners = [
            corner
            for facet in self.solid.facets
            if sign * dot(facet.normal, out) > 1 - FACING
            for corner in facet.loops[0]
            if abs(corner[D] - depth) < TIGHT
        ]
        radii = [math.dist(corner[:2], arc.center) for corner in corners]
        return min(radii, key=lambda one: abs(one - asked), default=math.nan)


def _pieces(solids: KitSolids, side: FlatSide) -> Iterator[_Piece]:
    """Yield the flat segments of one side of the wall: those of every arc in the order of its path."""
    flat = side.flat
    for i, chord, solid in JambsRound.of(solids, side.where).boards.by_edge():
        if i in flat.arcs:
            yield _Piece(at=flat.arcs[i], solid=solid, chord=chord, flare_deg=flat.flares[i], way=side.way)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Asked:
    """What the job asks along the arcs on one side of the wall [in], and the frame's solid that is seen there.

    ``face``: width of the frame that is seen; ``near``: how far a casing reveal may be off.
    """

    frame: Solid
    face: FrameFace
    frame_reveal: float
    casing_reveal: float
    near: float
    words: str

    @classmethod
    def of(cls, solids: KitSolids, where: Where) -> _Asked:
        opening = solids.kit.placement.opening
        if where is Where.INTERIOR:
            inside, near = opening.interior, near_reveal(solids, solids.inside_slack)
            return cls(
                frame=solids.frame[0],
                face=opening.window.frame_face,
                frame_reveal=inside.frame_reveal,
                casing_reveal=inside.casing_reveal,
                near=near,
                words="",
            )
        trim, near = opening.exterior, near_reveal(solids, solids.outside_slack)
        assert trim is not None
        return cls(
            frame=solids.frame[-1],
            face=opening.window.outside_face,
            frame_reveal=trim.frame_reveal,
            casing_reveal=trim.casing_reveal,
            near=near,
            words="exterior ",
        )


def flat_measures(solids: KitSolids, side: FlatSide) -> list[Measure]:
    """Measure reveal, shim space inside and depth at every flat segment, and the radius of its far corners."""
    asked, opening = _Asked.of(solids, side.where), solids.kit.placement.opening
    sight = outset(frame_path(opening), {one: -asked.face.at(one) for one in Side})
    loose, end = solids.job.shop.grid.step / 2 + TIGHT, "room" if side.where is Where.INTERIOR else "trim plane"
    found: list[Measure] = []
    for one in _pieces(solids, side):
        begins, ends = side.begins[one.at], side.ends[one.at]
        assert begins.circle and ends.circle
        reveal = one.radius(begins, side.start, begins.circle.radius) - sight_radius(asked.frame, sight[one.at])
        name = f"{asked.words}frame reveal at the corners of the {one.name}"
        found.append(Measure(name=name, asked=asked.frame_reveal, found=reveal, tolerance=loose))
        if side.where is Where.INTERIOR:
            found.append(_behind(solids, one, begins))
        wide = begins.circle.radius + side.deep * tangent(side.flares.at(begins.side))
        far = one.radius(ends, one.solid.high[D] if side.way > 0 else side.far, ends.circle.radius)
        name = f"radius of the corners at the {end} of the {asked.words}{one.name}"
        found.append(Measure(name=name, asked=wide, found=far))
        deep = one.solid.high[D] - one.solid.low[D]
        wide = exterior_depths(solids).along(one.chord)[0] if side.way > 0 else side.deep
        found.append(Measure(name=f"depth of the {asked.words}{one.name}", asked=wide, found=deep))
        off = side.start - (one.solid.high[D] if side.way < 0 else one.solid.low[D])
        name = f"near edge of the {asked.words}{one.name} to where jambs begin"
        found.append(Measure(name=name, asked=0.0, found=off))
    return [*found, *_casing_reveals(solids, side, asked)]


def _behind(solids: KitSolids, one: _Piece, clear: FrameEdge) -> Measure:
    """Measure the shim space behind the corners of a segment, which stand out a little farther than its middle."""
    rough = rough_path(solids.kit.placement)[one.at]
    assert clear.circle and rough.circle
    lean, cone = math.radians(one.flare_deg), math.radians(solids.kit.flares.at(clear.side))
    half_cosine = math.tan(lean) / math.tan(cone)  # of half the angle that the segment takes
    thick = solids.kit.placement.opening.interior.jamb.thickness / math.cos(lean) / half_cosine
    asked = rough.circle.radius - clear.circle.radius - thick
    back = one.radius(clear, solids.kit.placement.inside_edge, rough.circle.radius - asked, is_back=True)
    tolerance = solids.job.shop.grid.step / 2 + TIGHT
    name = f"shim space behind the corners of the {one.name}"
    return Measure(name=name, asked=asked, found=rough.circle.radius - back, tolerance=tolerance)


def _casing_reveals(solids: KitSolids, side: FlatSide, asked: _Asked) -> Iterator[Measure]:
    """Measure the casing reveal along the arcs: from the corners of the segments where they end to the casing."""
    pieces, less = list(_pieces(solids, side)), _less_deep(solids, side)
    for piece in curved(boards_on(solids, side.where, PartKind.CASING), side.ends):
        arc = side.ends[piece.at]
        assert arc.circle and piece.solid.part
        own = [one for one in pieces if one.at == piece.at]
        corners = [one.radius(arc, side.far, arc.circle.radius) for one in own]
        if corners:
            found = from_center(piece.solid, arc)[0] - max(corners)
            name = f"{asked.words}casing reveal along the arc at the {piece.solid.part.position}"
            reveal = asked.casing_reveal + less * tangent(side.flares.at(arc.side))
            yield Measure(name=name, asked=reveal, found=found, tolerance=asked.near)


def _less_deep(solids: KitSolids, side: FlatSide) -> float:
    """How much less deep jambs along arcs are than the deepest outside, round which all casing is laid out [in]."""
    if side.where is Where.INTERIOR:
        return 0.0
    return solids.kit.placement.outside_edge + deepest(exterior_sides(solids)) - side.far


def flat_bearing(solids: KitSolids, side: FlatSide) -> list[JointCheck]:
    """Measure the casing on the far edges of flared jambs, from its inner edge to their backs, all at once."""
    is_inside = side.where is Where.INTERIOR
    if (solids.inside_slack if is_inside else solids.outside_slack).gap > TIGHT:
        return []
    trim, asked = solids.kit.placement.opening, _Asked.of(solids, side.where)
    jamb = trim.interior.jamb if is_inside or trim.exterior is None else trim.exterior.jamb
    jambs, lines = JambsRound.of(solids, side.where), []
    for edge, flare in jambs.flares.items():
        x, y = edge.outward
        is_board = side.has_bottom or edge.side is not Side.SILL or bool(edge.center)
        back = jamb.thickness / math.cos(math.radians(flare)) if is_board else 0.0
        # A stool lies level; a sill outside has fallen.
        out = side.deep * tangent(flare) + back if is_board or not is_inside else 0.0
        lines.append(_moved(edge, out * x, out * y))
    backs = tuple(ended(lines, [meet(lines[i - 1], line) for i, line in enumerate(lines)]))
    reveal = asked.casing_reveal
    below = reveal if side.has_bottom else 0.0
    cased = outset(side.ends, {**dict.fromkeys(Side, reveal), Side.SILL: below})
    area = area_of(backs) - area_of(cased)
    kind = PartKind.EXTENSION_JAMB if is_inside else PartKind.EXTERIOR_JAMB
    casing, own = (boards_on(solids, side.where, one) for one in (PartKind.CASING, kind))
    name = f"the {asked.words}casing and the edges of the jambs"
    # By their faces: the kernel overlooks now and then what a round solid pressed into one that leans has of it.
    near = FINE * sum(edge.length for edge in cased)
    boards = ([*{one.solid.name: one.solid for one in some}.values()] for some in (casing, own))
    return [joint(name, *boards, asked=area, tolerance=TIGHT + near)]


def _moved(edge: FrameEdge, x: float, y: float) -> FrameEdge:
    (ax, ay), (bx, by) = edge.start, edge.finish
    return FrameEdge(side=edge.side, start=(ax + x, ay + y), finish=(bx + x, by + y))
