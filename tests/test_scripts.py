"""Every script of the examples runs, and says a size that was worked by hand.

The garden studio: gypsum 1/2, stud 3-1/2, sheathing 1/2, foam 1-1/2, strapping 3/4: the trim plane is at 6-3/4. Flange
on it, jamb depth 3-1/4: interior depth 3-1/2; frame projection 3/4: exterior depth -3/4; their sum is 2-3/4. The jamb
is ripped 1/16 proud: 3-9/16. Frame 24, faces 1-1/4, frame reveal 1/8: 21-3/4 clear; casing reveal 3/16: 22-1/8 between
the casing legs, and two of 2-1/2: 27-1/8 over all.
"""

from __future__ import annotations

import runpy
import shutil
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
SCRIPTS = ROOT / "examples" / "scripts"
JOB = ROOT / "examples" / "garden-studio"
SAYS = {
    "build_a_house": "all of them are there: True",
    "buy_for_a_house": "with spares:",
    "check_a_house": "1 opening; 1 planned: measure before cutting",
    "depths": 'W1 3 1/2" -3/4"',
    "faults": "1 faults; the first: :",
    "files_for_the_router": "the first: W1-1.dxf",
    "issues_so_far": "issue 1: W1",
    "label_every_part": "labels are in labels.pdf",
    "measure_a_house": "fill in measures.csv · is new: True",
    "parts_list": 'W1-8: casing, bottom: 3/4" × 2 1/2" × 27 1/8"',
    "sections": '6 3/4" deep',
    "shared_depth": 'W1 2 3/4" = 2 3/4"',
    "shop_drawing": "W1.dxf is written",
    "what_to_buy": "not under",
    "what_to_look_out_for": "note: W1: ",
    "widest_jamb": 'W1-1 3 9/16"',
}


def test_no_script_is_forgotten() -> None:
    assert {path.stem for path in SCRIPTS.glob("*.py")} == set(SAYS)
    page = (SCRIPTS / "README.md").read_text(encoding="utf-8")
    assert {row.split("`")[1].removesuffix(".py") for row in page.splitlines() if row.startswith("| `")} == set(SAYS)


@pytest.mark.parametrize("name", sorted(SAYS))
def test_a_script_runs_outside_the_repository(
    name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    shutil.copytree(JOB, tmp_path / "studio")  # the table of measures goes beside the job
    monkeypatch.setattr(sys, "argv", [name, str(tmp_path / "studio")])
    runpy.run_path(str(SCRIPTS / f"{name}.py"), run_name="__main__")
    assert SAYS[name] in capsys.readouterr().out


@pytest.mark.parametrize("name", ["issues_so_far", "depths", "shop_drawing"])
def test_a_script_takes_any_job(
    name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """One of them asked for the opening W1, whatever the job had."""
    monkeypatch.chdir(tmp_path)
    text = (JOB / "job.yaml").read_text(encoding="utf-8")
    assert text.count("mark: W1") == 1
    (tmp_path / "job.yaml").write_text(text.replace("mark: W1", "mark: Z9"), encoding="utf-8")
    monkeypatch.setattr(sys, "argv", [name, "job.yaml"])
    runpy.run_path(str(SCRIPTS / f"{name}.py"), run_name="__main__")
    assert SAYS[name].replace("W1", "Z9") in capsys.readouterr().out


def test_the_script_of_the_readme_runs(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    code = readme.partition("```python\n")[2].partition("```")[0]
    monkeypatch.chdir(ROOT)
    exec(compile(code, "README.md", "exec"), {"__name__": "__main__"})
    # Flange half of the added depth out: 6-1/2 + 2-3/4, less the jamb depth of 4-9/16.
    assert capsys.readouterr().out.startswith('W01 4 11/16"')


def test_the_version_is_said_alike() -> None:
    import jambs

    assert f'version = "{jambs.__version__}"' in (ROOT / "pyproject.toml").read_text(encoding="utf-8")
