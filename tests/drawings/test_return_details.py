"""The returned end of an apron: its own miter, and a piece that makes the end square again, as its words tell them."""

from __future__ import annotations

import pytest
from cases import STOOL, kit_of
from drawn_examples import FOLDER, drawings_of
from shapely.geometry import Point, Polygon

import jambs
from jambs.drawings.views.return_details import return_details
from jambs.length import GRIDS
from jambs.parts.board.kinds import PartKind
from jambs.parts.words.cut_words import work_words

APRON = {"width": "3 1/2", "thickness": "3/4", "stock": "poplar", "ends": "returned"}
RETURNED = {**STOOL, "apron": APRON}


def test_board_and_piece_make_a_square_end_and_meet_in_the_bevel() -> None:
    """A triangle of 3/4 by 3/4; with the board's long point on its face the end is 3/4 deep, from face to wall."""
    kit = kit_of(interior_trim__inside=RETURNED)
    (view,) = return_details(kit)
    board, piece = (Polygon(fill.pieces[0]) for fill in view.fills)
    assert piece.area == pytest.approx(0.75 * 0.75 / 2) and board.intersection(piece).area == pytest.approx(0.0)
    both = board.union(piece)
    assert both.area == pytest.approx(both.envelope.area)
    assert both.bounds[0] == pytest.approx(-0.75) and both.bounds[2] == 0.0  # from the face to the finished wall
    joint = board.intersection(piece)
    assert joint.length == pytest.approx(0.75 * 2**0.5)
    bevel = next(one for one in view.call_outs if one.lines == ("bevel 45°",))
    assert joint.distance(Point(bevel.target)) == pytest.approx(0.0)


def test_it_dimensions_the_piece_as_the_words_of_the_apron_tell_it() -> None:
    kit = kit_of(interior_trim__inside=RETURNED)
    (view,) = return_details(kit)
    (apron,) = (part for part in kit.parts if part.kind is PartKind.APRON)
    ((low, high),) = ((one.start[0], one.finish[0]) for chain in view.chains for one in chain.intervals)
    told = GRIDS["1/16"].text(high - low)
    assert any(f"2 returns, {told} long point" in one for one in work_words(apron, grid=GRIDS["1/16"]))


def test_where_ends_are_square_there_is_none() -> None:
    square = {**RETURNED, "apron": {**APRON, "ends": "square"}}
    assert return_details(kit_of(interior_trim__inside=square)) == []
    assert return_details(kit_of()) == []


def test_openings_with_a_returned_apron_have_it_on_a_sheet_of_each_size() -> None:
    job = jambs.read_job(FOLDER / "harbour-house")
    aprons = {kit.mark for kit in jambs.make_kits(job) if any(part.kind is PartKind.APRON for part in kit.parts)}
    assert aprons
    for mark, drawing in drawings_of("harbour-house").items():
        for page in {sheet.page for sheet in drawing.sheets}:
            views = [one.view.name for sheet in drawing.sheets if sheet.page == page for one in sheet.views]
            assert sum(name.startswith("return ") for name in views) == (mark in aprons), mark
    assert not any(view.name.startswith("return ") for one in drawings_of("creamery").values() for view in one.views)
