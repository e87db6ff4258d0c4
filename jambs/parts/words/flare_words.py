"""What is done to flared jambs, and to the stool under them, in words: edges, rabbets, notches that are not square."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping

from jambs.geometry import Plane, Vector
from jambs.length import Grid
from jambs.parts.board.angle_words import angle_text, both_ways, setting_words
from jambs.parts.board.arrises import Arris, OnePlane
from jambs.parts.board.cuts import (
    BoardSizes,
    Edge,
    EdgeBevel,
    End,
    Notch,
    PlaneCut,
    PlaneRabbet,
    SlantedNotch,
    end_of,
    saw_angles,
)
from jambs.parts.board.kinds import Where
from jambs.parts.board.part import Part

FROM_SQUARE = "angles off a square cut, in parentheses as scales read that have 90° there; lay it face up, back down"

AT_THE_FENCE = "for a miter the edge of the long point lies against the fence, the other edge leads"
"""How a board lies is told by its face and by this: both ends of it are cut so, slid along or turned end for end.

Common practice, no source.
"""


def leaned_edges(part: Part, grid: Grid) -> Iterator[str]:
    """Say how the long edges of a flared jamb are ripped, and what is left of its face."""
    if not part.is_leaned:
        return
    outer = "outer edge" if part.where is Where.EXTERIOR else "room edge"
    bevels, corners = [cut for cut in part.cuts if isinstance(cut, EdgeBevel)], part.corners
    flare = both_ways(bevels[0].angle_deg)
    if len(bevels) == 2:
        slant, _ = (_slant(corners, end) for end in End)
        yield (
            f"rip both long edges parallel, blade tilted {flare}: face {grid.text(slant)} wide; the frame edge is "
            f"long on the face, the {outer} on the back"
        )
        return
    yield f"rip the frame edge, blade tilted {flare}, long on the face"
    start, finish = (_slant(corners, end) for end in End)
    first, last = (end.words for end in part.seat.ends)
    off = math.degrees(math.atan2(abs(start - finish), part.length))
    yield (
        f"rip the {outer} {angle_text(off)} off the grain, blade tilted {flare}, long on the back: face "
        f"{grid.text(start)} wide at the {first}, {grid.text(finish)} at the {last}"
    )


def _slant(corners: Mapping[Arris, tuple[Vector, Vector]], end: End) -> float:
    """Width of a leaned jamb's face at one end [in], square across."""
    at = 0 if end is End.START else 1
    near, far = (corners[Arris(edge=edge, on_back=False)][at][1] for edge in Edge)
    return far - near


def plane_rabbets(part: Part, grid: Grid) -> Iterator[str]:
    """Say how the rabbets for the ends of flared jambs are cut: their shoulders lie on those jambs' faces."""
    for rabbet in part.cuts:
        if not isinstance(rabbet, PlaneRabbet):
            continue
        name = part.seat.ends[0 if rabbet.end is End.START else 1].words
        sizes = part.silhouettes.sizes
        sawn = next((cut for cut in part.cuts if end_of(cut) is rabbet.end and isinstance(cut, OnePlane)), None)
        gone = _crossing(sawn.plane(sizes), rabbet.end, sizes) if sawn else 0.0
        wide = _crossing(rabbet.flat, rabbet.end, sizes) - gone
        yield (
            f"rabbet the {name} end {grid.text(rabbet.depth)} deep in the face, {grid.text(wide)} wide along the board "
            f"from the sawn end, its shoulder at {setting_words(*saw_angles(rabbet.flat))}"
        )


def _crossing(plane: Plane, end: End, sizes: BoardSizes) -> float:
    """How far from the end of the blank a plane meets the frame edge on the face [in]."""
    along, across, through = plane.normal
    u0, v0, w0 = plane.start
    u = u0 + (across * v0 + through * w0) / along
    return u if end is End.START else sizes.length - u


def saw_notes(part: Part, grid: Grid) -> Iterator[str]:
    """Say how the angles of a compound cut are to be read, and how the board lies."""
    if part.is_leaned or any(isinstance(cut, PlaneCut) and end_of(cut) for cut in part.cuts):
        yield FROM_SQUARE


def slanted_notches(part: Part, grid: Grid) -> Iterator[str]:
    """Say both lengths of the notches under flared legs: at the frame, and at the wall, where the horn begins."""
    for notch in part.cuts:
        if not isinstance(notch, Notch):
            continue
        name = part.seat.ends[0 if notch.end is End.START else 1].words
        inner = notch.along_inside if isinstance(notch, SlantedNotch) else notch.along
        yield (
            f"notch the {name} end {grid.text(notch.along)} long at the frame edge, {grid.text(inner)} long "
            f"{grid.text(notch.across)} in from it, straight between: it follows the back of the flared jamb"
        )
