"""Details of pieces that are sawn or bent to arcs: one for all that are cut alike, with the sizes of the piece."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from ezdxf.filemanagement import readfile
from rounds import rounded_inside

from jambs.arcs import arcs_of
from jambs.drawings.dxf.model import write_dxf
from jambs.drawings.elements.paper import INCH_SCALES
from jambs.drawings.elements.view import Arc, Chain, Ink, View
from jambs.drawings.layout.arrange import arrange
from jambs.drawings.views.details import details
from jambs.drawings.views.sections import section_view, sections_shown
from jambs.face import draw, make_kits
from jambs.geometry import Point
from jambs.length import FINE, Units, read_length
from jambs.section.cut import sections_to_draw


def detailed(curved: str) -> list[View]:
    kit = rounded_inside("full round", interior_trim__inside__jamb__curved=curved).kit
    return details(kit, grid=FINE[Units.INCH])


def lengths(chains: tuple[Chain, ...]) -> dict[str, float]:
    return {one.after: math.dist(one.intervals[0].start, one.intervals[0].finish) for one in chains if one.after}


def radius(start: Point, finish: Point, bulge: float) -> float:
    """Of an arc: its chord over twice the sine of half its angle, which is twice the angle of the bulge's tangent."""
    return math.dist(start, finish) / (2 * math.sin(2 * math.atan(abs(bulge))))


def test_pieces_of_a_ring_that_are_cut_alike_share_a_detail() -> None:
    """Whatever side each comes to: six segments of a hexagon and two halves of a ring are the same board (symmetry)."""
    titles = [view.title for view in detailed("bent laminations")]
    assert len(titles) == 2
    assert [title.count("W1-") for title in titles] == [2, 6]
    assert "6 alike" in titles[1]
    assert "alike" not in titles[0]


def test_boards_of_an_octagon_that_are_cut_alike_share_a_detail_that_names_no_ends() -> None:
    """All eight of a regular octagon are one board; the two slopes of a triangle are not its bottom."""
    found = details(rounded_inside("octagon").kit, grid=FINE[Units.INCH])
    assert [view.title.count("W1-") for view in found] == [8, 8]
    assert all("8 alike" in view.title and view.marks == () for view in found)
    slopes = details(rounded_inside("triangle", 48, 30).kit, grid=FINE[Units.INCH])
    assert not any("alike" in view.title for view in slopes) and all(view.marks for view in slopes)


def test_segments_are_dimensioned_as_sawn_and_as_their_blank() -> None:
    """A sixth of a ring: each chord is as long as its radius (hexagon), and the blank is longer than both."""
    view = next(one for one in detailed("sawn segments") if "casing" in one.title)
    found = lengths(view.chains)
    arcs = view.shapes[0]
    radii = sorted(radius(start, end, bulge) for start, end, bulge in arcs_of(arcs.points, arcs.bulges))
    assert radii == pytest.approx([found["inner edge"], found["outer edge"]], abs=1 / 32)
    assert set(found) == {"inner edge", "outer edge", "blank"}
    assert found["blank"] > found["outer edge"] > found["inner edge"]
    assert [shape.ink for shape in view.shapes] == [Ink.TRIM_INSIDE, Ink.HIDDEN]


def test_a_bent_piece_has_no_blank_on_its_detail() -> None:
    view = next(one for one in detailed("bent laminations") if "jamb" in one.title)
    found = lengths(view.chains)
    assert set(found) == {"hollow face", "back"}
    assert found["back"] - found["hollow face"] == pytest.approx(2 * 0.75)  # a half ring, 3/4 thick
    assert [shape.ink for shape in view.shapes] == [Ink.TRIM_INSIDE, Ink.DIMENSION, Ink.DIMENSION]


def test_the_center_of_a_half_ring_is_marked_and_both_its_radii_are_given() -> None:
    """The cross stands as far from both ends of the hollow face as from its crown; ISO 129-1 has R before a radius."""
    view = next(one for one in detailed("bent laminations") if "jamb" in one.title)
    across, upright = (shape.points for shape in view.shapes[1:])
    center = tuple(sum(axis) / 2 for axis in zip(*across, strict=True))
    assert center == pytest.approx(tuple(sum(axis) / 2 for axis in zip(*upright, strict=True)))
    hollow = next(chain.intervals[0] for chain in view.chains if chain.after == "hollow face")
    reach = math.dist(hollow.start, hollow.finish) / 2
    ends = [hollow.start, hollow.finish, min((one.target for one in view.call_outs), key=lambda point: point[1])]
    assert [math.dist(center, point) for point in ends] == pytest.approx([reach] * 3, abs=1e-6)
    placed = arrange(view, scale=INCH_SCALES[3], units=Units.INCH)
    assert sorted(read_length(one.text.lines[0].removeprefix("R "), units=Units.INCH) for one in placed.radials) == (
        pytest.approx([reach, reach + 0.75], abs=1 / 128)
    )
    assert {center} == {tuple(round(axis, 9) for axis in one.center) for one in placed.radials}


@pytest.mark.parametrize(
    ("word", "curved", "pointing"), [("jamb", "bent laminations", 2), ("casing", "sawn segments", 1)]
)
def test_the_line_of_a_radius_ends_on_its_arc_and_points_at_its_center(word: str, curved: str, pointing: int) -> None:
    """ISO 129-1, from memory: one arrow, on the arc, in line with the center; past the ends of a hollow it is not."""
    view = next(one for one in detailed(curved) if word in one.title)
    placed = arrange(view, scale=INCH_SCALES[3], units=Units.INCH)
    assert len(placed.radials) == 2 and not placed.leaders
    found = 0
    for one in placed.radials:
        elbow, arrow = one.leader.points[1:]
        assert math.dist(one.center, arrow) == pytest.approx(one.value)
        found += math.dist(one.center, elbow) == pytest.approx(one.value + math.dist(elbow, arrow))
    assert found == pointing


def test_a_line_to_the_center_that_passes_an_arc_by_does_not_meet_it() -> None:
    """By hand: 3, 4 and -3, 4 are 5 from the center; from 8, 6 the way there passes by at 4, 3."""
    arc = Arc(center=(0.0, 0.0), middle=(0.0, 5.0), ends=((3.0, 4.0), (-3.0, 4.0)))
    assert arc.radius == 5.0
    assert arc.toward((8.0, 6.0)) is None
    assert arc.toward((6.5, 15.6)) == pytest.approx((25 / 13, 60 / 13))
    assert arc.toward((0.0, 0.0)) is None


def test_a_center_far_below_a_shallow_piece_is_not_drawn() -> None:
    """A sixth of a ring: its center lies most of a radius under it."""
    view = next(one for one in detailed("sawn segments") if "casing" in one.title)
    assert Ink.DIMENSION not in [shape.ink for shape in view.shapes]


def test_a_ring_is_cut_at_head_and_jamb_alone_and_says_that_its_sill_is_the_same() -> None:
    def sections(shape: str) -> dict[str, tuple[str, ...]]:
        made = rounded_inside(shape)
        shown = sections_shown(sections_to_draw(made.kit), made.kit)
        return {one.cut.value: section_view(one, made.kit, made.job).remarks for one in shown}

    ring, octagon = sections("full round"), sections("octagon")
    assert list(ring) == ["head", "jamb"]
    assert "the same at the sill, square to the frame" in ring["jamb"]
    assert list(octagon) == ["head", "jamb", "sill"]
    assert not any("the same at the sill" in one for remarks in octagon.values() for one in remarks)


def test_the_letter_of_a_radius_is_in_its_text_and_its_value_stays_that_of_the_arc(tmp_path: Path) -> None:
    """DXF reference, DIMENSION: group 1, in which ``<>`` stands for the measurement; readers pass over the suffix."""
    made = rounded_inside({"kind": "half round"}, 36, 60)
    (kit,) = make_kits(made.job)
    write_dxf(draw(kit, made.job), tmp_path / "one.dxf")
    document = readfile(tmp_path / "one.dxf")
    radii = [one for one in document.modelspace().query("DIMENSION") if one.dxf.dimtype & 7 == 4]
    assert radii and {one.dxf.text for one in radii} == {"R <>"}
    assert not [one for one in radii if "R" in document.dimstyles.get(one.dxf.dimstyle).dxf.dimpost]
    for one in radii:
        assert one.dxf.actual_measurement == pytest.approx(math.dist(one.dxf.defpoint, one.dxf.defpoint4))
