"""The outside of an opening that is no rectangle: courses cut along its trim, metal where an edge is level."""

from __future__ import annotations

from typing import Any

import pytest
from arches import arched
from cases import kit_of

from jambs.courses.elevation import across_at, elevation_of
from jambs.courses.views import clear_runs
from jambs.flashing.blank import BlankKind
from jambs.flashing.make import make_flashings
from jambs.job.models.outside import ElevationEntry, FlashingEntry
from jambs.length import Units
from jambs.parts.kit.kit import Kit

SOUTH = {"start_line": "0", "eave": "120", "width": "200"}
RAKED = {"kind": "raked", "left": "30", "right": "48"}


def kit(shape: Any, frame: str, **more: Any) -> Kit:
    changes = {"openings__0__rough_opening": None, "openings__0__shape": shape, "openings__0__frame": frame}
    return kit_of(**{**changes, **more})


def blanks(made: Kit) -> dict[BlankKind, float]:
    entry = FlashingEntry.model_validate({}, context={"units": Units.INCH})
    return {blank.kind: blank.between for blank in make_flashings(made, entry, Units.INCH).blanks}


def test_no_metal_is_bent_for_a_head_that_slopes_and_the_rest_of_it_stays() -> None:
    assert set(blanks(kit(RAKED, "24 x 48"))) == {BlankKind.SILL_PAN, BlankKind.SILL_FLASHING}
    assert BlankKind.HEAD_FLASHING in blanks(kit_of())


def test_the_pan_of_an_octagon_lies_on_its_level_edge() -> None:
    """30 and 1/4 of shims all round: across the flats 30 1/2, over 1 + √2 its edge (geometry)."""
    found = blanks(kit("octagon", "30 x 30", exterior_trim__outside__sill=None))
    assert found[BlankKind.SILL_PAN] == pytest.approx(30.5 / (1 + 2**0.5))


def test_a_course_line_stops_at_the_sloping_trim() -> None:
    """Seen from outside the low side is at the right. The trim's outer edge rises 3 over 4, as the head does.

    From outside it runs up from right to left: at 36 over the frame's bottom and at 39 its right ends are 4 apart.
    """
    made = kit(RAKED, "24 x 48", elevations={"south": SOUTH}, openings__0__elevation="south")
    entry = ElevationEntry.model_validate(SOUTH, context={"units": Units.INCH})
    (one,) = elevation_of("south", entry, [made]).openings
    assert one.outlines is not None
    bottom = one.frame[1]
    ends = [one.covered(bottom + height) for height in (40.0, 43.0)]
    assert ends[0] is not None and ends[1] is not None
    assert ends[0][1] - ends[1][1] == pytest.approx(4.0)
    # The casing stands in from the end of the sill by its horn of 1.
    assert ends[0][0] == ends[1][0] == pytest.approx(one.trim[0] + 1.0)
    assert clear_runs((0.0, 200.0), bottom + 43.0, (one,)) == [(0.0, ends[1][0]), (ends[1][1], 200.0)]
    # The highest corner of the trim is that of its box: head lines are planned to it.
    assert max(y for _, y in one.outlines[1]) == pytest.approx(one.trim[3])


def test_courses_stop_at_the_round_trim() -> None:
    """A half round of 36 over legs of 42: the outer edge of its casing is a half circle.

    A line over the spring line is as long as the chord there, ``2 √(r² - h²)``; its crown is the head of its box.
    """
    made = arched(elevations={"south": SOUTH}, openings__0__elevation="south").kit
    entry = ElevationEntry.model_validate(SOUTH, context={"units": Units.INCH})
    (one,) = elevation_of("south", entry, [made]).openings
    assert one.outlines is not None
    spring, radius = one.frame[1] + 42.0, one.trim[3] - one.frame[1] - 42.0
    for height in (6.0, 12.0):
        found = one.covered(spring + height)
        assert found is not None
        assert found[1] - found[0] == pytest.approx(2 * (radius**2 - height**2) ** 0.5, abs=2e-3)
    assert set(blanks(made)) == {BlankKind.SILL_PAN, BlankKind.SILL_FLASHING}


def test_a_line_that_misses_an_outline_is_not_cut() -> None:
    triangle = ((0.0, 0.0), (10.0, 0.0), (5.0, 5.0))
    assert across_at(triangle, 2.5) == (2.5, 7.5)
    assert across_at(triangle, 6.0) is None
