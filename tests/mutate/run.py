"""Do the tests bite? Change the house in one small place at a time and see whether the room's own tests notice.

    python tests/mutate/run.py --count 300 --seed 1
    python tests/mutate/run.py --count 300 --seed 1 --again      (tries the survivors once more)
    python tests/mutate/run.py --count 60 --room courses

A sample of all mutants, the same for the same seed and source. It works on a copy in ``--work``, writes down there what
became of each mutant, and goes on where it was stopped. ``equivalent.txt`` names those that change nothing that
could be seen, and why; they count as neither killed nor alive.
"""

from __future__ import annotations

import argparse
import hashlib
import json
import os
import random
import shutil
import sys
import tempfile
from collections import Counter
from functools import partial
from itertools import groupby
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))

from mutants import Mutant, mutants
from trial import LIVES, ROOT, make_copy, try_room

ROOMS: dict[str, tuple[str, ...]] = {
    "place": ("jambs/place",),
    "parts": ("jambs/parts",),
    "courses": ("jambs/courses",),
    "fasten": ("jambs/fasten",),
    "flashing": ("jambs/flashing",),
    "study": ("jambs/study",),
    "stock": ("jambs/stock/checker.py", "jambs/stock/verify.py"),
}
"""What is changed; the tests of a room are the folder of tests with its name."""
EQUIVALENT = Path(__file__).with_name("equivalent.txt")


def main() -> None:
    """Read the command line, try the sample, print the survivors."""
    options = _options()
    rooms = options.room or list(ROOMS)
    sample = pick(options.count, options.seed, rooms)
    known = _record(options.work)
    open_ones = [one for one in sample if _is_open(known.get(_key(one)), options.again)]
    if open_ones:
        _try_all(open_ones, options.work)
    _report(sample, _record(options.work), options.seed)


def pick(count: int, seed: int, rooms: list[str]) -> list[Mutant]:
    """Return a seeded sample of the mutants of some rooms, in the order of rooms, less the equivalent ones among them.

    An equivalent that is named later takes itself out of the sample and moves no other.
    """
    every = [
        one
        for room in rooms
        for place in ROOMS[room]
        for path in sorted((ROOT / place).rglob("*.py") if (ROOT / place).is_dir() else [ROOT / place])
        for one in mutants(path.relative_to(ROOT).as_posix(), path.read_bytes())
    ]
    equivalent = equivalents()
    chosen = [every[number] for number in sorted(random.Random(seed).sample(range(len(every)), min(count, len(every))))]
    return [one for one in chosen if (one.path, _source_line(one), one.before, one.after) not in equivalent]


def equivalents() -> dict[tuple[str, str, str, str], str]:
    """Return the mutants that change nothing that can be seen: (file, line, before, after) and the reason."""
    lines = EQUIVALENT.read_text(encoding="utf-8").splitlines()
    rows = [line.split(" | ") for line in lines if line and not line.startswith("#")]
    return {(path, line, before, after): why for path, line, before, after, why in rows}


def _source_line(mutant: Mutant) -> str:
    return (ROOT / mutant.path).read_text(encoding="utf-8").split("\n")[mutant.line - 1].strip()


def room_of(mutant: Mutant) -> str:
    """Return the room a mutant stands in."""
    return mutant.path.split("/")[1]


def _try_all(sample: list[Mutant], work: Path) -> None:
    folder = work / f"house-{os.getpid()}"
    make_copy(folder)
    out = os.dup(1)  # pytest holds back what is printed
    try:
        for room, mutants_of in groupby(sample, key=room_of):
            try_room(room, list(mutants_of), folder, partial(_write_down, out, work / "record.jsonl"))
    finally:
        shutil.rmtree(folder)


def _write_down(out: int, record: Path, mutant: Mutant, found: str) -> None:
    with record.open("a", encoding="utf-8") as file:
        file.write(json.dumps({"key": _key(mutant), "found": found}) + "\n")
    os.write(out, f"{found:7}  {mutant.words}\n".encode())


def _report(sample: list[Mutant], record: dict[str, str], seed: int) -> None:
    alive = [one for one in sample if record.get(_key(one)) == LIVES]
    tried, live = Counter(map(room_of, sample)), Counter(map(room_of, alive))
    print("\nSurvivors:" if alive else "\nNo survivors.")
    for one in alive:
        print(f"  {one.words}")
    for room, count in tried.items():
        print(f"{room:9} {count - live[room]:4} of {count:4} killed")
    share = 100 * (len(sample) - len(alive)) / max(1, len(sample))
    print(f"{len(sample) - len(alive)} of {len(sample)} killed ({share:.1f} %), seed {seed}")


def _key(mutant: Mutant) -> str:
    """Name a mutant and the source it was made from."""
    source = hashlib.sha256((ROOT / mutant.path).read_bytes()).hexdigest()[:12]
    return f"{source} {mutant.key}"


def _is_open(found: str | None, again: bool) -> bool:
    return found is None or (again and found == LIVES)


def _record(work: Path) -> dict[str, str]:
    path = work / "record.jsonl"
    lines = path.read_text(encoding="utf-8").splitlines() if path.exists() else []
    return {one["key"]: one["found"] for one in map(json.loads, lines)}


def _options() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--count", type=int, default=300, help="how many mutants [300]")
    parser.add_argument("--seed", type=int, default=1, help="of the sample [1]")
    parser.add_argument("--room", action="append", choices=list(ROOMS), help="only this room; may be given again")
    parser.add_argument("--again", action="store_true", help="try survivors of an earlier run once more")
    parser.add_argument("--work", type=Path, default=Path(tempfile.gettempdir()) / "jambs-mutants", help="folder")
    options = parser.parse_args()
    options.work = options.work.resolve()
    options.work.mkdir(parents=True, exist_ok=True)
    return options


if __name__ == "__main__":
    main()
