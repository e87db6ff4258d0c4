"""What the browser draws, as polygons and texts: sections as on paper, chains of dimensions, layers, sash, parts.

Points are inches of the drawing: x right, y up. The browser puts them on the screen and knows nothing of what they are.
"""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

from jambs.drawings.views.outlines import is_wall_below, seen_from_above, turned
from jambs.drawings.views.sections import TITLES, with_short_glass
from jambs.drawings.views.words import layer_words
from jambs.job import Job
from jambs.length import HALF_64TH
from jambs.parts.board.board_faces import board_faces
from jambs.parts.board.part import Part, Seat
from jambs.parts.kit.kit import Kit
from jambs.parts.trim.casing_plane import hung
from jambs.place.sash import swing_seen
from jambs.screen.flat import DIGITS, flat, space_kind
from jambs.section.cut import WALL_SHOWN, cut_section, sections_to_draw
from jambs.section.region import Section, SectionCut, Stuff
from jambs.values import Record

OF_WINDOW = (Stuff.FRAME, Stuff.GLASS)
"""What the hand takes hold of."""
CUTS = tuple(one.value for one in SectionCut)


def section_records(kit: Kit, job: Job, *, only: str = "") -> list[Record]:
    """Return the sections of a kit as they stand on paper, regions back to front; ``only``: the one through a side."""
    is_there = only in CUTS and (only != SectionCut.SILL or kit.placement.opening.floor_below_frame is None)
    found = [cut_section(kit, SectionCut(only), wall_length=WALL_SHOWN)] if is_there else sections_to_draw(kit)
    return [_section(with_short_glass(seen_from_above(one)), kit, job) for one in found]


def _section(section: Section, kit: Kit, job: Job) -> Record:
    shapes = [
        {
            "stuff": region.stuff.name.lower(),
            "name": f"{region.mark} {region.name}".strip(),
            "holds": region.stuff in OF_WINDOW,
            "points": flat(turned(region.outline)),
        }
        for region in section.regions
    ]
    ys = [across for region in section.regions for across, _ in region.outline]
    return {
        "cut": section.cut.value,
        "title": TITLES[section.cut],
        "wall_below": is_wall_below(section.cut),
        "low": min(ys),
        "high": max(ys),
        "shapes": shapes,
    }


def chain_records(kit: Kit, job: Job) -> Record:
    """Return the two chains of depths that stand on every section: at the frame, and of the wall."""
    placement, planes = kit.placement, kit.placement.planes
    at_frame = (0.0, placement.inside_edge, placement.flange_plane, placement.outside_edge, planes.trim_plane)
    of_wall = (0.0, planes.sheathing_plane, planes.trim_plane, planes.cladding_face)
    return {
        "frame": _chain(at_frame, job),
        "wall": _chain(of_wall, job),
        "flange": round(placement.flange_plane, DIGITS),
    }


def _chain(depths: Iterable[float], job: Job) -> list[Record]:
    stops: list[float] = []
    for depth in sorted(depths):
        if not stops or depth - stops[-1] > HALF_64TH:
            stops.append(depth)
    return [
        {"from": round(one, DIGITS), "to": round(two, DIGITS), "text": job.units.text(two - one)}
        for one, two in pairwise(stops)
    ]


def layer_records(kit: Kit, job: Job) -> list[Record]:
    """Return the layers of the wall, inside → outside: where each lies and its name."""
    return [
        {
            "from": round(one.inner, DIGITS),
            "to": round(one.outer, DIGITS),
            "name": layer_words(one, units=job.units),
        }
        for one in kit.placement.planes.layers
    ]


def swing_record(kit: Kit) -> Record | None:
    """Return the sash seen along its hinge, shut and as far open as it goes, with what it can meet."""
    placement = kit.placement
    if placement.tightest is None:
        return None
    opening, swing = placement.tightest
    seen = swing_seen(
        opening,
        interior_depth=placement.interior_depth,
        exterior_depth=placement.exterior_depth,
        cladding_depth=placement.planes.cladding_depth,
        degrees=min(swing.greatest_deg, 180.0),
    )
    return {
        "outward": opening.window.sash.outward,
        "met": swing.stopped_by.name.lower(),
        "obstacles": [{"what": what.name.lower(), "points": flat(shape)} for what, shape in seen.obstacles],
        "shut": flat(seen.shut),
        "open": flat(seen.opened),
        "hinge": flat([seen.hinge]),
        "span": opening.frame.width,
    }


# ---- parts in space


def part_records(kit: Kit) -> list[Record]:
    """Return every part as flat faces in the wall: x right, y up, depth outward [in]; neighbors trimmed as one too."""
    whole = kit.whole
    return [
        {"mark": part.mark, "name": part.told, "where": space_kind(part), "faces": _faces(part, seat)}
        for part, seat in zip(whole.parts, hung(whole).seats, strict=True)
    ]


def _faces(part: Part, seat: Seat) -> list[list[float]]:
    return [flat(seat.at(*point) for point in face) for face in board_faces(part)]


def window_boxes(kit: Kit) -> list[list[float]]:
    """Return the frame of the window, and of those trimmed as one with it, as boxes in the wall [in].

    Left edge, width, height, inside edge, outside edge.
    """
    across = [(0.0, kit.placement), *((one.x, one.placement) for one in (kit.run.others if kit.run else ()))]
    return [
        [x, one.opening.frame.width, one.opening.frame.height, one.inside_edge, one.outside_edge] for x, one in across
    ]
