"""What the notes in a cut file tell of a part is what its label tells: one name and one size on every paper."""

from __future__ import annotations

import pytest
from cases import changed, job_of, strips

from jambs.app.chain import make_kits
from jambs.drawings.cut_files.figure import part_figures
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
