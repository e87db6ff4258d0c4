"""What the three examples print, paper by paper, as hashes: to see that a change of the house changed no paper.

A golden record of this program's own output: it says *the same as before*, never *right*. Renew it, and say why in the
commit, with: python tests/same_papers.py
"""

from __future__ import annotations

import datetime
import hashlib
import json
import shutil
import tempfile
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from types import SimpleNamespace
from typing import Any
from unittest.mock import patch

ROOT = Path(__file__).parents[1]
RECORD = Path(__file__).with_name("same_papers.json")
EXAMPLES = ("garden-studio", "harbour-house", "hillside-house")
DAY = datetime.date(2026, 3, 2)
WRITERS = ("ezdxf", "fonttools", "typst", "pillow", "cadquery-ocp")
"""Libraries that decide the bytes of a drawing or a page."""
OURS = (".json", ".csv", ".txt")
"""Papers whose every byte is our own, whatever the libraries."""


def versions() -> dict[str, str]:
    """Return the versions of the libraries that write papers."""
    return {name: _version(name) for name in WRITERS}


def _version(name: str) -> str:
    try:
        return version(name)
    except PackageNotFoundError:
        return "not installed"


def build_example(example: str, folder: Path) -> str:
    """Build an example into ``papers`` of a folder on a fixed day, outside the repository; return what was said."""
    from click.testing import CliRunner

    from jambs.commands.command_line import main

    job = folder / example
    shutil.copytree(ROOT / "examples" / example, job)
    clock = SimpleNamespace(date=SimpleNamespace(today=lambda: DAY))
    with patch("jambs.app.build.datetime", clock):
        result = CliRunner().invoke(main, ["build", str(job), "--out", str(folder / "papers")], catch_exceptions=False)
    assert result.exit_code == 0, result.output
    return result.output


def hashes(papers: Path) -> dict[str, str]:
    """Return the hash of every paper in a folder of papers."""
    paths = sorted(path for path in papers.rglob("*") if path.is_file())
    kept = [path for path in paths if "issued" not in path.parts and not path.name.startswith(".")]
    return {path.relative_to(papers).as_posix(): _hash(path.read_bytes()) for path in kept}


def _hash(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()[:16]


def recorded() -> dict[str, Any]:
    """Return the record: ``versions`` and ``papers`` by example."""
    record: dict[str, Any] = json.loads(RECORD.read_text(encoding="utf-8"))
    return record


def write() -> None:
    """Renew the record, and say which papers changed."""
    before = recorded()["papers"] if RECORD.exists() else {}
    papers: dict[str, dict[str, str]] = {}
    for example in EXAMPLES:
        with tempfile.TemporaryDirectory() as folder:
            build_example(example, Path(folder))
            papers[example] = hashes(Path(folder) / "papers")
        was = before.get(example, {})
        changed = sorted(name for name in {*was, *papers[example]} if was.get(name) != papers[example].get(name))
        print(example, *(changed or ["unchanged"]), sep="\n  ")
    record = {"versions": versions(), "papers": papers}
    RECORD.write_text(json.dumps(record, indent=1, ensure_ascii=False) + "\n", encoding="utf-8")


if __name__ == "__main__":
    write()
