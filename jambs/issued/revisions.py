"""The issues of each opening, with their day and what changed in them: the table in the title block of its drawing.

They go with the opening, whatever its mark was then.
"""

from __future__ import annotations

from collections.abc import Mapping

from jambs.issue_stamp import Revision
from jambs.issued.moves import walked_back
from jambs.issued.plan import IssuePlan
from jambs.issued.reasons import Added, why_text
from jambs.issued.record import Record
from jambs.length import Units

FIRST_ISSUE = "first issue"


def revisions(record: Record, plan: IssuePlan) -> Mapping[str, tuple[Revision, ...]]:
    """Return the issues that the sheets of each opening were printed in, up to the one they will carry, by mark.

    The first one is first. It is alike in every later build of the same issue.
    """
    found: dict[str, dict[int, Revision]] = {mark: {} for mark in plan.sheets}
    for issue, here in walked_back(record, plan.sheets, plan.moves):
        for then, mark in here.items():
            sheet = issue.sheets.get(then)
            if sheet and sheet.number == issue.issue:
                words = _words(issue.why.get(then, ""))
                found[mark][sheet.number] = Revision(number=sheet.number, day=sheet.day, words=words, mark=then)
    return {mark: _up_to_now(mark, plan, those) for mark, those in found.items()}


def _up_to_now(mark: str, plan: IssuePlan, found: Mapping[int, Revision]) -> tuple[Revision, ...]:
    sheet, words = plan.sheets[mark], _words(why_text(plan.why.get(mark, ()), plan.units))
    new = {sheet.number: Revision(number=sheet.number, day=sheet.day, words=words, mark=mark)}
    every = {**new, **found}
    return tuple(every[number] for number in sorted(every) if number <= sheet.number)


def _words(why: str) -> str:
    return FIRST_ISSUE if why in ("", Added().sentence(Units.INCH)) else why
