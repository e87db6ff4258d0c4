"""A part has one figure on every paper: the cutting plan prints the size of the cut sheet, to the last fraction."""

from __future__ import annotations

from pathlib import Path

import pytest

from jambs.app.chain import kits_as_cut
from jambs.job import read_job
from jambs.length import FINE, length_text
from jambs.sheets.record import job_record
from jambs.stock.house.house_pieces import house_pieces

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.mark.parametrize("name", ["garden-studio", "hillside-house", "harbour-house"])
def test_a_piece_of_the_plan_is_as_long_and_wide_as_its_part_on_the_cut_sheet(name: str) -> None:
    job = read_job(EXAMPLES / name)
    kits = kits_as_cut(job)
    parts = {part["mark"]: part for one in job_record(kits, job)["openings"] for part in one["parts"]}
    at = FINE[job.units].at
    unlike = []
    for one in house_pieces(kits, job):
        sheet = parts[one.part.mark]
        printed = length_text(at(one.piece.length), units=job.units)
        if printed != sheet["length"]["text"]:
            unlike.append((one.piece.mark, "length", printed, sheet["length"]["text"]))
        if not one.glued and not one.allowance:
            printed = length_text(at(one.piece.width), units=job.units)
            if printed != sheet["width"]["text"]:
                unlike.append((one.piece.mark, "width", printed, sheet["width"]["text"]))
    assert unlike == []
