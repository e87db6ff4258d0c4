"""Finished papers move into their folder, all of them or none: tried first, logged, undone where one will not go.

The log names the entry to come and what stood at each path before. All of that is kept by content, so a move that was
killed can be completed from the log alone, any number of times.
"""

from __future__ import annotations

import errno
import json
import os
from collections.abc import Collection, Iterable, Mapping
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from jambs.issued.blobs import Blobs
from jambs.issued.durable import file_sha256, is_blank, sync_folder, write_durably
from jambs.issued.entry import Entry
from jambs.issued.entry_file import entry_bytes, item, read_entry, read_plain, sha256_item
from jambs.issued.errors import RecordError, Unreadable
from jambs.issued.findings import FileInTheWay, FolderInTheWay, PaperNotPutBack
from jambs.issued.paths import FOLDER, paper_file, safe_path

LOG = "moving.json"


@dataclass(frozen=True, slots=True, kw_only=True)
class MoveIn:
    """One move: ``entry`` is the state after it; ``before``: what stood at each path that it touches, None: nothing."""

    entry: Entry
    before: Mapping[str, str | None]

    def after(self, path: str) -> str | None:
        """Return the sha256 of what stands at a path when the move is done, None where nothing does."""
        paper = self.entry.papers.get(path)
        return paper.sha256 if paper else None


def log_file(folder: Path) -> Path:
    """Return where the log of a folder of papers stands while a move goes on."""
    return folder / FOLDER / LOG


def write_log(folder: Path, move: MoveIn) -> None:
    """Write the log: from here on the move can be completed or undone by anybody."""
    plain = {"entry": entry_bytes(move.entry).decode("utf-8"), "before": dict(move.before)}
    write_durably(log_file(folder), json.dumps(plain, indent=1, ensure_ascii=False).encode("utf-8"))


def read_log(folder: Path) -> MoveIn | None:
    """Return the move that was interrupted in a folder; None where none was, or nothing of its log can be read."""
    try:
        plain = read_plain(log_file(folder).read_bytes())
        before = item(plain, "before", dict)
        return MoveIn(
            entry=read_entry(item(plain, "entry", str).encode("utf-8")),
            before={
                safe_path(path): None if was is None else sha256_item({path: was}, path) for path, was in before.items()
            },
        )
    except (OSError, Unreadable):
        return None


def try_replacements(folder: Path, paths: Iterable[str]) -> None:
    """Try whether each path can be written, without touching what stands there.

    Raises:
        RecordError: a file or a link is in the way.
        OSError: a folder cannot be written, or a file is held by another program.
    """
    parents: dict[Path, None] = {}
    for path in paths:
        file = paper_file(folder, path)
        _free(folder, file)
        parents.setdefault(file.parent)
        if file.exists():
            os.rename(file, file)  # held open elsewhere, some systems refuse even this
    for parent in parents:
        parent.mkdir(parents=True, exist_ok=True)
        if not os.access(parent, os.W_OK | os.X_OK):
            raise PermissionError(errno.EACCES, os.strerror(errno.EACCES), str(parent))


def _free(folder: Path, file: Path) -> None:
    if file.is_dir():
        raise RecordError(FolderInTheWay(file=str(file)))
    for parent in file.parents:
        if parent == folder:
            return
        if parent.exists() and not parent.is_dir():
            raise RecordError(FileInTheWay(file=str(parent)))


def move(folder: Path, ready: Mapping[str, Path], log: MoveIn) -> None:
    """Move finished files to their paths and remove the papers that go."""
    for path in log.before:
        file = paper_file(folder, path)
        if path in ready:
            os.replace(ready[path], file)
        else:
            file.unlink(missing_ok=True)
    _settle(folder, log.before)


def complete(folder: Path, log: MoveIn, blobs: Blobs) -> list[str]:
    """Do what is left of a move that was killed; return the paths that somebody changed meanwhile, which are left.

    Raises:
        RecordError: a content that it needs is gone.
    """
    return _bring(folder, log, {path: log.after(path) for path in log.before}, {*log.before.items()}, blobs)


def undo(folder: Path, log: MoveIn, blobs: Blobs) -> None:
    """Put back what stood there before a move that could not be done.

    Raises:
        RecordError: a content that it needs is gone.
    """
    _bring(folder, log, log.before, {(path, log.after(path)) for path in log.before}, blobs)


def _bring(
    folder: Path,
    log: MoveIn,
    wanted: Mapping[str, str | None],
    replaceable: Collection[tuple[str, str | None]],
    blobs: Blobs,
) -> list[str]:
    left = []
    for path, aim in wanted.items():
        file = paper_file(folder, path)
        there = file_sha256(file)
        if there == aim:
            continue
        if there is not None and (path, there) not in replaceable and not is_blank(file.read_bytes()):
            left.append(path)
        elif aim is None:
            file.unlink(missing_ok=True)
        else:
            write_durably(file, _kept(blobs, aim, path), by=folder / FOLDER, sync=False)
    _settle(folder, wanted)
    return left


def _kept(blobs: Blobs, name: str, path: str) -> bytes:
    try:
        return blobs.kept(name)
    except Unreadable as error:
        raise RecordError(PaperNotPutBack(path=path, why=error.findings, kept=f"{FOLDER}/files/{name}")) from None


def _settle(folder: Path, paths: Iterable[str]) -> None:
    """Remove folders that were left empty and bring all names onto the disk."""
    parents = {(folder / path).parent for path in paths} - {folder}
    for parent in sorted(parents, key=lambda one: -len(one.parts)):
        with suppress(OSError):  # not empty
            parent.rmdir()
    for parent in {folder, *(one for one in parents if one.is_dir())}:
        sync_folder(parent)
