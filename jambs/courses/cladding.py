"""A cladding's limits: what may be seen of a course, from the table of its kind and length or from its boards."""

from __future__ import annotations

import csv
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from jambs.courses.findings import (
    ClapboardsLapShort,
    ExposurePastTable,
    LeastPastGreatest,
    NoExposureLeft,
    NoRowOfExposures,
)
from jambs.findings import FindingsError, Subject
from jambs.job.models.openings import Assumed
from jambs.job.models.outside import CladdingEntry, CladdingKind, Coursing
from jambs.length import HALF_64TH, MM_PER_INCH, Grid, Units, length_text

GREATEST_CHANGE = {Units.INCH: 1 / 2, Units.MM: 12 / MM_PER_INCH}
"""Between neighbouring courses [in]; common practice, no source."""
UNSEEN_CHANGE = {Units.INCH: 1 / 16, Units.MM: 2 / MM_PER_INCH}
"""Between neighbouring courses: nobody sees it [in]; common practice, no source."""
LEAST_TOP = 4.0
"""A cut course under the eave shows at least this, or a whole least exposure [in]; common practice, no source."""
PRACTICE = "common practice, no source; the job gives none"
LEAST_CLAPBOARD_LAP = 1.0
"""Bevel siding laps at least 1 in (naval training manual for builders, NAVEDTRA 14044, chapter 4)."""


SOME_ELEVATION = Subject.elevation("")
"""What a cladding belongs to is known where its elevation is planned."""


class CourseError(FindingsError):
    """Courses that cannot be planned."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TableRow:
    """The greatest exposure of one kind and length of shingle [in], and where it is from."""

    kind: CladdingKind
    length: float
    coursing: Coursing
    greatest: float
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Cladding:
    """What may be seen of a course: ``ranges`` of exposures, least → greatest, ascending [in].

    ``wanted``: what one would like to see. ``gap``: upper edge of a head casing → butts above it, None for the trim's.
    ``least_top``: the least that a cut course under the eave shows. ``source`` says where the limits are from.
    """

    words: str
    ranges: tuple[tuple[float, float], ...]
    wanted: float
    greatest_change: float
    unseen_change: float
    tolerance: float
    gap: float | None
    least_top: float
    source: str
    assumed: tuple[Assumed, ...]

    def exposures(self, grid: Grid) -> tuple[int, ...]:
        """Return the exposures on a grid, in its steps, ascending; a range that holds no step gives its nearest."""
        counts: set[int] = set()
        for low, high in self.ranges:
            first, last = grid.count(grid.up(low)), grid.count(high)
            last -= grid.at(last) > high + HALF_64TH
            counts |= set(range(first, last + 1)) or {grid.count(low)}
        return tuple(sorted(counts))


@cache
def exposure_table() -> tuple[TableRow, ...]:
    """Return the table of greatest exposures of wood shingles and shakes."""
    text = files("jambs.data").joinpath("shingle_exposures.csv").read_text(encoding="utf-8")
    return tuple(
        TableRow(
            kind=CladdingKind(row["kind"]),
            length=float(row["length_in"]),
            coursing=Coursing(row["coursing"]),
            greatest=float(row["greatest_exposure_in"]),
            source=row["source"],
        )
        for row in csv.DictReader(text.splitlines())
    )


def greatest_exposure(kind: CladdingKind, *, length: float, coursing: Coursing) -> TableRow:
    """Return the table's row for shingles or shakes of a length [in].

    Raises:
        CourseError: the table has no such row.
    """
    rows = [row for row in exposure_table() if row.kind is kind]
    for row in rows:
        if abs(row.length - length) < HALF_64TH and row.coursing is coursing:
            return row
    had = tuple((row.length, row.coursing) for row in rows)
    raise CourseError(NoRowOfExposures(subject=SOME_ELEVATION, kind=kind, length=length, coursing=coursing, had=had))


def resolve_cladding(entry: CladdingEntry, *, units: Units) -> Cladding:
    """Resolve what the job says of a cladding into limits, all that was assumed noted.

    Raises:
        CourseError: the limits leave no exposure.
    """
    ranges, words, source = (_shingles if entry.kind.is_shingle else _boards)(entry, units)
    assumed: list[Assumed] = []

    def or_usual(what: str, given: float | None, usual: float, why: str = PRACTICE) -> float:
        if given is None:
            assumed.append(Assumed(what=what, value=length_text(usual, units=units), why=why))
            return usual
        return given

    greatest = ranges[-1][1]
    return Cladding(
        words=words,
        ranges=ranges,
        wanted=or_usual("wanted exposure", entry.wanted_exposure, greatest, "the greatest allowed: fewest courses"),
        greatest_change=or_usual("greatest change of exposure", entry.greatest_change, GREATEST_CHANGE[units]),
        unseen_change=or_usual("unseen change of exposure", entry.unseen_change, UNSEEN_CHANGE[units]),
        tolerance=entry.line_tolerance,
        gap=entry.gap_over_flashing,
        least_top=min(LEAST_TOP, ranges[0][0]),
        source=source,
        assumed=tuple(assumed),
    )


Limits = tuple[tuple[tuple[float, float], ...], str, str]


def _shingles(entry: CladdingEntry, units: Units) -> Limits:
    assert entry.length is not None and entry.least_exposure is not None
    row = greatest_exposure(entry.kind, length=entry.length, coursing=entry.coursing)
    length, most = (length_text(one, units=units) for one in (entry.length, row.greatest))
    if entry.greatest_exposure is not None and entry.greatest_exposure > row.greatest + HALF_64TH:
        raise CourseError(
            ExposurePastTable(
                subject=SOME_ELEVATION,
                kind=entry.kind,
                length=entry.length,
                coursing=entry.coursing,
                asked=entry.greatest_exposure,
                greatest=row.greatest,
                source=row.source,
            )
        )
    greatest = entry.greatest_exposure or row.greatest
    words = f"{length} {entry.kind.value}, {entry.coursing.value} course"
    return ((_range(entry.least_exposure, greatest),), words, f"at most {most}: {row.source}")


def _boards(entry: CladdingEntry, units: Units) -> Limits:
    least_lap = entry.least_lap or 0.0
    if entry.kind is CladdingKind.CLAPBOARDS and least_lap < LEAST_CLAPBOARD_LAP - HALF_64TH:
        raise CourseError(ClapboardsLapShort(subject=SOME_ELEVATION, lap=least_lap, least=LEAST_CLAPBOARD_LAP))
    most_lap = least_lap if entry.greatest_lap is None else entry.greatest_lap
    ranges = []
    for width in sorted(entry.widths):
        low = max(width - most_lap, entry.least_exposure or 0.0)
        high = min(width - least_lap, entry.greatest_exposure or width)
        if low <= high + HALF_64TH:
            ranges.append((low, high))
    if not ranges:
        raise CourseError(NoExposureLeft(subject=SOME_ELEVATION))
    widths = ", ".join(length_text(width, units=units) for width in sorted(entry.widths))
    laps = " to ".join(dict.fromkeys(length_text(lap, units=units) for lap in (least_lap, most_lap)))
    return tuple(ranges), f"{widths} {entry.kind.value}, lapped {laps}", "board widths and laps of the job"


def _range(least: float, greatest: float) -> tuple[float, float]:
    if least > greatest + HALF_64TH:
        raise CourseError(LeastPastGreatest(subject=SOME_ELEVATION, least=least, greatest=greatest))
    return least, greatest
