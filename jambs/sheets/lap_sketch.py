"""The outline of a shape for the sketch of laps: as seen from outside, as shares of its width and height."""

from __future__ import annotations

from itertools import pairwise

from jambs.geometry import Point
from jambs.job.models.openings import Opening
from jambs.job.models.path import points_of
from jambs.place.frame_path import frame_path
from jambs.sides import Side
from jambs.values import Record

NUMBERED_AT = 0.42
"""How high up an outline its sides are numbered."""


def shape_sketched(opening: Opening) -> Record:
    """Return outline and head of a shape, from the left and the bottom, under ``shape``; nothing of a rectangle.

    ``left`` and ``right``: where its sides lie at the height at which they are numbered.
    """
    if opening.shape is None:
        return {}
    path, frame = frame_path(opening), opening.frame

    def seen(point: Point) -> Point:
        return (1 - point[0] / frame.width, point[1] / frame.height)

    head = [edge for edge in path if edge.side is Side.HEAD]
    outline = [seen(point) for point in points_of(path)]
    ends = sorted(_crossings(outline, NUMBERED_AT))
    found = {
        # Lists, as the record of an issue reads them back: a pair would be another value than what was kept of it.
        "outline": [list(point) for point in outline],
        "head": [list(seen(point)) for point in (*points_of(tuple(head)), head[-1].finish)],
        "left": ends[0],
        "right": ends[-1],
    }
    return {"shape": found}


def _crossings(outline: list[Point], level: float) -> list[float]:
    """Return where a closed outline passes a height."""
    return [
        x0 + (x1 - x0) * (level - y0) / (y1 - y0)
        for (x0, y0), (x1, y1) in pairwise([*outline, outline[0]])
        if min(y0, y1) <= level < max(y0, y1)
    ]
