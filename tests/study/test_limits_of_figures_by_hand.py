"""Figures of the study at their limits, by hand: signs, permeance, bands of a curve, a panel that just fits."""

from __future__ import annotations

from dataclasses import replace
from types import SimpleNamespace
from typing import Any

import pytest
from cases import kit_of
from test_wall_heat import STRAPPED, wall_of

from jambs.job.models.site import SiteFact
from jambs.length import MM_PER_INCH, Units
from jambs.section.region import SectionCut
from jambs.study.details import DetailChange, _lapped
from jambs.study.findings import CurveJumps
from jambs.study.heat.conduction import Coupling
from jambs.study.heat.cut import LinearTransmittance, Reference
from jambs.study.heat.frame import PANEL_IN_REBATE, FrameBlock
from jambs.study.placement_study import _alike, _own
from jambs.study.record.comparison_record import _built, _candidate, _detail, _heat, _mold, comparison_record
from jambs.study.record.figures import figure, share, signed
from jambs.study.record.wall_record import _layers, _resistances, _thickness, _vapor, _way, perms
from jambs.study.regions.region import Block, BlockKind, StudyError
from jambs.study.sweep import BAND, _band, _crossing, _excess_at, _refuse_jumps, least_plane
from jambs.study.wall.assumed_words import conductivity_assumed, member_share_assumed
from jambs.study.wall.indoor_air import MoldLimit
from jambs.study.wall.stack import US_PERM


@pytest.mark.parametrize(
    ("value", "text"), [(0.0123, "+0.012"), (-0.0123, "−0.012"), (-0.0004, "0"), (0.0004, "0"), (0.0005001, "+0.001")]
)
def test_a_difference_has_its_sign_and_nothing_has_none(value: float, text: str) -> None:
    assert signed(value, "W/K", 3)["text"] == text


@pytest.mark.parametrize(("value", "text"), [(-0.0004, "0.000"), (-0.0006, "-0.001"), (1.25, "1.250")])
def test_a_figure_that_rounds_to_nothing_is_not_negative(value: float, text: str) -> None:
    assert figure(value, "W/K", 3)["text"] == text


@pytest.mark.parametrize(
    ("permeance", "words"),
    [(1.0, "blocked, 1 perm"), (1.01, "yes, 1 perm"), (float("inf"), "freely"), (None, "unknown")],
)
def test_a_layer_blocks_up_to_a_limit_and_at_it(permeance: float | None, words: str) -> None:
    """Class II of the building codes ends at 1 perm, 1 included."""
    value = None if permeance is None else permeance * US_PERM
    assert _way(value, US_PERM) == words


def test_perms_have_two_digits() -> None:
    assert perms(12.34 * US_PERM)["text"] == "12 perm"


def curve(*heat: float) -> Any:
    return tuple(SimpleNamespace(flange_plane=float(at), mean_transmittance=one) for at, one in enumerate(heat))


@pytest.mark.parametrize(
    ("heat", "plane"),
    [((0.0, 1.0, 3.0, 5.0), 1.5), ((0.0, 1.0, 2.0, 2.0), 3.0), ((0.0, 2.0, 4.0, 1.0), 1.0)],
)
def test_where_a_curve_first_passes_two(heat: tuple[float, ...], plane: float) -> None:
    """Straight between positions an inch apart; where it never does, the last one."""
    assert _crossing(curve(*heat), 2.0) == plane


@pytest.mark.parametrize(
    ("plane", "excess"), [(0.0, 2.0), (0.25, 1.75), (1.0, 1.0), (2.5, 1.0), (3.0, 2.0), (3.25, None), (-0.25, None)]
)
def test_what_a_plane_costs_over_the_least(plane: float, excess: float | None) -> None:
    """Straight between positions an inch apart, 3, 2, 1 and 3 high; outside of them nobody knows."""
    heights = curve(3.0, 2.0, 1.0, 3.0)
    assert _excess_at(heights, heights[2], plane) == excess


@pytest.mark.parametrize("edges", [(0.0, 0.1), (0.1, 0.0), (-0.1, 0.1), (0.1, -0.1)])
def test_a_rectangle_without_extent_is_refused_along_either_edge(edges: tuple[float, float]) -> None:
    block = Block(name="stud", conductivity=0.12, x0=0.0, x1=0.1, y0=0.0, y1=0.1)
    with pytest.raises(StudyError):
        replace(block, x1=edges[0], y1=edges[1])


def test_insulation_lapped_over_a_frame_takes_the_place_of_the_exterior_jamb() -> None:
    """60 mm in front of the frame's face, no farther than the outside; a sill keeps its board."""
    frame = Block(name="frame", conductivity=0.13, x0=0.08, x1=0.15, y0=0.0, y1=0.06, kind=BlockKind.FRAME)
    jamb = Block(name="jamb", conductivity=0.12, x0=0.0, x1=0.08, y0=0.0, y1=0.02, kind=BlockKind.EXTERIOR_JAMB)
    kept, lapped = _lapped(SectionCut.HEAD, [frame, jamb], 0.03)
    assert kept == frame
    assert (lapped.x0, lapped.x1, lapped.y0, lapped.y1) == pytest.approx((0.02, 0.08, 0.0, 0.03))
    assert lapped.conductivity == 0.034
    (_, lapped) = _lapped(SectionCut.JAMB, [replace(frame, x0=0.04), jamb], 0.05)
    assert (lapped.x0, lapped.x1, lapped.y1) == (0.0, 0.04, 0.05)
    assert _lapped(SectionCut.SILL, [frame, jamb], 0.03) == [frame, jamb]


@pytest.mark.parametrize("depth", [0.0, 0.25, 0.5])
def test_the_first_layer_reaches_from_the_room_on(depth: float) -> None:
    """1/2 of gypsum board from 0 to 1/2, both faces its own."""
    layer = wall_of(STRAPPED).layer_at(depth)
    assert layer is not None and layer.name.startswith("gypsum board")


@pytest.mark.parametrize(("value", "text"), [(0.5, "50 %"), (0.996, "100 %"), (0.0, "0 %"), (None, None)])
def test_a_share_is_printed_in_percent_and_nothing_stays_nothing(value: float | None, text: str | None) -> None:
    found = share(value)
    assert (found and found["text"]) == text


@pytest.mark.parametrize(("coldest", "verdict"), [(0.754, "enough"), (0.7539, "NOT enough"), (0.76, "enough")])
def test_a_surface_as_warm_as_the_worst_month_asks_for_is_warm_enough(coldest: float, verdict: str) -> None:
    """The factor that keeps the monthly mean at 80 % is the least that will do: a limit, itself allowed."""
    surfaces: Any = SimpleNamespace(coldest=coldest, mold=MoldLimit(factor=0.754, month=2))
    found = _mold(surfaces)
    assert found is not None
    assert (found["text"], found["is_enough"]) == (f"0.75 in Feb: {verdict}", verdict == "enough")
    assert _mold(SimpleNamespace(coldest=coldest, mold=None)) is None  # type: ignore[arg-type]


STUDY: Any = SimpleNamespace(site=SimpleNamespace(degree_days=3000.0), job=SimpleNamespace(units=Units.INCH))
"""A heating season of 3000 kelvin-days: 72 000 kelvin-hours, so that 1 W/K costs 72 kWh."""


@pytest.mark.parametrize(("change", "season"), [(0.5, "+36.0"), (-0.25, "−18.0"), (0.0, "0"), (None, None)])
def test_what_a_change_of_the_detail_costs_in_a_season(change: float | None, season: str | None) -> None:
    told = _detail(DetailChange(words="", heat=change, change=change, coldest=None), STUDY)
    assert (told["season"] and told["season"]["text"]) == season
    assert (told["change"] is None) is (change is None)


def test_the_heat_of_a_position_beside_the_least() -> None:
    """0.25 W/K more than the least: 18 kWh; a psi-value to a thousandth, its limits to a tenth of that."""
    value = SimpleNamespace(value=0.12345, half_width=0.00012, is_usual=True)
    side = SimpleNamespace(side=SectionCut.JAMB, transmittance=value)
    at = SimpleNamespace(sides=[side], heat=1.25, mean_transmittance=0.12345, heat_half_width=0.001)
    window: Any = SimpleNamespace(sweep=SimpleNamespace(least=SimpleNamespace(heat=1.0)))
    told = _heat(SimpleNamespace(at=at, heat_per_year=90.04), window, STUDY)  # type: ignore[arg-type]
    assert told["sides"]["jamb"]["text"] == "0.123" and told["sides"]["jamb"]["half_width"]["text"] == "0.0001"
    assert [told[key]["text"] for key in ("mean", "whole", "half_width", "per_season", "over_least")] == [
        "0.123",
        "1.250",
        "0.001",
        "90.0",
        "18.0",
    ]


def test_a_candidate_tells_its_stops_and_one_that_cannot_be_studied_has_none() -> None:
    """Without figures there is nothing to build, and nothing that stands against it."""
    bare: dict[str, Any] = {"names": ("here",), "flange_plane": 8.0, "interior_depth": 3.0, "exterior_depth": 2.0}
    nothing = {"against": (), "why_not": (), "refused": (), "kit": None, "effects": None}
    told = _candidate(SimpleNamespace(**bare, **nothing), "A", None, STUDY)  # type: ignore[arg-type]
    assert (told["stops"], told["why_not"], told["built"]) == ([], None, None)


@pytest.mark.parametrize(
    ("depth", "name"),
    [
        (-0.01, None),
        (-1e-12, "gypsum board"),
        (0.5 + 1e-12, "gypsum board"),
        (3.0, "stud"),
        (6.5, "plywood"),
        (7.0, "strapping"),
        (11.0 + 1e-12, "EPS"),
        (11.01, None),
    ],
)
def test_the_layer_at_a_depth(depth: float, name: str | None) -> None:
    """1/2 of gypsum, studs to 6, plywood to 6 1/2, strapping to 8, foam to 11; a face is its inner layer's.

    A sheet without thickness is at no depth.
    """
    layers = [*STRAPPED[:3], "housewrap", *STRAPPED[3:]]
    found = wall_of(layers).layer_at(depth)
    assert (found and found.name.startswith(name or " ")) == (True if name else None)


def test_a_sheet_without_thickness_on_the_face_of_the_wall_is_not_the_layer_there() -> None:
    layer = wall_of(["housewrap", *STRAPPED]).layer_at(0.0)
    assert layer is not None and layer.name.startswith("gypsum board")


def test_figures_that_nobody_stated_are_told_to_the_digit_they_are_known_to() -> None:
    assert conductivity_assumed("stud 2x6", 0.1154).value == "0.115 W/mK"
    assert member_share_assumed("strapping", 3.5, 16.0, Units.INCH).value == "21.9 %"


@pytest.mark.parametrize(
    ("far", "jumps"), [(0.2499, False), (0.1901, False), (0.2501, True), (0.1899, True), (None, False)]
)
def test_a_curve_does_not_jump_by_three_hundredths(far: float | None, jumps: bool) -> None:
    """Between neighbors 0.22 and another value [W/(m K)], up or down; a place that cannot be built has none."""

    def position(value: float, plane: float) -> Any:
        side = SimpleNamespace(side=SectionCut.HEAD, transmittance=SimpleNamespace(value=value))
        return SimpleNamespace(flange_plane=plane, sides=[side], side=lambda which: side)

    found = {0: position(0.22, 7.0), 1: None if far is None else position(far, 7.5)}
    studied: Any = SimpleNamespace(at_count=found.get, subject=SimpleNamespace(opening=SimpleNamespace(mark="W1")))
    if not jumps:
        _refuse_jumps(studied, [0, 1])
        return
    with pytest.raises(StudyError) as error:
        _refuse_jumps(studied, [0, 1])
    (told,) = error.value.findings
    assert isinstance(told, CurveJumps) and (told.planes, told.values) == ((7.0, 7.5), (0.22, far))


PANEL = FrameBlock(depth=0.06, face=0.1, transmittance=1.6, panel_thickness=0.03, panel_setback=0.0)


def test_a_panel_may_be_flush_with_either_face_of_its_frame() -> None:
    assert replace(PANEL, panel_setback=0.03).panel_start == 0.03
    with pytest.raises(StudyError):
        replace(PANEL, panel_setback=0.0301)
    with pytest.raises(StudyError):
        replace(PANEL, panel_setback=-0.0001)


def test_a_frame_is_wider_than_the_rebate_of_its_panel() -> None:
    assert replace(PANEL, face=PANEL_IN_REBATE + 1e-6).face > PANEL_IN_REBATE
    with pytest.raises(StudyError):
        replace(PANEL, face=PANEL_IN_REBATE)


@pytest.mark.parametrize(
    ("value", "is_usual", "is_plausible"),
    [
        (-0.051, False, False),
        (-0.05, True, True),
        (0.15, True, True),
        (0.151, False, True),
        (0.3, False, True),
        (0.301, False, False),
    ],
)
def test_a_transmittance_at_the_ends_of_what_is_usual_and_of_what_may_be_printed(
    value: float, is_usual: bool, is_plausible: bool
) -> None:
    """Of installations: -0.05 to 0.15 W/mK is usual, up to 0.3 may be; both ends are within."""
    nothing = Reference(wall_transmittance=0.0, wall_length=1.0, frame_flow=0.0, films="")
    found = LinearTransmittance(coupling=Coupling(lower=value, upper=value), reference=nothing)
    assert found.value == value and found.half_width == 0.0
    assert (found.is_usual, found.is_plausible) == (is_usual, is_plausible)


def test_a_transmittance_is_what_flows_beyond_wall_and_frame() -> None:
    """Limits 1.0 and 1.5 W/mK, their mean 1.25; a wall of 0.5 W/m²K over 1.5 m is 0.75, the frame 0.25: 0.25 left."""
    reference = Reference(wall_transmittance=0.5, wall_length=1.5, frame_flow=0.25, films="")
    found = LinearTransmittance(coupling=Coupling(lower=1.0, upper=1.5), reference=reference)
    assert (found.value, found.half_width) == (0.25, 0.25)


def test_openings_of_one_window_in_one_wall_at_one_plane_are_studied_once() -> None:
    """9 1/16 is one plane whatever sums leave over, 0.1 mm farther out is not; nor with another window, wall, trim."""

    def at(plane: float, wall: str = "main", window: str = "fixed", exterior: str = "cedar") -> Any:
        planes = SimpleNamespace(wall=SimpleNamespace(name=wall))
        opening = SimpleNamespace(window_name=window, exterior=exterior)
        return SimpleNamespace(planes=planes, opening=opening, flange_plane=plane)

    first, twin, near = at(9.0625), at(9.0625 + 1e-12), at(9.0625 + 0.1 / MM_PER_INCH)
    others = [at(9.0625, window="door"), at(9.0625, "garage"), at(9.0625, exterior="metal")]
    assert _alike([first, near, twin, *others]) == [[first, twin], [near], *([one] for one in others)]


def test_openings_whose_planes_are_one_are_one_position_of_their_own() -> None:
    """Beside one at 9 those at 8.5, whatever a sum leaves over, and one at 8.25; another at 9 is the first again."""

    def at(mark: str, plane: float) -> Any:
        return SimpleNamespace(flange_plane=plane, opening=SimpleNamespace(mark=mark))

    group = [at("W1", 9.0), at("W2", 8.50001), at("W3", 8.25), at("W4", 9.0 + 1e-9), at("W5", 8.50004)]
    found = [(one.name, one.flange_plane) for one in _own(group, group[0])]
    assert found[0][1] == 9.0
    assert [(name.split(" for ")[1], plane) for name, plane in found[1:]] == [("W2, W5", 8.5), ("W3", 8.25)]


def test_a_fact_of_the_site_says_why_it_was_assumed_and_nothing_where_it_was_stated() -> None:
    stated = SiteFact(key="degree_days", what="heating degree days", value="3000 K d", why="")
    assumed = replace(stated, why="a usual one")
    job = SimpleNamespace(name="house", date=None, units=Units.INCH)
    site = SimpleNamespace(facts=(stated, assumed))
    study: Any = SimpleNamespace(job=job, site=site, walls=(), windows=(), left_out=())
    told = comparison_record(study)["site"]
    assert [one["assumed"] for one in told] == [None, "a usual one"]
    assert [one["text"] for one in told] == ["3000 K d"] * 2


@pytest.mark.parametrize(("length", "text"), [(0.0, "thin"), (0.031, "thin"), (1 / 32, '1/32"'), (0.5, '1/2"')])
def test_a_layer_under_a_32nd_is_thin_and_others_have_their_thickness(length: float, text: str) -> None:
    found = _thickness(length, STUDY)
    assert (found["text"], found["value"]) == (text, pytest.approx(length, abs=1e-3))


def test_resistances_of_layers_have_two_decimals_and_one_in_feet_and_fahrenheit() -> None:
    """1/2 in of gypsum: 0.0127 m / 0.1603 W/mK = 0.0792 m²K/W; in US units that by 0.1761 is 0.45."""
    heat = wall_of(STRAPPED)
    drying = SimpleNamespace(inward=None, outward=None, limit=57.2, is_blocked_both_ways=False, words="")
    count = len(heat.placed)
    wall: Any = SimpleNamespace(heat=heat, drying=[drying] * count, temperatures=[20.0] * (count + 1))
    first = _layers(wall, STUDY)[0]
    assert (first["resistance"]["text"], first["us_resistance"]["text"]) == ("0.08", "0.4")


def test_the_resistances_of_a_wall_have_the_digits_their_norms_print() -> None:
    """4 m²K/W is 0.25 W/m²K; by 5.678263 (NIST SP 811, from memory) R 22.7 and 0.0440 Btu/h ft² °F."""
    found = SimpleNamespace(clear=4.0, combined=3.5, parallel_path=3.25, inside_film=0.13, outside_film=0.04)
    first, second, third = _resistances(found)  # type: ignore[arg-type]
    keys = ("transmittance", "resistance", "us_transmittance", "us_resistance")
    assert [first[key]["text"] for key in keys] == ["0.250", "4.00", "0.0440", "22.7"]
    assert [one["resistance"]["value"] for one in (second, third)] == [3.5, 3.25]
    assert (first["films"], second["films"]) == ("0.13 inside, 0.04 outside (m²K/W)",) * 2
    assert third["films"] == "R 0.68 inside, R 0.17 outside"


def test_water_in_a_wall_is_told_to_a_gram() -> None:
    month = SimpleNamespace(month=2, total=0.12345, water=(("sheathing", 0.1004),))
    year = SimpleNamespace(months=(month,), peak=0.23456, dries_out=True)
    told = _vapor(SimpleNamespace(vapor=year))  # type: ignore[arg-type]
    assert told is not None
    (row,) = told["months"]
    assert (row["month"], row["total"]["text"], told["peak"]["text"]) == ("Feb", "0.123", "0.235")
    assert row["planes"] == [{"plane": "sheathing", "water": {"value": 0.1004, "unit": "kg/m2", "text": "0.100"}}]
    assert _vapor(SimpleNamespace(vapor=None)) is None  # type: ignore[arg-type]


def test_a_buck_is_as_deep_as_from_the_sheathing_to_the_flange() -> None:
    """6 1/2 to 9 1/4; a wall that has none makes none."""
    told = _built(kit_of(), STUDY)
    assert (told["buck"], told["buck_depth"]["text"]) == ('outboard, 2 3/4" deep', '2 3/4"')
    none = _built(kit_of(walls__main__buck=None, position="on the sheathing"), STUDY)
    assert (none["buck"], none["buck_depth"]) == ("none", None)


@pytest.mark.parametrize("least", range(0, 97, 3))
def test_the_least_plane_is_found_wherever_it_lies(least: int) -> None:
    """Heat that falls to one place and rises from it, on planes of 1/8 from 1 to 13; asked from 0 to 20."""
    studied: Any = SimpleNamespace(
        low=1.0,
        high=13.0,
        count=lambda plane: round((plane - 1.0) * 8),
        plane=lambda count: 1.0 + count / 8,
        heat=lambda count: abs(count - least),
        at_count=lambda count: SimpleNamespace(sides=()),
    )
    assert least_plane(studied, 0.0, 20.0) == 1.0 + least / 8
    # Held to planes of 4 to 7 it is the nearest of them.
    assert least_plane(studied, 4.0, 7.0) == min(max(1.0 + least / 8, 4.0), 7.0)


def test_the_band_reaches_to_where_a_meter_costs_so_much_more_on_both_sides() -> None:
    """An inch apart, in thousandths over the least 12, 3, 0, 4 and 14: 5 are passed 2/9 and 1/10 of an inch on."""
    assert BAND == 0.005
    heights = curve(0.112, 0.103, 0.1, 0.104, 0.114)
    assert _band(heights, heights[2]) == pytest.approx((1 - 2 / 9, 3.1))
    assert _band(heights[1:4], heights[2]) == (1.0, 3.0)


def test_between_positions_that_are_not_an_inch_apart_the_curve_is_straight_too() -> None:
    """From 1 to 3 over four inches, so 1/2 more an inch; it reaches 2 halfway."""
    near, far = curve(1.0, 3.0)
    far.flange_plane = 4.0
    assert _excess_at((near, far), near, 1.0) == 0.5
    assert _crossing((near, far), 2.0) == 2.0
