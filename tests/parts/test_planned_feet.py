"""What outside waits for the tape: a casing leg on a sloping sill, whose foot is lower the deeper the wall is."""

from __future__ import annotations

import math
from typing import Any

import pytest
from cases import changed, job_of
from trimmed_as_one import run_kits

from jambs.job import Job
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.planned import is_planned, waits_in
from jambs.parts.make import make_kit
from jambs.place.solve import place_windows
from jambs.sides import LEGS, Side

AROUND = {"head_left": "1 3/4", "head_right": "1 3/4", "sill_left": "1 3/4", "sill_right": "1 3/4"}
READ = {"date": "2026-06-01", "by": "Ann", "exterior_depth": AROUND}


def built(**paths: Any) -> tuple[Job, Kit]:
    job = job_of(changed(**paths))
    return job, make_kit(place_windows(job)[0], job)


def waiting(kit: Kit) -> set[Side]:
    opening = kit.placement.opening
    casing = [one for one in kit.parts if one.kind is PartKind.CASING and one.where is Where.EXTERIOR]
    return {one.side for one in casing if is_planned(one, opening)}


def leg_length(kit: Kit) -> float:
    legs = [one for one in kit.parts if one.kind is PartKind.CASING and one.where is Where.EXTERIOR]
    return next(one.length for one in legs if one.side is Side.LEFT)


def test_legs_on_a_sloping_sill_wait_and_the_head_does_not() -> None:
    assert waiting(built()[1]) == {*LEGS}


def test_none_waits_once_the_depth_outside_was_read() -> None:
    assert waiting(built(openings__0__measured=READ)[1]) == set()


def test_no_leg_waits_where_there_is_no_sill() -> None:
    assert waiting(built(exterior_trim__outside__sill=None)[1]) == set()


def test_why_they_wait_a_quarter_deeper_is_so_much_longer_on_10_degrees() -> None:
    """By hand: the sill falls by the tangent of its slope, 1 1/2 planned and 1 3/4 read."""
    longer = leg_length(built(openings__0__measured=READ)[1]) - leg_length(built()[1])
    assert longer == pytest.approx(0.25 * math.tan(math.radians(10)))


@pytest.mark.parametrize(("read", "waits"), [(0, {Side.RIGHT}), (1, {Side.LEFT})])
def test_of_openings_trimmed_as_one_each_leg_waits_for_its_own_end(read: int, waits: set[Side]) -> None:
    """Both legs are the first one's; the right one stands at the second."""
    paths: dict[str, Any] = {f"openings__{read}__measured": READ}
    lead, _ = run_kits(**paths)
    legs = [
        one for one in lead.parts if one.kind is PartKind.CASING and one.where is Where.EXTERIOR and one.side.is_leg
    ]
    assert {one.side for one in legs if waits_in(lead, one)} == waits
