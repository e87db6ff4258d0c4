"""Writing the user's files back: nobody's change is lost, and what cannot be written leaves all as it was."""

from __future__ import annotations

import os
import threading
from pathlib import Path

import pytest

from jambs.job.editing.file_text import FileText
from jambs.screen.saving import LOCK, ChangedMeanwhile, job_folder_turn, read_file, save, save_in_turn


def file(name: str, text: str) -> FileText:
    return FileText(name=name, content=text.encode())


def test_a_file_is_written_where_it_was_read_and_keeps_its_rights(tmp_path: Path) -> None:
    path = tmp_path / "job.yaml"
    path.write_text("a: 1\n")
    path.chmod(0o640)
    save(tmp_path, [(file("job.yaml", "a: 1\n"), file("job.yaml", "a: 2\n")), (None, file("measures.csv", "x\n"))])
    assert path.read_text() == "a: 2\n" and (tmp_path / "measures.csv").read_text() == "x\n"
    assert path.stat().st_mode & 0o777 == 0o640
    assert sorted(one.name for one in tmp_path.iterdir()) == ["job.yaml", "measures.csv"]


def test_a_link_stays_a_link(tmp_path: Path) -> None:
    (tmp_path / "there").mkdir()
    (tmp_path / "there" / "job.yaml").write_text("a: 1\n")
    os.symlink(tmp_path / "there" / "job.yaml", tmp_path / "job.yaml")
    save(tmp_path, [(file("job.yaml", "a: 1\n"), file("job.yaml", "a: 2\n"))])
    assert (tmp_path / "job.yaml").is_symlink()
    assert (tmp_path / "there" / "job.yaml").read_text() == "a: 2\n"


def test_what_an_editor_wrote_meanwhile_stands_and_both_are_handed_back(tmp_path: Path) -> None:
    (tmp_path / "job.yaml").write_text("a: 3\n")
    read, wanted = file("job.yaml", "a: 1\n"), file("job.yaml", "a: 2\n")
    with pytest.raises(ChangedMeanwhile, match=r"job\.yaml was changed by another program") as told:
        save(tmp_path, [(None, file("measures.csv", "x\n")), (read, wanted)])
    (one,) = told.value.files
    assert (one.read, one.there, one.wanted) == (read, file("job.yaml", "a: 3\n"), wanted)
    assert (tmp_path / "job.yaml").read_text() == "a: 3\n" and not (tmp_path / "measures.csv").exists()


def test_a_file_that_is_gone_or_new_is_another(tmp_path: Path) -> None:
    with pytest.raises(ChangedMeanwhile):
        save(tmp_path, [(file("job.yaml", "a: 1\n"), file("job.yaml", "a: 2\n"))])
    (tmp_path / "measures.csv").write_text("theirs\n")
    with pytest.raises(ChangedMeanwhile):
        save(tmp_path, [(None, file("measures.csv", "x\n"))])


def test_many_writers_take_turns_and_nothing_is_lost(tmp_path: Path) -> None:
    (tmp_path / "measures.csv").write_text("")

    def add(name: str) -> None:
        for count in range(10):
            with job_folder_turn(tmp_path):
                read = read_file(tmp_path / "measures.csv")
                assert read is not None
                save_in_turn(tmp_path, [(read, file("measures.csv", f"{read.text}{name}{count}\n"))])

    writers = [threading.Thread(target=add, args=(name,)) for name in "abc"]
    for writer in writers:
        writer.start()
    for writer in writers:
        writer.join()
    lines = (tmp_path / "measures.csv").read_text().split()
    assert sorted(lines) == sorted(f"{name}{count}" for name in "abc" for count in range(10))
    assert not (tmp_path / LOCK).exists()
