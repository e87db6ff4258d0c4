"""Hidden-line pictures of shapes, with an up vector: which edges are seen from an eye and which are covered."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from jambs.geometry import Point, cross
from jambs.length import MM_PER_INCH
from jambs.solids import kernel
from jambs.solids.kernel import Shape
from jambs.solids.views import SolidView

Segment = tuple[Point, Point]


def seen_edges(shapes: Sequence[Shape], view: SolidView) -> list[tuple[list[Segment], list[Segment]]]:
    """Return for each shape the edges seen and the edges covered, on paper: right, up [in]."""
    from OCP.gp import gp_Ax2
    from OCP.HLRAlgo import HLRAlgo_Projector
    from OCP.HLRBRep import HLRBRep_Algo, HLRBRep_HLRToShape

    # Left-handed wall axes: up × eye points left in them, and the kernel's axes turn that to the right.
    right = cross(view.eye, view.up)
    axes = gp_Ax2(kernel.wall_point((0.0, 0.0, 0.0)), kernel.wall_direction(view.eye), kernel.wall_direction(right))
    algorithm = HLRBRep_Algo()
    for shape in shapes:
        algorithm.Add(shape, 0)
    algorithm.Projector(HLRAlgo_Projector(axes))
    algorithm.Update()
    algorithm.Hide()
    edges = HLRBRep_HLRToShape(algorithm)
    return [(_segments(edges.VCompound(shape)), _segments(edges.HCompound(shape))) for shape in shapes]


def _segments(compound: Shape) -> list[Segment]:
    """Read the edges of a flat compound, curved ones in straight pieces; none where it is empty."""
    from OCP.BRepLib import BRepLib

    if compound is None or compound.IsNull():
        return []
    BRepLib.BuildCurves3d_s(compound)
    return [segment for edge in kernel.edges(compound) for segment in pairwise(_flat(edge))]


def _flat(edge: Shape) -> list[Point]:
    return [(x / MM_PER_INCH, y / MM_PER_INCH) for x, y, _ in kernel.edge_points(edge)]
