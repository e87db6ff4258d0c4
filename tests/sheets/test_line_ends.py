"""No line of a list ends between a number and its unit, nor within an amount of money."""

from __future__ import annotations

import re
from itertools import pairwise
from pathlib import Path

import pytest
from paper import pages, words

from jambs.app.chain import make_kits, planned
from jambs.job import read_job
from jambs.sheets.cutting_papers import write_cutting_papers
from jambs.sheets.cutting_record import Round, cutting_record
from jambs.sheets.house import write_summary
from jambs.sheets.rough_openings import write_rough_opening_schedule
from jambs.stock.house.house_plan import Effort, plan_house
from jambs.stock.house.lots import house_lots

EXAMPLES = Path(__file__).parents[2] / "examples"
PARTED = re.compile(r"\d\n(mm|m|kg|lb|kr)\b|\d{1,3}\n\d{3}(\.\d+)? kr")
"""A number at the end of a line, and at the head of the next what belongs to it."""


def parted(pdf: bytes) -> list[str]:
    """Return the pairs of lines that part a number from its unit, or an amount."""
    found = []
    for page in pages(pdf):
        lines = page.extract_text().splitlines()
        found += [f"{one} | {two}" for one, two in pairwise(lines) if PARTED.search(f"{one.rstrip()}\n{two.lstrip()}")]
    return found


@pytest.mark.parametrize("name", ["creamery", "gable-house"])
def test_lists_of_the_house_part_no_number_from_its_unit(name: str, tmp_path: Path) -> None:
    job = read_job(EXAMPLES / name)
    house = planned(make_kits(job), job)
    write_rough_opening_schedule(house.kits, job, tmp_path / "rough.pdf")
    write_summary(house.kits, house.register, job, tmp_path / "summary.pdf")
    assert [parted(path.read_bytes()) for path in sorted(tmp_path.glob("*.pdf"))] == [[], []]


def test_amounts_of_money_stay_whole_wherever_their_line_ends(tmp_path: Path) -> None:
    """Sentences of every length, so that some amount lies at the end of its line."""
    job = read_job(EXAMPLES / "creamery")
    effort = Effort(stages=0)
    lots = house_lots(make_kits(job), job)[:1]
    record = cutting_record(plan_house(lots, effort), job, effort, Round())
    said = ["n " * count + "this one costs 19 112.60 kr and no more" for count in range(60, 110)]
    write_cutting_papers({**record, "total": {**record["total"], "sentences": said}}, job, tmp_path)
    for paper in ("buying list", "cutting plan"):
        pdf = (tmp_path / f"{paper}.pdf").read_bytes()
        assert "19 112.60 kr" in words(pdf)
        assert parted(pdf) == []
