"""What a reading was taken of: it holds for that thing, and is void when the window or the wall is another one.

All sizes are held to what the tape goes between, and to nothing else: a new inside finish leaves the depths outside
as they were read.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from jambs.findings import Subject
from jambs.job.models.layers import Role
from jambs.job.models.readings import Readings
from jambs.length import HALF_64TH
from jambs.parts.changed_since_words import Change, Exchanged, Layers, Moved, OtherOpening, Taken, Thing, Value
from jambs.parts.first_read import KEYS, is_read
from jambs.parts.reading_findings import ReadingsSetAside
from jambs.place.placement import Placement


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredAgainst:
    """An opening as it was planned when its readings were first read [in].

    ``overhang``: sheathing plane → flange plane. ``structure``: inside face of the studs → sheathing plane.
    ``inner_layers``: those inside the framing; ``outer_layers``: from the sheathing to the trim plane. ``room``: where
    it was, empty where that is not known.
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

    @classmethod
    def of(cls, placement: Placement) -> MeasuredAgainst:
        """Note what the depths of a planned opening depend on."""
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
        )


STRUCTURE = (Role.FRAMING, Role.SHEATHING)
NOT_OUTSIDE = (*STRUCTURE, Role.CLADDING)
WINDOW = (Thing.WINDOW, Thing.FRAME)
THINGS: dict[Taken, tuple[Thing, ...]] = {
    Taken.INSIDE: (*WINDOW, Thing.JAMB_DEPTH, Thing.STRUCTURE, Thing.INNER_LAYERS),
    Taken.OUTSIDE: (*WINDOW, Thing.FRAME_PROJECTION, Thing.OUTER_LAYERS),
    Taken.FRAME: WINDOW,
}
"""What each reading depends on, beside where the window stands."""


def without_void_readings(
    placement: Placement, taken_of: Mapping[Taken, MeasuredAgainst], others: Iterable[Placement] = ()
) -> Placement:
    """Set aside the readings of an opening that were taken of something else, and say so; the others stay.

    ``taken_of``: what each was first read against; one that is not in it is read now for the first time. ``others``:
    the openings of the house, of which one may be what the mark was when it was read.
    """
    readings, now = placement.opening.readings, MeasuredAgainst.of(placement)
    if readings is None:
        return placement
    changes = {
        taken: (*_changes(taken, was, now, readings), *_other_opening(was, now, others))
        for taken, was in taken_of.items()
        if is_read(readings, taken)
    }
    void = {taken: found for taken, found in changes.items() if found}
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


def _told(
    why: tuple[Change, ...], void: Mapping[Taken, tuple[Change, ...]], mark: str, readings: Readings
) -> ReadingsSetAside:
    """Say it once of all readings that fell for the same changes."""
    what = tuple(taken for taken, changes in void.items() if changes == why)
    return ReadingsSetAside(subject=Subject.opening(mark), what=what, date=readings.date, changes=why)


def _changes(taken: Taken, was: MeasuredAgainst, now: MeasuredAgainst, readings: Readings) -> tuple[Change, ...]:
    """What changed of all that a reading depends on; a depth taken to the bare framing knows no finish."""
    things = [one for one in THINGS[taken] if readings.wall_finish or one is not Thing.INNER_LAYERS]
    moved = () if taken is Taken.FRAME else tuple(_moved(was, now))
    return (*moved, *_exchanged(was, now, things))


def _other_opening(was: MeasuredAgainst, now: MeasuredAgainst, others: Iterable[Placement]) -> Iterator[OtherOpening]:
    """Find the opening that a reading is of where marks were exchanged and the reading stayed with its mark.

    A room that is only called otherwise now is no room of another opening, and the reading holds.
    """
    if was.room and was.room != now.room:
        there = (one.opening for one in others if one.opening.room == was.room)
        yield from (OtherOpening(mark=one.mark, room=was.room) for one in list(there)[:1])


def _moved(was: MeasuredAgainst, now: MeasuredAgainst) -> Iterator[Change]:
    outward = now.overhang - was.overhang
    if abs(outward) > HALF_64TH:
        yield Moved(outward=outward)


def _exchanged(was: MeasuredAgainst, now: MeasuredAgainst, things: Sequence[Thing]) -> tuple[Change, ...]:
    pairs = ((thing, _value(was, thing), _value(now, thing)) for thing in things)
    return tuple(Exchanged(thing=thing, was=one, now=two) for thing, one, two in pairs if not _is_same(one, two))


def _value(one: MeasuredAgainst, thing: Thing) -> Value:
    values: dict[Thing, Value] = {
        Thing.WINDOW: one.window,
        Thing.FRAME: one.frame,
        Thing.JAMB_DEPTH: one.jamb_depth,
        Thing.FRAME_PROJECTION: one.frame_projection,
        Thing.STRUCTURE: one.structure,
        Thing.INNER_LAYERS: one.inner_layers,
        Thing.OUTER_LAYERS: one.outer_layers,
    }
    return values[thing]


def _is_same(one: Any, other: Any) -> bool:
    if isinstance(one, float) and isinstance(other, float):
        return abs(one - other) <= HALF_64TH
    if isinstance(one, tuple) and isinstance(other, tuple):
        return len(one) == len(other) and all(map(_is_same, one, other))
    return bool(one == other)
