"""Shop drawings of openings: DXF for CAD, SVG for the cut sheet. The only room that knows ezdxf."""

from jambs.drawings.drawing import Drawing, draw_opening
from jambs.drawings.dxf.model import write_dxf, write_flat_dxf
from jambs.drawings.dxf.picture import page_svg, page_svgs, view_picture, view_svg

__all__ = [
    "Drawing",
    "draw_opening",
    "page_svg",
    "page_svgs",
    "view_picture",
    "view_svg",
    "write_dxf",
    "write_flat_dxf",
]
