"""Cut files against the solids sawn from the same cut lists by another way: flat faces, and floors of pockets.

What the files leave of a face is its outline less pockets and bevels; the solid shows it as its own flat face there.
"""

from __future__ import annotations

import pytest
from harbour import harbour_job, harbour_kits
from reading_cut_files import opened, outlines
from shapely.geometry import Polygon
from shapely.geometry.base import BaseGeometry
from shapely.ops import unary_union

from jambs.drawings.cut_files.figure import has_shape, part_figures
from jambs.drawings.cut_files.write import Release, cut_file
from jambs.parts.board.part import Part
from jambs.solids import kernel
from jambs.solids.model import board_shape

SAME = 1e-6
"""Area by which two shapes may differ [sq in]."""
FLAT = 1e-7
DEPTHS = {"POCKET 3-8 DEEP": 3 / 8, "POCKET 1-4 DEEP": 1 / 4}


def shaped() -> list[Part]:
    """One part for each list of cuts that the house has."""
    parts = [part for kit in harbour_kits().values() for part in kit.parts if has_shape(part)]
    return list({part.cuts: part for part in parts}.values())


def flat_faces(part: Part, depth: float) -> BaseGeometry:
    """Return what the solid shows at a depth under its face, seen from the face (u, v) [in]."""
    found = []
    for loops in kernel.faces(board_shape(part.silhouettes)):
        # the wall's axes of a board on the bench: x is u, y is -w, d is v
        if all(abs(-w - depth) < FLAT for loop in loops for _, w, _ in loop):
            found.append(Polygon([(u, v) for u, _, v in loops[0]]))
    return unary_union(found)


def files_of(part: Part) -> list[dict[str, list[Polygon]]]:
    """Return the closed outlines of a part's files by layer: seen on the face, then on the back."""
    found = []
    for figure in part_figures(part, units=harbour_job().units):
        document = opened(cut_file(figure, units=harbour_job().units, release=Release.R2010))
        found.append({layer: [Polygon(one) for one in some] for layer, some in outlines(document).items()})
    return found


def left_of(layers: dict[str, list[Polygon]]) -> BaseGeometry:
    """Return what work from one side leaves of its face."""
    taken = [one for name, some in layers.items() if name.startswith(("POCKET", "BEVEL")) for one in some]
    (outline,) = layers.get("CUT") or layers["OUTLINE"]
    return outline.difference(unary_union(taken))


def over(shape: BaseGeometry, width: float) -> BaseGeometry:
    """Turn a shape over about the length of a board."""
    return unary_union([Polygon([(u, width - v) for u, v in one.exterior.coords]) for one in _polygons(shape)])


def _polygons(shape: BaseGeometry) -> list[Polygon]:
    return [shape] if isinstance(shape, Polygon) else list(shape.geoms)


@pytest.mark.parametrize("part", shaped(), ids=lambda part: part.mark)
def test_faces_and_floors(part: Part) -> None:
    front, *behind = files_of(part)
    back = behind[0] if behind else {"OUTLINE": [over(front["CUT"][0], part.silhouettes.sizes.width)]}
    width, thick = part.silhouettes.sizes.width, part.thickness
    assert flat_faces(part, 0.0).symmetric_difference(left_of(front)).area < SAME
    assert flat_faces(part, thick).symmetric_difference(over(left_of(back), width)).area < SAME
    for layers, is_back in ((front, False), (back, True)):
        for name, pockets in layers.items():
            if name.startswith("POCKET"):
                floor = unary_union(pockets)
                at = thick - DEPTHS[name] if is_back else DEPTHS[name]
                shown = flat_faces(part, at)
                assert shown.symmetric_difference(over(floor, width) if is_back else floor).area < SAME
