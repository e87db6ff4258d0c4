"""Kits round circles, half and quarter circles, ellipses and triangles, sawn from their cut lists alone, close."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from arches import arch_changes
from hypothesis import given, settings
from random_kits import RandomKit, kit_from
from random_openings import round_kits
from rounds import inside_only, round_changes, rounded, rounded_inside

from jambs.length import Units
from jambs.parts.board.cuts import Miter
from jambs.solids.fit import fit_report
from jambs.solids.model import model_kit

QUARTER = {"kind": "quarter round", "high_side": "right"}
ELLIPSE = {"kind": "ellipse arch", "rise": "18"}


@pytest.mark.parametrize(
    ("shape", "width", "height", "curved"),
    [
        ("full round", 36, 36, "bent laminations"),
        ("half round", 36, 18, "bent laminations"),
        (QUARTER, 30, 30, "bent laminations"),
        ("triangle", 48, 30, "sawn segments"),
    ],
)
def test_a_kit_whose_boards_go_all_round_closes(shape: Any, width: float, height: float, curved: str) -> None:
    make = rounded_inside if shape == "full round" else rounded
    made = make(shape, width, height, curved=curved)
    report = fit_report(model_kit(made.kit, made.job))
    assert report.faults == ()
    if shape != "triangle":
        assert any("the casing and the edges of the jambs" in joint.name for joint in report.joints)
        assert any("frame reveal along the arc at the head" in measure.name for measure in report.measures)


def test_a_kit_under_an_ellipse_arch_closes() -> None:
    made = kit_from(inside_only(arch_changes(ELLIPSE, 48, 48)))
    report = fit_report(model_kit(made.kit, made.job))
    assert report.faults == ()
    # Three arcs of a jamb in segments, the joints between them too.
    assert sum("the jamb's head" in joint.name and joint.name.count("head") > 1 for joint in report.joints) >= 4


def test_a_segment_sawn_off_its_angle_opens_the_ring() -> None:
    """The witness sees: half a degree less on every end of one segment leaves it off both its neighbors."""
    made = rounded_inside("full round")
    piece = next(part for part in made.kit.parts if any(isinstance(cut, Miter) for cut in part.cuts))
    cuts = tuple(replace(cut, angle_deg=cut.angle_deg - 0.5) if isinstance(cut, Miter) else cut for cut in piece.cuts)
    parts = tuple(replace(part, cuts=cuts) if part is piece else part for part in made.kit.parts)
    found = fit_report(model_kit(replace(made.kit, parts=parts), made.job)).faults
    assert any(piece.mark in fault.sentence(Units.INCH) for fault in found)


@settings(max_examples=2)
@given(made=round_kits(has_outside=False))
def test_a_random_round_or_triangle_closes(made: RandomKit) -> None:
    assert fit_report(model_kit(made.kit, made.job)).faults == ()


@pytest.mark.parametrize("centers", [3, 5])
def test_an_ellipse_arch_bent_in_pieces_closes(centers: int) -> None:
    """Each arc is bent over a form of its own, the ends of the pieces on the lines through two centers."""
    shape = {"kind": "ellipse arch", "rise": "18", "centers": centers}
    made = kit_from(inside_only(arch_changes(shape, 60, 70, curved="bent laminations")))
    bent = [part for part in made.kit.parts if part.is_laminated]
    assert len(bent) == centers and len({part.blank.plies.count for part in bent if part.blank.plies}) > 1
    report = fit_report(model_kit(made.kit, made.job))
    assert report.faults == ()
    assert sum("the jamb's head" in joint.name for joint in report.joints) == centers


def test_a_segment_arch_without_legs_closes_inside_and_outside() -> None:
    made = kit_from(round_changes({"kind": "segment arch", "rise": "10"}, 36, 10))
    assert fit_report(model_kit(made.kit, made.job)).faults == ()
