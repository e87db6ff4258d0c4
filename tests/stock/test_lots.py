"""Parts of a house as pieces in lots: sizes by hand, every part once, boards where they belong, faults in words."""

from __future__ import annotations

import math
from collections import Counter
from pathlib import Path

import pytest
from cases import changed, job_of
from lot_cases import BOARDS, inside_job, lots_of

from jambs.app.chain import make_kits
from jambs.job import read_job
from jambs.length import Units
from jambs.parts.board.cuts import EndBevel, Miter
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.kit.planned import Waits
from jambs.stock import plan_stock
from jambs.stock.house.house_pieces import house_pieces, miter_allowance
from jambs.stock.house.house_plan import Effort, plan_house
from jambs.stock.house.lot_words import _until_then, lot_notes
from jambs.stock.house.lots import house_lots, lot_letter
from jambs.stock.house.lumber import saw_settings, steps_down, steps_up

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.mark.parametrize("name", ["harbour-house", "hillside-house", "garden-studio"])
def test_every_wooden_part_is_in_one_lot_once(name: str) -> None:
    job = read_job(EXAMPLES / name)
    kits = make_kits(job)
    parts = Counter(part.mark for kit in kits for part in kit.parts if part.is_wood)
    pieces = [one for lot in house_lots(kits, job) for one in lot.pieces]
    whole = Counter(one.part.mark for one in pieces if not one.glued or one.piece.mark.endswith("a"))
    assert whole == parts
    assert len({one.piece.mark for one in pieces}) == len(pieces)


@pytest.mark.parametrize("name", ["harbour-house", "hillside-house"])
def test_pieces_are_rounded_as_they_are_printed_and_boards_down(name: str) -> None:
    """Pieces to the marks of the shop, half a step off at most; boards to a sixty-fourth, a tenth of a millimeter."""
    job = read_job(EXAMPLES / name)
    step, grid = 1 / 64 if job.units == "inch" else 0.1 / 25.4, job.shop.grid.step
    for lot in lots_of(job):
        for one in lot.pieces:
            assert abs(one.piece.length * step - one.part.length) <= grid / 2 + 1e-6
            assert abs(one.piece.width * step - one.width) <= grid / 2 + 1e-6
        for kind in lot.lumber:
            assert -step < kind.stock.length * step - kind.length <= 1e-6


def test_steps_go_up_for_pieces_and_down_for_boards() -> None:
    job = inside_job()
    assert (steps_up(1.001, units=job.units), steps_down(1.001, units=job.units)) == (65, 64)
    assert (steps_up(1.0, units=job.units), steps_down(1.0, units=job.units)) == (64, 64)


def test_what_is_as_wide_as_a_board_is_only_crosscut() -> None:
    """Casing 3 1/2 comes out of a 1x4 (3 1/2, PS 20); jambs are ripped."""
    lots = {lot.title: lot for lot in lots_of(inside_job())}
    casing = lots['poplar 3/4", crosscut from 1x4']
    assert {one.part.name for one in casing.pieces} == {"casing"} and casing.problem.kind == "lengths"
    ripped = lots['poplar 3/4", ripped from boards']
    assert {one.part.name for one in ripped.pieces} == {"extension jamb"} and ripped.problem.kind == "boards"
    assert {one.width for one in casing.lumber} == {3.5}
    assert {one.width for one in ripped.lumber} == {3.5, 5.5}


def test_prices_by_the_foot_and_by_the_board() -> None:
    (ripped,) = [lot for lot in lots_of(inside_job()) if "poplar" in lot.title and lot.problem.is_ripped]
    assert [(one.nominal, one.length, one.stock.price_cents) for one in ripped.lumber] == [
        ("1x4", 96, 1600),
        ("1x4", 144, 2400),
        ("1x6", 96, 2400),
        ("1x6", 144, 3600),
    ]


def test_a_planned_depth_keeps_its_allowance_and_a_measured_one_does_not() -> None:
    measured = {"date": "2026-03-01", "interior_depth": {key: "4 11/16" for key in CORNERS}}
    planned = house_pieces(make_kits(job := inside_job(shop__planned_allowance="1/4")), job)
    known = house_pieces(
        make_kits(job := inside_job(shop__planned_allowance="1/4", openings__0__measured=measured)), job
    )
    assert {one.width - one.part.width for one in planned if "jamb" in one.part.name} == {0.25}
    assert {one.width - one.part.width for one in known} == {0.0}
    assert {one.width - one.part.width for one in planned if one.part.name == "casing"} == {0.0}


CORNERS = ("head_left", "head_right", "sill_left", "sill_right")


def test_a_tapered_leg_takes_its_wide_end() -> None:
    depths = {"head_left": "4 1/2", "head_right": "4 1/2", "sill_left": "4 11/16", "sill_right": "4 1/2"}
    measured = {"date": "2026-03-01", "interior_depth": depths}
    pieces = house_pieces(make_kits(job := inside_job(openings__0__measured=measured)), job)
    (leg,) = [one for one in pieces if (one.part.name, one.part.position) == ("extension jamb", "left leg")]
    assert leg.piece.width == (4 + 11 / 16 + 1 / 32) * 64  # the wide end, and what stands proud


def test_a_mitered_piece_takes_its_long_point_and_its_slanted_kerf() -> None:
    """A 45 degree cut takes kerf x sqrt 2 along the grain (geometry); up to the shop's 1/32."""
    job = inside_job()
    (head,) = [
        one for one in house_pieces(make_kits(job), job) if (one.part.name, one.part.position) == ("casing", "head")
    ]
    assert any(isinstance(cut, Miter) for cut in head.part.cuts) and head.piece.is_mitered
    clear = 35.5 - 2 * 2.5 + 2 / 8
    assert head.piece.length == (clear + 2 * 3 / 16 + 2 * 3.5) * 64  # long point to long point
    assert head.piece.miter_allowance == 2 * math.ceil(0.125 * (math.sqrt(2) - 1) * 32)
    assert miter_allowance((), job.shop, job.units) == 0


def test_a_beveled_end_has_a_long_point_as_a_mitered_one_has() -> None:
    """A raked head is beveled where it covers its high leg, over the thickness; the sill below is cut square."""
    raked = {"kind": "raked", "left": "36", "right": "48"}
    job = job_of(changed(openings__0__shape=raked, openings__0__frame="30 x 48", openings__0__rough_opening=None))
    pieces = [one for one in house_pieces(make_kits(job), job) if one.part.kind is PartKind.EXTENSION_JAMB]
    beveled = [one.part.mark for one in pieces if any(isinstance(cut, EndBevel) for cut in one.part.cuts)]
    assert beveled and [one.part.mark for one in pieces if one.piece.is_mitered] == beveled
    assert len(beveled) < len(pieces)


def test_a_glued_jamb_is_cut_as_the_strips_of_its_sheet() -> None:
    """Square, longer than the part, and just as wide as the cut sheet says: the planner adds nothing of its own."""
    job = inside_job(shop__boards=[BOARDS[0], BOARDS[2]], shop__planned_allowance="1/8", shop__glue_up_over="2")
    pieces = [one for one in house_pieces(make_kits(job), job) if one.glued]
    assert pieces and {one.piece.mark[-1] for one in pieces} == {"a", "b"}
    for one in pieces:
        place = "ab".index(one.piece.mark[-1])
        assert one.width == one.part.strips[place] == one.piece.width / 64
        assert one.length == one.part.length + 2 == one.piece.length / 64
        assert not one.piece.is_mitered and one.piece.miter_allowance == 0 and one.allowance == 0


def test_the_fence_is_set_to_the_strips_of_the_sheet() -> None:
    job = inside_job(shop__boards=[BOARDS[0], BOARDS[2]], shop__jointing_allowance="3/32")
    glued = {one.piece.mark: one.part for one in house_pieces(make_kits(job), job) if one.glued}
    planned = plan_house(lots_of(job), Effort(stages=0))
    cut = {
        placed.mark: strip.width / 64
        for one in planned
        for board in one.plan.boards
        for strip in board.strips
        for placed in strip.pieces
        if placed.mark in glued
    }
    assert cut == {mark: part.strips[0] for mark, part in glued.items()}


def test_a_lot_says_what_is_glued_up_from_what_and_how_wide_it_is_ripped_then() -> None:
    """Each glued part once, by the marks of its strips; a lot of whole boards says nothing of glue."""
    job = inside_job(shop__boards=[BOARDS[0], BOARDS[2]], shop__jointing_allowance="3/32")
    glued = {one.piece.mark: one.part for one in house_pieces(make_kits(job), job) if one.glued}
    said = [note for one in plan_house(lots_of(job), Effort(stages=0)) for note in lot_notes(one, job.shop.grid)]
    parts = {part.mark: part for part in glued.values()}
    assert [note for note in said if "glued" in note] == [
        f"{mark} is glued up from {mark}a, {mark}b; rip it to {job.units.text(part.width)}, its planned width, once "
        "the opening is measured."
        for mark, part in parts.items()
    ]
    whole = inside_job()
    notes = [note for one in plan_house(lots_of(whole), Effort(stages=0)) for note in lot_notes(one, whole.shop.grid)]
    assert not any("glue" in note for note in notes)


def test_boards_on_hand_are_cut_first() -> None:
    """They cost nothing, so that the cheapest plan takes one of each size there is, by the sum of its prices."""
    own = [{"nominal": "1x6", "stock": "poplar", "length": "10'", "count": "2"}]
    planned = plan_house(lots_of(inside_job(shop__on_hand=own)), Effort(stages=0))
    (ripped,) = [one for one in planned if "ripped" in one.lot.title and "poplar" in one.lot.title]
    assert all(board.stock.on_hand for board in ripped.plan.boards) and ripped.plan.cost_cents == 0


def test_a_straight_drop_as_wide_as_a_jamb_yields_it() -> None:
    """Its edges are straight, so that nothing is lost to them; a rough one of that width yields none."""
    jamb = {"thickness": "3/4", "width": "4 23/32", "stock": "poplar", "length": "50", "count": "8"}
    taken = {}
    for edges in ("straight", "rough"):
        lots = lots_of(inside_job(shop__on_hand=[{**jamb, "edges": edges}]))
        (lot,) = [lot for lot in lots if "ripped" in lot.title and "poplar" in lot.title]
        plan = plan_stock(lot.problem, seconds=None, stages=0)
        taken[edges] = sum(board.stock.on_hand for board in plan.boards)
    assert taken["straight"] >= 3 and taken["rough"] == 0


def test_a_limited_supply_is_shared_by_the_lots_of_a_board() -> None:
    """Casing (crosscut) and narrow jambs (ripped) both come out of 1x4: what the casing takes the jambs cannot have."""
    narrow = {"position__share": "0", "exterior_trim": None}

    def taken(supply: str | None) -> list[int]:
        board = {"nominal": "1x4", "stock": "poplar", "lengths": ["12'"], "price_per_foot": "1"}
        boards = [{**board, "supply": supply} if supply else board, *BOARDS[1:]]
        planned = plan_house(lots_of(inside_job(shop__boards=boards, **narrow)), Effort(stages=0))
        return [sum(kind.stock.name.startswith("1x4") for kind in one.plan.boards) for one in planned]

    free = taken(None)
    few = sum(free) - 1
    assert max(free) < sum(free)  # both lots want it
    assert sum(taken(str(few))) <= few


def test_letters_go_on_after_z() -> None:
    assert [lot_letter(place) for place in (0, 25, 26, 51, 52)] == ["A", "Z", "AA", "AZ", "BA"]


def test_the_saw_takes_what_the_shop_says() -> None:
    saw = saw_settings(
        inside_job(shop__rip_kerf="3/32", shop__end_trim="1", shop__far_edge_allowance="1/16").shop, Units.INCH
    )
    assert (saw.crosscut_kerf, saw.rip_kerf, saw.edge_loss, saw.far_edge_loss, saw.end_trim) == (8, 6, 8, 4, 64)


@pytest.mark.parametrize(
    ("allowance", "is_read", "is_told"), [("", False, True), ("1/4", False, False), ("", True, False)]
)
def test_a_planned_width_with_nothing_left_on_waits_for_the_tape(allowance: str, is_read: bool, is_told: bool) -> None:
    left = {"shop__planned_allowance": allowance} if allowance else {}
    measured = {"date": "2026-03-01", "interior_depth": {key: "4 11/16" for key in CORNERS}}
    job = inside_job(**left, **({"openings__0__measured": measured} if is_read else {}))
    notes = [note for one in plan_house(lots_of(job), Effort(stages=0)) for note in lot_notes(one, job.shop.grid)]
    told = [note for note in notes if "planned width: measure before ripping to it" in note]
    assert bool(told) is is_told
    assert all("no narrower than the measure sheet allows" in note for note in told)


@pytest.mark.parametrize("is_read", [False, True])
def test_the_foot_of_a_casing_leg_waits_for_the_depth_outside(is_read: bool) -> None:
    measured = {"date": "2026-03-01", "exterior_depth": {key: "1 1/2" for key in CORNERS}}
    board = {"nominal": "5/4x6", "stock": "cedar", "lengths": ["16'"], "price": "80"}
    read = {"openings__0__measured": measured} if is_read else {}
    job = job_of(changed(shop__boards=[board], **read))
    waiting = [one.part.told for one in house_pieces(make_kits(job), job) if Waits.FOOT in one.waits]
    assert waiting == ([] if is_read else ["exterior casing, left leg", "exterior casing, right leg"])
    legs = [lot for lot in lots_of(job) if any(one.part.told == "exterior casing, left leg" for one in lot.pieces)]
    notes = [note for one in plan_house(legs, Effort(stages=0)) for note in lot_notes(one, job.shop.grid)]
    assert [note for note in notes if note.startswith("The foot goes by the depth outside")] == (
        []
        if is_read
        else [
            "The foot goes by the depth outside, on a sloping sill: W1-14, W1-15. Saw it once that is measured, or fit "
            "it on the sill."
        ]
    )


def test_the_measure_sheet_is_named_for_those_pieces_alone_that_it_says_a_width_of() -> None:
    """It says how wide to rip ahead inside; the exterior jambs and the sill of the base window wait for the tape."""
    job = job_of(changed())
    waiting = [one for one in house_pieces(make_kits(job), job) if Waits.WIDTH in one.waits]
    outside = [one for one in waiting if one.part.where is Where.EXTERIOR]
    inside = [one for one in waiting if one.part.where is Where.INTERIOR]
    assert outside and inside and _until_then(outside) == ""
    assert _until_then(inside).startswith(" Until then rip no narrower than the measure sheet")
    assert _until_then(waiting).startswith(" Until then rip those inside no narrower than the measure sheet")
