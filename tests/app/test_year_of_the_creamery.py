"""What is straight of the creamery, most of it measured, in a shop that goes from a grid of 1 mm to 0.5 mm and back.

Its boards of 100.4 mm wood fiber put the trim plane between two steps: 12.5 + 0.5 + 145 + 15 + 0.5 + 100.4 + 25.
"""

from __future__ import annotations

import json
import shutil
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner
from quick_papers import quick

from jambs.commands.command_line import main

CREAMERY = Path(__file__).parents[2] / "examples" / "creamery"
MEASURED = ("N1", "E1", "M1")


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    quick(monkeypatch, drawings=False)
    shutil.copytree(CREAMERY, tmp_path / "creamery", ignore=shutil.ignore_patterns("output"))
    change(tmp_path, "wood-fiber board, thickness: 100}", "wood-fiber board, thickness: 100.4}")
    job = tmp_path / "creamery" / "job.yaml"
    lines = job.read_text(encoding="utf-8").splitlines(keepends=True)
    planned = tuple(f"  - {{mark: {mark}," for mark in ("A1", "B1", "T1"))
    job.write_text("".join(line for line in lines if not line.startswith(planned)), encoding="utf-8")
    return tmp_path


def change(folder: Path, old: str, new: str) -> None:
    job = folder / "creamery" / "job.yaml"
    text = job.read_text(encoding="utf-8")
    assert old in text
    job.write_text(text.replace(old, new), encoding="utf-8")


def run(folder: Path, verb: str, *words: str) -> str:
    done = CliRunner().invoke(
        main, [verb, str(folder / "creamery"), "--out", str(folder / "papers"), *words], catch_exceptions=False
    )
    assert done.exit_code == 0, done.output
    return done.stdout


def printed(folder: Path) -> dict[str, Any]:
    found = json.loads((folder / "papers" / "parts.json").read_text(encoding="utf-8"))
    return {one["mark"]: one for one in found["openings"]}


def measured(openings: dict[str, Any]) -> tuple[str, ...]:
    return tuple(mark for mark, one in openings.items() if one["state"]["is_measured"])


def set_aside(openings: dict[str, Any]) -> list[str]:
    return [
        f"{mark}: {one['text']}"
        for mark in openings
        for one in openings[mark]["findings"]
        if "set aside" in one["text"]
    ]


def differing(one: Any, other: Any, way: str = "") -> list[str]:
    """Return the ways to what differs of two records."""
    if isinstance(one, dict) and isinstance(other, dict):
        keys = dict.fromkeys([*one, *other])
        return [found for key in keys for found in differing(one.get(key), other.get(key), f"{way}/{key}")]
    if isinstance(one, list) and isinstance(other, list) and len(one) == len(other):
        pairs = enumerate(zip(one, other, strict=True))
        return [found for number, pair in pairs for found in differing(*pair, f"{way}/{number}")]
    return [] if one == other else [f"{way}: {one}, {other}"]


def test_every_reading_holds_on_a_finer_grid_and_on_the_old_one_again(folder: Path) -> None:
    run(folder, "build", "--without-solids")
    first = printed(folder)
    assert measured(first) == MEASURED and set_aside(first) == []

    change(folder, "grid: 1 mm", "grid: 0.5 mm")
    said = run(folder, "build", "--without-solids")
    finer = printed(folder)
    planes = [one["M1"]["planes"]["flange_plane"]["value"] for one in (first, finer)]
    assert planes[0] != planes[1]  # by rounding alone
    assert measured(finer) == MEASURED and set_aside(finer) == []
    assert "grid of the shop changed from 1 mm to 0.5 mm" in said
    assert "layers of the wall" not in said and "moved in the wall" not in said
    assert "recut" not in said  # a tolerance of 1 mm

    change(folder, "grid: 0.5 mm", "grid: 1 mm")
    run(folder, "build", "--without-solids")
    assert measured(printed(folder)) == MEASURED
    assert [way for way in differing(printed(folder), first) if "/issue" not in way] == []
