"""Long and short points of ends that are cut at an angle: at which edge, on face or back, and how far apart."""

from __future__ import annotations

from collections.abc import Mapping

from jambs.geometry import Plane, Vector
from jambs.length import HALF_64TH, Grid
from jambs.parts.board.arrises import ARRISES, Arris
from jambs.parts.board.cuts import BoardSizes, Edge, End
from jambs.parts.board.part import Part
from jambs.parts.words.edge_names import arris_name


def points_words(part: Part, lengths: Mapping[Arris, float], grid: Grid) -> str:
    """Say from long point to long point and from short to short, at which edge, and how long the edges of the face are.

    A tape is hooked on the face that lies up, so each length there is told: once, where it is that of a point.
    """
    told: list[float] = []
    words = []
    for name, length in (("long", max(lengths.values())), ("short", min(lengths.values()))):
        told.append(length)
        where = arris_name(part, [one for one in lengths if _is_same(lengths[one], length)])
        words.append(f"{name} point {grid.text(length)}" + (f" ({where})" if where else ""))
    for arris, length in lengths.items():
        if not arris.on_back and not any(_is_same(length, other) for other in told):
            told.append(length)
            words.append(f"{arris_name(part, [arris])} {grid.text(length)}")
    return ", ".join(words)


def _is_same(one: float, two: float) -> bool:
    return abs(one - two) < HALF_64TH


def long_point_words(part: Part, plane: Plane, sizes: BoardSizes, end: End) -> str:
    """Say where the long point of an end is: at an edge, on the face or the back, as the board lies face up."""
    past = {arris: plane.past(_corner(sizes, end, arris)) for arris in ARRISES}
    farthest = min(past.values())
    name = arris_name(part, [arris for arris in ARRISES if _is_same(past[arris], farthest)])
    return name if name.startswith(ON) else f"at the {name}"


ON = "on "


def _corner(sizes: BoardSizes, end: End, arris: Arris) -> Vector:
    v = 0.0 if arris.edge is Edge.NEAR else sizes.width_at(end)
    return (sizes.in_from(end, 0.0), v, sizes.thickness if arris.on_back else 0.0)
