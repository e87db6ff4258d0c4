"""The radii of an arched opening in an elevation: from the room of the clear opening, from outside of the frame."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from jambs.drawings.elements.view import Arc, CallOut, ViewSide
from jambs.drawings.views.arced_details import radius_call_out
from jambs.geometry import Point
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.length import HALF_64TH
from jambs.parts.jambs.shaped_jambs import clear_path
from jambs.parts.kit.kit import Kit
from jambs.place.frame_path import frame_path


def radii_seen(kit: Kit, *, from_outside: bool) -> tuple[CallOut, ...]:
    """Dimension each radius once, at the left, where the room's call-outs are not; of the window as it is stated."""
    opening = kit.placement.opening
    if not opening.shape:
        return ()
    path = frame_path(opening) if from_outside else clear_path(opening, kit.frames[0].clear if kit.frames else kit.room)
    width = opening.frame.width if from_outside else None
    return tuple(radius_call_out(arc, ViewSide.LEFT) for arc in _each_radius_once(_arcs(path, width)))


def _arcs(path: FramePath, width: float | None) -> Iterator[Arc]:
    """Yield the arcs of a path; with the frame's ``width``, as they are seen from outside [in]."""

    def seen(point: Point) -> Point:
        return point if width is None else (width - point[0], point[1])

    def arc_of(edge: FrameEdge, center: Point) -> Arc:
        ends = (seen(edge.start), seen(edge.finish))
        return Arc(center=seen(center), middle=seen(edge.crown), ends=ends, is_stated=width is not None)

    return (arc_of(edge, edge.center) for edge in path if edge.center)


def _each_radius_once(arcs: Iterable[Arc]) -> list[Arc]:
    """Return, of the arcs of one radius, the one farthest up, then to the left."""
    kept: list[Arc] = []
    for arc in sorted(arcs, key=lambda one: (-round(one.middle[1], 6), one.middle[0])):
        if all(abs(arc.radius - other.radius) > HALF_64TH for other in kept):
            kept.append(arc)
    return kept
