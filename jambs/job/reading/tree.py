"""A YAML file as plain texts, lists and mappings, with the line of every value.

Nothing is guessed: ``no``, ``1e3`` and ``2026-03-02`` stay the texts they are; the models read them.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any, Protocol

import yaml

from jambs.job.reading.faults import Fault, JobFaults, Location, half_letters

NAMING_KEYS = ("mark", "material", "nominal", "stock")
"""Keys whose value names an item of a list in a message."""

SAME_KEY = {"storeys": "stories", "price_per_metre": "price_per_meter"}
"""Keys in their other spelling: one word, so nothing else can be meant, and a job may write either."""

HALF = "holds half a letter (a lone surrogate), which no file takes; type the letter itself"


class TextSource(Protocol):
    """A piece of a job with a place on paper: its value, and how a fault in it is told."""

    @property
    def value(self) -> Any:
        """The piece as it is written."""

    def fault(self, location: Location, sentence: str) -> Fault:
        """Make a fault at a location within the piece."""

    def name(self, location: Location) -> str:
        """Return what the file calls the value at a location."""

    def within(self, location: Location) -> TextSource:
        """Return the piece at a location within this one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TreePiece:
    """A piece of a YAML file. ``root``: the whole file's value; ``path``: the way to the piece."""

    file: str
    root: Any
    lines: Mapping[Location, int]
    path: Location = ()

    @property
    def value(self) -> Any:
        """The piece as it is written; nothing if the file has no such piece."""
        value = self.root
        for step in self.path:
            value = value[step]
        return value

    def name(self, location: Location) -> str:
        """Return the key at the end of a location."""
        return str(location[-1])

    def within(self, location: Location) -> TreePiece:
        """Return the piece at a location within this one."""
        return TreePiece(file=self.file, root=self.root, lines=self.lines, path=self.path + location)

    def replaced(self, location: Location, value: Any) -> TreePiece:
        """Return this piece with another value at a location; a fault in it is told where the old one stands."""
        return replace(self, root=_put(self.root, self.path + location, value))

    def fault(self, location: Location, sentence: str) -> Fault:
        """Make a fault at the nearest place that is written in the file."""
        path = self.path + location
        while path not in self.lines:
            path = path[:-1]
        return Fault(file=self.file, line=self.lines[path], where=self._where(path), sentence=sentence)

    def _where(self, path: Location) -> str:
        """Tell the way: ``walls.main: layers[3] "EPS".thickness``."""
        words: list[str] = []
        value = self.root
        for step in path:
            value = value.get(step) if isinstance(value, dict) else value[step]
            words.append(f"[{step}]{_name(value)}" if isinstance(step, int) else f".{step}")
        section = _section_length(path)
        parts = ("".join(words[:section]), "".join(words[section:]))
        return ": ".join(part.removeprefix(".") for part in parts if part)


def _put(tree: Any, path: Location, value: Any) -> Any:
    """Copy a tree along one way, with another value at its end."""
    if not path:
        return value
    copy = tree.copy()
    copy[path[0]] = _put(tree.get(path[0]) if isinstance(tree, dict) else tree[path[0]], path[1:], value)
    return copy


def _name(value: Any) -> str:
    if isinstance(value, str):
        return f' "{value}"'
    named = [value[key] for key in NAMING_KEYS if isinstance(value.get(key), str)] if isinstance(value, dict) else []
    return f' "{named[0]}"' if named else ""


def _section_length(path: Location) -> int:
    named = ("walls", "windows", "interior_trim", "exterior_trim", "openings", "elevations")
    return 2 if path and path[0] in named else 1


def read_tree(path: Path, text: str | None = None) -> tuple[TreePiece, list[Fault]]:
    """Read a YAML file whose top is a mapping; also return what is wrong with its keys (twice given, left empty).

    ``text``: a draft that is read in the place of what the file holds.

    Raises:
        JobFaults: the file cannot be read as YAML at all.
    """
    return grown(composed(_text(path) if text is None else text, path.name), path.name)


def composed(text: str, file: str, loader: type[yaml.BaseLoader] = yaml.BaseLoader) -> yaml.MappingNode:
    """Return the nodes of a YAML text whose top is a mapping; ``file``: its name in messages.

    Raises:
        JobFaults: the text cannot be read as YAML at all.
    """
    try:
        node = yaml.compose(text, Loader=loader)
    except yaml.MarkedYAMLError as error:
        raise JobFaults([_syntax_fault(file, error)]) from None
    except (yaml.YAMLError, RecursionError) as error:
        why = "it is nested too deeply" if isinstance(error, RecursionError) else str(error).splitlines()[0]
        raise JobFaults([_fault(file, 0, f"YAML cannot read this: {why}; correct it")]) from None
    if not isinstance(node, yaml.MappingNode):
        message = "holds no keys; write key: value lines, or start with `jambs new`"
        raise JobFaults([_fault(file, 0, message)])
    return node


def grown(node: yaml.MappingNode, file: str) -> tuple[TreePiece, list[Fault]]:
    """Return the nodes of a file as plain values with their lines, and what is wrong with its keys."""
    return _Grower(file).grow(node)


def _text(path: Path) -> str:
    try:
        return path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        raise JobFaults([_fault(path.name, 0, "is not UTF-8 text; save it as UTF-8")]) from None
    except OSError as error:
        raise JobFaults([_fault(path.name, 0, f"cannot be opened ({error.strerror}); check the path")]) from None


def _fault(file: str, line: int, sentence: str, where: str = "") -> Fault:
    return Fault(file=file, line=line, where=where, sentence=sentence)


def _syntax_fault(file: str, error: yaml.MarkedYAMLError) -> Fault:
    mark = error.problem_mark or error.context_mark
    problem = str(error.problem or error.context)
    if r"'\t'" in problem:
        sentence = "a tab stands where YAML allows only spaces; replace it by spaces"
    else:
        advice = "check the indentation, the colons and the quotes here and on the line above"
        sentence = f"YAML cannot read this: {problem}; {advice}"
    return _fault(file, mark.line + 1 if mark else 0, sentence)


class _Grower:
    """Turns the nodes of one file into plain values, and notes the line of each."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.lines: dict[Location, int] = {}
        self.faults: list[tuple[Location, int, str]] = []
        self.seen: set[int] = set()

    def grow(self, node: yaml.MappingNode) -> tuple[TreePiece, list[Fault]]:
        """Return the whole file as a piece, and its faults."""
        piece = TreePiece(file=self.file, root=self._value(node, ()), lines=self.lines)
        return piece, [self._told(piece, *fault) for fault in self.faults]

    def _told(self, piece: TreePiece, path: Location, line: int, sentence: str) -> Fault:
        return _fault(self.file, line, sentence, piece.fault(path, "").where)

    def _value(self, node: yaml.Node, path: Location) -> Any:
        line = node.start_mark.line + 1
        self.lines.setdefault(path, line)
        if id(node) in self.seen:
            self.faults.append(
                (path, self.lines[path], "an alias (*) repeats another piece; write the values out, or use like:")
            )
            return None
        self.seen.add(id(node))
        if isinstance(node, yaml.MappingNode):
            return self._mapping(node, path)
        if isinstance(node, yaml.SequenceNode):
            return [self._value(item, (*path, place)) for place, item in enumerate(node.value)]
        plain = isinstance(node, yaml.ScalarNode) and node.style is None
        if plain and node.value in ("", "~", "null"):
            self.faults.append((path, self.lines[path], "has no value; write one, or remove the line"))
            return None
        if half_letters(str(node.value)):
            self.faults.append((path, self.lines[path], HALF))
            return None
        return str(node.value)

    def _mapping(self, node: yaml.MappingNode, path: Location) -> dict[str, Any]:
        value: dict[str, Any] = {}
        for key, item in node.value:
            line = key.start_mark.line + 1
            if not isinstance(key, yaml.ScalarNode):
                self.faults.append((path, line, "a key must be one word; write key: value"))
            elif half_letters(key.value):
                self.faults.append((path, line, f"a key {HALF}"))
            elif (name := SAME_KEY.get(str(key.value)) or str(key.value)) in value:
                first = self.lines[(*path, name)]
                again = f"{name} is given twice, first on line {first}; keep one of them"
                self.faults.append((path, line, again))
            else:
                self.lines[(*path, name)] = line
                value[name] = self._value(item, (*path, name))
        return value
