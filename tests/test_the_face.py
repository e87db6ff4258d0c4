"""Command line and page are made of the face alone, and what the face has is there, typed and told of."""

from __future__ import annotations

import ast
import inspect
import subprocess
import sys
from collections.abc import Iterator
from importlib import import_module
from pathlib import Path

import pytest
from test_floors import PACKAGE

import jambs
from jambs import face

COMMANDS = sorted((PACKAGE / "commands").glob("*.py"))
OPEN_TO_COMMANDS = ("jambs", "jambs.face", "jambs.commands", "jambs.interrupts")
"""Beside the face only the version, and Ctrl-C, which is of the process and not of any work."""
PAGE = sorted((PACKAGE / "page").rglob("*.py"))
OPEN_TO_THE_PAGE = (*OPEN_TO_COMMANDS, "jambs.face.screen")
VERBS = {
    "build": "build",
    "buy": "buy",
    "check": "check",
    "compare": "write_comparison",
    "labels": "labels",
    "measure": "measure",
    "revisions": "issues",
}
"""The verbs that work on a job, and the name in the face that does the same."""


def imported(path: Path) -> Iterator[str]:
    """Yield what a file imports of the house, everywhere in it."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module and node.module.split(".")[0] == "jambs":
            yield node.module
        elif isinstance(node, ast.Import):
            yield from (one.name for one in node.names if one.name.split(".")[0] == "jambs")


@pytest.mark.parametrize("path", COMMANDS, ids=lambda path: path.name)
def test_the_command_line_uses_the_face_and_nothing_behind_it(path: Path) -> None:
    behind = {
        name for name in imported(path) if name not in OPEN_TO_COMMANDS and not name.startswith("jambs.commands.")
    }
    assert behind == set()


@pytest.mark.parametrize("path", PAGE, ids=lambda path: path.name)
def test_the_page_uses_the_face_and_nothing_behind_it(path: Path) -> None:
    of_above = ("jambs.commands.", "jambs.page.")
    assert {name for name in imported(path) if name not in OPEN_TO_THE_PAGE and not name.startswith(of_above)} == set()


def test_every_name_for_the_page_is_listed_and_found() -> None:
    screen = import_module("jambs.face.screen")
    assert sorted(screen.__all__) == sorted(
        name for name in vars(screen) if not name.startswith("_") and name != "annotations"
    )


def test_every_name_of_the_face_is_listed_and_found() -> None:
    assert list(face.WHERE) == face.__all__
    for name in face.__all__:
        assert getattr(face, name) is not None


def test_the_type_checker_sees_the_same_names_from_the_same_files() -> None:
    tree = ast.parse(Path(face.__file__).read_text(encoding="utf-8"))
    (checked,) = (node for node in tree.body if isinstance(node, ast.If))
    seen = {
        alias.asname or alias.name: node.module
        for node in checked.body
        if isinstance(node, ast.ImportFrom)
        for alias in node.names
    }
    assert seen == {name: f"jambs.{where}" for name, where in face.WHERE.items()}


def test_every_verb_has_a_function() -> None:
    from jambs.commands.command_line import main

    assert set(VERBS) <= set(main.commands)
    assert set(VERBS.values()) <= set(jambs.__all__)


@pytest.mark.parametrize("name", jambs.__all__)
def test_what_a_script_may_call_is_told_of_and_typed(name: str) -> None:
    found = getattr(jambs, name)
    assert inspect.getdoc(found)
    if inspect.isfunction(found):
        assert set(found.__annotations__) >= {*inspect.signature(found).parameters, "return"}
        raised = "raise " in inspect.getsource(found) or "Raises:" in (inspect.getdoc(found) or "")
        assert raised or name in {"cut_files", "cut_sections", "draw", "summary", "templates"}


def test_help_loads_nothing_of_the_face() -> None:
    code = (
        "import sys\nfrom jambs.commands.command_line import main\n"
        "try:\n    main(['--help'])\nexcept SystemExit:\n    pass\n"
        "print([name for name in sys.modules if name.startswith(('jambs.face', 'jambs.app', 'jambs.job'))])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "[]"


def test_an_unknown_name_says_what_there_is() -> None:
    with pytest.raises(AttributeError, match="the face of jambs has no 'sheet'; it has Asked, Conflict, "):
        getattr(import_module("jambs.face"), "sheet")  # noqa: B009


@pytest.mark.parametrize("name", [one for one in jambs.__all__ if inspect.isfunction(getattr(jambs, one))])
def test_a_path_may_be_text_at_the_border(name: str) -> None:
    """Whoever calls gives ``Path`` or text, whichever is at hand."""
    given = {key: str(one) for key, one in getattr(jambs, name).__annotations__.items() if key != "return"}
    paths = {key: set(one.split(" | ")) for key, one in given.items() if "Path" in one.split(" | ")}
    assert [key for key, kinds in paths.items() if "str" not in kinds] == []
