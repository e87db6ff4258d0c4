"""Molded casing on the solids: miters close over the section, legs stand with it, and a wrong one is found."""

from __future__ import annotations

import dataclasses
from typing import Any

import pytest
from cases import STOOL, changed, job_of, kit_of
from moldings import POINTS, molded_trim

pytest.importorskip("cadquery")

from jambs.parts.board.cuts import Molded
from jambs.parts.board.kinds import PartKind, Where
from jambs.solids.fit import FitReport, fit_report
from jambs.solids.model import model_kit

BUTTED = {"width": "3 1/2", "thickness": "3/4", "stock": "poplar", "corner": "butt"}
HEAD = [{"kind": "cap", "height": "3/4", "projection": "1/2", "overhang": "1/2", "stock": "poplar"}]
MEASURED = {
    "date": "2026-06-01",
    "interior_depth": {"head_left": "4 11/16", "head_right": "4 13/16", "sill_left": "4 3/4", "sill_right": "4 7/8"},
}
ROSETTES = {"rosettes": {"size": "3 3/4", "thickness": "1", "stock": "poplar"}}


def report(trim: dict[str, Any], **paths: Any) -> FitReport:
    paths = {"interior_trim__inside": trim, "exterior_trim": None, **paths}
    return fit_report(model_kit(kit_of(**paths), job_of(changed(**paths))))


@pytest.mark.parametrize(
    ("trim", "paths"),
    [
        (molded_trim(), {}),
        ({**STOOL, "casing": BUTTED, "profile": POINTS, "built_up": {"head": HEAD}}, {}),
        (molded_trim(casing=BUTTED, built_up=ROSETTES), {"openings__0__measured": MEASURED}),
    ],
    ids=["mitered", "legs on a stool under a shallow cap", "rosettes on a wall out of plane"],
)
def test_molded_casing_fits(trim: dict[str, Any], paths: dict[str, Any]) -> None:
    assert report(trim, **paths).faults == ()


def test_a_board_run_to_another_section_is_found() -> None:
    paths: dict[str, Any] = {"interior_trim__inside": molded_trim(), "exterior_trim": None}
    kit = kit_of(**paths)
    (other,) = {cut for part in kit.parts for cut in part.cuts if isinstance(cut, Molded)}
    thinner = Molded(section=tuple((v, w + (1 / 16 if w < 0.6 else 0.0)) for v, w in other.section))
    parts = tuple(
        dataclasses.replace(part, cuts=tuple(thinner if cut == other else cut for cut in part.cuts))
        if part.kind is PartKind.CASING and part.where is Where.INTERIOR and part.side.is_leg
        else part
        for part in kit.parts
    )
    found = fit_report(model_kit(dataclasses.replace(kit, parts=parts), job_of(changed(**paths))))
    assert found.faults != ()
