"""Which exterior parts and bucks touch, and over what area: jamb corners, legs and casing on the sill, buck corners."""

from __future__ import annotations

import math

from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.parts.board.cuts import Notch
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.kit.kit import FigureKind
from jambs.sides import ACROSS, CORNERS, LEGS, Side
from jambs.solids.arched_kit import outside_arch_joints
from jambs.solids.casing_on_edges import casing_on_edges
from jambs.solids.clad_checks import clad_joints
from jambs.solids.depths_round import exterior_sides, outside_flares
from jambs.solids.inside_joints import casing_corners
from jambs.solids.joints import joint
from jambs.solids.lookup import Set, corner_words, one_of, pick
from jambs.solids.metal_checks import metal_feet, metal_joints
from jambs.solids.model import KitSolids, Solid
from jambs.solids.report import TIGHT, JointCheck
from jambs.solids.shape_feet import feet_on_sill
from jambs.solids.shape_joints import outside_corners
from jambs.solids.shape_sill import stands_on_sill

AT_MOST_ASTRIDE = 1 / 8
"""Of what a head falls over a leg, so much is missing on the average where its middle is as wide as the leg."""


def outside_joints(solids: KitSolids) -> list[JointCheck]:
    """Measure all joints of the exterior trim and of the buck."""
    if solids.kit.placement.opening.shape:
        return _of_shape(solids)
    found = _buck_corners(solids)
    trim = solids.kit.placement.opening.exterior
    casing = pick(solids, Where.EXTERIOR, PartKind.CASING)
    if trim and trim.returns:
        return [*found, *metal_joints(solids, trim.returns)]
    if trim and trim.cladding_returns:
        found += clad_joints(solids, trim, trim.cladding_returns)
    if trim is None or not casing:
        return found
    entry = trim.casing
    found += casing_corners(casing, entry.corner, entry.width * entry.thickness)
    jambs = pick(solids, Where.EXTERIOR, PartKind.EXTERIOR_JAMB)
    if not jambs:
        return found
    found += _jamb_corners(solids, jambs, trim)
    found += casing_on_edges(solids, jambs, casing, trim, _strips(solids, trim), _width_at_trim(solids))
    sill = one_of(solids, Where.EXTERIOR, PartKind.EXTERIOR_SILL)
    return found + (_on_sill(solids, jambs, casing, sill, trim) if sill else [])


def _of_shape(solids: KitSolids) -> list[JointCheck]:
    """Measure the corners of an opening that is no rectangle, and what stands on its sill."""
    trim = solids.kit.placement.opening.exterior
    sill = one_of(solids, Where.EXTERIOR, PartKind.EXTERIOR_SILL)
    if trim and trim.returns and trim.returns.sill:
        return [*outside_corners(solids), *metal_feet(solids, trim.returns)]
    if trim is None or sill is None:
        return [*outside_corners(solids), *outside_arch_joints(solids)]
    if stands_on_sill(solids):
        return [*outside_corners(solids), *outside_arch_joints(solids), *feet_on_sill(solids, sill)]
    jambs, casing = (pick(solids, Where.EXTERIOR, kind) for kind in (PartKind.EXTERIOR_JAMB, PartKind.CASING))
    return [*outside_corners(solids), *outside_arch_joints(solids), *_on_sill(solids, jambs, casing, sill, trim)]


def _width(solids: KitSolids, side: Side, corner: Side) -> float:
    """Width of an exterior jamb at the corner with another side, less the sealant joint [in]."""
    trim = solids.kit.placement.opening.exterior
    assert trim is not None
    return exterior_sides(solids)[side].depth_at(corner) - trim.sealant_joint


def _jamb_corners(solids: KitSolids, jambs: Set, trim: ExteriorTrim) -> list[JointCheck]:
    found, thick, flares = [], trim.jamb.thickness, outside_flares(solids)
    for across, leg in CORNERS:
        if across is Side.HEAD:
            # A tapered head is not as wide in the middle of the leg under it as at its own end.
            narrower = _fall_of_head(solids, jambs[across], leg, thick)
            width = min(_width(solids, across, leg) - narrower / 2, _width(solids, leg, across))
            name = corner_words("exterior jamb", jambs, across, leg)
            near = TIGHT + thick * abs(narrower) * AT_MOST_ASTRIDE
            # Boards that lean meet in a line that is longer by both cosines.
            asked = flares.across(across, flares.across(leg, thick * width))
            found.append(joint(name, [jambs[across]], [jambs[leg]], asked=asked, tolerance=near))
    return found


def _fall_of_head(solids: KitSolids, head: Solid, leg: Side, thick: float) -> float:
    """How much narrower a head is than at its end, as far in as its leg is thick [in]; negative where it widens."""
    assert head.part is not None
    fitted, (other,) = exterior_sides(solids)[Side.HEAD], set(LEGS) - {leg}
    return (fitted.depth_at(leg) - fitted.depth_at(other)) * thick / head.part.length


def _strips(solids: KitSolids, trim: ExteriorTrim) -> dict[Side, float]:
    """How much of the jamb's edge at each side the casing covers [in]."""
    flares = outside_flares(solids)
    return {
        side: min(flares.across(side, trim.jamb.thickness) - trim.casing_reveal, trim.casing.width) for side in Side
    }


def _width_at_trim(solids: KitSolids) -> float:
    """Width between the exterior jambs where the casing lies on them [in]."""
    found = {one.kind: one.value for one in solids.kit.figures}
    return found.get(FigureKind.EXTERIOR_CLEAR_AT_TRIM, found[FigureKind.EXTERIOR_CLEAR_WIDTH])


def _on_sill(solids: KitSolids, jambs: Set, casing: Set, sill: Solid, trim: ExteriorTrim) -> list[JointCheck]:
    assert trim.sill is not None
    cosine, slack = math.cos(math.radians(trim.sill.slope)), solids.outside_slack
    # Where the casing stands off the jamb's edge, or the wall leans across it, the sill under it has fallen farther.
    off = slack.hollow + slack.slope * trim.casing.width
    loose = slack.lean + off * math.tan(math.radians(trim.sill.slope))
    found, flares = [], outside_flares(solids)
    for leg in LEGS:
        asked = flares.across(leg, trim.jamb.thickness) * _width(solids, leg, Side.SILL) / cosine
        name = f"the exterior jamb's {leg.board_words} {jambs[leg].name} and the sill {sill.name}"
        near = TIGHT + trim.jamb.thickness * slack.lean
        found.append(joint(name, [jambs[leg]], [sill], asked=asked, tolerance=near))
        if leg not in casing:
            continue
        name = f"the exterior casing's {leg.board_words} {casing[leg].name} and the sill {sill.name}"
        asked = _casing_over_sill(solids, sill, leg, trim) / cosine
        # Level, the casing's back follows the wall over the leg's width.
        over = slack.gap + slack.lean * trim.casing.width / trim.casing.thickness
        near = TIGHT + trim.casing.width * over
        found.append(joint(name, [casing[leg]], [sill], asked=asked, slack=loose, tolerance=near))
    return found


def _casing_over_sill(solids: KitSolids, sill: Solid, leg: Side, trim: ExteriorTrim) -> float:
    """Level area of a casing leg over the sill [sq in]: over the horn, whose notch is cut square, a little is bare."""
    assert trim.sill is not None and sill.part is not None
    placement, width = solids.kit.placement, trim.casing.width
    cosine = math.cos(math.radians(trim.sill.slope))
    sides = exterior_sides(solids)
    run = sides[leg].start_depth
    deepest = sides[Side.SILL].greatest
    notch = next((cut for cut in sill.part.cuts if isinstance(cut, Notch)), None)
    front = min(trim.casing.thickness, deepest - run + placement.planes.cladding_depth + trim.sill.nosing)
    if notch is None:
        return width * front
    thick = max(outside_flares(solids).across(one, trim.jamb.thickness) for one in LEGS)
    inside = min(max(thick - trim.casing_reveal, 0.0), width)
    # The notch is measured along the slope from the sill's edge under the frame.
    bare = max(notch.across * cosine - trim.sill.under_frame - run, 0.0)
    return inside * front + (width - inside) * max(front - bare, 0.0)


def _buck_corners(solids: KitSolids) -> list[JointCheck]:
    buck = solids.kit.placement.buck
    boards = pick(solids, Where.BUCK, PartKind.LINER_BUCK, PartKind.OUTBOARD_BUCK)
    if buck is None or not boards:
        return []
    asked = buck.thickness * (buck.outer - buck.inner)
    return [
        joint(
            corner_words("buck", boards, across, leg),
            [boards[across]],
            [boards[leg]],
            asked=asked,
        )
        for across in ACROSS
        for leg in LEGS
        if across in boards
    ]
