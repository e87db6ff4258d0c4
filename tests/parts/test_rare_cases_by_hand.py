"""What few kits have, by hand: radially sawn wood, letters in lists, windows farther in, frames just out of square.

Limits of the house are common practice, no source; where a limit itself belongs says the test.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from arches import arch_changes
from cases import changed, job_of, kit_of, placed
from rounds import round_changes
from trimmed_as_one import run_kits

from jambs.findings import Severity, Subject
from jambs.job.models.outside import Sawn
from jambs.length import GRIDS, Units
from jambs.parts.board.edge_of import edge_of
from jambs.parts.board.glue_up import strip_widths
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.findings.water import LEAST_DRIP, LEAST_FALL
from jambs.parts.kit.cautions import _listed
from jambs.parts.readings.measured_against import MeasuredAgainst, marks_of_alike
from jambs.parts.readings.reasons import StandsAsMeasured
from jambs.parts.readings.wall_findings import CannotStandAsRead
from jambs.parts.wood.woods import woods
from jambs.parts.words.glue_words import glue_words
from jambs.place.frame_path import frame_path
from jambs.sides import Side

ABOUT = Subject.opening("W1")


def test_wood_moves_by_how_it_was_sawn() -> None:
    """Flat sawn boards move tangentially, quarter sawn ones radially, which is less (the table's own values)."""
    for wood in woods():
        assert wood.across(Sawn.FLAT) == wood.tangential
        assert {wood.across(sawn) for sawn in Sawn if sawn is not Sawn.FLAT} == {wood.radial}
    assert sum(wood.radial for wood in woods()) < sum(wood.tangential for wood in woods())


@pytest.mark.parametrize(
    ("marks", "said"),
    [
        (("W1-1",), "W1-1"),
        (("W1-1", "W1-2"), "W1-1, W1-2"),
        (("W1-2c", "W1-2d", "W1-2e"), "W1-2c, d, e"),
        (("W1-1", "W1-2c", "W1-2d", "W1-3c", "W1-4"), "W1-1, W1-2c, d, W1-3c, W1-4"),
        ((*(f"W1-{at}" for at in range(1, 9)), "W1-12"), "W1-1 to W1-8, W1-12"),
        (tuple(f"W1-{at}" for at in range(1, 8)), "W1-1, W1-2, W1-3, W1-4, W1-5, W1-6, W1-7"),
    ],
)
def test_of_members_of_one_jamb_the_letters_follow_the_first(marks: tuple[str, ...], said: str) -> None:
    assert _listed(marks) == said


@pytest.mark.parametrize(("outward", "way"), [(0.5, "farther out"), (-0.5, "farther in")])
def test_a_window_is_read_farther_out_or_farther_in(outward: float, way: str) -> None:
    """Half an inch either way; its sign is told in the word alone."""
    stands = StandsAsMeasured(flange_plane=9.0, outward=outward).sentence(Units.INCH)
    cannot = CannotStandAsRead(subject=ABOUT, severity=Severity.STOP, outward=outward, why=()).sentence(Units.INCH)
    assert all(f'1/2" {way}' in said for said in (stands, cannot))


def test_all_that_is_in_a_windows_way_is_told_the_first_after_a_colon() -> None:
    """Of two reasons the first goes on with the sentence, the second is one of its own; neither repeats the mark."""
    one, other = (
        CannotStandAsRead(subject=ABOUT, severity=Severity.STOP, outward=outward, why=()) for outward in (1.0, 2.0)
    )
    whole = CannotStandAsRead(subject=ABOUT, severity=Severity.STOP, outward=3.0, why=(one, other))
    first, second, said = (finding.sentence(Units.INCH) for finding in (one, other, whole))
    assert f"cannot: {first} {second} Measure again" in said


@pytest.mark.parametrize(
    ("key", "one", "code"),
    [
        ("diagonals", 59.25, "frame-racked"),
        ("frame_width", 35.5, "frame-wider-at-one-end"),
        ("frame_height", 47.5, "frame-higher-at-one-side"),
    ],
)
@pytest.mark.parametrize(("off", "is_said"), [(9 / 128, False), (10 / 128, True)])
def test_a_frame_may_be_out_by_a_sixteenth_and_half_a_64th(
    key: str, one: float, code: str, off: float, is_said: bool
) -> None:
    kit = kit_of(openings__0__measured={"date": "2026-06-01", key: [f"{one}", f"{one + off}"]})
    assert (code in [finding.code for finding in kit.findings]) is is_said


def test_a_nosing_of_five_millimeters_and_a_fall_of_six_percent_are_asked_for() -> None:
    """NBC of Canada 9.27.3.8 asks for a slope of 6 % and a drip 5 mm out of what lies below."""
    assert (LEAST_FALL, LEAST_DRIP) == (0.06, 5 / 25.4)


def test_openings_are_alike_that_nothing_but_their_mark_tells_apart() -> None:
    one = placed()
    twin = replace(one, opening=replace(one.opening, mark="W2"))
    other_room = replace(one, opening=replace(one.opening, mark="W3", room="Hall"))
    farther_out = replace(twin, flange_plane=one.flange_plane + 0.5)
    taller = replace(twin, opening=replace(twin.opening, sill_height=30.0))
    assert marks_of_alike(one, [one, twin]) == ("W1", "W2")
    for other in (other_room, farther_out, taller):
        assert marks_of_alike(one, [one, other]) == ()
    assert marks_of_alike(one, [one]) == ()


@pytest.mark.parametrize(
    ("shape", "width", "height", "sizes"),
    [
        ({"kind": "full round"}, 36, 36, (("full round", 36.0),)),
        ({"kind": "quarter round", "high_side": "left"}, 36, 36, (("quarter round high at the left", 36.0),)),
        ({"kind": "quarter round", "high_side": "right"}, 36, 36, (("quarter round high at the right", 36.0),)),
    ],
)
def test_a_round_is_known_by_its_width(shape: dict[str, Any], width: float, height: float, sizes: Any) -> None:
    """It has no size of its own beside the frame; which way a quarter stands is part of what it is."""
    assert MeasuredAgainst.of(placed(**round_changes(shape, width, height))).shape == sizes


@pytest.mark.parametrize("curved", ["sawn segments", "bent laminations"])
def test_the_boards_of_an_arch_lie_along_the_edge_they_stand_at(curved: str) -> None:
    kit = kit_of(**arch_changes({"kind": "half round"}, 36, 60, curved=curved))
    path = frame_path(kit.placement.opening)
    for part in kit.parts:
        if part.kind is PartKind.EXTENSION_JAMB and part.where is Where.INTERIOR:
            edge = edge_of(part, path)
            assert (edge.side, edge.center is not None) == (part.side, part.side is Side.HEAD)


def test_each_arc_of_an_ellipse_has_its_own_boards() -> None:
    """Three arcs, left to right: boards of the left one lie left of the crown, of the right one right of it."""
    kit = kit_of(**arch_changes({"kind": "ellipse arch", "rise": "14"}, 40, 40))
    path = frame_path(kit.placement.opening)
    heads = [one for one in kit.parts if one.kind is PartKind.EXTENSION_JAMB and one.side is Side.HEAD]
    heads = [one for one in heads if one.where is Where.INTERIOR]
    middles = [one.seat.at(one.length / 2, 0.0, 0.0)[0] for one in heads]
    runs = [edge_of(one, path).run for one in heads]
    assert set(runs) == {1, 2, 3}
    assert [run for _, run in sorted(zip(middles, runs, strict=True))] == sorted(runs)


def test_the_boards_of_a_buck_round_an_arch_follow_it() -> None:
    kit = kit_of(**arch_changes({"kind": "half round"}, 36, 60, position={"share": "1/2"}))
    path = frame_path(kit.placement.opening)
    bucks = [one for one in kit.parts if one.where is Where.BUCK]
    assert {edge_of(one, path).side for one in bucks if one.side is Side.HEAD} == {Side.HEAD}
    assert all(edge_of(one, path).center for one in bucks if one.side is Side.HEAD)


def test_strips_leave_both_edges_of_a_board_on() -> None:
    """A 1x4 of 3 1/2 less 1/8 at either edge gives strips of 3 1/4 at the most."""
    job = job_of(changed(shop__far_edge_allowance="1/8", shop__jointing_allowance="1/32", shop__rip_kerf="1/16"))
    board = job.boards[0]
    assert board.width == 3.5
    # (6 1/4 + 1/16 + 2 x 1/32) / 2 = 3.1875; (6 3/8 + 1/8) / 2 = 3 1/4; (6 13/32 + 1/8) / 2 is past it.
    assert strip_widths(6.25, board, job.shop) == (3.1875, 3.1875)
    assert strip_widths(6.375, board, job.shop) == (3.25, 3.25)
    assert len(strip_widths(6 + 13 / 32, board, job.shop)) == 3


def test_strips_that_are_not_jointed_are_glued_as_they_are() -> None:
    narrow = {"shop__boards": [{"nominal": "1x4", "stock": "poplar"}]}
    for jointing, is_said in (("0", False), ("1/32", True)):
        kit = kit_of(shop__jointing_allowance=jointing, **narrow)
        glued = next(one for one in kit.parts if one.strips)
        assert ("off each glued edge" in glue_words(glued, grid=GRIDS["1/32"])) is is_said


def test_all_that_is_seen_of_openings_trimmed_as_one_is_whole() -> None:
    lead, second = run_kits(2)
    assert lead.whole.parts == (*lead.parts, *lead.lent, *lead.beside) and not lead.whole.beside
    alone = kit_of()
    assert alone.whole is alone
    assert len(second.whole.parts) >= len(second.parts)
