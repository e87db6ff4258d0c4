"""Papers move in all or not at all: killed at any step, completed, stopped by a disk, held by a file in the way."""

from __future__ import annotations

import errno
import os
import shutil
import signal
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from folders import blob, is_whole, staged, texts, write

from jambs.issued import move_in
from jambs.issued.errors import RecordError
from jambs.issued.move_in import log_file
from jambs.issued.record import Record

OLD = {"a": "old", "in/b": "old", "gone": "old"}
NEW = {"a": "new", "in/b": "new", "more/c": "new"}


pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="a process is killed by a signal")


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with papers of issue 1; a kill takes nothing from a disk that it was given, so none is waited for."""
    monkeypatch.setattr(os, "fsync", lambda handle: None)
    write(tmp_path / "papers", OLD)
    return tmp_path / "papers"


def killed_at(folder: Path, step: int, files: dict[str, str]) -> bool:
    """Write papers in a process that is killed at its so manieth step on the disk; say whether it came that far."""
    child = os.fork()
    if child == 0:
        left = iter(range(step))
        for owner, name in ((os, "replace"), (os, "fsync"), (Path, "replace"), (Path, "unlink"), (os, "rename")):
            setattr(owner, name, dying(getattr(owner, name), left))
        try:
            write(folder, files)
        finally:
            os._exit(0)
    _, status = os.waitpid(child, 0)
    return os.WIFSIGNALED(status)


def dying(call: Callable[..., Any], left: Iterator[int]) -> Callable[..., Any]:
    """Kill this process instead of a step on the disk once none is left."""

    def step(*given: Any, **named: Any) -> Any:
        if next(left, None) is None:
            os.kill(os.getpid(), signal.SIGKILL)
        return call(*given, **named)

    return step


def settled(folder: Path) -> list[str]:
    """Let another verb write, and return what it says of what it found."""
    said: list[str] = []
    write(folder, {"labels.pdf": "x"}, verb="labels", inside="site", said=said)
    return said


def of_one_issue(folder: Path) -> int:
    """Return the issue that a folder is of: every paper old, or every paper new."""
    there = {name: text for name, text in texts(folder).items() if not name.startswith("site/")}
    assert there in (OLD, NEW)
    record = Record.open(folder)
    assert is_whole(folder) and record.latest
    assert record.latest.issue == (2 if there == NEW else 1)
    return record.latest.issue


def test_killed_at_every_step_papers_and_record_are_of_one_issue(folder: Path, tmp_path: Path) -> None:
    """Each step on the disk in turn; the folder is put right by whoever writes next."""
    seen = set()
    for step in range(200):
        again = tmp_path / "again"
        shutil.rmtree(again, ignore_errors=True)
        shutil.copytree(folder, again)
        was_killed = killed_at(again, step, NEW)
        said = settled(again)
        number = of_one_issue(again)
        seen.add((number, bool(said)))
        if not was_killed:
            break
    assert step > 20 and seen == {(1, False), (2, True), (2, False)}


def test_killed_again_and_again_while_it_is_completed(folder: Path) -> None:
    step = next(step for step in range(200) if killed_at(folder, step, NEW) and log_file(folder).exists())
    assert step
    for again in range(12):
        killed_at(folder, again, {"other": "never"})
        assert log_file(folder).exists() or Record.open(folder).latest_issue is not None
    settled(folder)
    record = Record.open(folder)
    assert record.latest and record.issues[2].files.keys() == NEW.keys()


def test_what_somebody_changed_between_kill_and_completion_is_left_and_named(folder: Path) -> None:
    for step in range(200):
        if not killed_at(folder, step, NEW) or log_file(folder).exists():
            break
    staged(folder, {"a": "with pencil"})
    said = settled(folder)
    assert said[0] == "an earlier jambs build was stopped while it moved its papers in; that is now completed: issue 2"
    assert said[1] == "a was changed since and is left as it is"
    assert texts(folder)["a"] == "with pencil" and texts(folder)["in/b"] == "new"


def test_a_damaged_log_puts_back_what_is_on_record(folder: Path) -> None:
    for step in range(200):
        killed_at(folder, step, NEW)
        if log_file(folder).exists() and texts(folder) != OLD:
            break
    log_file(folder).write_bytes(b"")
    said = settled(folder)
    assert said[0].startswith(
        "the log of a move of papers is damaged, and was set aside as issued/set aside/moving.json"
    )
    there = texts(folder)
    assert {name: there[name] for name in OLD} == OLD and Record.open(folder).issues.keys() == {1}


# ---- a disk that will not


def refusing(monkeypatch: pytest.MonkeyPatch, is_refused: Callable[[Path], bool], code: int) -> None:
    """Let the system refuse to replace some files."""
    replace = os.replace

    def refuse(source: Path, target: Path) -> None:
        if is_refused(Path(target)):
            raise OSError(code, os.strerror(code), str(target))
        replace(source, target)

    monkeypatch.setattr(os, "replace", refuse)


@pytest.mark.parametrize("name", ["a", "b", "c"])
@pytest.mark.parametrize("code", [errno.EACCES, errno.ENOSPC, errno.EROFS, errno.EBUSY])
def test_one_paper_that_will_not_go_brings_all_back(
    folder: Path, monkeypatch: pytest.MonkeyPatch, name: str, code: int
) -> None:
    refusing(monkeypatch, lambda target: target.name == name and target.parent.parent.name != "issued", code)
    advice = "; make room on the disk, and run this again" if code == errno.ENOSPC else ""
    message = rf"/{name}: {os.strerror(code)}; the papers are as they were, of issue 1{advice}$"
    with pytest.raises(RecordError, match=message):
        write(folder, NEW)
    monkeypatch.undo()
    assert of_one_issue(folder) == 1 and not log_file(folder).exists()
    assert settled(folder) == []
    write(folder, NEW)
    assert of_one_issue(folder) == 2


@pytest.mark.parametrize(("times", "issue"), [(1, 1), (2, 2)])
def test_ctrl_c_while_papers_move_brings_all_back(
    folder: Path, monkeypatch: pytest.MonkeyPatch, times: int, issue: int
) -> None:
    """Pressed again while they are brought back, the next verb completes what was begun."""
    settle, left = move_in._settle, iter(range(times))

    def stop(*given: Any) -> None:
        if next(left, None) is not None:
            raise KeyboardInterrupt
        settle(*given)

    monkeypatch.setattr(move_in, "_settle", stop)
    with pytest.raises(KeyboardInterrupt):
        write(folder, NEW)
    settled(folder)
    assert of_one_issue(folder) == issue


def test_a_folder_in_the_way_of_a_paper(folder: Path) -> None:
    (folder / "c").mkdir()
    with pytest.raises(RecordError, match=r"/c is a folder, and a paper goes there; move it away$"):
        write(folder, {**NEW, "c": "new"})
    assert of_one_issue(folder) == 1


def test_a_file_in_the_way_of_a_folder(folder: Path) -> None:
    staged(folder, {"more": "mine"})
    with pytest.raises(RecordError, match=r"/more is a file, and a folder of papers goes there; move it away$"):
        write(folder, NEW)
    (folder / "more").unlink()
    assert of_one_issue(folder) == 1


def test_a_folder_that_cannot_be_written(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "access", lambda file, mode: False)
    with pytest.raises(RecordError, match=r"Permission denied; the papers are as they were, of issue 1$"):
        write(folder, NEW)
    monkeypatch.undo()
    assert of_one_issue(folder) == 1


def test_no_hard_links_are_needed(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*given: object, **named: object) -> None:
        raise OSError(errno.EPERM, os.strerror(errno.EPERM))

    monkeypatch.setattr(os, "link", refuse)
    write(folder, NEW)
    assert of_one_issue(folder) == 2


def test_a_user_s_file_that_was_overwritten_is_kept(folder: Path) -> None:
    staged(folder, {"a": "with pencil"})
    write(folder, NEW)
    assert texts(folder)["a"] == "new" and blob(folder, "with pencil").read_bytes() == b"with pencil"
