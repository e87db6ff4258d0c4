"""Steps of a draft as plain data and back: a browser keeps them, for the day on which the program ended before a save.

What comes back is held to what edits can be, as everything that a browser sends; each is done anew on the file as it
is by then, and one that has no place there any more is refused.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict, fields
from typing import Any

from jambs.job.editing.edits import Edit, InsertItem, InsertKey, MoveItem, RemoveItem, RemoveKey, RenameKey, SetValue
from jambs.job.editing.file_text import FileText, refused
from jambs.job.editing.line_swaps import SwapLines
from jambs.job.editing.row_cells import SetRowCell
from jambs.job.measured.carrying import CarryRows
from jambs.screen.desk import DraftEdit, DraftStep
from jambs.screen.job_edits import nodes_root
from jambs.values import Record

KINDS: dict[str, type[DraftEdit]] = {
    one.__name__: one
    for one in (
        SetValue,
        InsertKey,
        RemoveKey,
        RenameKey,
        InsertItem,
        RemoveItem,
        MoveItem,
        SetRowCell,
        CarryRows,
        SwapLines,
    )
}
SCHEDULE, MEASURES, PATH, VALUE, AFTER, NUMBERS = "schedule", "measures", "path", "value", "after", ("at", "to")
LINES = ("old", "new")
MOST, DEEPEST, LONGEST = 2000, 12, 4000
"""Steps and edits of a step, lists within each other, letters of a text."""


def steps_record(steps: Sequence[DraftStep]) -> list[Record]:
    """Return steps as JSON has them."""
    return [
        {"words": words, "edits": [{"kind": type(edit).__name__, **asdict(edit)} for edit in edits]}
        for words, edits in steps
    ]


def steps_of(kept: Any, file: FileText) -> list[DraftStep]:
    """Return the steps that a browser kept of a job file; a table that they write to is the one that the file names.

    Raises:
        EditRefused: they are none.
    """
    try:
        steps = [(_text(one["words"]), tuple(_edit(edit) for edit in _list(one["edits"]))) for one in _list(kept)]
    except (TypeError, KeyError, ValueError):
        steps = None
    root = nodes_root(file)
    named = root if isinstance(root, dict) else {}
    schedule, measures = ({named[key]} if isinstance(named.get(key), str) else set() for key in (SCHEDULE, MEASURES))
    edits = [edit for _, some in steps or () for edit in some]
    known = {SetRowCell: schedule, CarryRows: measures, SwapLines: {*schedule, *measures, file.name}}
    others = any(edit.file not in known[type(edit)] for edit in edits if not isinstance(edit, Edit))
    if steps is None or others:
        raise refused(file.name, "what the browser kept of earlier changes cannot be read here; forget it there")
    return steps


def _edit(kept: Any) -> DraftEdit:
    kind = KINDS[kept["kind"]]
    return kind(**{one.name: _given(one.name, kept[one.name]) for one in fields(kind)})


def _given(name: str, value: Any) -> Any:
    """Return what stands under a name of an edit, of the kind that belongs there."""
    if name == PATH:
        return tuple(_number(step) if isinstance(step, int) else _text(step) for step in _list(value))
    if name in NUMBERS:
        return _number(value)
    if name in LINES:
        return tuple(_line(one) for one in _list(value))
    if name == VALUE:
        return _plain(value)
    return None if name == AFTER and value is None else _text(value)


def _plain(value: Any, depth: int = 0) -> Any:
    if depth > DEEPEST:
        raise ValueError
    if isinstance(value, dict):
        return {_text(key): _plain(one, depth + 1) for key, one in value.items()}
    return [_plain(one, depth + 1) for one in _list(value)] if isinstance(value, list) else _text(value)


def _line(value: Any) -> str:
    """Return a line of the user's own file, whatever stands in it."""
    if not isinstance(value, str) or "\n" in value or len(value) > LONGEST:
        raise TypeError
    return value


def _list(value: Any) -> list[Any]:
    if not isinstance(value, list) or len(value) > MOST:
        raise TypeError
    return value


def _text(value: Any) -> str:
    if not isinstance(value, str) or len(value) > LONGEST or not value.isprintable():
        raise TypeError
    return value


def _number(value: Any) -> int:
    if not isinstance(value, int) or isinstance(value, bool):
        raise TypeError
    return value
