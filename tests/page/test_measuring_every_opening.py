"""A carpenter reads every corner of every opening of the examples: each answer is what the cut sheet then prints."""

from __future__ import annotations

import datetime
import shutil
from pathlib import Path

import pytest
from pages import EXAMPLES

from jambs.app.chain import kits_as_cut
from jambs.job import Job, read_job
from jambs.length import Units, read_length
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.kit.cut_kit import CutKit
from jambs.place.frame_path import frame_path
from jambs.screen.desk import Desk
from jambs.screen.measuring import Measuring
from jambs.screen.sent_reading import SentReading
from jambs.screen.telephone_data import measured_opening_data
from jambs.sheets.part_rows import part_row
from jambs.sheets.record import opening_record
from jambs.values import Record

ALL = sorted(one.parent.name for one in EXAMPLES.glob("*/job.yaml"))
DAY = "2026-11-02"
"""After every day that something was read on in the examples."""
OFF = {Units.INCH: (0.0, 0.125, 0.0625, 0.25), Units.MM: (0.0, 3 / 25.4, 1 / 25.4, 6 / 25.4)}
"""By so much the corners are read off the plan, in turn [in]: tapers, twists, and what is within the tolerance."""


@pytest.mark.parametrize("example", ALL)
def test_every_answer_is_what_the_cut_sheet_prints(example: str, tmp_path: Path) -> None:
    house = tmp_path / example
    shutil.copytree(EXAMPLES / example, house, ignore=shutil.ignore_patterns("output"))
    measuring = Measuring(
        Desk(file=house / "job.yaml", target=tmp_path / "output"), today=lambda: datetime.date.fromisoformat(DAY)
    )
    free = [one.mark for one in read_job(house).openings if not measuring.stated(one.mark)]
    for mark in free:
        _read_corners(measuring, mark)
    job = read_job(house)
    kits = {kit.placement.opening.mark: kit for kit in kits_as_cut(job)}
    for mark in free:
        answer = measuring.answer(mark)
        readings = next(one.readings for one in job.openings if one.mark == mark)
        assert readings and readings.by == "Ann" and readings.date.isoformat() == DAY
        assert answer["state"] == "measured" and not answer["questions"], mark
        assert _told(answer) == _printed(kits[mark], job), mark


def _read_corners(measuring: Measuring, mark: str) -> None:
    """Read every corner inside that the telephone asks for, each a little off the plan, and believe what is odd."""
    shown = measured_opening_data(measuring, mark)
    assert shown is not None
    _, job = measuring.placement(mark)
    drawn = {one["number"] for one in shown["picture"]["places"]}
    corners = [one for one in shown["places"] if one["is_inside"] and one["is_corner"]]
    assert corners and {one["number"] for one in shown["places"]} == drawn  # every place that is asked for is shown
    for at, place in enumerate(corners):
        length = _inches(place["planned"], job) + OFF[job.units][at % 4]
        text = f"{length * 25.4:.0f}" if job.units is Units.MM else f"{length}"
        measuring.take(
            SentReading(
                id=f"{mark} {place['number']}",
                mark=mark,
                place=place["number"],
                text=text,
                was=shown["answer"]["read"].get(str(place["number"]), ""),
                is_sure=True,
                day=DAY,
                by="Ann",
                asked=place["words"],
                units=job.units.value,
            )
        )


def _inches(planned: str, job: Job) -> float:
    return read_length(planned, units=job.units)


def _told(answer: Record) -> list[tuple[str, ...]]:
    """Return the widths that the telephone shows, those of both ends of each board."""
    return sorted(tuple(sorted(end["width"] for end in board["ends"])) for board in answer["boards"])


def _printed(kit: CutKit, job: Job) -> list[tuple[str, ...]]:
    """Return the widths that the cut sheet prints of the same boards; of boards along an arc once, all being alike."""
    record = opening_record(kit, grid=job.shop.grid)
    rows = [(part, part_row(told)) for part, told in zip(kit.parts, record["parts"], strict=True) if _is_jamb(part)]
    arcs = {edge.side for edge in frame_path(kit.placement.opening) if edge.center}
    straight = [
        tuple(sorted(one["width"] for one in row["taper"] or [row, row])) for part, row in rows if part.side not in arcs
    ]
    return sorted([*straight, *{(row["width"],) for part, row in rows if part.side in arcs}])


def _is_jamb(part: Part) -> bool:
    return part.kind is PartKind.EXTENSION_JAMB and part.where is Where.INTERIOR
