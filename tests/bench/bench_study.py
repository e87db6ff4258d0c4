"""How long the heat study takes, beside the floor of the same run: scikit-fem on the same cut at an equal error.

Run by hand, one core: ``OMP_NUM_THREADS=1 python tests/bench/bench_study.py``.
"""

import sys
import time
from collections.abc import Callable
from functools import partial
from pathlib import Path

sys.path[:0] = [str(Path(__file__).parents[1] / "study"), str(Path(__file__).parents[2])]

from heat_cases import FRAMES, HEAD, JAMB, SILL, WALLS  # noqa: E402
from peer import peer_solution  # noqa: E402
from retired_cut import build_cut  # noqa: E402
from retired_model import sweep  # noqa: E402

from jambs.study import HeatCut, coupling  # noqa: E402
from jambs.study.regions.grid import Fineness  # noqa: E402

CONVERGED = Fineness(first=0.0005, growth=1.3, largest=0.015)
PEER_GRIDS = [
    Fineness(first=first, growth=growth, largest=largest)
    for first, growth, largest in (
        (0.02, 2, 0.2),
        (0.01, 2, 0.1),
        (0.006, 2, 0.06),
        (0.004, 1.8, 0.05),
        (0.003, 1.7, 0.04),
        (0.0015, 1.5, 0.03),
        (0.00075, 1.35, 0.02),
    )
]


def fastest(run: Callable[[], object], *, times: int = 7) -> float:
    """Shortest of some runs, in time of the processor: others may be using the machine. [s]"""
    taken = []
    for _ in range(times):
        start = time.process_time()
        run()
        taken.append(time.process_time() - start)
    return min(taken)


def peer_time(cut: HeatCut, converged: float, error: float, *, quadratic: bool) -> float:
    """Shortest time in which the peer assembles and solves to the error, on the grid that suits it best. [s]"""
    good = [
        fineness
        for fineness in PEER_GRIDS
        if abs(peer_solution(cut, fineness=fineness, quadratic=quadratic).coupling - converged) <= error
    ]
    runs = [peer_solution(cut, fineness=fineness, quadratic=quadratic) for fineness in good for _ in range(3)]
    return min((run.seconds for run in runs), default=float("inf"))


def compare(wall: str, depth: float) -> None:
    """One cut, one coupling with both limits."""
    cut = build_cut(WALLS[wall], FRAMES["wood"], JAMB, depth)
    converged = peer_solution(cut, fineness=CONVERGED).coupling
    found = coupling(cut.blocks, cut.airs)
    error = abs(found.mean - converged)
    own = fastest(lambda: coupling(cut.blocks, cut.airs))
    linear, quadratic = (peer_time(cut, converged, error, quadratic=each) for each in (False, True))
    print(
        f"{wall}, {1000 * depth:.0f} mm: error {error:.6f} W/mK, both limits {1000 * own:.1f} ms; peer at that error: "
        f"linear {1000 * linear:.1f} ms, quadratic {1000 * quadratic:.1f} ms; ratio {own / min(linear, quadratic):.2f}"
    )


def main() -> None:
    """Print the cuts' ratios and the time of whole sweeps."""
    for wall in WALLS:
        compare(wall, 0.030)
    for wall, build in WALLS.items():
        taken = fastest(partial(sweep, build, FRAMES["wood"], [JAMB, SILL, HEAD]), times=2)
        widths = [
            each.transmittance.half_width
            for side in sweep(build, FRAMES["wood"], [JAMB, SILL, HEAD])
            for each in side.installations
        ]
        print(
            f"{wall}: 40 positions x 3 sides, limits and temperature factor {taken:.2f} s, half-width {max(widths):.5f}"
        )


if __name__ == "__main__":
    main()
