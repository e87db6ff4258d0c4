"""A drawing becomes a DXF document: model space, paper layouts, title blocks. Or the flat one for simple readers."""

from __future__ import annotations

from pathlib import Path

from ezdxf.document import Drawing as Document
from ezdxf.layouts.layout import Paperspace

from jambs.drawings.drawing import Drawing, Sheet, numbers_on, used_scales
from jambs.drawings.dxf.document import BORDER, VIEWPORTS, new_document, repeatable, save, tell_issue, unit_factor
from jambs.drawings.dxf.finishing import finish
from jambs.drawings.dxf.flat import FlatPen
from jambs.drawings.dxf.flat_title import flat_title
from jambs.drawings.dxf.pen import Pen
from jambs.drawings.dxf.space import ObjectSpace, Space, TextSpace
from jambs.drawings.dxf.title_block import add_bubble, define_title_block, insert_title_block
from jambs.drawings.elements.boxes import Box, boxes_joined
from jambs.drawings.elements.placed import PlacedView
from jambs.drawings.layout.bubbles import bubbles_of
from jambs.drawings.layout.packing import OnPage
from jambs.geometry import Point

LOCKED = 16384
"""Flag of a viewport whose scale must not be changed by zooming (DXF reference, VIEWPORT group 90)."""


def write_dxf(drawing: Drawing, path: Path | str) -> None:
    """Write the drawing as DXF R2010: real dimensions in model space, paper layouts with scaled viewports."""
    with repeatable():
        save(make_document(drawing), Path(path))


def write_flat_dxf(drawing: Drawing, path: Path | str) -> None:
    """Write the drawing for simple readers: plain lines, arcs and texts in model space, nothing else."""
    with repeatable():
        save(make_flat_document(drawing), Path(path))


def make_document(drawing: Drawing, *, for_picture: bool = False) -> Document:
    """Make the document that ``write_dxf`` writes.

    ``for_picture``: all entities are objects of ezdxf; and its renderer of pictures stretches broken lines in a
    viewport by the square of its scale, which is undone.
    """
    document = new_document(drawing.units, used_scales(drawing))
    tell_issue(document, drawing.title.issue)
    space = ObjectSpace(document.modelspace()) if for_picture else TextSpace(document.modelspace())
    pens = [(view, _pen(document, drawing, view, space, for_picture=for_picture)) for view in drawing.views]
    for view, pen in pens:
        for fill in view.fills:
            pen.fill(fill, view.scale.factor)
    # Some readers lose the entity that follows a hatch: give them one that nobody needs.
    document.modelspace().add_point((0, 0), dxfattribs={"layer": "Defpoints"})
    for view, pen in pens:
        pen.lines_and_texts(view)
    _add_layouts(document, drawing)
    finish(document, drawing.units, _drawn_on(drawing))
    return document


def make_flat_document(drawing: Drawing) -> Document:
    """Make the document that ``write_flat_dxf`` writes."""
    document = new_document(drawing.units, used_scales(drawing))
    tell_issue(document, drawing.title.issue)
    space = TextSpace(document.modelspace())
    for view in drawing.views:
        pen = _pen(document, drawing, view, space)
        FlatPen(pen=pen, space=space, factor=view.scale.factor).view(view)
    box = _drawn_on(drawing)
    factor = used_scales(drawing)[0].factor
    pen = Pen(document=document, space=space, unit=1.0, dash=factor)
    title = flat_title(drawing.title, over=box, factor=factor * unit_factor(drawing.units))
    for text in title:
        FlatPen(pen=pen, space=space, factor=factor).text(text)
    finish(document, drawing.units, boxes_joined([box, *(text.box for text in title)]))
    return document


def _drawn_on(drawing: Drawing) -> Box:
    """Return the box around all views in model space [drawing units]."""
    unit = unit_factor(drawing.units)
    box = boxes_joined(view.box.moved(*drawing.shifts[view.name]) for view in drawing.views)
    return Box(box.left * unit, box.bottom * unit, box.right * unit, box.top * unit)


def _pen(document: Document, drawing: Drawing, view: PlacedView, space: Space, *, for_picture: bool = False) -> Pen:
    return Pen(
        document=document,
        space=space,
        unit=unit_factor(drawing.units),
        shift=drawing.shifts[view.name],
        dash=1 / view.scale.factor if for_picture else view.scale.factor,
    )


def _add_layouts(document: Document, drawing: Drawing) -> None:
    for page in {sheet.page.name: sheet.page for sheet in drawing.sheets}.values():
        define_title_block(document, page, unit_factor(drawing.units))
    for sheet in drawing.sheets:
        _add_layout(document, drawing, sheet)
    document.layouts.delete("Layout1")
    document.layouts.set_active_layout(drawing.sheets[0].name)
    document.header["$TILEMODE"] = 0  # open on paper


def _add_layout(document: Document, drawing: Drawing, sheet: Sheet) -> None:
    layout = document.layouts.new(sheet.name)
    unit = unit_factor(drawing.units)
    size = (sheet.page.width * unit, sheet.page.height * unit)
    layout.page_setup(size=size, margins=(0, 0, 0, 0), units="inch" if unit == 1.0 else "mm")
    margin = sheet.page.margin
    corners = [
        (margin, margin),
        (sheet.page.width - margin, margin),
        (sheet.page.width - margin, sheet.page.height - margin),
        (margin, sheet.page.height - margin),
    ]
    border = [(x * unit, y * unit) for x, y in corners]
    layout.add_lwpolyline(border, close=True, dxfattribs={"layer": BORDER})
    insert_title_block(layout, drawing, sheet, unit)
    numbers = numbers_on(drawing, sheet.page)
    for on_page in sheet.views:
        _add_viewport(layout, on_page, drawing.shifts[on_page.view.name], unit)
        for bubble in bubbles_of(on_page, numbers):
            add_bubble(layout, bubble, unit)


def _add_viewport(layout: Paperspace, on_page: OnPage, shift: Point, unit: float) -> None:
    """Show a view at its scale: the height of what is seen is the height on paper × the scale's factor."""
    view = on_page.view
    seen = view.box.moved(*shift).center
    viewport = layout.add_viewport(
        center=(on_page.middle[0] * unit, on_page.middle[1] * unit),
        size=(view.paper_width * unit, view.paper_height * unit),
        view_center_point=(seen[0] * unit, seen[1] * unit),
        view_height=view.paper_height * view.scale.factor * unit,
        dxfattribs={"layer": VIEWPORTS},
    )
    viewport.dxf.flags = viewport.dxf.flags | LOCKED
