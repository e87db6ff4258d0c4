"""Bent metal outside in the study of heat: as a fin, in stairs, and in drawn sections, against others' figures."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise
from typing import Any

import pytest
from cases import changed, job_of
from drawn_peer import peer_coupling
from heat_cases import air, box, read_authority
from metal import lined
from peer import peer_solution
from test_against_iso10211 import MM, case_2
from test_drawn_sections import BY_HAND, CASES, case_of
from test_section_cut import subject

from jambs.job.models.metal_returns import MetalReturnsEntry, SheetMetal
from jambs.section.cut import cut_sections
from jambs.section.metals import metal_of, metals
from jambs.section.region import SectionCut as Side
from jambs.section.region import Stuff
from jambs.study import coupling, solve
from jambs.study.at_position import DRAWN, LIMITS_WITHIN, MEAN_WITHIN, AtPosition, WindowInWall, study_at
from jambs.study.details import _lapped
from jambs.study.heat.cut import linear_transmittance
from jambs.study.heat.section_cut import WALL_LENGTH, section_cut, section_reference
from jambs.study.heat.sheet import blocks_of_sheet
from jambs.study.placement_study import of_metal
from jambs.study.regions.grid import Fineness
from jambs.study.regions.region import BlockKind
from jambs.study.sun.sun_at import reveal_at

ALUMINUM, THICK, LONG = 160.0, 0.8 * MM, 0.1
"""Conductivity [W/(m K)], thickness and length of a fin [m]."""


def level(thick: float = THICK) -> list[tuple[float, float]]:
    return [(0.0, 0.0), (LONG, 0.0), (LONG, thick), (0.0, thick)]


def sloped(rise: float, thick: float = THICK) -> list[tuple[float, float]]:
    """A sheet that rises by so much per length along x, cut off upright, as thick square to its slope."""
    high = thick * math.hypot(1, rise)
    return [(0.0, 0.0), (LONG, rise * LONG), (LONG, rise * LONG + high), (0.0, high)]


def treads(count: int) -> list[float]:
    return [LONG * step / count for step in range(1, count)]


def test_a_sheet_in_the_wind_is_a_fin() -> None:
    """Fin of one thickness, its tip without loss: excess cosh(m (L - x)) / cosh(m L), heat M tanh(m L), where
    m² = h P / (k A), M = sqrt(h P k A); of a sheet a meter deep P = 2, A = t. Incropera and DeWitt, Fundamentals of
    Heat and Mass Transfer, table of fins (from memory). h = 25: m = sqrt(50 / (160 · 0.0008)) = 19.76/m, m L = 1.976.
    """
    h = 25.0
    m = math.sqrt(2 * h / (ALUMINUM * THICK))
    assert m == pytest.approx(19.764, abs=0.001)
    sheet = blocks_of_sheet("fin", ALUMINUM, level(), treads=[])
    airs = [
        air("hot", 1.0, 0.0, (-MM, 0), (0, THICK)),
        air("wind", 0.0, 1 / h, (-MM, LONG), (-MM, 0)),
        air("wind", 0.0, 1 / h, (-MM, LONG), (THICK, THICK + MM)),
    ]
    found = solve(sheet, airs, fineness=DRAWN, through_x=[LONG / 2])
    assert found.temperature(LONG / 2, 0.0) == pytest.approx(math.cosh(m * LONG / 2) / math.cosh(m * LONG), abs=0.002)
    assert found.temperature(LONG, 0.0) == pytest.approx(1 / math.cosh(m * LONG), abs=0.002)
    by_hand = math.sqrt(2 * h * ALUMINUM * THICK) * math.tanh(m * LONG)
    assert by_hand == pytest.approx(2.4345, abs=0.0001)
    limits = coupling(sheet, airs, fineness=DRAWN)
    # The sheet is thin, not without thickness: across it lies another h t / k = 0.0125 % of the film.
    assert limits.lower * 0.999 < by_hand < limits.upper * 1.001
    assert limits.mean == pytest.approx(by_hand, rel=0.01)


@pytest.mark.parametrize("rise", [0.06, 0.15, 0.5, -0.15])
@pytest.mark.parametrize("count", [4, 12])
def test_stairs_conduct_as_the_slope_they_stand_for(rise: float, count: int) -> None:
    """A sheet from 1 to 0 degrees lets k t / length through, along its slope: at 15 % 0.128 / 0.10112 = 1.2658."""
    stairs = blocks_of_sheet("sheet", ALUMINUM, sloped(rise), treads=treads(count))
    lowest, highest = min(one.y0 for one in stairs), max(one.y1 for one in stairs)
    ends = [air("hot", 1.0, 0.0, (-MM, 0), (-1, 1)), air("cold", 0.0, 0.0, (LONG, LONG + MM), (-1, 1))]
    filling = box("insulation", 1e-7, (0, LONG), (lowest, highest))
    shut = [air(one.name, one.temperature, 0.0, (one.x0, one.x1), (lowest, highest)) for one in ends]
    found = coupling([filling, *stairs], shut, fineness=Fineness(first=0.2 * MM, growth=1.5, largest=4 * MM))
    by_hand = ALUMINUM * THICK / math.hypot(LONG, rise * LONG)
    # Round a corner heat cuts in, by 0.44 thicknesses (1 - 2 ln 2 / pi of a square each): two to a tread.
    assert 0.999 * by_hand < found.mean < 1.12 * by_hand


def test_a_level_sheet_is_its_outline_and_has_no_riser() -> None:
    (one,) = blocks_of_sheet("sheet", ALUMINUM, level(), treads=[])
    assert (one.x0, one.x1, one.y0, one.y1, one.conductivity) == (0.0, LONG, 0.0, THICK, ALUMINUM)


def test_a_riser_stands_on_the_lower_tread_beside_the_upper_one() -> None:
    """Two treads of 50 mm at 10 %: 5 mm apart. The first is the lower one, its riser at its end, 0.804 mm wide."""
    low, high, riser = blocks_of_sheet("sheet", ALUMINUM, sloped(0.1), treads=[LONG / 2])
    thick = THICK * math.hypot(1, 0.1)
    assert (low.y0, high.y0) == pytest.approx((0.0025, 0.0075))
    assert (riser.x0, riser.x1) == pytest.approx((0.05 - thick, 0.05))
    assert (riser.y0, riser.y1) == pytest.approx((0.0025 + thick, 0.0075 + thick))
    down = blocks_of_sheet("sheet", ALUMINUM, sloped(-0.1), treads=[LONG / 2])[2]
    assert (down.x0, down.x1) == pytest.approx((0.05, 0.05 + thick))
    # cos² (1 + rise) = 1.1 / 1.01
    assert low.conductivity == riser.conductivity == pytest.approx(ALUMINUM * 1.1 / 1.01)


def test_iso_10211_case_2_on_the_grid_of_drawn_sections() -> None:
    """ISO 10211 Annex A case 2: its sheet of 1.5 mm is one cell thick on this grid; every point within 0.1 K."""
    field = solve(*case_2(), fineness=DRAWN)
    across = [one for one in field.cells.grid.y.tolist() if 0 <= one < 1.6 * MM]
    assert across == pytest.approx([0.0, 1.5 * MM])
    *points, flow = read_authority("iso10211_case2.csv")
    for row in points:
        found = field.temperature(float(row["x_mm"]) * MM, float(row["y_mm_from_inside"]) * MM)
        assert found == pytest.approx(float(row["ref"]), abs=float(row["tolerance"])), row["point"]
    assert 20 * coupling(*case_2(), fineness=DRAWN).mean == pytest.approx(float(flow["ref"]), abs=0.1)


PLACES = [
    name for name, (paths, _) in CASES.items() if "exterior_trim" not in paths and "proud" not in name
]  # fmt: skip


SLIVERS = "service cavity"
"""Edges of its sill lie 5 micrometers apart, on which the library's own search for a point in a cell gives up."""


def lined_case(name: str, **returns: Any) -> tuple[WindowInWall, AtPosition]:
    paths, plane = CASES[name]
    case = case_of({**paths, "exterior_trim__outside": lined(**returns)})
    return case, study_at(case, plane)


@pytest.mark.parametrize("side", [Side.HEAD, Side.JAMB])
@pytest.mark.parametrize("name", PLACES)
def test_a_drawn_section_in_metal_lies_at_the_independent_peer(name: str, side: Side) -> None:
    """Painted from the drawing itself, by hand with 160 W/mK; its sill slopes, which no raster holds as one sheet."""
    case, found = lined_case(name)
    drawn = found.side(side)
    assert drawn is not None
    (section,) = (one for one in cut_sections(found.kit, wall_length=WALL_LENGTH) if one.cut is side)
    peer = peer_coupling(case, found, section, {**BY_HAND, "metal": ALUMINUM})
    limits = drawn.transmittance.coupling
    assert limits.lower < peer < limits.upper
    assert limits.mean == pytest.approx(peer, abs=2e-4)
    assert limits.half_width <= LIMITS_WITHIN


@pytest.mark.parametrize("name", [one for one in PLACES if one != SLIVERS])
def test_the_peer_lies_between_the_limits_of_a_sill_in_metal(name: str) -> None:
    """The same rectangles by quadratic elements of scikit-fem, on a grid finer."""
    _, found = lined_case(name)
    sill = found.side(Side.SILL)
    assert sill is not None
    peer = peer_solution(sill.cut, fineness=Fineness(first=0.0017, growth=1.5, largest=0.03)).coupling
    limits = sill.transmittance.coupling
    assert limits.lower < peer < limits.upper
    assert limits.mean == pytest.approx(peer, abs=MEAN_WITHIN)
    assert limits.half_width <= LIMITS_WITHIN


def test_the_sheet_of_a_sloping_sill_hangs_together() -> None:
    """From the top of its back leg to the foot of its front: k t / (3/4" + 4.537" + 1 1/2") or a little more.

    Its slope runs 4.468" level at 10 degrees; 160 W/mK, 0.032" thick: 0.7545.
    """
    _, found = lined_case(PLACES[0])
    sill = found.side(Side.SILL)
    assert sill is not None
    sheet = [one for one in sill.cut.blocks if one.kind is BlockKind.EXTERIOR_METAL]
    x0, x1, y0, y1 = (
        pick(getattr(one, edge) for one in sheet) for pick, edge in ((min, "x0"), (max, "x1"), (min, "y0"), (max, "y1"))
    )
    over = [air("hot", 1.0, 0.0, (x0, x1), (y1, y1 + MM)), air("cold", 0.0, 0.0, (x0, x1), (y0 - MM, y0))]
    slight = box("next to nothing", 1e-7, (x0, x1), (y0, y1))
    fineness = Fineness(first=0.3 * MM, growth=1.5, largest=4 * MM)
    by_hand = ALUMINUM * 0.032 / (0.75 + 4.468 / math.cos(math.radians(10)) + 1.5)
    assert 0.98 * by_hand < coupling([slight, *sheet], over, fineness=fineness).mean < 1.12 * by_hand


def test_the_better_the_metal_conducts_the_more_heat_goes_out_and_the_colder_it_gets() -> None:
    """Heat grows with conductivity (Rayleigh's monotony): stainless 17, steel 50, aluminum 160, copper 380."""
    order = (SheetMetal.STAINLESS_STEEL, SheetMetal.STEEL, SheetMetal.ALUMINUM, SheetMetal.COPPER)
    found = [lined_case(PLACES[0], metal=one.value)[1] for one in order]
    for less, more in pairwise(found):
        for one, other in zip(less.sides, more.sides, strict=True):
            assert one.transmittance.value < other.transmittance.value
            assert one.factors.coldest.temperature > other.factors.coldest.temperature


WITHOUT = {Side.HEAD: -0.010452407357199545, Side.JAMB: -0.00355064509501124, Side.SILL: 0.021633336848315587}
"""Linear transmittances of a window lined with metal, as the study had them while it left metal out [W/mK]."""


def test_without_the_metal_of_a_section_every_figure_is_as_it_was() -> None:
    """To the last digit but what processors differ by; with it heat grows at every side."""
    case = subject(exterior_trim__outside=lined())
    found = study_at(case, 9.25)
    for section in cut_sections(found.kit, wall_length=WALL_LENGTH):
        frame = case.window.blocks[section.cut]
        bare = tuple(replace(one, conductivity=None) if one.stuff is Stuff.METAL else one for one in section.regions)
        cut = section_cut(replace(section, regions=bare), found.kit.placement, case.wall, frame)
        without = linear_transmittance(cut, section_reference(cut, case.wall, frame), fineness=DRAWN).value
        assert without == pytest.approx(WITHOUT[section.cut], rel=1e-11)
        side = found.side(section.cut)
        assert side is not None and side.transmittance.value > without + 0.001


def test_head_flashing_and_the_flange_of_a_window_are_left_out_as_they_were() -> None:
    """Both are metal in the section; of neither the job says which, and the flange is in the window's own figures."""
    _, found = lined_case(PLACES[0])
    (head,) = (one for one in cut_sections(found.kit, wall_length=WALL_LENGTH) if one.cut is Side.HEAD)
    conducting = [one.name for one in head.regions if one.stuff is Stuff.METAL and one.conductivity]
    assert conducting == ["metal return head"]
    assert {one.name for one in head.regions if one.stuff is Stuff.METAL} > {"head flashing", "nailing flange"}


def test_wooden_trim_outside_has_no_bent_metal() -> None:
    for side in study_at(subject(), 9.25).sides:
        assert not [one for one in side.cut.blocks if one.kind is BlockKind.EXTERIOR_METAL]


def test_insulation_lapped_over_the_frame_takes_the_place_of_the_metal_there() -> None:
    _, found = lined_case(PLACES[0])
    jamb, sill = found.side(Side.JAMB), found.side(Side.SILL)
    assert jamb is not None and sill is not None
    assert BlockKind.EXTERIOR_METAL in {one.kind for one in jamb.cut.blocks}
    assert BlockKind.EXTERIOR_METAL not in {one.kind for one in _lapped(Side.JAMB, [*jamb.cut.blocks], 0.03)}
    assert BlockKind.EXTERIOR_METAL in {one.kind for one in _lapped(Side.SILL, [*sill.cut.blocks], 0.03)}


def test_the_sun_comes_in_between_the_returns() -> None:
    """The face of the frame is 2 1/2", the reveal 1/4": 1/4" of frame is free beside the return, in the sun's way."""
    case, found = lined_case(PLACES[0])
    reveal = reveal_at(case, found)
    assert (reveal.beside, reveal.above) == pytest.approx((0.25 * 0.0254, 0.25 * 0.0254))


def entry(**keys: Any) -> MetalReturnsEntry:
    (opening,) = job_of(changed(exterior_trim__outside=lined(**keys))).openings
    assert opening.exterior is not None and opening.exterior.returns is not None
    return opening.exterior.returns


@pytest.mark.parametrize(
    ("material", "metal", "kind", "is_assumed"),
    [
        ("coil aluminum", None, SheetMetal.ALUMINUM, False),
        ("galvanized steel", None, SheetMetal.STEEL, False),
        ("white coil", "zinc", SheetMetal.ZINC, False),
        ("coil aluminum", "steel", SheetMetal.STEEL, False),
        ("white coil", None, SheetMetal.ALUMINUM, True),
    ],
)
def test_what_a_sheet_is_of(material: str, metal: str | None, kind: SheetMetal, is_assumed: bool) -> None:
    found = metal_of(entry(material=material, metal=metal))
    assert (found.metal.kind, found.is_assumed) == (kind, is_assumed)


def test_what_is_assumed_of_a_sheet_is_said_and_nothing_else() -> None:
    """Beside the other values of a comparison that nobody stated."""
    (opening,) = job_of(changed(exterior_trim__outside=lined(material="white coil"))).openings
    (assumed,) = of_metal(opening)
    assert (assumed.what, assumed.value) == ("bent metal outside", "aluminum, 160 W/mK")
    assert assumed.why == (
        'the usual sheet; "white coil" does not tell what it is of; give metal in returns: aluminum, steel, '
        "stainless steel, copper, zinc"
    )
    for trim in (lined(), lined(material="white coil", metal="copper")):
        assert of_metal(*job_of(changed(exterior_trim__outside=trim)).openings) == ()
    assert of_metal(*job_of(changed()).openings) == ()
    assert of_metal(*job_of(changed(exterior_trim=None)).openings) == ()


@pytest.mark.parametrize("row", read_authority("metal_conductivities.csv"), ids=lambda row: row["alloy"])
def test_a_metal_conducts_about_as_the_alloys_of_a_handbook(row: dict[str, str]) -> None:
    """A design value stands for many alloys: within a third of each that a sheet may be of."""
    (found,) = (one for one in metals() if one.kind is SheetMetal(row["metal"]))
    assert found.conductivity == pytest.approx(float(row["conductivity"]), rel=0.3)


def test_every_metal_has_its_source() -> None:
    assert {one.kind for one in metals()} == set(SheetMetal)
    assert all("ISO 10456" in one.source for one in metals())
