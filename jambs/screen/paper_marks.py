"""Which opening a printed paper is of today: its mark may have gone to another opening since it was printed."""

from __future__ import annotations

import re
from dataclasses import dataclass

from jambs.app.marking import moves_since
from jambs.issued.entry import Entry
from jambs.issued.errors import Unreadable
from jambs.issued.moves import walked_back
from jambs.issued.record import Record
from jambs.screen.measuring import Measuring

_NUMBER = re.compile(r"[^·,\d]*(\d+)\s*(?:[·,]|$)")


@dataclass(frozen=True, slots=True, kw_only=True)
class OnPaper:
    """``printed``: the mark on the paper, of its opening; ``mark``: the opening's today, None where it is gone.

    ``room``: what the issue that the paper is of called its room; nothing where no issue is known to stand behind it.
    """

    printed: str
    mark: str | None
    room: str = ""


def opening_on_paper(measuring: Measuring, printed: str, issue: str) -> OnPaper:
    """Return the opening that a code names; what got another mark since the last issue is found as the next one would.

    ``printed``: the mark of an opening or of one of its parts; ``issue``: the issue as the paper has it. A paper that
    no issue stands behind means the marks of today.
    """
    record = Record.open(measuring.target)
    then = _issue(record, issue)
    if then is None:
        return OnPaper(printed=printed, mark=measuring.mark(printed))
    known = {old.lower(): old for old in then.sheets}
    of_part, _, number = printed.lower().rpartition("-")
    old = known.get(printed.lower()) or (known.get(of_part) if number.isdecimal() else None)
    if old is None:
        return OnPaper(printed=printed, mark=None)
    return OnPaper(printed=old, mark=_marks_today(measuring, record, then).get(old), room=_room(record, then, old))


def _issue(record: Record, issue: str) -> Entry | None:
    """Return the issue that a paper says it is of; nothing where there is no such issue."""
    found = _NUMBER.match(issue)
    return record.issues.get(int(found[1])) if found else None


def _marks_today(measuring: Measuring, record: Record, then: Entry) -> dict[str, str]:
    """Return the marks of an issue → those of today."""
    job = measuring.plan().job
    today, moves = [one.mark for one in job.openings], moves_since(job, measuring.target)
    return dict(next((here for one, here in walked_back(record, today, moves) if one.number == then.number), {}))


def _room(record: Record, then: Entry, mark: str) -> str:
    try:
        return str(record.printed_opening(then.sheets[mark], mark).get("room", ""))
    except Unreadable:
        return ""
