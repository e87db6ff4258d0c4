"""Plies of a bent lamination, and what its ends lie on."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum


class ArcEnds(Enum):
    """What the ends of a bent piece lie on: legs at spring lines, the other half of a ring, a sill or a next arc."""

    SPRING_LINES = "spring lines"
    DIAMETER = "level diameter"
    ITS_OWN = "lines where its arc ends"

    @property
    def line_words(self) -> str:
        """One of the lines, as it is marked on a form."""
        return {
            ArcEnds.SPRING_LINES: "spring line",
            ArcEnds.DIAMETER: "level diameter",
            ArcEnds.ITS_OWN: "end of its arc",
        }[self]


@dataclass(frozen=True, slots=True, kw_only=True)
class Plies:
    """Plies of a bent lamination: how many, how thick each [in], how many come out of a strip by resawing.

    ``sprung``: share of its curvature that it loses off the form, which has ``form_radius``; ``inner_length``: along
    its face, from end to end [in]; ``ends``: what those lie on; ``sweep_deg``: angle of its arc. ``resawn``: thickness
    off the saw, before each is planed, a ``kerf`` between two [in]. ``pieces``: of one that is bent to several arcs,
    from left to right, the radius of each on the form and how much of the face lies on it [in]; ``form_radius`` is that
    of the middle one.
    """

    count: int
    thickness: float
    per_strip: int
    sprung: float
    form_radius: float
    inner_length: float
    sweep_deg: float
    resawn: float
    kerf: float
    pieces: tuple[tuple[float, float], ...] = ()
    ends: ArcEnds = ArcEnds.SPRING_LINES

    @property
    def total(self) -> float:
        """Thickness of what is glued up [in]."""
        return self.count * self.thickness
