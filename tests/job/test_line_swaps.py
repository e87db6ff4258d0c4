"""Lines put back: from one state of a file to another, each swap where it stands once only."""

from __future__ import annotations

import random

import pytest

from jambs.job.editing.file_text import EditRefused, FileText
from jambs.job.editing.line_swaps import SwapLines, swaps_between, with_lines_swapped


def file_of(text: str) -> FileText:
    return FileText(name="job.yaml", content=text.encode())


def test_a_line_is_put_back_where_it_stands_and_line_ends_stay() -> None:
    before, after = file_of("\ufeffa\r\nb\r\nc\r\n"), file_of("\ufeffa\r\nB\r\nc\r\n")
    (swap,) = swaps_between(before, after)
    assert swap == SwapLines(file="job.yaml", old=("a\r", "b\r", "c\r", ""), new=("a\r", "B\r", "c\r", ""))
    assert with_lines_swapped(before, swap).content == after.content


def test_it_names_as_many_lines_as_tell_its_place() -> None:
    alike = "x\n" * 20
    before, after = file_of(f"first\n{alike}b\n{alike}"), file_of(f"first\n{alike}b\n{alike}".replace("first", "1st"))
    (swap,) = swaps_between(before, after)
    assert swap.old == ("first", "x", "x", "x")
    longer = file_of(f"first\n{alike}".replace("x\n", "y\n", 1))
    last = file_of(f"first\ny\n{alike}")  # one line more somewhere among its like
    made = longer
    for one in swaps_between(longer, last):
        made = with_lines_swapped(made, one)
    assert made == last


def test_it_is_refused_where_the_lines_are_gone_or_stand_twice() -> None:
    for text in ("a\nc\n", "a\nb\na\nb\n"):
        with pytest.raises(EditRefused, match="not there any more"):
            with_lines_swapped(file_of(text), SwapLines(file="job.yaml", old=("a", "b"), new=("a",)))


def test_any_two_texts_lead_to_each_other() -> None:
    chance = random.Random(7)
    for _ in range(300):
        one, other = (
            "".join(chance.choice(("a\n", "b\n", "\n", "c")) for _ in range(chance.randint(0, 12))) for _ in "12"
        )
        made = file_of(one)
        for swap in swaps_between(file_of(one), file_of(other)):
            made = with_lines_swapped(made, swap)
        assert made.text == other
