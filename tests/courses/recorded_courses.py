"""Courses of the examples' elevations, all on record: lines, what they miss, cures, the story pole and its picture.

That a plan is the best there is, brute force and a solver say; what it is made of, the tests by hand. Renew it where
something is meant to come out otherwise, and read the lines that are other ones now:

    python tests/courses/recorded_courses.py
"""

from __future__ import annotations

import json
import sys
from functools import cache
from pathlib import Path
from typing import Any

if __name__ == "__main__":
    sys.path[:0] = [str(Path(__file__).parents[2]), str(Path(__file__).parents[1]), str(Path(__file__).parent)]

from shaken import plain

from jambs.courses.cladding_words import assumed_of, cladding_words, limit_words
from jambs.courses.plan import CoursePlan, plan_elevation
from jambs.courses.plan_words import cure_words, proof_words, start_cure_words
from jambs.courses.pole_words import datum_words, mark_words, running_text
from jambs.courses.story_pole import story_pole
from jambs.courses.views import pole_figure
from jambs.findings import FindingsError
from jambs.job import Job, read_job
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.on_elevation import kits_on
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows

RECORD = Path(__file__).with_name("recorded_courses.json")
EXAMPLES = Path(__file__).parents[2] / "examples"
HOUSES = ("harbour-house", "hillside-house")


@cache
def house(name: str) -> tuple[Job, tuple[Kit, ...]]:
    job = read_job(EXAMPLES / name)
    return job, tuple(make_kit(placement, job) for placement in place_windows(job))


def told(name: str) -> dict[str, Any]:
    """Return all that is planned on every elevation of an example, as plain values."""
    job, kits = house(name)
    found = {}
    for place, entry in job.outside.elevations.items():
        try:
            found[place] = _plan(plan_elevation(place, entry, kits_on(place, entry, kits), job))
        except FindingsError as error:
            found[place] = [(one.code, one.sentence(job.units)) for one in error.findings]
    return {place: plain(one) for place, one in found.items()}


def _plan(plan: CoursePlan) -> Any:
    grid, pole = plan.grid, story_pole(plan)
    return [
        plan,
        plan.courses,
        [one.sentence(grid.units) for one in plan.findings],
        (cladding_words(plan.cladding, grid.units), limit_words(plan.cladding, grid.units)),
        assumed_of(plan.cladding, grid.units),
        (proof_words(plan), start_cure_words(plan), [cure_words(one, grid) for one in plan.missed]),
        (datum_words(pole), pole.length, [(running_text(one, grid), mark_words(one, grid)) for one in pole.marks]),
        pole_figure(pole),
    ]


def main() -> None:
    """Renew the record."""
    lines = [f" {json.dumps(name)}: {json.dumps(told(name))}" for name in HOUSES]
    RECORD.write_text("{\n" + ",\n".join(lines) + "\n}\n", encoding="utf-8")


if __name__ == "__main__":
    main()
