"""One entry of the record: a whole state of a folder of papers, as it is kept in memory."""

from __future__ import annotations

import os
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

BUILD = "build"
"""The verb whose papers make an issue."""
PRINTED = "parts.json"
"""The document of an issue that holds what its sheets print, opening by opening."""
JOB_FILES = "job/"
"""Begins the names of documents that are files of the job: ``job/job.yaml``, ``job/openings.csv``."""


@dataclass(frozen=True, slots=True, kw_only=True)
class JobIdentity:
    """Which job a folder belongs to: its name, and its file as seen from the folder of papers (empty: unknown)."""

    name: str
    file: str

    def is_same(self, other: JobIdentity, folder: Path) -> bool:
        """Say whether a job that is recorded in a folder is this one; it may have moved since."""
        if not self.file or not other.file:
            return self.name == other.name
        mine, theirs = folder / self.file, folder / other.file
        if theirs.exists() and mine.exists():
            return os.path.samefile(mine, theirs)
        return self.file == other.file or self.name == other.name


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenPaper:
    """One written file: what it is, which openings it is of (none: the whole house), who wrote it for which issue.

    ``basis``: sha256 of what it was made from, empty where that is not known.
    """

    sha256: str
    kind: str
    marks: tuple[str, ...]
    verb: str
    issue: int
    basis: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class IssuedSheet:
    """The sheets of one opening as they stand in an issue: the issue they were last printed in, and their code.

    ``key``: what tells two states of the opening apart.
    """

    number: int
    day: str
    code: str
    key: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """A whole state of a folder of papers.

    ``previous``: sha256 of the entry before, empty for the first. ``lost``: numbers of entries that were found damaged
    or missing when this one was made. ``issue``: the issue that holds, 0 before the first; ``is_issue``: this entry
    made it. ``sheets``: by opening mark. ``papers``: by path. ``documents``: name -> sha256 of kept content.
    ``same_as``: the earlier issue that this one went back to.
    """

    number: int
    previous: str
    verb: str
    day: str
    job: JobIdentity
    issue: int
    is_issue: bool = False
    lost: tuple[int, ...] = ()
    sheets: Mapping[str, IssuedSheet] = field(default_factory=dict)
    papers: Mapping[str, WrittenPaper] = field(default_factory=dict)
    documents: Mapping[str, str] = field(default_factory=dict)
    same_as: int | None = None
    changed: tuple[str, ...] = ()
    why: Mapping[str, str] = field(default_factory=dict)

    def papers_of(self, verb: str) -> dict[str, WrittenPaper]:
        """Return the papers that a verb wrote, by path."""
        return {path: paper for path, paper in self.papers.items() if paper.verb == verb}

    @property
    def files(self) -> dict[str, str]:
        """The papers of the issue: path -> sha256."""
        return {path: paper.sha256 for path, paper in self.papers_of(BUILD).items()}
