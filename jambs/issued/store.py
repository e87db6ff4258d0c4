"""Where issues are kept: every file of every issue by its content, one small record an issue, nothing ever changed.

An issue is there once its record is: all its files are written before, and the record appears in one step. So a build
that is killed leaves the last issue whole.
"""

from __future__ import annotations

import hashlib
import json
import os
import tempfile
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

FOLDER = "issued"


class IssueError(Exception):
    """An issue that is not there or cannot be read; the message says what was found and what to do."""


@dataclass(frozen=True, slots=True, kw_only=True)
class IssuedSheet:
    """The sheets of one opening as they stand in an issue: the issue they were last printed in, and their code."""

    number: int
    day: str
    code: str
    key: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Issue:
    """One issue of a job.

    ``sheets``: by opening mark. ``files``: path in the folder of papers -> sha256. ``record``: sha256 of what was
    printed, as ``parts.json`` has it. ``same_as``: the earlier issue that this one went back to.
    """

    number: int
    day: str
    sheets: Mapping[str, IssuedSheet]
    files: Mapping[str, str]
    record: str
    same_as: int | None = None
    changed: tuple[str, ...] = ()
    why: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True)
class Store:
    """The issues of one folder of papers."""

    folder: Path

    def numbers(self) -> list[int]:
        """Return the numbers of all issues, ascending."""
        return sorted(int(file.stem) for file in self.folder.glob("*.json") if file.stem.isdigit())

    def last(self) -> Issue | None:
        """Return the issue that holds now, nothing before the first."""
        numbers = self.numbers()
        return self.issue(numbers[-1]) if numbers else None

    def issue(self, number: int) -> Issue:
        """Return an issue.

        Raises:
            IssueError: there is none of this number, or its record is damaged.
        """
        file = self._record_file(number)
        try:
            read = json.loads(file.read_text(encoding="utf-8"))
            sheets = {mark: IssuedSheet(**sheet) for mark, sheet in read.pop("sheets").items()}
            return Issue(**{**read, "sheets": sheets, "changed": tuple(read["changed"])})
        except FileNotFoundError:
            there = ", ".join(map(str, self.numbers())) or "none yet"
            raise IssueError(f"there is no issue {number}; issued so far: {there}") from None
        except (OSError, ValueError, TypeError, KeyError, AttributeError) as error:
            message = f"{file}: the record of issue {number} cannot be read ({error}); put it back from a copy"
            raise IssueError(message) from None

    def commit(self, issue: Issue, folder: Path) -> None:
        """Keep an issue whose files stand in a folder; files that are kept already are not written again.

        Raises:
            IssueError: another build has taken the number meanwhile.
        """
        for path, digest in issue.files.items():
            if not self._blob(digest).exists():
                self.keep((folder / path).read_bytes())
        text = json.dumps(_plain(issue), indent=1, ensure_ascii=False) + "\n"
        new = self._written(text.encode("utf-8"))
        try:
            os.link(new, self._record_file(issue.number))  # unlike a rename, never over a record that is there
        except FileExistsError:
            message = f"issue {issue.number} was made by another build meanwhile; build once more"
            raise IssueError(message) from None
        finally:
            new.unlink()

    def keep(self, content: bytes) -> str:
        """Keep some bytes; return their sha256."""
        digest = hashlib.sha256(content).hexdigest()
        blob = self._blob(digest)
        if not blob.exists():
            self._written(content).replace(blob)
        return digest

    def kept(self, digest: str) -> bytes:
        """Return bytes that were kept.

        Raises:
            IssueError: they are gone or damaged.
        """
        try:
            content = self._blob(digest).read_bytes()
        except OSError as error:
            raise IssueError(f"a file of an issue is gone ({error}); put it back from a copy") from None
        if hashlib.sha256(content).hexdigest() != digest:
            raise IssueError(f"{self._blob(digest)}: was changed since it was issued; put it back from a copy")
        return content

    def record(self, issue: Issue) -> dict[str, Any]:
        """Return what an issue printed, opening by opening."""
        read: dict[str, Any] = json.loads(self.kept(issue.record))
        return read

    def _record_file(self, number: int) -> Path:
        return self.folder / f"{number:04}.json"

    def _blob(self, digest: str) -> Path:
        return self.folder / "files" / digest

    def _written(self, content: bytes) -> Path:
        """Write bytes to a new file beside the others and onto the disk."""
        (self.folder / "files").mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(prefix=".new-", dir=self.folder)
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        return Path(name)


def _plain(issue: Issue) -> dict[str, Any]:
    return {
        "number": issue.number,
        "day": issue.day,
        "same_as": issue.same_as,
        "record": issue.record,
        "changed": list(issue.changed),
        "why": dict(issue.why),
        "sheets": {
            mark: {"number": one.number, "day": one.day, "code": one.code, "key": one.key}
            for mark, one in issue.sheets.items()
        },
        "files": dict(issue.files),
    }
