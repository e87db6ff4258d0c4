"""A sash that tilts and turns, against the geometry of rectangles: it laps the frame, so the jamb has to clear it.

That its stay lets the head in by some 6 in is common practice, no source.
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from cases import placed

from jambs.job.models.fields import Size
from jambs.length import Units
from jambs.place.checks import tilt_findings
from jambs.place.placement import Placement
from jambs.place.sash import tilt_at, tilt_stay_deg

TILT_AND_TURN = {
    "frame_depth": "2 3/4",
    "flange_set_back": "1 1/4",
    "frame_face": "2 1/2",
    "nailing_flange": "no",
    "sash": "tilt and turn",
    "sash_thickness": "2 3/4",
    "sash_set_back": "-1/2",
    "sash_overlap": "1/2",
}


def window(reveal: str, **keys: str | None) -> Placement:
    sheet = {key: value for key, value in {**TILT_AND_TURN, **keys}.items() if value is not None}
    return placed(windows__fixed=sheet, openings__0__hinge="left", interior_trim__inside__frame_reveal=reveal)


def sentences(found: Placement) -> str:
    return "\n".join(one.sentence(Units.INCH) for one in found.findings)


def test_a_jamb_over_the_lapping_sash_keeps_it_shut() -> None:
    """The sash's edge is 2 from the frame's outer edge, the jamb's face 2 1/4: they lie over each other by 1/4."""
    found = window("1/4")
    assert found.swing is not None and found.swing.greatest_deg == pytest.approx(0, abs=0.1)
    assert "The sash cannot open: it meets the extension jamb at once" in sentences(found)
    assert "Tilted, the sash meets the extension jamb at 0°" in sentences(found)


def test_a_jamb_clear_of_the_lapping_sash_lets_it_turn_and_tilt() -> None:
    """The jamb's face is 1 7/8 from the frame's outer edge, the sash's edge 2: clear by 1/8."""
    found = window("5/8")
    assert found.swing is not None and found.swing.greatest_deg >= 90
    assert "sash" not in sentences(found)


def test_the_angle_of_the_tilt() -> None:
    """By hand: 6 in at the head of a frame 47 1/2 high is asin(6 / 47.5) = 7.26 degrees."""
    found = window("5/8")
    assert tilt_stay_deg(found.opening) == pytest.approx(math.degrees(math.asin(6 / 47.5)))


@pytest.mark.parametrize(("height", "stay"), [(6.0, 90.0), (12.0, 30.0)])
def test_a_sash_no_higher_than_its_stay_lets_in_leans_by_a_right_angle_and_no_more(height: float, stay: float) -> None:
    """asin(6 / 12) = 30°. Without a jamb, 1/4 behind the frame's edge, its foot stops against the frame at 90°."""
    found = window("5/8", sash_set_back="1/4", sash_overlap=None)
    low = replace(found.opening, frame=Size(width=found.opening.frame.width, height=height))
    opened = tilt_at(low, interior_depth=0.0)
    assert tilt_stay_deg(low) == pytest.approx(stay)
    assert opened is not None and opened.degrees == 90.0
    assert tilt_findings(low, 0.0) == []


def test_a_sash_lower_than_its_stay_lets_in_leans_by_a_right_angle_at_most() -> None:
    opening = window("5/8").opening
    low = replace(opening, frame=Size(width=opening.frame.width, height=4.0))
    assert tilt_stay_deg(low) == pytest.approx(90.0)


def test_only_such_a_sash_tilts() -> None:
    found = window("5/8", sash="casement in")
    assert tilt_at(found.opening, interior_depth=found.interior_depth) is None
    assert "Tilted" not in sentences(window("1/4", sash="casement in"))


def test_sizes_that_were_assumed_are_named_where_the_swing_rests_on_them() -> None:
    found = window("1/4", sash_thickness=None, sash_set_back=None)
    assert "rests on sizes that are assumed: give sash_thickness and sash_set_back." in sentences(found)
    assert "rests on sizes" not in sentences(window("1/4"))


def test_an_assumed_flange_on_a_buck_is_asked_for() -> None:
    flanged = {"nailing_flange": "yes", "flange_width": None}
    assert "give flange_width before the buck is sawn" in sentences(window("5/8", **flanged))
    assert "flange_width" not in sentences(window("5/8", **{**flanged, "flange_width": "1 1/4"}))


def test_without_a_side_for_its_hinges_it_is_not_to_be_ordered() -> None:
    found = placed(windows__fixed=TILT_AND_TURN, interior_trim__inside__frame_reveal="5/8")
    assert "No hinge side is stated" in sentences(found)
