"""Thousands of random kits of all that is made: do they close, and does nothing clash? Run by hand, one core:

``python tests/bench/bench_random_kits.py [kits] [most minutes]``, 2000 kits in an hour if not said. New kits in every
run; every one that fails is printed as the call that makes it, and the run goes on.
"""

import sys
import time
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT / "tests"), str(ROOT)]

from clad import clad_kits  # noqa: E402
from flat_segments import flat_kits, flat_kits_outside, metal_kits  # noqa: E402
from hypothesis import HealthCheck, Phase, given, settings  # noqa: E402
from hypothesis import strategies as st  # noqa: E402
from random_kits import RandomKit, kits  # noqa: E402
from random_openings import built_up_kits, ganged_kits, returned_kits, round_kits, shape_kits  # noqa: E402
from random_runs import run_kits, straight_metal_kits  # noqa: E402

from jambs.length import Units  # noqa: E402
from jambs.solids.fit import fit_report  # noqa: E402
from jambs.solids.model import model_kit  # noqa: E402

FAMILIES: dict[str, st.SearchStrategy[RandomKit]] = {
    "cased, flared or stacked": kits(),
    "shapes": shape_kits(),
    "ganged": ganged_kits(),
    "returned": returned_kits(),
    "built up": built_up_kits(),
    "round": round_kits(),
    "flared round": flat_kits(),
    "flared round outside": flat_kits_outside(),
    "metal round": metal_kits(),
    "metal": straight_metal_kits(),
    "trimmed as one": run_kits(),
    "cladding returned": clad_kits(),
}
AT_ONCE = 10
"""Kits of one family, then it is the next one's turn: so a run that is cut short has seen all of them."""


def fault_of(random: RandomKit) -> str:
    """Say what is wrong with a kit; nothing where it closes."""
    try:
        report = fit_report(model_kit(random.kit, random.job))
    except Exception as error:
        return f"{type(error).__name__}: {error}"
    return "; ".join(fault.sentence(Units.INCH) for fault in report.faults[:3])


def some(family: str, counts: Counter[tuple[str, bool]]) -> None:
    """Try some new kits of a family, and count how many close."""

    @settings(
        max_examples=AT_ONCE,
        deadline=None,
        database=None,
        derandomize=False,
        phases=[Phase.generate],
        suppress_health_check=list(HealthCheck),
    )
    @given(FAMILIES[family])
    def one(random: RandomKit) -> None:
        fault = fault_of(random)
        counts[family, not fault] += 1
        if fault:
            print(f"{family}: {fault}\n  {random!r}\n", flush=True)

    one()


def main(wanted: int, minutes: float) -> int:
    """Try so many kits, in so many minutes at most; the exit code says whether all close."""
    counts: Counter[tuple[str, bool]] = Counter()
    start, spent = time.monotonic(), time.process_time()
    while counts.total() < wanted and time.monotonic() - start < 60 * minutes:
        for family in FAMILIES:
            some(family, counts)
    for family in FAMILIES:
        print(f"{family}: {counts[family, True]} close, {counts[family, False]} do not")
    print(f"{counts.total()} kits in {time.process_time() - spent:.0f} s of the processor")
    return int(any(counts[family, False] for family in FAMILIES))


if __name__ == "__main__":
    sys.exit(main(int((sys.argv[1:] or ["2000"])[0]), float((sys.argv[2:] or ["60"])[0])))
