"""What a board shows when it lies on a machine's bed, face up or back up: its outline, its pockets, its bevels.

All of it follows from the cut list. Flat coordinates of a face [in]: ``u`` along the grain from the start end and ``v``
across the width. Seen on its face ``v`` grows from the near edge. To see its back the board is turned over about its
length: its start end stays where it was, and ``v`` grows from the far edge. So what lies in the back is drawn as it is
met there, and nobody mirrors it in his head.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum

from jambs.geometry import Outline, Plane, Point, tangent
from jambs.outlines import SAME_POINT, area, from_lowest, kept, within, without_doubles
from jambs.parts.board.cuts import (
    BoardSizes,
    Cut,
    Edge,
    EdgeBevel,
    EdgeRabbet,
    EndBevel,
    EndRabbet,
    Groove,
    PlaneRabbet,
    Tenon,
    saw_angles,
)
from jambs.parts.board.part import Part


class BoardFace(Enum):
    """The side of a board that lies up."""

    FACE = "face"
    BACK = "back"


@dataclass(frozen=True, slots=True, kw_only=True)
class FlatPocket:
    """What is taken out of a face to a depth: its outline within the board, and how deep it is [in]."""

    outline: Outline
    depth: float


@dataclass(frozen=True, slots=True, kw_only=True)
class FlatBevel:
    """What a bevel takes off a face: the strip from the long side to where the cut leaves this face [in].

    ``angle_deg``: off square.
    """

    outline: Outline
    angle_deg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkedFace:
    """One face of a board as it lies up: what is cut through, and what is worked from this side [in].

    ``outline``: the greatest outline of the board, as ``Part.outline`` has it; bevels go on from there.
    """

    face: BoardFace
    outline: Outline
    pockets: tuple[FlatPocket, ...]
    bevels: tuple[FlatBevel, ...]

    @property
    def is_worked(self) -> bool:
        """Say whether anything but the outline is cut from this side."""
        return bool(self.pockets or self.bevels)


def worked_face(part: Part, face: BoardFace) -> WorkedFace:
    """Return one face of a part of wood as its cut list leaves it."""
    board = part.silhouettes.sizes
    outline = part.outline if face is BoardFace.FACE else turned_over(part.outline, board.width)
    pockets, bevels = [], []
    for cut in part.cuts:
        for low, high, depth in _pockets(cut, board, face):
            pockets.append(FlatPocket(outline=_within(outline, low, high), depth=depth))
        for low, high, angle in _bevels(cut, board, face):
            bevels.append(FlatBevel(outline=_within(outline, low, high), angle_deg=angle))
    pockets += [pocket for cut in part.silhouettes.rabbets if (pocket := _rabbeted(cut, outline, board, face))]
    bevels += [one for plane in part.silhouettes.planes if (one := _past(plane, outline, board, face))]
    return WorkedFace(face=face, outline=outline, pockets=tuple(pockets), bevels=tuple(bevels))


def turned_over(outline: Outline, width: float) -> Outline:
    """Return an outline as it is seen from the back, the board turned over about its length."""
    return from_lowest(tuple((u, width - v) for u, v in reversed(outline)))


def _within(outline: Outline, low: Point, high: Point) -> Outline:
    """Return what of a box lies within the outline."""
    clean = without_doubles(within(outline, low, high))
    assert area(clean) > SAME_POINT, "a cut of the list lies outside its own board"
    return from_lowest(clean)


def _rabbeted(cut: PlaneRabbet, outline: Outline, board: BoardSizes, face: BoardFace) -> FlatPocket | None:
    """Return what a rabbet at a compound angle takes out of the face, its shoulder as the face meets it."""
    taken = _beyond(cut.flat, outline, board, face) if face is BoardFace.FACE else None
    return FlatPocket(outline=taken, depth=cut.depth) if taken else None


def _past(plane: Plane, outline: Outline, board: BoardSizes, face: BoardFace) -> FlatBevel | None:
    """Return what a cut at a compound angle takes off a face; nothing on the side it leaves whole."""
    taken = _beyond(plane, outline, board, face)
    return FlatBevel(outline=taken, angle_deg=saw_angles(plane)[1]) if taken else None


def _beyond(plane: Plane, outline: Outline, board: BoardSizes, face: BoardFace) -> Outline | None:
    """Return what of a face lies past a plane."""
    across = -plane.normal[1] if face is BoardFace.BACK else plane.normal[1]
    toward = (plane.normal[0], across)
    depth = 0.0 if face is BoardFace.FACE else board.thickness
    on_face = -plane.normal[2] * (depth - plane.start[2]) / (toward[0] ** 2 + toward[1] ** 2)
    start_v = board.width - plane.start[1] if face is BoardFace.BACK else plane.start[1]
    at = (plane.start[0] + on_face * toward[0], start_v + on_face * toward[1])
    taken = without_doubles(kept(outline, toward, at))
    return from_lowest(taken) if taken and area(taken) >= SAME_POINT else None


def _pockets(cut: Cut, board: BoardSizes, face: BoardFace) -> Iterator[tuple[Point, Point, float]]:
    """Yield low and high corner and depth of what a cut takes out of a face, as it is seen there."""
    if isinstance(cut, EndRabbet) and face is BoardFace.FACE:
        first, last = sorted((board.in_from(cut.end, 0.0), board.in_from(cut.end, cut.along)))
        yield (first, 0.0), (last, board.width), cut.depth
    elif isinstance(cut, EdgeRabbet) and cut.from_back is (face is BoardFace.BACK):
        yield *_strip(cut.edge, 0.0, cut.across, board, face), cut.depth
    elif isinstance(cut, Tenon) and (depth := cut.face if face is BoardFace.FACE else cut.back):
        first, last = sorted((board.in_from(cut.end, 0.0), board.in_from(cut.end, cut.along)))
        yield (first, 0.0), (last, board.width), depth
    elif isinstance(cut, Groove) and face is BoardFace.BACK:
        yield *_strip(cut.edge, cut.from_edge, cut.width, board, face), cut.depth


def _bevels(cut: Cut, board: BoardSizes, face: BoardFace) -> Iterator[tuple[Point, Point, float]]:
    """Yield low and high corner and angle of what a bevel takes off a face, as it is seen there."""
    if not isinstance(cut, EndBevel | EdgeBevel) or cut.face_short is not (face is BoardFace.FACE):
        return
    run = board.thickness * tangent(cut.angle_deg)
    if isinstance(cut, EdgeBevel):
        yield *_strip(cut.edge, 0.0, run, board, face), cut.angle_deg
        return
    first, last = sorted((board.in_from(cut.end, 0.0), board.short_side(cut.end, run)))
    yield (first, 0.0), (last, board.width), cut.angle_deg


def _strip(edge: Edge, start: float, wide: float, board: BoardSizes, face: BoardFace) -> tuple[Point, Point]:
    """Return low and high corner of a strip along an edge, as it is seen on a face."""
    is_low = (edge is Edge.NEAR) is (face is BoardFace.FACE)
    low, high = (start, start + wide) if is_low else (board.width - start - wide, board.width - start)
    return (0.0, low), (board.length, high)
