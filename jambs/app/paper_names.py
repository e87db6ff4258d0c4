"""Names of the papers of one opening: the one place that knows which file is of which opening."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from jambs.issued.writing import PaperFacts

CUT_SHEET, INSTALL_SHEET, DRAWING, SOLID = "cut sheet", "install sheet", "drawing", "solid"
TEMPLATE = "template"
ALL_CUT, ALL_DRAWINGS = "all cut sheets.pdf", "all drawings.pdf"
"""The sheets of every opening in one file; they say what changed in their own issue."""
PARTS_JSON, PARTS_CSV = "parts.json", "parts.csv"
NAMING_BOARDS = frozenset(
    (CUT_SHEET, DRAWING, *(name.rpartition(".")[0] for name in (ALL_CUT, ALL_DRAWINGS, PARTS_JSON, PARTS_CSV)))
)
"""Kinds of papers of a build that say which board a part comes out of."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningPaper:
    """A paper that every opening has: its kind, its folder, and how its name ends behind the mark."""

    kind: str
    folder: str
    end: str

    def path(self, mark: str) -> str:
        """Return the path of the paper of an opening within the folder of papers."""
        return f"{self.folder}/{mark}{self.end}"


SHEET_TO_CUT = OpeningPaper(kind=CUT_SHEET, folder="cut sheets", end=".pdf")
SHEET_TO_INSTALL = OpeningPaper(kind=INSTALL_SHEET, folder="install sheets", end=".pdf")
SHOP_DRAWING = OpeningPaper(kind=DRAWING, folder="drawings", end=".dxf")
DRAWING_SHEETS = OpeningPaper(kind=DRAWING, folder="drawings", end=".pdf")
FLAT_DRAWING = OpeningPaper(kind=DRAWING, folder="drawings", end=" flat.dxf")
TEMPLATES = OpeningPaper(kind=TEMPLATE, folder="templates", end=".pdf")
STEP = OpeningPaper(kind=SOLID, folder="solids", end=".step")
GLB = OpeningPaper(kind=SOLID, folder="solids", end=".glb")
FIT_REPORT = OpeningPaper(kind=SOLID, folder="solids", end=" fit.csv")
DRAWINGS, SOLIDS = (SHOP_DRAWING, DRAWING_SHEETS, FLAT_DRAWING), (STEP, GLB, FIT_REPORT)
OPENING_PAPERS = (SHEET_TO_CUT, SHEET_TO_INSTALL, *DRAWINGS, TEMPLATES, *SOLIDS)


def opening_facts(marks: Iterable[str]) -> dict[str, PaperFacts]:
    """Return what is known of each paper of these openings, by path."""
    return {paper.path(mark): PaperFacts(kind=paper.kind, marks=(mark,)) for mark in marks for paper in OPENING_PAPERS}


def elevation_solid(name: str) -> str:
    """Return the path of the solids of an elevation."""
    return f"solids/elevation {name}.step"
