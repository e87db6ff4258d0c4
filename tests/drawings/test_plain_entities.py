"""Plain entities written as text are those that ezdxf writes of its own objects, to the byte."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from ezdxf.enums import TextEntityAlignment
from ezdxf.layouts.base import BaseLayout

from jambs.drawings.dxf.document import BOLD_STYLE, STYLE, new_document, repeatable, save
from jambs.drawings.dxf.space import ObjectSpace, Space, TextSpace, Type
from jambs.drawings.elements.paper import scales_of
from jambs.length import Units

LONG = "a note that has to be parted into pieces of at most 250 signs, not at a caret ^" * 9
TEXTS = {
    "size": '35 1/2"',
    "none": "",
    "caret": "ends in ^",
    "two": "two\nlines",
    "accent": "Fenêtre ⌀ 5",
    "long": LONG,
}


def saved(fill: Callable[[BaseLayout], None], path: Path, *, in_block: bool = False) -> bytes:
    """Return a document with some entities in model space or in a block."""
    with repeatable():
        document = new_document(Units.INCH, scales_of(Units.INCH)[:1])
        fill(document.blocks.new("PIECE") if in_block else document.modelspace())
        save(document, path)
    return path.read_bytes()


def one_of_each(space: Space) -> None:
    """Put one of each plain entity, one of ezdxf's own between them."""
    space.line((1.0, -2.5), (1 / 3, 1e-9), "NOTE")
    space.layout.add_circle((0, 0), 1)
    space.point((0.1, 0.2), "Defpoints")
    for closed, dash in ((True, 24), (False, 1)):
        space.polyline([(0.0, 0.0), (1.0, 0.0), (1.0, 2.0)], (0.0, 0.5, -1.0), "HIDDEN", closed=closed, dash=dash)
    space.solid([(0.0, 0.0), (1.0, 0.0), (0.0, 1.0)], "TEXT")
    space.solid([(0.0, 0.0), (1.0, 0.0), (0.0, 1.0), (1.0, 1.0)], "TEXT")
    for words in TEXTS.values():
        for upright, style in ((True, BOLD_STYLE), (False, STYLE)):
            space.mtext(words, (3.0, 4.0), 5, Type(layer="TEXT", style=style, height=0.1, upright=upright))


@pytest.mark.parametrize("in_block", [False, True])
def test_entities_as_text_are_those_that_ezdxf_writes(in_block: bool, tmp_path: Path) -> None:
    ours = saved(lambda layout: one_of_each(TextSpace(layout)), tmp_path / "ours.dxf", in_block=in_block)
    theirs = saved(lambda layout: one_of_each(ObjectSpace(layout)), tmp_path / "theirs.dxf", in_block=in_block)
    assert ours == theirs


@pytest.mark.parametrize("align", [TextEntityAlignment.LEFT, TextEntityAlignment.CENTER, TextEntityAlignment.RIGHT])
@pytest.mark.parametrize("upright", [False, True])
@pytest.mark.parametrize("words", TEXTS.values(), ids=TEXTS)
def test_a_line_of_text_is_that_which_ezdxf_writes(
    words: str, align: TextEntityAlignment, upright: bool, tmp_path: Path
) -> None:
    set_in = Type(layer="NOTE", style=BOLD_STYLE, height=2.5, upright=upright)

    def put_object(layout: BaseLayout) -> None:
        attributes = {"layer": "NOTE", "style": BOLD_STYLE}
        text = layout.add_text(words, height=2.5, rotation=90 if upright else 0, dxfattribs=attributes)
        text.set_placement((1.5, 2.5), align=align)

    ours = saved(lambda layout: TextSpace(layout).text(words, (1.5, 2.5), align, set_in), tmp_path / "ours.dxf")
    assert ours == saved(put_object, tmp_path / "theirs.dxf")
