"""A place for a window as edits: in the opening's entry or row of the schedule, in its wall, or at the top."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from jambs.job.editing.edits import Edit, InsertItem, InsertKey, SetValue
from jambs.job.editing.file_text import FileText, refused
from jambs.job.editing.row_cells import SetRowCell
from jambs.job.editing.yaml_nodes import nodes_of
from jambs.job.reading.faults import Location
from jambs.job.reading.marks import marks_of
from jambs.job.reading.schedule import read_schedule
from jambs.job.reading.tree import grown
from jambs.screen.desk import DraftEdit
from jambs.screen.placing import HeldWindow, Named, Rule, rule_text

POSITION = "position"


def position_edits(
    file: FileText, hand: HeldWindow, plane: float, named: Named | None, *, alone: bool, folder: Path
) -> list[DraftEdit]:
    """Return what puts a window at a plane [in], by the name of the place or by its interior depth.

    ``alone``: this opening gets a position of its own; else its wall gets one, or the job where it has one wall only.
    ``folder``: of the job, where its schedule is.

    Raises:
        EditRefused: the opening is a row of a table that cannot be written here.
    """
    piece, _ = grown(nodes_of(file), file.name)
    rule: Rule = named.rule if named else {"interior_depth": rule_text(hand.depth(plane), hand.job)}
    if alone:
        return _alone(piece.root, hand.opening.mark, rule, file, folder)
    walls = piece.root.get("walls")
    wall = hand.opening.wall.name
    if isinstance(walls, dict) and len(walls) > 1 and isinstance(walls.get(wall), dict):
        return [_put(piece.root, ("walls", wall), rule)]
    if isinstance(walls, dict) and isinstance(walls.get(wall), dict) and POSITION in walls[wall]:
        return [_put(piece.root, ("walls", wall), rule)]
    return [_put(piece.root, (), rule)]


def _put(root: Any, path: Location, rule: Rule, *, at: Location = ()) -> Edit:
    """Write the rule among the keys at a path; ``at``: where these keys stand in the file."""
    keys = root
    for step in path:
        keys = keys[step]
    if POSITION in keys:
        return SetValue(path=(*at, *path, POSITION), value=rule)
    return InsertKey(path=(*at, *path), key=POSITION, value=rule)


def _alone(root: Any, mark: str, rule: Rule, file: FileText, folder: Path) -> list[DraftEdit]:
    """Give one opening a position of its own: in its entry, in one that is split off for it, or in its row."""
    listed = root.get("openings")
    for place, one in enumerate(listed if isinstance(listed, list) else ()):
        marks = marks_of(one.get("mark")) if isinstance(one, dict) else []
        if marks == [mark]:
            return [_put(root, ("openings", place), rule)]
        if mark in marks:
            return _split(one, place, marks, mark, rule)
    return [_in_row(root.get("schedule"), mark, rule, file, folder)]


def _split(entry: Mapping[str, Any], place: int, marks: list[str], mark: str, rule: Rule) -> list[DraftEdit]:
    """Part an entry that stands for several openings in the one that moves and those before and after it."""
    at = marks.index(mark)
    groups = [marks[:at], [mark], marks[at + 1 :]]
    first, *rest = [group for group in groups if group]
    edits: list[DraftEdit] = [SetValue(path=("openings", place, "mark"), value=_spelled(first))]
    if first == [mark]:
        edits.append(_put(entry, (), rule, at=("openings", place)))
    for step, group in enumerate(rest, start=1):
        own = {POSITION: rule} if group == [mark] else {}
        value = {**entry, "mark": _spelled(group), **own}
        edits.append(InsertItem(path=("openings",), at=place + step, value=value))
    return edits


def _spelled(marks: list[str]) -> str | list[str]:
    """Write marks as a job file does: one, a range, or a list."""
    span = f"{marks[0]}..{marks[-1]}"
    return marks[0] if len(marks) == 1 else span if marks_of(span) == marks else marks


def _in_row(schedule: Any, mark: str, rule: Rule, file: FileText, folder: Path) -> SetRowCell:
    text = rule if isinstance(rule, str) else ", ".join(f"{key}: {value}" for key, value in rule.items())
    name = schedule if isinstance(schedule, str) else file.name
    if not name.lower().endswith(".csv"):
        row = next((one.line for one in read_schedule(folder / name)[0] if mark in marks_of(one.whole.get("mark"))), 0)
        sentence = f'{mark} is {f"row {row}" if row else "a row"} of it: write "{text}" in the column position there'
        raise refused(name, f"{sentence}, or move all windows of its wall")
    return SetRowCell(file=name, mark=mark, column=POSITION, value=text)
