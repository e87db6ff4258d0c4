"""Flared jambs that follow arcs in flat segments: whether an opening has them, and what has to be known of them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from jambs.findings import Finding, Subject
from jambs.job.models.curved import Curved
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.openings import Opening
from jambs.job.models.path_edge import FramePath
from jambs.length import ROUND_OFF
from jambs.parts.board.cuts import CannotBeCut
from jambs.parts.findings.flare_findings import FlaredArcOfFlats, FlatSegmentsTooCoarse, MetalFollowsArc
from jambs.parts.kit.kit import FittedSide, JambFrame
from jambs.parts.shapes.arch import LEAST_SEGMENT
from jambs.parts.shapes.flat_segments import MOST_OFF_SHARE, FlatPath, flat_round
from jambs.place.flares import Flares
from jambs.sides import Side


def flat_path(opening: Opening, clear: FramePath, frame: JambFrame, flares: Flares) -> FlatPath | None:
    """Return the path of flared jambs that follow the arcs of a clear opening in flat segments; None of any other."""
    side = next((edge.side for edge in clear if edge.center), None)
    if side is None or opening.interior.jamb.curved is not Curved.FLAT_SEGMENTS:
        return None
    return flat_round(clear, flares, frame.sides[side].greatest + frame.proud)


def flat_path_outside(
    trim: ExteriorTrim, begins: FramePath, sides: Mapping[Side, FittedSide], flares: Flares, slope_deg: float
) -> FlatPath | None:
    """Return the path of exterior jambs, or of metal, that follow arcs in flat segments; None of any other.

    ``begins``: path of the clear opening a sealant joint outside the frame. A sill leans out by ``slope_deg``.
    """
    side = next((edge.side for edge in begins if edge.center), None)
    curved = trim.returns.curved if trim.returns else trim.jamb.curved
    if side is None or curved is not Curved.FLAT_SEGMENTS:
        return None
    leans = replace(flares, sill=slope_deg) if slope_deg else flares
    return flat_round(begins, leans, sides[side].greatest - trim.sealant_joint)


def hold_round(opening: Opening, clear: FramePath, flat: FlatPath, thickness: float, *, is_outside: bool) -> None:
    """Hold flat segments of jambs of a thickness [in] to the curve.

    Raises:
        CannotBeCut: what has to be planed off to make them round would leave too little of the jamb.
    """
    _hold_near(opening, clear, flat.off_room, MOST_OFF_SHARE * thickness, is_outside=is_outside)


def hold_metal_round(opening: Opening, clear: FramePath, flat: FlatPath, reveal: float) -> None:
    """Hold flat strips of metal, which cannot be planed, to the curve: they stand off it within the frame reveal [in].

    Raises:
        CannotBeCut: their middles stand in past the frame's inner edge.
    """
    _hold_near(opening, clear, flat.off_frame, reveal, is_outside=True, is_metal=True)


def _hold_near(
    opening: Opening, clear: FramePath, off: float, most: float, *, is_outside: bool, is_metal: bool = False
) -> None:
    if off > most + ROUND_OFF:
        raise CannotBeCut(
            FlatSegmentsTooCoarse(
                subject=Subject.opening(opening.mark),
                radius=min(edge.circle.radius for edge in clear if edge.circle),
                least=LEAST_SEGMENT,
                off=off,
                most=most,
                may_rise=any(edge.runs > 1 for edge in clear if edge.center),
                is_outside=is_outside,
                is_metal=is_metal,
            )
        )


def flat_findings(opening: Opening, clear: FramePath, frames: Sequence[JambFrame], flares: Flares) -> Iterator[Finding]:
    """Say how flat segments are put together and how round they are; nothing of any other jambs."""
    flat = flat_path(opening, clear, frames[0], flares) if frames else None
    if flat:
        yield told_of_flats(flat, opening.mark, opening.interior.frame_reveal)


def told_of_metal(flat: FlatPath, mark: str, reveal: float) -> Finding:
    """Say how strips of bent metal follow arcs; ``reveal``: asked for at the frame [in]."""
    about = Subject.opening(mark)
    return MetalFollowsArc(
        subject=about, count=len(flat.arcs), turn_deg=flat.turn_deg, off=flat.off_frame, reveal=reveal
    )


def told_of_flats(flat: FlatPath, mark: str, reveal: float, *, is_outside: bool = False) -> Finding:
    """Say how flat segments are put together and how round they are; ``reveal``: asked for at the frame [in]."""
    return FlaredArcOfFlats(
        subject=Subject.opening(mark),
        count=flat.count,
        turn_deg=flat.turn_deg,
        at_frame=flat.off_frame,
        at_room=flat.off_room,
        reveal=reveal,
        is_outside=is_outside,
    )
