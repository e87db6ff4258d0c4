"""Which opening a printed paper is of today: its mark may have gone to another opening since it was printed."""

from __future__ import annotations

import re
from dataclasses import dataclass

from jambs.issued.moves import walked_back
from jambs.issued.record import Record
from jambs.screen.measuring import Measuring

_NUMBER = re.compile(r"[^·,\d]*(\d+)\s*(?:[·,]|$)")


@dataclass(frozen=True, slots=True, kw_only=True)
class OnPaper:
    """``printed``: the mark on the paper, of its opening; ``mark``: the opening's today, None where it is gone."""

    printed: str
    mark: str | None


def opening_on_paper(measuring: Measuring, printed: str, issue: str) -> OnPaper:
    """Return the opening that a code names.

    ``printed``: the mark of an opening or of one of its parts; ``issue``: the issue as the paper has it. A paper that
    no issue stands behind means the marks of today.
    """
    then = _then(measuring, issue)
    if then is None:
        return OnPaper(printed=printed, mark=measuring.mark(printed))
    known = {old.lower(): old for old in then}
    of_part, _, number = printed.lower().rpartition("-")
    old = known.get(printed.lower()) or (known.get(of_part) if number.isdecimal() else None)
    return OnPaper(printed=old or printed, mark=then[old] if old else None)


def _then(measuring: Measuring, issue: str) -> dict[str, str] | None:
    """Return the marks of an issue → those of today; nothing where there is no such issue."""
    found = _NUMBER.match(issue)
    record = Record.open(measuring.target)
    if found is None or int(found[1]) not in record.issues:
        return None
    today = [one.mark for one in measuring.plan().job.openings]
    marks = next((here for one, here in walked_back(record, today, {}) if one.issue == int(found[1])), {})
    return dict(marks)
