"""Mutated jobs, schedules and spreadsheets: seeded, and whatever is in them is read or told, never anything else.

``python tests/app/test_mutated_jobs.py 5000`` tries so many instead of the few that every run tries.
"""

from __future__ import annotations

import io
import random
import re
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path

import pytest
from openpyxl import Workbook

from jambs.app.chain import Unbuildable, make_kits
from jambs.job import JobFaults, read_job

WORKED = Path(__file__).with_name("worked.yaml").read_text(encoding="utf-8")
ROWS = [
    ["mark", "room", "wall", "window", "frame", "sill_height"],
    ["V1", "Attic", "", "", "30 x 40", "36"],
    ["V2", "Hall", "", "", "35 1/2 x 47 1/2", ""],
]
ODD = [
    *("~", "[~]", "[[1]]", "[{a: 1}]", "{}", "[]", '""', "-", ":", "none", "0", "-1", "1/0", "1e999", "nan", "9" * 400),
    *(
        "*a",
        "&a",
        "!!x",
        "like:",
        "{like: none}",
        "\t",
        "\0",
        "\x85",
        "é",
        "台",
        '"\\ud800"',
        "=1+1",
        "'",
        '"',
        "x" * 5000,
    ),
    *(
        "true",
        "2026-13-40",
        "5 1/2",
        "902 mm",
        "CON",
        "measured: {date: 2026-03-20, sure: [a]}",
        "<<: 1",
        "? 1",
        "|",
        ">",
    ),
]
FEW = 120


def mutated(text: str, chance: random.Random) -> str:
    """Exchange, drop or double a few pieces of a text."""
    for _ in range(chance.randint(1, 3)):
        words = re.split(r"(\s+|[:,\[\]{}])", text)
        at = chance.randrange(len(words))
        way = chance.randrange(4)
        if way == 0:
            words[at] = chance.choice(ODD)
        elif way == 1:
            words[at] = ""
        elif way == 2:
            words[at] += words[chance.randrange(len(words))]
        else:
            lines = text.splitlines(keepends=True)
            line = chance.randrange(len(lines))
            lines[line : line + 1] = chance.choice(([], [lines[line]] * 2, [f"{chance.choice(ODD)}\n"]))
            text = "".join(lines)
            continue
        text = "".join(words)
    return text


def a_job(folder: Path, chance: random.Random) -> None:
    (folder / "job.yaml").write_text(mutated(WORKED, chance), encoding="utf-8", errors="surrogateescape")


def a_schedule(folder: Path, chance: random.Random) -> None:
    (folder / "job.yaml").write_text(f"schedule: v.csv\n{WORKED}", encoding="utf-8")
    text = "\n".join(",".join(row) for row in ROWS) + "\n"
    (folder / "v.csv").write_text(mutated(text, chance), encoding="utf-8")


def a_spreadsheet(folder: Path, chance: random.Random) -> None:
    """Odd cells, or bytes of the packed file exchanged."""
    (folder / "job.yaml").write_text(f"schedule: v.xlsx\n{WORKED}", encoding="utf-8")
    book = Workbook()
    sheet = book.active
    assert sheet is not None
    for row in ROWS:
        printable = [one for one in ODD if one.isprintable()]
        sheet.append([chance.choice(printable) if chance.random() < 0.1 else cell for cell in row])
    packed = io.BytesIO()
    book.save(packed)
    content = bytearray(packed.getvalue())
    if chance.random() < 0.7:
        for _ in range(chance.randint(1, 4)):
            content[chance.randrange(len(content))] = chance.randrange(256)
    if chance.random() < 0.1:
        del content[chance.randrange(len(content)) :]
    (folder / "v.xlsx").write_bytes(content)


def reads_or_tells(folder: Path) -> None:
    """Read a job and make its kits; what is wrong is told in sentences that can be printed."""
    try:
        make_kits(read_job(folder))
    except (JobFaults, Unbuildable) as error:
        said = str(error) if isinstance(error, JobFaults) else "\n".join(error.sentences)
        assert said.strip()
        said.encode()
        assert "Error" not in re.sub(r"is not a spreadsheet \(\w+\)", "", said), said


KINDS: tuple[Callable[[Path, random.Random], None], ...] = (a_job, a_job, a_schedule, a_spreadsheet)


def try_one(seed: int, folder: Path) -> None:
    chance = random.Random(seed)
    KINDS[seed % len(KINDS)](folder, chance)
    reads_or_tells(folder)


@pytest.mark.parametrize("part", range(4))
def test_nothing_but_told_errors_comes_out(part: int, tmp_path: Path) -> None:
    for seed in range(part * FEW // 4, (part + 1) * FEW // 4):
        try:
            try_one(seed, tmp_path)
        except Exception as error:
            error.add_note(f"seed {seed}")
            raise


if __name__ == "__main__":
    for number in range(int(sys.argv[1])):
        with tempfile.TemporaryDirectory() as one:
            try:
                try_one(number, Path(one))
            except Exception as found:
                print(number, type(found).__name__, str(found)[:300], file=sys.stderr)
