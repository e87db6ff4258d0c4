"""Heat flows and temperatures that have exact answers. The formula stands beside each check."""

from dataclasses import replace
from math import cos, cosh, log, pi, sinh, sqrt

import pytest
from cases import examples
from heat_cases import WALLS, air, box, solid_layer, wall
from hypothesis import given
from hypothesis import strategies as st
from retired_cut import wall_blocks

from jambs.study.heat.cell_scheme import cell_flows
from jambs.study.heat.cells import lay_out
from jambs.study.heat.conduction import Coupling, coupling, solve
from jambs.study.heat.vertex_scheme import vertex_field
from jambs.study.regions.grid import Fineness
from jambs.study.regions.region import AirRegion
from jambs.study.wall.stack import HeatLayer, HeatStack
from jambs.study.wall.transmittance import wall_resistance

COARSE = Fineness(first=0.01, growth=2, largest=0.2)


@given(
    thicknesses=st.lists(st.floats(min_value=0.001, max_value=0.4), min_size=1, max_size=6),
    conductivities=st.lists(st.floats(min_value=0.02, max_value=3), min_size=6, max_size=6),
)
@examples(40)
def test_a_layer_stack_of_unequal_layers_is_exact_in_both_schemes(
    thicknesses: list[float], conductivities: list[float]
) -> None:
    """1 / (Rsi + sum of d/k + Rse), on any grid."""
    blocks, start = [], 0.0
    for number, thickness in enumerate(thicknesses):
        blocks.append(box(str(number), conductivities[number], (start, start + thickness), (0, 0.5)))
        start += thickness
    airs = [air("out", 0, 0.04, (-0.01, 0), (0, 0.5)), air("in", 1, 0.13, (start, start + 0.01), (0, 0.5))]
    resistance = 0.17 + sum(
        block_thickness / k for block_thickness, k in zip(thicknesses, conductivities, strict=False)
    )
    found = coupling(blocks, airs, fineness=COARSE)
    assert found.upper == pytest.approx(0.5 / resistance, rel=1e-9)
    assert found.lower == pytest.approx(0.5 / resistance, rel=1e-9)


def corner(fineness: Fineness) -> Coupling:
    """Two equal walls, 1 m thick and 6 m long inside, k 1, surfaces held."""
    blocks = [box("one", 1.0, (0, 1), (0, 7)), box("other", 1.0, (1, 7), (0, 1))]
    airs = [
        air("out", 0, 0.0, (-0.1, 0), (-0.1, 7)),
        air("out", 0, 0.0, (0, 7), (-0.1, 0)),
        air("in", 1, 0.0, (1, 7), (1, 7)),
    ]
    return coupling(blocks, airs, fineness=fineness)


def test_corner_of_two_walls() -> None:
    """Conformal map: L2D/k = 2 l/d + 1 - (2/pi) ln 2, an excess of 0.558729 over the inside lengths."""
    exact = 2 * 6 + 1 - 2 / pi * log(2)
    found = corner(Fineness(first=0.02, growth=1.3, largest=0.5))
    assert exact - 12 == pytest.approx(0.558729, abs=1e-6)
    assert found.lower < exact < found.upper
    assert found.mean == pytest.approx(exact, abs=1e-3)


def test_corner_by_outside_lengths_has_a_negative_excess() -> None:
    """The reference length sets the sign: +0.5587 k by inside lengths, -1.4413 k by outside ones."""
    found = corner(Fineness(first=0.02, growth=1.3, largest=0.5))
    assert found.mean - 2 * 7 == pytest.approx(-1.4413, abs=1e-3)


@pytest.mark.parametrize("ratio", [4.0, 100.0])
def test_checkerboard(ratio: float) -> None:
    """2 x 2 checkerboard of k1 and k2 in a unit square: sqrt(k1 k2) (Keller 1964, Dykhne 1970).

    The geometric mean of the two limits is exact by their duality; ratio 100 has a strong singularity at the center.
    """
    blocks = [
        box("all", 1.0, (0, 1), (0, 1)),
        box("square", ratio, (0, 0.5), (0, 0.5)),
        box("square", ratio, (0.5, 1), (0.5, 1)),
    ]
    found = coupling(blocks, held_left_and_right(), fineness=Fineness(first=0.02, growth=1.2, largest=0.1))
    assert found.lower < sqrt(ratio) < found.upper
    assert sqrt(found.lower * found.upper) == pytest.approx(sqrt(ratio), rel=1e-4)


def held_left_and_right() -> list[AirRegion]:
    return [air("out", 0, 0.0, (-0.1, 0), (0, 1)), air("in", 1, 0.0, (1, 1.1), (0, 1))]


def held_below_and_above() -> list[AirRegion]:
    return [air("out", 0, 0.0, (0, 1), (-0.1, 0)), air("in", 1, 0.0, (0, 1), (1, 1.1))]


@given(st.lists(st.floats(min_value=0.02, max_value=50), min_size=12, max_size=12))
@examples(25)
def test_duality_of_the_two_schemes(conductivities: list[float]) -> None:
    """Keller-Dykhne: G_x(k) G_y(1/k) = 1. The schemes are dual to each other, so it holds exactly on any grid."""
    xs, ys = (0.0, 0.13, 0.5, 0.72, 1.0), (0.0, 0.31, 0.6, 1.0)
    blocks = [
        box("part", conductivities[3 * i + j], (xs[i], xs[i + 1]), (ys[j], ys[j + 1]))
        for i in range(4)
        for j in range(3)
    ]
    inverse = [box("part", 1 / b.conductivity, (b.x0, b.x1), (b.y0, b.y1)) for b in blocks]
    upper = vertex_field(lay_out(blocks, held_left_and_right(), fineness=COARSE)).flows["in"]
    lower = cell_flows(lay_out(inverse, held_below_and_above(), fineness=COARSE))["in"]
    assert upper * lower == pytest.approx(1, abs=1e-7)


def cosine_mode() -> tuple[float, float, float]:
    """Surface, interface and base-flux amplitude of the mode cos(pi x), for a base of 1.

    Two layers, 0.3 m of k 1.3 under 0.2 m of k 0.04, film h 8 on top. In each layer T = a cosh + b sinh, matched by
    hand from the surface down.
    """
    lower, upper, film, m = 1.3, 0.04, 8.0, pi
    interface = cosh(m * 0.2) + film / (upper * m) * sinh(m * 0.2)
    flux = upper * m * sinh(m * 0.2) + film * cosh(m * 0.2)
    base = interface * cosh(m * 0.3) + flux / (lower * m) * sinh(m * 0.3)
    base_flux = lower * m * interface * sinh(m * 0.3) + flux * cosh(m * 0.3)
    return 1 / base, interface / base, base_flux / base


def test_cosine_mode_by_hand() -> None:
    """The amplitudes as another derivation had them."""
    assert cosine_mode() == pytest.approx((0.014824, 0.650622, 3.104793), abs=1e-6)


def cosine_error(steps: int) -> float:
    """Greatest relative error of interface and surface amplitude.

    The base is driven by airs that follow the cosine in steps, through a film of 0.01 m2K/W. A grid point feels the
    mean of the steps on both sides, which is the cosine there times cos(pi step / 2).
    """
    surface, interface, base_flux = cosine_mode()
    step, driven = 1 / steps, cos(pi / steps / 2) / (1 + 0.01 * base_flux)
    airs = [
        air(f"base {i}", cos(pi * (i + 0.5) * step), 0.01, (i * step, (i + 1) * step), (-step, 0)) for i in range(steps)
    ]
    airs.append(air("top", 0.0, 1 / 8, (0, 1), (0.5, 0.5 + step)))
    blocks = [box("lower", 1.3, (0, 1), (0, 0.3)), box("upper", 0.04, (0, 1), (0.3, 0.5))]
    field = solve(blocks, airs, fineness=Fineness(first=step, growth=1, largest=step))
    found = field.temperature(0, 0.5) / (surface * driven), field.temperature(0, 0.3) / (interface * driven)
    return max(abs(ratio - 1) for ratio in found)


def test_cosine_mode_through_two_layers() -> None:
    """Error 1e-4, and a quarter of it at half the step."""
    assert cosine_error(160) < 1e-4
    assert cosine_error(20) / cosine_error(40) == pytest.approx(4, rel=0.1)


def stud_wall(fineness: Fineness) -> Coupling:
    """Half a stud bay, 2x6 studs at 406 mm, 4 in rigid insulation; films 0.13 and 0.13."""
    half, stud, depth = 0.203, 0.019, WALLS["2x6 + 4 in"].stack.thickness
    blocks = wall_blocks(wall(0.1397, 0.1016, length=half), framing=stud, framing_from=0.0, wood=0.12)
    airs = [
        air("out", 0, 0.13, (-0.001, 0), (-half, 0)),
        air("in", 1, 0.13, (depth, depth + 0.001), (-half, 0)),
    ]
    return coupling(blocks, airs, fineness=fineness)


def test_stud_wall_lies_between_the_limits_of_iso_6946() -> None:
    """Adiabatic planes U 0.14747 and isothermal planes U 0.15326 bracket the 2-D value, by Rayleigh's principle."""
    framed = solid_layer(
        "stud space", thickness=0.1397, conductivity=0.039, framing_conductivity=0.12, framing_fraction=0.019 / 0.203
    )
    stack = replace_layer(WALLS["2x6 + 4 in"].stack, framed)
    limits = wall_resistance(stack)
    found = stud_wall(Fineness(first=0.001, growth=1.2, largest=0.02))
    assert 1 / limits.upper_limit == pytest.approx(0.14747, abs=1e-5)
    assert 1 / limits.lower_limit == pytest.approx(0.15326, abs=1e-5)
    assert 1 / limits.upper_limit < found.lower / 0.203 < found.upper / 0.203 < 1 / limits.lower_limit
    # [0.15152, 0.15154] by another implementation of the two schemes.
    assert found.mean / 0.203 == pytest.approx(0.15153, abs=2e-5)


def replace_layer(stack: HeatStack, layer: HeatLayer) -> HeatStack:
    return replace(stack, layers=tuple(layer if each.name == layer.name else each for each in stack.layers))
