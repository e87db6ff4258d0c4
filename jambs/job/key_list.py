"""All keys of a job file in the order of the file, from the models: what each means and whether it must be given."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from typing import Any, Literal, get_args, get_origin

from pydantic.fields import FieldInfo

from jambs.job.key_words import INSTEAD, words_of
from jambs.job.models.fields import Model, Offered
from jambs.job.models.job_file import JobFile, models_in

TOP = "top of the file"
FIRST = ("job", "units", "shop", "walls", "windows", "interior_trim", "exterior_trim", "position", "openings")
"""What every job has, before the keys that few jobs need."""


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyLine:
    """One key: its meaning, the words that may stand there (empty: any value that fits), whether it must be given."""

    key: str
    words: str
    choices: tuple[str, ...]
    is_required: bool
    picture: str


@dataclass(frozen=True, slots=True, kw_only=True)
class KeySection:
    """The keys that stand under one place of a job file: ``walls: NAME: layers: -``."""

    path: str
    lines: tuple[KeyLine, ...]


@cache
def key_sections() -> tuple[KeySection, ...]:
    """Return every section once, where the file comes to it first."""
    return tuple(_sections(JobFile, "", set()))


def _sections(model: type[Model], path: str, seen: set[type[Model]]) -> Iterator[KeySection]:
    seen.add(model)
    fields = sorted(model.model_fields.items(), key=lambda one: _place(model, one[0]))
    yield KeySection(path=path or TOP, lines=tuple(key_line(model, *one) for one in fields))
    for key, field in fields:
        for inner in models_in(field.annotation):
            if inner not in seen:
                yield from _sections(inner, f"{path}: {key}{_steps(field.annotation)}".removeprefix(": "), seen)


def _place(model: type[Model], key: str) -> int:
    """Return where a key comes: at the top of the file those that every job has come first."""
    return FIRST.index(key) if model is JobFile and key in FIRST else len(FIRST)


def _steps(annotation: Any) -> str:
    """Return what stands between a key and the keys under it: a name for each, or a dash."""
    origins = {get_origin(one) for one in (annotation, *get_args(annotation))}
    return ": NAME" if dict in origins else ": -" if tuple in origins else ""


def key_line(model: type[Model], key: str, field: FieldInfo) -> KeyLine:
    """Return what is told of one key of a model."""
    found = words_of(model.__name__, key)
    words, choices = found.words if found else "", _choices(field.annotation)
    return KeyLine(
        key=key,
        words=f"{words}; or {INSTEAD[key]}" if key in INSTEAD else words,
        choices=() if all(one in words for one in choices) else choices,
        is_required=field.is_required(),
        picture=found.picture if found else "",
    )


def _choices(annotation: Any) -> tuple[str, ...]:
    """Return the words of an annotation like ``Sash`` or ``Literal["left", "right"] | None``."""
    if get_origin(annotation) is Literal:
        return tuple(map(str, get_args(annotation)))
    if offered := next((one for one in get_args(annotation) if isinstance(one, Offered)), None):
        return tuple(map(str, offered.words))
    if isinstance(annotation, type):
        return tuple(one.value for one in annotation) if issubclass(annotation, StrEnum) else ()
    return next((found for inner in get_args(annotation) if (found := _choices(inner))), ())


def sections_with(word: str) -> tuple[KeySection, ...]:
    """Return the sections that have a word in their path, whole, and of the others the keys that have it.

    The name of a picture finds the keys that are drawn on it.
    """
    word = word.lower().replace(" ", "_")
    found = []
    for section in key_sections():
        lines = tuple(one for one in section.lines if word in one.key or word == one.picture)
        is_whole = word in section.path.lower().replace(" ", "_").split(":_")
        if is_whole or lines:
            found.append(KeySection(path=section.path, lines=section.lines if is_whole else lines))
    return tuple(found)
