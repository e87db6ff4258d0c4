"""How far a sash opens before it meets the frame, the extension jamb or the casing.

Seen along the hinge: ``a`` runs from the frame's outer edge at the hinge across the opening, ``e`` from the frame's
edge toward the side the sash opens to, out along the extension jamb.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import lru_cache

from jambs.geometry import Point
from jambs.place.polygons import Polygon, overlap, rectangle, turned

STEP_DEG = 2.0
LATCH_DEG = 16.0
LATCH_STEP_DEG = 0.125
"""While the sash is still at the latch it is turned by smaller steps, or it would step over a shallow jamb there."""
FINE_DEG = 0.05
GRAZE = 1 / 64
"""A sash is planed to a bevel at the latch: what it grazes there by less it swings past [in]; common practice, no
source."""


class Obstacle(StrEnum):
    """What a sash can meet when it opens."""

    FRAME = "the frame"
    JAMB = "the extension jamb"
    CASING = "the casing"
    MULL_CASING = "the mull casing"
    RETURN = "the return"
    WALL = "the wall outside"
    NOTHING = "nothing"


@dataclass(frozen=True, slots=True, kw_only=True)
class Leaf:
    """A hinged sash in its frame and the trim around it, seen along the hinge [in].

    ``span``: outer edge → outer edge of the frame. ``hinge_face``, ``latch_face``: width of the frame on each side.
    ``hinge_edge``, ``latch_edge``: frame's outer edge → edge of the sash.
    ``set_back``: frame's edge → face of the sash.
    ``jamb_depth``: frame's edge → outer end of the extension jamb (0: none).
    ``hinge_jamb_face``, ``latch_jamb_face``: frame's outer edge → opening face of the jamb.
    ``casing_face``: the same to the casing's inner edge at the hinge. ``casing_start``: frame's edge → back of that
    casing, negative where the frame stands proud of it; None: at the end of the jamb.
    ``wall_face``: frame's outer edge → edge of the cladding at the hinge, negative beyond the frame. ``wall_stands``:
    frame's edge → face of the cladding (0: no cladding stands out past the frame).
    ``hinge_out``, ``latch_out``: how far a flared jamb has moved out at its end.
    ``latch_depth``: as ``jamb_depth``, of what stands at the latch, where it is another depth. ``hinge_met``,
    ``latch_met``: what stands there, a jamb or the casing of a mull.
    """

    span: float
    hinge_face: float
    latch_face: float
    hinge_edge: float
    latch_edge: float
    thickness: float
    set_back: float
    jamb_depth: float
    hinge_jamb_face: float
    latch_jamb_face: float
    casing_face: float
    casing_thickness: float
    hinge_out: float
    latch_out: float
    latch_depth: float | None = None
    hinge_met: Obstacle = Obstacle.JAMB
    latch_met: Obstacle = Obstacle.JAMB
    casing_start: float | None = None
    wall_face: float = 0.0
    wall_stands: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Opened:
    """The greatest angle [degrees], what is met there, and the clear passage across the opening [in]."""

    degrees: float
    met: Obstacle
    passage: float


def _obstacles(leaf: Leaf) -> tuple[tuple[Obstacle, Polygon], ...]:
    frame_depth = abs(leaf.set_back) + leaf.thickness
    jamb_end = max(leaf.jamb_depth, 0.0)
    latch_end = jamb_end if leaf.latch_depth is None else max(leaf.latch_depth, 0.0)
    far = leaf.span
    # At the latch the frame is made for its sash; at the hinge a sash behind the frame's edge stops against it.
    found = [(Obstacle.FRAME, rectangle((-1.0, -frame_depth), (leaf.hinge_face, 0.0)))]
    if jamb_end > 0:
        jamb = rectangle((-1.0, 0.0), (leaf.hinge_jamb_face, jamb_end))
        found.append((leaf.hinge_met, _leaned(jamb, -leaf.hinge_out)))
    if latch_end > 0:
        jamb = rectangle((far - leaf.latch_jamb_face, 0.0), (far + 1.0, latch_end))
        found.append((leaf.latch_met, _leaned(jamb, leaf.latch_out)))
    start = jamb_end if leaf.casing_start is None else leaf.casing_start
    if leaf.casing_thickness > 0 and start + leaf.casing_thickness > 0:
        casing = rectangle((-1.0 - leaf.span, start), (leaf.casing_face, start + leaf.casing_thickness))
        found.append((Obstacle.CASING, casing))
    if leaf.wall_stands > 0:
        found.append((Obstacle.WALL, rectangle((-1.0 - 2 * leaf.span, 0.0), (leaf.wall_face, leaf.wall_stands))))
    return tuple(found)


def _leaned(jamb: Polygon, out: float) -> Polygon:
    """Move the outer end of a jamb along the wall: a flared one leans."""
    return tuple((a + out if e > 0 else a, e) for a, e in jamb) if out else jamb


def _closed(leaf: Leaf, thickness: float) -> Polygon:
    low = (leaf.hinge_edge, -leaf.set_back - thickness)
    return rectangle(low, (leaf.span - leaf.latch_edge, -leaf.set_back))


def _swinging(leaf: Leaf) -> Polygon:
    """The closed sash as far as it can meet trim: of one that laps the frame, only what stands proud of it."""
    leaf = replace(leaf, latch_edge=leaf.latch_edge + GRAZE)
    return _closed(leaf, -leaf.set_back if leaf.set_back < 0 else leaf.thickness)


def _met(leaf: Leaf, degrees: float, obstacles: tuple[tuple[Obstacle, Polygon], ...]) -> Obstacle | None:
    swung = turned(_swinging(leaf), about=(leaf.hinge_edge, -leaf.set_back), degrees=degrees)
    return next((name for name, shape in obstacles if overlap(swung, shape)), None)


def _swept_into(leaf: Leaf) -> tuple[tuple[Obstacle, Polygon], ...]:
    """Leave out a frame that the closed sash already overlaps: it is rebated for it. A jamb never is."""
    sash = _swinging(leaf)
    return tuple(one for one in _obstacles(leaf) if one[0] is not Obstacle.FRAME or not overlap(sash, one[1]))


@lru_cache(maxsize=512)
def open_sash(leaf: Leaf) -> Opened:
    """Turn the sash until it meets something, at most 180 degrees."""
    obstacles = _swept_into(leaf)
    clear, met = 0.0, None
    for degrees in _angles():
        met = _met(leaf, degrees, obstacles)
        if met:
            clear, met = _narrowed(leaf, clear, degrees, met, obstacles)
            break
        clear = degrees
    return Opened(degrees=clear, met=met or Obstacle.NOTHING, passage=passage_at(leaf, min(clear, 90.0)))


def _angles() -> Iterator[float]:
    degrees = 0.0
    while degrees < 180.0:
        degrees += LATCH_STEP_DEG if degrees < LATCH_DEG else STEP_DEG
        yield degrees


def _narrowed(
    leaf: Leaf, clear: float, blocked: float, met: Obstacle, obstacles: tuple[tuple[Obstacle, Polygon], ...]
) -> tuple[float, Obstacle]:
    while blocked - clear > FINE_DEG:
        middle = (clear + blocked) / 2
        hit = _met(leaf, middle, obstacles)
        clear, blocked, met = (middle, blocked, met) if hit is None else (clear, middle, hit)
    return clear, met


@dataclass(frozen=True, slots=True, kw_only=True)
class SwingPicture:
    """What is seen along the hinge [in], points (a, e): what the sash can meet, and the sash shut and open."""

    obstacles: tuple[tuple[Obstacle, Polygon], ...]
    shut: Polygon
    opened: Polygon
    hinge: Point


def swing_picture(leaf: Leaf, degrees: float) -> SwingPicture:
    """Show a sash that is open by an angle [degrees]."""
    hinge, shut = (leaf.hinge_edge, -leaf.set_back), _closed(leaf, leaf.thickness)
    return SwingPicture(
        obstacles=_obstacles(leaf),
        shut=shut,
        opened=turned(shut, about=hinge, degrees=degrees),
        hinge=hinge,
    )


def passage_at(leaf: Leaf, degrees: float) -> float:
    """Clear passage across the opening beside the open sash: its farthest reach → the frame at the latch [in]."""
    shape = turned(_closed(leaf, leaf.thickness), about=(leaf.hinge_edge, -leaf.set_back), degrees=degrees)
    reach = max(max(a for a, _ in shape), leaf.hinge_face)
    return max(leaf.span - leaf.latch_face - reach, 0.0)
