"""A small picture of a section at the jamb, as plain SVG: depth runs up the page, outside on top.

All pictures of one wall have the same frame and scale, so that their planes line up side by side.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from jambs.section.region import Region, Section, Stuff

POINTS_PER_INCH = 72.0
FILLS = {
    Stuff.GYPSUM: "url(#dots)",
    Stuff.FRAMING: "url(#lumber)",
    Stuff.CAVITY: "url(#fiber)",
    Stuff.AIR: "#ffffff",
    Stuff.SHEATHING: "url(#sheet)",
    Stuff.MEMBRANE: "#707070",
    Stuff.RIGID: "url(#rigid)",
    Stuff.FIBER: "url(#fiber)",
    Stuff.STRAPPING: "url(#lumber)",
    Stuff.COVER: "url(#sheet)",
    Stuff.CLADDING: "#ffffff",
    Stuff.BUCK: "url(#lumber)",
    Stuff.FRAME: "#ffffff",
    Stuff.GLASS: "#ffffff",
    Stuff.JAMB: "url(#wood)",
    Stuff.CASING: "url(#crosswise)",
    Stuff.SILL: "url(#wood)",
    Stuff.SHIM: "#ffffff",
    Stuff.RETURN: "url(#dots)",
    Stuff.TILE: "url(#sheet)",
    Stuff.FURRING: "url(#lumber)",
    Stuff.SEALANT: "#303030",
    Stuff.METAL: "#000000",
}
BOLD = (Stuff.FRAME, Stuff.JAMB, Stuff.BUCK)
"""Drawn with a heavy line: what moves with the window."""
PATTERNS = (
    '<pattern id="wood" width="3" height="3" patternUnits="userSpaceOnUse">'
    '<rect width="3" height="3" fill="#fff"/><path d="M0,3 L3,0" stroke="#000" stroke-width="0.4"/></pattern>'
    '<pattern id="crosswise" width="3" height="3" patternUnits="userSpaceOnUse">'
    '<rect width="3" height="3" fill="#fff"/><path d="M0,0 L3,3" stroke="#000" stroke-width="0.4"/></pattern>'
    '<pattern id="sheet" width="1.5" height="1.5" patternUnits="userSpaceOnUse">'
    '<rect width="1.5" height="1.5" fill="#fff"/><path d="M0.75,0 V1.5" stroke="#555" stroke-width="0.3"/></pattern>'
    '<pattern id="dots" width="3" height="3" patternUnits="userSpaceOnUse">'
    '<rect width="3" height="3" fill="#fff"/><circle cx="1" cy="1" r="0.3" fill="#555"/></pattern>'
    '<pattern id="lumber" width="5" height="5" patternUnits="userSpaceOnUse">'
    '<rect width="5" height="5" fill="#fff"/><path d="M0,5 L5,0" stroke="#777" stroke-width="0.5"/></pattern>'
    '<pattern id="rigid" width="4" height="4" patternUnits="userSpaceOnUse">'
    '<rect width="4" height="4" fill="#fff"/><circle cx="2" cy="2" r="0.5" fill="#888"/></pattern>'
    '<pattern id="fiber" width="6" height="4" patternUnits="userSpaceOnUse"><rect width="6" height="4" fill="#fff"/>'
    '<path d="M0,4 Q1.5,0 3,2 T6,0" stroke="#aaa" stroke-width="0.5" fill="none"/></pattern>'
)


@dataclass(frozen=True, slots=True, kw_only=True)
class PictureWindow:
    """What a picture shows [in]: across from the frame's outer edge, negative toward the glass; depth outward."""

    across: tuple[float, float]
    depth: tuple[float, float]
    scale: float

    def at(self, across: float, depth: float) -> tuple[float, float]:
        """Return a point on the picture. [pt]"""
        factor = self.scale * POINTS_PER_INCH
        return (across - self.across[0]) * factor, (self.depth[1] - depth) * factor

    @property
    def size(self) -> tuple[float, float]:
        """Width and height of the picture. [pt]"""
        return self.at(self.across[1], self.depth[0])


def section_picture(section: Section, window: PictureWindow, *, planes: Sequence[float]) -> str:
    """Return a section as SVG: a dashed line through each depth of ``planes`` [in], a bold one at the flange."""
    width, height = window.size
    shapes = [_shape(region, window) for region in section.regions]
    lines = [_line(depth, window, "0.4", "2.5,2") for depth in planes]
    flange = _line(section.depths["flange plane"], window, "1.2", "")
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.2f}pt" height="{height:.2f}pt" '
        f'viewBox="0 0 {width:.2f} {height:.2f}"><defs>{PATTERNS}</defs>'
        f"{''.join((*shapes, *lines, flange))}</svg>"
    )


def empty_picture(window: PictureWindow, *, planes: Sequence[float]) -> str:
    """Return the planes alone, for a position at which the window cannot be built."""
    width, height = window.size
    lines = "".join(_line(depth, window, "0.4", "2.5,2") for depth in planes)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.2f}pt" height="{height:.2f}pt" '
        f'viewBox="0 0 {width:.2f} {height:.2f}">{lines}</svg>'
    )


def window_of(sections: Iterable[Section], *, width: float, height: float) -> PictureWindow:
    """Return the frame that shows all of some sections at the jamb, in a room of a width and a height. [pt]"""
    depths = [depth for section in sections for region in section.regions for _, depth in region.outline]
    low, high = min(depths) - 0.3, max(depths) + 0.3
    across = (-4.2, 5.8)
    scale = min(width / (across[1] - across[0]), height / (high - low)) / POINTS_PER_INCH
    return PictureWindow(across=across, depth=(low, high), scale=scale)


def _shape(region: Region, window: PictureWindow) -> str:
    points = " ".join(f"{x:.2f},{y:.2f}" for x, y in (window.at(*point) for point in region.outline))
    weight = "0.9" if region.stuff in BOLD else "0.35"
    return f'<polygon points="{points}" fill="{FILLS[region.stuff]}" stroke="#000" stroke-width="{weight}"/>'


def _line(depth: float, window: PictureWindow, weight: str, dashes: str) -> str:
    (x0, y), (x1, _) = window.at(window.across[0], depth), window.at(window.across[1], depth)
    dashed = f' stroke-dasharray="{dashes}"' if dashes else ""
    return f'<path d="M{x0:.2f},{y:.2f} L{x1:.2f},{y:.2f}" stroke="#000" stroke-width="{weight}"{dashed}/>'
