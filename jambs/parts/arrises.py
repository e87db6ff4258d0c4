"""The four long edges of a board where its faces meet, and how long each is once the ends are cut at an angle."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.geometry import Plane
from jambs.parts.cuts import BoardSizes, Cut, Edge, EdgeBevel, End, EndBevel, Miter, PlaneCut, end_of

OnePlane = Miter | EndBevel | EdgeBevel | PlaneCut


@dataclass(frozen=True, slots=True, kw_only=True)
class Arris:
    """Where an edge of the board meets its face or its back."""

    edge: Edge
    on_back: bool


ARRISES = tuple(Arris(edge=edge, on_back=on_back) for edge in Edge for on_back in (False, True))


def arris_lengths(sizes: BoardSizes, cuts: tuple[Cut, ...]) -> dict[Arris, float]:
    """Return how long each arris is, along the grain [in]; the longest is from long point to long point."""
    start, finish = (_planes(sizes, cuts, end) for end in End)
    return {
        arris: _reach(sizes, finish, arris, End.FINISH) - _reach(sizes, start, arris, End.START) for arris in ARRISES
    }


def _planes(sizes: BoardSizes, cuts: tuple[Cut, ...], end: End) -> list[Plane]:
    return [cut.plane(sizes) for cut in cuts if end_of(cut) is end and isinstance(cut, OnePlane)]


def _reach(sizes: BoardSizes, planes: list[Plane], arris: Arris, end: End) -> float:
    """Return the place along the grain at which an arris ends [in]."""
    v = 0.0 if arris.edge is Edge.NEAR else sizes.width_at(end)
    w = sizes.thickness if arris.on_back else 0.0
    found = [_crossing(plane, v, w) for plane in planes]
    return max([0.0, *found]) if end is End.START else min([sizes.length, *found])


def _crossing(plane: Plane, v: float, w: float) -> float:
    """Return where a line along the grain meets a plane [in]."""
    along, across, through = plane.normal
    u0, v0, w0 = plane.start
    return u0 - (across * (v - v0) + through * (w - w0)) / along
