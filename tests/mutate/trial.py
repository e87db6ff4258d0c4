"""Try mutants on a copy of the house: write one, run the tests of its room fastest first, see whether one fails.

The copy's tests run in a child that is forked after the big libraries are loaded, so that a mutant costs little more
than the tests that see it.
"""

from __future__ import annotations

import importlib
import json
import os
import resource
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from mutants import Mutant

ROOT = Path(__file__).parents[2]
LEFT_OUT = shutil.ignore_patterns(".*", "__pycache__", "output", "build", "dist", "*.egg-info")
HEAVY = ("yaml", "pydantic", "numpy", "scipy.optimize", "scipy.sparse.linalg", "openpyxl")
TIMES = "durations.json"
"""How long every test of the unchanged house took [s], in the copy."""
WAITING = 20
"""A child that waits for the processor gets this many times its limit before it is ended."""
SEEN, LIVES, TOO_LONG = "killed", "lives", "over the time limit"


@dataclass(frozen=True, slots=True)
class FastestFirst:
    """Put the tests that took least time first, so that most mutants die soon; write down how long each takes."""

    durations: dict[str, float]
    writes: bool = False

    def pytest_collection_modifyitems(self, items: list[object]) -> None:
        """Sort the tests; one that is not known comes first."""
        items.sort(key=lambda item: self.durations.get(item.nodeid, 0.0))  # type: ignore[attr-defined]

    def pytest_runtest_logreport(self, report: object) -> None:
        """Add up setup, call and teardown of a test."""
        if self.writes:
            name = report.nodeid  # type: ignore[attr-defined]
            self.durations[name] = self.durations.get(name, 0.0) + report.duration  # type: ignore[attr-defined]


def make_copy(folder: Path) -> None:
    """Copy the house as it stands now into a folder of its own; a copy that is there is brought up to date."""
    for name in ("jambs", "tests", "examples"):
        shutil.rmtree(folder / name, ignore_errors=True)
        shutil.copytree(ROOT / name, folder / name, ignore=LEFT_OUT)
    for name in ("pyproject.toml", "README.md", "DEVELOPERS.md"):
        shutil.copy(ROOT / name, folder / name)
    compiled = [sys.executable, "-m", "compileall", "-q", str(folder / "jambs"), str(folder / "tests")]
    subprocess.run(compiled, check=True)


def load_heavy() -> None:
    """Import what every child would import again."""
    for name in HEAVY:
        importlib.import_module(name)


def measure_tests(folder: Path, tests: Sequence[str], limit: float) -> dict[str, float]:
    """Run tests on the unchanged copy and return how long each took [s].

    Raises:
        SystemExit: they do not pass, so that nothing can be said of mutants.
    """
    into = folder / TIMES
    into.unlink(missing_ok=True)
    if _in_child(folder, tests, {}, limit, into) != SEEN or not into.exists():
        raise SystemExit(f"the tests do not pass on the unchanged house: {' '.join(tests)}")
    found: dict[str, float] = json.loads(into.read_text(encoding="utf-8"))
    return found


def try_mutant(mutant: Mutant, folder: Path, tests: Sequence[str], durations: dict[str, float], limit: float) -> str:
    """Write one mutant into the copy, run the tests, put the file back; return what became of it."""
    path = folder / mutant.path
    source = path.read_bytes()
    for compiled in (path.parent / "__pycache__").glob(f"{path.stem}.*.pyc"):
        compiled.unlink()
    try:
        path.write_bytes(mutant.applied(source))
        return _in_child(folder, tests, durations, limit)
    finally:
        path.write_bytes(source)


def _in_child(
    folder: Path, tests: Sequence[str], durations: dict[str, float], limit: float, into: Path | None = None
) -> str:
    """Fork, run pytest, wait; while measuring, SEEN says that all tests passed. ``limit``: of the processor's time."""
    child = os.fork()
    if child == 0:
        resource.setrlimit(resource.RLIMIT_CPU, (int(limit), int(limit) + 1))
        _run(folder, tests, durations, into)
    end = time.monotonic() + WAITING * limit
    while time.monotonic() < end:
        done, status = os.waitpid(child, os.WNOHANG)
        if done:
            if os.WIFSIGNALED(status) and os.WTERMSIG(status) in (signal.SIGXCPU, signal.SIGKILL):
                return TOO_LONG
            passed = os.waitstatus_to_exitcode(status) == 0
            return (SEEN if passed else LIVES) if into else (LIVES if passed else SEEN)
        time.sleep(0.02)
    os.killpg(child, signal.SIGKILL)
    os.waitpid(child, 0)
    return TOO_LONG


def _run(folder: Path, tests: Sequence[str], durations: dict[str, float], into: Path | None) -> None:
    """Run pytest in the child and end it: 0 where all tests passed."""
    os.setpgid(0, 0)
    os.chdir(folder)
    quiet = os.open(os.devnull, os.O_WRONLY)
    os.dup2(quiet, 1)
    os.dup2(quiet, 2)
    sys.dont_write_bytecode = True
    sys.path.insert(0, str(folder))
    import pytest

    plugin = FastestFirst(durations, writes=into is not None)
    try:
        code = pytest.main(["-x", "-q", "-p", "no:cacheprovider", *tests], plugins=[plugin])
        if into and code == 0:
            into.write_text(json.dumps(plugin.durations), encoding="utf-8")
    except BaseException:
        code = 3
    os._exit(int(code))
