"""An ellipse arch whose jamb is bent as one lamination closes on its legs and carries its casing."""

from __future__ import annotations

import pytest
from arches import arch_changes
from random_kits import kit_from
from rounds import inside_only

from jambs.solids.fit import fit_report
from jambs.solids.model import model_kit


@pytest.mark.parametrize(
    ("width", "height", "rise", "centers"),
    [(60, 70, "20", 3), (60, 70, "20", 5), (48, 60, "18", 3)],
    ids=["three arcs", "five", "whose radii are nearly alike"],
)
def test_an_ellipse_arch_bent_in_one_closes(width: float, height: float, rise: str, centers: int) -> None:
    shape = {"kind": "ellipse arch", "rise": rise, "centers": centers}
    made = kit_from(inside_only(arch_changes(shape, width, height, curved="bent in one")))
    (head,) = (part for part in made.kit.parts if part.is_laminated)
    report = fit_report(model_kit(made.kit, made.job))
    assert report.faults == ()
    # On both legs, and a reveal for each of its arcs.
    assert sum(head.mark in joint.name.replace(",", "").split() for joint in report.joints) == 2
    assert sum(one.name == f"frame reveal along the arc at the head {head.mark}" for one in report.measures) == centers
