"""Tags of an elevation: where head, jambs and sill are cut, and which section shows it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from jambs.drawings.elements.view import Tag, View, ViewKind
from jambs.drawings.views.shaped_window import sight_path
from jambs.geometry import Point
from jambs.job.models.openings import Opening
from jambs.job.models.path import points_of
from jambs.job.models.path_edge import FramePath
from jambs.parts.kit.kit import Kit
from jambs.section.region import SectionCut
from jambs.sides import Side

INWARD = {Side.HEAD: (0.0, -1.0), Side.SILL: (0.0, 1.0), Side.LEFT: (1.0, 0.0), Side.RIGHT: (-1.0, 0.0)}
"""The way from each side into the opening, as seen from inside."""


def section_name(cut: SectionCut) -> str:
    """Return the name of the view of a section."""
    return f"section {cut.value}"


def with_tags(view: View, kit: Kit, cuts: Iterable[SectionCut]) -> View:
    """Return an elevation with a tag for each of its sections, at the edge of the opening that it cuts.

    Those at the jambs have fewer places beside the marks, so they come first.
    """
    from_outside = view.kind is ViewKind.EXTERIOR
    jambs_first = sorted(cuts, key=lambda cut: cut in (SectionCut.HEAD, SectionCut.SILL))
    return replace(view, tags=tuple(_tag(cut, kit.placement.opening, from_outside=from_outside) for cut in jambs_first))


def _tag(cut: SectionCut, opening: Opening, *, from_outside: bool) -> Tag:
    """Left and right are as seen from inside."""
    side = cut.side
    x, y = INWARD[side]
    edge = _edge(side, sight_path(opening, from_outside=from_outside))
    if from_outside:
        edge = tuple((opening.frame.width - across, up) for across, up in edge)
    across_first = not side.is_leg
    forward = sorted((edge[0], edge[-1]), key=lambda point: point if across_first else point[::-1])
    return Tag(
        of=section_name(cut),
        edge=edge if edge[0] == forward[0] else edge[::-1],
        inward=(-x if from_outside else x, y),
    )


def _edge(side: Side, path: FramePath) -> tuple[Point, ...]:
    """Return the line along a side of a path; of one without that leg the line from its top down that way."""
    edges = [edge for edge in path if edge.side is side]
    if edges:
        return (*points_of(tuple(edges)), edges[-1].finish)
    points = points_of(path)
    step = 1 if side is Side.RIGHT else -1
    at = max(range(len(points)), key=lambda i: points[i][1])
    found = [points[at]]
    while (after := points[(at := at + step) % len(points)])[1] < found[-1][1]:
        found.append(after)
    return tuple(found)
