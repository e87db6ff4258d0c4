"""Ganged kits in three dimensions: nothing clashes, and the boards over the mulls bear where they should."""

from __future__ import annotations

import dataclasses

import pytest
from cases import STOOL, job_of
from gangs import OVER, ganged, ganged_kit, unit

pytest.importorskip("cadquery")

from cases import changed

from jambs.parts.cuts import Rip
from jambs.parts.kinds import PartKind
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
