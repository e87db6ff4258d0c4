"""The order of laps: from below, each thing over the one before it, so that water always runs out onto the next.

What laps over metal and flange is what the wall has there: its membrane, a strip brought out from it, or, where the
wall names none, the layer that has yet to be settled.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from jambs.flashing.blank import Blank, BlankKind
from jambs.flashing.head_lap_words import CladdingLaps, CoveredHead, HeadFlashingLaps, SiteHeadLaps, UpstandLaps
from jambs.flashing.lap_words import (
    CladReturnLaps,
    FlangePath,
    Foot,
    HeadMembraneLaps,
    HeadTapeLaps,
    LapKind,
    LapStep,
    PanLaps,
    ReturnLaps,
    SideTapeLaps,
    SillFlashingLaps,
    SillLaps,
    TrimLaps,
    WindowLaps,
)
from jambs.flashing.membrane import weather_membrane
from jambs.job.models.cladding_returns import ReturnLaid
from jambs.job.models.openings import Opening
from jambs.job.models.shape import ShapeKind
from jambs.job.models.trim import Corner
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.kit.kit import Kit
from jambs.sides import Side

PARTS_OF = {
    LapKind.SILL: (PartKind.EXTERIOR_SILL,),
    LapKind.TRIM: (
        PartKind.EXTERIOR_JAMB,
        PartKind.METAL_RETURN,
        PartKind.RETURN_FURRING,
        PartKind.CLADDING_RETURN,
        PartKind.CORNER_BOARD,
        PartKind.MULL_JAMB,
        PartKind.MULL_CASING,
        PartKind.TRANSOM_BAR_CASING,
        PartKind.CASING,
    ),
    LapKind.HEAD_FLASHING: (PartKind.HEAD_FLASHING,),
}
"""The exterior parts of the kit that a lap puts on."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lap:
    """A step with its number from below."""

    number: int
    step: LapStep


def lap_order(kit: Kit, blanks: Sequence[Blank]) -> tuple[Lap, ...]:
    """Return the order of laps of one opening, from below; of the parts and blanks it has, and of no others."""
    kit = kit.as_trimmed
    made = {blank.kind: blank for blank in blanks}
    pan = made.get(BlankKind.SILL_PAN)
    steps: list[LapStep] = []
    if pan:
        steps.append(PanLaps(front=pan.front.width, behind=_out_from_membrane(kit, pan.profile[-1][0])))
    steps += _window(kit, _behind_the_window(kit), has_pan=pan is not None)
    steps += _sill(kit, made.get(BlankKind.SILL_FLASHING))
    steps += [_trim(kit), *(_head(kit) if _is_flashed(kit) else ())]
    return tuple(Lap(number=number, step=step) for number, step in enumerate(steps, start=1))


def window_laps(kit: Kit) -> tuple[Lap, ...]:
    """Return the order of laps of the unit alone, where the job states no trim outside."""
    steps = _window(kit, _behind_the_window(kit), has_pan=False)
    return tuple(Lap(number=number, step=step) for number, step in enumerate(steps, start=1))


def _behind_the_window(kit: Kit) -> float | None:
    """Weather membrane → flange plane; → outside edge of the frame where there is no flange [in]."""
    placement = kit.placement
    flanged = placement.opening.window.nailing_flange
    return _out_from_membrane(kit, placement.flange_plane if flanged else placement.outside_edge)


def _out_from_membrane(kit: Kit, depth: float) -> float | None:
    membrane = weather_membrane(kit.placement.planes)
    return None if membrane is None else depth - membrane


def _window(kit: Kit, behind: float | None, *, has_pan: bool) -> list[LapStep]:
    opening = kit.placement.opening
    is_door, has_flange = opening.floor_below_frame is not None, opening.window.nailing_flange
    about = _round(opening)
    steps: list[LapStep] = [
        WindowLaps(is_door=is_door, has_flange=has_flange, has_pan=has_pan, behind=behind, round=about),
        SideTapeLaps(has_flange=has_flange, has_pan=has_pan, round=about),
        HeadTapeLaps(has_flange=has_flange, round=about),
    ]
    return [*steps, HeadMembraneLaps(behind=behind)] if has_flange else steps


def _round(opening: Opening) -> FlangePath:
    """Say what the flanges run round."""
    if opening.shape is None:
        return FlangePath.RECTANGLE
    if not opening.shape.is_arched:
        return FlangePath.EDGES
    return FlangePath.RING if opening.shape.kind is ShapeKind.FULL_ROUND else FlangePath.ARCH


def _sill(kit: Kit, flashing: Blank | None) -> list[LapStep]:
    steps: list[LapStep] = [SillFlashingLaps(front=flashing.front.width)] if flashing else []
    if _has(kit, PartKind.EXTERIOR_SILL):
        steps.append(SillLaps(has_flashing=flashing is not None))
    return steps


def _trim(kit: Kit) -> LapStep:
    trim = kit.placement.opening.exterior
    assert trim is not None
    if trim.returns:
        return ReturnLaps(
            has_sill=trim.returns.sill is not None,
            lap=trim.returns.corner_lap,
            has_mulls=kit.placement.opening.gang is not None,
            is_shaped=kit.placement.opening.shape is not None,
        )
    if trim.cladding_returns:
        return CladReturnLaps(
            gap_at_sill=trim.cladding_returns.gap_at_sill if trim.sill else 0.0,
            joint=trim.sealant_joint,
            gap_at_corner=trim.cladding_returns.corner_board.gap if trim.cladding_returns.corner_board else 0.0,
            is_mitered=trim.cladding_returns.is_mitered,
            is_in_courses=trim.cladding_returns.laid is ReturnLaid.COURSES,
            is_butt=trim.casing.corner is Corner.BUTT,
        )
    return TrimLaps(
        has_jambs=_has(kit, PartKind.EXTERIOR_JAMB),
        foot=_foot(kit),
        is_butt=trim.casing.corner is Corner.BUTT,
        leans=bool(kit.outside_flares),
    )


def _foot(kit: Kit) -> Foot:
    casing = [part for part in kit.parts if part.kind is PartKind.CASING and part.where is Where.EXTERIOR]
    if any(part.side is Side.SILL for part in casing):
        if any(part.side.is_leg for part in casing):
            return Foot.BOTTOM_PIECE
        return Foot.RING if all(part.arcs for part in casing) else Foot.HEAD_ON_BOTTOM
    if not _has(kit, PartKind.EXTERIOR_SILL):
        return Foot.PAST_FRAME
    shape = kit.placement.opening.shape
    cut_below = shape is not None and shape.is_cut_below(kit.placement.opening.frame)
    return Foot.FEET_ON_SILL if cut_below else Foot.SILL


def _has(kit: Kit, kind: PartKind) -> bool:
    return any(part.kind is kind for part in kit.parts)


def _is_flashed(kit: Kit) -> bool:
    """Say whether metal goes over the head: a strip of the kit or, along a shape, what is formed on site."""
    return _has(kit, PartKind.HEAD_FLASHING) or kit.placement.opening.shape is not None


def _head(kit: Kit) -> list[LapStep]:
    """Return what goes on over the head casing: the metal, what laps its upstand, the cladding.

    Over a head that is not one level edge no metal is laid out: the step says how it is formed on site.
    """
    trim, planes = kit.placement.opening.exterior, kit.placement.planes
    assert trim is not None
    metal, membrane, is_cased = trim.head_flashing, weather_membrane(planes), trim.is_cased
    behind = None if membrane is None else planes.trim_plane - membrane
    about, is_level = _round(kit.placement.opening), _has(kit, PartKind.HEAD_FLASHING)
    over: LapStep = SiteHeadLaps(front=metal.drip, round=about, is_cased=is_cased)
    if is_level:
        covered = CoveredHead.CASING if is_cased else CoveredHead.FACE_LEG if trim.returns else CoveredHead.RETURN
        over = HeadFlashingLaps(front=metal.drip, over_what=covered)
    return [
        over,
        UpstandLaps(behind=behind, upstand=metal.upstand, round=about),
        CladdingLaps(behind=behind, gap=metal.gap_to_cladding, is_cased=is_cased, is_level=is_level),
    ]
