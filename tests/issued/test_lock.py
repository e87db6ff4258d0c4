"""One writer at a time: the second waits and says for whom; a lock dies with its process."""

from __future__ import annotations

import os
import signal
import sys
import threading
import time
from pathlib import Path
from typing import BinaryIO

import pytest
from folders import JOB, is_whole, texts, write

from jambs.issued import lock
from jambs.issued.record import Record
from jambs.issued.writing import begin

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="processes are made by fork")


def holding(folder: Path) -> int:
    """Let another process take its turn in a folder and keep it; return its number."""
    ready, told = os.pipe()
    child = os.fork()
    if child == 0:
        with begin(folder, JOB, verb="compare"):
            os.write(told, b".")
            time.sleep(60)
        os._exit(0)
    os.read(ready, 1)
    return child


def end(process: int) -> None:
    os.kill(process, signal.SIGKILL)
    os.waitpid(process, 0)


def test_a_second_writer_waits_and_says_for_whom(tmp_path: Path) -> None:
    folder = tmp_path / "papers"
    write(folder, {"a": "1"})
    other = holding(folder)
    said: list[str] = []
    ending = threading.Timer(0.5, lambda: os.kill(other, signal.SIGKILL))
    ending.start()
    started = time.monotonic()
    write(folder, {"a": "2"}, said=said)
    os.waitpid(other, 0)
    assert time.monotonic() - started >= 0.4
    message = f"waiting: jambs compare (process {other}) is writing to {folder}; this goes on when it is done"
    assert said == [message] and texts(folder) == {"a": "2"}


def test_a_lock_dies_with_its_process(tmp_path: Path) -> None:
    folder = tmp_path / "papers"
    end(holding(folder))
    said: list[str] = []
    write(folder, {"a": "1"}, said=said)
    assert said == [] and texts(folder) == {"a": "1"}


def test_many_at_once_each_have_their_turn(tmp_path: Path) -> None:
    folder = tmp_path / "papers"
    children = []
    for number in range(8):
        child = os.fork()
        if child == 0:
            code = 1
            try:
                verb = ("build", "labels", "measure", "compare")[number % 4]
                write(folder, {f"{verb}.pdf": str(number)}, verb=verb)
                code = 0
            finally:
                os._exit(code)
        children.append(child)
    assert [os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) for child in children] == [0] * 8
    record = Record.open(folder)
    assert is_whole(folder) and [one.number for one in record.entries] == list(range(1, 9))
    assert set(texts(folder)) == {"build.pdf", "labels.pdf", "measure.pdf", "compare.pdf"}


def test_a_lock_that_was_cleared_away_meanwhile_is_not_held(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A first writer that wrote nothing clears its lock away just as the next one has opened it: two could get in."""
    folder, locked = tmp_path / "papers", lock._lock
    cleared = iter([folder / "issued" / ".lock"])

    def clear_and_lock(handle: BinaryIO) -> None:
        if file := next(cleared, None):
            file.unlink()
        locked(handle)

    monkeypatch.setattr(lock, "_lock", clear_and_lock)
    with begin(folder, JOB, verb="build"):
        assert (folder / "issued" / ".lock").exists()


def test_a_disk_that_knows_no_locks_is_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(handle: object) -> None:
        raise OSError(95, "Operation not supported")

    monkeypatch.setattr(lock, "_lock", refuse)
    said: list[str] = []
    write(tmp_path / "papers", {"a": "1"}, said=said)
    assert said == [f"{tmp_path / 'papers'} is on a disk that knows no locks; see that nobody else writes there now"]


def test_a_folder_that_cannot_be_made(tmp_path: Path) -> None:
    (tmp_path / "papers").write_text("mine", encoding="utf-8")
    with pytest.raises(OSError, match=r"Not a directory|File exists"):
        write(tmp_path / "papers", {"a": "1"})
