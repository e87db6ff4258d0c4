"""A file that stands alone is there whole or not at all."""

from __future__ import annotations

from pathlib import Path


def write_whole(path: Path, content: bytes) -> None:
    """Write a file in one step: beside its place first, then into it.

    Raises:
        OSError: it cannot be written; it names the file, and what stood there stands.
    """
    new = path.with_name(f".{path.name}.new")
    try:
        new.write_bytes(content)
        new.replace(path)
    except OSError as error:
        new.unlink(missing_ok=True)
        raise OSError(error.errno, error.strerror, str(path)) from None
    except BaseException:
        new.unlink(missing_ok=True)
        raise
