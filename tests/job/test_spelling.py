"""A job may write a word in its other spelling: it is the same word, and the papers print one of the two."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner

from jambs.commands.command_line import main
from jambs.job import JobFaults, read_job
from jambs.job.models.layers import MadeOf
from jambs.job.models.metal_returns import MetalReturnsEntry, SheetMetal
from jambs.job.reading.catalog import find_layer
from jambs.job.starter import new_job_text
from jambs.length import Units
from jambs.section.metals import metal_of


def job_with(folder: Path, *changes: tuple[str, str]) -> Path:
    """Write the metric starter with some lines changed, and an elevation with two floors."""
    text = new_job_text(Units.MM) + "\nelevations:\n  south: {start_line: -200, eave: 6000, STORIES}\n"
    for before, after in changes:
        assert before in text
        text = text.replace(before, after)
    file = folder / "job.yaml"
    file.write_text(text, encoding="utf-8")
    return file


STORIES = "stories: [{floor: 2700, openings: []}]"


@pytest.mark.parametrize("key", ["stories", "storeys"])
def test_floors_of_a_house_are_stories_or_storeys(tmp_path: Path, key: str) -> None:
    with pytest.raises(JobFaults) as caught:
        read_job(job_with(tmp_path, ("STORIES", STORIES.replace("stories", key))))
    (fault,) = caught.value.faults
    assert str(fault).endswith("elevations.south: stories[0].openings: has only 0; give at least 1")


def test_both_spellings_of_a_key_are_one_key_given_twice(tmp_path: Path) -> None:
    twice = f"{STORIES}, {STORIES.replace('stories', 'storeys')}"
    with pytest.raises(JobFaults) as caught:
        read_job(job_with(tmp_path, ("STORIES", twice)))
    assert "stories is given twice, first on line" in str(caught.value)


@pytest.mark.parametrize("name", ["glass fibre batt", "fibreglass batt", "Fiberglass batt", "wood-fibre board"])
def test_a_material_is_found_in_either_spelling(name: str) -> None:
    layer = find_layer(name)
    assert layer is not None
    assert (layer.made_of, "fiber" in layer.name) == (MadeOf.FIBER, True)


def test_a_vapour_retarder_is_a_vapor_retarder() -> None:
    assert find_layer("smart vapour retarder") == find_layer("smart vapor retarder") != None  # noqa: E711


def test_aluminium_is_aluminum() -> None:
    assert SheetMetal("aluminium") is SheetMetal("aluminum") is SheetMetal.ALUMINUM
    with pytest.raises(ValueError, match="alloy"):
        SheetMetal("alloy")
    found = [
        metal_of(MetalReturnsEntry.model_construct(material=f"Coil {one}", metal=None))
        for one in ("aluminium", "Aluminum")
    ]
    assert [(one.metal.kind, one.is_assumed) for one in found] == 2 * [(SheetMetal.ALUMINUM, False)]


def test_what_a_layer_is_made_of() -> None:
    assert MadeOf("fibre") is MadeOf("fiber") is MadeOf.FIBER
    with pytest.raises(ValueError, match="fibers"):
        MadeOf("fibers")


def test_the_verb_in_either_spelling() -> None:
    one, other = (CliRunner().invoke(main, [verb, "OSB"]).output for verb in ("catalog", "catalogue"))
    assert one == other
    assert "OSB" in one
