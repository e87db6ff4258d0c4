"""Molded casing by hand: the area of its end, what a miter leaves of it, what is said of it."""

from __future__ import annotations

import pytest
from cases import kit_of, part_of
from moldings import molded_trim

from jambs.length import FINE, Units
from jambs.outlines import area, centroid
from jambs.parts.board.cuts import Molded
from jambs.parts.trim.molding import end_area, inner_edge
from jambs.parts.words.cut_words import work_words

# Trapezoids from the inner edge on: (1/4 + 3/8)/2 x 1/2 + (3/8 + 1/2)/2 x 2 + (1/2 + 3/4)/2 x 1/2 + 3/4 x 1/2.
WHOLE = 0.15625 + 0.875 + 0.3125 + 0.375


def test_every_board_of_the_casing_is_run_to_the_section() -> None:
    kit = kit_of(interior_trim__inside=molded_trim())
    casing = [part for part in kit.parts if part.name == "casing" and part.where.value == "interior"]
    assert [sum(isinstance(cut, Molded) for cut in part.cuts) for part in casing] == [1, 1, 1, 1]
    assert [area(part.silhouettes.end) for part in casing] == [pytest.approx(WHOLE)] * 4
    others = [part for part in kit.parts if part not in casing]
    assert not [cut for part in others for cut in part.cuts if isinstance(cut, Molded)]


def test_the_end_of_a_section_by_hand() -> None:
    trim = kit_of(interior_trim__inside=molded_trim()).placement.opening.interior
    assert end_area(trim, 0.75) == pytest.approx(WHOLE)
    # All of the first 1/4 out.
    assert end_area(trim, 0.25) == pytest.approx(3.5 * 0.25)
    assert inner_edge(trim) == 0.25


def test_a_plain_casing_ends_as_a_rectangle() -> None:
    trim = kit_of().placement.opening.interior
    assert (end_area(trim, 1.0), end_area(trim, 0.5), inner_edge(trim)) == (2.625, 1.75, 0.75)


def test_the_centroid_of_a_triangle_is_a_third_of_its_height_up() -> None:
    assert list(centroid(((0.0, 0.0), (3.0, 0.0), (0.0, 6.0)))) == pytest.approx([1.0, 2.0])


def test_the_sheet_says_that_it_is_molded() -> None:
    head = part_of(kit_of(interior_trim__inside=molded_trim()), "casing", "head")
    assert work_words(head, grid=FINE[Units.INCH]) == (
        "molded to the section of the trim: template at full scale; the back flat",
    )
    assert not work_words(part_of(kit_of(), "casing", "head"), grid=FINE[Units.INCH])
