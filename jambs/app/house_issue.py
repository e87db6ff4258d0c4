"""What lists of the whole house say of their issue, and what papers of other verbs say of it.

Their issue is the last one in which anything that they print changed; it is kept with every issue as a document.
"""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass
from pathlib import Path

from jambs.app.writing import record_faults, today
from jambs.issue_stamp import IssueStamp
from jambs.issued.basis import DEPENDS, HOUSE, SHAPES, SHEETS, Basis, differing, digest, of_shapes
from jambs.issued.entry import Entry
from jambs.issued.errors import Unreadable
from jambs.issued.record import Record

HOUSE_ISSUE = "house.json"
"""The document of an issue that holds the stamp of its lists, and what they were made from."""
CODE = 4
"""Letters of a code."""


def code_of(thing: object) -> str:
    """Return the code of something: short, and another for other figures."""
    return digest(thing)[:CODE].upper()


def house_stamp(record: Record, basis: Basis, *, number: int, day: str, names_boards: bool = False) -> IssueStamp:
    """Return the stamp of the lists of the next issue: that of the last one where nothing they print changed.

    ``names_boards``: of those that say which board a part comes out of.
    """
    last = last_house(record)
    if last is None:
        return IssueStamp(number=number, day=day, code=_house_code(basis))
    stamp = last.boards if names_boards else last.stamp
    was, now = (last.basis, basis) if names_boards or SHAPES not in last.basis else map(of_shapes, (last.basis, basis))
    if not differing(was, now, (SHEETS, HOUSE)):
        return stamp
    return IssueStamp(number=number, day=day, code=_house_code(basis), replaces=stamp.number)


def _house_code(basis: Basis) -> str:
    return code_of([basis.get(SHEETS), basis.get(HOUSE)])


def house_document(stamp: IssueStamp, boards: IssueStamp, basis: Basis) -> dict[str, bytes]:
    """Return the document that is kept of the lists of an issue; ``boards``: the stamp of those that name boards."""
    kept = {"stamp": asdict(stamp), "boards": asdict(boards), "basis": basis}
    return {HOUSE_ISSUE: json.dumps(kept, sort_keys=True).encode()}


def kept_document(record: Record, issue: Entry | None = None) -> dict[str, bytes]:
    """Return the document of an issue, the last one if none is named, for an issue that writes no lists."""
    try:
        issue = issue or record.latest_issue
        return {HOUSE_ISSUE: record.document(issue, HOUSE_ISSUE)} if issue else {}
    except Unreadable:
        return {}


@dataclass(frozen=True, slots=True, kw_only=True)
class HouseIssue:
    """The stamp of the lists of an issue, that of those which name boards, and what all of them were made from."""

    stamp: IssueStamp
    boards: IssueStamp
    basis: Basis


def last_house(record: Record, issue: Entry | None = None) -> HouseIssue | None:
    """Return what is kept of the lists of an issue, of the one that holds if none is named.

    What an earlier version kept has one stamp for all.
    """
    content = kept_document(record, issue).get(HOUSE_ISSUE)
    try:
        found = json.loads(content or b"")
        return HouseIssue(
            stamp=IssueStamp(**found["stamp"]),
            boards=IssueStamp(**found.get("boards", found["stamp"])),
            basis={name: dict(group) for name, group in found["basis"].items()},
        )
    except (ValueError, KeyError, TypeError, AttributeError):
        return None


def paper_stamp(record: Record, verb: str, basis: Basis, *, day: str) -> str:
    """Return what a paper of another verb than build says of the issue: which one it was made from.

    Where the job changed since, it says so; its code then is its own.
    """
    last, groups = last_house(record), DEPENDS[verb][:1]
    if last and not differing(last.basis, basis, groups):
        return last.stamp.text
    code = code_of([basis.get(group) for group in groups])
    number = record.latest_issue.issue if record.latest_issue else None
    return f"{f'changed since issue {number}' if number else 'not issued'} · {day} · {code}"


def stamp_of(folder: Path, verb: str, basis: Basis) -> str:
    """Return what a paper of a verb says today of the issue in a folder of papers.

    Raises:
        Unbuildable: the record was written by a later version.
    """
    with record_faults():
        return paper_stamp(Record.open(folder), verb, basis, day=today())
