"""Which air is which in a cut: filled from the room and from outdoors until something stops it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.ndimage import label

from jambs.study.heat.cells import Integers, cells_inside
from jambs.study.heat.frame import AIR_MARGIN
from jambs.study.heat_findings import SpaceOpenToBoth
from jambs.study.regions.grid import CutGrid, Floats, edge_lines
from jambs.study.regions.region import Block, StudyError, edges_x, edges_y

WIDE, TIGHT = 0.010, 0.002
"""A gap over WIDE lets air through freely, one up to TIGHT not at all; between, what lies behind it is slightly
ventilated [m]: ISO 10077-2, from memory."""

OPEN, OUTDOORS, ROOM, STILL, VENTILATED, LEFT_OUT, SOLID = range(7)
Kinds = NDArray[np.int8]
Mask = NDArray[np.bool_]


@dataclass(frozen=True, slots=True, kw_only=True)
class Rectangle:
    """A part of an air in the plane of the cut: edges x0 < x1, y0 < y1. [m]"""

    x0: float
    x1: float
    y0: float
    y1: float


@dataclass(frozen=True, slots=True, kw_only=True)
class AirSpaces:
    """The airs of a cut: the room's, the outdoor one, still air that neither reaches, and what a narrow gap reaches."""

    room: tuple[Rectangle, ...]
    outdoors: tuple[Rectangle, ...]
    still: tuple[Rectangle, ...]
    ventilated: tuple[Rectangle, ...]


def air_spaces(blocks: Sequence[Block], *, left_out: Sequence[Block], vented: Sequence[Block]) -> AirSpaces:
    """Fill a cut with air: outdoors from low x and from what is ``vented``, the room from high x.

    ``blocks`` are solid. ``left_out`` is drawn and stops the air, but is not computed (casings, cladding, flashing):
    once the airs are known, the one beside it takes its place.
    Raises StudyError where one space is reached from the room and from outdoors.
    """
    grid = _grid([*blocks, *left_out, *vented])
    kinds = np.full((len(grid.x) - 1, len(grid.y) - 1), OPEN, dtype=np.int8)
    for kind, rectangles in ((OUTDOORS, vented), (LEFT_OUT, left_out), (SOLID, blocks)):
        for one in rectangles:
            kinds[cells_inside(grid, one)] = kind
    kinds[0], kinds[-1] = OUTDOORS, ROOM
    _spread(grid, kinds)
    _settle(grid, kinds)
    _replace_left_out(kinds)
    return AirSpaces(
        room=tuple(_rectangles(grid, kinds == ROOM)),
        outdoors=tuple(_rectangles(grid, kinds == OUTDOORS)),
        still=tuple(_rectangles(grid, kinds == STILL)),
        ventilated=tuple(_rectangles(grid, kinds == VENTILATED)),
    )


def _grid(rectangles: Sequence[Block]) -> CutGrid:
    x = edge_lines(edges_x(rectangles))
    ends = ([x[0] - AIR_MARGIN], x, [x[-1] + AIR_MARGIN])
    return CutGrid(x=np.concatenate(ends), y=edge_lines(edges_y(rectangles)))


def _spread(grid: CutGrid, kinds: Kinds) -> None:
    """Let both airs in wherever the way is wide enough.

    Raises StudyError where both reach one place.
    """
    is_air = kinds < STILL
    places, count = label(_ways(grid, is_air))
    places = places[::2, ::2]
    room, outdoors = (_holds(places, kinds == air, count) for air in (ROOM, OUTDOORS))
    _refuse(room & outdoors)
    kinds[is_air & room[places]] = ROOM
    kinds[is_air & outdoors[places]] = OUTDOORS


def _ways(grid: CutGrid, is_air: Mask) -> Mask:
    """Cells of air at the even places, at the odd ones the faces between them that are wide enough to pass."""
    ways = np.zeros((2 * len(is_air) - 1, 2 * is_air.shape[1] - 1), dtype=bool)
    ways[::2, ::2] = is_air
    ways[1::2, ::2] = _mouth_widths(is_air[:-1] & is_air[1:], grid.y) > WIDE
    ways[::2, 1::2] = _mouth_widths((is_air[:, :-1] & is_air[:, 1:]).T, grid.x).T > WIDE
    return ways


def _mouth_widths(is_open: Mask, places: Floats) -> Floats:
    """Width of the mouth that each open face belongs to, along the second axis [m]; infinite at the cut's ends.

    ``places``: the lines of the grid that the faces lie between.
    """
    _, first, last = _runs(is_open)
    at_end = (first == 0) | (last == is_open.shape[1])
    widths = np.zeros(is_open.shape)
    widths[is_open] = np.repeat(np.where(at_end, np.inf, places[last] - places[first]), last - first)
    return widths


def _holds(places: Integers, wanted: Mask, count: int) -> Mask:
    """Whether each numbered place has a cell that is wanted; place 0 is none."""
    found = np.zeros(count + 1, dtype=bool)
    found[places[wanted]] = True
    found[0] = False
    return found


def _settle(grid: CutGrid, kinds: Kinds) -> None:
    """What no air reached freely: slightly ventilated behind a narrow gap, else still."""
    places, count = label(kinds == OPEN)
    room, outdoors = (_mouths(grid, places, kinds == air, count) > TIGHT for air in (ROOM, OUTDOORS))
    _refuse(room & outdoors)
    kinds[kinds == OPEN] = np.where(room | outdoors, VENTILATED, STILL)[places[kinds == OPEN]]


def _replace_left_out(kinds: Kinds) -> None:
    """Put the air beside it in the place of what is drawn and not computed: outdoor air before the room's."""
    places, count = label(kinds == LEFT_OUT)
    for air in (ROOM, OUTDOORS):
        kinds[_is_touched(places, kinds == air, count)[places] & (places > 0)] = air
    kinds[kinds == LEFT_OUT] = STILL


def _refuse(meets: Mask) -> None:
    if meets.any():
        raise StudyError(SpaceOpenToBoth())


def _is_touched(places: Integers, air: Mask, count: int) -> Mask:
    """Whether each numbered place touches the cells of an air; place 0 is none."""
    near = np.zeros_like(air)
    near[1:] |= air[:-1]
    near[:-1] |= air[1:]
    near[:, 1:] |= air[:, :-1]
    near[:, :-1] |= air[:, 1:]
    return _holds(places, near, count)


def _mouths(grid: CutGrid, places: Integers, air: Mask, count: int) -> Floats:
    """Length over which each numbered place touches an air [m]."""
    widths, heights = np.diff(grid.x)[:, None], np.diff(grid.y)[None, :]
    lengths = np.zeros(places.shape)
    lengths[1:] += air[:-1] * heights
    lengths[:-1] += air[1:] * heights
    lengths[:, 1:] += air[:, :-1] * widths
    lengths[:, :-1] += air[:, 1:] * widths
    found = np.bincount(places.ravel(), weights=lengths.ravel(), minlength=count + 1)
    found[0] = 0.0
    return np.asarray(found, dtype=np.float64)


def _rectangles(grid: CutGrid, wanted: Mask) -> Iterator[Rectangle]:
    """Few rectangles that cover the wanted cells: runs along y, as far along x as they stay the same."""
    growing: dict[tuple[int, int], int] = {}
    found: list[set[tuple[int, int]]] = [set() for _ in range(len(wanted) + 1)]
    for column, start, end in zip(*(part.tolist() for part in _runs(wanted)), strict=True):
        found[column].add((start, end))
    for column, runs in enumerate(found):
        for rows in [rows for rows in growing if rows not in runs]:
            first, last = rows
            start = growing.pop(rows)
            yield Rectangle(
                x0=float(grid.x[start]), x1=float(grid.x[column]), y0=float(grid.y[first]), y1=float(grid.y[last])
            )
        for rows in runs:
            growing.setdefault(rows, column)


def _runs(mask: Mask) -> tuple[Integers, Integers, Integers]:
    """Of every run of True along the second axis: its row, its first place and one past its last."""
    steps = np.diff(np.pad(mask, ((0, 0), (1, 1))).astype(np.int8), axis=1)
    rows, first = np.nonzero(steps == 1)
    return rows, first, np.nonzero(steps == -1)[1]
