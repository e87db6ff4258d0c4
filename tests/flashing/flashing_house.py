"""The example house and its kits."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from jambs.job import Job, read_job
from jambs.parts.kit.kit import Kit
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows

HARBOUR_HOUSE = Path(__file__).parents[2] / "examples" / "harbour-house"


@cache
def harbour_house() -> tuple[Job, dict[str, Kit]]:
    job = read_job(HARBOUR_HOUSE)
    return job, {kit.mark: kit for kit in (make_kit(placement, job) for placement in place_windows(job))}
