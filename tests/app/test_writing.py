"""Nothing half written, nothing of the user's overwritten unasked: in the command line, and file by file."""

# ruff: noqa: F401, F811 (fixtures are imported by name)

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from shops import Shop, built, papers, shop

from jambs.app import command_line
from jambs.app.writing import (
    DAY,
    JOURNAL,
    MANIFEST,
    Conflict,
    conflicts,
    digest_of,
    digests,
    fresh_folder,
    move_in,
)

SHEET = "cut sheets/W01.pdf"


def contents(folder: Path) -> dict[str, bytes]:
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


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


def test_overwrite_overwrites(built: Shop) -> None:
    (built.output / SHEET).write_bytes(b"with notes in pencil")
    assert built.run("build", "house", "--only", "W01", "--overwrite").exit_code == 0
    assert (built.output / SHEET).read_bytes().startswith(b"%PDF")


@pytest.mark.parametrize(("answer", "code"), [("y\n", 0), ("n\n", 1), ("\n", 1)])
def test_a_terminal_is_asked(answer: str, code: int, built: Shop, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(command_line, "_on_terminal", lambda: True)
    (built.output / SHEET).write_bytes(b"with notes in pencil")
    result = built.run("build", "house", "--only", "W01", answer=answer)
    assert result.exit_code == code
    assert f"  {SHEET} (changed since it was written)" in result.stderr
    assert (built.output / SHEET).read_bytes().startswith(b"%PDF") is (code == 0)


def test_files_the_user_put_beside_ours_stay(built: Shop) -> None:
    (built.output / "notes.txt").write_text("measure twice", encoding="utf-8")
    assert built.run("build", "house", "--only", "W02").exit_code == 0
    assert (built.output / "notes.txt").read_text(encoding="utf-8") == "measure twice"


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
    """The process kills itself, as the user would, after the first opening is drawn."""
    before = contents(built.output)
    code = (
        "import os, signal, sys\nfrom pathlib import Path\n"
        "from jambs.app.build import ask, build\nfrom jambs.job import read_job\n"
        "asked = ask(read_job(Path('house')), only=(), target=Path('output/house'))\n"
        "def done(mark):\n    print('drawn', mark, flush=True)\n    os.kill(os.getpid(), signal.SIGKILL)\n"
        "build(asked, may_overwrite=lambda files: True, progress=done)\n"
    )
    built.change("frame: 35 1/2 x 47 1/2", "frame: 35 1/4 x 47 1/2")
    killed = subprocess.run([sys.executable, "-c", code], cwd=built.folder, capture_output=True, text=True)
    assert killed.returncode == -signal.SIGKILL, killed.stderr
    assert killed.stdout == "drawn W01\n"
    assert contents(built.output) == before


def staged(folder: Path, files: dict[str, str]) -> Path:
    for name, text in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return folder


def put(tmp_path: Path, files: dict[str, str], *, is_whole: bool = True) -> Path:
    """Write some files and move them to the target."""
    target = tmp_path / "target"
    with fresh_folder(target) as fresh:
        move_in(staged(fresh, files), target, is_whole=is_whole)
    return target


def texts(folder: Path) -> dict[str, str]:
    return {name: data.decode() for name, data in contents(folder).items() if not name.startswith(".")}


def test_the_manifest_says_what_was_written(tmp_path: Path) -> None:
    target = put(tmp_path, {"a.txt": "one", "in/b.txt": "two"})
    written = json.loads((target / MANIFEST).read_text(encoding="utf-8"))
    assert written == {name: digest_of(target / name) for name in ("a.txt", "in/b.txt")}
    assert not (target / JOURNAL).exists()


def test_the_digest_is_a_sha256(tmp_path: Path) -> None:
    """SHA-256 of "abc", as the standard prints it (FIPS 180-4, worked example)."""
    (tmp_path / "abc").write_text("abc", encoding="utf-8")
    digest = "ba7816bf 8f01cfea 414140de 5dae2223 b00361a3 96177a9c b410ff61 f20015ad"
    assert digest_of(tmp_path / "abc") == digest.replace(" ", "")


def test_no_fresh_folder_stays_behind(tmp_path: Path) -> None:
    target = put(tmp_path, {"a.txt": "one"})
    with pytest.raises(KeyboardInterrupt), fresh_folder(target) as fresh:
        staged(fresh, {"a.txt": "half"})
        raise KeyboardInterrupt
    assert texts(target) == {"a.txt": "one"}
    assert [path.name for path in tmp_path.iterdir()] == ["target"]


def test_what_a_killed_build_left_is_cleared_after_a_day(tmp_path: Path) -> None:
    old, new = tmp_path / ".target.building-old", tmp_path / ".target.building-new"
    for folder in (old, new):
        staged(folder, {"a.txt": "half"})
    os.utime(old, (time.time() - DAY - 60,) * 2)
    put(tmp_path, {"a.txt": "one"})
    assert sorted(path.name for path in tmp_path.iterdir()) == [".target.building-new", "target"]


def test_only_what_the_user_touched_is_in_the_way(tmp_path: Path) -> None:
    target = put(tmp_path, {"a": "1", "b": "1", "c": "1"})
    staged(target, {"b": "mine", "d": "mine", "e": "same"})
    fresh = staged(tmp_path / "fresh", {"a": "2", "b": "2", "c": "2", "d": "2", "e": "same", "f": "2"})
    assert conflicts(fresh, target) == [
        Conflict(path="b", was_ours=True),
        Conflict(path="d", was_ours=False),
    ]


def test_a_folder_of_the_users_is_in_the_way_of_a_file(tmp_path: Path) -> None:
    target = put(tmp_path, {"a": "1"})
    (target / "b").mkdir()
    assert conflicts(staged(tmp_path / "fresh", {"b": "2"}), target) == [Conflict(path="b", was_ours=False)]


def test_stale_files_go_and_empty_folders_with_them(tmp_path: Path) -> None:
    put(tmp_path, {"a": "1", "in/b": "1", "in/c": "1"})
    target = put(tmp_path, {"a": "2"})
    assert texts(target) == {"a": "2"}
    assert not (target / "in").exists()


def test_some_files_leave_the_others_and_the_manifest_knows_both(tmp_path: Path) -> None:
    put(tmp_path, {"a": "1", "b": "1"})
    target = put(tmp_path, {"a": "2"}, is_whole=False)
    assert texts(target) == {"a": "2", "b": "1"}
    assert set(json.loads((target / MANIFEST).read_text(encoding="utf-8"))) == {"a", "b"}
    assert conflicts(staged(tmp_path / "fresh", {"a": "3", "b": "3"}), target) == []


@pytest.mark.parametrize("moves", range(4))
def test_stopped_between_moves_no_file_is_half_and_the_next_build_knows_its_own(
    moves: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    names = ["a", "b", "c"]
    target = put(tmp_path, dict.fromkeys(names, "old"))
    fresh = staged(tmp_path / "fresh", dict.fromkeys(names, "new"))
    replace, count = Path.replace, [0]

    def stopping(self: Path, to: Path) -> Path:
        if self.parent == fresh:
            if count[0] == moves:
                raise KeyboardInterrupt
            count[0] += 1
        return replace(self, to)

    monkeypatch.setattr(Path, "replace", stopping)
    if moves < len(names):
        with pytest.raises(KeyboardInterrupt):
            move_in(fresh, target, is_whole=True)
    else:
        move_in(fresh, target, is_whole=True)
    monkeypatch.undo()
    assert texts(target) == {name: "new" if place < moves else "old" for place, name in enumerate(names)}
    again = staged(tmp_path / "again", dict.fromkeys(names, "newer"))
    assert conflicts(again, target) == []
    move_in(again, target, is_whole=True)
    assert texts(target) == dict.fromkeys(names, "newer")


def test_a_spoiled_manifest_protects_everything(tmp_path: Path) -> None:
    target = put(tmp_path, {"a": "1"})
    (target / MANIFEST).write_text("{", encoding="utf-8")
    assert conflicts(staged(tmp_path / "fresh", {"a": "2"}), target) == [Conflict(path="a", was_ours=False)]
    assert digests(tmp_path / "fresh").keys() == {"a"}
