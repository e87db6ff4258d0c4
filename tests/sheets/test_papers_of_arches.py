"""What the papers hold of an arch: outlines with true arcs, templates, cut files, install steps, strips to resaw."""

from __future__ import annotations

import json
import math
from dataclasses import replace
from functools import cache
from io import StringIO
from typing import Any

import pytest
from arches import arched
from cases import changed, job_of, kit_of
from ezdxf.filemanagement import read
from random_kits import RandomKit

from jambs.drawings.cut_files.figure import part_figures
from jambs.drawings.cut_files.write import Release, cut_file
from jambs.drawings.elements.paper import PAGES
from jambs.drawings.view_scales import NO_ROOM, at_best_scale
from jambs.drawings.views.details import details
from jambs.drawings.views.elevations import interior_elevation
from jambs.drawings.views.words import sawn_first, size_words
from jambs.length import FINE, Units
from jambs.outlines import area
from jambs.parts.board.bending_form import PAST_SPRING, bending_form
from jambs.parts.board.board_faces import board_faces
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.kit.cut_kit import PlannedForKit, as_cut
from jambs.parts.words.cut_words import work_words
from jambs.parts.words.end_words import ends_words
from jambs.parts.words.ply_words import resawn_words
from jambs.section.cut import cut_sections
from jambs.section.region import SectionCut
from jambs.sheets.full_scale import templates_of
from jambs.sheets.part_pictures import part_picture
from jambs.sheets.part_record import part_record
from jambs.sheets.part_rows import beside_parts, part_row
from jambs.sheets.rough_openings import rough_opening_data
from jambs.sheets.template import Template
from jambs.sheets.template_pages import templates_data
from jambs.sides import Side
from jambs.solids.arced import arced_board
from jambs.stock.house.house_pieces import house_pieces
from jambs.values import Record


@cache
def parts(curved: str = "sawn segments") -> tuple[Part, ...]:
    return arched(curved=curved).kit.parts


def head(kind: PartKind, curved: str = "sawn segments") -> Part:
    found = [one for one in parts(curved) if one.kind is kind and one.side is Side.HEAD and one.where is Where.INTERIOR]
    return found[len(found) // 2]


@pytest.mark.parametrize("release", Release)
def test_a_segment_is_cut_along_arcs(release: Release) -> None:
    """The outline of the casing's middle segment: a straight end, the round side, the other end, the hollow side."""
    part = head(PartKind.CASING)
    (figure,) = part_figures(part, units=Units.INCH)
    document = read(StringIO(cut_file(figure, units=Units.INCH, release=release)))
    outline: Any = next(one for one in document.modelspace() if one.dxf.layer == "CUT")
    if release is Release.R12:
        bulges = [vertex.dxf.bulge for vertex in outline.vertices]
    else:
        bulges = [bulge for *_, bulge in outline.get_points()]
    # Three segments of a half circle turn by 60° each: the tangent of a quarter of that.
    quarter = math.tan(math.radians(15))
    assert sorted(bulges) == pytest.approx([-quarter, 0.0, 0.0, quarter], abs=1e-9)


def test_the_elevation_has_true_arcs() -> None:
    shapes = interior_elevation(arched().kit, Units.INCH).shapes
    half_circles = [one for one in shapes for bulge in one.bulges if abs(abs(bulge) - 1.0) < 1e-6]
    assert len(half_circles) >= 2  # the frame and its sight line
    assert all(len(one.points) < 12 for one in shapes)


def test_the_record_of_a_part_has_its_bulges() -> None:
    record = part_record(head(PartKind.CASING), grid=FINE[Units.INCH])
    assert len(record["outline"]) == len(record["bulges"]) == 4
    jamb = part_record(head(PartKind.EXTENSION_JAMB), grid=FINE[Units.INCH])
    assert "bulges" not in jamb
    assert len(jamb["edge_outline"]) == len(jamb["edge_bulges"]) == 4
    assert json.dumps(jamb)


@pytest.mark.parametrize("kind", [PartKind.CASING, PartKind.EXTENSION_JAMB])
@pytest.mark.parametrize("curved", ["sawn segments", "bent laminations"])
def test_faces_of_a_curved_part_hold_its_wood(kind: PartKind, curved: str) -> None:
    """As the page draws it, against the closed form: within a chord of a fine outline over its length."""
    part = head(kind, curved)
    made = arced_board(part)
    assert made is not None
    flat = abs(area(part.curved_outline)) * made.through
    assert flat == pytest.approx(made.volume, rel=2e-3)
    assert len(board_faces(part)) == len(part.curved_outline) + 2


def test_the_section_at_the_crown_has_the_jambs_own_thickness() -> None:
    """Square to the arc at its crown a hollowed board of 1 3/4 is 3/4 thick, as the legs are."""
    for curved in ("sawn segments", "bent laminations"):
        sections = cut_sections(arched(curved=curved).kit)
        section = next(one for one in sections if one.cut is SectionCut.HEAD)
        jamb = next(one for one in section.regions if one.name.startswith("extension jamb"))
        ups = [across for across, _ in jamb.outline]
        assert max(ups) - min(ups) == pytest.approx(0.75)


def test_what_is_sawn_and_bent_is_said() -> None:
    casing, jamb = head(PartKind.CASING), head(PartKind.EXTENSION_JAMB, "bent laminations")
    work = work_words(casing, grid=FINE[Units.INCH])
    assert work[0] == (
        'saw the inner edge hollow by the template, the board face up: radius 15 13/16", rise 2 1/8" over 15 13/16"'
    )
    assert ends_words(jamb, grid=FINE[Units.INCH]) == "saw both ends on the spring lines after bending"
    bend, form, plane = work_words(jamb, grid=FINE[Units.INCH])
    assert bend == (
        'glue over the form of radius 15 3/16" (2.8 % of the curvature springs back); inside 49 3/32", outside '
        '51 7/16" long between the spring lines, through 180°'
    )
    # More than half a disk: as long as it is across, 2 x 15 3/16, and as deep as the plies are ripped.
    assert form.startswith('the form: 30 3/8" long over all, ')
    assert f"at least {FINE[Units.INCH].text(jamb.strips[0])} deep (as wide as the plies)" in form
    assert plane.startswith('when the glue is dry plane both edges to 1 31/32"')


def test_a_picture_and_a_detail_are_made_of_each() -> None:
    for curved in ("sawn segments", "bent laminations"):
        assert part_picture(head(PartKind.EXTENSION_JAMB, curved)) is not None
    made = details(arched(curved="bent laminations").kit, grid=FINE[Units.INCH])
    assert any("extension jamb" in view.title for view in made)
    # A segment is drawn as it is sawn whatever side it comes to, its hollow side below.
    casing = [view.remarks[0] for view in made if "casing" in view.title and any(one.arc for one in view.call_outs)]
    assert set(casing) == {"face up, outer edge above, inner edge below"}


def test_the_form_is_as_long_as_the_jamb_and_a_little_more() -> None:
    part = head(PartKind.EXTENSION_JAMB, "bent laminations")
    plies = part.blank.plies
    assert plies is not None
    outline = bending_form(part).outline
    sweep = (plies.inner_length + 2 * PAST_SPRING) / plies.form_radius
    high = plies.form_radius * (1 - math.cos(sweep / 2))
    assert max(y for _, y in outline) == pytest.approx(high, abs=1e-3)
    assert max(x for x, _ in outline) == pytest.approx(2 * plies.form_radius, abs=2e-3)  # more than half a disk


def test_plies_are_bought_as_the_strips_they_are_resawn_from() -> None:
    made = arched(curved="bent laminations")
    pieces = [one for one in house_pieces([made.kit], made.job) if one.part.is_laminated]
    assert [one.piece.mark for one in pieces] == ["W1-1a", "W1-1b"]
    assert {one.length for one in pieces} == {pieces[0].part.blank.strip_length}


def test_a_view_of_very_many_parts_is_drawn_without_their_marks() -> None:
    """Their call-outs alone are higher than the page; the parts table names them all."""
    kit = arched(curved="sawn segments").kit
    few = interior_elevation(kit, Units.INCH)
    letter = PAGES[Units.INCH][0]
    assert at_best_scale(few, Units.INCH, letter)[0] is few
    many = replace(few, marks=few.marks * 8)
    fitted, _ = at_best_scale(many, Units.INCH, letter)
    assert (fitted.marks, fitted.remarks[-1]) == ((), NO_ROOM)


def form_template() -> Template:
    made = arched(curved="bent laminations")
    (found,) = (one for one in templates_of(as_cut(made.kit, PlannedForKit()), grid=made.job.shop.grid)
                if "form it is bent over" in one.title)  # fmt: skip
    return found


def test_the_template_of_a_form_has_its_center_line_its_spring_lines_and_one_radius() -> None:
    """The spring line runs out from the center, which lies on the form, to its arc: 15 3/16 long."""
    form = form_template()
    center_line, spring = form.broken
    assert [x for x, _ in center_line] == pytest.approx([0.0, 0.0])
    (x, y), (x0, y0) = spring
    assert (x0, math.dist((x, y), (x0, y0))) == pytest.approx((0.0, 15.1875))
    assert [words for _, words in form.labels] == [
        "center line", "spring line", 'crown; radius 15 3/16"', "center of the radius",
    ]  # fmt: skip
    assert form.note.startswith('radius 15 3/16", for 15 5/8" once it has sprung back')
    part = head(PartKind.EXTENSION_JAMB, "bent laminations")
    assert any('form of radius 15 3/16"' in line for line in work_words(part, grid=FINE[Units.INCH]))
    (figure,) = part_figures(part, units=Units.INCH)
    assert any('radius 15 3/16"' in one.text for one in figure.words)


def test_the_spring_line_of_less_than_half_a_circle_ends_at_the_base() -> None:
    """Of a segment arch the center lies under the form: the line toward it stops at the base."""
    part = next(one for one in arched({"kind": "segment arch", "rise": "8"}, curved="bent laminations").kit.parts
                if one.is_laminated)  # fmt: skip
    form = bending_form(part)
    assert form.center[1] < 0
    for spring, line in zip(form.springs, form.spring_lines, strict=True):
        assert line[0] == spring and line[1][1] == pytest.approx(0.0)
        assert math.dist(spring, form.center) == pytest.approx(form.radius)


def test_a_tile_with_nothing_on_it_is_not_printed_and_the_others_say_so() -> None:
    made = arched(curved="bent laminations")
    kit = as_cut(made.kit, PlannedForKit())
    form = form_template()
    sheets = [one for sheet in templates_data(kit, [form], made.job)["sheets"] for one in sheet["templates"]]
    across, down = sheets[0]["tile"]["across"], sheets[0]["tile"]["down"]
    blank = sheets[0]["tile"]["blank"]
    assert len(sheets) + len(blank) == across * down
    assert not {one["tile"]["name"] for one in sheets} & {*blank}
    assert all({row["name"] for row in one["tile"]["names"] if row["is_blank"]} == {*blank} for one in sheets)
    square = replace(form, size=(20.0, 20.0), cut=(((0.0, 0.0), (20.0, 0.0)),), broken=(), labels=())
    lowest = [sheet["templates"][0] for sheet in templates_data(kit, [square], made.job)["sheets"]]
    assert [one["tile"]["name"] for one in lowest] == ["A1", "B1", "C1"]
    assert lowest[0]["tile"]["blank"][:3] == ["A2", "B2", "C2"]


def test_plies_say_how_thick_they_are_resawn_and_how_many_are_to_spare() -> None:
    """Six plies of 1/8 and 1/32 for the planer, 0.156 off the saw; a board of 3/4 gives (3/4 + 1/8) / 0.281 = 3."""
    part = head(PartKind.EXTENSION_JAMB, "bent laminations")
    assert part.blank.plies is not None
    text = resawn_words(part, Units.INCH)
    assert 'into 3 plies each, 0.156" off the saw (kerf 1/8" between two): 6, none to spare; plane 6 to 0.125"' in text
    three = replace(part, blank=replace(part.blank, strips=(8.0, 8.0, 8.0)))
    assert "9, 3 to spare" in resawn_words(three, Units.INCH)


def test_the_cut_file_of_a_form_marks_its_center_line_and_its_spring_lines() -> None:
    part = head(PartKind.EXTENSION_JAMB, "bent laminations")
    (figure,) = part_figures(part, units=Units.INCH)
    outline, center_line, *springs = figure.strokes
    form = bending_form(part)
    assert [x for x, _ in center_line.points] == [form.crown[0]] * 2 and center_line.points[1] == form.crown
    assert [line.points[0] for line in springs] == [*form.springs]
    assert outline.layer not in {line.layer for line in (center_line, *springs)}


def cut_row(made: RandomKit, part: Part) -> Record:
    kit, grid = as_cut(made.kit, PlannedForKit()), made.job.shop.grid
    return part_row(part_record(part, grid=grid), beside_parts(kit, grid)[part.mark])


def test_a_bent_head_has_its_strips_at_the_head_of_its_row_and_in_the_parts_table() -> None:
    """Two strips of 2 7/32 x 55 15/32, plies with what is planed off; finished it is 1 31/32 wide."""
    made = arched(curved="bent laminations")
    (part,) = (one for one in made.kit.parts if one.is_laminated)
    row = cut_row(made, part)
    assert (row["width"], row["length"]) == ('2 7/32"', '55 15/32"')
    assert row["work"][0].startswith('2 strips of this size to saw; finished 3/4" × 1 31/32"')
    assert sawn_first(part, grid=made.job.shop.grid).endswith('2 7/32" × 55 15/32"')


def test_a_segment_has_its_own_size_there() -> None:
    made = arched()
    part, grid = next(one for one in made.kit.parts if one.arcs), made.job.shop.grid
    row = cut_row(made, part)
    assert (row["width"], row["length"]) == (grid.text(part.width), grid.text(part.length))
    assert not any("to saw" in line for line in row["work"])
    assert sawn_first(part, grid=grid) == size_words(part, grid=grid, with_length=True)


def test_the_framer_is_told_what_makes_the_curve_of_an_arch_and_of_no_rectangle() -> None:
    """Stud to stud is square; the curve is his, common practice, no source."""
    for kit, job, is_arched in ((arched().kit, arched().job, True), (kit_of(), job_of(changed()), False)):
        (row,) = rough_opening_data([as_cut(kit, PlannedForKit())], job)["rows"]
        assert row["is_arched"] is is_arched


def test_a_section_tells_the_width_of_a_segment_between_its_arcs_and_not_of_its_blank() -> None:
    """Casing of 3 1/2 out of a wider board, a jamb of 3/4 out of a thicker one; straight legs as they are ripped."""
    casing, jamb, grid = head(PartKind.CASING), head(PartKind.EXTENSION_JAMB), FINE[Units.INCH]
    assert casing.width > 3.5 and size_words(casing, grid=grid) == '3/4" × 3 1/2"'
    assert jamb.thickness > 0.75 and size_words(jamb, grid=grid) == f'3/4" × {grid.text(jamb.width)}'
    leg = next(one for one in parts() if one.kind is PartKind.CASING and one.side is Side.LEFT)
    assert size_words(leg, grid=grid) == f"{grid.text(leg.thickness)} × {grid.text(leg.width)}"
