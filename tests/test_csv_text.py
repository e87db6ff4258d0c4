"""No cell of a table starts a formula, every number stays one, and what was guarded is read back as it was."""

from __future__ import annotations

import csv
import io

import pytest

from jambs.csv_text import csv_text, guarded, unguarded

HARMFUL = ["=1+1", "+cmd|' /C calc'!A0", "-2+3", "@SUM(A1)", " =1", "\t=1", "\rx", "＝1", "-Attic", "-2-3", "+a1"]
HARMLESS = [
    "Attic",
    "-1/8",
    "+1 1/16",
    "-3",
    "-3.5",
    "-1.2e-05",
    '-1 1/8"',
    "-2'-11 1/2\"",
    "-12 mm",
    "-",
    "–",
    "",
    "A-1",
]


@pytest.mark.parametrize("text", HARMFUL)
def test_a_text_that_would_start_a_formula_is_guarded(text: str) -> None:
    assert guarded(text) == f"'{text}"
    assert unguarded(str(guarded(text))) == text


@pytest.mark.parametrize("text", HARMLESS)
def test_numbers_lengths_and_plain_texts_stay(text: str) -> None:
    assert guarded(text) == text
    assert unguarded(text) == text


@pytest.mark.parametrize("number", [-1, -0.5, 3, None, True])
def test_numbers_are_not_touched(number: object) -> None:
    assert guarded(number) is number


def test_a_quote_that_guards_nothing_stays() -> None:
    assert unguarded("'twas") == "'twas"


def test_the_text_reads_back_as_it_was() -> None:
    text = csv_text([["a", "=1"], [-2.5, '35 1/2" x 47"']])
    rows = list(csv.reader(io.StringIO(text)))
    assert rows == [["a", "'=1"], ["-2.5", '35 1/2" x 47"']]
