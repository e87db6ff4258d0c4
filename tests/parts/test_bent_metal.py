"""How much metal goes into a bend, against printed formulas.

Machinery's Handbook, bending sheet metal (from memory, as it stands in many editions): a right angle takes
0.64 T + 1.57 R of half-hard copper and brass, soft steel and aluminum. Its 26th edition, as a page of the web quotes
it (vedge.org/kfac.html), gives the neutral layer of aluminum .032 thick bent round a radius of .030 at 0.398 of the
thickness, and .125 thick round .188 at 0.406.
"""

from __future__ import annotations

import math

import pytest

from jambs.parts.board.bent_metal import (
    BentProfile,
    MetalLeg,
    MetalLegKind,
    bend_allowance,
    bend_deduction,
)


@pytest.mark.parametrize(("thickness", "radius"), [(0.024, 1 / 32), (0.032, 0.03), (0.063, 0.09), (0.125, 0.188)])
def test_a_right_angle_takes_what_the_handbook_prints(thickness: float, radius: float) -> None:
    assert bend_allowance(90, radius, thickness) == pytest.approx(0.64 * thickness + 1.57 * radius, abs=2e-4)


@pytest.mark.parametrize(("thickness", "radius", "share"), [(0.032, 0.030, 0.398), (0.125, 0.188, 0.406)])
def test_the_neutral_layer_of_aluminum_lies_where_the_table_has_it(
    thickness: float, radius: float, share: float
) -> None:
    """Half a hundredth of a thickness of a thousandth or so makes no difference at the brake."""
    printed = math.pi / 2 * (radius + share * thickness)
    assert bend_allowance(90, radius, thickness) == pytest.approx(printed, abs=0.0006)


def test_other_angles_take_their_share() -> None:
    assert bend_allowance(30, 0.1, 0.05) == pytest.approx(bend_allowance(90, 0.1, 0.05) / 3)
    assert bend_allowance(-30, 0.1, 0.05) == bend_allowance(30, 0.1, 0.05)


def test_what_is_deducted_at_a_right_angle() -> None:
    """Two setbacks R + T less the allowance: 2 (0.03 + 0.032) - (0.64 0.032 + 1.5708 0.03) = 0.0564."""
    assert bend_deduction(90, 0.03, 0.032) == pytest.approx(0.124 - 0.02048 - 0.047124, abs=1e-5)


def test_a_fold_deducts_a_share_of_the_thickness() -> None:
    """0.43 of a thickness; rule of the trade, from memory."""
    assert bend_deduction(180, 0.03, 0.1) == bend_deduction(-180, 0.0, 0.1) == pytest.approx(0.043)


def test_a_channel_is_as_wide_as_its_legs_less_two_bends() -> None:
    """3/4 + 2 + 1 1/2 less 2 × 0.0564; the bend lines half a deduction short of the corners."""
    legs = tuple(
        MetalLeg(kind=kind, width=width, direction_deg=way)
        for kind, width, way in (
            (MetalLegKind.FRAME, 0.75, -90),
            (MetalLegKind.RETURN, 2.0, 0),
            (MetalLegKind.FACE, 1.5, 90),
        )
    )
    profile = BentProfile(legs=legs, thickness=0.032, radius=0.03)
    cut = bend_deduction(90, 0.03, 0.032)
    assert profile.girth == pytest.approx(4.25 - 2 * cut)
    assert [line.at for line in profile.lines] == pytest.approx([0.75 - cut / 2, 2.75 - 1.5 * cut])
    assert profile.turns == (90, 90)
