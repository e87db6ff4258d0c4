"""True-scale SVG pictures of views and pages, made from the same entities as the DXF."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from ezdxf.addons.drawing.config import BackgroundPolicy, ColorPolicy, Configuration, LineweightPolicy
from ezdxf.addons.drawing.frontend import Frontend
from ezdxf.addons.drawing.layout import Margins, Page, Settings
from ezdxf.addons.drawing.layout import Units as PageUnits
from ezdxf.addons.drawing.properties import RenderContext
from ezdxf.addons.drawing.svg import SVGBackend
from ezdxf.document import Drawing as Document
from ezdxf.math import BoundingBox2d

from jambs.drawings.drawing import Drawing
from jambs.drawings.dxf.document import new_document, repeatable, unit_factor
from jambs.drawings.dxf.model import make_document
from jambs.drawings.dxf.pen import Pen
from jambs.drawings.dxf.space import ObjectSpace
from jambs.drawings.elements.paper import Scale, scales_of
from jambs.drawings.elements.placed import PlacedView
from jambs.drawings.layout.arrange import arrange
from jambs.length import MM_PER_INCH, Units

CONFIGURATION = Configuration(
    background_policy=BackgroundPolicy.WHITE,
    color_policy=ColorPolicy.BLACK,  # gray lines fall to dots on printers without gray; weights tell what is what
    lineweight_policy=LineweightPolicy.ABSOLUTE,
    lineweight_scaling=1.0,
    min_dash_length=1e-4,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class ViewPicture:
    """A view as SVG of its true size on paper, its title and its scale in words."""

    title: str
    svg: str
    scale: str


def view_svg(drawing: Drawing, name: str, *, scale: Scale | None = None) -> str:
    """Return one view as an SVG whose size is its true size on paper; at another scale its texts are laid out anew."""
    view = drawing.view(name)
    if scale is not None and scale != view.scale:
        view = arrange(drawing.asked_view(name), scale=scale, units=drawing.units)
    return placed_svg(view, units=drawing.units)


def view_picture(drawing: Drawing, name: str, *, width: float, height: float) -> ViewPicture:
    """Return an elevation, a section or a detail at the largest standard scale at which it fits a room [in on paper].

    It has its main dimensions only, no title in the picture: for the cut sheet. Where no scale fits, the smallest.
    """
    asked = drawing.asked_view(name)
    scales = scales_of(drawing.units)
    for scale in scales[min(asked.largest, len(scales) - 1) :]:
        view = arrange(asked.brief(), scale=scale, units=drawing.units)
        if view.paper_width <= width and view.paper_height <= height:
            break
    return ViewPicture(title=asked.title, svg=placed_svg(view, units=drawing.units), scale=scale.words)


def placed_svg(view: PlacedView, *, units: Units) -> str:
    """Return a view that is in its place as an SVG of its true size on paper."""
    unit = unit_factor(units)
    document = new_document(units, [view.scale])
    pen = Pen(
        document=document,
        space=ObjectSpace(document.modelspace()),
        unit=unit,
        shift=(-view.box.left, -view.box.bottom),
        dash=view.scale.factor,
    )
    for fill in view.fills:
        pen.fill(fill, view.scale.factor)
    pen.lines_and_texts(view)
    size = (view.paper_width * MM_PER_INCH, view.paper_height * MM_PER_INCH)
    box = BoundingBox2d([(0, 0), (view.box.width * unit, view.box.height * unit)])
    return _drawn(document, size, box, MM_PER_INCH / (view.scale.factor * unit))


def _drawn(document: Document, size: tuple[float, float], box: BoundingBox2d, scale: float) -> str:
    backend = SVGBackend()
    with repeatable():
        Frontend(RenderContext(document), backend, config=CONFIGURATION).draw_layout(document.modelspace())
    page = Page(size[0], size[1], PageUnits.mm, margins=Margins.all(0))
    settings = Settings(fit_page=False, scale=scale)
    return backend.get_string(page, settings=settings, render_box=box)


def page_svg(drawing: Drawing, name: str) -> str:
    """Return one sheet, by the name of its layout, as an SVG of the page's size."""
    return next(iter(page_svgs(drawing, [name]).values()))


def page_svgs(drawing: Drawing, names: Iterable[str] | None = None) -> dict[str, str]:
    """Return sheets as SVG, by the name of their layout; all of them where none are named."""
    document = make_document(drawing, for_picture=True)
    wanted = list(names) if names is not None else [sheet.name for sheet in drawing.sheets]
    return {name: _page(document, drawing, name) for name in wanted}


def _page(document: Document, drawing: Drawing, name: str) -> str:
    sheet = next(sheet for sheet in drawing.sheets if sheet.name == name)
    unit = unit_factor(drawing.units)
    backend = SVGBackend()
    layout = document.layouts.get(name)
    with repeatable():
        Frontend(RenderContext(document), backend, config=CONFIGURATION).draw_layout(layout)
    width, height = sheet.page.width, sheet.page.height
    page = Page(width * MM_PER_INCH, height * MM_PER_INCH, PageUnits.mm, margins=Margins.all(0))
    box = BoundingBox2d([(0, 0), (width * unit, height * unit)])
    settings = Settings(fit_page=False, scale=MM_PER_INCH / unit)
    return backend.get_string(page, settings=settings, render_box=box)
