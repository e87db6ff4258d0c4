"""Openings that are no rectangle in a measured wall, by hand: corners, boards, what is read and what is filled in.

The base window: interior depth 4 11/16, jambs 1/32 proud of the wall, boards on the grid of 1/32, exterior depth 1 1/2.
"""

from __future__ import annotations

import math
from typing import Any

import pytest
from cases import kit_of, placed
from random_openings import shaped
from rounds import inside_only, round_changes

from jambs.job.measured.measuring_points import Kind, Place, measure_places
from jambs.job.models.openings import Origin
from jambs.length import Units
from jambs.parts.board.cuts import Taper
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.board.touches import Scribe
from jambs.parts.kit.kit import Kit
from jambs.parts.readings.changed_since_words import Taken
from jambs.parts.readings.measured_against import MeasuredAgainst, without_void_readings
from jambs.parts.readings.reading_findings import ReadingsSetAside
from jambs.parts.readings.wall_findings import ArcIsScribed, WallTapers, WallTwists, WallTwistsTooMuch
from jambs.sides import Side

GABLE = {"kind": "gable", "sides": "30"}


def gable(**depths: Any) -> Kit:
    return shaped(GABLE, 36, 48, openings__0__measured={"date": "2026-06-01", **depths}).kit


def jambs(kit: Kit, where: Where = Where.INTERIOR) -> dict[str, Part]:
    kinds = (PartKind.EXTENSION_JAMB, PartKind.EXTERIOR_JAMB)
    return {part.position: part for part in kit.parts if part.where is where and part.kind in kinds}


def widths(part: Part) -> tuple[float, float]:
    """Width at the start and at the finish of a board, its corners counted clockwise."""
    taper = next((cut for cut in part.cuts if isinstance(cut, Taper)), None)
    return (taper.start_width, taper.finish_width) if taper else (part.width, part.width)


def depth_places(kit: Kit, kind: Kind = Kind.INTERIOR_DEPTH) -> list[Place]:
    return [place for place in measure_places(kit.placement.opening) if place.kind is kind]


LEANING = {
    "head": ["4 13/16", "-", "4 7/8", "-", "4 13/16"],
    "left": ["4 11/16", "-", "4 13/16"],
    "right": ["4 11/16", "4 3/4", "4 13/16"],
    "sill": ["4 11/16", "-", "4 11/16"],
}


def test_every_board_of_a_gable_tapers_between_its_two_corners() -> None:
    """Boards run clockwise: the right slope and the right leg come down from their deeper ends."""
    kit = gable(interior_depth=LEANING)
    found = {name: widths(part) for name, part in jambs(kit).items()}
    eave, peak, foot = 4 + 27 / 32, 4 + 29 / 32, 4 + 23 / 32
    assert found == {
        "left leg": (foot, eave),
        "head, left": (eave, peak),
        "head, right": (peak, eave),
        "right leg": (eave, foot),
        "bottom": (foot, foot),
    }
    assert kit.is_measured


def test_outside_the_boards_run_the_other_way_round() -> None:
    """Less 1/4 of sealant joint: the left leg, seen from outside at the right, comes down from its deeper end."""
    deep = {"head": ["1 5/8", "1 3/4", "1 5/8"], "left": ["1 1/2", "1 5/8"], "right": ["1 1/2", "1 5/8"]}
    kit = gable(exterior_depth={**deep, "sill": ["1 1/2", "1 1/2"]})
    found = {name: widths(part) for name, part in jambs(kit, Where.EXTERIOR).items()}
    assert found["left leg"] == (1 + 3 / 8, 1 + 1 / 4)
    assert found["head, left"] == (1 + 1 / 2, 1 + 3 / 8) and found["head, right"] == (1 + 3 / 8, 1 + 1 / 2)
    assert kit.outside_is_measured and not kit.is_measured


def test_each_leg_of_casing_outside_comes_down_on_the_sill_as_it_lies_at_its_own_side() -> None:
    """The trim plane is 1 1/2 deep at the left, 2 at the right: by 1/2 x tan 10° the sill has fallen farther there."""
    deep = {"head": ["1 1/2", "1 3/4", "2"], "left": ["1 1/2", "1 1/2"], "right": ["2", "2"], "sill": ["1 1/2", "2"]}
    kit = gable(exterior_depth=deep)
    casing = {one.side: one for one in kit.parts if one.kind is PartKind.CASING and one.where is Where.EXTERIOR}
    left, right = casing[Side.LEFT], casing[Side.RIGHT]
    assert right.length - left.length == pytest.approx(0.5 * math.tan(math.radians(10)))
    # Both end at one height, at the eaves: the left leg runs down from there, the right one up from its foot.
    assert right.seat.origin[1] + right.length == pytest.approx(left.seat.origin[1])


def test_a_corner_that_nobody_read_is_as_planned_and_what_lies_between_is_filled_in() -> None:
    """Peak and one eave are not read: the opening stays planned, and the eave is known from the leg."""
    kit = gable(interior_depth={**LEANING, "head": ["-", "-", "-", "4 7/8", "4 13/16"]})
    measured = kit.placement.opening.measured
    assert measured is not None and measured.interior_depth is not None and not kit.is_measured
    read, planned, between = Origin.READ, Origin.PLANNED, Origin.BETWEEN
    assert measured.interior_depth.origins[Side.HEAD] == (read, between, planned, read, read)
    assert measured.interior_depth.head == (4 + 13 / 16, 4.75, 4 + 11 / 16, 4 + 7 / 8, 4 + 13 / 16)
    (told,) = [one.sentence(Units.INCH) for one in kit.findings if one.code == "half-measured"]
    assert told == "Half measured: the depth at 3 (peak) is as planned, measure before cutting."


@pytest.mark.parametrize(
    ("shape", "frame", "words"),
    [
        (
            GABLE,
            (36, 48),
            "left leg top; head, left slope middle; peak; head, right slope middle; right leg top; right leg middle; "
            "sill right; sill middle; sill left; left leg middle",
        ),
        (
            "octagon",
            (26, 26),
            "left leg top; head left; head right; right leg top; right leg bottom; sill right; sill left; "
            "left leg bottom",
        ),
        (
            "triangle",
            (48, 30),
            "sill left; head, left slope middle; peak; head, right slope middle; sill right; sill middle",
        ),
    ],
    ids=["gable", "octagon", "triangle"],
)
def test_places_are_named_clockwise_from_the_upper_left(shape: Any, frame: tuple[int, int], words: str) -> None:
    """An edge shorter than 15 has no middle."""
    changes = inside_only(round_changes(shape, *frame))
    places = depth_places(kit_of(**changes))
    assert "; ".join(place.words for place in places) == words
    assert [place.number for place in places] == list(range(1, len(places) + 1))


@pytest.mark.parametrize(
    ("shape", "frame", "words"),
    [
        ("half round", (36, 60), ("spring point left", "crown", "spring point right", "sill right", "sill left")),
        ("full round", (36, 36), ("left side", "crown", "right side", "bottom of the round")),
        (
            {"kind": "quarter round", "high_side": "left"},
            (36, 36),
            ("top of the arc", "middle of the arc", "foot of the arc", "sill left"),
        ),
    ],
    ids=["half round", "full round", "quarter round"],
)
def test_an_arc_has_to_be_read_where_it_begins_and_ends_and_at_its_middle(
    shape: Any, frame: tuple[int, int], words: tuple[str, ...]
) -> None:
    kit = kit_of(**inside_only(round_changes(shape, *frame)))
    assert tuple(place.words for place in depth_places(kit) if place.is_corner) == words
    assert sum("of 4 steps" in place.words for place in depth_places(kit)) == 2 * (1 + (shape == "full round"))


def round_window(top: str, bottom: str) -> Kit:
    """A round window 36 across on the sheathing, its jambs as planned at half its height: 1 15/16 deep."""
    middle = "1 15/16"
    readings = {"head": [middle, "-", top, "-", middle], "sill": [middle, bottom, middle]}
    measured = {"openings__0__measured": {"date": "2026-06-01", "interior_depth": readings}}
    return kit_of(**inside_only(round_changes("full round", 36, 36)), **measured)


def test_an_arc_is_made_parallel_for_its_deepest_reading_and_the_rest_is_scribed_off() -> None:
    """1/8 deeper above and 1/16 less deep below: 2 1/16 + 1/32 proud all round, up to 3/16 comes off."""
    kit = round_window("2 1/16", "1 7/8")
    boards = [part for part in kit.parts if part.kind is PartKind.EXTENSION_JAMB]
    assert {part.width for part in boards} == {2 + 3 / 32} and len(boards) > 4
    assert {touch for part in boards for touch in part.touches} == {Scribe(most=3 / 16)}
    (told,) = [one for one in kit.findings if isinstance(one, ArcIsScribed)]
    assert (told.off, told.depth) == (3 / 16, 2 + 1 / 16)
    assert kit.is_measured


def test_an_even_wall_leaves_nothing_to_scribe() -> None:
    kit = round_window("1 15/16", "1 15/16")
    assert not any(part.touches for part in kit.parts if part.kind is PartKind.EXTENSION_JAMB)
    assert not any(isinstance(one, ArcIsScribed) for one in kit.findings)


def test_past_the_limit_of_a_taper_a_wall_is_at_fault_round_an_arc_too() -> None:
    """It is 1/2 here: 1/4 deeper above and 9/32 less deep below is more."""
    found = [one for one in round_window("2 3/16", "1 21/32").findings if isinstance(one, WallTapers)]
    assert [(one.along, one.taper) for one in found] == [("arc", 17 / 32)]
    assert not [one for one in round_window("2 3/16", "1 11/16").findings if isinstance(one, WallTapers)]


def test_corners_of_a_leaning_wall_lie_in_one_plane_and_a_peak_that_stands_out_does_not() -> None:
    """Feet, eaves 30 higher, the peak 48 high: leaning 1/8 in 30 the peak is 1/5 deeper; or 1/4 more."""
    flat = gable(interior_depth={**LEANING, "head": ["4 13/16", "-", "4 57/64", "-", "4 13/16"]})
    assert not [one for one in flat.findings if isinstance(one, WallTwists | WallTwistsTooMuch)]
    out = gable(interior_depth={**LEANING, "head": ["4 13/16", "-", "5 9/64", "-", "4 13/16"]})
    (told,) = [one for one in out.findings if isinstance(one, WallTwists | WallTwistsTooMuch)]
    assert told.twist == pytest.approx(_range_of_residuals(4 + 11 / 16, 4 + 13 / 16, 5 + 9 / 64))
    assert told.sentence(Units.INCH).startswith("The corners are ")


@pytest.mark.parametrize(
    ("shape", "head", "words"),
    [
        ("full round", ["2", "-", "2 3/16", "-", "2"], "The places"),
        ({"kind": "segment arch", "rise": "8"}, ["2", "-", "2 3/16", "-", "2"], "The corners and the places"),
    ],
)
def test_a_crown_that_stands_out_is_not_blamed_on_the_corners(shape: Any, head: list[str], words: str) -> None:
    """A ring has no corners; under an arch they lie in one plane, and its crown does not."""
    size = (36, 36) if shape == "full round" else (36, 48)
    readings = {"head": head, "sill": ["2", "2", "2"] if shape == "full round" else ["2", "2"]}
    measured = {"openings__0__measured": {"date": "2026-06-01", "interior_depth": readings}}
    kit = kit_of(**inside_only(round_changes(shape, *size)), **measured)
    (told,) = [one for one in kit.findings if isinstance(one, WallTwists)]
    assert told.sentence(Units.INCH).startswith(f"{words} along the arc are ")


def _range_of_residuals(foot: float, eave: float, peak: float) -> float:
    """Of a line over heights 0, 0, 30, 30, 48: the gable is symmetric, so that across it is level."""
    heights, depths = (0, 0, 30, 30, 48), (foot, foot, eave, eave, peak)
    middle, mean = sum(heights) / 5, sum(depths) / 5
    slope = sum((y - middle) * (d - mean) for y, d in zip(heights, depths, strict=True)) / sum(
        (y - middle) ** 2 for y in heights
    )
    off = [d - mean - slope * (y - middle) for y, d in zip(heights, depths, strict=True)]
    return max(off) - min(off)


def test_readings_of_another_shape_are_set_aside() -> None:
    """Read at a gable with eaves 30 high: they are void where the eaves stand at 28, and hold where nothing changed."""
    taken = {"openings__0__measured": {"date": "2026-06-01", "interior_depth": LEANING}}
    at_30 = placed(**_of_gable("30"), **taken)
    was = {Taken.INSIDE: MeasuredAgainst.of(at_30)}
    assert without_void_readings(at_30, was) == at_30
    told = without_void_readings(placed(**_of_gable("28"), **taken), was).findings[0]
    assert isinstance(told, ReadingsSetAside)
    assert 'since then the shape changed from gable sides 30" to gable sides 28".' in told.sentence(Units.INCH)


def _of_gable(sides: str) -> dict[str, Any]:
    return {
        "openings__0__rough_opening": None,
        "openings__0__shape": {"kind": "gable", "sides": sides},
        "openings__0__frame": "36 x 48",
    }
