"""What a label says of its issue: the one that holds, if the opening is as it was issued."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from jambs.app.old_labels import OLD_LABELS
from jambs.app.writing import record_faults
from jambs.issued.entry import IssuedSheet
from jambs.issued.errors import Unreadable
from jambs.issued.plan import OTHER_SHAPE, Printed, opening_keys, shape_keys
from jambs.issued.record import Record

NOT_ISSUED = "not issued"


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelIssues:
    """What labels say of their issue, by opening mark; and what is to be known of it, in sentences."""

    words: Mapping[str, str]
    sentences: Sequence[str]


def label_issues(printed: Printed, folder: Path) -> LabelIssues:
    """Hold what the sheets of a job would print against the issue that holds in a folder of papers.

    Raises:
        Unbuildable: the record of the folder is of a later version.
    """
    with record_faults():
        record = Record.open(folder)
    last = record.latest_issue
    sheets = last.sheets if last else {}
    keys = opening_keys(printed)
    held = {mark: sheets[mark] for mark, key in keys.items() if mark in sheets and sheets[mark].key == key}
    changed = {mark: sheets[mark] for mark in keys if mark in sheets and mark not in held}
    held |= _but_for_boards(record, changed, printed)
    words = {mark: f"issue {sheet.number} · {sheet.code}" for mark, sheet in held.items()}
    other = [mark for mark in keys if mark not in held]
    return LabelIssues(
        words={**dict.fromkeys(other, NOT_ISSUED), **words},
        sentences=[*_not_issued(other, is_first=last is None), *_old(record)],
    )


def _but_for_boards(record: Record, sheets: Mapping[str, IssuedSheet], printed: Printed) -> dict[str, IssuedSheet]:
    """Return the sheets that differ from what is printed now in the boards that parts come out of only.

    A plan that names other boards leaves every part as it was issued, and a label is of the part.
    """
    now, then = shape_keys(printed), dict[int, Mapping[str, str]]()
    for number in {sheet.number for sheet in sheets.values()}:
        with suppress(Unreadable, *OTHER_SHAPE):
            then[number] = shape_keys(record.printed(record.issues[number]))
    return {mark: one for mark, one in sheets.items() if then.get(one.number, {}).get(mark) == now[mark]}


def _not_issued(marks: Sequence[str], *, is_first: bool) -> list[str]:
    if not marks:
        return []
    those = "none of these parts was issued yet" if is_first else f"{', '.join(marks)} changed since the last issue"
    return [f"{those}: the labels say *{NOT_ISSUED}*; run jambs build, then jambs labels again"]


def _old(record: Record) -> list[str]:
    """Name the page that says what becomes of labels that are on boards already."""
    return [f"what older labels mean now is listed in {OLD_LABELS}"] if OLD_LABELS in record.papers else []
