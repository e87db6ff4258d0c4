"""How long kits take: one of each sort beside a plain one, and forty plain openings beside another version.

Run by hand: ``python tests/bench/bench_kits.py [FOLDER_OF_ANOTHER_VERSION]``. All figures are processor time, the least
of a few runs; the two versions take turns, each with its own example.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT / "tests"), str(ROOT / "tests" / "bench"), str(ROOT)]

from bench_check import house_of_forty  # noqa: E402
from cases import changed, job_of  # noqa: E402
from gangs import ganged  # noqa: E402

from jambs.parts.make import make_kit  # noqa: E402
from jambs.place.solve import place_windows  # noqa: E402
from jambs.solids import fit_report, model_kit  # noqa: E402

RUNS = 7
MITERED = {"thickness": "3/4", "stock": "poplar", "joint": "miter"}
SHAPED = {"openings__0__rough_opening": None, "openings__0__frame": "36 x 48"}
SORTS: dict[str, dict[str, Any]] = {
    "plain": {},
    "flared": {
        "interior_trim__inside__jamb": MITERED,
        "interior_trim__inside__flare": {"sides": "20 deg", "head": "15 deg", "sill": "10 deg"},
    },
    "stacked": {"position": {"share": "1"}, "interior_trim__inside__stack": "2"},
    "gable": {**SHAPED, "openings__0__shape": {"kind": "gable", "sides": "30"}},
    "three ganged units": ganged(),
}
KITS = (
    "import time; from jambs.job import read_job; from jambs.parts.make import make_kit; "
    "from jambs.place.solve import place_windows; job = read_job('house'); "
    "run = lambda: [make_kit(one, job) for one in place_windows(job)]; run(); spent = []\n"
    f"for _ in range({RUNS}): start = time.process_time(); run(); spent.append(time.process_time() - start)\n"
    "print(min(spent))"
)


def least(run: Callable[[], object]) -> float:
    """Return the least processor time of a few runs, after one that is not counted [s]."""
    run()
    spent = []
    for _ in range(RUNS):
        start = time.process_time()
        run()
        spent.append(time.process_time() - start)
    return min(spent)


def sorts() -> None:
    """Print what one kit of each sort takes, and its solids with their fit report."""
    floor: list[float] = []
    for name, changes in SORTS.items():
        job = job_of(changed(**changes))
        (placement, *_) = place_windows(job)
        kit = make_kit(placement, job)
        taken = [least(lambda: make_kit(placement, job)), least(lambda: fit_report(model_kit(kit, job)))]  # noqa: B023
        floor = floor or taken
        ratios = [one / plain for one, plain in zip(taken, floor, strict=True)]
        print(
            f"{name:20} kit {taken[0] * 1e3:6.2f} ms, {ratios[0]:5.2f} x plain (flared: allowed 5);  "
            f"solids and fit {taken[1] * 1e3:7.1f} ms, {ratios[1]:5.2f} x plain"
        )


def forty(versions: list[Path]) -> None:
    """Print what placing the windows and making the parts of forty openings takes, by each version."""
    with tempfile.TemporaryDirectory() as temporary:
        taken: dict[Path, list[float]] = {version: [] for version in versions}
        for number, version in enumerate(versions):
            house_of_forty(version, Path(temporary) / str(number))
        for _ in range(3):
            for number, version in enumerate(versions):
                done = subprocess.run(
                    [sys.executable, "-c", KITS],
                    check=True,
                    capture_output=True,
                    text=True,
                    cwd=Path(temporary) / str(number),
                    env={"PYTHONPATH": str(version)},
                )
                taken[version].append(float(done.stdout))
    ours = min(taken[versions[0]])
    print(f"forty plain openings: {ours * 1e3:.0f} ms")
    for version in versions[1:]:
        print(f"by {version}: {min(taken[version]) * 1e3:.0f} ms; this one {ours / min(taken[version]):.2f} x")


if __name__ == "__main__":
    sorts()
    forty([ROOT, *map(Path, sys.argv[1:2])])
