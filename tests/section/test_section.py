"""What is drawn is what was computed: layers and parts in the section, measured with shapely."""

from __future__ import annotations

from itertools import combinations
from typing import Any

import pytest
from cases import STOOL, examples, kit_of
from hypothesis import given
from hypothesis import strategies as st
from shapely import Polygon
from shapely.ops import unary_union

from jambs.section.cut import cut_sections
from jambs.section.region import Region, Section, SectionCut, Stuff

TOUCH = 1e-6
"""Area of two shapes that only touch [sq in]."""


def polygon(region: Region) -> Polygon:
    return Polygon(region.outline)


def by_cut(**paths: Any) -> dict[SectionCut, Section]:
    return {section.cut: section for section in cut_sections(kit_of(**paths))}


def test_every_layer_is_there_at_its_depth() -> None:
    # By hand: gypsum 0-1/2, studs -6, plywood -6-1/2, EPS -8-1/2 and -11-1/2, cover -12, shingles -12-3/4.
    faces = {
        "gypsum board 1/2": (0.0, 0.5),
        "stud 2x6": (0.5, 6.0),
        "plywood 1/2": (6.0, 12.0),
        "EPS": (6.5, 11.5),
        "wood shingles": (12.0, 12.75),
    }
    for section in by_cut().values():
        for name, (inner, outer) in faces.items():
            shapes = [polygon(one) for one in section.regions if one.name == name]
            depths = unary_union(shapes).bounds
            assert (depths[1], depths[3]) == (inner, outer), (section.cut, name)


def test_a_door_has_no_sill_cut() -> None:
    door = {key: value for key, value in STOOL.items() if key not in ("stool", "apron")}
    found = by_cut(
        interior_trim__inside={**door, "style": "three-sided"},
        openings__0__sill_height=None,
        openings__0__floor_below_frame="3/4",
    )
    assert set(found) == {SectionCut.JAMB, SectionCut.HEAD}


@examples(15)
@given(
    st.sampled_from([STOOL, None]),
    st.integers(0, 8),
    st.sampled_from(["0 deg", "10 deg", "14 deg"]),
    st.sampled_from(["outboard", "liner"]),
)
def test_no_two_solid_parts_share_space(inside: Any, sixteenth: int, slope: str, buck: str) -> None:
    paths: dict[str, Any] = {"interior_trim__inside": inside} if inside else {}
    found = by_cut(
        **paths,
        position={"share": f"{sixteenth}/16"},
        exterior_trim__outside__sill__slope=slope,
        walls__main__buck={"kind": buck, "thickness": "3/4", "stock": "plywood"},
    )
    for section in found.values():
        parts = [one for one in section.regions if one.mark and one.stuff is not Stuff.METAL]
        for one, other in combinations(parts, 2):
            shared = polygon(one).intersection(polygon(other)).area
            assert shared < TOUCH, (section.cut, one.name, other.name, shared)


@examples(15)
@given(st.integers(0, 16), st.sampled_from(["outboard", "liner"]))
def test_boards_do_not_lie_inside_the_wall(sixteenth: int, buck: str) -> None:
    """Layers stop where buck and exterior trim begin; interior trim stays in the rough opening or on the wall."""
    found = by_cut(
        position={"share": f"{sixteenth}/16"},
        limits={"overhang": "9"},
        walls__main__buck={"kind": buck, "thickness": "3/4", "stock": "plywood"},
    )
    hard = (Stuff.FRAMING, Stuff.SHEATHING, Stuff.RIGID, Stuff.COVER, Stuff.CLADDING, Stuff.GYPSUM)
    for section in found.values():
        layers = unary_union([polygon(one) for one in section.regions if one.stuff in hard])
        for part in (one for one in section.regions if one.mark and one.stuff is not Stuff.METAL):
            assert polygon(part).intersection(layers).area < TOUCH, (section.cut, part.name)


def test_the_frame_fills_its_depth() -> None:
    for section in by_cut().values():
        (frame,) = (one for one in section.regions if one.stuff is Stuff.FRAME)
        depths = [depth for _, depth in frame.outline]
        assert (min(depths), max(depths)) == (4 + 11 / 16, 10.5)
        assert polygon(frame).area == pytest.approx(2.5 * 5.8125, abs=1e-9)


def test_the_jamb_section_shows_the_depths_that_are_milled() -> None:
    section = by_cut()[SectionCut.JAMB]
    jambs = [one for one in section.regions if one.stuff is Stuff.JAMB]
    spans = sorted((min(d for _, d in one.outline), max(d for _, d in one.outline)) for one in jambs)
    # Interior: from 1/32 before the finished face to the frame; exterior: from the joint to the trim plane.
    assert spans == [(-1 / 32, 4 + 11 / 16), (10.75, 12.0)]
    # Opening faces, across from the frame's outer edge: 2-1/2 less 1/8 inside, less 1/4 outside.
    faces = sorted(min(across for across, _ in one.outline) for one in jambs)
    assert faces == [-2.375, -2.25]


def test_the_drip_kerf_is_cut_into_the_sill() -> None:
    section = by_cut()[SectionCut.SILL]
    (kerf,) = (one for one in section.regions if one.name == "groove")
    (sill,) = (one for one in section.regions if one.name == "exterior sill sill")
    assert polygon(kerf).area == pytest.approx(1 / 16, abs=1e-9)
    assert polygon(sill).buffer(1e-9).contains(polygon(kerf))
    assert min(d for _, d in kerf.outline) > section.depths["cladding face"]
