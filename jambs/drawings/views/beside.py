"""Openings that are trimmed as one with the one that is drawn: where they are seen, and what of them is dimensioned."""

from __future__ import annotations

from itertools import pairwise

from jambs.drawings.elements.boxes import Box
from jambs.drawings.elements.view import Chain, Interval, ViewSide
from jambs.parts.kit.kit import Kit, RunMember

NAME = "openings"


def beside(kit: Kit, *, from_outside: bool) -> list[tuple[RunMember, float]]:
    """Return the other openings and how far right of that at hand the corner of their frame is seen [in]."""
    width = kit.placement.opening.frame.width
    return [
        (one, width - one.x - one.placement.opening.frame.width if from_outside else one.x)
        for one in (kit.run.others if kit.run else ())
    ]


def moved_box(box: Box, off: float) -> Box:
    """Return a box so far right [in]."""
    return Box(box.left + off, box.bottom, box.right + off, box.top)


def frames_across(kit: Kit, *, from_outside: bool) -> list[Chain]:
    """Return one chain across above: every frame, and from frame to frame over the walls between; nothing if alone."""
    if kit.run is None:
        return []
    frame = kit.placement.opening.frame
    spans = [(0.0, frame.width)]
    for one, off in beside(kit, from_outside=from_outside):
        spans.append((off, off + one.placement.opening.frame.width))
    stops = sorted(end for span in spans for end in span)
    intervals = tuple(Interval(start=(low, frame.height), finish=(high, frame.height)) for low, high in pairwise(stops))
    return [Chain(side=ViewSide.TOP, intervals=intervals, after=NAME)]
