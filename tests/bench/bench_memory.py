"""How much memory a build takes for houses of more and more small openings, papers of the whole house included.

Run by hand: ``python tests/bench/bench_memory.py [count ...]``. Each house is built in a process of its own; the floor
is the house of one opening, in the same run. No solids.
"""

from __future__ import annotations

import resource
import subprocess
import sys
import tempfile
from dataclasses import replace
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))

COUNTS = (1, 24, 50, 100)
BUILD = "--build"


def build_house(count: int) -> None:
    """Build so many openings; print the most memory of this process and of any helper [MB], and processor seconds."""
    from jambs.app.build import ask, build
    from jambs.job import read_job

    job = read_job(ROOT / "examples" / "garden-studio")
    (first,) = job.openings
    job = replace(job, openings=tuple(replace(first, mark=f"W{number}") for number in range(count)))
    with tempfile.TemporaryDirectory() as folder:
        asked = ask(job, only=(), target=Path(folder) / "papers", with_solids=False)
        build(asked, may_overwrite=lambda found: False, progress=lambda mark: None)
    here, helper = (resource.getrusage(who) for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN))
    seconds = here.ru_utime + here.ru_stime + helper.ru_utime + helper.ru_stime
    print(here.ru_maxrss // 1024, helper.ru_maxrss // 1024, round(seconds, 1))


def main() -> None:
    """Print a line for each count."""
    counts = [int(word) for word in sys.argv[1:]] or COUNTS
    for count in counts:
        command = [sys.executable, __file__, BUILD, str(count)]
        done = subprocess.run(command, check=True, capture_output=True, text=True)
        here, helper, seconds = done.stdout.split()
        print(
            f"{count:5} openings: {here:>5} MB, each helper {helper:>4} MB, {seconds:>7} s of processor time",
            flush=True,
        )


if __name__ == "__main__":
    if sys.argv[1:2] == [BUILD]:
        build_house(int(sys.argv[2]))
    else:
        main()
