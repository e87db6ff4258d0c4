"""What is drawn into the sections beside their materials: where it is, by hand; the left jamb where it differs."""

from __future__ import annotations

import itertools
import math

import pytest
from cases import changed, job_of
from samples import SAMPLES, drawn, made

from jambs.drawings.dxf.document import BROKEN, LINE_TYPES
from jambs.drawings.elements.view import Ink, Shape, View
from jambs.drawings.views.outlines import seen_from_above
from jambs.drawings.views.section_works import circle, fastener, levels_at, section_works
from jambs.drawings.views.sections import section_view
from jambs.flashing.membrane import air_control_plane
from jambs.job import Job
from jambs.outside.fitting import flashings_of
from jambs.outside.trim_fasteners import trim_fasteners
from jambs.parts.kit.kit import Kit
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.section.cut import sections_to_draw
from jambs.section.region import SectionCut

EACH = pytest.mark.parametrize("name", list(SAMPLES))
THREE = ("section head", "section jamb", "section sill")
FLASHING = {"flashing": {"fall": "5 deg", "drip_out": "3/8", "hem": "3/8", "end_dam": "1"}}


def asked(name: str, view: str) -> View:
    return drawn(name).asked_view(view)


def of_ink(view: View, ink: Ink) -> list[Shape]:
    return [shape for shape in view.shapes if shape.ink is ink]


def cuts_of(**paths: object) -> list[SectionCut]:
    job = job_of(changed(**paths))
    return [one.cut for one in sections_to_draw(make_kit(place_windows(job)[0], job))]


@EACH
@pytest.mark.parametrize("view", THREE)
def test_the_air_control_line_runs_from_the_end_of_the_wall_to_the_frame(name: str, view: str) -> None:
    """One line of a kind of its own: it starts on the wall's membrane, turns into the opening, ends on the frame."""
    kit, _, _ = made(name)
    (line,) = of_ink(asked(name, view), Ink.AIR_CONTROL)
    assert not line.closed
    assert line.points[0][0] == pytest.approx(air_control_plane(kit.placement.planes))
    edge = kit.placement.opening.frame.height if view == "section head" else 0.0
    assert line.points[-1][1] == pytest.approx(edge)
    inside, outside = kit.placement.inside_edge, kit.placement.outside_edge
    assert inside < line.points[-1][0] < outside
    pieces = list(itertools.pairwise(line.points))
    assert all(one[0] == pytest.approx(two[0]) or one[1] == pytest.approx(two[1]) for one, two in pieces)


def test_the_air_control_line_has_a_layer_and_a_line_type_of_its_own() -> None:
    assert BROKEN[Ink.AIR_CONTROL] in LINE_TYPES
    assert [ink for ink, kind in BROKEN.items() if kind == BROKEN[Ink.AIR_CONTROL]] == [Ink.AIR_CONTROL]


def test_the_air_control_line_goes_round_a_liner_buck_by_hand() -> None:
    """Housewrap on the sheathing, a liner 3/4 thick: out on its back to the flange plane, over its end, in again."""
    job = job_of(changed(walls__main__buck={"kind": "liner", "thickness": "3/4", "stock": "plywood"}))
    kit = make_kit(place_windows(job)[0], job)
    line = _air(kit, job)
    rough, flange = kit.placement.shims.right, kit.placement.flange_plane
    assert [(round(-y, 6), round(d, 6)) for d, y in line.points][1:4] == [
        (round(rough + 0.75, 6), round(air_control_plane(kit.placement.planes), 6)),
        (round(rough + 0.75, 6), round(flange, 6)),
        (round(rough, 6), round(flange, 6)),
    ]


def _air(kit: Kit, job: Job) -> Shape:
    section = next(one for one in sections_to_draw(kit) if one.cut is SectionCut.JAMB)
    (line,) = of_ink(section_view(section, kit, job), Ink.AIR_CONTROL)
    return line


@pytest.mark.parametrize(("name", "view"), [("stool", view) for view in THREE[:2]])
def test_a_sealant_lies_in_front_of_its_rod_by_hand(name: str, view: str) -> None:
    """A joint of 1/4 in: the rod is 1/4 in across, its middle 1/4 + 1/8 behind the face; the joint is 3/4 deep."""
    kit, _, _ = made(name)
    (rod,) = [shape for shape in of_ink(asked(name, view), Ink.SEALANT) if shape.bulges]
    (x0, _), (x1, level) = rod.points
    assert x1 - x0 == pytest.approx(1 / 4)
    assert (x0 + x1) / 2 == pytest.approx(kit.placement.outside_edge + 1 / 8)
    way, edge = (1, kit.placement.opening.frame.height) if view == "section head" else (-1, 0.0)
    face = kit.placement.opening.window.outside_face.head - kit.placement.opening.exterior.frame_reveal  # type: ignore[union-attr]
    assert (level - edge) * way == pytest.approx(-face + 3 / 8)
    assert any("sealant, backer rod" in one.lines for one in asked(name, view).call_outs)


def test_fasteners_are_drawn_at_their_lengths() -> None:
    kit, _, job = made("stool")
    lengths = {line.length for line in trim_fasteners(kit, job) if line.length}
    for view in THREE:
        shanks = of_ink(asked("stool", view), Ink.FASTENER)[::2]
        assert shanks
        for shank in shanks:
            assert any(math.dist(*shank.points) == pytest.approx(length) for length in lengths)


def test_a_fastener_by_hand() -> None:
    """Two inches to the left from (1, 5): its point at (-1, 5), its head 1/4 in high across its start."""
    shank, head = fastener((1.0, 5.0), (-1.0, 0.0), 2.0)
    assert shank.points == ((1.0, 5.0), (-1.0, 5.0))
    assert sorted(head.points) == [(1.0, 4.875), (1.0, 5.125)]


def test_a_screw_starts_on_the_face_of_a_flared_jamb_by_hand() -> None:
    """A face that rises 1 in 4: 0.5 over its foot after two inches; its back lies 1 further up."""
    leaning = ((0.0, 0.0), (4.0, 1.0), (4.0, 2.0), (0.0, 1.0))
    assert sorted(levels_at(leaning, 2.0)) == pytest.approx([0.5, 1.5])


def test_a_circle_is_two_half_circles() -> None:
    """A bulge of 1 is half a circle (DXF reference, LWPOLYLINE)."""
    shape = circle((2.0, 3.0), 0.5, Ink.SEALANT)
    assert (shape.points, shape.bulges, shape.closed) == (((1.5, 3.0), (2.5, 3.0)), (1.0, 1.0), True)


def test_metal_is_drawn_as_bent_where_the_job_says_how_and_as_a_plain_strip_where_not() -> None:
    job = job_of({**changed(), **FLASHING})
    kit = make_kit(place_windows(job)[0], job)
    found = {one.cut: section_view(one, kit, job) for one in sections_to_draw(kit)}
    profiles = {blank.profile for blank in flashings_of(kit, job).blanks}
    bent = {
        cut: {shape.points for shape in of_ink(view, Ink.FLASHING) if not shape.closed} for cut, view in found.items()
    }
    assert len(profiles) == 3
    assert len(bent[SectionCut.SILL] & profiles) == 2
    assert len(bent[SectionCut.HEAD] & profiles) == 1
    assert not bent[SectionCut.JAMB] & profiles
    plain = asked("picture framed", "section head")
    assert any(shape.closed and len(shape.points) == 8 for shape in of_ink(plain, Ink.FLASHING))


@pytest.mark.parametrize(("name", "count"), [("picture framed", 2), ("thin layers", 3), ("stool", 2)])
def test_joints_of_boards_are_staggered(name: str, count: int) -> None:
    """Every layer of boards outside of the sheathing has one, from its inner to its outer face; no two in line."""
    kit, sections, job = made(name)
    section = next(one for one in sections if one.cut is SectionCut.JAMB)
    joints = [
        one.points for one in section_works(seen_from_above(section), kit, job).shapes if one.ink is Ink.INSULATION
    ]
    layers = {(one.inner, one.outer) for one in kit.placement.planes.layers}
    assert len(joints) == count
    assert {(start[0], end[0]) for start, end in joints} <= layers
    assert all(start[1] == end[1] for start, end in joints)
    assert all(abs(one[0][1] - two[0][1]) > 0.5 for one, two in itertools.pairwise(joints))


def test_one_layer_of_boards_has_no_joint_to_stagger() -> None:
    layers = [
        "gypsum board 1/2",
        {"material": "stud 2x6", "spacing": "16"},
        "plywood 1/2",
        "housewrap",
        {"material": "EPS", "thickness": "4"},
        "plywood 1/2",
        {"material": "wood shingles", "thickness": "3/4"},
    ]
    layers[5] = {"material": "plywood 1/2", "role": "outer sheathing"}
    job = job_of(changed(walls__main__layers=layers))
    kit = make_kit(place_windows(job)[0], job)
    section = seen_from_above(next(one for one in sections_to_draw(kit) if one.cut is SectionCut.JAMB))
    assert not [one for one in section_works(section, kit, job).shapes if one.ink is Ink.INSULATION]


def test_the_left_jamb_is_drawn_where_it_differs_and_only_there() -> None:
    assert cuts_of() == [SectionCut.HEAD, SectionCut.JAMB, SectionCut.SILL]
    wide = {"left": "3 1/2", "right": "2 1/2", "head": "2 1/2", "sill": "2 1/2"}
    both = [SectionCut.HEAD, SectionCut.LEFT_JAMB, SectionCut.JAMB, SectionCut.SILL]
    assert cuts_of(windows__fixed__frame_face=wide) == both
    assert "section left jamb" in [view.name for view in drawn("measured").views]


@pytest.mark.parametrize(("name", "has_left"), [("stool", False), ("measured", True)])
def test_a_section_says_that_the_other_jamb_is_its_mirror_image_only_where_it_is(name: str, has_left: bool) -> None:
    said = " ".join(line for text in drawn(name).view("section jamb").texts for line in text.lines)
    assert ("left jamb is its mirror image" in said) is not has_left
