"""How long a build takes: forty openings on all cores, one opening from a cold start, and ``--help``.

Run by hand: ``python tests/bench/bench_build.py [--solids]``. Each figure stands beside a floor of the same run: a cold
start beside the imports it cannot do without, the help beside a bare interpreter and beside the help of a program of
click that has no verbs. Bytecode is kept, as it is where the program is installed: without it the sources would be
compiled in each run.

Four times a bare interpreter is out of reach of the help: click alone takes 4.1 times, and what the house adds to that
is an eighth of all that is imported, more than half of it for ``pathlib``.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from jambs.app.chain import make_kits, planned

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))

from jambs.app.papers import write_papers  # noqa: E402
from jambs.face import build  # noqa: E402
from jambs.job import Job, read_job  # noqa: E402

HOUSE = ROOT / "examples" / "harbour-house"
SMALL = ROOT / "examples" / "garden-studio"
IMPORTS = "import jambs.app.build, jambs.app.table, typst"
HELP = "from jambs.commands.command_line import main; main()"
CLICK_ALONE = "import click; click.group('jambs')(lambda: None)()"
RUNS = 5


def of_forty(job: Job) -> Job:
    """Repeat the openings of a job until there are forty, each with a mark of its own."""
    many = [replace(one, mark=f"{one.mark}.{turn}") for turn in range(3) for one in job.openings]
    return replace(job, openings=tuple(many[:40]))


def timed(work: Callable[[], object]) -> float:
    """Return the seconds a piece of work takes."""
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def run(*words: str) -> float:
    """Return the least time of a few runs of a Python command in a process of its own [s]; the first keeps bytecode."""
    command = [sys.executable, *words]
    with tempfile.TemporaryDirectory() as bytecode:
        kept = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
        kept["PYTHONPYCACHEPREFIX"] = bytecode

        def once() -> object:
            return subprocess.run(command, check=True, capture_output=True, cwd=ROOT, env=kept)

        once()
        return min(timed(once) for _ in range(RUNS))


def forty(with_solids: bool) -> float:
    """Return the time of all papers of forty openings, those of the house left out [s]."""
    job = of_forty(read_job(HOUSE))
    house = planned(make_kits(job), job)
    with tempfile.TemporaryDirectory() as folder:
        return timed(
            lambda: write_papers(
                house.kits,
                house,
                job,
                Path(folder),
                whole_house=False,
                progress=lambda mark: None,
                with_solids=with_solids,
            )
        )


def cold() -> tuple[float, float]:
    """Return the time of one opening from a cold start, and of the imports alone [s]."""
    with tempfile.TemporaryDirectory() as folder:
        anew = f"import shutil; shutil.rmtree({folder!r}); {HELP}"  # what did not change would not be made again
        words = ("build", str(SMALL), "--only", "W1", "--out", folder, "--without-solids")
        return run("-c", anew, *words), run("-c", IMPORTS)


def again() -> tuple[float, float]:
    """Return the time of all papers of forty openings and their house, and again with one changed [s]."""
    job = of_forty(read_job(HOUSE))
    first, *others = job.openings
    other = replace(job, openings=(replace(first, room="Another room"), *others))
    with tempfile.TemporaryDirectory() as folder:
        whole, after = (timed(lambda job=one: build(job, folder, with_solids=False)) for one in (job, other))  # type: ignore[misc]
        return whole, after


def main() -> None:
    """Print all figures."""
    with_solids = "--solids" in sys.argv
    print(f"40 openings, DXF, flat DXF, cut and install sheets: {forty(with_solids):.1f} s (solids: {with_solids})")
    whole, after = again()
    print(f"40 openings and the lists of the house: {whole:.1f} s, again with one changed {after:.1f} s")
    single, imports = cold()
    print(f"one opening from a cold start: {single:.2f} s, imports alone {imports:.2f} s, ratio {single / imports:.2f}")
    helped, alone, bare = run("-c", HELP, "--help"), run("-c", CLICK_ALONE, "--help"), run("-c", "pass")
    print(f"--help: {helped / bare:.1f} x a bare interpreter ({bare:.3f} s), click alone {alone / bare:.1f} x")


if __name__ == "__main__":
    main()
