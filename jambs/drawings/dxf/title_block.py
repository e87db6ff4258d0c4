"""The title block of a layout: a block with attributes, and the key beside it."""

from __future__ import annotations

from ezdxf.document import Drawing as Document
from ezdxf.enums import TextEntityAlignment
from ezdxf.layouts.layout import Paperspace

from jambs.drawings.drawing import Drawing, Sheet
from jambs.drawings.dxf.document import BOLD_STYLE, STYLE
from jambs.drawings.layout.boxes import Box
from jambs.drawings.layout.key_box import fitted_key
from jambs.drawings.layout.paper import Page
from jambs.drawings.layout.title_strip import (
    FIELDS,
    LABEL_HEIGHT,
    key_room,
    label_at,
    strip_rules,
    value_at,
    value_height,
)
from jambs.drawings.title import values_of
from jambs.drawings.views.sash import corners
from jambs.drawings.views.view import Ink


def block_name(page: Page) -> str:
    """Return the name of a page's title block."""
    return f"TITLE-{page.name}"


def define_title_block(document: Document, page: Page, unit: float) -> None:
    """Define the block of one size of page: rules, labels, attributes."""
    block = document.blocks.new(block_name(page))
    for (x0, y0), (x1, y1) in strip_rules(page):
        block.add_line((x0 * unit, y0 * unit), (x1 * unit, y1 * unit), dxfattribs={"layer": Ink.TITLE})
    for field in FIELDS:
        x, y = label_at(page, field)
        if field.label:
            label = block.add_text(
                field.label, height=LABEL_HEIGHT * unit, dxfattribs={"layer": Ink.TITLE, "style": STYLE}
            )
            label.set_placement((x * unit, y * unit))
        x, y = value_at(page, field)
        block.add_attdef(
            field.tag,
            dxfattribs={
                "prompt": field.label or field.tag,
                "height": field.height * unit,
                "insert": (x * unit, y * unit),
                "layer": Ink.TITLE,
                "style": BOLD_STYLE,
            },
        )


def insert_title_block(layout: Paperspace, drawing: Drawing, sheet: Sheet, unit: float) -> None:
    """Put the title block onto a layout with its values; a value too wide for its field is set smaller."""
    page, corner = sheet.page, sheet.page.margin
    insert = layout.add_blockref(block_name(page), (corner * unit, corner * unit), dxfattribs={"layer": Ink.TITLE})
    values = values_of(drawing.title, sheet=sheet.words)
    for field in FIELDS:
        value = values[field.tag]
        x, y = value_at(page, field)
        attribute = insert.add_attrib(
            field.tag,
            value,
            dxfattribs={"layer": Ink.TITLE, "style": BOLD_STYLE, "height": value_height(value, page, field) * unit},
        )
        attribute.set_placement(((x + corner) * unit, (y + corner) * unit), align=TextEntityAlignment.LEFT)
    _insert_key(layout, drawing, sheet, unit)


def _insert_key(layout: Paperspace, drawing: Drawing, sheet: Sheet, unit: float) -> None:
    if drawing.title.key is None:
        return
    key, corner = fitted_key(drawing.title.key, key_room(sheet.page)), sheet.page.margin

    def at(box: Box) -> list[tuple[float, float]]:
        return [((x + corner) * unit, (y + corner) * unit) for x, y in corners(box)]

    for box in (key.wall, key.own, *key.others):
        layout.add_lwpolyline(at(box), close=True, dxfattribs={"layer": Ink.TITLE})
    one, two, three, four = at(key.own)
    layout.add_solid([one, two, four, three], dxfattribs={"layer": Ink.TITLE})
