"""One writer at a time in a folder of papers: a lock that the system lets go when its process ends, however it ends."""

from __future__ import annotations

import errno
import os
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import BinaryIO

from jambs.issued.turn_findings import NoLocksThere, Tell, WaitsForAnother

PATIENCE = 0.1
"""A writer that waits asks again after this [s]."""
FAR = 1 << 30
"""Place of the locked byte, behind all that is written: the holder's name stays readable [bytes]."""
BUSY = (errno.EAGAIN, errno.EACCES, errno.EDEADLK)


@contextmanager
def writers_turn(file: Path, *, verb: str, tell: Tell) -> Iterator[None]:
    """Wait until nobody else writes, and hold the lock; say once whom it waits for."""
    handle = _taken(file, verb, tell)
    try:
        yield
    finally:
        handle.close()


def _taken(file: Path, verb: str, tell: Tell) -> BinaryIO:
    has_told = False
    while True:
        file.parent.mkdir(parents=True, exist_ok=True)
        with suppress(FileNotFoundError):  # the folder was cleared away this very moment
            handle = file.open("a+b")
            if _is_locked(handle, file, tell) and _is_still_there(handle, file):
                _sign(handle, verb)
                return handle
            holder = "" if has_told else _holder(file)
            handle.close()
            if holder:
                tell(WaitsForAnother(holder=holder, folder=str(file.parent.parent)))
                has_told = True
            time.sleep(PATIENCE)


def _is_locked(handle: BinaryIO, file: Path, tell: Tell) -> bool:
    """Try to lock; where the file system knows no locks, say so and go on."""
    try:
        _lock(handle)
    except OSError as error:
        if error.errno in BUSY:
            return False
        tell(NoLocksThere(folder=str(file.parent.parent)))
    return True


if sys.platform == "win32":
    import msvcrt

    def _lock(handle: BinaryIO) -> None:
        handle.seek(FAR)
        msvcrt.locking(handle.fileno(), msvcrt.LK_NBLCK, 1)

else:
    import fcntl

    def _lock(handle: BinaryIO) -> None:
        fcntl.flock(handle.fileno(), fcntl.LOCK_EX | fcntl.LOCK_NB)


def _is_still_there(handle: BinaryIO, file: Path) -> bool:
    """Say whether the locked file is the one that stands under its name; a first writer may have cleared it away."""
    try:
        return os.path.samestat(os.fstat(handle.fileno()), file.stat())
    except OSError:
        return False


def _sign(handle: BinaryIO, verb: str) -> None:
    handle.truncate(0)
    handle.write(f"jambs {verb} (process {os.getpid()})".encode("ascii"))
    handle.flush()


def _holder(file: Path) -> str:
    """Return who holds the lock, as far as it has signed."""
    try:
        return file.read_text(encoding="ascii", errors="replace").strip() or "another jambs"
    except OSError:
        return "another jambs"
