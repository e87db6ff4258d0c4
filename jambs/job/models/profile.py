"""The molded section of a casing as the job gives it: points across from its inner edge and out from its back."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations
from typing import Annotated, Any

from pydantic import AfterValidator, BeforeValidator, ValidationInfo, WithJsonSchema

from jambs.geometry import Outline, Point
from jambs.job.models.fields import Reach, fault, units_of
from jambs.job.models.thin_wood import LEAST_CORNER_DEG, LEAST_WOOD, thin_place
from jambs.length import ROUND_OFF

MOST_POINTS = 400
"""Of a section: a curve from a drawing is parted into chords."""
LEAST_EDGE = 1 / 8
"""Thickness at the inner edge, where the section meets its reveal [in]; common practice, no source."""
SAME_SIZE = 1 / 64
"""A section is as wide and as thick as its casing, to this much [in]."""


def _listed(value: Any) -> Any:
    """Ask for a list of pairs before each of their lengths is read."""
    is_list = isinstance(value, list | tuple) and all(isinstance(one, list | tuple) and len(one) == 2 for one in value)
    if not is_list:
        raise fault("is not a list of points; write [[0, 0], [0, 3/8], …], or the name of a DXF file")
    if not 4 <= len(value) <= MOST_POINTS:
        raise fault(f"has {len(value)} points; give 4 to {MOST_POINTS}, round the section")
    return value


def _whole(points: tuple[Point, ...], info: ValidationInfo) -> tuple[Point, ...]:
    """Refuse a section that crosses itself or has no flat back; return it counter-clockwise from its inner edge."""
    units = units_of(info)
    edges = [*zip(points, (*points[1:], points[0]), strict=True)]
    if any(_crosses(one, two) for one, two in combinations(edges, 2)):
        raise fault("crosses itself; give its points in order, once round the section")
    runs_left = sum(_turn(points[0], one, two) for one, two in edges) > 0
    points = points if runs_left else points[::-1]
    wide = max(x for x, _ in points)
    start = next((place for place, point in enumerate(points) if _is_at(point, (0.0, 0.0))), None)
    if start is None or not _is_at(points[(start + 1) % len(points)], (wide, 0.0)):
        raise fault(
            "has no flat back from its inner edge to its outer one; begin at [0, 0] and let one edge run to the full "
            "width at 0 out"
        )
    points = (*points[start:], *points[:start])
    if points[-1][0] > ROUND_OFF or points[-1][1] < LEAST_EDGE - ROUND_OFF:
        least = units.text(LEAST_EDGE)
        raise fault(f"has no inner edge to show at the reveal; let it come down to [0, 0] from {least} out or more")
    if (place := thin_place(points)) is not None:
        at = ", ".join(units.text(one) for one in place)
        raise fault(
            f"leaves wood too thin to run at [{at}]: keep {units.text(LEAST_WOOD)} between two of its edges, and no "
            f"corner sharper than {LEAST_CORNER_DEG:.0f}°"
        )
    return points


def _is_at(point: Point, place: Point) -> bool:
    return abs(point[0] - place[0]) < ROUND_OFF and abs(point[1] - place[1]) < ROUND_OFF


def _crosses(one: tuple[Point, Point], two: tuple[Point, Point]) -> bool:
    """Say whether two edges cross within both of them."""
    (a, b), (c, d) = one, two
    return _turn(a, b, c) * _turn(a, b, d) < -(ROUND_OFF**2) and _turn(c, d, a) * _turn(c, d, b) < -(ROUND_OFF**2)


def _turn(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


Profile = Annotated[
    tuple[tuple[Reach, Reach], ...],
    BeforeValidator(_listed),
    AfterValidator(_whole),
    WithJsonSchema(
        {
            "anyOf": [
                {"type": "array", "items": {"type": "array", "items": {"type": ["string", "number"]}}},
                {"type": "string", "description": "a DXF file beside the job, with one closed polyline"},
            ]
        }
    ),
]
"""A molded section, counter-clockwise from [0, 0]: (across from the inner edge, out from the back) [in]."""


def profile_misfit(profile: Sequence[Point], width: float, thickness: float) -> bool:
    """Say whether a section is not as wide and thick as a casing [in]."""
    wide, thick = max(x for x, _ in profile), max(y for _, y in profile)
    return abs(wide - width) > SAME_SIZE or abs(thick - thickness) > SAME_SIZE


def on_board(profile: Sequence[Point], width: float, thickness: float) -> Outline:
    """Return a section as its board has it (v, w): across from the near edge, from the face down to the back [in].

    Points on the outermost lines are put onto the board's own edge and face.
    """
    wide, thick = max(x for x, _ in profile), max(y for _, y in profile)
    points = [
        (width if x > wide - ROUND_OFF else x, 0.0 if y > thick - ROUND_OFF else thickness - y) for x, y in profile
    ]
    return tuple(points[::-1])
