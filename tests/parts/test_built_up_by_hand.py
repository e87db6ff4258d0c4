"""Casings built up from members, by hand: what runs against what, and what it comes to over all.

The base window: clear 30 3/4 by 42 3/4, casing reveal 3/16, so the casing goes round 31 1/8 by 42 15/16 on a stool.
"""

from __future__ import annotations

import itertools
from typing import Any

import pytest
from cases import STOOL, figure, kit_of, part_of
from part_cases import THREE_SIDED

from jambs.parts.board.kinds import PartKind
from jambs.parts.kit.kit import Kit
from jambs.sides import Side

CASING = {"width": "3 1/2", "thickness": "3/4", "stock": "poplar", "corner": "butt"}
ON_STOOL: dict[str, Any] = {**STOOL, "casing": CASING}
HEAD = [
    {"kind": "fillet", "height": "1/2", "projection": "1 1/4", "overhang": "1/2", "stock": "poplar"},
    {"kind": "frieze", "height": "5 1/2", "projection": "3/4", "overhang": "0", "stock": "poplar"},
    {"kind": "cap", "height": "3/4", "projection": "2", "overhang": "1 1/4", "stock": "poplar"},
]
BAND = {"width": "3/4", "thickness": "1 1/8", "stock": "poplar"}
ROSETTES = {"size": "3 3/4", "thickness": "1", "stock": "poplar"}
DOOR: dict[str, Any] = {
    "windows__fixed__sash": "door out",
    "windows__fixed__sash_thickness": "1 3/4",
    "windows__fixed__sash_set_back": "0",
    "openings__0__sill_height": None,
    "openings__0__floor_below_frame": "3/4",
    "exterior_trim": None,
}


def built(members: dict[str, Any], trim: dict[str, Any] = ON_STOOL, **paths: Any) -> Kit:
    return kit_of(interior_trim__inside={**trim, "built_up": members}, **paths)


def test_a_head_of_members_takes_the_place_of_the_head_casing() -> None:
    kit = built({"head": HEAD}, exterior_trim=None)
    level = [part.kind for part in kit.parts if part.side is Side.HEAD and part.where.value == "interior"]
    assert level == [PartKind.EXTENSION_JAMB, PartKind.FILLET, PartKind.FRIEZE, PartKind.CAP]


def test_members_of_a_head_by_their_lengths() -> None:
    # Legs outside: 31 1/8 + 2 x 3 1/2 = 38 1/8; the fillet 1/2 past them at each end, the cap 1 1/4.
    kit = built({"head": HEAD})
    assert part_of(kit, "fillet", "head").length == 39.125
    assert part_of(kit, "frieze", "head").length == 38.125
    assert part_of(kit, "cap", "head").length == 40.625


@pytest.mark.parametrize(
    ("kind", "low", "high", "out"),
    [("fillet", 45.3125, 45.8125, -1.25), ("frieze", 45.8125, 51.3125, -0.75), ("cap", 51.3125, 52.0625, -2.0)],
)
def test_members_stand_one_on_the_other_on_the_legs(kind: str, low: float, high: float, out: float) -> None:
    """Legs end 3/16 over a clear top at 45 1/8: 45 5/16; 1/2, 5 1/2 and 3/4 follow, each out as far as it projects.

    Jambs stand 1/32 proud, and the casing lies on them.
    """
    part = part_of(built({"head": HEAD}), kind, "head")
    corners = itertools.product((0.0, part.length), (0.0, part.width), (0.0, part.thickness))
    places = [part.seat.at(*corner) for corner in corners]
    assert (min(y for _, y, _ in places), max(y for _, y, _ in places)) == (low, high)
    assert (min(d for _, _, d in places), max(d for _, _, d in places)) == (out - 1 / 32, -1 / 32)
    # Centered on the clear opening from 2 3/8 to 33 1/8.
    assert min(x for x, _, _ in places) + max(x for x, _, _ in places) == 35.5


def test_what_lies_is_as_thick_as_it_is_high() -> None:
    kit = built({"head": HEAD})
    fillet, frieze = part_of(kit, "fillet", "head"), part_of(kit, "frieze", "head")
    assert (fillet.thickness, fillet.width) == (0.5, 1.25)
    assert (frieze.thickness, frieze.width) == (0.75, 5.5)


def test_a_head_over_all() -> None:
    # Up from the stool: 42 15/16 + 1/2 + 5 1/2 + 3/4; across: 38 1/8 + 2 x 1 1/4.
    kit = built({"head": HEAD})
    assert figure(kit, "built-up casing height over all") == 42.9375 + 6.75
    assert figure(kit, "built-up casing width over all") == 40.625


def test_a_backband_goes_round_mitered_and_widens_the_stool() -> None:
    kit, plain = built({"backband": BAND}), kit_of(interior_trim__inside=ON_STOOL)
    # Round 31 1/8 + 7 = 38 1/8 by 42 15/16 + 3 1/2 = 46 7/16: the head's long points 3/4 farther at each end.
    assert part_of(kit, "backband", "head").length == 38.125 + 1.5
    assert part_of(kit, "backband", "left leg").length == 46.4375 + 0.75
    assert part_of(kit, "stool", "sill").length == part_of(plain, "stool", "sill").length + 1.5
    assert figure(kit, "built-up casing width over all") == 38.125 + 1.5


def test_a_backband_under_a_head_is_on_the_legs_alone() -> None:
    kit = built({"backband": BAND, "head": HEAD})
    band = [part for part in kit.parts if part.kind is PartKind.BACKBAND]
    assert [(part.side, part.length) for part in band] == [(Side.LEFT, 42.9375), (Side.RIGHT, 42.9375)]
    # The head overhangs the band: 38 1/8 + 2 x 3/4 + 2 x 1 1/4.
    assert part_of(kit, "cap", "head").length == 38.125 + 1.5 + 2.5


def test_boards_end_at_rosettes() -> None:
    # 3 3/4 on 3 1/2: 1/8 past each edge. Legs 42 15/16 - 1/8, the head between the blocks 31 1/8 - 2 x 1/8.
    kit = built({"rosettes": ROSETTES})
    assert part_of(kit, "casing", "left leg").length == 42.8125
    assert part_of(kit, "casing", "head").length == 30.875
    blocks = [part for part in kit.parts if part.kind is PartKind.ROSETTE]
    assert [(part.width, part.length, part.position) for part in blocks] == [
        (3.75, 3.75, "left"),
        (3.75, 3.75, "right"),
    ]
    assert figure(kit, "built-up casing height over all") == 42.9375 - 0.125 + 3.75


def test_a_picture_frame_has_four_rosettes() -> None:
    four = {key: value for key, value in ON_STOOL.items() if key not in ("stool", "apron")}
    kit = built({"rosettes": ROSETTES}, trim={**four, "style": "picture framed"})
    places = sorted(part.position for part in kit.parts if part.kind is PartKind.ROSETTE)
    assert places == ["left above", "left below", "right above", "right below"]
    # Four sides: 42 3/4 + 2 x 3/16 - 2 x 1/8.
    assert part_of(kit, "casing", "left leg").length == 42.875


def test_legs_stand_on_plinths() -> None:
    trim = {**THREE_SIDED, "casing": CASING}
    plinths = {"width": "4", "height": "8", "thickness": "1", "stock": "poplar"}
    kit, plain = built({"plinths": plinths}, trim=trim, **DOOR), kit_of(interior_trim__inside=trim, **DOOR)
    legs = [part_of(one, "casing", "left leg").length for one in (kit, plain)]
    assert legs[0] == legs[1] - 8
    block = part_of(kit, "plinth block", "left")
    assert (block.width, block.length) == (4, 8)
    # Wider than the casing of 3 1/2: outside to outside of the blocks.
    assert figure(kit, "built-up casing width over all") == 31.125 + 8


def test_members_have_identities_of_their_own() -> None:
    kit = built({"head": [HEAD[0], HEAD[1], {**HEAD[0]}, HEAD[2]]})
    assert len({part.identity for part in kit.parts}) == len(kit.parts)


def test_a_plain_casing_has_none_of_it() -> None:
    assert not [part for part in kit_of().parts if part.kind.is_built_up]
    with pytest.raises(ValueError, match="not enough values"):
        part_of(kit_of(), "backband", "head")


def test_members_of_a_kind_count_from_the_bottom() -> None:
    """Two fillets, one under the frieze and one on it; the frieze between them is the first of its own."""
    fillet, frieze, cap = HEAD
    kit = built({"head": [fillet, frieze, dict(fillet), cap]})
    kinds = (PartKind.FILLET, PartKind.FRIEZE, PartKind.CAP)
    counted = [(part.kind, part.member) for part in kit.parts if part.kind in kinds]
    assert counted == [(PartKind.FILLET, 1), (PartKind.FRIEZE, 1), (PartKind.FILLET, 2), (PartKind.CAP, 1)]
