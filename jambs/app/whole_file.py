"""A file that stands alone is there whole or not at all."""

from __future__ import annotations

import os
import shutil
from pathlib import Path


def write_new(path: Path, content: bytes) -> bool:
    """Write a file in one step, unless one stands there by then; say whether it was written.

    Raises:
        OSError: it cannot be written; it names the file.
    """
    new = path.with_name(f".{path.name}.new-{os.getpid()}")
    try:
        new.write_bytes(content)
        return _put_if_free(new, path)
    except OSError as error:
        raise OSError(error.errno, error.strerror, str(path)) from None
    finally:
        new.unlink(missing_ok=True)


def _put_if_free(new: Path, path: Path) -> bool:
    try:
        os.link(new, path)  # unlike a rename, it never takes the place of another file
    except FileExistsError:
        return False
    except OSError:  # a disk that knows no links
        if path.exists():
            return False
        new.replace(path)
    return True


def write_whole(path: Path, content: bytes, *, keeps_mode: bool = False) -> None:
    """Write a file in one step: beside its place first, then into it.

    ``keeps_mode``: the system goes on letting people do with it what they could do with the file that stood there.

    Raises:
        OSError: it cannot be written; it names the file, and what stood there stands.
    """
    new = path.with_name(f".{path.name}.new")
    try:
        new.unlink(missing_ok=True)  # what is left of an earlier time; a link that somebody put there leads nowhere
        with new.open("xb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())  # a power cut after the move must not leave an empty file
        if keeps_mode and path.exists():
            shutil.copymode(path, new)
        new.replace(path)
    except OSError as error:
        new.unlink(missing_ok=True)
        raise OSError(error.errno, error.strerror, str(path)) from None
    except BaseException:
        new.unlink(missing_ok=True)
        raise
