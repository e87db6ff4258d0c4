"""Shop drawings of openings: DXF for CAD, SVG for the cut sheet. The only room that knows ezdxf.

Each name is loaded when it is first asked for: who wants a view alone waits for no CAD library.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

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

if TYPE_CHECKING:
    from jambs.drawings.drawing import Drawing, draw_opening
    from jambs.drawings.dxf.model import write_dxf, write_flat_dxf
    from jambs.drawings.dxf.page_picture import page_svg, page_svgs
    from jambs.drawings.svg.picture import view_picture, view_svg


def __getattr__(name: str) -> Any:
    if name not in __all__:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    from jambs.drawings import drawing
    from jambs.drawings.dxf import model, page_picture
    from jambs.drawings.svg import picture

    return next(getattr(home, name) for home in (drawing, model, page_picture, picture) if hasattr(home, name))
