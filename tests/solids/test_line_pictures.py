"""Line pictures: right way up, not mirrored, hidden lines where geometry has them, marks clear of each other."""

from __future__ import annotations

import math
import xml.etree.ElementTree as ElementTree
from dataclasses import fields, is_dataclass, replace
from itertools import combinations
from typing import Any

import pytest
from harbour import harbour_solids

from jambs.parts.board.part import Seat
from jambs.solids import kernel, picture, picture_svg
from jambs.solids.hidden_lines import seen_edges
from jambs.solids.model import stood
from jambs.solids.picture import LinePicture
from jambs.solids.views import EXPLODED, FROM_ROOM, SolidView

FROM_OUTSIDE = SolidView(name="isometric from outside", eye=(1.0, 1.0, 1.0))
VIEWS = [FROM_ROOM, FROM_OUTSIDE, EXPLODED]
SAME = 1e-4


def block(size: float) -> Any:
    corners = [(0.0, 0.0, 0.0), (size, 0.0, 0.0), (size, size, 0.0), (0.0, size, 0.0)]
    seat = Seat(origin=(0.0, 0.0, 0.0), along=(1.0, 0.0, 0.0), across=(0.0, 1.0, 0.0), through=(0.0, 0.0, 1.0))
    bench = kernel.prism(corners, (0.0, 0.0, size))
    return stood(name="block", material="", part=None, bench=bench, seat=seat)


def test_a_cube_in_isometric_view() -> None:
    """Of a cube's twelve edges nine are seen and three hidden, all of length s·√(2/3) (isometric projection)."""
    ((seen, hidden),) = seen_edges([block(10.0).standing], FROM_ROOM)
    assert (len(seen), len(hidden)) == (9, 3)
    for segment in (*seen, *hidden):
        assert math.dist(*segment) == pytest.approx(10 * math.sqrt(2 / 3), abs=SAME)


def test_a_front_view_is_the_elevation() -> None:
    """Looking square on from the room: x to the right, y up. From outside x runs to the left."""
    front = SolidView(name="front", eye=(0.0, 0.0, -1.0))
    ((seen, _),) = seen_edges([block(10.0).standing], front)
    xs, ys = {round(x, 4) for one in seen for x, _ in one}, {round(y, 4) for one in seen for _, y in one}
    assert (xs, ys) == ({0.0, 10.0}, {0.0, 10.0})
    ((back, _),) = seen_edges([block(10.0).standing], replace(front, eye=(0.0, 0.0, 1.0)))
    assert {round(x, 4) + 0.0 for one in back for x, _ in one} == {-10.0, 0.0}


def middle(drawn: LinePicture, name: str) -> tuple[float, float]:
    points = [point for line in drawn.lines if line.name == name for point in line.points]
    return sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points)


@pytest.mark.parametrize("view", VIEWS, ids=lambda view: view.name)
def test_pictures_are_right_way_up(view: SolidView) -> None:
    """The head over the bottom; from the room the left leg at the left, from outside at the right."""
    drawn = picture(harbour_solids("W02"), view)
    head, left, right, bottom = (middle(drawn, f"W02-{number}") for number in (1, 2, 3, 4))
    assert head[1] > bottom[1]
    assert (left[0] < right[0]) == (view is not FROM_OUTSIDE)


@pytest.mark.parametrize("mark", ["W01", "W02", "D01"])
def test_every_part_is_marked_in_the_exploded_view(mark: str) -> None:
    solids = harbour_solids(mark)
    drawn = picture(solids, EXPLODED)
    assert {one.text for one in drawn.marks} == {part.name for part in solids.parts}
    for one, two in combinations(drawn.marks, 2):
        assert not all(one.box[0][axis] < two.box[1][axis] and two.box[0][axis] < one.box[1][axis] for axis in (0, 1))
    for mark_place in drawn.marks:
        assert all(drawn.low[axis] <= mark_place.box[0][axis] for axis in (0, 1))
        assert all(mark_place.box[1][axis] <= drawn.high[axis] for axis in (0, 1))


def test_no_kernel_shape_leaves_the_room() -> None:
    """A picture is made of plain values all the way down."""
    assert set(kinds(picture(harbour_solids("D01"), FROM_ROOM))) <= {float, str, bool}


def kinds(value: Any) -> list[type]:
    if is_dataclass(value):
        return [kind for one in fields(value) for kind in kinds(getattr(value, one.name))]
    if isinstance(value, tuple):
        return [kind for one in value for kind in kinds(one)]
    return [type(value)]


def test_a_picture_is_the_same_every_time() -> None:
    assert picture(harbour_solids("W06"), EXPLODED) == picture(harbour_solids("W06"), EXPLODED)


@pytest.mark.parametrize("hidden", [False, True])
def test_the_svg_holds_the_lines_and_the_marks(hidden: bool) -> None:
    drawn = picture(harbour_solids("W01"), EXPLODED)
    text = picture_svg(drawn, width=7.0, hidden=hidden)
    root = ElementTree.fromstring(text)
    space = "{http://www.w3.org/2000/svg}"
    assert root.get("width") == "504.00pt"
    assert {one.text for one in root.iter(f"{space}text")} == {one.text for one in drawn.marks}
    strokes = sum(one.get("d", "").count("M") for one in root.iter(f"{space}path")) - len(drawn.marks)
    assert strokes == sum(hidden or not line.is_hidden for line in drawn.lines)


def test_up_on_paper_is_up_in_the_svg() -> None:
    """SVG's y runs down: the head's mark stands at a smaller y than the apron's."""
    root = ElementTree.fromstring(picture_svg(picture(harbour_solids("W01"), EXPLODED), width=7.0))
    at = {one.text: float(one.get("y", "0")) for one in root.iter("{http://www.w3.org/2000/svg}text")}
    assert at["W01-5"] < at["W01-8"]


@pytest.mark.parametrize("mark", ["W02", "D01"])
def test_no_edge_is_lost(mark: str) -> None:
    """Seen and hidden lines of a part together are as long as its edges projected along the line of sight.

    An edge e seen along n shows e - (e·n) n; every edge belongs to two faces.
    """
    solids = harbour_solids(mark)
    drawn = picture(solids, EXPLODED)
    long = math.hypot(*EXPLODED.eye)
    sight = [one / long for one in EXPLODED.eye]
    for solid in solids.parts:
        asked = 0.0
        for facet in solid.facets:
            for loop in facet.loops:
                for one, two in zip(loop, (*loop[1:], loop[0]), strict=True):
                    edge = [b - a for a, b in zip(one, two, strict=True)]
                    along = sum(a * b for a, b in zip(edge, sight, strict=True))
                    asked += math.sqrt(max(sum(a * a for a in edge) - along * along, 0.0)) / 2
        found = sum(math.dist(*line.points) for line in drawn.lines if line.name == solid.name)
        assert found == pytest.approx(asked, abs=0.02)
