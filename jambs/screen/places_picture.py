"""The small picture that shows where the tape is held: the frame as seen from inside, its places by number."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.job.models.fields import Size
from jambs.values import Record

WIDTH, HEIGHT, MARGIN = 190.0, 190.0, 24.0
"""Of the picture, and round the frame in it [pixels]."""
GREATEST, LEAST, OF_STEP = 16.0, 7.0, 0.46
"""Radius of a place [pixels], and its share of the way to the next place."""
LETTERS = 1.05
"""Size of the number in a place, of its radius."""
RAISED = 0.36
"""How far the foot of a number lies under the middle of its place, of its size."""
FACE = 10.0
"""Width of the frame's face in the picture [pixels]; it is not to scale."""


def places_picture(places: Sequence[Record], frame: Size) -> Record:
    """Return where frame, glass and places stand in the picture [pixels, down from the upper left]."""
    scale = min((WIDTH - 2 * MARGIN) / frame.width, (HEIGHT - 2 * MARGIN) / frame.height)
    wide, high = frame.width * scale, frame.height * scale
    left, top = (WIDTH - wide) / 2, MARGIN
    radius = _radius(places, wide, high)
    return {
        "width": WIDTH,
        "height": high + 2 * MARGIN,
        "frame": _box(left, top, wide, high),
        "glass": _box(left + FACE, top + FACE, wide - 2 * FACE, high - 2 * FACE),
        "radius": round(radius, 1),
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


def _radius(places: Sequence[Record], wide: float, high: float) -> float:
    """Return how large a place may be, so that it leaves room for the next one [pixels]."""
    inside = [one for one in places if one["is_inside"]]
    steps = [_step({one["x"] for one in inside}) * wide, _step({one["y"] for one in inside}) * high]
    return max(LEAST, min(GREATEST, min(steps) * OF_STEP))


def _step(shares: set[float]) -> float:
    return 1 / max(len(shares) - 1, 1)


def _box(left: float, top: float, width: float, height: float) -> Record:
    return {"x": round(left, 1), "y": round(top, 1), "width": round(width, 1), "height": round(height, 1)}
