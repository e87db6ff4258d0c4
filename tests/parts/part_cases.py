"""Kits made on one side of a limit and on the other.

The base window, by hand: frame 35 1/2 x 47 1/2, faces of 2 1/2, rough opening 1/4 round it, frame reveal 1/8, jamb 3/4:
the jamb box stands 1/4 + 2 1/2 - 1/8 - 3/4 = 1 7/8 off the rough opening. Planned interior depth 4 11/16.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from cases import STOOL, kit_of, placed
from finding_rows import Case

from jambs.findings import FindingsError, Severity, Statement, Subject
from jambs.length import Units
from jambs.parts.readings.as_built import without_odd_readings
from jambs.parts.readings.changed_since_words import Taken
from jambs.parts.readings.measured_against import MeasuredAgainst, without_void_readings
from jambs.sides import Side

W1 = Subject.opening("W1")
NOTE, CHECK, STOP = Severity.NOTE, Severity.CHECK, Severity.STOP
PLANNED = "4 11/16"
THREE_SIDED = {
    **{key: value for key, value in STOOL.items() if key not in ("stool", "apron")},
    "style": "three-sided",
}


def case(side: Side | None = None, **paths: Any) -> Case:
    """All that is said of a changed base window; where a side is named, of the sides only that one."""

    def said() -> list[Statement]:
        try:
            found: tuple[Statement, ...] = kit_of(**paths).findings
        except FindingsError as error:
            found = error.findings
        return [one for one in found if side is None or getattr(one, "side", side) is side]

    return said


def face(side: str, width: str, **paths: Any) -> Case:
    """The base window with another face on one side of its frame."""
    faces = {"left": "2 1/2", "right": "2 1/2", "head": "2 1/2", "sill": "2 1/2", side: width}
    return case(windows__fixed__frame_face=faces, **paths)


def measured(side: Side | None = None, **readings: Any) -> Case:
    return case(side, openings__0__measured={"date": "2026-06-01", **readings})


def narrow(width: str) -> Case:
    """A frame with faces of 4, planned 8 1/32 wide, and what was measured of its width."""
    return case(
        windows__fixed__frame_face="4",
        openings__0__frame="8 1/32 x 47 1/2",
        openings__0__rough_opening=None,
        openings__0__measured={"date": "2026-06-01", "frame_width": [width, width]},
    )


def corners(upper_left: str, upper_right: str, lower_left: str, lower_right: str) -> dict[str, list[str]]:
    return {
        "head": [upper_left, upper_right],
        "sill": [lower_left, lower_right],
        "left": [lower_left, upper_left],
        "right": [lower_right, upper_right],
    }


def level(depth: str) -> dict[str, list[str]]:
    return corners(depth, depth, depth, depth)


def deeper_above(depth: str, below: str = PLANNED) -> dict[str, list[str]]:
    """Both legs taper, head and sill do not."""
    return corners(depth, depth, below, below)


def bent(middle: str) -> dict[str, list[str]]:
    """Three readings a side, the left leg's middle one off the line."""
    return {**{side: [PLANNED] * 3 for side in ("head", "sill", "right")}, "left": [PLANNED, middle, PLANNED]}


def asked(sure: bool) -> Case:
    """A reading one inch too much, believed or not."""
    readings: dict[str, Any] = {"interior_depth": {**bent(PLANNED), "head": [PLANNED, "5 11/16", PLANNED]}}
    if sure:
        readings["sure"] = ["2"]
    placement = placed(openings__0__measured={"date": "2026-06-01", **readings})
    return lambda: without_odd_readings(placement, units=Units.INCH).findings


def held(**paths: Any) -> Case:
    """Readings of the base window after the job was changed."""
    readings = {"openings__0__measured": {"date": "2026-06-01", "interior_depth": level(PLANNED)}}
    taken_of = MeasuredAgainst.of(placed(**readings))
    placement = placed(**readings, **paths)
    return lambda: without_void_readings(placement, dict.fromkeys(Taken, taken_of)).findings


def alike_listed(*marks: str) -> Case:
    """Readings of the base window, when it and others that are alike were listed in this order: W1 and W2 are now."""
    readings = {"openings__0__measured": {"date": "2026-06-01", "interior_depth": level(PLANNED)}}
    placement = placed(**readings)
    second = replace(placement, opening=replace(placement.opening, mark="W2", readings=None, measured=None))
    now = [placement, second]
    taken_of = replace(MeasuredAgainst.of(placement), alike=marks)
    return lambda: without_void_readings(placement, dict.fromkeys(Taken, taken_of), now).findings
