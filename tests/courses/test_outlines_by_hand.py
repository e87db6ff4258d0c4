"""What a shaped opening covers of a level line on the wall, by hand."""

from __future__ import annotations

import math

import pytest
from arches import arched
from cases import changed, job_of
from houses_outside import elevation_entry, opening

from jambs.courses.elevation import across_at, elevation_of
from jambs.courses.views import clear_runs
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows

TENT = ((0.0, 0.0), (0.0, 2.0), (4.0, 6.0), (8.0, 2.0), (8.0, 0.0))
"""A gable of 12 in 12, 8 wide, its sides 2 high and its peak 6."""


@pytest.mark.parametrize(
    ("height", "covered"),
    [
        (-0.5, None),
        (0.0, (0.0, 8.0)),
        (1.0, (0.0, 8.0)),
        (2.0, (0.0, 8.0)),
        (5.0, (3.0, 5.0)),
        (6.0, (4.0, 4.0)),
        (6.5, None),
    ],
)
def test_where_a_level_line_enters_and_leaves_an_outline(height: float, covered: tuple[float, float] | None) -> None:
    """Whichever corner the outline begins with."""
    for first in range(len(TENT)):
        assert across_at((*TENT[first:], *TENT[:first]), height) == covered


def test_a_window_and_all_of_its_trim_on_the_wall() -> None:
    """10 from the corner, 36 up. Casing 4 1/2 from 2 inside the frame: 2 1/2 past it; the sill's horns 1 farther.

    The head casing ends 4 1/2 over 45 1/2: 50 over the frame's bottom; the sill hangs below it.
    """
    job = job_of(changed(openings__0__faces="north", openings__0__from_left="10"))
    kits = [make_kit(one, job) for one in place_windows(job)]
    (found,) = elevation_of("north", elevation_entry(faces="north"), kits).openings
    assert found.frame == (10.0, 36.0, 45.5, 83.5)
    assert (found.trim[0], found.trim[2], found.trim[3]) == pytest.approx((6.5, 49.0, 86.0))
    assert found.trim[1] == found.sill and found.trim[1] < 35.0
    assert found.head == pytest.approx(86.375)


def test_the_trim_round_an_arch_is_as_far_out_as_beside_its_legs() -> None:
    """A half round of 36 x 60 over legs of 42: a radius of 18 about a point 18 in, 42 over the frame's bottom."""
    kit = arched(openings__0__faces="north", openings__0__from_left="10").kit
    (found,) = elevation_of("north", elevation_entry(faces="north"), [kit]).openings
    assert found.outlines is not None
    frame, trim = found.outlines
    past = max(x for x, _ in trim) - 46.0
    center = (28.0, found.frame[1] + 42.0)
    for outline, radius in ((frame, 18.0), (trim, 18.0 + past)):
        head = [point for point in outline if point[1] > center[1] + 0.5]
        assert len(head) > 4
        assert [math.dist(point, center) for point in head] == pytest.approx([radius] * len(head), abs=1e-6)
    assert past > 1.0


@pytest.mark.parametrize(
    ("lefts", "runs"),
    [
        ((), [(0.0, 100.0)]),
        ((20.0,), [(0.0, 20.0), (60.0, 100.0)]),
        ((0.0, 60.0), [(40.0, 60.0)]),  # one at each corner of the wall
        ((30.0, 20.0), [(0.0, 20.0), (70.0, 100.0)]),  # trims that lie over each other
        ((20.0, 60.0), [(0.0, 20.0)]),  # trims that touch
    ],
)
def test_a_course_line_runs_between_the_trims(lefts: tuple[float, ...], runs: list[tuple[float, float]]) -> None:
    """A wall 100 wide, trims 40 wide from 30 to 84 5/8 up."""
    openings = tuple(opening(f"W{left:g}", 30.0, 85.0, left) for left in lefts)
    assert clear_runs((0.0, 100.0), 50.0, openings) == runs
    for height in (84.625, 30.0):
        assert clear_runs((0.0, 100.0), height, openings) == [(0.0, 100.0)]


def test_an_opening_of_unknown_height_stands_in_no_elevation() -> None:
    job = job_of(changed(openings__0__sill_height=None, openings__0__faces="north"))
    kits = [make_kit(one, job) for one in place_windows(job)]
    found = elevation_of("north", elevation_entry(faces="north"), kits)
    assert (found.openings, found.unplaced) == ((), ("W1",))


def test_a_shaped_window_without_trim_covers_its_frame_alone() -> None:
    """24 wide, 30 high at the right and 48 at the left from outside, 36 over the floor; 10 from the corner."""
    paths = {
        "openings__0__frame": "24 x 48",
        "openings__0__rough_opening": None,
        "openings__0__shape": {"kind": "raked", "left": "30", "right": "48"},
        "openings__0__faces": "north",
        "openings__0__from_left": "10",
        "exterior_trim": None,
    }
    job = job_of(changed(**paths))
    kits = [make_kit(one, job) for one in place_windows(job)]
    (found,) = elevation_of("north", elevation_entry(faces="north"), kits).openings
    frame = ((34.0, 36.0), (34.0, 66.0), (10.0, 84.0), (10.0, 36.0))
    assert found.outlines is not None and found.outlines[0] == frame
    assert [xy for point in found.outlines[1] for xy in point] == pytest.approx([xy for point in frame for xy in point])


def test_a_raked_window_covers_its_trim_and_is_seen_mirrored() -> None:
    """24 wide, 30 high at the left and 48 at the right from inside, 36 over the floor; 10 from the corner outside.

    Outside the high side is the left one. Legs: frame face 2 1/2 less reveals of 1/4 and 1/4, so that casing of 4 1/2
    reaches 2 1/2 past the frame; the head's as far, square to its slope of 3 in 4, so 2 1/2 x 5/4 = 3 1/8 higher.
    """
    paths = {
        "openings__0__frame": "24 x 48",
        "openings__0__rough_opening": None,
        "openings__0__shape": {"kind": "raked", "left": "30", "right": "48"},
        "interior_trim__inside__casing__width": "7",  # reaches farther, and is not seen from outside
        "openings__0__faces": "north",
        "openings__0__from_left": "10",
    }
    job = job_of(changed(**paths))
    kits = [make_kit(one, job) for one in place_windows(job)]
    (found,) = elevation_of("north", elevation_entry(faces="north"), kits).openings
    assert found.outlines is not None
    frame, trim = found.outlines
    assert frame == ((34.0, 36.0), (34.0, 66.0), (10.0, 84.0), (10.0, 36.0))
    # Over the right leg, 2 1/2 past the frame, the head line has fallen by 3/4 x 2 1/2; over the left one it has risen.
    assert trim[1] == pytest.approx((36.5, 66.0 - 1.875 + 3.125))
    assert trim[2] == pytest.approx((7.5, 84.0 + 1.875 + 3.125))
    # Below it ends with the sill.
    assert trim[0][1] == trim[3][1] == pytest.approx(found.trim[1]) and found.trim[1] < 35.0
    # Above all of it nothing is covered; at 80 the slope is (80 - 3 1/8 - 66) x 4/3 in from the frame's right edge.
    assert found.covered(90.0) is None
    assert found.covered(80.0) == pytest.approx((7.5, 34.0 - (80.0 - 3.125 - 66.0) * 4 / 3))
