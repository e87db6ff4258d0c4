"""The seats of ``parts.json`` against the bodies: each body, put where its seat says, fills its box.

A seat and a body are told from the same cut list by two ways; on a measured wall the trim is tilted in both.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

import pytest

from jambs.geometry import Vector
from jambs.job import read_job
from jambs.length import MM_PER_INCH, Units
from jambs.parts.kit.cut_kit import PlannedForKit, as_cut
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.sheets.record import opening_record
from jambs.solids import availability, kernel
from jambs.solids.model import KitSolids, Solid, model_kit

if missing := availability():
    pytest.skip(missing.code, allow_module_level=True)

EXAMPLES = Path(__file__).parents[2] / "examples"
SAME = 1e-6
"""Boxes nearer than this are one [in]."""


@cache
def houses() -> list[tuple[KitSolids, Any, float]]:
    """Every measured opening of the examples, one more of each: solids, record, inches in a unit of the record."""
    found = []
    for name in ("harbour-house", "hillside-house", "garden-studio"):
        job = read_job(EXAMPLES / name)
        placements = place_windows(job)
        for placement in [one for one in placements if one.opening.measured] + [placements[0]]:
            kit = as_cut(make_kit(placement, job), PlannedForKit())
            unit = 1.0 if job.units is Units.INCH else 1 / MM_PER_INCH
            found.append((model_kit(kit, job), opening_record(kit, grid=job.shop.grid), unit))
    return found


def box_by(seat: Any, solid: Solid, unit: float) -> tuple[Vector, Vector]:
    """Return the box of a body whose corners on the bench (u, v, w) are taken into the wall by a seat [in]."""
    loops = [loop for face in kernel.faces(solid.bench) for loop in face]
    corners = [(u, v, -w) for loop in loops for u, w, v in loop]  # the kernel's axes are (u, v, -w)
    origin = [value * unit for value in seat["origin"]]
    ways = (seat["along"], seat["across"], seat["through"])
    points = [
        [origin[i] + sum(size * way[i] for size, way in zip(at, ways, strict=True)) for i in range(3)] for at in corners
    ]
    low, high = ([pick(point[i] for point in points) for i in range(3)] for pick in (min, max))
    return (low[0], low[1], low[2]), (high[0], high[1], high[2])


def test_every_body_is_where_its_seat_says() -> None:
    off = []
    for solids, record, unit in houses():
        seats = {part["mark"]: part["seat"] for part in record["parts"]}
        for solid in solids.parts:
            low, high = box_by(seats[solid.name], solid, unit)
            told = max(
                abs(a - b) for one, two in ((low, solid.low), (high, solid.high)) for a, b in zip(one, two, strict=True)
            )
            if told > SAME:
                off.append((solid.name, round(told, 4)))
    assert off == []


def test_some_bodies_are_tilted() -> None:
    """The test above would see nothing where no wall leans: of the trim on measured walls some is tilted."""
    tilted = [
        part["mark"]
        for _, record, _ in houses()
        for part in record["parts"]
        if all(0 < abs(way[2]) < 1 - SAME for way in (part["seat"]["through"],))
    ]
    assert len(tilted) > 10


def test_a_seat_is_a_rotation() -> None:
    for _, record, _ in houses():
        for part in record["parts"]:
            a, b, c = (part["seat"][name] for name in ("along", "across", "through"))
            assert [sum(x * x for x in way) for way in (a, b, c)] == pytest.approx([1.0, 1.0, 1.0])
            cross = [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
            assert [abs(one) for one in cross] == pytest.approx([abs(one) for one in c], abs=1e-9)
