"""Names and radii on elevations of arches: each name points at its own piece, a radius reads as all papers tell it."""

from __future__ import annotations

import math
import re
from itertools import combinations
from pathlib import Path

import pytest
from drawn_examples import drawings_of
from ezdxf.filemanagement import readfile
from shapely.geometry import Point, Polygon

import jambs
from jambs.drawings.dxf.model import write_dxf
from jambs.drawings.elements.boxes import box_around, crossing
from jambs.drawings.elements.placed import Leader, PlacedView
from jambs.drawings.views.seen import seen
from jambs.parts.kit.cut_kit import CutKit
from jambs.place.frame_path import frame_path
from jambs.place.shape_words import outline_words

EXAMPLES = Path(__file__).parents[2] / "examples"
ARCHES = [("creamery", "A1"), ("gable-house", "G7")]
ELEVATIONS = ["interior elevation", "exterior elevation"]
ON_EDGE = 0.06
"""So near an arrow ends to the edge that it points at [in]: arcs are drawn as lines."""


def kit_of(example: str, mark: str) -> tuple[CutKit, jambs.Job]:
    job = jambs.read_job(EXAMPLES / example)
    return next(kit for kit in jambs.make_kits(job) if kit.mark == mark), job


def leader_of(view: PlacedView, mark: str) -> Leader | None:
    """Return the leader that begins nearest to a name; None where the name has none so near."""
    (text,) = (one for one in view.texts if one.lines == (mark,))
    box = text.box.grown(0.1 * view.scale.factor)
    found = [one for one in view.leaders if box.holds(box_around(one.points[:1]))]
    return found[0] if found else None


@pytest.mark.parametrize("name", ELEVATIONS)
@pytest.mark.parametrize(("example", "mark"), ARCHES)
def test_the_name_of_a_curved_piece_points_at_it_or_stands_on_it(example: str, mark: str, name: str) -> None:
    """The middle of the box round a piece at the side of an arch is in the glass."""
    kit, _ = kit_of(example, mark)
    view, width = drawings_of(example)[mark].view(name), kit.placement.opening.frame.width
    curved = [part for part in kit.parts if part.arcs and part.where.value == name.split()[0]]
    for part in curved:
        outline = Polygon(seen(part, from_outside=name.startswith("ext"), width=width).polygon)
        leader = leader_of(view, part.mark)
        (text,) = (one for one in view.texts if one.lines == (part.mark,))
        at = Point(leader.points[-1] if leader else text.box.center)
        assert outline.distance(at) < ON_EDGE, part.mark
        assert leader or not part.kind.is_jamb, part.mark
    assert curved or name.startswith("ext")


def test_arrows_at_pieces_of_a_curved_jamb_end_at_their_middles() -> None:
    """Two that end at the joint between them cannot be told apart: five pieces of 64 in and more along the curve."""
    view = drawings_of("creamery")["A1"].view("exterior elevation")
    leaders = (leader_of(view, f"A1-{number}") for number in range(13, 18))
    ends = [one.points[-1] for one in leaders if one]
    assert len(ends) == 5
    assert min(math.dist(one, two) for one, two in combinations(ends, 2)) > 8


@pytest.mark.parametrize(("example", "mark"), [*ARCHES, ("creamery", "B1")])
def test_the_line_of_a_radius_crosses_no_leader(example: str, mark: str) -> None:
    for name in ELEVATIONS:
        view = drawings_of(example)[mark].view(name)
        for one in view.radials:
            others = [piece for leader in view.leaders for piece in leader.segments]
            met = [other for piece in one.leader.segments for other in others if crossing(piece, other)]
            assert met == [], (name, one.text.lines)


@pytest.mark.parametrize("mark", ["A1", "B1"])
def test_radii_of_a_window_are_drawn_as_cut_sheet_and_order_tell_them(mark: str, tmp_path: Path) -> None:
    """The ellipse arch of A1 makes 340.2 mm at its ends: the drawing had 340 beside it. What is sawn is on the grid."""
    kit, job = kit_of("creamery", mark)
    opening = kit.placement.opening
    assert opening.shape
    told = re.findall(r"[\d.]+(?= mm at| mm$)", outline_words(frame_path(opening), opening.shape.kind, job.units))
    drawing = drawings_of("creamery")[mark]
    outside = {one.text.lines[0] for one in drawing.view("exterior elevation").radials}
    assert outside and outside <= {f"R {one}" for one in told}
    inside = [one.text.lines[0] for one in drawing.view("interior elevation").radials]
    assert inside and not any("." in one for one in inside)
    write_dxf(drawing, tmp_path / "one.dxf")
    written = [one.dxf.text for one in readfile(tmp_path / "one.dxf").modelspace().query("DIMENSION")]
    assert {one for one in outside if "." in one} <= set(written)  # a reader that sets it anew rounds to the grid
