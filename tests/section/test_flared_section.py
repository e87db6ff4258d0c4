"""The section of a flared opening: the jamb leans, and wall and shim space give way along its back."""

from __future__ import annotations

import math

import pytest
from cases import kit_of

from jambs.parts.kit.kit import Kit
from jambs.section.cut import cut_sections
from jambs.section.region import Region, Section, SectionCut, Stuff

TAN20, COS20 = math.tan(math.radians(20)), math.cos(math.radians(20))
EDGE, PROUD = 4 + 11 / 16, 1 / 32
"""Inside edge of the frame; past the finished wall [in]."""


def flared() -> Kit:
    jamb = {"thickness": "3/4", "stock": "poplar", "joint": "miter"}
    return kit_of(interior_trim__inside__jamb=jamb, interior_trim__inside__flare={"sides": "20 deg"})


def section(kit: Kit, cut: SectionCut) -> Section:
    return next(one for one in cut_sections(kit) if one.cut is cut)


def one_of(found: Section, stuff: Stuff) -> Region:
    return next(one for one in found.regions if one.stuff is stuff and one.outline)


def test_the_jamb_leans_from_the_frame_to_the_room() -> None:
    """Right leg, from the frame's outer edge: face at -2 3/8 at the frame, 4.71875 tan 20° farther out at the room."""
    outline = one_of(section(flared(), SectionCut.JAMB), Stuff.JAMB).outline
    face, room = -2.375, -2.375 + (EDGE + PROUD) * TAN20
    thick = 0.75 / COS20
    assert sorted(outline) == [
        pytest.approx(one)
        for one in sorted([(face, EDGE), (room, -PROUD), (face + thick, EDGE), (room + thick, -PROUD)])
    ]


def test_framing_and_board_give_way_along_the_back() -> None:
    """The rough opening stands 1/4 off the frame, and as much farther out as the jamb leans at each depth."""
    found = section(flared(), SectionCut.JAMB)
    for stuff in (Stuff.GYPSUM, Stuff.FRAMING):
        outline = one_of(found, stuff).outline
        for depth in {d for _, d in outline}:
            nearest = min(s for s, d in outline if d == depth)
            assert nearest == pytest.approx(0.25 + max(EDGE - depth, 0.0) * TAN20)


def test_the_shim_space_runs_along_the_back() -> None:
    found = section(flared(), SectionCut.JAMB)
    gap = next(one for one in found.regions if one.stuff is Stuff.SHIM and min(d for _, d in one.outline) == 0.0)
    back = -2.375 + 0.75 / COS20
    for depth in (0.0, EDGE):
        near, far = sorted(s for s, d in gap.outline if d == depth)
        assert (near, far) == pytest.approx((back + (EDGE - depth) * TAN20, 0.25 + (EDGE - depth) * TAN20))


def test_what_is_not_flared_stays_square() -> None:
    plain = kit_of(interior_trim__inside__jamb={"thickness": "3/4", "stock": "poplar", "joint": "miter"})
    assert section(flared(), SectionCut.SILL).regions == section(plain, SectionCut.SILL).regions
