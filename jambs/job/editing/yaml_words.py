"""A plain value as YAML text: bare where it is read back as it is, else in quotes; on one line where it is short."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from typing import Any

import yaml

from jambs.job.editing.edits import Plain

SHORT = 80
"""Letters of a value that is written on one line."""
NOTHING = ("", "~", "null")
"""Bare, these stand for no value."""
INDENT = 2


class UnmarkedLoader(yaml.BaseLoader):
    """Reads YAML in which nothing is repeated by an anchor, and no value is given a type."""

    def fetch_anchor(self) -> None:
        """Refuse ``&name``."""
        raise _told(self, "an anchor (&)")

    def fetch_alias(self) -> None:
        """Refuse ``*name``."""
        raise _told(self, "an alias (*)")

    def fetch_tag(self) -> None:
        """Refuse ``!type``."""
        raise _told(self, "a tag (!)")


class AnchorMet(Exception):
    """A YAML text with an anchor, an alias or a tag; ``line`` counts from 1."""

    def __init__(self, what: str, line: int) -> None:
        super().__init__(what)
        self.what, self.line = what, line


def _told(loader: UnmarkedLoader, what: str) -> AnchorMet:
    return AnchorMet(what, loader.get_mark().line + 1)


def scalar_words(text: str, *, in_flow: bool, quote: str | None = None) -> str:
    """Return one text as YAML; ``in_flow``: between brackets. ``quote``: the quotes that stood there, which stay."""
    quoted: tuple[str, ...] = (_single(text), _double(text))
    if quote == "'":
        choices: tuple[str, ...] = quoted
    elif quote == '"':
        choices = quoted[::-1]
    else:
        choices = (text, *(quoted if '"' in text else quoted[::-1]))
    return next((one for one in choices if _reads_back(one, text, in_flow)), quoted[1])


def _single(text: str) -> str:
    return "'" + text.replace("'", "''") + "'"


def _double(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)


def _reads_back(words: str, text: str, in_flow: bool) -> bool:
    """Say whether a text, in the midst of a file, is read as the one that is meant."""
    if "\n" in words or "\r" in words or words in NOTHING:
        return False
    try:
        node: Any = yaml.compose(f"k: [{words}]\n" if in_flow else f"k: {words} # c\n", Loader=UnmarkedLoader)
    except (yaml.YAMLError, AnchorMet):
        return False
    values = [value for _, value in node.value] if isinstance(node, yaml.MappingNode) else []
    if in_flow and len(values) == 1:
        values = values[0].value
    return len(values) == 1 and isinstance(values[0], yaml.ScalarNode) and values[0].value == text


def flow_words(value: Plain) -> str:
    """Return a value on one line, lists and keys between brackets."""
    if isinstance(value, str):
        return scalar_words(value, in_flow=True)
    if isinstance(value, Mapping):
        pairs = (f"{scalar_words(key, in_flow=True)}: {flow_words(one)}" for key, one in value.items())
        return f"{{{', '.join(pairs)}}}"
    return f"[{', '.join(flow_words(one) for one in value)}]"


def line_words(value: Plain, quote: str | None = None) -> str:
    """Return a value on one line, as it stands behind a key or a dash."""
    return scalar_words(value, in_flow=False, quote=quote) if isinstance(value, str) else flow_words(value)


def is_short(value: Plain) -> bool:
    """Say whether a value is written on one line."""
    return isinstance(value, str) or not value or len(flow_words(value)) <= SHORT


def key_lines(key: str, value: Plain) -> Iterator[str]:
    """Yield the lines of a key and its value, without their indentation."""
    head = f"{scalar_words(key, in_flow=False)}:"
    if is_short(value):
        yield f"{head} {line_words(value)}"
        return
    yield head
    yield from (f"{' ' * INDENT}{line}" for line in block_lines(value))


def item_lines(value: Plain, *, as_block: bool) -> Iterator[str]:
    """Yield the lines of a list item, its dash first; ``as_block``: its keys on lines of their own."""
    if isinstance(value, str) or not value or (is_short(value) and not as_block):
        yield f"- {line_words(value)}"
        return
    first, *rest = block_lines(value)
    yield f"- {first}"
    yield from (f"  {line}" for line in rest)


def block_lines(value: Plain) -> Iterator[str]:
    """Yield the lines of a list or of keys, without their indentation."""
    if isinstance(value, Mapping):
        for key, one in value.items():
            yield from key_lines(key, one)
    else:
        for one in value:
            yield from item_lines(one, as_block=False)
