"""SVG pictures of whole pages, made from the same entities as the DXF."""

from __future__ import annotations

from collections.abc import Iterable

from ezdxf.addons.drawing.config import BackgroundPolicy, ColorPolicy, Configuration, LineweightPolicy
from ezdxf.addons.drawing.frontend import Frontend
from ezdxf.addons.drawing.layout import Margins, Page, Settings
from ezdxf.addons.drawing.layout import Units as PageUnits
from ezdxf.addons.drawing.properties import RenderContext
from ezdxf.addons.drawing.svg import SVGBackend
from ezdxf.document import Drawing as Document
from ezdxf.math import BoundingBox2d

from jambs.drawings.drawing import Drawing
from jambs.drawings.dxf.document import repeatable, unit_factor
from jambs.drawings.dxf.model import make_document
from jambs.length import MM_PER_INCH

CONFIGURATION = Configuration(
    background_policy=BackgroundPolicy.WHITE,
    color_policy=ColorPolicy.BLACK,  # gray lines fall to dots on printers without gray; weights tell what is what
    lineweight_policy=LineweightPolicy.ABSOLUTE,
    lineweight_scaling=1.0,
    min_dash_length=1e-4,
)


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
