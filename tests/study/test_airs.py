"""Which air is which, on cuts small enough to see: areas by hand, a gap of each width, a way through."""

from __future__ import annotations

import pytest
from heat_cases import box

from jambs.study.heat.airs import AirSpaces, Rectangle, air_spaces
from jambs.study.regions.region import Block, StudyError


def area(spaces: tuple[Rectangle, ...]) -> float:
    return sum((one.x1 - one.x0) * (one.y1 - one.y0) for one in spaces)


def hollow(mouth: float) -> list[Block]:
    """A wall 0.1 m thick from y -0.3 to 0.3 with a hollow 0.04 x 0.1 m, open to outdoors by a mouth so high."""
    return [
        box("wall", 0.1, (0.0, 0.03), (-0.3, -0.05)),
        box("wall", 0.1, (0.0, 0.03), (-0.05 + mouth, 0.3)),
        box("wall", 0.1, (0.03, 0.07), (-0.3, -0.05)),
        box("wall", 0.1, (0.03, 0.07), (0.05, 0.3)),
        box("wall", 0.1, (0.07, 0.1), (-0.3, 0.3)),
    ]


def spaces_of(blocks: list[Block], left_out: tuple[Block, ...] = (), vented: tuple[Block, ...] = ()) -> AirSpaces:
    return air_spaces(blocks, left_out=left_out, vented=vented)


@pytest.mark.parametrize(
    ("mouth", "kind"), [(0.012, "outdoors"), (0.0098, "ventilated"), (0.006, "ventilated"), (0.0018, "still")]
)
def test_a_hollow_behind_a_mouth_of_each_width(mouth: float, kind: str) -> None:
    """Over 10 mm it is outdoors, up to 2 mm still air, between slightly ventilated (ISO 10077-2, from memory)."""
    spaces = spaces_of(hollow(mouth))
    inner = 0.04 * 0.1
    margin = 0.6 * 0.001
    areas = {name: area(getattr(spaces, name)) for name in ("outdoors", "ventilated", "still")}
    assert areas[kind] >= inner
    assert sum(areas.values()) == pytest.approx(inner + 0.03 * mouth + margin, abs=1e-12)
    assert area(spaces.room) == pytest.approx(margin, abs=1e-12)


@pytest.mark.parametrize(
    ("mouth", "kind"), [(0.0101, "outdoors"), (0.010, "ventilated"), (0.0021, "ventilated"), (0.002, "still")]
)
@pytest.mark.parametrize("is_turned", [False, True])
def test_a_gap_just_as_wide_as_a_limit_is_within_it(mouth: float, kind: str, is_turned: bool) -> None:
    """10 mm is not over 10, and 2 mm is up to 2 (ISO 10077-2, from memory). The mouth begins at nothing, so that its
    width is that number to the last bit; turned, it is as wide along the other axis, between two returns of the wall.
    """
    blocks = [
        box("wall", 0.1, (0.0, 0.03), (-0.3, 0.0)),
        box("wall", 0.1, (0.0, 0.03), (mouth, 0.3)),
        box("wall", 0.1, (0.03, 0.07), (-0.3, -0.04)),
        box("wall", 0.1, (0.03, 0.07), (0.05, 0.3)),
        box("wall", 0.1, (0.07, 0.1), (-0.3, 0.3)),
    ]
    if is_turned:  # a groove from outdoors to below, a slot so wide up from it, a hollow over the slot
        blocks = [
            box("wall", 0.1, (-0.06, 0.1), (-0.3, -0.08)),
            box("wall", 0.1, (mouth, 0.1), (-0.08, 0.0)),
            box("wall", 0.1, (-0.06, 0.0), (-0.05, 0.3)),
            box("wall", 0.1, (0.0, 0.1), (0.05, 0.3)),
            box("wall", 0.1, (0.06, 0.1), (0.0, 0.05)),
        ]
    spaces = spaces_of(blocks)
    hollow_at = (0.05, 0.045)
    named = {"outdoors": spaces.outdoors, "ventilated": spaces.ventilated, "still": spaces.still}
    found = [
        name
        for name, rectangles in named.items()
        for one in rectangles
        if one.x0 < hollow_at[0] < one.x1 and one.y0 < hollow_at[1] < one.y1
    ]
    assert found == [kind]


def test_what_is_left_out_stops_the_air_and_then_gives_way_to_it() -> None:
    """A casing before a wide mouth: still air behind it, outdoor air in its own place."""
    casing = box("casing", 0.12, (-0.02, 0.0), (-0.06, 0.06))
    spaces = spaces_of(hollow(0.05), left_out=(casing,))
    assert area(spaces.still) == pytest.approx(0.04 * 0.1 + 0.03 * 0.05, abs=1e-12)
    assert area(spaces.outdoors) == pytest.approx(0.6 * 0.021, abs=1e-12)


def test_a_ventilated_space_is_outdoor_air_even_behind_a_board() -> None:
    board = box("cladding", 0.12, (-0.04, -0.02), (-0.3, 0.3))
    space = box("air", 1.0, (-0.02, 0.0), (-0.3, 0.3))
    spaces = spaces_of(hollow(0.05), left_out=(board,), vented=(space,))
    assert area(spaces.outdoors) == pytest.approx(0.6 * 0.041 + 0.04 * 0.1 + 0.03 * 0.05, abs=1e-12)
    assert not spaces.still


@pytest.mark.parametrize("gap", [0.005, 0.05])
def test_a_way_from_the_room_to_outdoors_is_a_fault(gap: float) -> None:
    wall = [box("wall", 0.1, (0.0, 0.1), (-0.3, 0.0)), box("wall", 0.1, (0.0, 0.1), (gap, 0.3))]
    with pytest.raises(StudyError, match="one space is open to the room and to outdoors"):
        spaces_of(wall)


def test_a_whole_wall_has_no_fault_and_no_still_air() -> None:
    spaces = spaces_of([box("wall", 0.1, (0.0, 0.1), (-0.3, 0.3))])
    assert (spaces.still, spaces.ventilated) == ((), ())
