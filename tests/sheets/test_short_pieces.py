"""Pieces of a cutting plan that are drawn shorter than their marks are long are marked all the same."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from paper import words

from jambs.app.chain import make_kits
from jambs.job import read_job
from jambs.sheets.cutting_papers import write_cutting_papers
from jambs.sheets.cutting_record import Round, cutting_record
from jambs.stock.house.house_plan import Effort, plan_house
from jambs.stock.house.lots import house_lots

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.mark.parametrize(
    ("name", "shortest"),
    [("creamery", ("A1-28", "A1-38", "A1-29", "A1-37", "A1-30", "A1-36")), ("gable-house", ("G9-1c", "G9-1e"))],
)
def test_every_piece_is_marked_where_it_is_drawn(name: str, shortest: tuple[str, ...], tmp_path: Path) -> None:
    """Once on its board, once among the crosscuts: the shortest of both examples are drawn 8 pt to 20 pt long."""
    job = read_job(EXAMPLES / name)
    effort = Effort(stages=0)
    planned = plan_house(house_lots(make_kits(job), job), effort)
    write_cutting_papers(cutting_record(planned, job, effort, Round()), job, tmp_path)
    said = words((tmp_path / "cutting plan.pdf").read_bytes())
    found = {mark: len(re.findall(rf"\b{mark.replace('-', ' ?-')}\b", said)) for mark in shortest}
    assert all(count >= 2 for count in found.values()), found
