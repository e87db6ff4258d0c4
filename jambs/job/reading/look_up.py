"""An opening's names become full objects: its wall, window and trim, with the changes it makes to them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Generic, TypeVar

from jambs.job.models.fields import Model
from jambs.job.reading.catalog import plain_name
from jambs.job.reading.complaints import Complaints
from jambs.job.reading.faults import Location, advice
from jambs.job.reading.tree import TextSource

Entry = TypeVar("Entry", bound=Model)


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelf(Generic[Entry]):
    """What a section of the job defines by name; an entry is nothing where it is faulty."""

    section: str
    key: str
    model: type[Entry]
    source: TextSource
    entries: Mapping[str, Entry | None]
    is_optional: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Found(Generic[Entry]):
    """What an opening's key led to: the name, the entry, where it is written, and whether it is the opening's own."""

    name: str
    entry: Entry
    source: TextSource
    is_own: bool = False


def find(shelf: Shelf[Entry], opening: TextSource, mark: str, complaints: Complaints) -> Found[Entry] | None:
    """Find what an opening names: a name, nothing where there is only one, or ``{like: name, key: value}``."""
    written = opening.value.get(shelf.key)
    if isinstance(written, dict):
        return _changed(shelf, opening.within((shelf.key,)), mark, complaints)
    name = _name(shelf, opening, written, complaints)
    entry = shelf.entries.get(name) if name else None
    if name is None or entry is None:
        return None
    return Found(name=name, entry=entry, source=shelf.source.within((name,)))


def _name(shelf: Shelf[Entry], opening: TextSource, written: Any, complaints: Complaints) -> str | None:
    """Return the name an opening gives, or the only one there is; complain of any other."""
    names = list(shelf.entries)
    if written is None and len(names) > 1 and shelf.key not in opening.value:
        choices = " or ".join(names)
        complaints.say(opening, (), f"{shelf.key} is missing and the job has {len(names)}; add {shelf.key}: {choices}")
    if not isinstance(written, str):
        return names[0] if written is None and len(names) == 1 else None
    match = _called(written, names)
    if match is None:
        _say_unknown(shelf, opening, (shelf.key,), written, complaints)
    return match


def _called(written: str, names: Sequence[str]) -> str | None:
    """Return the name that is written so, or else the one that differs from it only in capitals, spaces, inch marks."""
    if written in names:
        return written
    return next((name for name in names if plain_name(name) == plain_name(written)), None)


def check_names(source: TextSource, key: str, names: Sequence[str], complaints: Complaints) -> None:
    """Complain of names that nobody can read, and of two that an opening could mean with one word."""
    first: dict[str, str] = {}
    for name in names:
        if not name.strip() or name != name.strip() or not name.isprintable() or len(name) > MOST_LETTERS:
            what = key.replace("_", " ")
            article = "an" if what[0] in VOWELS else "a"
            message = f"{name!r} is not a name for {article} {what}; write 1 to {MOST_LETTERS} letters on one line"
            complaints.say(source, (name,), message)
        elif (there := first.setdefault(plain_name(name), name)) != name:
            message = f"{name!r} and {there!r} differ only in capitals, spaces or inch marks; give each its own name"
            complaints.say(source, (name,), message)


VOWELS = "aeiou"
MOST_LETTERS = 60
"""Of a name: it stands in tables and on sheets."""


def _say_unknown(
    shelf: Shelf[Entry], source: TextSource, location: Location, written: str, complaints: Complaints
) -> None:
    """Complain of a name nobody has, unless the whole section is missing: that has been told."""
    if not shelf.entries and not shelf.is_optional:
        return
    otherwise = "" if shelf.entries else f"define it under {shelf.section}"
    known = [*shelf.entries, *(["none"] if shelf.is_optional else [])]
    near = advice(written, known, otherwise=otherwise)
    complaints.say(source, location, f"no {shelf.key} is called {written!r}; {near}")


def _changed(shelf: Shelf[Entry], own: TextSource, mark: str, complaints: Complaints) -> Found[Entry] | None:
    """Lay an opening's own keys over the entry it is like, and check the whole again."""
    name = _liked(shelf, own, complaints)
    if name is None:
        return None
    base = shelf.source.within((name,))
    changes = {key: value for key, value in own.value.items() if key != "like"}
    if not isinstance(base.value, dict):
        return None
    entry = complaints.check_merged(shelf.model, base, own, merged(base.value, changes))
    return Found(name=f"{name} ({mark})", entry=entry, source=own, is_own=True) if entry else None


def _liked(shelf: Shelf[Entry], own: TextSource, complaints: Complaints) -> str | None:
    names = list(shelf.entries)
    like = own.value.get("like")
    if isinstance(like, str) and (name := _called(like, names)) is not None:
        return name
    if like is None and len(names) == 1:
        return names[0]
    if like is None and names:
        complaints.say(own, (), f"like is missing; add like: {' or '.join(names)}")
    elif isinstance(like, str):
        _say_unknown(shelf, own, ("like",), like, complaints)
    return None


RIVALS = {
    "jamb_depth": "frame_depth",
    "frame_depth": "jamb_depth",
    "frame_projection": "flange_set_back",
    "flange_set_back": "frame_projection",
    "sash_face": "sash_overlap",
    "sash_overlap": "sash_face",
}
"""Keys that say one thing in two ways: what a piece gives in one way replaces what it has in the other."""


def merged(base: Mapping[str, Any], changes: Mapping[str, Any]) -> dict[str, Any]:
    """Lay changes over a mapping, mapping within mapping; ``none`` takes a key away, as does another way to say it."""
    result = {key: value for key, value in base.items() if RIVALS.get(key) not in changes}
    for key, value in changes.items():
        if value == "none":
            result.pop(key, None)
        elif isinstance(value, dict) and isinstance(result.get(key), dict):
            result[key] = merged(result[key], value)
        else:
            result[key] = value
    return result
