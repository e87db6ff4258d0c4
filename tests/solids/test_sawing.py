"""Boards sawn from their cut lists: every kind of cut by closed form, and every board of the harbour house once more
by the kernel's own subtraction, a block of waste for each cut, in the order of the list.
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest
from harbour import harbour_solids

from jambs.geometry import Plane, Vector
from jambs.parts.board.arrises import arris_lengths
from jambs.parts.board.cuts import (
    Crosscut,
    Cut,
    Edge,
    EdgeBevel,
    EdgeGroove,
    EdgeRabbet,
    End,
    EndBevel,
    EndRabbet,
    Groove,
    Miter,
    Notch,
    PlaneCut,
    Rip,
    Taper,
    Tenon,
    compound_miter,
    saw_angles,
)
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.parts.board.sawing import CutListError, board_sizes
from jambs.sides import Side
from jambs.solids import kernel
from jambs.solids.model import board_shape
from jambs.solids.waste import board_less_cuts

SAME_VOLUME = 1e-6
LENGTH, WIDTH, THICKNESS = 30.0, 5.0, 0.75
TAN15 = math.tan(math.radians(15))


def board(*cuts: Cut, thickness: float = THICKNESS) -> Part:
    return Part(
        mark="W1-1",
        kind=PartKind.EXTENSION_JAMB,
        side=Side.HEAD,
        where=Where.INTERIOR,
        blank=PartBlank(stock="poplar", thickness=thickness),
        cuts=(Rip(width=WIDTH), Crosscut(length=LENGTH), *cuts),
        seat=Seat(origin=(0.0, 0.0, 0.0), along=(1.0, 0.0, 0.0), across=(0.0, 1.0, 0.0), through=(0.0, 0.0, 1.0)),
    )


CASES: dict[str, tuple[tuple[Cut, ...], float]] = {
    "plain": ((), 0.0),
    "taper": ((Taper(start_width=5.0, finish_width=4.0),), THICKNESS * LENGTH * 1.0 / 2),
    "miter": ((Miter(end=End.START, angle_deg=45, long_edge=Edge.FAR),), THICKNESS * 25 / 2),
    "end bevel": ((EndBevel(end=End.FINISH, angle_deg=15),), WIDTH * THICKNESS**2 * TAN15 / 2),
    "edge bevel": ((EdgeBevel(edge=Edge.NEAR, angle_deg=15, face_short=True),), LENGTH * THICKNESS**2 * TAN15 / 2),
    "end rabbet": ((EndRabbet(end=End.START, along=0.75, depth=0.375),), WIDTH * 0.75 * 0.375),
    "edge rabbet": ((EdgeRabbet(edge=Edge.FAR, across=0.25, depth=0.5, from_back=True),), LENGTH * 0.25 * 0.5),
    "notch": ((Notch(end=End.FINISH, edge=Edge.NEAR, along=3.0, across=4.0),), 12 * THICKNESS),
    "groove": ((Groove(edge=Edge.FAR, from_edge=0.5, width=0.25, depth=0.25),), LENGTH / 16),
    "edge groove": ((EdgeGroove(edge=Edge.NEAR, from_face=0.25, width=0.25, depth=0.375),), LENGTH * 0.25 * 0.375),
    "tenon": ((Tenon(end=End.FINISH, along=0.75, face=0.25, back=0.125),), WIDTH * 0.75 * 0.375),
    "tongue": ((Tenon(end=End.START, along=0.5, face=0.0, back=0.25),), WIDTH * 0.5 * 0.25),
    "taper and rabbet": (
        (Taper(start_width=4.0, finish_width=5.0), EndRabbet(end=End.START, along=0.6, depth=0.25)),
        THICKNESS * LENGTH / 2 + 0.6 * 0.25 * (4.0 + 0.3 / 30),
    ),
    "taper and end bevel": (
        (Taper(start_width=4.0, finish_width=5.0), EndBevel(end=End.START, angle_deg=45)),
        THICKNESS * LENGTH / 2 + THICKNESS**2 / 2 * (4.0 + 0.25 / 30),
    ),
    "notch in a beveled edge": (
        (
            EdgeBevel(edge=Edge.NEAR, angle_deg=15, face_short=False),
            Notch(end=End.START, edge=Edge.NEAR, along=3.0, across=2.0),
        ),
        LENGTH * THICKNESS**2 * TAN15 / 2 + 3 * (2 * THICKNESS - THICKNESS**2 * TAN15 / 2),
    ),
}


SIZES = board_sizes((Rip(width=WIDTH), Crosscut(length=LENGTH)), thickness=THICKNESS)
CROWN_OVER = WIDTH * math.tan(math.radians(31.62))
CROWN_THROUGH = THICKNESS * math.tan(math.radians(33.86)) / math.cos(math.radians(31.62))
CROWN = tuple(
    compound_miter(SIZES, end, miter_deg=31.62, bevel_deg=33.86, long_edge=Edge.FAR, face_short=end is End.START)
    for end in End
)
"""Both ends at the settings of 52/38 crown molding for a square corner (from memory)."""
EDGE = PlaneCut(
    at=Edge.FAR,
    flat=Plane(
        start=(0.0, WIDTH, 0.0),
        finish=(LENGTH, WIDTH - 1.0, 0.0),
        way=(0.0, -TAN15, 1.0),
        keep=(LENGTH / 2, 0.0, 0.0),
    ),
)
CASES |= {
    # A prism cut askew holds its section times its length in the middle: half of both setbacks goes.
    "one compound end": (CROWN[1:], WIDTH * THICKNESS * (CROWN_OVER + CROWN_THROUGH) / 2),
    "two compound ends": (CROWN, WIDTH * THICKNESS * (CROWN_OVER + CROWN_THROUGH)),
    "taper and bevel at once": ((EDGE,), LENGTH * THICKNESS * (1.0 / 2 + THICKNESS * TAN15 / 2)),
}


@pytest.mark.parametrize("name", CASES)
def test_a_cut_takes_what_geometry_says(name: str) -> None:
    """Closed form, written out here for each: the kernel's volume and the fit report's arithmetic both agree."""
    cuts, waste = CASES[name]
    part = board(*cuts)
    asked = LENGTH * WIDTH * THICKNESS - waste
    assert kernel.volume(board_shape(part.silhouettes)) == pytest.approx(asked, abs=SAME_VOLUME)
    assert board_less_cuts(part) == pytest.approx(asked, abs=SAME_VOLUME)


def test_the_corners_of_a_compound_end_are_its_long_and_short_points() -> None:
    """The four corners that the kernel finds are the ends of the four arrises."""
    part = board(CROWN[1])
    found = sorted({point for loops in kernel.faces(board_shape(part.silhouettes)) for loop in loops for point in loop})
    # The bench's axes (u, v, -w) are read as the wall's (x, y, d): v is d there, and -w is y.
    ends = {(round(v, 6), round(-w, 6) + 0.0): u for u, w, v in found if u > LENGTH / 2}
    lengths = {(arris.edge, arris.on_back): length for arris, length in arris_lengths(SIZES, part.cuts).items()}
    assert len(ends) == 4
    for (v, w), u in ends.items():
        assert u == pytest.approx(lengths[Edge.NEAR if v == 0.0 else Edge.FAR, w > 0.0], abs=1e-6)


def test_a_long_edge_keeps_its_length() -> None:
    """The far edge of a mitered board runs its whole length, the near one is short by the width (tan 45 = 1)."""
    part = board(*(Miter(end=end, angle_deg=45, long_edge=Edge.FAR) for end in End))
    found = {(round(u, 9), round(v, 9)) for u, v in part.silhouettes.face}
    assert found == {(5.0, 0.0), (25.0, 0.0), (30.0, 5.0), (0.0, 5.0)}


def test_the_back_is_the_short_side_of_an_end_bevel() -> None:
    back = THICKNESS * TAN15
    found = board(EndBevel(end=End.FINISH, angle_deg=15)).silhouettes.edge
    assert max(u for u, w in found if w == 0.0) == pytest.approx(LENGTH)
    assert max(u for u, w in found if w == THICKNESS) == pytest.approx(LENGTH - back)
    turned = board(EndBevel(end=End.FINISH, angle_deg=15, face_short=True)).silhouettes.edge
    assert max(u for u, w in turned if w == 0.0) == pytest.approx(LENGTH - back)


def test_a_groove_is_in_the_back_and_behind_the_edge() -> None:
    found = board(Groove(edge=Edge.FAR, from_edge=0.5, width=0.25, depth=0.25)).silhouettes.end
    assert {(4.25, 0.75), (4.25, 0.5), (4.5, 0.5), (4.5, 0.75)} <= set(found)


def test_a_list_without_a_rip_makes_no_board() -> None:
    part = replace(board(), cuts=(Crosscut(length=3.0),))
    with pytest.raises(CutListError) as caught:
        assert part.silhouettes
    assert str(caught.value) == ("W1-1: the cut list needs a rip and a crosscut; it has (Crosscut(length=3.0),)")


BIG = 99.0


def waste_of(part: Part, cut: Cut, widths: tuple[float, float]) -> kernel.Shape | None:
    """The block of waste of one cut as a prism far past the board; written from the cut's own words alone."""
    long, wide, thick = part.length, part.width, part.thickness
    at_start = getattr(cut, "end", None) is End.START
    u, out = (0.0, -1.0) if at_start else (long, 1.0)
    tangent = math.tan(math.radians(getattr(cut, "angle_deg", 0.0)))
    through: Vector = (0.0, 0.0, thick + 2)
    if isinstance(cut, Taper):
        slope = (cut.finish_width - cut.start_width) / long
        ends = [(-9.0, cut.start_width - 9 * slope, -1.0), (long + 9, cut.finish_width + 9 * slope, -1.0)]
        return kernel.prism([*ends, (long + 9, BIG, -1.0), (-9.0, BIG, -1.0)], through)
    if isinstance(cut, Miter):
        far = widths[0] if at_start else widths[1]
        long_v, short_v = (far, 0.0) if cut.long_edge is Edge.FAR else (0.0, far)
        step = (short_v - long_v) / abs(short_v - long_v)
        points = [(u - out * tangent * run, long_v + step * run, -1.0) for run in (-9.0, BIG)]
        return kernel.prism(
            [*points, (u + out * BIG * 2, points[1][1], -1.0), (u + out * BIG * 2, points[0][1], -1.0)], through
        )
    if isinstance(cut, EndBevel):
        long_w, step = (thick, -1.0) if cut.face_short else (0.0, 1.0)
        points = [(u - out * tangent * run, -1.0, long_w + step * run) for run in (-9.0, BIG)]
        return kernel.prism(
            [*points, (u + out * BIG * 2, -1.0, points[1][2]), (u + out * BIG * 2, -1.0, points[0][2])],
            (0.0, wide + 2, 0.0),
        )
    if isinstance(cut, EdgeBevel):
        v, side = (0.0, -1.0) if cut.edge is Edge.NEAR else (wide, 1.0)
        long_w, step = (thick, -1.0) if cut.face_short else (0.0, 1.0)
        points = [(-1.0, v - side * tangent * run, long_w + step * run) for run in (-9.0, BIG)]
        return kernel.prism(
            [*points, (-1.0, v + side * BIG, points[1][2]), (-1.0, v + side * BIG, points[0][2])], (long + 2, 0.0, 0.0)
        )
    return box_of(part, cut)


def box_of(part: Part, cut: Cut) -> kernel.Shape | None:
    long, wide, thick = part.length, part.width, part.thickness
    at_start = getattr(cut, "end", None) is End.START
    if isinstance(cut, EndRabbet | Notch):
        us = (-1.0, cut.along) if at_start else (long - cut.along, long + 1)
        if isinstance(cut, EndRabbet):
            return block((us[0], -1.0, -1.0), (us[1], wide + 1, cut.depth))
        assert cut.edge is Edge.NEAR
        return block((us[0], -1.0, -1.0), (us[1], cut.across, thick + 1))
    if isinstance(cut, EdgeRabbet):
        assert cut.edge is Edge.NEAR and not cut.from_back
        return block((-1.0, -1.0, -1.0), (long + 1, cut.across, cut.depth))
    if isinstance(cut, Groove):
        far = wide - cut.from_edge
        return block((-1.0, far - cut.width, thick - cut.depth), (long + 1, far, thick + 1))
    return None


def block(low: Vector, high: Vector) -> kernel.Shape:
    corners = [
        (low[0], low[1], low[2]),
        (high[0], low[1], low[2]),
        (high[0], high[1], low[2]),
        (low[0], high[1], low[2]),
    ]
    return kernel.prism(corners, (0.0, 0.0, high[2] - low[2]))


@pytest.mark.parametrize("mark", ["W01", "W02", "W07", "D01"])
def test_every_board_once_more_by_subtraction(mark: str) -> None:
    for solid in harbour_solids(mark).parts:
        part = solid.part
        assert part is not None
        if not part.is_wood:
            continue
        tapers = [cut for cut in part.cuts if isinstance(cut, Taper)]
        widths = (tapers[0].start_width, tapers[0].finish_width) if tapers else (part.width, part.width)
        shape: Any = block((0.0, 0.0, 0.0), (part.length, part.width, part.thickness))
        for cut in part.cuts:
            waste = waste_of(part, cut, widths)
            shape = kernel.less(shape, waste) if waste is not None else shape
        assert kernel.volume(shape) == pytest.approx(kernel.volume(solid.bench), abs=SAME_VOLUME)
        assert kernel.volume(kernel.common(shape, solid.bench)) == pytest.approx(kernel.volume(shape), abs=SAME_VOLUME)


@pytest.mark.parametrize("mark", ["W01", "W02", "W07", "D01"])
def test_boards_are_outline_times_profile_less_pockets(mark: str) -> None:
    """The parts room's own description of a finished board; ends cut through the thickness are not in it."""
    for solid in harbour_solids(mark).parts:
        part = solid.part
        assert part is not None
        if not part.is_wood or any(isinstance(cut, EndBevel) for cut in part.cuts):
            continue
        face = kernel.prism([(u, v, 0.0) for u, v in part.outline], (0.0, 0.0, part.thickness))
        shape = kernel.common(face, kernel.prism([(0.0, v, w) for v, w in part.profile], (part.length, 0.0, 0.0)))
        for pocket in part.pockets:
            shape = kernel.less(shape, block(pocket.low, pocket.high))
        assert kernel.volume(shape) == pytest.approx(kernel.volume(solid.bench), abs=SAME_VOLUME)
        assert kernel.volume(kernel.common(shape, solid.bench)) == pytest.approx(kernel.volume(shape), abs=SAME_VOLUME)


def test_faces_close_and_look_outward() -> None:
    """Divergence theorem: a third of the sum of offset × area over all faces is the volume, holes and all."""
    for solids in (harbour_solids("W01"), harbour_solids("W02")):
        for solid in solids.solids:
            total = 0.0
            for facet in solid.facets:
                total += facet.offset * facet_area(facet.loops, facet.normal) / 3
            assert total == pytest.approx(kernel.volume(solid.bench), abs=1e-5)


def facet_area(loops: tuple[tuple[Vector, ...], ...], normal: Vector) -> float:
    total = 0.0
    for loop in loops:
        for (x0, y0, z0), (x1, y1, z1) in zip(loop, (*loop[1:], loop[0]), strict=True):
            turned = (y0 * z1 - z0 * y1, z0 * x1 - x0 * z1, x0 * y1 - y0 * x1)
            total += sum(one * two for one, two in zip(turned, normal, strict=True)) / 2
    return total


def test_a_cut_is_a_plane_that_parts_wood_from_waste() -> None:
    """A 45° miter: its plane's normal leans half to the end, half to the short edge; both corners lie on it."""
    part = board(cut := Miter(end=End.FINISH, angle_deg=45, long_edge=Edge.FAR))
    plane = cut.plane(part.silhouettes.sizes)
    assert plane.normal == pytest.approx((math.sqrt(0.5), -math.sqrt(0.5), 0.0))
    assert [plane.past((u, v, 0.3)) for u, v in ((30.0, 5.0), (25.0, 0.0))] == pytest.approx([0.0, 0.0])
    assert plane.past((30.0, 0.0, 0.0)) > 0 > plane.past((0.0, 0.0, 0.0))


@pytest.mark.parametrize(("spring_deg", "miter", "bevel"), [(38.0, 31.62, 33.86), (45.0, 35.26, 30.0)])
def test_a_compound_angle_is_a_plane_too(spring_deg: float, miter: float, bevel: float) -> None:
    """Crown molding cut flat for a square corner: miter and bevel as printed on saws for 52/38 and 45/45 crown.

    Common practice, from memory. The plane stands upright in the corner, 45° to both walls; seen from a board that
    leans off the wall by the spring angle it is square to neither face nor edge.
    """
    spring = math.radians(spring_deg)
    way = (0.0, math.cos(spring), math.sin(spring))  # upright, in board coordinates
    level = (1.0, math.sin(spring), -math.cos(spring))  # 45° out of the corner
    plane = Plane(start=(0.0, 0.0, 0.0), finish=level, way=way, keep=(30.0, 0.0, 0.0))
    assert saw_angles(plane) == pytest.approx((miter, bevel), abs=0.01)
