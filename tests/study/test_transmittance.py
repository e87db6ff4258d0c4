"""R and U of walls against published figures, in both unit systems. Tables: tests/authorities/study."""

import pytest
from heat_cases import WALLS, layers, read_authority, solid_layer
from retired_model import resistance_fraction_inside

from jambs.study.regions.region import StudyError
from jambs.study.wall.stack import US_RESISTANCE, HeatLayer, HeatStack
from jambs.study.wall.transmittance import (
    WallResistance,
    layer_temperatures,
    outboard_fraction,
    parallel_path,
    plane_temperatures,
    us_resistance,
    us_transmittance,
    wall_resistance,
)


def resistance_layer(name: str, resistance: float, framing: float | None = None, fraction: float = 0.0) -> HeatLayer:
    return HeatLayer(
        name=name, thickness=0.1, resistance=resistance, framing_resistance=framing, framing_fraction=fraction
    )


def test_against_the_worked_example_of_the_scottish_building_standards() -> None:
    """Annex 6.B (BS EN ISO 6946): upper 3.530, lower 3.418, U 0.288."""
    stack = HeatStack(
        layers=(
            resistance_layer("plasterboard", 0.100),
            resistance_layer("mineral wool and studs", 3.333, 1.077, 0.095),
            resistance_layer("plywood", 0.146),
            resistance_layer("cavity", 0.090),
            resistance_layer("brick", 0.132),
        ),
        inside_film=0.130,
        outside_film=0.040,
    )
    found = wall_resistance(stack)
    assert found.clear == pytest.approx(3.971, abs=0.0005)
    assert found.upper_limit == pytest.approx(3.530, abs=0.0005)
    assert found.lower_limit == pytest.approx(3.418, abs=0.0015)
    assert 1 / found.combined == pytest.approx(0.288, abs=0.0005)


@pytest.mark.parametrize(("studs", "published"), [(0.160, 0.13), (0.200, 0.12), (0.240, 0.11)])
def test_against_the_austrian_timber_construction_catalog(studs: float, published: float) -> None:
    """Two layers of framing that cross: studs 60 at 625, battens 50 (assumed) at 400; two decimals published."""
    wood, wool = 0.12, 0.035
    stack = HeatStack(
        layers=(
            solid_layer("boards", thickness=0.019, conductivity=wood),
            solid_layer(
                "battens", thickness=0.040, conductivity=wool, framing_conductivity=wood, framing_fraction=50 / 400
            ),
            HeatLayer(name="vapor barrier", thickness=0.0, resistance=0.0),
            solid_layer("inner spruce", thickness=0.022, conductivity=wood),
            solid_layer(
                "studs", thickness=studs, conductivity=wool, framing_conductivity=wood, framing_fraction=60 / 625
            ),
            solid_layer("outer spruce", thickness=0.022, conductivity=wood),
            solid_layer("wood-fiber board", thickness=0.080, conductivity=0.042),
            solid_layer("plaster", thickness=0.007, conductivity=1.0),
        ),
        inside_film=0.13,
        outside_film=0.04,
    )
    recomputed = {0.160: 0.1341, 0.200: 0.1188, 0.240: 0.1067}[studs]
    assert 1 / wall_resistance(stack).combined == pytest.approx(published, abs=0.005)
    assert 1 / wall_resistance(stack).combined == pytest.approx(recomputed, abs=0.0001)


@pytest.mark.parametrize("row", read_authority("u_factor_parallel_path.csv"), ids=lambda row: row["U_published"])
def test_against_published_us_assembly_u_factors(row: dict[str, str]) -> None:
    """Tables after ASHRAE 90.1 Appendix A: 16 in on center, framing 25 %, stucco R 0.08, two gypsum boards R 0.56."""

    def us_layer(name: str, value: float, stud: float | None = None) -> HeatLayer:
        framing = None if stud is None else stud * US_RESISTANCE
        return resistance_layer(name, value * US_RESISTANCE, framing, 0.25 if stud else 0.0)

    stack = HeatStack(
        layers=(
            us_layer("inner gypsum", 0.56),
            us_layer("cavity", float(row["cavity_R_effective_assumed"]), float(row["stud_R"])),
            us_layer("outer gypsum", 0.56),
            us_layer("continuous insulation", float(row["ci_R"])),
            us_layer("stucco", 0.08),
        )
    )
    assert us_transmittance(parallel_path(stack)) == pytest.approx(float(row["U_published"]), abs=0.0006)
    assert us_transmittance(parallel_path(stack)) == pytest.approx(
        float(row["U_parallel_path_recomputed"]), abs=0.00002
    )


def test_units_by_definition() -> None:
    """1 Btu (IT) 1055.05585262 J, 1 ft 0.3048 m, 1 degF 5/9 K: the two forms of one unit."""
    assert pytest.approx(0.3048**2 * (5 / 9) * 3600 / 1055.05585262, rel=1e-9) == US_RESISTANCE
    assert us_resistance(US_RESISTANCE) == pytest.approx(1, rel=1e-12)


def test_planes_fall_with_resistance() -> None:
    """By hand: R 1 and 3 between films 0.1 and 0.9, 25 and -25 degrees: 10 degrees per m2K/W."""
    stack = HeatStack(
        layers=(resistance_layer("one", 1.0), resistance_layer("three", 3.0)), inside_film=0.1, outside_film=0.9
    )
    assert plane_temperatures(stack, inside=25, outside=-25) == pytest.approx((24, 14, -16), abs=1e-9)
    assert layer_temperatures(stack, inside=25, outside=-25)[1] == pytest.approx((14, -16), abs=1e-9)


def test_outboard_fraction_by_hand() -> None:
    """Layers of R 1, 3, 0.5, 4: outside of the third lies 4 of 8.5."""
    stack = HeatStack(layers=tuple(resistance_layer(str(value), value) for value in (1.0, 3.0, 0.5, 4.0)))
    assert outboard_fraction(stack, "0.5") == pytest.approx(4 / 8.5, rel=1e-12)


def test_clear_walls_of_the_anchors() -> None:
    """U 0.2319, 0.1407, 0.0990 by hand; depths 176, 278, 379 mm."""
    assert [wall.stack.clear_transmittance for wall in WALLS.values()] == pytest.approx(
        [0.2319, 0.1407, 0.0990], abs=5e-5
    )
    assert [1000 * wall.stack.thickness for wall in WALLS.values()] == pytest.approx([176, 278, 379], abs=0.5)


@pytest.mark.parametrize("fraction", [0.1, 0.35, 0.6, 0.95])
def test_depth_and_resistance_fraction_are_inverse(fraction: float) -> None:
    stack = WALLS["2x6 + 4 in"].stack
    assert resistance_fraction_inside(stack, stack.depth_at_resistance_fraction(fraction)) == pytest.approx(
        fraction, abs=1e-12
    )


def test_the_lines_name_films_and_convention_in_both_systems() -> None:
    stack = HeatStack(layers=layers(0.1397, 0.1016))
    lines = wall_resistance(stack).lines
    assert lines[0] == (
        "clear wall, no framing: U 0.141 W/m²K (R 7.11 m²K/W); U 0.0248 Btu/h ft² °F (R 40.4); "
        "films 0.13 inside, 0.13 outside (m²K/W)"
    )
    assert "ISO 6946 combined method" in lines[1]
    assert lines[3].endswith("films R 0.68 inside, R 0.17 outside")


def test_a_wrong_layer_name_lists_the_layers() -> None:
    stack = HeatStack(layers=(resistance_layer("gypsum", 0.1), resistance_layer("wool", 3.0)))
    with pytest.raises(StudyError) as error:
        outboard_fraction(stack, "sheathing")
    assert str(error.value) == 'the wall has 0 layers named "sheathing", must be one. Its layers: gypsum, wool.'


def test_framing_without_resistance_is_refused() -> None:
    with pytest.raises(StudyError, match=r"framing fraction 0\.2 but framing resistance None, must be above zero"):
        resistance_layer("studs", 3.0, None, 0.2)


def test_the_greatest_error_by_hand() -> None:
    """Limits of 1 and 7 m²K/W: 4 is their mean, 3 half of what they differ by, 3/4 of 4 (ISO 6946)."""
    found = WallResistance(
        inside_film=0.13, outside_film=0.04, clear=5.0, upper_limit=7.0, lower_limit=1.0, parallel_path=4.0
    )
    assert (found.combined, found.greatest_error) == (4.0, 0.75)
    assert any("limits R 1.00 and 7.00 m²K/W: greatest error 75 %" in line for line in found.lines)
