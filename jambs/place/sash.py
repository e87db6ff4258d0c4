"""The sash of an opening: its greatest angle at a position, and the passage that leaves."""

from __future__ import annotations

import math
from dataclasses import replace

from jambs.job.models.fields import Size
from jambs.job.models.openings import Opening
from jambs.job.models.windows import Sash
from jambs.place.flares import SQUARE, flares_at
from jambs.place.placement import Swing
from jambs.place.shim_space import shims
from jambs.place.swing import Leaf, Obstacle, Opened, SwingPicture, open_sash, swing_picture
from jambs.sides import Side

SIDES = {
    Sash.AWNING: (Side.HEAD, Side.SILL),
    Sash.HOPPER: (Side.SILL, Side.HEAD),
}


def swing_at(opening: Opening, *, interior_depth: float, exterior_depth: float, cladding_depth: float) -> Swing | None:
    """Open the sash as far as trim and wall allow at these depths [in]; None for a sash that does not swing.

    ``cladding_depth``: trim plane → cladding face.
    """
    window = opening.window
    if not window.sash.swings:
        return None
    leaf = _leaf(opening, window.sash, exterior_depth if window.sash.outward else interior_depth, cladding_depth)
    opened = open_sash(leaf)
    clear = daylight(opening)
    if window.sash in SIDES:
        clear = Size(width=clear.width, height=opened.passage)
    else:
        clear = Size(width=opened.passage, height=clear.height)
    return Swing(greatest_deg=opened.degrees, stopped_by=opened.met, clear=clear)


def swing_seen(
    opening: Opening, *, interior_depth: float, exterior_depth: float, cladding_depth: float, degrees: float
) -> SwingPicture:
    """Show a sash that swings, open by an angle [degrees], between the trim and wall at these depths [in]."""
    sash = opening.window.sash
    depth = exterior_depth if sash.outward else interior_depth
    return swing_picture(_leaf(opening, sash, depth, cladding_depth), degrees)


def tilt_at(opening: Opening, *, interior_depth: float) -> Opened | None:
    """Lean the head of a sash that tilts and turns into the room, its sill edge as the hinge; None for any other."""
    if opening.window.sash is not Sash.TILT_AND_TURN:
        return None
    return open_sash(_leaf(opening, Sash.HOPPER, interior_depth, 0.0))


def tilt_stay_deg(opening: Opening) -> float:
    """The angle at which the head of a tilted sash has come in by what its stay lets it [degrees]."""
    return math.degrees(math.asin(min(TILTED_IN / opening.frame.height, 1.0)))


TILTED_IN = 6.0
"""How far stays let the head of a tilted sash into the room [in]: common practice, no source."""


def daylight(opening: Opening) -> Size:
    """What the inner edges of the frame leave open, width × height [in]."""
    face = opening.window.frame_face
    return Size(
        width=opening.frame.width - face.left - face.right,
        height=opening.frame.height - face.head - face.sill,
    )


def _leaf(opening: Opening, sash: Sash, depth: float, cladding_depth: float) -> Leaf:
    window = opening.window
    thickness, set_back = window.sash_thickness, window.sash_set_back
    assert thickness is not None and set_back is not None  # of every sash that swings, stated or assumed
    hinge, latch = _hinge_sides(opening, sash)
    face = window.outside_face if sash.outward else window.frame_face
    hinge_face, latch_face = face.at(hinge), face.at(latch)
    reveal, casing_reveal, casing_thickness = _trim_at(opening, sash)
    has_jamb = opening.exterior is not None or not sash.outward
    flares = SQUARE if sash.outward else flares_at(opening.interior, depth)
    leaf = Leaf(
        span=opening.frame.height if sash in SIDES else opening.frame.width,
        hinge_face=hinge_face,
        latch_face=latch_face,
        hinge_edge=window.sash_edge(hinge_face),
        latch_edge=window.sash_edge(latch_face),
        thickness=thickness,
        set_back=set_back,
        jamb_depth=depth if has_jamb else 0.0,
        hinge_jamb_face=hinge_face - reveal,
        # An awning opens over the sloping sill, which falls out of its way.
        latch_jamb_face=-opening.frame.height if sash is Sash.AWNING else latch_face - reveal,
        casing_face=hinge_face - reveal - casing_reveal - flares.out(hinge, depth),
        casing_thickness=casing_thickness if depth > 0 else 0.0,
        hinge_out=flares.out(hinge, depth),
        latch_out=flares.out(latch, depth),
    )
    if sash.outward:
        leaf = _beside_wall(leaf, opening, hinge, depth, cladding_depth)
    elif opening.interior.returns:
        leaf = replace(leaf, hinge_met=Obstacle.RETURN, latch_met=Obstacle.RETURN)
    return _beside_mull(leaf, opening, hinge, latch) if opening.at_mull else leaf


def _beside_wall(leaf: Leaf, opening: Opening, hinge: Side, depth: float, cladding_depth: float) -> Leaf:
    """Let the sash meet the wall outside as it is drawn: it ends at the casing, without trim at the rough opening.

    Where the frame stands at the trim plane or proud of it, the casing goes round the frame, a sealant joint off it.
    """
    trim, wall_stands = opening.exterior, max(depth + cladding_depth, 0.0)
    if trim is None:
        gap = shims(opening).head if hinge is Side.HEAD else shims(opening).left
        return replace(leaf, wall_face=-gap, wall_stands=wall_stands)
    if depth <= 0:
        leaf = replace(
            leaf, casing_face=-trim.sealant_joint, casing_thickness=trim.casing.thickness, casing_start=depth
        )
    gap = trim.head_flashing.gap_to_cladding if hinge is Side.HEAD else 0.0
    return replace(leaf, wall_face=leaf.casing_face - trim.casing.width - gap, wall_stands=wall_stands)


def _beside_mull(leaf: Leaf, opening: Opening, hinge: Side, latch: Side) -> Leaf:
    """Let the sash of one of several units meet, at a mull, only the casing that lies on both frames."""
    trim = opening.exterior if opening.window.sash.outward else opening.interior
    cover = trim.mull_casing.thickness if trim and trim.mull_casing else 0.0
    if hinge in opening.at_mull:
        leaf = replace(
            leaf,
            latch_depth=leaf.jamb_depth,
            jamb_depth=cover,
            casing_thickness=0.0,
            wall_stands=0.0,
            hinge_out=0.0,
            hinge_met=Obstacle.MULL_CASING,
        )
    if latch in opening.at_mull:
        leaf = replace(leaf, latch_depth=cover, latch_out=0.0, latch_met=Obstacle.MULL_CASING)
    return leaf


def _trim_at(opening: Opening, sash: Sash) -> tuple[float, float, float]:
    if sash.outward:
        trim = opening.exterior
        return (trim.frame_reveal, trim.casing_reveal, trim.casing.thickness) if trim else (0.0,) * 3
    inside = opening.interior
    stool = inside.stool
    if sash is Sash.HOPPER and stool:
        return (inside.frame_reveal, 0.0, inside.casing.thickness + stool.nosing)
    return (inside.frame_reveal, inside.casing_reveal, inside.casing.thickness)


def _hinge_sides(opening: Opening, sash: Sash) -> tuple[Side, Side]:
    if sash in SIDES:
        return SIDES[sash]
    return (Side.RIGHT, Side.LEFT) if opening.hinge == Side.RIGHT.value else (Side.LEFT, Side.RIGHT)
