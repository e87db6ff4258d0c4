"""What must hold for any cut, with no outside value needed: balance, scale, mirror, exchange, order."""

import math
from collections.abc import Callable, Sequence
from dataclasses import replace

import pytest
from heat_cases import FRAMES, JAMB, WALLS, air, box
from retired_cut import build_cut

from jambs.study import AirRegion, Block, HeatCut, coupling, solve
from jambs.study.regions.grid import Fineness
from jambs.study.regions.region import BlockKind, StudyError

CUT: HeatCut = build_cut(WALLS["2x4 + 2 in"], FRAMES["PVC"], JAMB, 0.020)
EVERYTHING: tuple[Block | AirRegion, ...] = (*CUT.blocks, *CUT.airs)
COARSE = Fineness(first=0.006, growth=2, largest=0.06)


def scaled(rectangle: Block | AirRegion, factor: float) -> Block | AirRegion:
    edges = {name: factor * getattr(rectangle, name) for name in ("x0", "x1", "y0", "y1")}
    if isinstance(rectangle, AirRegion):
        films = tuple((name, factor * value) for name, value in rectangle.films)
        return replace(rectangle, resistance=factor * rectangle.resistance, films=films, **edges)
    return replace(rectangle, **edges)


def mirrored(rectangle: Block | AirRegion) -> Block | AirRegion:
    return replace(rectangle, y0=-rectangle.y1, y1=-rectangle.y0)


def turned(rectangle: Block | AirRegion) -> Block | AirRegion:
    return replace(rectangle, x0=rectangle.y0, x1=rectangle.y1, y0=rectangle.x0, y1=rectangle.x1)


def blocks_of(rectangles: Sequence[Block | AirRegion]) -> list[Block]:
    return [each for each in rectangles if isinstance(each, Block)]


def airs_of(rectangles: Sequence[Block | AirRegion]) -> list[AirRegion]:
    return [each for each in rectangles if isinstance(each, AirRegion)]


def test_heat_that_goes_in_comes_out() -> None:
    flows = solve(CUT.blocks, CUT.airs).flows
    assert flows["inside"] > 0
    assert sum(flows.values()) == pytest.approx(0, abs=1e-12)


def test_heat_balance_with_held_surfaces() -> None:
    blocks = [box("one", 1.0, (0, 1), (0, 2)), box("two", 5.0, (0.3, 0.7), (0.5, 1.5))]
    airs = [
        air("a", 20, 0.0, (-0.1, 0), (0, 2)),
        air("b", 0, 0.13, (1, 1.1), (0, 1)),
        air("c", 5, 0.0, (1, 1.1), (1, 2)),
    ]
    assert sum(solve(blocks, airs, fineness=Fineness(first=0.05, largest=0.1)).flows.values()) == pytest.approx(
        0, abs=1e-9
    )


@pytest.mark.parametrize("change", [mirrored, turned], ids=["mirrored", "turned"])
def test_the_way_the_cut_lies_changes_nothing(change: Callable[[Block | AirRegion], Block | AirRegion]) -> None:
    base = coupling(CUT.blocks, CUT.airs, fineness=COARSE)
    rectangles = [change(each) for each in EVERYTHING]
    other = coupling(blocks_of(rectangles), airs_of(rectangles), fineness=COARSE)
    assert (other.lower, other.upper) == pytest.approx((base.lower, base.upper), rel=1e-9)


def test_all_lengths_and_films_ten_times_larger_couple_the_same() -> None:
    base = coupling(CUT.blocks, CUT.airs, fineness=COARSE)
    rectangles = [scaled(each, 10) for each in EVERYTHING]
    fineness = Fineness(first=0.06, growth=2, largest=0.6)
    other = coupling(blocks_of(rectangles), airs_of(rectangles), fineness=fineness)
    assert (other.lower, other.upper) == pytest.approx((base.lower, base.upper), rel=1e-9)


def test_other_temperatures_and_exchanged_ones_couple_the_same() -> None:
    base = coupling(CUT.blocks, CUT.airs, fineness=COARSE)
    for warm, cold in ((21.0, -7.0), (-7.0, 21.0)):
        airs = [replace(each, temperature=warm if each.temperature else cold) for each in CUT.airs]
        other = coupling(CUT.blocks, airs, fineness=COARSE)
        assert (other.lower, other.upper) == pytest.approx((base.lower, base.upper), rel=1e-9)


def test_more_conductivity_anywhere_never_couples_less() -> None:
    """Rayleigh's monotonicity."""
    base = coupling(CUT.blocks, CUT.airs, fineness=COARSE)
    for number, block in enumerate(CUT.blocks):
        blocks = list(CUT.blocks)
        blocks[number] = replace(block, conductivity=1.5 * block.conductivity)
        other = coupling(blocks, CUT.airs, fineness=COARSE)
        assert other.upper >= base.upper - 1e-12
        assert other.lower >= base.lower - 1e-12


def test_limits_close_as_the_grid_gets_finer() -> None:
    widths = [
        coupling(CUT.blocks, CUT.airs, fineness=Fineness(first=first, growth=1.4, largest=0.04)).half_width
        for first in (0.008, 0.004, 0.002)
    ]
    assert widths == sorted(widths, reverse=True)


def test_a_coupling_needs_two_temperatures() -> None:
    airs = [*CUT.airs[:-1], replace(CUT.airs[-1], temperature=0.5)]
    with pytest.raises(StudyError, match=r"exactly two air temperatures, found \[0.0, 0.5, 1.0\]"):
        coupling(CUT.blocks, airs, fineness=COARSE)


def test_no_surface_towards_an_air_is_an_error() -> None:
    field = solve(CUT.blocks, CUT.airs, fineness=COARSE)
    with pytest.raises(StudyError, match='no surface of the cut faces the air "attic"'):
        field.coldest("attic")


def test_a_film_goes_by_what_a_block_is_not_by_its_name() -> None:
    """A layer that is called frame has the film of a wall: 1 / (0.25 + 0.1 / 0.5 + 0.04), by hand."""
    block = box("frame", 0.5, (0, 0.1), (0, 1))
    room = replace(air("in", 1, 0.25, (0.1, 0.2), (0, 1)), films=((BlockKind.FRAME, 0.13),))
    airs = [room, air("out", 0, 0.04, (-0.1, 0), (0, 1))]
    assert coupling([block], airs, fineness=COARSE).mean == pytest.approx(1 / 0.49, rel=1e-9)
    frame = replace(block, kind=BlockKind.FRAME)
    assert coupling([frame], airs, fineness=COARSE).mean == pytest.approx(1 / 0.37, rel=1e-9)


def test_a_place_in_the_air_has_no_temperature_and_one_on_a_surface_has() -> None:
    """10 cm of 1 W/mK between films of 0.1 on both sides: 1/3 at one face, 2/3 at the other."""
    field = solve(
        [box("wall", 1.0, (0.0, 0.1), (0.0, 1.0))],
        [air("in", 1, 0.1, (0.1, 0.3), (0.0, 1.0)), air("out", 0, 0.1, (-0.2, 0.0), (0.0, 1.0))],
        through_x=(0.2,),
    )
    assert [field.temperature(x, 0.0) for x in (0.0, 0.1)] == pytest.approx([1 / 3, 2 / 3])
    assert math.isnan(field.temperature(0.2, 0.0)) and math.isnan(field.temperature(-0.2, 1.0))
