"""The loft of the examples, planned once: openings with returns, and doors in one opening with a transom."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

from jambs.app.chain import make_kits
from jambs.job import Job, read_job
from jambs.outside.house import PlannedHouse, plan_house
from jambs.sheets.record import opening_record

LOFT = Path(__file__).parents[2] / "examples" / "quarry-loft"


@cache
def loft() -> tuple[PlannedHouse, Job]:
    job = read_job(LOFT)
    return plan_house(make_kits(job), job), job


@cache
def record(mark: str) -> dict[str, Any]:
    house, job = loft()
    (kit,) = (kit for kit in house.kits if kit.mark == mark)
    return opening_record(kit, grid=job.shop.grid)
