"""Names are the trade's words, whole: no abbreviations, no ``get_``; the keys of the job file are the fields.

And one spelling of them everywhere, the North American: on inch papers, where it belongs, so on all others too.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from dataclasses import fields
from pathlib import Path
from typing import Any, get_args

import pytest

from jambs.job.models.fields import Model
from jambs.job.models.gang import GANG_KEYS
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
"""Clippings and initials: an identifier is a word that one would say aloud at the bench."""

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
"""Second names for what the table of words in DEVELOPERS.md has a word for, or names of two things at once."""

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
    **dict.fromkeys(GANG_KEYS, "gang"),
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


OTHER_SPELLING = re.compile(
    r"vapour|fibre|storey|colour|mould|\bgrey|(?<![a-z])(milli|centi)?metre|neighbour|alumini|\bcentre|\bcentring"
    r"|licence|catalogue|labelled|modell(ed|ing)|cancelled|behaviour|\btowards|(minim|maxim|summar)is[ei]",
    re.IGNORECASE,
)
BOTH_READ = {
    "CHANGELOG.md": "what is read in both",
    "DEVELOPERS.md": "the rule in words",
    "jambs/commands/verbs.py": "the verb `catalogue`",
    "jambs/data/layers.csv": "names that a layer is also sold by",
    "jambs/job/models/layers.py": "made_of: fibre",
    "jambs/job/models/metal_returns.py": "metal: aluminium",
    "jambs/job/models/position.py": "words for two places",
    "jambs/job/reading/catalog.py": "names of materials",
    "jambs/job/reading/tree.py": "keys of the job file",
    "jambs/solids/step_text.py": "names of entities that ISO 10303 gives",
    "tests/test_words.py": "this rule",
    "tests/job/test_against_ashrae.py": "names in the published table",
    "tests/job/test_spelling.py": "the test of the above",
}
"""Files that hold the other spelling because a job, or a standard, may have it; and for what."""
ROOT = PACKAGE.parent
TEXTS = sorted(
    path
    for folder in ("jambs", "tests", "examples")
    for path in (ROOT / folder).rglob("*")
    if path.suffix in (".py", ".typ", ".csv", ".txt", ".yaml", ".json", ".md")
    and not {"authorities", "earlier_record", "fonts", "output"} & set(path.parts)
)


def test_there_is_one_spelling() -> None:
    """Of what is quoted, sources keep their own: they stand in ``authorities``."""
    texts = [*TEXTS, *(ROOT / name for name in ("README.md", "DEVELOPERS.md", "CHANGELOG.md"))]
    found = [
        f"{path.relative_to(ROOT)}:{number}: {line.strip()}"
        for path in texts
        if str(path.relative_to(ROOT)) not in BOTH_READ
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1)
        if OTHER_SPELLING.search(line)
    ]
    assert found == []
