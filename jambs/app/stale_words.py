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
    """Name what changed since, what is new and what is gone: marks of parts or openings, and other things.

    Of many, only how many, unless in full.
    """
    if NOT_KNOWN in stale.things:
        return NOT_KNOWN
    changed = _named(stale.changed, stale, in_full=in_full)
    if changed and stale.is_of_boards:
        changed[0] = f"the boards of {changed[0]}"
    changed += stale.words
    new, gone = (_named(marks, stale, in_full=in_full) for marks in (stale.new, stale.gone))
    each = ((changed, "changed since"), (new, "new since"), (gone, "gone since"))
    return "; ".join(f"{', '.join(things)} {how}" for things, how in each if things)


def _named(marks: Sequence[str], stale: Stale, *, in_full: bool) -> list[str]:
    """Name some marks of what is stale; of many, only how many, unless in full."""
    named = _of_openings(marks) if len(marks) > MOST and stale.is_of_parts else list(marks)
    return [_counted(marks, stale)] if len(named) > MOST and not in_full else named


def _counted(marks: Sequence[str], stale: Stale) -> str:
    openings = {mark.rpartition("-")[0] if stale.is_of_parts else mark for mark in marks}
    counted = f"{len(openings)} openings"
    return f"{len(marks)} parts of {counted}" if stale.is_of_parts else counted


def _of_openings(parts: Sequence[str]) -> list[str]:
    """Put the parts of one opening together; a part's mark is that of its opening and a number."""
    of: dict[str, list[str]] = {}
    for mark in parts:
        of.setdefault(mark.rpartition("-")[0], []).append(mark)
    return [some[0] if len(some) == 1 else f"{len(some)} parts of {opening}" for opening, some in of.items()]


def run_words(stale: Stale, job_words: str) -> str:
    """Return the command that makes the papers anew."""
    return f"jambs {stale.verb} {job_words}".rstrip()
