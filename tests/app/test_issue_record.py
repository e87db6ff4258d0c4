"""What is printed of an opening comes back from the record of its issue as the very same values."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from jambs.app.chain import make_kits, planned
from jambs.app.issue_record import issue_record
from jambs.job.read import read_job

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.mark.parametrize("name", ["creamery", "gable-house", "quarry-loft"])
def test_what_is_kept_of_an_issue_reads_back_as_it_was_so_that_nothing_seems_changed(name: str) -> None:
    """A pair comes back as a list: where the two were compared, an arch told its outline as another, point by point."""
    job = read_job(EXAMPLES / name)
    house = planned(make_kits(job), job)
    printed = issue_record(house.kits, house.installing, job)
    assert json.loads(json.dumps(printed)) == printed
