"""Elevations of openings trimmed as one: every window, the walls between, each board once."""

from __future__ import annotations

from typing import Any

import pytest
from drawn_examples import drawings_of
from trimmed_as_one import run_job, run_kits

import jambs
from jambs.drawings.elements.paper import INCH_SCALES
from jambs.drawings.elements.view import Ink, View, ViewSide
from jambs.drawings.layout.arrange import arrange
from jambs.drawings.views.elevations import exterior_elevation, interior_elevation
from jambs.drawings.views.exploded import exploded_view, frames_seen
from jambs.drawings.views.section_works import section_works
from jambs.drawings.views.sections import section_view
from jambs.length import GRIDS, Units
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.kit.kit import Kit
from jambs.screen.elevation_shapes import view_records
from jambs.section.cut import sections_to_draw
from jambs.section.region import SectionCut

SLIM = {"frame": "20 x 60", "rough_opening": "20 1/2 x 60 1/2"}
NARROW: dict[str, Any] = {"openings__1__frame": "29 1/2 x 47 1/2", "openings__1__rough_opening": "30 x 48"}


def across(view: View) -> list[float]:
    """Lengths of the chain of frames and walls, from the left [in]."""
    (chain,) = (one for one in view.chains if one.after == "openings")
    assert chain.side is ViewSide.TOP
    return [round(one.finish[0] - one.start[0], 6) for one in chain.intervals]


def both(kit: Kit) -> tuple[View, View]:
    return interior_elevation(kit, Units.INCH), exterior_elevation(kit, Units.INCH)


def test_frames_and_walls_are_dimensioned_as_they_are_seen() -> None:
    for kit in run_kits(**NARROW):
        inside, outside = both(kit)
        assert across(inside) == [35.5, 6.0, 29.5]
        assert across(outside) == [29.5, 6.0, 35.5]


@pytest.mark.parametrize("at", [0, 1, 2])
def test_every_board_is_marked_whosever_it_is(at: int) -> None:
    kits = run_kits(3)
    inside, _ = both(kits[at])
    marks = {one.text for one in inside.marks}
    assert {"W1-5", "W1-8", "W1-9", "W1-10", "W1-1", "W2-1", "W3-3"} <= marks


def test_the_picture_pulled_apart_has_every_frame_and_board() -> None:
    for kit in run_kits():
        assert len(frames_seen(kit)) == 2
        texts = {one.short for one in exploded_view(kit).call_outs}
        assert {"W1-4", "W2-1", "W1-2"} <= texts


def test_an_opening_alone_has_no_chain_of_openings() -> None:
    (alone,) = run_kits(1)
    assert [one for view in both(alone) for one in view.chains if one.after == "openings"] == []
    assert len(frames_seen(alone)) == 1


def test_the_page_shows_the_windows_of_all() -> None:
    one, two = run_kits(**NARROW)
    for kit, places in ((one, [[0.0, 35.5], [41.5, 71.0]]), (two, [[0.0, 29.5], [-41.5, -6.0]])):
        shapes = view_records(kit)[0]["shapes"]
        frames = [shape["points"] for shape in shapes if shape["kind"] == "frame"]
        assert [[min(points[::2]), max(points[::2])] for points in frames] == places


def test_the_head_flashing_over_all_is_drawn_as_it_is_bent_in_every_section() -> None:
    job = run_job(flashing={})
    for kit in run_kits(flashing={}):
        (head,) = (one for one in sections_to_draw(kit) if one.cut is SectionCut.HEAD)
        strips = [part.mark for part in (*kit.parts, *kit.lent) if part.kind is PartKind.HEAD_FLASHING]
        works = section_works(head, kit, job)
        assert [one.mark for one in head.regions if one.mark in strips] == strips
        assert not [one for one in works.section.regions if one.mark in strips]
        assert len([shape for shape in works.shapes if shape.ink is Ink.FLASHING]) == 1
        assert [one.short for one in works.call_outs if one.short in strips] == strips


def test_a_jamb_that_mirrors_the_other_names_the_boards_and_the_opening_there() -> None:
    """Of three alike openings the middle one's walls are mirror images, made of other boards, to other openings."""
    job, kits = run_job(3), run_kits(3)
    cuts = {one.cut: one for one in sections_to_draw(kits[1])}
    assert SectionCut.LEFT_JAMB not in cuts
    view = section_view(cuts[SectionCut.JAMB], kits[1], job, is_both_jambs=True)
    (said,) = (one for one in view.remarks if one.startswith("through the wall between"))
    assert said.startswith("through the wall between, to W3; at the left to W1, with ")
    at_left = said.split(" with ")[1].split(", ")
    by_mark = {part.mark: part for part in kits[1].whole.parts}
    mull = [mark for mark in at_left if by_mark[mark].kind is PartKind.MULL_CASING]
    assert [by_mark[mark].member for mark in mull] == [1, 1]  # inside and outside, on the first wall
    assert {"W1-3", "W2-2"} <= {*at_left} and not {"W2-3", "W3-2"} & {*at_left}
    lead = {one.cut: one for one in sections_to_draw(kits[0])}
    remarks = section_view(lead[SectionCut.JAMB], kits[0], job).remarks
    assert "through the wall between, to W2" in remarks


def test_marks_without_room_on_a_sheet_are_on_the_picture_of_the_cut_sheet() -> None:
    """Three windows of 20 x 60: sheets have no room for marks beside them, the picture has fewer rows."""
    narrow = {f"openings__{at}__{key}": size for at in range(3) for key, size in SLIM.items()}
    job = run_job(3, **narrow)
    kit = jambs.make_kits(job)[1]
    drawing = jambs.draw(kit, job)
    on_sheet = [text for one in drawing.view("interior elevation").texts for text in one.lines]
    assert not any(line.startswith("W2-") for line in on_sheet)
    brief = arrange(drawing.asked_view("interior elevation").brief(), scale=INCH_SCALES[-1], units=Units.INCH)
    assert {"W2-1", "W2-2", "W1-4"} <= {line for text in brief.texts for line in text.lines}


def test_a_mull_casing_on_a_wall_lies_between_openings() -> None:
    lead = run_kits(3)[0]
    told = [part.told for part in lead.parts if part.kind is PartKind.MULL_CASING and part.where is Where.INTERIOR]
    assert told == [f"interior mull casing, between openings, wall {number}" for number in (1, 2)]


def depths(view: View, side: ViewSide) -> list[list[tuple[str, str]]]:
    """Return what the rows beside a detail measure, on a grid of 1 mm, with their names; the nearest first."""
    grid = GRIDS["1 mm"]
    rows = [chain.intervals for chain in view.chains if chain.side is side]
    return [[(grid.text(abs(one.finish[1] - one.start[1])), one.name) for one in row] for row in rows]


def test_notches_round_walls_between_have_rows_of_their_own() -> None:
    """Measured, the stool of M1 is notched 135 and 137 deep at its ends, 136 round both walls: rows had steps of 1."""
    view = drawings_of("creamery")["M1"].asked_view("detail M1-4")
    assert depths(view, ViewSide.LEFT) == [[("135 mm", ""), ("39 mm", "")]]
    assert depths(view, ViewSide.RIGHT) == [
        [("137 mm", ""), ("39 mm", "")],
        [("136 mm", "wall")],
        [("176 mm", "")],
    ]


def test_notches_as_deep_as_those_at_the_ends_have_none() -> None:
    view = drawings_of("creamery")["M1"].asked_view("detail M1-14")
    assert depths(view, ViewSide.RIGHT) == []
    assert [name for row in depths(view, ViewSide.LEFT) for _, name in row] == ["", "", ""]
