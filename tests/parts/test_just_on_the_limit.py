"""What stands just on a limit, by hand: to which side of it the limit itself belongs; words for one and for two.

Where a limit is a choice of the house it is common practice, no source; which side is safe says the comment beside it.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from arches import BOARDS, arch_changes
from cases import changed, job_of, kit_of
from panels import paneled
from part_cases import W1, case

from jambs.findings import Finding
from jambs.length import Units
from jambs.outlines import area
from jambs.parts.board.angle_words import SEEN_DEG, setting_words
from jambs.parts.board.cuts import CannotBeCut, Crosscut, Edge, EdgeGroove, End, Rip, Tenon
from jambs.parts.board.glue_up import strip_widths
from jambs.parts.board.kinds import PartKind, Where, is_one_of_several, member_words, run_words
from jambs.parts.board.marks import NO_MARKS
from jambs.parts.board.part import Part, PartIdentity, Seat
from jambs.parts.board.sawing import saw
from jambs.parts.findings.box_findings import BoxDoesNotFit, CasingLapsShort
from jambs.parts.findings.panel_findings import PanelLeavesGroove
from jambs.parts.findings.stack_findings import StackStillGlued
from jambs.parts.findings.style_findings import ExteriorJambHasNoWidth, OuterCasingLapsShort
from jambs.parts.jambs.flare_checks import hold_clear_of_buck
from jambs.parts.jambs.stack import width_at_window
from jambs.parts.kit.cautions import SHORT_PART, cautions
from jambs.parts.shapes.opening_path import path_fault
from jambs.sides import Side

# ---- words for one and for several


@pytest.mark.parametrize(
    ("kind", "member", "members", "said"),
    [
        (PartKind.CROWN, 1, 3, ""),
        (PartKind.CROWN, 2, 3, ", left return"),
        (PartKind.CROWN, 3, 3, ", right return"),
        (PartKind.STILE, 1, 2, ", at the frame"),
        (PartKind.STILE, 2, 2, ", at the room"),
        (PartKind.RAIL, 2, 3, ", 2 of 3"),
        (PartKind.PANEL, 1, 1, ""),
        (PartKind.ROSETTE, 1, 1, ""),
        (PartKind.ROSETTE, 1, 2, " above"),
        (PartKind.ROSETTE, 2, 2, " below"),
        (PartKind.MULL_CASING, 1, 1, ""),
        (PartKind.MULL_CASING, 2, 2, ", mull 2"),
        (PartKind.MULL_JAMB, 1, 1, ""),
        (PartKind.MULL_JAMB, 1, 2, ", mull 1"),
        (PartKind.TRANSOM_BAR_CASING, 1, 1, ""),
        (PartKind.TRANSOM_BAR_CASING, 2, 2, ", bar 2 from below"),
        (PartKind.EXTENSION_JAMB, 1, 1, ""),
        (PartKind.EXTENSION_JAMB, 1, 2, " of frame 1"),
        (PartKind.CASING, 2, 2, ""),
    ],
)
def test_a_part_alone_is_not_counted(kind: PartKind, member: int, members: int, said: str) -> None:
    assert member_words(kind, member, members) == said


@pytest.mark.parametrize(
    ("run", "runs", "said"),
    [
        (1, 1, ""),
        (1, 2, ", left"),
        (2, 2, ", right"),
        (2, 3, ", middle"),
        (3, 3, ", right"),
        (2, 4, ", 2 of 4 from the left"),
    ],
)
def test_edges_are_named_as_long_as_there_are_names(run: int, runs: int, said: str) -> None:
    assert run_words(run, runs) == said


@pytest.mark.parametrize(
    ("kind", "members", "runs", "expected"),
    [
        (PartKind.EXTENSION_JAMB, 1, None, False),
        (PartKind.EXTENSION_JAMB, 2, None, True),
        (PartKind.CASING, 2, None, False),  # a frame of them is not stacked
        (PartKind.CASING, 1, 1, False),
        (PartKind.CASING, 1, 2, True),
        (PartKind.EXTENSION_JAMB, 1, 3, True),
    ],
)
def test_a_side_is_shared_by_edges_or_by_stacked_frames(
    kind: PartKind, members: int, runs: int | None, expected: bool
) -> None:
    assert is_one_of_several(kind, members, runs) is expected


LEAST: dict[str, Any] = {"subject": W1, "least": 0.25}


def _metal_without_width(depth: float) -> ExteriorJambHasNoWidth:
    return ExteriorJambHasNoWidth(subject=W1, depth=depth, joint=0.25, is_metal=True)


@pytest.mark.parametrize(
    ("finding", "said"),
    [
        (BoxDoesNotFit(side=Side.LEFT, gap=0.0, **LEAST), 'the left: 0" of space to the rough opening'),
        (BoxDoesNotFit(side=Side.LEFT, gap=-0.125, **LEAST), 'the left: 1/8" too large for the rough opening'),
        (CasingLapsShort(side=Side.HEAD, lap=0.0, **LEAST), 'at the head covers the wall by 0"; 1/4" is'),
        (CasingLapsShort(side=Side.HEAD, lap=-0.125, **LEAST), 'at the head misses the wall by 1/8"; 1/4" is'),
        (OuterCasingLapsShort(side=Side.HEAD, lap=0.0, **LEAST), 'covers the wall by 0"'),
        (OuterCasingLapsShort(side=Side.HEAD, lap=-0.125, **LEAST), 'misses the wall by 1/8"'),
        (PanelLeavesGroove(marks=("W1-1e",), held=0.0, wanted=0.5, **LEAST), "Panels have nothing in each groove"),
        (PanelLeavesGroove(marks=("W1-1e",), held=0.125, wanted=0.5, **LEAST), 'have only 1/8" in each groove'),
        (_metal_without_width(-0.125), 'the frame stands 1/8" proud of the trim plane'),
        (_metal_without_width(0.0), 'the frame stands 0" behind the trim plane'),
        (_metal_without_width(0.125), 'the frame stands 1/8" behind the trim plane'),
        (StackStillGlued(subject=W1, frames=2, marks=("W1-1",), width=8.0), "W1-1 is still up to"),
        (StackStillGlued(subject=W1, frames=3, marks=("W1-1", "W1-2"), width=8.0), "W1-1, W1-2 are still up to"),
    ],
)  # fmt: skip
def test_a_sentence_at_nothing_and_just_past_it(finding: Finding, said: str) -> None:
    assert said in finding.sentence(Units.INCH)


# ---- boards


def test_an_angle_that_prints_as_nothing_is_not_set() -> None:
    """To a tenth of a degree 0.05 is nothing, or hardly seen."""
    assert setting_words(SEEN_DEG, SEEN_DEG) == ""
    assert setting_words(0.06, 10.0) == "miter 0.1° (89.9°), blade tilted 10° (80°)"


def test_a_board_of_which_another_strip_adds_nothing_makes_two() -> None:
    """1/8 goes for its edge, 1/4 for each glued edge, 1/32 for the grid: of 21/32 nothing is left to gain."""
    narrow = {"stock": "poplar", "thickness": "3/4", "width": "21/32"}
    job = job_of(changed(shop__boards=[narrow], shop__jointing_allowance="1/4"))
    assert len(strip_widths(4.0, job.boards[0], job.shop)) == 2


def test_a_board_of_which_another_strip_adds_a_little_makes_several() -> None:
    """1 3/16 less 1/8 is 1 1/16, of which each strip adds 1/32 past the 1 for its glued edges and 1/32 for the grid.

    1 1/10 and 1/8 for the rip take (1.225 + 2) / 3 = 1.075 of three, and (1.225 + 3) / 4 = 1.056 of four.
    """
    narrow = {"stock": "poplar", "thickness": "3/4", "width": "1 3/16"}
    job = job_of(changed(shop__boards=[narrow], shop__jointing_allowance="1/2"))
    assert strip_widths(1.1, job.boards[0], job.shop) == (1.0625,) * 4


def test_a_number_that_was_given_is_not_taken_along_to_another_mark() -> None:
    """Each opening has a first part; the one that takes the other's mark finds number 1 given there."""
    first = PartIdentity(opening="A", kind=PartKind.CASING, where=Where.INTERIOR, side=Side.HEAD, member=1)
    there = replace(first, opening="B", side=Side.SILL)
    book = NO_MARKS.with_parts([first, there]).moved({"B": "A"})
    assert book.mark(replace(first, opening="B")) == "B-2"


def test_a_board_at_45_degrees_looks_aside() -> None:
    assert _seat(through=(1.0, 1.0, 0.0)).outward == (1.0, 0.0, 0.0)
    assert _seat(through=(1.0, -1.5, 0.0)).outward == (0.0, -1.0, 0.0)


def _seat(**ways: Any) -> Seat:
    return Seat(**{"origin": (0.0,) * 3, "along": (0.0,) * 3, "across": (0.0,) * 3, "through": (0.0,) * 3, **ways})


@pytest.mark.parametrize(("length", "is_short"), [(SHORT_PART, False), (SHORT_PART - 1 / 32, True)])
def test_a_piece_of_just_ten_inches_can_be_held(length: float, is_short: bool) -> None:
    kit = kit_of(**paneled())
    jamb = next(part for part in kit.parts if part.frame_members)
    assert jamb.blank.panels
    members = tuple(_as_long(one, length if at == 0 else 20.0) for at, one in enumerate(jamb.frame_members))
    panels = replace(jamb.blank.panels, members=members)
    cut = replace(jamb, blank=replace(jamb.blank, panels=panels))
    said = cautions(kit.placement, (cut,), Units.INCH, year_built=None)
    marks = [one.marks for one in said if one.words.startswith("Short")]
    assert marks == ([(members[0].mark,)] if is_short else [])


def _as_long(part: Part, length: float) -> Part:
    return replace(part, cuts=tuple(Crosscut(length=length) if isinstance(one, Crosscut) else one for one in part.cuts))


def test_all_frames_at_the_window_are_bought() -> None:
    """13 deep in three frames: two of 5 3/8 and 2 1/4 take 5 1/2 + 5 1/2 + 3 1/2 = 14 1/2 of boards.

    Two of 3 1/2 and one of 6 take 3 1/2 + 3 1/2 + 9 1/4 = 16 1/4, equal shares three of 5 1/2.
    """
    boards = [{"nominal": name, "stock": "poplar"} for name in ("1x4", "1x6", "1x10")]
    job = job_of(changed(shop__boards=boards, interior_trim__inside__stack="3"))
    found = width_at_window(13 - 1 / 32, job.openings[0].interior, shop=job.shop, least=0.75, boards=job.boards)
    assert found == 5.375


# ---- limits of a kit


@pytest.mark.parametrize(("set_back", "is_met"), [("27/32", True), ("7/8", False)])
def test_a_buck_that_is_set_back_leaves_a_flared_jamb_more_room(set_back: str, is_met: bool) -> None:
    """The frame stands 7 7/16 deep, the buck from 6 1/2 on: a jamb at 45° is 15/16 out there.

    Behind the leg 1/4 + 1 - 1/8 - 3/4 / cos 45° along the wall are 0.0643, so that 0.8732 lie past it.
    """
    buck = {"kind": "outboard", "thickness": "1 1/2", "stock": "spruce", "set_back": set_back}
    said = case(
        position={"share": "1"},
        windows__fixed__frame_face="1",
        walls__main__buck=buck,
        interior_trim__inside__flare={"left": "45 deg"},
    )()
    assert ("flare-meets-buck" in [one.code for one in said]) is is_met


def test_the_thickest_of_several_boards_is_told_where_none_is_thick_enough() -> None:
    thin = [one for one in BOARDS if one["nominal"] != "8/4x8" or one["stock"] != "poplar"]
    thin.append({"stock": "poplar", "thickness": "1/2", "width": "7 1/4", "lengths": ["8'"]})
    (found,) = case(**arch_changes("half round", 20, 40, shop__boards=thin))()
    assert (found.code, getattr(found, "thickest", None)) == ("boards-too-thin-for-arch", 0.75)
    (found,) = case(
        **arch_changes("half round", 20, 40, shop__boards=[one for one in thin if one["stock"] == "cedar"])
    )()
    assert (found.code, getattr(found, "thickest", None)) == ("boards-too-thin-for-arch", 0.0)


@pytest.mark.parametrize(("nearer", "is_met"), [(0.0, False), (1 / 64, True)])
def test_a_buck_that_begins_where_the_jambs_do_is_not_beside_them(nearer: float, is_met: bool) -> None:
    """A box 1/2 too wide for its hole meets the framing, square or flared; the buck only where it stands beside it."""
    kit = kit_of(interior_trim__inside__flare={"left": "15 deg"})
    assert kit.placement.buck
    buck = replace(kit.placement.buck, inner=kit.placement.inside_edge - nearer)
    wide = replace(kit.frames[0].clear, left=kit.frames[0].clear.left - 2.375)
    try:
        hold_clear_of_buck(wide, replace(kit.placement, buck=buck))
    except CannotBeCut:
        assert is_met
    else:
        assert not is_met


@pytest.mark.parametrize(
    ("corners", "fault"),
    [
        (((0, 0), (0, 4)), "a path of 2 corners"),
        (((0, 0), (0, 4), (4, 0)), ""),
        (((0, 0), (0, 4), (4, 4), (4, 0)), ""),
        (((0, 0), (0.5, 1), (1, 0), (0.5, 0.25)), ""),  # drawn out, its lower edges would cut the upper ones
        (((0.5, 0.25), (0, 0), (0.5, 1), (1, 0)), ""),
        (((0, 0), (4, 4), (0, 4), (4, 0)), "crosses itself"),
        (((0, 0), (0, 4), (2, 0), (4, 4), (4, 0)), "crosses itself"),  # the third corner touches the sill
        (((0, 0), (0, 4), (2, 4), (4, 4), (4, 0)), "corner 3 lies on a straight edge"),
    ],
)
def test_a_path_goes_once_round(corners: Any, fault: str) -> None:
    found = path_fault(tuple((float(x), float(y)) for x, y in corners))
    assert fault in found if fault else found == ""


@pytest.mark.parametrize(("edge", "bottom"), [(Edge.NEAR, 0.375), (Edge.FAR, 1.625)])
def test_a_groove_is_in_its_own_edge(edge: Edge, bottom: float) -> None:
    """2 wide, 3/4 thick, grooved 1/4 wide and 3/8 deep 1/4 from the face: 2 x 3/4 less 3/32 of end are left."""
    groove = EdgeGroove(edge=edge, from_face=0.25, width=0.25, depth=0.375)
    end = saw((Rip(width=2.0), Crosscut(length=10.0), groove), thickness=0.75).end
    assert {(bottom, 0.25), (bottom, 0.5)} <= set(end)
    assert abs(area(end)) == pytest.approx(1.5 - 3 / 32)


@pytest.mark.parametrize(("end", "low"), [(End.START, 0.0), (End.FINISH, 9.625)])
def test_a_tenon_is_thinner_from_both_faces(end: End, low: float) -> None:
    """3/8 long, 1/4 off the face and 1/8 off the back of 3/4: 3/8 thick are left there."""
    cuts = (Rip(width=2.0), Crosscut(length=10.0), Tenon(end=end, along=0.375, face=0.25, back=0.125))
    edge = saw(cuts, thickness=0.75).edge
    assert {(low, 0.25), (low, 0.625), (low + 0.375, 0.25), (low + 0.375, 0.625)} <= set(edge)
    assert abs(area(edge)) == pytest.approx(7.5 - 0.375 * 0.375)
