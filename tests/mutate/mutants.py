"""Mutants of a file: one small change of its source each, as a typing mistake would make it.

Words, annotations, decorators and assertions (they are there for the type checker; ``strict`` of a ``zip`` is one too)
are left alone; what remains is arithmetic, comparisons, conditions and numbers.
"""

from __future__ import annotations

import ast
import copy
from collections.abc import Iterator
from dataclasses import dataclass

COMPARISONS: dict[type[ast.cmpop], tuple[type[ast.cmpop], ...]] = {
    ast.Lt: (ast.LtE, ast.GtE),
    ast.LtE: (ast.Lt, ast.Gt),
    ast.Gt: (ast.GtE, ast.LtE),
    ast.GtE: (ast.Gt, ast.Lt),
    ast.Eq: (ast.NotEq,),
    ast.NotEq: (ast.Eq,),
    ast.Is: (ast.IsNot,),
    ast.IsNot: (ast.Is,),
    ast.In: (ast.NotIn,),
    ast.NotIn: (ast.In,),
}
OPERATIONS: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub,
    ast.Sub: ast.Add,
    ast.Mult: ast.Div,
    ast.Div: ast.Mult,
    ast.FloorDiv: ast.Div,
}
CALLS = {"min": "max", "max": "min", "any": "all", "all": "any", "ceil": "floor", "floor": "ceil", "sin": "cos"}
CALLS |= {"cos": "sin", "whole_up": "whole_down", "whole_down": "whole_up"}


TOLERANCES = ("SAME_", "ROUND_OFF", "OFF_GRID", "TOUCH", "HALF_64TH")
"""Nothing stands exactly on a limit that a tolerance has moved: whether the limit itself is in is not asked."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Mutant:
    """One change of one file: where it is, what stood there and what stands there now."""

    path: str
    line: int
    at: int
    end: int
    before: str
    after: str

    @property
    def key(self) -> str:
        """Name it for the record of a run."""
        return f"{self.path}:{self.at}: {self.before} → {self.after}"

    @property
    def words(self) -> str:
        """Say where it is and what it changes."""
        return f"{self.path}:{self.line}: {self.before} → {self.after}"

    def applied(self, source: bytes) -> bytes:
        """Return the source of the file with the change in it."""
        return source[: self.at] + f"({self.after})".encode() + source[self.end :]


def mutants(path: str, source: bytes) -> list[Mutant]:
    """Return every mutant of a file, in the order of its source."""
    starts = [0]
    for text in source.splitlines(keepends=True):
        starts.append(starts[-1] + len(text))
    found = []
    for node in _nodes(ast.parse(source)):
        line, end_line, end_column = node.lineno, node.end_lineno, node.end_col_offset
        assert end_line is not None and end_column is not None
        at, end = starts[line - 1] + node.col_offset, starts[end_line - 1] + end_column
        for changed in _changes(node):
            before, after = ast.unparse(node), ast.unparse(changed)
            found.append(Mutant(path=path, line=line, at=at, end=end, before=before, after=after))
    return sorted(found, key=lambda one: (one.at, one.after))


def _nodes(tree: ast.AST) -> Iterator[ast.expr]:
    """Walk the expressions that do something: no annotations, decorators, words or formats."""
    for name, value in ast.iter_fields(tree):
        if name in ("annotation", "returns", "decorator_list", "bases", "format_spec", "type_params"):
            continue
        for child in value if isinstance(value, list) else [value]:
            if not isinstance(child, ast.AST) or _is_left_alone(child):
                continue
            if isinstance(child, ast.expr):
                yield child
            yield from _nodes(child)


def _is_left_alone(node: ast.AST) -> bool:
    """Say whether a node changes nothing that is worked out: it asserts, or names a type."""
    is_strict = isinstance(node, ast.keyword) and node.arg == "strict"
    return is_strict or isinstance(node, ast.Assert) or _is_alias(node)


def _is_alias(node: ast.AST) -> bool:
    """Say whether a statement only names a type, ``Point = tuple[float, float]``, or a name of the typing kind."""
    return isinstance(node, ast.Assign) and isinstance(node.value, ast.Subscript | ast.Name)


def _changes(node: ast.expr) -> Iterator[ast.expr]:
    if isinstance(node, ast.Compare):
        for place, operator in enumerate(node.ops):
            others = COMPARISONS[type(operator)]
            is_loose = any(name in ast.unparse(node) for name in TOLERANCES)
            for other in others[1:] if is_loose and len(others) > 1 else others:
                yield _changed(node, "ops", [*node.ops[:place], other(), *node.ops[place + 1 :]])
    elif isinstance(node, ast.BinOp) and type(node.op) in OPERATIONS and not _is_text(node):
        yield _changed(node, "op", OPERATIONS[type(node.op)]())
    elif isinstance(node, ast.BoolOp):
        yield _changed(node, "op", ast.Or() if isinstance(node.op, ast.And) else ast.And())
    elif isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub | ast.Not):
        yield node.operand
    elif isinstance(node, ast.IfExp):
        yield ast.IfExp(test=node.test, body=node.orelse, orelse=node.body)
    elif isinstance(node, ast.Constant) and isinstance(node.value, bool):
        yield ast.Constant(not node.value)
    elif isinstance(node, ast.Constant) and isinstance(node.value, int | float):
        yield ast.Constant(node.value + 1)
    elif isinstance(node, ast.Name) and node.id in CALLS and isinstance(node.ctx, ast.Load):
        yield ast.Name(CALLS[node.id], ast.Load())
    elif isinstance(node, ast.Attribute) and node.attr in CALLS:
        yield _changed(node, "attr", CALLS[node.attr])


def _is_text(node: ast.BinOp) -> bool:
    return any(
        isinstance(one, ast.JoinedStr) or (isinstance(one, ast.Constant) and isinstance(one.value, str))
        for one in (node.left, node.right)
    )


def _changed(node: ast.expr, field: str, value: object) -> ast.expr:
    found = copy.copy(node)
    setattr(found, field, value)
    return found
