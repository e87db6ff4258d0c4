"""An edit of a job file carried out on its text: what is not asked for stays to the byte, or the edit is refused."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

import yaml

from jambs.job.editing.edits import (
    Edit,
    InsertItem,
    InsertKey,
    MoveItem,
    NoSuchPlace,
    Plain,
    RemoveItem,
    RemoveKey,
    RenameKey,
    SetValue,
    edited_value,
)
from jambs.job.editing.file_text import EditRefused, FileText, refused
from jambs.job.editing.yaml_nodes import Lines, Span, is_flow, node_at, nodes_of, pair_at
from jambs.job.editing.yaml_words import flow_words, item_lines, key_lines, line_words
from jambs.job.reading.faults import JobFaults, Location
from jambs.job.reading.tree import TreePiece, grown

SHARED = "shares its line with another list, so its lines cannot be taken alone; write each item on a line of its own"
ONLY = "is the only one there, and nothing would be left of what holds it; take that out instead"
BETWEEN = "has a comment between it and the next, which would be lost; take it out in an editor"


def edited(file: FileText, edit: Edit) -> FileText:
    """Carry an edit out on the text of a job file.

    Raises:
        EditRefused: it names something that is not there, or more than what it asks for would become another.
        JobFaults: the file cannot be read as YAML at all.
    """
    top = nodes_of(file)
    before, _ = grown(top, file.name)
    try:
        wanted = edited_value(before.root, edit)
        new = _carried_out(file, top, edit)
    except NoSuchPlace as error:
        raise _refused(before, edit.path, f"{error}; nothing is changed") from None
    _hold(new, wanted, before, edit.path)
    return new


def _hold(new: FileText, wanted: Any, before: TreePiece, path: Location) -> None:
    """Read what was made and hold it against what is wanted."""
    try:
        found, _ = grown(nodes_of(new), new.name)
    except (JobFaults, EditRefused) as error:
        raise _refused(before, path, f"this cannot be written here ({error}); change it in an editor") from None
    if found.root != wanted:
        raise _refused(before, path, "more than this value would become another; change it in an editor")


def _refused(piece: TreePiece, path: Location, sentence: str) -> EditRefused:
    """Refuse an edit at the nearest place that is written in the file."""
    return EditRefused(piece.fault(path, sentence))


def _carried_out(file: FileText, top: yaml.MappingNode, edit: Edit) -> FileText:
    if isinstance(edit, SetValue):
        return _set(file, top, edit)
    if isinstance(edit, RemoveKey):
        return _without_key(file, node_at(top, edit.path[:-1]), str(edit.path[-1]))
    if isinstance(edit, RenameKey):
        return _with_name(file, top, edit)
    node = node_at(top, edit.path)
    if isinstance(edit, InsertKey):
        return _with_key(file, node, edit)
    if isinstance(edit, InsertItem):
        return _with_item(file, node, edit)
    if isinstance(edit, RemoveItem):
        return _without_item(file, node, edit)
    return _moved(file, node, edit)


def _in_flow(top: yaml.MappingNode, path: Location) -> bool:
    return any(is_flow(node_at(top, path[:count])) for count in range(len(path)))


def _set(file: FileText, top: yaml.MappingNode, edit: SetValue) -> FileText:
    node = node_at(top, edit.path)
    start, end = Lines(text=file.text).span(node)
    quote = node.style if isinstance(node, yaml.ScalarNode) and node.style in ("'", '"') else None
    words = _words(edit.value, in_flow=_in_flow(top, edit.path), quote=quote)
    before = file.text[start - 1 : start]
    return file.spliced(start, end, f" {words}" if start == end and before not in " \n" else words)


def _words(value: Plain, *, in_flow: bool, quote: str | None = None) -> str:
    if isinstance(value, str) and not in_flow:
        return line_words(value, quote)
    if isinstance(value, str) and quote is None:
        return flow_words(value)
    return line_words(value, quote)


# ---- keys


def _with_key(file: FileText, node: yaml.Node, edit: InsertKey) -> FileText:
    assert isinstance(node, yaml.MappingNode)
    lines = Lines(text=file.text)
    if is_flow(node):
        words = flow_words({edit.key: edit.value})[1:-1]
        if not node.value:
            return file.spliced(node.start_mark.index + 1, node.end_mark.index - 1, words)
        at = lines.span(_behind(node, edit.after))[1]
        return file.spliced(at, at, f", {words}")
    indent = " " * node.value[0][0].start_mark.column
    at = lines.end(lines.span(_behind(node, edit.after))[1])
    new = "".join(f"{file.line_end}{indent}{line}" for line in key_lines(edit.key, edit.value))
    return file.spliced(at, at, new)


def _with_name(file: FileText, top: yaml.MappingNode, edit: RenameKey) -> FileText:
    node = node_at(top, edit.path[:-1])
    assert isinstance(node, yaml.MappingNode)
    key, _ = pair_at(node, str(edit.path[-1]))
    quote = key.style if isinstance(key, yaml.ScalarNode) and key.style in ("'", '"') else None
    words = _words(edit.name, in_flow=_in_flow(top, edit.path), quote=quote)
    return file.spliced(key.start_mark.index, key.end_mark.index, words)


def _behind(node: yaml.MappingNode, name: str | None) -> yaml.Node:
    found: yaml.Node = pair_at(node, name)[1] if name is not None else node.value[-1][1]
    return found


def _without_key(file: FileText, node: yaml.Node, name: str) -> FileText:
    assert isinstance(node, yaml.MappingNode)
    lines = Lines(text=file.text)
    key, _ = pair_at(node, name)
    at = next(place for place, pair in enumerate(node.value) if pair[0] is key)
    spans = [(one.start_mark.index, lines.span(other)[1]) for one, other in node.value]
    if is_flow(node):
        return file.spliced(*_flow_gap(file, spans, at), "")
    if len(spans) == 1:
        raise refused(file.name, f"{name} {ONLY}", line=key.start_mark.line + 1)
    first = lines.start(spans[at][0])
    if not file.text[first : spans[at][0]].strip(" "):
        return file.spliced(first, lines.after(spans[at][1]), "")
    if "#" in file.text[lines.after(spans[at][1]) : spans[at + 1][0]]:
        raise refused(file.name, f"{name} {BETWEEN}", line=key.start_mark.line + 1)
    return file.spliced(spans[at][0], spans[at + 1][0], "")


def _flow_gap(file: FileText, spans: list[Span], at: int) -> Span:
    """Return the span to take out between brackets: a piece and the comma that goes with it."""
    start, end = spans[at]
    if at + 1 < len(spans):
        gap = file.text[end : spans[at + 1][0]]
        comma = COMMA.match(gap)
        return start, end + (comma.end() if comma else 0)
    if at and COMMA.fullmatch(file.text[spans[at - 1][1] : start]):
        return spans[at - 1][1], end
    return start, end


COMMA = re.compile(r"[ \r\n]*,[ ]*")


# ---- items


def _with_item(file: FileText, node: yaml.Node, edit: InsertItem) -> FileText:
    assert isinstance(node, yaml.SequenceNode)
    lines = Lines(text=file.text)
    if is_flow(node):
        return _with_flow_item(file, node, edit)
    place = min(edit.at, len(node.value) - 1)
    span = _lines_of(file, node, place)
    dash = file.text.rfind("-", 0, node.value[place].start_mark.index)
    as_block = any(isinstance(one, yaml.MappingNode) and not is_flow(one) for one in node.value)
    new = [" " * lines.column(dash) + line for line in item_lines(edit.value, as_block=as_block)]
    if edit.at < len(node.value):
        return file.spliced(span[0], span[0], "".join(f"{line}{file.line_end}" for line in new))
    at = lines.end(lines.span(node.value[place])[1])
    return file.spliced(at, at, "".join(f"{file.line_end}{line}" for line in new))


def _with_flow_item(file: FileText, node: yaml.SequenceNode, edit: InsertItem) -> FileText:
    words, lines = flow_words(edit.value), Lines(text=file.text)
    if not node.value:
        return file.spliced(node.start_mark.index + 1, node.end_mark.index - 1, words)
    if edit.at < len(node.value):
        at = node.value[edit.at].start_mark.index
        return file.spliced(at, at, f"{words}, ")
    at = lines.span(node.value[-1])[1]
    return file.spliced(at, at, f", {words}")


def _without_item(file: FileText, node: yaml.Node, edit: RemoveItem) -> FileText:
    assert isinstance(node, yaml.SequenceNode)
    if is_flow(node):
        spans = [Lines(text=file.text).span(one) for one in node.value]
        return file.spliced(*_flow_gap(file, spans, edit.at), "")
    if len(node.value) == 1:
        raise refused(file.name, f"this {ONLY}", line=node.start_mark.line + 1)
    return file.spliced(*_lines_of(file, node, edit.at), "")


def _moved(file: FileText, node: yaml.Node, edit: MoveItem) -> FileText:
    assert isinstance(node, yaml.SequenceNode)
    low, high = sorted((edit.at, edit.to))
    places = range(low, high + 1)
    if is_flow(node):
        spans = [Lines(text=file.text).span(node.value[place]) for place in places]
    else:
        file = _with_last_line_end(file)
        spans = [_lines_of(file, node, place) for place in places]
    texts = [file.text[start:end] for start, end in spans]
    texts.insert(edit.to - low, texts.pop(edit.at - low))
    for (start, end), text in reversed(list(zip(spans, texts, strict=True))):
        file = file.spliced(start, end, text)
    return file


def _with_last_line_end(file: FileText) -> FileText:
    """Return the file with a line end at its end: a last line that moves up needs one."""
    text = file.text
    return file if text.endswith("\n") else replace(file, content=file.content + file.line_end.encode())


def _lines_of(file: FileText, node: yaml.SequenceNode, place: int) -> Span:
    found = Lines(text=file.text).item(node, place)
    if found is None:
        raise refused(file.name, f"this item {SHARED}", line=node.value[place].start_mark.line + 1)
    return found
