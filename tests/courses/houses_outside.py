"""Elevations by hand, and the kits of the example house."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path

from jambs.courses.cladding import resolve_cladding
from jambs.courses.elevation import Elevation, OpeningOnElevation
from jambs.courses.plan import CoursePlan, plan_courses
from jambs.job import Job, read_job
from jambs.job.models.outside import CladdingEntry, ElevationEntry
from jambs.length import GRIDS, Grid, Units
from jambs.parts.kit.kit import Kit
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows

HARBOUR_HOUSE = Path(__file__).parents[2] / "examples" / "harbour-house"


@cache
def harbour_house() -> tuple[Job, tuple[Kit, ...]]:
    job = read_job(HARBOUR_HOUSE)
    return job, tuple(make_kit(placement, job) for placement in place_windows(job))


def opening(mark: str, sill: float | None, head: float, left: float = 0.0) -> OpeningOnElevation:
    """An opening whose trim reaches from its sill line to 3/8 under its head line."""
    box = (left, sill or 0.0, left + 40.0, head - 0.375)
    return OpeningOnElevation(mark=mark, frame=box, trim=box, head=head, sill=sill, is_placed=True)


def elevation(*openings: OpeningOnElevation, start: float = 0.0, eave: float = 108.0) -> Elevation:
    return Elevation(name="north", start_line=start, eave=eave, width=240.0, openings=openings)


SHINGLES = {"kind": "shingles", "length": "18", "least_exposure": "5", "wanted_exposure": "7"}


def elevation_entry(**keys: object) -> ElevationEntry:
    return ElevationEntry.model_validate({"start_line": "-8", "eave": "9'-0", "cladding": SHINGLES, **keys})


def plan(
    place: Elevation, cladding: Mapping[str, object], *, units: Units = Units.INCH, grid: Grid = GRIDS["1/32"]
) -> CoursePlan:
    entry = CladdingEntry.model_validate(cladding, context={"units": units})
    return plan_courses(place, resolve_cladding(entry, units=units), grid=grid)
