"""A file of the user's as it was read: its bytes, what tells it from another state of itself, and what was changed."""

from __future__ import annotations

import difflib
import hashlib
from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import StrEnum

from jambs.job.reading.faults import Fault

BYTE_ORDER_MARK = "\ufeff"


class EditRefused(Exception):
    """An edit that is not carried out: ``fault`` says where, why and what to do. The file stays as it is."""

    def __init__(self, fault: Fault) -> None:
        super().__init__(str(fault))
        self.fault = fault


def refused(file: str, sentence: str, *, line: int = 0, where: str = "") -> EditRefused:
    """Make the refusal of an edit; line 0 stands for the whole file."""
    return EditRefused(Fault(file=file, line=line, where=where, sentence=sentence))


@dataclass(frozen=True, slots=True, kw_only=True)
class FileText:
    """A file as it was read. ``name``: its name without a folder; ``content``: its bytes."""

    name: str
    content: bytes

    @property
    def sum(self) -> str:
        """The hash of its content: two states of a file with the same sum are one state."""
        return hashlib.sha256(self.content).hexdigest()

    @property
    def text(self) -> str:
        """The text without a byte order mark, its line ends as they are.

        Raises:
            EditRefused: it is not UTF-8 text.
        """
        try:
            return self.content.decode("utf-8").removeprefix(BYTE_ORDER_MARK)
        except UnicodeDecodeError:
            raise refused(self.name, "is not UTF-8 text; save it as UTF-8") from None

    @property
    def line_end(self) -> str:
        """What its lines end with: as the first one does."""
        first = self.text.partition("\n")[0]
        return "\r\n" if first.endswith("\r") else "\n"

    def with_text(self, text: str) -> FileText:
        """Return the file with another text; it keeps its byte order mark."""
        mark = BYTE_ORDER_MARK if self.content.startswith(BYTE_ORDER_MARK.encode()) else ""
        try:
            return replace(self, content=f"{mark}{text}".encode())
        except UnicodeEncodeError:
            sentence = "half a letter (a lone surrogate) cannot be written; type the letter itself"
            raise refused(self.name, sentence) from None

    def spliced(self, start: int, end: int, new: str) -> FileText:
        """Return the file with the letters from one place to another replaced."""
        return self.with_text(f"{self.text[:start]}{new}{self.text[end:]}")


class LineFate(StrEnum):
    """What became of a line."""

    KEPT = "kept"
    GONE = "gone"
    NEW = "new"


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangedLine:
    """A line to show: what became of it, its number in the file it stands in (from 1), its text."""

    kind: LineFate
    number: int
    text: str


NEIGHBORS = 2
"""Lines that are shown before and after one that changed."""


def changed_lines(before: bytes, after: bytes, *, neighbors: int = NEIGHBORS) -> Iterator[tuple[ChangedLine, ...]]:
    """Yield what was changed, piece by piece: its lines with some of their neighbors."""
    old, new = (_lines(one) for one in (before, after))
    for group in difflib.SequenceMatcher(None, old, new, autojunk=False).get_grouped_opcodes(neighbors):
        found: list[ChangedLine] = []
        for tag, first, last, start, end in group:
            if tag == "equal":
                found += _shown(LineFate.KEPT, new, start, end)
            else:
                found += [*_shown(LineFate.GONE, old, first, last), *_shown(LineFate.NEW, new, start, end)]
        yield tuple(found)


def _shown(kind: LineFate, lines: list[str], first: int, last: int) -> list[ChangedLine]:
    return [ChangedLine(kind=kind, number=at + 1, text=lines[at].rstrip("\r\n")) for at in range(first, last)]


def _lines(content: bytes) -> list[str]:
    """Split a text at its line ends and nowhere else, each line with its own end."""
    text = content.decode("utf-8", errors="replace").removeprefix(BYTE_ORDER_MARK)
    return [f"{line}\n" for line in text.split("\n")[:-1]] + [last for last in text.split("\n")[-1:] if last]
