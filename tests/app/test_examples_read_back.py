"""The printed drawings of all examples read back: sizes and dimensions of every opening are those of parts.json."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Sequence
from functools import cache
from itertools import combinations_with_replacement
from pathlib import Path
from typing import Any

import pytest
from example_papers import example_papers
from pypdf import PdfReader
from sizes_from_record import sizes_in
from test_drawings_read_back import LENGTH, MILLIMETER, size_of, sizes_in_table

EXAMPLES = sorted(
    path.name for path in (Path(__file__).parents[2] / "examples").iterdir() if (path / "job.yaml").exists()
)
MOST_VIEWS = 20
"""Numbers up to here may be those of a view or a sheet, in a circle; millimeters have no unit by which to tell them."""
RUN_TOGETHER = {
    "G4": ('3 1/8"',),
    "G5": ('2 1/8"',),
    "W01": ('3 1/4"',),
    "W02": ('4 1/8"',),
    "W08": ('4 1/4"',),
    "W09": ('4 1/4"',),
    "W11": ('5 1/8"',),
}
"""Lines of which the first number is that of a view, as the text of the PDF has them."""

LONGEST_ROW = 3
"""Lengths of a row that are looked for to add up."""


def openings(papers: Path) -> Iterator[tuple[dict[str, Any], list[str], str, float]]:
    """Yield the record of each opening, the lines on its drawings, its unit, and half a step of the job's grid [in].

    So much a printed length differs at most from a size that an angle made.
    """
    record = json.loads((papers / "parts.json").read_text(encoding="utf-8"))
    units = record["units"]
    half = record["grid"]["value"] / 2 * (MILLIMETER if units == "mm" else 1.0)
    for opening in record["openings"]:
        yield opening, lines_on(papers / "drawings" / f"{opening['mark']}.pdf"), units, half


@cache
def lines_on(pdf: Path) -> list[str]:
    return [line.strip() for page in PdfReader(pdf).pages for line in page.extract_text().splitlines()]


def unknown_dimensions(
    opening: dict[str, Any], lines: Sequence[str], units: str, tolerance: float, beside: Iterable[dict[str, Any]]
) -> list[str]:
    """Return the lengths on the drawings of an opening that do not follow from its record, nor from those beside it.

    On drawings of openings trimmed as one stand sizes of boards that are in the record of the leftmost.
    """
    sizes = {size for one in (opening, *beside) for size in sizes_in(one, 25.4 if units == "mm" else 1.0)}
    said = [line for line in lines if LENGTH[units].fullmatch(line) and line != opening["issue"]["code"]]
    said = [one for one in said if one not in RUN_TOGETHER.get(opening["mark"], ())]
    printed = {size_of(one, units) for one in said}
    if units == "mm":
        said = [one for one in said if float(one) > MOST_VIEWS]
    assert len(said) > 10
    known = {one for one in printed if is_near(one, sizes, tolerance)}
    unknown = [one for one in said if size_of(one, units) not in known]
    return [
        one
        for one in unknown
        if not (is_near(size_of(one, units), sizes, 2 * tolerance) and gives_way(size_of(one, units), known))
    ]


def is_near(printed: float, sizes: Iterable[float], tolerance: float) -> bool:
    return any(abs(printed - size) <= tolerance + 1e-9 for size in sizes)


def gives_way(printed: float, known: Iterable[float]) -> bool:
    """Say whether a length adds up with others that are right to one that is: in such a row one gives way by a step."""
    rows = (row for count in range(1, LONGEST_ROW) for row in combinations_with_replacement(sorted(known), count))
    sums = {round(printed + sum(row), 6) for row in rows}
    return any(round(one, 6) in sums for one in known if one > printed)


@pytest.mark.parametrize("example", EXAMPLES)
def test_printed_drawings_of_an_example_have_the_sizes_of_parts_json(
    example: str, tmp_path_factory: pytest.TempPathFactory
) -> None:
    papers = example_papers(example, tmp_path_factory).folder
    records = {opening["mark"]: opening for opening, *_ in openings(papers)}
    for opening, lines, units, tolerance in openings(papers):
        assert_parts_are_listed(opening, lines, units, tolerance)
        text = " ".join(lines)
        for key in ("clear_opening", "rough_opening"):
            for side in ("width", "height"):
                assert opening[key][side]["text"].removesuffix(" mm") in text, (opening["mark"], key, side)
        beside = [records[one["mark"]] for one in (opening.get("trimmed_as_one") or {}).get("openings", ())]
        assert unknown_dimensions(opening, lines, units, tolerance, beside) == [], opening["mark"]


def assert_parts_are_listed(opening: dict[str, Any], lines: list[str], units: str, tolerance: float) -> None:
    """Find thickness, width and length of every part behind its mark; of a bent one those of its strips stand first."""
    unit = 25.4 if units == "mm" else 1.0
    for part in opening["parts"]:
        found = sizes_in_table(lines, part["mark"], units)
        assert found, part["mark"]
        if "plies" not in part.get("glue_up", {}):
            wanted = tuple(part[side]["value"] / unit for side in ("thickness", "width", "length"))
            assert found[0] == pytest.approx(wanted, abs=tolerance + 1e-9), part["mark"]
