"""What the lists of a house share: cells that have nothing to say, cautions with the parts they are said of."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.parts.kit.cautions import Beside
from jambs.parts.kit.cut_kit import CutKit
from jambs.sheets.marks import part_runs
from jambs.values import Record

NONE = "–"
"""What stands in a cell that has nothing to say."""


def parts_of(opening: Record, where: str) -> list[Record]:
    """Return the parts of an opening inside, outside or of its buck."""
    return [part for part in opening["parts"] if part["where"] == where]


def text_of(size: Record | None) -> str:
    """Return a size as it is printed."""
    return size["text"] if size else NONE


def cautions_beside(kits: Sequence[CutKit], *beside: Beside) -> list[str]:
    """Return the lines of caution of some work, each once, with all the parts that it is said of.

    Who lifts the windows is said for the whole house.
    """
    found: dict[str, list[str]] = {}
    for kit in kits:
        for work in beside:
            for one in kit.cautions:
                if one.beside is work and not one.is_of_lifting:
                    found.setdefault(one.words, []).extend(one.marks)
    return [f"{words}: {part_runs(marks)}." if marks else words for words, marks in found.items()]
