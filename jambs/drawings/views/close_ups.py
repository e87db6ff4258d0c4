"""What the details at half size share: materials of a section within a box, their outlines, hatches and names."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from jambs.drawings.elements.boxes import Box, box_around, segments_of
from jambs.drawings.elements.cover import Polygon, apart_from, middle_of_largest, nearby, visible_area, visible_edges
from jambs.drawings.elements.view import CallOut, Fill, Ink, Shape, ViewSide
from jambs.drawings.views.outlines import turned
from jambs.drawings.views.sections import HATCHES, ink_of
from jambs.geometry import Point
from jambs.length import HALF_64TH, ROUND_OFF
from jambs.outlines import within
from jambs.parts.kit.kit import Kit
from jambs.section.region import Region, Section, Stuff

PAST_FRAME = 1.0
"""How much of the frame is shown behind the parts [in]."""
PAST_EDGE = 0.25
"""How much is shown past the parts, in every direction [in]."""
WALL_STUFF = (
    Stuff.SHEATHING, Stuff.RIGID, Stuff.FIBER, Stuff.STRAPPING, Stuff.COVER, Stuff.CLADDING, Stuff.GYPSUM, Stuff.BUCK,
)  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class CloseUp:
    """Regions of a section and what of each lies in a box, back to front, points (x, y) of the view [in].

    ``breaks``: where along x it is broken; no outline is drawn there.
    """

    box: Box
    regions: tuple[Region, ...]
    polygons: tuple[Polygon, ...]
    breaks: tuple[float, ...] = ()


def broken_line(box: Box) -> Shape:
    """Return the broken line round a detail."""
    low, high = (box.left, box.bottom), (box.right, box.top)
    return Shape(points=(low, (high[0], low[1]), high, (low[0], high[1])), ink=Ink.HIDDEN)


def close_up(section: Section, box: Box, shown: Collection[Stuff]) -> CloseUp:
    """Cut the regions of some stuffs to a box."""
    found = [(one, clipped(turned(one.outline), box)) for one in section.regions if one.stuff in shown]
    regions, polygons = [one for one, polygon in found if polygon], [polygon for _, polygon in found if polygon]
    return CloseUp(box=box, regions=tuple(regions), polygons=tuple(polygons))


def clipped(polygon: Polygon, box: Box) -> Polygon:
    """Return what of a polygon lies in a box; nothing where they share no area."""
    points = within(polygon, (box.left, box.bottom), (box.right, box.top))
    return tuple(points) if len(points) > 2 and _has_area(points) else ()


def _has_area(points: Sequence[Point]) -> bool:
    box = box_around(points)
    return box.width > HALF_64TH / 8 and box.height > HALF_64TH / 8


def clipped_lines(shapes: Iterable[Shape], box: Box) -> Iterator[Shape]:
    """Return what of open lines lies in a box, piece by piece; what has arcs only as a whole."""
    for shape in shapes:
        if shape.bulges:
            if box.overlaps(box_around(shape.points)):
                yield shape
            continue
        for start, finish in shape.segments:
            points = within((start, finish), (box.left, box.bottom), (box.right, box.top))
            if points and min(points) != max(points):
                yield replace(shape, points=(min(points), max(points)), closed=False)


def outlines(detail: CloseUp, kit: Kit) -> list[Shape]:
    """Outline every region where no later one lies over it, but not where the detail is broken off."""
    shapes = []
    for number, (region, polygon) in enumerate(zip(detail.regions, detail.polygons, strict=True)):
        covers, grooved = nearby(polygon, detail.polygons[number + 1 :]), _grooved(detail, number)
        edges = [edge for edge in segments_of(polygon, closed=True) if not _is_on(edge, detail)]
        pieces = (piece for seen in visible_edges(edges, covers) for piece in apart_from(seen, grooved))
        shapes += [Shape(points=piece, ink=ink_of(region, kit), closed=False) for piece in pieces]
    return [*shapes, broken_line(detail.box)]


def _grooved(detail: CloseUp, number: int) -> list[Polygon]:
    """Return the parts a groove may be in: its mouth, on their edge, is open."""
    if detail.regions[number].stuff is not Stuff.AIR:
        return []
    before = zip(detail.regions[:number], detail.polygons[:number], strict=True)
    return [polygon for region, polygon in before if region.mark]


def _is_on(edge: tuple[Point, Point], detail: CloseUp) -> bool:
    (x0, y0), (x1, y1) = edge
    box = detail.box
    uprights, levels = (box.left, box.right, *detail.breaks), (box.bottom, box.top)
    return any(abs(x0 - x) + abs(x1 - x) < ROUND_OFF for x in uprights) or any(
        abs(y0 - y) + abs(y1 - y) < ROUND_OFF for y in levels
    )


def hatches(detail: CloseUp) -> list[Fill]:
    """Hatch what is seen of every region."""
    fills = []
    for number, (region, polygon) in enumerate(zip(detail.regions, detail.polygons, strict=True)):
        hatch = HATCHES.get(region.stuff)
        pieces = tuple(visible_area(polygon, detail.polygons[number + 1 :])) if hatch else ()
        if hatch and pieces:
            ink = Ink.HATCH_WALL if region.stuff in WALL_STUFF else Ink.HATCH_TRIM
            fills.append(Fill(pieces=pieces, hatch=hatch, ink=ink))
    return fills


def names(detail: CloseUp, kit: Kit, *, side: ViewSide, wanted: Callable[[Region], bool]) -> list[CallOut]:
    """Name every wanted part once, and the frame; pieces of the wall are named in the sections."""
    names_of = {part.mark: part.name for part in kit.as_trimmed.parts}
    found, told = [], set[str]()
    for number, region in enumerate(detail.regions):
        if not wanted(region) or (region.mark and region.mark in told):
            continue
        seen = middle_of_largest(detail.polygons[number], detail.polygons[number + 1 :])
        if seen:
            told.add(region.mark)
            words = f"{region.mark}  {names_of[region.mark]}" if region.mark else region.name
            found.append(CallOut(target=seen[1], lines=(words,), side=side))
    return found
