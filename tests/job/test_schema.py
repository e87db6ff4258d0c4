"""The JSON Schema for editors, by jsonschema: it takes what the program takes, and knows every key."""

from __future__ import annotations

import json
from typing import Any, get_args

import jsonschema
import pytest
import yaml
from houses import HOUSE, METRIC

from jambs.job.models.fields import Model
from jambs.job.models.job_file import JobFile, schema
from jambs.job.reading.examples import LENGTHS, TEXTS
from jambs.job.starter import new_job_text
from jambs.length import Units

JOBS = {"inch": HOUSE, "metric": METRIC} | {f"starter {units.value}": new_job_text(units) for units in Units}


def validator() -> jsonschema.Draft202012Validator:
    return jsonschema.Draft202012Validator(schema())


def as_json(text: str, loader: Any) -> Any:
    return json.loads(json.dumps(yaml.load(text, Loader=loader), default=str))


def test_the_schema_is_one() -> None:
    jsonschema.Draft202012Validator.check_schema(schema())


@pytest.mark.parametrize("loader", [yaml.SafeLoader, yaml.BaseLoader], ids=["as an editor reads", "as we read"])
@pytest.mark.parametrize("text", JOBS.values(), ids=JOBS.keys())
def test_sound_jobs_pass(text: str, loader: Any) -> None:
    assert [error.message for error in validator().iter_errors(as_json(text, loader))] == []


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("casing_reveal: 3/16", "casing_revel: 3/16"),
        ("sash: casement out", "sash: casment out"),
        ("    jamb_depth: 3\n", ""),
        ("exterior_trim: none", "exterior_trim: [plain]"),
        ("hinge: left", "hinge: top"),
    ],
)
def test_a_slip_shows_in_the_editor(old: str, new: str) -> None:
    assert old in HOUSE
    spoiled = yaml.load(HOUSE.replace(old, new, 1), Loader=yaml.BaseLoader)
    assert list(validator().iter_errors(spoiled))


def models(model: type[Model]) -> set[type[Model]]:
    """Return a model and all that it is made of."""
    inner = (_model_in(field.annotation) for field in model.model_fields.values())
    return {model}.union(*(models(one) for one in inner if one))


def _model_in(annotation: Any) -> type[Model] | None:
    if isinstance(annotation, type) and issubclass(annotation, Model):
        return annotation
    return next((model for inner in get_args(annotation) if (model := _model_in(inner))), None)


def test_every_key_that_may_be_missed_has_an_example() -> None:
    required = {key for model in models(JobFile) for key, field in model.model_fields.items() if field.is_required()}
    assert required - set(LENGTHS) - set(TEXTS) - {"frame", "nominal"} == set()


def test_every_section_of_the_job_file_is_in_the_schema() -> None:
    assert set(schema()["properties"]) == set(JobFile.model_fields)
