"""Sections through mulls and transom bars, half size: frames, gap or post, boards over them; where they are cut.

A plan through a mull stands as the other plans do: seen from above, inside at the left, so the unit at the left as seen
from inside lies above. A section through a transom bar stands as it does in the wall.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator
from dataclasses import replace

from jambs.drawings.elements.boxes import Box, Segment, box_around
from jambs.drawings.elements.cover import middle_of_largest
from jambs.drawings.elements.view import NARROW_WORDS, CallOut, Chain, Interval, Tag, View, ViewKind, ViewSide
from jambs.drawings.views.close_ups import PAST_EDGE, CloseUp, clipped, hatches, outlines
from jambs.drawings.views.outlines import is_inside, turned
from jambs.drawings.views.words import size_words
from jambs.geometry import Point
from jambs.job.models.gang import Mull, MullKind
from jambs.job.models.openings import Job
from jambs.length import HALF_64TH, Grid
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.place.posts import posts_in
from jambs.section.mull import MullSection, boards_of, faces_beside, post_words
from jambs.section.region import Region, Stuff

GLASS_SHOWN = 0.75
"""How much glass is drawn past the frames [in]."""
TITLES = {MullKind.MULL: "Plan section through mull", MullKind.TRANSOM_BAR: "Section through transom bar"}
NAMES = {
    PartKind.MULL_CASING: "mull casing",
    PartKind.TRANSOM_BAR_CASING: "casing",
    PartKind.MULL_JAMB: "jamb",
}
"""What the dimension across a board is called."""


def mull_name(mull: Mull) -> str:
    """Return the name of the view of a section through a mull or a bar."""
    return f"section {mull.kind.value} {mull.member}"


def mull_view(section: MullSection, kit: Kit, job: Job) -> View:
    """Make the view of one cut."""
    mull = section.mull
    detail = _detail(section)
    return View(
        name=mull_name(mull),
        kind=ViewKind.CORNER,
        title=TITLES[mull.kind],
        shapes=tuple(outlines(detail, kit)),
        fills=tuple(hatches(detail)),
        chains=tuple(_chains(section, kit)),
        call_outs=tuple(_call_outs(detail, kit, job)),
        remarks=tuple(_remarks(section, kit, job.shop.grid)),
        half_size=True,
        widest_words=NARROW_WORDS,
    )


def units_words(mull: Mull) -> str:
    """Say which units it is between."""
    before, after = (", ".join(map(str, numbers)) for numbers in (mull.before, mull.after))
    if mull.kind is MullKind.MULL:
        return f"between units {before} and {after}"
    return f"between unit{'s' * (len(mull.before) > 1)} {before} below and {after} above"


def _on_paper(outline: Iterable[Point], mull: Mull) -> tuple[Point, ...]:
    """Turn (across, depth) into (x, y) of the view: to the right in the wall is down on paper."""
    way = -1.0 if mull.kind is MullKind.MULL else 1.0
    return turned((way * across, depth) for across, depth in outline)


def _detail(section: MullSection) -> CloseUp:
    polygons = [_on_paper(region.outline, section.mull) for region in section.regions]
    solid = [one for one, region in zip(polygons, section.regions, strict=True) if region.stuff is not Stuff.GLASS]
    whole = box_around(point for polygon in solid for point in polygon)
    room = Box(whole.left - PAST_EDGE, whole.bottom - GLASS_SHOWN, whole.right + PAST_EDGE, whole.top + GLASS_SHOWN)
    return CloseUp(box=room, regions=section.regions, polygons=tuple(clipped(one, room) for one in polygons))


# ---- dimensions

Stop = tuple[float, float, str]
"""From where to where across the mull [in], and what it is called."""


def _chains(section: MullSection, kit: Kit) -> Iterator[Chain]:
    """Dimension reveals and boards inside at the left, those outside and the frames at the right, depths below."""
    placement, gang, mull = kit.placement, kit.placement.opening.gang, section.mull
    assert gang is not None
    for where, side, depth in (
        (Where.INTERIOR, ViewSide.LEFT, placement.inside_edge),
        (Where.EXTERIOR, ViewSide.RIGHT, placement.outside_edge),
    ):
        boards = [one for one in _spans(section, kit) if one[0] is where]
        faces = faces_beside(gang, mull, from_outside=where is Where.EXTERIOR)
        for row in _board_rows(boards, -faces[0], mull.between + faces[1]):
            yield _chain(row, depth, mull, side)
    outer = faces_beside(gang, mull, from_outside=True)
    yield _chain(_frame_row(mull, *outer), placement.outside_edge, mull, ViewSide.RIGHT)
    yield _depth_chain(section, kit)


Span = tuple[Where, PartKind, float, float]
"""Where a board is and which, from where to where across the mull [in]."""


def _spans(section: MullSection, kit: Kit) -> list[Span]:
    parts = {part.mark: part for part in kit.parts}
    found = []
    for region in section.regions:
        if region.mark:
            part, places = parts[region.mark], [across for across, _ in region.outline]
            found.append((part.where, part.kind, min(places), max(places)))
    return found


def _board_rows(boards: list[Span], start: float, finish: float) -> Iterator[list[Stop]]:
    """Part what lies between the inner edges of two frames; of a box again from jamb to jamb, inside alone."""
    jambs = sorted((low, high) for _, kind, low, high in boards if kind is PartKind.MULL_JAMB)
    casing = next(((low, high, NAMES[kind]) for _, kind, low, high in boards if kind is not PartKind.MULL_JAMB), None)
    if casing is None:
        return
    low, high, name = casing
    if not jambs:
        yield [(start, low, "frame reveal"), (low, high, name), (high, finish, "frame reveal")]
        return
    face, other = jambs[0][0], jambs[-1][1]
    yield [
        (start, face, "frame reveal"),
        (face, low, "casing reveal"),
        (low, high, ""),  # its call-out names it; a name here would meet those of the reveals
        (high, other, "casing reveal"),
        (other, finish, "frame reveal"),
    ]
    if boards[0][0] is Where.INTERIOR:
        yield [(face, other, "between jamb faces")]


def _frame_row(mull: Mull, before: float, after: float) -> list[Stop]:
    """Part the way from the inner edge of one frame to that of the other."""
    if mull.post is None:
        between = [(0.0, mull.between, "gap")]
    else:
        joint = mull.joint
        between = [
            (0.0, joint, "joint"),
            (joint, joint + mull.post, post_words(mull)),
            (joint + mull.post, mull.between, "joint"),
        ]
    return [(-before, 0.0, "frame"), *between, (mull.between, mull.between + after, "frame")]


def _chain(row: Iterable[Stop], depth: float, mull: Mull, side: ViewSide) -> Chain:
    intervals = []
    for low, high, name in row:
        if high - low > HALF_64TH:
            one, two = _on_paper(((low, depth), (high, depth)), mull)
            intervals.append(Interval(start=one, finish=two, name=name))
    return Chain(side=side, intervals=tuple(intervals))


def _depth_chain(section: MullSection, kit: Kit) -> Chain:
    """Dimension the depths of frame and boards on it; those of a box from the face of the wall."""
    placement = kit.placement
    fronts = [depth for region in section.regions if region.mark for _, depth in region.outline]
    depths = sorted((min((*fronts, placement.inside_edge)), placement.inside_edge, placement.outside_edge, *fronts))
    stops = [depths[0]]
    for depth in depths[1:]:
        if depth - stops[-1] > HALF_64TH:
            stops.append(depth)
    low = min(
        y
        for region in section.regions
        if region.stuff is not Stuff.GLASS
        for _, y in _on_paper(region.outline, section.mull)
    )
    pairs = itertools.pairwise((depth, low) for depth in stops)
    intervals = tuple(Interval(start=one, finish=two) for one, two in pairs)
    return Chain(side=ViewSide.BOTTOM, intervals=intervals, before="INSIDE", after="OUTSIDE", is_main=True)


# ---- words


def _call_outs(detail: CloseUp, kit: Kit, job: Job) -> Iterator[CallOut]:
    """Name every board with its size, the post or the gap, and the frames, each once."""
    parts = {part.mark: part for part in kit.parts}
    told: set[str] = set()
    for number, (region, polygon) in enumerate(zip(detail.regions, detail.polygons, strict=True)):
        name = region.mark or region.name
        seen = middle_of_largest(polygon, detail.polygons[number + 1 :]) if polygon else None
        if region.stuff is Stuff.GLASS or name in told or seen is None:
            continue
        told.add(name)
        side = ViewSide.LEFT if is_inside(region, kit) else ViewSide.RIGHT
        yield CallOut(target=seen[1], lines=_words(region, parts, job), side=side, short=region.mark)


def _words(region: Region, parts: dict[str, Part], job: Job) -> tuple[str, ...]:
    if not region.mark:
        return (region.name,)
    part = parts[region.mark]
    return (f"{part.mark}  {part.name}", size_words(part, grid=job.shop.grid))


def _remarks(section: MullSection, kit: Kit, grid: Grid) -> Iterator[str]:
    mull = section.mull
    if mull.kind is MullKind.MULL:
        yield f"{units_words(mull)}; seen from above, inside at the left, unit {mull.before[0]} above"
    else:
        yield units_words(mull)
    if mull.post is not None:
        (length,) = (one.length for one in posts_in(kit.placement.opening, kit.placement.shims) if one.mull == mull)
        yield f"{post_words(mull)} {grid.text(length)} long between framing"
        yield f"{post_words(mull)} drawn as deep as the frames; whoever frames it says how deep"
    for other in section.alike:
        marks = ", ".join(part.mark for part in boards_of(kit, other))
        yield f"the same {units_words(other)}" + (f": {marks}" if marks else "")


# ---- where they are cut


def with_mull_tags(view: View, kit: Kit, sections: Iterable[MullSection]) -> View:
    """Return an elevation with a tag at every mull and bar that is drawn in section."""
    from_outside = view.kind is ViewKind.EXTERIOR
    mulls = [(section.mull, one) for section in sections for one in (section.mull, *section.alike)]
    tags = tuple(_tag(mull_name(drawn), mull, kit, from_outside=from_outside) for drawn, mull in mulls)
    return replace(view, tags=(*view.tags, *tags))


def _tag(name: str, mull: Mull, kit: Kit, *, from_outside: bool) -> Tag:
    """Put a tag at the inner edge of the frame before: at the right edge of a unit, or under a bar."""
    gang = kit.placement.opening.gang
    assert gang is not None
    unit, face = gang.unit(mull.before[0]), faces_beside(gang, mull, from_outside=from_outside)[0]
    at = mull.low - face
    if mull.kind is MullKind.TRANSOM_BAR:
        # Past the view it stands at the height of its bar.
        edge = ((unit.x, at), (unit.x + unit.frame.width, at))
        return Tag(of=name, edge=_seen(edge, kit, from_outside), inward=(0.0, -1.0), leaves=(-1.0, 0.0))
    edge = ((at, unit.y), (at, unit.y + unit.frame.height))
    inward = (1.0 if from_outside else -1.0, 0.0)
    return Tag(of=name, edge=_seen(edge, kit, from_outside), inward=inward, leaves=(0.0, 1.0))


def _seen(edge: Segment, kit: Kit, from_outside: bool) -> Segment:
    """Return an edge as it is seen: from outside left and right change places."""
    if not from_outside:
        return edge
    (x0, y0), (x1, y1) = edge
    width = kit.placement.opening.frame.width
    return ((width - x0, y0), (width - x1, y1))
