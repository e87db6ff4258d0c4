"""One side of the house: start line, eave, and the heads and sills that the exterior parts of its openings make.

Heights over the datum, the ground floor [in]. Across, from the left corner as seen from outside.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from jambs.courses.clad_outline import box_round, clad_outline
from jambs.geometry import Outline
from jambs.job.models.outside import ElevationEntry
from jambs.job.models.path import outset, points_of
from jambs.job.models.path_edge import FramePath
from jambs.parts.board.edge_of import edge_of
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.on_elevation import Box, floors_of, frame_over_floor, kits_on, seen_box
from jambs.place.frame_path import frame_path
from jambs.sides import Side


class LineKind(StrEnum):
    """What a course line is to meet."""

    HEAD = "head"
    SILL = "sill"
    EAVE = "eave"


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """A height a course line should meet [in over the datum], what is there, and of which opening."""

    kind: LineKind
    height: float
    mark: str

    @property
    def words(self) -> str:
        """What is there: ``W03 head``, ``eave``."""
        return f"{self.mark} {self.kind.value}".strip()


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningOnElevation:
    """An opening as seen from outside [in]: its frame, all that its trim covers, and the heights courses should meet.

    ``head``: butts above the head flashing, its gap counted. ``sill``: lower front edge of the sill or of the casing at
    the bottom, None for a door. ``is_placed``: the job says how far it is from the left corner. ``outlines``: of frame
    and trim, where they are no rectangles.
    """

    mark: str
    frame: Box
    trim: Box
    head: float
    sill: float | None
    is_placed: bool
    outlines: tuple[Outline, Outline] | None = None

    def covered(self, height: float) -> tuple[float, float] | None:
        """Return the part of a level line at a height that its trim covers [in]; nothing where it misses it."""
        left, bottom, right, top = self.trim
        if not bottom < height < top:
            return None
        return across_at(self.outlines[1], height) if self.outlines else (left, right)


def across_at(outline: Outline, height: float) -> tuple[float, float] | None:
    """Return where a level line enters and leaves an outline without hollows [in]; nothing where it misses it."""
    found = [
        x0 + (x1 - x0) * (height - y0) / (y1 - y0)
        for (x0, y0), (x1, y1) in zip(outline, (*outline[1:], outline[0]), strict=True)
        if y0 != y1 and min(y0, y1) <= height <= max(y0, y1)
    ]
    return (min(found), max(found)) if found else None


@dataclass(frozen=True, slots=True, kw_only=True)
class Elevation:
    """One side of the house [in over the datum], its openings left → right as seen from outside.

    ``unplaced``: marks of openings whose height over the floor the job does not say.
    """

    name: str
    start_line: float
    eave: float
    width: float | None
    openings: tuple[OpeningOnElevation, ...]
    unplaced: tuple[str, ...] = ()

    @property
    def wanted(self) -> tuple[Wanted, ...]:
        """All heights that course lines should meet, from below."""
        lines = [Wanted(kind=LineKind.EAVE, height=self.eave, mark="")]
        for one in self.openings:
            lines.append(Wanted(kind=LineKind.HEAD, height=one.head, mark=one.mark))
            if one.sill is not None:
                lines.append(Wanted(kind=LineKind.SILL, height=one.sill, mark=one.mark))
        return tuple(sorted(lines, key=lambda line: (line.height, line.mark)))


SIDE_BY_SIDE = 24.0
"""Between openings whose place along the wall is unknown, on the drawing only [in]."""


def elevation_of(name: str, entry: ElevationEntry, kits: Sequence[Kit], *, gap: float | None = None) -> Elevation:
    """Gather one elevation from the kits of its openings.

    ``gap``: upper edge of the head casing → butts above it, for all; None: as each opening's trim says [in].
    """
    own = kits_on(name, entry, kits)
    floors = floors_of(entry)
    openings, unplaced, across = [], [], SIDE_BY_SIDE
    for kit in own:
        over_floor = frame_over_floor(kit.placement.opening)
        if over_floor is None:
            unplaced.append(kit.mark)
            continue
        one = _opening(kit, floors.get(kit.mark, 0.0) + over_floor, across, gap)
        across = max(across, one.trim[2] + SIDE_BY_SIDE)
        openings.append(one)
    return Elevation(
        name=name,
        start_line=entry.start_line,
        eave=entry.eave,
        width=entry.width,
        openings=tuple(sorted(openings, key=lambda one: one.frame[0])),
        unplaced=tuple(unplaced),
    )


def _opening(kit: Kit, bottom: float, across: float, gap: float | None) -> OpeningOnElevation:
    opening, frame = kit.placement.opening, kit.placement.opening.frame
    left = across if opening.from_left is None else opening.from_left
    low, under, high, over = _trim(kit)
    # Parts are seen from inside: mirrored here.
    trim = (left + frame.width - high, bottom + under, left + frame.width - low, bottom + over)
    if gap is None:
        gap = opening.exterior.head_flashing.gap_to_cladding if opening.exterior else 0.0
    return OpeningOnElevation(
        mark=kit.mark,
        frame=(left, bottom, left + frame.width, bottom + frame.height),
        trim=trim,
        head=trim[3] + gap,
        sill=None if opening.floor_below_frame is not None else trim[1],
        is_placed=opening.from_left is not None,
        outlines=_outlines(kit, left, bottom) if opening.shape else _clad_outlines(kit, left, bottom),
    )


def _clad_outlines(kit: Kit, left: float, bottom: float) -> tuple[Outline, Outline] | None:
    """Return the outlines of frame and trim where cladding turns into the reveal; None where none is returned."""
    frame, ring = kit.placement.opening.frame, clad_outline(kit)
    if ring is None:
        return None
    # Mitered cladding lies before the frame's edges.
    low, high = across_at(ring, frame.height / 2) or (0.0, frame.width)
    low, high, top = max(low, 0.0), min(high, frame.width), min(frame.height, box_round(ring)[3])
    box = ((low, 0.0), (high, 0.0), (high, top), (low, top))

    def seen(outline: Outline) -> Outline:
        return tuple((left + frame.width - x, bottom + y) for x, y in outline)

    return seen(box), seen(ring)


def _outlines(kit: Kit, left: float, bottom: float) -> tuple[Outline, Outline]:
    """Return the outlines of frame and trim as seen from outside: mirrored, on the elevation [in]."""
    opening = kit.placement.opening
    path = frame_path(opening)
    out = {edge.side: 0.0 for edge in path}
    for part in kit.parts:
        if part.where is Where.EXTERIOR and part.runs is not None:
            edge = edge_of(part, path)
            if edge.center:
                points = (point for side in part.standing_outlines() for point in side)
                out[part.side] = max(out[part.side], *(edge.out((x, y)) for x, y, _ in points))
                continue
            x, y, _ = part.seat.at(0.0, part.width if part.kind is PartKind.CASING else 0.0, part.thickness)
            out[part.side] = max(out[part.side], edge.out((x, y)))
    out[Side.SILL] = max(out[Side.SILL], -_trim(kit)[1])

    def seen(one: FramePath) -> Outline:
        return tuple((left + opening.frame.width - x, bottom + y) for x, y in points_of(one))

    return seen(path), seen(outset(path, out))


def _covers(part: Part) -> bool:
    """Say whether cladding stops at a part: it is of wood, or metal that lines the opening."""
    return part.is_wood or part.kind is PartKind.METAL_RETURN


def _trim(kit: Kit) -> Box:
    """All that the frame and the exterior parts that cladding stops at cover, in wall coordinates of the kit [in]."""
    if ring := clad_outline(kit):
        return box_round(ring)
    frame = kit.placement.opening.frame
    boxes = [(0.0, 0.0, frame.width, frame.height)]
    lining = [part for part in kit.as_trimmed.parts if part.where is Where.EXTERIOR and _covers(part)]
    boxes += [seen_box(part) for part in lining]
    lows = [min(box[side] for box in boxes) for side in (0, 1)]
    highs = [max(box[side] for box in boxes) for side in (2, 3)]
    return (lows[0], lows[1], highs[0], highs[1])
