"""A small job that is built once, a folder to work in, and states of it that are reached once."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from quick_papers import quick

from jambs.commands.command_line import main

WORKED = Path(__file__).with_name("worked.yaml")


class Shop:
    """A folder with a job in it, and the command line run from there."""

    def __init__(self, folder: Path, patch: pytest.MonkeyPatch) -> None:
        self.folder = folder
        self.job = folder / "house" / "job.yaml"
        self.output = folder / "output" / "house"
        self._patch = patch

    def run(self, *words: str, answer: str = "") -> Result:
        """Run ``jambs`` with these words."""
        self._patch.chdir(self.folder)
        return CliRunner().invoke(main, words, input=answer, catch_exceptions=False)

    def change(self, old: str, new: str) -> None:
        """Exchange a text of the job."""
        text = self.job.read_text(encoding="utf-8")
        assert old in text
        self.job.write_text(text.replace(old, new, 1), encoding="utf-8")

    def files(self) -> list[str]:
        """All files under the folder, hidden ones too, without the job itself."""
        paths = (path.relative_to(self.folder) for path in self.folder.rglob("*") if path.is_file())
        return sorted(path.as_posix() for path in paths if path.parts[0] != "house")


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Shop:
    """A fresh folder with the worked case as ``house/job.yaml``."""
    (tmp_path / "house").mkdir()
    shutil.copy(WORKED, tmp_path / "house" / "job.yaml")
    return Shop(tmp_path, monkeypatch)


_worked_case: list[Path] = []
"""Where the worked case is built: a fixture that several files import is made anew for each of them, this is not."""


@pytest.fixture(scope="session")
def papers(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The output of the worked case, built once."""
    if not _worked_case:
        folder = tmp_path_factory.mktemp("papers")
        (folder / "house").mkdir()
        shutil.copy(WORKED, folder / "house" / "job.yaml")
        with pytest.MonkeyPatch.context() as patch:
            result = Shop(folder, patch).run("build", "house")
        assert result.exit_code == 0, result.output
        _worked_case.append(folder / "output" / "house")
    return _worked_case[0]


@pytest.fixture
def built(shop: Shop, papers: Path) -> Shop:
    """The fresh folder with the papers in it."""
    shutil.copytree(papers, shop.output)
    return shop


@pytest.fixture
def undrawn(monkeypatch: pytest.MonkeyPatch) -> None:
    """Builds without drawings, pictures and solids: for what is read in words, tables and the record alone."""
    quick(monkeypatch, drawings=False)


Reach = Callable[[str, Callable[[], object]], None]
"""Brings the shop to a state of that name: by the work that is given the first time, then by a copy."""
_states: dict[str, Path] = {}


@pytest.fixture
def reach(shop: Shop, tmp_path_factory: pytest.TempPathFactory) -> Reach:
    """Work that several tests begin with is done once."""

    def reached(name: str, work: Callable[[], object]) -> None:
        if name in _states:
            shutil.rmtree(shop.folder)
            shutil.copytree(_states[name], shop.folder)
        else:
            work()
            _states[name] = Path(shutil.copytree(shop.folder, tmp_path_factory.mktemp("state") / "shop"))

    return reached
