"""Many openings are drawn in several processes: the same papers, the same faults, nobody left running."""

# ruff: noqa: F401, F811 (fixtures are imported by name)

from __future__ import annotations

import datetime
import pickle
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any, NoReturn

import pytest
from cases import strips
from pypdf import PdfReader
from shops import WORKED, Shop, built, papers, shop

from jambs.app import papers as app_papers
from jambs.app.chain import Unbuildable, make_kits
from jambs.app.issuing import begin_issue
from jambs.app.papers import join_papers, write_papers
from jambs.issued.entry import BUILD, JobIdentity
from jambs.issued.writing import begin
from jambs.job import read_job
from jambs.outside.house import plan_house


def names(folder: Path) -> list[str]:
    return sorted(path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file())


def test_several_processes_write_what_one_writes(papers: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Lists byte for byte, cut sheets word for word: hatch lines come in another order in every process."""
    monkeypatch.setattr(app_papers, "FEW", 0)
    job = read_job(WORKED)
    house, told = plan_house(make_kits(job), job), list[str]()
    kits = house.kits
    with begin(tmp_path / "record", JobIdentity(name=job.name, file=""), verb=BUILD) as writing:
        issuing = begin_issue(kits, house, job, writing, day=datetime.date.today().isoformat(), is_whole=True)
    write_papers(
        kits,
        house,
        job,
        tmp_path,
        whole_house=True,
        progress=told.append,
        stamps=issuing.stamps,
    )
    join_papers(kits, job, tmp_path, stamps=issuing.stamps)
    assert sorted(told) == ["W01", "W02"]
    issued = (".", "issued/", "current sheets")
    assert names(tmp_path) == [name for name in names(papers) if not name.startswith(issued)]
    for name in names(tmp_path):
        if "cut sheets" in name:
            assert words(tmp_path / name) == words(papers / name), name
        elif not name.endswith(".dxf"):
            assert (tmp_path / name).read_bytes() == (papers / name).read_bytes(), name


@pytest.mark.parametrize(("few", "told_before"), [(0, []), (9, ["W01", "W02"])])
def test_what_needs_no_paper_of_an_opening_is_done_while_others_draw(
    few: int, told_before: list[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Once, and before any opening is waited for; where one process does all, after them."""
    monkeypatch.setattr(app_papers, "FEW", few)
    job = read_job(WORKED)
    house, told = plan_house(make_kits(job), job), list[str]()
    found: list[list[str]] = []
    lists = [lambda: found.append(list(told))]
    write_papers(
        house.kits, house, job, tmp_path, whole_house=False, progress=told.append, with_solids=False, meanwhile=lists
    )
    assert found == [told_before]
    assert sorted(told) == ["W01", "W02"]


def words(pdf: Path) -> list[str]:
    return [page.extract_text() for page in PdfReader(pdf).pages]


def test_what_cannot_be_drawn_is_told_with_its_mark_and_nothing_stays(
    shop: Shop, monkeypatch: pytest.MonkeyPatch
) -> None:
    def too_large(*given: Any, **named: Any) -> NoReturn:
        raise ValueError("view 'interior elevation' fits no LETTER page at 1:48")

    monkeypatch.setattr(app_papers, "draw_opening", too_large)
    result = shop.run("build", "house")
    assert result.exit_code == 1
    assert result.stderr.splitlines()[-1] == "W01: view 'interior elevation' fits no LETTER page at 1:48"
    assert shop.files() == []


def test_the_sentences_travel_from_another_process() -> None:
    error = pickle.loads(pickle.dumps(Unbuildable("W01: too large", "W02: too deep")))
    assert error.sentences == ("W01: too large", "W02: too deep")


@pytest.mark.skipif(not Path("/proc/self/task").is_dir(), reason="looks for processes in /proc")
def test_no_process_outlives_a_killed_build(shop: Shop) -> None:
    """The build is killed while its helpers draw; they notice and end."""
    text = shop.job.read_text(encoding="utf-8")
    more = "".join(
        f"  - {{mark: X{number}, room: Attic, frame: 30 x 40, rough_opening: 31 x 41}}\n" for number in range(30)
    )
    shop.job.write_text(text + more, encoding="utf-8")
    code = "from jambs.commands.command_line import main; main(['build', 'house'])"
    build = subprocess.Popen([sys.executable, "-c", code], cwd=shop.folder, stderr=subprocess.DEVNULL)
    until(lambda: len(workers_of(build.pid)) >= 2 and any(shop.folder.rglob("*.dxf")))
    helpers = workers_of(build.pid)
    build.send_signal(signal.SIGKILL)
    build.wait()
    until(lambda: not any(is_running(helper) for helper in helpers))
    assert [name for name in shop.files() if name.startswith("output/house/") and "/issued/." not in name] == []


def until(is_so: Callable[[], bool]) -> None:
    """Wait for something that must come true; a minute is far more than it takes."""
    end = time.monotonic() + 60
    while not is_so():
        assert time.monotonic() < end
        time.sleep(0.1)


def workers_of(pid: int) -> list[int]:
    children = Path(f"/proc/{pid}/task/{pid}/children").read_text(encoding="ascii").split()
    return [int(child) for child in children]


def is_running(pid: int) -> bool:
    """A process that ended and was not yet reaped is not running."""
    try:
        return ") Z " not in Path(f"/proc/{pid}/stat").read_text(encoding="ascii")
    except OSError:
        return False
