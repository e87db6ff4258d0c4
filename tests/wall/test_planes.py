"""Layers land on their planes, inside → outside, unequal layers first."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jambs.job.models.layers import Layer, Role, Wall
from jambs.length import FINE, Units
from jambs.wall.planes import WallError, stack_wall

INCH = FINE[Units.INCH]


def wall(*layers: tuple[Role, float]) -> Wall:
    return Wall(name="w", layers=tuple(Layer(name=f"{r}", role=r, thickness=t) for r, t in layers))


def test_worked_case_by_hand() -> None:
    # By hand: 1/2 + 5-1/2 + 1/2 = 6-1/2; + 2 + 3 + 1/2 = 12; + 3/4 = 12-3/4.
    planes = stack_wall(
        wall(
            (Role.FINISH, 0.5),
            (Role.FRAMING, 5.5),
            (Role.SHEATHING, 0.5),
            (Role.INSULATION, 2.0),
            (Role.INSULATION, 3.0),
            (Role.COVER, 0.5),
            (Role.CLADDING, 0.75),
        ),
        grid=INCH,
    )
    assert (planes.stud_face, planes.sheathing_plane, planes.trim_plane, planes.cladding_face) == (
        0.5,
        6.5,
        12.0,
        12.75,
    )
    assert planes.added_depth == 5.5
    assert [(one.inner, one.outer) for one in planes.layers[3:5]] == [(6.5, 8.5), (8.5, 11.5)]


def test_sheathing_plane_is_the_studs_where_there_is_no_sheathing() -> None:
    planes = stack_wall(wall((Role.FINISH, 0.5), (Role.FRAMING, 3.5), (Role.INSULATION, 1.5)), grid=INCH)
    assert planes.sheathing_plane == 4.0
    assert planes.trim_plane == 5.5


def test_double_stud_wall_has_its_sheathing_plane_outside_both_rows() -> None:
    planes = stack_wall(
        wall(
            (Role.FINISH, 0.5),
            (Role.FRAMING, 3.5),
            (Role.INSULATION, 4.25),
            (Role.FRAMING, 3.5),
            (Role.SHEATHING, 0.4375),
            (Role.STRAPPING, 0.75),
        ),
        grid=INCH,
    )
    assert (planes.stud_face, planes.sheathing_plane, planes.added_depth) == (0.5, 12.1875, 0.75)


def test_a_wall_of_boards_only_carries_no_window() -> None:
    with pytest.raises(WallError, match="wall 'w' has neither framing nor sheathing; nothing can carry a window"):
        stack_wall(wall((Role.INSULATION, 2.0)), grid=INCH)


@given(st.lists(st.integers(1, 64 * 6), min_size=1, max_size=8))
def test_every_face_is_the_exact_sum_of_what_lies_inside_it(counts: list[int]) -> None:
    """Sixty-fourths are exact in binary: no face may differ from the sum of its whole numbers."""
    layers = [(Role.FRAMING, 1.5), *((Role.INSULATION, count / 64) for count in counts)]
    planes = stack_wall(wall(*layers), grid=INCH)
    faces = [one.outer for one in planes.layers]
    assert faces == [(96 + sum(counts[:i])) / 64 for i in range(len(counts) + 1)]


@given(st.lists(st.floats(0.004, 0.06), min_size=1, max_size=8))
def test_thin_membranes_count_together(thicknesses: list[float]) -> None:
    """Each face is rounded once from the exact sum: never off by more than half a sixty-fourth."""
    layers = [(Role.FRAMING, 1.5), *((Role.MEMBRANE, thickness) for thickness in thicknesses)]
    planes = stack_wall(wall(*layers), grid=INCH)
    assert planes.cladding_face == pytest.approx(1.5 + sum(thicknesses), abs=1 / 128 + 1e-9)


def test_the_sheathing_plane_is_the_outermost_of_two_sheathings() -> None:
    # An inner airtight sheet and an outer one: 1/2 + 7/16 + 5-1/2 + 1/2 = 6-15/16.
    planes = stack_wall(
        wall(
            (Role.FINISH, 0.5), (Role.SHEATHING, 0.4375), (Role.FRAMING, 5.5), (Role.SHEATHING, 0.5), (Role.COVER, 0.5)
        ),
        grid=INCH,
    )
    assert planes.sheathing_plane == 6.9375
