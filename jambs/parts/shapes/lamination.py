"""The curved head of a jamb bent from plies over a form: how thick they are, what they are resawn from, and the form.

The dry plies are glued in one go. A ply may be as thick as a share of the radius it is bent to; what is glued up
springs back a little when it leaves the form, so the form has the smaller radius.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from jambs.findings import Subject
from jambs.geometry import INWARD, Plane, Point
from jambs.job.models.shape import ShapeKind
from jambs.job.models.shop import Board, Shop
from jambs.length import MM_PER_INCH, ROUND_OFF, Units
from jambs.parts.board.boards import comes_out
from jambs.parts.board.cuts import ACROSS, ArcCut, CannotBeCut, Crosscut, CurvedSide, Cut, End, PlaneCut, Rip
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.parts.board.plies import ArcEnds, Plies
from jambs.parts.findings.arch_findings import PliesTooThin, PliesTooWide
from jambs.parts.shapes.arch import Arch, Rack, sawn_from
from jambs.parts.shapes.arched_jamb import ArchedJamb

RADIUS_OVER_PLY = 125.0
"""A dry ply bends to a radius of so many thicknesses: National Design Specification for Wood Construction, 5.3.8, for
softwoods (100 for hardwoods and southern pine); from memory."""
LEAST_PLY = {Units.INCH: 1 / 16, Units.MM: 1.5 / MM_PER_INCH}
"""A ply is resawn and planed no thinner than this [in]; common practice, no source."""
PLANED_OFF = {Units.INCH: 1 / 32, Units.MM: 1 / MM_PER_INCH}
"""What planing takes of each ply after the resaw [in]; common practice, no source."""
WIDER = {Units.INCH: 1 / 4, Units.MM: 6 / MM_PER_INCH}
"""Plies are ripped so much wider than the jamb, whose edges are planed when the glue is dry [in]; common practice."""
LONGER = {Units.INCH: 4.0, Units.MM: 100 / MM_PER_INCH}
"""Plies run so much past the spring lines, both ends together [in]; common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Resaw:
    """A board at hand, and how many plies each of its strips gives."""

    board: Board
    per_strip: int
    strips: int

    @property
    def wood(self) -> tuple[float, float]:
        """What is used of thickness, and how wide the board is: less is better [in]."""
        return (self.strips * self.board.thickness, self.board.width)


def bent_head(jamb: ArchedJamb, arch: Arch, rack: Rack, allowance: float) -> tuple[Part, ...]:
    """Bend the head of a jamb from plies; ``allowance``: width left on while its depth is only planned [in].

    Raises:
        CannotBeCut: the radius is too tight for any ply, or no board is wide enough for one.
    """
    made = plies_for(jamb, arch, rack, allowance)
    return (_part(jamb, arch, made.count, made.resaw, made.width, rack.shop),)


@dataclass(frozen=True, slots=True, kw_only=True)
class PliesFor:
    """How many plies a radius asks for, what they are resawn from, and how wide they are ripped [in]."""

    count: int
    resaw: Resaw
    width: float


def plies_for(jamb: ArchedJamb, arch: Arch, rack: Rack, allowance: float) -> PliesFor:
    """Return the plies that bend to the radius of an arch.

    Raises:
        CannotBeCut: the radius is too tight for any ply, or no board is wide enough for one.
    """
    units, about = rack.shop.grid.units, Subject.opening(jamb.opening.mark)
    count, may_saw = _plies(jamb, arch), sawn_from(arch, jamb.stock, rack) is not None
    if not _is_thick_enough(jamb, count, units):
        least = LEAST_PLY[units]
        needed = least * RADIUS_OVER_PLY
        raise CannotBeCut(PliesTooThin(subject=about, radius=arch.radius, least=least, needed=needed, may_saw=may_saw))
    width = rack.shop.grid.up(jamb.width + WIDER[units] + allowance)
    found = _resaws(jamb, count, width, rack)
    if not found:
        raise CannotBeCut(PliesTooWide(subject=about, stock=jamb.stock, width=width, may_saw=may_saw))
    return PliesFor(count=count, resaw=min(found, key=lambda one: one.wood), width=width)


def can_bend(jamb: ArchedJamb, arch: Arch, rack: Rack) -> bool:
    """Say whether plies that bend to the radius come out of a board at hand."""
    units, count = rack.shop.grid.units, _plies(jamb, arch)
    width = rack.shop.grid.up(jamb.width + WIDER[units] + (rack.shop.planned_allowance or 0.0))
    return _is_thick_enough(jamb, count, units) and bool(_resaws(jamb, count, width, rack))


def _plies(jamb: ArchedJamb, arch: Arch) -> int:
    """How many plies the radius asks for."""
    return math.ceil(jamb.thickness * RADIUS_OVER_PLY / arch.radius - ROUND_OFF)


def _is_thick_enough(jamb: ArchedJamb, count: int, units: Units) -> bool:
    return jamb.thickness / count >= LEAST_PLY[units] - ROUND_OFF


def _resaws(jamb: ArchedJamb, count: int, width: float, rack: Rack) -> list[Resaw]:
    ply = jamb.thickness / count
    return [one for board in rack.boards if (one := _resaw(board, jamb.stock, ply, count, width, rack.shop))]


def _resaw(board: Board, stock: str, ply: float, count: int, width: float, shop: Shop) -> Resaw | None:
    each = ply + PLANED_OFF[shop.grid.units]
    per_strip = math.floor((board.thickness + shop.kerf) / (each + shop.kerf) + ROUND_OFF)
    if board.stock != stock or per_strip < 1 or not comes_out(board, width, shop):
        return None
    return Resaw(board=board, per_strip=per_strip, strips=math.ceil(count / per_strip))


def sprung_share(count: int) -> float:
    """How much of its curvature a lamination loses off the form, ``1/n²`` of n plies.

    Each ply keeps straightening with its own stiffness, n t³, against that of all in one, (n t)³: mechanics of beams.
    """
    return 1 / count**2


def _part(jamb: ArchedJamb, arch: Arch, count: int, resaw: Resaw, width: float, shop: Shop) -> Part:
    share = sprung_share(count) if shop.springback is None else shop.springback
    segment = arch.segment(0, 1)
    inner, outer = segment.finish.inner, segment.finish.outer
    low, half = inner[1], outer[0]
    length = arch.outer_radius * 2 * math.atan2(outer[0], outer[1])
    plies = Plies(
        count=count,
        thickness=jamb.thickness / count,
        per_strip=resaw.per_strip,
        sprung=share,
        # Drawn, told and sawn by one number: what it is off the exact one springback is not known to.
        form_radius=shop.grid.round(arch.radius * (1 - share)),
        resawn=jamb.thickness / count + PLANED_OFF[shop.grid.units],
        kerf=shop.kerf,
        inner_length=arch.radius * arch.sweep,
        sweep_deg=math.degrees(arch.sweep),
        ends=_ends_on(jamb, arch),
    )
    (x, y), rise = arch.center, arch.outer_radius - low
    (along, up), (across, out) = arch.inner.way, arch.inner.outward
    return Part(
        kind=jamb.kind,
        side=arch.inner.side,
        where=jamb.where,
        blank=PartBlank(
            stock=jamb.stock,
            thickness=resaw.board.thickness,
            board=resaw.board,
            strips=(width,) * resaw.strips,
            strip_length=shop.grid.up(length + LONGER[shop.grid.units]),
            plies=plies,
        ),
        cuts=(Rip(width=jamb.width), Crosscut(length=length)),
        touches=jamb.touches,
        in_place=_bent(arch, jamb.width, (half - inner[0], outer[1] - low), half, rise),
        in_place_rise=rise,
        seat=Seat(
            origin=(x - half * along + low * across, y - half * up + low * out, jamb.edge),
            along=(along, up, 0.0),
            across=INWARD,
            through=(across, out, 0.0),
        ),
    )


def _ends_on(jamb: ArchedJamb, arch: Arch) -> ArcEnds:
    """Say what both ends of a bent piece lie on."""
    shape = jamb.opening.shape
    if shape and shape.kind is ShapeKind.FULL_ROUND:
        return ArcEnds.DIAMETER
    is_between = arch.inner.runs > 1 or (shape is not None and shape.is_cut_below(jamb.opening.frame))
    return ArcEnds.ITS_OWN if is_between else ArcEnds.SPRING_LINES


def _bent(arch: Arch, width: float, end: Point, half: float, rise: float) -> tuple[Cut, ...]:
    """Return the cuts that leave the bent piece of a block: it is modeled as a ring, ends on the spring lines.

    ``end``: inner → outer corner of an end, out and up; ``half``: middle → outer corner [in].
    """
    out, up = end
    low = arch.outer_radius - rise
    ends: list[Cut] = []
    if up > ROUND_OFF:
        for which, at, sign in ((End.START, out, -1.0), (End.FINISH, 2 * half - out, 1.0)):
            flat = Plane(
                start=(at, 0.0, 0.0), finish=(at + sign * out, 0.0, up), way=ACROSS, keep=(half, width / 2, rise)
            )
            ends.append(PlaneCut(at=which, flat=flat))
    sides = zip((CurvedSide.FACE, CurvedSide.BACK), (arch.radius, arch.outer_radius), strict=True)
    arcs = (ArcCut(side=side, center=(half, -low), radius=radius) for side, radius in sides)
    return (Rip(width=width), Crosscut(length=2 * half), *ends, *arcs)
