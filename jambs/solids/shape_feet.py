"""What stands on a sloping sill under a shape without two legs, measured on the solids: slants and arcs, compound."""

from __future__ import annotations

import math
from collections.abc import Mapping

from jambs.geometry import Point, Vector, tangent
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.parts.board.cuts import Notch
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.shapes.feet import feet
from jambs.parts.shapes.flat_segments import flat_feet
from jambs.parts.trim.sides import deepest
from jambs.place.frame_path import frame_path
from jambs.sides import Side
from jambs.solids.depths_round import exterior_depths, exterior_sides
from jambs.solids.jambs_round import FlatSide, flat_outside
from jambs.solids.joints import joint
from jambs.solids.lookup import X
from jambs.solids.model import KitSolids, Solid
from jambs.solids.report import TIGHT, JointCheck, Measure
from jambs.solids.shape_sill import path_on_sill


def feet_on_sill(solids: KitSolids, sill: Solid) -> list[JointCheck]:
    """Measure the feet of jambs and casing on the sill: they bear with all of their ends."""
    trim, depth = solids.kit.placement.opening.exterior, exterior_sides(solids)[Side.SILL].greatest
    assert trim is not None and trim.sill is not None
    cosine, slack = math.cos(math.radians(trim.sill.slope)), solids.outside_slack
    thick, joint_ = trim.jamb.thickness, trim.sealant_joint
    ends, flares = enumerate(_depths_at_feet(solids)), solids.kit.outside_flares
    across = {side: flares.across(side, thick) for side in Side}
    flat = flat_outside(solids)
    asked = sum(
        _flat_area(flat, thick, wide, i) if flat else _area(solids, trim, (joint_, joint_ + wide), (0.0, across), i)
        for i, wide in ends
    )
    near = TIGHT + 2 * thick * (slack.lean + slack.slope * thick)
    jambs, casing = (_standing(solids, kind) for kind in (PartKind.EXTERIOR_JAMB, PartKind.CASING))
    found = [joint("the feet of the exterior jambs and the sill", jambs, [sill], asked=asked / cosine, tolerance=near)]
    face, width = depth + trim.casing.thickness, trim.casing.width
    front = min(face, depth + solids.kit.placement.planes.cladding_depth + trim.sill.nosing)
    ends_at = deepest(exterior_sides(solids))
    over = sum(_area(solids, trim, (depth, front), (trim.casing_reveal, width), i, ends_at) for i in range(2))
    over -= _bare(solids, sill, trim, depth, ends_at)
    loose = slack.lean + (slack.hollow + slack.slope * width) * tangent(trim.sill.slope)
    name = "the feet of the exterior casing and the sill"
    # Where the wall is not as deep at one end its boards stand higher, and less far out, on the sill.
    differ = depth - exterior_sides(solids)[Side.SILL].least
    near = TIGHT + 2 * width * (slack.gap + slack.lean * width / trim.casing.thickness + differ)
    return [*found, joint(name, casing, [sill], asked=over / cosine, slack=loose, tolerance=near)]


def _standing(solids: KitSolids, kind: PartKind) -> list[Solid]:
    own = [one for one in solids.parts if one.part and one.part.kind is kind]
    return [one for one in own if one.part and one.part.where is Where.EXTERIOR]


def _depths_at_feet(solids: KitSolids) -> Point:
    """Widths of the exterior jambs where they stand on the sill, at the left and at the right [in]."""
    path, depths = frame_path(solids.kit.placement.opening), exterior_depths(solids)
    i = next(i for i, edge in enumerate(path) if edge.side is Side.SILL)
    left, right = path[(i + 1) % len(path)], path[i - 1]
    at_arc = exterior_sides(solids)[Side.HEAD].greatest + depths.more
    return (
        at_arc if left.center else depths.along(left)[0],
        at_arc if right.center else depths.along(right)[1],
    )


def _area(
    solids: KitSolids,
    trim: ExteriorTrim,
    run: Point,
    board: tuple[float, float | Mapping[Side, float]],
    i: int,
    leaned: float | None = None,
) -> float:
    """Level area that a board takes of the sill over a run, at the left or the right: by three places [sq in].

    ``board``: how far past the faces of the jambs it begins, and its width [in]; ``leaned``: as in ``path_on_sill``.
    """
    start, finish = run
    found = []
    for at in (start, (start + finish) / 2, finish):
        path = path_on_sill(solids, trim, at, board[0], leaned)
        found.append(abs(feet(path, 0.0)[i] - feet(path, board[1])[i]))
    low, middle, high = found
    return (finish - start) * (low + 4 * middle + high) / 6


def _flat_area(side: FlatSide, thickness: float, width: float, i: int) -> float:
    """Level area that flat segments of a width [in] take of the sill at the left or the right: straight boards."""
    ends = (
        abs(flat_feet(side.flat, side.flares, 0.0, at)[i] - flat_feet(side.flat, side.flares, thickness, at)[i])
        for at in (0.0, width)
    )
    return width * sum(ends) / 2


def _bare(solids: KitSolids, sill: Solid, trim: ExteriorTrim, depth: float, leaned: float) -> float:
    """Level area under the casing that is bare, beside the wall in the notches, which are cut square [sq in]."""
    assert trim.sill is not None and sill.part is not None
    cosine, past = math.cos(math.radians(trim.sill.slope)), trim.casing_reveal
    found = 0.0
    for i, notch in enumerate(cut for cut in sill.part.cuts if isinstance(cut, Notch)):
        bare = max(notch.across * cosine - trim.sill.under_frame - depth, 0.0)
        inner = sill.high[X] - notch.along if i else sill.low[X] + notch.along
        at = (path_on_sill(solids, trim, depth + share * bare, past, leaned) for share in (0.0, 0.5, 1.0))
        low, middle, high = (abs(inner - feet(path, trim.casing.width)[i]) for path in at)
        found += bare * (low + 4 * middle + high) / 6
    return found


def beside_feet(solids: KitSolids, sill: Solid) -> list[Measure]:
    """Measure the horns past the casing, and the notches of the sill on the backs of the jambs."""
    trim, loose = solids.kit.placement.opening.exterior, TIGHT + 2 * solids.outside_slack.lean
    assert trim is not None and trim.sill is not None
    casing, jambs = (_on_top(solids, sill, kind) for kind in (PartKind.CASING, PartKind.EXTERIOR_JAMB))
    sizes = {
        "sill past the casing at the left": (trim.sill.horn, casing[0] - sill.low[X]),
        "sill past the casing at the right": (trim.sill.horn, sill.high[X] - casing[1]),
    }
    assert sill.part is not None
    notches = [cut.along for cut in sill.part.cuts if isinstance(cut, Notch)]
    if len(notches) == len(sizes):
        sizes |= {
            "left notch of the sill to the jamb's back": (0.0, jambs[0] - sill.low[X] - notches[0]),
            "right notch of the sill to the jamb's back": (0.0, sill.high[X] - notches[1] - jambs[1]),
        }
    return [Measure(name=name, asked=asked, found=found, tolerance=loose) for name, (asked, found) in sizes.items()]


def _on_top(solids: KitSolids, sill: Solid, kind: PartKind) -> tuple[float, float]:
    """Return how far to the left and to the right boards reach on the top of a sill (x) [in]."""
    facets = (facet for one in _standing(solids, kind) for facet in one.facets)
    corners = [corner for facet in facets for loop in facet.loops for corner in loop]
    middle, near = (sill.low[X] + sill.high[X]) / 2, TIGHT + solids.outside_slack.lean
    left, right = ([one for one in corners if (one[X] < middle) is is_left] for is_left in (True, False))

    def on_top(side: list[Vector]) -> list[float]:
        off = [abs(sill.seat.board_point(corner)[2]) for corner in side]
        return [corner[X] for corner, one in zip(side, off, strict=True) if one < min(off) + near]

    return min(on_top(left)), max(on_top(right))
