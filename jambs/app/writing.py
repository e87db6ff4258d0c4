"""Putting finished papers where they belong: nothing half written, nothing of the user's overwritten unasked.

A build writes everything into a fresh folder beside the target first. Only when all of it is there are the files
moved, one by one. ``.written.json`` in the target remembers what was written, so that a file the user changed since,
or one that never was ours, is known. ``.writing.json`` stands there only while files are moved: it lets the next build
know its own files again if this one is killed in the middle.
"""

from __future__ import annotations

import hashlib
import json
import shutil
import tempfile
import time
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

MANIFEST = ".written.json"
JOURNAL = ".writing.json"
DAY = 24 * 3600.0
"""A folder left behind by a killed build is cleared away after this [s]."""

Written = dict[str, str]
"""Path within the folder -> sha256 of what was written there."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Conflict:
    """A file in the way: its path within the folder, and whether it was ours before the user changed it."""

    path: str
    was_ours: bool

    def __str__(self) -> str:
        """Say which file it is and what is known of it."""
        return f"{self.path} ({'changed since it was written' if self.was_ours else 'not written by jambs'})"


@contextmanager
def fresh_folder(target: Path) -> Iterator[Path]:
    """Give an empty folder beside the target, on the same disk; whatever is left in it at the end is removed."""
    target.parent.mkdir(parents=True, exist_ok=True)
    prefix = f".{target.name}.building-"
    _clear_old(target.parent, prefix)
    folder = Path(tempfile.mkdtemp(prefix=prefix, dir=target.parent))
    try:
        yield folder
    finally:
        shutil.rmtree(folder, ignore_errors=True)


def _clear_old(parent: Path, prefix: str) -> None:
    for folder in parent.glob(f"{prefix}*"):
        if time.time() - folder.stat().st_mtime > DAY:
            shutil.rmtree(folder, ignore_errors=True)


def conflicts(staged: Path, target: Path) -> list[Conflict]:
    """Name the files of the target that new ones would overwrite although the user made or changed them."""
    known = _known(target)
    found = []
    for path, digest in digests(staged).items():
        there = target / path
        if there.is_dir():
            found.append(Conflict(path=path, was_ours=False))
        elif there.is_file() and digest_of(there) not in (digest, *known.get(path, ())):
            found.append(Conflict(path=path, was_ours=path in known))
    return found


def move_in(staged: Path, target: Path, *, is_whole: bool) -> Sequence[str]:
    """Move finished files to their target, each in one step; return their paths.

    ``is_whole``: the files are all there are, so that unchanged files of an earlier build that are not among them go.
    """
    new = digests(staged)
    known = _known(target)
    target.mkdir(parents=True, exist_ok=True)
    _write_json(target / JOURNAL, new)
    for path in new:
        (target / path).parent.mkdir(parents=True, exist_ok=True)
        (staged / path).replace(target / path)
    stale = _remove_stale(target, {path: known[path] for path in known if path not in new}) if is_whole else []
    kept = {path: hashes[0] for path, hashes in known.items() if path not in stale}
    _write_json(target / MANIFEST, kept | new)
    (target / JOURNAL).unlink()
    return list(new)


def write_some(papers: Mapping[str, bytes], target: Path, *, overwrite: bool) -> list[Conflict]:
    """Write some papers to a folder of their own, each in one step; what else is there stays.

    Return the files of the user's that are in the way; then nothing is written.
    """
    with fresh_folder(target) as folder:
        for name, content in papers.items():
            (folder / name).write_bytes(content)
        found = [] if overwrite else conflicts(folder, target)
        if not found:
            move_in(folder, target, is_whole=False)
        return found


def _remove_stale(target: Path, old: Mapping[str, Sequence[str]]) -> list[str]:
    """Remove files of an earlier build that nobody changed, and the folders that leaves empty; return their paths."""
    removed = []
    for path, hashes in old.items():
        file = target / path
        if file.is_file() and digest_of(file) in hashes:
            file.unlink()
            if file.parent != target and not any(file.parent.iterdir()):
                file.parent.rmdir()
        if not file.exists():
            removed.append(path)
    return removed


def digests(folder: Path) -> Written:
    """Return the path and the sha256 of every file in a folder."""
    files = sorted(path for path in folder.rglob("*") if path.is_file())
    return {path.relative_to(folder).as_posix(): digest_of(path) for path in files}


def digest_of(file: Path) -> str:
    """Return the sha256 of a file."""
    return hashlib.sha256(file.read_bytes()).hexdigest()


def _known(target: Path) -> dict[str, tuple[str, ...]]:
    """Return what earlier builds wrote: per path the hashes that are ours, those of an interrupted move first."""
    known: dict[str, tuple[str, ...]] = {}
    for name in (MANIFEST, JOURNAL):
        for path, digest in _read_json(target / name).items():
            known[path] = (digest, *known.get(path, ()))
    return known


def _read_json(file: Path) -> Written:
    try:
        read = json.loads(file.read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}
    return {str(path): str(digest) for path, digest in read.items()} if isinstance(read, dict) else {}


def _write_json(file: Path, written: Written) -> None:
    new = file.with_name(f"{file.name}.new")
    new.write_text(json.dumps(dict(sorted(written.items())), indent=1) + "\n", encoding="utf-8")
    new.replace(file)
