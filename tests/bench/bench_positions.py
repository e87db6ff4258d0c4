"""How long the positions of a drawn window take, beside the floor of the same run: the parametric sweep.

Forty positions of three sections each, with both limits and the temperature factors. Each drawn position is placed,
its parts are made and its sections are cut as well. Run by hand, one core:
``OMP_NUM_THREADS=1 python tests/bench/bench_positions.py``.
"""

import sys
import time
from collections.abc import Callable
from pathlib import Path

sys.path[:0] = [str(Path(__file__).parents[1] / "study"), str(Path(__file__).parents[2])]

from heat_cases import FRAMES, HEAD, JAMB, SILL, WALLS  # noqa: E402
from retired_model import sweep  # noqa: E402

from jambs.job import Job, read_job  # noqa: E402
from jambs.place.solve import place_windows  # noqa: E402
from jambs.study.at_position import WindowInWall, study_at, subject_of  # noqa: E402
from jambs.study.placement_study import study_placements  # noqa: E402
from jambs.study.sweep import Studied  # noqa: E402

COUNT = 40


def seconds(run: Callable[[], object]) -> float:
    """Time of the processor: others may be using the machine. [s]"""
    start = time.process_time()
    run()
    return time.process_time() - start


def drawn(subject: WindowInWall) -> None:
    """Forty positions from the least interior depth that is milled to the greatest flange plane."""
    studied = Studied(subject)
    low = max(studied.low, subject.opening.window.jamb_depth + subject.job.limits.least_interior_depth)
    step = (studied.high - low) / (COUNT - 1)
    for place in range(COUNT):
        study_at(subject, low + place * step)


def main() -> None:
    """Print times and ratios."""
    job: Job = read_job(Path(__file__).parents[2] / "examples" / "harbour-house")
    placements = place_windows(job)
    floor = min(seconds(lambda: sweep(WALLS["2x6 + 4 in"], FRAMES["wood"], [JAMB, SILL, HEAD])) for _ in range(3))
    print(f"parametric sweep, {COUNT} positions: {floor:.2f} s")
    for name in ("casement", "tilt-in"):
        lead = next(one for one in placements if one.opening.window_name == name)
        subject = subject_of(lead.opening, lead.planes, job)
        taken = min(seconds(lambda subject=subject: drawn(subject)) for _ in range(3))  # type: ignore[misc]
        print(f"drawn {name}, {COUNT} positions: {taken:.2f} s, {taken / floor:.2f} of the floor")
    whole = seconds(lambda: study_placements(placements, job))
    print(f"whole comparison of the house: {whole:.1f} s, {whole / floor:.1f} floors")


if __name__ == "__main__":
    main()
