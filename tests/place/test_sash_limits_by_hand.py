"""The depth up to which a sash opens as far as it should, by hand; and no limit where there is none.

A sash flush with its frame turns about its own edge: past 90 degrees it leans on the end of the extension jamb, a frame
reveal beside the hinge. It comes to 90 + atan(reveal / depth), so that the depth for 92 degrees is reveal / tan 2°.
"""

from __future__ import annotations

import math
from typing import Any

import pytest
from cases import changed, job_of
from position_cases import CASEMENT

from jambs.place.depths import share_at
from jambs.place.limit_kinds import LimitKind
from jambs.place.limits import FAR, Range, ranges
from jambs.wall.planes import stack_wall

FLUSH = {**CASEMENT, "sash_set_back": "0"}
FOUND_WITHIN = 0.05
"""An angle is found to 0.05 degrees below it: at 92 that is one part in 40 of the depth."""


def sash_limit(degrees: str, **paths: Any) -> Range | None:
    job = job_of(changed(limits={"sash_opening_deg": degrees}, **paths))
    (opening,) = job.openings
    planes = stack_wall(opening.wall, grid=job.shop.grid)
    every = ranges(opening, planes, job, proud_outside=False)
    found = [one for one in every if one.limit is LimitKind.SASH_OPENING]
    assert len(found) < 2
    return found[0] if found else None


def test_inward_the_limit_is_the_jamb_depth_and_the_depth_inside() -> None:
    """Frame reveal 1/8: 0.125 / tan 2° = 3.58 inside, from the inside edge at 4 9/16."""
    found = sash_limit("92", windows__fixed=FLUSH)
    assert found is not None and found.low == -FAR
    assert found.high - 4.5625 == pytest.approx(0.125 / math.tan(math.radians(2)), rel=FOUND_WITHIN)


def test_outward_the_limit_is_counted_from_the_trim_plane() -> None:
    """Frame reveal 1/4: 0.25 / tan 2° = 7.16 outside; the trim plane 12, the frame 1 1/4 past its flange."""
    found = sash_limit("92", windows__fixed={**FLUSH, "sash": "casement out"})
    assert found is not None and found.high == FAR
    assert 12 - 1.25 - found.low == pytest.approx(0.25 / math.tan(math.radians(2)), rel=FOUND_WITHIN)


def test_a_sash_that_is_to_lie_flat_on_the_wall_has_no_depth_left() -> None:
    """180 degrees, no more and no less, and only where there is no jamb at all."""
    found = sash_limit("180", windows__fixed=FLUSH)
    assert found is not None
    assert found.high == pytest.approx(4.5625, abs=1 / 64)


def test_no_limit_where_it_opens_that_far_at_every_depth_or_at_none() -> None:
    """At the trim plane, 12 deep: 90 + atan(0.125 / 12) = 90.6. A sash 1/4 back in its frame meets that at 90."""
    assert sash_limit("90.5", windows__fixed=FLUSH) is None
    assert sash_limit("100", windows__fixed={**FLUSH, "sash_set_back": "1/4"}) is None


@pytest.mark.parametrize(("plane", "share"), [(6.5, 0.0), (6.75, 0.5), (7.0, 1.0)])
def test_a_wall_that_adds_little_still_has_a_share(plane: float, share: float) -> None:
    """Gypsum 1/2, stud 5 1/2, plywood 1/2, then 1/2 of plywood as outer sheathing: 6 1/2 → 7."""
    layers = ["gypsum board 1/2", {"material": "stud 2x6", "spacing": "16"}, "plywood 1/2"]
    layers.append({"material": "plywood 1/2", "role": "outer sheathing"})
    job = job_of(changed(walls__main__layers=layers, position={"share": "0"}))
    assert share_at(stack_wall(job.openings[0].wall, grid=job.shop.grid), plane) == share
