"""What a reading was taken of: it holds for that thing, and is void when the window or the wall is another one.

All sizes are held to what the tape goes between, and to nothing else: a new inside finish leaves the depths outside
as they were read.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from jambs.findings import Subject
from jambs.job.models.fields import Size
from jambs.job.models.gang import Gang
from jambs.job.models.layers import Role
from jambs.job.models.openings import Opening
from jambs.job.models.readings import Readings
from jambs.job.models.shape import GOES_WITH, ShapeEntry
from jambs.length import HALF_64TH, Grid
from jambs.parts.readings.changed_since_words import (
    Change,
    Exchanged,
    Layers,
    Moved,
    MovedAlong,
    OtherElevation,
    OtherOpening,
    Taken,
    Thing,
    Value,
)
from jambs.parts.readings.first_read import KEYS, is_read
from jambs.parts.readings.reading_findings import ReadingsOfAlike, ReadingsSetAside
from jambs.place.placement import Placement


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredAgainst:
    """An opening as it was planned when its readings were first read [in].

    ``overhang``: sheathing plane → flange plane. ``structure``: inside face of the studs → sheathing plane.
    ``inner_layers``: those inside the framing; ``outer_layers``: from the sheathing to the trim plane. ``room``: where
    it was, ``elevation`` and ``from_left``: on which side of the house and how far along the wall [in], as far as they
    were said. ``alike``: marks of openings that the job says the same of, itself among them, in its order. ``shape``:
    of a frame that is no rectangle, its sizes by name. ``mulls``: of ganged units, where each begins and how wide
    it is; empty in earlier records. ``grid``: of the shop, to which the faces of the wall and the place of the window
    were rounded; None where that is not known.
    """

    window: str
    frame: tuple[float, float]
    jamb_depth: float
    frame_projection: float
    overhang: float
    structure: float
    inner_layers: Layers
    outer_layers: Layers
    room: str = ""
    elevation: str = ""
    from_left: float | None = None
    alike: tuple[str, ...] = ()
    shape: Layers = ()
    mulls: Layers = ()
    grid: Grid | None = None

    @classmethod
    def of(cls, placement: Placement, others: Iterable[Placement] = (), *, grid: Grid | None = None) -> MeasuredAgainst:
        """Note what the depths of a planned opening depend on; ``others``: all openings of the house; ``grid``: the
        shop's, on which they are placed.
        """
        opening, planes = placement.opening, placement.planes
        inner = [one.layer for one in planes.layers if one.outer <= planes.stud_face + HALF_64TH]
        outer = [one.layer for one in planes.layers if one.inner >= planes.sheathing_plane - HALF_64TH]
        return cls(
            window=opening.window_name,
            frame=(opening.frame.width, opening.frame.height),
            jamb_depth=opening.window.jamb_depth,
            frame_projection=opening.window.frame_projection,
            overhang=placement.overhang,
            structure=planes.sheathing_plane - planes.stud_face,
            inner_layers=tuple((one.name, one.thickness) for one in inner if one.role not in STRUCTURE),
            outer_layers=tuple((one.name, one.thickness) for one in outer if one.role not in NOT_OUTSIDE),
            room=opening.room,
            elevation=opening.elevation or "",
            from_left=opening.from_left,
            alike=marks_of_alike(placement, others),
            shape=_sizes_of(opening.shape, opening.frame) if opening.shape else (),
            mulls=_places_of(opening.gang) if opening.gang else (),
            grid=grid,
        )


def _sizes_of(shape: ShapeEntry, frame: Size) -> Layers:
    """Return the sizes of a shape by name [in]; of one that has none, how wide it is."""
    kind = " ".join([shape.kind.value, *([f"high at the {shape.high_side.value}"] if shape.high_side else [])])
    sizes = [(f"{kind} {key}", size) for key in GOES_WITH[shape.kind] if isinstance(size := getattr(shape, key), float)]
    return tuple(sizes) or ((kind, frame.width),)


def _places_of(gang: Gang) -> Layers:
    """Return where the mulls and bars of a gang begin and how wide they are, by the units beside them [in]."""
    return tuple(
        size
        for mull in gang.mulls
        for size in ((f"units {mull.before[0]} | {mull.after[0]} at", mull.low), ("wide", mull.between))
    )


STRUCTURE = (Role.FRAMING, Role.SHEATHING)
NOT_OUTSIDE = (*STRUCTURE, Role.CLADDING)
WINDOW = (Thing.WINDOW, Thing.FRAME, Thing.SHAPE)
THINGS: dict[Taken, tuple[Thing, ...]] = {
    Taken.INSIDE: (*WINDOW, Thing.JAMB_DEPTH, Thing.STRUCTURE, Thing.INNER_LAYERS),
    Taken.OUTSIDE: (*WINDOW, Thing.FRAME_PROJECTION, Thing.OUTER_LAYERS),
    Taken.FRAME: WINDOW,
    Taken.MULLS: WINDOW,
}
"""What each reading depends on, beside where the window stands."""
DEPTHS = (Taken.INSIDE, Taken.OUTSIDE)
"""What moves with the window, in its wall and along it."""
NOWHERE_ELSE: Mapping[Taken, str] = {}
"""No reading is known to be of an opening that has another mark now."""
ON_THIS_GRID: Mapping[Taken, Placement] = {}
"""Every reading was taken with the shop's grid as it is."""


def marks_of_alike(placement: Placement, others: Iterable[Placement]) -> tuple[str, ...]:
    """Return the marks of the openings that nothing but their mark and their readings tells from this one, in the order
    of the job; none where it is the only one.
    """
    alike = tuple(one.opening.mark for one in others if _is_alike(one, placement))
    return alike if len(alike) > 1 else ()


def _is_alike(one: Placement, other: Placement) -> bool:
    same = one.opening.room == other.opening.room and one.flange_plane == other.flange_plane
    return same and _of_any_mark(one) == _of_any_mark(other)


def _of_any_mark(placement: Placement) -> Opening:
    return replace(placement.opening, mark="", readings=None, measured=None)


def without_void_readings(
    placement: Placement,
    taken_of: Mapping[Taken, MeasuredAgainst],
    others: Sequence[Placement] = (),
    now_under: Mapping[Taken, str] = NOWHERE_ELSE,
    as_rounded_then: Mapping[Taken, Placement] = ON_THIS_GRID,
) -> Placement:
    """Set aside the readings of an opening that were taken of something else, and say so; the others stay.

    ``taken_of``: what each was first read against; one that is not in it is read now for the first time. ``others``:
    the openings of the house, of which one may be what the mark was when it was read. ``now_under``: the mark that the
    opening has now at which each was read, where that is known to be another one. ``as_rounded_then``: the opening as
    it is now, placed on the shop's grid of when each was read, where that was another one: rounding moves no window.
    """
    readings = placement.opening.readings
    if readings is None:
        return placement
    now = MeasuredAgainst.of(placement, others)
    read = {taken: was for taken, was in taken_of.items() if is_read(readings, taken)}
    changes = {
        taken: _changes(
            taken,
            was,
            MeasuredAgainst.of(as_rounded_then[taken]) if taken in as_rounded_then else now,
            readings,
            [*_other_opening(was, now, others, now_under.get(taken))],
        )
        for taken, was in read.items()
    }
    void = {taken: found for taken, found in changes.items() if found}
    asked = tuple(
        _asked(placement.opening.mark, [was for taken, was in read.items() if taken not in void], now, readings)
    )
    placement = replace(placement, findings=(*asked, *placement.findings)) if asked else placement
    if as_rounded_then:
        placement = replace(placement, off_by_grid=_off_by_grid(placement, as_rounded_then))
    if not void:
        return placement
    kept = readings.model_copy(update={key: None for taken in void for key in KEYS[taken]})
    opening = replace(
        placement.opening,
        readings=kept if any(is_read(kept, taken) for taken in Taken) else None,
        measured=None if Taken.INSIDE in void else placement.opening.measured,
    )
    told = tuple(_told(why, void, placement.opening.mark, readings) for why in dict.fromkeys(void.values()))
    return replace(placement, opening=opening, findings=(*told, *placement.findings))


def _off_by_grid(now: Placement, then: Mapping[Taken, Placement]) -> tuple[float, float]:
    """Return how much deeper an opening is planned on the grid of when it was read: inside, outside [in]."""
    inside, outside = then.get(Taken.INSIDE, now), then.get(Taken.OUTSIDE, now)
    return inside.interior_depth - now.interior_depth, outside.exterior_depth - now.exterior_depth


def _asked(
    mark: str, kept: Iterable[MeasuredAgainst], now: MeasuredAgainst, readings: Readings
) -> Iterator[ReadingsOfAlike]:
    """Ask of readings that stay whether marks were exchanged: openings that are alike stand in another order."""
    if any(_order(was.alike, now.alike) != _order(now.alike, was.alike) for was in kept):
        yield ReadingsOfAlike(subject=Subject.opening(mark), date=readings.date, alike=now.alike)


def _order(some: tuple[str, ...], others: tuple[str, ...]) -> list[str]:
    return [mark for mark in some if mark in others]


def _told(
    why: tuple[Change, ...], void: Mapping[Taken, tuple[Change, ...]], mark: str, readings: Readings
) -> ReadingsSetAside:
    """Say it once of all readings that fell for the same changes."""
    what = tuple(taken for taken, changes in void.items() if changes == why)
    return ReadingsSetAside(subject=Subject.opening(mark), what=what, date=readings.date, changes=why)


def _changes(
    taken: Taken, was: MeasuredAgainst, now: MeasuredAgainst, readings: Readings, other: Sequence[OtherOpening]
) -> tuple[Change, ...]:
    """What changed of all that a reading depends on; a depth taken to the bare framing knows no finish.

    ``other``: the opening that it is of, if it is none of this one; then none moved along its wall.
    """
    things = [one for one in THINGS[taken] if readings.wall_finish or one is not Thing.INNER_LAYERS]
    moved = _moved(was, now) if taken in DEPTHS else ()
    along = _moved_along(was, now) if taken in DEPTHS and not other else ()
    exchanged = _exchanged(was, now, things)
    if taken is Taken.MULLS and was.mulls and not exchanged:
        exchanged = _exchanged(was, now, [Thing.MULLS])
    return (*moved, *along, *exchanged, *other)


def _other_opening(
    was: MeasuredAgainst, now: MeasuredAgainst, others: Sequence[Placement], now_under: str | None
) -> Iterator[OtherOpening]:
    """Find the opening that a reading is of where marks were exchanged and the reading stayed with its mark.

    A room that is only called otherwise now is no room of another opening, and the reading holds.
    """
    other_room = was.room if was.room != now.room else ""
    if now_under:
        yield OtherOpening(mark=now_under, room=other_room)
    elif was.room and other_room:
        there = (one.opening for one in others if one.opening.room == was.room)
        yield from (OtherOpening(mark=one.mark, room=was.room) for one in list(there)[:1])
    elif _is_along(was, now):
        there = (one.opening for one in others if _is_at(one.opening, was))
        yield from (OtherOpening(mark=one.mark) for one in list(there)[:1])


def _is_at(opening: Opening, was: MeasuredAgainst) -> bool:
    """Say whether an opening is where a reading was taken: on that elevation, as far along it."""
    is_said = opening.from_left is not None and was.from_left is not None
    return is_said and (opening.elevation or "") == was.elevation and _is_same(opening.from_left, was.from_left)


def _is_along(was: MeasuredAgainst, now: MeasuredAgainst) -> bool:
    return was.elevation != now.elevation or not _is_same(was.from_left, now.from_left)


def _moved(was: MeasuredAgainst, now: MeasuredAgainst) -> Iterator[Moved]:
    outward = now.overhang - was.overhang
    if abs(outward) > HALF_64TH:
        yield Moved(outward=outward)


def _moved_along(was: MeasuredAgainst, now: MeasuredAgainst) -> Iterator[OtherElevation | MovedAlong]:
    """Say how far an opening moved along its wall, where it is another hole there: nearer, the plan was put right."""
    if was.elevation and now.elevation and was.elevation != now.elevation:
        yield OtherElevation(was=was.elevation, now=now.elevation)
    elif was.from_left is not None and now.from_left is not None:
        along = now.from_left - was.from_left
        if abs(along) >= was.frame[0]:
            yield MovedAlong(to_the_right=along)


def _exchanged(was: MeasuredAgainst, now: MeasuredAgainst, things: Sequence[Thing]) -> tuple[Change, ...]:
    pairs = ((thing, _value(was, thing), _value(now, thing)) for thing in things)
    return tuple(Exchanged(thing=thing, was=one, now=two) for thing, one, two in pairs if not _is_same(one, two))


def _value(one: MeasuredAgainst, thing: Thing) -> Value:
    values: dict[Thing, Value] = {
        Thing.WINDOW: one.window,
        Thing.FRAME: one.frame,
        Thing.SHAPE: one.shape,
        Thing.JAMB_DEPTH: one.jamb_depth,
        Thing.FRAME_PROJECTION: one.frame_projection,
        Thing.STRUCTURE: one.structure,
        Thing.INNER_LAYERS: one.inner_layers,
        Thing.OUTER_LAYERS: one.outer_layers,
        Thing.MULLS: one.mulls,
    }
    return values[thing]


def _is_same(one: Any, other: Any) -> bool:
    if isinstance(one, float) and isinstance(other, float):
        return abs(one - other) <= HALF_64TH
    if isinstance(one, tuple) and isinstance(other, tuple):
        return len(one) == len(other) and all(map(_is_same, one, other))
    return bool(one == other)
