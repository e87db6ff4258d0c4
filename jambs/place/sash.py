"""The sash of an opening: its greatest angle at a position, and what that leaves as an escape opening."""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum

from jambs.job.models.fields import Size
from jambs.job.models.openings import Opening
from jambs.job.models.shop import Escape
from jambs.job.models.trim import InteriorStyle
from jambs.job.models.windows import FrameFace, Sash
from jambs.place.placement import Swing
from jambs.place.swing import Leaf, Opened, open_sash
from jambs.sides import Side

SIDES = {
    Sash.AWNING: ("head", "sill"),
    Sash.HOPPER: ("sill", "head"),
}
SQUARE_INCHES_PER_FOOT = 144.0


class EscapeMeasure(StrEnum):
    """What an escape opening is measured by."""

    AREA = "area"
    WIDTH = "width"
    HEIGHT = "height"
    SILL = "sill"


@dataclass(frozen=True, slots=True, kw_only=True)
class EscapeFault:
    """Where an opening falls short of an escape opening: clear area [sq ft], clear width or height, or sill [in].

    The sill is that of the passage, over the finished floor; its limit is the most it may be.
    """

    measure: EscapeMeasure
    found: float
    limit: float


def swing_at(opening: Opening, *, interior_depth: float, exterior_depth: float) -> Swing | None:
    """Open the sash as far as the trim allows at these depths [in]; None for a sash that does not swing."""
    window = opening.window
    if not window.sash.swings:
        return None
    leaf = _leaf(opening, window.sash, exterior_depth if window.sash.outward else interior_depth)
    opened = open_sash(leaf)
    clear = _daylight(opening)
    if window.sash in SIDES:
        clear = Size(width=clear.width, height=opened.passage)
    else:
        clear = Size(width=opened.passage, height=clear.height)
    return Swing(greatest_deg=opened.degrees, stopped_by=opened.met, clear=clear)


def tilt_at(opening: Opening, *, interior_depth: float) -> Opened | None:
    """Lean the head of a sash that tilts and turns into the room, its sill edge as the hinge; None for any other."""
    if opening.window.sash is not Sash.TILT_AND_TURN:
        return None
    return open_sash(_leaf(opening, Sash.HOPPER, interior_depth))


def tilt_stay_deg(opening: Opening) -> float:
    """The angle at which the head of a tilted sash has come in by what its stay lets it [degrees]."""
    return math.degrees(math.asin(min(TILTED_IN / opening.frame.height, 1.0)))


TILTED_IN = 6.0
"""How far stays let the head of a tilted sash into the room [in]: common practice, no source."""


def clear_opening(opening: Opening, swing: Swing | None) -> Size:
    """Net clear opening, width × height [in]: what a person can pass through with the sash open."""
    if swing is not None:
        return swing.clear
    light = _daylight(opening)
    if opening.window.sash is Sash.DOUBLE_HUNG:
        return Size(width=light.width, height=light.height / 2)
    if opening.window.sash is Sash.SLIDER:
        return Size(width=light.width / 2, height=light.height)
    return Size(width=0.0, height=0.0)


def escape_faults(opening: Opening, swing: Swing | None, escape: Escape) -> tuple[EscapeFault, ...]:
    """Find in which ways the net clear opening falls short of an escape opening."""
    clear = clear_opening(opening, swing)
    area = clear.width * clear.height / SQUARE_INCHES_PER_FOOT
    least = (
        (EscapeMeasure.AREA, area, escape.area_square_feet),
        (EscapeMeasure.WIDTH, clear.width, escape.width),
        (EscapeMeasure.HEIGHT, clear.height, escape.height),
    )
    faults = [EscapeFault(measure=one, found=found, limit=limit) for one, found, limit in least if found < limit]
    sill, most = _sill_of_passage(opening), escape.greatest_sill_height
    if opening.sill_height is not None and sill > most:
        faults.append(EscapeFault(measure=EscapeMeasure.SILL, found=sill, limit=most))
    return tuple(faults)


def _sill_of_passage(opening: Opening) -> float:
    return (opening.sill_height or 0.0) + opening.window.frame_face.sill


def _daylight(opening: Opening) -> Size:
    face = opening.window.frame_face
    return Size(
        width=opening.frame.width - face.left - face.right,
        height=opening.frame.height - face.head - face.sill,
    )


def _leaf(opening: Opening, sash: Sash, depth: float) -> Leaf:
    window = opening.window
    hinge, latch = _hinge_sides(opening, sash)
    face = window.outside_face if sash.outward else window.frame_face
    hinge_face, latch_face = _face(face, hinge), _face(face, latch)
    reveal, casing_reveal, casing_thickness = _trim_at(opening, sash)
    has_jamb = opening.exterior is not None or not sash.outward
    return Leaf(
        span=opening.frame.height if sash in SIDES else opening.frame.width,
        hinge_face=hinge_face,
        latch_face=latch_face,
        hinge_edge=window.sash_edge(hinge_face),
        latch_edge=window.sash_edge(latch_face),
        thickness=window.sash_thickness or 0.0,
        set_back=window.sash_set_back or 0.0,
        jamb_depth=depth if has_jamb else 0.0,
        hinge_jamb_face=hinge_face - reveal,
        # An awning opens over the sloping sill, which falls out of its way.
        latch_jamb_face=-opening.frame.height if sash is Sash.AWNING else latch_face - reveal,
        casing_face=hinge_face - reveal - casing_reveal,
        casing_thickness=casing_thickness if depth > 0 else 0.0,
    )


def _trim_at(opening: Opening, sash: Sash) -> tuple[float, float, float]:
    if sash.outward:
        trim = opening.exterior
        return (trim.frame_reveal, trim.casing_reveal, trim.casing.thickness) if trim else (0.0, 0.0, 0.0)
    inside = opening.interior
    stool = inside.stool if inside.style is InteriorStyle.STOOL_AND_APRON else None
    if sash is Sash.HOPPER and stool:
        return (inside.frame_reveal, 0.0, inside.casing.thickness + stool.nosing)
    return (inside.frame_reveal, inside.casing_reveal, inside.casing.thickness)


def _hinge_sides(opening: Opening, sash: Sash) -> tuple[str, str]:
    if sash in SIDES:
        return SIDES[sash]
    return ("right", "left") if opening.hinge == Side.RIGHT.value else ("left", "right")


def _face(face: FrameFace, side: str) -> float:
    return float(getattr(face, side))
