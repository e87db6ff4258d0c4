"""The window itself in an elevation: frame, sash, glass, and how the sash opens."""

from __future__ import annotations

from jambs.drawings.elements.boxes import Box
from jambs.drawings.elements.cover import Polygon
from jambs.drawings.elements.view import Ink, Shape
from jambs.geometry import Point
from jambs.job.models.openings import Opening
from jambs.job.models.windows import FrameFace, Sash
from jambs.place.units import unit_openings
from jambs.sides import Side


def corners(box: Box) -> Polygon:
    """Return the corners of a box, counter-clockwise."""
    return ((box.left, box.bottom), (box.right, box.bottom), (box.right, box.top), (box.left, box.top))


def frame_box(opening: Opening) -> Box:
    """Return the outer edges of the frame."""
    return Box(0.0, 0.0, opening.frame.width, opening.frame.height)


def sight_box(opening: Opening, *, from_outside: bool) -> Box:
    """Return the inner edges of the frame as seen from one side."""
    face = opening.window.outside_face if from_outside else opening.window.frame_face
    box = _inset(frame_box(opening), face)
    return turned_round(box, opening.frame.width) if from_outside else box


def unit_boxes(opening: Opening, *, from_outside: bool) -> list[tuple[Opening, Box, Box]]:
    """Return each unit as an opening of its own, with the outer and inner edges of its frame as seen from one side."""
    if opening.gang is None:
        return [(opening, frame_box(opening), sight_box(opening, from_outside=from_outside))]
    found = []
    for unit, one in zip(opening.gang.units, unit_openings(opening), strict=True):
        face = one.window.outside_face if from_outside else one.window.frame_face
        box = Box(unit.x, unit.y, unit.x + unit.frame.width, unit.y + unit.frame.height)
        sight = _inset(box, face)
        if from_outside:
            box, sight = (turned_round(edges, opening.frame.width) for edges in (box, sight))
        found.append((one, box, sight))
    return found


def _inset(box: Box, face: FrameFace) -> Box:
    return Box(box.left + face.left, box.bottom + face.sill, box.right - face.right, box.top - face.head)


def turned_round(box: Box, width: float) -> Box:
    """Return a box as seen from the other side of a frame of this width."""
    return Box(width - box.right, box.bottom, width - box.left, box.top)


def glass_boxes(opening: Opening, sight: Box) -> list[Box]:
    """Return the panes: inside the faces of the sash; two where one sash slides past the other."""
    inset = opening.window.sash_face or 0.0
    panes = [sight]
    if opening.window.sash is Sash.DOUBLE_HUNG:
        middle = sight.center[1]
        panes = [Box(sight.left, middle, sight.right, sight.top), Box(sight.left, sight.bottom, sight.right, middle)]
    if opening.window.sash is Sash.SLIDER:
        middle = sight.center[0]
        panes = [Box(sight.left, sight.bottom, middle, sight.top), Box(middle, sight.bottom, sight.right, sight.top)]
    return [pane.grown(-inset) for pane in panes]


def opening_lines(opening: Opening, pane: Box, *, from_outside: bool) -> list[Shape]:
    """Draw the broken lines of a swinging sash: they meet at the side of the hinges."""
    apex = _apex(opening, pane, from_outside=from_outside)
    if apex is None:
        return []
    far = sorted(corners(pane), key=lambda corner: -_away(corner, apex))[:2]
    points: tuple[Point, ...] = (far[0], apex, far[1])
    return [Shape(points=points, ink=Ink.HIDDEN, closed=False)]


def _away(one: Point, two: Point) -> float:
    return (one[0] - two[0]) ** 2 + (one[1] - two[1]) ** 2


def _apex(opening: Opening, pane: Box, *, from_outside: bool) -> Point | None:
    sash, (x, y) = opening.window.sash, pane.center
    if not sash.swings:
        return None
    if sash is Sash.AWNING:
        return (x, pane.top)
    if sash is Sash.HOPPER:
        return (x, pane.bottom)
    if opening.hinge is None:
        return None
    at_left = (opening.hinge == Side.LEFT.value) != from_outside
    return (pane.left if at_left else pane.right, y)


def sash_words(opening: Opening) -> str:
    """Say how the sash opens, or how each of several units does; units that open alike are named together."""
    if opening.gang:
        alike: dict[str, list[str]] = {}
        for unit, one in zip(opening.gang.units, unit_openings(opening), strict=True):
            alike.setdefault(sash_words(one), []).append(str(unit.number))
        if len(alike) == 1:
            return f"all {len(opening.gang.units)} units: {next(iter(alike))}"
        return "; ".join(f"unit{'s' * (len(them) > 1)} {', '.join(them)}: {words}" for words, them in alike.items())
    sash = opening.window.sash
    words = sash.value
    if sash.is_side_hung and opening.hinge:
        words += f", hinges {opening.hinge} as seen from inside"
    return words
