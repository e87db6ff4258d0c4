"""A change names its place by numbers of lists, as its window shows them: is that still the place?

Another window may have put a layer before it, or an editor an opening; this window hears of it some seconds later.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from jambs.job.editing.file_text import EditRefused, FileText
from jambs.job.reading.faults import JobFaults
from jambs.job.reading.tree import NAMING_KEYS
from jambs.screen.desk import Desk
from jambs.screen.job_edits import is_step, nodes_root, value_at

AMONG_ALL = ("insert", "move")
"""What is put between others: the whole list has to be as it was seen."""


def is_told(asked: Mapping[str, Any]) -> bool:
    """Say whether a change tells the state of the job that its window shows: without it nobody knows its place."""
    return type(asked.get("number")) is int


def is_moved(desk: Desk, asked: Mapping[str, Any]) -> bool:
    """Say whether the place of a change is another one by now than in the state ``number`` that its window shows."""
    with desk.lock:
        house, number, sent = desk.house(), asked.get("number"), asked.get("path")
        if number == house.number or not isinstance(sent, list) or not all(map(is_step, sent)):
            return False
        path = tuple(sent)
        seen, now = (_root(desk.file.name, text) for text in (desk.text_seen(number), house.text))
    if asked.get("act") in AMONG_ALL:
        where = path if asked["act"] == "insert" else path[:-1]
        if _names(value_at(seen, where)) != _names(value_at(now, where)):
            return True
    ways = (path[:at] for at, step in enumerate(path) if isinstance(step, int))
    return any(not _is_same(_names(value_at(seen, way)), _names(value_at(now, way)), path[len(way)]) for way in ways)


def _is_same(seen: list[Any], now: list[Any], at: int) -> bool:
    """Say whether a list has at a number what it had there; of two that are called the same nobody knows."""
    if seen == now:
        return True
    if not (0 <= at < len(seen) and at < len(now)):
        return False
    name = seen[at]
    return bool(now[at] == name) and seen.count(name) == 1 and now.count(name) == 1


def _names(value: Any) -> list[Any]:
    """Return what the entries of a list are called; one without a name is told by all that it holds."""
    return [_name(one) for one in value] if isinstance(value, list) else []


def _name(entry: Any) -> Any:
    named = (entry[key] for key in NAMING_KEYS if key in entry) if isinstance(entry, dict) else iter(())
    return next(named, entry)


def _root(name: str, text: str | None) -> Any:
    """Return the plain values of a state of the job file; nothing where it is not known any more, or cannot be read."""
    if text is None:
        return None
    try:
        return nodes_root(FileText(name=name, content=text.encode()))
    except (EditRefused, JobFaults):
        return None
