"""*Choose for me* on the grid, inside its limits, with the board it saves: depths by hand, limits from both sides.

Equal share of the base wall: flange plane 9 1/4; jamb depth 4 9/16 leaves 4 11/16 inside.
"""

from __future__ import annotations

import math
from typing import Any

import pytest
from cases import METRIC, placed
from said import sentences

from jambs.findings import FindingsError
from jambs.length import MM_PER_INCH, Units
from jambs.place.reasons import MovedForBoard
from jambs.place.swing import FINE_DEG, Leaf, Obstacle, open_sash
from jambs.place.weight_words import weight_text

CHOOSE = {"choose": "yes"}


@pytest.mark.parametrize(
    ("limits", "depth"),
    [
        # Plane 6 1/2 + overhang at most. 8 33/64 - 4 9/16 = 3 61/64, on sixteenths 3 15/16.
        ({"overhang": "2 1/64"}, 3 + 15 / 16),
        # 8 35/64: 3 63/64 would go to 4, past the limit, so one step back.
        ({"overhang": "2 3/64"}, 3 + 15 / 16),
        ({"overhang": "2 1/16"}, 4.0),
        # At least 5 1/64 inside: 5 is too little, one step on. 5 3/64 goes to 5 1/16 by itself.
        ({"overhang": "6", "least_interior_depth": "5 1/64"}, 5 + 1 / 16),
        ({"overhang": "6", "least_interior_depth": "5 3/64"}, 5 + 1 / 16),
        ({"overhang": "6", "least_interior_depth": "5"}, 5.0),
    ],
)
def test_on_the_grid_and_inside_the_limit(limits: dict[str, str], depth: float) -> None:
    found = placed(shop__grid="1/16", position=CHOOSE, limits={**limits, "shift_for_board": "0"})
    assert found.interior_depth == depth


def test_where_no_plane_leaves_a_depth_outside_the_frame_stands_proud() -> None:
    """At least 6 3/8 inside: the flange at 10 15/16, the frame's edge at 12 3/16, 3/16 past the trim plane."""
    found = placed(position=CHOOSE, limits={"overhang": "6", "least_interior_depth": "6 3/8"})
    assert (found.flange_plane, found.exterior_depth) == (10.9375, -0.1875)


@pytest.mark.parametrize(
    ("jamb_depth", "depth", "moved"),
    [
        # 9 1/4 - 3 7/8 = 5 3/8, a rip of 5 13/32: a 1x6 gives 5 1/2 - 1/8 = 5 3/8, so it would take a 1x8.
        ("3 7/8", 5 + 11 / 32, 1 / 32),
        # 5 11/32 and a rip of just 5 3/8 comes out of the 1x6.
        ("3 29/32", 5 + 11 / 32, None),
        # 5 15/32: 1/8 more than a 1x6 gives.
        ("3 25/32", 5 + 11 / 32, 1 / 8),
    ],
)
def test_a_board_is_saved_only_where_one_is(jamb_depth: str, depth: float, moved: float | None) -> None:
    found = placed(position=CHOOSE, windows__fixed__jamb_depth=jamb_depth, limits={"overhang": "6"})
    assert found.interior_depth == depth
    saved = [one for one in found.reasons if isinstance(one, MovedForBoard)]
    assert saved == ([] if moved is None else [MovedForBoard(moved=moved, board=5.5)])


@pytest.mark.parametrize(
    ("limits", "depth"),
    [
        # Overhang 2: 3 15/16; a 1x4 gives 3 1/2 - 1/8 - 1/32 = 3 11/32, which is 19/32 further in.
        ({"shift_for_board": "19/32"}, 3 + 11 / 32),
        ({"shift_for_board": "37/64"}, 3 + 15 / 16),
        ({"least_interior_depth": "3 11/32"}, 3 + 11 / 32),
        ({"least_interior_depth": "3 3/8"}, 3 + 15 / 16),
    ],
)
def test_moved_no_further_than_allowed(limits: dict[str, str], depth: float) -> None:
    assert placed(position=CHOOSE, limits={"overhang": "2", **limits}).interior_depth == depth


@pytest.mark.parametrize(
    ("rule", "depth"),
    [
        ({"interior_depth": "4"}, 4.0),
        ({"interior_depth": "4 1/64"}, 4 + 1 / 32),  # half a step goes up
        ({"exterior_depth": "2"}, 12 - 1.25 - 2 - 4 - 9 / 16),
        ({"share": "0"}, 6.5 - 4 - 9 / 16),
        ({"share": "1"}, 12 - 4 - 9 / 16),
        ({"share": "1/4"}, 6.5 + 5.5 / 4 - 4 - 9 / 16),
    ],
)
def test_rules_by_hand(rule: dict[str, Any], depth: float) -> None:
    assert placed(position=rule).interior_depth == depth


def test_a_liner_stands_at_the_rough_opening_and_reaches_to_the_studs() -> None:
    """Gypsum 1/2, so from 1/2 to the flange plane 9 1/4; an outboard buck from the sheathing, 6 1/2."""
    liner = placed(walls__main__buck={"kind": "liner", "thickness": "3/4", "stock": "plywood"}).buck
    assert liner is not None and (liner.inner, liner.outer, liner.set_back) == (0.5, 9.25, 0.0)
    set_back = {"kind": "outboard", "thickness": "1 1/2", "stock": "spruce", "set_back": "1/4"}
    outboard = placed(walls__main__buck=set_back).buck
    assert outboard is not None and (outboard.inner, outboard.outer, outboard.set_back) == (6.5, 9.25, 0.25)


def test_a_saved_board_gives_no_more_than_it_has_in_millimeters() -> None:
    """Flange at 170 + 10, so 110 inside; a board of 110.9 less 3 for an edge and 1 proud gives 106.9, so 106."""
    boards = [{"stock": "pine", "thickness": "20", "width": width} for width in ("110.9", "195")]
    limits = {"overhang": "10", "shift_for_board": "19"}
    found = placed(**{**METRIC, "shop__boards": boards}, position=CHOOSE, limits=limits)
    assert round(found.interior_depth * MM_PER_INCH, 6) == 106


@pytest.mark.parametrize(("share", "plane"), [("0", 6.5), ("1", 12.0), ("1/2", 9 + 17 / 64)])
def test_a_flange_on_a_face_of_the_wall_stays_there(share: str, plane: float) -> None:
    """Jamb depth 4 37/64 on sixteenths: 9 1/4 leaves 4 43/64, so 4 11/16 inside; a face is a face on no grid."""
    found = placed(position={"share": share}, windows__fixed__jamb_depth="4 37/64", shop__grid="1/16")
    assert found.flange_plane == plane


def test_a_weight_is_printed_whole() -> None:
    assert (weight_text(68.4, Units.INCH), weight_text(68.4, Units.MM)) == ("68 lb", "31 kg")


def test_a_layer_carries_a_flange_on_its_own_face_only() -> None:
    """A outer sheathing that carries, its face at 12: no buck there; at 9 1/4 one is needed."""
    cover = {"material": "plywood 1/2", "role": "outer sheathing", "carries": "yes"}
    bucks = {share: placed(position={"share": share}, walls__main__layers__5=cover).buck for share in ("0", "1/2", "1")}
    assert {share: buck is not None for share, buck in bucks.items()} == {"0": False, "1/2": True, "1": False}


@pytest.mark.parametrize(("jamb_face", "degrees"), [(0.5, 90.0), (0.25, 90 + math.degrees(math.atan(0.25 / 4)))])
def test_a_sash_turns_until_it_meets_the_jamb_beside_its_hinge(jamb_face: float, degrees: float) -> None:
    """Hinge 1/2 in, at the frame's edge; the jamb 4 deep: past 90 degrees it leans on the end of the jamb."""
    leaf = Leaf(
        span=30.0, hinge_face=0.75, latch_face=0.75, hinge_edge=0.5, latch_edge=0.5, thickness=1.0, set_back=0.0,
        jamb_depth=4.0, hinge_jamb_face=jamb_face, latch_jamb_face=-30.0, casing_face=-9.0, casing_thickness=0.0,
        hinge_out=0.0,
        latch_out=0.0,
    )  # fmt: skip
    found = open_sash(leaf)
    assert found.degrees == pytest.approx(degrees, abs=FINE_DEG + 1e-9)
    assert found.met is Obstacle.JAMB


COVER = {"material": "plywood 1/2", "role": "outer sheathing"}


@pytest.mark.parametrize(
    ("jamb_depth", "carries", "plane"),
    [
        # Nothing but the sheathing, 6 1/2, carries; off the grid the plane stays, for there is no other.
        ("4 9/16", "no", 6.5),
        ("4 35/64", "no", 6.5),
        # The cover's outer face, 12, carries too; equal share is 9 1/4, as far from both: the inner one.
        ("4 9/16", "yes", 6.5),
        ("4 35/64", "yes", 6.5),
    ],
)
def test_without_a_buck_a_window_is_put_where_the_wall_carries_it(jamb_depth: str, carries: str, plane: float) -> None:
    found = placed(
        position=CHOOSE, walls__main__buck=None, limits={"overhang": "6"}, windows__fixed__jamb_depth=jamb_depth,
        walls__main__layers__5={**COVER, "carries": carries},
    )  # fmt: skip
    assert (found.flange_plane, found.buck) == (plane, None)
    assert "another opening" not in " ".join(sentences(found.reasons))


def test_a_layer_that_carries_is_chosen_where_the_sheathing_lies_too_far_in() -> None:
    """At least 2 inside: 6 1/2 leaves 1 15/16, so the cover at 12 with 7 7/16 inside."""
    found = placed(
        position=CHOOSE, walls__main__buck=None, limits={"least_interior_depth": "2"},
        walls__main__layers__5={**COVER, "carries": "yes"}, exterior_trim=None,
        shop__boards=[{"nominal": "1x10", "stock": "poplar"}],
    )  # fmt: skip
    assert (found.flange_plane, found.interior_depth) == (12.0, 7 + 7 / 16)


def test_no_place_between_two_layers_that_carry_is_told() -> None:
    with pytest.raises(FindingsError) as error:
        placed(
            position=CHOOSE, walls__main__buck=None, limits={"least_interior_depth": "2"},
            walls__main__layers__5={**COVER, "carries": "yes"},
        )  # fmt: skip
    (words,) = error.value.sentences(Units.INCH)
    assert "'least interior depth (W1)' needs a flange plane at 6 9/16\" or farther out" in words
    assert "'what carries the flange (W1)' one at 6 1/2\" or farther in" in words
