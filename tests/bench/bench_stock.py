"""Speed of the cutting planner: each instance in a process of its own, start and imports included.

`python tests/bench/bench_stock.py [group ...] [--solver scipy]`; groups: trim160, trim500, trim2000, jambs5,
jambs10, jambs60, plywood, bins, hard28. The floor is a bare interpreter that imports numpy, run beside each instance.
"""

from __future__ import annotations

import json
import resource
import subprocess
import sys
import time
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "stock")]

import stock_cases as cases  # noqa: E402

from jambs.stock import check_certificate, plan_stock  # noqa: E402
from jambs.stock.planfile import plan_to_dict  # noqa: E402

FILES = {"bins_1d.jsonl": cases.bins, "house_1d.jsonl": cases.house, "jambs_2d.jsonl": cases.jambs}
GROUPS = {
    "trim160": ("house_1d.jsonl", ("house60", "house160", "prop160"), 5.0),
    "trim500": ("house_1d.jsonl", ("house500", "house700", "prop500", "prop700"), 15.0),
    "trim2000": ("house_1d.jsonl", ("house2000",), 15.0),
    "jambs5": ("jambs_2d.jsonl", ("jambs",), 5.0),
    "jambs10": ("jambs_2d.jsonl", ("jambs",), 10.0),
    "jambs60": ("jambs_2d.jsonl", ("jambs",), 60.0),
    "plywood": ("jambs_2d.jsonl", ("ply",), 5.0),
    "bins": ("bins_1d.jsonl", ("t", "u", "N", "HARD"), 60.0),
    "hard28": ("bins_1d.jsonl", ("hard28",), 60.0),
}


def plan_one(file: str, name: str, seconds: float, solver: str | None) -> None:
    """Plan one instance in this process and print its figures as JSON."""
    history: list[tuple[float, int | None, int]] = []
    started = time.monotonic()
    plan = plan_stock(
        FILES[file](name),
        seconds=seconds,
        solver=solver,
        progress=lambda step: history.append((step.seconds, step.cost_cents, step.bound_cents)),
    )
    passed = time.monotonic() - started
    proved = check_certificate(plan_to_dict(plan))
    assert proved == plan.bound.certified_cents, (proved, plan.bound.certified_cents)
    print(
        json.dumps(
            {
                "cost": plan.cost_cents,
                "bound": plan.bound.best_cents,
                "certified": proved,
                "seconds": passed,
                "history": history,
                "megabytes": resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024,
            }
        )
    )


def run_group(group: str, solver: str | None) -> None:
    """Plan every instance of a group, each in its own process, and print a table and a summary."""
    file, starts, seconds = GROUPS[group]
    names = [name for name in cases.records(file) if name.startswith(starts)]
    if group == "bins":
        names = [name for name in names if not name.startswith("hard28")]
    print(f"== {group}: limit {seconds:.0f} s")
    rows = []
    for name in names:
        floor = _wall([sys.executable, "-c", "import numpy"])[0]
        wall, text = _wall([sys.executable, __file__, "--one", file, name, str(seconds), solver or ""])
        row = json.loads(text.splitlines()[-1])
        rows.append((wall, row))
        print(_line(file, name, wall, floor, row), flush=True)
    _summary(rows)


def _wall(command: list[str]) -> tuple[float, str]:
    started = time.monotonic()
    done = subprocess.run(command, capture_output=True, text=True, check=True, cwd=ROOT)
    return time.monotonic() - started, done.stdout


def _line(file: str, name: str, wall: float, floor: float, row: dict[str, float]) -> str:
    record = cases.records(file)[name]
    best = record["ub"] if "ub" in record else record["best_cost_cents"]
    gap = 100 * (row["cost"] - row["bound"]) / max(1, row["bound"])
    past = 100 * (row["cost"] - best) / best
    early = " ".join(f"{at}s {_gap_at(row, at)}" for at in (1, 2, 5, 10) if at < wall)
    return (
        f"{name:24} cost {row['cost']:8} bound {row['bound']:8} gap {gap:6.3f} % over best known {past:+6.3f} % "
        f"wall {wall:6.2f} s = {wall / floor:5.1f} floors, {row['megabytes']:.0f} MB; certified gap at {early}"
    )


def _gap_at(row: dict, seconds: float) -> str:  # type: ignore[type-arg]
    costs = [cost for at, cost, _ in row["history"] if at <= seconds and cost is not None]
    certified = max(1, row["certified"])
    return f"{100 * (costs[-1] - certified) / certified:.3f}%" if costs else "-"


def _summary(rows: list[tuple[float, dict[str, float]]]) -> None:
    walls = sorted(wall for wall, _ in rows)
    gaps = [100 * (row["cost"] - row["bound"]) / max(1, row["bound"]) for _, row in rows]
    proved = sum(row["cost"] == row["bound"] for _, row in rows)
    most = max(row["megabytes"] for _, row in rows)
    print(
        f"   {proved} of {len(rows)} proved optimal; gap mean {sum(gaps) / len(gaps):.3f} % max {max(gaps):.3f} %; "
        f"wall median {walls[len(walls) // 2]:.2f} max {walls[-1]:.2f} s; memory max {most:.0f} MB"
    )


if __name__ == "__main__":
    if sys.argv[1:2] == ["--one"]:
        plan_one(sys.argv[2], sys.argv[3], float(sys.argv[4]), sys.argv[5] or None)
    else:
        chosen = [word for word in sys.argv[1:] if word in GROUPS] or list(GROUPS)
        for one in chosen:
            run_group(one, "scipy" if "scipy" in sys.argv else None)
