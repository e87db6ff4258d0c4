"""A page of lines and texts on its way from the drawing to the press."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class PageText:
    """One line of text: left end on its base line, from the upper left corner of the page, and size of the font [mm].

    ``upright``: turned by 90 degrees about that point, so that it reads from below.
    """

    x: float
    y: float
    size: float
    words: str
    bold: bool = False
    upright: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class VectorPage:
    """A page: width × height [mm], its lines and areas as SVG of that size, its texts, and in words what it shows."""

    width: float
    height: float
    svg: str
    texts: tuple[PageText, ...]
    shows: str
