"""Sections of measured openings: the face stands where it was measured, the casing on the jamb, nothing through it."""

from __future__ import annotations

import pytest
from samples import drawn, made

from jambs.drawings.elements.boxes import box_around
from jambs.drawings.views.measured_section import at_measured_depth, measured_depth
from jambs.section.region import Section, SectionCut, Stuff

BY_HAND = {
    SectionCut.HEAD: (4 + 11 / 16 + 4 + 3 / 4) / 2,
    SectionCut.SILL: (4 + 5 / 8 + 4 + 13 / 16) / 2,
    SectionCut.JAMB: (4 + 3 / 4 + 4 + 13 / 16) / 2,
    SectionCut.LEFT_JAMB: (4 + 11 / 16 + 4 + 5 / 8) / 2,
}
"""Means of the two corners that were read at each side of the measured sample: the left jamb is cut too, it differs."""
TINY = 1e-6
CUTS = pytest.mark.parametrize("cut", list(SectionCut))


def section_of(name: str, cut: SectionCut) -> Section:
    kit, sections, _ = made(name)
    return at_measured_depth(next(one for one in sections if one.cut is cut), kit)


def depths(section: Section, stuff: Stuff) -> tuple[float, float]:
    found = [depth for one in section.regions if one.stuff is stuff for _, depth in one.outline]
    return min(found), max(found)


@CUTS
def test_the_face_stands_as_far_from_the_frame_as_it_was_measured(cut: SectionCut) -> None:
    kit, _, _ = made("measured")
    section = section_of("measured", cut)
    assert measured_depth(kit, cut) == pytest.approx(BY_HAND[cut])
    inside, behind = depths(section, Stuff.GYPSUM)
    assert kit.placement.inside_edge - inside == pytest.approx(BY_HAND[cut])
    assert behind - inside == pytest.approx(0.5)  # the finish keeps its thickness


@CUTS
def test_no_jamb_runs_through_a_casing(cut: SectionCut) -> None:
    """Inside, the back of the casing lies on the edge of the jamb: one depth, proud of the face."""
    kit, _, job = made("measured")
    section = section_of("measured", cut)
    middle = (kit.placement.inside_edge + kit.placement.outside_edge) / 2
    inside = [one for one in section.regions if box_around(one.outline).center[1] < middle]
    jamb = min(depth for one in inside if one.stuff in (Stuff.JAMB, Stuff.SILL) for _, depth in one.outline)
    casing = max(depth for one in inside if one.stuff is Stuff.CASING for _, depth in one.outline)
    assert jamb == pytest.approx(casing, abs=1 / 64)
    assert kit.placement.inside_edge - BY_HAND[cut] - jamb == pytest.approx(job.shop.proud, abs=1 / 64)


@CUTS
def test_the_measured_depth_is_dimensioned_and_the_planned_one_is_told_as_planned(cut: SectionCut) -> None:
    view = drawn("measured").view(f"section {cut.value}")
    values = [one.value for one in view.dimensions if not one.is_vertical]
    kit, _, _ = made("measured")
    assert any(abs(value - BY_HAND[cut]) < TINY for value in values)
    assert not any(abs(value - kit.placement.interior_depth) < TINY for value in values)
    assert any("planned" in line for text in view.texts for line in text.lines)


@pytest.mark.parametrize("cut", [SectionCut.HEAD, SectionCut.JAMB, SectionCut.SILL])
def test_a_planned_section_is_left_as_it_is(cut: SectionCut) -> None:
    kit, sections, _ = made("stool")
    section = next(one for one in sections if one.cut is cut)
    assert at_measured_depth(section, kit) is section
