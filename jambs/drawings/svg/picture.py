"""True-scale SVG pictures of single views, in black: for cut sheets and other pages of tables."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from jambs.drawings.drawing import Drawing
from jambs.drawings.dxf.document import repeatable
from jambs.drawings.elements.paper import SMALL_SCALES, Scale, scales_of
from jambs.drawings.elements.placed import PlacedView
from jambs.drawings.layout.arrange import arrange
from jambs.drawings.layout.off_edges import off_edges
from jambs.drawings.svg.pen import SvgPage, SvgPen
from jambs.length import MM_PER_INCH


@dataclass(frozen=True, slots=True, kw_only=True)
class ViewPicture:
    """A view as SVG of its true size on paper, its title, its scale in words; ``factor``: what an inch on paper is."""

    title: str
    svg: str
    scale: str
    factor: float


def view_svg(drawing: Drawing, name: str, *, scale: Scale | None = None) -> str:
    """Return one view as an SVG whose size is its true size on paper; at another scale its texts are laid out anew."""
    view = drawing.view(name)
    if scale is not None and scale != view.scale:
        view = off_edges(arrange(drawing.asked_view(name), scale=scale, units=drawing.units))
    return placed_svg(view)


def view_picture(drawing: Drawing, name: str, *, width: float, height: float) -> ViewPicture:
    """Return an elevation, a section or a detail at the largest standard scale at which it fits a room [in on paper].

    It has its main dimensions only, no title in the picture: for the cut sheet. Where no scale fits, the smallest.
    """
    return next(_that_fit(drawing, name, scales_of(drawing.units), width, height))


def view_pictures(drawing: Drawing, name: str, *, width: float, height: float) -> tuple[ViewPicture, ...]:
    """Return a view as ``view_picture`` has it, then at every smaller scale, down to those nobody measures in."""
    scales = (*scales_of(drawing.units), *SMALL_SCALES[drawing.units])
    return tuple(_that_fit(drawing, name, scales, width, height))


def _that_fit(
    drawing: Drawing, name: str, scales: Sequence[Scale], width: float, height: float
) -> Iterator[ViewPicture]:
    asked = drawing.asked_view(name)
    brief, core = asked.brief(), asked.core
    for scale in scales[min(asked.largest, len(scales) - 1) :]:
        is_last = scale is scales[-1]
        if not is_last and max(core.width / width, core.height / height) > scale.factor:
            continue  # the bare shapes are too large already
        view = arrange(brief, scale=scale, units=drawing.units)
        if is_last or (view.paper_width <= width and view.paper_height <= height):
            svg = placed_svg(off_edges(view))
            yield ViewPicture(title=asked.title, svg=svg, scale=scale.words, factor=scale.factor)


def placed_svg(view: PlacedView) -> str:
    """Return a view that is in its place as an SVG of its true size on paper.

    It is black: gray lines fall to dots on printers without gray; weights tell what is what.
    """
    factor = view.scale.factor
    page = SvgPage(view.paper_width * MM_PER_INCH, view.paper_height * MM_PER_INCH, is_black=True)
    with repeatable():
        SvgPen(page=page, factor=factor, origin=(-view.box.left / factor, -view.box.bottom / factor)).view(view)
    return page.picture()
