"""Where the pieces of a YAML text stand [letters]: the span of a value, the lines of an item, the end of a line."""

from __future__ import annotations

import re
from dataclasses import dataclass

import yaml

from jambs.job.editing.edits import NoSuchPlace
from jambs.job.editing.file_text import FileText, refused
from jambs.job.editing.yaml_words import AnchorMet, UnmarkedLoader
from jambs.job.reading.faults import JobFaults, Location
from jambs.job.reading.tree import SAME_KEY, composed

Span = tuple[int, int]
"""From the first letter to behind the last, counted in letters from the start of the text."""


def nodes_of(file: FileText) -> yaml.MappingNode:
    """Return the nodes of a job file.

    Raises:
        EditRefused: it holds what only its writer can change.
        JobFaults: it cannot be read as YAML at all.
    """
    try:
        return composed(file.text, file.name, UnmarkedLoader)
    except AnchorMet as met:
        sentence = (
            f"{met} stands here, and what it touches is not seen; "
            "write the pieces out, or use like:, then it can be changed"
        )
        raise refused(file.name, sentence, line=met.line) from None
    except JobFaults as error:
        raise error from None


def node_at(top: yaml.MappingNode, path: Location) -> yaml.Node:
    """Return the node at a path.

    Raises:
        NoSuchPlace: there is none.
    """
    node: yaml.Node = top
    for step in path:
        if isinstance(node, yaml.MappingNode) and isinstance(step, str):
            node = pair_at(node, step)[1]
        elif isinstance(node, yaml.SequenceNode) and isinstance(step, int) and step < len(node.value):
            node = node.value[step]
        else:
            raise NoSuchPlace(f"there is no {step}")
    return node


def pair_at(node: yaml.MappingNode, name: str) -> tuple[yaml.Node, yaml.Node]:
    """Return the nodes of a key and its value; a key in its other spelling is the same key.

    Raises:
        NoSuchPlace: there is none.
    """
    for key, value in node.value:
        if SAME_KEY.get(key.value, key.value) == name:
            return key, value
    raise NoSuchPlace(f"there is no {name}")


def is_flow(node: yaml.Node) -> bool:
    """Say whether a list or keys stand between brackets."""
    return isinstance(node, yaml.CollectionNode) and bool(node.flow_style)


@dataclass(frozen=True, slots=True, kw_only=True)
class Lines:
    """A text by its lines; places count letters."""

    text: str

    def start(self, at: int) -> int:
        """Return where the line of a place begins."""
        return self.text.rfind("\n", 0, at) + 1

    def end(self, at: int) -> int:
        """Return where the line of a place ends, before its line end."""
        found = self.text.find("\n", at)
        end = len(self.text) if found < 0 else found
        return end - 1 if found > 0 and self.text[found - 1] == "\r" and found > at else end

    def after(self, at: int) -> int:
        """Return where the next line begins."""
        found = self.text.find("\n", at)
        return len(self.text) if found < 0 else found + 1

    def span(self, node: yaml.Node) -> Span:
        """Return the span of a value, without blanks and comments behind it."""
        start, end = node.start_mark.index, node.end_mark.index
        if isinstance(node, yaml.MappingNode | yaml.SequenceNode) and not is_flow(node):
            children = [one[1] if isinstance(one, tuple) else one for one in node.value]
            return start, self.span(children[-1])[1]
        return start, start + len(self.text[start:end].rstrip())

    def item(self, items: yaml.SequenceNode, place: int) -> Span | None:
        """Return the whole lines of a list item, with the comments right above it but not above the first.

        Nothing where it shares its lines with something else.
        """
        start, end = self.span(items.value[place])
        dash = self.text.rfind("-", 0, start)
        first = self.start(dash)
        if dash < 0 or self.text[dash + 1 : start].strip(" \r\n") or self.text[first:dash].strip(" "):
            return None
        while place and (above := self.start(first - 1)) < first and COMMENT.match(self.text[above:first]):
            first = above
        return first, self.after(end)

    def column(self, at: int) -> int:
        """Return how many letters stand before a place on its line."""
        return at - self.start(at)


COMMENT = re.compile(r" *#")
"""A line that holds a comment and nothing else."""
