"""A folder of papers written by hand through the record, and what it then holds."""

from __future__ import annotations

import shutil
from collections.abc import Collection, Mapping
from pathlib import Path

from jambs.issued.durable import sha256_of
from jambs.issued.entry import BUILD, Entry, IssuedSheet, JobIdentity
from jambs.issued.paths import FOLDER
from jambs.issued.record import Record
from jambs.issued.turn_findings import Tell, TurnFinding, untold
from jambs.issued.writing import Commit, NewIssue, PaperFacts, begin
from jambs.length import Units

JOB = JobIdentity(name="House by the lake", file="")
DAY = "2026-05-04"


def staged(folder: Path, files: Mapping[str, str]) -> Path:
    """Write files into a folder."""
    for name, text in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return folder


def sheet(number: int, text: str) -> IssuedSheet:
    return IssuedSheet(number=number, day=DAY, code=sha256_of(text.encode())[:4].upper(), key=text)


def write(
    folder: Path,
    files: Mapping[str, str],
    *,
    verb: str = BUILD,
    inside: str = "",
    stays: Collection[str] = (),
    is_issue: bool | None = None,
    job: JobIdentity = JOB,
    said: list[str] | None = None,
    tell: Tell = untold,
    documents: Mapping[str, bytes] | None = None,
) -> Entry:
    """Commit some papers as a verb does; those of a build are an issue with a sheet of W1."""

    def hear(one: TurnFinding) -> None:
        tell(one)
        if said is not None:
            said.append(one.sentence(Units.INCH))

    with begin(folder, job, verb=verb, inside=inside, tell=hear) as writing, writing.fresh_folder() as fresh:
        staged(fresh, files)
        sheets = {"W1": sheet(writing.record.next_issue, str(sorted(files.items())))}
        issue = NewIssue(sheets=sheets, changed=("W1",), why={}) if is_issue or verb == BUILD else None
        facts = {name: PaperFacts(kind="paper", marks=("W1",)) for name in files}
        return writing.commit(
            Commit(staged=fresh, day=DAY, facts=facts, stays=stays, issue=issue, documents=documents or {})
        )


def texts(folder: Path) -> dict[str, str]:
    """Return the papers of a folder, without what the record keeps for itself."""
    files = (path for path in folder.rglob("*") if path.is_file())
    names = {path.relative_to(folder).as_posix(): path for path in files}
    return {
        name: path.read_text(encoding="utf-8")
        for name, path in sorted(names.items())
        if not name.startswith((f"{FOLDER}/", ".written"))
    }


def is_whole(folder: Path) -> bool:
    """Say whether every paper on record stands there as written, and nothing of an unfinished move is left."""
    record = Record.open(folder)
    assert not record.chain.damaged and not record.chain.healed
    there = {name: sha256_of(text.encode()) for name, text in texts(folder).items()}
    on_record = {path: paper.sha256 for path, paper in record.papers.items()}
    return record.interrupted is None and {**there, **on_record} == there


def entry(folder: Path, number: int) -> Path:
    """Return the file of an entry."""
    return folder / FOLDER / "entries" / f"{number:05}.json"


def blob(folder: Path, text: str) -> Path:
    """Return the kept copy of a text."""
    return folder / FOLDER / "files" / sha256_of(text.encode())


def earlier_record(folder: Path) -> Path:
    """Copy the record that the earlier format made of a house with ``W1`` and ``W1.2``."""
    shutil.copytree(Path(__file__).with_name("earlier_record"), folder)
    return folder
