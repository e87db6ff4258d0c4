"""What the browser draws, as polygons and texts: sections as on paper, chains of dimensions, layers, sash, parts.

Points are inches of the drawing: x right, y up. The browser puts them on the screen and knows nothing of what they are.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise

from jambs.drawings.views.outlines import is_wall_below, seen_from_above, turned
from jambs.drawings.views.sections import TITLES, with_short_glass
from jambs.drawings.views.words import layer_words
from jambs.geometry import Vector, added, cross
from jambs.job import Job
from jambs.length import HALF_64TH
from jambs.parts.casing_plane import hung
from jambs.parts.kit import Kit
from jambs.parts.part import Part, Seat
from jambs.place.sash import swing_seen
from jambs.section.cut import cut_sections
from jambs.section.region import Section, Stuff
from jambs.values import Record

OF_WINDOW = (Stuff.FRAME, Stuff.GLASS)
"""What the hand takes hold of."""
DIGITS = 4
"""Of an inch on the screen: a ten-thousandth is far under a pixel."""


def section_records(kit: Kit, job: Job) -> list[Record]:
    """Return the sections of a kit as they stand on paper, regions back to front."""
    return [_section(with_short_glass(seen_from_above(one)), kit, job) for one in cut_sections(kit)]


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


def flat(points: Iterable[Sequence[float]]) -> list[float]:
    """Return points as one list of numbers."""
    return [round(value, DIGITS) for point in points for value in point]


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
    if placement.swing is None:
        return None
    seen = swing_seen(
        placement.opening,
        interior_depth=placement.interior_depth,
        exterior_depth=placement.exterior_depth,
        degrees=min(placement.swing.greatest_deg, 180.0),
    )
    window = placement.opening.window
    return {
        "outward": window.sash.outward,
        "met": placement.swing.stopped_by.name.lower(),
        "obstacles": [{"what": what.name.lower(), "points": flat(shape)} for what, shape in seen.obstacles],
        "shut": flat(seen.shut),
        "open": flat(seen.opened),
        "hinge": flat([seen.hinge]),
        "span": placement.opening.frame.width,
    }


# ---- parts in space


def part_records(kit: Kit) -> list[Record]:
    """Return every part as flat faces in the wall: x right, y up, depth outward [in].

    Each is its outline on the face, the same on its back, and the edges between; notches are in the outline, what is
    worked into the thickness is not.
    """
    return [
        {"mark": part.mark, "name": part.told, "where": part.where.value, "faces": _faces(part, seat)}
        for part, seat in zip(kit.parts, hung(kit).seats, strict=True)
    ]


def _faces(part: Part, seat: Seat) -> list[list[float]]:
    near = [seat.at(u, v, 0.0) for u, v in part.outline]
    far = [seat.at(u, v, part.thickness) for u, v in part.outline]
    edges = [(near[at], near[(at + 1) % len(near)], far[(at + 1) % len(far)], far[at]) for at in range(len(near))]
    return [flat(_outward(face, near, far)) for face in (tuple(near), tuple(far), *edges)]


def _outward(face: Sequence[Vector], near: Sequence[Vector], far: Sequence[Vector]) -> list[Vector]:
    """Return a face so that its corners run counter-clockwise seen from outside the board."""
    middle = _middle([*near, *far])
    normal = _normal(face)
    away = added(_middle(face), (-middle[0], -middle[1], -middle[2]))
    return list(face) if sum(n * a for n, a in zip(normal, away, strict=True)) >= 0 else list(reversed(face))


def _middle(points: Sequence[Vector]) -> Vector:
    count = len(points)
    x, y, z = (sum(point[axis] for point in points) / count for axis in range(3))
    return (x, y, z)


def _normal(face: Sequence[Vector]) -> Vector:
    total: Vector = (0.0, 0.0, 0.0)
    for one, two in zip(face, [*face[1:], face[0]], strict=True):
        total = added(total, cross(one, two))
    return total


def window_box(kit: Kit) -> list[float]:
    """Return the window's frame as a box in the wall: width, height, inside edge, outside edge [in]."""
    frame = kit.placement.opening.frame
    return [frame.width, frame.height, kit.placement.inside_edge, kit.placement.outside_edge]
