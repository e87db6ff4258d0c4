"""Pieces of cladding that returns in courses, as they are bought and crosscut, by hand.

The base window on its sheathing, 36 over the floor; clapboards 5 wide that show 4. Returns of 2 7/8 to corner boards,
of 4 3/4 to a miter; 13 courses pass each side (``tests/courses/test_returned_courses.py`` counts them).
"""

from __future__ import annotations

import copy
import math
from typing import Any

import pytest
from cases import changed, job_of
from clad import DEEP, clad, mitered

from jambs.app.basis import bought_basis
from jambs.app.chain import make_kits
from jambs.courses.returned import board_width
from jambs.issued.basis import PARTS
from jambs.job import Job
from jambs.job.models.outside import CladdingEntry
from jambs.parts.board.kinds import PartKind
from jambs.parts.kit.kit import Kit
from jambs.parts.words.cut_words import board_words, work_words
from jambs.screen.boards_needed import boards_record
from jambs.sheets.cutting_lot import lot_record
from jambs.sheets.cutting_money import boards_of
from jambs.stock.house.house_pieces import CutPiece, course_letters, house_pieces
from jambs.stock.house.house_plan import Effort, plan_house
from jambs.stock.house.lot_faults import lot_faults
from jambs.stock.house.lot_words import _course_runs, lot_notes
from jambs.stock.house.lots import house_lots

FIVES = {"kind": "clapboards", "widths": ["5"], "least_lap": "1", "greatest_lap": "1"}
SHINGLES = {"kind": "shingles", "length": "18", "least_exposure": "4"}
BOARD = {"stock": "siding", "thickness": "3/4", "width": "5", "nominal": "siding 5", "lengths": ["96"], "price": "8"}
REST = [
    {"stock": stock, "thickness": thick, "width": "9 1/4", "lengths": ["96"]}
    for stock, thick in (("poplar", "3/4"), ("cedar", "1"), ("cedar", "1 1/2"), ("spruce", "1/2"))
]
SIDES = (PartKind.CLADDING_RETURN,)


def house(trim: dict[str, Any], *, cladding: dict[str, Any] | None = FIVES, **changes: Any) -> tuple[Job, list[Kit]]:
    south = {"start_line": "0", "eave": "120", "width": "120", "faces": "south"}
    if cladding:
        south |= {"cladding": cladding}  # type: ignore[dict-item]
    places = {"openings__0__faces": "south", "openings__0__from_left": "24", "elevations": {"south": south}}
    job = job_of(changed(**{**DEEP, "exterior_trim__outside": trim, **places, "shop__boards": [BOARD], **changes}))
    return job, list(make_kits(job))


def pieces(trim: dict[str, Any], **changes: Any) -> list[CutPiece]:
    job, kits = house(trim, **changes)
    return [one for one in house_pieces(kits, job) if one.part.kind in SIDES and one.part.side.is_leg]


def courses(trim: dict[str, Any], **changes: Any) -> list[CutPiece]:
    return [one for one in pieces(trim, **changes) if one.is_of_course]


IN_COURSES = clad(laid="in courses")


def test_a_piece_for_every_course_out_of_the_board_of_the_wall() -> None:
    """13 at each side, 5 wide and 2 7/8 long: 184/64 and 320/64 of the planner's steps."""
    found = courses(IN_COURSES)
    letters = "abcdefghijklm"
    assert [one.piece.mark for one in found] == [f"W1-{leg}{letter}" for leg in (10, 11) for letter in letters]
    assert {(one.piece.width, one.piece.length) for one in found} == {(320, 184)}
    assert not any(one.piece.is_mitered or one.piece.miter_allowance for one in found)
    assert all(one.is_planned and not one.waits for one in found)


def test_pieces_to_a_miter_take_what_a_cut_at_45_degrees_takes_more() -> None:
    """1/8 of kerf is 8 steps; 8 x (sqrt 2 - 1) = 3.3, up to the next step."""
    found = courses(mitered(laid="in courses"))
    assert {one.piece.length for one in found} == {304}
    job, _ = house(IN_COURSES)
    beyond = job.shop.kerf * (math.sqrt(2) - 1)
    assert {one.piece.miter_allowance for one in found} == {math.ceil(job.shop.grid.up(beyond) * 64 - 1e-9)}


def test_what_is_left_on_where_the_depth_is_planned_lies_in_the_length() -> None:
    found = courses(IN_COURSES, shop__planned_allowance="1/4")
    assert {(one.piece.width, one.piece.length, one.longer, one.allowance) for one in found} == {(320, 200, 0.25, 0.0)}
    read = {"date": "2026-01-05", "exterior_depth": dict.fromkeys(CORNERS, "4 1/4")}
    measured = courses(IN_COURSES, shop__planned_allowance="1/4", openings__0__measured=read)
    assert {(one.piece.length, one.longer, one.is_planned) for one in measured} == {(184, 0.0, False)}


CORNERS = ("head_left", "head_right", "sill_left", "sill_right")


def test_a_course_takes_the_narrowest_board_that_laps_enough() -> None:
    """Boards of 5 and of 6 that lap 1 at least show up to 4 and 5; more only as the grid rounds it."""
    two = CladdingEntry.model_validate({**FIVES, "widths": ["6", "5"], "greatest_lap": "2"})
    assert [board_width(two, shown) for shown in (2.0, 4.0, 4.125, 5.0, 5.03)] == [5.0, 5.0, 6.0, 6.0, 6.0]


@pytest.mark.parametrize(
    ("trim", "changes"),
    [
        (clad(), {}),
        (mitered(), {}),
        (IN_COURSES, {"cladding": None}),
        (IN_COURSES, {"cladding": SHINGLES}),
    ],
    ids=["boards along the side", "mitered along the side", "no courses on the wall", "shingles come in all widths"],
)
def test_no_pieces_where_there_are_none(trim: dict[str, Any], changes: dict[str, Any]) -> None:
    assert courses(trim, **changes) == []
    _, (kit,) = house(trim, **changes)
    assert not any(part.blank.courses for part in kit.parts)


def test_they_are_bought_and_crosscut_from_the_boards_of_the_wall() -> None:
    """26 pieces of 2 7/8 with 1/8 of kerf take 78; a board of 96 less 1/2 at each end holds them all."""
    job, kits = house(IN_COURSES)
    lots = [lot for lot in house_lots(kits, job) if any(one.is_of_course for one in lot.pieces)]
    (lot,) = lots
    assert lot.title == 'siding 3/4", crosscut from siding 5'
    (planned,) = plan_house([lot], Effort(stages=1))
    assert len(planned.plan.boards) == 1 and planned.plan.cost_cents == 800
    notes = " ".join(lot_notes(planned, job.shop.grid))
    assert "Cladding in courses from the frame to the corner: W1-10a to W1-10m, W1-11a to W1-11m. Cut one" in notes
    assert "Pieces of courses have their planned length, which waits for the depth outside: saw none to length" in notes
    assert "before ripping" not in notes and "flared" not in notes and "mitered" not in notes


def test_they_are_drawn_square_though_the_outline_of_their_side_is_not() -> None:
    job, kits = house(IN_COURSES)
    (lot,) = [lot for lot in house_lots(kits, job) if any(one.is_of_course for one in lot.pieces)]
    (planned,) = plan_house([lot], Effort(stages=1))
    (board,) = lot_record(planned, job, boards_of([planned], (), 1))["boards"]
    drawn = [piece for strip in board["strips"] for piece in strip["pieces"]]
    assert len(drawn) == 26 and all(piece["slants"] == [[0.0, 0.0], [0.0, 0.0]] for piece in drawn)


def test_notes_tell_what_is_left_on_and_the_miter() -> None:
    job, kits = house(mitered(laid="in courses"), shop__planned_allowance="1/4")
    (lot,) = [lot for lot in house_lots(kits, job) if any(one.is_of_course for one in lot.pieces)]
    (planned,) = plan_house([lot], Effort(stages=1))
    notes = " ".join(lot_notes(planned, job.shop.grid))
    assert "corner: W1-10a to W1-10m, W1-11a to W1-11m (mitered there, as long as the face). Cut one" in notes
    assert 'Pieces of courses hold 1/4" more than the planned length (marked +), which waits' in notes
    assert "flared" not in notes


def test_the_cut_sheet_counts_them_and_names_their_boards() -> None:
    job, (kit,) = house(IN_COURSES)
    left = next(part for part in kit.parts if part.kind in SIDES and part.side.is_leg)
    assert board_words(left, units=job.units) == "siding 5 siding, by the siding crew"
    said = " ".join(work_words(left, grid=job.shop.grid))
    assert 'in courses: 13 of 5" boards, each 2 7/8" long from frame to corner' in said
    job, (kit,) = house(IN_COURSES, cladding=None)
    left = next(part for part in kit.parts if part.kind in SIDES and part.side.is_leg)
    assert 'in courses: pieces 2 7/8" long from frame to corner' in " ".join(work_words(left, grid=job.shop.grid))


def test_a_plan_is_stale_where_other_courses_pass() -> None:
    """Boards of 7 show 6: eight courses and a part pass the side, no other board of the opening is another."""

    def basis(**changes: Any) -> dict[str, str]:
        job, kits = house(IN_COURSES, **changes)
        return dict(bought_basis(kits, job)[PARTS])

    was, now = basis(), basis(cladding={**FIVES, "widths": ["7"]})
    assert {mark for mark in was if was[mark] != now[mark]} == {"W1-10", "W1-11"}


def test_the_page_counts_their_boards_for_one_opening() -> None:
    job, (kit,) = house(IN_COURSES, shop__boards=[BOARD, *REST])
    assert any("W1-10, W1-11" in line["for"] for line in boards_record(kit, job)["lines"])


def test_letters_go_on_after_z() -> None:
    assert [course_letters(place) for place in (0, 25, 26, 27, 52)] == ["a", "z", "aa", "ab", "ba"]


def test_courses_wider_than_their_boards_ask_for_boards_and_not_for_the_tape() -> None:
    """A tape cannot make a course of 7 narrower; the depth that is read makes its pieces longer or shorter."""
    job, kits = house(IN_COURSES, cladding={**FIVES, "widths": ["7"]}, shop__planned_allowance="1/8")
    told = [one.sentence(job.units) for one in lot_faults(house_lots(kits, job), job.units)]
    (said,) = [one for one in told if "W1-10" in one]
    assert said.endswith("List a wider board.")


def test_notes_part_what_is_mitered_and_what_is_read_from_what_is_not() -> None:
    """Two windows in one lot: the first to corner boards and read, the second to a miter and planned."""
    read = {"date": "2026-01-05", "exterior_depth": dict.fromkeys(CORNERS, "4 1/4")}
    data = changed(**{**DEEP, "shop__boards": [BOARD], "shop__planned_allowance": "1/4"})
    south = {"start_line": "0", "eave": "120", "width": "240", "faces": "south", "cladding": FIVES}
    data["elevations"] = {"south": south}
    data["exterior_trim"] = {"outside": IN_COURSES, "mitered": copy.deepcopy(mitered(laid="in courses"))}
    first = {**data["openings"][0], "faces": "south", "exterior_trim": "outside", "from_left": "24", "measured": read}
    second = {**first, "mark": "W2", "exterior_trim": "mitered", "from_left": "120"}
    del second["measured"]
    job = job_of({**data, "openings": [first, second]})
    (lot,) = [lot for lot in house_lots(make_kits(job), job) if any(one.is_of_course for one in lot.pieces)]
    (planned,) = plan_house([lot], Effort(stages=1))
    notes = " ".join(lot_notes(planned, job.shop.grid))
    runs = "W2-10a to W2-10m, W2-11a to W2-11m"
    assert f"corner: W1-10a to W1-10m, W1-11a to W1-11m; {runs} (mitered there, as long as the face). Cut" in notes
    assert f'Pieces of courses ({runs}) hold 1/4" more than the planned length (marked +), which waits' in notes


def test_pieces_whose_neighbors_come_out_of_other_boards_are_told_by_runs() -> None:
    """Boards of 5 and of 7 by turns: no run goes past a piece that another lot has; one alone is told once."""
    job, kits = house(IN_COURSES)
    (leg, *_) = [part for kit in kits for part in kit.parts if part.blank.courses]
    each = [one for one in house_pieces(kits, job) if one.part.mark == leg.mark]
    assert _course_runs([*each[:3], each[4], *each[6:]]) == "W1-10a to W1-10c, W1-10e, W1-10g to W1-10m"
    assert _course_runs(each) == "W1-10a to W1-10m"
