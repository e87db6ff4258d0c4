"""The views of whole openings: nothing touches, everything is named once, the right sizes stand there."""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import permutations
from math import dist

import pytest
from collisions import collisions, crossings
from drawn_examples import EXAMPLES, drawings_of
from samples import SAMPLES, drawn, made

from jambs.drawings.elements.paper import HALF_SIZE, PAGES, TEXT_HEIGHT, scales_of
from jambs.drawings.elements.placed import PlacedView
from jambs.drawings.elements.view import Ink, Shape, View, ViewKind, ViewSide
from jambs.drawings.layout.arrange import arrange
from jambs.drawings.views.measured import depth_words
from jambs.drawings.views.sections import section_view
from jambs.drawings.views.words import layer_words
from jambs.length import HALF_64TH, Units, read_length
from jambs.parts.board.cuts import Crosscut, EndBevel, Miter, Rip
from jambs.parts.board.kinds import PartKind
from jambs.parts.words.end_words import ends_words
from jambs.section.region import SectionCut

HEAD_AND_A_HALF = 0.045
"""On paper [in]; a head is 0.03 wide."""
ROOM = (3.0, 2.7)
"""About what a cut sheet leaves an elevation [in]."""
EACH = pytest.mark.parametrize("name", list(SAMPLES))
SECTIONS = pytest.mark.parametrize("cut", [SectionCut.HEAD, SectionCut.JAMB, SectionCut.SILL])


def values(view: PlacedView, *, vertical: bool) -> list[float]:
    return [dimension.value for dimension in view.dimensions if dimension.is_vertical is vertical]


def has(found: list[float], size: float) -> bool:
    return any(abs(one - size) < HALF_64TH / 8 for one in found)


@EACH
def test_nothing_touches(name: str) -> None:
    assert {view.name: collisions(view) for view in drawn(name).views if collisions(view)} == {}


@EACH
def test_no_leaders_cross_in_sections(name: str) -> None:
    sections = [view for view in drawn(name).views if view.kind is ViewKind.SECTION]
    assert {view.name: crossings(view) for view in sections if crossings(view)} == {}


@EACH
def test_every_text_is_high_enough_to_read(name: str) -> None:
    """3/32 in on paper, *common practice, no source*; in millimeters 2.5 (ISO 3098-1, from memory)."""
    least = 2.5 / 25.4 if drawn(name).units is Units.MM else TEXT_HEIGHT
    for view in drawn(name).views:
        assert min(text.height for text in view.lettering) >= least * view.scale.factor - 1e-9


@EACH
@SECTIONS
def test_every_layer_is_named_once_in_the_section_at_the_head_and_the_others_refer_to_it(
    name: str, cut: SectionCut
) -> None:
    kit, _, job = made(name)
    view = drawn(name).view(f"section {cut.value}")
    said = [" ".join(text.lines) for text in view.texts]
    is_head = cut is SectionCut.HEAD
    for layer in kit.placement.planes.layers:
        words = layer_words(layer, units=job.units)
        same = sum(layer_words(other, units=job.units) == words for other in kit.placement.planes.layers)
        assert said.count(words) == same * is_head
    assert any("layers as named in: Section at head" in words for words in said) is not is_head


BY_HAND = {
    "picture framed": [
        '1/2" gypsum board',
        '5 1/2" stud 2x6',
        '1/2" plywood',
        '2" EPS',
        '3" EPS',
        '1/2" plywood',
        '3/4" wood shingles',
    ],
    "metric": [
        "12.5 mm gypsum board",
        "145 mm stud 45x145",
        "12 mm OSB",
        "60 mm wood-fiber board",
        "100 mm wood-fiber board",
        "25 mm strapping",
        "20 mm vertical boards",
    ],
}
"""The layers of the sample walls as they are to be named, thickness first and once."""


@pytest.mark.parametrize("name", list(BY_HAND))
def test_layers_are_named_by_their_thickness_and_material(name: str) -> None:
    said = [" ".join(text.lines) for text in drawn(name).view("section head").texts]
    for words in BY_HAND[name]:
        assert said.count(words) == BY_HAND[name].count(words), words


@EACH
def test_every_part_is_marked_once_in_its_elevation_and_in_the_table(name: str) -> None:
    kit, _, _ = made(name)
    for where in ("interior", "exterior"):
        said = [word for text in drawn(name).view(f"{where} elevation").texts for word in text.lines[0].split(" ")]
        for part in kit.parts:
            if part.where.value == where:
                assert said.count(part.mark) == 1, part.mark
    table = [
        mark
        for view in drawn(name).views
        if view.kind is ViewKind.PARTS
        for text in view.texts
        if text.bold and len(text.lines) == 1
        for mark in text.lines[0].split(", ")
    ]
    assert [part.mark for part in kit.parts if table.count(part.mark) != 1] == []


@EACH
def test_a_part_has_a_detail_or_the_table_tells_how_its_ends_are_cut(name: str) -> None:
    """A board of one width with both ends cut off needs no picture; a notch, a taper, a kerf or a rabbet does."""
    kit, _, job = made(name)
    views = drawn(name).views
    titles = " ".join(view.title for view in views if view.kind is ViewKind.DETAIL)
    tables = [text for view in views if view.kind is ViewKind.PARTS for text in view.texts]
    told = " ".join(line for text in tables for line in text.lines)
    for part in kit.parts:
        is_shaped = any(not isinstance(cut, Rip | Crosscut | Miter | EndBevel) for cut in part.cuts)
        assert bool(re.search(rf"{re.escape(part.mark)}(?!\d)", titles)) is is_shaped, part.mark
        if not is_shaped and not part.is_plain:
            assert ends_words(part, grid=job.shop.grid) in told


def test_legs_that_differ_have_a_row_each_and_those_alike_share_one() -> None:
    def marks(name: str) -> list[str]:
        texts = [text for view in drawn(name).views if view.kind is ViewKind.PARTS for text in view.texts if text.bold]
        return [text.lines[0] for text in texts]

    kit, _, _ = made("measured")
    legs = [part.mark for part in kit.parts if part.kind is PartKind.EXTENSION_JAMB and part.side.is_leg]
    assert ", ".join(legs) in marks("picture framed")
    assert len(legs) == 2
    assert set(legs) < set(marks("measured"))


@EACH
@SECTIONS
def test_the_depths_stand_in_every_section(name: str, cut: SectionCut) -> None:
    """E_i, J, s, E_e in the first row, d_s and A in the second; all outward from the finished face.

    Where E_i was measured, that stands there in place of the planned one, and no planned d_s beside it. Where a drawing
    has little room what is the same at the right jamb stands there alone.
    """
    kit, _, _ = made(name)
    placement, planes = kit.placement, kit.placement.planes
    found = values(drawn(name).view(f"section {cut.value}"), vertical=False)
    found = [*found, *values(drawn(name).view("section jamb"), vertical=False)]
    window = placement.opening.window
    wanted = [window.jamb_depth, window.frame_projection, planes.trim_plane - planes.sheathing_plane]
    if name != "measured":
        wanted += [placement.interior_depth, planes.sheathing_plane]
    if placement.exterior_depth >= 0:
        wanted.append(placement.exterior_depth)
    assert [size for size in wanted if size > HALF_64TH and not has(found, size)] == []


@EACH
def test_the_clear_opening_and_the_frame_stand_in_the_interior_elevation(name: str) -> None:
    kit, _, _ = made(name)
    view = drawn(name).view("interior elevation")
    assert has(values(view, vertical=False), kit.clear_width)
    assert has(values(view, vertical=True), kit.clear_height)
    assert has(values(view, vertical=False), kit.placement.opening.frame.width)


@pytest.mark.parametrize("name", ["picture framed", "stool", "mitered jambs", "metric"])
def test_the_reveals_stand_in_the_section_at_the_jamb(name: str) -> None:
    kit, _, _ = made(name)
    trim = kit.placement.opening.interior
    found = values(drawn(name).view("section jamb"), vertical=True)
    assert has(found, trim.frame_reveal)
    assert has(found, trim.casing_reveal)


@EACH
def test_a_detail_gives_length_and_width_of_its_part(name: str) -> None:
    kit, _, _ = made(name)
    for part in kit.parts:
        if not part.is_plain and f"detail {part.mark}" in [view.name for view in drawn(name).views]:
            view = drawn(name).view(f"detail {part.mark}")
            assert has(values(view, vertical=False), part.length), part.mark
            assert has(values(view, vertical=True), part.width), part.mark


@EACH
def test_texts_of_dimensions_are_their_values(name: str) -> None:
    """Read back by the reader of lengths: to the grid of the shop."""
    units, grid = drawn(name).units, made(name)[2].shop.grid
    for view in drawn(name).views:
        for dimension in view.dimensions:
            (text,) = dimension.text.lines
            assert text == grid.text(dimension.value, mark=units is Units.INCH)
            assert text.endswith('"') is (units is Units.INCH)  # millimeters are said once, in the title block
            assert read_length(text, units=units) == pytest.approx(dimension.value, abs=grid.step / 2 + 1e-9)


def test_mirror_images_share_a_detail() -> None:
    titles = [view.title for view in drawn("legs tapered alike").views if view.kind is ViewKind.DETAIL]
    assert any("mirror image" in title for title in titles)


def test_planned_is_said_loudly_for_what_is_not_measured() -> None:
    """Brief of the trade: a planned depth is marked so on every paper."""
    planned = [" ".join(text.lines) for text in drawn("picture framed").view("notes").texts]
    assert "PLANNED - MEASURE BEFORE CUTTING" in planned


def notes_of(name: str) -> str:
    return " ".join(line for text in drawn(name).view("notes").texts for line in text.lines)


def test_depths_measured_from_the_room_leave_the_outside_planned() -> None:
    notes, title = notes_of("measured"), drawn("measured").title
    assert title.state == "INSIDE MEASURED 2026-05-18"
    assert title.caution.startswith("OUTSIDE PLANNED")
    assert "OUTSIDE PLANNED - MEASURE BEFORE CUTTING" in notes
    assert "exterior depths planned" in notes


def test_measured_depths_are_the_readings() -> None:
    """As they stand in the sample's measure sheet, not with what the saw adds."""
    notes = notes_of("measured")
    assert 'head 4 11/16", 4 3/4"; sill 4 5/8", 4 13/16"; left 4 5/8", 4 11/16"; right 4 13/16", 4 3/4"' in notes


def test_the_section_of_a_measured_opening_says_that_its_depths_are_planned() -> None:
    views = [drawn("measured").view(f"section {cut}") for cut in ("head", "jamb")]
    said = {line for view in views for text in view.texts for line in text.lines}
    assert {"OUTSIDE (planned)", "(planned)"} <= said
    assert not any("(planned)" in line for text in drawn("stool").view("section jamb").texts for line in text.lines)


def test_a_frame_in_front_of_the_finished_face_is_proud_not_less_than_nothing_deep() -> None:
    """Interior depth is d_in; below zero the frame stands in the room by that much (the job's own axes)."""
    kit, _, job = made("picture framed")
    words = depth_words(replace(kit, placement=replace(kit.placement, interior_depth=-2.5)), job)
    assert words[0].startswith('Planned: frame 2 1/2" proud inside; ')


def test_the_section_at_the_jamb_names_its_side() -> None:
    """The sections' room cuts the right leg; its mark is the right leg's."""
    view = drawn("stool").view("section jamb")
    right = next(part for part in made("stool")[0].parts if part.position == "right leg" and "jamb" in part.name)
    assert view.title == "Plan section at right jamb"
    assert any(line.startswith(f"{right.mark} ") for text in view.texts for line in text.lines)


def away(point: tuple[float, float], piece: tuple[tuple[float, float], tuple[float, float]]) -> float:
    """Distance of a point from a piece of line, by the foot of its perpendicular."""
    (ax, ay), (bx, by) = piece
    dx, dy = bx - ax, by - ay
    share = ((point[0] - ax) * dx + (point[1] - ay) * dy) / ((dx * dx + dy * dy) or 1.0)
    share = min(max(share, 0.0), 1.0)
    return dist(point, (ax + share * dx, ay + share * dy))


def as_on_a_cut_sheet(name: str, view: str) -> PlacedView:
    drawing = drawn(name)
    asked = drawing.asked_view(view).brief()
    placed = [arrange(asked, scale=scale, units=drawing.units) for scale in scales_of(drawing.units)[2:]]
    return next((one for one in placed if one.paper_width <= ROOM[0] and one.paper_height <= ROOM[1]), placed[-1])


@EACH
def test_no_leader_of_an_elevation_ends_on_another(name: str) -> None:
    """A head that lies on another leader points at nothing: a head and a half of width between them."""
    for view in ("interior elevation", "exterior elevation"):
        leaders = as_on_a_cut_sheet(name, view).leaders
        least = HEAD_AND_A_HALF * as_on_a_cut_sheet(name, view).scale.factor
        for one, two in permutations(leaders, 2):
            assert min(away(one.points[-1], piece) for piece in two.segments) >= least, (view, one.points, two.points)


@EACH
def test_scales_are_standard_ones(name: str) -> None:
    drawing = drawn(name)
    assert {view.scale.factor for view in drawing.views} <= {
        scale.factor for scale in (HALF_SIZE[drawing.units], *scales_of(drawing.units))
    }


@EACH
def test_views_on_a_page_do_not_overlap_and_stay_inside(name: str) -> None:
    drawing = drawn(name)
    pages = PAGES[drawing.units]
    assert {sheet.page for sheet in drawing.sheets} == set(pages)
    for page in pages:
        sheets = [sheet for sheet in drawing.sheets if sheet.page is page]
        shown = [on_page.view.name for sheet in sheets for on_page in sheet.views]
        assert sorted(shown) == sorted(view.name for view in drawing.views)
        assert [sheet.number for sheet in sheets] == list(range(1, sheets[0].count + 1))
        for sheet in sheets:
            boxes = [on_page.box for on_page in sheet.views]
            assert all(not one.overlaps(two) for one in boxes for two in boxes if one is not two)
            assert all(
                box.left > 0.3 and box.right < page.width - 0.3 and box.bottom > 1.2 and box.top < page.height - 0.3
                for box in boxes
            )


@EACH
def test_views_in_model_space_stand_apart_and_clear_of_the_paper(name: str) -> None:
    drawing = drawn(name)
    boxes = [view.box.moved(*drawing.shifts[view.name]) for view in drawing.views]
    assert all(not one.overlaps(two) for one in boxes for two in boxes if one is not two)
    assert min(box.left for box in boxes) > 17


def test_sash_lines_meet_at_the_hinges() -> None:
    """Hinge left as seen from inside, right from outside; the tip is at the hinge (common practice, no source)."""
    width = made("clad frame")[0].placement.opening.frame.width
    for name, is_left in (("interior elevation", True), ("exterior elevation", False)):
        view = next(one for one in drawn("clad frame").asked if one.name == name)
        tips = [shape.points[1] for shape in view.shapes if shape.ink == "HIDDEN" and len(shape.points) == 3]
        assert [tip[0] < width / 2 for tip in tips] == [is_left]


@EACH
def test_sections_stand_in_one_column_head_over_jamb_over_sill(name: str) -> None:
    """Finished faces over each other in model space: depth reads straight down."""
    drawing = drawn(name)
    names = ["section head", "section jamb", "section sill"]
    assert len({round(drawing.shifts[one][0], 9) for one in names}) == 1
    tops = [drawing.view(one).box.top + drawing.shifts[one][1] for one in names]
    assert tops == sorted(tops, reverse=True)


@EACH
def test_both_elevations_are_drawn_at_one_scale(name: str) -> None:
    drawing = drawn(name)
    assert drawing.view("interior elevation").scale == drawing.view("exterior elevation").scale


def test_the_joint_between_two_boards_of_one_name_is_drawn_and_none_where_a_layer_is_cut_in_two() -> None:
    """2 in and 3 in of EPS meet 2 in out of the sheathing; the flange plane, where a layer is split, is no joint."""
    kit, sections, job = made("picture framed")
    head = next(section for section in sections if section.cut is SectionCut.HEAD)
    view = section_view(head, kit, job)
    pieces = [shape for shape in view.shapes if shape.ink is Ink.INSULATION and len({x for x, _ in shape.points}) == 1]
    places = {round(shape.points[0][0], 6) for shape in pieces}
    sheathing = kit.placement.planes.sheathing_plane
    assert round(sheathing + 2, 6) in places
    assert not any(abs(place - kit.placement.flange_plane) < 1e-6 for place in places)
    assert abs(kit.placement.flange_plane - sheathing - 2) > 1e-3


def test_an_arch_reaches_as_high_as_its_crown() -> None:
    """A half circle of radius 4 between points on the axis, run counter-clockwise: 4 over it."""
    half_round = Shape(points=((4.0, 0.0), (-4.0, 0.0)), ink=Ink.WINDOW, bulges=(1.0, 0.0))
    view = View(name="arch", title="arch", shapes=(half_round,))
    assert (view.core.left, view.core.bottom, view.core.right, view.core.top) == pytest.approx((-4.0, 0.0, 4.0, 4.0))


@pytest.mark.parametrize("example", EXAMPLES)
def test_of_the_rows_beside_a_section_the_shorter_stands_nearer(example: str) -> None:
    """Extension lines of the outer row then cross no dimension line (ISO 129-1, from memory): 1/4 by 2 1/4."""
    both = 0
    for drawing in drawings_of(example).values():
        for view in (one for one in drawing.asked if one.kind is ViewKind.SECTION):
            for side in (ViewSide.LEFT, ViewSide.RIGHT):
                rows = [chain.intervals for chain in view.chains if chain.side is side]
                longest = [max(abs(one.finish[1] - one.start[1]) for one in row) for row in rows]
                assert longest == sorted(longest), (view.name, side)
                both += len(rows) > 1
    assert both or example in ("gable-house", "quarry-loft", "garden-studio")


def test_beside_names_of_layers_the_others_fan_out_from_both_sides_of_the_dimensions() -> None:
    """At the head of a return five leaders ran along each other, 0.1 apart, from over the dimensions to under them."""
    view = drawings_of("quarry-loft")["L5"].view("section head")
    rows = [one for one in view.dimensions if one.is_vertical and one.text.at[0] < view.box.center[0]]
    ends_of_rows = [y for one in rows for _, y in one.line]
    middle = (min(ends_of_rows) + max(ends_of_rows)) / 2
    level = {text.lines[0]: text.at[1] for text in view.texts}
    ends = {one.points[0][1]: one.points[-1][1] for one in view.leaders if len(one.points) < 4}
    named = ["shim space", "air-control line", "furring", "sealant", "L5-1  return"]
    assert [level[one] > middle for one in named] == [True, True, True, False, False]
    assert all((ends[level[one]] > middle) == (level[one] > middle) for one in named)
