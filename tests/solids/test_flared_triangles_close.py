"""Triangles whose flared jambs stand on a stool, sawn from their cut lists alone, close."""

from __future__ import annotations

from dataclasses import replace

import pytest
from flared_triangles import flared_triangle

from jambs.length import Units
from jambs.parts.board.cuts import SlantedNotch
from jambs.parts.board.kinds import PartKind
from jambs.solids.fit import fit_report
from jambs.solids.model import model_kit


@pytest.mark.parametrize("peak", ["0", "16", "24"])
def test_flared_slants_on_a_stool_close(peak: str) -> None:
    made = flared_triangle(peak, head="15 deg", sides="10 deg")
    report = fit_report(model_kit(made.kit, made.job))
    assert report.faults == ()
    assert any("the feet of the jambs and the stool" in one.name for one in report.joints)


def test_a_notch_cut_square_leaves_the_back_of_a_flared_slant() -> None:
    made = flared_triangle("24", head="15 deg")
    stool = next(part for part in made.kit.parts if part.kind is PartKind.STOOL)
    cuts = tuple(replace(cut, along=cut.along_inside) if isinstance(cut, SlantedNotch) else cut for cut in stool.cuts)
    parts = tuple(replace(part, cuts=cuts) if part is stool else part for part in made.kit.parts)
    found = fit_report(model_kit(replace(made.kit, parts=parts), made.job)).faults
    assert any("notch of the stool to the jamb's back" in fault.sentence(Units.INCH) for fault in found)
