"""The record of the earlier format: one file an issue, a list of written files in each folder, no chain.

``issued/0003.json`` named its files by content, but not which opening a file is of; that was guessed by how a name
begins, so that a changed ``W1.2`` could keep its old sheet where there was a ``W1`` too. Here a file is of an opening
only if its whole name is the one that the earlier format gave, and an opening whose sheet stayed the same although it
was issued anew is issued again.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from jambs.issued.blobs import Blobs
from jambs.issued.chain import Damage, EntryChain
from jambs.issued.durable import file_sha256, sha256_of
from jambs.issued.entry import BUILD, PRINTED, Entry, IssuedSheet, JobIdentity, WrittenPaper
from jambs.issued.entry_file import entry_bytes, item, items, read_plain, sha256_item, sheet_of, sums, texts
from jambs.issued.errors import Unreadable
from jambs.issued.findings import EntryUnreadable, NumberOfAnother
from jambs.issued.paths import EARLIER_LOG, FOLDER, WITNESS, safe_path

MIGRATED = "earlier format"
"""Stands for the verb of the entry that takes an earlier record over."""
OPENING_PAPERS = (
    ("cut sheets", ".pdf", "cut sheet"),
    ("install sheets", ".pdf", "install sheet"),
    ("drawings", ".dxf", "drawing"),
    ("drawings", " flat.dxf", "drawing"),
    ("solids", ".step", "solid"),
    ("solids", ".glb", "solid"),
    ("solids", " fit.csv", "solid"),
)
"""Folder, end of the name behind the mark, kind."""
OTHER_VERBS = {
    "placement comparison.pdf": "compare",
    "placement.json": "compare",
    "placement.csv": "compare",
    "buying list.pdf": "buy",
    "buying list.csv": "buy",
    "cut list.csv": "buy",
    "cutting plan.pdf": "buy",
    "drops.csv": "buy",
    "plan.json": "buy",
    "measure sheets.pdf": "measure",
    "depths to measure.pdf": "measure",
    "labels.pdf": "labels",
}
"""Names that no build wrote, and the verb that did."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EarlierRecord:
    """An earlier record as entries; ``files``: its own files, which stand aside once it is taken over."""

    chain: EntryChain
    files: tuple[Path, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Issue:
    number: int
    day: str
    sheets: Mapping[str, IssuedSheet]
    files: Mapping[str, str]
    printed: str
    same_as: int | None
    changed: tuple[str, ...]
    why: Mapping[str, str]


def read_earlier(folder: Path, blobs: Blobs) -> EarlierRecord | None:
    """Read what a folder has on record in the earlier format, nothing where there is none.

    The entry that made an issue has its number; one more takes the whole over. The same files give the same entries.
    """
    numbered = sorted((folder / FOLDER).glob("[0-9][0-9][0-9][0-9].json"))
    listed = written_list(folder)
    if not numbered and listed is None:
        return None
    issues, damaged = [], []
    for file in numbered:
        try:
            issues.append(_read_issue(file.read_bytes(), int(file.stem)))
        except OSError as error:
            damaged.append(Damage(number=int(file.stem), why=EntryUnreadable(why=str(error.strerror))))
        except Unreadable as error:
            damaged.append(Damage(number=int(file.stem), why=error.findings[0]))
    last = max((int(file.stem) for file in numbered), default=0)
    entries = _issued(issues, blobs)
    entries = _chained([*entries, _taken_over(folder, entries, listed, last=last, damaged=damaged)])
    chain = EntryChain(
        entries={entry.number: entry for entry in entries},
        healed={},
        damaged=tuple(damaged),
        known_lost=frozenset(one.number for one in damaged),
    )
    return EarlierRecord(chain=chain, files=(*numbered, *_lists(folder)))


def written_list(folder: Path) -> dict[str, str] | None:
    """Return what the earlier format lists as written in a folder, by path, None without a list.

    Where a move was killed under it, either of two files may stand there: what is there decides.
    """
    found: dict[str, str] | None = None
    for file in _lists(folder):
        for path, digest in _listed(file).items():
            found = {} if found is None else found
            if path not in found or file_sha256(folder / path) == digest:
                found[path] = digest
        found = found or {}
    return found


def _lists(folder: Path) -> list[Path]:
    files = (folder / name for name in (WITNESS, EARLIER_LOG))
    return [file for file in files if file.is_file() and not _is_witness(file)]


def _is_witness(file: Path) -> bool:
    try:
        return "format" in read_plain(file.read_bytes())
    except (OSError, Unreadable):
        return False


def _listed(file: Path) -> dict[str, str]:
    try:
        plain = read_plain(file.read_bytes())
    except (OSError, Unreadable):
        return {}
    found = {}
    for path in plain:
        try:
            found[safe_path(path)] = sha256_item(plain, path)
        except Unreadable:
            continue  # a list that names what no build wrote is not followed
    return found


def _read_issue(content: bytes, number: int) -> _Issue:
    plain = read_plain(content)
    if item(plain, "number", int) != number:
        raise Unreadable(NumberOfAnother())
    return _Issue(
        number=number,
        day=item(plain, "day", str),
        sheets={mark: sheet_of(one) for mark, one in item(plain, "sheets", dict).items()},
        files={safe_path(path): digest for path, digest in sums(plain, "files").items()},
        printed=sha256_item(plain, "record"),
        same_as=None if plain.get("same_as") is None else item(plain, "same_as", int),
        changed=items(plain, "changed", str),
        why=texts(plain, "why"),
    )


def _issued(issues: list[_Issue], blobs: Blobs) -> list[Entry]:
    """Return the entry of each issue."""
    entries: list[Entry] = []
    before: _Issue | None = None
    for issue in issues:
        was = entries[-1] if entries else None
        marks = {**(was.sheets if was else {}), **issue.sheets}
        papers = was.papers if was else {}
        entries.append(
            Entry(
                number=issue.number,
                previous="",
                verb=BUILD,
                day=issue.day,
                job=_job_of(issue, blobs) or (was.job if was else JobIdentity(name="", file="")),
                issue=issue.number,
                is_issue=True,
                sheets={mark: _as_printed(mark, sheet, issue, before) for mark, sheet in issue.sheets.items()},
                papers={path: _paper(path, one, marks, issue.number, papers) for path, one in issue.files.items()},
                documents={PRINTED: issue.printed},
                same_as=issue.same_as,
                changed=issue.changed,
                why=issue.why,
            )
        )
        before = issue
    return entries


def _taken_over(
    folder: Path, entries: list[Entry], listed: Mapping[str, str] | None, *, last: int, damaged: list[Damage]
) -> Entry:
    """Return the entry that takes an earlier record over: its last state, with the files that are there."""
    latest = entries[-1] if entries else None
    papers = latest.papers if latest else {}
    if listed is not None:
        papers = dict(_there(folder, papers, listed, latest.sheets if latest else {}, last))
    return Entry(
        number=last + 1,
        previous="",
        verb=MIGRATED,
        day=latest.day if latest else "",
        job=latest.job if latest else JobIdentity(name="", file=""),
        issue=last,
        lost=tuple(one.number for one in damaged),
        sheets=latest.sheets if latest else {},
        papers=papers,
    )


def _there(
    folder: Path, issued: Mapping[str, WrittenPaper], listed: Mapping[str, str], marks: Mapping[str, Any], number: int
) -> Iterator[tuple[str, WrittenPaper]]:
    """Yield the papers that were issued or are listed, as far as they are there or are to be put back."""
    for path in dict.fromkeys((*issued, *listed)):
        there, paper = file_sha256(folder / path), issued.get(path)
        if paper and (there == paper.sha256 or (there is None and path in listed)):
            yield path, paper
        elif path in listed:
            yield path, _other(path, listed[path], marks, number)


def _as_printed(mark: str, sheet: IssuedSheet, issue: _Issue, before: _Issue | None) -> IssuedSheet:
    """Return what an opening was issued as; where its sheet is the one of the issue before, no other was printed."""
    path = f"cut sheets/{mark}.pdf"
    is_old = before and sheet.number == issue.number and before.files.get(path) == issue.files.get(path)
    old = before.sheets.get(mark) if before and is_old and issue.same_as is None else None
    return old or sheet


def _paper(
    path: str, digest: str, marks: Mapping[str, Any], number: int, before: Mapping[str, WrittenPaper]
) -> WrittenPaper:
    was = before.get(path)
    if was and was.sha256 == digest:
        return was
    kind, of = _kind(path, marks)
    return WrittenPaper(sha256=digest, kind=kind, marks=of, verb=BUILD, issue=number)


def _other(path: str, digest: str, marks: Mapping[str, Any], number: int) -> WrittenPaper:
    kind, of = _kind(path, marks)
    verb = OTHER_VERBS.get(path.rpartition("/")[2], BUILD)
    return WrittenPaper(sha256=digest, kind=kind, marks=of, verb=verb, issue=number)


def _kind(path: str, marks: Mapping[str, Any]) -> tuple[str, tuple[str, ...]]:
    """Return what a file is and the opening it is of: where its whole name is the one of such a file."""
    for folder, end, kind in OPENING_PAPERS:
        mark = path.removeprefix(f"{folder}/").removesuffix(end)
        if mark in marks and path == f"{folder}/{mark}{end}":
            return kind, (mark,)
    return "solid" if path.startswith("solids/") else "house", ()


def _job_of(issue: _Issue, blobs: Blobs) -> JobIdentity | None:
    try:
        plain = json.loads(blobs.kept(issue.printed))
        return JobIdentity(name=item(item(plain, "job", dict), "name", str), file="")
    except (Unreadable, ValueError, AttributeError):
        return None


def _chained(entries: list[Entry]) -> list[Entry]:
    """Link each entry to the one before it."""
    linked: list[Entry] = []
    for entry in entries:
        previous = sha256_of(entry_bytes(linked[-1])) if linked else ""
        linked.append(replace(entry, previous=previous))
    return linked
