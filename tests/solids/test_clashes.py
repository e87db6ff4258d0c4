"""Clashes against interval arithmetic on random boxes, and against the kernel's common volume on sawn parts."""

from __future__ import annotations

from itertools import combinations

import pytest
from cases import examples
from harbour import harbour_solids
from hypothesis import given
from hypothesis import strategies as st

from jambs.geometry import Vector
from jambs.parts.board.part import Seat
from jambs.solids import kernel
from jambs.solids.clashes import clashes
from jambs.solids.model import Solid, stood

TIGHT = 0.001
PLACES = st.tuples(*[st.integers(-6, 6)] * 3)
SIZES = st.tuples(*[st.integers(1, 8)] * 3)


def boxed(name: str, low: Vector, size: Vector) -> Solid:
    long, wide, thick = size
    bench = kernel.prism([(0.0, 0.0, 0.0), (long, 0.0, 0.0), (long, wide, 0.0), (0.0, wide, 0.0)], (0.0, 0.0, thick))
    seat = Seat(origin=low, along=(1.0, 0.0, 0.0), across=(0.0, 1.0, 0.0), through=(0.0, 0.0, 1.0))
    return stood(name=name, material="poplar", part=None, bench=bench, seat=seat)


@examples(80)
@given(PLACES, SIZES, PLACES, SIZES)
def test_boxes_against_interval_arithmetic(
    at: tuple[int, int, int], size: tuple[int, int, int], to: tuple[int, int, int], other: tuple[int, int, int]
) -> None:
    """Whole numbers, so that touching, sharing a face and lying one in the other all come up."""
    one, two = boxed("one", _floats(at), _floats(size)), boxed("two", _floats(to), _floats(other))
    shared = 1
    for low0, long0, low1, long1 in zip(at, size, to, other, strict=True):
        shared *= max(0, min(low0 + long0, low1 + long1) - max(low0, low1))
    found = clashes([one, two], tolerance=lambda *_: TIGHT)
    assert [clash.volume for clash in found] == ([pytest.approx(shared)] if shared else [])


def _floats(numbers: tuple[int, int, int]) -> Vector:
    x, y, d = numbers
    return (float(x), float(y), float(d))


@pytest.mark.parametrize("mark", ["W01", "W11", "D01"])
def test_the_sieves_let_nothing_through(mark: str) -> None:
    """All pairs of a kit by the kernel, without any sieve: no common volume, as the report says."""
    solids = harbour_solids(mark).solids
    standing = [solid.standing for solid in solids]
    assert clashes(solids, tolerance=lambda *_: TIGHT) == ()
    for one, two in combinations(standing, 2):
        assert kernel.volume(kernel.common(one, two)) == pytest.approx(0.0, abs=1e-6)


@examples(25)
@given(st.sampled_from(["W01", "W11"]), st.data())
def test_moved_parts_against_the_kernel(mark: str, data: st.DataObject) -> None:
    """Push one sawn part along an axis: the sieves find a clash where and only where the kernel has a common volume."""
    solids = harbour_solids(mark).solids
    chosen = data.draw(st.sampled_from(solids[1:]))
    axis, way = data.draw(st.integers(0, 2)), data.draw(st.sampled_from([-0.5, -0.125, 0.125, 0.5]))
    x, y, d = chosen.seat.origin
    moved = [(x + way, y, d), (x, y + way, d), (x, y, d + way)][axis]
    seat = Seat(origin=moved, along=chosen.seat.along, across=chosen.seat.across, through=chosen.seat.through)
    pushed = stood(name=chosen.name, material="", part=chosen.part, bench=chosen.bench, seat=seat)
    others = [solid for solid in solids if solid is not chosen]
    asked = {other.words for other in others if kernel.volume(kernel.common(pushed.standing, other.standing)) > 1e-4}
    found = {
        clash.one if clash.two == pushed.words else clash.two
        for clash in clashes([pushed, *others], tolerance=lambda *_: TIGHT)
    }
    assert found == asked
