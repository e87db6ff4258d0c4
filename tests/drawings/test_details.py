"""Details of parts: ends where they sit in the wall, edges in trade words, and words that agree with the picture."""

from __future__ import annotations

import re

import pytest
from samples import SAMPLES, drawn, made

from jambs.drawings.elements.placed import PlacedView
from jambs.length import FINE, Units
from jambs.parts.board.part import Part
from jambs.parts.words.cut_words import work_words

EACH = pytest.mark.parametrize("name", list(SAMPLES))
LEFT_OF = {"left": "right", "bottom": "top"}
"""What is at the left of a detail, what at its right: left and right as seen from inside, legs with the bottom left."""


def detailed(name: str) -> list[tuple[Part, PlacedView]]:
    views = {view.name: view for view in drawn(name).views}
    parts = made(name)[0].parts
    return [(part, views[f"detail {part.mark}"]) for part in parts if f"detail {part.mark}" in views]


def label(view: PlacedView, words: str) -> float:
    (at,) = [text.at[0] for text in view.texts if text.lines == (words,)]
    return at


@EACH
def test_ends_are_named_where_they_sit(name: str) -> None:
    """The ends in the wall come from the seat: x right, y up (the job's own axes)."""
    for part, view in detailed(name):
        ends = [part.seat.at(u, 0.0, 0.0) for u in (0.0, part.length)]
        axis = 0 if abs(ends[1][0] - ends[0][0]) > abs(ends[1][1] - ends[0][1]) else 1
        low, high = ("left", "right") if axis == 0 else ("bottom", "top")
        assert label(view, low) < label(view, high), part.mark


@EACH
def test_the_picture_is_turned_not_mirrored(name: str) -> None:
    """A turn keeps the sense in which the corners run (sign of the area), a mirror image does not."""
    for part, view in detailed(name):
        starts_low = part.seat.along[0] > 0.5 or part.seat.along[1] > 0.5
        outline = view.shapes[0].points
        wanted = part.outline if starts_low else [(part.length - u, part.width - v) for u, v in part.outline]
        assert [point for pair in outline for point in pair] == pytest.approx([one for pair in wanted for one in pair])


def end_width(view: PlacedView, part: Part, *, far: bool) -> float:
    levels = [y for x, y in view.shapes[0].points if (x > part.length / 2) is far]
    return max(levels) - min(levels)


def test_a_taper_is_where_its_words_say() -> None:
    seen = 0
    for part, view in detailed("measured"):
        for line in work_words(part, grid=FINE[Units.INCH]):
            found = re.search(r"taper the .* at the (left|right|top|bottom)", line)
            if found:
                seen += 1
                assert (end_width(view, part, far=False) < end_width(view, part, far=True)) is (found[1] in LEFT_OF), (
                    part.mark
                )
    assert seen


EDGES = {
    "extension jamb": {"room edge", "frame edge"},
    "stool": {"room edge", "frame edge"},
    "exterior extension jamb": {"frame edge", "outer edge"},
    "exterior sill": {"frame edge", "outer edge"},
    "casing": {"inner edge", "outer edge"},
}
"""The trade's names of the long edges (common practice, no source)."""


@pytest.mark.parametrize("name", ["picture framed", "stool", "measured", "metric"])
def test_edges_have_their_trade_names(name: str) -> None:
    for part, view in detailed(name):
        words = " ".join(line for text in view.texts for line in text.lines)
        assert "near edge" not in words and "far edge" not in words
        for kind, names in EDGES.items():
            if part.name == kind:
                found = re.search(r"face up, (\w+ edge) above, (\w+ edge) below", words)
                assert found and set(found.groups()) == names, part.mark
