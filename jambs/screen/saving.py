"""Files of the user's written back: whole or not at all, one writer at a time, and only over what was seen.

An editor knows no locks, so what stands on the disk is held against what was read, right before it is replaced.
"""

from __future__ import annotations

import contextlib
import errno
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path, PurePath

from jambs.app.whole_file import write_whole
from jambs.issued.lock import writers_turn
from jambs.issued.turn_findings import untold
from jambs.job.editing.file_text import FileText

LOCK = ".jambs-writing"
"""The file that one writer at a time holds in the folder of a job; it is cleared away behind the last."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Meanwhile:
    """A file that somebody else changed: as it was read, as it stands there, and as it was to be written."""

    path: Path
    read: FileText | None
    there: FileText | None
    wanted: FileText | None


def is_beside(name: str) -> bool:
    """Say whether a table by this name stands beside the job file: nothing is written into another folder."""
    return PurePath(name).name == name


class ChangedMeanwhile(Exception):
    """Files were changed by somebody else since they were read; nothing was written."""

    def __init__(self, *files: Meanwhile) -> None:
        names = ", ".join(one.path.name for one in files)
        super().__init__(f"{names} was changed by another program since it was read here; nothing was written")
        self.files = files


def read_file(path: Path) -> FileText | None:
    """Return a file as it stands; nothing where there is none.

    Raises:
        OSError: it cannot be read, or is a folder, or what else is no file.
    """
    if not path.exists():
        return None
    if not path.is_file():  # a pipe would never end
        raise OSError(errno.EINVAL, "is no file", str(path))
    try:
        return FileText(name=path.name, content=path.read_bytes())
    except FileNotFoundError:
        return None


@contextlib.contextmanager
def job_folder_turn(folder: Path) -> Iterator[None]:
    """Hold the folder of a job while its files are read and written back."""
    file = folder / LOCK
    with writers_turn(file, verb="open", tell=untold):
        try:
            yield
        finally:
            with contextlib.suppress(OSError):
                file.unlink()


def save(folder: Path, files: Sequence[tuple[FileText | None, FileText | None]]) -> None:
    """Write files of a job: each as it was read, and as it is to be; nothing where it was not or is not to be there.

    Raises:
        ChangedMeanwhile: one of them is another by now; nothing was written.
        OSError: one cannot be written; it names the file, and all stand as they stood.
    """
    with job_folder_turn(folder):
        save_in_turn(folder, files)


def save_in_turn(folder: Path, files: Sequence[tuple[FileText | None, FileText | None]]) -> None:
    """Write files as ``save`` does, by whoever holds the folder already."""
    changed = []
    for read, wanted in files:
        path = folder / _name(read, wanted)
        if (there := read_file(path)) != read:
            changed.append(Meanwhile(path=path, read=read, there=there, wanted=wanted))
    if changed:
        raise ChangedMeanwhile(*changed)
    written: list[tuple[Path, FileText | None]] = []
    try:
        for read, wanted in files:
            path = (folder / _name(read, wanted)).resolve()
            _put(path, wanted)
            written.append((path, read))
    except OSError:
        for path, read in reversed(written):
            with contextlib.suppress(OSError):
                _put(path, read)
        raise


def _put(path: Path, file: FileText | None) -> None:
    if file is None:
        path.unlink()
    else:
        write_whole(path, file.content, keeps_mode=True)


def _name(read: FileText | None, wanted: FileText | None) -> str:
    found = read or wanted
    assert found is not None
    return found.name
