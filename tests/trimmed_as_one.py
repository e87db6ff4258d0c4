"""Openings trimmed as one, beside each other in the wall of the base job, for tests of every room."""

from __future__ import annotations

from typing import Any

from cases import STOOL, changed, job_of

from jambs.job import Job
from jambs.parts.kit.kit import Kit
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows

OVER = {"thickness": "3/4", "stock": "poplar"}
OUTSIDE = {"thickness": "1", "stock": "cedar"}


def side_by_side(count: int = 2, wall: str = "5 1/2", **paths: Any) -> dict[str, Any]:
    """Windows of 35 1/2 x 47 1/2 in holes of 36 x 48, with 5 1/2 of framed wall between: W1, W2, … from the left."""
    inside = {**STOOL, "mull_casing": dict(OVER)}
    data = changed(interior_trim__inside=inside, exterior_trim__outside__mull_casing=dict(OUTSIDE))
    first = data["openings"][0]
    for number in range(2, count + 1):
        beside = {"right_of": f"W{number - 1}", "wall": wall}
        data["openings"].append({**first, "mark": f"W{number}", "trim_with": beside})
    for path, value in paths.items():
        *way, last = path.split("__")
        place: Any = data
        for step in way:
            place = place[int(step)] if isinstance(place, list) else place[step]
        if value is None:
            del place[last]
        else:
            place[int(last) if isinstance(place, list) else last] = value
    return data


def run_job(count: int = 2, **more: Any) -> Job:
    return job_of(side_by_side(count, **more))


def run_kits(count: int = 2, **more: Any) -> list[Kit]:
    job = run_job(count, **more)
    return [make_kit(one, job) for one in place_windows(job)]
