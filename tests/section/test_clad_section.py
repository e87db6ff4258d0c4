"""Sections through a reveal that cladding lines, by hand; the base window on its sheathing.

Frame from 1 15/16 to 7 3/4, trim plane 12, face of the cladding 12 3/4. At a jamb returns have their face 2 1/4 in from
the frame's edge (s = -2 1/4), their back 3/4 and the furring's 1 1/4 farther into the wall.
"""

from __future__ import annotations

from typing import Any

import pytest
from cases import kit_of
from clad import DEEP, clad, mitered

from jambs.parts.board.kinds import Where
from jambs.section.cut import cut_sections
from jambs.section.region import Region, Section, SectionCut, Stuff


def section(trim: dict[str, Any], cut: SectionCut = SectionCut.JAMB) -> Section:
    made = kit_of(**DEEP, exterior_trim__outside=trim)
    return next(one for one in cut_sections(made, wall_length=12.0) if one.cut is cut)


def box(region: Region) -> tuple[float, float, float, float]:
    across, depths = zip(*region.outline, strict=True)
    return min(across), min(depths), max(across), max(depths)


def parts_of(one: Section, stuff: Stuff) -> list[tuple[float, float, float, float]]:
    return [box(region) for region in one.regions if region.stuff is stuff and region.where is Where.EXTERIOR]


def wall_cladding(one: Section) -> Region:
    (found,) = (region for region in one.regions if region.stuff is Stuff.CLADDING and not region.mark)
    return found


def test_the_layers_of_a_reveal_at_a_jamb() -> None:
    found = section(clad())
    assert parts_of(found, Stuff.CLADDING) == [(-2.25, 8.0, -1.5, 10.875)]
    assert parts_of(found, Stuff.CASING) == [(-2.5, 11.0, -1.5, 12.0), (-2.5, 12.0, 2.0, 13.0)]
    assert parts_of(found, Stuff.FURRING) == [(-1.5, 8.0, -1.0, 10.0), (-1.5, 10.0, -1.0, 12.0)]


def test_outer_layers_stop_at_the_back_of_the_furring() -> None:
    outer = [one for one in section(clad()).regions if one.stuff is Stuff.COVER]
    assert {box(one)[0] for one in outer} == {-1.0}


def test_sealant_lies_before_the_end_of_the_return() -> None:
    """Between the frame and the return, as far as the frame is behind it."""
    (joint,) = (one for one in section(clad()).regions if one.stuff is Stuff.SEALANT)
    assert box(joint) == (-2.25, 7.75, -1.5, 8.0)


def test_the_walls_cladding_stops_at_casing_or_in_the_miter() -> None:
    assert box(wall_cladding(section(clad())))[0] == 2.0
    miter = wall_cladding(section(mitered())).outline
    assert {point for point in miter if point[0] < 5} == {(-1.5, 12.0), (-2.25, 12.75)}


def test_cladding_over_a_mitered_head_stays_above_the_metal() -> None:
    """Top of the head return 46, a gap of 3/8; over corner boards the head casing ends at 49 1/2."""
    for trim, level in ((mitered(), 46.375), (clad(), 49.875)):
        assert box(wall_cladding(section(trim, SectionCut.HEAD)))[0] == pytest.approx(level)


def test_only_cladding_with_a_mark_is_a_part() -> None:
    regions = [one for one in section(clad()).regions if one.stuff is Stuff.CLADDING]
    assert sorted(one.is_clad_part for one in regions) == [False, True]
    assert not any(one.is_clad_part for one in section(clad()).regions if one.stuff is Stuff.CASING)
