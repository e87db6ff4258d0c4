"""Spoiled jobs and schedules: everything that is said about each, word for word.

The sentences are the project's own, so this holds the program to its text of record: that no fault is missed, none is
told twice, and each says where, what was found, what is allowed and what to do.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import pytest
from houses import HOUSE, METRIC, faults_of, spoiled

HERE = Path(__file__).parent


@dataclass(frozen=True, slots=True, kw_only=True)
class Spoiled:
    """A spoiled job: the texts that are exchanged, the rows of its schedule, and what is said about it."""

    name: str
    base: str
    edits: tuple[tuple[str, str], ...]
    rows: tuple[str, ...]
    says: tuple[str, ...]


def _cases(file: str) -> list[Spoiled]:
    blocks = (HERE / file).read_text(encoding="utf-8").split("\n== ")[1:]
    return [_case(block) for block in blocks]


def _case(block: str) -> Spoiled:
    name, *lines = block.splitlines()
    return Spoiled(
        name=name,
        base=METRIC if "= metric" in lines else HOUSE,
        edits=_edits(lines),
        rows=tuple(line[1:] for line in lines if line.startswith("|")),
        says=tuple(line[2:] for line in lines if line.startswith("! ")),
    )


def _edits(lines: list[str]) -> tuple[tuple[str, str], ...]:
    """Gather runs of lines taken out, each with the lines put in after it."""
    edits: list[tuple[list[str], list[str]]] = []
    last = ""
    for line in lines:
        if line.startswith("-") and last != "-":
            edits.append(([], []))
        if line[0] in "-+":
            edits[-1]["-+".index(line[0])].append(line[1:] + "\n")
        last = line[0]
    return tuple(("".join(old), "".join(new)) for old, new in edits)


JOBS = _cases("broken_jobs.txt") + _cases("broken_outside.txt")
SCHEDULES = _cases("broken_schedules.txt")


@pytest.mark.parametrize("case", JOBS, ids=lambda case: case.name)
def test_everything_wrong_with_a_job_is_said(case: Spoiled, tmp_path: Path) -> None:
    assert faults_of(spoiled(*case.edits, text=case.base), tmp_path) == list(case.says)


@pytest.mark.parametrize("case", SCHEDULES, ids=lambda case: case.name)
def test_everything_wrong_with_a_schedule_is_said(case: Spoiled, tmp_path: Path) -> None:
    (tmp_path / "windows.csv").write_text("\n".join(case.rows) + "\n", encoding="utf-8")
    named = spoiled(("openings:\n", "schedule: windows.csv\nopenings:\n"))
    assert faults_of(named, tmp_path) == list(case.says)


def test_every_case_says_something() -> None:
    assert [case.name for case in JOBS + SCHEDULES if not case.says] == []
    assert len(JOBS) + len(SCHEDULES) >= 45


@pytest.mark.parametrize("text", [HOUSE, METRIC], ids=["inch", "metric"])
def test_the_sound_jobs_have_no_faults(text: str, tmp_path: Path) -> None:
    assert faults_of(text, tmp_path) == []
