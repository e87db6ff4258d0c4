"""The outline of a frame against school geometry: corners, turns, areas, and paths that lie off it."""

from __future__ import annotations

import math
import re
from typing import Any

import pytest
from cases import placed
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError

from jambs.job.models.fields import Size
from jambs.job.models.path import area_of, corner_turn_deg, corners_of, has_collapsed, outset, shaped_path
from jambs.job.models.path_edge import FramePath
from jambs.job.models.shape import ShapeEntry, ShapeKind
from jambs.job.models.shape_fits import misfit
from jambs.length import Units
from jambs.place.frame_path import path_at, rough_path
from jambs.sides import Side


def path_of(width: float, height: float, **shape: object) -> FramePath:
    entry = ShapeEntry.model_validate(shape) if shape else None
    return shaped_path(Size(width=width, height=height), entry)


def turns(path: FramePath) -> list[float]:
    return [corner_turn_deg(path, i) for i in range(len(path))]


def even(out: float) -> dict[Side, float]:
    return dict.fromkeys(Side, out)


def test_a_frame_without_a_shape_is_a_rectangle() -> None:
    path = path_of(30.0, 40.0)
    assert corners_of(path) == ((0.0, 0.0), (0.0, 40.0), (30.0, 40.0), (30.0, 0.0))
    assert [edge.side for edge in path] == [Side.LEFT, Side.HEAD, Side.RIGHT, Side.SILL]
    assert turns(path) == [90.0] * 4
    grown = outset(path, {Side.LEFT: 1.0, Side.HEAD: 2.0, Side.RIGHT: 3.0, Side.SILL: 4.0})
    assert corners_of(grown) == ((-1.0, -4.0), (-1.0, 42.0), (33.0, 42.0), (33.0, -4.0))


def test_a_raked_head_turns_by_a_right_angle_less_and_more_its_slope() -> None:
    path = path_of(24.0, 48.0, kind="raked", left=30, right=48)
    slope = math.degrees(math.atan2(18, 24))
    assert turns(path) == pytest.approx([90, 90 - slope, 90 + slope, 90])
    assert area_of(path) == pytest.approx(24 * (30 + 48) / 2)
    assert path[1].length == 30.0  # 3-4-5


def test_a_gable_of_twelve_in_twelve_is_square_at_its_peak() -> None:
    path = path_of(32.0, 40.0, kind="gable", sides=24)
    assert turns(path) == pytest.approx([90, 45, 90, 45, 90])
    assert [(edge.side, edge.run, edge.runs) for edge in path[1:3]] == [(Side.HEAD, 1, 2), (Side.HEAD, 2, 2)]


def test_a_regular_octagon_has_eight_equal_edges_that_turn_by_45_degrees() -> None:
    path = path_of(24.0, 24.0, kind="octagon")
    assert turns(path) == pytest.approx([45.0] * 8)
    # The side of a regular octagon is its width over 1 + √2 (geometry).
    assert [edge.length for edge in path] == pytest.approx([24 / (1 + math.sqrt(2))] * 8)
    assert [edge.run for edge in path if edge.side is Side.SILL] == [3, 2, 1]  # counted from the left


@given(st.floats(10, 60), st.floats(10, 60), st.floats(0.1, 4.0))
def test_a_path_all_round_is_as_much_larger_as_its_edges_and_corners_say(low: float, more: float, out: float) -> None:
    """Offset by ``out`` an area grows by perimeter × out and, at each corner, out² × tan(turn/2) (geometry)."""
    path = path_of(36.0, low + more, kind="raked", left=low, right=low + more)
    grown = outset(path, even(out))
    around = sum(edge.length for edge in path)
    corners = sum(math.tan(math.radians(turn) / 2) for turn in turns(path))
    assert area_of(grown) == pytest.approx(area_of(path) + around * out + corners * out**2)
    assert turns(grown) == pytest.approx(turns(path))
    back = outset(grown, even(-out))
    assert [corner for point in corners_of(back) for corner in point] == pytest.approx(
        [corner for point in corners_of(path) for corner in point], abs=1e-9
    )


def corners_at(left: float, right: float, bottom: float, top: float, **shape: Any) -> tuple[tuple[float, float], ...]:
    opening = placed(openings__0__frame="24 x 48", openings__0__rough_opening=None, **shape).opening
    return corners_of(path_at(opening, left=left, right=right, bottom=bottom, top=top))


def test_a_path_at_other_places_has_its_sides_there() -> None:
    assert corners_at(2.0, 23.0, -1.0, 45.0) == ((2.0, -1.0), (2.0, 45.0), (23.0, 45.0), (23.0, -1.0))


def test_a_raked_path_at_other_places_has_its_head_square_to_itself_as_far_out() -> None:
    """18 in 24 is 3-4-5: the head 4 in lower, square to itself, comes down by 4 x 5/4 = 5; over 2 in it rises 1 1/2."""
    raked = {"openings__0__shape": {"kind": "raked", "left": "30", "right": "48"}, "exterior_trim": None}
    found = corners_at(2.0, 22.0, 1.0, 44.0, **raked)
    assert [one for point in found for one in point] == pytest.approx([2, 1, 2, 26.5, 22, 41.5, 22, 1])


def test_a_rough_opening_lies_a_shim_space_off_each_side_and_more_where_asked() -> None:
    """By hand: 35 1/2 x 47 1/2 in 36 x 48 leaves 1/4 on each side; a door's frame stands on its sill."""
    assert corners_of(rough_path(placed()))[::2] == ((-0.25, -0.25), (35.75, 47.75))
    assert corners_of(rough_path(placed(), 1.5))[::2] == ((-1.75, -1.75), (37.25, 49.25))
    assert corners_of(rough_path(placed(openings__0__rough_opening="36 1/2 x 48")))[::2] == (
        (-0.5, -0.25),
        (36.0, 47.75),
    )


def test_a_path_moved_in_too_far_has_collapsed() -> None:
    path = path_of(24.0, 24.0, kind="octagon", cut=4)
    assert not has_collapsed(outset(path, even(-2.0)), path)
    assert has_collapsed(outset(path, even(-12.0)), path)


@pytest.mark.parametrize(
    ("width", "height", "shape", "said"),
    [
        (
            24,
            48,
            {"kind": "gable", "sides": 47.9},  # tan 0.48° = 0.1 / 12: the two halves turn by 0.95° at the peak
            "the gable is so flat, or its peak so near a side, that two edges lie in a line; write another peak",
        ),
        (
            24,
            48,
            {"kind": "raked", "left": 30, "right": 46},
            'raked to 46" at its high side, but the frame is 48" high',
        ),
        (24, 48, {"kind": "raked", "left": 48, "right": 48}, "which is a rectangle; leave shape out"),
        (24, 48, {"kind": "raked", "left": 2, "right": 48}, 'its low side comes out 2" long; jamb and casing need 4"'),
        (24, 48, {"kind": "gable", "sides": 48}, "write sides lower than the frame"),
        (24, 48, {"kind": "gable", "sides": 30, "peak_from_left": 24}, "write a place between its sides, or raked"),
        (24, 30, {"kind": "octagon"}, 'a regular octagon is as wide as high, the frame is 24" x 30"'),
        (24, 24, {"kind": "octagon", "cut": 11}, 'an edge comes out 2" long; jamb and casing need 4"'),
        (
            36,
            30,
            {"kind": "full round"},
            'a full round is as wide as high, the frame is 36" x 30"; write the frame 36" x 36"',
        ),
        (
            36,
            30,
            {"kind": "quarter round", "high_side": "left"},
            'a quarter round is as wide as high, the frame is 36" x 30"',
        ),
        (
            36,
            16,
            {"kind": "half round"},
            'is a half round 36" wide and 16" high, lower than its half circle, 18"; write the frame 18" high, without '
            "legs, or segment arch",
        ),
        (
            36,
            20,
            {"kind": "half round"},
            'a leg under the arc comes out 2" long; jamb and casing need 4": write the frame 22" high or more, or 18", '
            "without legs",
        ),
        (36, 30, {"kind": "segment arch", "rise": 18}, "which is half its width; write half round"),
        (
            36,
            18,
            {"kind": "segment arch", "rise": 18},
            "which is half its width; write half round, which needs no legs",
        ),
        (
            36,
            20,
            {"kind": "segment arch", "rise": 20},
            'rises 20", more than half its width, 18": its arc would bulge past the legs; write half round, and the '
            'frame 18" high, without legs',
        ),
        (
            36,
            30,
            {"kind": "segment arch", "spring_line": 32},
            'springs 32" up, over the crown of a frame 30" high; write a spring_line under it, so that the rise is '
            "what is left, or the rise alone",
        ),
        (
            36,
            30,
            {"kind": "ellipse arch", "spring_line": 20, "rise": 12},
            'rises 12" from a spring line 20" up, which does not close at the crown of a frame 30" high; leave out '
            'rise, which is then 10", or spring_line',
        ),
        # Half of 36 by tan 22.5°: 7.456.
        (
            36,
            7.375,
            {"kind": "segment arch", "rise": "7 3/8"},
            'rises 7 3/8" without legs, so flat that jamb and casing end in slivers on the sill; write the frame '
            '7 29/64" high or more, or 11 3/8" and rise: 7 3/8", with legs',
        ),
        (36, 48, {"kind": "ellipse arch", "rise": "17 1/4"}, "which is no ellipse; write half round"),
        (
            36,
            48,
            {"kind": "ellipse arch", "rise": 5},
            'three arcs make an ellipse here from a rise of 5 13/32" on: write segment arch',
        ),
        (
            48,
            6,
            {"kind": "triangle"},
            'a corner is sharper than 15°, where no board ends; write the frame 6 7/16" high or more',
        ),
        (48, 30, {"kind": "triangle", "peak_from_left": 50}, 'peak_from_left is 50" in a frame 48" wide'),
    ],
)
def test_a_shape_that_cannot_be_is_told_with_what_would_do(
    width: float, height: float, shape: dict[str, object], said: str
) -> None:
    entry = ShapeEntry.model_validate(shape)
    assert said in misfit(entry, Size(width=width, height=height), Units.INCH)


@pytest.mark.parametrize(
    ("width", "height", "shape"),
    [
        (36, 36, "full round"),
        (36, 36, "round"),
        (36, 18, "half round"),
        (36, 22, "half round"),
        (30, 30, {"kind": "quarter round", "high_side": "right"}),
        (36, 48, {"kind": "ellipse arch", "rise": 17}),
        (36, 7.5, {"kind": "segment arch", "rise": "7 1/2"}),
        (36, 48, {"kind": "ellipse arch", "rise": "5 7/16"}),
        (48, 6.5, "triangle"),
        (48, 30, {"kind": "triangle", "peak_from_left": 48}),
    ],
)
def test_a_round_or_a_triangle_that_can_be_is_not_complained_of(width: float, height: float, shape: object) -> None:
    assert misfit(ShapeEntry.model_validate(shape), Size(width=width, height=height), Units.INCH) == ""


@pytest.mark.parametrize(
    ("shape", "said"),
    [
        ("oval", "is oval, which is not made here; made are full, half and quarter rounds"),
        ("quarter round", "quarter round needs its high_side, left or right"),
        ({"kind": "full round", "rise": 8}, "full round takes no size but the frame's, not rise"),
        ("ellipse arch", "ellipse arch needs its rise or its spring_line"),
        ({"kind": ["triangle"]}, "kind"),
        ({"kind": {"a": 1}}, "kind"),
        (["triangle"], "kind"),
    ],
)
def test_what_a_shape_lacks_is_told(shape: object, said: str) -> None:
    with pytest.raises(ValidationError, match=re.escape(said)):
        ShapeEntry.model_validate(shape)


@pytest.mark.parametrize("shape", [{"kind": "raked", "left": 30, "right": 48}, {"kind": "gable", "sides": 30}])
def test_a_shape_that_can_be_is_not_complained_of(shape: dict[str, object]) -> None:
    assert not misfit(ShapeEntry.model_validate(shape), Size(width=24, height=48), Units.INCH)
    assert ShapeEntry.model_validate("octagon").kind is ShapeKind.OCTAGON
