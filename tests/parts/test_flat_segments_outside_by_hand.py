"""Exterior jambs that flare round arcs, in flat segments, worked by hand; angles as of a regular frame that leans.

The base case: frame 36 wide, faces 2 1/2, reveal 1/4, so the clear radius is 18 - 2 1/4 = 15 3/4 at the frame; the
jambs begin 1/4 off the frame and, on the sheathing, are 4 deep, so that 15° make the radius at the trim plane 15 3/4 +
1.0718.
"""

from __future__ import annotations

import math

import pytest
from arches import arch_changes
from cases import changed, job_of, kit_of, texts
from flat_segments import SHAPES, all_round, flat_outside
from rounds import round_changes

from jambs.job import JobFaults
from jambs.length import Units
from jambs.parts.board.cuts import End, PlaneCut, saw_angles
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.findings.flare_findings import FlaredArcOfFlats, FlatSegmentsTooCoarse
from jambs.parts.kit.kit import Kit
from jambs.parts.make import PartsError
from jambs.place.flares import flares_outside

RADIUS, DEEP, FLARE = 15.75, 4.0, 15.0


def segments(kit: Kit) -> list[Part]:
    return [part for part in kit.parts if part.kind is PartKind.EXTERIOR_JAMB and not part.side.is_leg]


def test_segments_are_cut_as_a_regular_frame_that_leans() -> None:
    """tan m = sin a tan(180/n), sin b = cos a sin(180/n), as in ``test_flat_segments_by_hand.py``."""
    kit = flat_outside("half round").kit
    assert kit.flat_outside is not None
    half, leans = math.radians(kit.flat_outside.turn_deg / 2), kit.flat_outside.flares
    lean = math.radians(next(iter(leans.values())))
    asked = math.atan(math.sin(lean) * math.tan(half)), math.asin(math.cos(lean) * math.sin(half))
    middle = segments(kit)[1:-1]
    assert len(middle) >= 5
    for part in middle:
        cuts = [cut for cut in part.cuts if isinstance(cut, PlaneCut) and isinstance(cut.at, End)]
        assert [saw_angles(cut.flat) for cut in cuts] == [pytest.approx([*map(math.degrees, asked)], abs=1e-6)] * 2


def test_a_segment_leans_less_than_the_cone_by_the_cosine_of_half_its_angle() -> None:
    kit = flat_outside("half round").kit
    assert kit.flat_outside is not None
    half = math.radians(kit.flat_outside.turn_deg / 2)
    asked = math.degrees(math.atan(math.tan(math.radians(FLARE)) * math.cos(half)))
    assert [*kit.flat_outside.flares.values()] == pytest.approx([asked] * kit.flat_outside.count)
    assert kit.flat_outside.radii == pytest.approx((RADIUS, RADIUS + DEEP * math.tan(math.radians(FLARE))))


def test_segments_open_outward_and_their_near_edges_lie_on_one_plane() -> None:
    """Their near edges begin 1/4 outside the frame; across its face each runs outward and away from the opening."""
    kit = flat_outside("half round").kit
    for part in segments(kit):
        _, _, depth = part.seat.at(0.0, 0.0, 0.0)
        assert depth >= kit.placement.outside_edge + 0.25 - 1e-9
        assert part.seat.across[2] > 0.9
    crown = segments(kit)[len(segments(kit)) // 2]
    assert crown.seat.across[1] > 0  # at the crown up


def test_a_full_round_leans_below_as_it_does_above() -> None:
    made = flat_outside("full round")
    opening, kit = made.kit.placement.opening, made.kit
    flares = flares_outside(opening, kit.placement.exterior_depth)
    assert flares.sill == flares.head == pytest.approx(FLARE)
    assert "Water stands on" not in texts(kit)
    assert "Water stands on" in texts(flat_outside("full round", "3 deg").kit)


def test_the_sheet_says_how_they_are_put_together() -> None:
    """13 segments: the least odd number that keeps 16.82 (1 - cos(90° / 13)) = 0.1226 within 1/8."""
    found = [one for one in flat_outside("half round").kit.findings if isinstance(one, FlaredArcOfFlats)]
    assert [one.is_outside for one in found] == [True]
    assert "the flared exterior jamb is 13 flat segments" in found[0].sentence(Units.INCH)
    assert "at the trim plane" in found[0].sentence(Units.INCH)
    assert "at the room" not in found[0].sentence(Units.INCH)


def test_segments_too_coarse_are_refused_with_what_would_do() -> None:
    """A quarter of 3/8 is 3/32 that may be planed, and segments of a tight round stand farther off."""
    thin = {"thickness": "3/8", "stock": "cedar", "curved": "flat segments"}
    shape, _, _ = SHAPES["half round"]
    outside = {"flare": all_round("45 deg"), "jamb": thin, "sill": None}
    changes = round_changes(
        shape,
        16,
        40,
        interior_trim__inside__jamb__curved="sawn segments",
        **{f"exterior_trim__outside__{k}": v for k, v in outside.items()},
    )
    with pytest.raises(PartsError) as error:
        kit_of(**changes)
    found = next(one for one in error.value.findings if isinstance(one, FlatSegmentsTooCoarse))
    said = found.sentence(Units.INCH)
    assert "the flared exterior jamb" in said and "trim plane" in said and said.startswith("W1: ")


def test_what_is_refused_says_what_would_do() -> None:
    arch = arch_changes({"kind": "half round"}, 36, 60)
    alike = {"exterior_trim__outside__flare": all_round("15 deg")}
    flat = {"exterior_trim__outside__jamb__curved": "flat segments"}
    for changes, said in (
        (alike, "write jamb: {…, curved: flat segments}, straight boards with compound miters, or flare: none"),
        (flat, "stands square; write curved: sawn segments, or give it a flare"),
        ({**flat, "exterior_trim__outside__flare": {"sides": "15 deg"}}, "the same flare for left and head and right"),
    ):
        with pytest.raises(JobFaults) as error:
            job_of(changed(**{**arch, **changes}))
        assert said in str(error.value) and '"W1"' in str(error.value)
    job_of(changed(**{**arch, **alike, **flat}))
