"""The four long edges of a board where its faces meet, and how long each is once the ends are cut at an angle."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.geometry import Outline, Plane, Vector
from jambs.parts.board.cuts import BoardSizes, Cut, Edge, EdgeBevel, End, EndBevel, Miter, PlaneCut, edge_of, end_of

OnePlane = Miter | EndBevel | EdgeBevel | PlaneCut


@dataclass(frozen=True, slots=True, kw_only=True)
class Arris:
    """Where an edge of the board meets its face or its back."""

    edge: Edge
    on_back: bool


ARRISES = tuple(Arris(edge=edge, on_back=on_back) for edge in Edge for on_back in (False, True))


def arris_lengths(sizes: BoardSizes, cuts: tuple[Cut, ...]) -> dict[Arris, float]:
    """Return how long each arris is, along the grain [in]; the longest is from long point to long point."""
    start, finish = (_planes(cuts, end) for end in End)
    ends = ([plane.plane(sizes) for plane in start], [plane.plane(sizes) for plane in finish])
    return {
        arris: _reach(sizes, ends[1], _line(sizes, cuts, arris), End.FINISH)
        - _reach(sizes, ends[0], _line(sizes, cuts, arris), End.START)
        for arris in ARRISES
    }


def arris_ends(sizes: BoardSizes, cuts: tuple[Cut, ...]) -> dict[Arris, tuple[Vector, Vector]]:
    """Return where each arris begins and ends, in board coordinates [in]: the corners of a board of flat sides."""
    start, finish = ([cut.plane(sizes) for cut in _planes(cuts, end)] for end in End)
    found = {}
    for arris in ARRISES:
        line = _line(sizes, cuts, arris)
        reach = (_reach(sizes, start, line, End.START), _reach(sizes, finish, line, End.FINISH))
        first, last = ((u, line.at(u, sizes.length), line.through) for u in reach)
        found[arris] = (first, last)
    return found


def edge_section(sizes: BoardSizes, cuts: tuple[Cut, ...], u: float) -> Outline:
    """Return the section (v, w) of a board of flat sides at a place along it [in]: its four arrises there."""
    ring = ((Edge.NEAR, False), (Edge.FAR, False), (Edge.FAR, True), (Edge.NEAR, True))
    lines = (_line(sizes, cuts, Arris(edge=edge, on_back=on_back)) for edge, on_back in ring)
    return tuple((line.at(u, sizes.length), line.through) for line in lines)


def _planes(cuts: tuple[Cut, ...], end: End) -> list[OnePlane]:
    return [cut for cut in cuts if end_of(cut) is end and isinstance(cut, OnePlane)]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Line:
    """An arris as a line: where it lies across the board at its start and at its finish, and through it [in]."""

    start: float
    finish: float
    through: float

    def at(self, u: float, length: float) -> float:
        """Place across the board at a place along it [in]."""
        return self.start + (self.finish - self.start) * u / length


def _line(sizes: BoardSizes, cuts: tuple[Cut, ...], arris: Arris) -> _Line:
    """Return where an arris lies: on the edge as ripped and tapered, or where a cut along the edge leaves it."""
    w = sizes.thickness if arris.on_back else 0.0
    for cut in cuts:
        if edge_of(cut) is arris.edge and isinstance(cut, EdgeBevel | PlaneCut):
            plane = cut.plane(sizes)
            return _Line(start=_across(plane, 0.0, w), finish=_across(plane, sizes.length, w), through=w)
    if arris.edge is Edge.NEAR:
        return _Line(start=0.0, finish=0.0, through=w)
    return _Line(start=sizes.start_width, finish=sizes.finish_width, through=w)


def _across(plane: Plane, u: float, w: float) -> float:
    """Place across the board at which a plane along an edge meets a line across it [in]."""
    along, across, through = plane.normal
    u0, v0, w0 = plane.start
    return v0 - (along * (u - u0) + through * (w - w0)) / across


def _reach(sizes: BoardSizes, planes: list[Plane], line: _Line, end: End) -> float:
    """Return the place along the grain at which an arris ends [in]."""
    slope = (line.finish - line.start) / sizes.length
    found = [_crossing(plane, line, slope) for plane in planes]
    return max([0.0, *found]) if end is End.START else min([sizes.length, *found])


def _crossing(plane: Plane, line: _Line, slope: float) -> float:
    """Return where an arris meets a plane [in]."""
    along, across, through = plane.normal
    u0, v0, w0 = plane.start
    past = along * u0 + across * (v0 - line.start) + through * (w0 - line.through)
    return past / (along + across * slope)
