"""Spreading, covering and lettering, each against something computed another way."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as some
from PIL import ImageFont

from jambs.drawings.elements.boxes import Box
from jambs.drawings.elements.cover import is_inside, middle_of_largest, visible_area, visible_pieces
from jambs.drawings.elements.lettering import text_width, wrapped
from jambs.drawings.elements.placed import Align, Lettering
from jambs.drawings.layout.spacing import slot, spread, spread_sizes
from jambs.drawings.views.seen import hull

TINY = 1e-6
PLACES = some.lists(some.floats(-10, 10), min_size=1, max_size=12).map(sorted)
Polygon = tuple[tuple[float, float], ...]


@given(wanted=PLACES, pitch=some.floats(0.01, 3))
def test_spread_places_are_apart_in_order_and_keep_their_mean(wanted: list[float], pitch: float) -> None:
    """Least squares with order constraints keeps the mean of every pool (Barlow and others 1972, from memory)."""
    placed = spread(wanted, pitch=pitch)
    assert all(two - one >= pitch - TINY for one, two in pairwise(placed))
    assert sum(placed) == pytest.approx(sum(wanted), abs=TINY * 100)


def test_spread_by_hand() -> None:
    """Two on one spot move half the pitch each; one far off stays."""
    assert spread([1.0, 1.0, 9.0], pitch=2.0) == pytest.approx([0.0, 2.0, 9.0])
    assert spread([1.0, 4.0], pitch=2.0) == [1.0, 4.0]


@given(
    ideal=some.floats(0, 10),
    half=some.floats(0.1, 2),
    lines=some.lists(some.floats(0, 10), max_size=5),
)
def test_a_slot_is_free_and_no_other_is_nearer(ideal: float, half: float, lines: list[float]) -> None:
    found = slot(ideal, half=half, low=0.0, high=10.0, lines=lines, clear=0.1)
    steps = [half + index * (10 - 2 * half) / 997 for index in range(998)]
    free = [one for one in steps if all(abs(one - line) >= half + 0.1 for line in lines)]
    if found is None:
        assert free == []
    else:
        assert all(abs(found - line) >= half + 0.1 - TINY for line in lines)
        assert all(abs(found - ideal) <= abs(one - ideal) + TINY for one in free)


def rectangle(left: float, bottom: float, width: float, height: float) -> Polygon:
    return ((left, bottom), (left + width, bottom), (left + width, bottom + height), (left, bottom + height))


RECTANGLES = some.builds(rectangle, some.integers(0, 8), some.integers(0, 8), some.integers(1, 6), some.integers(1, 6))


def area(polygon: Polygon) -> float:
    pairs = zip(polygon, (*polygon[1:], polygon[0]), strict=True)
    return abs(sum(a * d - b * c for (a, b), (c, d) in pairs)) / 2


@given(base=RECTANGLES, covers=some.lists(RECTANGLES, max_size=4))
def test_the_visible_area_is_counted_by_unit_squares(base: Polygon, covers: list[Polygon]) -> None:
    cells = [(x + 0.5, y + 0.5) for x in range(16) for y in range(16)]
    seen = sum(is_inside(cell, base) and not any(is_inside(cell, one) for one in covers) for cell in cells)
    assert sum(area(piece) for piece in visible_area(base, covers)) == pytest.approx(seen, abs=TINY)


@given(
    base=some.lists(some.tuples(some.floats(0, 9), some.floats(0, 9)), min_size=3, max_size=7).map(hull),
    cover=some.lists(some.tuples(some.floats(0, 9), some.floats(0, 9)), min_size=3, max_size=7).map(hull),
)
def test_the_visible_area_of_slanted_polygons_is_the_difference(base: Polygon, cover: Polygon) -> None:
    """Area less the area of the overlap, which is cut out edge by edge (Sutherland and Hodgman 1974)."""
    if len(base) < 3 or len(cover) < 3 or area(base) < 0.01 or area(cover) < 0.01:
        return
    common = area(clipped(base, cover))
    assert sum(area(piece) for piece in visible_area(base, [cover])) == pytest.approx(area(base) - common, abs=1e-4)


def clipped(subject: Polygon, convex: Polygon) -> Polygon:
    points = list(subject)
    for (ax, ay), (bx, by) in zip(convex, (*convex[1:], convex[0]), strict=True):
        kept = []
        for one, two in zip(points, points[1:] + points[:1], strict=True):
            first = (bx - ax) * (one[1] - ay) - (by - ay) * (one[0] - ax)
            second = (bx - ax) * (two[1] - ay) - (by - ay) * (two[0] - ax)
            if first >= 0:
                kept.append(one)
            if first * second < 0:
                share = first / (first - second)
                kept.append((one[0] + share * (two[0] - one[0]), one[1] + share * (two[1] - one[1])))
        points = kept
    return tuple(points) or ((0.0, 0.0),)


def test_an_edge_behind_a_board_is_seen_on_both_sides_of_it() -> None:
    board = rectangle(2, -1, 3, 2)
    assert visible_pieces(((0.0, 0.0), (10.0, 0.0)), [board]) == [((0.0, 0.0), (2.0, 0.0)), ((5.0, 0.0), (10.0, 0.0))]
    assert visible_pieces(((2.0, -1.0), (5.0, -1.0)), [board]) == []
    assert visible_pieces(((0.0, 5.0), (10.0, 5.0)), [board]) == [((0.0, 5.0), (10.0, 5.0))]
    other = rectangle(7, -1, 1, 2)
    pieces = visible_pieces(((0.0, 0.0), (10.0, 0.0)), [board, other])
    assert [end[0] for piece in pieces for end in piece] == pytest.approx([0, 2, 5, 7, 8, 10])


def test_the_middle_of_an_angle_lies_in_the_metal() -> None:
    """An L, 4 up and 1 out, 1/4 thick: the middle of its box is not in it."""
    angle = ((0.0, 0.0), (1.0, 0.0), (1.0, 0.25), (0.25, 0.25), (0.25, 4.0), (0.0, 4.0))
    found = middle_of_largest(angle, [])
    assert found is not None
    assert found[0] == pytest.approx(0.9375)
    assert found[1] == pytest.approx((0.125, 2.125))
    assert is_inside(found[1], angle)


@pytest.mark.parametrize("text", ['4 11/16"', "139.7 mm", "W03-12  extension jamb", "Section at jamb", "45°"])
@pytest.mark.parametrize("bold", [False, True])
def test_text_is_as_wide_as_another_library_draws_it(text: str, bold: bool) -> None:
    """Pillow (FreeType) sets letter by letter, no kerning; capitals of Liberation Sans are 1409 / 2048 high."""
    name = "LiberationSans-Bold.ttf" if bold else "LiberationSans-Regular.ttf"
    path = __import__("importlib.resources").resources.files("jambs.data").joinpath("fonts", name)
    font = ImageFont.truetype(str(path), 2048)
    wide = sum(font.getlength(letter) for letter in text) / 1409
    assert text_width(text, height=1.0, bold=bold) == pytest.approx(wide, rel=0.002)


def test_a_length_is_never_broken_over_two_lines() -> None:
    text = 'notch both ends 3 11/16" long x 4 11/16" in from the frame edge; 45 3/4" between'
    for width in (0.5, 1.0, 1.7, 2.2, 3.0):
        lines = wrapped(text, width=width, height=3 / 32)
        assert " ".join(lines) == text
        assert not any(line.split(" ")[0].count("/") for line in lines)


def test_a_number_and_its_unit_stand_on_one_line() -> None:
    text = "bottom of the frame 1000 mm, top 2100 mm; moves by ±67 %, weighs 222 kg, about 2 m over the ground"
    for width in (0.5, 1.0, 1.7, 2.2, 3.0):
        lines = wrapped(text, width=width, height=3 / 32)
        assert " ".join(lines) == text
        assert not any(line.startswith(("mm", "m ", "kg", "%")) for line in lines)


def test_two_spaces_leave_none_at_the_head_of_a_line() -> None:
    """A mark and a name stand two spaces apart; where the name begins a line it begins at its edge."""
    text = "G8-3, G8-4, G8-5: 6 alike  interior casing"
    for width in (text_width(f"{text[:25]}{more}", height=1.0) for more in ("", " ", "  ")):
        lines = [line.rstrip() for line in wrapped(text, width=width, height=1.0)]
        assert lines == ["G8-3, G8-4, G8-5: 6 alike", "interior casing"]
    assert wrapped(text, width=1000.0, height=1.0) == [text]


def test_a_text_turned_upright_takes_the_same_room_turned() -> None:
    level = Lettering(lines=("W03-12",), at=(0.0, 0.0), height=1.0, align=Align.CENTER)
    turned = Lettering(lines=("W03-12",), at=(0.0, 0.0), height=1.0, align=Align.CENTER, upright=True)
    one, two = level.box, turned.box
    assert Box(-one.top, one.left, -one.bottom, one.right) == two


def test_things_of_unlike_sizes_are_moved_apart_by_hand() -> None:
    """2, 4 and 2 long, all wanted at 0: middles 3 apart, the sum of squares is least about 0; one far off stays."""
    assert spread_sizes([0.0, 0.0, 0.0], sizes=[2.0, 4.0, 2.0]) == pytest.approx([-3.0, 0.0, 3.0])
    assert spread_sizes([0.0, 1.0, 20.0], sizes=[2.0, 4.0, 2.0]) == pytest.approx([-1.0, 2.0, 20.0])
    assert spread_sizes([0.0, 3.0], sizes=[2.0, 4.0]) == [0.0, 3.0]
