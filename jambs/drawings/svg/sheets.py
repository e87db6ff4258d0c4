"""The sheets of a drawing as pages for the press: border, title block, views, as the layouts of the DXF have them."""

from __future__ import annotations

from jambs.drawings.drawing import Drawing, Sheet, numbers_on
from jambs.drawings.dxf.document import BORDER, repeatable
from jambs.drawings.elements.paper import Page
from jambs.drawings.elements.placed import Align, Lettering
from jambs.drawings.elements.view import Fill, Hatch, Ink, Shape
from jambs.drawings.layout.bubbles import Bubble, bubbles_of
from jambs.drawings.layout.issue_table import issue_rules, issue_texts
from jambs.drawings.layout.key_box import fitted_key
from jambs.drawings.layout.title_strip import (
    FIELDS,
    LABEL_HEIGHT,
    key_room,
    label_at,
    strip_rules,
    value_lines,
)
from jambs.drawings.svg.pen import SvgPage, SvgPen
from jambs.drawings.title import values_of
from jambs.drawings.views.sash import corners
from jambs.geometry import Point
from jambs.length import MM_PER_INCH
from jambs.vector_page import VectorPage


def sheet_pages(drawing: Drawing, page: Page) -> list[VectorPage]:
    """Return the sheets of one size of paper as pages of that size, in the order they are printed."""
    with repeatable():
        return [_sheet_page(drawing, sheet) for sheet in drawing.sheets if sheet.page == page]


def drawing_title(drawing: Drawing) -> str:
    """Return the title of a drawing: opening and room."""
    return f"{drawing.title.opening}  {drawing.title.room}"


def _sheet_page(drawing: Drawing, sheet: Sheet) -> VectorPage:
    page, numbers = sheet.page, numbers_on(drawing, sheet.page)
    written = SvgPage(page.width * MM_PER_INCH, page.height * MM_PER_INCH)
    pen = SvgPen(page=written)
    for start, end in page.border:
        pen.line((start, end), BORDER)
    _write_strip(SvgPen(page=written, origin=(page.margin, page.margin)), drawing, sheet)
    for on_page in sheet.views:
        view, factor = on_page.view, on_page.view.scale.factor
        left, bottom = on_page.box.left - view.box.left / factor, on_page.box.bottom - view.box.bottom / factor
        SvgPen(page=written, factor=factor, origin=(left, bottom)).view(view)
        for bubble in bubbles_of(on_page, numbers):
            _write_bubble(pen, bubble)
    titles = [on_page.view.title for on_page in sheet.views]
    return written.done(f"{drawing.title.opening}, sheet {sheet.words}: {', '.join(titles)}")


def _write_bubble(pen: SvgPen, bubble: Bubble) -> None:
    (x, y), radius = bubble.center, bubble.radius
    ends = ((x - radius, y), (x + radius, y))
    pen.shape(Shape(points=ends, bulges=(1.0, 1.0), ink=Ink.TITLE))
    for line in bubble.lines:
        pen.line(line, Ink.TITLE)
    for text in bubble.texts:
        pen.text(text)


def _write_strip(pen: SvgPen, drawing: Drawing, sheet: Sheet) -> None:
    """Write the title block from its lower left corner."""
    page, values = sheet.page, values_of(drawing.title, sheet=sheet.words)
    for segment in strip_rules(page):
        pen.line(segment, Ink.TITLE)
    for segment in issue_rules(page):
        pen.line(segment, Ink.DIMENSION)
    for field in FIELDS:
        _write_words(pen, field.label, label_at(page, field), LABEL_HEIGHT)
        for line in value_lines(values[field.tag], page, field):
            _write_words(pen, line.words, line.at, line.height, bold=True)
    for text in issue_texts(page, drawing.title.revisions):
        _write_words(pen, text.words, text.at, text.height)
    if drawing.title.key is not None:
        key = fitted_key(drawing.title.key, key_room(page))
        for box in (key.wall, key.own, *key.others):
            pen.shape(Shape(points=corners(box), ink=Ink.TITLE))
        pen.fill(Fill(pieces=(corners(key.own),), hatch=Hatch.SOLID, ink=Ink.TITLE))


def _write_words(pen: SvgPen, words: str, at: Point, height: float, *, bold: bool = False) -> None:
    if words:
        middle = (at[0], at[1] + height / 2)
        pen.text(Lettering(lines=(words,), at=middle, height=height, align=Align.LEFT, bold=bold, ink=Ink.TITLE))
