"""What the models complain of, told in the words of the job file."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar, get_args

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from jambs.job.key_words import PLACES, elsewhere, missing, related, words_of
from jambs.job.models.fields import Model
from jambs.job.reading.faults import Fault, Location, advice, nearest
from jambs.job.reading.tree import TextSource
from jambs.length import Units
from jambs.sides import CORNERS as OPENING_CORNERS

Checked = TypeVar("Checked", bound=Model)

CORNERS: Mapping[Location, str] = {
    place: f"{across.value}_{leg.value}"
    for across, leg in OPENING_CORNERS
    for place in ((across.value, int(not leg.is_start)), (leg.value, int(not across.is_start)))
}
"""Where the four measured corners stand once they are spread over the sides."""


def check(
    model: type[Checked], source: TextSource, *, units: Units, value: Any = None
) -> tuple[Checked | None, list[Fault]]:
    """Check one piece of a job against its model; ``value`` stands in for the piece's own where it was merged."""
    written = source.value if value is None else value
    if written is None:
        return None, []
    try:
        return model.model_validate(written, context={"units": units}), []
    except ValidationError as error:
        errors = error.errors(include_url=False)
        told = (_told(one, model, source, units) for one in errors if not _is_echo(one, errors))
        return None, list(dict.fromkeys(fault for fault in told if fault))


def _is_echo(error: ErrorDetails, errors: list[ErrorDetails]) -> bool:
    """Say whether an error only repeats another: a key missing for its misspelling, a list short for a bad item."""
    if error["type"] == "too_short":
        return bool(len(error["input"]) >= error["ctx"]["min_length"])
    if error["type"] != "missing":
        return False
    *above, key = error["loc"]
    unknown = [one["loc"] for one in errors if one["type"] == "extra_forbidden"]
    return any(list(loc[:-1]) == above and nearest(str(loc[-1]), [str(key)]) for loc in unknown)


def _told(error: ErrorDetails, model: type[Model], source: TextSource, units: Units) -> Fault | None:
    """Tell one error; an empty value was told when the file was read."""
    location = _as_written(error["loc"], source.value)
    kind, found = error["type"], error["input"]
    if kind == "missing":
        owner = _model_at(model, error["loc"][:-1])
        sentence = missing(owner.__name__, str(error["loc"][-1]), name=source.name(location))
        return source.fault(location[:-1], sentence)
    if found is None:
        return None
    return source.fault(location, _sentence(kind, found, error, _model_at(model, error["loc"])))


def _sentence(kind: str, found: Any, error: ErrorDetails, model: type[Model]) -> str:
    context = error.get("ctx", {})
    if kind == "extra_forbidden":
        return unknown_key(str(error["loc"][-1]), model)
    if kind in ("enum", "literal_error"):
        return f"{found!r} is not allowed; {_choices(str(context['expected']), found)}"
    if kind == "dict_type":
        return f"{_short(found)} stands where keys belong; write key: value lines under it"
    if kind in ("model_type", "model_attributes_type"):
        return f"{_short(found)} stands where keys belong; write {_keys(model)} as key: value"
    if kind == "tuple_type":
        return f"{_short(found)} is not a list; write a list: [one, two], or one item a line after a dash"
    if kind == "too_short":
        return f"has only {context['actual_length']}; give at least {context['min_length']}"
    return error["msg"] if kind == "job_value" else f"{_short(found)} does not fit ({error['msg']}); correct it"


def unknown_key(found: str, model: type[Model]) -> str:
    """Say that a model knows no such key: where it belongs, the key that means the same, or those that may."""
    keys = model.model_fields
    if other := elsewhere(model.__name__, found):
        return f"unknown key here; {other.key} stands {PLACES[other.model]}: {other.told}"
    if close := nearest(found, keys):
        meant = words_of(model.__name__, close[0])
        return f"unknown key; did you mean {close[0]}{f' ({meant.words})' if meant and '→' in meant.words else ''}?"
    near = [f"{one.key} ({one.told})" for one in related(model.__name__, found, keys)[:MOST_RELATED]]
    return f"unknown key; related keys are {'; '.join(near)}" if near else f"unknown key; {advice(found, keys)}"


MOST_RELATED = 4
"""Keys that are told with their meaning where none is surely meant."""


def _choices(expected: str, found: Any) -> str:
    names = [name for name in expected.split("'") if name.strip() not in ("", ",", "or")]
    allowed = f"write one of {', '.join(names)}"
    meant = advice(str(found), names)
    return f"{meant} W{allowed[1:]}" if meant.startswith("did") else meant


def _short(found: Any) -> str:
    text = repr(found)
    return text if len(text) <= 40 else f"{text[:36]} …"


def _keys(model: type[Model]) -> str:
    return ", ".join(key for key, field in model.model_fields.items() if field.is_required()) or "the keys"


def _as_written(location: Location, value: Any) -> Location:
    """Return the location in the file of a location in the model, where a model spreads one value over several."""
    for place in range(len(location)):
        if not isinstance(value, dict):
            break
        corner = CORNERS.get(location[place : place + 2])
        if corner in value and location[place] not in value:
            return (*location[:place], str(corner))
        value = value.get(location[place])
    return location


def _model_at(model: type[Model], location: Location) -> type[Model]:
    """Return the model of the piece a location leads to."""
    for step in location:
        field = model.model_fields.get(str(step))
        model = (_model_in(field.annotation) if field else None) or model
    return model


def _model_in(annotation: Any) -> type[Model] | None:
    """Return the one model that an annotation like ``tuple[LayerEntry, ...] | None`` speaks of."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation if issubclass(annotation, Model) else None
    return next((model for inner in get_args(annotation) if (model := _model_in(inner))), None)
