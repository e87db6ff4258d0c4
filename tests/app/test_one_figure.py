"""A part has one figure and one board on every paper: the cutting plan prints the size of the cut sheet, to the last
fraction, and once there is a plan, sheet and label name its board.
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from jambs.app.basis import bought_basis
from jambs.app.chain import kits_as_cut, make_kits
from jambs.app.planned_boards import BUY, with_planned_boards
from jambs.issued.basis import basis_bytes
from jambs.issued.entry import JobIdentity
from jambs.issued.record import Record
from jambs.issued.writing import Commit, PaperFacts, begin
from jambs.job import Job, read_job
from jambs.length import FINE, length_text
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.kit.kit import Kit
from jambs.sheets.cutting_papers import DATA
from jambs.sheets.cutting_record import Round, cutting_record
from jambs.sheets.labels import label_data
from jambs.sheets.part_rows import part_row
from jambs.sheets.record import job_record
from jambs.stock.house.house_pieces import house_pieces
from jambs.stock.house.house_plan import Effort, plan_house
from jambs.stock.house.lots import house_lots
from jambs.values import Record as Plain

EXAMPLES = Path(__file__).parents[2] / "examples"
WORKED = Path(__file__).with_name("worked.yaml")


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


def bought(folder: Path, kits: tuple[Kit, ...], job: Job) -> Plain:
    """Plan what to buy, put the plan on record and return it."""
    effort = Effort(stages=0)
    plan = cutting_record(plan_house(house_lots(kits, job), effort), job, effort, Round())
    basis, facts = basis_bytes(bought_basis(kits, job)), {DATA: PaperFacts(kind="plan")}
    identity = JobIdentity(name=job.name, file="")
    with begin(folder, identity, verb=BUY, inside="cutting") as writing, writing.fresh_folder() as staged:
        (staged / DATA).write_text(json.dumps(plan), encoding="utf-8")
        writing.commit(Commit(staged=staged, day="2026-06-01", facts=facts, basis=basis))
    return plan


def sheets_and_labels(kits: tuple[CutKit, ...], job: Job) -> dict[str, tuple[Plain, Plain]]:
    """Return what the cut sheet and what the label say of each part."""
    record = job_record(kits, job)
    return {
        part["mark"]: (part_row(part), label_data(part, room=one["room"], is_planned=False))
        for one in record["openings"]
        for part in one["parts"]
    }


def cheap_wide_boards(folder: Path) -> Job:
    """The worked case where a wide board costs less than the narrowest that a jamb comes out of."""
    six = "    - {nominal: 1x6, stock: poplar}\n"
    eight = "    - {nominal: 1x8, stock: poplar, price_per_foot: 0.10}\n"
    spruce = "    - {nominal: 2x8, stock: spruce, price_per_foot: 2}\n"
    text = WORKED.read_text(encoding="utf-8")
    assert six in text
    (folder / "job.yaml").write_text(text.replace(six, six + eight + spruce), encoding="utf-8")
    return read_job(folder)


def assert_as_planned(plan: Plain, printed: dict[str, tuple[Plain, Plain]]) -> None:
    for row, label in printed.values():
        assert label["size"] == " × ".join(row[key] for key in ("thickness", "width", "length"))
        assert label["board"] == row["board"]
    boards = {board["mark"]: board["board"] for lot in plan["lots"] for board in lot["boards"]}
    pieces = [one for lot in plan["lots"] for one in lot["pieces"] if one["mark"] == one["of"]]
    told = {one["of"]: (one["length"]["text"], boards[one["board"]]) for one in pieces}
    assert told
    assert {mark: (printed[mark][0]["length"], printed[mark][0]["board"]) for mark in told} == told


def test_sheet_label_and_plan_say_one_size_and_one_board_of_a_part(tmp_path: Path) -> None:
    """The plan's board is another than the one suggested without a plan."""
    job = cheap_wide_boards(tmp_path)
    kits, cut = make_kits(job), kits_as_cut(job)
    plan = bought(tmp_path / "papers", kits, job)
    printed = sheets_and_labels(with_planned_boards(cut, job, Record.open(tmp_path / "papers")), job)
    assert_as_planned(plan, printed)
    changed = {
        (before["board"], printed[mark][0]["board"]) for mark, (before, _) in sheets_and_labels(cut, job).items()
    }
    assert ("1x6 poplar", "1x8 poplar") in changed


def test_the_studio_says_one_size_and_one_board_of_a_part(tmp_path: Path) -> None:
    job = read_job(EXAMPLES / "garden-studio")
    plan = bought(tmp_path, make_kits(job), job)
    assert_as_planned(plan, sheets_and_labels(with_planned_boards(kits_as_cut(job), job, Record.open(tmp_path)), job))
