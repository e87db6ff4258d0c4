"""The sheets of a drawing as pages for the press: border, title block, views, as the layouts of the DXF have them."""

from __future__ import annotations

from jambs.drawings.drawing import Drawing, Sheet
from jambs.drawings.dxf.document import BORDER, repeatable
from jambs.drawings.dxf.title_block import title_lettering, title_rules
from jambs.drawings.layout.paper import Page
from jambs.drawings.svg.pen import SvgPage, SvgPen
from jambs.drawings.views.view import Ink
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
    page = sheet.page
    written = SvgPage(page.width * MM_PER_INCH, page.height * MM_PER_INCH)
    pen = SvgPen(page=written)
    for start, end in page.border:
        pen.line((start, end), BORDER)
    for segment in title_rules(page):
        pen.line(segment, Ink.TITLE)
    for text in title_lettering(drawing, sheet):
        pen.text(text)
    for on_page in sheet.views:
        view, factor = on_page.view, on_page.view.scale.factor
        left, bottom = on_page.box.left - view.box.left / factor, on_page.box.bottom - view.box.bottom / factor
        SvgPen(page=written, factor=factor, origin=(left, bottom)).view(view)
    titles = [on_page.view.title for on_page in sheet.views]
    return written.done(f"{drawing.title.opening}, sheet {sheet.number} of {sheet.count}: {', '.join(titles)}")
