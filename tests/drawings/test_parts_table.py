"""The parts table of a drawing: pieces round a shape that are sawn alike share a row, every other part has its own."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest
from rounds import rounded_inside

from jambs.drawings.elements.paper import scales_of
from jambs.drawings.views.table import parts_tables
from jambs.face import make_kits, read_job
from jambs.parts.board.part import Part

MARKS = re.compile(r"(?:W1-\d+(?: to W1-\d+)?(?:, )?)+")


def rows_of(shape: Any) -> tuple[list[str], tuple[Part, ...]]:
    """Return what stands in the column of marks, and the parts of an opening."""
    made = rounded_inside(shape)
    scale = scales_of(made.job.units)[0]
    (view,) = parts_tables(made.kit.parts, grid=made.job.shop.grid, scale=scale, tallest=40.0)
    said = [" ".join(text.lines) for text in view.texts]
    return [one for one in said if MARKS.fullmatch(one)], made.kit.parts


def marks_in(row: str) -> list[str]:
    """Return the marks that ``W1-1 to W1-3, W1-6`` stands for."""
    found: list[str] = []
    for some in row.split(", "):
        first, _, last = some.partition(" to ")
        ends = [int(one.rpartition("-")[2]) for one in (first, last or first)]
        found += [f"W1-{number}" for number in range(ends[0], ends[1] + 1)]
    return found


@pytest.mark.parametrize("shape", ["octagon", "full round", {"kind": "raked", "left": 24, "right": 36}])
def test_every_mark_stands_once_and_parts_of_a_row_have_one_size(shape: Any) -> None:
    rows, parts = rows_of(shape)
    assert sorted(mark for row in rows for mark in marks_in(row)) == sorted(part.mark for part in parts)
    size = {part.mark: (part.name, round(part.width, 6), round(part.length, 6)) for part in parts}
    assert all(len({size[mark] for mark in marks_in(row)}) == 1 for row in rows)


def test_pieces_that_are_sawn_alike_share_a_row_and_those_of_other_lengths_do_not() -> None:
    """By hand: a regular octagon has eight jambs and eight casings, of them two legs each that are told by side."""
    rows, parts = rows_of("octagon")
    assert len(parts) == 16 and len(rows) < len(parts)
    assert max(len(marks_in(row)) for row in rows) == 6
    raked, _ = rows_of({"kind": "raked", "left": 24, "right": 36})
    assert all(len(marks_in(row)) == 1 for row in raked)


def test_ends_that_are_square_are_told_once_whoever_makes_the_part() -> None:
    """Returns of a drywall crew have *square* in their column; it stood under each of them once more, in words.

    Head flashing has a line of words all the same: of bent metal there is more to know.
    """
    for name, mark, telling in (("quarry-loft", "L1", False), ("hillside-house", "F7", True)):
        job = read_job(Path(__file__).parents[2] / "examples" / name)
        (kit,) = (kit for kit in make_kits(job) if kit.mark == mark)
        some = [part for part in kit.parts if part.is_plain or part.blank.is_metal]
        (view,) = parts_tables(some, grid=job.shop.grid, scale=scales_of(job.units)[0], tallest=40.0)
        said = [" ".join(text.lines) for text in view.texts]
        assert "square" in said
        assert any("both ends" in one for one in said) is telling
