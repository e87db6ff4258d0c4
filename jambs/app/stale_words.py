"""Stale papers in words: which they are, what changed since, and what to run."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.issued.basis import NOT_KNOWN, Stale

MOST = 6
"""So many things are named one by one; of more parts their openings are, and more openings are counted."""


def stale_line(stale: Stale, *, job_words: str) -> str:
    """Say which papers are stale, for which parts, and what to run."""
    return f"stale  {papers_words(stale)}: {things_words(stale)}; run `{run_words(stale, job_words)}`"


def papers_words(stale: Stale, *, in_full: bool = False) -> str:
    """Name papers by their kinds; where they are of many kinds, only how many papers, unless in full."""
    if len(stale.kinds) > MOST and not in_full:
        return f"{len(stale.paths)} papers"
    return ", ".join(stale.kinds)


def things_words(stale: Stale, *, in_full: bool = False) -> str:
    """Name what changed since: marks of parts or openings, and other things; of many, only how many, unless in full."""
    if NOT_KNOWN in stale.things:
        return NOT_KNOWN
    marks = list(stale.marks)
    if len(marks) > MOST and stale.is_of_parts:
        marks = _of_openings(marks)
    if len(marks) > MOST and not in_full:
        marks = [_counted(stale)]
    if marks and stale.is_of_boards:
        marks[0] = f"the boards of {marks[0]}"
    return f"{', '.join([*marks, *stale.words])} changed since"


def _counted(stale: Stale) -> str:
    openings = {mark.rpartition("-")[0] if stale.is_of_parts else mark for mark in stale.marks}
    counted = f"{len(openings)} openings"
    return f"{len(stale.marks)} parts of {counted}" if stale.is_of_parts else counted


def _of_openings(parts: Sequence[str]) -> list[str]:
    """Put the parts of one opening together; a part's mark is that of its opening and a number."""
    of: dict[str, list[str]] = {}
    for mark in parts:
        of.setdefault(mark.rpartition("-")[0], []).append(mark)
    return [some[0] if len(some) == 1 else f"{len(some)} parts of {opening}" for opening, some in of.items()]


def run_words(stale: Stale, job_words: str) -> str:
    """Return the command that makes the papers anew."""
    return f"jambs {stale.verb} {job_words}".rstrip()
