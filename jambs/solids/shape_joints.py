"""Which boards round an opening that is no rectangle touch, and over what area, by closed form."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field

from jambs.geometry import Point, dot, minus, tangent
from jambs.job.models.path import corner_turn_deg, is_arched
from jambs.job.models.path_edge import FrameEdge
from jambs.job.models.straight_round import straight_round
from jambs.job.models.trim import CasingEntry, Corner, Joint
from jambs.length import ROUND_OFF
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.jambs.shaped_jambs import MITERED_UNDER_DEG, SQUARE_DEG
from jambs.parts.trim.sides import planned_sides
from jambs.place.frame_path import rough_path
from jambs.sides import Side
from jambs.solids.depths_round import DepthsRound, exterior_depths, flared_taper, interior_depths, outside_taper
from jambs.solids.jambs_round import JambsRound
from jambs.solids.joints import joint
from jambs.solids.model import KitSolids, Solid
from jambs.solids.report import TIGHT, JointCheck
from jambs.solids.shape_lookup import BoardsRound, boards_round


@dataclass(frozen=True, slots=True, kw_only=True)
class _Box:
    """Boards that close a box: their joint where they do not miter, thickness, widths by corner and rabbet [in]."""

    what: str
    joint: Joint
    thickness: float
    depths: DepthsRound
    rabbet: float = 0.0
    flares: Mapping[FrameEdge, float] = field(default_factory=dict)


def inside_corners(solids: KitSolids) -> list[JointCheck]:
    """Measure the corners of extension jambs and casing inside, and the casing on the jambs' edges."""
    trim, kit = solids.kit.placement.opening.interior, solids.kit
    lying = JambsRound.of(solids)
    jambs, casing = lying.boards, boards_round(solids, Where.INTERIOR, PartKind.CASING)
    found = casing_corners("casing", casing, trim.casing)
    if not jambs:
        return found
    box = _Box(
        what="jamb",
        joint=trim.jamb.joint,
        thickness=trim.jamb.thickness,
        depths=interior_depths(solids),
        rabbet=trim.jamb.rabbet_depth or 0.0 if trim.jamb.joint is Joint.RABBET else 0.0,
        flares=lying.flares,
    )
    strips = {
        side: min(kit.flares.across(side, trim.jamb.thickness) - trim.casing_reveal, trim.casing.width) for side in Side
    }
    wall = solids.inside_slack.gap, flared_taper(solids)
    return [*found, *_box_corners(box, jambs), *on_edges("casing", casing, jambs, trim.casing, strips, wall)]


def outside_corners(solids: KitSolids) -> list[JointCheck]:
    """Measure the corners of exterior jambs, casing and buck, and the casing on the jambs' edges."""
    kit, placement = solids.kit, solids.kit.placement
    trim, buck = placement.opening.exterior, placement.buck
    found = []
    if buck:
        deep = DepthsRound(sides=planned_sides(buck.outer - buck.inner), more=0.0)
        box = _Box(what="buck", joint=Joint.HEAD_OVER_LEGS, thickness=buck.thickness, depths=deep)
        found += _box_corners(box, buck_boards(solids))
    if trim is None:
        return found
    casing = boards_round(solids, Where.EXTERIOR, PartKind.CASING)
    found += casing_corners("exterior casing", casing, trim.casing)
    lying = JambsRound.of(solids, Where.EXTERIOR)
    jambs = lying.boards
    if not jambs:
        return found
    depths, wall = exterior_depths(solids), (solids.outside_slack.gap, outside_taper(solids))
    flares, thick = kit.outside_flares, trim.returns.thickness if trim.returns else trim.jamb.thickness
    box = _Box(what="exterior jamb", joint=Joint.HEAD_OVER_LEGS, thickness=thick, depths=depths, flares=lying.flares)
    strips = {side: min(flares.across(side, thick) - trim.casing_reveal, trim.casing.width) for side in Side}
    found += _box_corners(box, jambs)
    if trim.returns:
        return found
    return [*found, *on_edges("exterior casing", casing, jambs, trim.casing, strips, wall)]


def buck_boards(solids: KitSolids) -> BoardsRound:
    """Find the boards of a buck: straight ones, round an arc too."""
    buck = solids.kit.placement.buck
    path = straight_round(rough_path(solids.kit.placement, buck.set_back if buck else 0.0))
    return boards_round(solids, Where.BUCK, PartKind.LINER_BUCK, PartKind.OUTBOARD_BUCK, path=path)


def _box_corners(box: _Box, boards: BoardsRound) -> list[JointCheck]:
    """Measure how the boards of a box meet: over the whole joint from its edge at the frame to that at the room."""
    found = []
    for turn, one, two, before, after in boards.corners():
        is_mitered = box.joint is Joint.MITER or before.side is after.side or turn < MITERED_UNDER_DEG
        rabbet = box.rabbet if not is_mitered and _is_square(turn, before, after) else 0.0
        flares = box.flares.get(before, 0.0), box.flares.get(after, 0.0)
        thick = box.thickness + rabbet
        width, loose = box.depths.at_corner(before, after), box.depths.loose(before, after, box.thickness)
        asked = corner_area(thick, width, turn, flares, is_mitered=is_mitered)
        tolerance = TIGHT + 2 * asked / width * loose / math.sin(math.radians(turn))
        found.append(joint(_names(box.what, one, two), [one], [two], asked=asked, tolerance=tolerance))
    return found


def corner_area(
    thickness: float, depth: float, turn_deg: float, flares_deg: tuple[float, float], *, is_mitered: bool
) -> float:
    """Area over which two boards of a thickness meet where the path turns [sq in]; ``depth``: square to the wall [in].

    Both faces meet in a line that is longer than the depth, by the cosines of both flares and of what the path turns
    less than a right angle; square to it a miter is ``t √(2 / (1 + k))`` long and a butt ``t / √(1 - k²)``, where ``k``
    is the cosine of the angle between the faces. Without flare: thickness over the cosine of half the turn, over its
    sine.
    """
    one, two = (math.radians(flare) for flare in flares_deg)
    turn = math.radians(turn_deg)
    level = math.cos(one) * math.cos(two)
    between = math.cos(turn) * level + math.sin(one) * math.sin(two)
    long = math.sqrt(2 - 2 * between) if is_mitered else 1.0
    return thickness * long * depth / (math.sin(turn) * level)


def casing_corners(what: str, casing: BoardsRound, entry: CasingEntry) -> list[JointCheck]:
    """Measure the corners of casing: mitered as long as width over cosine of half the turn, butted over the leg."""
    found = []
    for turn, one, two, before, after in casing.corners():
        is_butted = entry.corner is Corner.BUTT and _is_square(turn, before, after)
        long = entry.width if is_butted else entry.width / math.cos(math.radians(turn / 2))
        found.append(joint(_names(what, one, two), [one], [two], asked=long * entry.thickness))
    return found


def on_edges(
    what: str, casing: BoardsRound, jambs: BoardsRound, entry: CasingEntry, strips: dict[Side, float], wall: Point
) -> list[JointCheck]:
    """Every piece of casing bears on the jambs' edges with a strip along its inner edge [in].

    ``wall``: as it was measured, how far a piece may stand off it, and how much its reveal may change [in].

    Where the strips of two sides differ, as jambs flare, a triangle at the corner between them may bear or not.
    """
    differ = max(strips.values()) - min(strips.values())
    if min(strips.values()) <= 0 or is_arched(casing.path):
        return []  # under an arch all of it is measured at once
    found = []
    for i, edge, piece in casing.by_edge():
        strip = strips[edge.side]
        ends = (_strip_end(casing, i, corner, entry, strip) for corner in (i, (i + 1) % len(casing.path)))
        asked = strip * (inner_length(piece) + sum(ends))
        assert piece.part is not None
        name = f"the {what}'s {piece.part.position} {piece.name} and the edges of the jamb"
        slack, more = wall
        near = TIGHT + slack * asked + more * edge.length + 2 * differ * max(strips.values())
        found.append(joint(name, [piece], jambs.all, asked=asked, slack=slack, tolerance=near))
    return found


def inner_length(piece: Solid) -> float:
    """Length of the inner edge of a piece of casing on its back [in], along it as it hangs."""
    seat, thick = piece.seat, piece.part.thickness if piece.part else 0.0
    looking = [facet for facet in piece.facets if facet.faces((-seat.across[0], -seat.across[1], -seat.across[2]))]
    corners = [minus(corner, seat.origin) for facet in looking for corner in facet.loops[0]]
    along = [dot(corner, seat.along) for corner in corners if abs(dot(corner, seat.through) - thick) < TIGHT]
    return max(along) - min(along)


def _strip_end(casing: BoardsRound, i: int, corner: int, entry: CasingEntry, strip: float) -> float:
    """How much farther than the inner edge a strip reaches at one end, in the mean of its width [in]."""
    if not (casing.boards[corner - 1] and casing.boards[corner]):
        along, up = casing.path[i].way  # it stands on a stool, a sill or a floor: a slope is cut level there
        return 0.0 if casing.path[i].side.is_leg else strip / 2 * abs(along / up)
    turn = corner_turn_deg(casing.path, corner)
    if entry.corner is not Corner.BUTT or not _is_square(turn, casing.path[corner - 1], casing.path[corner]):
        return strip / 2 * tangent(turn / 2)
    return 0.0 if casing.path[i].side.is_leg else strip - entry.width - entry.overhang


def _is_square(turn: float, before: FrameEdge, after: FrameEdge) -> bool:
    """Say whether a leg and a level board meet square; a peak may be square too, and is none."""
    return before.side is not after.side and abs(turn - SQUARE_DEG) < ROUND_OFF


def _names(what: str, one: Solid, two: Solid) -> str:
    assert one.part is not None and two.part is not None
    return f"the {what}'s {one.part.position} and {two.part.position}, {one.name} and {two.name},"
