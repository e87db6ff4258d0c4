"""A record is put right before anybody writes on: taken over, healed, what is damaged set aside, a move completed."""

from __future__ import annotations

import os
from collections.abc import Iterable, Sequence
from contextlib import suppress
from pathlib import Path

from jambs.issued.chain import ASIDE, Damage, entry_file
from jambs.issued.durable import clear_new, file_sha256, usual_mode, write_durably
from jambs.issued.earlier_format import EarlierRecord
from jambs.issued.entry import Entry
from jambs.issued.entry_file import entry_bytes
from jambs.issued.errors import RecordError
from jambs.issued.findings import EntryMissing, told
from jambs.issued.lock import Say
from jambs.issued.move_in import MoveIn, complete, log_file, undo
from jambs.issued.paths import FOLDER, paper_file
from jambs.issued.record import Record
from jambs.issued.witness import Witness, write_witness

EARLIER = "earlier format"


def put_right(record: Record, say: Say) -> Record:
    """Put a record right, say what was done and what cannot be known any more, and return it as it then is.

    Only the holder of the lock may do that.
    """
    own = record.folder / FOLDER
    for folder in (own, own / "entries", own / "files"):
        clear_new(folder)
    if record.earlier:
        record = _taken_over(record, record.earlier, say)
    if record.chain.healed:
        _heal(record, say)
    if record.chain.damaged:
        _set_aside_damaged(record, say)
    if log_file(record.folder).exists():
        record = _completed(record, say)
    latest, witness = record.latest, record.witness
    if latest and (witness is None or witness.entry != latest):
        write_witness(record.folder, Witness(entry=latest, told=record.told))
        record = Record.open(record.folder)
    if latest is None and _has_papers(record.folder):
        say(
            f"{record.folder} holds papers, but no record of what was issued: it is gone. Sheets printed before today "
            "are void, whatever issue they name."
        )
    return record


def _taken_over(record: Record, earlier: EarlierRecord, say: Say) -> Record:
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
        say(f"the record of issue {one.number} is {told((one.why,))}{aside}; what it changed is not known any more")
    for file in earlier.files:
        if file.exists():
            _set_aside(file, folder / EARLIER)
    assert record.latest
    write_witness(record.folder, Witness(entry=record.latest, told=record.latest.issue))
    if record.issues:
        say(f"the record of {len(record.issues)} issues in the earlier format was taken over")
    return Record.open(record.folder)


def _set_aside(file: Path, folder: Path) -> str:
    """Move a file aside under its name, or its name and a number; return where it is, for a sentence."""
    if not file.exists():
        return ""
    folder.mkdir(parents=True, exist_ok=True)
    names = (file.name, *(f"{file.stem} ({number}){file.suffix}" for number in range(2, 1000)))
    aside = next(folder / name for name in names if not (folder / name).exists())
    file.replace(aside)
    return f", and was set aside as {aside.relative_to(folder.parent.parent).as_posix()}"


def _heal(record: Record, say: Say) -> None:
    for number, content in record.chain.healed.items():
        file = entry_file(record.folder / FOLDER / "entries", number)
        _set_aside(file, record.folder / FOLDER / ASIDE)
        write_durably(file, content)
    names = _numbers(record.chain.healed)
    say(f"entry {names} of the record was damaged or gone, and is written anew from its copy")


def _set_aside_damaged(record: Record, say: Say) -> None:
    """Set damaged entries aside by name; say what is known without them and what is not."""
    folder = record.folder / FOLDER
    for one in record.chain.damaged:
        if not isinstance(one.why, EntryMissing):
            aside = _set_aside(entry_file(folder / "entries", one.number), folder / ASIDE)
            say(f"{FOLDER}/entries/{one.number:05}.json is {told((one.why,))}{aside}")
    missing = [one.number for one in record.chain.damaged if isinstance(one.why, EntryMissing)]
    if missing:
        say(f"entry {_numbers(missing)} of the record is missing")
    issues = ", ".join(map(str, record.issues)) or "none"
    say(
        f"Not known any more: what was written and issued by {_entries(record.chain.damaged)}. Known issues: {issues}. "
        f"The next issue is {record.next_issue}, so that no number stands on two sheets."
    )


def _entries(damaged: Sequence[Damage]) -> str:
    return f"{'entry' if len(damaged) == 1 else 'entries'} {_numbers(one.number for one in damaged)}"


def _numbers(numbers: Iterable[int]) -> str:
    """Return numbers with runs drawn together: ``1-4, 7``."""
    runs: list[list[int]] = []
    for number in sorted(numbers):
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return ", ".join(str(run[0]) if len(run) == 1 else f"{run[0]}-{run[-1]}" for run in runs)


def _completed(record: Record, say: Say) -> Record:
    """Complete a move that was killed, or put back what stood there before."""
    move = record.interrupted
    latest = record.latest
    if move is None:
        aside = _set_aside(log_file(record.folder), record.folder / FOLDER / ASIDE)
        say(f"the log of a move of papers is damaged{aside}; the papers are put back as they are on record")
        _restore(record)
    elif latest is None or move.entry.number > record.chain.last_number:
        _complete(record, move, say)
    log_file(record.folder).unlink(missing_ok=True)
    return Record.open(record.folder)


def _complete(record: Record, move: MoveIn, say: Say) -> None:
    try:
        left = complete(record.folder, move, record.blobs)
    except RecordError as error:
        say(f"a jambs {move.entry.verb} was stopped while it moved its papers in, and cannot be completed: {error}")
        with suppress(RecordError):
            undo(record.folder, move, record.blobs)
        return
    _appear(record, move.entry)
    issue = f": issue {move.entry.issue}" if move.entry.is_issue else ""
    say(f"an earlier jambs {move.entry.verb} was stopped while it moved its papers in; that is now completed{issue}")
    for path in left:
        say(f"{path} was changed since and is left as it is")


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
