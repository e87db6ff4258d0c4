"""What papers say of flared jambs round arcs in flat segments: steps, corners, setting out, answers to readings."""

from __future__ import annotations

import math

import pytest
from arches import arched
from flat_segments import flat, flat_changes, flat_on_stool
from measured_kits import measured
from random_kits import RandomKit, kit_from
from rounds import inside_only

from jambs.parts.kit.cut_kit import CutKit, PlannedForKit, as_cut
from jambs.parts.words.corner_words import jamb_corner_words
from jambs.sheets.full_scale import templates_of
from jambs.sheets.house import rip_text
from jambs.sheets.install_steps import inside_steps
from jambs.sheets.reading_answer import _boards
from jambs.sheets.record import opening_record
from jambs.sheets.template import Template


def cut(made: RandomKit) -> CutKit:
    return as_cut(made.kit, PlannedForKit())


def steps(made: RandomKit) -> str:
    return " ".join(inside_steps(cut(made), made.job.shop))


def set_out(made: RandomKit) -> list[Template]:
    return [one for one in templates_of(cut(made), grid=made.job.shop.grid) if "flat segments" in one.title]


def test_the_box_is_built_over_both_curves() -> None:
    """At the room 15 5/8 + 1.96875 tan 15° = 16 5/32, twice that wide; 56 5/8 + 1 5/32 less the sill's 3/4 high."""
    said = steps(flat("half round"))
    assert "its flat segments joined with splines or biscuits and glue, their corners on the curve" in said
    assert (
        'All of this at the frame edge; at the room edge it is 32 5/16" wide and 55 25/32" high, the corners of its '
        'segments on a radius of 16 5/32": draw that curve too, the box opens out to it.'
    ) in said
    assert "segments glued up and fair" not in said.split("Case")[0]


def test_a_ring_of_flat_segments_is_taped_level() -> None:
    said = steps(flat("full round"))
    assert "join its flat segments with splines or biscuits and glue, their corners on the circle" in said
    assert 'tape 31 1/4" level.' in said and "both slants" not in said
    assert "Check the depth again at top and bottom and at both sides, square to the wall" in said


def test_a_square_box_round_an_arch_says_nothing_of_a_room_edge() -> None:
    said = steps(arched())
    assert "at the room edge" not in said and "flat segments" not in said


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("half round", "mitered: flat segments of the curve, and those at its ends with the legs"),
        ("half round without legs", "mitered: flat segments of the curve, which stand on the other boards"),
        ("full round", "mitered: flat segments of the curve"),
    ],
)
def test_how_flat_segments_meet(name: str, told: str) -> None:
    assert jamb_corner_words(flat(name).kit).split("; ")[-1] == told


def test_flat_segments_stand_on_a_stool_in_words() -> None:
    assert jamb_corner_words(flat_on_stool("half round without legs").kit).endswith("which stand on the stool")


def test_the_setting_out_has_half_of_both_edges() -> None:
    """From the crown to the right: half a segment and six more, as wide as the radius at the room."""
    (one,) = set_out(flat("half round"))
    at_frame, at_room = one.cut
    wide = 15.625 + 1.96875 * math.tan(math.radians(15))
    assert one.title == "W1-1 to W1-13: flat segments, their faces at both edges"
    assert "turned over on its center line it is the other half" in one.note and '15 5/8" and 16 5/32"' in one.note
    assert len(at_frame) == len(at_room) == len(one.broken) == 8
    assert one.size == pytest.approx((wide, wide * math.cos(math.pi / 26)))
    assert at_room[-1] == pytest.approx((wide, 0.0)) and at_frame[-1] == pytest.approx((15.625, 0.0))
    assert [math.dist(point, (0.0, 0.0)) for point in at_room[1:]] == pytest.approx([wide] * 7)
    assert [math.dist(*joint) for joint in one.broken[1:]] == pytest.approx([wide - 15.625] * 7)


def test_of_a_quarter_round_the_lower_half_is_set_out() -> None:
    """Nine segments: five of them and both their ends; the arc falls to the sill at the right."""
    (one,) = set_out(flat("quarter round"))
    assert "the others are alike" in one.note and len(one.cut[0]) == 6


def test_an_arch_that_does_not_flare_has_no_setting_out() -> None:
    assert set_out(arched()) == []


def test_segments_and_legs_of_one_printed_width_are_told_once() -> None:
    """Legs lean by 15°, segments by 14.9°: both are ripped to 8 5/16 in a deep wall, 2 7/32 here."""
    made = flat("half round", interior_trim__inside__flare=dict.fromkeys(("sides", "head", "sill"), "15 deg"))
    record = opening_record(cut(made), grid=made.job.shop.grid)
    assert " to " not in rip_text(record)


def test_an_answer_to_readings_has_one_width_for_all_segments() -> None:
    made = measured(flat("half round"), (0.03, 0.0, 0.0))
    words = [one["words"] for one in _boards(made.kit, made.job)]
    assert words == ["left leg", "right leg", "bottom", "arc"]
    ring = measured(kit_from(inside_only(flat_changes("full round"))), (0.03, 0.0, 0.0))
    assert [one["words"] for one in _boards(ring.kit, ring.job)] == ["arc"]
