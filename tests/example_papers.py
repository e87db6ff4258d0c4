"""The papers of the examples: each example is built once, for every test that reads them."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import pytest
import same_papers


@dataclass(frozen=True, slots=True, kw_only=True)
class ExamplePapers:
    """Where the papers of an example are, and what the screen said; nobody writes there."""

    folder: Path
    said: str


_built: dict[str, ExamplePapers] = {}


def example_papers(name: str, folders: pytest.TempPathFactory) -> ExamplePapers:
    """Return the papers of an example, with its solids where they can be made."""
    if name not in _built:
        folder = folders.mktemp(name)
        said = same_papers.build_example(name, folder)
        _built[name] = ExamplePapers(folder=folder / "papers", said=said)
    return _built[name]
