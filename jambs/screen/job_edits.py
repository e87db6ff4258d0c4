"""What a field asks for, as edits of the job file; whatever a browser sends is held to what edits can be."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping
from typing import Any

from jambs.job.editing.edits import Edit, InsertItem, InsertKey, MoveItem, Plain, RemoveItem, RemoveKey, SetValue
from jambs.job.editing.file_text import FileText, refused
from jambs.job.editing.yaml_nodes import nodes_of
from jambs.job.models.gang import OF_UNITS
from jambs.job.reading.faults import Location
from jambs.job.reading.marks import OF_ONE, marks_of
from jambs.job.reading.tree import NAMING_KEYS, grown
from jambs.screen.carrying import carried_words, carry_edits
from jambs.screen.desk import DraftEdit
from jambs.screen.form_keys import NAMED
from jambs.screen.renaming import TableOf, rename_edits

MATERIAL, UNITS = "material", "units"
DEEPEST, LONGEST = 12, 400
"""Steps of a path, letters of a value."""


def asked_edits(
    file: FileText, asked: Mapping[str, Any], table_of: TableOf, *, marks: Collection[str] = ()
) -> tuple[str, list[DraftEdit]]:
    """Return the words of a step and its edits.

    ``table_of``: a table by its name, as it stands in the draft; ``marks``: that openings have, also in rows.

    Raises:
        EditRefused: it is not something that can be asked for.
    """
    act = asked.get("act")
    if act == "add" and asked.get("path") == []:
        return _added(nodes_root(file), (), asked, file)
    path = _path(asked.get("path"), file)
    root = nodes_root(file)
    words = _way_words(root, path)
    if act == "set":
        edit = _set(root, path, _text(asked.get("value"), file))
        carried = carry_edits(root, edit, file, table_of, marks=marks)
        return f"change {words}{carried_words(carried)}", [edit, *carried]
    if act == "add":
        return _added(root, path, asked, file)
    if act == "remove":
        *above, last = path
        gone = RemoveItem(path=tuple(above), at=last) if isinstance(last, int) else RemoveKey(path=path)
        carried = carry_edits(root, gone, file, table_of, marks=marks)
        return f"remove {words}{carried_words(carried)}", [gone, *carried]
    if act == "move":
        *above, last = path
        to = asked.get("to")
        if isinstance(last, int) and isinstance(to, int):
            return f"move {words}", [MoveItem(path=tuple(above), at=last, to=to)]
    if act == "insert":
        at = asked.get("at")
        if isinstance(at, int):
            return f"add to {words}", [InsertItem(path=path, at=at, value=_text(asked.get("value"), file))]
    if act == "rename":
        name = _text(asked.get("name"), file)
        return f"rename {words} to {name}", rename_edits(root, path, name, file, table_of)
    if act == "copy":
        return f"copy {words}", [_copy(root, path, asked.get("name"), file, marks)]
    raise refused(file.name, "this cannot be done here; change it in an editor")


def nodes_root(file: FileText) -> Any:
    """Return the plain values of a job file."""
    return grown(nodes_of(file), file.name)[0].root


def _added(root: Any, path: Location, asked: Mapping[str, Any], file: FileText) -> tuple[str, list[DraftEdit]]:
    """Give a part one more key, or keys under it; a layer that is a name alone becomes one that says more."""
    path, (key, *under) = _as_far_as_there(root, path, _path(asked.get("under"), file))
    value: Plain = _text(asked.get("value") or "", file)
    for step in reversed(under):
        value = {step: value} if isinstance(step, str) else [value]
    words, there = _way_words(root, (*path, key)), value_at(root, path)
    if not under and _has(there, key):
        return f"change {words}", [SetValue(path=(*path, key), value=value)]
    if key == UNITS and isinstance(there, dict) and isinstance(value, list):
        return f"add {words}", _ganged(path, there, value)
    if isinstance(there, str):
        return f"add {words}", [SetValue(path=path, value={MATERIAL: there, str(key): value})]
    return f"add {words}", [InsertKey(path=path, key=str(key), value=value)]


def _as_far_as_there(root: Any, path: Location, under: Location) -> tuple[Location, Location]:
    """Lead a way into what is there by now: of two keys asked for in a row, the first makes what both stand under."""
    there = value_at(root, path)
    while len(under) > 1 and _has(there, under[0]) and isinstance(there[under[0]], dict):
        there, path, under = there[under[0]], (*path, under[0]), under[1:]
    return path, under


def _ganged(path: Location, there: Mapping[str, Any], units: list[Plain]) -> list[DraftEdit]:
    """Give an opening units: the first takes over what was said of its one window, which no ganged opening says."""
    own = {key: there[key] for key in OF_UNITS if key in there}
    first, *rest = units
    taken: Plain = {**own, **first} if isinstance(first, dict) else first
    return [*(RemoveKey(path=(*path, key)) for key in own), InsertKey(path=path, key=UNITS, value=[taken, *rest])]


def _way_words(root: Any, path: Location) -> str:
    """Return a way in the file in words: ``openings W04 sill height``; what has no name by its number, from 1."""
    has_names = bool(path) and path[0] in NAMED.values()
    return " ".join(_step_words(root, path[: at + 1], is_name=has_names and at == 1) for at in range(len(path)))


def _step_words(root: Any, path: Location, *, is_name: bool) -> str:
    step, entry = path[-1], value_at(root, path)
    if isinstance(step, str):
        return step if is_name else step.replace("_", " ")
    named = (entry[key] for key in NAMING_KEYS if isinstance(entry, dict) and isinstance(entry.get(key), str))
    return next(named, str(step + 1))


def value_at(root: Any, path: Location) -> Any:
    """Return what stands at a place of the plain values of a job file; None where there is nothing."""
    value = root
    for step in path:
        value = value[step] if _has(value, step) else None
    return value


def _path(value: Any, file: FileText) -> Location:
    steps = value if isinstance(value, list) else None
    if steps is None or not 0 < len(steps) <= DEEPEST or not all(is_step(one) for one in steps):
        raise refused(file.name, "this names no place in the file")
    return tuple(steps)


def is_step(value: Any) -> bool:
    """Say whether something sent can be a step of a place: a number in a list, or a name that is not endless."""
    is_place = isinstance(value, int) and not isinstance(value, bool)
    return is_place or (isinstance(value, str) and 0 < len(value) <= LONGEST)


def _text(value: Any, file: FileText) -> str:
    if not isinstance(value, str) or len(value) > LONGEST or not value.isprintable():
        raise refused(file.name, f"a value is one line of at most {LONGEST} letters")
    return value.strip()


def _set(root: Any, path: Location, text: str) -> Edit:
    """Write a value; in the place of a list of values a list, and in that of nothing nothing."""
    value = value_at(root, path)
    if not text and not isinstance(path[-1], int):
        return RemoveKey(path=path)
    if isinstance(value, list):
        return SetValue(path=path, value=[one.strip() for one in text.split(",") if one.strip()])
    return SetValue(path=path, value=text)


def _has(value: Any, step: str | int) -> bool:
    if isinstance(value, list):
        return isinstance(step, int) and 0 <= step < len(value)
    return isinstance(value, dict) and step in value


def _copy(root: Any, path: Location, name: Any, file: FileText, taken: Collection[str]) -> Edit:
    *above, last = path
    value = root
    for step in path:
        if not _has(value, step):
            raise refused(file.name, f"there is no {step}")
        value = value[step]
    if isinstance(last, int):
        marks = [
            mark for one in root.get("openings", ()) if isinstance(one, dict) for mark in marks_of(one.get("mark"))
        ]
        copied = {key: one for key, one in value.items() if key not in OF_ONE} if isinstance(value, dict) else value
        if isinstance(copied, dict) and "mark" in copied:
            copied = {
                **copied,
                "mark": next_mark((marks_of(copied["mark"]) or [str(copied["mark"])])[-1], [*marks, *taken]),
            }
        return InsertItem(path=tuple(above), at=last + 1, value=copied)
    new = _text(name or "", file) or next_name(str(last), list(value_at(root, tuple(above))))
    return InsertKey(path=tuple(above), key=new, value=value, after=str(last))


def next_name(name: str, names: list[str]) -> str:
    """Return the next free name for a copy: ``casement 2`` of ``casement``, and ``casement 3`` of either."""
    start = re.sub(r" \d+$", "", name)
    number = 2
    while (new := f"{start} {number}") in names:
        number += 1
    return new


def next_mark(mark: str, marks: list[str]) -> str:
    """Return the next free mark after one: ``W07`` after ``W06``; ``Bath-2`` after ``Bath``."""
    found = re.fullmatch(r"(.*?)(\d+)", mark)
    start, digits = (found[1], found[2]) if found else (f"{mark}-", "1")
    number = int(digits) + 1
    while (new := f"{start}{number:0{len(digits)}}") in marks:
        number += 1
    return new
