"""The places where the tape is held at an opening: numbered, the same on the measure sheet, in the table, in the job.

Numbers run clockwise from the upper left as seen from inside: first the depths inside, then those outside, then the
frame and the wall.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from jambs.job.measured.point_words import between_words, corner_words, point_words
from jambs.job.models.fields import Model
from jambs.job.models.gang import Gang, Mull, MullKind
from jambs.job.models.openings import Opening
from jambs.job.models.readings import Readings, SideReadings
from jambs.job.models.side_lines import CLOCKWISE, SideLine
from jambs.job.models.trim import InteriorStyle
from jambs.length import whole_up
from jambs.sides import Side

GREATEST_STEP = 30.0
"""Farthest apart two places stand along a side [in]; common practice, no source."""
LEAST_PLACES = 3
NEEDS_A_MIDDLE = GREATEST_STEP / 2
"""An edge of a shape that is shorter is read at its two ends alone [in]; common practice, no source."""
ARC_STEPS = 4
"""One arc is read where it springs, at its crown, and halfway between them."""


class Kind(StrEnum):
    """What is read at a place."""

    INTERIOR_DEPTH = "interior depth"
    EXTERIOR_DEPTH = "exterior depth"
    FRAME_WIDTH = "frame width"
    FRAME_HEIGHT = "frame height"
    DIAGONAL = "diagonal"
    OUT_OF_PLUMB = "out of plumb"
    OUT_OF_LEVEL = "out of level"
    FRAME_FACE = "frame face"
    WALL_FINISH = "wall finish"
    MULL_EDGE = "mull edge"
    MULL_GAP = "mull gap"
    MULL_DEPTH = "depth at mull"
    FINISHED_WIDTH = "finished width"
    FINISHED_HEIGHT = "finished height"


DEPTHS = (Kind.INTERIOR_DEPTH, Kind.EXTERIOR_DEPTH)
FINISHED = (Kind.FINISHED_WIDTH, Kind.FINISHED_HEIGHT)
LEANS = (Kind.OUT_OF_PLUMB, Kind.OUT_OF_LEVEL)


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """One place to measure.

    ``keys``: the ways to its value under ``measured``; a corner ends two sides. ``x``, ``y``: where it is on the frame,
    from the lower left corner as seen from inside, as shares of width and height. ``is_corner``: a depth without which
    an opening is not measured: at a corner, or at the middle of an arc.
    """

    number: int
    kind: Kind
    words: str
    keys: tuple[tuple[str | int, ...], ...]
    x: float
    y: float
    is_corner: bool = False


def place_words(place: Place) -> str:
    """Say what is measured at a place: ``interior depth, head left``."""
    return f"{place.kind.value}, {place.words}" if place.kind in DEPTHS else place.words


def measure_places(opening: Opening) -> tuple[Place, ...]:
    """Return the numbered places of one opening; as many along each side as its readings have, if there are any."""
    readings, around = opening.readings, opening.lines
    lines = {side: line for side, line in around.items() if _has_sill(opening) or side is not Side.SILL}
    inside, outside = (readings.interior_depth, readings.exterior_depth) if readings else (None, None)
    found = [*_around(opening, around, Kind.INTERIOR_DEPTH, _interior_counts(opening, lines), inside)]
    if opening.exterior is not None:
        found += _around(opening, around, Kind.EXTERIOR_DEPTH, _exterior_counts(lines), outside)
    found += [*_frame_places(opening), *_mull_places(opening), *_finished_places(opening)]
    return tuple(replace(place, number=number) for number, place in enumerate(found, start=1))


Lines = Mapping[Side, SideLine]


def _has_sill(opening: Opening) -> bool:
    return opening.interior.style is not InteriorStyle.THREE_SIDED


def _interior_counts(opening: Opening, lines: Lines) -> dict[Side, int]:
    if opening.shape:
        return {side: places_on(line) for side, line in lines.items()}
    return {side: places_along(line.edges[0].length) for side, line in lines.items()}


def _exterior_counts(lines: Lines) -> dict[Side, int]:
    """The corners alone, and of an arc its middle."""
    return {side: 1 + line.runs * (2 if line.is_arc else 1) for side, line in lines.items()}


def places_along(length: float) -> int:
    """Return how many places a side of some length has [in]: its ends, and between them at equal steps."""
    return max(LEAST_PLACES, whole_up(length / GREATEST_STEP) + 1)


def places_on(line: SideLine) -> int:
    """Return how many places a side of a shape has: a short edge its two ends, one arc its crown and quarters too."""
    longest = max(edge.length for edge in line.edges)
    if line.is_arc:
        least = ARC_STEPS if line.runs == 1 else 2
        return 1 + line.runs * max(least, 2 * whole_up(longest / GREATEST_STEP / 2))
    return 1 + line.runs * (1 if longest < NEEDS_A_MIDDLE else places_along(longest) - 1)


def _around(
    opening: Opening, lines: Lines, kind: Kind, counts: dict[Side, int], read: SideReadings | None
) -> Iterator[Place]:
    """Yield the depths clockwise from the upper left; each corner once, with its place in both sides."""
    told = {side: points for side in CLOCKWISE if read and (points := getattr(read, side.value))}
    counts = {**counts, **{side: len(points) for side, points in told.items()}}
    corners: dict[tuple[float, float], Place] = {}
    places: list[Place] = []
    for side in (side for side in CLOCKWISE if side in counts):
        for at in _clockwise(side, counts[side]):
            place = _depth_place(opening, lines, kind, side, at, counts[side])
            corner = corners.get((place.x, place.y))
            if corner is None:
                places.append(place)
                corners[place.x, place.y] = place
            else:
                places[places.index(corner)] = corners[place.x, place.y] = replace(
                    corner, keys=(*corner.keys, *place.keys)
                )
    yield from places


def _clockwise(side: Side, count: int) -> Sequence[int]:
    return range(count) if side in (Side.HEAD, Side.LEFT) else range(count - 1, -1, -1)


def _depth_place(opening: Opening, lines: Lines, kind: Kind, side: Side, at: int, count: int) -> Place:
    line = lines[side]
    x, y = line.point(at, count, of=opening.frame)
    key = "interior_depth" if kind is Kind.INTERIOR_DEPTH else "exterior_depth"
    words = point_words(lines, side, at, count) if opening.shape else _depth_words(side, at, count)
    is_corner = at in line.corners(count)
    return Place(number=0, kind=kind, words=words, keys=((key, side.value, at),), x=x, y=y, is_corner=is_corner)


def _depth_words(side: Side, at: int, count: int) -> str:
    if at in (0, count - 1):
        return corner_words(side, is_first=at == 0)
    return between_words(side.wall_words, side, at, count - 1)


def _frame_places(opening: Opening) -> list[Place]:
    """The frame as it stands and the wall round it; a door has no sill to measure, a shape is not taped across."""
    rows: list[tuple[Kind, str, tuple[str | int, ...], float, float]] = [
        (Kind.FRAME_WIDTH, "frame width at the head", ("frame_width", 0), 0.5, 1.0),
        (Kind.FRAME_WIDTH, "frame width at the sill", ("frame_width", 1), 0.5, 0.0),
        (Kind.FRAME_HEIGHT, "frame height at the left", ("frame_height", 0), 0.0, 0.5),
        (Kind.FRAME_HEIGHT, "frame height at the right", ("frame_height", 1), 1.0, 0.5),
        (Kind.DIAGONAL, "diagonal from lower left", ("diagonals", 0), 0.25, 0.25),
        (Kind.DIAGONAL, "diagonal from lower right", ("diagonals", 1), 0.75, 0.25),
        (Kind.OUT_OF_PLUMB, "wall out of plumb, left", ("out_of_plumb", 0), 0.0, 0.5),
        (Kind.OUT_OF_PLUMB, "wall out of plumb, right", ("out_of_plumb", 1), 1.0, 0.5),
        (Kind.OUT_OF_LEVEL, "frame head out of level", ("out_of_level", 0), 0.5, 1.0),
        (Kind.OUT_OF_LEVEL, "frame sill out of level", ("out_of_level", 1), 0.5, 0.0),
        (Kind.FRAME_FACE, "frame face, left", ("frame_face", "left"), 0.0, 0.5),
        (Kind.FRAME_FACE, "frame face, right", ("frame_face", "right"), 1.0, 0.5),
        (Kind.FRAME_FACE, "frame face, head", ("frame_face", "head"), 0.5, 1.0),
        (Kind.FRAME_FACE, "frame face, sill", ("frame_face", "sill"), 0.5, 0.0),
        (Kind.WALL_FINISH, "wall finish on", ("wall_finish",), 0.5, 0.5),
    ]
    return [
        Place(number=0, kind=kind, words=words, keys=(key,), x=x, y=y)
        for kind, words, key, x, y in rows
        if (y > 0 or _has_sill(opening)) and (kind is Kind.WALL_FINISH or not opening.shape)
    ]


def _bar_words(bar: Mull, gang: Gang) -> str:
    return "transom bar" if len(gang.bars) == 1 else f"transom bar {bar.member} from below"


def _mull_places(opening: Opening) -> Iterator[Place]:
    """Yield where the mulls of ganged units begin, how wide their gaps are, and the depths at head and foot."""
    gang, frame = opening.gang, opening.frame
    if gang is None:
        return
    for at, mull in enumerate(gang.mulls):
        is_bar = mull.kind is MullKind.TRANSOM_BAR
        across = (mull.low + mull.high) / 2
        up = (mull.row + 0.5) / gang.rows if mull.row else 0.25
        x, y = (0.5, across / frame.height) if is_bar else (across / frame.width, up)
        name = _bar_words(mull, gang) if is_bar else f"mull of units {mull.before[0]} | {mull.after[0]}"
        start = "bottom of the frames" if is_bar else "left edge of the frames"
        yield Place(number=0, kind=Kind.MULL_EDGE, words=f"{start} to {name}", keys=(("mull_edges", at),), x=x, y=y)
        yield Place(number=0, kind=Kind.MULL_GAP, words=f"{name}, frame to frame", keys=(("mull_gaps", at),), x=x, y=y)
    for at, mull in enumerate(gang.uprights):
        x = (mull.low + mull.high) / 2 / frame.width
        told = f"of the mull {mull.before[0]} | {mull.after[0]}"
        # Head and foot where they are the opening's own: at a transom bar there is no wall to measure to.
        if mull.row == gang.rows - 1:
            keys = (("mull_depths", 2 * at),)
            yield Place(number=0, kind=Kind.MULL_DEPTH, words=f"depth at the head {told}", keys=keys, x=x, y=1.0)
        if not mull.row and _has_sill(opening):
            keys = (("mull_depths", 2 * at + 1),)
            yield Place(number=0, kind=Kind.MULL_DEPTH, words=f"depth at the foot {told}", keys=keys, x=x, y=0.0)


def _finished_places(opening: Opening) -> list[Place]:
    """Where boards are cut to the opening that another crew finishes: that opening, once it is coated.

    Boards between units go by its width and its height, a stool by its width alone.
    """
    trim = opening.interior
    has_covers = opening.gang is not None and trim.mull_casing is not None
    if trim.returns is None or not (has_covers or trim.stool):
        return []
    rows = (
        (Kind.FINISHED_WIDTH, "finished opening, width, face to face", 0, 0.5, 0.4),
        (Kind.FINISHED_HEIGHT, "finished opening, height, face to face", 1, 0.4, 0.5),
    )
    return [
        Place(number=0, kind=kind, words=words, keys=(("finished_opening", at),), x=x, y=y)
        for kind, words, at, x, y in (rows if has_covers else rows[:1])
    ]


Reading = float | bool


def reading_at(place: Place, readings: Readings | None) -> Reading | None:
    """Return what was read at a place [in], or nothing; the finish counts as read only once depths were."""
    if readings is None:
        return None
    values = (_value(readings, key) for key in place.keys)
    return next((value for value in values if value is not None), None)


def _value(readings: Readings, key: tuple[str | int, ...]) -> Reading | None:
    value: object = readings
    for step in key:
        if value is None:
            return None
        value = getattr(value, str(step)) if isinstance(value, Model) else _item(value, step)
    return value if isinstance(value, float | bool) else None


def _item(value: object, step: str | int) -> object:
    return value[step] if isinstance(value, tuple) and isinstance(step, int) and step < len(value) else None
