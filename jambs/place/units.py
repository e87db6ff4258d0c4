"""Each unit of a ganged opening as an opening of its own: what opens, weighs and breaks is looked at unit by unit."""

from __future__ import annotations

from dataclasses import replace

from jambs.job.models.fields import Size
from jambs.job.models.gang import Gang, Unit
from jambs.job.models.openings import Opening
from jambs.sides import Side


def called(opening: Opening) -> str:
    """Name what stands in an opening; of units joined, some of them doors and some not, plainly a frame."""
    return _named(opening, window="window", door="door", both="frame")


def frame_name(opening: Opening) -> str:
    """Name the frame by what is in it; of units joined, some of them doors and some not, plainly."""
    return _named(opening, window="window frame", door="door frame", both="frame")


def _named(opening: Opening, *, window: str, door: str, both: str) -> str:
    kinds = {one.window.sash.is_door for one in unit_openings(opening)}
    return both if len(kinds) > 1 else door if kinds == {True} else window


def unit_openings(opening: Opening) -> tuple[Opening, ...]:
    """Return the units of an opening, each with its own window, frame and height; the opening itself where it is one.

    The rough opening of each is as much larger than its frame as that of them all is than all frames.
    """
    gang = opening.gang
    if gang is None:
        return (opening,)
    return tuple(_alone(opening, gang, unit) for unit in gang.units)


def _alone(opening: Opening, gang: Gang, unit: Unit) -> Opening:
    below = opening.floor_below_frame
    is_door = unit.window.sash.is_door
    bottom = opening.sill_height if below is None else below
    rough, whole = opening.rough_opening, opening.frame
    return replace(
        opening,
        window_name=unit.window_name,
        window=unit.window,
        frame=unit.frame,
        rough_opening=Size(
            width=unit.frame.width + rough.width - whole.width, height=unit.frame.height + rough.height - whole.height
        ),
        hinge=unit.hinge,
        safety_glass=opening.safety_glass if unit.safety_glass is None else unit.safety_glass,
        near_door=True if not is_door and _has_door(gang) else opening.near_door,
        weight=unit.weight,
        floor_below_frame=below if is_door else None,
        sill_height=None if bottom is None else bottom + unit.y,
        drop_outside=None if opening.drop_outside is None else opening.drop_outside + unit.y,
        unstated=unit.unstated,
        gang=None,
        at_mull=_covered(unit, gang),
    )


def _covered(unit: Unit, gang: Gang) -> tuple[Side, ...]:
    """Return the sides where the sash meets a board on the frames; a boxed mull has a jamb, as every other side."""
    outward = unit.window.sash.outward
    boxed = {
        side
        for mull in gang.mulls
        if (mull.boxed_outside if outward else mull.boxed_inside)
        for side, numbers in ((Side.RIGHT, mull.before), (Side.LEFT, mull.after))
        if unit.number in numbers
    }
    return tuple(side for side in unit.at_mull if side not in boxed)


def _has_door(gang: Gang) -> bool:
    return any(unit.window.sash.is_door for unit in gang.units)


Rectangle = tuple[float, float, float, float]
"""Left, bottom, right, top, from the lower left corner of all frames together [in]."""


def mull_frames(opening: Opening, *, from_outside: bool) -> tuple[tuple[int, Rectangle], ...]:
    """Return the edges of ganged frames that lie at mulls, inside the outer ones: number of the unit, and where.

    As seen from inside; ``from_outside``: by the faces that are seen from there.
    """
    gang = opening.gang
    if gang is None:
        return ()
    whole = opening.window.outside_face if from_outside else opening.window.frame_face
    left, right = whole.left, opening.frame.width - whole.right
    bottom, top = whole.sill, opening.frame.height - whole.head
    found: list[tuple[int, Rectangle]] = []
    for unit in gang.units:
        face = unit.window.outside_face if from_outside else unit.window.frame_face
        x, y, over, up = unit.x, unit.y, unit.x + unit.frame.width, unit.y + unit.frame.height
        # A level edge runs through from stile to stile of the whole; an upright one stands between level edges.
        low = y + face.sill if Side.SILL in unit.at_mull else bottom
        high = up - face.head if Side.HEAD in unit.at_mull else top
        edges = {
            Side.LEFT: (x, low, x + face.left, high),
            Side.RIGHT: (over - face.right, low, over, high),
            Side.SILL: (max(x, left), y, min(over, right), y + face.sill),
            Side.HEAD: (max(x, left), up - face.head, min(over, right), up),
        }
        found += [(unit.number, edges[side]) for side in edges if side in unit.at_mull]
    return tuple(found)
