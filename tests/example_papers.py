"""The papers of the examples: each example is built once, for every test that reads them and for all workers."""

from __future__ import annotations

import os
import time
from dataclasses import dataclass
from pathlib import Path

import pytest
import same_papers

PATIENCE = 600
"""So long a worker waits for another that builds the same example [s]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ExamplePapers:
    """Where the papers of an example are, and what the screen said; nobody writes there."""

    folder: Path
    said: str


_built: dict[str, ExamplePapers] = {}


def example_papers(name: str, folders: pytest.TempPathFactory) -> ExamplePapers:
    """Return the papers of an example, with its solids where they can be made."""
    if name not in _built:
        folder = _of_all_workers(folders) / f"example {name}"
        _built[name] = ExamplePapers(folder=folder / "papers", said=_said(name, folder))
    return _built[name]


def _of_all_workers(folders: pytest.TempPathFactory) -> Path:
    """Return a folder that all workers of this run share."""
    own = folders.getbasetemp()
    return own.parent if "PYTEST_XDIST_WORKER" in os.environ else own


def _said(name: str, folder: Path) -> str:
    """Build an example, or wait for the worker that came first; return what was said."""
    told, failed = folder / "told", folder / "failed"
    try:
        folder.mkdir()
    except FileExistsError:
        end = time.monotonic() + PATIENCE
        while not told.exists():
            assert not failed.exists() and time.monotonic() < end, f"another worker could not build {name}"
            time.sleep(0.1)
        return told.read_text(encoding="utf-8")
    try:
        said = same_papers.build_example(name, folder)
    except BaseException:
        failed.touch()
        raise
    written = folder / "to be told"
    written.write_text(said, encoding="utf-8")
    written.rename(told)
    return said
