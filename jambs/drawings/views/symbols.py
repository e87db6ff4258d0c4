"""Drawn symbols of materials that no hatch pattern shows in every reader: crossed lumber and batts."""

from __future__ import annotations

from jambs.drawings.elements.boxes import Box
from jambs.drawings.elements.view import Ink, Shape
from jambs.geometry import Point

LEAST = 0.4
"""Boxes thinner than this get no symbol [in]."""


def crossed(box: Box, ink: Ink) -> list[Shape]:
    """Draw the two diagonals of lumber cut across the grain."""
    if min(box.width, box.height) < LEAST:
        return []
    corners = ((box.left, box.bottom), (box.right, box.top)), ((box.left, box.top), (box.right, box.bottom))
    return [Shape(points=pair, ink=ink, closed=False) for pair in corners]


def batt(box: Box, ink: Ink) -> list[Shape]:
    """Draw a batt: a line that loops from face to face of the box, as one polyline with half circles."""
    if min(box.width, box.height) < 2 * LEAST:
        return []
    turns = max(1, round(box.height / (box.width * 0.36)))
    radius = box.height / (2 * turns + 1) / 2
    radius = min(radius, box.width / 4)
    points: list[Point] = []
    bulges: list[float] = []
    level = box.bottom + (box.height - 2 * radius * 2 * turns) / 2
    low, high = box.left + radius, box.right - radius
    x, other, bulge = low, high, 1.0
    for _ in range(2 * turns):
        points += [(x, level), (other, level)]
        bulges += [0.0, bulge]
        level += 2 * radius
        x, other, bulge = other, x, -bulge
    points.append((x, level))
    bulges.append(0.0)
    return [Shape(points=tuple(points), ink=ink, closed=False, bulges=tuple(bulges))]
