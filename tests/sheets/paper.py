"""Reads a printed PDF back with pypdf: its words, and the box of every run of text on the page.

The widths come from the font file by way of Pillow; neither shares code with the program that set the page.
"""

from __future__ import annotations

import io
import re
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Any

from PIL import ImageFont
from pypdf import PageObject, PdfReader

LENGTH = re.compile(r"-?(?:\d+ )?\d+(?:/\d+)?\"|-?\d+(?:\.\d+)? mm")
"""A length as it stands on paper: 4 11/16", 3/4", 36", 119.5 mm."""


@dataclass(frozen=True)
class Run:
    """One run of text on a page; x, y of its left end on the baseline from the lower left corner [pt]."""

    page: int
    x: float
    y: float
    width: float
    size: float
    text: str


def pages(pdf: bytes) -> list[PageObject]:
    return list(PdfReader(io.BytesIO(pdf)).pages)


def words(pdf: bytes) -> str:
    """Return all text of a PDF, every kind of space as one plain space."""
    text = " ".join(page.extract_text() for page in pages(pdf)).replace("\u200b", "")
    return re.sub(r"\s+", " ", text)


def lengths(text: str) -> set[str]:
    """Return every length that stands in a text."""
    return set(LENGTH.findall(re.sub(r"\s+", " ", text)))


@cache
def _font(name: str) -> ImageFont.FreeTypeFont:
    return ImageFont.truetype(str(files("jambs.data").joinpath("fonts", name)), 1000)


def _width(text: str, size: float, base_font: str) -> float:
    name = "LiberationSans-Bold.ttf" if "Bold" in base_font else "LiberationSans-Regular.ttf"
    return float(_font(name).getlength(text)) * size / 1000


def runs(pdf: bytes) -> list[Run]:
    """Return every run of text of a PDF with its box."""
    found: list[Run] = []
    for number, page in enumerate(pages(pdf)):

        def visit(text: str, cm: Any, tm: Any, font: Any, size: float, number: int = number) -> None:
            plain = text.replace("\n", "").replace("\u200b", "").strip()
            if plain and font:
                scale = abs(tm[0] * cm[0]) or 1.0
                x = tm[4] * cm[0] + tm[5] * cm[2] + cm[4]
                y = tm[4] * cm[1] + tm[5] * cm[3] + cm[5]
                points = size * scale
                found.append(Run(number, x, y, _width(plain, points, font["/BaseFont"]), points, plain))

        page.extract_text(visitor_text=visit)
    return found


def collisions(found: list[Run]) -> list[tuple[Run, Run]]:
    """Return pairs of runs whose letters lie over each other: capitals are about 0.7 of the size high."""
    return [
        (one, two)
        for at, one in enumerate(found)
        for two in found[at + 1 :]
        if one.page == two.page
        and min(one.x + one.width, two.x + two.width) - max(one.x, two.x) > 1.0
        and min(one.y + 0.7 * one.size, two.y + 0.7 * two.size) - max(one.y, two.y) > 0.5
    ]
