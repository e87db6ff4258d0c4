"""Paths that stand in a record: none of them leads out of the folder of papers."""

from __future__ import annotations

from pathlib import Path

from jambs.issued.errors import RecordError, Unreadable
from jambs.issued.findings import LinkLeadsOut, NoPath, PathLeadsOut

FOLDER = "issued"
WITNESS = ".written.json"
EARLIER_LOG = ".writing.json"
OURS = (FOLDER, WITNESS, EARLIER_LOG)
"""Names in a folder of papers that are the record's own and never a paper."""


def safe_path(path: object) -> str:
    """Return the path of a paper, with slashes, if it stays within its folder.

    Raises:
        Unreadable: it is not a path, leads out of the folder, or names a file of the record itself.
    """
    if not isinstance(path, str):
        raise Unreadable(NoPath(text=repr(path)))
    parts = path.split("/")
    leads_out = any(part in ("", ".", "..") for part in parts) or path[1:2] == ":" or "\\" in path or "\0" in path
    if leads_out or parts[0].lower() in OURS:
        raise Unreadable(PathLeadsOut(path=path))
    return path


def paper_file(folder: Path, path: str) -> Path:
    """Return where a paper stands in a folder.

    Raises:
        RecordError: a link on the way leads out of the folder.
    """
    file = folder / path
    if not file.parent.resolve().is_relative_to(folder.resolve()):
        raise RecordError(LinkLeadsOut(link=str(file.parent), folder=str(folder)))
    return file
