"""The key of the drawings: every hatch and kind of line that a section may have, drawn as the sections draw it."""

from __future__ import annotations

import re

from samples import drawn

from jambs.drawings.elements.view import Hatch, Ink, ViewKind
from jambs.drawings.svg.key import HATCHES, LINES, drawing_key
from jambs.drawings.svg.picture import view_picture
from jambs.drawings.svg.strokes import stroke_of
from jambs.drawings.views.sections import HATCHES as OF_STUFF


def test_every_hatch_of_a_section_stands_in_the_key_once() -> None:
    known = [hatch for hatch, *_ in HATCHES]
    assert len(known) == len(set(known))
    assert set(OF_STUFF.values()) <= set(known) <= set(Hatch)


def test_hatches_have_the_ink_that_the_sections_give_them() -> None:
    inks = {hatch: ink for hatch, _, ink, _ in HATCHES}
    found = {
        (fill.hatch, fill.ink) for view in drawn("stool").views for fill in view.fills if view.kind is ViewKind.SECTION
    }
    assert found
    assert {(hatch, ink) for hatch, ink in found if inks[hatch] is not ink} == set()


def test_whole_lines_grow_thinner_down_the_key_and_broken_ones_are_broken() -> None:
    weights = [stroke_of(ink).weight for ink, _ in LINES if not stroke_of(ink).dashes]
    assert weights == sorted(weights, reverse=True)
    by_words = {entry.words: entry.svg for entry in drawing_key()}
    assert all(("stroke-dasharray" in by_words[words]) == bool(stroke_of(ink).dashes) for ink, words in LINES)


def test_each_piece_says_something_else_and_has_a_picture_of_its_true_size() -> None:
    key = drawing_key()
    assert len({entry.words for entry in key}) == len({entry.svg for entry in key}) == len(key)
    for entry in key:
        size = re.search(r'width="([\d.]+)mm" height="([\d.]+)mm"', entry.svg)
        assert size and float(size[1]) == 15.24 and float(size[2]) in (2.032, 4.572)  # 0.6 x 0.08 or 0.18 in


def test_lines_are_whole_on_a_printer_without_gray() -> None:
    """A line lighter than a third of full black falls to dots there, as hatches of the wall may (no source)."""
    for ink in Ink:
        color = stroke_of(ink).color
        red, green, blue = (int(color[at : at + 2], 16) / 255 for at in (1, 3, 5))
        light = 0.2126 * red + 0.7152 * green + 0.0722 * blue  # ITU-R BT.709
        assert light < 1 / 3 or ink is Ink.HATCH_WALL, ink


def test_pictures_on_the_cut_sheet_are_black() -> None:
    """What the sections draw in gray and blue for a screen falls to dots on a printer without gray."""
    svg = view_picture(drawn("stool"), "section jamb", width=4.0, height=4.0).svg
    assert set(re.findall(r'(?:stroke|fill)="(#[0-9a-f]{6})"', svg)) == {"#000000"}
