"""What a build has issued, and what was issued so far, in a few lines for a terminal."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from jambs.app.issuing import CHANGED_CUT, INDEX, OF_ISSUE
from jambs.app.old_labels import OLD_LABELS, cut_tolerance
from jambs.app.paper_names import SHEET_TO_CUT
from jambs.issued.compare import Both, OpeningChanges, compare_openings
from jambs.issued.entry import BUILD, Entry
from jambs.issued.errors import Unreadable
from jambs.issued.moves import walked_back
from jambs.issued.opening_figures import trimmed_with
from jambs.issued.plan import OTHER_SHAPE
from jambs.issued.reasons import Added, HeadOfJobChanged, MarksExchanged, why_text
from jambs.issued.record import Record
from jambs.issued.remarked import remarked_in
from jambs.issued.verdict_reasons import NoLongerNeeded, Recut
from jambs.job import Job
from jambs.length import Units


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
        return f"Issue {last.issue}: {_beside_sheets(_told(record), last)}."
    said = [_to_print(record, last, changed), *changed_lines(record, job)]
    if OLD_LABELS in record.papers:
        said.append(f"What labels on boards mean now is listed in `{OLD_LABELS}`.")
    return "\n".join([*said, f"All current sheets are listed in `{INDEX}`."])


def _beside_sheets(before: Entry | None, issue: Entry) -> str:
    """Say what an issue has that the one before it had not, where the sheets of every opening are the same."""
    came = _openings_of_papers_that_came(before, issue)
    if before and came and _lists(before) == _lists(issue):
        return f"papers of {', '.join(came)} that were left out before; no sheet and no list changed"
    return "lists of the house changed, sheets of single openings did not"


def _openings_of_papers_that_came(before: Entry | None, issue: Entry) -> list[str]:
    there = before.files if before else {}
    new = (paper.marks for path, paper in issue.papers_of(BUILD).items() if path not in there)
    return list(dict.fromkeys(mark for marks in new for mark in marks))


def _lists(issue: Entry) -> dict[str, str]:
    """Return the papers of the whole house but those of the issue itself: path → sha256."""
    papers = issue.papers_of(BUILD).items()
    return {path: paper.sha256 for path, paper in papers if not paper.marks and paper.kind != OF_ISSUE}


def _to_print(record: Record, last: Entry, changed: Sequence[str]) -> str:
    """Say which sheets changed and which papers to print, all of which are there; where openings only went, none."""
    held = [mark for mark in changed if mark in last.sheets]
    if not held:
        return f"Issue {last.issue}, nothing to print; destroy the void sheets:"
    is_together = CHANGED_CUT in record.papers and set(held) <= set(last.changed)
    papers = [CHANGED_CUT] if is_together else [SHEET_TO_CUT.path(mark) for mark in held]
    named = ", ".join(f"`{path}`" for path in papers if path in record.papers)
    return f"Issue {last.issue}, changed sheets of {', '.join(held)}; print {named} and destroy the old ones:"


def changed_lines(record: Record, job: Job) -> list[str]:
    """Return a line for each opening that was issued and not told yet: why, and which cut parts to cut again; one for
    all of which the same is said.
    """
    told, last = _told(record), record.latest_issue
    assert last
    said: dict[str, list[str]] = {}
    for mark in _changed_since(record, told):
        said.setdefault(_changed_line(record, told, last, mark, job), []).append(mark)
    return [f"  {', '.join(marks)}: {line}" for line, marks in said.items()]


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
        why = last.why.get(mark) or _last_why(record, mark) or "gone"
        return f"{why}; its sheets and labels are void" if told and mark in told.sheets else why
    was = _mark_then(record, told, mark)
    if told is None or was is None:
        return f"{last.why.get(mark) or Added().sentence(job.units)}{_again(record, last, mark)}"
    try:
        found = _compared(record, told, last, mark, job)
    except (Unreadable, *OTHER_SHAPE):
        return f"{last.why.get(mark) or 'changed'}; hold the old sheets against the new ones, figure by figure"
    recut = _in_order({one.mark for one in found.changes if isinstance(one.verdict, Recut)})
    dropped = _in_order({one.mark for one in found.changes if isinstance(one.verdict, NoLongerNeeded)})
    count = len(found.changes)
    exchanged = remarked_in(record, last).exchanged.get(mark)
    whys = (MarksExchanged(mark=exchanged),) if exchanged else found.why
    if last.same_as and not found.changes and any(isinstance(why, HeadOfJobChanged) for why in whys):
        return f"no figure changed; its sheet is that of issue {last.same_as} again"
    counted = f"{why_text(whys, job.units)}, {count or 'no'} {'figures' if count > 1 else 'figure'} changed"
    cut = [f"recut {', '.join(recut)}"] * bool(recut) + [f"throw away {', '.join(dropped)}"] * bool(dropped)
    return f"{counted}{_again(record, last, mark)}" + (f"; if cut already, {', '.join(cut)}" if cut else "")


def _in_order(marks: Iterable[str]) -> list[str]:
    """Return part marks as they are counted: ``W1-9`` before ``W1-10``."""
    return sorted(marks, key=lambda mark: (len(mark), mark))


def _last_why(record: Record, mark: str) -> str:
    return next((one.why[mark] for one in reversed(record.issues.values()) if mark in one.why), "")


def _mark_then(record: Record, told: Entry | None, mark: str) -> str | None:
    """Return the mark that an opening had when it was told last, None where it was not there."""
    for issue, today in walked_back(record, [mark], {}):
        if told and issue.number == told.number:
            return next((then for then in today if then in issue.sheets), None)
    return None


def _compared(record: Record, told: Entry, last: Entry, mark: str, job: Job) -> OpeningChanges:
    units = Units(record.printed(last).get("units", job.units))  # an issue that came back may be in others than the job
    old, new = _both(record, told, last, mark, units)
    beside = [one for one in trimmed_with(new) if one in last.sheets and _mark_then(record, told, one)]
    neighbors = (_both(record, told, last, one, units) for one in beside)
    then = told.sheets[_mark_then(record, told, mark) or mark]
    grids = record.printed_grid(then), record.printed_grid(last.sheets[mark])
    return compare_openings(old, new, tolerance=cut_tolerance(job, units), neighbors=neighbors, grids=grids)


def _both(record: Record, told: Entry, last: Entry, mark: str, units: Units) -> Both:
    """Return what an opening printed in the issue that was told last, and what it prints now, in the units of now."""
    was = _mark_then(record, told, mark) or mark
    old, new = (told.sheets[was], was), (last.sheets[mark], mark)
    return record.printed_opening(*old, units.value), record.printed_opening(*new, units.value)


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
    issues = [*record.issues.values()]
    for before, issue in reversed([*zip([None, *issues], issues, strict=False)]):
        same = f", same as issue {issue.same_as}" if issue.same_as else ""
        changed = ", ".join(issue.changed) or _what_only(before, issue)
        lines.append(f"issue {issue.issue:>3}  {issue.day}  {changed}{same}")
        lines += [f"            {mark}: {why}" for mark, why in issue.why.items()]
    return "\n".join(lines) or "nothing issued yet; `jambs build` makes the first issue"


def _what_only(before: Entry | None, issue: Entry) -> str:
    came = _openings_of_papers_that_came(before, issue)
    is_more = before and came and _lists(before) == _lists(issue)
    return f"more papers of {', '.join(came)}" if is_more else "lists only"
