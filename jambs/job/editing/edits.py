"""What can be changed in a job file, as data; and what the file then has to hold, worked out on plain values.

The second is the witness of the first: an edit of the text is carried out only if the text, read again, holds exactly
this.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from jambs.job.reading.faults import Location
from jambs.job.reading.tree import NAMING_KEYS

Plain = str | Sequence["Plain"] | Mapping[str, "Plain"]
"""A value as a job file has it: a text, a list or keys; numbers are the texts that people write."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SetValue:
    """Put another value in the place of the one at a path; comments within the old one go with it."""

    path: Location
    value: Plain


@dataclass(frozen=True, slots=True, kw_only=True)
class InsertKey:
    """Give the keys at a path one more; ``after``: the key that it stands behind, else the last."""

    path: Location
    key: str
    value: Plain
    after: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class RemoveKey:
    """Take a key and its value out; ``path`` ends in the key."""

    path: Location


@dataclass(frozen=True, slots=True, kw_only=True)
class RenameKey:
    """Give a key another name, its value stays; ``path`` ends in the key."""

    path: Location
    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class InsertItem:
    """Give the list at a path one more item, which then is number ``at`` (from 0)."""

    path: Location
    at: int
    value: Plain


@dataclass(frozen=True, slots=True, kw_only=True)
class RemoveItem:
    """Take the item number ``at`` (from 0) out of the list at a path."""

    path: Location
    at: int


@dataclass(frozen=True, slots=True, kw_only=True)
class MoveItem:
    """Move the item number ``at`` (from 0) of the list at a path, so that it then is number ``to``."""

    path: Location
    at: int
    to: int


Edit = SetValue | InsertKey | RemoveKey | RenameKey | InsertItem | RemoveItem | MoveItem


class NoSuchPlace(Exception):
    """An edit of something that the file does not have; its message says what it has."""


def edited_value(tree: Any, edit: Edit) -> Any:
    """Return the plain values of a file as they are to be after an edit.

    Raises:
        NoSuchPlace: the edit names something that is not there, or is there already.
    """
    if isinstance(edit, SetValue):
        return _at(tree, edit.path, lambda _: plain_copy(edit.value))
    if isinstance(edit, InsertKey):
        return _at(tree, edit.path, lambda keys: _with_key(keys, edit))
    if isinstance(edit, RemoveKey):
        return _at(tree, edit.path[:-1], lambda keys: _without_key(keys, edit.path[-1]))
    if isinstance(edit, RenameKey):
        return _at(tree, edit.path[:-1], lambda keys: _renamed(keys, edit))
    return _at(tree, edit.path, lambda items: _items(items, edit))


def plain_copy(value: Plain) -> Any:
    """Return a value in lists and keys of its own."""
    if isinstance(value, str):
        return value
    if isinstance(value, Mapping):
        return {key: plain_copy(one) for key, one in value.items()}
    return [plain_copy(one) for one in value]


def _at(tree: Any, path: Location, change: Any) -> Any:
    if not path:
        return change(tree)
    step, *rest = path
    known = range(len(tree)) if isinstance(tree, list) else tree if isinstance(tree, dict) else ()
    if step not in known:
        raise NoSuchPlace(f"there is no {step}{_has(known)}")
    new = _at(tree[step], tuple(rest), change)
    if isinstance(tree, list):
        return [new if at == step else one for at, one in enumerate(tree)]
    return {key: new if key == step else one for key, one in tree.items()}


def _has(known: Any) -> str:
    names = ", ".join(str(one) for one in known)
    return f"; there is {names}" if names else ""


def _with_key(keys: Any, edit: InsertKey) -> Any:
    if not isinstance(keys, dict):
        raise NoSuchPlace("it holds no keys, so it takes none; give it a value of its own first")
    if edit.key in keys:
        raise NoSuchPlace(f"{edit.key} is there already; change its value")
    if edit.after is not None and edit.after not in keys:
        raise NoSuchPlace(f"there is no {edit.after}{_has(keys)}")
    return {**keys, edit.key: plain_copy(edit.value)}


def _without_key(keys: Any, key: str | int) -> Any:
    if not isinstance(keys, dict) or key not in keys:
        raise NoSuchPlace(f"there is no {key}{_has(keys if isinstance(keys, dict) else ())}")
    return {name: one for name, one in keys.items() if name != key}


def _renamed(keys: Any, edit: RenameKey) -> Any:
    old = edit.path[-1]
    if not isinstance(keys, dict) or old not in keys:
        raise NoSuchPlace(f"there is no {old}{_has(keys if isinstance(keys, dict) else ())}")
    if edit.name in keys:
        raise NoSuchPlace(f"{edit.name} is there already; take another name")
    return {edit.name if name == old else name: one for name, one in keys.items()}


def _items(items: Any, edit: InsertItem | RemoveItem | MoveItem) -> Any:
    if not isinstance(items, list):
        raise NoSuchPlace("it is not a list")
    last = len(items) if isinstance(edit, InsertItem) else len(items) - 1
    for place in (edit.at, edit.to if isinstance(edit, MoveItem) else edit.at):
        if not 0 <= place <= last:
            raise NoSuchPlace(f"there is no place {place} in a list of {len(items)}; it has 0 to {last}")
    if isinstance(edit, InsertItem):
        return [*items[: edit.at], plain_copy(edit.value), *items[edit.at :]]
    rest = [one for place, one in enumerate(items) if place != edit.at]
    return rest if isinstance(edit, RemoveItem) else [*rest[: edit.to], items[edit.at], *rest[edit.to :]]


STEP = re.compile(r"\.?([^.\[\]]+)|\[([^\]]*)\]")


def location_of(tree: Any, way: str) -> Location:
    """Return the location that a way in words leads to: ``openings[W04].position``, ``walls.main.layers[2]``.

    In brackets stands the place of an item (from 0), or what names it, as in a fault's message.

    Raises:
        NoSuchPlace: an item that is named so is not there.
    """
    found: list[str | int] = []
    for key, named in STEP.findall(way):
        step = key or _place_of(tree, named)
        found.append(step)
        is_there = (isinstance(tree, dict) and step in tree) or isinstance(step, int)
        tree = tree[step] if is_there else None
    return tuple(found)


def _place_of(items: Any, named: str) -> int:
    if not isinstance(items, list):
        raise NoSuchPlace(f"[{named}] names an item, and there is no list")
    names = [_name(item) for item in items]
    if named in names:
        return names.index(named)
    if named.isdecimal() and int(named) < len(items):
        return int(named)
    raise NoSuchPlace(f"there is no item {named}{_has(name for name in names if name)}")


def _name(item: Any) -> str:
    if isinstance(item, str):
        return item
    return next((item[key] for key in NAMING_KEYS if key in item), "") if isinstance(item, dict) else ""
