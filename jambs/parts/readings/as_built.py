"""A placement as it was found on the site: what was measured in place of what was planned, the rest as planned."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from jambs.findings import Finding, Subject
from jambs.job.measured.measuring_points import FINISHED, Kind, Place, measure_places, reading_at
from jambs.job.measured.reading_checks import Held, ReadingQuestion, find_misreadings
from jambs.job.models.fields import Size
from jambs.job.models.openings import Measured, Opening, Origin, SideDepths
from jambs.job.models.readings import Readings, SideReadings
from jambs.job.models.side_lines import meetings, told_lines
from jambs.job.models.windows import FrameFace
from jambs.length import HALF_64TH, Units
from jambs.parts.board.kinds import Where
from jambs.parts.readings.mulls_as_built import mull_depth_findings, with_mulls
from jambs.parts.readings.reading_findings import (
    FrameHigherAtOneSide,
    FrameRacked,
    FrameWiderAtOneEnd,
    HalfMeasured,
    NothingMeasured,
    ReadingInQuestion,
)
from jambs.parts.shapes.clear import unrounded_clear
from jambs.place.placement import Placement, Sides
from jambs.sides import Side

PLANNED = "PLANNED – MEASURE BEFORE CUTTING"
"""The banner over every paper whose depths nobody has measured."""
NOT_READ = "–"
"""Stands among readings where nobody read one."""

Points = dict[Side, list[float | None]]


def planned_value(place: Place, placement: Placement) -> float | None:
    """Return what the plan says of a place [in]; nothing for the wall finish, which is yes or no."""
    opening = placement.opening
    frame = opening.frame
    if place.kind is Kind.FRAME_FACE:
        return opening.window.frame_face.at(Side(place.keys[0][1]))
    if place.kind in (Kind.MULL_EDGE, Kind.MULL_GAP) and opening.gang:
        mull = opening.gang.mulls[int(place.keys[0][1])]
        return mull.low if place.kind is Kind.MULL_EDGE else mull.between
    if place.kind in FINISHED:
        clear = unrounded_clear(opening)
        return clear.width if place.kind is Kind.FINISHED_WIDTH else clear.height
    return {
        Kind.INTERIOR_DEPTH: placement.interior_depth,
        Kind.EXTERIOR_DEPTH: placement.exterior_depth,
        Kind.MULL_DEPTH: placement.interior_depth,
        Kind.FRAME_WIDTH: frame.width,
        Kind.FRAME_HEIGHT: frame.height,
        Kind.DIAGONAL: math.hypot(frame.width, frame.height),
        Kind.WALL_FINISH: None,
    }.get(place.kind, 0.0)


def held_readings(placement: Placement) -> tuple[Held, ...]:
    """Return every length that was read at an opening beside what was to be expected there."""
    readings = placement.opening.readings
    if readings is None:
        return ()
    bare = 0.0 if readings.wall_finish else placement.planes.stud_face
    found = []
    for place in measure_places(placement.opening):
        value, planned = reading_at(place, readings), planned_value(place, placement)
        if isinstance(value, float) and planned is not None:
            planned -= bare if place.kind in (Kind.INTERIOR_DEPTH, Kind.MULL_DEPTH) else 0.0
            found.append(Held(place=place, value=value, planned=planned))
    return tuple(found)


def held_when_read(placement: Placement) -> tuple[Held, ...]:
    """Return every length that was read beside what was to be expected there on the shop's grid of then.

    What is decided by how far a reading is off its plan is not decided anew where the shop only rounds otherwise.
    """
    inside, outside = placement.off_by_grid
    off = {Kind.INTERIOR_DEPTH: inside, Kind.MULL_DEPTH: inside, Kind.EXTERIOR_DEPTH: outside}
    return tuple(replace(one, planned=one.planned + off.get(one.place.kind, 0.0)) for one in held_readings(placement))


def questions(placement: Placement, *, units: Units) -> tuple[ReadingQuestion, ...]:
    """Ask about the readings of an opening that are likely misreadings."""
    readings = placement.opening.readings
    return find_misreadings(held_when_read(placement), units=units, sure=readings.sure if readings else ())


def as_built(placement: Placement) -> tuple[Placement, tuple[Finding, ...]]:
    """Put what was measured in place of what was planned; what was not measured stays planned.

    Also say what the reader has to know: what is still planned, a frame that is racked or not parallel.
    """
    opening, readings = placement.opening, placement.opening.readings
    if readings is None:
        return placement, ()
    about, measured = Subject.opening(opening.mark), _filled(placement, readings)
    built = _with_frame(placement, readings)
    built = replace(built, opening=replace(built.opening, measured=measured))
    bare = 0.0 if readings.wall_finish else placement.planes.stud_face
    return built, (
        *_lacking_findings(opening, measured, about),
        *_frame_findings(readings, about),
        *mull_depth_findings(built.opening, readings, measured.interior_depth if measured else None, bare),
    )


def without_odd_readings(placement: Placement, *, units: Units) -> Placement:
    """Set an opening that has a reading in question back to its plan, and ask about each; others stay as they are."""
    asked = questions(placement, units=units)
    if not asked:
        return placement
    about = Subject.opening(placement.opening.mark)
    told = (ReadingInQuestion(subject=about, question=question) for question in asked)
    opening = replace(placement.opening, readings=None, measured=None)
    return replace(placement, opening=opening, findings=(*told, *placement.findings))


def is_measured(opening: Opening) -> bool:
    """Say whether the interior depths of an opening were read at every corner."""
    return opening.measured is not None and opening.measured.inside_is_read


def is_read(opening: Opening, where: Where) -> bool:
    """Say whether an opening was measured on the side of the wall where a part is."""
    if where is Where.EXTERIOR:
        return opening.measured is not None and opening.measured.outside_is_read
    return is_measured(opening)


# ---- the frame


def _with_frame(placement: Placement, readings: Readings) -> Placement:
    """Use the frame as it was measured; the shim spaces take what it is larger or smaller.

    It stands on its sill shims, at the height that the job says: what it is higher the head takes.
    """
    opening, shims = placement.opening, placement.shims
    width = _mean(readings.frame_width, opening.frame.width)
    height = _mean(readings.frame_height, opening.frame.height)
    aside, above = (width - opening.frame.width) / 2, height - opening.frame.height
    face, read = opening.window.frame_face, readings.frame_face
    faces = {side.value: getattr(read, side.value, None) for side in Side}
    known = {side: value for side, value in faces.items() if value is not None}
    window = opening.window.model_copy(update={"frame_face": FrameFace.model_construct(**{**dict(face), **known})})
    return replace(
        placement,
        opening=with_mulls(replace(opening, frame=Size(width=width, height=height), window=window), readings),
        shims=Sides(left=shims.left - aside, right=shims.right - aside, head=shims.head - above, sill=shims.sill),
    )


def _mean(read: Sequence[float | None] | None, planned: float) -> float:
    """The mean of what was read, which is what both reveals share; as planned where nothing was."""
    known = [value for value in read or () if value is not None]
    return sum(known) / len(known) if known else planned


OUT_OF_SQUARE = 1 / 16 + HALF_64TH
"""Two readings of a frame that differ by more are not one size [in]; common practice, no source."""


def _frame_findings(readings: Readings, about: Subject) -> list[Finding]:
    racked, wider, higher = (
        _difference(pair) for pair in (readings.diagonals, readings.frame_width, readings.frame_height)
    )
    found: list[Finding] = []
    if racked > OUT_OF_SQUARE:
        found.append(FrameRacked(subject=about, off=racked))
    if wider > OUT_OF_SQUARE:
        found.append(FrameWiderAtOneEnd(subject=about, off=wider))
    if higher > OUT_OF_SQUARE:
        found.append(FrameHigherAtOneSide(subject=about, off=higher))
    return found


def _difference(pair: Sequence[float | None] | None) -> float:
    known = [value for value in pair or () if value is not None]
    return abs(known[0] - known[1]) if len(known) == 2 else 0.0


# ---- the depths


def _filled(placement: Placement, readings: Readings) -> Measured | None:
    """Return measured depths with what was not read as planned; nothing where no depth was read at all."""
    bare = 0.0 if readings.wall_finish else placement.planes.stud_face
    inside = _sides(readings.interior_depth, placement.interior_depth, bare, placement.opening, "interior_depth")
    outside = _sides(readings.exterior_depth, placement.exterior_depth, 0.0, placement.opening, "exterior_depth")
    if inside is None and outside is None:
        return None
    return Measured(date=readings.date, by=readings.by, interior_depth=inside, exterior_depth=outside)


def _places_of(opening: Opening, key: str) -> dict[Side, int]:
    """Return how many places each side has."""
    counts: dict[Side, int] = {}
    for place in measure_places(opening):
        for way in place.keys:
            if way[0] == key:
                side = Side(way[1])
                counts[side] = max(counts.get(side, 0), int(way[2]) + 1)
    return counts


def _sides(read: SideReadings | None, planned: float, bare: float, opening: Opening, key: str) -> SideDepths | None:
    """Fill the sides: a missing corner is as planned, a missing place between is on the line of its neighbors."""
    lines, counts = opening.lines, _places_of(opening, key)
    points: Points = {side: list(getattr(read, side.value, None) or [None] * count) for side, count in counts.items()}
    if all(point is None for side in points.values() for point in side):
        return None
    for (side, at), (other, end) in meetings(lines):
        if side in points and other in points:
            known = points[side][at] if points[side][at] is not None else points[other][end]
            points[side][at] = points[other][end] = known
    filled = {side: _line(found, planned, bare, lines[side].corners(len(found))) for side, found in points.items()}
    depths = {side.value: tuple(depth for depth, _ in line) for side, line in filled.items()}
    origins = {side: tuple(origin for _, origin in line) for side, line in filled.items()}
    return SideDepths(**depths, origins=origins, lines=told_lines(lines))


Point = tuple[float, Origin]
"""A depth [in] and where it is from."""


def _line(points: Sequence[float | None], planned: float, bare: float, corners: Sequence[int]) -> tuple[Point, ...]:
    known = {at: (depth + bare, Origin.READ) for at, depth in enumerate(points) if depth is not None}
    known |= {at: (planned, Origin.PLANNED) for at in corners if at not in known}
    return tuple(_point(at, known) for at in range(len(points)))


def _point(at: int, known: dict[int, Point]) -> Point:
    if at in known:
        return known[at]
    low, high = max(one for one in known if one < at), min(one for one in known if one > at)
    first, last = known[low][0], known[high][0]
    return first + (last - first) * (at - low) / (high - low), Origin.BETWEEN


def _lacking(opening: Opening, kind: Kind) -> tuple[Place, ...]:
    """Return the corners whose depth was not read."""
    return tuple(
        place
        for place in measure_places(opening)
        if place.kind is kind and place.is_corner and reading_at(place, opening.readings) is None
    )


def _lacking_findings(opening: Opening, measured: Measured | None, about: Subject) -> list[Finding]:
    found: list[Finding] = []
    inside, outside = (_lacking(opening, kind) for kind in (Kind.INTERIOR_DEPTH, Kind.EXTERIOR_DEPTH))
    if measured is None or measured.interior_depth is None:
        found.append(NothingMeasured(subject=about))
    elif inside:
        found.append(HalfMeasured(subject=about, places=inside))
    if measured and measured.exterior_depth and outside:
        found.append(HalfMeasured(subject=about, is_outside=True, places=outside))
    return found
