"""The issues of one opening, each with its day and what changed in it: the table in the title block of its drawing."""

from __future__ import annotations

from jambs.issue_stamp import Revision
from jambs.issued.plan import IssuePlan
from jambs.issued.reasons import Added, why_text
from jambs.issued.record import Record
from jambs.length import Units

FIRST_ISSUE = "first issue"


def revisions_of(record: Record, plan: IssuePlan, mark: str) -> tuple[Revision, ...]:
    """Return the issues that an opening's sheets were printed in, up to the one they will carry, the first one first.

    It is alike in every later build of the same issue.
    """
    found: dict[int, Revision] = {}
    for entry in record.issues.values():
        sheet = entry.sheets.get(mark)
        if sheet and sheet.number == entry.issue:
            found[sheet.number] = Revision(number=sheet.number, day=sheet.day, words=_words(entry.why.get(mark, "")))
    sheet = plan.sheets[mark]
    if sheet.number not in found:
        words = _words(why_text(plan.why.get(mark, ()), plan.units))
        found[sheet.number] = Revision(number=sheet.number, day=sheet.day, words=words)
    return tuple(found[number] for number in sorted(found) if number <= sheet.number)


def _words(why: str) -> str:
    return FIRST_ISSUE if why in ("", Added().sentence(Units.INCH)) else why
