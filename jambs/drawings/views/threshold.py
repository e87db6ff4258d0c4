"""The section at the threshold of a door: frame and finished floor, and what each leg stands on."""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from dataclasses import replace

from jambs.drawings.elements.boxes import Box, segments_of
from jambs.drawings.elements.cover import Polygon, middle_of_largest, nearby, visible_pieces
from jambs.drawings.elements.view import (
    NARROW_WORDS,
    CallOut,
    Chain,
    Ink,
    Interval,
    Shape,
    Tag,
    View,
    ViewKind,
    ViewSide,
)
from jambs.drawings.views.close_ups import CloseUp, clipped, hatches
from jambs.drawings.views.measured import is_any_measured
from jambs.drawings.views.outlines import turned
from jambs.drawings.views.sash import corners, sight_box
from jambs.job.models.openings import Job
from jambs.length import HALF_64TH
from jambs.parts.board.kinds import Where
from jambs.parts.kit.kit import Kit
from jambs.section.region import Stuff
from jambs.section.threshold import LegFoot, ThresholdSection, threshold_section

THRESHOLD = "section threshold"
TITLE = "Section at threshold"
SHOWN = 4.0
"""How much of leaf and legs is drawn over the frame [in]."""
PAST = 1.0
"""How much is drawn past the parts, and below the lowest foot [in]."""
SEEN = {Where.INTERIOR: Ink.SEEN_INSIDE, Where.EXTERIOR: Ink.SEEN_OUTSIDE, Where.BUCK: Ink.BUCK}
OPEN = (
    "behind the cut the right side; floor, pan and what carries the threshold are not in this job: drawn open, as the "
    "maker of the door and the local code have them"
)


def threshold_views(kit: Kit, job: Job) -> tuple[View, ...]:
    """Make the section at the threshold of a door; none of a window."""
    section = threshold_section(kit)
    return (_view(section, kit, job),) if section else ()


def with_threshold_tag(view: View, kit: Kit) -> View:
    """Return an elevation of a door with a tag where its threshold is cut."""
    if kit.placement.opening.floor_below_frame is None:
        return view
    box = sight_box(kit.placement.opening, from_outside=view.kind is ViewKind.EXTERIOR)
    edge = ((box.left, box.bottom), (box.right, box.bottom))
    return replace(view, tags=(*view.tags, Tag(of=THRESHOLD, edge=edge, inward=(0.0, 1.0))))


def _view(section: ThresholdSection, kit: Kit, job: Job) -> View:
    room = _room(section, kit)
    solid = CloseUp(
        box=room,
        regions=section.frame,
        polygons=tuple(clipped(turned((-s, d) for s, d in one.outline), room) for one in section.frame),
    )
    seen = [(foot, corners(Box(foot.inner, foot.height, foot.outer, room.top))) for foot in section.feet]
    return View(
        name=THRESHOLD,
        kind=ViewKind.CORNER,
        title=TITLE,
        shapes=(*_cut(solid, room), *_beyond(seen, solid, room), *_lines(section, kit, room)),
        fills=tuple(hatches(solid)),
        chains=(_depths(section, kit), *_heights(section, kit, room)),
        call_outs=(*_called(seen, solid), *_planes(section, kit, room)),
        remarks=(*_remarks(section, kit, job), OPEN),
        half_size=True,
        widest_words=NARROW_WORDS,
    )


def _room(section: ThresholdSection, kit: Kit) -> Box:
    placement = kit.placement
    inner = min((0.0, placement.inside_edge, *(foot.inner for foot in section.feet)))
    outer = max((placement.outside_edge, placement.planes.sheathing_plane, *(foot.outer for foot in section.feet)))
    low = min((0.0, -section.floor, *(foot.height for foot in section.feet)))
    top = placement.opening.window.frame_face.sill + SHOWN
    return Box(inner - PAST, low - PAST, outer + PAST, top)


def _cut(solid: CloseUp, room: Box) -> Iterator[Shape]:
    """Outline frame and leaf where they are cut, open where the view ends."""
    for number, (region, polygon) in enumerate(zip(solid.regions, solid.polygons, strict=True)):
        ink = Ink.GLASS if region.stuff is Stuff.GLASS else Ink.WINDOW
        for edge in segments_of(polygon, closed=True):
            if not edge[0][1] == edge[1][1] == room.top:
                pieces = visible_pieces(edge, nearby(polygon, solid.polygons[number + 1 :]))
                yield from (Shape(points=piece, ink=ink, closed=False) for piece in pieces)


Seen = list[tuple[LegFoot, Polygon]]


def _beyond(seen: Seen, solid: CloseUp, room: Box) -> Iterator[Shape]:
    """Outline the legs behind the cut, as far as nothing nearer hides them."""
    for number, (foot, polygon) in enumerate(seen):
        covers = [*(other for _, other in seen[number + 1 :]), *(one for one in solid.polygons if one)]
        for edge in segments_of(polygon, closed=True):
            if not edge[0][1] == edge[1][1] == room.top:
                for piece in visible_pieces(edge, nearby(polygon, covers)):
                    yield Shape(points=piece, ink=SEEN[foot.part.where], closed=False)


def _lines(section: ThresholdSection, kit: Kit, room: Box) -> Iterator[Shape]:
    """The finished floor up to the frame, and the face of the sheathing below it."""
    floor, plane = -section.floor, kit.placement.planes.sheathing_plane
    yield Shape(points=((room.left, floor), (kit.placement.inside_edge, floor)), ink=Ink.LAYERS, closed=False)
    yield Shape(points=((plane, room.bottom), (plane, min(0.0, floor))), ink=Ink.HIDDEN, closed=False)


def _depths(section: ThresholdSection, kit: Kit) -> Chain:
    """Dimension frame and sheathing; the depth inside only as planned, where nobody measured."""
    placement = kit.placement
    stops = {placement.inside_edge, placement.planes.sheathing_plane, placement.outside_edge}
    stops |= set() if is_any_measured(kit) else {0.0}
    low = min(0.0, -section.floor)
    kept: list[float] = []
    for depth in sorted(stops):
        if not kept or depth - kept[-1] > HALF_64TH:
            kept.append(depth)
    intervals = tuple(Interval(start=(one, low), finish=(two, low)) for one, two in itertools.pairwise(kept))
    return Chain(side=ViewSide.BOTTOM, intervals=intervals, before="INSIDE", after="OUTSIDE", is_main=True)


def _heights(section: ThresholdSection, kit: Kit, room: Box) -> Iterator[Chain]:
    """Dimension the bottom of the frame over the finished floor, and the face of the frame over that.

    They have no names: the line of the floor is named where they begin.
    """
    sill = kit.placement.opening.window.frame_face.sill
    intervals = tuple(
        Interval(start=(room.left, low), finish=(room.left, high))
        for low, high in ((-section.floor, 0.0), (0.0, sill))
        if high - low > HALF_64TH
    )
    if intervals:
        yield Chain(side=ViewSide.LEFT, intervals=intervals, is_main=True)


def _called(seen: Seen, solid: CloseUp) -> Iterator[CallOut]:
    """Name every leg that is seen with what it stands on, and the frame."""
    for number, (foot, polygon) in enumerate(seen):
        covers = [*(other for _, other in seen[number + 1 :]), *(one for one in solid.polygons if one)]
        found = middle_of_largest(polygon, covers)
        if found:
            side = ViewSide.RIGHT if foot.part.where is Where.EXTERIOR else ViewSide.LEFT
            lines = (f"{foot.part.mark}  {foot.part.told}", foot.ground.value)
            yield CallOut(target=found[1], lines=lines, side=side, short=foot.part.mark)
    for number, (region, polygon) in enumerate(zip(solid.regions, solid.polygons, strict=True)):
        found = middle_of_largest(polygon, solid.polygons[number + 1 :]) if region.stuff is Stuff.FRAME else None
        if found:
            yield CallOut(target=found[1], lines=("frame, its threshold",), side=ViewSide.RIGHT)


def _planes(section: ThresholdSection, kit: Kit, room: Box) -> Iterator[CallOut]:
    floor, plane = -section.floor, kit.placement.planes.sheathing_plane
    yield CallOut(target=(room.left + PAST / 2, floor), lines=("finished floor",), side=ViewSide.LEFT, on_edge=True)
    foot = (plane, (room.bottom + min(0.0, floor)) / 2)
    yield CallOut(target=foot, lines=("face of the sheathing",), side=ViewSide.RIGHT, on_edge=True)


def _remarks(section: ThresholdSection, kit: Kit, job: Job) -> Iterator[str]:
    """Say how high the frame stands and how far it stands out."""
    text, placement = job.shop.grid.text, kit.placement
    level = f"{text(section.floor)} above the finished floor" if section.floor else "level with the finished floor"
    out = placement.outside_edge - placement.planes.sheathing_plane
    yield f"bottom of the frame {level}"
    if out > HALF_64TH:
        yield f"the frame reaches {text(out)} outside the face of the sheathing"
