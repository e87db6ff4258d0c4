"""What a part that is cut has of shape, as its record tells it: its widths at both ends, and what is cut into it.

A plane that an end or an edge is cut to is held against another by how far they lie apart on the board: only what a
tape or a square could tell apart is another shape.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from typing import Any

from jambs.parts.board.cuts import Crosscut, Edge, EdgeBevel, End, EndBevel, Groove, Miter, PlaneCut, Rip, Taper
from jambs.values import type_words

Record = Mapping[str, Any]
TRIM_CUTS = tuple(map(type_words, (Rip, Taper, Crosscut)))
"""Cuts that only make a board smaller: whoever has a larger one can trim it."""
CROSSCUT_TAKES = tuple(map(type_words, (Miter, EndBevel, EdgeBevel, PlaneCut, Groove)))
"""Cuts that can be made once more when an end is crosscut."""
PLANE_CUT, EDGE_BEVEL = type_words(PlaneCut), type_words(EdgeBevel)
ENDS, EDGES = tuple(end.value for end in End), tuple(edge.value for edge in Edge)
ANGLE_PRINTED = 0.1
"""Angles are printed, and saws set, to a tenth of a degree."""


def widths(part: Record) -> tuple[float, float]:
    """Return the widths of a part where it starts and where it finishes [units of the job].

    A flared board has its taper in a plane that its far edge is cut to.
    """
    if part["taper"] is not None:
        return part["taper"]["start_width"]["value"], part["taper"]["finish_width"]["value"]
    width = part["width"]["value"]
    far = next((cut for cut in part["cuts"] if cut["kind"] == PLANE_CUT and cut["at"] == Edge.FAR.value), None)
    if far is None:
        return width, width
    face_start, back_start, face_finish, back_finish = _stands(far, part)
    return width + max(face_start, back_start), width + max(face_finish, back_finish)


def is_shaped(part: Record) -> bool:
    """Say whether an end carries more than a square cut or a miter, which a crosscut would take away."""
    return any(cut["kind"] not in CROSSCUT_TAKES for cut in _shaping(part))


def same_shape(old: Record, new: Record, tolerance: float) -> bool:
    """Say whether two parts carry the same cuts but for sizes within the tolerance [units of the job]."""
    before, after = _shaping(old), _shaping(new)
    if [_what(cut) for cut in before] != [_what(cut) for cut in after]:
        return False
    return all(_near(one, old, other, new, tolerance) for one, other in zip(before, after, strict=True))


def _shaping(part: Record) -> list[Record]:
    """The cuts that shape a part; those along its edges first, in the order of the edges."""
    cuts = [cut for cut in part["cuts"] if cut["kind"] not in TRIM_CUTS]
    return sorted(cuts, key=lambda cut: EDGES.index(_edge(cut)) if _is_edge(cut) else len(EDGES))


def _is_edge(cut: Record) -> bool:
    return cut["kind"] == EDGE_BEVEL or (cut["kind"] == PLANE_CUT and cut["at"] in EDGES)


def _edge(cut: Record) -> str:
    return str(cut["edge"] if cut["kind"] == EDGE_BEVEL else cut["at"])


def _what(cut: Record) -> tuple[str, ...]:
    """What a cut is: an edge that is beveled is the same whether it is also tapered or not."""
    return (EDGE_BEVEL, _edge(cut)) if _is_edge(cut) else (cut["kind"],)


def _near(was: Record, old: Record, now: Record, new: Record, tolerance: float) -> bool:
    if _is_edge(was):
        return abs(_lean(was, old) - _lean(now, new)) <= tolerance
    if was["kind"] == PLANE_CUT and was["at"] == now["at"]:
        long_point = max if was["at"] == End.FINISH.value else min
        moved = long_point(_stands(was, old)) - long_point(_stands(now, new))
        return max(abs(moved), _apart(was, now, old)) <= tolerance
    return was.keys() == now.keys() and all(_near_value(was[key], now[key], tolerance) for key in was)


def _near_value(was: Any, now: Any, tolerance: float) -> bool:
    if not (isinstance(was, Mapping) and isinstance(now, Mapping)):
        return bool(was == now)
    if "value" not in was or "value" not in now:
        return was == now
    return bool(abs(was["value"] - now["value"]) <= (ANGLE_PRINTED if was["text"].endswith("°") else tolerance))


def _apart(was: Record, now: Record, part: Record) -> float:
    """Return how far the angles of two planes at an end take them apart, across a part or through it [job units]."""
    one, other = was["flat"]["normal"], now["flat"]["normal"]
    sizes = {1: float(part["width"]["value"]), 2: float(part["thickness"]["value"])}
    return max(float(abs(one[axis] / one[0] - other[axis] / other[0])) * size for axis, size in sizes.items())


def _lean(cut: Record, part: Record) -> float:
    """Return how far a beveled edge stands farther out on the face than on the back [units of the job]."""
    if cut["kind"] == PLANE_CUT:
        face, back, *_ = _stands(cut, part)
        return (face - back) * (1.0 if cut["at"] == Edge.FAR.value else -1.0)
    lean = float(part["thickness"]["value"]) * math.tan(math.radians(cut["angle_deg"]["value"]))
    return -lean if cut["face_short"] else lean


def _stands(cut: Record, part: Record) -> tuple[float, ...]:
    """Return where a plane stands, from the end or edge that it is cut at, at the corners of the board there: face and
    back where that begins, then where it ends [units of the job].
    """
    point, normal = cut["flat"]["point"], cut["flat"]["normal"]
    axis, along = (0, 1) if cut["at"] in ENDS else (1, 0)
    sizes = [float(part[name]["value"]) for name in ("length", "width", "thickness")]
    begins = sizes[axis] if cut["at"] in (End.FINISH.value, Edge.FAR.value) else 0.0
    return tuple(
        point[axis] - begins - (normal[along] * (at - point[along]) + normal[2] * (deep - point[2])) / normal[axis]
        for at, deep in _corners(sizes[along], sizes[2])
    )


def _corners(long: float, thick: float) -> Iterator[tuple[float, float]]:
    return ((at, deep) for at in (0.0, long) for deep in (0.0, thick))
