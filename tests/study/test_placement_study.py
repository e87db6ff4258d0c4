"""Positions of drawn windows side by side: depths of place/, brute force over the grid, sums by hand, the rule."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from cases import METRIC, changed, job_of, kit_of, placed
from moist_air import psychrolib

from jambs.job import Job, read_job
from jambs.job.models.site import site_of
from jambs.length import Units
from jambs.parts.board.kinds import PartKind
from jambs.place.alternatives import alternatives
from jambs.place.choose import within_limits
from jambs.place.limit_kinds import LimitKind
from jambs.place.placement import Alternative, Placement
from jambs.place.rules import RuleError
from jambs.place.solve import PlaceError, place_at, place_windows
from jambs.section.region import SectionCut as Side
from jambs.study.at_position import AtPosition, corner_side, kit_at, study_at, subject_of
from jambs.study.candidates import LEAST, OWN, Wish, _best_board, boards_words
from jambs.study.details import _changes, compare_drawn_details
from jambs.study.placement_study import (
    PlacementStudy,
    WindowComparison,
    _alike,
    _another_plane,
    _by_window,
    _commonest,
    least_heat_loss,
    planned_effects,
    study_placements,
)
from jambs.study.record import wall_record
from jambs.study.record.comparison_record import comparison_record
from jambs.study.record.figures import figure, sentences, signed
from jambs.study.record.planned_positions import planned_positions
from jambs.study.record.wall_record import perms
from jambs.study.sun.sun_at import reveal_at, sun_at
from jambs.study.sweep import BAND, Studied, _rule_plane, least_plane
from jambs.wall.planes import stack_wall

MM = 0.0254
CASEMENT = {
    "windows__fixed__u_frame": "1.6",
    "windows__fixed__glass": {"panes": "2", "pane_thickness": "1/8"},
    "openings__0__faces": "south",
    "shop__grid": "1/16",
    "shop__proud": "1/16",
    "shop__taper_tolerance": "1/16",
}


SITE = {"site": {"latitude_deg": "43", "degree_days": "3500 C", "design_outdoor_temperature": "-18 C"}}


def job(**paths: Any) -> Job:
    return job_of(changed(**{**CASEMENT, **paths}))


@pytest.fixture(scope="module")
def study() -> PlacementStudy:
    found = job(**SITE)
    return study_placements(place_windows(found), found)


@pytest.fixture(scope="module")
def window(study: PlacementStudy) -> WindowComparison:
    (found,) = study.windows
    return found


def test_the_depths_of_the_candidates_are_those_of_the_solver(window: WindowComparison) -> None:
    opening, planes, whole = window.subject.opening, window.subject.planes, window.subject.job
    weighed = {one.flange_plane: one for one in alternatives(opening, planes, whole)}
    known = [one for one in window.candidates if one.flange_plane in weighed]
    assert len(known) >= 4
    for one in known:
        of_place = weighed[one.flange_plane]
        assert one.interior_depth == of_place.interior_depth
        assert one.exterior_depth == of_place.exterior_depth
        assert one.against == of_place.against
    for one in window.candidates:
        assert one.kit is not None
        placement = one.kit.placement
        assert (placement.interior_depth, placement.exterior_depth) == (one.interior_depth, one.exterior_depth)


def test_interior_and_exterior_depth_add_up_in_every_column(window: WindowComparison) -> None:
    """By hand: trim plane 12, jamb depth 4 9/16, projection 1 1/4: together 6 3/16 (brief, section 2)."""
    for one in window.candidates:
        assert one.interior_depth + one.exterior_depth == pytest.approx(6 + 3 / 16, abs=1e-9)


def test_every_honest_candidate_is_there(window: WindowComparison) -> None:
    names = {name for one in window.candidates for name in one.names}
    assert {
        "flange on the sheathing",
        "shared equally",
        "equal depths",
        "flange on the trim plane",
        LEAST,
        OWN,
    } <= names
    assert any(name.startswith("best of one board") for name in names)
    planes = [one.flange_plane for one in window.candidates]
    assert planes == sorted(planes) and len(set(planes)) == len(planes)


@pytest.mark.parametrize(("within", "weighed"), [(None, None), (9.0, None), (9.0625, 9.0625), (8.9375, 8.9375)])
def test_the_least_within_the_limits_is_weighed_where_it_is_another_place(
    within: float | None, weighed: float | None
) -> None:
    assert _another_plane(within, than=9.0) == weighed


def test_the_rule_of_thumb_by_hand() -> None:
    """Sixty hundredths of the resistance from the room, in the middle of a frame 5 13/16 deep, 1 1/4 past its flange.

    Films of 0.13, 5 1/2 in of still air 0.18, board 0.1603, plywood 0.1163 and EPS 0.0361 W/mK; cladding left out.
    """
    read = job()
    inner = 0.13 + 0.0254 * (0.5 / 0.1603 + 0.5 / 0.1163) + 0.18
    whole = inner + 0.0254 * (5 / 0.0361 + 0.5 / 0.1163) + 0.13
    middle = 6.5 + (0.6 * whole - inner) * 0.0361 / 0.0254
    subject = subject_of(read.openings[0], stack_wall(read.openings[0].wall, grid=read.shop.grid), read)
    assert _rule_plane(subject) == pytest.approx(middle + 5.8125 / 2 - 1.25, abs=1e-6)


def test_the_least_place_against_every_position_of_the_grid(window: WindowComparison) -> None:
    """Brute force: every sixteenth of an inch within half an inch on both sides."""
    studied = Studied(window.subject)
    best = studied.count(window.sweep.least.flange_plane)
    around = {count: studied.heat(count) for count in range(best - 8, best + 9)}
    assert min(around, key=lambda count: around[count]) == best
    assert window.sweep.least.heat == min(one.heat for one in window.sweep.positions)


def test_the_least_place_stays_when_the_grid_of_the_heat_changes(window: WindowComparison) -> None:
    """The optimum repeats to one step of the shop's grid when the solver's grid is half as coarse."""
    from jambs.study.regions.grid import Fineness

    finer = Studied(window.subject, fineness=Fineness(first=0.003, growth=1.4, largest=0.03))
    low, high = (window.sweep.least.flange_plane + step for step in (-0.75, 0.75))
    step = window.subject.job.shop.grid.step
    assert least_plane(finer, low, high) == pytest.approx(window.sweep.least.flange_plane, abs=step + 1e-9)


def test_the_band_costs_what_it_says(window: WindowComparison) -> None:
    """Computed at its ends, where it does not end with the wall: BAND more on each meter, by interpolation."""
    low, high = window.sweep.band
    studied = Studied(window.subject)
    assert studied.low <= low <= window.sweep.least.flange_plane <= high <= studied.high
    if high < studied.high - 1e-9:
        at_end = study_at(window.subject, high)
        excess = at_end.mean_transmittance - window.sweep.least.mean_transmittance
        assert excess == pytest.approx(BAND, abs=4e-4)


def test_the_rule_puts_the_window_where_the_sweep_is_least(window: WindowComparison) -> None:
    """With limits that do not bind, the rule's plane is the sweep's; the interior depth is on the shop's grid."""
    free = job(
        position={"least_heat_loss": "yes"},
        limits={"overhang": "6", "greatest_interior_depth": "12", "least_exterior_depth": "1/4"},
    )
    (placement,) = place_windows(free, least_heat_loss=least_heat_loss(free))
    assert placement.flange_plane == window.sweep.least.flange_plane
    assert free.shop.grid.holds(placement.interior_depth)
    assert "Least heat through the joint" in placement.reasons[0].sentence(Units.INCH)


def test_the_rule_keeps_to_the_limits() -> None:
    """An overhang of one inch: the flange at most one inch outside the sheathing plane, 6 1/2 + 1."""
    tight = job(position="least heat loss", limits={"overhang": "1"})
    (placement,) = place_windows(tight, least_heat_loss=least_heat_loss(tight))
    _, high = within_limits([placement.opening], placement.planes, tight)
    assert high.limit is LimitKind.OVERHANG
    assert placement.flange_plane == 7.5
    assert "greatest overhang" in placement.reasons[0].sentence(Units.INCH)


def test_the_rule_without_a_study_says_so() -> None:
    asked = job(position={"least_heat_loss": "yes"})
    with pytest.raises(PlaceError) as error:
        place_windows(asked)
    assert error.value.sentences(Units.INCH) == (
        "wall 'main': least_heat_loss: there is no heat study here; give another rule, like share: 1/2.",
    )


def test_the_rule_says_what_cannot_be_studied() -> None:
    """A frame 1/2 in wide cannot hold a glazing that is 15 mm deep in its rebate."""
    narrow = job(position={"least_heat_loss": "yes"}, windows__fixed__frame_face="1/2")
    with pytest.raises(PlaceError, match=r"wall 'main': least_heat_loss: frame .* must lie inside its depth"):
        place_windows(narrow, least_heat_loss=least_heat_loss(narrow))
    with pytest.raises(RuleError):
        (opening,) = narrow.openings
        planes = stack_wall(opening.wall, grid=narrow.shop.grid)
        least_heat_loss(narrow)(opening, planes, 7.0, 9.0)


def test_heat_of_the_whole_window_by_hand(window: WindowComparison, study: PlacementStudy) -> None:
    """Twice the height of the jamb's figure and once the width of head and sill; 3500 K d are 84 kKh."""
    for one in window.candidates:
        assert one.effects is not None
        sides = {side.side: side.transmittance.value for side in one.effects.at.sides}
        by_hand = 2 * 47.5 * MM * sides[Side.JAMB] + 35.5 * MM * (sides[Side.HEAD] + sides[Side.SILL])
        assert one.effects.at.heat == pytest.approx(by_hand, rel=1e-12)
        assert one.effects.heat_per_year == pytest.approx(84 * by_hand, rel=1e-12)


def test_humidity_against_psychrolib(window: WindowComparison) -> None:
    """At the humidity found the dew point of the room is the temperature of the coldest place."""
    for one in window.candidates:
        assert one.effects is not None
        surfaces = one.effects.surfaces
        assert surfaces.temperature == pytest.approx(-18 + 38 * surfaces.coldest, abs=1e-9)
        found = psychrolib.GetTDewPointFromRelHum(20, surfaces.sweats_above)
        assert found == pytest.approx(surfaces.temperature, abs=0.05)
        assert surfaces.estimate <= surfaces.coldest + 1e-9
        assert surfaces.coldest <= surfaces.corner + 1e-9


def test_the_reveal_by_hand(window: WindowComparison) -> None:
    """Frame face 2 1/2 all round, exterior jamb 1/4 from the face's edge; from the pane to the casing's face.

    Shared equally: exterior depth 1 1/2; pane 3/4 thick in the middle of a frame 5 13/16 deep, so 2 17/32 behind its
    outside; casing 1 in on the trim plane.
    """
    shared = next(one for one in window.candidates if "shared equally" in one.names)
    assert shared.effects is not None
    reveal = reveal_at(window.subject, shared.effects.at)
    assert reveal.recess == pytest.approx((1.5 + 2 + 17 / 32 + 1) * MM, abs=1e-9)
    assert (reveal.width, reveal.height) == pytest.approx((30.5 * MM, 42.5 * MM), abs=1e-9)
    assert (reveal.beside, reveal.above) == pytest.approx((0.25 * MM, 0.25 * MM), abs=1e-9)


def test_both_hemispheres_have_their_winter(window: WindowComparison) -> None:
    """A north wall at 43 south is a south wall at 43 north, half a year on."""
    shared = next(one for one in window.candidates if "shared equally" in one.names)
    assert shared.effects is not None
    reveal = reveal_at(window.subject, shared.effects.at)
    north = sun_at(reveal, latitude_deg=43, facing_deg=180)
    south = sun_at(reveal, latitude_deg=-43, facing_deg=0)
    assert north.winter is not None and north.summer is not None
    assert (south.winter, south.summer) == pytest.approx((north.winter, north.summer), abs=0.02)
    assert north.winter > north.summer


def test_further_out_more_sun_and_less_shelter(window: WindowComparison) -> None:
    skies = [one.sky for one in window.curve]
    assert skies == sorted(skies)
    assert 0 < skies[0] < skies[-1] <= 0.397


@pytest.mark.parametrize(("trim", "outermost"), [({}, 13.0), ({"exterior_trim": None}, 12.75)])
def test_a_reveal_reaches_out_to_the_casing_or_to_the_cladding(trim: dict[str, Any], outermost: float) -> None:
    """Trim plane 12, casing 1 thick or shingles 3/4; the frame's outside edge at 9 1/4 + 1 1/4, the pane behind it."""
    whole = job(**trim)
    (placement,) = place_windows(whole)
    subject = subject_of(placement.opening, placement.planes, whole)
    found = reveal_at(subject, AtPosition(flange_plane=9.25, kit=kit_at(subject, 9.25), sides=()))
    assert found.recess == pytest.approx((outermost - 10.5) * MM + found.rim, abs=1e-9)
    assert (found.width, found.height) == pytest.approx(((35.5 - 5) * MM, (47.5 - 5) * MM))


def test_details_start_with_the_plan_and_keep_the_order_of_conductivities(window: WindowComparison) -> None:
    """More wood in the joint never loses less (monotone in k); what is planned changes nothing."""
    found = {one.words: one for one in window.details}
    first = window.details[0]
    assert (first.words, first.change) == ("as planned", 0.0)
    own = next(one for one in window.candidates if OWN in one.names)
    assert own.effects is not None and first.heat == own.effects.at.heat
    air, packed = (found[f"shim space {words}"].change for words in ("left as still air", "packed with wood"))
    assert air is not None and packed is not None and 0 < air < packed
    thin = found['outboard buck 3/4" thick'].change
    assert thin is not None and thin < 0


def test_details_are_compared_in_the_sizes_that_are_at_hand(window: WindowComparison) -> None:
    """Boards of 1/2 and 5/4, bucks of a board where planned is 2x; laps of 30 and 50 mm are 1 3/16 and 1 31/32 in."""
    assert {one.words for one in window.details} >= {
        'outboard buck 3/4" thick',
        'liner buck 1 1/2" thick',
        'interior jamb 1/2" thick',
        'interior jamb 1 1/4" thick',
        'exterior jamb 1/2" thick',
        'exterior jamb 1 1/4" thick',
        "no exterior jamb",
        'insulation lapped 1 3/16" over the frame, no exterior jamb',
        'insulation lapped 1 31/32" over the frame, no exterior jamb',
    }


def test_metric_details_are_compared_in_round_millimeters() -> None:
    """Planned is an outboard buck of 45 mm; without sides computed there is no exterior jamb to leave out."""
    whole = job_of(changed(**{**METRIC, "windows__fixed__u_frame": "1.6"}))
    (placement,) = place_windows(whole)
    subject = subject_of(placement.opening, placement.planes, whole)
    planned = AtPosition(flange_plane=placement.flange_plane, kit=kit_at(subject, placement.flange_plane), sides=())
    assert [words for words, _ in _changes(subject, planned)] == [
        "shim space left as still air",
        "shim space packed with wood",
        "outboard buck 20 mm thick",
        "liner buck 45 mm thick",
        "interior jamb 12 mm thick",
        "interior jamb 32 mm thick",
    ]


def test_no_jamb_is_made_thicker_where_the_wall_is_returned_without_one() -> None:
    """A stool between returns in gypsum board (L1) has no jambs; in oak with a shadow gap (L4) there are four."""
    whole = read_job(Path(__file__).parents[2] / "examples" / "quarry-loft")
    changes = {}
    for placement in place_windows(whole):
        subject = subject_of(placement.opening, placement.planes, whole)
        kit = kit_at(subject, placement.flange_plane)
        planned = AtPosition(flange_plane=placement.flange_plane, kit=kit, sides=())
        changes[placement.opening.mark] = [words for words, _ in _changes(subject, planned)]
    assert not [words for words in changes["L1"] if "jamb" in words]
    assert changes["L4"][-2:] == ["interior jamb 12 mm thick", "interior jamb 32 mm thick"]


def test_the_corner_of_a_door_is_at_its_head(window: WindowComparison) -> None:
    """Under a door no sill is computed, so that its estimate is of the corner of jamb and head, and says so."""
    planned = next(one.effects for one in window.candidates if one.effects)
    sides = planned.at.sides
    bare = replace(planned.at, sides=tuple(one for one in sides if one.side is not Side.SILL))
    assert (corner_side(planned.at), corner_side(bare)) == (Side.SILL, Side.HEAD)
    assert planned.surfaces.estimate_side == Side.SILL.value


def test_a_change_that_cannot_be_built_says_why() -> None:
    """A frame face of 1 in leaves 7/8 between jamb face and frame edge: a jamb 1 1/4 thick meets the rough opening."""
    tight = job(openings__0__rough_opening="35 3/4 x 47 3/4", windows__fixed__frame_face="1", shop__shim_space="1/8")
    (found,) = study_placements(place_windows(tight), tight).windows
    failed = [one for one in found.details if one.why_not]
    assert failed and all(one.heat is None and "rough opening" in sentences(one.why_not, tight.units) for one in failed)


def test_positions_of_openings_of_their_own_stand_beside_the_walls() -> None:
    second = {
        "mark": "W2",
        "room": "Bath",
        "frame": "35 1/2 x 47 1/2",
        "sill_height": "36",
        "position": {"flange_on": "sheathing"},
    }
    both = changed(**CASEMENT)
    both["openings"].append(second)
    read = job_of(both)
    (found,) = study_placements(place_windows(read), read).windows
    assert found.marks == ("W1", "W2")
    sheathing = next(one for one in found.candidates if "flange on the sheathing" in one.names)
    assert f"{OWN} for W2" in sheathing.names


def test_a_position_that_cannot_be_built_keeps_its_depths_and_says_why() -> None:
    """Interior depth 1/2 in at the sheathing with a jamb depth of 6: less than the shop mills."""
    deep = job(windows__fixed__jamb_depth="6", limits={"least_interior_depth": "1"})
    (found,) = study_placements(place_windows(deep), deep).windows
    first = found.candidates[0]
    assert first.effects is None and first.kit is None
    assert first.interior_depth == 0.5
    assert sentences(first.why_not, deep.units).startswith('W1: the interior depth is 1/2", the shop minimum is 1"')


def test_a_window_that_cannot_be_studied_is_named() -> None:
    narrow = job(windows__fixed__frame_face="1/2")
    found = study_placements(place_windows(narrow), narrow)
    assert found.windows == ()
    (told,) = found.left_out
    assert told.sentence(narrow.units).startswith("fixed in wall main: frame ")


def test_planned_positions_are_the_columns_of_the_comparison(study: PlacementStudy, window: WindowComparison) -> None:
    (planned,) = planned_effects(place_windows(study.job), study.job)
    own = next(one for one in window.candidates if OWN in one.names)
    assert planned.effects is not None and own.effects is not None
    assert planned.effects.at.heat == own.effects.at.heat
    assert planned.effects.surfaces == own.effects.surfaces
    assert planned.marks == ("W1",)


def test_measured_depths_do_not_move_a_weighed_position(study: PlacementStudy) -> None:
    """What was measured on the wall belongs to the jambs that are sawn, not to a position that is only weighed."""
    corners = dict.fromkeys(("head_left", "head_right", "sill_left", "sill_right"), "4 3/4")
    measured = job(openings__0__measured={"date": "2026-05-18", "interior_depth": corners})
    (placement,) = place_windows(measured)
    subject = subject_of(placement.opening, placement.planes, measured)
    (plain,) = place_windows(study.job)
    other = subject_of(plain.opening, plain.planes, study.job)
    assert study_at(subject, 8.0).heat == pytest.approx(study_at(other, 8.0).heat, rel=1e-12)


def test_placing_at_a_plane_raises_what_the_solver_would_say() -> None:
    found = job()
    (placement,) = place_windows(found)
    moved: Placement = place_at(placement.opening, placement.planes, 8.0, found)
    assert moved.interior_depth == 8.0 - (4 + 9 / 16)
    with pytest.raises(PlaceError, match="the flange plane would be at"):
        place_at(placement.opening, placement.planes, 13.0, found)


def test_the_site_is_that_of_the_job(study: PlacementStudy) -> None:
    assert study.site == site_of(study.job.site, units=study.job.units)
    assert replace(study, left_out=()) == study


def test_the_record_gives_both_kinds_of_units_by_published_factors(study: PlacementStudy) -> None:
    """NIST Special Publication 811, appendix B.8, from memory: Btu/(h ft² °F) = 5.678263 W/(m² K), Btu/h = 0.2930711 W.

    A degree Fahrenheit is 5/9 K; a perm is 57.2 ng/(s m² Pa).
    """
    record = comparison_record(study)
    for wall in record["walls"]:
        for line in wall["resistance"]:
            metric, american = line["transmittance"]["value"], line["us_transmittance"]["value"]
            assert metric / american == pytest.approx(5.678263, rel=1e-6)
            assert line["us_resistance"]["value"] / line["resistance"]["value"] == pytest.approx(5.678263, rel=1e-6)
            assert metric * line["resistance"]["value"] == pytest.approx(1, rel=1e-12)
    for candidate in record["windows"][0]["candidates"]:
        heat = candidate["heat"]
        assert heat["whole"]["value"] / heat["whole_us"]["value"] == pytest.approx(0.2930711 / (5 / 9), rel=1e-6)
        assert [len(heat[key]["text"].split(".")[1]) for key in ("whole", "whole_us", "half_width")] == [3, 3, 3]
    assert perms(3 * 57.2)["text"] == "3 perm"


def test_the_record_of_a_detail_says_why_there_is_no_figure_where_there_is_none(study: PlacementStudy) -> None:
    details = comparison_record(study)["windows"][0]["details"]
    assert details
    for one, told in zip(study.windows[0].details, details, strict=True):
        assert told["why_not"] == (sentences(one.why_not, study.job.units) if one.heat is None else None)
        assert (told["heat"] is None) is bool(told["why_not"])


def test_the_record_of_a_wall_tells_its_outside_and_its_dew_point(study: PlacementStudy) -> None:
    for wall, told in zip(study.walls, comparison_record(study)["walls"], strict=True):
        assert told["outside_temperature"]["value"] == min(wall.temperatures) == wall.temperatures[-1]
        assert wall.dew_check is not None
        assert told["dew_check"]["temperature"]["value"] == wall.dew_check.temperature
        assert wall.dew_check.layer in told["dew_check"]["words"]


def test_figures_of_records_have_a_sign_and_no_more_digits_than_asked() -> None:
    assert [signed(one, "W/K", 3)["text"] for one in (1.0, -0.0031, 0.0001, 0.0006)] == [
        "+1.000",
        "−0.003",
        "0",
        "+0.001",
    ]
    assert figure(0.12345, "W/K", 3)["text"] == "0.123"


def test_a_change_of_a_detail_is_told_to_a_thousandth(study: PlacementStudy) -> None:
    told = [one for one in comparison_record(study)["windows"][0]["details"] if one["change"]]
    assert told
    for one in told:
        assert one["change"]["text"] in ("0", f"{one['change']['value']:+.3f}".replace("-", "−"))
        assert one["heat"]["text"] == f"{one['heat']['value']:.3f}"


def test_a_layer_as_tight_as_the_limit_blocks() -> None:
    """Class II vapor retarders end at 1 perm (International Residential Code, definitions)."""
    assert wall_record._way(57.2, 57.2) == "blocked, 1 perm"
    assert wall_record._way(57.3, 57.2) == "yes, 1 perm"


def test_a_row_of_the_window_order_prints_heat_to_a_thousandth(study: PlacementStudy, window: WindowComparison) -> None:
    (row,) = planned_positions([kit_of(**{**CASEMENT, **SITE})], job(**SITE))
    own = next(one.effects for one in window.candidates if OWN in one.names)
    assert own is not None
    assert row["whole"] == f"{own.at.heat:.3f}"
    (sun,) = own.sun
    assert sun.winter is not None
    assert row["sun"] == f"south {100 * sun.winter:.0f} %"


def test_no_other_buck_is_weighed_where_the_window_needs_none() -> None:
    """On the sheathing the flange is carried; the wall has an outboard buck for where it is not."""
    found = job(position={"share": "0"}, limits={"least_interior_depth": "0"})
    (placement,) = place_windows(found)
    subject = subject_of(placement.opening, placement.planes, found)
    assert placement.buck is None and placement.planes.wall.buck is not None
    changes = compare_drawn_details(subject, study_at(subject, placement.flange_plane))
    assert changes and not any("buck" in one.words for one in changes)


def test_a_rectangle_stands_for_a_window_that_has_shapes_too() -> None:
    """Two raked ones of a size are not the commonest where one is a rectangle; by themselves they are."""
    shape = {"kind": "raked", "left": "30", "right": "48"}
    raked = placed(openings__0__shape=shape, openings__0__frame="30 x 48", openings__0__rough_opening=None)
    rectangle = placed()
    assert _commonest([raked, raked, rectangle]) is rectangle
    assert _commonest([raked, raked]) is raked


@pytest.mark.parametrize(("boards", "words"), [(["1x4", "1x6"], "1x6 poplar"), (["1x4"], "1x4 poplar, 2 strips glued")])
def test_what_the_jambs_of_a_position_come_out_of(boards: list[str], words: str) -> None:
    """4 23/32 wide: a 1x6 gives it, a 1x4 of 3 1/2 twice. Said once for the four of them."""
    kit = kit_of(shop__boards=[{"nominal": name, "stock": "poplar"} for name in boards])
    assert boards_words(kit, PartKind.EXTENSION_JAMB, units=Units.INCH) == words


def test_of_boards_that_break_as_few_limits_the_first_is_the_best_where_the_job_names_no_position() -> None:
    """Else the nearest to the job's own: 9 1/4 is 1/4 from 9, and 8 is an inch off."""
    found = placed(position={"choose": "yes"})
    base = alternatives(found.opening, found.planes, job_of(changed()))[0]

    def one(plane: float, board: float) -> Alternative:
        return replace(base, name=replace(base.name, board=board), flange_plane=plane, against=())

    weighed = [one(8.0, 5.5), one(9.25, 7.25)]
    assert [wish.flange_plane for wish in _best_board(weighed, [], Units.INCH)] == [8.0]
    (wish,) = _best_board(weighed, [Wish(name=OWN, flange_plane=9.0), Wish(name=LEAST, flange_plane=8.0)], Units.INCH)
    assert (wish.flange_plane, wish.name) == (9.25, 'best of one board, 7 1/4" wide')
    assert _best_board([replace(base, name=replace(base.name, board=None))], [], Units.INCH) == []


def test_openings_of_one_window_with_other_trim_outside_share_no_study() -> None:
    """A second window of the same type with thicker casing outside is a section of its own; alike ones share."""
    data = changed()
    thick = {"like": "outside", "casing": {**data["exterior_trim"]["outside"]["casing"], "thickness": "1 1/2"}}
    second = {**data["openings"][0], "mark": "W2"}
    for exterior, groups in ((None, [("W1", "W2")]), (thick, [("W1",), ("W2",)])):
        two = {**second, **({"exterior_trim": exterior} if exterior else {})}
        job = job_of({**data, "openings": [data["openings"][0], two]})
        placements = place_windows(job)
        assert [tuple(one.opening.mark for one in group) for group in _alike(placements)] == groups
        assert [tuple(one.opening.mark for one in group) for _, group in _by_window(placements, "main")] == groups
