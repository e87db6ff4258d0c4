"""The outside of the example houses, planned once."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from jambs.app.chain import make_kits
from jambs.job import Job, read_job
from jambs.outside.house import PlannedHouse, plan_house
from jambs.outside.plan import PlannedOutside, plan_outside
from jambs.parts.kit.kit import Kit

EXAMPLES = Path(__file__).parents[1] / "examples"
HOUSES = ("harbour-house", "hillside-house")
ELEVATIONS = (("harbour-house", "north"), ("harbour-house", "west"), ("hillside-house", "north"))


@cache
def house(name: str) -> tuple[Job, tuple[Kit, ...], PlannedOutside]:
    job = read_job(EXAMPLES / name)
    kits = make_kits(job)
    return job, kits, plan_outside(kits, job)


@cache
def planned(name: str) -> tuple[Job, PlannedHouse]:
    """An example house, planned whole."""
    job, kits, _ = house(name)
    return job, plan_house(kits, job)
