"""Drawings on a sheet keep their size, or say that they lost it."""

from __future__ import annotations

import hand_kits as hand
import pytest

from jambs.sheets.pictures import GAP, Picture, PictureError, following, picture_room, set_row, svg_size


def picture(width: float, height: float) -> Picture:
    return Picture(title="Section", svg=hand.box_svg(width, height), scale='scale 3" = 1\'-0"')


@pytest.mark.parametrize(
    ("head", "size"),
    [
        ('<svg width="25.4mm" height="50.8mm">', (72.0, 144.0)),
        ('<?xml version="1.0"?>\n<svg viewBox="0 0 1 1" height="1in" width="2in">', (144.0, 72.0)),
        ('<svg width="96" height="48px">', (72.0, 36.0)),
        ('<svg stroke-width="3mm" width="2.54cm" height="10pt">', (72.0, 10.0)),
    ],
)
def test_natural_size(head: str, size: tuple[float, float]) -> None:
    """CSS: 1 in = 25.4 mm = 96 px = 72 pt (CSS Values and Units, absolute lengths)."""
    assert svg_size(head) == pytest.approx(size, abs=1e-9)


def test_drawing_without_a_size_is_refused() -> None:
    with pytest.raises(PictureError) as raised:
        svg_size('<svg viewBox="0 0 4 4">')
    assert str(raised.value) == (
        "the drawing starts '<svg viewBox=\"0 0 4 4\">'; "
        "a width and a height in mm, cm, in, pt or px are needed to place it"
    )


def test_row_that_fits_keeps_size_and_scale() -> None:
    one, two = set_row((picture(3, 3), picture(4, 2)), width=7.5 * 72, height=250)
    assert (one.width, one.height, two.width, two.height) == pytest.approx((216, 216, 288, 144), abs=0.05)
    assert {one.note, two.note} == {'scale 3" = 1\'-0"'}


def test_wide_row_shrinks_the_widest_and_says_so() -> None:
    one, two = set_row((picture(2, 2), picture(8, 3)), width=7.5 * 72, height=250)
    assert one.note == 'scale 3" = 1\'-0"'
    assert two.note == "not to scale (shrunk to 67 %)"
    assert one.width + two.width + GAP == pytest.approx(7.5 * 72, abs=0.01)
    assert two.width / two.height == pytest.approx(8 / 3, rel=1e-3)


def test_high_drawing_shrinks_to_the_height() -> None:
    (one,) = set_row((picture(2, 5),), width=7.5 * 72, height=180)
    assert (one.width, one.height) == pytest.approx((72, 180), abs=0.05)
    assert one.note == "not to scale (shrunk to 50 %)"


@pytest.mark.parametrize(("paper", "width"), [("letter", 540.0), ("A4", 523.28)])
def test_what_keeps_to_the_room_is_not_shrunk(paper: str, width: float) -> None:
    """By hand: 8 1/2 in less two margins of 1/2 in is 540 pt; 210 mm less the same is 523.28 pt."""
    across, high = picture_room(paper)
    row = set_row((picture(across * 0.4, high), picture(across * 0.6, high)), width=width, height=high * 72)
    assert {one.note for one in row} == {'scale 3" = 1\'-0"'}
    assert sum(one.width for one in row) + GAP == pytest.approx(width, abs=0.05)


@pytest.mark.parametrize(
    ("high", "height", "note"),
    [
        (250, 250.0, "1:10"),
        (310, 250.0, "not to scale (shrunk to 81 %)"),  # to be read as it is: no more room than before
        (320, 320.0, "1:10"),  # 250 / 320 is 78 %, under the 80 % at which letters are read
        (840, 420.0, "not to scale (shrunk to 50 %)"),
    ],
)
def test_what_follows_the_parts_is_higher_where_it_could_not_be_read(high: float, height: float, note: str) -> None:
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" width="100pt" height="{high}pt"/>'
    ((found,),) = following([(Picture(title="Exploded view", svg=svg, scale="1:10"),)], 540.0, is_last_shrunk=False)
    assert (found["height"], found["note"]) == (pytest.approx(height), note)


def test_the_last_of_some_pictures_is_tried_as_small_as_its_letters_are_read() -> None:
    """80 % of 200 pt; what is before it is tried as it is alone."""
    rows = [(picture(3, 3),), (Picture(title="Exploded view", svg=hand.box_svg(2, 200 / 72), scale="1:50"),)]
    tried = following(rows, 540.0, is_last_shrunk=True)
    assert [one["height"] for (one,) in tried] == pytest.approx([216.0, 200.0, 160.0], abs=0.05)
    assert [one["note"] for (one,) in tried][1:] == ["1:50", "not to scale (shrunk to 80 %)"]
    assert len(following(rows, 540.0, is_last_shrunk=False)) == 2
