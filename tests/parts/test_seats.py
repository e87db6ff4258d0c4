"""Parts meet where they should: points of the boards in wall coordinates."""

from __future__ import annotations

import math
from typing import Any

import pytest
from arches import arch_changes
from cases import STOOL, kit_of, part_of
from rounds import round_changes

from jambs.length import FINE, Units
from jambs.parts.board.kinds import Where
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.parts.words.cut_words import work_words

MEASURED = {
    "date": "2026-05-18",
    "interior_depth": {"head_left": "4 3/4", "head_right": "4 5/8", "sill_left": "4 1/2", "sill_right": "4 3/4"},
}


def sill_top(kit: Kit, depth: float) -> float:
    """Height of the sill's top: 1/4 under the frame at its outside edge, falling 10 degrees outward [in]."""
    return -0.25 - (depth - kit.placement.outside_edge) * math.tan(math.radians(10))


def corners(part: Part) -> list[tuple[float, float, float]]:
    return [part.seat.at(u, v, w) for u, v in part.outline for w in (0.0, part.thickness)]


@pytest.mark.parametrize("position", ["left leg", "right leg"])
def test_exterior_casing_stands_on_the_sill(position: str) -> None:
    kit = kit_of()
    leg = part_of(kit, "casing", position, Where.EXTERIOR)
    # The face, 1 in outside the trim plane at 12, reaches down to the sloping top there.
    assert min(y for _, y, _ in corners(leg)) == pytest.approx(sill_top(kit, 13.0), abs=1e-9)
    # The head casing lies on the legs: 47-1/2 - 2-1/2 + 1/4 + 1/4 reveal = 45-1/2.
    assert max(y for _, y, _ in corners(leg)) == pytest.approx(45.5, abs=1e-9)


@pytest.mark.parametrize("position", ["left leg", "right leg"])
def test_exterior_jamb_stands_on_the_sill(position: str) -> None:
    kit = kit_of()
    leg = part_of(kit, "exterior extension jamb", position, Where.EXTERIOR)
    points = {(round(y, 6), round(d, 6)) for _, y, d in corners(leg)}
    # From the sealant joint at 10-3/4 to the trim plane at 12, under the head at 45-1/4.
    expected = {(45.25, 10.75), (45.25, 12.0), *((round(sill_top(kit, d), 6), d) for d in (10.75, 12.0))}
    assert points == expected


def test_the_horns_of_the_sill_stay_outside_the_trim_plane() -> None:
    kit = kit_of()
    sill = part_of(kit, "exterior sill", "sill", Where.EXTERIOR)
    notch = sill.outline[3][1]
    _, _, lower_corner = sill.seat.at(0.0, notch, sill.thickness)
    assert 12.0 - 1e-9 <= lower_corner <= 12.0 + 1 / 32


def test_a_tapered_stool_is_deep_where_the_wall_is_deep() -> None:
    kit = kit_of(interior_trim__inside=STOOL, openings__0__measured=MEASURED)
    stool = part_of(kit, "stool", "sill")
    inside_edge = kit.placement.inside_edge
    fronts = {round(x, 3): round(inside_edge - d, 6) for x, _, d in corners(stool) if inside_edge - d > 5.5}
    left, right = (fronts[x] for x in sorted(fronts))
    # Depth, 3/4 casing, 3/4 nosing: 4-1/2 + 1-1/2 at the left, 4-3/4 + 1-1/2 at the right.
    assert (left, right) == (6.0, 6.25)
    assert work_words(stool, grid=FINE[Units.INCH])[0].startswith(
        'notch left end 3 11/16" long × 4 1/2", right end 3 11/16" long × 4 3/4"'
    )


@pytest.mark.parametrize(
    ("position", "at", "depth"),
    [
        ("left leg", "top", 4.75),
        ("left leg", "bottom", 4.5),
        ("right leg", "top", 4.625),
        ("right leg", "bottom", 4.75),
    ],
)
def test_a_tapered_leg_is_deep_where_the_wall_is_deep(position: str, at: str, depth: float) -> None:
    kit = kit_of(openings__0__measured=MEASURED)
    leg = part_of(kit, "extension jamb", position)
    points = corners(leg)
    end = (max if at == "top" else min)(y for _, y, _ in points)
    room_edge = min(d for _, y, d in points if abs(y - end) < 1e-6)
    assert kit.placement.inside_edge - room_edge == pytest.approx(depth + 1 / 32, abs=1e-9)


def test_twist_by_hand() -> None:
    # (4-3/4 + 4-3/4) - (4-5/8 + 4-1/2) = 3/8, past the limit of 1/4.
    kit = kit_of(openings__0__measured=MEASURED)
    assert any('the four corners are 3/8" out of one plane (twist)' in one.sentence(Units.INCH) for one in kit.findings)


def test_glued_strips_are_alike_and_on_the_grid() -> None:
    # Measured 4-45/64 on a 1/64 grid, 1/32 proud: 4-47/64 and 1/8 for the last rip and 2 x 1/16 for jointing is
    # 4-63/64 = 319/64, an odd count: two strips of 160/64.
    depth = dict.fromkeys(("head_left", "head_right", "sill_left", "sill_right"), "4 45/64")
    kit = kit_of(
        shop__grid="1/64",
        shop__boards=[{"nominal": "1x4", "stock": "poplar"}],
        openings__0__measured={"date": "2026-05-18", "interior_depth": depth},
    )
    leg = part_of(kit, "extension jamb", "left leg")
    assert leg.strips == (160 / 64, 160 / 64)


@pytest.mark.parametrize(
    "changes",
    [
        arch_changes({"kind": "half round"}, 36, 60),
        arch_changes({"kind": "half round"}, 36, 60, curved="bent laminations"),
        round_changes({"kind": "round"}, 36, 36),
        round_changes({"kind": "triangle"}, 36, 36),
        arch_changes({"kind": "raked", "left": "30", "right": "48"}, 36, 48),
    ],
    ids=["half round", "half round bent", "round", "triangle", "raked"],
)
def test_no_board_of_a_shape_lies_along_minus_nothing(changes: dict[str, Any]) -> None:
    """It would be written as ``-0.0``."""
    for part in kit_of(**changes).parts:
        ways = (part.seat.along, part.seat.across, part.seat.through)
        assert [one for several in ways for one in several if str(one) == "-0.0"] == [], part.mark
