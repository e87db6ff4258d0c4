"""The whole job file as one model: for its keys, and for the schema that editors check it by."""

from __future__ import annotations

from typing import Any, get_args

from pydantic import Field

from jambs.job.key_words import key_words
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.fields import Model
from jambs.job.models.layers import WallEntry
from jambs.job.models.openings import JobEntry, OpeningEntry
from jambs.job.models.outside import OutsideEntry
from jambs.job.models.position import PositionRule
from jambs.job.models.shop import Limits, Shop
from jambs.job.models.trim import InteriorTrim
from jambs.job.models.windows import WindowType


class JobFile(OutsideEntry, JobEntry):
    """A job file. Layers inside → outside; left and right as seen from inside; lengths as the trade writes them."""

    shop: Shop
    limits: Limits = Limits()
    walls: dict[str, WallEntry]
    windows: dict[str, WindowType]
    interior_trim: dict[str, InteriorTrim]
    exterior_trim: dict[str, ExteriorTrim] = Field(default_factory=dict)
    position: PositionRule | None = None
    openings: tuple[OpeningEntry, ...] = ()


def schema() -> dict[str, Any]:
    """Return the JSON Schema of the job file, for editors that complete and check YAML by one."""
    whole = JobFile.model_json_schema()
    for section in NAMED:
        piece = whole["properties"][section]
        piece["additionalProperties"] = {"anyOf": [piece["additionalProperties"], LIKE]}
    _describe(whole)
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **whole}


NAMED = ("walls", "windows", "interior_trim", "exterior_trim")
"""Sections whose pieces have names, and may be like each other."""
LIKE = {"type": "object", "required": ["like"], "properties": {"like": {"type": "string"}}}


def _describe(whole: dict[str, Any]) -> None:
    """Let an editor show what every key means."""
    for row in key_words().values():
        piece = whole if row.model == JobFile.__name__ else whole["$defs"].get(row.model, {})
        piece = next((one for one in (piece, *piece.get("anyOf", ())) if row.key in one.get("properties", {})), None)
        if piece is not None:
            value = piece["properties"][row.key]
            written = value.get("description", "")
            value["description"] = f"{row.words} ({written})" if written else row.words


def models() -> tuple[type[Model], ...]:
    """Return all models of a job file, each once, in the order in which the file comes to them."""
    found: list[type[Model]] = []
    waiting: list[type[Model]] = [JobFile]
    while waiting:
        model = waiting.pop(0)
        if model not in found:
            found.append(model)
            waiting = [one for field in model.model_fields.values() for one in models_in(field.annotation)] + waiting
    return tuple(found)


def models_in(annotation: Any) -> list[type[Model]]:
    """Return the models that an annotation like ``dict[str, WallEntry] | None`` speaks of."""
    if isinstance(annotation, type):
        return [annotation] if issubclass(annotation, Model) else []
    return [model for inner in get_args(annotation) for model in models_in(inner)]
