"""Files that are there whole or not at all, also after a power cut; their modes follow the umask like any other."""

from __future__ import annotations

import hashlib
import os
import secrets
from contextlib import suppress
from pathlib import Path

NEW = ".new-"
"""Begins the name of a file that is not finished."""


def sha256_of(content: bytes) -> str:
    """Return the sha256 of some bytes."""
    return hashlib.sha256(content).hexdigest()


def file_sha256(file: Path) -> str | None:
    """Return the sha256 of a file, None where there is none."""
    try:
        return sha256_of(file.read_bytes())
    except (FileNotFoundError, NotADirectoryError, IsADirectoryError):
        return None


def file_sums(folder: Path) -> dict[str, str]:
    """Return the path and the sha256 of every file in a folder."""
    files = sorted(path for path in folder.rglob("*") if path.is_file())
    return {path.relative_to(folder).as_posix(): sha256_of(path.read_bytes()) for path in files}


def write_durably(file: Path, content: bytes, *, by: Path | None = None, sync: bool = True) -> None:
    """Write a file in one step: to a new one, onto the disk, and only then under its name.

    ``by``: folder of the new one, on the same disk; else it is beside the file. ``sync``: the name is brought onto the
    disk too; else call ``sync_folder`` once for many.
    """
    file.parent.mkdir(parents=True, exist_ok=True)
    new = write_new(by or file.parent, content)
    os.replace(new, file)
    if sync:
        sync_folder(file.parent)


def write_new(folder: Path, content: bytes) -> Path:
    """Write a new file into a folder, onto the disk, and return it."""
    folder.mkdir(parents=True, exist_ok=True)
    new = folder / f"{NEW}{secrets.token_hex(6)}"
    try:
        with new.open("xb") as handle:
            handle.write(content)
            handle.flush()
            os.fsync(handle.fileno())
    except OSError:
        with suppress(OSError):
            new.unlink()
        raise
    return new


def clear_new(folder: Path) -> None:
    """Remove what a process that was killed did not finish in a folder."""
    for file in folder.glob(f"{NEW}*"):
        file.unlink(missing_ok=True)


def sync_file(file: Path) -> None:
    """Bring a finished file onto the disk."""
    with file.open("rb+") as handle:
        os.fsync(handle.fileno())


def sync_folder(folder: Path) -> None:
    """Bring the names in a folder onto the disk, where the system can."""
    with suppress(OSError, AttributeError):
        handle = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def usual_mode() -> int:
    """Return the mode of a new file under the umask."""
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask


def is_blank(content: bytes) -> bool:
    """Say whether nothing is in a file, or only zeros: what a power cut leaves, never somebody's hand."""
    return not content.strip(b"\0")
