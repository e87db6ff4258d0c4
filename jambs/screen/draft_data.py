"""What is not saved yet, line by line, and what somebody else changed in the file meanwhile."""

from __future__ import annotations

from typing import Any

from jambs.job.editing.file_text import EditRefused, FileText, changed_lines
from jambs.job.measured.filling import table_lines
from jambs.screen.desk import Desk
from jambs.screen.kept_steps import steps_of, steps_record
from jambs.screen.saving import read_file
from jambs.values import Record


def draft_record(desk: Desk) -> Record:
    """Return what is not saved yet, and what can be taken back or done again."""
    with desk.lock:
        desk.take_named_table()
        draft, house = desk.draft, desk.house()
        pairs = [(before, after) for before, after in draft.changed if after]
        mine = [_lines(before, after) for before, after in pairs]
        return {
            "number": house.number,
            "name": desk.name,
            "file": str(desk.file),
            "tables": [after.name for _, after in pairs if after.name != desk.file.name],
            "lines": [group for groups in mine for group in groups],
            "back": draft.done[-1].words if draft.done else "",
            "forth": draft.undone[-1].words if draft.undone else "",
            "steps": [step.words for step in draft.done],
            "theirs": _theirs(desk) if desk.is_changed_meanwhile else None,
            "wrong": list(house.wrong),
            "is_new": not draft.saved,
            "run": desk.run,
            "unsaved": steps_record(desk.unsaved or ()) if pairs else [],
        }


def take_up(desk: Desk, kept: Any) -> None:
    """Do what a browser kept of an earlier run anew, as steps of the draft.

    Raises:
        EditRefused: it cannot be read, or has no place there any more; the draft is as it was.
    """
    with desk.lock:
        desk.redo(steps_of(kept, desk.draft.files[desk.file.name]))


def _theirs(desk: Desk) -> list[list[Record]]:
    """Return what somebody else changed in the files since the draft was begun."""
    found: list[list[Record]] = []
    for name in desk.draft.files:
        there, saved = read_file(desk.file.with_name(name)), desk.draft.saved.get(name)
        found += _lines(saved, there)
    return found


def _lines(before: FileText | None, after: FileText | None) -> list[list[Record]]:
    return [
        [{"kind": line.kind.value, "number": line.number, "text": line.text} for line in group]
        for group in changed_lines(_as_lines(before), _as_lines(after))
    ]


def _as_lines(file: FileText | None) -> bytes:
    """Return a file as it is shown; what somebody else left there may be no table at all."""
    try:
        return table_lines(file) if file else b""
    except EditRefused as error:
        return str(error).encode()
