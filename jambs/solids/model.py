"""A kit becomes solids: every part sawn from its cut list and seated in the wall, with the window's frame."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from jambs.arcs import Bulged, arc_middle, with_arcs
from jambs.findings import Finding, Subject
from jambs.geometry import Plane, Point, Vector, added, cross, dot, minus, unit
from jambs.job.models.openings import Job, Opening
from jambs.job.models.path import corners_of, is_arched, outset, points_of
from jambs.job.models.windows import FrameFace
from jambs.outlines import rectangle
from jambs.parts.board.kinds import PartKind, told_position
from jambs.parts.board.part import Part, Seat
from jambs.parts.board.sawing import Silhouettes
from jambs.parts.board.touches import BackBevel
from jambs.parts.kit.kit import Kit
from jambs.parts.trim.casing_plane import Slack, hung
from jambs.parts.trim.metal_returns import over_the_head
from jambs.place.frame_path import frame_path
from jambs.place.placement import Placement
from jambs.place.units import frame_name, mull_frames
from jambs.sides import Side
from jambs.solids import kernel
from jambs.solids.bent import bent_flashing
from jambs.solids.facets import Facet, facets_of
from jambs.solids.findings import BackBevelNotSawn, FlashingDrawnBent, MetalLegsNotShown, ReturnsNotShown

STANDING = Seat(origin=(0.0, 0.0, 0.0), along=(1.0, 0.0, 0.0), across=(0.0, 1.0, 0.0), through=(0.0, 0.0, 1.0))
"""The seat of what is made in the wall's own axes."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Solid:
    """One solid of an opening: its name, what it is made of, its shape on the bench, its seat, and as it stands.

    ``part``: the part it was sawn from, None for the window's frame. ``facets``: its flat faces in the wall;
    ``low``, ``high``: corners of the box around it (x, y, d) [in].
    """

    name: str
    material: str
    part: Part | None
    bench: kernel.Shape
    seat: Seat
    facets: tuple[Facet, ...]
    low: Vector
    high: Vector

    @property
    def words(self) -> str:
        """Mark and trade words: ``W03-2 (extension jamb, left leg)``."""
        return f"{self.name} ({self.part.name}, {self.part.position})" if self.part else self.name

    @property
    def label(self) -> str:
        """Mark and trade words as files in three dimensions have them: ``W03-2 extension jamb, left leg``."""
        if self.part is None:
            return self.name
        where = told_position(self.part.name, self.part.position)
        return f"{self.name} {', '.join(one for one in (self.part.name, where) if one)}"

    @property
    def lean_deg(self) -> float:
        """How far it is turned with the wall that it hangs on, from where the kit laid it out."""
        if self.part is None or self.seat == self.part.seat:
            return 0.0
        return math.degrees(math.acos(min(1.0, dot(self.seat.through, self.part.seat.through))))

    @property
    def standing(self) -> kernel.Shape:
        """The shape where it stands in the wall."""
        return self.bench.Located(kernel.location(self.seat))


@dataclass(frozen=True, slots=True, kw_only=True)
class KitSolids:
    """A kit in three dimensions.

    ``parts``: one solid for each part, in order; ``frame``: the window's, two where its face differs outside; of ganged
    units their outer edges, and ``between`` what of their frames lies at mulls.
    ``beside``: frames and boards at the openings that are trimmed as one with it.
    ``inside_slack``, ``outside_slack``: how far joints of the casing can be off because the measured wall is out of
    plane. ``notes``: what is not shown as it will be made.
    """

    kit: Kit
    job: Job
    parts: tuple[Solid, ...]
    frame: tuple[Solid, ...]
    inside_slack: Slack
    outside_slack: Slack
    notes: tuple[Finding, ...]
    between: tuple[Solid, ...] = ()
    beside: tuple[Solid, ...] = ()

    @property
    def mark(self) -> str:
        """The opening's mark."""
        return self.kit.mark

    @property
    def solids(self) -> tuple[Solid, ...]:
        """All solids of its own: the window's frame, then the parts."""
        own = (one for one in (*self.parts, *self.beside) if one.part and one.part.opening == self.mark)
        return (*self.frame, *self.between, *(own if self.kit.run else self.parts))

    @property
    def everything(self) -> tuple[Solid, ...]:
        """All solids, those of the openings that are trimmed with it among them."""
        return (*self.frame, *self.between, *self.parts, *self.beside)


def model_kit(kit: Kit, job: Job) -> KitSolids:
    """Make the solids of a kit, each part from its cut list alone, seated where the kit says.

    On a measured wall casing, apron and flashing are hung on the plane that the jambs' edges make: walls lean.

    Raises:
        CutListError: a part's cut list makes no board.
        ImportError: the solid kernel is missing (see ``availability``).
    """
    kit = kit.as_trimmed
    placed = hung(kit)
    parts = tuple(_solid(part, seat, kit) for part, seat in zip(kit.parts, placed.seats, strict=True))
    return KitSolids(
        kit=kit,
        job=job,
        parts=parts,
        frame=_frame(kit),
        between=_between(kit),
        beside=_beside(kit, placed.beside),
        inside_slack=placed.inside,
        outside_slack=placed.outside,
        notes=_notes(kit),
    )


def _solid(part: Part, seat: Seat, kit: Kit) -> Solid:
    trim = kit.placement.opening.exterior
    if part.kind is PartKind.HEAD_FLASHING and trim is not None:
        bench = bent_flashing(part, trim.head_flashing, over_the_head(trim, kit.placement))
    else:
        bench = board_shape(part.silhouettes)
    return stood(name=part.mark, material=part.stock, part=part, bench=bench, seat=seat)


def stood(*, name: str, material: str, part: Part | None, bench: kernel.Shape, seat: Seat) -> Solid:
    """Stand a shape in the wall and read its faces there."""
    facets = facets_of(bench.Located(kernel.location(seat)))
    low, high = box_around(facets)
    return Solid(name=name, material=material, part=part, bench=bench, seat=seat, facets=facets, low=low, high=high)


def box_around(facets: tuple[Facet, ...]) -> tuple[Vector, Vector]:
    """Corners of the box around faces [in]."""
    corners = [corner for facet in facets for loop in facet.loops for corner in loop]
    xs, ys, ds = zip(*corners, strict=True)
    return (min(xs), min(ys), min(ds)), (max(xs), max(ys), max(ds))


def board_shape(board: Silhouettes) -> kernel.Shape:
    """Make the solid that all three silhouettes of a board leave; board coordinates."""
    sizes = board.sizes
    length, width, thickness = sizes.length, sizes.width, sizes.thickness
    face, end, edge = board.face, board.end, board.edge
    swept = []
    if end != rectangle(width, thickness):
        swept.append(kernel.prism([(0.0, v, w) for v, w in end], (length, 0.0, 0.0)))
    if edge != rectangle(length, thickness):
        swept.append(_swept(edge, lambda u, w: (u, 0.0, w), (0.0, width, 0.0)))
    if face != rectangle(length, width) or not swept:
        swept.append(_swept(face, lambda u, v: (u, v, 0.0), (0.0, 0.0, thickness)))
    shape = swept[0]
    for other in swept[1:]:
        shape = kernel.common(shape, other)
    for plane in board.planes:
        shape = kernel.less(shape, past_plane(plane))
    for rabbet in board.rabbets:
        slab = [(-FAR, -FAR, 0.0), (FAR, -FAR, 0.0), (FAR, FAR, 0.0), (-FAR, FAR, 0.0)]
        room = kernel.common(past_plane(rabbet.flat), kernel.prism(slab, (0.0, 0.0, rabbet.depth)))
        shape = kernel.less(shape, room)
    return shape


Lift = Callable[[float, float], Vector]
"""Takes a point of a flat outline into space."""


def _swept(outline: Sequence[Point], lift: Lift, sweep: Vector) -> kernel.Shape:
    """Sweep an outline, its arcs as arcs."""
    found = with_arcs(outline)
    if not found.has_arcs:
        return kernel.prism([lift(*point) for point in outline], sweep)
    return kernel.curved_prism(_sides(found, lift), sweep)


def _sides(found: Bulged, lift: Lift) -> list[kernel.Side]:
    ends = (*found.points[1:], found.points[0])
    return [
        (lift(*start), lift(*arc_middle(start, finish, bulge)) if bulge else None)
        for start, finish, bulge in zip(found.points, ends, found.bulges, strict=True)
    ]


FAR = 1000.0
"""What lies past a plane is drawn this far [in]; no board is longer."""


def past_plane(plane: Plane) -> kernel.Shape:
    """Make a block of all that a board can have past a plane; board coordinates."""
    normal = plane.normal
    one = unit(minus(plane.finish, plane.start))
    two = cross(normal, one)
    corners = [added(added(plane.start, one, FAR * a), two, FAR * b) for a, b in ((-1, -1), (1, -1), (1, 1), (-1, 1))]
    return kernel.prism(corners, (FAR * normal[0], FAR * normal[1], FAR * normal[2]))


def _beside(kit: Kit, seats: Sequence[Seat]) -> tuple[Solid, ...]:
    """The frames and the boards at the openings that are trimmed as one with a kit's."""
    frames = [one for fellow in (kit.run.others if kit.run else ()) for one in _rings(fellow.placement, fellow.x)]
    return (*frames, *(_solid(part, seat, kit) for part, seat in zip(kit.beside, seats, strict=True)))


def _frame(kit: Kit) -> tuple[Solid, ...]:
    return _rings(kit.placement, 0.0)


def _rings(placement: Placement, x: float) -> tuple[Solid, ...]:
    """The window's frame as a ring; where its face differs outside, another ring from the flange plane on.

    ``x``: of its lower left corner [in].
    """
    seat = replace(STANDING, origin=(x, 0.0, 0.0))
    window = placement.opening.window
    start, finish = placement.inside_edge, placement.outside_edge
    step = min(max(placement.flange_plane, start), finish)
    name = f"{placement.opening.mark} {frame_name(placement.opening)}"
    zones = [(name, start, step, window.frame_face), (f"{name}, outside", step, finish, window.outside_face)]
    if window.frame_face == window.outside_face:
        zones = [(name, start, finish, window.frame_face)]
    rings = []
    for words, near, far, face in zones:
        if far - near > 0:
            bench = _ring(placement.opening, face, near, far)
            rings.append(stood(name=words, material="window frame", part=None, bench=bench, seat=seat))
    return tuple(rings)


def _between(kit: Kit) -> tuple[Solid, ...]:
    """The edges of ganged frames at their mulls, inside the ring of the outer ones."""
    placement = kit.placement
    start, finish = placement.inside_edge, placement.outside_edge
    step = min(max(placement.flange_plane, start), finish)
    inside, outside = (mull_frames(placement.opening, from_outside=one) for one in (False, True))
    zones = [(start, finish, inside)] if inside == outside else [(start, step, inside), (step, finish, outside)]
    found = []
    for near, far, boxes in zones:
        for number, (left, bottom, right, top) in boxes if far > near else ():
            corners = [(left, bottom, near), (right, bottom, near), (right, top, near), (left, top, near)]
            bench = kernel.prism(corners, (0.0, 0.0, far - near))
            name = f"{kit.mark} frame of unit {number} at a mull"
            found.append(stood(name=name, material="window frame", part=None, bench=bench, seat=STANDING))
    return tuple(found)


def _ring(opening: Opening, face: FrameFace, near: float, far: float) -> kernel.Shape:
    path = frame_path(opening)
    sight = outset(path, {side: -face.at(side) for side in Side})
    if is_arched(path):
        rings = (with_arcs(points_of(one)[::turn]) for one, turn in ((path, -1), (sight, 1)))
        outline, within = (_sides(ring, lambda x, y: (x, y, near)) for ring in rings)
        return kernel.curved_prism(outline, (0.0, 0.0, far - near), holes=[within])
    outer, hole = corners_of(path), corners_of(sight)
    return kernel.prism(
        [(x, y, near) for x, y in (outer[0], *outer[:0:-1])],
        (0.0, 0.0, far - near),
        holes=[[(x, y, near) for x, y in hole]],
    )


def _notes(kit: Kit) -> tuple[Finding, ...]:
    about, notes = Subject.opening(kit.mark), list[Finding]()
    if any(part.is_bent for part in kit.parts):
        notes.append(FlashingDrawnBent(subject=about))
    if any(part.kind is PartKind.METAL_RETURN for part in kit.parts):
        notes.append(MetalLegsNotShown(subject=about))
    if any(part.is_returned for part in kit.parts):
        notes.append(ReturnsNotShown(subject=about))
    if any(isinstance(touch, BackBevel) for part in kit.parts for touch in part.touches):
        notes.append(BackBevelNotSawn(subject=about))
    return tuple(notes)
