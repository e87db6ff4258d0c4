"""Parts, sides, ends and whatever has a name are told apart as data: no code compares or searches their words.

Words of the job file and of a paper's record are theirs: a record is read back by the values of the kinds.
"""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

from jambs.parts.board.cuts import Edge, End
from jambs.parts.board.kinds import PartKind, Where, position_words
from jambs.sides import BoardEnd, Side

PACKAGE = Path(__file__).parents[1] / "jambs"
FILES = sorted(PACKAGE.rglob("*.py"))
SPOKEN = ("sides.py", "parts/board/kinds.py", "parts/words/cut_words.py")
"""Files whose work is the words."""
ELSEWHERE = {
    "sheets/key_pictures.py": 1,
    "sheets/cutting_lot.py": 1,
    "sheets/cutting_rest.py": 1,
    "sheets/cutting_money.py": 1,  # the same endings of names of boards that were bought before
    "job/reading/sentences.py": 1,
}
"""Words that mean something else where they stand, by file and count.

The anchor of a text in SVG is its start; a field of a class has a name; boards that were bought bear a name of their
own in the file of an earlier plan; a meaning that says from where to where is told along with its key.
"""
WORDS = {one.value for kinds in (PartKind, Where, Side, BoardEnd, End, Edge) for one in kinds} | {
    position_words(kind, side) for kind in PartKind for side in Side
}
PROSE = ("leg", "scribe", "back bevel", "45°", "miter 45°", "bevel 45°", "square both ends", "no such board listed")
"""Pieces of the words of parts that were looked for once."""
ASKED = ("startswith", "endswith", "removeprefix", "removesuffix", "find", "index", "count", "partition", "rpartition")


def is_word(node: ast.AST) -> bool:
    """Say whether a node is a word of parts, sides or ends, or holds one."""
    if isinstance(node, ast.Tuple | ast.List | ast.Set):
        return any(is_word(one) for one in node.elts)
    return isinstance(node, ast.Constant) and isinstance(node.value, str) and node.value.strip() in {*WORDS, *PROSE}


def is_table(node: ast.AST) -> bool:
    """Say whether a node is a dictionary written out with words as its keys."""
    return isinstance(node, ast.Dict) and any(is_word(key) for key in node.keys if key)


def is_compared(node: ast.AST) -> bool:
    """Say whether a node compares with a word, or compares the words of a part at all."""
    if not isinstance(node, ast.Compare):
        return False
    return any(is_word(one) or are_words_of_a_part(one) for one in (node.left, *node.comparators))


def are_words_of_a_part(node: ast.AST) -> bool:
    """Say whether a node is ``part.name`` or ``part.position``, or holds one."""
    if isinstance(node, ast.Tuple):
        return any(are_words_of_a_part(one) for one in node.elts)
    if not isinstance(node, ast.Attribute) or node.attr not in ("name", "position"):
        return False
    return ast.unparse(node.value).rpartition(".")[2] in ("part", "p")


SAID = ("name", "what", "words", "title", "position")
"""Attributes that hold words for people."""


def is_said(node: ast.AST) -> bool:
    """Say whether a node is an attribute that holds words for people."""
    return isinstance(node, ast.Attribute) and node.attr in SAID


def is_text(node: ast.AST) -> bool:
    """Say whether a node is words written out, or several."""
    if isinstance(node, ast.Tuple | ast.List | ast.Set):
        return any(is_text(one) for one in node.elts)
    return isinstance(node, ast.Constant) and isinstance(node.value, str) and node.value != ""


def is_steered(node: ast.AST) -> bool:
    """Say whether words for people decide something: compared with words written out, or looked into for some."""
    if isinstance(node, ast.Compare):
        sides = (node.left, *node.comparators)
        return any(map(is_said, sides)) and any(map(is_text, sides))
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr in ASKED:
        asked = node.func.value
        inner = asked.func.value if isinstance(asked, ast.Call) and isinstance(asked.func, ast.Attribute) else asked
        return is_said(asked) or is_said(inner)
    return False


def is_asked(node: ast.AST) -> bool:
    """Say whether a node looks into a text for a word, or looks a word up in a table written out."""
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute):
        if node.func.attr in ASKED:
            return any(is_word(one) for one in node.args)
        return node.func.attr == "get" and is_table(node.func.value)
    return isinstance(node, ast.Subscript) and is_table(node.value)


def is_kept_table(node: ast.AST) -> bool:
    """Say whether a table by words is given a name in capitals."""
    if not isinstance(node, ast.Assign | ast.AnnAssign) or node.value is None or not is_table(node.value):
        return False
    targets = node.targets if isinstance(node, ast.Assign) else [node.target]
    return all(isinstance(one, ast.Name) and one.id.isupper() for one in targets)


def is_matched(node: ast.AST) -> bool:
    """Say whether a case of a match is a word."""
    return isinstance(node, ast.MatchValue) and is_word(node.value)


def compared(code: str) -> list[int]:
    """Return the line of every comparison with a word, of every look into a text for one, of every table by words."""
    checks = (is_compared, is_asked, is_steered, is_kept_table, is_matched)
    nodes = (node for node in ast.walk(ast.parse(code)) if any(check(node) for check in checks))
    return [node.value.lineno if isinstance(node, ast.MatchValue) else getattr(node, "lineno", 0) for node in nodes]


@pytest.mark.parametrize("path", FILES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_no_code_compares_words_of_parts_sides_or_ends(path: Path) -> None:
    name = path.relative_to(PACKAGE).as_posix()
    if name in SPOKEN:
        return
    found = [f"{name}:{line}" for line in compared(path.read_text(encoding="utf-8"))]
    assert len(found) == ELSEWHERE.get(name, 0), found


@pytest.mark.parametrize(
    "code",
    [
        'part.name == "casing"',
        "(p.name, p.position) == (name, position)",
        '"left leg" != part.position',
        'side in ("left", "right")',
        'part.position.endswith("leg")',
        'part.ends.startswith("45°")',
        'any("scribe" in work for work in part.work)',
        '{"head": 1, "sill": 2}[side]',
        '{"apron": 1.8}.get(part.name)',
        'SIDE_OF = {"bottom": "sill"}',
        'match name:\n    case "stool":\n        pass',
        'leg.name == "hem"',
        'block.name in ("frame", "panel")',
        "layer.name.lower().startswith(name.lower())",
        "not block.name.startswith((*NAMES, *OTHERS))",
        'place.words.rpartition(", ")',
        'lap.what == "pan"',
    ],
)
def test_the_walk_sees_words_of_every_kind(code: str) -> None:
    assert compared(code)


@pytest.mark.parametrize("code", ["part.kind is PartKind.CASING", 'name = "casing"', 'record = {"head": 1}', "x == 1"])
def test_the_walk_lets_data_and_records_be(code: str) -> None:
    assert compared(code) == []
