"""What the notes in a cut file tell of a part is what its label tells: one name and one size on every paper."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from arches import arched
from cases import changed, job_of, strips
from shapely.geometry import LineString, Polygon, box

from jambs.app.chain import make_kits
from jambs.drawings.cut_files.figure import part_figures
from jambs.drawings.cut_files.layers import ENGRAVED
from jambs.job import Job, read_job
from jambs.parts.board.bending_form import bending_form
from jambs.parts.board.kinds import Where
from jambs.parts.board.part import Part
from jambs.sheets.labels import label_data
from jambs.sheets.record import job_record

FLARE = {"sides": "10 deg", "head": "7 deg"}


@pytest.mark.parametrize("grid", ["1/16", "1/32", "1/64"])
def test_notes_tell_name_and_sizes_as_the_label_does(grid: str) -> None:
    """Slants of flared jambs are on no grid: they are told on the shop's, and drawn as they are."""
    job = job_of(changed(shop__grid=grid, interior_trim__inside__flare=FLARE))
    (kit,) = strips(make_kits(job))
    (opening,) = job_record([kit], job)["openings"]
    labels = {part["mark"]: label_data(part, room="", is_planned=False) for part in opening["parts"]}
    made = [part for part in kit.parts if part.is_wood and not part.is_laminated]
    assert any(part.width != job.shop.grid.round(part.width) for part in made)
    for part in made:
        for figure in part_figures(part, units=job.units, grid=job.shop.grid):
            texts = [words.text for words in figure.words]
            size = str(labels[part.mark]["size"]).replace(" × ", " x ")
            name = str(labels[part.mark]["name"]).removesuffix(", tapered")
            assert any(text.startswith(f"{size}, drawn in inches") for text in texts), (part.mark, size, texts)
            assert any(text.startswith(f"{part.mark}, {name}, ") for text in texts), (part.mark, name, texts)


def test_without_a_grid_they_are_told_to_the_finest_step() -> None:
    job = job_of(changed(shop__grid="1/16", interior_trim__inside__flare=FLARE))
    (kit,) = strips(make_kits(job))
    leg = next(part for part in kit.parts if part.width != job.shop.grid.round(part.width))
    told = [
        [one.text for one in part_figures(leg, units=job.units, grid=grid)[0].words] for grid in (None, job.shop.grid)
    ]
    assert told[0] != told[1]


def assert_clear(part: Part, job: Job) -> None:
    """Say that notes lie within the outline of a form, left of its center line, and can be read."""
    (figure,) = part_figures(part, units=job.units, notes=("PLANNED - MEASURE BEFORE CUTTING",), grid=job.shop.grid)
    outline = Polygon(bending_form(part).outline)
    (center_line, *_) = (LineString(one.points) for one in figure.strokes if one.layer == ENGRAVED)
    assert len(figure.words) >= 3
    for one in figure.words:
        (x, y), wide = one.at, 0.85 * one.height * len(one.text)
        words = box(x, y, x + wide, y + one.height)
        assert outline.covers(words) and not words.intersects(center_line), one.text
        assert one.height >= 0.1


@pytest.mark.parametrize(("example", "mark"), [("creamery", "A1-1"), ("gable-house", "G7-1"), ("gable-house", "G8-1")])
def test_no_note_of_a_form_lies_over_its_center_line(example: str, mark: str) -> None:
    """The center line is engraved: a word over it would be cut through. Ellipse arch, half round, full round."""
    job = read_job(Path(__file__).parents[2] / "examples" / example)
    (part,) = (part for kit in make_kits(job) for part in kit.parts if part.mark == mark)
    assert_clear(part, job)


@pytest.mark.parametrize(("shape", "width"), [("half round", 24), ({"kind": "segment arch", "rise": "4"}, 24)])
def test_notes_of_a_small_form_stay_within_it(shape: Any, width: float) -> None:
    made = arched(shape, width, curved="bent laminations")
    (part,) = (part for part in made.kit.parts if part.is_laminated and part.where is Where.INTERIOR)
    assert_clear(part, made.job)
