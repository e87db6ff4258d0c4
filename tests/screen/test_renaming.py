"""Another name for a wall, a window or a trim: the same house, every byte kept that does not say the name."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from jambs.job import read_job
from jambs.job.editing.edit_yaml import edited
from jambs.job.editing.file_text import EditRefused, FileText
from jambs.job.editing.line_swaps import SwapLines
from jambs.job.editing.row_cells import SetRowCell, with_row_cell
from jambs.job.measured.carrying import CarryRows
from jambs.screen.desk import CannotStand, Desk
from jambs.screen.job_edits import asked_edits

EXAMPLES = Path(__file__).parents[2] / "examples"


def desk_of(folder: Path, example: str) -> Desk:
    shutil.copytree(EXAMPLES / example, folder / "house", ignore=shutil.ignore_patterns("output"))
    return Desk(file=folder / "house" / "job.yaml", target=folder / "output")


def renamed(desk: Desk, section: str, old: str, new: str) -> None:
    asked = {"act": "rename", "path": [section, old], "name": new}
    words, edits = asked_edits(desk.draft.files["job.yaml"], asked, desk.table)
    desk.change(words, edits)
    desk.save()


def test_a_wall_is_renamed_in_openings_schedule_and_elevations(tmp_path: Path) -> None:
    desk = desk_of(tmp_path, "harbour-house")
    file, table = desk.file, desk.file.with_name("bedrooms.csv")
    before, rows = file.read_text(encoding="utf-8"), table.read_text(encoding="utf-8")
    on_walls = {one.mark: one.wall.name for one in read_job(file).openings}
    asked = {"act": "rename", "path": ["walls", "sea side"], "name": "lake side"}
    for edit in asked_edits(desk.draft.files["job.yaml"], asked, desk.table)[1]:  # the house itself is not made
        assert not isinstance(edit, SwapLines | CarryRows)
        path = desk.file.with_name(edit.file) if isinstance(edit, SetRowCell) else file
        there = FileText(name=path.name, content=path.read_bytes())
        new = with_row_cell(there, edit) if isinstance(edit, SetRowCell) else edited(there, edit)
        path.write_bytes(new.content)
    assert table.read_text(encoding="utf-8") == rows.replace(",sea side,", ",lake side,")
    now = file.read_text(encoding="utf-8")
    pairs = [(one, two) for one, two in zip(before.splitlines(), now.splitlines(), strict=True) if one != two]
    assert pairs and all(two == one.replace("sea side", "lake side") for one, two in pairs)
    expected = {mark: "lake side" if wall == "sea side" else wall for mark, wall in on_walls.items()}
    assert {one.mark: one.wall.name for one in read_job(file).openings} == expected


def test_a_trim_is_renamed_where_others_are_like_it(tmp_path: Path) -> None:
    desk = desk_of(tmp_path, "garden-studio")
    text = desk.file.read_text(encoding="utf-8")
    text = text.replace("sill_height: 30}", "sill_height: 30, interior_trim: {like: Plain, frame_reveal: 3/16}}")
    text = text.replace("\nposition:", "  wide:\n    like: plain\n    frame_reveal: 1/4\n\nposition:")
    desk.file.write_text(text, encoding="utf-8")
    renamed(desk, "interior_trim", "plain", "best: of all")
    wanted = text.replace("like: Plain", 'like: "best: of all"').replace("like: plain", 'like: "best: of all"')
    wanted = wanted.replace("  plain:\n", '  "best: of all":\n')
    assert desk.file.read_text(encoding="utf-8").replace("'", '"') == wanted.replace("'", '"')
    assert read_job(desk.file).openings[0].interior.frame_reveal == 3 / 16


def test_a_name_that_is_taken_or_none_is_refused(tmp_path: Path) -> None:
    desk = desk_of(tmp_path, "garden-studio")
    before = desk.file.read_bytes()
    for path, name in (
        (["windows", "fixed"], ""),
        (["shop", "kerf"], "x"),
        (["windows"], "x"),
        (["windows", "no"], "x"),
    ):
        with pytest.raises(EditRefused):
            words, edits = asked_edits(
                desk.draft.files["job.yaml"], {"act": "rename", "path": path, "name": name}, desk.table
            )
            desk.change(words, edits)
    with pytest.raises(CannotStand, match="is not a name for a window"):
        renamed(desk, "windows", "fixed", "x" * 61)
    assert desk.file.read_bytes() == before
