"""The solid kernel (OCP): prisms, cuts, seats, volumes, flat faces. It works in mm; everything here speaks inches.

A board lies face up on the bench: ``u`` to the right, ``v`` away, ``w`` down, so the kernel's axes are (u, v, -w).
The wall's (x right, y up, d away) become the kernel's (x, d, y): both are right-handed, nothing is mirrored.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import Any

from jambs.geometry import Point, Vector, chords_of
from jambs.length import MM_PER_INCH
from jambs.parts.board.part import Seat

Shape = Any
"""A shape of the kernel; it has no types of its own."""
Loops = tuple[tuple[Vector, ...], ...]
OBLIQUE = 48
"""Where a cylinder is cut oblique, its edge is followed in so many pieces."""
SAME_ANGLE = 1e-9
"""Two places round a cylinder that differ by less are one [radians]."""


Side = tuple[Vector, Vector | None]
"""One side of an outline: where it starts, and of an arc its middle."""


def curved_prism(outline: Sequence[Side], sweep: Vector, *, holes: Sequence[Sequence[Side]] = ()) -> Shape:
    """Sweep a flat outline whose sides may be arcs along a direction; board coordinates [in]."""
    from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeFace
    from OCP.BRepPrimAPI import BRepPrimAPI_MakePrism

    face = BRepBuilderAPI_MakeFace(_curved_wire(outline), True)
    for hole in holes:
        face.Add(_curved_wire(hole))
    return BRepPrimAPI_MakePrism(face.Face(), _vector(sweep)).Shape()


def prism(outline: Sequence[Vector], sweep: Vector, *, holes: Sequence[Sequence[Vector]] = ()) -> Shape:
    """Sweep a flat outline with holes along a direction; board coordinates [in]."""
    from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeFace
    from OCP.BRepPrimAPI import BRepPrimAPI_MakePrism

    face = BRepBuilderAPI_MakeFace(_wire(outline), True)
    for hole in holes:
        face.Add(_wire(hole))
    return BRepPrimAPI_MakePrism(face.Face(), _vector(sweep)).Shape()


def common(one: Shape, two: Shape) -> Shape:
    """Return what two shapes have in common."""
    from OCP.BRepAlgoAPI import BRepAlgoAPI_Common

    return _boolean(BRepAlgoAPI_Common(), one, two)


def less(one: Shape, two: Shape) -> Shape:
    """Return what is left of one shape when another is taken off."""
    from OCP.BRepAlgoAPI import BRepAlgoAPI_Cut

    return _boolean(BRepAlgoAPI_Cut(), one, two)


def _boolean(operation: Any, one: Shape, two: Shape) -> Shape:
    from OCP.TopTools import TopTools_ListOfShape

    arguments, tools = TopTools_ListOfShape(), TopTools_ListOfShape()
    arguments.Append(one)
    tools.Append(two)
    operation.SetArguments(arguments)
    operation.SetTools(tools)
    operation.SetToFillHistory(False)
    operation.SetRunParallel(False)
    operation.Build()
    return _lone(operation.Shape())


def _lone(shape: Shape) -> Shape:
    """Take a solid out of a compound that holds nothing else."""
    from OCP.TopAbs import TopAbs_COMPOUND, TopAbs_SOLID
    from OCP.TopoDS import TopoDS_Iterator

    if shape.ShapeType() != TopAbs_COMPOUND:
        return shape
    held = []
    each = TopoDS_Iterator(shape)
    while each.More():
        held.append(each.Value())
        each.Next()
    return held[0] if len(held) == 1 and held[0].ShapeType() == TopAbs_SOLID else shape


def together(shapes: Sequence[Shape]) -> Shape:
    """Put shapes in one compound."""
    from OCP.BRep import BRep_Builder
    from OCP.TopoDS import TopoDS_Compound

    builder, compound = BRep_Builder(), TopoDS_Compound()
    builder.MakeCompound(compound)
    for shape in shapes:
        builder.Add(compound, shape)
    return compound


def location(seat: Seat) -> Any:
    """Return the kernel's location for a seat."""
    from OCP.gp import gp_Ax3, gp_Trsf
    from OCP.TopLoc import TopLoc_Location

    x, y, d = seat.through
    up = wall_direction((-x, -y, -d))
    move = gp_Trsf()
    move.SetDisplacement(gp_Ax3(), gp_Ax3(wall_point(seat.origin), up, wall_direction(seat.along)))
    return TopLoc_Location(move)


def shift(way: Vector) -> Any:
    """Return the kernel's location for a plain move in the wall [in]."""
    from OCP.gp import gp_Trsf, gp_Vec
    from OCP.TopLoc import TopLoc_Location

    move = gp_Trsf()
    x, y, d = way
    move.SetTranslation(gp_Vec(x * MM_PER_INCH, d * MM_PER_INCH, y * MM_PER_INCH))
    return TopLoc_Location(move)


def wall_point(point: Vector) -> Any:
    """Return the kernel's point for a point of the wall [in]."""
    from OCP.gp import gp_Pnt

    x, y, d = point
    return gp_Pnt(x * MM_PER_INCH, d * MM_PER_INCH, y * MM_PER_INCH)


def wall_direction(direction: Vector) -> Any:
    """Return the kernel's direction for a direction of the wall."""
    from OCP.gp import gp_Dir

    x, y, d = direction
    return gp_Dir(x, d, y)


def volume(shape: Shape) -> float:
    """Volume of a shape [cu in]."""
    from OCP.BRepGProp import BRepGProp
    from OCP.GProp import GProp_GProps

    found = GProp_GProps()
    BRepGProp.VolumeProperties_s(shape, found)
    return float(found.Mass()) / MM_PER_INCH**3


def faces(shape: Shape) -> list[Loops]:
    """List the flat faces of a shape that stands in the wall; outlines counter-clockwise seen from outside [in].

    A face that is part of a cylinder is listed as narrow flat strips, an arc as short chords, as in fine outlines.
    """
    from OCP.TopAbs import TopAbs_FACE

    return [loops for face in _held(shape, TopAbs_FACE) for loops in (_strips(face) or [_loops(face)])]


def _strips(face: Shape) -> list[Loops]:
    """Return a face that lies on a cylinder as strips along it; nothing where it is flat."""
    from OCP.BRepAdaptor import BRepAdaptor_Surface
    from OCP.GeomAbs import GeomAbs_Cylinder
    from OCP.TopAbs import TopAbs_REVERSED
    from OCP.TopoDS import TopoDS

    surface = BRepAdaptor_Surface(TopoDS.Face_s(face))
    if surface.GetType() != GeomAbs_Cylinder:
        return []
    first, last = surface.FirstUParameter(), surface.LastUParameter()
    low, high = surface.FirstVParameter(), surface.LastVParameter()
    stops = _stops(first, last, surface.Cylinder().Radius() / MM_PER_INCH)
    ring = _oblique_ring(face)
    spans = [_span(ring, at) if ring else (low, high) for at in stops]
    sides = [
        (_seen(surface.Value(at, a)), _seen(surface.Value(at, b))) for at, (a, b) in zip(stops, spans, strict=True)
    ]
    strips = [(a, b, d, c) for (a, c), (b, d) in pairwise(sides)]
    # As seen in the wall's axes, which are the kernel's turned over.
    is_turned = (face.Orientation() == TopAbs_REVERSED) is surface.Cylinder().Direct()
    return [(strip if is_turned else strip[::-1],) for strip in strips]


def _oblique_ring(face: Shape) -> list[Point]:
    """Return the outline of a face of a cylinder, angle and along it, where an end is cut oblique; else nothing."""
    from OCP.BRepAdaptor import BRepAdaptor_Curve, BRepAdaptor_Curve2d
    from OCP.GeomAbs import GeomAbs_Ellipse
    from OCP.TopAbs import TopAbs_EDGE
    from OCP.TopoDS import TopoDS

    found, is_oblique = list[tuple[Point, Point]](), False
    for edge in (TopoDS.Edge_s(one) for one in _held(face, TopAbs_EDGE)):
        is_oblique |= BRepAdaptor_Curve(edge).GetType() == GeomAbs_Ellipse
        line = BRepAdaptor_Curve2d(edge, TopoDS.Face_s(face))
        first, last = line.FirstParameter(), line.LastParameter()
        places = (line.Value(first + (last - first) * i / OBLIQUE) for i in range(OBLIQUE + 1))
        found += pairwise((place.X(), place.Y()) for place in places)
    return [point for piece in found for point in piece] if is_oblique else []


def _span(ring: list[Point], at: float) -> Point:
    """Return where an outline of pieces, two points each, begins and ends along the cylinder at an angle."""
    found = []
    for (u, v), (u2, v2) in zip(ring[::2], ring[1::2], strict=True):
        if min(u, u2) - SAME_ANGLE <= at <= max(u, u2) + SAME_ANGLE:
            share = (at - u) / (u2 - u) if abs(u2 - u) > SAME_ANGLE else 0.0
            found += [v + (v2 - v) * share] if share else [v, v2] if abs(u2 - u) <= SAME_ANGLE else [v]
    return min(found), max(found)


def _stops(first: float, last: float, radius: float) -> list[float]:
    """Angles of a fine outline along an arc of a radius [in]."""
    count = chords_of(last - first, radius)
    return [first + (last - first) * i / count for i in range(count + 1)]


def _seen(point: Any) -> Vector:
    return (point.X() / MM_PER_INCH, point.Z() / MM_PER_INCH, point.Y() / MM_PER_INCH)


def _loops(face: Shape) -> Loops:
    from OCP.TopAbs import TopAbs_WIRE

    return tuple(_corners(wire) for wire in _held(face, TopAbs_WIRE))


def _corners(wire: Shape) -> tuple[Vector, ...]:
    """Corners of a wire in order. The wall's axes are the kernel's turned over, so the order is turned back."""
    from OCP.BRep import BRep_Tool
    from OCP.BRepTools import BRepTools_WireExplorer
    from OCP.TopoDS import TopoDS

    found = []
    each = BRepTools_WireExplorer(TopoDS.Wire_s(wire))
    while each.More():
        found.append(_seen(BRep_Tool.Pnt_s(each.CurrentVertex())))
        found += _along_arc(each.Current(), found[-1])
        each.Next()
    return tuple(reversed(found))


def _along_arc(edge: Shape, start: Vector) -> list[Vector]:
    """Return the points of a fine outline along a curved edge, from a start on; nothing on a straight one."""
    from OCP.BRepAdaptor import BRepAdaptor_Curve
    from OCP.GeomAbs import GeomAbs_Circle, GeomAbs_Ellipse
    from OCP.TopoDS import TopoDS

    curve = BRepAdaptor_Curve(TopoDS.Edge_s(edge))
    if curve.GetType() == GeomAbs_Circle:
        radius = curve.Circle().Radius()
    elif curve.GetType() == GeomAbs_Ellipse:
        radius = curve.Ellipse().MajorRadius()
    else:
        return []
    stops = _stops(curve.FirstParameter(), curve.LastParameter(), radius / MM_PER_INCH)
    points = [_seen(curve.Value(at)) for at in stops]
    return points[1:-1] if math.dist(points[0], start) < math.dist(points[-1], start) else points[-2:0:-1]


def _held(shape: Shape, kind: Any) -> list[Shape]:
    from OCP.TopExp import TopExp_Explorer

    found = []
    each = TopExp_Explorer(shape, kind)
    while each.More():
        found.append(each.Current())
        each.Next()
    return found


def _wire(outline: Sequence[Vector]) -> Any:
    from OCP.BRepBuilderAPI import BRepBuilderAPI_MakePolygon
    from OCP.gp import gp_Pnt

    wire = BRepBuilderAPI_MakePolygon()
    for u, v, w in outline:
        wire.Add(gp_Pnt(u * MM_PER_INCH, v * MM_PER_INCH, -w * MM_PER_INCH))
    wire.Close()
    return wire.Wire()


def _curved_wire(outline: Sequence[Side]) -> Any:
    from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeEdge, BRepBuilderAPI_MakeWire
    from OCP.GC import GC_MakeArcOfCircle
    from OCP.gp import gp_Pnt

    def point(at: Vector) -> Any:
        return gp_Pnt(at[0] * MM_PER_INCH, at[1] * MM_PER_INCH, -at[2] * MM_PER_INCH)

    wire = BRepBuilderAPI_MakeWire()
    for (start, middle), (finish, _) in zip(outline, (*outline[1:], outline[0]), strict=True):
        if middle is None:
            wire.Add(BRepBuilderAPI_MakeEdge(point(start), point(finish)).Edge())
        else:
            arc = GC_MakeArcOfCircle(point(start), point(middle), point(finish)).Value()
            wire.Add(BRepBuilderAPI_MakeEdge(arc).Edge())
    return wire.Wire()


def _vector(sweep: Vector) -> Any:
    from OCP.gp import gp_Vec

    u, v, w = sweep
    return gp_Vec(u * MM_PER_INCH, v * MM_PER_INCH, -w * MM_PER_INCH)


def edges(shape: Shape) -> list[Shape]:
    """List the edges of a shape."""
    from OCP.TopAbs import TopAbs_EDGE

    return _held(shape, TopAbs_EDGE)


PICTURED = 16
"""A curved edge is drawn as so many straight pieces in pictures."""


def edge_points(edge: Shape) -> list[Vector]:
    """Points along an edge in the kernel's own axes [mm]: both ends of a straight one, more of a curved one."""
    from OCP.BRepAdaptor import BRepAdaptor_Curve
    from OCP.GeomAbs import GeomAbs_Line
    from OCP.TopoDS import TopoDS

    curve = BRepAdaptor_Curve(TopoDS.Edge_s(edge))
    count = 1 if curve.GetType() == GeomAbs_Line else PICTURED
    first, last = curve.FirstParameter(), curve.LastParameter()
    stops = [first, *(first + (last - first) * i / count for i in range(1, count)), last]
    points = (curve.Value(at) for at in stops)
    return [(point.X(), point.Y(), point.Z()) for point in points]
