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
from jambs.job.models.outside import CladdingEntry, CladdingKind, Coursing
from jambs.length import HALF_64TH, MM_PER_INCH, Grid, Units

GREATEST_CHANGE = {Units.INCH: 1 / 2, Units.MM: 12 / MM_PER_INCH}
"""Between neighboring courses [in]; common practice, no source."""
UNSEEN_CHANGE = {Units.INCH: 1 / 16, Units.MM: 2 / MM_PER_INCH}
"""Between neighboring courses: nobody sees it [in]; common practice, no source."""
LEAST_TOP = {Units.INCH: 4.0, Units.MM: 100 / MM_PER_INCH}
"""A cut course under the eave shows at least this, or a whole least exposure [in]; common practice, no source."""
LEAST_CLAPBOARD_LAP = {Units.INCH: 1.0, Units.MM: 25 / MM_PER_INCH}
"""Bevel siding laps at least 1 in (naval training manual for builders, NAVEDTRA 14044, chapter 4) [in].

In millimeters the round value near it; common practice, no source.
"""


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

    ``entry``: what the job says; ``row``: the table's, None for boards. ``wanted``: what one would like to see.
    ``gap``: upper edge of a head casing → butts above it, None for the trim's. ``least_top``: the least that a cut
    course under the eave shows.
    """

    entry: CladdingEntry
    row: TableRow | None
    ranges: tuple[tuple[float, float], ...]
    wanted: float
    greatest_change: float
    unseen_change: float
    tolerance: float
    gap: float | None
    least_top: float

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
    """Resolve what the job says of a cladding into limits, with what is usual where it says nothing.

    Raises:
        CourseError: the limits leave no exposure.
    """
    row = _table_row(entry) if entry.kind.is_shingle else None
    ranges = (_shown(entry, row),) if row else _board_ranges(entry, units)
    return Cladding(
        entry=entry,
        row=row,
        ranges=ranges,
        wanted=_given(entry.wanted_exposure, ranges[-1][1]),
        greatest_change=_given(entry.greatest_change, GREATEST_CHANGE[units]),
        unseen_change=_given(entry.unseen_change, UNSEEN_CHANGE[units]),
        tolerance=entry.line_tolerance,
        gap=entry.gap_over_flashing,
        least_top=min(LEAST_TOP[units], ranges[0][0]),
    )


def _given(given: float | None, usual: float) -> float:
    return usual if given is None else given


def _table_row(entry: CladdingEntry) -> TableRow:
    assert entry.length is not None
    return greatest_exposure(entry.kind, length=entry.length, coursing=entry.coursing)


def _shown(entry: CladdingEntry, row: TableRow) -> tuple[float, float]:
    assert entry.length is not None and entry.least_exposure is not None
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
    return _range(entry.least_exposure, entry.greatest_exposure or row.greatest)


def laps_of(entry: CladdingEntry) -> tuple[float, float]:
    """Return the least and the greatest lap of boards [in]."""
    least = entry.least_lap or 0.0
    return least, _given(entry.greatest_lap, least)


def _board_ranges(entry: CladdingEntry, units: Units) -> tuple[tuple[float, float], ...]:
    least_lap, most_lap = laps_of(entry)
    if entry.kind is CladdingKind.CLAPBOARDS and least_lap < LEAST_CLAPBOARD_LAP[units] - HALF_64TH:
        raise CourseError(ClapboardsLapShort(subject=SOME_ELEVATION, lap=least_lap, least=LEAST_CLAPBOARD_LAP[units]))
    ranges = []
    for width in sorted(entry.widths):
        low = max(width - most_lap, entry.least_exposure or 0.0)
        high = min(width - least_lap, entry.greatest_exposure or width)
        if low <= high + HALF_64TH:
            ranges.append((low, high))
    if not ranges:
        raise CourseError(NoExposureLeft(subject=SOME_ELEVATION))
    return tuple(ranges)


def _range(least: float, greatest: float) -> tuple[float, float]:
    if least > greatest + HALF_64TH:
        raise CourseError(LeastPastGreatest(subject=SOME_ELEVATION, least=least, greatest=greatest))
    return least, greatest
