"""Frame-and-panel jambs by hand: lengths of rails, sizes of panels, where the openings are, in square and flared jambs.

The rules are common practice, no source: a rail is as long as the opening between the stiles and a tenon at each end, a
panel fills the opening and both grooves less the room that it moves in. How much it moves: Wood Handbook (FPL-GTR-190,
2010), equation (13-2), with the coefficient of the table of woods.
"""

from __future__ import annotations

from typing import Any

import pytest
from cases import METRIC, STOOL, changed, job_of, kit_of, part_of
from hypothesis import assume, given
from hypothesis import strategies as st
from panels import PANEL, PANELS, paneled

from jambs.geometry import tangent
from jambs.job import JobFaults
from jambs.job.models.panels import MOST_PANELS, PanelsEntry
from jambs.job.models.shop import MoistureEntry
from jambs.length import GRIDS
from jambs.movement.boards import moving_width
from jambs.parts.board.cuts import EdgeGroove, EdgeRabbet, Tenon
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.panel_layout import JambFace, PanelLayout, lay_out, opening_between, panel_count
from jambs.parts.board.part import Part
from jambs.parts.fitted import PartsError
from jambs.parts.jambs.panel_checks import _leaving, _swelling
from jambs.parts.jambs.panel_room import PanelMovement, moisture_change
from jambs.parts.kit.kit import Kit
from jambs.parts.make import make_kit
from jambs.parts.words.panel_words import frame_words, letters_of, member_sizes, member_work, member_work_in_short
from jambs.place.solve import place_windows
from jambs.stock.house.house_pieces import house_pieces

FLARED: dict[str, Any] = {**STOOL, "panels": PANELS, "flare": {"sides": "20 deg", "head": "10 deg"}}


def layout_of(kit: Kit, position: str) -> PanelLayout:
    panels = part_of(kit, "extension jamb", position).blank.panels
    assert panels
    return panels.layout


def members(part: Part, kind: PartKind) -> list[Part]:
    return [one for one in part.frame_members if one.kind is kind]


def sizes(part: Part, kind: PartKind) -> list[tuple[float, float]]:
    return [(one.width, one.length) for one in members(part, kind)]


def test_the_openings_of_a_square_leg() -> None:
    # The leg goes 3/8 into the rabbets of head and bottom: 43 1/2 long, 42 3/4 of it seen. One panel would leave an
    # opening of 42 3/4 - 5 = 37 3/4, more than 24; two: (42 3/4 - 7 1/2) / 2 = 17 5/8. Across: 7 15/32 - 4 = 3 15/32.
    layout = layout_of(kit_of(**paneled()), "left leg")
    assert layout.openings == ((2.875, 20.5), (23.0, 40.625))
    assert layout.across == (2.0, 5 + 15 / 32)
    assert layout.rails == ((0.0, 2.875), (20.5, 23.0), (40.625, 43.5))


def test_the_members_of_a_square_leg() -> None:
    # Rails: 3 15/32 + 2 x 3/8. Panels: 4 7/32 grows by 4 7/32 x 0.00289 x 4 = 0.0488, up to 1/16: 4 5/32; along the
    # grain 17 5/8 + 3/4 - 1/16. Stiles are 1 longer than the leg, as a glue-up is.
    leg = part_of(kit_of(**paneled()), "extension jamb", "left leg")
    assert sizes(leg, PartKind.STILE) == [(2.0, 44.5)] * 2
    assert sizes(leg, PartKind.RAIL) == [(2.875, 4 + 7 / 32), (2.5, 4 + 7 / 32), (2.875, 4 + 7 / 32)]
    assert sizes(leg, PartKind.PANEL) == [(4 + 5 / 32, 18 + 5 / 16)] * 2
    assert [one.mark for one in leg.frame_members] == [f"{leg.mark}{letter}" for letter in "abcdefg"]


def test_what_lies_over_the_legs_belongs_to_the_end_rails_of_the_head() -> None:
    # 30 3/4 clear and 3/4 over each leg: 32 1/4. (30 3/4 - 7 1/2) / 2 = 11 5/8.
    layout = layout_of(kit_of(**paneled()), "head")
    assert layout.openings == ((3.25, 14.875), (17.375, 29.0))


def test_a_jamb_keeps_its_outline_its_cuts_and_its_seat() -> None:
    plain, framed = kit_of(position={"share": "1"}), kit_of(**paneled())
    assert [(one.cuts, one.seat, one.mark) for one in framed.parts] == [
        (one.cuts, one.seat, one.mark) for one in plain.parts
    ]
    assert "JambWiderThanBoards" in {type(one).__name__ for one in plain.findings}
    assert "JambWiderThanBoards" not in {type(one).__name__ for one in framed.findings}


def test_flared_legs_end_in_wider_rails_and_the_room_stile_holds_the_bevel() -> None:
    # Head leaned 10°, 7 7/16 deep and 1/32 proud: at the room the leg is 7 15/32 tan 10° = 1.3169 longer, so its top
    # rail begins where the face is still 2 1/2 wide at the frame edge. Slant of the leg: 7 15/32 / cos 20° = 7.9483,
    # opening 7.9483 - 4 = 3.9483, down to 3 15/16; the room stile: slant and 3/4 tan 20° less 2 + 3 15/16, up: 2 5/16.
    leg = part_of(kit_of(**paneled(interior_trim__inside=FLARED)), "extension jamb", "left leg")
    layout = layout_of(kit_of(**paneled(interior_trim__inside=FLARED)), "left leg")
    assert layout.across == (2.0, 5.9375)
    deep = 7 + 15 / 32
    assert layout.openings[0] == (2.5, 20.125)
    assert layout.length - layout.openings[-1][1] == pytest.approx(2.5 + deep * tangent(10.0))
    assert [one.width for one in members(leg, PartKind.STILE)] == [2.0, 2 + 5 / 16]


def test_left_and_right_leg_are_mirror_images() -> None:
    kit = kit_of(**paneled(interior_trim__inside=FLARED))
    left, right = layout_of(kit, "left leg"), layout_of(kit, "right leg")
    turned = [(right.length - finish, right.length - start) for start, finish in right.openings[::-1]]
    assert [end for one in turned for end in one] == pytest.approx([end for one in left.openings for end in one])


def test_rails_of_mirrored_legs_have_the_same_letters_from_the_bottom_up() -> None:
    """Under a leaned head the top rail of a leg is the wide one, c at the bottom of either leg the narrow one."""
    kit = kit_of(**paneled(interior_trim__inside=FLARED))
    left, right = (
        [(one.mark[-1], one.member, one.width) for one in members(part_of(kit, "extension jamb", leg), PartKind.RAIL)]
        for leg in ("left leg", "right leg")
    )
    assert left == right and [(letter, number) for letter, number, _ in left] == [("c", 1), ("d", 2), ("e", 3)]
    assert left[0][2] < left[2][2]


@pytest.mark.parametrize("trim", [{}, {"interior_trim__inside": FLARED}], ids=["square", "flared"])
@pytest.mark.parametrize("position", ["head", "left leg", "right leg"])
def test_members_stand_in_each_other_as_the_joints_say(trim: dict[str, Any], position: str) -> None:
    """In coordinates of the jamb: tenons 3/8 into both stiles, panels short of every groove's bottom, none outside."""
    jamb = part_of(kit_of(**paneled(**trim)), "extension jamb", position)
    assert jamb.blank.panels
    layout = jamb.blank.panels.layout

    def reach(part: Part) -> list[tuple[float, float]]:
        corners = [
            part.seat.at(u, v, w) for u in (0, part.length) for v in (0, part.width) for w in (0, part.thickness)
        ]
        return [(min(axis), max(axis)) for axis in zip(*map(jamb.seat.board_point, corners), strict=True)]

    way = -1 if position == "right leg" else 1  # that leg starts at its top, and its members count from its bottom
    for rail, (start, finish) in zip(members(jamb, PartKind.RAIL)[::way], layout.rails, strict=True):
        along, across, through = reach(rail)
        assert across == pytest.approx((2.0 - 0.375, layout.across[1] + 0.375))
        assert along[0] <= start + 1e-9 and along[1] >= finish - 1e-9
        assert start in (0.0, pytest.approx(along[0])) and finish in (layout.length, pytest.approx(along[1]))
        assert through == pytest.approx((0.0, 0.75))
    for panel, (start, finish) in zip(members(jamb, PartKind.PANEL)[::way], layout.openings, strict=True):
        along, across, through = reach(panel)
        room = layout.opening_width + 0.75 - layout.panel_width
        assert across == pytest.approx((2.0 - 0.375 + room / 2, layout.across[1] + 0.375 - room / 2))
        assert start - 0.375 < along[0] < start and finish < along[1] < finish + 0.375
        assert through == pytest.approx((0.25, 0.5))


def test_a_rail_is_grooved_where_a_panel_is_and_tenoned_at_both_ends() -> None:
    leg = part_of(kit_of(**paneled()), "extension jamb", "left leg")
    grooves = [sum(isinstance(cut, EdgeGroove) for cut in rail.cuts) for rail in members(leg, PartKind.RAIL)]
    assert grooves == [1, 2, 1]
    tenons = [cut for cut in members(leg, PartKind.RAIL)[0].cuts if isinstance(cut, Tenon)]
    assert {(one.along, one.face, one.back) for one in tenons} == {(0.375, 0.25, 0.25)}


def test_a_panel_thicker_than_its_groove_is_rabbeted_from_the_back_all_round() -> None:
    thick = {**PANELS, "panel": {**PANEL, "thickness": "1/2", "tongue": "1/2", "stock": "poplar"}}
    leg = part_of(kit_of(**paneled(interior_trim__inside__panels=thick)), "extension jamb", "left leg")
    panel = members(leg, PartKind.PANEL)[0]
    assert [(cut.across, cut.depth) for cut in panel.cuts if isinstance(cut, EdgeRabbet)] == [(0.5, 0.25)] * 2
    assert [(cut.along, cut.face, cut.back) for cut in panel.cuts if isinstance(cut, Tenon)] == [(0.5, 0.0, 0.25)] * 2


def test_room_that_is_asked_for_is_left() -> None:
    asked = {**PANELS, "panel": {**PANEL, "room": "3/16"}}
    layout = layout_of(kit_of(**paneled(interior_trim__inside__panels=asked)), "left leg")
    assert layout.panel_width == 3 + 15 / 32 + 0.75 - 3 / 16


def test_a_climate_tells_the_moisture_where_the_shop_does_not() -> None:
    # Wood Handbook, table 4-2, at 70 °F: 6.2 % at 30, 7.7 at 40, 11.0 at 60: 3.3 gained, 1.5 lost.
    # 4 7/32 x 0.00289 x 3.3 = 0.0402, up to 1/16.
    air = {"shop": "70 F, 40 %", "inside_winter": "70 F, 30 %", "inside_summer": "70 F, 60 %"}
    climate = {**air, "outside_winter": "30 F, 80 %", "outside_summer": "70 F, 70 %"}
    job = job_of(changed(**paneled(shop__moisture=None, climate=climate)))
    change = moisture_change(job)
    assert change and (change.gain, change.loss) == pytest.approx((3.3, 1.5), abs=0.1)
    assert layout_of(make_kit(place_windows(job)[0], job), "left leg").room == 1 / 16
    assert moisture_change(job_of(changed(**paneled(climate=climate)))) == MoistureEntry(gain=4.0, loss=2.0)


def test_what_is_left_on_for_the_tape_is_on_the_stile_at_the_room() -> None:
    leg = part_of(kit_of(**paneled(shop__planned_allowance="1/4")), "extension jamb", "left leg")
    assert [one.width for one in members(leg, PartKind.STILE)] == [2.0, 2.25]
    assert sizes(leg, PartKind.RAIL)[1] == (2.5, 4 + 7 / 32)


def test_the_planner_gets_the_members_and_no_wide_board() -> None:
    job = job_of(changed(**paneled()))
    kit = kit_of(**paneled())
    pieces = [one.piece.mark for one in house_pieces([kit], job)]
    legs = [part.mark for part in kit.parts if part.frame_members]
    assert not set(legs) & set(pieces)
    assert {f"{mark}{letter}" for mark in legs for letter in "abcdefg"} <= set(pieces)


def test_as_few_panels_as_keep_every_opening_short_enough() -> None:
    # 60 seen and rails of 3: one opening of 54, two of 25 1/2, three of 16.
    assert [panel_count(60.0, 3.0, longest) for longest in (54.0, 53.0, 25.5, 25.0)] == [1, 2, 2, 3]
    assert panel_count(200.0, 3.0, 10.0) is None


def test_openings_off_the_grid_leave_their_rest_to_the_end_rails() -> None:
    # 40 seen, three openings between four rails of 2 1/2: 10 each; of 41: 10 1/3, down to 10 5/16, 1/16 over.
    face = JambFace(length=41.0, seen=(0.0, 41.0), width=8.0, slant=8.0)
    entry = job_of(changed(**paneled())).openings[0].interior.panels
    assert entry
    layout = lay_out(face, entry, 3, 1 / 16, GRIDS["1/16"])
    assert layout.opening_length == 10 + 5 / 16
    ends = [finish - start for start, finish in layout.rails]
    assert ends == [2.5 + 1 / 32, 2.5, 2.5, 2.5 + 1 / 32]
    assert sum(ends) + 3 * layout.opening_length == 41.0


def test_only_the_stiles_of_a_frame_move_its_edges() -> None:
    # 7 15/32 less an opening of 3 15/32: two stiles of 2; a plain jamb moves with all of its width.
    assert moving_width(part_of(kit_of(**paneled()), "extension jamb", "left leg")) == 4.0
    assert moving_width(part_of(kit_of(position={"share": "1"}), "extension jamb", "left leg")) == 7 + 15 / 32


def test_mitered_corners_hide_nothing_but_their_thickness() -> None:
    # Mitered, a leg is 42 3/4 and 3/4 at both ends: its face comes out 3/4 from the long point, which is at the back.
    mitered = {"thickness": "3/4", "stock": "poplar", "joint": "miter"}
    layout = layout_of(kit_of(**paneled(interior_trim__inside__jamb=mitered)), "left leg")
    assert layout.length == 44.25
    assert layout.openings == ((3.25, 20.875), (23.375, 41.0))


def test_a_wall_that_tapers_is_taken_up_by_the_stile_at_the_room() -> None:
    # 7 1/2 and 7 3/4 deep, 1/32 proud: opening 7 17/32 - 4 = 3 17/32, the stile 7 25/32 - 2 - 3 17/32 = 2 1/4 wide.
    left = ["7 1/2", "7 5/8", "7 3/4"]
    depths = {"right": ["7 1/2"] * 3, "sill": ["7 1/2"] * 3, "left": left, "head": left[::-1]}
    measured = {"date": "2026-06-01", "interior_depth": depths}
    leg = part_of(kit_of(**paneled(openings__0__measured=measured)), "extension jamb", "left leg")
    assert leg.taper is not None
    assert [one.width for one in members(leg, PartKind.STILE)] == [2.0, 2.25]


@given(
    seen=st.floats(20, 120), ends=st.tuples(st.floats(0, 8), st.floats(0, 8)), slant=st.floats(6, 30),
    count=st.integers(1, MOST_PANELS), grid=st.sampled_from(["1/16", "1/32", "1 mm"]),
)  # fmt: skip
def test_rails_and_openings_make_up_the_jamb(
    seen: float, ends: tuple[float, float], slant: float, count: int, grid: str
) -> None:
    """Whatever the jamb: openings alike and on the grid, end rails at least as wide as asked for, nothing over."""
    length = ends[0] + seen + ends[1]
    face = JambFace(length=length, seen=(ends[0], ends[0] + seen), width=slant + 1, slant=slant)
    entry = PanelsEntry.model_validate(PANELS)
    assume(opening_between(seen, entry.rails, count) > 1)
    layout = lay_out(face, entry, count, 1 / 16, GRIDS[grid])
    spans = [finish - start for start, finish in (*layout.rails, *layout.openings)]
    assert sum(spans) == pytest.approx(length)
    assert GRIDS[grid].holds(layout.opening_length) and GRIDS[grid].holds(layout.opening_width)
    assert layout.rails[0][1] >= ends[0] + entry.rails - 1e-9
    assert layout.length - layout.rails[-1][0] >= ends[1] + entry.rails - 1e-9
    assert 2 * entry.stiles + layout.opening_width <= slant + 1e-9


METRIC_PANELS = {
    "stiles": "50",
    "rails": "60",
    "tenon": "9",
    "groove": {"width": "6", "depth": "10", "from_face": "6"},
    "panel": {"thickness": "6", "stock": "birch plywood", "room": "2", "end_room": "2"},
    "on_legs": "2",
    "on_level": "1",
}


def test_in_millimeters() -> None:
    # 240 wide, 900 seen: opening 240 - 100 = 140, rail 140 + 18, panel 140 + 20 - 2; (900 - 180) / 2 = 360, + 20 - 2.
    job = job_of(changed(**METRIC, interior_trim__inside__panels=METRIC_PANELS))
    entry, mm = job.openings[0].interior.panels, 25.4
    assert entry
    face = JambFace(length=900 / mm, seen=(0.0, 900 / mm), width=240 / mm, slant=240 / mm)
    layout = lay_out(face, entry, 2, 2 / mm, job.shop.grid)
    found = (layout.opening_width, layout.rail_length, layout.panel_width, layout.opening_length, layout.panel_length)
    assert [one * mm for one in found] == pytest.approx([140, 158, 158, 360, 378])


@pytest.mark.parametrize(("stiles", "is_made"), [("84", True), ("84.5", True), ("85", False)])
def test_in_millimeters_a_panel_shows_at_least_25(stiles: str, is_made: bool) -> None:
    # Jambs of 194: two stiles of 84.5 leave 25, of 85 24.
    changes = {**METRIC, "interior_trim__inside__panels": {**METRIC_PANELS, "stiles": stiles}}
    if is_made:
        assert all(part.frame_members for part in kit_of(**changes).parts if part.kind is PartKind.EXTENSION_JAMB)
    else:
        with pytest.raises(PartsError):
            kit_of(**changes)


SHAPED = {
    "openings__0__shape": {"kind": "octagon"},
    "openings__0__frame": "36 x 36",
    "openings__0__rough_opening": None,
}


def test_a_shape_has_no_panels() -> None:
    with pytest.raises(JobFaults, match="gives panels, which is made round rectangles only"):
        job_of(changed(**paneled(**SHAPED)))


def test_panels_of_both_legs_are_alike_where_the_wall_is_deeper_at_one() -> None:
    """Read 7 7/16 at the left and 7 11/16 at the right, 1/32 proud: 7 15/32 and 7 23/32, less two stiles of 2.

    The left has openings of 3 15/32, which the right takes over: its stile at the room is 1/4 wider.
    """
    depths = {"head_left": "7 7/16", "sill_left": "7 7/16", "head_right": "7 11/16", "sill_right": "7 11/16"}
    kit = kit_of(**paneled(openings__0__measured={"date": "2026-06-01", "interior_depth": depths}))
    assert layout_of(kit, "left leg").across == layout_of(kit, "right leg").across == (2.0, 5 + 15 / 32)
    rooms = [members(part_of(kit, "extension jamb", leg), PartKind.STILE)[1].width for leg in ("left leg", "right leg")]
    assert rooms == [2.0, 2.25]


@pytest.mark.parametrize(("share", "tight"), [(1.0, False), (1.001, True), (0.999, False)])
def test_a_panel_may_just_fill_the_room_it_has(share: float, tight: bool) -> None:
    """4 7/32 between the bottoms of both grooves, less the panel of 4 5/32, is 1/16 of room: all of it may be taken."""
    job = job_of(changed(**paneled()))
    leg = part_of(make_kit(place_windows(job)[0], job), "extension jamb", "left leg")
    entry = job.openings[0].interior.panels
    assert entry
    moves = PanelMovement(growth=share * (1 / 16) / (4 + 5 / 32), shrinkage=0.0)
    assert bool(list(_swelling([leg], entry, moves))) is tight


@pytest.mark.parametrize(("share", "is_loose"), [(1.0, False), (1.01, True), (0.99, False)])
def test_a_panel_may_just_keep_in_its_grooves(share: float, is_loose: bool) -> None:
    """3 15/32 in the clear, 1/8 in each groove (common practice, no source): 3 23/32 may be left of 4 5/32."""
    job = job_of(changed(**paneled()))
    leg = part_of(make_kit(place_windows(job)[0], job), "extension jamb", "left leg")
    entry = job.openings[0].interior.panels
    assert entry
    moves = PanelMovement(growth=0.0, shrinkage=share * (7 / 16) / (4 + 5 / 32))
    assert bool(list(_leaving([leg], entry, moves, job))) is is_loose


def test_what_is_done_to_stiles_rails_and_panels_in_words() -> None:
    """Grooves 1/4 x 3/8, 1/4 from the face; of 3/4 less two shoulders of 1/4 a tenon of 1/4 is left."""
    job = job_of(changed(**paneled()))
    leg = part_of(make_kit(place_windows(job)[0], job), "extension jamb", "left leg")
    grid = job.shop.grid
    inner, both, tenons = "groove the inner edge", "groove both edges", "stub tenons at both ends"
    assert [member_work_in_short(one) for one in leg.frame_members] == [
        *[[inner]] * 2,
        *([inner, tenons], [both, tenons], [inner, tenons]),
        *[[]] * 2,
    ]
    groove, tenon = (
        '1/4" wide, 3/8" deep, 1/4" from the face',
        '3/8" long, 1/4" thick, 1/4" off the face, 1/4" off the back',
    )
    assert member_sizes(leg, grid) == {"grooves": groove, tenons: tenon}
    letters = [letters_of(leg, kind) for kind in (PartKind.STILE, PartKind.RAIL, PartKind.PANEL)]
    assert letters == ["a, b", "c, d, e", "f, g"]


def test_a_rabbeted_panel_tells_its_tongue() -> None:
    thick = {**PANELS, "panel": {**PANEL, "thickness": "1/2", "tongue": "1/2", "stock": "poplar"}}
    job = job_of(changed(**paneled(interior_trim__inside__panels=thick)))
    leg = part_of(make_kit(place_windows(job)[0], job), "extension jamb", "left leg")
    panel = members(leg, PartKind.PANEL)[0]
    assert member_work_in_short(panel) == ["rabbet the back all round"]
    assert list(member_work(panel, job.shop.grid)) == [
        'rabbet the back all round: 1/2" wide, 1/4" deep, leaves a tongue 1/4"'
    ]


@pytest.mark.parametrize(("tenon", "is_said"), [("3/8", True), ("23/64", False), ("1/4", False)])
def test_a_tenon_as_long_as_its_groove_is_deep_would_hold_the_shoulders_open(tenon: str, is_said: bool) -> None:
    job = job_of(changed(**paneled(interior_trim__inside__panels={**PANELS, "tenon": tenon})))
    leg = part_of(make_kit(place_windows(job)[0], job), "extension jamb", "left leg")
    assert any("a hair deeper" in line for line in frame_words(leg, job.shop.grid)) is is_said
