"""The square code of a label: what it says, the modules that are printed, and that they are large enough to be read.

At least 0.25 mm a module for a phone: common practice, no source. The decoding of a printed page was tried by hand.
"""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
import segno
from paper import words
from pypdf import PdfReader

from jambs.face import make_kits, read_job
from jambs.job import Job
from jambs.parts.kit.cut_kit import CutKit
from jambs.sheets.label_codes import QUIET, code_text, label_code
from jambs.sheets.labels import STOCK, LabelStock, labels_data, labels_pdf

GARDEN = Path(__file__).parents[2] / "examples" / "garden-studio"
TEXT = "W01-1\nissue 12 · 7F3A\nHarbour house"


@cache
def house() -> tuple[Job, tuple[CutKit, ...]]:
    job = read_job(GARDEN)
    return job, make_kits(job)


def modules(svg: str) -> set[tuple[int, int]]:
    """Return the dark modules of a code's picture: rows of strokes, each half a module down (column, row)."""
    (path,) = re.findall(r' d="([^"]+)"', svg)
    found, (x, y) = set(), (0.0, 0.0)
    for letter, numbers in re.findall(r"([Mmh])([^Mmh]*)", path):
        values = [float(one) for one in re.findall(r"-?\d*\.?\d+", numbers)]
        if letter == "h":
            found |= {(round(x) + at, round(y - 0.5)) for at in range(round(values[0]))}
            x += values[0]
        else:
            x, y = (values[0], values[1]) if letter == "M" else (x + values[0], y + values[1])
    return found


def test_the_picture_is_the_code_of_the_text() -> None:
    made = label_code(TEXT)
    matrix = segno.make(TEXT, error="m", micro=False, boost_error=False).matrix
    dark = {(x + QUIET, y + QUIET) for y, row in enumerate(matrix) for x, one in enumerate(row) if one}
    assert modules(made.svg) == dark
    assert made.modules == len(matrix) + 2 * QUIET
    assert modules(label_code(TEXT.replace("12", "13")).svg) != dark


def test_a_label_says_mark_issue_and_job() -> None:
    job, kits = house()
    data = labels_data(kits, job, STOCK["letter"], issues={"W1": "issue 3 · 7F3A"})
    for one in data["sheets"][0][:12]:
        assert one["code"]["svg"] == label_code(f"{one['mark']}\nissue 3 · 7F3A\n{job.name}").svg
    assert code_text("W1-1", "not issued", "Studio") == "W1-1\nnot issued\nStudio"
    (first, *_) = labels_data(kits, job, STOCK["letter"])["sheets"][0]
    assert first["code"]["svg"] == label_code(f"W1-1\nnot issued\n{job.name}").svg


def dark_width(stock: LabelStock) -> list[float]:
    """Return the lengths of the code's strokes on the first page [pt], in the matrix in force there."""
    job, kits = house()
    found: list[float] = []
    at: list[float] = []

    def visit(operator: bytes, operands: Any, cm: Any, tm: Any) -> None:
        nonlocal at
        if operator == b"m":
            at = [float(one) for one in operands]
        elif operator == b"l" and at and float(operands[1]) == at[1]:
            found.append(abs(float(operands[0]) - at[0]) * abs(cm[0]))

    PdfReader(BytesIO(labels_pdf(kits, job, stock))).pages[0].extract_text(visitor_operand_before=visit)
    return [one for one in found if one > 0]


@pytest.mark.parametrize("paper", ["letter", "A4"])
def test_no_module_is_too_small_for_a_phone(paper: str) -> None:
    assert min(dark_width(STOCK[paper])) >= 0.25 / 25.4 * 72


def test_a_label_too_low_for_a_code_has_none() -> None:
    low = replace(STOCK["letter"], height=0.4, pitch_down=0.4)
    job, kits = house()
    (page,) = PdfReader(BytesIO(labels_pdf(kits, job, low))).pages
    assert "W1-1" in page.extract_text()
    assert "face edge" not in page.extract_text()
    assert len(dark_width(low)) < 100  # the strokes of a code are some hundreds


@pytest.mark.parametrize("paper", ["letter", "A4"])
def test_an_arrow_points_to_the_face_edge(paper: str) -> None:
    job, kits = house()
    assert words(labels_pdf(kits, job, STOCK[paper])).count("face edge") == 12
