"""The next issue: which openings changed since the last, what their sheets will carry."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from jambs.issued.compare import OpeningChanges, compare_openings
from jambs.issued.store import Issue, IssuedSheet, Store

Record = Mapping[str, Any]


@dataclass(frozen=True, slots=True, kw_only=True)
class IssuePlan:
    """What the next issue will hold.

    ``sheets``: by mark, unchanged ones as they were issued. ``changes``: of openings that were issued before.
    ``changed``: marks whose sheets are printed anew, the new ones among them. ``gone``: marks no longer in the job.
    """

    last: Issue | None
    number: int
    day: str
    record: Record
    sheets: Mapping[str, IssuedSheet]
    changes: Mapping[str, OpeningChanges]
    changed: tuple[str, ...]
    gone: tuple[str, ...]

    @property
    def unchanged(self) -> tuple[str, ...]:
        """Marks whose sheets stay as they were issued."""
        return tuple(mark for mark in self.sheets if mark not in self.changed)


def plan_issue(store: Store, record: Record, *, day: str, tolerance: float, is_whole: bool = True) -> IssuePlan:
    """Compare a job's record (as ``parts.json``) with the last issue and plan the next.

    ``is_whole``: the record has all openings of the job; else those it lacks stay as they were issued.
    """
    last = store.last()
    number = last.number + 1 if last else 1
    before = {one["mark"]: one for one in store.record(last)["openings"]} if last else {}
    whole = _whole(record, before, is_whole=is_whole)
    after = {one["mark"]: one for one in whole["openings"]}
    keys = {mark: opening_key(whole, mark) for mark in after}
    was = last.sheets if last else {}
    changed = tuple(mark for mark in after if mark not in was or was[mark].key != keys[mark])
    new = {mark: IssuedSheet(number=number, day=day, code=_code(keys[mark]), key=keys[mark]) for mark in changed}
    changes = {
        mark: compare_openings(before[mark], after[mark], tolerance=tolerance) for mark in changed if mark in before
    }
    return IssuePlan(
        last=last,
        number=number,
        day=day,
        record=whole,
        sheets={mark: new.get(mark) or was[mark] for mark in after},
        changes=changes,
        changed=changed,
        gone=tuple(mark for mark in was if mark not in after),
    )


def _whole(record: Record, before: Mapping[str, Record], *, is_whole: bool) -> Record:
    """Fill in the openings that were not built this time as they were issued."""
    if is_whole:
        return record
    new = {one["mark"]: one for one in record["openings"]}
    return {**record, "openings": [*({**before, **new}).values()]}


def opening_key(record: Record, mark: str) -> str:
    """Return what tells two states of an opening apart: all that its sheets print."""
    opening = next(one for one in record["openings"] if one["mark"] == mark)
    told = {"job": record["job"]["name"], "units": record["units"], "grid": record["grid"], "opening": opening}
    return hashlib.sha256(json.dumps(told, sort_keys=True, ensure_ascii=False).encode("utf-8")).hexdigest()


def _code(key: str) -> str:
    return key[:4].upper()


def keep_issue(store: Store, plan: IssuePlan, folder: Path) -> Issue | None:
    """Keep what stands in a folder as the next issue; nothing where not a file differs from the last.

    Files of the last issue that are not in the folder stay part of it, but for those of openings that are gone.
    """
    files = {path: store.keep((folder / path).read_bytes()) for path in _paths(folder)}
    if plan.last and not plan.changed and not plan.gone and _covers(plan.last.files, files):
        return None
    old = {path: digest for path, digest in (plan.last.files if plan.last else {}).items() if path not in files}
    stay = {path: digest for path, digest in old.items() if mark_of(path, plan.sheets) or not mark_of(path, plan.gone)}
    issue = Issue(
        number=plan.number,
        day=plan.day,
        sheets=plan.sheets,
        files={**stay, **files},
        record=store.keep(json.dumps(plan.record, ensure_ascii=False).encode("utf-8")),
        changed=plan.changed,
        why={mark: one.why for mark, one in plan.changes.items()},
    )
    store.commit(issue, folder)
    return issue


def _paths(folder: Path) -> list[str]:
    return sorted(path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file())


def _covers(old: Mapping[str, str], new: Mapping[str, str]) -> bool:
    return all(old.get(path) == digest for path, digest in new.items())


def mark_of(path: str, marks: Iterable[str]) -> str | None:
    """Return the opening that a paper is of, by its name: ``cut sheets/W03.pdf``, ``drawings/W03 flat.dxf``."""
    if "/" not in path:
        return None
    name = path.rpartition("/")[2]
    return next((mark for mark in marks if name.startswith((f"{mark}.", f"{mark} "))), None)


def put_back(store: Store, plan: IssuePlan, folder: Path) -> None:
    """Put the papers of unchanged openings into a folder as they were issued, byte for byte."""
    if plan.last is None:
        return
    for path, digest in plan.last.files.items():
        if mark_of(path, plan.unchanged) and (folder / path).is_file():
            (folder / path).write_bytes(store.kept(digest))


def lay_out(store: Store, issue: Issue, folder: Path) -> None:
    """Write all files of an issue into an empty folder."""
    for path, digest in issue.files.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_bytes(store.kept(digest))


def withdraw_to(store: Store, number: int, *, day: str, renewed: Mapping[str, str] | None = None) -> Issue:
    """Go back to an earlier issue: a new issue that is the same as that one; nothing issued since is lost.

    ``renewed``: files that differ all the same, such as the index: path -> sha256 of what is kept.

    Raises:
        IssueError: there is no such issue, or one of its files is gone.
    """
    earlier = store.issue(number)
    last = store.last()
    assert last is not None
    for digest in earlier.files.values():
        store.kept(digest)
    differs = [mark for mark, sheet in earlier.sheets.items() if last.sheets.get(mark) != sheet]
    issue = replace(
        earlier,
        number=last.number + 1,
        files={**earlier.files, **(renewed or {})},
        day=day,
        same_as=number,
        changed=tuple(differs),
        why={mark: f"withdrawn to issue {number}" for mark in differs},
    )
    store.commit(issue, store.folder)
    return issue
