"""A sheet of the cutting plan as a cut file: parts where the plan has them, a kerf apart, all of them, none twice."""

from __future__ import annotations

import re
from functools import cache
from itertools import combinations
from pathlib import Path
from typing import Any

import pytest
from ezdxf.document import Drawing as Document
from reading_cut_files import opened, outlines
from shapely.geometry import Polygon

from jambs.drawings.cut_files.layers import CUT, NOTE
from jambs.drawings.cut_files.nest import sheet_figures
from jambs.drawings.cut_files.write import Release, cut_file
from jambs.face import make_kits, read_job
from jambs.job import Job
from jambs.stock.house.house_plan import Effort, PlannedLot, plan_house
from jambs.stock.house.lots import house_lots

HARBOUR_HOUSE = Path(__file__).parents[2] / "examples" / "harbour-house"
SAME = 1e-6
STEP = 1 / 64


@cache
def planned() -> tuple[Job, PlannedLot, PlannedLot]:
    """The harbour house's job, its lot of plywood sheets, and one of boards."""
    job = read_job(HARBOUR_HOUSE)
    lots = house_lots(make_kits(job), job)
    sheets = next(lot for lot in lots if lot.problem.kind == "sheets")
    boards = next(lot for lot in lots if lot.problem.kind == "boards")
    first, second = plan_house([sheets, boards], Effort(stages=0))
    return job, first, second


@cache
def documents(release: Release) -> list[Document]:
    job, lot, _ = planned()
    texts = [cut_file(one, units=job.units, release=release) for one in sheet_figures(lot, units=job.units)]
    return [opened(text) for text in texts]


def shapes(document: Document, layer: str) -> list[Polygon]:
    return [Polygon(one) for one in outlines(document)[layer]]


@pytest.mark.parametrize("release", list(Release))
def test_every_sheet_says_its_issue_in_letters_that_every_reader_has(release: Release) -> None:
    job, lot, _ = planned()
    for figure in sheet_figures(lot, units=job.units, stamp="issue 4 · 2026-05-18 · 7F3A"):
        space = opened(cut_file(figure, units=job.units, release=release)).modelspace()
        assert [one.dxf.text for one in space.query("TEXT")][-1] == "issue 4 - 2026-05-18 - 7F3A"
        parts = max(y for one in figure.strokes if one.layer is CUT for _, y in one.points)
        assert all(one.at[1] > parts for one in figure.words if one.layer is NOTE)  # no note lies on a part
    assert not any("issue" in one.text for figure in sheet_figures(lot, units=job.units) for one in figure.words)


def test_parts_lie_as_planned() -> None:
    _, lot, _ = planned()
    for board, document in zip(lot.plan.boards, documents(Release.R2010), strict=True):
        (sheet,) = shapes(document, "SHEET")
        assert sheet.bounds == (0.0, 0.0, 96.0, 48.0)
        found = sorted(part.bounds for part in shapes(document, "CUT"))
        told: Any = sorted(
            (piece.start * STEP, strip.start * STEP, piece.end * STEP, (strip.start + strip.width) * STEP)
            for strip in board.strips
            for piece in strip.pieces
        )
        # a part is sawn to the nearest sixty-fourth and drawn at its exact size
        assert found == [pytest.approx(one, abs=STEP / 2 + SAME) for one in told]


def test_the_blade_has_room() -> None:
    """At least the kerf of 1/8 less what rounding to a sixty-fourth can take, and the trim at the sheet's edges."""
    for document in documents(Release.R2010):
        parts = shapes(document, "CUT")
        assert min(one.distance(two) for one, two in combinations(parts, 2)) > 1 / 8 - STEP
        assert all(part.bounds[0] >= 1 / 2 and part.bounds[2] <= 96 - 1 / 2 + STEP for part in parts)


def test_every_piece_is_on_one_sheet() -> None:
    _, lot, _ = planned()
    marks = [
        text.dxf.text for one in documents(Release.R2010) for text in one.modelspace().query('TEXT[layer=="ENGRAVE"]')
    ]
    assert sorted(marks) == sorted(piece.piece.mark for piece in lot.lot.pieces)


@pytest.mark.parametrize("release", Release)
def test_files_are_clean(release: Release) -> None:
    for document in documents(release):
        audit = document.audit()
        assert not audit.errors and not audit.fixes
        assert document.header["$EXTMAX"][:2] == (96.0, 48.0)
        if release is Release.R12:
            assert all(re.fullmatch(r"[A-Za-z0-9$_-]{1,31}", layer.dxf.name) for layer in document.layers)


def test_the_notes_say_how_far_parts_stand_apart() -> None:
    notes = [one.dxf.text for one in documents(Release.R2010)[0].modelspace().query('TEXT[layer=="NOTE"]')]
    assert notes[0].startswith('D1, plywood 3/4", sheets, drawn in inches, 1:1')
    assert 'parts stand 1/8" apart' in notes[1]


def test_boards_have_no_nest() -> None:
    job, _, boards = planned()
    assert sheet_figures(boards, units=job.units) == ()
