"""Which interior parts touch, and over what area: jamb corners, legs on the stool, casing."""

from __future__ import annotations

import math

from jambs.job.models.trim import ApronEnds, Corner, InteriorStyle, InteriorTrim, Joint
from jambs.parts.kit import FittedSide, Kit
from jambs.parts.part import Where
from jambs.solids.joints import joint
from jambs.solids.lookup import Set, one_of, pick
from jambs.solids.model import KitSolids, Solid
from jambs.solids.report import TIGHT, JointCheck

CORNERS = {
    ("head", "left leg"): ("start", "finish"),
    ("head", "right leg"): ("finish", "finish"),
    ("bottom", "left leg"): ("start", "start"),
    ("bottom", "right leg"): ("finish", "start"),
}
"""Which ends of the sides meet at each corner: left → right on head and sill, bottom → top on the legs."""
SIDE_OF = {"head": "head", "bottom": "sill", "left leg": "left", "right leg": "right"}


def inside_joints(solids: KitSolids) -> list[JointCheck]:
    """Measure all joints of the interior trim."""
    jambs = pick(solids, Where.INTERIOR, "extension jamb")
    casing = pick(solids, Where.INTERIOR, "casing")
    stool = one_of(solids, Where.INTERIOR, "stool")
    trim = solids.kit.placement.opening.interior
    found = casing_corners(casing, trim.casing.corner, trim.casing.width, trim.casing.thickness)
    if jambs:
        found += _jamb_corners(solids, jambs, trim)
        found += _casing_on_jambs(solids, jambs, casing, trim)
    if stool and jambs:
        found += _on_stool(solids, jambs, casing, stool, trim)
    return found


def casing_corners(casing: Set, corner: Corner, width: float, thickness: float) -> list[JointCheck]:
    """Measure the corners of the casing: mitered over the long way, butted over the leg's end."""
    asked = width * thickness * (math.sqrt(2) if corner is Corner.MITER else 1.0)
    found = []
    for across in ("head", "bottom"):
        for leg in ("left leg", "right leg"):
            if across in casing and leg in casing:
                name = f"the casing's {across} and {leg}, {casing[across].name} and {casing[leg].name},"
                found.append(joint(name, [casing[across]], [casing[leg]], asked=asked))
    return found


def _jamb_corners(solids: KitSolids, jambs: Set, trim: InteriorTrim) -> list[JointCheck]:
    found = []
    for (across, leg), (end, leg_end) in CORNERS.items():
        if across in jambs and leg in jambs:
            one, two = _depth(solids.kit, across, end), _depth(solids.kit, leg, leg_end)
            width = min(one, two) + solids.job.shop.proud
            asked = _meeting_thickness(trim) * width
            name = f"the jamb's {across} and {leg}, {jambs[across].name} and {jambs[leg].name},"
            tolerance = TIGHT + 2 * trim.jamb.thickness * _taper_over_a_board(solids, trim)
            found.append(joint(name, [jambs[across]], [jambs[leg]], asked=asked, tolerance=tolerance))
    return found


def _taper_over_a_board(solids: KitSolids, trim: InteriorTrim) -> float:
    """How much the widest taper changes over a board's thickness: joints lie that far from the measured end [in]."""
    clear = min(solids.kit.clear_width, solids.kit.clear_height)
    most = max(abs(side.start_depth - side.finish_depth) for side in solids.kit.sides.values())
    return most * trim.jamb.thickness / clear


def _depth(kit: Kit, position: str, end: str) -> float:
    side: FittedSide = kit.sides[SIDE_OF[position]]
    return side.start_depth if end == "start" else side.finish_depth


def _meeting_thickness(trim: InteriorTrim) -> float:
    """How long the joint is along the boards' ends: square, both faces of a rabbet, or the miter's slope [in]."""
    thick = trim.jamb.thickness
    return {
        Joint.HEAD_OVER_LEGS: thick,
        Joint.LEGS_THROUGH: thick,
        Joint.RABBET: thick + (trim.jamb.rabbet_depth or 0.0),
        Joint.MITER: thick * math.sqrt(2),
    }[trim.jamb.joint]


def _casing_on_jambs(solids: KitSolids, jambs: Set, casing: Set, trim: InteriorTrim) -> list[JointCheck]:
    """Every piece of casing bears on the jambs' edges with what the casing reveal leaves of their thickness."""
    strip = min(trim.jamb.thickness - trim.casing_reveal, trim.casing.width)
    kit, picture = solids.kit, trim.style is InteriorStyle.PICTURE_FRAMED
    mitered = trim.casing.corner is Corner.MITER
    inner_width = kit.clear_width + 2 * trim.casing_reveal
    inner_height = kit.clear_height + trim.casing_reveal * (2 if picture else 1)
    corners = (2 if picture else 1) if mitered else 0
    areas = {
        "head": bearing(strip, inner_width + (0.0 if mitered else 2 * strip), 2 if mitered else 0),
        "left leg": bearing(strip, inner_height, corners),
        "right leg": bearing(strip, inner_height, corners),
    }
    areas["bottom"] = areas["head"]
    found = []
    for position, piece in casing.by_position.items():
        name = f"the casing's {position} {piece.name} and the edges of the jamb"
        slack = solids.inside_slack.gap
        found.append(
            joint(
                name, [piece], jambs.all, asked=areas[position], slack=slack, tolerance=TIGHT + slack * areas[position]
            )
        )
    return found


def bearing(strip: float, inner: float, mitered_ends: int) -> float:
    """Area of a strip along a piece of casing; each mitered end makes it half a strip longer [sq in]."""
    return strip * (inner + mitered_ends * strip / 2)


def _on_stool(solids: KitSolids, jambs: Set, casing: Set, stool: Solid, trim: InteriorTrim) -> list[JointCheck]:
    kit, slack, proud = solids.kit, solids.inside_slack, solids.job.shop.proud
    found = []
    for leg in ("left leg", "right leg"):
        width = _depth(kit, leg, "start") + proud
        near = TIGHT + trim.jamb.thickness * slack.lean
        name = f"the jamb's {leg} {jambs[leg].name} and the stool {stool.name}"
        asked = trim.jamb.thickness * width
        found.append(joint(name, [jambs[leg]], [stool], asked=asked, tolerance=near))
        name = f"the casing's {leg} {casing[leg].name} and the stool {stool.name}"
        asked = trim.casing.width * _casing_over_stool(trim, proud)
        near = TIGHT + trim.casing.width * slack.gap
        found.append(joint(name, [casing[leg]], [stool], asked=asked, slack=slack.lean, tolerance=near))
    apron = one_of(solids, Where.INTERIOR, "apron")
    return found + ([_apron(solids, apron, stool, trim)] if apron else [])


def _casing_over_stool(trim: InteriorTrim, proud: float) -> float:
    """How much of the casing's thickness the stool carries: it stands proud, the nosing may be less [in]."""
    assert trim.stool is not None
    return min(trim.casing.thickness, trim.casing.thickness + trim.stool.nosing - proud)


def _apron(solids: KitSolids, apron: Solid, stool: Solid, trim: InteriorTrim) -> JointCheck:
    assert trim.apron is not None and trim.stool is not None and apron.part is not None
    thick, slack = trim.apron.thickness, solids.inside_slack
    deep = min(thick, trim.casing.thickness + trim.stool.nosing)
    asked = apron.part.length * deep
    if trim.apron.ends is ApronEnds.RETURNED:
        asked -= 2 * thick * deep - deep * deep
    name = f"the apron {apron.name} and the stool {stool.name}"
    return joint(name, [apron], [stool], asked=asked, slack=slack.lean, tolerance=TIGHT + slack.gap * apron.part.length)
