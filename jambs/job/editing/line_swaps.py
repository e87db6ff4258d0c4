"""Lines of a file in the place of others: the way from one state of it to another where no single edit leads there.

Steps that were saved and taken back are no edits of the file any more. What they leave behind is lines: each swap names
enough of those around it to stand in one place only, and is refused where they are not there any more.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterator
from dataclasses import dataclass

from jambs.job.editing.file_text import FileText, refused

CONTEXT = 3
"""So many lines around a change tell its place at first; more where they stand elsewhere too."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SwapLines:
    """Whole lines of the file named ``file`` that give way to others, without their line ends (a return stays)."""

    file: str
    old: tuple[str, ...]
    new: tuple[str, ...]


def with_lines_swapped(file: FileText, edit: SwapLines) -> FileText:
    """Return a file with some lines in the place of others.

    Raises:
        EditRefused: the others stand nowhere in it, or at several places.
    """
    lines = tuple(file.text.split("\n"))
    found = _places(lines, edit.old)
    if len(found) != 1:
        raise refused(file.name, "the lines that were to be taken back are not there any more; change them by hand")
    at = found[0]
    return file.with_text("\n".join((*lines[:at], *edit.new, *lines[at + len(edit.old) :])))


def swaps_between(before: FileText, after: FileText) -> Iterator[SwapLines]:
    """Give the swaps that lead from one state of a file to another, one after the other.

    Raises:
        EditRefused: it is no text.
    """
    now = before
    while now.text != after.text:
        swap = _first_swap(now, after)
        now = with_lines_swapped(now, swap)
        yield swap


def _first_swap(now: FileText, after: FileText) -> SwapLines:
    lines, wanted = tuple(now.text.split("\n")), tuple(after.text.split("\n"))
    matcher = difflib.SequenceMatcher(a=lines, b=wanted, autojunk=False)
    _, start, end, new_start, new_end = next(one for one in matcher.get_opcodes() if one[0] != "equal")
    around = CONTEXT
    while True:
        low, high = max(start - around, 0), min(end + around, len(lines))
        old = lines[low:high]
        if len(_places(lines, old)) == 1:
            return SwapLines(
                file=now.name, old=old, new=(*lines[low:start], *wanted[new_start:new_end], *lines[end:high])
            )
        around += CONTEXT


def _places(lines: tuple[str, ...], some: tuple[str, ...]) -> list[int]:
    return [at for at in range(len(lines) - len(some) + 1) if lines[at : at + len(some)] == some]
