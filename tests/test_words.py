"""Names are the trade's words, whole: no abbreviations, no ``get_``; the keys of the job file are the fields."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from dataclasses import fields
from pathlib import Path
from typing import Any, get_args

import pytest

from jambs.job.models.fields import Model
from jambs.job.models.job_file import JobFile
from jambs.job.models.openings import Opening, OpeningEntry
from jambs.job.starter import new_job_text
from jambs.length import Units

PACKAGE = Path(__file__).parents[1] / "jambs"
FILES = sorted(PACKAGE.rglob("*.py"))

SHORT = {
    "ro",
    "rgh",
    "opng",
    "wdth",
    "hgt",
    "thk",
    "dim",
    "dims",
    "calc",
    "cfg",
    "tmp",
    "val",
    "vals",
    "num",
    "cnt",
    "idx",
    "ptr",
    "desc",
    "coord",
    "coords",
    "pos",
    "rect",
    "geom",
    "mat",
    "temp",
    "pct",
    "qty",
}
"""Abbreviations seen in other programs of this kind; identifiers here are full words."""

NOT_OURS = {
    "miter_angle",
    "bevel_angle",
    "wall_depth",
    "saw_width",
    "splay_deg",
    "liner",
    "margin_reveal",
    "waste_length",
}
"""Words that style.md names under *not*: the trade's word stands beside each there."""

VERBS = ("get_", "calculate_", "compute_", "do_")


def names(path: Path) -> Iterator[tuple[int, str]]:
    """Yield every name a file defines: functions, arguments, classes, fields, variables."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.FunctionDef | ast.ClassDef):
            yield node.lineno, node.name
        elif isinstance(node, ast.arg):
            yield node.lineno, node.arg
        elif isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store):
            yield node.lineno, node.id


def odd(path: Path) -> list[str]:
    """Name what a file calls by a word that is not the trade's."""
    found = []
    for line, name in names(path):
        if name.startswith("__"):
            continue
        parts = set(name.lower().strip("_").split("_"))
        if parts & SHORT or name in NOT_OURS or name.lstrip("_").startswith(VERBS):
            found.append(f"{path.name}:{line}: {name}")
    return found


@pytest.mark.parametrize("path", FILES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_names_are_whole_words(path: Path) -> None:
    assert odd(path) == []


def class_fields(path: Path) -> Iterator[str]:
    """Yield the annotated fields of a file's classes."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ClassDef):
            inner = (one.target for one in node.body if isinstance(one, ast.AnnAssign))
            yield from (target.id for target in inner if isinstance(target, ast.Name))


@pytest.mark.parametrize("path", FILES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_a_field_that_is_an_angle_ends_in_deg(path: Path) -> None:
    quantities = (name for name in class_fields(path) if not name.startswith(("is_", "has_")))
    assert [name for name in quantities if name.endswith(("angle", "_degrees", "_rad", "_in", "_inches"))] == []


LOOKED_UP = {
    "head_height": "sill_height",
    "faces": "faces_deg",
    "interior_trim": "interior",
    "exterior_trim": "exterior",
}
"""Keys of an opening that lead to a whole object, or to an angle."""


def test_the_keys_of_an_opening_are_its_fields() -> None:
    keys = {LOOKED_UP.get(key, key) for key in OpeningEntry.model_fields}
    assert keys - {field.name for field in fields(Opening)} == set()


def models(model: type[Model]) -> set[type[Model]]:
    """Return a model and all that it is made of."""
    inner = (_model_in(field.annotation) for field in model.model_fields.values())
    return {model}.union(*(models(one) for one in inner if one))


def _model_in(annotation: Any) -> type[Model] | None:
    if isinstance(annotation, type) and issubclass(annotation, Model):
        return annotation
    return next((model for inner in get_args(annotation) if (model := _model_in(inner))), None)


@pytest.mark.parametrize("units", list(Units))
def test_the_starter_shows_every_key_that_an_opening_needs(units: Units) -> None:
    text = new_job_text(units)
    needed = {key for key, field in OpeningEntry.model_fields.items() if field.is_required()}
    assert {key for key in needed if f"{key}:" not in text} == set()


def test_keys_of_the_job_file_are_lower_case_words() -> None:
    keys = {key for model in models(JobFile) for key in model.model_fields}
    assert {key for key in keys if not key.replace("_", "").isalpha() or key != key.lower()} == set()
