"""How long ``jambs check`` takes on a house of forty openings with papers on record, beside what no check goes without.

Run by hand: ``python tests/bench/bench_check.py [FOLDER_OF_ANOTHER_VERSION]``. The floor of the run: import, read the
job, place the windows, make the parts, plan the outside. Another version is measured in turn with this one, each with
its own example. All figures are processor time, the least of a few runs.
"""

from __future__ import annotations

import csv
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).parents[2]
HOUSE = Path("examples", "harbour-house")
SCHEDULE, MORE, RUNS = "bedrooms.csv", 25, 3
COMMAND = (
    "try:\n from jambs.commands.command_line import main\n"
    "except ImportError:\n from jambs.app.command_line import main\n"  # where it was in earlier versions
    "main()"
)
FLOOR = (
    "from jambs.job import read_job; from jambs.app.chain import make_kits, planned; "
    "job = read_job('house'); planned(make_kits(job), job)"
)


def house_of_forty(version: Path, folder: Path) -> None:
    """Write the harbour house of a version, rows of its schedule repeated under other marks: forty openings."""
    shutil.copytree(version / HOUSE, folder / "house", ignore=shutil.ignore_patterns("output"))
    table = folder / "house" / SCHEDULE
    with table.open(encoding="utf-8-sig", newline="") as file:
        rows = list(csv.DictReader(file))
    more = [{**rows[number % len(rows)], "mark": f"X{number:02}", "from_left": ""} for number in range(MORE)]
    with table.open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, fieldnames=list(rows[0]))
        writer.writeheader()
        writer.writerows([*rows, *more])


def once(code: str, *words: str, version: Path, folder: Path) -> float:
    """Return the processor time of a Python command in a process of its own [s]."""
    before = os.times()
    subprocess.run(
        [sys.executable, "-c", code, *words],
        check=True,
        capture_output=True,
        cwd=folder,
        env={**os.environ, "PYTHONPATH": str(version)},
    )
    after = os.times()
    return after.children_user - before.children_user + after.children_system - before.children_system


def main() -> None:
    """Print the time of a check, of its floor, and of a check by another version."""
    versions = [ROOT, *map(Path, sys.argv[1:2])]
    with tempfile.TemporaryDirectory() as temporary:
        folders = {version: Path(temporary) / str(number) for number, version in enumerate(versions)}
        for version, folder in folders.items():
            house_of_forty(version, folder)
            for verb in ("labels", "measure"):
                once(COMMAND, verb, "house", version=version, folder=folder)
        took: dict[tuple[Path, str], float] = {}
        commands: list[tuple[Path, str, tuple[str, ...]]] = [(one, COMMAND, ("check", "house")) for one in versions]
        for _ in range(RUNS):
            for version, code, words in [*commands, (ROOT, FLOOR, ())]:
                found = once(code, *words, version=version, folder=folders[version])
                took[version, code] = min(found, took.get((version, code), found))
    check, floor = took[ROOT, COMMAND], took[ROOT, FLOOR]
    print(f"check of 40 openings {check:.2f} s, floor {floor:.2f} s, ratio {check / floor:.2f}")
    for version in versions[1:]:
        other = took[version, COMMAND]
        print(f"check of the other version {other:.2f} s, ratio {check / other:.2f}")


if __name__ == "__main__":
    main()
