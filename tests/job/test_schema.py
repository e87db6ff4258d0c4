"""The JSON Schema for editors, by jsonschema: it takes what the program takes, and knows every key."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest
import yaml
from houses import HOUSE, METRIC

from jambs.job.models.job_file import JobFile, schema
from jambs.job.starter import new_job_text
from jambs.length import Units

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*/job.yaml"))
JOBS = (
    {"inch": HOUSE, "metric": METRIC}
    | {f"starter {units.value}": new_job_text(units) for units in Units}
    | {file.parent.name: file.read_text(encoding="utf-8") for file in EXAMPLES}
)


def validator() -> jsonschema.Draft202012Validator:
    return jsonschema.Draft202012Validator(schema())


def as_json(text: str, loader: Any) -> Any:
    return json.loads(json.dumps(yaml.load(text, Loader=loader), default=str))


def test_there_are_six_examples() -> None:
    assert len(EXAMPLES) == 6


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


def test_every_section_of_the_job_file_is_in_the_schema() -> None:
    assert set(schema()["properties"]) == set(JobFile.model_fields)
