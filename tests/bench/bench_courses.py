"""How long the courses of four elevations with forty openings take, beside the floor of the same run.

Run by hand: ``python tests/bench/bench_courses.py``. Two stories of five openings each side, sills and heads at random
on 1/8 in, so that lines are missed and cures are looked for; 1/32 in grid. The floor: writing every state of the
elevation (height by exposure) once. Aim: 0.5 s for the forty.
"""

import random
import sys
import time
from pathlib import Path

sys.path[:0] = [str(Path(__file__).parents[1] / "courses"), str(Path(__file__).parents[2])]

import numpy as np  # noqa: E402
from houses_outside import elevation, opening, plan  # noqa: E402

from jambs.courses.elevation import Elevation  # noqa: E402
from jambs.courses.plan import course_task  # noqa: E402

SHINGLES = {"kind": "shingles", "length": "18", "least_exposure": "5", "wanted_exposure": "7"}
AIM = 0.5


def side(seed: int) -> Elevation:
    """Return an elevation of ten openings, 19 ft high."""
    draw = random.Random(seed)
    openings = []
    for number in range(10):
        sill = (number % 2) * 110 + draw.choice([20, 28, 30, 36, 42, 48]) + draw.randint(0, 7) / 8
        head = sill + draw.choice([36, 42, 48, 54]) + draw.randint(0, 7) / 8
        openings.append(opening(f"W{seed * 10 + number:02}", sill, head, left=60.0 * number))
    return elevation(*openings, start=-8.0, eave=222.0)


def floor_of(sides: list[Elevation]) -> float:
    """Return the time to write every state of the elevations once [s]."""
    found = plan(sides[0], SHINGLES)
    start = time.perf_counter()
    for one in sides:
        task = course_task(one, found.cladding, one.wanted, found.grid)
        np.full((task.top + task.exposures[-1] + 1, task.span), 1, dtype=np.int64)
    return time.perf_counter() - start


def main() -> None:
    """Print the time of four elevations, three times over."""
    sides = [side(seed) for seed in range(4)]
    floor = floor_of(sides)
    for _ in range(3):
        start = time.perf_counter()
        plans = [plan(one, SHINGLES) for one in sides]
        taken = time.perf_counter() - start
        missed = sum(len(one.missed) for one in plans)
        words = "within" if taken <= AIM else "past"
        print(
            f"40 openings, 4 elevations: {taken * 1000:5.0f} ms, {words} {AIM:g} s; floor {floor * 1000:4.0f} ms, "
            f"{taken / floor:.0f} x; {missed} lines missed"
        )


if __name__ == "__main__":
    main()
