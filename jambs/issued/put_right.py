"""A record is put right before anybody writes on: taken over, healed, what is damaged set aside, a move completed."""

from __future__ import annotations

import os
from contextlib import suppress
from pathlib import Path

from jambs.issued.chain import ASIDE, entry_file
from jambs.issued.durable import clear_new, file_sha256, usual_mode, write_durably
from jambs.issued.earlier_format import EarlierRecord
from jambs.issued.entry import Entry
from jambs.issued.entry_file import entry_bytes
from jambs.issued.errors import RecordError
from jambs.issued.findings import EntryMissing
from jambs.issued.move_in import MoveIn, complete, log_file, undo
from jambs.issued.paths import FOLDER, paper_file
from jambs.issued.record import Record
from jambs.issued.turn_findings import (
    EarlierIssueLost,
    EntriesHealed,
    EntriesMissing,
    EntrySetAside,
    LeftAsChanged,
    MoveCompleted,
    MoveLogDamaged,
    MoveNotCompleted,
    NotKnownAnyMore,
    RecordGone,
    TakenOver,
    Tell,
)
from jambs.issued.witness import Witness, write_witness

EARLIER = "earlier format"


def put_right(record: Record, tell: Tell) -> Record:
    """Put a record right, tell what was done and what cannot be known any more, and return it as it then is.

    Only the holder of the lock may do that.
    """
    own = record.folder / FOLDER
    for folder in (own, own / "entries", own / "files"):
        clear_new(folder)
    if record.earlier:
        record = _taken_over(record, record.earlier, tell)
    if record.chain.healed:
        _heal(record, tell)
    if record.chain.damaged:
        _set_aside_damaged(record, tell)
    if log_file(record.folder).exists():
        record = _completed(record, tell)
    latest, witness = record.latest, record.witness
    if latest and (witness is None or witness.entry != latest):
        write_witness(record.folder, Witness(entry=latest, told=record.told))
        record = Record.open(record.folder)
    if latest is None and _has_papers(record.folder):
        tell(RecordGone(folder=str(record.folder)))
    return record


def _taken_over(record: Record, earlier: EarlierRecord, tell: Tell) -> Record:
    """Write an earlier record anew as entries; its own files stand aside, nothing is lost."""
    folder = record.folder / FOLDER
    for path, paper in (record.latest.papers if record.latest else {}).items():
        file = paper_file(record.folder, path)
        if file_sha256(file) == paper.sha256:
            record.blobs.keep(file.read_bytes(), sync=False)
    for blob in record.blobs.folder.glob("*"):
        with suppress(OSError):
            os.chmod(blob, usual_mode())  # the earlier format let nobody else read them
    for entry in record.entries:
        content = entry_bytes(entry)
        record.blobs.keep(content)
        write_durably(entry_file(folder / "entries", entry.number), content)
    for one in earlier.chain.damaged:
        aside = _set_aside(folder / f"{one.number:04}.json", folder / ASIDE)
        tell(EarlierIssueLost(number=one.number, why=one.why, aside=aside))
    for file in earlier.files:
        if file.exists():
            _set_aside(file, folder / EARLIER)
    assert record.latest
    write_witness(record.folder, Witness(entry=record.latest, told=record.latest.issue))
    if record.issues:
        tell(TakenOver(issues=len(record.issues)))
    return Record.open(record.folder)


def _set_aside(file: Path, folder: Path) -> str:
    """Move a file aside under its name, or its name and a number; return where it is, from the folder of papers."""
    if not file.exists():
        return ""
    folder.mkdir(parents=True, exist_ok=True)
    names = (file.name, *(f"{file.stem} ({number}){file.suffix}" for number in range(2, 1000)))
    aside = next(folder / name for name in names if not (folder / name).exists())
    file.replace(aside)
    return aside.relative_to(folder.parent.parent).as_posix()


def _heal(record: Record, tell: Tell) -> None:
    for number, content in record.chain.healed.items():
        file = entry_file(record.folder / FOLDER / "entries", number)
        _set_aside(file, record.folder / FOLDER / ASIDE)
        write_durably(file, content)
    tell(EntriesHealed(numbers=tuple(record.chain.healed)))


def _set_aside_damaged(record: Record, tell: Tell) -> None:
    """Set damaged entries aside by name; tell what is known without them and what is not."""
    folder = record.folder / FOLDER
    for one in record.chain.damaged:
        if not isinstance(one.why, EntryMissing):
            aside = _set_aside(entry_file(folder / "entries", one.number), folder / ASIDE)
            tell(EntrySetAside(number=one.number, why=one.why, aside=aside))
    missing = tuple(one.number for one in record.chain.damaged if isinstance(one.why, EntryMissing))
    if missing:
        tell(EntriesMissing(numbers=missing))
    lost = tuple(one.number for one in record.chain.damaged)
    tell(NotKnownAnyMore(numbers=lost, known=tuple(record.issues), next_issue=record.next_issue))


def _completed(record: Record, tell: Tell) -> Record:
    """Complete a move that was killed, or put back what stood there before."""
    move = record.interrupted
    latest = record.latest
    if move is None:
        aside = _set_aside(log_file(record.folder), record.folder / FOLDER / ASIDE)
        tell(MoveLogDamaged(aside=aside))
        _restore(record)
    elif latest is None or move.entry.number > record.chain.last_number:
        _complete(record, move, tell)
    log_file(record.folder).unlink(missing_ok=True)
    return Record.open(record.folder)


def _complete(record: Record, move: MoveIn, tell: Tell) -> None:
    try:
        left = complete(record.folder, move, record.blobs)
    except RecordError as error:
        tell(MoveNotCompleted(verb=move.entry.verb, why=error.findings))
        with suppress(RecordError):
            undo(record.folder, move, record.blobs)
        return
    _appear(record, move.entry)
    tell(MoveCompleted(verb=move.entry.verb, issue=move.entry.issue if move.entry.is_issue else None))
    for path in left:
        tell(LeftAsChanged(path=path))


def _appear(record: Record, entry: Entry) -> None:
    content = entry_bytes(entry)
    record.blobs.keep(content)
    write_durably(entry_file(record.folder / FOLDER / "entries", entry.number), content)
    write_witness(record.folder, Witness(entry=entry, told=record.told))


def _restore(record: Record) -> None:
    """Put every paper back that is not as it is on record, unless somebody wrote on it."""
    for path, paper in record.papers.items():
        file = paper_file(record.folder, path)
        there, kept = file_sha256(file), record.blobs.found(paper.sha256)
        if there != paper.sha256 and kept is not None and (there is None or record.blobs.has(there)):
            write_durably(file, kept, by=record.folder / FOLDER)


def _has_papers(folder: Path) -> bool:
    """Say whether papers of a build stand in a folder."""
    return (folder / "parts.json").is_file() and (folder / "cut sheets").is_dir()
