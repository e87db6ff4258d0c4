"""Nothing half written, nothing of the user's overwritten unasked: in the command line, and file by file."""

# ruff: noqa: F401, F811 (fixtures are imported by name)

from __future__ import annotations

import shutil
import signal
import subprocess
import sys
from pathlib import Path

import pytest
from shops import Shop, built, papers, shop, undrawn

from jambs.commands import command_line
from jambs.issued.record import Record

SHEET = "cut sheets/W01.pdf"


def contents(folder: Path) -> dict[str, bytes]:
    """The files of a folder, without what the record keeps for itself."""
    files = {path.relative_to(folder).as_posix(): path for path in folder.rglob("*") if path.is_file()}
    return {name: path.read_bytes() for name, path in files.items() if not name.startswith("issued/")}


@pytest.mark.usefixtures("undrawn")
def test_our_own_papers_are_overwritten_unasked(built: Shop) -> None:
    assert built.run("build", "house", "--only", "W01").exit_code == 0


def test_a_sheet_the_user_wrote_on_is_not_overwritten(built: Shop) -> None:
    (built.output / SHEET).write_bytes(b"with notes in pencil")
    before = contents(built.output)
    result = built.run("build", "house", "--only", "W01")
    assert result.exit_code == 1
    assert result.stdout == ""
    assert result.stderr.splitlines()[-2:] == [
        f"{SHEET} (changed since it was written)",
        "nothing was written to output/house; move them away, or give --overwrite",
    ]
    assert contents(built.output) == before


def test_a_file_of_the_users_own_is_not_overwritten(shop: Shop) -> None:
    own = shop.output / "drawings" / "W01.dxf"
    own.parent.mkdir(parents=True)
    own.write_bytes(b"drawn by hand")
    result = shop.run("build", "house", "--only", "W01")
    assert result.exit_code == 1
    assert "drawings/W01.dxf (not written by jambs)" in result.stderr
    assert contents(shop.output) == {"drawings/W01.dxf": b"drawn by hand"}


@pytest.mark.usefixtures("undrawn")
def test_overwrite_overwrites(built: Shop) -> None:
    (built.output / SHEET).write_bytes(b"with notes in pencil")
    assert built.run("build", "house", "--only", "W01", "--overwrite").exit_code == 0
    assert (built.output / SHEET).read_bytes().startswith(b"%PDF")


@pytest.mark.usefixtures("undrawn")
@pytest.mark.parametrize(("answer", "code"), [("y\n", 0), ("n\n", 1), ("\n", 1)])
def test_a_terminal_is_asked(answer: str, code: int, built: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(command_line, "_on_terminal", lambda: True)
    (built.output / SHEET).write_bytes(b"with notes in pencil")
    result = built.run("build", "house", "--only", "W01", answer=answer)
    assert result.exit_code == code
    assert f"  {SHEET} (changed since it was written)" in result.stderr
    assert (built.output / SHEET).read_bytes().startswith(b"%PDF") is (code == 0)


@pytest.mark.usefixtures("undrawn")
def test_files_the_user_put_beside_ours_stay(built: Shop) -> None:
    (built.output / "notes.txt").write_text("measure twice", encoding="utf-8")
    assert built.run("build", "house", "--only", "W02").exit_code == 0
    assert (built.output / "notes.txt").read_text(encoding="utf-8") == "measure twice"


@pytest.mark.usefixtures("undrawn")
def test_an_opening_that_is_gone_takes_its_papers_with_it(built: Shop) -> None:
    text = built.job.read_text(encoding="utf-8")
    built.job.write_text(text[: text.index("  - mark: W02")], encoding="utf-8")
    pencilled = built.output / "cut sheets" / "W02.pdf"
    pencilled.write_bytes(b"with notes in pencil")
    assert built.run("build", "house").exit_code == 0
    left = [name for name in contents(built.output) if "W02" in name]
    assert left == ["cut sheets/W02.pdf"]
    assert pencilled.read_bytes() == b"with notes in pencil"


def test_killed_while_drawing_leaves_the_old_papers_whole(built: Shop) -> None:
    """The process kills itself, as the user would, after the opening that changed is drawn; the other one was laid."""
    before = contents(built.output)
    code = (
        "import os, signal, sys\nfrom pathlib import Path\n"
        "from jambs.app.build import ask, build\nfrom jambs.job import read_job\n"
        "asked = ask(read_job(Path('house')), only=(), target=Path('output/house'))\n"
        "def done(mark):\n    print('done', mark, flush=True)\n"
        "    if mark == 'W01':\n        os.kill(os.getpid(), signal.SIGKILL)\n"
        "build(asked, may_overwrite=lambda files: True, progress=done)\n"
    )
    built.change("frame: 35 1/2 x 47 1/2", "frame: 35 1/4 x 47 1/2")
    killed = subprocess.run([sys.executable, "-c", code], cwd=built.folder, capture_output=True, text=True)
    assert killed.returncode == -signal.SIGKILL, killed.stderr
    assert killed.stdout == "done W02\ndone W01\n"
    assert contents(built.output) == before


# ---- one list of written files, shared by all verbs


@pytest.mark.parametrize(
    ("words", "paper"),
    [
        (("compare",), "placement.csv"),
        (("buy", "--stages", "0"), "plan.json"),
        (("labels",), "site/labels.pdf"),
        (("measure",), "site/measure sheets.pdf"),
    ],
)
def test_another_verb_in_the_same_folder_leaves_the_cut_sheets(built: Shop, words: tuple[str, ...], paper: str) -> None:
    built.change(BOARDS, PRICED)
    before = contents(built.output)
    verb, *options = words
    result = built.run(verb, "house", *options, "--out", "output/house")
    assert result.exit_code == 0, result.output
    after = contents(built.output)
    assert {name: after.get(name) for name in before if name != WITNESS} == without_witness(before)
    assert paper in after
    assert Record.open(built.output).papers[paper].verb == verb


BOARDS = """    - {nominal: 1x4, stock: poplar}
    - {nominal: 1x6, stock: poplar}
"""
PRICED = """    - {nominal: 1x4, stock: poplar, lengths: [8'], price_per_foot: 2}
    - {nominal: 1x6, stock: poplar, lengths: [8'], price_per_foot: 3}
    - {nominal: 2x6, stock: spruce, lengths: [8', 12'], price_per_foot: 1}
"""
WITNESS = ".written.json"


def without_witness(files: dict[str, bytes]) -> dict[str, bytes]:
    return {name: content for name, content in files.items() if name != WITNESS}


def test_a_folder_within_the_papers_shares_their_record(built: Shop) -> None:
    assert built.run("compare", "house", "--out", "output/house/positions").exit_code == 0
    papers = Record.open(built.output).papers
    assert papers["positions/placement.csv"].verb == "compare"
    assert not (built.output / "positions" / "issued").exists()


def test_a_folder_of_ones_own_has_its_own_record(shop: Shop) -> None:
    assert shop.run("compare", "house", "--out", "positions").exit_code == 0
    assert set(Record.open(shop.folder / "positions").papers) == {
        "placement comparison.pdf",
        "placement.csv",
        "placement.json",
    }


@pytest.mark.parametrize("verb", ["build", "compare", "measure", "labels", "revisions"])
def test_two_jobs_in_folders_of_one_name_do_not_share_papers(built: Shop, verb: str) -> None:
    """Both are called ``house``; both would go to ``output/house``."""
    other = built.folder / "hill" / "house"
    shutil.copytree(built.folder / "house", other)
    text = (other / "job.yaml").read_text(encoding="utf-8")
    (other / "job.yaml").write_text(text.replace("job: ", "job: Another ", 1), encoding="utf-8")
    before = contents(built.output)
    result = built.run(verb, "hill/house")
    assert result.exit_code == 1
    assert "output/house holds the papers of the job" in result.stderr
    assert "those of 'Another" in result.stderr and "(../../hill/house/job.yaml) do not go there." in result.stderr
    assert contents(built.output) == before


def test_a_paper_knows_its_opening(built: Shop) -> None:
    papers = Record.open(built.output).papers
    marks = {path: paper.marks for path, paper in papers.items() if paper.marks}
    assert marks["cut sheets/W01.pdf"] == ("W01",) and marks["drawings/W02 flat.dxf"] == ("W02",)
    assert {path for path in papers if "W0" in path} == set(marks)


# ---- what was issued is said until it was


@pytest.mark.usefixtures("undrawn")
def test_the_recut_list_is_said_again_until_it_was_shown(built: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    """The build is stopped after its papers moved in and before it could say what to recut."""
    built.change("frame: 35 1/2 x 47 1/2", "frame: 35 1/4 x 47 1/2")
    with monkeypatch.context() as patch:
        patch.setattr(command_line, "_tell_issue", lambda asked: None)
        built.run("build", "house", "--without-solids")
    assert "recut" not in built.run("labels", "house").output
    said = built.run("build", "house", "--without-solids").stdout
    assert "Issue 2, changed sheets of W01; print `changed cut sheets.pdf` and destroy the old ones:" in said
    assert "if cut already, recut W01-" in said
    assert built.run("build", "house", "--without-solids").stdout.splitlines()[-1] == "Nothing changed since issue 2."


def test_without_solids_says_which_solids_are_void(built: Shop) -> None:
    pytest.importorskip("OCP")
    built.change("frame: 35 1/2 x 47 1/2", "frame: 35 1/4 x 47 1/2")
    result = built.run("build", "house", "--without-solids")
    solids = "solids/W01 fit.csv, solids/W01.glb, solids/W01.step"
    advice = "build the whole house with its solids to renew those"
    assert f"void and taken away, kept in the record: {solids}; {advice}" in result.stderr
    assert not (built.output / "solids" / "W01.step").exists()
    assert (built.output / "solids" / "W02.step").exists()
    assert built.run("build", "house").exit_code == 0
    assert (built.output / "solids" / "W01.step").exists()
