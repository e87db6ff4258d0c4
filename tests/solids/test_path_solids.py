"""Random paths against the solid kernel: boards sawn from their cut lists alone close and do not clash."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from jambs.geometry import Point
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part, PartBlank
from jambs.parts.shapes.opening_path import BoardPlanes, CornerJoint, PathEdge, path_boards, path_fault, turn_deg
from jambs.parts.shapes.path_cuts import sawn_board
from jambs.sides import Side
from jambs.solids import kernel
from jambs.solids.clashes import clashes
from jambs.solids.joints import meetings
from jambs.solids.model import Solid, board_shape, stood
from jambs.solids.report import TIGHT
from jambs.solids.waste import board_less_cuts


def solids_of(path: tuple[PathEdge, ...]) -> list[Solid]:
    return [_solid(_part(board, number)) for number, board in enumerate(path_boards(path))]


def _part(board: BoardPlanes, number: int) -> Part:
    sawn = sawn_board(board, 5.0)
    return Part(
        mark=f"P-{number}",
        kind=PartKind.EXTENSION_JAMB,
        side=Side.HEAD,
        where=Where.INTERIOR,
        blank=PartBlank(stock="poplar", thickness=board.edge.thickness),
        cuts=sawn.cuts,
        seat=sawn.seat,
    )


def _solid(part: Part) -> Solid:
    return stood(name=part.mark, material="poplar", part=part, bench=board_shape(part.silhouettes), seat=part.seat)


def edges_of(
    corners: list[Point], flares: list[float], joints: list[CornerJoint], *, thickness: float, rabbet: float
) -> tuple[PathEdge, ...]:
    return tuple(
        PathEdge(
            side=Side.HEAD,
            corner=corner,
            flare_deg=flare,
            joint=joint,
            rabbet=0.0 if joint is CornerJoint.MITER else rabbet,
            thickness=thickness,
            depths=(4.0, 4.0),
        )
        for corner, flare, joint in zip(corners, flares, joints, strict=True)
    )


@st.composite
def paths(draw: st.DrawFn) -> tuple[PathEdge, ...]:
    """Draw three to seven corners round a circle, flares up to 60° where the boards stay long enough to be boards."""
    count = draw(st.integers(3, 7))
    gaps = [draw(st.integers(2, 6)) for _ in range(count)]
    at, corners = 0.0, []
    for gap in gaps:
        at -= 2 * math.pi * gap / sum(gaps)
        radius = draw(st.integers(28, 32))
        corners.append((radius * math.cos(at), radius * math.sin(at)))
    assume(not path_fault(tuple(corners)))
    turns = [turn_deg(tuple(corners), i) for i in range(count)]
    assume(all(15 < turn < 140 for turn in turns))
    flares = [float(draw(st.integers(0, 60))) for _ in range(count)]
    joints = [draw(st.sampled_from(CornerJoint)) for _ in range(count)]
    return edges_of(corners, flares, joints, thickness=0.75, rabbet=draw(st.sampled_from([0.0, 0.25])))


@settings(max_examples=12)
@given(paths())
def test_random_paths_close_and_do_not_clash(path: tuple[PathEdge, ...]) -> None:
    solids = solids_of(path)
    assert clashes(solids, tolerance=lambda one, two: TIGHT) == ()
    for i, solid in enumerate(solids):
        assert solid.part is not None
        assert kernel.volume(solid.bench) == pytest.approx(board_less_cuts(solid.part), abs=1e-4)
        length = max(u for u, _ in solid.part.silhouettes.face)
        assert length == pytest.approx(solid.part.length, abs=TIGHT)
        touch = sum(area for gap, area in meetings(solids[i - 1], solid) if abs(gap) < TIGHT)
        assert touch >= 0.99 * least_touch(path, i) - TIGHT


def least_touch(path: tuple[PathEdge, ...], i: int) -> float:
    """Area over which the boards of a corner meet: the lesser of their end sections, square to the grain, at least.

    A butted end meets the other's face over all of itself as far as that board is deep there, and both are as deep.
    """
    one, two = path[i - 1], path[i]
    joint = two.joint
    stopped = one if joint is CornerJoint.AFTER_RUNS_THROUGH else two
    if joint is CornerJoint.MITER:
        stopped = min(one, two, key=lambda edge: edge.flare_deg)
    return 0.75 * stopped.depths[0] / math.cos(math.radians(stopped.flare_deg))


def test_a_rabbet_takes_the_leg_of_a_flared_corner() -> None:
    """Let in 1/4 in: the head covers the leg's end and 1/4 in of its face side; nothing clashes, nothing gapes."""
    corners = [(0.0, 0.0), (0.0, 30.0), (25.0, 30.0), (25.0, 0.0)]
    joints = [CornerJoint.BEFORE_RUNS_THROUGH, CornerJoint.AFTER_RUNS_THROUGH] * 2
    path = edges_of(corners, [20.0, 10.0, 15.0, 5.0], joints, thickness=0.75, rabbet=0.25)
    solids = solids_of(path)
    assert clashes(solids, tolerance=lambda one, two: TIGHT) == ()
    for i in range(4):
        meets = [area for gap, area in meetings(solids[i - 1], solids[i]) if abs(gap) < TIGHT]
        assert len(meets) == 2, "the end on the bottom of the rabbet, the face on its shoulder"
        part = solids[i].part
        assert part is not None
        assert kernel.volume(solids[i].bench) == pytest.approx(board_less_cuts(part), abs=1e-4)


def test_a_corner_that_is_sawn_wrong_gapes() -> None:
    """A board shifted by a fiftieth of an inch along its grain no longer meets the other."""
    path = edges_of(
        [(0.0, 0.0), (0.0, 30.0), (25.0, 30.0), (25.0, 0.0)], [20.0, 10.0, 15.0, 5.0], [CornerJoint.MITER] * 4,
        thickness=0.75, rabbet=0.0,
    )  # fmt: skip
    one, two = solids_of(path)[:2]
    assert two.part is not None
    x, y, d = two.part.seat.origin
    off = _solid(replace(two.part, seat=replace(two.part.seat, origin=(x + 0.02, y, d))))
    assert sum(area for gap, area in meetings(one, two) if abs(gap) < TIGHT) > 3.0
    assert sum(area for gap, area in meetings(one, off) if abs(gap) < TIGHT) == 0.0
