"""What a sheet says of its issue: number, day, a short code, and what changed since the issue before."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Protocol

from jambs.findings import Statement
from jambs.issue_stamp import IssueStamp, Revision
from jambs.length import Units
from jambs.values import Record


class ChangeLine(Protocol):
    """One changed figure as it is printed."""

    @property
    def mark(self) -> str:
        """Mark of the part, empty for a figure of the opening."""

    @property
    def what(self) -> str:
        """Name of the figure."""

    @property
    def old(self) -> str:
        """As it was."""

    @property
    def new(self) -> str:
        """As it is."""

    @property
    def verdict(self) -> Statement | None:
        """What to do with a part that is cut already; None for a figure of the opening."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stamp:
    """The issue of one sheet: ``number`` counts issues of the job; ``code`` is short and differs for other figures.

    ``measured``, ``replaces``, ``replaced_mark``: as ``IssueStamp`` has them. ``revisions``: this one and those before
    it. ``since``: the issue that the ``changes`` are told from.
    """

    number: int
    day: str
    code: str
    measured: str = ""
    replaces: int | None = None
    replaced_mark: str = ""
    revisions: tuple[Revision, ...] = ()
    since: int | None = None
    why: str = ""
    changes: Sequence[ChangeLine] = ()

    @property
    def issue(self) -> IssueStamp:
        """What every paper of the opening says of its issue."""
        return IssueStamp(
            number=self.number,
            day=self.day,
            code=self.code,
            measured=self.measured,
            replaces=self.replaces,
            replaced_mark=self.replaced_mark,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Stamps:
    """Stamps by opening mark; sheets of openings without one are not issued. ``house``: of lists of the whole house.

    ``boards``: of those lists that name the boards of parts, which a cutting plan may change.
    """

    by_mark: Mapping[str, Stamp] = field(default_factory=dict)
    house: IssueStamp | None = None
    boards: IssueStamp | None = None

    def of(self, mark: str) -> IssueStamp | None:
        """Return what every paper of an opening says of its issue."""
        stamp = self.by_mark.get(mark)
        return stamp.issue if stamp else None

    def revisions(self, mark: str) -> tuple[Revision, ...]:
        """Return the issues of an opening, the first one first; none where it is not issued."""
        stamp = self.by_mark.get(mark)
        return stamp.revisions if stamp else ()

    @property
    def house_foot(self) -> str:
        """What stands at the foot of a list of the whole house, empty where nothing is issued."""
        return self.house.text if self.house else ""

    @property
    def boards_foot(self) -> str:
        """What stands at the foot of a list that names boards, empty where nothing is issued."""
        return self.boards.text if self.boards else ""

    def foot(self, mark: str) -> str:
        """Return what stands at the foot of a sheet: ``issue 4 · 2026-05-18 · 7F3A``; empty where nothing is issued."""
        stamp = self.by_mark.get(mark)
        return stamp.issue.text if stamp else ""

    def sheet_data(self, mark: str) -> Record:
        """Return what a cut sheet prints of its issue: its foot, what changed and why, the marks that changed."""
        stamp = self.by_mark.get(mark)
        changes = stamp.changes if stamp else ()
        return {
            "stamp": self.foot(mark),
            "since": stamp.since if stamp and changes else None,
            "why_changed": stamp.why if stamp else "",
            "changes": [change_row(one) for one in changes],
            "changed_marks": sorted({one.mark for one in changes if one.mark}),
        }


def change_row(one: ChangeLine) -> Record:
    """Return one changed figure as it is printed."""
    verdict = one.verdict.sentence(Units.INCH) if one.verdict else ""
    return {"mark": one.mark, "what": one.what, "old": one.old, "new": one.new, "verdict": verdict}


NOT_ISSUED = Stamps()
