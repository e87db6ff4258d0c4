"""The outer door: whatever happens inside a command, people read a sentence, and nothing is half written."""

# ruff: noqa: F401, F811 (fixtures are imported by name)

from __future__ import annotations

import errno
import os
import signal
import subprocess
import sys
from concurrent.futures.process import BrokenProcessPool
from pathlib import Path
from typing import Any

import pytest
from shops import Shop, shop

from jambs.app import papers as papers_of_a_job
from jambs.app.chain import Unbuildable
from jambs.app.whole_file import write_whole
from jambs.commands.errors import os_sentence
from jambs.commands.stopped import INTERRUPTED, STOPPED
from jambs.interrupts import held_back
from jambs.solids import availability

VERBS = ("check", "build", "buy", "compare", "measure", "labels", "revisions")


def run(shop: Shop, before: str, *words: str, encoding: str = "utf-8") -> subprocess.CompletedProcess[bytes]:
    """Run the program as its users do, after some lines of Python that set the scene."""
    code = f"import os, signal, sys\nfrom jambs.__main__ import run\n{before}\nrun()"
    environment = {**os.environ, "PYTHONIOENCODING": encoding}
    return subprocess.run([sys.executable, "-c", code, *words], cwd=shop.folder, capture_output=True, env=environment)


INTERRUPTED_READING = """
import jambs.job
def interrupted(path):
    os.kill(os.getpid(), signal.SIGINT)
    raise OSError("not reached")
jambs.job.read_job = interrupted
"""


@pytest.mark.parametrize("verb", [verb for verb in VERBS if verb != "revisions"])
def test_ctrl_c_is_one_sentence_and_130_in_every_verb(verb: str, shop: Shop) -> None:
    done = run(shop, INTERRUPTED_READING, verb, "house")
    assert done.returncode == INTERRUPTED
    assert done.stderr.decode().strip() == STOPPED
    assert shop.files() == []


SWALLOWED = """
import time
import jambs.job
class Lost:
    def __del__(self):
        os.kill(os.getpid(), signal.SIGINT)
        sum(range(100))
read = jambs.job.read_job
def interrupted(path):
    lost = Lost()
    del lost
    time.sleep(5)
    return read(path)
jambs.job.read_job = interrupted
"""


def test_ctrl_c_is_not_lost_where_python_drops_it(shop: Shop) -> None:
    """An exception in a finalizer goes nowhere: the Ctrl-C is sent once more."""
    done = run(shop, SWALLOWED, "check", "house")
    assert (done.returncode, done.stderr.decode().strip()) == (INTERRUPTED, STOPPED)


DRESSED_UP = """
import jambs.job
def interrupted(path):
    try:
        os.kill(os.getpid(), signal.SIGINT)
        sum(range(100))
    except KeyboardInterrupt:
        raise ImportError("libGL.so.1 is missing") from None
jambs.job.read_job = interrupted
"""


def test_an_error_that_a_library_makes_of_ctrl_c_is_ctrl_c(shop: Shop) -> None:
    done = run(shop, DRESSED_UP, "check", "house")
    assert (done.returncode, done.stderr.decode().strip()) == (INTERRUPTED, STOPPED)
    assert shop.files() == []


def test_ctrl_c_before_anything_is_loaded(shop: Shop) -> None:
    first = "import builtins\nsys.modules['click'] = None\n"
    hook = "sys.meta_path.insert(0, type('Stop', (), {'find_spec': lambda *_: os.kill(os.getpid(), signal.SIGINT)})())"
    done = run(shop, first + hook, "check", "house")
    assert (done.returncode, done.stderr.decode().strip()) == (INTERRUPTED, STOPPED)


def test_ctrl_c_while_the_kernel_loads_comes_after_it(monkeypatch: pytest.MonkeyPatch) -> None:
    """It is neither lost nor told as a library that is missing."""
    loaded: list[str] = []

    def load(name: str) -> None:
        signal.raise_signal(signal.SIGINT)
        loaded.append(name)

    monkeypatch.setattr("importlib.import_module", load)
    old = signal.signal(signal.SIGINT, signal.default_int_handler)
    with pytest.raises(KeyboardInterrupt):
        availability()
    signal.signal(signal.SIGINT, old)
    assert loaded == ["OCP.gp"]


def test_ctrl_c_is_held_back_only_within() -> None:
    before, old = signal.default_int_handler, signal.signal(signal.SIGINT, signal.default_int_handler)
    done: list[str] = []
    with pytest.raises(KeyboardInterrupt), held_back():
        signal.raise_signal(signal.SIGINT)
        done.append("all")
    assert done == ["all"] and signal.getsignal(signal.SIGINT) is before
    with held_back():
        done.append("again")
    assert done == ["all", "again"] and signal.getsignal(signal.SIGINT) is before
    signal.signal(signal.SIGINT, old)


FAULTY = """
import jambs.job
def broken(path):
    raise ZeroDivisionError("a depth of nothing")
jambs.job.read_job = broken
"""


@pytest.mark.parametrize("verb", [verb for verb in VERBS if verb != "revisions"])
def test_what_nobody_foresaw_is_a_sentence_and_a_file_to_send(verb: str, shop: Shop) -> None:
    done = run(shop, FAULTY, verb, "house")
    told = done.stderr.decode()
    assert done.returncode == 1
    assert "Traceback" not in told
    assert f"`jambs {verb}` stopped on something unexpected (ZeroDivisionError: a depth of nothing)" in told
    (report,) = shop.folder.glob("jambs-report-*.txt")
    assert f"{report} says what happened" in told
    text = report.read_text(encoding="utf-8")
    assert f"jambs {verb} house" in text and "ZeroDivisionError: a depth of nothing" in text and "Traceback" in text


def test_a_report_goes_elsewhere_where_the_folder_takes_none(
    shop: Shop, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    def broken(path: Path) -> None:
        raise ZeroDivisionError

    def gone() -> Path:
        raise FileNotFoundError

    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    monkeypatch.setattr("jambs.job.read_job", broken)
    monkeypatch.setattr("tempfile.gettempdir", lambda: str(elsewhere))
    monkeypatch.setattr("jambs.commands.door.Path.cwd", gone)
    result = shop.run("check", "house")
    assert result.exit_code == 1
    (report,) = elsewhere.glob("jambs-report-*.txt")
    assert str(report) in result.stderr


def test_told_errors_leave_no_report(shop: Shop) -> None:
    shop.change("job:", "jop:")
    assert shop.run("check", "house").exit_code == 1
    assert shop.files() == []


def test_a_screen_that_cannot_print_a_letter_prints_a_question_mark(shop: Shop) -> None:
    shop.change("room: Kitchen", "room: Łazienka")
    done = run(shop, "", "check", "house", encoding="cp1252")
    assert done.returncode == 0, done.stderr
    assert b"?azienka" in done.stdout


def test_a_worker_that_is_killed_is_a_sentence(monkeypatch: pytest.MonkeyPatch) -> None:
    """The pool is stood in for: what it raises where a worker dies is documented."""

    class Pool:
        def __init__(self, *rest: Any, **more: Any) -> None: ...
        def __enter__(self) -> Pool:
            return self

        def __exit__(self, *rest: Any) -> None: ...
        def shutdown(self, **more: Any) -> None: ...
        def submit(self, *rest: Any) -> None: ...

    def broken(running: Any) -> Any:
        raise BrokenProcessPool("terminated abruptly")

    monkeypatch.setattr(papers_of_a_job, "ProcessPoolExecutor", Pool)
    monkeypatch.setattr(papers_of_a_job, "as_completed", broken)
    many: Any = [None] * 9
    with pytest.raises(Unbuildable, match="ended from outside, most often because the machine ran out of memory"):
        list(papers_of_a_job._openings(many, print))  # type: ignore[arg-type]


def test_a_file_is_there_whole_or_not_at_all(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A disk may take the bytes and say only when they are put down that there was no room."""
    file = tmp_path / "measures.csv"
    write_whole(file, b"first")
    assert file.read_bytes() == b"first"

    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OSError, match="No space left") as caught:
        write_whole(file, b"second")
    assert file.read_bytes() == b"first"
    assert [one.name for one in tmp_path.iterdir()] == ["measures.csv"]
    assert os_sentence(caught.value) == (
        f"{file}: No space left on device; make room on the disk, or choose another folder with --out, "
        "and run this again"
    )


def test_measure_on_a_full_disk_leaves_no_table(shop: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    before = Path.open

    def full(path: Path, mode: str = "r", *rest: Any, **named: Any) -> Any:
        if "measures.csv" in path.name and mode != "r":
            raise OSError(errno.ENOSPC, "No space left on device")
        return before(path, mode, *rest, **named)

    monkeypatch.setattr(Path, "open", full)
    result = shop.run("measure", "house")
    assert result.exit_code == 1
    assert "measures.csv: No space left on device; make room on the disk" in result.stderr
    assert not (shop.folder / "house" / "measures.csv").exists()


def test_no_number_of_seconds_is_not_a_number(shop: Shop) -> None:
    result = shop.run("buy", "house", "--seconds", "nan")
    assert result.exit_code == 2
    assert "'nan' is not a time; write seconds, like 60" in result.stderr
