"""The record of an outline that is no rectangle: its corners, and its arcs."""

from __future__ import annotations

import math

from jambs.geometry import rise_of
from jambs.job.models.path import corners_of
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.length import Grid, Units
from jambs.place.placement import Placement
from jambs.place.shape_words import hole_words, outline_words
from jambs.values import Record, number, size


def outline_record(
    placement: Placement, path: FramePath, *, units: Units, key: str = "shape", framed_to: Grid | None = None
) -> Record:
    """Return the outline of an opening that is no rectangle, its corners clockwise; else nothing.

    ``framed_to``: of a hole in the framing, what framers mark; the words give it to the next mark out.
    """
    shape = placement.opening.shape
    if shape is None:
        return {}
    corners = [[number(one, units=units) for one in corner] for corner in corners_of(path)]
    arcs = [_arc_record(edge, units=units) for edge in path if edge.center]
    return {
        key: {
            "kind": shape.kind.value,
            "corners": corners,
            **({"arcs": arcs} if arcs else {}),
            "text": hole_words(path, shape.kind, framed_to) if framed_to else outline_words(path, shape.kind, units),
        }
    }


def _arc_record(edge: FrameEdge, *, units: Units) -> Record:
    """Return an edge that is an arc: its side, its center, its radius, its rise over the chord of its corners."""
    circle = edge.circle
    assert circle is not None
    chord = math.dist(edge.start, edge.finish)
    return {
        "side": edge.side.value,
        "center": [number(one, units=units) for one in circle.center],
        "radius": size(circle.radius, units=units),
        "rise": size(rise_of(circle.radius, chord), units=units),
        "length": size(edge.length, units=units),
    }
