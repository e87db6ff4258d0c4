"""An opening that is no rectangle measured on the solids: every edge of its path against what the job asked for.

Everything is measured square to an edge of the frame's path, from the frame's own faces on: frame reveal, casing
reveal, shim space, depth, sealant joint. That the edges are as long as they should be is told by the joints of their
corners.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from jambs.geometry import Circle, dot
from jambs.job.models.path_edge import FrameEdge
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.kit.kit import FigureKind
from jambs.parts.trim.casing_plane import Slack
from jambs.parts.trim.metal_returns import past_trim_plane
from jambs.parts.trim.sides import deepest
from jambs.place.flares import SQUARE, Flares
from jambs.place.frame_path import rough_path
from jambs.sides import LEGS, Side
from jambs.solids.depths_round import (
    exterior_depths,
    exterior_sides,
    interior_depths,
    outside_taper,
    width_measures,
)
from jambs.solids.lookup import D
from jambs.solids.model import KitSolids, Solid
from jambs.solids.report import TIGHT, Measure
from jambs.solids.shape_joints import buck_boards
from jambs.solids.shape_lookup import BoardsRound, boards_round, faces_in, faces_out, hole_faces, lining_round


def inside_of_shape(solids: KitSolids) -> list[Measure]:
    """Measure reveals, shim space and depths inside, edge by edge, and the clear width between upright legs."""
    placement, trim = solids.kit.placement, solids.kit.placement.opening.interior
    jambs = boards_round(solids, Where.INTERIOR, PartKind.EXTENSION_JAMB)
    casing = boards_round(solids, Where.INTERIOR, PartKind.CASING)
    found = _clear_width(solids, jambs) if jambs else []
    rounding = solids.job.shop.grid.step / 4 + TIGHT
    for _, edge, board in jambs.by_edge():
        name = _words(board)
        lean, at_frame = solids.kit.flares.at(edge.side), placement.inside_edge
        reveal = faces_in(board, edge, flare_deg=lean, depth=at_frame) - hole_faces(solids.frame[0], edge)
        found.append(Measure(name=f"frame reveal at {name}", asked=trim.frame_reveal, found=reveal, tolerance=rounding))
        gap = _shim(solids, edge.side) - faces_out(board, edge, flare_deg=lean, depth=at_frame)
        found.append(Measure(name=f"shim space behind {name}", asked=asked_gap(solids, edge.side), found=gap))
        found += width_measures(f"depth of {name}", board, edge, interior_depths(solids).along(edge))
        at_frame = placement.inside_edge - board.high[D]
        found.append(Measure(name=f"near edge of {name} to the frame", asked=0.0, found=at_frame))
    near, flares = near_reveal(solids, solids.inside_slack), solids.kit.flares
    return [*found, *_casing_reveals("casing reveal", casing, jambs, trim.casing_reveal, near, flares, _room(solids))]


def _room(solids: KitSolids) -> dict[Side, float]:
    """Depth at which each side is deepest [in]: casing is laid out round the room edges there."""
    kit, proud = solids.kit, solids.job.shop.proud
    return {side: kit.placement.inside_edge - one.greatest - proud for side, one in kit.sides.items()}


def near_reveal(solids: KitSolids, slack: Slack) -> float:
    """How far a reveal may be off beside casing that leans with a measured wall [in]."""
    frame = solids.kit.placement.opening.frame
    return TIGHT + slack.lean + slack.seen_shorter(max(frame.width, frame.height))


def outside_of_shape(solids: KitSolids) -> list[Measure]:
    """Measure reveals, sealant joint and trim plane outside, edge by edge."""
    placement, trim = solids.kit.placement, solids.kit.placement.opening.exterior
    if trim is None:
        return _to_the_curve(solids)
    jambs = lining_round(solids)
    casing = boards_round(solids, Where.EXTERIOR, PartKind.CASING)
    past = past_trim_plane(placement, trim.returns) if trim.returns else 0.0
    found, rounding = _to_the_curve(solids), solids.job.shop.grid.step / 4 + TIGHT
    measured = placement.opening.measured
    is_read = measured is not None and measured.exterior_depth is not None
    for _, edge, board in jambs.by_edge():
        name = f"exterior {_words(board)}"
        # Where a board lies along a sill that is level, the frame stands over it by the reveal too.
        begins = placement.outside_edge + trim.sealant_joint
        face = faces_in(board, edge, flare_deg=-solids.kit.outside_flares.at(edge.side), depth=begins)
        reveal = face - hole_faces(solids.frame[-1], edge)
        asked = trim.frame_reveal
        found.append(Measure(name=f"frame reveal at {name}", asked=asked, found=reveal, tolerance=rounding))
        joint = board.low[D] - placement.outside_edge
        found.append(Measure(name=f"sealant joint at {name}", asked=trim.sealant_joint, found=joint))
        if is_read:
            found += width_measures(f"depth of {name}", board, edge, exterior_depths(solids).along(edge))
        else:
            off, asked = placement.planes.trim_plane - board.high[D], 0.0 if edge.side is Side.HEAD else -past
            found.append(Measure(name=f"outer edge of {name} to the trim plane", asked=asked, found=off))
    if not jambs:
        for _, edge, board in casing.by_edge():
            name = f"sealant joint at the exterior casing, {_words(board)}"
            found.append(Measure(name=name, asked=trim.sealant_joint, found=faces_in(board, edge)))
    near = near_reveal(solids, solids.outside_slack) + outside_taper(solids)
    flares, ends = solids.kit.outside_flares, placement.outside_edge + deepest(exterior_sides(solids))
    leaned = Flares(**{side.value: -flares.at(side) for side in Side}) if flares else SQUARE
    at_trim = dict.fromkeys(Side, ends)
    return [
        *found,
        *_casing_reveals("exterior casing reveal", casing, jambs, trim.casing_reveal, near, leaned, at_trim),
    ]


def _to_the_curve(solids: KitSolids) -> list[Measure]:
    """Measure how far the face of each board of a buck stands off the curve of the rough opening that it touches."""
    buck = solids.kit.placement.buck
    if buck is None:
        return []
    rough = rough_path(solids.kit.placement, buck.set_back)
    found = []
    for _, edge, board in buck_boards(solids).by_edge():
        circles = [arc.circle for arc in rough if arc.circle and arc.side is edge.side]
        if circles:
            off = min((_off(board, edge, circle) for circle in circles), key=abs)
            found.append(Measure(name=f"buck at {_words(board)} to the curve", asked=0.0, found=off))
    return found


def _off(board: Solid, edge: FrameEdge, circle: Circle) -> float:
    """How far outside a circle the face of a board lies that looks into the opening along an edge [in]."""
    x, y = circle.center
    across, up = edge.outward
    looking = (facet for facet in board.facets if facet.faces((-across, -up, 0.0)))
    return min(dot(facet.normal, (x, y, 0.0)) - facet.offset for facet in looking) - circle.radius


def _words(board: Solid) -> str:
    assert board.part is not None
    return f"the {board.part.position} {board.name}"


def _clear_width(solids: KitSolids, jambs: BoardsRound) -> list[Measure]:
    at_frame = solids.kit.placement.inside_edge
    if sum(edge.side.is_leg for _, edge, _ in jambs.by_edge()) < len(LEGS):
        return []  # nothing to tape it between
    left, right = (
        edge.start[0] + edge.outward[0] * faces_in(board, edge, flare_deg=solids.kit.flares.at(side), depth=at_frame)
        for side in LEGS
        for _, edge, board in jambs.by_edge()
        if edge.side is side
    )
    asked = next(one.value for one in solids.kit.figures if one.kind is FigureKind.CLEAR_OPENING_WIDTH)
    return [Measure(name="clear opening width", asked=asked, found=right - left)]


def _shim(solids: KitSolids, side: Side) -> float:
    return float(getattr(solids.kit.placement.shims, side.value))


def asked_gap(solids: KitSolids, side: Side) -> float:
    """Shim space as the sheet has it [in]."""
    kinds = {
        Side.LEFT: FigureKind.SHIM_SPACE_LEFT,
        Side.RIGHT: FigureKind.SHIM_SPACE_RIGHT,
        Side.HEAD: FigureKind.SHIM_SPACE_HEAD,
        Side.SILL: FigureKind.SHIM_SPACE_SILL,
    }
    return next(one.value for one in solids.kit.figures if one.kind is kinds[side])


def _casing_reveals(
    what: str,
    casing: BoardsRound,
    jambs: BoardsRound,
    asked: float,
    near: float,
    flares: Flares = SQUARE,
    at_room: Mapping[Side, float] = MappingProxyType({}),
) -> list[Measure]:
    """Measure the reveal from the face of each jamb, at its room edge where it leans, to the casing."""
    by_edge: dict[FrameEdge, Solid] = {edge: board for _, edge, board in jambs.by_edge()}
    return [
        Measure(
            name=f"{what} at {_words(piece)}",
            asked=asked,
            found=faces_in(piece, edge)
            - faces_in(by_edge[edge], edge, flare_deg=flares.at(edge.side), depth=at_room.get(edge.side)),
            tolerance=near,
        )
        for _, edge, piece in casing.by_edge()
        if edge in by_edge
    ]
