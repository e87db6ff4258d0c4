"""The example house, its kits, and how they are fastened."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from jambs.job import Job, read_job
from jambs.job.models.outside import ElevationEntry, FastenerEntry, Fixed
from jambs.parts.kit.kit import Kit
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows

HARBOUR_HOUSE = Path(__file__).parents[2] / "examples" / "harbour-house"


@cache
def harbour_house() -> tuple[Job, dict[str, Kit]]:
    job = read_job(HARBOUR_HOUSE)
    return job, {kit.mark: kit for kit in (make_kit(placement, job) for placement in place_windows(job))}


def entry(**keys: object) -> FastenerEntry:
    usual = {"fastener": "long wood screw", "penetration": "1 1/2", "spacing": "16", "from_end": "2"}
    return FastenerEntry.model_validate({**usual, **keys})


def entries(fixed: Fixed, **keys: object) -> dict[Fixed, FastenerEntry]:
    return {fixed: entry(**keys)}


def elevation(**keys: object) -> ElevationEntry:
    cladding = {"kind": "shingles", "length": "18", "least_exposure": "5"}
    return ElevationEntry.model_validate({"start_line": "0", "eave": "8'", "cladding": cladding, **keys})
