"""The small picture that shows where the tape is held: the frame as seen from inside, its places by number."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import combinations

from jambs.job.models.openings import Opening
from jambs.job.models.path import has_collapsed, outset, points_of
from jambs.place.frame_path import frame_path
from jambs.sides import Side
from jambs.values import Record

WIDTH, HEIGHT, MARGIN = 190.0, 190.0, 24.0
"""Of the picture, and round the frame in it [pixels]."""
GREATEST, LEAST, OF_STEP = 16.0, 7.0, 0.46
"""Radius of a place [pixels], and its share of the way to the next place."""
READABLE = 13.0
"""Places that are smaller have no number but where one is asked for: nobody would read it at a telephone [pixels]."""
LETTERS = 1.05
"""Size of the number in a place, of its radius."""
RAISED = 0.36
"""How far the foot of a number lies under the middle of its place, of its size."""
FACE = 10.0
"""Width of the frame's face in the picture [pixels]; it is not to scale."""


def places_picture(places: Sequence[Record], opening: Opening) -> Record:
    """Return where frame, glass and places stand in the picture [pixels, down from the upper left]."""
    frame = opening.frame
    scale = min((WIDTH - 2 * MARGIN) / frame.width, (HEIGHT - 2 * MARGIN) / frame.height)
    wide, high = frame.width * scale, frame.height * scale
    left, top = (WIDTH - wide) / 2, MARGIN
    radius = _radius(places, wide, high) if opening.shape is None else _radius_on_path(places, wide, high)
    return {
        "width": WIDTH,
        "height": high + 2 * MARGIN,
        "frame": _box(left, top, wide, high),
        "glass": _box(left + FACE, top + FACE, wide - 2 * FACE, high - 2 * FACE),
        "outlines": _outlines(opening, scale, left, top + high) if opening.shape else {},
        "radius": round(radius, 1),
        "is_crowded": radius < READABLE,
        "larger": round(GREATEST / radius, 3),
        "letters": round(radius * LETTERS, 1),
        "places": [
            {
                "number": one["number"],
                "group": one["kind"] if one["is_depth"] else str(one["number"]),
                "x": round(left + one["x"] * wide, 1),
                "y": round(top + (1 - one["y"]) * high, 1),
                "foot": round(top + (1 - one["y"]) * high + radius * LETTERS * RAISED, 1),
            }
            for one in places
        ],
    }


def _outlines(opening: Opening, scale: float, left: float, bottom: float) -> Record:
    """Return frame and glass of a shape as corners of polygons; no glass where the face takes all of it."""
    frame = frame_path(opening)
    glass = outset(frame, dict.fromkeys(Side, -FACE / scale))
    drawn = {"frame": frame, **({} if has_collapsed(glass, frame) else {"glass": glass})}
    return {
        name: " ".join(f"{left + x * scale:.1f},{bottom - y * scale:.1f}" for x, y in points_of(path))
        for name, path in drawn.items()
    }


def _radius(places: Sequence[Record], wide: float, high: float) -> float:
    """Return how large a place may be, so that it leaves room for the next one [pixels]."""
    inside = [one for one in places if one["is_inside"]]
    steps = [_step({one["x"] for one in inside}) * wide, _step({one["y"] for one in inside}) * high]
    return max(LEAST, min(GREATEST, min(steps) * OF_STEP))


def _radius_on_path(places: Sequence[Record], wide: float, high: float) -> float:
    """The same of places that stand in no rows: by the two that are nearest to each other."""
    inside = [(one["x"] * wide, one["y"] * high) for one in places if one["is_inside"]]
    return max(LEAST, min(GREATEST, min(math.dist(*two) for two in combinations(inside, 2)) * OF_STEP))


def _step(shares: set[float]) -> float:
    return 1 / max(len(shares) - 1, 1)


def _box(left: float, top: float, width: float, height: float) -> Record:
    return {"x": round(left, 1), "y": round(top, 1), "width": round(width, 1), "height": round(height, 1)}
