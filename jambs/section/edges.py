"""Where each layer of the wall stops at an opening.

``s`` runs into the wall from the frame's outer edge, square to the side that is cut [in].
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from jambs.job.models.layers import BuckKind, Layer, Role
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.section.cut_edge import is_cut
from jambs.section.part_regions import face_and_back, outer_edge
from jambs.section.region import SectionCut

Edge = Callable[[float], float]
"""Distance s at which material starts, by depth d [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Edges:
    """How far the opening reaches on one side [in, as s]: rough opening, framing, outboard layers, cladding.

    ``finish``: where the finish inside stops; without casing it is seen, and ends at a return or a bare jamb.
    ``lean``: how much farther it reaches at a depth than at the frame, along the backs of flared jambs.
    """

    rough_opening: float
    finish: float
    framing: float
    behind_flange: float
    lean: Edge
    before_flange: Edge
    cladding: Edge


def edges_at(kit: Kit, cut: SectionCut) -> Edges:
    """Find where the layers stop on the side of the cut."""
    placement = kit.placement
    rough = float(getattr(placement.shims, cut.side.value))
    buck = placement.buck
    framing, behind = rough, rough
    if buck and buck.kind is BuckKind.LINER:
        framing = behind = rough + buck.thickness
    elif buck:
        behind = rough + buck.set_back + buck.thickness
    before = _before_flange(kit, cut, rough)
    return Edges(
        rough_opening=rough,
        finish=_finish(kit, cut, rough),
        framing=framing,
        behind_flange=behind,
        lean=_lean(kit, cut),
        before_flange=before,
        cladding=_cladding(kit, cut, before),
    )


def _lean(kit: Kit, cut: SectionCut) -> Edge:
    flares, start, buck = kit.flares, kit.placement.inside_edge, kit.placement.buck
    if buck and buck.kind is BuckKind.LINER:
        return lambda depth: 0.0
    return lambda depth: flares.out(cut.side, start - depth) if depth < start else 0.0


def layer_edge(edges: Edges, layer: Layer, *, is_outboard: bool, is_behind_flange: bool) -> Edge:
    """Say where a layer stops: inside finish and framing at their openings, the rest at the box."""
    if layer.role is Role.CLADDING:
        return edges.cladding
    if layer.role is Role.FINISH:
        return lambda depth: edges.finish + edges.lean(depth)
    if not is_outboard:
        at = edges.rough_opening if layer.role is Role.CAVITY else edges.framing
        return lambda depth: at + edges.lean(depth)
    if is_behind_flange:
        return lambda depth: edges.behind_flange + edges.lean(depth)
    return edges.before_flange


def _finish(kit: Kit, cut: SectionCut, rough: float) -> float:
    """Where the wall board stops: at the rough opening under casing, else where the drywall crew cuts it.

    Under a stool or a tile it is cut to their underside, in front of the furring.
    """
    if kit.drywall is None:
        return rough
    board, frame = kit.drywall.wall_board, kit.placement.opening.frame
    places = {
        SectionCut.JAMB: board.right - frame.width,
        SectionCut.LEFT_JAMB: -board.left,
        SectionCut.HEAD: board.top - frame.height,
        SectionCut.SILL: -board.bottom,
    }
    return places[cut]


def part_at(kit: Kit, where: Where, kind: PartKind, cut: SectionCut) -> Part | None:
    """Find the part of a kind that a section cuts."""
    found = (part for part in kit.parts if part.where is where and part.kind is kind and is_cut(kit, part, cut))
    return next(found, None)


def _before_flange(kit: Kit, cut: SectionCut, rough: float) -> Edge:
    sill = None
    if cut is SectionCut.SILL:
        kinds = (PartKind.EXTERIOR_SILL, PartKind.METAL_RETURN)
        sill = next((one for kind in kinds if (one := part_at(kit, Where.EXTERIOR, kind, cut))), None)
    if sill:
        return lambda depth: -_underside(sill, depth)
    lining = (PartKind.EXTERIOR_JAMB, PartKind.METAL_RETURN, PartKind.RETURN_FURRING)
    jamb = next((one for kind in lining if (one := part_at(kit, Where.EXTERIOR, kind, cut))), None)
    if jamb is None:
        return lambda depth: rough
    start = jamb.seat.at(0.0, 0.0, jamb.thickness)[2]
    _, back = face_and_back(jamb, kit, cut)
    flares = kit.outside_flares
    if jamb.is_leaned:
        return lambda depth: back + flares.out(jamb.side, depth - start)
    return lambda depth: back


def _underside(sill: Part, depth: float) -> float:
    """Height y of the underside of a sloping sill at a depth [in]."""
    _, top, start = sill.seat.origin
    sine, cosine = -sill.seat.across[1], sill.seat.across[2]
    return top - (depth - start) * sine / cosine - sill.thickness / cosine


def _cladding(kit: Kit, cut: SectionCut, before: Edge) -> Edge:
    opening = kit.placement.opening
    trim = opening.exterior
    if trim is None:
        return before
    piece = part_at(kit, Where.EXTERIOR, PartKind.CASING, cut)
    if trim.returns and cut is SectionCut.HEAD:  # cladding stays clear of the flashing, which stands over the head
        over = trim.head_flashing.drip + trim.head_flashing.gap_to_cladding
        return lambda depth: before(depth) + over
    if piece is None:
        return _to_the_miter(kit, cut, before)
    gap = trim.head_flashing.gap_to_cladding if cut is SectionCut.HEAD else 0.0
    far = outer_edge(piece, kit, cut) + gap
    return lambda depth: far


def _to_the_miter(kit: Kit, cut: SectionCut, before: Edge) -> Edge:
    """Where cladding stops that is mitered to its return: at the sides in the miter, over the head above the metal."""
    trim, face = kit.placement.opening.exterior, kit.placement.planes.cladding_face
    found = part_at(kit, Where.EXTERIOR, PartKind.CLADDING_RETURN, cut)
    if found is None or trim is None:
        return before
    near, back = face_and_back(found, kit, cut)
    if cut is SectionCut.HEAD:
        return lambda depth: back + trim.head_flashing.gap_to_cladding
    return lambda depth: near + face - depth
