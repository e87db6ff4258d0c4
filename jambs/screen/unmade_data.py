"""What cannot be placed, made or planned: why, and where its fields are; the house stands without it."""

from __future__ import annotations

from jambs.findings import Subject, SubjectKind
from jambs.job.models.openings import Opening
from jambs.parts.kit.on_elevation import floors_of, frame_over_floor, is_on
from jambs.screen.desk import Desk, House
from jambs.screen.spoken_keys import spoken
from jambs.sheets.house_cells import NONE
from jambs.values import Record

TO_SETTLE = "to settle"
STATE: Record = {"kind": "stop", "word": TO_SETTLE}
"""State of an opening that has no parts."""
Place = tuple[Opening, float, float]
"""An opening, its left edge as seen from outside, and the bottom of its frame over the datum [in]."""


def unmade_openings(house: House) -> list[Opening]:
    """Return the openings that cannot be placed or made, in the order of the job."""
    return [one for one in house.job.openings if one.mark in house.unmade] if house.job else []


def unmade_rows(house: House) -> list[Record]:
    """Return them as rows of the list: what of them is known without parts, and why there are none."""
    job = house.job
    return [
        {
            "mark": one.mark,
            "room": one.room,
            "states": [STATE],
            "interior": NONE,
            "exterior": NONE,
            "rip": NONE,
            "window": one.window_name,
            "frame": f"{job.units.text(one.frame.width)} × {job.units.text(one.frame.height)}" if job else "",
            "wall": one.wall.name,
            "why": [*map(spoken, house.unmade[one.mark])],
        }
        for one in unmade_openings(house)
    ]


def unplanned_rows(house: House) -> list[Record]:
    """Return what of the outside cannot be planned: what it is, where its fields are, and why."""
    return [
        {"about": subject.words, "why": spoken(sentence), "section": fields_of(subject)[0]}
        for subject, sentence in house.unplanned
    ]


def fields_of(subject: Subject) -> tuple[str, str]:
    """Return where in a job file it is said what keeps a part of the outside from being planned."""
    return "woods" if subject.kind is SubjectKind.STOCK else "elevations", subject.name


def unmade_on(name: str, house: House) -> list[Place]:
    """Return those that stand on an elevation at a place that the job says."""
    entry = house.job.outside.elevations[name] if house.job else None
    found: list[Place] = []
    for one in unmade_openings(house) if entry else ():
        height = frame_over_floor(one)
        if entry and is_on(name, entry, one) and one.from_left is not None and height is not None:
            found.append((one, one.from_left, floors_of(entry).get(one.mark, 0.0) + height))
    return found


def unmade_record(desk: Desk, mark: str) -> Record | None:
    """Return what a view shows of one such opening; nothing where it is none."""
    house = desk.house()
    row = next((one for one in unmade_rows(house) if one["mark"] == mark), None)
    if row is None or house.job is None:
        return None
    marks = [one.mark for one in house.job.openings]
    at = marks.index(mark)
    return {**row, "number": house.number, "name": house.job.name, "before": marks[at - 1] if at else None,
            "after": marks[at + 1] if at + 1 < len(marks) else None}  # fmt: skip
