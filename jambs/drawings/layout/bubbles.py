"""Numbers on a sheet: a circle before the title of every view, and those of section tags, with the sheet under them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from jambs.drawings.elements.boxes import Segment
from jambs.drawings.elements.paper import DESCENDER
from jambs.drawings.elements.placed import Align, Lettering
from jambs.drawings.elements.view import Ink
from jambs.drawings.layout.packing import OnPage
from jambs.geometry import Point

HEIGHT = 0.58
"""Capitals within a circle, as a share of its radius."""
LIFT = 0.42
"""From the middle of a circle to the middle of each of its two words, as a share of its radius."""

Numbers = Mapping[str, tuple[int, int]]
"""Number of a view and the sheet it is on, by its name; for one size of paper."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bubble:
    """A circle on a sheet [in on paper], its words and its lines."""

    center: Point
    radius: float
    texts: tuple[Lettering, ...]
    lines: tuple[Segment, ...]


def bubbles_of(on_page: OnPage, numbers: Numbers) -> Iterator[Bubble]:
    """Yield the circles of a view on its sheet: before its title, and where it is cut."""
    view, factor = on_page.view, on_page.view.scale.factor

    def at(point: Point) -> Point:
        x, y = on_page.middle
        return (x + (point[0] - view.box.center[0]) / factor, y + (point[1] - view.box.center[1]) / factor)

    if view.number_at:
        number, sheet = numbers[view.name]
        yield _bubble(at(view.number_at.center), view.number_at.radius / factor, number, sheet, lines=())
    for tag in view.tags:
        if tag.of in numbers:
            number, sheet = numbers[tag.of]
            line = (at(tag.line[0]), at(tag.line[1]))
            yield _bubble(at(tag.center), tag.radius / factor, number, sheet, lines=(line,))


def _bubble(center: Point, radius: float, number: int, sheet: int, *, lines: tuple[Segment, ...]) -> Bubble:
    (x, y), height = center, HEIGHT * radius
    level = ((x - radius, y), (x + radius, y))
    words = ((str(number), y + LIFT * radius), (str(sheet), y - LIFT * radius - DESCENDER * height / 4))
    return Bubble(
        center=center,
        radius=radius,
        texts=tuple(
            Lettering(lines=(word,), at=(x, up), height=height, align=Align.CENTER, bold=True, ink=Ink.TITLE)
            for word, up in words
        ),
        lines=(level, *lines),
    )
