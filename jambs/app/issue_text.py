"""What a build has issued, and what was issued so far, in a few lines for a terminal."""

from __future__ import annotations

from jambs.app.issuing import CHANGED_CUT, INDEX, cut_tolerance
from jambs.issued.compare import RECUT, OpeningChanges, compare_openings
from jambs.issued.entry import Entry
from jambs.issued.errors import Unreadable
from jambs.issued.plan import OTHER_SHAPE
from jambs.issued.record import Record
from jambs.job import Job


def issued_text(record: Record, job: Job) -> str:
    """Say what was issued and not told yet, and which cut parts have to be cut again."""
    last = record.latest_issue
    if last is None:
        return "Nothing was issued."
    if record.told >= last.issue:
        return f"Nothing changed since issue {last.issue}."
    first = next(iter(record.issues))
    if last.issue == first:
        count = len(last.sheets)
        return f"Issue {last.issue}: first issue of {count} {'opening' if count == 1 else 'openings'}."
    changed = _changed_since(record, _told(record))
    if not changed:
        return f"Issue {last.issue}: lists of the house changed, sheets of single openings did not."
    lines = changed_lines(record, job)
    text = f"Issue {last.issue}, changed sheets of {', '.join(changed)}; "
    text += f"print `{CHANGED_CUT}` and destroy the old ones:"
    return "\n".join([text, *lines, f"All current sheets are listed in `{INDEX}`."])


def changed_lines(record: Record, job: Job) -> list[str]:
    """Return a line for each opening that was issued and not told yet: why, and which cut parts to cut again."""
    told, last = _told(record), record.latest_issue
    assert last
    return [_changed_line(record, told, last, mark, job) for mark in _changed_since(record, told)]


def _told(record: Record) -> Entry | None:
    """Return the issue that was told last, the first one where none was."""
    return record.issues.get(max(record.told, next(iter(record.issues))))


def _changed_since(record: Record, told: Entry | None) -> list[str]:
    """Return the marks of openings whose sheets were issued after what was told."""
    number = told.issue if told else 0
    later = (issue for issue in record.issues.values() if issue.issue > number)
    return list(dict.fromkeys(mark for issue in later for mark in issue.changed))


def _changed_line(record: Record, told: Entry | None, last: Entry, mark: str, job: Job) -> str:
    if mark not in last.sheets:
        return f"  {mark}: gone"
    if told is None or mark not in told.sheets:
        return f"  {mark}: new{_again(record, last, mark)}"
    try:
        found = _compared(record, told, last, mark, job)
    except (Unreadable, *OTHER_SHAPE):
        return f"  {mark}: {last.why.get(mark) or 'changed'}; compare the sheets, its figures then are not on record"
    recut = sorted({one.mark for one in found.changes if one.verdict.startswith(RECUT)})
    counted = f"  {mark}: {found.why}, {len(found.changes)} figures changed{_again(record, last, mark)}"
    return f"{counted}; if cut already, recut {', '.join(recut)}" if recut else counted


def _compared(record: Record, told: Entry, last: Entry, mark: str, job: Job) -> OpeningChanges:
    was, now = (record.printed_opening(issue.sheets[mark], mark) for issue in (told, last))
    return compare_openings(was, now, tolerance=cut_tolerance(job))


def _again(record: Record, last: Entry, mark: str) -> str:
    """Say where a sheet is again what was withdrawn before."""
    issues = [issue for issue in record.issues.values() if issue.issue < last.issue]
    if last.same_as or not issues or issues[-1].same_as is None:
        return ""
    back = issues[-1]
    was = [one.issue for one in issues if one.sheets.get(mark) and one.sheets[mark].key == last.sheets[mark].key]
    is_again = was and back.sheets.get(mark) and back.sheets[mark].key != last.sheets[mark].key
    return f" (again as in issue {was[-1]}, which issue {back.issue} withdrew)" if is_again else ""


def revisions_text(record: Record) -> str:
    """Return a line for each issue, the last one first."""
    lines = []
    for issue in reversed(record.issues.values()):
        same = f", same as issue {issue.same_as}" if issue.same_as else ""
        changed = ", ".join(issue.changed) or "lists only"
        lines.append(f"issue {issue.issue:>3}  {issue.day}  {changed}{same}")
        lines += [f"            {mark}: {why}" for mark, why in issue.why.items()]
    return "\n".join(lines) or "nothing issued yet; `jambs build` makes the first issue"
