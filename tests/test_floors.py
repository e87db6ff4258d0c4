"""The house stands on its floors: a file imports only lower ones, rooms of one floor never see each other.

Every import counts: absolute, relative, inside functions, under ``TYPE_CHECKING``.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
PACKAGE = ROOT / "jambs"
FLOORS = {
    "length": 0,
    "geometry": 0,
    "sides": 0,
    "outlines": 1,
    "arcs": 1,
    "interrupts": 0,
    "issue_stamp": 0,
    "csv_text": 0,
    "vector_page": 0,
    "letter_widths": 0,
    "data": 0,
    "findings": 1,
    "job": 1,
    "values": 2,
    "wall": 2,
    "place": 3,
    "parts": 4,
    "section": 5,
    "stock": 5,
    "courses": 5,
    "flashing": 5,
    "fasten": 5,
    "movement": 5,
    "neighbors": 5,
    "outside": 6,
    "study": 7,
    "drawings": 7,
    "sheets": 7,
    "issued": 7,
    "solids": 7,
    "app": 8,
    "screen": 9,
    "face": 10,
    "commands": 11,
    "page": 12,
    "__main__": 13,
}
ONLY_IN = {
    "ezdxf": {"drawings", "job"},  # job reads the section of a casing, and imports it late
    "typst": {"sheets"},
    "segno": {"sheets", "page"},
    "cadquery": {"solids"},
    "pydantic": {"job", "values", "sheets"},  # values and sheets only tell a model from a dataclass
    "pydantic_core": {"job"},
    "yaml": {"job"},
    "openpyxl": {"job"},
    "click": {"commands", "page", "__main__"},
    "starlette": {"page"},
    "uvicorn": {"page"},
    "jinja2": {"page"},
    "zxingcpp": {"page"},
    "websockets": {"page"},
    "anyio": {"page"},
}
FILES = sorted(PACKAGE.rglob("*.py"))


def module_of(path: Path) -> str:
    parts = path.relative_to(PACKAGE.parent).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


MODULES = {module_of(path): path for path in FILES}


def imports_in(code: str, module: str, *, is_package: bool) -> Iterator[tuple[int, str]]:
    """Yield the line and the full name of everything that code imports where it stands."""
    above = module.split(".") if is_package else module.split(".")[:-1]
    for node in ast.walk(ast.parse(code)):
        if isinstance(node, ast.Import):
            yield from ((node.lineno, alias.name) for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            base = ".".join(above[: len(above) - node.level + 1]) if node.level else ""
            source = ".".join(part for part in (base, node.module) if part)
            yield from ((node.lineno, f"{source}.{alias.name}") for alias in node.names)


def imports(path: Path) -> Iterator[tuple[int, str]]:
    """Yield the line and the full name of everything a file imports."""
    code = path.read_text(encoding="utf-8")
    return imports_in(code, module_of(path), is_package=path.name == "__init__.py")


def room_of(module: str) -> str:
    parts = module.split(".")
    return parts[1] if len(parts) > 1 else ""


def upward(path: Path) -> list[str]:
    """Name the imports of a file that go up, or sideways into another room."""
    here = room_of(module_of(path))
    found = []
    for line, target in imports(path):
        there = room_of(target) if target.startswith("jambs.") else ""
        if there in FLOORS and here and there != here and FLOORS[there] >= FLOORS[here]:
            found.append(f"{path.relative_to(ROOT)}:{line}: {here} (floor {FLOORS[here]}) imports {target}")
    return found


@pytest.mark.parametrize("path", FILES, ids=lambda path: str(path.relative_to(ROOT)))
def test_a_file_imports_only_lower_floors(path: Path) -> None:
    assert upward(path) == []


@pytest.mark.parametrize("path", FILES, ids=lambda path: str(path.relative_to(ROOT)))
def test_heavy_libraries_stay_in_their_rooms(path: Path) -> None:
    room = room_of(module_of(path))
    used = {target.split(".")[0] for _, target in imports(path)}
    assert {name for name in used & set(ONLY_IN) if room not in ONLY_IN[name]} == set()


def test_every_room_has_a_floor() -> None:
    rooms = {room_of(name) for name in MODULES} - {""}
    assert rooms <= set(FLOORS)


def home(target: str) -> str | None:
    """Return the module a name is imported from."""
    above = target.rpartition(".")[0]
    return target if target in MODULES else above if above in MODULES else None


def test_no_files_import_each_other_in_a_circle() -> None:
    graph = {
        name: {there for _, target in imports(path) if (there := home(target)) and there != name}
        for name, path in MODULES.items()
        if path.name != "__init__.py"
    }
    graph = {name: {there for there in targets if there in graph} for name, targets in graph.items()}
    try:
        TopologicalSorter(graph).prepare()
    except CycleError as error:
        pytest.fail(" -> ".join(error.args[1]))


def folder_of(module: str) -> str:
    """Return the folder a file stands in; of an inner one with its room: ``jambs.parts.board``."""
    return module.rpartition(".")[0]


def is_inner(folder: str) -> bool:
    return folder.count(".") > 1


def test_no_inner_folders_of_a_room_import_each_other_in_a_circle() -> None:
    """Files beside the inner folders stand above them or below, each by itself, so they are not held here."""
    graph: dict[str, set[str]] = {}
    for name, path in MODULES.items():
        here = folder_of(name)
        if is_inner(here) and path.name != "__init__.py":
            homes = {folder_of(there) for _, target in imports(path) if (there := home(target))}
            graph.setdefault(here, set()).update(one for one in homes - {here} if is_inner(one))
    try:
        TopologicalSorter(graph).prepare()
    except CycleError as error:
        pytest.fail(" -> ".join(error.args[1]))


def test_the_walk_sees_imports_of_every_kind() -> None:
    """The test of the test: code with one upward import of each kind."""
    code = (
        "from typing import TYPE_CHECKING\n"
        "import jambs.app.build\n"
        "from ..place import solve\n"
        "from jambs import sheets\n"
        "if TYPE_CHECKING:\n    from jambs.parts.kit.kit import Kit\n"
        "def late():\n    from jambs.drawings import drawing\n"
    )
    found = imports_in(code, "jambs.wall.planes", is_package=False)
    rooms = {room_of(target) for _, target in found if target.startswith("jambs.")}
    assert rooms == {"app", "place", "sheets", "parts", "drawings"}
