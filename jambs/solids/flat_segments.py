"""Flared jambs that follow an arc in flat segments, measured on the solids: their corners lie on the cone.

Radii are taken from the center of an arc to the corners of a segment's face and back, at the frame and at the room;
the frame's own inner edge, the rough opening and the casing are round.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from jambs.geometry import Vector, dot, tangent
from jambs.job.models.arc_outset import meet
from jambs.job.models.path import area_of, outset
from jambs.job.models.path_edge import FrameEdge
from jambs.job.models.straight_round import ended
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.jambs.shaped_jambs import clear_path
from jambs.place.frame_path import frame_path, rough_path
from jambs.sides import Side
from jambs.solids.arch_checks import PRESS, bearing, boards_on, curved, from_center, sight_radius
from jambs.solids.jambs_round import JambsRound, flat_of
from jambs.solids.lookup import D
from jambs.solids.model import KitSolids, Solid
from jambs.solids.report import TIGHT, JointCheck, Measure
from jambs.solids.shape_measures import near_reveal

FACING = 1e-9
"""A facet looks in a direction within this, as a cosine."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Piece:
    """A flat segment, its chord, and the number of the arc that it follows in the frame's path."""

    at: int
    solid: Solid
    chord: FrameEdge
    flare_deg: float

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
        out: Vector = (math.cos(lean) * x, math.cos(lean) * y, math.sin(lean))
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


def _pieces(solids: KitSolids) -> Iterator[_Piece]:
    """Yield the flat segments of a kit: those of every arc in the order of its path."""
    flat = flat_of(solids.kit)
    if flat is None:
        return
    for i, chord, solid in JambsRound.of(solids).boards.by_edge():
        if i in flat.arcs:
            yield _Piece(at=flat.arcs[i], solid=solid, chord=chord, flare_deg=flat.flares[i])


def flat_measures(solids: KitSolids) -> list[Measure]:
    """Measure reveal, shim space and depth at every flat segment, and the radius of its corners at the room."""
    kit, placement, proud = solids.kit, solids.kit.placement, solids.job.shop.proud
    opening, face = placement.opening, placement.opening.window.frame_face
    sight = outset(frame_path(opening), {side: -face.at(side) for side in Side})
    rough, loose = rough_path(placement), solids.job.shop.grid.step / 2 + TIGHT
    found: list[Measure] = []
    for one in _pieces(solids):
        clear, room = (clear_path(opening, at)[one.at] for at in (kit.frames[0].clear, kit.room))
        assert clear.circle and room.circle and rough[one.at].circle is not None
        depth, at_frame = kit.sides[one.chord.side].greatest + proud, placement.inside_edge
        near = one.radius(clear, at_frame, clear.circle.radius)
        reveal = near - sight_radius(solids.frame[0], sight[one.at])
        asked, name = opening.interior.frame_reveal, f"frame reveal at the corners of the {one.name}"
        found.append(Measure(name=name, asked=asked, found=reveal, tolerance=loose))
        found.append(_behind(solids, one, clear, rough[one.at]))
        far = one.radius(room, at_frame - depth, room.circle.radius)
        name = f"radius of the corners at the room of the {one.name}"
        found.append(
            Measure(name=name, asked=clear.circle.radius + depth * tangent(kit.flares.at(clear.side)), found=far)
        )
        found.append(Measure(name=f"depth of the {one.name}", asked=depth, found=one.solid.high[D] - one.solid.low[D]))
        off = at_frame - one.solid.high[D]
        found.append(Measure(name=f"near edge of the {one.name} to the frame", asked=0.0, found=off))
    return [*found, *_casing_reveals(solids)]


def _behind(solids: KitSolids, one: _Piece, clear: FrameEdge, rough: FrameEdge) -> Measure:
    """Measure the shim space behind the corners of a segment, which stand out a little farther than its middle."""
    assert clear.circle and rough.circle
    lean, cone = math.radians(one.flare_deg), math.radians(solids.kit.flares.at(clear.side))
    half_cosine = math.tan(lean) / math.tan(cone)  # of half the angle that the segment takes
    thick = solids.kit.placement.opening.interior.jamb.thickness / math.cos(lean) / half_cosine
    asked = rough.circle.radius - clear.circle.radius - thick
    back = one.radius(clear, solids.kit.placement.inside_edge, rough.circle.radius - asked, is_back=True)
    tolerance = solids.job.shop.grid.step / 2 + TIGHT
    name = f"shim space behind the corners of the {one.name}"
    return Measure(name=name, asked=asked, found=rough.circle.radius - back, tolerance=tolerance)


def _casing_reveals(solids: KitSolids) -> Iterator[Measure]:
    """Measure the casing reveal along the arcs: from the corners of the segments at the room to the casing."""
    kit, opening = solids.kit, solids.kit.placement.opening
    room, pieces = clear_path(opening, kit.room), list(_pieces(solids))
    at_room = kit.placement.inside_edge - solids.job.shop.proud
    for piece in curved(boards_on(solids, Where.INTERIOR, PartKind.CASING), room):
        arc = room[piece.at]
        assert arc.circle and piece.solid.part
        own = [one for one in pieces if one.at == piece.at]
        corners = [one.radius(arc, at_room - kit.sides[arc.side].greatest, arc.circle.radius) for one in own]
        if corners:
            found, name = from_center(piece.solid, arc)[0] - max(corners), piece.solid.part.position
            asked, near = opening.interior.casing_reveal, near_reveal(solids, solids.inside_slack)
            yield Measure(name=f"casing reveal along the arc at the {name}", asked=asked, found=found, tolerance=near)


def flat_bearing(solids: KitSolids) -> list[JointCheck]:
    """Measure the casing on the edges of flared jambs at the room, from its inner edge to their backs, all at once."""
    kit, flat, trim = solids.kit, flat_of(solids.kit), solids.kit.placement.opening.interior
    if flat is None or solids.inside_slack.gap > TIGHT:
        return []
    jambs, has_bottom = JambsRound.of(solids), trim.style.has_bottom
    lines = []
    for edge, flare in jambs.flares.items():
        deep = kit.sides[edge.side].greatest + solids.job.shop.proud if edge.side in kit.sides else 0.0
        out = deep * tangent(flare) + trim.jamb.thickness / math.cos(math.radians(flare))
        x, y = edge.outward
        moved = 0.0 if edge.side is Side.SILL and not has_bottom and not edge.center else out
        lines.append(_moved(edge, moved * x, moved * y))
    backs = tuple(ended(lines, [meet(lines[i - 1], line) for i, line in enumerate(lines)]))
    reveal = trim.casing_reveal
    cased = outset(
        clear_path(kit.placement.opening, kit.room),
        {**dict.fromkeys(Side, reveal), Side.SILL: reveal if has_bottom else 0.0},
    )
    round_ = sum(edge.length for edge in backs)
    near = round_ * tangent(kit.flares.greatest)
    asked = area_of(backs) - area_of(cased)
    casing, own = (boards_on(solids, Where.INTERIOR, kind) for kind in (PartKind.CASING, PartKind.EXTENSION_JAMB))
    # A flat face under a round one is overlooked now and then where both are pressed by a hair.
    return [bearing("casing", casing, own, asked, 1.0, near, (PRESS, 5 * PRESS, 20 * PRESS))]


def _moved(edge: FrameEdge, x: float, y: float) -> FrameEdge:
    (ax, ay), (bx, by) = edge.start, edge.finish
    return FrameEdge(side=edge.side, start=(ax + x, ay + y), finish=(bx + x, by + y))
