"""Stale papers in words: which they are, what changed since, and what to run."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.issued.basis import NOT_KNOWN, Stale

MOST = 6
"""So many things are named one by one; of more parts their openings are."""


def stale_line(stale: Stale, *, job_words: str) -> str:
    """Say which papers are stale, for which parts, and what to run."""
    return f"stale  {papers_words(stale)}: {things_words(stale)}; run `{run_words(stale, job_words)}`"


def papers_words(stale: Stale) -> str:
    """Name papers by their kinds."""
    return ", ".join(stale.kinds)


def things_words(stale: Stale) -> str:
    """Name what changed since: marks of parts or openings, and other things."""
    if NOT_KNOWN in stale.things:
        return NOT_KNOWN
    things = stale.things if len(stale.things) <= MOST else _in_short(stale.things)
    return f"{', '.join(things)} changed since"


def _in_short(things: Sequence[str]) -> list[str]:
    """Put the parts of one opening together; a part's mark is that of its opening and a number."""
    counts: dict[str, list[str]] = {}
    for thing in things:
        head, dash, number = thing.rpartition("-")
        counts.setdefault(head if dash and number.isdigit() else thing, []).append(thing)
    return [some[0] if len(some) == 1 else f"{len(some)} parts of {head}" for head, some in counts.items()]


def run_words(stale: Stale, job_words: str) -> str:
    """Return the command that makes the papers anew."""
    return f"jambs {stale.verb} {job_words}".rstrip()
