"""Findings are data: every code once in the house, every register with its rows, and no arithmetic prints a length."""

from __future__ import annotations

import ast
from collections import Counter
from collections.abc import Iterator
from importlib import import_module
from pathlib import Path

import pytest
from finding_rows import statements_in
from test_floors import FILES, FLOORS, PACKAGE, module_of, room_of

from jambs.findings import Statement

TESTS = Path(__file__).parent
REGISTERS = [path for path in FILES if path.stem.endswith(("findings", "reasons")) and path.parent != PACKAGE]
PRINTERS = {"length_text", "feet_text", "decimal_text"}
PRINTING_METHODS = {"text", "words"}
WHERE_PEOPLE_READ = 7
"""From this floor up papers are made, of ``values``; ``job`` is the other border, where what was written is told of."""
STUDY = "study"
"""The one room up there that is arithmetic: only its records are read."""


def may_print(path: Path) -> bool:
    room = room_of(module_of(path))
    if room in ("length", "values", "job"):
        return True
    if room != STUDY and FLOORS.get(room, WHERE_PEOPLE_READ) >= WHERE_PEOPLE_READ:
        return True
    if path.is_relative_to(PACKAGE / STUDY / "record"):
        return True
    return path in REGISTERS or path.stem.endswith("_words")


def printing(code: str) -> Iterator[str]:
    """Name what code imports or calls that prints a length."""
    for node in ast.walk(ast.parse(code)):
        if isinstance(node, ast.ImportFrom) and node.module == "jambs.length":
            yield from (alias.name for alias in node.names if alias.name in PRINTERS)
        elif (
            isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr in ("text", "words")
        ):
            yield f".{node.func.attr}()"


ARITHMETIC = [path for path in FILES if not may_print(path)]


@pytest.mark.parametrize("path", ARITHMETIC, ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_no_arithmetic_file_prints_a_length(path: Path) -> None:
    assert set(printing(path.read_text(encoding="utf-8"))) == set()


def test_the_walk_sees_both_ways_of_printing() -> None:
    """The test of the test."""
    code = "from jambs.length import Grid, length_text\nprint(grid.text(1.0), window.words(units), plan.words)\n"
    assert list(printing(code)) == ["length_text", ".text()", ".words()"]


def test_class_names_are_there_once() -> None:
    """One word, one thing: no two classes of the house share a name; private ones are nobody else's."""
    found: dict[str, list[str]] = {}
    for path in FILES:
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
                found.setdefault(node.name, []).append(path.relative_to(PACKAGE).as_posix())
    assert {name: paths for name, paths in found.items() if len(paths) > 1} == {}


def statements() -> list[type[Statement]]:
    return [one for path in REGISTERS for one in statements_in(import_module(module_of(path)))]


def test_every_code_is_there_once() -> None:
    counted = Counter(one.code for one in statements())
    assert {code for code, count in counted.items() if count > 1} == set()
    assert all(code.replace("-", "").isalpha() and code == code.lower() for code in counted)


@pytest.mark.parametrize("path", REGISTERS, ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_every_register_has_its_rows(path: Path) -> None:
    """The rows of a register stand in a test of its name, which holds every code: ``codes_in`` in it fails else."""
    room = path.relative_to(PACKAGE).parts[0]
    rows = TESTS / room / f"test_{room}_{path.name}"
    assert rows.exists()
    assert f"codes_in({path.stem}" in rows.read_text(encoding="utf-8")
