"""What a flared jamb in flat segments is put together over: its faces at the frame edge and at the far edge.

Both are drawn at full scale with the joints between the segments, which point at the center of their arc: the right
half of the curve, of one that is the same to both sides from its center line on.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from jambs.geometry import Point
from jambs.job.models.path_edge import FrameEdge, FramePath
from jambs.length import ROUND_OFF, Grid
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.jambs.flat_jambs import flat_path
from jambs.parts.jambs.shaped_jambs import clear_path
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.shapes.flat_segments import FlatPath
from jambs.place.flares import Flares
from jambs.sheets.kit_parts import parts_of
from jambs.sheets.template import Template
from jambs.sides import Side

Line = tuple[Point, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Laid:
    """Flat segments of one side of the wall, the kind of their boards, and how they are told of."""

    flat: FlatPath
    flares: Flares
    kind: PartKind
    where: Where
    seen_from: str
    far_edge: str

    def line(self, path: FramePath, shown: Sequence[int]) -> Line:
        """Return the corners along edges that follow each other, from left to right as they are seen."""
        edges: list[FrameEdge] = [path[i] for i in shown]
        corners = (edges[0].start, *(edge.finish for edge in edges))
        if self.where is Where.INTERIOR:
            return corners
        return tuple((-x, y) for x, y in reversed(corners))


def setting_out(kit: CutKit, grid: Grid) -> Iterator[Template]:
    """Draw the setting out of a flared jamb's flat segments: faces at both edges, joints in broken lines."""
    opening, frame = kit.placement.opening, kit.frames[0] if kit.frames else None
    clear = clear_path(opening, frame.clear) if frame and opening.shape else ()
    if flat := flat_path(opening, clear, frame, kit.flares) if frame else None:
        jamb, where, room = PartKind.EXTENSION_JAMB, Where.INTERIOR, "room edge"
        yield _template(
            _Laid(flat=flat, flares=kit.flares, kind=jamb, where=where, seen_from="the room", far_edge=room), kit, grid
        )
    if flat := kit.flat_outside:
        is_metal = opening.exterior is not None and opening.exterior.returns is not None
        jamb = PartKind.METAL_RETURN if is_metal else PartKind.EXTERIOR_JAMB
        where, far = Where.EXTERIOR, "edge at the trim plane"
        leans = kit.outside_flares
        yield _template(
            _Laid(flat=flat, flares=leans, kind=jamb, where=where, seen_from="outside", far_edge=far), kit, grid
        )


def _template(laid: _Laid, kit: CutKit, grid: Grid) -> Template:
    flat = laid.flat
    far = flat.at(laid.flares, flat.depth)
    shown = [i for i in flat.flares if flat.path[i].side is Side.HEAD]
    at_frame, at_far = laid.line(flat.path, shown), laid.line(far, shown)
    middle = _middle(at_frame)
    at_frame, at_far = (_right_of(line, middle) for line in (at_frame, at_far))
    joints = tuple(zip(at_frame, at_far, strict=True))
    low = tuple(min(point[axis] for line in (at_frame, at_far) for point in line) for axis in (0, 1))
    high = tuple(max(point[axis] for line in (at_frame, at_far) for point in line) for axis in (0, 1))

    def placed(line: Line) -> Line:
        return tuple((x - low[0], y - low[1]) for x, y in line)

    faces = placed(at_frame), placed(at_far)
    along = {flat.path[i].side for i in flat.flares}
    jambs = [one for one in parts_of(kit, laid.kind, laid.where) if one.side in along]
    half = "the others are alike" if middle is None else "turned over on its center line it is the other half"
    is_leaned = bool(laid.flares)  # strips of metal stand square: both edges are one line
    told = f"{' and '.join(map(grid.text, flat.radii))}; broken: joints" if is_leaned else grid.text(flat.radii[0])
    labels = zip(faces, ("frame edge", laid.far_edge), strict=True) if is_leaned else [(faces[0], "faces")]
    return Template(
        title=f"{jambs[0].mark} to {jambs[-1].mark}: flat segments, their faces{' at both edges' if is_leaned else ''}",
        note=f"seen from {laid.seen_from}, right half; {half}; corners on radius {told}",
        size=(high[0] - low[0], high[1] - low[1]),
        cut=faces if is_leaned else faces[:1],
        broken=tuple(map(placed, joints)) if is_leaned else (),
        labels=tuple((_between(*line[:2]), words) for line, words in labels),
    )


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
