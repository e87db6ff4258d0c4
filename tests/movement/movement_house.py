"""The example house, its kits, and a climate."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from jambs.job import Job, read_job
from jambs.job.models.outside import ClimateEntry
from jambs.parts.kit.kit import Kit
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows

HARBOUR_HOUSE = Path(__file__).parents[2] / "examples" / "harbour-house"


@cache
def harbour_house() -> tuple[Job, dict[str, Kit]]:
    job = read_job(HARBOUR_HOUSE)
    return job, {kit.mark: kit for kit in (make_kit(placement, job) for placement in place_windows(job))}


def climate(**airs: str) -> ClimateEntry:
    """A heated house by the sea; 70 F and 40 % give 7.7 % of moisture in the handbook's table."""
    usual = {
        "shop": "70 F, 40 %",
        "inside_winter": "70 F, 30 %",
        "inside_summer": "70 F, 60 %",
        "outside_winter": "30 F, 65 %",
        "outside_summer": "70 F, 65 %",
    }
    return ClimateEntry.model_validate({**usual, **airs})
