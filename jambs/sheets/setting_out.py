"""What a flared jamb in flat segments is put together over: its faces at the frame edge and at the room edge.

Both are drawn at full scale with the joints between the segments, which point at the center of their arc: the right
half of the curve, of one that is the same to both sides from its center line on.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from jambs.geometry import Point
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.length import ROUND_OFF, Grid
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.jambs.flat_jambs import flat_path
from jambs.parts.jambs.shaped_jambs import clear_path
from jambs.parts.kit.cut_kit import CutKit
from jambs.sheets.kit_parts import parts_of
from jambs.sheets.template import Template
from jambs.sides import Side

Line = tuple[Point, ...]


def setting_out(kit: CutKit, grid: Grid) -> Iterator[Template]:
    """Draw the setting out of a flared jamb's flat segments: faces at both edges, joints in broken lines."""
    opening, frame = kit.placement.opening, kit.frames[0] if kit.frames else None
    clear = clear_path(opening, frame.clear) if frame and opening.shape else ()
    flat = flat_path(opening, clear, frame, kit.flares) if frame else None
    if frame is None or flat is None:
        return
    side = next(edge.side for edge in clear if edge.center)
    room = flat.at(kit.flares, frame.sides[side].greatest + frame.proud)
    shown = [i for i in flat.flares if flat.path[i].side is Side.HEAD]
    at_frame, at_room = _line(flat.path, shown), _line(room, shown)
    middle = _middle(at_frame)
    at_frame, at_room = (_right_of(line, middle) for line in (at_frame, at_room))
    joints = tuple(zip(at_frame, at_room, strict=True))
    low = tuple(min(point[axis] for line in (at_frame, at_room) for point in line) for axis in (0, 1))
    high = tuple(max(point[axis] for line in (at_frame, at_room) for point in line) for axis in (0, 1))

    def placed(line: Line) -> Line:
        return tuple((x - low[0], y - low[1]) for x, y in line)

    faces = placed(at_frame), placed(at_room)
    jambs = [one for one in parts_of(kit, PartKind.EXTENSION_JAMB, Where.INTERIOR) if one.side in _sides(clear)]
    half = "the others are alike" if middle is None else "turned over on its center line it is the other half"
    radii = (grid.text(min(edge.circle.radius for edge in path if edge.circle)) for path in (clear, _room(kit)))
    yield Template(
        title=f"{jambs[0].mark} to {jambs[-1].mark}: flat segments, their faces at both edges",
        note=f"seen from the room, right half; {half}; corners on radius {' and '.join(radii)}; broken: joints",
        size=(high[0] - low[0], high[1] - low[1]),
        cut=faces,
        broken=tuple(map(placed, joints)),
        labels=tuple(
            (_between(*line[:2]), words) for line, words in zip(faces, ("frame edge", "room edge"), strict=True)
        ),
    )


def _room(kit: CutKit) -> FramePath:
    return clear_path(kit.placement.opening, kit.room)


def _sides(clear: FramePath) -> set[Side]:
    return {edge.side for edge in clear if edge.center}


def _line(path: FramePath, shown: Sequence[int]) -> Line:
    """Return the corners along edges that follow each other."""
    edges: list[FrameEdge] = [path[i] for i in shown]
    return (edges[0].start, *(edge.finish for edge in edges))


def _middle(line: Line) -> float | None:
    """Return the center line (x) of what is the same to both sides [in]."""
    (x0, y0), (x1, y1) = line[0], line[-1]
    return (x0 + x1) / 2 if abs(y0 - y1) < ROUND_OFF else None


def _right_of(line: Line, x: float | None) -> Line:
    """Return the right half of a line: from its level middle, or where it is not the same to both sides a corner."""
    if x is None:
        return line[(len(line) - 1) // 2 :]
    half = line[len(line) // 2 :]
    return ((x, half[0][1]), *half)


def _between(one: Point, two: Point) -> Point:
    return ((one[0] + two[0]) / 2, (one[1] + two[1]) / 2)
