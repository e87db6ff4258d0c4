"""Bent metal that lines an opening outside: a blank for head, each side and, where it is asked for, the sill.

What is seen in place is a strip as wide as the return; its legs lie along the frame and on the wall. The head ends at
the trim plane, whatever the sides do: the head flashing stands over its leg, behind the cladding.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from jambs.geometry import RIGHT
from jambs.job.models.exterior_trim import ExteriorJambEntry, ExteriorTrim
from jambs.job.models.metal_returns import CladdingAtLeg, MetalReturnsEntry, MetalSillEntry
from jambs.length import Grid
from jambs.parts.board.bent_metal import BentProfile, MetalLeg, MetalLegKind
from jambs.parts.board.cuts import Crosscut, Cut, Edge, End, Notch, Rip, Taper
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.parts.board.touches import ReturnBend
from jambs.parts.jambs.exterior_jamb import exterior_jambs
from jambs.parts.kit.kit import FittedSide
from jambs.parts.shapes.clear import ClearOpening
from jambs.parts.trim.exterior_sill import sill_fall
from jambs.place.placement import Placement
from jambs.sides import Side

TO_FRAME, OUT, INTO_WALL, DOWN_DEG = -90.0, 0.0, 90.0, -90.0
"""The way of a leg off the direction outward [degrees]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MetalSill:
    """Where a sill of bent metal lies [in]: height and depth of its upper edge, and its level run from there out."""

    top: float
    start: float
    run: float


def metal_sill(placement: Placement, trim: ExteriorTrim) -> MetalSill | None:
    """Return where the sill of bent metal lies; nothing where there is none.

    Its back leg stands before the flange, or the plane of the clips, its upper edge a sealant joint under the frame.
    """
    if trim.returns is None or trim.returns.sill is None:
        return None
    entry = trim.returns.sill
    start = placement.outside_edge - placement.opening.window.frame_projection + trim.returns.thickness
    run = placement.planes.cladding_face + entry.nosing - start
    return MetalSill(top=-trim.sealant_joint - entry.back_leg, start=start, run=run)


def sill_at_frame(placement: Placement, trim: ExteriorTrim) -> float | None:
    """Height of the metal sill's top at the frame's outside edge [in]; None without one."""
    place = metal_sill(placement, trim)
    if place is None or trim.returns is None or trim.returns.sill is None:
        return None
    return place.top - sill_fall(placement.outside_edge - place.start, trim.returns.sill.slope)


def past_trim_plane(placement: Placement, entry: MetalReturnsEntry) -> float:
    """How far the sides run out past the trim plane [in]: to the face of a cladding that lies behind their legs."""
    return placement.planes.cladding_depth if entry.cladding is CladdingAtLeg.BEHIND_LEG else 0.0


def make_metal_returns(
    clear: ClearOpening, sides: dict[Side, FittedSide], placement: Placement, trim: ExteriorTrim, grid: Grid
) -> tuple[Part, ...]:
    """Make head and sides round a clear opening; blanks are as long as the grid has it nearest."""
    entry = trim.returns
    assert entry is not None
    deep = deep_sides(sides, placement, entry)
    strips = exterior_jambs(clear, deep, as_boards(trim, entry), placement.outside_edge, sill_slope(entry))
    return tuple(_bent(strip, clear, entry, grid) for strip in strips)


def make_metal_sill(clear: ClearOpening, placement: Placement, trim: ExteriorTrim, grid: Grid) -> tuple[Part, ...]:
    """Make the sill of bent metal; nothing where none is asked for."""
    place, entry = metal_sill(placement, trim), trim.returns
    if place is None or entry is None or entry.sill is None:
        return ()
    return (_sill(place, clear, entry, entry.sill, grid),)


def sill_slope(entry: MetalReturnsEntry) -> float:
    """Slope of the sill of bent metal [degrees]; none where there is no sill."""
    return entry.sill.slope if entry.sill else 0.0


def deep_sides(sides: dict[Side, FittedSide], placement: Placement, entry: MetalReturnsEntry) -> dict[Side, FittedSide]:
    """Return the depths that metal lines: all but the head, over which the flashing stands, past the trim plane."""
    past = past_trim_plane(placement, entry)
    return {side: one if side is Side.HEAD else one.less(-past) for side, one in sides.items()}


def as_boards(trim: ExteriorTrim, entry: MetalReturnsEntry) -> ExteriorTrim:
    """Trim whose jambs are as thick as the sheet: the head lies over the sides."""
    jamb = ExteriorJambEntry.model_construct(thickness=entry.thickness, stock=entry.material, curved=entry.curved)
    return trim.model_copy(update={"jamb": jamb})


def _bent(strip: Part, clear: ClearOpening, entry: MetalReturnsEntry, grid: Grid) -> Part:
    """Make the blank of a head or a side from the strip that is seen of it."""
    taper = strip.taper
    start, finish = (taper.start_width, taper.finish_width) if taper else (strip.width, strip.width)
    profile = return_profile(max(start, finish), entry)
    girths = [return_profile(width, entry).girth for width in (start, finish)]
    tapers: tuple[Cut, ...] = (Taper(start_width=girths[0], finish_width=girths[1]),) if taper else ()
    lap = 0.0 if strip.side.is_leg else entry.corner_lap
    length = grid.round(strip.length if strip.side.is_leg else clear.width + 2 * lap)
    return replace(
        strip,
        kind=PartKind.METAL_RETURN,
        blank=metal_blank(entry),
        cuts=(Rip(width=max(girths)), *tapers, Crosscut(length=length), *_notches(profile, lap)),
        in_place=strip.cuts,
        touches=(ReturnBend(profile=profile, lap=lap, foot_deg=_foot(strip, entry)),),
    )


def _foot(strip: Part, entry: MetalReturnsEntry) -> float:
    """How far off square the foot of a side is snipped, to the fall of the sill [degrees]."""
    return entry.sill.slope if entry.sill and strip.side.is_leg else 0.0


def metal_blank(entry: MetalReturnsEntry) -> PartBlank:
    """Return the sheet that is cut."""
    return PartBlank(stock=entry.material, thickness=entry.thickness, is_metal=True)


def _notches(profile: BentProfile, lap: float) -> tuple[Cut, ...]:
    """The leg at the frame stops short of both ends, where the return is turned onto the sides."""
    if not lap:
        return ()
    across = profile.flat_widths[0]
    return tuple(Notch(end=end, edge=Edge.NEAR, along=lap, across=across) for end in End)


def _hem(entry: MetalReturnsEntry, direction_deg: float) -> tuple[MetalLeg, ...]:
    return (MetalLeg(kind=MetalLegKind.HEM, width=entry.hem, direction_deg=direction_deg),) if entry.hem else ()


def return_profile(width: float, entry: MetalReturnsEntry) -> BentProfile:
    """Bend a channel: both legs run away from the opening, the hem lies between face leg and wall."""
    legs = (
        MetalLeg(kind=MetalLegKind.FRAME, width=entry.frame_leg, direction_deg=TO_FRAME),
        MetalLeg(kind=MetalLegKind.RETURN, width=width, direction_deg=OUT),
        MetalLeg(kind=MetalLegKind.FACE, width=entry.face_leg, direction_deg=INTO_WALL),
        *_hem(entry, INTO_WALL + 180.0),
    )
    return BentProfile(legs=legs, thickness=entry.thickness, radius=entry.bend_radius)


def _sill_profile(width: float, entry: MetalReturnsEntry, sill: MetalSillEntry) -> BentProfile:
    """Bend a sill: its back leg up at the frame, its front down, the hem behind that."""
    legs = (
        MetalLeg(kind=MetalLegKind.BACK, width=sill.back_leg, direction_deg=DOWN_DEG),
        MetalLeg(kind=MetalLegKind.SILL, width=width, direction_deg=-sill.slope),
        MetalLeg(kind=MetalLegKind.FRONT, width=sill.front, direction_deg=DOWN_DEG),
        *_hem(entry, DOWN_DEG - 180.0),
    )
    return BentProfile(legs=legs, thickness=entry.thickness, radius=entry.bend_radius)


def _sill(place: MetalSill, clear: ClearOpening, entry: MetalReturnsEntry, sill: MetalSillEntry, grid: Grid) -> Part:
    """Make the sill: between the sides, its ends turned up behind them as dams, its front past them on both sides."""
    angle, between = math.radians(sill.slope), clear.width + 2 * entry.thickness
    width = place.run / math.cos(angle)
    profile = _sill_profile(width, entry, sill)
    length = grid.round(between + 2 * entry.corner_lap)
    return Part(
        kind=PartKind.METAL_RETURN,
        side=Side.SILL,
        where=Where.EXTERIOR,
        blank=metal_blank(entry),
        cuts=(Rip(width=profile.girth), Crosscut(length=length), *_notches(profile, entry.corner_lap)),
        in_place=(Rip(width=width), Crosscut(length=between)),
        touches=(ReturnBend(profile=profile, lap=entry.corner_lap),),
        seat=Seat(
            origin=(clear.left - entry.thickness, place.top, place.start),
            along=RIGHT,
            across=(0.0, -math.sin(angle), math.cos(angle)),
            through=(0.0, -math.cos(angle), -math.sin(angle)),
        ),
    )


def over_the_head(trim: ExteriorTrim, placement: Placement) -> float:
    """Level run of a head flashing from the trim plane out [in]: over the head casing, or out under the cladding."""
    return trim.casing.thickness if trim.is_cased else placement.planes.cladding_depth
