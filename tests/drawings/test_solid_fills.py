"""Solid areas in the flat file: as large as drawn, read back by a reader that shares no code with the writer."""

from __future__ import annotations

from pathlib import Path

import dxfgrabber
import pytest

from jambs.drawings.dxf.document import new_document, repeatable, save
from jambs.drawings.dxf.flat import FlatPen
from jambs.drawings.dxf.pen import Pen
from jambs.drawings.dxf.space import TextSpace
from jambs.drawings.elements.paper import scales_of
from jambs.drawings.elements.view import Fill, Hatch, Ink
from jambs.geometry import Point
from jambs.length import MM_PER_INCH, Units

ANGLE = ((0.0, 0.0), (4.0, 0.0), (4.0, 1.0), (1.0, 1.0), (1.0, 3.0), (0.0, 3.0))
"""The letter L, by hand 4 x 1 + 1 x 2 = 6 square inches; its first three corners alone have 2."""
DART = ((0.0, 0.0), (4.0, 0.0), (1.0, 1.0), (0.0, 4.0))
"""Four corners with a hollow: two triangles of 4 x 1 / 2, by hand 4 square inches."""
BOX = ((0.0, 0.0), (3.0, 0.0), (3.0, 2.0), (0.0, 2.0))
THIN = ((0.0, 0.0), (0.0, 5.0), (3.0, 5.0), (3.0, 4.9), (0.1, 4.9), (0.1, 0.0))
"""A bent sheet: 0.1 x 5 + 2.9 x 0.1, by hand 0.79 square inches."""
AREAS = {ANGLE: 6.0, DART: 4.0, BOX: 6.0, THIN: 0.79, ANGLE[::-1]: 6.0}


def area(corners: list[tuple[float, float]]) -> float:
    """Area of a SOLID: its third and fourth corner stand crosswise; three corners have the last twice."""
    a, b, c, d = (*corners, corners[-1])[:4]
    ring = (a, b, d, c)
    pairs = zip(ring, (*ring[1:], ring[0]), strict=True)
    return abs(sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairs)) / 2


@pytest.mark.parametrize("units", list(Units))
@pytest.mark.parametrize(("polygon", "wanted"), AREAS.items())
def test_a_solid_fill_is_all_of_its_polygon(
    polygon: tuple[Point, ...], wanted: float, units: Units, tmp_path: Path
) -> None:
    unit = 1.0 if units is Units.INCH else MM_PER_INCH
    path = tmp_path / "fill.dxf"
    with repeatable():
        document = new_document(units, scales_of(units)[:1])
        space = TextSpace(document.modelspace())
        pen = Pen(document=document, space=space, unit=unit)
        fill = Fill(pieces=(polygon,), hatch=Hatch.SOLID, ink=Ink.FLASHING)
        FlatPen(pen=pen, space=space, factor=4.0).fill(fill)
        save(document, path)
    found = [one for one in dxfgrabber.readfile(str(path)).modelspace() if one.dxftype == "SOLID"]
    assert sum(area([point[:2] for point in one.points]) for one in found) == pytest.approx(wanted * unit**2)
