"""Drawn sections against an independent library that paints the drawing itself: which air is which, and what counts."""

from __future__ import annotations

from typing import Any

import pytest
from cases import changed, job_of
from drawn_peer import peer_coupling

from jambs.section.cut import cut_sections
from jambs.section.region import SectionCut as Side
from jambs.study.at_position import LIMITS_WITHIN, WindowInWall, study_at, subject_of
from jambs.study.heat.section_cut import WALL_LENGTH
from jambs.wall.planes import stack_wall

FIXED = {
    "windows__fixed__u_frame": "1.6",
    "windows__fixed__jamb_depth": "2 1/4",
    "windows__fixed__frame_projection": "3/4",
}
STRAPPED = [
    "gypsum board 1/2",
    {"material": "stud 2x6", "spacing": "16", "cavity": "fiberglass batt"},
    "plywood 1/2",
    {"material": "EPS", "thickness": "3"},
    {"material": "strapping 2x4", "spacing": "16"},
    "wood shingles",
]
FILLED = [
    "gypsum board 1/2",
    {"material": "stud 2x6", "spacing": "16", "cavity": "fiberglass batt"},
    "plywood 1/2",
    {"material": "strapping 2x4", "spacing": "16", "cavity": "mineral wool batt"},
    {"material": "EPS", "thickness": "3"},
    {"material": "strapping 1x4", "spacing": "16"},
    "wood shingles",
]
SERVICE = [
    "gypsum board 1/2",
    {"material": "service cavity", "thickness": "1 1/2", "spacing": "16", "cavity": "mineral wool batt"},
    {"material": "stud 2x6", "spacing": "16", "cavity": "fiberglass batt"},
    "plywood 1/2",
    {"material": "EPS", "thickness": "4"},
    {"material": "strapping 1x4", "spacing": "16"},
    "wood shingles",
]
LINER = {"kind": "liner", "thickness": "3/4", "stock": "plywood"}
CASES: dict[str, tuple[dict[str, Any], float]] = {
    "boards and shingles, shared": ({}, 9.25),
    "boards and shingles, no exterior trim": ({"exterior_trim": None}, 9.25),
    "strapping, in the insulation": ({"walls__main__layers": STRAPPED}, 7.5),
    "strapping, proud to the trim plane": ({"walls__main__layers": STRAPPED}, 11.0),
    "strapping, proud, liner": ({"walls__main__layers": STRAPPED, "walls__main__buck": LINER}, 11.0),
    "strapping under insulation": ({"walls__main__layers": FILLED}, 9.0),
    "service cavity": ({"walls__main__layers": SERVICE}, 10.0),
    "service cavity, at the sheathing": ({"walls__main__layers": SERVICE}, 8.0),
}
BY_HAND = {
    "gypsum board 1/2": 0.1603,
    "stud 2x6": 0.1154,
    "plywood 1/2": 0.1163,
    "EPS": 0.0361,
    "fiberglass batt": 0.0459,
    "mineral wool batt": 0.035,
    "strapping 2x4": 0.1154,
    "service cavity": 0.035,
    "air": 5.5 * 0.0254 / 0.18,
}


def case_of(paths: dict[str, Any]) -> WindowInWall:
    job = job_of(changed(**{**FIXED, **paths}))
    (opening,) = job.openings
    return subject_of(opening, stack_wall(opening.wall, grid=job.shop.grid), job)


@pytest.mark.parametrize("side", [one for one in Side if one is not Side.LEFT_JAMB])
@pytest.mark.parametrize("name", CASES)
def test_a_drawn_section_lies_at_the_independent_peer(name: str, side: Side) -> None:
    """Twenty-four sections: the peer within the limits, give and take the stairs of a slope, and near the mean."""
    paths, plane = CASES[name]
    subject = case_of(paths)
    found = study_at(subject, plane)
    drawn = found.side(side)
    assert drawn is not None
    (section,) = (one for one in cut_sections(found.kit, wall_length=WALL_LENGTH) if one.cut is side)
    peer = peer_coupling(subject, found, section, BY_HAND)
    coupling = drawn.transmittance.coupling
    assert coupling.lower - 2e-4 < peer < coupling.upper + 2e-4
    assert coupling.mean == pytest.approx(peer, abs=4e-4)
    assert coupling.half_width <= LIMITS_WITHIN
