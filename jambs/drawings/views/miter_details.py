"""Details of mitered corners of casing, half size, square to the wall: the joint, its angle, the reveals by name."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from jambs.drawings.elements.boxes import Box, Segment, box_around, segments_of
from jambs.drawings.elements.cover import Polygon, nearby, visible_edges
from jambs.drawings.elements.view import CallOut, Chain, Ink, Interval, Shape, View, ViewKind, ViewSide
from jambs.drawings.views.close_ups import PAST_EDGE, broken_line, clipped, clipped_lines
from jambs.drawings.views.elevations import INKS
from jambs.drawings.views.sash import corners, unit_boxes
from jambs.drawings.views.section_works import levels_at
from jambs.drawings.views.seen import Seen, seen
from jambs.drawings.views.shaped_window import outlines_seen
from jambs.geometry import Point
from jambs.length import HALF_64TH, decimal_text
from jambs.parts.board.cuts import Miter
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.touches import BackBevel
from jambs.parts.kit.kit import Kit

ALONG_BOARDS = 0.75
"""How much is shown past the inner corner of the casing, along both boards [in]."""
WORDS = {Where.INTERIOR: ("inside", "seen from the room"), Where.EXTERIOR: ("outside", "seen from outside")}
ABOUT_LEVEL = 0.25
"""A joint that rises no more than this, up for each inch across, is about level."""
FROM_JOINT = 0.25
"""How high on the lower board its leader ends, as a share of what is shown of it; on the upper as far from its top."""
NARROW_WORDS = 0.75
"""Lines of call-outs are broken here [in on paper]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Corner:
    """Two boards that meet in a miter: the joint from its inner to its outer end, as seen [in].

    ``angle_deg``: how far it is off square to the board that is mitered more, ``other_deg``: to the other [degrees].
    """

    boards: tuple[Seen, Seen]
    joint: Segment
    angle_deg: float
    other_deg: float

    @property
    def angles(self) -> tuple[float, float]:
        """Both angles to a tenth, by which corners are told apart."""
        return round(self.angle_deg, 1), round(self.other_deg, 1)


def miter_details(kit: Kit) -> list[View]:
    """Make one detail for each set of casing and each angle its corners are mitered at."""
    return [view for where in (Where.INTERIOR, Where.EXTERIOR) for view in _details(kit, where)]


def _details(kit: Kit, where: Where) -> Iterator[View]:
    width = kit.placement.opening.frame.width
    pieces = [
        seen(part, from_outside=where is Where.EXTERIOR, width=width) for part in kit.parts if part.where is where
    ]
    casing = [one for one in pieces if one.part.kind is PartKind.CASING and _miters(one)]
    found: dict[tuple[float, float], list[_Corner]] = {}
    for one, two in itertools.combinations(casing, 2):
        corner = _corner(one, two)
        if corner:
            found.setdefault(corner.angles, []).append(corner)
    for number, corners_alike in enumerate(found.values(), start=1):
        chosen = min(corners_alike, key=_upper_left)
        yield _view(chosen, pieces, kit, where, number, len(corners_alike))


def _miters(one: Seen) -> list[Miter]:
    return [cut for cut in one.part.cuts if isinstance(cut, Miter)]


def _upper_left(corner: _Corner) -> tuple[float, float]:
    """Order corners: the upper ones first, of these the left one."""
    (x, y), _ = corner.joint
    return (-round(y, 3), x)


def _corner(one: Seen, two: Seen) -> _Corner | None:
    """Return the corner of two boards, where an edge of one lies on an edge of the other; inner end first."""
    for edge in segments_of(one.polygon, closed=True):
        for other in segments_of(two.polygon, closed=True):
            if _is_same(edge, other):
                middle = box_around((*one.polygon, *two.polygon)).center
                inner, outer = sorted(edge, key=lambda point: math.dist(point, middle))
                less, more = sorted(_angle(board, edge) for board in (one, two))
                return _Corner(boards=(one, two), joint=(inner, outer), angle_deg=more, other_deg=less)
    return None


def _is_same(one: Segment, two: Segment) -> bool:
    return max(math.dist(one[0], two[1]), math.dist(one[1], two[0])) < HALF_64TH or (
        max(math.dist(one[0], two[0]), math.dist(one[1], two[1])) < HALF_64TH
    )


def _angle(one: Seen, edge: Segment) -> float:
    """Return how far the joint, as it is seen, is off square to a board [degrees]."""
    x, y, _ = one.part.seat.along
    along = (-x if one.part.where is Where.EXTERIOR else x, y)
    joint = (edge[1][0] - edge[0][0], edge[1][1] - edge[0][1])
    share = abs(joint[0] * along[0] + joint[1] * along[1]) / math.dist(*edge) / math.hypot(along[0], along[1])
    return math.degrees(math.asin(min(1.0, share)))


def _view(corner: _Corner, pieces: Sequence[Seen], kit: Kit, where: Where, number: int, count: int) -> View:
    box, boards = _room(corner), [one.polygon for one in corner.boards]
    jambs = [one for one in pieces if one.part.kind.is_jamb]
    behind = [one.polygon for one in jambs]
    frames = _frames(kit, where)
    shapes = [
        *_seen_behind(boards, (), INKS[where], box),
        *_seen_behind(behind, boards, INKS[where], box),
        *_seen_behind(frames, (*boards, *behind), Ink.SEEN_WINDOW, box),
    ]
    return View(
        name=f"miter {where.value} {number}",
        kind=ViewKind.CORNER,
        title=f"Mitered corner, {WORDS[where][0]}",
        shapes=(*clipped_lines(shapes, box), broken_line(box)),
        chains=tuple(_chains(corner, box, jambs, frames, kit, where)),
        call_outs=tuple(_names(corner, box)),
        remarks=(WORDS[where][1], *_alike(count), *_back_bevels(corner)),
        half_size=True,
        is_half_size_if_room=True,
        widest_words=NARROW_WORDS,
    )


def _inward(corner: _Corner) -> Point:
    """Return which way the opening lies from the corner, across and up."""
    (x, y), (x_out, y_out) = corner.joint
    return (math.copysign(1.0, x - x_out), math.copysign(1.0, y - y_out))


def _room(corner: _Corner) -> Box:
    """Return what is shown: the corner of the casing and a piece of both boards."""
    (x, y), (x_out, y_out), (across, up) = *corner.joint, _inward(corner)
    past = (x_out - across * PAST_EDGE, y_out - up * PAST_EDGE)
    return box_around((past, (x + across * ALONG_BOARDS, y + up * ALONG_BOARDS)))


def _seen_behind(polygons: Iterable[Polygon], covers: Sequence[Polygon], ink: Ink, box: Box) -> Iterator[Shape]:
    """Draw what nearer things leave of the edges of outlines that come into a box."""
    for polygon in polygons:
        edges = [edge for edge in segments_of(polygon, closed=True) if _comes_into(box, edge)]
        for pieces in visible_edges(edges, nearby(polygon, covers)):
            yield from (Shape(points=piece, ink=ink, closed=False) for piece in pieces)


def _comes_into(box: Box, edge: Segment) -> bool:
    own = box_around(edge)
    return own.left <= box.right and box.left <= own.right and own.bottom <= box.top and box.bottom <= own.top


def _frames(kit: Kit, where: Where) -> list[Polygon]:
    """Return the inner edges of the frame, of every unit."""
    opening, from_outside = kit.placement.opening, where is Where.EXTERIOR
    if opening.shape:
        return [outlines_seen(opening, from_outside=from_outside)[1]]
    return [corners(sight) for _, _, sight in unit_boxes(opening, from_outside=from_outside)]


def _chains(
    corner: _Corner, box: Box, jambs: Sequence[Seen], frames: Sequence[Polygon], kit: Kit, where: Where
) -> Iterator[Chain]:
    """Dimension the reveals inside of an upright board by name."""
    upright = next((one for one in corner.boards if one.part.side.is_leg), None)
    own = [one for one in jambs if upright and one.part.side is upright.part.side]
    if upright is None or not own:
        return
    (inner, y), (across, up) = corner.joint[0], _inward(corner)
    jamb = max(own, key=lambda one: one.nearness)
    nearest = box_around(jamb.polygon)
    face = nearest.right if across > 0 else nearest.left
    frame = min((point for polygon in frames for point in polygon), key=lambda point: math.dist(point, (face, y)))[0]
    side, level = (ViewSide.BOTTOM, box.bottom) if up < 0 else (ViewSide.TOP, box.top)
    steps = [("frame reveal", face, frame), ("casing reveal", inner, face)]
    if jamb.part.is_leaned:  # its frame edge lies far behind the corner of the casing
        steps = [("casing reveal", inner, _face_at_wall(jamb, kit, where))]
    for name, one, two in steps:
        if abs(one - two) > HALF_64TH:
            low, high = sorted((one, two))
            yield Chain(side=side, intervals=(Interval(start=(low, level), finish=(high, level)),), after=name)


def _face_at_wall(jamb: Seen, kit: Kit, where: Where) -> float:
    """Return where the face of an upright jamb that leans lies at its edge by the casing, across as it is seen."""
    ends = [
        jamb.part.seat.at(*point) for arris, both in jamb.part.corners.items() if not arris.on_back for point in both
    ]
    if where is Where.INTERIOR:
        return min(ends, key=lambda point: point[2])[0]
    return kit.placement.opening.frame.width - max(ends, key=lambda point: point[2])[0]


def _names(corner: _Corner, box: Box) -> Iterator[CallOut]:
    """Name both boards, the upper one high on it and the lower one low, and between them the angle of the joint."""
    shown = [(one.part, clipped(one.polygon, box)) for one in corner.boards]
    lower, upper = sorted(shown, key=lambda one: box_around(one[1]).center[1])
    for (part, polygon), share in ((lower, FROM_JOINT), (upper, 1.0 - FROM_JOINT)):
        target = _on_board(polygon, share)
        yield CallOut(target=target, lines=(f"{part.mark}  {part.name}",), side=ViewSide.RIGHT)
    words = f"miter {decimal_text(corner.angle_deg, 1)}°{_to_other(corner)}"
    yield CallOut(target=_on_joint(corner), lines=(words,), side=ViewSide.RIGHT, on_edge=True)


def _on_board(polygon: Polygon, share: float) -> Point:
    """Return the middle of what is widest of a board at a share of its height."""
    box = box_around(polygon)
    level = box.bottom + share * box.height
    ends = sorted(levels_at(tuple((y, x) for x, y in polygon), level))
    left, right = max(zip(ends[::2], ends[1::2], strict=False), key=lambda pair: pair[1] - pair[0])
    return ((left + right) / 2, level)


def _on_joint(corner: _Corner) -> Point:
    """Return the middle of the joint; of one that is about level its right end, or the leader would lie along it."""
    (x0, y0), (x1, y1) = corner.joint
    if abs(y1 - y0) < ABOUT_LEVEL * abs(x1 - x0):
        return max(corner.joint)
    return ((x0 + x1) / 2, (y0 + y1) / 2)


def _to_other(corner: _Corner) -> str:
    """Say how the other board ends where it is not mitered alike: at a spring line a segment meets a square leg."""
    angle, other = corner.angles
    if angle == other:
        return ""
    return f" to an end at {decimal_text(other, 1)}°" if other else " to a square end"


def _alike(count: int) -> tuple[str, ...]:
    return (f"{count} corners alike",) if count > 1 else ()


def _back_bevels(corner: _Corner) -> Iterator[str]:
    bevels = [touch for touch in corner.boards[0].part.touches if isinstance(touch, BackBevel)]
    return (f"back bevel the miters {decimal_text(bevel.angle_deg, 1)}°" for bevel in bevels)
