"""Openings without casing by hand: boards of the returns, coat, furring, beads, stool and tile between them.

The base window: frame 35 1/2 x 47 1/2, faces 2 1/2, rough opening 36 x 48, interior depth 4 11/16, wall board 1/2.
"""

from __future__ import annotations

from typing import Any

import pytest
from cases import METRIC, changed, figure, job_of, kit_of, part_of
from cases import STOOL as CASED

from jambs.job.measured.measuring_points import FINISHED, measure_places
from jambs.parts.board.cuts import Notch, Taper
from jambs.parts.board.kinds import Crew, PartKind
from jambs.parts.board.part import Part
from jambs.parts.findings.kit_findings import BoardsNotListed
from jambs.parts.kit.backing import BackingKind, backing_of
from jambs.parts.kit.drywall import BeadKind
from jambs.parts.kit.kit import Kit
from jambs.parts.words.cut_words import work_words
from jambs.sides import Side

BOARDS: dict[str, Any] = {
    "material": "gypsum board",
    "thickness": "1/2",
    "corner_bead": {"leg": "1 1/4", "nose": "1/16"},
    "wall_board": "over the return",
    "gap_at_frame": "1/4",
}
RETURNS: dict[str, Any] = {"style": "returns", "frame_reveal": "1/2", "returns": BOARDS}
STOOL = {"thickness": "1", "stock": "poplar", "horn": "1", "nosing": "3/4"}
WITH_STOOL: dict[str, Any] = {**RETURNS, "style": "returns and stool", "stool": STOOL}
TILE = {"thickness": "3/8", "bed": "1/4", "joint": "1/8", "nosing": "1/4"}
WITH_TILE: dict[str, Any] = {**RETURNS, "style": "returns and tile sill", "tile_sill": TILE}
BARE: dict[str, Any] = {
    "style": "returns",
    "jamb": {"thickness": "3/4", "stock": "poplar", "joint": "miter"},
    "frame_reveal": "1/8",
    "wall_edge": {"kind": "shadow gap", "gap": "3/8", "leg": "1"},
}


def returned(trim: dict[str, Any], **paths: Any) -> Kit:
    return kit_of(interior_trim__inside=trim, **paths)


def board(kit: Kit, position: str) -> Part:
    return part_of(kit, "return", position)


def test_there_is_no_jamb_and_no_casing_and_the_rough_opening_stays() -> None:
    kit = returned(RETURNS)
    kinds = {part.kind for part in kit.parts if part.where.value == "interior"}
    assert kinds == {PartKind.RETURN}
    assert kit.placement.opening.rough_opening == kit_of().placement.opening.rough_opening
    assert kit.placement.framing_opening == kit_of().placement.framing_opening


def test_the_finished_opening_and_the_boards_behind_its_coat() -> None:
    # 35 1/2 - 5 + 2 x 1/2 = 31 1/2 finished, the boards 1/16 farther back on each side; 47 1/2 - 5 + 1 = 43 1/2.
    kit = returned(RETURNS)
    assert (kit.clear_width, kit.clear_height) == (31.5, 43.5)
    assert figure(kit, "between return boards, width") == 31.625
    assert figure(kit, "between return boards, height") == 43.625
    # The head lies over the sides: 31 5/8 + 2 x 1/2.
    assert board(kit, "head").length == 32.625
    assert board(kit, "left leg").length == 43.625


def test_a_board_runs_from_its_gap_to_the_wall_board_that_covers_it() -> None:
    # 4 11/16 - 1/4 at the frame - 1/2 of wall board; behind the wall board's face it would be 1/2 wider.
    assert board(returned(RETURNS), "head").width == 4 + 11 / 16 - 1 / 4 - 1 / 2
    behind = {**RETURNS, "returns": {**BOARDS, "wall_board": "behind the return"}}
    assert board(returned(behind), "head").width == 4 + 11 / 16 - 1 / 4


def test_the_opening_that_is_cut_in_the_wall_board() -> None:
    # Over the return its edge is flush with the boards; behind it, it stops at their backs, 1/2 farther.
    assert figure(returned(RETURNS), "opening in the wall board, width") == 31.625
    behind = {**RETURNS, "returns": {**BOARDS, "wall_board": "behind the return"}}
    assert figure(returned(behind), "opening in the wall board, width") == 32.625


def test_furring_takes_what_lies_behind_board_and_coat() -> None:
    # (36 - 31 1/2) / 2 - 1/2 - 1/16.
    kit = returned(RETURNS)
    for side in ("left", "right", "head"):
        assert figure(kit, f"furring behind the {side} return") == 2.25 - 9 / 16
    assert figure(kit, "furring under the sill") == 2.25 - 9 / 16


def test_beads_are_as_long_as_the_finished_edges() -> None:
    work = returned(WITH_STOOL).drywall
    assert work is not None
    found = {(bead.kind, bead.side): bead.length for bead in work.beads}
    # On a stool there are three: 43 1/2 up from it, 31 1/2 across.
    assert found == {
        (BeadKind.CORNER, Side.HEAD): 31.5,
        (BeadKind.CORNER, Side.LEFT): 43.5,
        (BeadKind.CORNER, Side.RIGHT): 43.5,
    }
    stopped = {**WITH_STOOL, "returns": {**BOARDS, "frame_bead": {"leg": "1", "nose": "1/16"}}}
    with_frame_beads = returned(stopped).drywall
    assert with_frame_beads is not None and len(with_frame_beads.beads) == 6


def test_the_stool_lies_between_the_returns_and_its_horns_go_past_their_corners() -> None:
    kit = returned(WITH_STOOL)
    stool = part_of(kit, "stool", "sill")
    # 31 1/2 + 2 horns of 1; from the frame to the wall and 3/4 past it, without a casing in front.
    assert (stool.length, stool.width) == (33.5, 4 + 11 / 16 + 3 / 4)
    notches = [cut for cut in stool.cuts if isinstance(cut, Notch)]
    assert [(cut.along, cut.across) for cut in notches] == [(1.0, 4 + 11 / 16)] * 2
    # The boards go down beside it, to its underside: 43 1/2 + 1/16 above + 1 below.
    assert board(kit, "left leg").length == 44.5625


def test_a_stool_without_horns_is_a_plain_board_between_the_returns() -> None:
    kit = returned({**WITH_STOOL, "stool": {**STOOL, "horn": "0"}})
    stool = part_of(kit, "stool", "sill")
    assert stool.length == 31.5 and stool.is_plain


def test_an_apron_is_as_wide_as_the_finished_opening() -> None:
    trim = {**WITH_STOOL, "apron": {"width": "2 1/2", "thickness": "3/4", "stock": "poplar"}}
    assert part_of(returned(trim), "apron", "sill").length == 31.5
    assert not [part for part in returned(WITH_STOOL).parts if part.kind is PartKind.APRON]


def test_a_sill_of_tile() -> None:
    # 31 1/2 less two joints of 1/8; 4 11/16 less the joint at the frame and 1/4 past the wall.
    kit = returned(WITH_TILE)
    tile = part_of(kit, "tile sill", "sill")
    assert (tile.length, tile.width) == (31.25, 4 + 11 / 16 - 1 / 8 + 1 / 4)
    assert tile.crew is Crew.TILER
    # Under it tile and bed: (48 - 43 1/2) / 2 - 3/8 - 1/4.
    assert figure(kit, "furring under the sill") == 2.25 - 5 / 8
    assert board(kit, "left leg").length == 43.5 + 1 / 16 + 5 / 8


@pytest.mark.parametrize(
    ("left", "right", "taper"),
    [("4 5/8", "4 7/8", Taper(start_width=5.0, finish_width=4.75)), ("4 11/16", "4 11/16", None)],
)
def test_a_sill_of_tile_tapers_as_its_wall_does(left: str, right: str, taper: Taper | None) -> None:
    """A joint of 1/8 less and 1/4 past the wall: 1/8 more than the depth at each end; it runs from right to left."""
    depths = {"head_left": "4 11/16", "head_right": "4 11/16", "sill_left": left, "sill_right": right}
    kit = returned(WITH_TILE, openings__0__measured={"date": "2026-05-18", "interior_depth": depths})
    tile = part_of(kit, "tile sill", "sill")
    assert [cut for cut in tile.cuts if isinstance(cut, Taper)] == ([taper] if taper else [])
    assert tile.width == (5.0 if taper else 4 + 13 / 16)


def test_nothing_of_other_crews_comes_out_of_our_boards() -> None:
    kit = returned(WITH_TILE)
    theirs = [part for part in kit.parts if part.kind in (PartKind.RETURN, PartKind.TILE_SILL)]
    assert len(theirs) == 4
    assert all(not part.is_wood and part.blank.board is None and not part.strips for part in theirs)
    missing = [finding for finding in kit.findings if isinstance(finding, BoardsNotListed)]
    assert {stock for finding in missing for stock, _ in finding.boards} == {"cedar", "spruce"}


CORNERS = {"head_left": "4 3/4", "head_right": "4 3/4", "sill_left": "4 5/8", "sill_right": "4 5/8"}


def test_returns_taper_with_the_wall_that_was_measured() -> None:
    kit = returned(RETURNS, openings__0__measured={"date": "2026-06-01", "interior_depth": CORNERS})
    taper = board(kit, "left leg").taper
    assert taper is not None
    assert (taper.start_width, taper.finish_width) == (4 + 5 / 8 - 3 / 4, 4)


def test_bare_jambs_leave_a_shadow_gap() -> None:
    # Clear 30 3/4 by 42 3/4, jambs 3/4, the wall board 3/8 off their backs on four sides.
    kit = returned(BARE)
    assert {part.kind for part in kit.parts if part.where.value == "interior"} == {PartKind.EXTENSION_JAMB}
    assert figure(kit, "opening in the wall board, width") == 30.75 + 1.5 + 0.75
    assert figure(kit, "opening in the wall board, height") == 42.75 + 1.5 + 0.75
    assert kit.drywall is not None and {bead.kind for bead in kit.drywall.beads} == {BeadKind.SHADOW_GAP}


def test_a_trimless_bead_butts_to_the_jamb() -> None:
    kit = returned({**BARE, "wall_edge": {"kind": "trimless bead", "leg": "1"}})
    assert figure(kit, "opening in the wall board, width") == 30.75 + 1.5


def test_a_bare_jamb_on_a_stool_has_its_horns_past_its_back() -> None:
    kit = returned({**BARE, "style": "returns and stool", "stool": STOOL})
    assert part_of(kit, "stool", "sill").length == 30.75 + 2 * (0.75 + 1)


def test_a_door_is_returned_to_the_floor() -> None:
    kit = returned(
        {**RETURNS, "style": "three-sided"},
        windows__fixed__sash="door out",
        windows__fixed__sash_thickness="1 3/4",
        windows__fixed__sash_set_back="0",
        openings__0__sill_height=None,
        openings__0__floor_below_frame="3/4",
        exterior_trim=None,
    )
    # 47 1/2 - 2 1/2 + 1/2 + 3/4 down to the floor, and the coat above.
    assert board(kit, "left leg").length == 46.25 + 1 / 16
    assert {part.side for part in kit.parts if part.kind is PartKind.RETURN} == {Side.HEAD, Side.LEFT, Side.RIGHT}


def test_a_metric_return() -> None:
    boards = {**BOARDS, "thickness": "12.5", "corner_bead": {"leg": "30", "nose": "1.5"}, "gap_at_frame": "5"}
    metric = {key: value for key, value in METRIC.items() if not key.startswith("interior_trim")}
    kit = kit_of(**metric, interior_trim__inside={**RETURNS, "frame_reveal": "10", "returns": boards})
    # 900 - 120 + 20 = 800; 800 + 2 x 1.5 + 2 x 12.5 over the sides.
    assert kit.clear_width * 25.4 == pytest.approx(800)
    assert board(kit, "head").length * 25.4 == pytest.approx(828)


def test_a_cased_opening_leaves_nothing_to_the_drywall_crew() -> None:
    kit = kit_of()
    assert kit.drywall is None and all(part.crew is Crew.CARPENTER for part in kit.parts)


def test_a_return_of_a_wall_with_a_membrane_is_cut_to_the_grid_of_the_shop() -> None:
    """Gypsum 12.5 on a retarder 0.2 on 1 mm: the planes of the wall are rounded, so the board under its edge is too."""
    boards = {**BOARDS, "thickness": "12.5", "corner_bead": {"leg": "30", "nose": "1.5"}, "gap_at_frame": "5"}
    metric = {key: value for key, value in METRIC.items() if not key.startswith("interior_trim")}
    retarder = {"material": "smart vapor retarder", "thickness": "0.2"}
    metric["walls__main__layers"] = ["gypsum board 12.5 mm", retarder, *METRIC["walls__main__layers"][1:]]
    kit = kit_of(**metric, interior_trim__inside={**RETURNS, "frame_reveal": "10", "returns": boards})
    depth = kit.placement.interior_depth * 25.4
    assert board(kit, "head").width * 25.4 == pytest.approx(round(depth) - 5 - 13)


def test_a_service_cavity_is_no_board_over_the_edge_of_a_return() -> None:
    # The wall board alone covers the edge: 1/2, whatever lies between it and the studs.
    cavity = {"material": "service cavity", "thickness": "1 1/2"}
    layers = ["gypsum board 1/2", cavity, {"material": "stud 2x6", "spacing": "16"}, "plywood 1/2"]
    layers += [{"material": "EPS", "thickness": "3"}, {"material": "plywood 1/2", "role": "outer sheathing"}]
    kit = returned(RETURNS, walls__main__layers=layers)
    assert board(kit, "head").width == kit.placement.interior_depth - 1 / 4 - 1 / 2


def test_a_sill_of_tile_lies_flush_with_the_finished_opening_a_joint_off_frame_and_returns() -> None:
    """The opening from 2 to 33 1/2 across and from 2 up; 4 11/16 less a joint of 1/8, and 1/4 past the wall."""
    tile = part_of(returned(WITH_TILE), "tile sill", "sill")
    points = [tile.seat.at(u, v, w) for u, v in tile.outline for w in (0.0, tile.thickness)]
    box = [(min(ways), max(ways)) for ways in zip(*points, strict=True)]
    assert box == [(2.125, 33.375), (1.625, 2.0), (-0.25, 4.5625)]


def test_a_nailer_stands_where_the_wall_board_ends_inside_the_rough_opening() -> None:
    # The rough opening is 36 wide, the wall board is cut to 33 (30 3/4 + 1 1/2 + 3/4): 1 1/2 is left on each side.
    kit = returned(BARE)
    (wide,) = {one.width for one in backing_of(kit) if one.side in (Side.LEFT, Side.RIGHT)}
    assert wide == 1.5 and {one.kind for one in backing_of(kit)} == {BackingKind.NAILER}


@pytest.mark.parametrize(("member", "place", "deep"), [(None, "4 11/16", 1.5), ("2", "4 11/16", 2.0), ("2", "2", 1.5)])
def test_a_nailer_is_as_deep_as_a_member_of_the_framing_and_never_deeper_than_to_the_frame(
    member: str | None, place: str, deep: float
) -> None:
    """The board of 1/2 lies before it: of 2 inside the frame 1 1/2 are left. PS 20: nominal 2 is 1 1/2 dry."""
    studs = {"material": "stud 2x6", "spacing": "16", **({"member_width": member} if member else {})}
    kit = returned(BARE, walls__main__layers__1=studs, position={"interior_depth": place})
    assert {one.depth for one in backing_of(kit)} == {deep}


def test_no_nailer_where_the_wall_board_ends_on_the_framing_and_none_where_casing_covers_it() -> None:
    # 30 3/4 + 1 1/2 + 2 x 2 = 36 1/4, past the rough opening.
    wide_gap = {**BARE, "wall_edge": {"kind": "shadow gap", "gap": "2", "leg": "1"}}
    assert backing_of(returned(wide_gap)) == ()
    assert backing_of(kit_of()) == ()


def _read(*finished: str) -> dict[str, Any]:
    return {"openings__0__measured": {"date": "2026-06-01", "finished_opening": list(finished)}}


def _stool(kit: Kit) -> Part:
    return next(part for part in kit.parts if part.kind is PartKind.STOOL)


def test_a_stool_waits_for_the_finished_width_and_follows_it() -> None:
    """31 1/2 between coats as planned, read 3/8 wider: so are the stool and what of it stands between the returns."""
    planned, high, read = (returned(WITH_STOOL, **paths) for paths in ({}, _read("-", "43 5/8"), _read("31 7/8", "-")))
    assert [_stool(kit).is_cut_to_opening for kit in (planned, high, read)] == [True, True, False]
    assert _stool(read).length - _stool(planned).length == 0.375
    assert [cut for cut in _stool(read).cuts if isinstance(cut, Notch)] == [
        cut for cut in _stool(planned).cuts if isinstance(cut, Notch)
    ]
    assert board(read, "head").length - board(planned, "head").length == 0.375
    assert read.clear_width - planned.clear_width == 0.375
    said = "cut length and notches to the finished opening"
    grid = job_of(changed()).shop.grid
    assert [said in work_words(_stool(kit), grid=grid) for kit in (planned, read)] == [True, False]


def test_a_stool_between_wooden_legs_waits_for_nobody() -> None:
    assert not _stool(kit_of(interior_trim__inside=CASED)).is_cut_to_opening


def test_the_width_is_asked_for_where_a_stool_depends_on_it() -> None:
    """Not its height; nothing where no board does, or tile."""
    asked = [
        [place.kind for place in measure_places(returned(trim).placement.opening) if place.kind in FINISHED]
        for trim in (WITH_STOOL, RETURNS, WITH_TILE, CASED)
    ]
    assert asked == [[FINISHED[0]], [], [], []]
