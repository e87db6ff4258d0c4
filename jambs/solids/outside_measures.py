"""The exterior trim and the buck measured on the solids against what the job asked for."""

from __future__ import annotations

import math

from jambs.geometry import dot, minus
from jambs.job.models.exterior_trim import ExteriorTrim, SillEntry
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.kit.kit import FigureKind, Kit
from jambs.parts.trim.casing_plane import hangs_as_read
from jambs.sides import LEGS, Side
from jambs.solids.arched_kit import outside_arch_measures
from jambs.solids.clad_checks import clad_measures
from jambs.solids.depths_round import exterior_sides, outside_flares, outside_taper
from jambs.solids.facets import Facet
from jambs.solids.inside_measures import INSIDE_FRAME, against_figure, corners_at
from jambs.solids.lookup import D, Set, X, Y, has_all, one_of, over_all, pick
from jambs.solids.measures import Reach, around_each, heights, reach, reveals, widths
from jambs.solids.metal_checks import metal_measures, metal_sill_measures
from jambs.solids.model import KitSolids, Solid
from jambs.solids.probe import Tape
from jambs.solids.report import TIGHT, Measure
from jambs.solids.shape_feet import beside_feet
from jambs.solids.shape_measures import outside_of_shape
from jambs.solids.shape_sill import stands_on_sill


def outside_measures(solids: KitSolids) -> list[Measure]:
    """Measure exterior opening, reveals, sealant joint, sill, casing, flashing and buck."""
    is_shaped = solids.kit.placement.opening.shape is not None
    found = [*outside_of_shape(solids), *outside_arch_measures(solids)] if is_shaped else _buck(solids)
    trim = solids.kit.placement.opening.exterior
    casing = pick(solids, Where.EXTERIOR, PartKind.CASING)
    if trim and trim.returns and is_shaped:
        return [*found, *metal_sill_measures(solids, trim.returns)]
    if trim and trim.returns:
        return [*found, *metal_measures(solids, trim.returns)]
    if trim and trim.cladding_returns:
        found += clad_measures(solids, trim, trim.cladding_returns)
        found += _casing(solids, casing, trim) if casing else []
        sill = one_of(solids, Where.EXTERIOR, PartKind.EXTERIOR_SILL)
        return [*found, *(_sill(solids, sill, casing, trim.sill) if sill and trim.sill else [])]
    if trim is None or not casing:
        return found
    jambs = pick(solids, Where.EXTERIOR, PartKind.EXTERIOR_JAMB)
    if has_all(solids):
        found += _casing(solids, over_all(solids, Where.EXTERIOR, PartKind.CASING), trim)
    if not jambs and not is_shaped:
        return found + _proud(solids, casing, trim)
    if not is_shaped:
        found += _opening(solids, jambs, casing, trim)
        found += _edges(solids, jambs, trim)
    sill = one_of(solids, Where.EXTERIOR, PartKind.EXTERIOR_SILL)
    if sill is None or trim.sill is None or not has_all(solids):
        return found
    return found + _sill(solids, sill, over_all(solids, Where.EXTERIOR, PartKind.CASING), trim.sill)


def _opening(solids: KitSolids, jambs: Set, casing: Set, trim: ExteriorTrim) -> list[Measure]:
    placement = solids.kit.placement
    frame, edge = placement.opening.frame, placement.outside_edge
    x, y = frame.width / 2, frame.height / 2
    half = min(s.high[D] - s.low[D] for s in jambs.all) / 2
    middle, flares = (x, y, edge + trim.sealant_joint + half), outside_flares(solids)
    # Faces of jambs that flare are nearer at the frame than in the middle of their depth, and farther at the casing.
    out = {side: flares.out(side, half) for side in Side}
    boards = Tape(jambs.all)
    sides = reach(boards, middle)
    asked = next(one.value for one in solids.kit.figures if one.kind is FigureKind.EXTERIOR_CLEAR_WIDTH)
    lowest = y - max(jambs[leg].low[Y] + _slope_drop(jambs[leg]) for leg in LEGS)
    wide = asked + out[Side.LEFT] + out[Side.RIGHT]
    found = widths("exterior clear width", boards, middle, sides, asked=wide, bottom=lowest)
    unit = reach(Tape(solids.frame), (x, y, edge - INSIDE_FRAME))
    step = solids.job.shop.grid.step
    found += reveals(
        "exterior frame reveal",
        sides.moved(out, -1.0),
        unit,
        asked=trim.frame_reveal,
        across=step / 4 + TIGHT,
        upright=None,
    )
    around = around_each(casing, (x, y, 0.0))
    tight = TIGHT + solids.outside_slack.lean + solids.outside_slack.seen_shorter(max(x, y)) + outside_taper(solids)
    deepest = max(exterior_sides(solids)[side].greatest for side in (Side.HEAD, *LEGS)) - trim.sealant_joint
    to_casing = {side: flares.out(side, deepest - half) for side in Side}
    return found + reveals(
        "exterior casing reveal",
        _three(around),
        _three(sides.moved(to_casing, 1.0)),
        asked=trim.casing_reveal,
        across=tight,
        upright=tight,
    )


def _three(sides: Reach) -> Reach:
    """Leave the sill out: the casing outside has no bottom piece."""
    return Reach(left=sides.left, right=sides.right, head=sides.head, sill=math.inf)


def _slope_drop(leg: Solid) -> float:
    """How much the short side of a leg's bottom is above its long side [in]."""
    low = [facet for facet in leg.facets if facet.normal[1] < -0.5]
    heights_ = [corner[Y] for facet in low for corner in facet.loops[0]]
    return max(heights_) - min(heights_)


def _edges(solids: KitSolids, jambs: Set, trim: ExteriorTrim) -> list[Measure]:
    placement = solids.kit.placement
    measured = placement.opening.measured
    found = []
    for side, solid in jambs.by_side.items():
        joint = solid.low[D] - placement.outside_edge
        found.append(Measure(name=f"sealant joint at the {side.board_words}", asked=trim.sealant_joint, found=joint))
        if measured is None or measured.exterior_depth is None:
            off = placement.planes.trim_plane - solid.high[D]
            found.append(Measure(name=f"outer edge of the {side.board_words} to the trim plane", asked=0.0, found=off))
    return found


def _casing_width(solids: KitSolids) -> float:
    """Width over the casing's legs [in]; of a shape without two, over all that does not lie along the sill."""
    own = [
        one
        for one in (*solids.parts, *solids.beside)
        if one.part and one.part.where is Where.EXTERIOR and one.part.kind is PartKind.CASING
    ]
    legs = [one for one in own if one.part and one.part.side.is_leg]
    if len({one.part.side for one in legs if one.part}) < len(LEGS):
        legs = [one for one in own if one.part and one.part.side is not Side.SILL]
    return max(one.high[X] for one in legs) - min(one.low[X] for one in legs)


def _casing(solids: KitSolids, casing: Set, trim: ExteriorTrim) -> list[Measure]:
    loose = TIGHT + solids.outside_slack.lean
    width = _casing_width(solids)
    figure = against_figure(solids, FigureKind.EXTERIOR_CASING_OUTSIDE_WIDTH, width)
    found = [Measure(name=figure.name, asked=figure.asked, found=width, tolerance=loose)]
    if not hangs_as_read(solids.kit, Where.EXTERIOR):
        off = min(solid.low[D] for solid in casing.all) - solids.kit.placement.planes.trim_plane
        found.append(Measure(name="back of the exterior casing to the trim plane", asked=0.0, found=off))
    flashing = one_of(solids, Where.EXTERIOR, PartKind.HEAD_FLASHING)
    if flashing:
        head, past = casing[Side.HEAD], trim.head_flashing.past_casing
        for side, size in (("left", head.low[X] - flashing.low[X]), ("right", flashing.high[X] - head.high[X])):
            found.append(
                Measure(name=f"flashing past the casing at the {side}", asked=past, found=size, tolerance=loose)
            )
        up = flashing.high[Y] - head.high[Y]
        found.append(
            Measure(name="upstand of the flashing", asked=trim.head_flashing.upstand, found=up, tolerance=loose)
        )
    return found


def _proud(solids: KitSolids, casing: Set, trim: ExteriorTrim) -> list[Measure]:
    """The frame stands at the trim plane or proud of it: a sealant joint between frame and casing."""
    frame, loose = solids.frame[0], TIGHT + solids.outside_slack.lean
    sizes = {
        Side.HEAD.value: casing[Side.HEAD].low[Y] - frame.high[Y],
    }
    if Side.LEFT in casing:
        sizes["left"] = frame.low[X] - casing[Side.LEFT].high[X]
    if Side.RIGHT in casing:
        sizes["right"] = casing[Side.RIGHT].low[X] - frame.high[X]
    if Side.SILL in casing:
        sizes["sill"] = frame.low[Y] - casing[Side.SILL].high[Y]
    return [
        Measure(name=f"sealant joint at the {side}", asked=trim.sealant_joint, found=size, tolerance=loose)
        for side, size in sizes.items()
    ]


def _sill(solids: KitSolids, sill: Solid, casing: Set, entry: SillEntry) -> list[Measure]:
    placement, loose = solids.kit.placement, TIGHT + solids.outside_slack.lean
    top = max(
        (facet for facet in sill.facets if facet.normal[1] > 0.5), key=lambda facet: facet.normal[1] * _span(facet)
    )
    corners = top.loops[0]
    back, front = min(corner[D] for corner in corners), max(corner[D] for corner in corners)
    high, low = max(corner[Y] for corner in corners), min(corner[Y] for corner in corners)
    trim = placement.opening.exterior
    assert trim is not None
    found = [
        Measure(
            name="slope of the sill",
            asked=entry.slope,
            found=math.degrees(math.atan2(top.normal[D], top.normal[Y])),
            is_angle=True,
        ),
        against_figure(solids, FigureKind.SILL_RUN, front - placement.outside_edge),
        against_figure(
            solids, FigureKind.SILL_FALL, high - low - entry.under_frame * math.tan(math.radians(entry.slope))
        ),
        Measure(name="sill in under the frame", asked=entry.under_frame, found=placement.outside_edge - back),
        Measure(name="sealant joint under the frame", asked=trim.sealant_joint, found=-high),
        Measure(
            name="nosing past the cladding",
            asked=entry.nosing + _deeper_beside(solids.kit),
            found=front - _cladding_face(solids),
        ),
    ]
    if stands_on_sill(solids):
        return [*found, *beside_feet(solids, sill), *_kerf(sill, entry)]
    outer = casing or pick(solids, Where.EXTERIOR, PartKind.CLADDING_RETURN)
    for side, size in (
        ("left", (outer[Side.LEFT].low[X] if casing else outer[Side.LEFT].high[X]) - sill.low[X]),
        ("right", sill.high[X] - (outer[Side.RIGHT].high[X] if casing else outer[Side.RIGHT].low[X])),
    ):
        found.append(Measure(name=f"sill past the casing at the {side}", asked=entry.horn, found=size, tolerance=loose))
    return found + _between(solids, sill) + _kerf(sill, entry)


def _deeper_beside(kit: Kit) -> float:
    """How much deeper the wall is at another opening of those trimmed as one, to which their sill is made [in]."""
    if kit.run is None:
        return 0.0
    deepest = max(one.fitted.outer[Side.SILL].greatest for one in kit.run.members)
    return deepest - kit.run.hand.fitted.outer[Side.SILL].greatest


def _cladding_face(solids: KitSolids) -> float:
    """Depth of the cladding's face at the sill: it lies on the trim plane, where that was measured to be [in]."""
    placement, side = solids.kit.placement, exterior_sides(solids)[Side.SILL]
    return placement.outside_edge + side.greatest + placement.planes.cladding_depth


def _between(solids: KitSolids, sill: Solid) -> list[Measure]:
    """The part of the sill inside the wall is as wide as the exterior jambs stand apart, back to back."""
    jambs = over_all(solids, Where.EXTERIOR, PartKind.EXTERIOR_JAMB, PartKind.RETURN_FURRING)
    inner = [corner[X] for corner in corners_at(sill, D, sill.low[D])]
    trim = solids.kit.placement.opening.exterior
    assert trim is not None
    thick = [outside_flares(solids).across(leg, trim.jamb.thickness) for leg in LEGS]
    # Both notches are alike: at a leg that leans less there is room.
    asked = jambs[Side.RIGHT].high[X] - jambs[Side.LEFT].low[X] + max(thick) - min(thick)
    near = TIGHT + outside_taper(solids)
    return [Measure(name="sill between its horns", asked=asked, found=max(inner) - min(inner), tolerance=near)]


def _span(facet: Facet) -> float:
    """Width times depth of the box around a face [sq in]."""
    xs, ds = [corner[X] for corner in facet.loops[0]], [corner[D] for corner in facet.loops[0]]
    return (max(xs) - min(xs)) * (max(ds) - min(ds))


def _kerf(sill: Solid, entry: SillEntry) -> list[Measure]:
    """The drip kerf: its roof is the face inside the board that looks the way the underside does."""
    kerf = entry.drip_kerf
    if not kerf.depth or not kerf.width:
        return []
    under = [facet for facet in sill.facets if facet.faces(sill.seat.through)]
    bottom = max(facet.offset for facet in under)
    roofs = [facet for facet in under if facet.offset < bottom - TIGHT]
    if not roofs:
        return [Measure(name="depth of the drip kerf", asked=kerf.depth, found=0.0)]
    origin = sill.seat.origin
    across = [dot(sill.seat.across, minus(corner, origin)) for corner in roofs[0].loops[0]]
    front = max(dot(sill.seat.across, minus(corner, origin)) for facet in under for corner in facet.loops[0])
    return [
        Measure(name="depth of the drip kerf", asked=kerf.depth, found=bottom - roofs[0].offset),
        Measure(name="width of the drip kerf", asked=kerf.width, found=max(across) - min(across)),
        Measure(name="drip kerf behind the front edge", asked=kerf.set_back, found=front - max(across)),
    ]


def _buck(solids: KitSolids) -> list[Measure]:
    buck, placement = solids.kit.placement.buck, solids.kit.placement
    boards = pick(solids, Where.BUCK, PartKind.LINER_BUCK, PartKind.OUTBOARD_BUCK)
    if buck is None or not boards:
        return []
    rough = placement.opening.rough_opening
    frame = placement.opening.frame
    middle = (frame.width / 2, frame.height / 2, (buck.inner + buck.outer) / 2)
    tape = Tape(boards.all)
    sides = reach(tape, middle)
    asked = rough.width + 2 * buck.set_back
    found = widths(
        "opening in the buck", tape, middle, sides, asked=asked, bottom=middle[1] - boards.low(Y) - buck.thickness
    )
    if Side.SILL in boards:
        found += heights("height in the buck", tape, middle, sides, asked=rough.height + 2 * buck.set_back)
    return [
        *found,
        Measure(name="inner edge of the buck", asked=buck.inner, found=boards.low(D)),
        Measure(
            name="outer edge of the buck to the flange plane", asked=0.0, found=placement.flange_plane - boards.high(D)
        ),
    ]
