"""The boards between ganged units, by hand: faces 2 1/2, gaps 1/2, a frame reveal of 1/8 inside, 1/4 outside."""

from __future__ import annotations

import math
from typing import Any

import pytest
from cases import kit_of, part_of
from gangs import boxed, ganged_kit, unit

from jambs.job.measured.measuring_points import measure_places
from jambs.job.models.gang import MullKind
from jambs.length import FINE, Units
from jambs.parts.board.cuts import Crosscut, End, EndBevel, Rip
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.findings.mull_findings import MullDepthOff
from jambs.parts.kit.kit import FigureKind, Kit
from jambs.parts.mulls.mull import Cover
from jambs.parts.readings.as_built import planned_value
from jambs.parts.trim.casing_plane import nailed_on
from jambs.parts.words.end_words import ends_words

MULL_KEYS = ("mull_edges", "mull_gaps", "mull_depths")


@pytest.fixture(scope="module")
def kit() -> Kit:
    return ganged_kit()


def test_one_box_goes_round_all_units(kit: Kit) -> None:
    # 60 1/2 less two faces of 2 1/2 and two reveals of 1/8 more: 55 3/4; 48 + 1/2 + 16 = 64 1/2 the same: 59 3/4.
    assert (kit.clear_width, kit.clear_height) == (55.75, 59.75)
    # The shop's shim space of 1/4 on each side.
    assert (kit.placement.opening.rough_opening.width, kit.placement.opening.rough_opening.height) == (61.0, 65.0)


def test_a_mull_casing_laps_over_both_frames_to_the_reveal(kit: Kit) -> None:
    mull = part_of(kit, "mull casing", "between units")
    # 2 1/2 + 1/2 + 2 1/2 less two reveals of 1/8.
    assert mull.width == 5.25
    # Bottom jamb at 2 3/8 up to the bar: 48 - 2 1/2 + 1/8 = 45 5/8: 43 1/4.
    assert mull.length == 43.25
    # From the left jamb at 2 3/8: 30 - 2 1/2 + 1/8 = 27 5/8, so 25 1/4.
    assert next(one.value for one in kit.figures if one.kind is FigureKind.MULL_ACROSS) == 25.25


def test_a_transom_bar_runs_from_leg_to_leg(kit: Kit) -> None:
    bar = part_of(kit, "transom bar casing", "under the transom")
    assert (bar.width, bar.length) == (5.25, 55.75)
    # From the bottom jamb's face at 2 3/8 to 45 5/8.
    assert next(one.value for one in kit.figures if one.kind is FigureKind.TRANSOM_BAR_UP) == 43.25


def test_between_two_bars_a_mull_runs_from_one_to_the_other() -> None:
    rows = [[unit("30 x 16"), unit("30 x 16")], [unit("60 1/2 x 12")]]
    kit = ganged_kit(openings__0__transom=None, openings__0__transoms=rows)
    low, high = (part_of(kit, "transom bar casing", f"under the transom, bar {bar} from below") for bar in (1, 2))
    lower, upper = (part_of(kit, "mull casing", f"between units, mull {mull}") for mull in (1, 2))
    # Bars from 45 5/8 up, 5 1/4 wide: to 50 7/8; the second 48 1/2 + 16 - 2 3/8 = 62 1/8.
    assert [bar.seat.origin[1] for bar in (low, high)] == [45.625, 62.125]
    assert (lower.length, upper.length) == (43.25, 62.125 - 50.875)


def test_a_boxed_mull_has_a_jamb_on_each_side_and_casing_over_both() -> None:
    kit = kit_of(**boxed())
    left, right = (part_of(kit, "mull jamb", f"{side} side of the mull") for side in ("left", "right"))
    # The bottom's face at 2 3/8, the head's at 48 - 2 3/8 = 45 5/8; the depth of 4 11/16 and 1/32 proud.
    assert [(jamb.length, jamb.width) for jamb in (left, right)] == [(43.25, 4.71875)] * 2
    # Faces a reveal back from the units: 30 - 2 1/2 + 1/8 = 27 5/8; 34 1/2 + 2 1/2 - 1/8 = 36 7/8.
    assert [jamb.seat.origin[0] for jamb in (left, right)] == [27.625, 36.875]
    assert [jamb.seat.through[0] for jamb in (left, right)] == [1.0, -1.0]
    casing = part_of(kit, "mull casing", "between units")
    # 9 1/4 less two casing reveals of 3/16; 43 1/4 and two more to the casing of head and bottom.
    assert (casing.width, casing.length) == (8.875, 43.625)


def test_outside_a_box_stands_on_the_sill_as_legs_do() -> None:
    kit = kit_of(**boxed())
    legs = [part for part in kit.parts if part.name == "exterior extension jamb" and part.side.is_leg]
    jambs = [part for part in kit.parts if part.name == "mull jamb" and part.where is Where.EXTERIOR]
    assert {(part.length, part.width) for part in jambs} == {(part.length, part.width) for part in legs}
    # Faces 2 1/2 and 2 1/2, post and joints 4 1/2, less two reveals of 1/4: 9; two reveals of 1/4 less.
    assert part_of(kit, "mull casing", "between units", Where.EXTERIOR).width == 8.5


def test_the_bevel_of_a_foot_on_the_sill_is_told() -> None:
    casing = part_of(kit_of(**boxed()), "mull casing", "between units", Where.EXTERIOR)
    said = ends_words(casing, grid=FINE[Units.INCH])
    assert said == "top square; bottom bevel 10° to the sill, long point on the face"
    inside = part_of(kit_of(**boxed()), "mull casing", "between units")
    assert ends_words(inside, grid=FINE[Units.INCH]) == "square both ends"


def test_without_flare_boards_between_units_are_square_inside(kit: Kit) -> None:
    """Ripped and cut to length: nothing leans that they could meet."""
    between = [part for part in kit.parts if part.kind.is_between_units and part.where is Where.INTERIOR]
    assert len(between) == 2
    for part in between:
        rip, crosscut = part.cuts
        assert isinstance(rip, Rip) and isinstance(crosscut, Crosscut)


def bevels(part: Part) -> dict[End, float]:
    return {cut.end: cut.angle_deg for cut in part.cuts if isinstance(cut, EndBevel)}


def test_between_flared_jambs_boards_end_as_what_they_stand_on_leans() -> None:
    """Sides lean 10°, the sill 5°, the head 15°; a bar is square, and each board is longer by its thickness x tan.

    Two bars: the mull over them stands between both, square. Under one bar a mull goes from the sill to the bar, over
    it to the head: 59 3/4 high up to the head's face, less 43 1/4 and 5 1/4.
    """
    flare = {"sides": "10 deg", "head": "15 deg", "sill": "5 deg"}
    mitered = {"thickness": "3/4", "stock": "poplar", "joint": "miter"}
    flared = {"interior_trim__inside__flare": flare, "interior_trim__inside__jamb": mitered}
    more: dict[str, Any] = {"openings__0__transom": None}
    two = [[unit("30 x 16"), unit("30 x 16")], [unit("60 1/2 x 12")]]
    kit = ganged_kit(**flared, **more, openings__0__transoms=two)
    lower, upper = (part_of(kit, "mull casing", f"between units, mull {mull}") for mull in (1, 2))
    assert (bevels(lower), bevels(upper)) == ({End.START: 5.0}, {})
    assert lower.length == pytest.approx(43.25 + 0.75 * math.tan(math.radians(5)))
    for bar in (1, 2):
        board = part_of(kit, "transom bar casing", f"under the transom, bar {bar} from below")
        assert bevels(board) == {End.START: 10.0, End.FINISH: 10.0}
        assert board.length == pytest.approx(55.75 + 2 * 0.75 * math.tan(math.radians(10)))
        assert board.seat.origin[0] == pytest.approx(2.375 - 0.75 * math.tan(math.radians(10)))
    kit = ganged_kit(**flared, openings__0__transom=two[0])
    upper = part_of(kit, "mull casing", "between units, mull 2")
    assert bevels(upper) == {End.FINISH: 15.0}
    assert upper.length == pytest.approx(59.75 - 43.25 - 5.25 + 0.75 * math.tan(math.radians(15)))


def test_a_mull_is_boxed_only_where_it_is_said() -> None:
    inside, outside = kit_of(**boxed("inside")), kit_of(**boxed("outside"))
    assert {part.where for part in inside.parts if part.name == "mull jamb"} == {Where.INTERIOR}
    assert {part.where for part in outside.parts if part.name == "mull jamb"} == {Where.EXTERIOR}
    # The cover on the frames: 2 1/2 + 4 1/2 + 2 1/2 less two reveals of 1/8.
    assert part_of(outside, "mull casing", "between units").width == 9.25


def test_where_the_wall_tapers_mull_jambs_taper_between_the_legs() -> None:
    corners = {"head_left": "4 11/16", "head_right": "4 13/16", "sill_left": "4 3/4", "sill_right": "4 7/8"}
    kit = kit_of(**boxed(openings__0__measured={"date": "2026-06-01", "interior_depth": corners}))
    jamb = part_of(kit, "mull jamb", "left side of the mull")
    # 27 5/8 is (27 5/8 - 2 3/8) / 59 3/4 = 0.42 of the way: 4 3/4 at the head, 4 13/16 at the foot; 1/32 proud.
    assert jamb.taper is not None
    assert (jamb.taper.start_width, jamb.taper.finish_width) == (4.78125, 4.84375)


def test_outside_the_foot_is_beveled_to_the_sill(kit: Kit) -> None:
    mull = part_of(kit, "mull casing", "between units", Where.EXTERIOR)
    # 5 1/2 less two reveals of 1/4; joint 1/4 under the frame, up to 48 - 2 1/2 + 1/4, and the slope over 3/4.
    assert mull.width == 5.0
    assert mull.length == pytest.approx(0.25 + 45.75 + 0.75 * math.tan(math.radians(10)), abs=1 / 64)


def test_outside_a_mull_casing_laps_over_the_faces_that_are_seen_there() -> None:
    """1 3/4 + 1/2 + 1 3/4 less two reveals of 1/4; inside it laps as wide as ever."""
    made = ganged_kit(windows__fixed__exterior_frame_face="1 3/4")
    assert part_of(made, "mull casing", "between units", Where.EXTERIOR).width == 3.5
    assert part_of(made, "mull casing", "between units").width == 5.25


def test_round_a_proud_frame_covers_run_from_edge_to_edge_of_it() -> None:
    """Units of 48 under a bar of 1/2: its cover begins 2 1/2 less 1/4 under it, and the mull's ends there."""
    made = ganged_kit(position={"share": "1"})
    outside = {one.kind: one for one in made.parts if one.where is Where.EXTERIOR}
    mull, bar = outside[PartKind.MULL_CASING], outside[PartKind.TRANSOM_BAR_CASING]
    assert (mull.seat.origin[1], mull.length) == (0.0, 45.75)
    assert (bar.seat.origin[:2], bar.length) == ((0.0, 45.75 + 5.0), 60.5)


def test_a_mull_is_covered_where_it_was_read() -> None:
    readings = {"date": "2026-06-01", "mull_edges": ["30 1/16", "-"], "mull_gaps": ["5/8", "-"]}
    kit = ganged_kit(openings__0__measured=readings)
    mull = part_of(kit, "mull casing", "between units")
    # 2 1/2 + 5/8 + 2 1/2 less two reveals of 1/8; 1/16 further from the left jamb than planned.
    assert mull.width == 5.375
    assert next(one.value for one in kit.figures if one.kind is FigureKind.MULL_ACROSS) == 25.3125
    # The bar was not read: it stays as planned.
    assert part_of(kit, "transom bar casing", "under the transom").width == 5.25


def test_a_list_that_ends_before_the_last_mull_leaves_that_one_as_planned() -> None:
    gang = ganged_kit(openings__0__measured={"date": "2026-06-01", "mull_edges": ["30 1/16"]}).placement.opening.gang
    assert gang is not None
    assert [(one.low, one.high) for one in gang.mulls] == [(30.0625, 30.5625), (48.0, 48.5)]


def test_units_reach_from_mull_to_mull_as_they_were_read() -> None:
    """The mull 1/16 farther right and 1/8 wider, the bar 1/4 higher: 60 1/2 - 30 11/16 = 29 13/16."""
    readings = {"date": "2026-06-01", "mull_edges": ["30 1/16", "48 1/4"], "mull_gaps": ["5/8", "-"]}
    gang = ganged_kit(openings__0__measured=readings).placement.opening.gang
    assert gang is not None
    assert [(one.x, one.y, one.frame.width, one.frame.height) for one in gang.units] == [
        (0.0, 0.0, 30.0625, 48.25),
        (30.6875, 0.0, 29.8125, 48.25),
        (0.0, 48.75, 60.5, 15.75),
    ]


BESIDE: dict[str, Any] = {
    "openings__0__units": [unit("20 x 48"), unit("60 1/2 x 48")],
    "openings__0__transom": None,
    "openings__0__transom_bar": None,
}
"""Over all 81: the middle of the mull, at 20 1/4, lies a quarter of the way."""


@pytest.mark.parametrize(
    ("finish", "head", "mull"), [("yes", ("4 1/2", "5 1/2"), "5 1/4"), ("no", ("4", "5"), "4 3/4")]
)
def test_a_mull_stands_off_the_line_between_the_depths_beside_it(finish: str, head: tuple[str, str], mull: str) -> None:
    """A quarter of the way lies between 4 1/2 at the left and 5 1/2 in the middle: 5. It reads 1/4 more.

    To the bare framing everything reads less by the board of 1/2 that is not on yet.
    """
    depths = {"interior_depth": {"head": [*head, head[0]]}, "mull_depths": [mull, "-"], "wall_finish": finish}
    kit = ganged_kit(**BESIDE, openings__0__measured={"date": "2026-06-01", **depths})
    (told,) = (one for one in kit.findings if isinstance(one, MullDepthOff))
    assert (told.off, told.units, told.is_head) == (0.25, (1, 2), True)


def test_a_board_over_a_mull_lies_on_the_faces_beside_it() -> None:
    """Left face 2, right 3 1/2, head 2 1/4, sill 2 3/4, gaps 1/2, reveals 1/8.

    Between stiles 3 1/2 + 1/2 + 2 - 1/4 = 5 3/4; between head and sill 2 1/4 + 1/2 + 2 3/4 - 1/4 = 5 1/4.
    """
    faces = {"left": "2", "right": "3 1/2", "head": "2 1/4", "sill": "2 3/4"}
    kit = ganged_kit(windows__fixed__frame_face=faces)
    assert part_of(kit, "mull casing", "between units").width == 5.75
    assert part_of(kit, "transom bar casing", "under the transom").width == 5.25


def test_the_measure_sheet_asks_for_every_mull() -> None:
    placement = ganged_kit().placement
    places = [place for place in measure_places(placement.opening) if place.keys[0][0] in MULL_KEYS]
    planned = [planned_value(place, placement) for place in places]
    # Mull at 30 with its gap, bar at 48 with its gap; interior depth 4 11/16 at the foot, the head is at the bar.
    assert planned == [30.0, 0.5, 48.0, 0.5, 4.6875]
    assert not [place for place in measure_places(kit_of().placement.opening) if place.keys[0][0] in MULL_KEYS]


def test_parts_of_a_plain_opening_have_no_mull() -> None:
    assert not [part for part in kit_of().parts if part.kind.is_between_units]


@pytest.mark.parametrize(("off", "lap"), [(-0.25, 2.0), (0.0, 2.25), (0.25, 2.0)])
def test_a_cover_laps_as_far_as_over_the_frame_it_covers_least(off: float, lap: float) -> None:
    """Over a gap of 1/2 a board of 5 laps 2 1/4 on both frames; moved by 1/4, 2 on one of them."""
    gang = ganged_kit().placement.opening.gang
    assert gang is not None
    mull = next(one for one in gang.mulls if one.kind is MullKind.MULL)
    low = mull.low - 2.25 + off
    assert Cover(mull=mull, low=low, high=low + 5.0, start=0.0, finish=40.0).lap == lap


def test_outside_a_mull_in_the_middle_stands_midway_between_the_feet_of_the_legs() -> None:
    """Trim planes 1 1/2 and 3 in front of the frame: on a sloping sill the casing's foot is at the mean of both."""

    def length(left: str, right: str) -> float:
        depths = {"head_left": left, "sill_left": left, "head_right": right, "sill_right": right}
        kit = kit_of(**boxed(openings__0__measured={"date": "2026-06-01", "exterior_depth": depths}))
        return part_of(kit, "mull casing", "between units", Where.EXTERIOR).length

    shallow, deep = length("1 1/2", "1 1/2"), length("3", "3")
    assert deep - shallow == pytest.approx(1.5 * math.tan(math.radians(10)), abs=1 / 32)
    assert length("1 1/2", "3") == pytest.approx((shallow + deep) / 2, abs=1 / 64)


def test_the_casing_of_a_boxed_mull_hangs_on_its_jambs() -> None:
    """A cover is nailed to the frames it laps and stays there; over a box it goes with the edges of the jambs."""
    assert PartKind.MULL_CASING in nailed_on(kit_of(**boxed("inside")), Where.INTERIOR)
    assert PartKind.MULL_CASING not in nailed_on(kit_of(**boxed("inside")), Where.EXTERIOR)
    assert PartKind.MULL_CASING not in nailed_on(ganged_kit(), Where.INTERIOR)
