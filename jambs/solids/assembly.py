"""The kernel's document of an assembly: every part under its mark and words, with its color, in its place."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from jambs.geometry import Vector
from jambs.solids import kernel
from jambs.solids.colors import Color, color_of
from jambs.solids.model import KitSolids, Solid

Document = Any


def assembly(openings: Sequence[tuple[KitSolids, Vector]], *, name: str) -> Document:
    """Put openings in one document; each is an assembly of its own, moved along the wall [in].

    A lone opening that is not moved is the assembly itself.
    """
    from OCP.TCollection import TCollection_ExtendedString
    from OCP.TDocStd import TDocStd_Document
    from OCP.XCAFDoc import XCAFDoc_DocumentTool

    document = TDocStd_Document(TCollection_ExtendedString("BinXCAF"))
    shapes = XCAFDoc_DocumentTool.ShapeTool_s(document.Main())
    colors = XCAFDoc_DocumentTool.ColorTool_s(document.Main())
    made = [(_opening(solids, shapes, colors), solids, way) for solids, way in openings]
    if len(made) > 1 or any(made[0][2]):
        root = _named(shapes.NewShape(), name)
        for label, solids, way in made:
            _named(shapes.AddComponent(root, label, kernel.shift(way)), solids.mark)
    shapes.UpdateAssemblies()
    return document


def _opening(solids: KitSolids, shapes: Any, colors: Any) -> Any:
    root = _named(shapes.NewShape(), solids.mark)
    for solid in solids.solids:
        _component(solid, root, shapes, colors)
    return root


def _component(solid: Solid, root: Any, shapes: Any, colors: Any) -> None:
    from OCP.XCAFDoc import XCAFDoc_ColorSurf

    label = _named(shapes.AddShape(solid.bench, False), solid.label)
    colors.SetColor(label, _color(color_of(solid.material)), XCAFDoc_ColorSurf)
    _named(shapes.AddComponent(root, label, kernel.location(solid.seat)), solid.label)


def _color(color: Color) -> Any:
    from OCP.Quantity import Quantity_Color, Quantity_TOC_sRGB

    return Quantity_Color(*color, Quantity_TOC_sRGB)


def _named(label: Any, name: str) -> Any:
    from OCP.TCollection import TCollection_ExtendedString
    from OCP.TDataStd import TDataStd_Name

    TDataStd_Name.Set_s(label, TCollection_ExtendedString(name, True))
    return label
