"""The exploded picture: hidden lines taken out, edges of one board once, every mark beside its part, none crossing."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from cases import kit_of
from collisions import collisions, crossings
from gangs import ganged_kit
from samples import SAMPLES, drawn, made

import jambs
from jambs.drawings.elements.paper import INCH_SCALES
from jambs.drawings.layout.arrange import arrange
from jambs.drawings.views.exploded import EXPLODED, exploded_view, frames_seen
from jambs.drawings.views.seen_edges import Face, seen_edges, sight_from
from jambs.geometry import Vector
from jambs.length import Units
from jambs.parts.board.board_faces import board_faces

EXAMPLES = Path(__file__).parents[2] / "examples"
CORNER: Vector = (1.0, 1.0, -1.0)
FRONT: Vector = (0.0, 0.0, -1.0)


def box(low: Vector, high: Vector) -> list[Face]:
    """The six faces of a box, counter-clockwise as seen from outside it."""
    (x, y, d), (u, v, w) = low, high
    return [
        ((x, y, d), (x, v, d), (u, v, d), (u, y, d)),
        ((x, y, w), (u, y, w), (u, v, w), (x, v, w)),
        ((x, y, d), (u, y, d), (u, y, w), (x, y, w)),
        ((x, v, d), (x, v, w), (u, v, w), (u, v, d)),
        ((x, y, d), (x, y, w), (x, v, w), (x, v, d)),
        ((u, y, d), (u, v, d), (u, v, w), (u, y, w)),
    ]


def long(lines: list[tuple[tuple[float, float], tuple[float, float]]]) -> float:
    return sum(math.dist(*line) for line in lines)


def test_of_a_cube_nine_edges_are_seen_each_once() -> None:
    """Nine of twelve edges, all of length s x sqrt(2/3) (isometric projection)."""
    (seen,) = seen_edges([box((0, 0, 0), (10, 10, 10))], sight_from(CORNER))
    assert len(seen) == 9
    assert all(math.dist(*line) == pytest.approx(10 * math.sqrt(2 / 3), abs=1e-3) for line in seen)


def test_from_the_room_x_runs_to_the_right_and_from_outside_to_the_left() -> None:
    for eye, places in ((FRONT, {0.0, 10.0}), ((0.0, 0.0, 1.0), {0.0, -10.0})):
        (seen,) = seen_edges([box((0, 0, 0), (10, 4, 2))], sight_from(eye))
        assert {round(x, 3) for line in seen for x, _ in line} == places
        assert {round(y, 3) for line in seen for _, y in line} == {0.0, 4.0}


def test_what_stands_before_an_edge_takes_it_out_and_what_stands_behind_does_not() -> None:
    """By hand: a square of 10 behind one of 4 that laps over its lower edge from 3 to 7: 4 in of it are hidden."""
    near, far = box((3, -2, -5), (7, 2, -4)), box((0, 0, 0), (10, 10, 1))
    before, behind = seen_edges([near, far], sight_from(FRONT))
    assert long(before) == pytest.approx(16.0)
    assert long(behind) == pytest.approx(40.0 - 4.0)
    assert long(seen_edges([far], sight_from(FRONT))[0]) == pytest.approx(40.0)


def test_a_board_of_two_pieces_shows_no_line_where_they_meet_but_the_step_of_a_notch() -> None:
    """By hand, front view: 10 x 4 with 3 x 1 notched off its end has the outline 10 + 3 + 3 + 1 + 7 + 4 = 28 in."""
    notched = [*box((0, 0, 0), (7, 4, 1)), *box((7, 1, 0), (10, 4, 1))]
    (seen,) = seen_edges([notched], sight_from(FRONT))
    assert long(seen) == pytest.approx(28.0)


def test_a_curve_of_strips_has_its_outline_only() -> None:
    """A tube of 72 sides seen square to its axis: two lines along it, and its two ends seen on edge."""
    ring = [(10 * math.cos(math.radians(5 * n)), 10 * math.sin(math.radians(5 * n))) for n in range(72)]
    walls = [
        ((0.0, a, b), (0.0, c, d), (30.0, c, d), (30.0, a, b))
        for (a, b), (c, d) in zip(ring, [*ring[1:], ring[0]], strict=True)
    ]
    ends = [tuple((x, a, b) for a, b in way) for x, way in ((0.0, ring[::-1]), (30.0, ring))]
    (seen,) = seen_edges([[*(face[::-1] for face in walls), *ends]], sight_from(FRONT))
    assert sorted(round(math.dist(*line), 2) for line in seen if math.dist(*line) > 5) == [30.0, 30.0]


def test_boards_of_the_house_of_faces_are_drawn_as_their_outlines() -> None:
    """A plain board has nine edges that are seen from a corner; the stool with two horns in its notches more."""
    kit = made("stool")[0]
    plain = next(part for part in kit.parts if part.is_plain)
    (seen,) = seen_edges([board_faces(plain)], sight_from(CORNER))
    assert len(seen) == 9


@pytest.mark.parametrize("name", ["picture framed", "stool", "metric"])
def test_every_part_has_its_mark_and_no_leaders_cross(name: str) -> None:
    kit = made(name)[0]
    view = exploded_view(kit)
    assert sorted(one.lines[0] for one in view.call_outs) == sorted(part.mark for part in kit.parts)
    placed = arrange(view, scale=INCH_SCALES[4], units=Units.INCH)
    assert collisions(placed) == []
    assert crossings(placed) == []


@pytest.mark.parametrize("name", list(SAMPLES))
def test_it_is_asked_of_every_drawing_without_solids(name: str) -> None:
    assert drawn(name).asked_view(EXPLODED).shapes


def test_an_arch_is_drawn_with_its_window() -> None:
    job = jambs.read_job(EXAMPLES / "gable-house")
    kit = next(kit for kit in jambs.make_kits(job) if kit.mark == "G2")
    view = exploded_view(kit)
    assert len(view.call_outs) == len(kit.parts)


def test_every_unit_of_a_gang_has_its_frame_and_one_window_has_one() -> None:
    """Frames of 30 x 48 beside each other, 60 1/2 x 16 over both: left, bottom, right and top of each, by hand."""
    found = [_extent(ring) for ring in frames_seen(ganged_kit())]
    assert found == [(0.0, 0.0, 30.0, 48.0), (30.5, 0.0, 60.5, 48.0), (0.0, 48.5, 60.5, 64.5)]
    plain = kit_of()
    frame = plain.placement.opening.frame
    assert [_extent(ring) for ring in frames_seen(plain)] == [(0.0, 0.0, frame.width, frame.height)]


def _extent(ring: list[Face]) -> tuple[float, float, float, float]:
    xs, ys = zip(*((x, y) for face in ring for x, y, _ in face), strict=True)
    return min(xs), min(ys), max(xs), max(ys)
