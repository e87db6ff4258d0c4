"""Which interior parts touch, and over what area: jamb corners, legs on the stool, casing."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from jambs.job.models.trim import ApronEnds, Corner, InteriorTrim, Joint
from jambs.parts.board.cuts import MidNotch
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.kit.kit import JambFrame
from jambs.parts.trim.molding import end_area
from jambs.sides import ACROSS, CORNERS, LEGS, Side
from jambs.solids.arched_kit import inside_arch_joints
from jambs.solids.built_up_joints import built_up_joints, is_bounded_by_boards
from jambs.solids.depths_round import flared_taper
from jambs.solids.joints import joint
from jambs.solids.lookup import Framed, Set, corner_words, jambs_of, one_of, pick
from jambs.solids.model import KitSolids, Solid
from jambs.solids.report import TIGHT, JointCheck
from jambs.solids.return_joints import return_joints
from jambs.solids.shape_joints import inside_corners
from jambs.solids.shape_stool import casing_over_stool, feet_on_stool, has_slanted_feet, past_horns


def inside_joints(solids: KitSolids) -> list[JointCheck]:
    """Measure all joints of the interior trim."""
    frames = jambs_of(solids)
    casing = pick(solids, Where.INTERIOR, PartKind.CASING)
    stool = one_of(solids, Where.INTERIOR, PartKind.STOOL)
    trim = solids.kit.placement.opening.interior
    if solids.kit.placement.opening.shape:
        on_stool = list[JointCheck]()
        if stool and frames:
            slanted = has_slanted_feet(solids)
            on_stool = _on_slants(solids, stool, trim) if slanted else _on_stool(solids, frames, casing, stool, trim)
        return [*inside_corners(solids), *inside_arch_joints(solids), *on_stool]
    found = casing_corners(casing, trim.casing.corner, end_area(trim, trim.casing.thickness))
    found = [*(found if is_bounded_by_boards(trim) else []), *built_up_joints(solids, casing)]
    found += return_joints(solids)
    for frame, jambs in frames:
        found += _jamb_corners(solids, frame, jambs, trim)
    found += [_frame_on_frame(one, two, trim) for one, two in pairwise(frames)]
    if frames:
        frame, jambs = frames[-1]
        if casing and is_bounded_by_boards(trim):
            found += _casing_on_jambs(solids, jambs, casing, trim)
    if stool and frames:
        found += _on_stool(solids, frames, casing, stool, trim)
    return found


def casing_corners(casing: Set, corner: Corner, end: float) -> list[JointCheck]:
    """Measure the corners of the casing: mitered over the long way, butted over the leg's ``end`` [sq in]."""
    asked = end * (math.sqrt(2) if corner is Corner.MITER else 1.0)
    found = []
    for across in ACROSS:
        for leg in LEGS:
            if across in casing and leg in casing:
                name = corner_words("casing", casing, across, leg)
                found.append(joint(name, [casing[across]], [casing[leg]], asked=asked))
    return found


def _jamb_corners(solids: KitSolids, frame: JambFrame, jambs: Set, trim: InteriorTrim) -> list[JointCheck]:
    found = []
    for across, leg in CORNERS:
        if across in jambs and leg in jambs:
            sides, flares = frame.sides, solids.kit.flares
            width = min(sides[across].depth_at(leg), sides[leg].depth_at(across)) + frame.proud
            asked = _meeting_thickness(trim) * width
            if flares:
                asked = flared_corner(trim, width, flares.at(leg), flares.at(across))
            name = corner_words("jamb", jambs, across, leg)
            tolerance = TIGHT + 2 * trim.jamb.thickness * _taper_over_a_board(solids, trim)
            found.append(joint(name, [jambs[across]], [jambs[leg]], asked=asked, tolerance=tolerance))
    return found


def flared_corner(trim: InteriorTrim, depth: float, leg_deg: float, across_deg: float) -> float:
    """Area over which two flared boards meet in a corner [sq in], by closed form.

    Square to the corner's line the joint is as long as between square boards, or, mitered, by as much shorter as the
    faces stand at a wider angle; the line is longer than the depth by the cosines of both flares.
    """
    leg, across = math.radians(leg_deg), math.radians(across_deg)
    long = _meeting_thickness(trim)
    if trim.jamb.joint is Joint.MITER:
        long = trim.jamb.thickness * math.sqrt(2 - 2 * math.sin(leg) * math.sin(across))
    return long * depth / (math.cos(leg) * math.cos(across))


def _taper_over_a_board(solids: KitSolids, trim: InteriorTrim) -> float:
    """How much the widest taper changes over a board's thickness: joints lie that far from the measured end [in]."""
    clear = min(solids.kit.clear_width, solids.kit.clear_height)
    most = max(abs(side.start_depth - side.finish_depth) for side in solids.kit.sides.values())
    return most * trim.jamb.thickness / clear


def _meeting_thickness(trim: InteriorTrim) -> float:
    """How long the joint is along the boards' ends: square, both faces of a rabbet, or the miter's slope [in]."""
    thick = trim.jamb.thickness
    return {
        Joint.HEAD_OVER_LEGS: thick,
        Joint.LEGS_THROUGH: thick,
        Joint.RABBET: thick + (trim.jamb.rabbet_depth or 0.0),
        Joint.MITER: thick * math.sqrt(2),
    }[trim.jamb.joint]


def _frame_on_frame(one: Framed, two: Framed, trim: InteriorTrim) -> JointCheck:
    """A stacked frame stands on the one before: from its own clear opening to the back of the other's boards."""
    (at_window, boards), (at_room, stacked) = one, two
    backs = 2 if trim.style.has_bottom else 1
    wide = at_window.clear.width + 2 * trim.jamb.thickness
    high = at_window.clear.height + backs * trim.jamb.thickness
    asked = wide * high - at_room.clear.width * at_room.clear.height
    name = f"jamb frame {at_room.member} and jamb frame {at_window.member}"
    return joint(name, stacked.all, boards.all, asked=asked)


def _casing_on_jambs(solids: KitSolids, jambs: Set, casing: Set, trim: InteriorTrim) -> list[JointCheck]:
    """Every piece of casing bears on the jambs' edges with what the casing reveal leaves of their thickness."""
    room, picture, flares = solids.kit.room, trim.style.has_bottom, solids.kit.flares
    strips = {
        side: min(flares.across(side, trim.jamb.thickness) - trim.casing_reveal, trim.casing.width) for side in Side
    }
    mitered = trim.casing.corner is Corner.MITER
    inner_width = room.width + 2 * trim.casing_reveal
    inner_height = room.height + trim.casing_reveal * (2 if picture else 1)
    met = tuple(leg for leg in LEGS if mitered and leg not in (solids.kit.run.walled if solids.kit.run else ()))
    level = met, inner_width + sum(strips[leg] for leg in LEGS if leg not in met)
    upright = (((Side.HEAD, Side.SILL) if picture else (Side.HEAD,)) if mitered else ()), inner_height
    areas = {side: bearing_beside(strips, side, *(upright if side.is_leg else level)) for side in Side}
    found = []
    for side, piece in casing.by_side.items():
        name = f"the casing's {side.board_words} {piece.name} and the edges of the jamb"
        slack = solids.inside_slack.gap
        near = TIGHT + slack * areas[side] + flared_taper(solids) * (inner_height if side.is_leg else inner_width)
        found.append(joint(name, [piece], jambs.all, asked=areas[side], slack=slack, tolerance=near))
    return found


def bearing(strip: float, inner: float, mitered_ends: int) -> float:
    """Area of a strip along a piece of casing; each mitered end makes it half a strip longer [sq in]."""
    return strip * (inner + mitered_ends * strip / 2)


def bearing_beside(strips: dict[Side, float], side: Side, mitered_to: tuple[Side, ...], inner: float) -> float:
    """Area of a strip along a piece of casing [sq in]; ``mitered_to``: the sides whose strips bound its mitered ends.

    Where that strip is narrower, a triangle of the miter bears on nothing.
    """
    own = strips[side]
    short = sum(max(own - strips[other], 0.0) ** 2 / 2 for other in mitered_to)
    return bearing(own, inner, len(mitered_to)) - short


def _on_stool(
    solids: KitSolids, frames: Sequence[Framed], casing: Set, stool: Solid, trim: InteriorTrim
) -> list[JointCheck]:
    slack, proud = solids.inside_slack, solids.job.shop.proud
    found = []
    for leg in LEGS:
        thick = solids.kit.flares.across(leg, trim.jamb.thickness)
        for frame, jambs in frames:
            near = TIGHT + trim.jamb.thickness * slack.lean
            name = f"the jamb's {leg.board_words} {jambs[leg].name} and the stool {stool.name}"
            asked = thick * (frame.sides[leg].start_depth + frame.proud)
            found.append(joint(name, [jambs[leg]], [stool], asked=asked, tolerance=near))
        if leg not in casing:
            continue
        name = f"the casing's {leg.board_words} {casing[leg].name} and the stool {stool.name}"
        over_horn = trim.casing.width + trim.casing_reveal - thick
        bare = over_horn * max((solids.job.shop.horn_play or 0.0) - proud, 0.0)
        asked = end_area(trim, casing_over_stool(trim, proud)) - bare
        # The horn is notched square, and the casing's back follows the wall over the leg's width.
        near = TIGHT + trim.casing.width * (slack.gap + slack.slope * trim.casing.width)
        found.append(joint(name, [casing[leg]], [stool], asked=asked, slack=slack.lean, tolerance=near))
    apron = one_of(solids, Where.INTERIOR, PartKind.APRON)
    past = 2 * (trim.past_clear - trim.beside_stool) + round_walls(stool)
    return found + ([_apron(solids, apron, stool, trim, past)] if apron else [])


def round_walls(board: Solid) -> float:
    """How long a board is notched round walls between openings, all notches together [in]."""
    return sum(cut.along for cut in board.part.cuts if isinstance(cut, MidNotch)) if board.part else 0.0


def _on_slants(solids: KitSolids, stool: Solid, trim: InteriorTrim) -> list[JointCheck]:
    apron = one_of(solids, Where.INTERIOR, PartKind.APRON)
    under = [_apron(solids, apron, stool, trim, past_horns(solids, stool))] if apron else []
    return [*feet_on_stool(solids, stool), *under]


def _apron(solids: KitSolids, apron: Solid, stool: Solid, trim: InteriorTrim, past: float) -> JointCheck:
    """``past``: how far the casing reaches over the horns, both ends together [in]."""
    assert trim.apron is not None and trim.stool is not None and apron.part is not None
    thick, slack = trim.apron.thickness, solids.inside_slack
    deep = min(thick, trim.casing.thickness + trim.stool.nosing)
    asked = apron.part.length * deep
    play = solids.job.shop.horn_play or 0.0
    asked -= play * past
    if trim.apron.ends is ApronEnds.RETURNED:
        # The triangle that a return leaves open reaches into the play behind the horn.
        asked -= 2 * thick * deep - deep * deep - play * (2 * thick - play)
    name = f"the apron {apron.name} and the stool {stool.name}"
    lean = slack.lean_of(apron.part)
    near = TIGHT + (slack.hollow + lean) * apron.part.length
    return joint(name, [apron], [stool], asked=asked, slack=lean, tolerance=near)
