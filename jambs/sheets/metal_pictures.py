"""The picture of a metal return on the cut sheet: its legs as bent, outside at the right, to scale in itself."""

from __future__ import annotations

import math
from itertools import accumulate

from jambs.geometry import Point
from jambs.parts.board.bent_metal import BentProfile, MetalLegKind
from jambs.parts.board.part import Part
from jambs.parts.board.touches import ReturnBend
from jambs.values import Record

WIDE, HIGH, WORDS = 92.0, 26.0, 8.0
"""The most that the profile is wide and high, and the height of the words below it [pt]."""
PEN, TEXT = 1.0, 6.5
OPEN = 2.2
"""A hem is drawn so far off the leg it is folded back on [pt]."""


def bent_picture(part: Part) -> Record:
    """Draw the legs in a line, frame at the left; a leg into the wall goes up, as it does at the head."""
    profile = next(one.profile for one in part.touches if isinstance(one, ReturnBend))
    points = traced(profile)
    low, left = min(y for _, y in points), min(x for x, _ in points)
    wide, high = max(x for x, _ in points) - left, max(y for _, y in points) - low
    scale = min(WIDE / wide, HIGH / high)
    placed = [((x - left) * scale + OPEN, (high - y + low) * scale) for x, y in points]
    if profile.legs[-1].kind is MetalLegKind.HEM:
        placed = _opened(placed)
    wide, high = wide * scale + 2 * OPEN, high * scale
    line = " ".join(f"{x:.2f},{y:.2f}" for x, y in placed)
    shapes = [
        f'<polyline points="{line}" fill="none" stroke="black" stroke-width="{PEN}"/>',
        _word(0.0, high + WORDS - 1, "frame", "start"),
        _word(max(wide, 46.0), high + WORDS - 1, "outside", "end"),
    ]
    wide, high = max(wide, 46.0) + 2 * PEN, high + WORDS + 2 * PEN
    size = f'width="{wide:.2f}pt" height="{high:.2f}pt"'
    box = f"{-PEN:g} {-PEN:g} {wide:.2f} {high:.2f}"
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" {size} viewBox="{box}">{"".join(shapes)}</svg>'
    return {"svg": svg, "width": wide, "height": high}


def traced(profile: BentProfile) -> list[Point]:
    """Return the corners of a profile (out, into the wall) from where its first leg begins [in]."""
    steps = [
        (leg.width * math.cos(math.radians(leg.direction_deg)), leg.width * math.sin(math.radians(leg.direction_deg)))
        for leg in profile.legs
    ]
    return list(accumulate(steps, lambda at, step: (at[0] + step[0], at[1] + step[1]), initial=(0.0, 0.0)))


def _opened(points: list[Point]) -> list[Point]:
    """Move a hem off its leg, toward the frame: folded flat, the two would be one line."""
    *others, fold, end = points
    return [*others, fold, (fold[0] - OPEN, fold[1]), (end[0] - OPEN, end[1])]


def _word(x: float, y: float, text: str, anchor: str) -> str:
    return (
        f'<text x="{x:.2f}" y="{y:.2f}" font-family="Liberation Sans" font-size="{TEXT}" '
        f'text-anchor="{anchor}">{text}</text>'
    )
