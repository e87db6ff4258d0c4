"""Solids in the build: STEP, GLB, fit report; a kit that does not fit stops; without them one line."""

from __future__ import annotations

import csv
from dataclasses import replace
from pathlib import Path

import pytest
from cases import changed, job_of, part_of, strips

from jambs.app import solid_papers
from jambs.app.chain import Unbuildable, make_kits
from jambs.app.papers import write_opening
from jambs.app.solid_papers import left_out, write_elevations, write_solids
from jambs.parts.board.cuts import Crosscut
from jambs.parts.kit.cut_kit import CutKit

pytestmark = pytest.mark.skipif(left_out() is not None, reason=str(left_out()))


def longer(kit: CutKit, by: float) -> CutKit:
    """Cut the left leg of the interior jamb too long."""
    leg = part_of(kit, "extension jamb", "left leg")
    cuts = tuple(Crosscut(length=cut.length + by) if isinstance(cut, Crosscut) else cut for cut in leg.cuts)
    wrong = replace(leg, cuts=cuts)
    return replace(kit, parts=tuple(wrong if part.mark == leg.mark else part for part in kit.parts))


def test_an_opening_gets_step_glb_and_fit_report(tmp_path: Path) -> None:
    job = job_of(changed())
    (kit,) = strips(make_kits(job))
    views = write_solids(kit, job, tmp_path)
    assert [view.name for view in views] == ["isometric view"]
    assert {path.name for path in (tmp_path / "solids").iterdir()} == {"W1.step", "W1.glb", "W1 fit.csv"}
    with (tmp_path / "solids" / "W1 fit.csv").open(encoding="utf-8-sig", newline="") as file:
        rows = {row["name"]: row for row in csv.DictReader(file)}
    # The clear opening of the worked case, 35-1/2 - 5 + 1/4, measured on the solids.
    assert rows["clear opening width in the middle"]["measured on the solids"] == "30.750 in"
    assert "the casing's head and left leg, W1-5 and W1-6" in rows  # a name in a table, not the beginning of a sentence


def test_a_kit_that_does_not_fit_stops_its_papers(tmp_path: Path) -> None:
    job = job_of(changed())
    (kit,) = strips(make_kits(job))
    for name in ("drawings", "cut sheets", "install sheets"):
        (tmp_path / name).mkdir()
    with pytest.raises(Unbuildable) as error:
        write_opening(longer(kit, 1 / 16), installing={}, job=job, folder=tmp_path)
    assert (
        "W1: the parts do not fit: W1-1 (extension jamb, head) and W1-2 (extension jamb, left leg) take the same room: "
        "0.2212 cu in in a box of 0.062 in × 0.750 in × 4.719 in."
    ) in error.value.sentences
    assert not [path for path in tmp_path.rglob("*") if path.is_file()]


def test_where_solids_cannot_be_made_the_rest_goes_on(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(solid_papers, "left_out", lambda: "Left out: solids")
    job = job_of(changed())
    (kit,) = strips(make_kits(job))
    assert write_solids(kit, job, tmp_path) == ()
    write_elevations([kit], job, tmp_path)
    assert list(tmp_path.iterdir()) == []
