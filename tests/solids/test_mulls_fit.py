"""Ganged kits in three dimensions: nothing clashes, and the boards over the mulls bear where they should."""

from __future__ import annotations

import dataclasses
from typing import Any

import pytest
from cases import STOOL, job_of
from gangs import OVER, boxed, ganged, ganged_kit, unit

pytest.importorskip("cadquery")

from cases import changed, kit_of

from jambs.parts.board.cuts import Crosscut, Rip
from jambs.parts.board.kinds import PartKind, Where
from jambs.solids.fit import FitReport, fit_report
from jambs.solids.model import model_kit


def report(**paths: object) -> FitReport:
    return fit_report(model_kit(ganged_kit(**paths), job_of(changed(**ganged(**paths)))))


@pytest.mark.parametrize(
    "paths",
    [
        {},
        {"interior_trim__inside": {**STOOL, "mull_casing": dict(OVER)}},
        {"interior_trim__inside__flare": {"sides": "10 deg", "head": "15 deg"}},
    ],
    ids=["picture framed", "stool", "flared"],
)
def test_ganged_units_fit(paths: dict[str, object]) -> None:
    found = report(**paths)
    assert found.faults == ()
    assert [one.name for one in found.joints if "mull" in one.name or "bar casing" in one.name]
    assert len([one for one in found.measures if one.name.startswith("reveal at")]) == 8


def test_a_mull_between_two_transom_bars_fits() -> None:
    rows = [[unit("30 x 16"), unit("30 x 16")], [unit("60 1/2 x 12")]]
    found = report(openings__0__transom=None, openings__0__transoms=rows)
    assert found.faults == ()
    # Two covers and two bars, inside and outside, each with two reveals.
    assert len([one for one in found.measures if one.name.startswith("reveal at")]) == 16


MEASURED = {
    "date": "2026-06-01",
    "interior_depth": {"head_left": "4 11/16", "head_right": "4 13/16", "sill_left": "4 3/4", "sill_right": "4 7/8"},
}


@pytest.mark.parametrize(
    "paths",
    [{}, {"interior_trim__inside": {**STOOL, "mull_casing": dict(OVER)}, "openings__0__measured": MEASURED}],
    ids=["picture framed", "on a stool, measured"],
)
def test_boxed_mulls_fit(paths: dict[str, Any]) -> None:
    job = job_of(changed(**boxed(**paths)))
    found = fit_report(model_kit(kit_of(**boxed(**paths)), job))
    assert found.faults == ()
    assert len([one for one in found.joints if "between head and foot" in one.name]) == 4
    assert len([one for one in found.measures if "mull" in one.name]) == 8


def test_a_mull_jamb_that_is_too_short_is_found() -> None:
    kit = kit_of(**boxed())
    short = tuple(
        dataclasses.replace(part, cuts=(part.cuts[0], Crosscut(length=part.length - 1 / 8), *part.cuts[2:]))
        if part.kind is PartKind.MULL_JAMB and part.where is Where.INTERIOR
        else part
        for part in kit.parts
    )
    found = fit_report(model_kit(dataclasses.replace(kit, parts=short), job_of(changed(**boxed()))))
    assert found.faults != ()


def test_a_mull_casing_that_is_too_wide_is_found() -> None:
    kit = ganged_kit()
    wide = tuple(
        dataclasses.replace(part, cuts=(Rip(width=part.width + 1 / 8), *part.cuts[1:]))
        if part.kind is PartKind.MULL_CASING
        else part
        for part in kit.parts
    )
    found = fit_report(model_kit(dataclasses.replace(kit, parts=wide), job_of(changed(**ganged()))))
    assert found.faults != ()
