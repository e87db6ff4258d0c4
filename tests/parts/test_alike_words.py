"""Pieces of a row that are sawn alike are told together, and mirror images are not."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from rounds import rounded_inside

from jambs.face import make_kits, read_job
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.words.alike_words import _corners, is_piece, mark_lines, piece_form, piece_place, places_words

EXAMPLES = Path(__file__).parents[2] / "examples"


def _marks(numbers: str) -> list[str]:
    return [f"A-2-{number}" for number in numbers.split()]


@pytest.mark.parametrize(
    ("numbers", "told"),
    [
        ("7", ("A-2-7",)),
        ("1 2", ("A-2-1,", "A-2-2")),
        ("1 2 3", ("A-2-1", "to A-2-3")),
        ("1 2 3 5 8 9 10 11", ("A-2-1", "to A-2-3,", "A-2-5,", "A-2-8", "to A-2-11")),
    ],
)
def test_marks_in_a_row_are_told_by_their_ends(numbers: str, told: tuple[str, ...]) -> None:
    assert mark_lines(_marks(numbers)) == told


@pytest.mark.parametrize(
    ("places", "told"),
    [
        ([("head", run, 13) for run in range(2, 13)], "head, 2 to 12 of 13 from the left"),
        ([("head", run, 13) for run in (1, 13)], "head, 1 and 13 of 13 from the left"),
        ([("head", run, 9) for run in (1, 2, 4, 5, 6)], "head, 1, 2 and 4 to 6 of 9 from the left"),
        ([("head", run, 3) for run in (1, 3)], "head, left and right"),
        ([("head", run, 3) for run in (1, 2, 3)], "head, all 3"),
        ([("head", 1, 2), ("head", 2, 2), ("bottom", 1, 2), ("bottom", 2, 2)], "head and bottom, all 4"),
        ([("head", 1, 2), ("head", 2, 2), ("bottom", 1, 2)], "head, all 2; bottom, left"),
    ],
)
def test_places_are_told_as_ranges(places: list[tuple[str, int, int]], told: str) -> None:
    assert places_words(places) == told


def _forms(parts: tuple[Part, ...], kind: PartKind) -> list[tuple[object, ...]]:
    return [piece_form(part) for part in parts if part.kind is kind and is_piece(part)]


def test_a_form_is_told_in_one_way_whichever_corner_comes_first() -> None:
    """Lines of the cut sheet are compared as text, and a set is told in the order it was made in."""
    parts = [part for part in rounded_inside("full round").kit.parts if is_piece(part)]
    for kind in {part.kind for part in parts}:
        assert len({repr(form) for form in _forms(tuple(parts), kind)}) == len(set(_forms(tuple(parts), kind)))
    corners = [(0.0, 2.25), (6.734375, 0.0), (6.734375, 2.25), (0.0, 0.0), (0.3046875, 0.15625), (6.4296875, 0.15625)]
    assert len({repr(_corners(corners[at:] + corners[:at])) for at in range(6)}) == 1


def test_segments_of_a_full_round_have_one_form() -> None:
    """Equal turns of one circle: each segment is each other one turned about the center."""
    forms = _forms(rounded_inside("full round").kit.parts, PartKind.CASING)
    assert len(forms) == 6
    assert len(set(forms)) == 1


def test_boards_over_several_mulls_share_a_row_and_one_alone_has_its_own() -> None:
    """Two walls of 160 mm between three frames; between two openings there is one."""
    job = read_job(EXAMPLES / "creamery")
    kit = next(one for one in make_kits(job) if one.mark == "M1")
    covers = [part for part in kit.parts if part.kind is PartKind.MULL_CASING and part.where is Where.INTERIOR]
    assert all(is_piece(part) for part in covers)
    assert len({repr(piece_form(part)) for part in covers}) == 1
    assert places_words([piece_place(part) for part in covers]) == "between openings, all 2"
    assert not is_piece(replace(covers[0], members=1))
