"""The title block of a layout: a block with attributes, and the key beside it."""

from __future__ import annotations

from ezdxf.document import Drawing as Document
from ezdxf.enums import TextEntityAlignment
from ezdxf.layouts.layout import Paperspace

from jambs.drawings.drawing import Drawing, Sheet
from jambs.drawings.dxf.document import BOLD_STYLE, STYLE
from jambs.drawings.elements.boxes import Box
from jambs.drawings.elements.paper import Page
from jambs.drawings.elements.view import Ink
from jambs.drawings.layout.bubbles import Bubble
from jambs.drawings.layout.issue_table import issue_rules, issue_texts
from jambs.drawings.layout.key_box import fitted_key
from jambs.drawings.layout.title_strip import (
    FIELDS,
    LABEL_HEIGHT,
    TitleField,
    key_room,
    label_at,
    strip_rules,
    value_at,
    value_lines,
)
from jambs.drawings.title import values_of
from jambs.drawings.views.sash import corners


def block_name(page: Page) -> str:
    """Return the name of a page's title block."""
    return f"TITLE-{page.name}"


def define_title_block(document: Document, page: Page, unit: float) -> None:
    """Define the block of one size of page: rules, labels, attributes."""
    block = document.blocks.new(block_name(page))
    for rules, layer in ((strip_rules(page), Ink.TITLE), (issue_rules(page), Ink.DIMENSION)):
        for (x0, y0), (x1, y1) in rules:
            block.add_line((x0 * unit, y0 * unit), (x1 * unit, y1 * unit), dxfattribs={"layer": layer})
    for field in FIELDS:
        x, y = label_at(page, field)
        if field.label:
            label = block.add_text(
                field.label, height=LABEL_HEIGHT * unit, dxfattribs={"layer": Ink.TITLE, "style": STYLE}
            )
            label.set_placement((x * unit, y * unit))
        for tag in tags_of(field):
            x, y = value_at(page, field)
            block.add_attdef(
                tag,
                dxfattribs={
                    "prompt": field.label or field.tag,
                    "height": field.height * unit,
                    "insert": (x * unit, y * unit),
                    "layer": Ink.TITLE,
                    "style": BOLD_STYLE,
                },
            )


def tags_of(field: TitleField) -> list[str]:
    """Return the tags of a field: an attribute holds one line, so each line after the first has a tag of its own."""
    return [field.tag, *(f"{field.tag}-{line}" for line in range(2, field.lines + 1))]


def insert_title_block(layout: Paperspace, drawing: Drawing, sheet: Sheet, unit: float) -> None:
    """Put the title block onto a layout with its values; a value too wide for its field is set smaller."""
    page, corner = sheet.page, sheet.page.margin
    insert = layout.add_blockref(block_name(page), (corner * unit, corner * unit), dxfattribs={"layer": Ink.TITLE})
    values = values_of(drawing.title, sheet=sheet.words)
    for field in FIELDS:
        lines = value_lines(values[field.tag], page, field)
        for tag, line in zip(tags_of(field), lines, strict=False):
            attribute = insert.add_attrib(
                tag, line.words, dxfattribs={"layer": Ink.TITLE, "style": BOLD_STYLE, "height": line.height * unit}
            )
            at = ((line.at[0] + corner) * unit, (line.at[1] + corner) * unit)
            attribute.set_placement(at, align=TextEntityAlignment.LEFT)
    for text in issue_texts(page, drawing.title.revisions):
        written = layout.add_text(
            text.words, height=text.height * unit, dxfattribs={"layer": Ink.TITLE, "style": STYLE}
        )
        written.set_placement(((text.at[0] + corner) * unit, (text.at[1] + corner) * unit))
    _insert_key(layout, drawing, sheet, unit)


def add_bubble(layout: Paperspace, bubble: Bubble, unit: float) -> None:
    """Put a circle with its number and its sheet onto a layout."""
    attributes = {"layer": Ink.TITLE}
    x, y = bubble.center
    layout.add_circle((x * unit, y * unit), bubble.radius * unit, dxfattribs=attributes)
    for (x0, y0), (x1, y1) in bubble.lines:
        layout.add_line((x0 * unit, y0 * unit), (x1 * unit, y1 * unit), dxfattribs=attributes)
    for text in bubble.texts:
        (word,) = text.lines
        written = layout.add_text(word, height=text.height * unit, dxfattribs={**attributes, "style": BOLD_STYLE})
        at = text.base_line(0)
        written.set_placement((at[0] * unit, at[1] * unit), align=TextEntityAlignment.CENTER)


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
