"""Positions worked by hand, inch and metric; the identity of depths; the rules."""

from __future__ import annotations

import pytest
from cases import METRIC, changed, examples, job_of, placed
from hypothesis import given
from hypothesis import strategies as st
from said import sentences

from jambs.length import MM_PER_INCH, Units
from jambs.place.solve import PlaceError, place_windows


def test_worked_case_share_one_half() -> None:
    # Gypsum 1/2, stud 5-1/2, plywood 1/2 -> sheathing plane 6-1/2. Boards 2 + 3, cover 1/2 -> added depth 5-1/2, trim
    # plane 12. Jamb depth 4-9/16, projection 1-1/4. Half of 5-1/2 = 2-3/4 -> flange plane 9-1/4;
    # inside 9-1/4 - 4-9/16 = 4-11/16; outside 12 - 1-1/4 - 9-1/4 = 1-1/2.
    found = placed()
    assert (found.flange_plane, found.interior_depth, found.exterior_depth) == (9.25, 4 + 11 / 16, 1.5)
    assert found.share == 0.5
    assert (found.overhang, found.inside_edge, found.outside_edge) == (2.75, 4 + 11 / 16, 10.5)


def test_metric_case_by_hand() -> None:
    # 12.5 + 145 + 12 = 169.5 sheathing plane, on the 1 mm grid 170 (a half goes up); + 60 + 100 + 25 = 354.5, on the
    # grid 355: 185 added. Share 0.4: 170 + 74 = 244 flange plane, overhang 74; 244 - 70 = 174 inside;
    # outside 355 - 20 - 244 = 91.
    found = placed(**METRIC, position={"share": "0.4"})
    in_mm = [x * MM_PER_INCH for x in (found.flange_plane, found.interior_depth, found.exterior_depth, found.overhang)]
    assert in_mm == pytest.approx([244, 174, 91, 74], abs=1e-9)


def test_the_rules_by_hand() -> None:
    # Equal depths: 12 - 4-9/16 - 1-1/4 = 6-3/16 to share, half is 3-3/32.
    # Flange on the sheathing: 6-1/2 - 4-9/16 = 1-15/16.
    # On the outer sheathing: 12 - 4-9/16 = 7-7/16, 1-1/4 proud outside.
    cases = {
        "equal depths": (3 + 3 / 32, 3 + 3 / 32),
        "share 0": (1 + 15 / 16, 4.25),
        "share 1": (7 + 7 / 16, -1.25),
        "interior 4": (4.0, 2 + 3 / 16),
        "exterior 2": (4 + 3 / 16, 2.0),
        "flange_on sheathing": (1 + 15 / 16, 4.25),
        "flange_on outer sheathing": (7 + 7 / 16, -1.25),
    }
    rules = {
        "equal depths": "equal depths",
        "share 0": {"share": "0"},
        "share 1": {"share": "1"},
        "interior 4": {"interior_depth": "4"},
        "exterior 2": {"exterior_depth": "2"},
        "flange_on sheathing": {"flange_on": "sheathing"},
        "flange_on outer sheathing": {"flange_on": "outer sheathing"},
    }
    found = {name: placed(position=rule) for name, rule in rules.items()}
    assert {name: (one.interior_depth, one.exterior_depth) for name, one in found.items()} == cases


@examples(40)
@given(st.integers(0, 16), st.integers(8, 64 * 5), st.integers(8, 64 * 5), st.integers(0, 64 * 2))
def test_moving_the_window_only_moves_depth_from_one_side_to_the_other(
    sixteenths: int, inner: int, outer: int, projection: int
) -> None:
    """``E_i + E_e = d_t - J - s`` wherever the flange stands, with unequal layers."""
    found = placed(
        shop__grid="1/64",
        position={"share": f"{sixteenths}/16"},
        limits={"least_interior_depth": "0", "overhang": "30"},
        walls__main__layers__3={"material": "EPS", "thickness": f"{inner / 64}"},
        walls__main__layers__4={"material": "EPS", "thickness": f"{outer / 64}"},
        windows__fixed__frame_projection=f"{projection / 64}",
    )
    whole = 7.0 + (inner + outer) / 64 - 4.5625 - projection / 64
    assert found.interior_depth + found.exterior_depth == pytest.approx(whole, abs=1e-12)
    assert found.interior_depth == found.flange_plane - 4.5625


def test_the_outboard_layers_add_their_depth_and_no_more() -> None:
    """The same window in the same wall without the outboard layers: the two depths grow by the added depth."""
    bare = changed(position={"share": "0"}, limits={"least_interior_depth": "0"})
    bare["walls"]["main"]["layers"] = bare["walls"]["main"]["layers"][:3]
    without = place_windows(job_of(bare))[0]
    found = placed()
    inside = found.interior_depth - without.interior_depth
    outside = found.exterior_depth - without.exterior_depth
    assert inside + outside == found.planes.added_depth == 5.5


def test_one_position_for_a_wall_follows_the_commonest_window() -> None:
    data = changed(position={"interior_depth": "4"})
    other = {**data["windows"]["fixed"], "jamb_depth": "100 mm"}
    data["windows"]["deep"] = other
    data["openings"] = [
        {**data["openings"][0], "mark": mark, "window": window}
        for mark, window in (("A", "deep"), ("B", "fixed"), ("C", "fixed"))
    ]
    first, second, third = place_windows(job_of(data))
    assert first.flange_plane == second.flange_plane == third.flange_plane == 4 + 4.5625
    assert second.interior_depth == 4.0
    assert "worked out for window 'fixed'" in " ".join(sentences(first.reasons))


def test_a_flange_out_in_the_foam_needs_something_to_carry_it() -> None:
    with pytest.raises(PlaceError) as error:
        placed(walls__main__buck=None)
    assert error.value.sentences(Units.INCH) == (
        "W1: the flange stands 2 3/4\" outside the sheathing and nothing carries it; give wall 'main' a buck, "
        "or mark a layer 'carries: yes' that ends at the flange plane.",
    )


def test_a_layer_that_carries_needs_no_buck() -> None:
    found = placed(
        walls__main__buck=None,
        position={"flange_on": "outer sheathing"},
        walls__main__layers__5={"material": "plywood 1/2", "role": "outer sheathing", "carries": "yes"},
    )
    assert found.buck is None
    assert found.flange_plane == 12.0


def test_a_depth_too_shallow_to_mill_is_refused_with_the_way_out() -> None:
    with pytest.raises(PlaceError) as error:
        placed(position={"interior_depth": "5/16"}, windows__fixed__jamb_depth="6 1/2")
    assert error.value.sentences(Units.INCH) == (
        'W1: the interior depth is 5/16", the shop minimum is 3/4"; '
        'move the window out by 7/16" or more, or in by 5/16".',
    )


def test_a_position_inside_the_sheathing_is_refused() -> None:
    with pytest.raises(PlaceError) as error:
        placed(position={"interior_depth": "1"})
    assert error.value.sentences(Units.INCH) == (
        'W1: the flange plane would be at 5 9/16"; allowed is 6 1/2" (sheathing) to 12" (trim plane); '
        "change its position.",
    )


def test_a_liner_buck_makes_the_framing_opening_larger() -> None:
    # Common practice, no source: framing opening = window's rough opening + buck thickness on each side.
    found = placed(walls__main__buck={"kind": "liner", "thickness": "3/4", "stock": "plywood"})
    assert (found.framing_opening.width, found.framing_opening.height) == (37.5, 49.5)
    assert found.buck is not None
    assert (found.buck.inner, found.buck.outer) == (0.5, 9.25)
    assert placed().framing_opening.width == 36.0
