"""Try mutants on a copy of the house: put one in, run the tests of its room, see whether one fails.

The tests of a room are collected once, and run once to learn how long each takes and which functions it calls, itself
or by way of what it shares with others. For each mutant the process forks, the function is given its changed code, and
the tests that call it are run, fastest first. What stands outside functions (tables, defaults) is written into the copy
and imported anew for all tests.
"""

from __future__ import annotations

import ast
import functools
import gc
import importlib
import json
import os
import resource
import shutil
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path
from types import CodeType, FrameType, FunctionType
from typing import Any, NoReturn

import pytest
from mutants import Mutant

ROOT = Path(__file__).parents[2]
LEFT_OUT = shutil.ignore_patterns(".*", "__pycache__", "output", "build", "dist", "*.egg-info")
HEAVY = ("yaml", "pydantic", "numpy", "scipy.optimize", "scipy.sparse.linalg", "openpyxl")
OPTIONS = ("-p", "no:cacheprovider", "-p", "no:terminal", "-o", "addopts=")
SEEN, LIVES, TOO_LONG = "killed", "lives", "over the time limit"
LEARNT = "tests-of-room.json"
LEAST_LIMIT = 60.0
"""A mutant gets at least this long, and three times what the tests of its room take [s of the processor]."""
WAITING = 20
"""A child that waits for the processor gets this many times its limit before it is ended."""

Told = Callable[[Mutant, str], None]


def make_copy(folder: Path) -> None:
    """Copy the house as it stands now into a folder of its own."""
    for name in ("jambs", "tests", "examples"):
        shutil.copytree(ROOT / name, folder / name, ignore=LEFT_OUT)
    for name in ("pyproject.toml", "README.md", "DEVELOPERS.md"):
        shutil.copy(ROOT / name, folder / name)
    subprocess.run([sys.executable, "-m", "compileall", "-q", str(folder / "jambs"), str(folder / "tests")], check=True)


def try_room(room: str, sample: Sequence[Mutant], folder: Path, told: Told) -> None:
    """Try all mutants of a room against its own tests; ``told`` hears what became of each.

    Raises:
        SystemExit: the tests do not pass on the unchanged house, so that nothing can be said of mutants.
    """
    for name in HEAVY:
        importlib.import_module(name)
    inside: list[Mutant] = []
    outside: list[Mutant] = []
    for one in sample:
        (inside if function_of(one, folder) else outside).append(one)
    plugin = Patching(folder, inside, told)
    (folder / LEARNT).unlink(missing_ok=True)
    if _wait(_forked(lambda: _pytest(folder, room, plugin)), None) != 0:
        failed = (folder / LEARNT).read_text(encoding="utf-8") if (folder / LEARNT).exists() else f"tests/{room}"
        raise SystemExit(f"it does not pass on the unchanged house: {failed}")
    for one in outside:
        told(one, _try_anew(one, folder, room))


def function_of(mutant: Mutant, folder: Path) -> ast.FunctionDef | None:
    """Return the outermost function whose body holds a mutant; nothing for tables, fields and defaults."""
    source = (folder / mutant.path).read_bytes()
    starts = [0]
    for line in source.splitlines(keepends=True):
        starts.append(starts[-1] + len(line))
    for node in _functions(ast.parse(source)):
        first, last = node.body[0], node.body[-1]
        assert last.end_lineno is not None and last.end_col_offset is not None
        begin, end = starts[first.lineno - 1] + first.col_offset, starts[last.end_lineno - 1] + last.end_col_offset
        if begin <= mutant.at and mutant.end <= end:
            return node
    return None


def _functions(node: ast.AST) -> Iterator[ast.FunctionDef]:
    for child in ast.iter_child_nodes(node):
        if isinstance(child, ast.FunctionDef):
            yield child
        elif isinstance(child, ast.ClassDef):
            yield from _functions(child)


@dataclass(frozen=True, slots=True, kw_only=True)
class Ran:
    """How long a test took [s of the processor], and the functions it called, as ``path:line``."""

    seconds: float
    called: frozenset[str]


@dataclass(eq=False)
class Patching:
    """A plugin of pytest: once the tests are collected, every mutant in turn is put in and tried in a child.

    Plugins are told apart by themselves, not by their values: pytest puts them into sets.
    """

    folder: Path
    mutants: Sequence[Mutant]
    told: Told

    @pytest.hookimpl(tryfirst=True)
    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Run the tests once as they are, then with each mutant, those that call its function first."""
        learnt = self.folder / LEARNT
        if _wait(_forked(partial(_measure, session, self.folder)), None) != 0:
            session.testsfailed = 1
            return True
        ran = _learnt(learnt)
        limit = max(LEAST_LIMIT, 3 * sum(one.seconds for one in ran.values()))
        for one in self.mutants:
            self.told(one, _verdict(_wait(_forked(partial(self._with, one, session, ran), limit), limit)))
        return True

    def _with(self, mutant: Mutant, session: pytest.Session, ran: dict[str, Ran]) -> int:
        function = _patch(mutant, self.folder)
        calling = [item for item in session.items if function in ran[item.nodeid].called]
        session.items = sorted(calling, key=_order(calling, ran))
        return int(any(_fails(session, number) for number in range(len(session.items))))


@dataclass(eq=False)
class Sorting:
    """A plugin of pytest that runs the fastest tests first."""

    ran: dict[str, Ran]

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        """Sort what was collected by how long it took before."""
        items.sort(key=lambda item: self.ran[item.nodeid].seconds)


def _order(items: Sequence[pytest.Item], ran: dict[str, Ran]) -> Callable[[pytest.Item], tuple[Any, ...]]:
    """Return the order of tests: a file at a time, as they share what is made once.

    The file whose tests are fast on average comes first, and in a file the fastest test.
    """
    seconds: dict[Path, list[float]] = {}
    for item in items:
        seconds.setdefault(item.path, []).append(ran[item.nodeid].seconds)
    means = {path: sum(several) / len(several) for path, several in seconds.items()}
    return lambda item: (means[item.path], item.path, ran[item.nodeid].seconds)


@dataclass(eq=False)
class Sharing:
    """A plugin of pytest that notes which functions the making of each fixture calls, as several tests share it."""

    calls: dict[int, CodeType]
    made: dict[int, set[int]] = field(default_factory=dict)

    @pytest.hookimpl(wrapper=True)
    def pytest_fixture_setup(self, fixturedef: pytest.FixtureDef[Any]) -> Iterator[Any]:
        """Note what is called while a fixture is made."""
        before = dict(self.calls)
        self.calls.clear()
        try:
            return (yield)
        finally:
            self.made.setdefault(id(fixturedef), set()).update(self.calls)
            self.calls.update(before)

    def shared(self, item: pytest.Item) -> set[int]:
        """Return what was called to make the fixtures of a test, whenever that was."""
        definitions = getattr(item, "_fixtureinfo").name2fixturedefs.values()  # noqa: B009
        return set().union(*(self.made.get(id(one), set()) for several in definitions for one in several))


@dataclass(eq=False)
class Failures:
    """A plugin of pytest that keeps why tests failed."""

    texts: list[str] = field(default_factory=list)

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        """Keep the text of a failure."""
        if report.failed:
            self.texts.append(report.longreprtext)


def _measure(session: pytest.Session, folder: Path) -> int:
    """Run all tests; write down how long each takes and what it calls."""
    found, codes, calls = {}, dict[int, CodeType](), dict[int, CodeType]()
    sharing, failures = Sharing(calls), Failures()
    session.config.pluginmanager.register(sharing)
    session.config.pluginmanager.register(failures)
    for number, item in enumerate(session.items):
        _forget()
        calls.clear()
        started = time.process_time()
        with _noting(calls):
            failed = _fails(session, number)
        if failed:
            (folder / LEARNT).write_text("\n".join([item.nodeid, *failures.texts]), encoding="utf-8")
            return 1
        codes |= calls
        called = {codes[one] for one in [*calls, *sharing.shared(item)]}
        places = {_place(code, folder) for code in called if code.co_filename.startswith(f"{folder}/jambs/")}
        found[item.nodeid] = [time.process_time() - started, sorted(places)]
    (folder / LEARNT).write_text(json.dumps(found), encoding="utf-8")
    return 0


def _learnt(file: Path) -> dict[str, Ran]:
    rows = json.loads(file.read_text(encoding="utf-8"))
    return {test: Ran(seconds=seconds, called=frozenset(called)) for test, (seconds, called) in rows.items()}


@contextmanager
def _noting(calls: dict[int, CodeType]) -> Iterator[None]:
    """Note every function that is called meanwhile."""

    def note(frame: FrameType, event: str, argument: object) -> None:
        calls[id(frame.f_code)] = frame.f_code

    sys.settrace(note)
    threading.settrace(note)
    try:
        yield
    finally:
        sys.settrace(None)
        threading.settrace(None)


def _forget() -> None:
    """Forget all that functions remember, so that the next test calls what it needs itself."""
    for thing in gc.get_objects():
        if type(thing) is functools._lru_cache_wrapper:  # no isinstance: it asks dead proxies for their class
            thing.cache_clear()


def _place(code: CodeType, folder: Path) -> str:
    return f"{Path(code.co_filename).relative_to(folder).as_posix()}:{code.co_firstlineno}"


def _fails(session: pytest.Session, number: int) -> bool:
    """Run one test; say whether it failed."""
    item, following = session.items[number], session.items[number + 1 : number + 2]
    item.config.hook.pytest_runtest_protocol(item=item, nextitem=following[0] if following else None)
    return session.testsfailed > 0


def _patch(mutant: Mutant, folder: Path) -> str:
    """Give the function that a mutant stands in its changed code, wherever it is held; forget what was remembered.

    Returns the place of the function.
    """
    path = folder / mutant.path
    node = function_of(mutant, folder)
    assert node is not None
    changed = compile(mutant.applied(path.read_bytes()), str(path), "exec", dont_inherit=True)
    first = min([node.lineno, *(one.lineno for one in node.decorator_list)])
    code = next(one for one in _codes(changed) if one.co_name == node.name and one.co_firstlineno == first)
    _forget()
    for thing in gc.get_objects():
        if type(thing) is FunctionType and _is_of(thing.__code__, code):
            thing.__code__ = code
    return _place(code, folder)


def _is_of(one: CodeType, other: CodeType) -> bool:
    places = (one.co_filename, one.co_firstlineno, one.co_name)
    return places == (other.co_filename, other.co_firstlineno, other.co_name)


def _codes(code: CodeType) -> Iterator[CodeType]:
    for one in code.co_consts:
        if isinstance(one, CodeType):
            yield one
            yield from _codes(one)


def _try_anew(mutant: Mutant, folder: Path, room: str) -> str:
    """Write a mutant into the copy, let a child import and test everything, put the file back."""
    path = folder / mutant.path
    source = path.read_bytes()
    for compiled in (path.parent / "__pycache__").glob(f"{path.stem}.*.pyc"):
        compiled.unlink()
    try:
        path.write_bytes(mutant.applied(source))
        ran = _learnt(folder / LEARNT)
        limit = max(LEAST_LIMIT, 3 * sum(one.seconds for one in ran.values()))
        return _verdict(_wait(_forked(lambda: _pytest(folder, room, Sorting(ran)), limit), limit))
    finally:
        path.write_bytes(source)


def _pytest(folder: Path, room: str, *plugins: Any) -> int:
    os.chdir(folder)
    sys.dont_write_bytecode = True
    sys.path.insert(0, str(folder))
    return int(pytest.main([*OPTIONS, "-x", f"tests/{room}"], plugins=list(plugins)))


def _forked(work: Callable[[], int], limit: float | None = None) -> int:
    """Let a child do work and end with its number; return the child."""
    child = os.fork()
    return child if child else _work(work, limit)


def _work(work: Callable[[], int], limit: float | None) -> NoReturn:
    if limit is not None:
        os.setpgid(0, 0)
        resource.setrlimit(resource.RLIMIT_CPU, (int(limit), int(limit) + 1))
    code = 3
    try:
        code = work()
    finally:
        os._exit(code)


def _wait(child: int, limit: float | None) -> int | None:
    """Return how a child ended; nothing where it was over its limit."""
    end = time.monotonic() + WAITING * (limit or 1e6)
    while time.monotonic() < end:
        done, status = os.waitpid(child, os.WNOHANG)
        if done and os.WIFSIGNALED(status) and os.WTERMSIG(status) in (signal.SIGXCPU, signal.SIGKILL):
            return None
        if done:
            return os.waitstatus_to_exitcode(status)
        time.sleep(0.01)
    os.killpg(child, signal.SIGKILL)
    os.waitpid(child, 0)
    return None


def _verdict(code: int | None) -> str:
    return TOO_LONG if code is None else (LIVES if code == 0 else SEEN)
