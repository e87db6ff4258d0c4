"""The base job with its inside only, its boards priced, and its lots."""

from __future__ import annotations

from typing import Any

from cases import changed, job_of

from jambs.app.chain import make_kits
from jambs.job import Job
from jambs.stock.house.lots import Lot, house_lots

BOARDS: list[dict[str, Any]] = [
    {"nominal": "1x4", "stock": "poplar", "lengths": ["8'", "12'"], "price_per_foot": "2"},
    {"nominal": "1x6", "stock": "poplar", "lengths": ["8'", "12'"], "price": ["24", "36"]},
    {"nominal": "2x6", "stock": "spruce", "lengths": ["12'"], "price_per_foot": "1"},
]


def inside_job(**paths: Any) -> Job:
    """The base job with its inside only, its boards priced."""
    return job_of(changed(**{"shop__boards": BOARDS, "exterior_trim": None, **paths}))


def lots_of(job: Job) -> tuple[Lot, ...]:
    return house_lots(make_kits(job), job)
