"""The published tables in tests/authorities, as they are; lines that start with # say where the numbers are from."""

from __future__ import annotations

import csv
from fractions import Fraction
from pathlib import Path

FOLDER = Path(__file__).parents[1] / "authorities"


def table(name: str) -> list[dict[str, str]]:
    """Return the rows of a published table."""
    lines = (FOLDER / name).read_text(encoding="utf-8").splitlines()
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def inches(text: str) -> float:
    """Read ``1-1/4`` without the program's own reader."""
    return float(sum(Fraction(part) for part in text.split("-")))
