"""What carries a window: bearing of the flange, space for shims, doors, sheathing that is none, hinges."""

from __future__ import annotations

import math
from typing import Any

import pytest
from cases import METRIC, STOOL, changed, job_of, kit_of, placed

from jambs.length import Units
from jambs.place.sash import swing_seen
from jambs.place.shim_space import shims
from jambs.place.solve import PlaceError, place_at
from jambs.place.support import buck_at
from jambs.place.swing import FINE_DEG

CASEMENT = {
    "jamb_depth": "4 9/16",
    "frame_projection": "1 1/4",
    "frame_face": "2",
    "nailing_flange": "yes",
    "flange_width": "1 1/4",
    "sash": "casement out",
    "sash_thickness": "1 3/4",
    "sash_set_back": "1/4",
}
DOOR = {
    "interior_trim__inside": {
        **{key: value for key, value in STOOL.items() if key not in ("stool", "apron")},
        "style": "three-sided",
    },
    "openings__0__frame": "37 1/2 x 82 1/2",
    "openings__0__rough_opening": "38 x 83",
    "openings__0__sill_height": None,
    "openings__0__floor_below_frame": "1/4",
}


def texts(**paths: Any) -> list[str]:
    return [finding.sentence(Units.INCH) for finding in placed(**paths).findings]


def test_a_flange_over_a_wide_gap_bears_too_little() -> None:
    # Rough opening 37-1/2 for a frame of 35-1/2: gap 1; a flange of 1-1/4 bears on 1/4 of the buck.
    assert (
        'The nailing flange is 1 1/4" wide, lies over a gap of 1" and bears on 1/4" of buck; '
        "bring the buck nearer to the frame: smaller rough opening, less set back."
    ) in texts(openings__0__rough_opening="37 1/2 x 49 1/2")


def test_a_rough_opening_that_is_left_out_has_no_shims_under_a_door() -> None:
    """82 1/2 and one shim space of 1/4 at the head; the flange lies over that gap all round and bears on the buck."""
    paths = {**DOOR, "openings__0__rough_opening": None}
    opening = job_of(changed(**paths)).openings[0]
    assert (opening.rough_opening.width, opening.rough_opening.height) == (38, 82.75)
    assert (shims(opening).head, shims(opening).sill) == (0.25, 0)
    (why,) = [one.why for one in opening.assumed if one.what == "rough opening"]
    assert why == "frame and the shop's shim space of 1/4\" at both sides and the head"
    assert not any("bears on" in text for text in texts(**paths))
    window = job_of(changed(openings__0__rough_opening=None)).openings[0]
    assert (shims(window).head, shims(window).sill) == (0.25, 0.25)


def test_a_thin_liner_bears_too_little() -> None:
    # Gap 1/4: 1 in of the flange lies past it, the liner is 3/4.
    liner = {"kind": "liner", "thickness": "3/4", "stock": "plywood"}
    assert (
        'The nailing flange is 1 1/4" wide, lies over a gap of 1/4" and bears on 3/4" of buck; '
        'a buck 1" thick, or a strip beside it, bears all of it.'
    ) in texts(walls__main__buck=liner)
    assert not any("bears on" in text for text in texts())


def test_a_rough_opening_without_room_is_told() -> None:
    assert ('The frame has 0" to its rough opening at the sides; needed: 1/4" for shims.') in texts(
        openings__0__rough_opening="35 1/2 x 48"
    )


@pytest.mark.parametrize(
    ("wide", "is_said"), [("35 1/2", False), ("35 33/64", False), ("35 17/32", True), ("35 9/16", True)]
)
def test_shims_want_an_eighth_at_each_side_at_the_least(wide: str, is_said: bool) -> None:
    """In a rough opening of 35 3/4: 1/8 at each side is enough, or half a 64th less; 7/64 is not,
    whatever more the shop would like."""
    paths = {"openings__0__frame": f"{wide} x 47 1/2", "openings__0__rough_opening": "35 3/4 x 48"}
    said = [text for text in texts(**paths) if "to its rough opening" in text]
    assert bool(said) is is_said


def test_a_door_is_framed_from_the_floor_to_its_head() -> None:
    # Rough opening 83 from the frame's bottom, floor 1/4 below it, liner 3/4 at the head only: 83 + 1/4 + 3/4 = 84.
    # Sides: 38 + 2 x 3/4 = 39-1/2.
    found = placed(**DOOR, walls__main__buck={"kind": "liner", "thickness": "3/4", "stock": "plywood"})
    assert (found.framing_opening.width, found.framing_opening.height) == (39.5, 84.0)
    told = [finding.sentence(Units.INCH) for finding in found.findings]
    # Its flange stands 2 3/4 off the sheathing, the outside of its frame 1 1/4 farther.
    assert any(text.startswith('The threshold stands 4" outside the sheathing') for text in told)
    assert any("fasten it to the studs on all three sides" in text for text in told)


def test_a_sheet_outside_the_foam_is_no_sheathing() -> None:
    with pytest.raises(PlaceError) as error:
        placed(walls__main__layers__5="plywood 1/2")
    assert error.value.sentences(Units.INCH) == (
        "wall 'main': 'plywood 1/2' lies outside the insulation and is taken as sheathing; "
        "write role: outer sheathing beside it",
    )


@pytest.mark.parametrize(
    ("kind", "plane", "reach"),
    [
        ("outboard", 7.0, (6.5, 7.0)),
        ("liner", 7.0, (0.5, 7.0)),
        ("outboard", 6.5, None),
        ("liner", 6.25, None),
        ("none", 7.0, None),
    ],
)
def test_a_buck_reaches_out_to_the_flange_where_nothing_of_the_wall_carries_it(
    kind: str, plane: float, reach: tuple[float, float] | None
) -> None:
    """From the sheathing plane 6 1/2, or lining the studs from 1/2 on; the sheathing itself carries a flange."""
    planes = placed(walls__main__buck={"kind": kind, "thickness": "3/4", "stock": "spruce"}).planes
    buck = buck_at(planes, plane)
    assert (buck and (buck.inner, buck.outer)) == reach


RAKED = {
    "openings__0__frame": "24 x 48",
    "openings__0__rough_opening": None,
    "openings__0__shape": {"kind": "raked", "left": "30", "right": "48"},
}


def test_the_framing_of_a_lined_shape_lies_as_far_off_every_edge() -> None:
    """3-4-5, shims 1/4 and liner 3/4: 1 outside; the high corner 1 (1 + 3/5) / (4/5) = 2 higher (geometry)."""
    found = placed(**RAKED, walls__main__buck={"kind": "liner", "thickness": "3/4", "stock": "plywood"})
    assert (found.framing_opening.width, found.framing_opening.height) == pytest.approx((26.0, 51.0))


def test_a_shape_weighs_what_its_own_area_and_edges_come_to() -> None:
    """24 x (30 + 48) / 2 = 6.5 sq ft in two panes of 1/8 at 13 lb; 11 ft of frame at 3 lb (assumed)."""
    assert placed(**RAKED).weight == pytest.approx(6.5 * 2 * 0.125 * 13 + 11 * 3)


@pytest.mark.parametrize(
    ("glass", "pane", "why"),
    [
        ({}, 4.0, "estimated from frame and 2 panes of 4 mm, as the job gives no glass; ask the maker"),
        (
            {"windows__fixed__glass": {"panes": 2, "pane_thickness": "3"}},
            3.0,
            "estimated from glass and frame; ask the maker",
        ),
    ],
)
def test_the_panes_of_a_metric_job_are_four_millimeters_where_it_gives_none(
    glass: dict[str, object], pane: float, why: str
) -> None:
    """1 m x 1 m: two panes of 4 mm at 13 lb a sq ft and inch are 10.7639 x 2 x 4/25.4 x 13 = 44.07 lb, with 13.123 ft
    of frame at 3 lb (assumed) 83.4 lb, 38 kg; of 3 mm 33.06 + 39.37 = 72.4 lb, 33 kg. At 2500 kg/m3 20 of the 38 kg.
    """
    frame = {"openings__0__frame": "1000 x 1000", "openings__0__rough_opening": None}
    kit = kit_of(**{**METRIC, **frame, **glass})
    pounds = 1e6 / 25.4**2 / 144 * 2 * pane / 25.4 * 13 + 4000 / 25.4 / 12 * 3
    assert kit.placement.weight == pytest.approx(pounds)
    assert [one.why for one in kit.assumed if one.what == "weight of the window"] == [why]


def test_a_window_is_weighed_where_it_is_asked_for() -> None:
    job = job_of(changed())
    (opening,), planes = job.openings, placed().planes
    found = place_at(opening, planes, 8.0, job)
    assert (found.flange_plane, found.interior_depth, found.exterior_depth) == (8.0, 3.4375, 2.75)
    with pytest.raises(PlaceError, match="proud of the finished wall inside"):
        place_at(opening, planes, 4.0, job)


def test_a_hopper_swings_down_onto_the_nosing_of_the_stool() -> None:
    """Its sash turns 1/2 in front of the frame, the stool's top lies 1/8 under its edge, and 4 11/16 + 3/4 + 3/4 out.

    So it opens to 90° + atan(1/8 over 5 11/16).
    """
    sash = {**CASEMENT, "sash": "hopper", "sash_thickness": "2 1/2", "sash_set_back": "-1/2"}
    found = placed(windows__fixed=sash, interior_trim__inside=STOOL)
    assert found.swing is not None
    exact = 90 + math.degrees(math.atan2(0.125, 4.6875 + 1.5 - 0.5))
    assert found.swing.greatest_deg == pytest.approx(exact, abs=2 * FINE_DEG)
    seen = swing_seen(found.opening, interior_depth=4.6875, exterior_depth=0.0, cladding_depth=0.0, degrees=90.0)
    assert max(e for _, shape in seen.obstacles for _, e in shape) == pytest.approx(4.6875 + 1.5)


def test_without_exterior_trim_no_jamb_stops_the_sash() -> None:
    found = placed(windows__fixed=CASEMENT, exterior_trim=None)
    assert found.swing is not None
    assert (found.swing.greatest_deg, found.swing.stopped_by) == (90.0, "the frame")


def test_a_casement_without_a_hinge_side_is_told() -> None:
    text = "No hinge side is stated: give hinge: left or right, as seen from inside, before you order."
    assert text in texts(windows__fixed=CASEMENT)
    assert text not in texts(windows__fixed=CASEMENT, openings__0__hinge="left")


def test_a_frame_proud_inside_is_refused() -> None:
    with pytest.raises(PlaceError) as error:
        placed(position={"share": "0"}, windows__fixed__jamb_depth="9")
    assert error.value.sentences(Units.INCH) == (
        'W1: the frame would stand 2 1/2" proud of the finished wall inside and no casing goes around it; '
        'move the window out by 2 1/2" or more.',
    )


@pytest.mark.parametrize("word", ["equal depths", "equal_depths"])
def test_a_rule_of_one_word_may_have_its_underscore(word: str) -> None:
    assert placed(position=word).interior_depth == 3 + 3 / 32
