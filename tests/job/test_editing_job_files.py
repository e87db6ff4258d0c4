"""Edits of a job file: exactly what is asked for becomes another, every other byte stays."""

from __future__ import annotations

import difflib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jambs.job.editing.edit_yaml import edited
from jambs.job.editing.edits import (
    Edit,
    InsertItem,
    InsertKey,
    MoveItem,
    Plain,
    RemoveItem,
    RemoveKey,
    SetValue,
    edited_value,
    location_of,
)
from jambs.job.editing.file_text import ChangedLine, EditRefused, FileText, LineFate, changed_lines
from jambs.job.reading.faults import Location
from jambs.job.reading.tree import TreePiece, composed, grown

EXAMPLES = Path(__file__).parents[2] / "examples"
SMALL = """\
# a small house
job: Söller über dem Hof   # the name, "as said"
units: inch

walls:
  main:
    layers:               # inside -> outside
      - gypsum board 1/2
      # the frame
      - {material: stud 2x6, spacing: 16} # a\ttab stands in this

      - plywood 1/2

lengths: [8', 10' , 12']
notes: |
  two lines
  of text
openings:
  - mark: W01     # the kitchen's
    room: Kitchen
    position: {share: 1/2}
  - mark: W02
    room: "Bed \\"one\\""
    frame: 30 x 48
"""


def file_of(text: str) -> FileText:
    return FileText(name="job.yaml", content=text.encode())


def tree_of(file: FileText) -> TreePiece:
    return grown(composed(file.text, file.name), file.name)[0]


def scalars(value: Any, path: Location = ()) -> Iterator[Location]:
    if isinstance(value, dict | list):
        steps = value.items() if isinstance(value, dict) else enumerate(value)
        for step, one in steps:
            yield from scalars(one, (*path, step))
    else:
        yield path


def changed(before: FileText, after: FileText) -> list[str]:
    """Return the lines that are not in both, as a difference writes them."""
    old, new = before.text.splitlines(keepends=True), after.text.splitlines(keepends=True)
    return [line for line in difflib.ndiff(old, new) if line[0] in "+-"]


def lines_changed(before: FileText, after: FileText) -> list[int]:
    pairs = enumerate(zip(before.content.split(b"\n"), after.content.split(b"\n"), strict=True), start=1)
    return [number for number, (one, other) in pairs if one != other]


# ---- every scalar of the examples


EVERY = [
    ("garden-studio", 3, False),
    ("garden-studio", 5, True),
    ("harbour-house", 127, False),
    ("hillside-house", 101, True),
]
"""An example, each how manieth scalar of it (all were tried once), and whether its lines are made to end in CR LF."""


@pytest.mark.parametrize(("example", "every", "is_crlf"), EVERY)
def test_a_scalar_of_an_example_changes_its_line_alone(example: str, every: int, is_crlf: bool) -> None:
    content = (EXAMPLES / example / "job.yaml").read_bytes()
    file = FileText(name="job.yaml", content=content.replace(b"\n", b"\r\n") if is_crlf else content)
    tree = tree_of(file)
    for path in list(scalars(tree.root))[::every]:
        new = edited(file, SetValue(path=path, value='7 3/8"'))
        assert lines_changed(file, new) == [tree.lines[path]]
        assert new.text.count("\r\n") == file.text.count("\r\n")


@given(
    place=st.integers(0, 40),
    value=st.text(st.characters(exclude_categories=("Cs", "Cc")), max_size=30)
    | st.sampled_from(["no", "~", "a: b #c"]),
)
@settings(max_examples=25)
def test_any_text_is_read_back_as_it_was_given_and_the_rest_stays(place: int, value: str) -> None:
    file = file_of(SMALL)
    places = list(scalars(tree_of(file).root))
    path = places[place % len(places)]
    try:
        new = edited(file, SetValue(path=path, value=value))
    except EditRefused as refusal:
        assert "\ufeff" in value or any(ord(letter) in (0xFFFE, 0xFFFF) or ord(letter) > 0xFFFF for letter in value)
        assert "cannot be written" in str(refusal)
        return
    wanted = edited_value(tree_of(file).root, SetValue(path=path, value=value))
    assert tree_of(new).root == wanted
    assert len(changed(file, new)) <= 2 + 2 * ("notes" in path)  # a text of two lines becomes one


def test_a_byte_order_mark_and_a_missing_last_line_end_stay() -> None:
    content = ("\ufeff" + SMALL.rstrip("\n")).encode()
    file = FileText(name="job.yaml", content=content)
    new = edited(file, SetValue(path=("openings", 1, "frame"), value="36 x 48"))
    assert new.content == content.replace(b"30 x 48", b"36 x 48")


# ---- each edit, by its lines


SEEN: list[tuple[Edit, list[str]]] = [
    (
        SetValue(path=("openings", 0, "position"), value="choose"),
        ["-    position: {share: 1/2}\n", "+    position: choose\n"],
    ),
    (
        SetValue(path=("walls", "main", "layers", 0), value={"material": "gypsum board", "thickness": "5/8"}),
        ["-      - gypsum board 1/2\n", "+      - {material: gypsum board, thickness: 5/8}\n"],
    ),
    (SetValue(path=("notes",), value="none"), ["- notes: |\n", "-   two lines\n", "-   of text\n", "+ notes: none\n"]),
    (
        SetValue(path=("lengths", 1), value="9', cut"),
        ["- lengths: [8', 10' , 12']\n", "+ lengths: [8', \"9', cut\" , 12']\n"],
    ),
    (
        InsertKey(path=("openings", 0), key="position_note", value="by eye", after="room"),
        ["+     position_note: by eye\n"],
    ),
    (
        InsertKey(path=("openings", 0, "position"), key="of", value="wall, main"),
        ["-     position: {share: 1/2}\n", '+     position: {share: 1/2, of: "wall, main"}\n'],
    ),
    (InsertKey(path=(), key="measures", value="measures.csv", after="units"), ["+ measures: measures.csv\n"]),
    (RemoveKey(path=("openings", 0, "room")), ["-     room: Kitchen\n"]),
    (
        RemoveKey(path=("openings", 1, "mark")),
        ["-   - mark: W02\n", '-     room: "Bed \\"one\\""\n', '+   - room: "Bed \\"one\\""\n'],
    ),
    (
        RemoveItem(path=("walls", "main", "layers"), at=1),
        ["-       # the frame\n", "-       - {material: stud 2x6, spacing: 16} # a\ttab stands in this\n"],
    ),
    (RemoveItem(path=("lengths",), at=1), ["- lengths: [8', 10' , 12']\n", "+ lengths: [8', 12']\n"]),
    (RemoveItem(path=("lengths",), at=2), ["- lengths: [8', 10' , 12']\n", "+ lengths: [8', 10']\n"]),
    (InsertItem(path=("walls", "main", "layers"), at=3, value="EPS 2"), ["+       - EPS 2\n"]),
    (
        InsertItem(path=("lengths",), at=0, value="6'"),
        ["- lengths: [8', 10' , 12']\n", "+ lengths: [6', 8', 10' , 12']\n"],
    ),
    (
        InsertItem(path=("openings",), at=1, value={"mark": "W03", "room": "Hall"}),
        ["+   - mark: W03\n", "+     room: Hall\n"],
    ),
    (MoveItem(path=("lengths",), at=0, to=2), ["- lengths: [8', 10' , 12']\n", "+ lengths: [10', 12' , 8']\n"]),
]


@pytest.mark.parametrize(("edit", "lines"), SEEN)
@pytest.mark.parametrize("line_end", ["\n", "\r\n"])
def test_an_edit_changes_these_lines(edit: Edit, lines: list[str], line_end: str) -> None:
    file = file_of(SMALL.replace("\n", line_end))
    new = edited(file, edit)
    seen = [line.replace("\r\n", "\n") for line in changed(file, new)]
    assert sorted(line[0] + line[1:].strip() for line in seen) == sorted(line[0] + line[1:].strip() for line in lines)
    assert new.text.count("\n") == new.text.count(line_end)


def test_layers_change_places_with_their_comments_and_the_empty_line_stays() -> None:
    file = file_of(SMALL)
    new = edited(file, MoveItem(path=("walls", "main", "layers"), at=1, to=2))
    assert new.text == SMALL.replace(
        "      # the frame\n      - {material: stud 2x6, spacing: 16} # a\ttab stands in this\n\n      - plywood 1/2\n",
        "      - plywood 1/2\n\n      # the frame\n      - {material: stud 2x6, spacing: 16} # a\ttab stands in this\n",
    )
    assert edited(new, MoveItem(path=("walls", "main", "layers"), at=2, to=1)) == file


def test_a_layer_stack_that_is_new_stands_on_lines_of_its_own() -> None:
    layers: list[Plain] = [
        "gypsum board 1/2",
        {"material": "stud 2x6", "spacing": "16"},
        "plywood 1/2",
        "clapboards on furring strips",
    ]
    new = edited(file_of(SMALL), InsertKey(path=("walls",), key="gable", value={"layers": layers, "note": "no buck"}))
    added = "  gable:\n    layers:\n      - gypsum board 1/2\n      - {material: stud 2x6, spacing: 16}\n"
    assert (
        added in new.text
        and "      - plywood 1/2\n      - clapboards on furring strips\n    note: no buck\n" in new.text
    )


# ---- what is refused, with a sentence


@pytest.mark.parametrize(
    ("text", "edit", "said"),
    [
        ("a: &one 5\nb: 6\n", SetValue(path=("b",), value="7"), "job.yaml:1: an anchor (&) stands here"),
        ("a: &one 5\nb: *one\n", SetValue(path=("a",), value="7"), "an anchor (&) stands here"),
        ("a: !!int 5\n", SetValue(path=("a",), value="7"), "a tag (!) stands here"),
        ("a: 5\n", SetValue(path=("b",), value="7"), "there is no b; there is a; nothing is changed"),
        ("a: 5\n", InsertKey(path=(), key="a", value="7"), "a is there already"),
        ("a: 5\n", RemoveKey(path=("a",)), "is the only one there"),
        ("a:\n  - 5\n", RemoveItem(path=("a",), at=0), "is the only one there"),
        ("a:\n  - - 5\n    - 6\n", RemoveItem(path=("a", 0), at=0), "shares its line with another list"),
        ("a: [5]\n", RemoveItem(path=("a",), at=1), "there is no place 1 in a list of 1"),
        (
            "a:\n  - x: 1\n    # of y\n    y: 2\n",
            RemoveKey(path=("a", 0, "x")),
            "has a comment between it and the next",
        ),
        ("a: 5\n", SetValue(path=("a",), value="\ud800"), "half a letter"),
        ("a: 5\n", SetValue(path=("a",), value="bell \a"), ""),
        ("a: 1\na: 2\nb: 3\n", RemoveKey(path=("a",)), "more than this value would become another"),
    ],
)
def test_what_cannot_be_changed_alone_is_refused(text: str, edit: Edit, said: str) -> None:
    if not said:
        assert tree_of(edited(file_of(text), edit)).root == {"a": "bell \a"}
        return
    with pytest.raises(EditRefused) as told:
        edited(file_of(text), edit)
    assert said in str(told.value)


def test_a_key_that_is_given_twice_is_changed_where_it_counts() -> None:
    """Of a key that is given twice the first counts, and is told as a fault: the second stays as it is."""
    new = edited(file_of("a: 1\na: 2\n"), SetValue(path=("a",), value="3"))
    assert new.text == "a: 3\na: 2\n"


# ---- ways, lines to show


def test_a_way_in_words_leads_where_a_fault_would_point() -> None:
    root = tree_of(file_of(SMALL)).root
    assert location_of(root, "openings[W02].position") == ("openings", 1, "position")
    assert location_of(root, "walls.main.layers[stud 2x6].spacing") == ("walls", "main", "layers", 1, "spacing")
    assert location_of(root, "walls.main.layers[2]") == ("walls", "main", "layers", 2)


def test_what_changed_is_shown_with_two_lines_around_it() -> None:
    file = file_of(SMALL)
    new = edited(file, SetValue(path=("units",), value="mm"))
    (shown,) = changed_lines(file.content, new.content)
    assert shown[2:4] == (
        ChangedLine(kind=LineFate.GONE, number=3, text="units: inch"),
        ChangedLine(kind=LineFate.NEW, number=3, text="units: mm"),
    )
    assert [line.kind for line in shown] == [LineFate.KEPT] * 2 + [LineFate.GONE, LineFate.NEW] + [LineFate.KEPT] * 2
    assert list(changed_lines(file.content, file.content)) == []
