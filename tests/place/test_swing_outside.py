"""A sash that opens out and the wall outside: cladding beside a bare opening, beside casing, before a proud frame."""

from __future__ import annotations

import math
from typing import Any

import pytest
from cases import changed, job_of, placed
from gangs import ganged

from jambs.place.placement import Swing
from jambs.place.solve import place_windows
from jambs.place.swing import FINE_DEG, Obstacle

OUT = {
    "jamb_depth": "4 9/16",
    "frame_projection": "1 1/4",
    "frame_face": "2 1/2",
    "nailing_flange": "yes",
    "flange_width": "1 1/4",
    "sash": "casement out",
    "sash_thickness": "2",
    "sash_set_back": "-1/2",
    "sash_face": "2 1/2",
}
"""Its face stands 1/2 proud of the frame; it turns about the frame's inner edge, 2 1/2 from the outer one."""
FLUSH = {"flange_on": "outer sheathing"}
"""Flange on the trim plane: the frame stands 1 1/4 proud of it, and 1/2 past the face of the cladding, 3/4 thick."""


def swing(**paths: Any) -> Swing:
    found = placed(windows__fixed=OUT, openings__0__hinge="left", **paths).swing
    assert found is not None
    return found


def test_the_cladding_stops_a_sash_without_exterior_trim() -> None:
    """Closed form: frame 1 1/2 behind the trim plane, cladding 3/4, so its corner lies 2 1/4 - 1/2 before the hinge.

    The wall ends at the rough opening, 1/4 beside the frame and so 2 3/4 beside the hinge: 90° + atan(2 3/4 / 1 3/4).
    """
    found = swing(exterior_trim=None)
    assert found.stopped_by is Obstacle.WALL
    assert found.greatest_deg == pytest.approx(90 + math.degrees(math.atan2(2.75, 1.75)), abs=2 * FINE_DEG)


def test_a_frame_that_stands_past_the_cladding_lets_its_sash_fold_back() -> None:
    found = swing(exterior_trim=None, position=FLUSH)
    assert (found.greatest_deg, found.stopped_by) == (180.0, Obstacle.NOTHING)


@pytest.mark.parametrize(("thickness", "degrees"), [("1 3/4", 180.0), ("2", 90 + math.degrees(math.atan2(2.75, 0.25)))])
def test_casing_round_a_proud_frame_stops_the_sash_where_it_stands_past_the_hinge(
    thickness: str, degrees: float
) -> None:
    """The casing lies on the trim plane, 1/4 of joint beside a frame that is 1 1/4 proud; the hinge is 1/2 farther out.

    Casing of 1 3/4 comes to the hinge's own plane; of 2 it is 1/4 before it, 2 3/4 beside it.
    """
    casing = {**changed()["exterior_trim"]["outside"]["casing"], "thickness": thickness}
    found = swing(exterior_trim__outside__casing=casing, position=FLUSH)
    assert found.greatest_deg == pytest.approx(degrees, abs=2 * FINE_DEG)
    assert found.stopped_by is (Obstacle.NOTHING if degrees == 180 else Obstacle.CASING)


def test_casing_on_a_shallow_jamb_stops_the_sash_at_its_edge() -> None:
    """A jamb 1/2 deep: the casing stands from there to 1 1/2, the hinge 1/2 before the frame.

    The casing's edge lies two reveals of 1/4 beside the hinge and its face 1 before it: 90° + atan(1/2 / 1).
    """
    found = swing(position={"exterior_depth": "1/2"})
    assert found.stopped_by is Obstacle.CASING
    assert found.greatest_deg == pytest.approx(90 + math.degrees(math.atan2(0.5, 1)), abs=2 * FINE_DEG)


def test_a_frame_with_other_faces_outside_is_gone_by_from_there() -> None:
    """As above, the frame's face outside 1/4 narrower than inside: the casing's edge lies 3/4 beside the hinge."""
    found = placed(
        windows__fixed={**OUT, "exterior_frame_face": "2 1/4"},
        openings__0__hinge="left",
        position={"exterior_depth": "1/2"},
    ).swing
    assert found is not None and found.stopped_by is Obstacle.CASING
    assert found.greatest_deg == pytest.approx(90 + math.degrees(math.atan2(0.75, 1)), abs=2 * FINE_DEG)


def test_thick_cladding_stops_a_sash_that_clears_the_casing() -> None:
    """Frame flush in the trim plane and cladding 2 1/2 thick.

    Its edge lies 1/4 of joint and 4 1/2 of casing beside the frame, 7 1/4 beside the hinge, and 2 1/2 - 1/4 before it,
    which is 1/4 off the frame's face: 90° + atan(7 1/4 / 2 1/4). The casing, 1 thick and 2 3/4 beside the hinge,
    3/4 before it, would stop it at 90° + atan(2 3/4 / 3/4) = 164.7°.
    """
    layers = [*changed()["walls"]["main"]["layers"][:-1], {"material": "wood shingles", "thickness": "2 1/2"}]
    window = {**OUT, "frame_projection": "0", "sash_set_back": "-1/4"}
    found = placed(windows__fixed=window, openings__0__hinge="left", walls__main__layers=layers, position=FLUSH).swing
    assert found is not None and found.stopped_by is Obstacle.WALL
    assert found.greatest_deg == pytest.approx(90 + math.degrees(math.atan2(7.25, 2.25)), abs=2 * FINE_DEG)


def test_an_awning_meets_the_wall_over_its_head() -> None:
    """Head and sill share the 1/2 that the rough opening is taller: the same corner as at the side."""
    found = placed(windows__fixed={**OUT, "sash": "awning"}, exterior_trim=None).swing
    assert found is not None and found.stopped_by is Obstacle.WALL
    assert found.greatest_deg == pytest.approx(90 + math.degrees(math.atan2(2.75, 1.75)), abs=2 * FINE_DEG)


def test_a_sash_that_opens_in_does_not_meet_the_wall_outside() -> None:
    window = {**OUT, "sash": "casement in"}
    found = placed(windows__fixed=window, openings__0__hinge="left", exterior_trim=None).swing
    assert found is not None and found.stopped_by in (Obstacle.JAMB, Obstacle.CASING)


def test_of_ganged_units_the_outer_hinge_meets_the_wall_and_that_at_the_mull_does_not() -> None:
    units = [{"window": "out", "frame": "30 x 48", "hinge": hinge} for hinge in ("left", "left")]
    paths = ganged(
        windows__out={"like": "fixed", **OUT},
        openings__0__units=units,
        openings__0__transom=None,
        openings__0__transom_bar=None,
    )
    (found,) = place_windows(job_of(changed(**{**paths, "exterior_trim": None})))
    outer, inner = (unit.swing for unit in found.units)
    assert outer is not None and inner is not None
    assert outer.stopped_by is Obstacle.WALL
    assert inner.stopped_by is Obstacle.NOTHING
