"""No two papers of an opening give two figures for one face: details of all examples against the words of their parts.

The words stand on cut sheet, label and detail; the sizes in the parts table. A figure drawn that is a step off a figure
said, and stands nowhere itself, is the same face told twice.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from jambs.app.chain import kits_as_cut
from jambs.drawings.elements.paper import scales_of
from jambs.drawings.elements.placed import PlacedView
from jambs.drawings.elements.view import ViewKind
from jambs.drawings.layout.arrange import arrange
from jambs.drawings.views.details import details
from jambs.drawings.views.leaned_details import has_two_faces
from jambs.drawings.views.on_grid import on_grid
from jambs.job import Job, read_job
from jambs.length import Grid, Units, read_length
from jambs.parts.board.part import Part
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.words.cut_words import work_words
from jambs.parts.words.end_words import ends_words

EXAMPLES = sorted(one.parent for one in (Path(__file__).parents[2] / "examples").glob("*/job.yaml"))
LENGTH = {Units.MM: re.compile(r"\d+(?:\.\d)? mm"), Units.INCH: re.compile(r"(?:\d+ )?\d+/\d+\"|\d+\"")}


def drawn_details(kit: CutKit, job: Job) -> Iterator[tuple[Part, PlacedView]]:
    """Yield the details of parts, and each part that a detail is of, by the marks in its title."""
    scale = scales_of(job.units)[-1]
    for view in details(kit, grid=job.shop.grid):
        placed = arrange(on_grid(view, job.shop.grid), scale=scale, units=job.units)
        marks = set(re.findall(r"[\w]+-\d+", view.title))
        yield from ((part, placed) for part in kit.parts if part.mark in marks)


def figures_said(part: Part, grid: Grid) -> set[float]:
    """Return the lengths [in] in the words and in the sizes of a part, as they are printed."""
    words = " ".join((ends_words(part, grid=grid), *work_words(part, grid=grid)))
    found = [*LENGTH[grid.units].findall(words), *map(grid.text, (part.thickness, part.width, part.length))]
    return {round(read_length(one, units=grid.units), 6) for one in found}


def told_twice(part: Part, view: PlacedView, grid: Grid) -> list[tuple[str, float, float]]:
    """Return the figures of a view that are a step off one that is said, neither drawn and said."""
    drawn = {round(read_length(one.text.lines[0].strip("()"), units=grid.units), 6) for one in view.dimensions}
    said = figures_said(part, grid)
    return [
        (part.mark, one, other) for one in drawn - said for other in said - drawn if abs(one - other) < 1.01 * grid.step
    ]


@pytest.mark.parametrize("example", EXAMPLES, ids=lambda one: one.name)
def test_no_detail_of_an_example_gives_a_face_another_figure_than_its_words(example: Path) -> None:
    job = read_job(example)
    found = [(part, view) for kit in kits_as_cut(job) for part, view in drawn_details(kit, job)]
    assert [one for part, view in found for one in told_twice(part, view, job.shop.grid)] == []


@pytest.mark.parametrize("example", EXAMPLES, ids=lambda one: one.name)
def test_every_dimension_of_a_detail_is_its_length_as_read_off_by_itself(example: Path) -> None:
    job = read_job(example)
    grid = job.shop.grid
    for kit in kits_as_cut(job):
        for _, view in drawn_details(kit, job):
            unlike = [one for one in view.dimensions if one.text.lines[0].strip("()") != grid.text(one.value)]
            assert unlike == [], view.name


@pytest.mark.parametrize("example", ["creamery", "gable-house"])
def test_the_length_in_the_table_stands_on_the_detail_of_a_board_of_two_faces(example: str) -> None:
    """Where both ends lean one way no edge is as long as the blank: it has a dimension of its own."""
    job = read_job(next(one for one in EXAMPLES if one.name == example))
    found = [(part, view) for kit in kits_as_cut(job) for part, view in drawn_details(kit, job)]
    faces = [(part, view) for part, view in found if view.kind is ViewKind.DETAIL and has_two_faces(part)]
    assert faces
    for part, view in faces:
        assert job.shop.grid.text(part.length) in {one.text.lines[0] for one in view.dimensions}, part.mark
