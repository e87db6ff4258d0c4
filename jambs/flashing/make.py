"""The blanks of one opening: head flashing, pan under the window, flashing under the exterior sill."""

from __future__ import annotations

import math
from dataclasses import dataclass

from jambs.findings import Finding, Subject
from jambs.flashing.bending import Bending, resolve_bending
from jambs.flashing.blank import Blank, BlankKind, Leg, LegKind
from jambs.flashing.checks import blank_findings, clearance_findings, membrane_findings, pan_findings
from jambs.flashing.findings import NoPanInRound
from jambs.flashing.laps import Lap, lap_order
from jambs.flashing.returns import return_blanks
from jambs.job.models.outside import FlashingEntry
from jambs.length import MM_PER_INCH, Grid, Units
from jambs.parts.board.cuts import MidNotch, Notch
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.findings.water import LEAST_FALL
from jambs.parts.kit.kit import Kit
from jambs.parts.trim.metal_returns import over_the_head
from jambs.place.frame_path import rough_path
from jambs.place.placement import Placement
from jambs.sides import Side

DOWN, KICK = -90.0, -45.0
BACK_LEG = {Units.INCH: 1.0, Units.MM: 25 / MM_PER_INCH}
"""Of a pan, up behind the window frame's inside edge, and down outside [in]; common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Flashings:
    """The sheet metal of one opening: blanks, the order in which things lap from below, what to know about them.

    ``bending``: how it is bent; None where the job says nothing of it. ``lent``: blanks of the leftmost of openings
    that are trimmed as one, which lie at this one too.
    """

    mark: str
    blanks: tuple[Blank, ...]
    laps: tuple[Lap, ...]
    findings: tuple[Finding, ...]
    bending: Bending | None
    lent: tuple[Blank, ...] = ()

    @property
    def here(self) -> tuple[Blank, ...]:
        """All blanks that lie at the opening, its own and others'."""
        return (*self.blanks, *self.lent)


def make_flashings(kit: Kit, entry: FlashingEntry | None, units: Units) -> Flashings:
    """Make the blanks of one opening from its exterior parts; nothing where the job states no exterior trim.

    ``entry``: None where the job says nothing of bent metal; the laps are then of the kit's own parts. ``units``: whose
    usual sizes hold where the job gives none.
    """
    trim = kit.placement.opening.exterior
    if trim is None:
        return Flashings(mark=kit.mark, blanks=(), laps=(), findings=(), bending=None)
    membrane = tuple(membrane_findings(kit.placement.planes))
    returns = tuple(return_blanks(kit))
    if entry is None:
        return Flashings(mark=kit.mark, blanks=returns, laps=lap_order(kit, ()), findings=membrane, bending=None)
    bending = resolve_bending(entry, units=units)
    # Over a head that is not one level edge no strip is laid out.
    head = head_blank(kit, bending) if _part(kit, PartKind.HEAD_FLASHING) else None
    is_round = _is_round_below(kit)
    has_pan = kit.placement.opening.floor_below_frame is None and not is_round
    pan = pan_blank(kit, bending, units) if has_pan else None
    blanks = tuple(blank for blank in (pan, sill_blank(kit, bending), head) if blank)
    lent = _lent(kit, bending)
    findings = [finding for blank in blanks for finding in blank_findings(blank, bending, Subject.opening(kit.mark))]
    if head:
        findings += clearance_findings(kit, head, trim.head_flashing.gap_to_cladding, units)
    findings += membrane
    if is_round:
        findings.append(NoPanInRound(subject=Subject.opening(kit.mark)))
    if pan:
        findings += pan_findings(kit, pan)
    return Flashings(
        mark=kit.mark,
        blanks=(*blanks, *returns),
        laps=lap_order(kit, (*blanks, *lent)),
        findings=tuple(findings),
        bending=bending,
        lent=lent,
    )


def _lent(kit: Kit, bending: Bending) -> tuple[Blank, ...]:
    """Return the metal under the sill and over the head that goes past an opening and is its neighbor's."""
    if kit.run is None or kit.run.is_lead:
        return ()
    trimmed = kit.as_trimmed
    head = head_blank(trimmed, bending) if _part(trimmed, PartKind.HEAD_FLASHING) else None
    return tuple(blank for blank in (sill_blank(trimmed, bending), head) if blank)


def head_of(flashings: Flashings) -> Blank | None:
    """Return the blank of the head flashing at an opening; nothing where there is none."""
    return next((blank for blank in flashings.here if blank.kind is BlankKind.HEAD_FLASHING), None)


def _is_round_below(kit: Kit) -> bool:
    """Say whether the bottom of the opening is an arc, in which no pan is bent."""
    return any(edge.center and edge.side is Side.SILL for edge in rough_path(kit.placement))


def _part(kit: Kit, kind: PartKind) -> Part | None:
    return next((part for part in kit.parts if part.kind is kind), None)


def _drip(bending: Bending) -> tuple[Leg, ...]:
    """A kick out to the drip, and a hem folded back under it."""
    kick = bending.drip_out / math.cos(math.radians(KICK))
    hem = (Leg(kind=LegKind.HEM, width=bending.hem, direction_deg=KICK + 180.0),) if bending.hem else ()
    return (Leg(kind=LegKind.DRIP, width=kick, direction_deg=KICK), *hem)


def head_blank(kit: Kit, bending: Bending) -> Blank:
    """Make the head flashing over the head casing: upstand, top with its fall, front leg over the casing, drip."""
    trim = kit.placement.opening.exterior
    part = _part(kit, PartKind.HEAD_FLASHING)
    assert trim is not None and part is not None
    flashing, run = trim.head_flashing, over_the_head(trim, kit.placement)
    rise = run * math.tan(math.radians(bending.fall_deg))
    legs = (
        Leg(kind=LegKind.UPSTAND, width=flashing.upstand, direction_deg=DOWN),
        Leg(kind=LegKind.TOP, width=math.hypot(run, rise), direction_deg=-bending.fall_deg),
        Leg(kind=LegKind.FRONT, width=flashing.drip, direction_deg=DOWN),
        *_drip(bending),
    )
    top = part.seat.origin[1]
    return Blank(
        mark=kit.mark,
        kind=BlankKind.HEAD_FLASHING,
        legs=legs,
        between=part.length,
        end_dam=bending.end_dam,
        start=(kit.placement.planes.trim_plane, top + rise + flashing.upstand),
    )


def pan_blank(kit: Kit, bending: Bending, units: Units) -> Blank:
    """Make the pan on the bottom of the rough opening: back leg at the frame's inside edge, fall, front leg outside.

    It runs from the inside edge of the frame to the flange plane, and without a flange to the frame's outside edge, or
    to the back edge of an exterior sill that runs in under the frame: its front leg hangs down behind that.
    """
    placement, window = kit.placement, kit.placement.opening.window
    edge = _sill_back(kit)
    outer = placement.flange_plane if window.nailing_flange else placement.outside_edge if edge is None else edge
    run = outer - placement.inside_edge
    rise, back = run * LEAST_FALL, BACK_LEG[units]
    legs = (
        Leg(kind=LegKind.BACK, width=back, direction_deg=DOWN),
        Leg(kind=LegKind.PAN, width=math.hypot(run, rise), direction_deg=-math.degrees(math.atan(LEAST_FALL))),
        Leg(kind=LegKind.FRONT, width=back, direction_deg=DOWN),
    )
    return Blank(
        mark=kit.mark,
        kind=BlankKind.SILL_PAN,
        legs=legs,
        between=_bottom_length(placement),
        end_dam=bending.end_dam,
        start=(placement.inside_edge, -placement.shims.sill + rise + back),
    )


def _sill_back(kit: Kit) -> float | None:
    """Depth of the back edge of the exterior sill at an opening, its own or its neighbor's [in]; None without one."""
    trim = kit.placement.opening.exterior
    if trim is None or trim.sill is None or _part(kit.as_trimmed, PartKind.EXTERIOR_SILL) is None:
        return None
    return kit.placement.outside_edge - trim.sill.under_frame


def _bottom_length(placement: Placement) -> float:
    """Length of the level bottom of the rough opening [in]."""
    if placement.opening.shape is None:
        return placement.opening.rough_opening.width
    return next(edge.length for edge in rough_path(placement) if edge.side is Side.SILL and edge.is_middle)


def sill_blank(kit: Kit, bending: Bending) -> Blank | None:
    """Make the flashing under the exterior sill: up behind it, out under it, down over the cladding, drip.

    It reaches from notch to notch of the sill, and from the sill's back edge, in under the frame, to the cladding face.
    """
    trim, part, back = kit.placement.opening.exterior, _part(kit, PartKind.EXTERIOR_SILL), _sill_back(kit)
    if trim is None or trim.sill is None or part is None or back is None:
        return None
    planes, slope = kit.placement.planes, math.radians(trim.sill.slope)
    run = planes.cladding_face - back
    legs = (
        Leg(kind=LegKind.BACK, width=trim.sill.thickness / math.cos(slope), direction_deg=DOWN),
        Leg(kind=LegKind.PAN, width=run / math.cos(slope), direction_deg=-trim.sill.slope),
        Leg(kind=LegKind.FRONT, width=trim.head_flashing.drip, direction_deg=DOWN),
        *_drip(bending),
    )
    return Blank(
        mark=kit.mark,
        kind=BlankKind.SILL_FLASHING,
        legs=legs,
        between=part.length - sum(cut.along for cut in part.cuts if isinstance(cut, Notch)),
        end_dam=bending.end_dam,
        start=(back, part.seat.origin[1]),
        walls=sum(isinstance(cut, MidNotch) for cut in part.cuts),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class BlankRow:
    """Blanks that are cut alike: what they are, girth × length [in], how many and whose."""

    name: str
    girth: float
    length: float
    marks: tuple[str, ...]


def blank_list(flashings: tuple[Flashings, ...], grid: Grid) -> tuple[BlankRow, ...]:
    """List the blanks of the house to cut, legs on a grid and lengths up to it, the same ones in one row."""
    rows: dict[tuple[str, float, float], list[str]] = {}
    for one in flashings:
        for blank in one.blanks:
            key = (blank.name, blank.on(grid).girth, grid.up(blank.length))
            rows.setdefault(key, []).append(blank.mark)
    return tuple(
        BlankRow(name=name, girth=girth, length=length, marks=tuple(marks))
        for (name, girth, length), marks in sorted(rows.items(), key=lambda row: (row[0][0], -row[0][2], row[0][1]))
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetRow:
    """Sheet metal to buy: of what and how thick [in], for how many blanks, their net area [sq in], the largest [in]."""

    material: str
    thickness: float
    count: int
    area: float
    widest: float
    longest: float


def sheet_list(flashings: tuple[Flashings, ...], grid: Grid) -> tuple[SheetRow, ...]:
    """Add the blanks up whose metal the job names, by sheet."""
    rows: dict[tuple[str, float], list[tuple[float, float]]] = {}
    for one in flashings:
        for blank in one.blanks:
            if blank.sheet:
                rows.setdefault(blank.sheet, []).append((blank.on(grid).girth, grid.up(blank.length)))
    return tuple(
        SheetRow(
            material=material,
            thickness=thickness,
            count=len(sizes),
            area=sum(girth * length for girth, length in sizes),
            widest=max(girth for girth, _ in sizes),
            longest=max(length for _, length in sizes),
        )
        for (material, thickness), sizes in sorted(rows.items())
    )
