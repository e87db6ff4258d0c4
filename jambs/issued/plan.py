"""The next issue: which openings changed since the last, what their sheets will carry, which earlier papers stay."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from jambs.issued.compare import OpeningChanges, compare_openings
from jambs.issued.durable import file_sums
from jambs.issued.entry import BUILD, PRINTED, Entry, IssuedSheet
from jambs.issued.errors import Unreadable
from jambs.issued.findings import PaperUnreadable
from jambs.issued.opening_figures import trimmed_with
from jambs.issued.other_units import in_units
from jambs.issued.reasons import (
    Added,
    BackAgain,
    BeforeNotOnRecord,
    IssueReason,
    MarksExchanged,
    Removed,
    RenamedTo,
    WithdrawnTo,
    why_text,
)
from jambs.issued.record import Record
from jambs.issued.remarked import REMARKED, Moves, Remarked, remarked_document, remarked_in
from jambs.issued.renaming import moved_openings
from jambs.issued.writing import NewIssue
from jambs.length import Units

Printed = Mapping[str, Any]
"""What the sheets print, opening by opening, as ``parts.json`` has it."""
OTHER_SHAPE = (KeyError, TypeError, ValueError, AttributeError)
"""What comes of a record of parts that is not of today's shape, as an earlier version kept it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class IssuePlan:
    """What the next issue will hold.

    ``last``: the issue that holds. ``sheets``: by mark, unchanged ones as they were issued. ``changes``: of openings
    that were issued before. ``changed``: marks whose sheets are printed anew, the new ones among them. ``gone``: marks
    no longer in the job. ``back``: marks that were gone, with the last issue that had them. ``moves``: mark → the mark
    until now, of openings that have another one. ``not_compared``: marks of changed openings whose former figures
    cannot be read.
    """

    last: Entry | None
    number: int
    day: str
    printed: Printed
    sheets: Mapping[str, IssuedSheet]
    changes: Mapping[str, OpeningChanges]
    changed: tuple[str, ...]
    gone: tuple[str, ...]
    back: Mapping[str, int]
    not_compared: tuple[str, ...]
    moves: Moves

    @property
    def unchanged(self) -> tuple[str, ...]:
        """Marks whose sheets stay as they were issued."""
        changed = {*self.changed}
        return tuple(mark for mark in self.sheets if mark not in changed)

    @property
    def why(self) -> dict[str, tuple[IssueReason, ...]]:
        """Why the sheets of each opening changed, came or went, by mark; nothing of a first issue."""
        if self.last is None:
            return {}
        now = {old: new for new, old in self.moves.items()}
        return {
            **dict.fromkeys(self.changed, (Added(),)),
            **{mark: (BackAgain(number=number),) for mark, number in self.back.items()},
            **{mark: one.why for mark, one in self.changes.items()},
            **dict.fromkeys(self.not_compared, (BeforeNotOnRecord(),)),
            **{mark: (MarksExchanged(mark=other),) for mark, other in self.remarked.exchanged.items()},
            **{mark: (RenamedTo(mark=now[mark]) if mark in now else Removed(),) for mark in self.gone},
        }

    @property
    def remarked(self) -> Remarked:
        """The openings that have another mark."""
        return Remarked.of(self.moves, self.sheets)

    @property
    def units(self) -> Units:
        """The units of what is printed."""
        return Units(self.printed["units"])

    @property
    def is_same(self) -> bool:
        """Say whether no opening changed, came or went."""
        return self.last is not None and not self.changed and not self.gone

    def documents(self) -> dict[str, bytes]:
        """Return what the issue keeps of what it printed."""
        kept = {PRINTED: json.dumps(self.printed, ensure_ascii=False).encode("utf-8")}
        return {**kept, REMARKED: remarked_document(self.remarked)} if self.moves else kept


def plan_issue(record: Record, printed: Printed, *, day: str, tolerance: float, is_whole: bool = True) -> IssuePlan:
    """Compare what a job prints with the last issue and plan the next.

    ``is_whole``: all openings of the job are printed; else those that lack stay as they were issued.
    """
    last = record.latest_issue
    was = last.sheets if last else {}
    whole = printed if is_whole or last is None else _filled(printed, record, last)
    after = {one["mark"]: one for one in whole["openings"]}
    keys = opening_keys(whole)
    built = {one["mark"] for one in printed["openings"]}  # whatever heads all sheets now, the others stay as they hang
    changed = tuple(mark for mark in after if mark not in was or (mark in built and was[mark].key != keys[mark]))
    number = record.next_issue
    new = {mark: IssuedSheet(number=number, day=day, code=_code(keys[mark]), key=keys[mark]) for mark in changed}
    moves = moved_openings(record, whole) if is_whole else {}
    taken = {*moves.values()} - {*moves}
    before = {mark: moves.get(mark, mark) for mark in changed if mark not in taken}
    pairs = {mark: (was[old], old, after[mark]) for mark, old in before.items() if old in was}
    units = whole["units"]
    grids = {sheet.number: (record.printed_grid(sheet), whole["grid"]) for sheet, _, _ in pairs.values()}
    found = {
        mark: _compared(
            record, pair, _neighbors(record, pair[2], pairs, units), tolerance, units, grids[pair[0].number]
        )
        for mark, pair in pairs.items()
    }
    exchanged = {mark: old for mark, old in moves.items() if old in after}
    held = {mark: sheet for mark, sheet in was.items() if mark in after or not is_whole}
    left_alone = [mark for mark in held if mark not in after]
    return IssuePlan(
        last=last,
        number=number,
        day=day,
        printed=whole,
        sheets={mark: new.get(mark) or was[mark] for mark in (*after, *left_alone)},
        changes={mark: _told(one, exchanged) for mark, one in found.items() if one},
        changed=changed,
        gone=tuple(mark for mark in was if mark not in held),
        back=_back([mark for mark, old in before.items() if old not in was], record),
        not_compared=tuple(mark for mark, one in found.items() if one is None),
        moves=moves,
    )


def _told(one: OpeningChanges, exchanged: Mapping[str, str]) -> OpeningChanges:
    """Let an opening that took another's mark say so first, whatever figures then differ."""
    return replace(one, why=(MarksExchanged(mark=exchanged[one.mark]),)) if one.mark in exchanged else one


def _back(new: Iterable[str], record: Record) -> dict[str, int]:
    """Return which of these marks were issued before, with the last issue that had them.

    A mark that went to another name is free: who takes it is new.
    """
    last: dict[str, int] = {}
    for issue in record.issues.values():
        last |= dict.fromkeys(issue.sheets, issue.issue)
        free = {*remarked_in(record, issue).renamed.values()}
        last = {mark: one for mark, one in last.items() if mark not in free}
    return {mark: last[mark] for mark in new if mark in last}


_Pair = tuple[IssuedSheet, str, Printed]
"""The sheets of an opening that are in the shop now, its mark on them, and what it prints now."""


def _neighbors(
    record: Record, opening: Printed, pairs: Mapping[str, _Pair], units: str
) -> Iterator[tuple[Printed, Printed]]:
    """Yield what the openings that one is trimmed with as one print, as it was and as it is; of those that changed."""
    for mark in trimmed_with(opening):
        if mark in pairs:
            sheet, old, now = pairs[mark]
            yield record.printed_opening(sheet, old, units), now


def _compared(
    record: Record,
    pair: _Pair,
    neighbors: Iterable[tuple[Printed, Printed]],
    tolerance: float,
    units: str,
    grids: tuple[Printed, Printed],
) -> OpeningChanges | None:
    """Compare an opening with its sheets that are in the shop now; nothing where what they print cannot be read."""
    sheet, mark, opening = pair
    try:
        was = record.printed_opening(sheet, mark, units)
        return compare_openings(was, opening, tolerance=tolerance, neighbors=neighbors, grids=grids)
    except (Unreadable, *OTHER_SHAPE):
        return None


def _filled(printed: Printed, record: Record, last: Entry) -> Printed:
    """Fill in the openings that were not built this time as they were issued, in the units of now."""
    try:
        before, units = record.printed(last), str(printed["units"])
        was = {one["mark"]: in_units(one, str(before.get("units", units)), units) for one in before["openings"]}
    except (Unreadable, KeyError, TypeError):
        return printed
    new = {one["mark"]: one for one in printed["openings"]}
    return {**printed, "openings": [*({**was, **new}).values()]}


def opening_keys(printed: Printed) -> dict[str, str]:
    """Return what tells two states of an opening apart, all that its sheets print, by mark."""
    job = {"job": printed["job"]["name"], "units": printed["units"], "grid": printed["grid"]}
    job |= {"address": printed["job"]["address"]} if "address" in printed["job"] else {}
    return {one["mark"]: _key({**job, "opening": one}) for one in printed["openings"]}


def shape_keys(printed: Printed) -> dict[str, str]:
    """Return what tells two states of an opening apart whatever boards its parts come out of, by mark."""
    return opening_keys({**printed, "openings": [_without_boards(one) for one in printed["openings"]]})


def _without_boards(opening: Printed) -> Printed:
    return {**opening, "parts": [{**part, "board": ""} for part in opening["parts"]]}


def _key(told: Printed) -> str:
    return hashlib.sha256(json.dumps(told, sort_keys=True, ensure_ascii=False).encode("utf-8")).hexdigest()


def _code(key: str) -> str:
    return key[:4].upper()


def new_issue(record: Record, plan: IssuePlan, staged: Path) -> NewIssue | None:
    """Return what makes the staged papers an issue; nothing where not a file differs from what holds."""
    if plan.is_same and _covers(record, staged):
        return None
    why = {mark: why_text(reasons, plan.units) for mark, reasons in plan.why.items()}
    return NewIssue(sheets=plan.sheets, changed=(*plan.changed, *plan.gone), why=why)


def _covers(record: Record, staged: Path) -> bool:
    holds = record.latest.files if record.latest else {}
    return all(holds.get(path) == digest for path, digest in file_sums(staged).items())


def put_back(record: Record, marks: Collection[str], staged: Path) -> list[str]:
    """Put the papers of some openings, which did not change, among the new ones as they were issued, byte for byte.

    Return the paths of those whose kept copy is damaged; they stay as they were drawn now.
    """
    damaged, unchanged = [], {*marks}
    for path, paper in record.papers.items():
        is_unchanged = bool(paper.marks) and unchanged.issuperset(paper.marks)
        if paper.verb == BUILD and is_unchanged and (staged / path).is_file():
            content = record.blobs.found(paper.sha256)
            if content is None:
                damaged.append(path)
            else:
                (staged / path).write_bytes(content)
    return damaged


def papers_that_stay(record: Record, plan: IssuePlan, *, is_whole: bool, kinds: tuple[str, ...]) -> list[str]:
    """Return the paths of earlier papers of a build that stay although they are not written this time.

    ``is_whole``: the whole house was built; then only papers of some ``kinds`` stay, which were left out. No paper of
    an opening that changed or is gone stays.
    """
    void = {*plan.changed, *plan.gone}
    return [
        path
        for path, paper in record.papers.items()
        if paper.verb == BUILD and (not is_whole or paper.kind in kinds) and not void & set(paper.marks)
    ]


def lay_out(record: Record, issue: Entry, folder: Path) -> None:
    """Write all papers of an issue into an empty folder.

    Raises:
        Unreadable: the kept copy of one is gone or damaged.
    """
    for path, digest in issue.files.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        try:
            (folder / path).write_bytes(record.blobs.kept(digest))
        except Unreadable as error:
            raise Unreadable(PaperUnreadable(path=path, why=error.findings)) from None


def why_withdrawn(record: Record, earlier: Entry) -> dict[str, WithdrawnTo]:
    """Return the openings whose sheets are others in an earlier issue than in the one that holds, and the reason."""
    last = record.latest_issue
    now = last.sheets if last else {}
    marks = dict.fromkeys((*earlier.sheets, *now))
    differs = (mark for mark in marks if now.get(mark) != earlier.sheets.get(mark))
    return dict.fromkeys(differs, WithdrawnTo(number=earlier.issue))


def withdrawn(record: Record, earlier: Entry) -> NewIssue:
    """Return the issue that goes back to an earlier one; nothing issued since is lost."""
    why = {mark: one.sentence(Units.INCH) for mark, one in why_withdrawn(record, earlier).items()}
    return NewIssue(sheets=earlier.sheets, changed=tuple(why), why=why, same_as=earlier.issue)
