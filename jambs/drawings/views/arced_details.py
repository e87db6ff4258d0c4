"""Details of parts whose sides are sawn or bent to arcs: the piece, its blank, its chords and rises, its radii."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

from jambs.arcs import with_arcs
from jambs.drawings.elements.boxes import box_around
from jambs.drawings.elements.view import Arc, CallOut, Chain, Ink, Interval, Shape, ViewSide
from jambs.geometry import Outline, Point
from jambs.length import ROUND_OFF
from jambs.parts.board.arch_outline import ArchCorners, arch_corners
from jambs.parts.board.part import Part

CENTER_ARM = 1 / 16
"""Arms of the cross on a center, as a share of the radius."""
PAST_CHORD = 0.1
"""A center so far under the piece still has its cross, as a share of the radius."""


def arced_shapes(part: Part, ink: Ink) -> tuple[Shape, ...]:
    """Draw the piece with its arcs; of one that is sawn the straight blank it comes out of, in broken lines."""
    found = with_arcs(part.curved_outline)
    piece = Shape(points=found.points, bulges=found.bulges, ink=ink)
    if part.is_laminated:
        return (piece, *_center_marks(part, found.points))
    long, across = part.silhouettes.sizes.length, _across(part)
    blank = ((0.0, 0.0), (long, 0.0), (long, across), (0.0, across))
    return (piece, Shape(points=blank, ink=Ink.HIDDEN), *_center_marks(part, blank))


def _center_marks(part: Part, drawn: Iterable[Point]) -> tuple[Shape, ...]:
    """Cross the center of each arc where it lies beside the piece; of a shallow one it is far off the paper."""
    box = box_around(drawn)
    centers = {(round(u, 6), round(v, 6)): arc.radius for arc in part.arcs for u, v in (arc.center,)}
    return tuple(
        Shape(points=line, ink=Ink.DIMENSION, closed=False)
        for (u, v), radius in centers.items()
        if box.left - ROUND_OFF <= u <= box.right + ROUND_OFF and v >= box.bottom - PAST_CHORD * radius
        for arm in (radius * CENTER_ARM,)
        for line in (((u - arm, v), (u + arm, v)), ((u, v - arm), (u, v + arm)))
    )


def _across(part: Part) -> float:
    """How high the piece is on paper, its blank too [in]."""
    return part.silhouettes.sizes.thickness if part.is_sawn_on_edge else part.width


def arced_chains(part: Part) -> tuple[Chain, ...]:
    """Dimension the chord of each side, how far each rises and both together; then the blank of a sawn piece."""
    found = arch_corners(part)
    long = part.silhouettes.sizes.length
    upper, lower = side_names(part)
    blank = Interval(start=(0.0, 0.0), finish=(long, 0.0))
    return (
        Chain(side=ViewSide.BOTTOM, intervals=(Interval(start=found.inner[0], finish=found.inner[1]),), after=lower),
        *(() if part.is_laminated else (Chain(side=ViewSide.BOTTOM, intervals=(blank,), after="blank"),)),
        Chain(side=ViewSide.TOP, intervals=(Interval(start=found.outer[0], finish=found.outer[1]),), after=upper),
        Chain(side=ViewSide.LEFT, intervals=(Interval(start=(0.0, 0.0), finish=(0.0, _across(part))),)),
        Chain(side=ViewSide.RIGHT, intervals=_rise(found, long)),
    )


def _rise(found: ArchCorners, length: float) -> tuple[Interval, ...]:
    """From the chord of the hollow side up to its crown, and on to the crown of the round side."""
    low = min(corner[1] for corner in found.inner)
    levels = (low, found.crowns[0][1], found.crowns[1][1])
    return tuple(Interval(start=(length, a), finish=(length, b)) for a, b in pairwise(levels))


def radii(part: Part) -> tuple[CallOut, ...]:
    """Dimension the radius of each side, at its crown where its center is too far off for a line that points at it.

    A piece that is bent to several arcs has its middle one there.
    """
    found = arch_corners(part)
    ends = tuple((crown, crown) for crown in found.crowns) if part.is_bent_in_one else (found.inner, found.outer)
    sides = zip(part.arcs[:2], found.crowns, ends, (ViewSide.LEFT, ViewSide.RIGHT), strict=True)
    return tuple(
        radius_call_out(Arc(center=arc.center, middle=crown, ends=its_ends), side)
        for arc, crown, its_ends, side in sides
    )


def radius_call_out(arc: Arc, side: ViewSide) -> CallOut:
    """Dimension the radius of an arc, its text beside the view on a side."""
    return CallOut(target=arc.middle, lines=(), side=side, on_edge=True, arc=arc)


def side_names(part: Part) -> tuple[str, str]:
    """Name the upper, round side and the lower, hollow one of a piece as it lies on paper."""
    return ("back", "hollow face") if part.is_sawn_on_edge else ("outer edge", "inner edge")


def edge_words(part: Part) -> str:
    """Say how a board that is sawn to arcs lies on paper."""
    lies = "on edge" if part.is_sawn_on_edge else "face up"
    upper, lower = side_names(part)
    return f"{lies}, {upper} above, {lower} below"


def outline_signature(outline: Outline, length: float, *, mirrored: bool) -> frozenset[Point]:
    """Return the corners of an outline with arcs, the same for pieces that are alike on paper; mirrored end for end."""
    found = with_arcs(outline)
    return frozenset((round((length - u if mirrored else u) * 128), round(v * 128)) for u, v in found.points)
