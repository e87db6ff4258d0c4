"""The kit pulled apart, seen from the room: the boards as sawn, drawn from the parts themselves, each with its mark."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from jambs.drawings.elements.boxes import Segment
from jambs.drawings.elements.view import View, ViewKind
from jambs.drawings.views.kit_picture import kit_picture
from jambs.drawings.views.seen_edges import Face, seen_edges, sight_from
from jambs.drawings.views.shaped_window import outlines_seen
from jambs.geometry import Point, Vector, added
from jambs.parts.board.board_faces import board_faces
from jambs.parts.board.taken_apart import taken_apart
from jambs.parts.kit.kit import Kit
from jambs.parts.trim.casing_plane import hung
from jambs.place.units import unit_openings

EXPLODED = "exploded view"
EYE: Vector = (1.0, 0.8, -1.0)
"""From the opening toward the eye: to the right, above, in the room."""
SHARE = (0.55, 0.75)
"""Of the room on the smaller page that the picture may take, across and up, so that it finds a place beside others."""


def exploded_view(kit: Kit) -> View:
    """Draw the parts of a kit pulled apart along the axes of the opening, and the frames of its units between them."""
    frame, kit = kit.placement.opening.frame, kit.whole
    size = max(frame.width, frame.height)
    windows = frames_seen(kit)
    bodies = [*windows]
    for part, seat in zip(kit.parts, hung(kit).seats, strict=True):
        move = taken_apart(part, size=size)
        bodies.append([tuple(added(seat.at(*point), move) for point in face) for face in board_faces(part)])
    seen = seen_edges(bodies, sight_from(EYE))
    marks = [(part.mark, _middle(lines)) for part, lines in zip(kit.parts, seen[len(windows) :], strict=True) if lines]
    seen_apart = kit_picture(
        EXPLODED,
        EXPLODED.capitalize(),
        ViewKind.EXPLODED,
        lines=[line for lines in seen for line in lines],
        marks=marks,
        remark="the parts pulled apart, seen from the room",
    )
    return replace(seen_apart, share=SHARE)


def _middle(lines: Sequence[Segment]) -> Point:
    """Return the middle of the longest line that is seen of a part."""
    (x0, y0), (x1, y1) = max(lines, key=lambda line: (round(math.dist(*line), 3), line))
    return ((x0 + x1) / 2, (y0 + y1) / 2)


def frames_seen(kit: Kit) -> list[list[Face]]:
    """Return the frame of the window, or those of ganged units, each in its place."""
    opening, near, far = kit.placement.opening, kit.placement.inside_edge, kit.placement.outside_edge
    at = [(unit.x, unit.y) for unit in opening.gang.units] if opening.gang else [(0.0, 0.0)]
    rings = []
    for one, (right, up) in zip(unit_openings(opening), at, strict=True):
        outer, inner = (_moved(outline, right, up) for outline in outlines_seen(one, from_outside=False))
        rings.append(_ring(outer, inner, near, far))
    for fellow in kit.run.others if kit.run else ():
        outer, inner = (
            _moved(outline, fellow.x, 0.0) for outline in outlines_seen(fellow.placement.opening, from_outside=False)
        )
        rings.append(_ring(outer, inner, near, far))
    return rings


def _moved(outline: Sequence[Point], right: float, up: float) -> list[Point]:
    return [(x + right, y + up) for x, y in outline]


def _ring(outer: Sequence[Point], inner: Sequence[Point], near: float, far: float) -> list[Face]:
    """Return a frame as a ring, from its inside edge to its outside edge."""
    whole = (*outer, outer[0], inner[0], *reversed(inner))  # one outline, slit from its outer to its inner edge
    room = tuple((*point, near) for point in reversed(whole))
    outside = tuple((*point, far) for point in whole)
    return [room, outside, *_walls(outer, near, far), *_walls(inner[::-1], near, far)]


def _walls(outline: Sequence[Point], near: float, far: float) -> Iterator[Face]:
    for one, two in pairwise((*outline, outline[0])):
        yield (*one, near), (*two, near), (*two, far), (*one, far)
