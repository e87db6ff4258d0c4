"""What may be added to a job on the page: the keys of each part of the job file, and what stands under each."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from enum import StrEnum
from functools import cache
from types import NoneType, UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from jambs.job.key_list import key_line
from jambs.job.models.fields import Model, ModelOrText, Offered
from jambs.job.models.job_file import JobFile, models_in
from jambs.values import Record

NAMED = {"window": "windows", "wall": "walls", "interior_trim": "interior_trim", "exterior_trim": "exterior_trim"}
"""Keys of an opening that say a name which the job gives, and the section where it is given."""
NO_TRIM = "none"
YES_NO = ("yes", "no")


@cache
def key_tables() -> dict[str, list[Record]]:
    """Return the keys of every part of a job file, by the part's own name."""
    found: dict[str, list[Record]] = {}
    waiting: list[type[Model]] = [JobFile]
    while waiting:
        model = waiting.pop()
        if model.__name__ not in found:
            found[model.__name__] = keys_of(model)
            waiting += [inner for field in model.model_fields.values() for inner in models_in(field.annotation)]
    return found


def keys_of(model: type[Model], *, given: Collection[str] = ()) -> list[Record]:
    """Return the keys of one part that are not given yet, those first that must be."""
    lines = [(key_line(model, key, field), field) for key, field in model.model_fields.items() if key not in given]
    lines.sort(key=lambda one: not one[0].is_required)
    return [
        {
            "key": line.key,
            "words": line.words,
            "picture": line.picture,
            "choices": choices_of(field.annotation),
            "is_required": line.is_required,
            **_under(field.annotation),
        }
        for line, field in lines
    ]


def choices_of(annotation: Any) -> list[str]:
    """Return all that may stand under a key that takes words of its own alone, or yes or no; else nothing."""
    if annotation is bool:
        return [*YES_NO]
    if get_origin(annotation) is Literal:
        return [*map(str, get_args(annotation))]
    if isinstance(annotation, type):
        return [one.value for one in annotation] if issubclass(annotation, StrEnum) else []
    if get_origin(annotation) is Annotated:
        word, *told = get_args(annotation)
        offered = next((one.words for one in told if isinstance(one, Offered)), None)
        return choices_of(word) if offered is None else [*map(str, offered)]
    inner = [one for one in get_args(annotation) if one is not NoneType]
    is_optional = get_origin(annotation) in (Union, UnionType) and len(inner) == 1
    return choices_of(inner[0]) if is_optional else []


def _under(annotation: Any) -> Record:
    """Return what stands under a key: nothing, or keys after ``steps``: a name (empty), the number of an item.

    ``takes_text``: it may be one text too, as in ``shape: octagon``.
    """
    models = models_in(annotation)
    if not models:
        return {"of": "", "steps": [], "takes_text": True}
    return {"of": models[0].__name__, "steps": _steps(annotation), "takes_text": issubclass(models[0], ModelOrText)}


def _steps(annotation: Any) -> list[str | int]:
    """Return the steps from a key to the keys under it."""
    if isinstance(annotation, type):
        return []
    own: list[str | int] = [""] if get_origin(annotation) is dict else [0] if get_origin(annotation) is tuple else []
    inner = next((one for one in get_args(annotation) if models_in(one)), None)
    return own if inner is None else own + _steps(inner)


def names_for(key: str, root: Mapping[str, Any]) -> list[str]:
    """Return the names that the job has for a key of an opening, an empty one first: nothing said."""
    known: Any = root.get(NAMED.get(key, ""), {})
    names: Sequence[str] = list(known) if isinstance(known, dict) else []
    return ["", *names, *([NO_TRIM] if key == "exterior_trim" else [])] if names else []
