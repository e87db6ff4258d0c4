"""The best straight edge over measured points: against numpy, and by hand."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from jambs.parts.readings.edge import EdgeKind, WallBend, fit_arc, fit_edge, remedy

POINTS = st.lists(st.floats(0, 12, allow_nan=False), min_size=2, max_size=12)


@given(POINTS)
def test_least_squares_against_numpy_polyfit(points: list[float]) -> None:
    """The edge is the least-squares line of numpy.polyfit, moved out until it touches the highest point."""
    at = np.arange(len(points))
    slope, level = np.polyfit(at, points, 1)
    line = level + slope * at
    lift = max(np.array(points) - line)
    edge = fit_edge(points)
    assert edge.first == pytest.approx(line[0] + lift, abs=1e-9)
    assert edge.last == pytest.approx(line[-1] + lift, abs=1e-9)
    assert edge.hollow == pytest.approx(max(line + lift - points), abs=1e-9)


@given(POINTS)
def test_no_point_stands_past_the_edge_and_one_touches(points: list[float]) -> None:
    gaps = fit_edge(points).gaps
    assert min(gaps) == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize(
    ("points", "kind", "bend", "hollow"),
    [
        ((4.0, 4.0), EdgeKind.STRAIGHT, WallBend.NONE, 0.0),
        ((4.0, 4.0, 4.03125), EdgeKind.STRAIGHT, WallBend.NONE, 1 / 64),  # rises 1/32, within the tolerance of 1/32
        ((4.0, 4.125, 4.25), EdgeKind.TAPER, WallBend.NONE, 0.0),
        ((4.0, 4.125, 4.0), EdgeKind.SCRIBE, WallBend.BULGE, 0.125),
        ((4.0, 4.125, 4.0, 4.125, 4.0), EdgeKind.SCRIBE, WallBend.BULGE, 0.125),  # nowhere behind its ends
        ((4.0, 3.875, 4.0), EdgeKind.SCRIBE, WallBend.HOLLOW, 0.125),
        (
            (4.0, 4.25, 4.0, 4.25),
            EdgeKind.SCRIBE,
            WallBend.WAVE,
            0.3,
        ),  # rises 0.05 a step; line 4.05 … 4.2, lifted 0.15
    ],
)
def test_kinds_of_edges(points: tuple[float, ...], kind: EdgeKind, bend: WallBend, hollow: float) -> None:
    edge = fit_edge(points, tolerance=1 / 32)
    assert (edge.kind, edge.bend) == (kind, bend)
    assert edge.hollow == pytest.approx(hollow, abs=1e-9)


@pytest.mark.parametrize(
    ("points", "words"),
    [
        ((4.0, 4.125, 4.0), "leave the width on and scribe the room edge to the wall"),
        ((4.0, 4.1875, 4.0), "plane the wall down at the bulge first, or scribe"),
        ((4.0, 3.75, 4.0), "fur the wall out in the hollow first, or scribe"),
        ((4.0, 4.25, 4.0, 4.25), "plane the high places of the wall and fur the low ones first, or scribe"),
    ],
)
def test_what_to_do(points: tuple[float, ...], words: str) -> None:
    assert remedy(fit_edge(points, tolerance=1 / 32)) == words


@pytest.mark.parametrize(
    ("points", "deepest"),
    [
        # The best line runs from 3.4688 to 3.5313; a board ripped parallel needs no more than the wall is deep.
        ((3.4375, 3.5, 3.5), 3.5),
        ((3.6875, 3.625, 3.625), 3.6875),
        ((4.0, 4.0), 4.0),
        ((4.0, 4.03125, 4.0), 4.03125),
    ],
)
def test_a_board_ripped_parallel_holds_the_deepest_point(points: tuple[float, ...], deepest: float) -> None:
    assert fit_edge(points, tolerance=1 / 16).deepest == pytest.approx(deepest, abs=1e-9)


def test_a_curve_within_the_tolerance_is_eased_and_one_past_it_scribed() -> None:
    """1/16 under the deepest reading, and a 64th more."""
    assert fit_arc([7.75, 7.6875], tolerance=0.0625).kind is EdgeKind.STRAIGHT
    assert fit_arc([7.75, 7.671875], tolerance=0.0625).kind is EdgeKind.SCRIBE
