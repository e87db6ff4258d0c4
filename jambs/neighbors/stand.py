"""Where an opening stands: its frame, its hole in the framing and all its boards, seen square to the wall."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.neighbors.findings import TrimPiece
from jambs.parts.board.bent_metal import MetalLegKind
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.board.touches import ReturnBend
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.on_elevation import Box, frame_over_floor, seen_box
from jambs.place.placement import Placement
from jambs.sides import Side


@dataclass(frozen=True, slots=True, kw_only=True)
class TrimBoard:
    """A board as a box in the plane of the wall [in]."""

    piece: TrimPiece
    box: Box


@dataclass(frozen=True, slots=True, kw_only=True)
class Stand:
    """An opening seen from inside [in], origin at the lower left corner of its frame.

    ``over_floor``: its own finished floor → bottom of the frame; ``from_left``: left corner of the wall, seen from
    outside → left edge of the frame; None where the job does not say. ``thickness``: of its wall, face to face.
    ``trimmed_with``: marks of the openings that are trimmed as one with it.
    """

    mark: str
    frame: Box
    hole: Box
    inside: tuple[TrimBoard, ...]
    outside: tuple[TrimBoard, ...]
    over_floor: float | None
    from_left: float | None
    thickness: float
    trimmed_with: tuple[str, ...] = ()


def stand_of(kit: Kit) -> Stand:
    """Take from a kit what has its place in the wall."""
    opening, size = kit.placement.opening, kit.placement.opening.frame
    return Stand(
        mark=kit.mark,
        frame=(0.0, 0.0, size.width, size.height),
        hole=_hole(kit.placement),
        inside=_boards(kit, Where.INTERIOR),
        outside=_boards(kit, Where.EXTERIOR),
        over_floor=frame_over_floor(opening),
        from_left=opening.from_left,
        thickness=kit.placement.planes.cladding_face,
        trimmed_with=opening.run.others(opening.mark) if opening.run else (),
    )


def _hole(placement: Placement) -> Box:
    """The hole in the framing round the frame, a liner counted in."""
    opening, shims = placement.opening, placement.shims
    lining = (placement.framing_opening.width - opening.rough_opening.width) / 2
    low = opening.floor_below_frame if opening.floor_below_frame is not None else shims.sill + lining
    return (
        -shims.left - lining,
        -low,
        opening.frame.width + shims.right + lining,
        opening.frame.height + shims.head + lining,
    )


def _boards(kit: Kit, where: Where) -> tuple[TrimBoard, ...]:
    return tuple(
        TrimBoard(piece=TrimPiece(kind=part.kind, side=part.side, where=where), box=_covered(part))
        for part in kit.parts
        if part.where is where and (not part.is_bent or part.kind is PartKind.METAL_RETURN)
    )


def _covered(part: Part) -> Box:
    """What a part covers of the wall [in]: of bent metal the leg on the wall too, and what laps past the corners."""
    box = seen_box(part)
    bend = next((touch for touch in part.touches if isinstance(touch, ReturnBend)), None)
    if bend is None:
        return box
    face = sum(leg.width for leg in bend.profile.legs if leg.kind is MetalLegKind.FACE)
    left, bottom, right, top = box
    if part.side is Side.LEFT:  # told from the face that is seen, as all legs from outside to outside
        return (right - face, bottom, right, top)
    if part.side is Side.RIGHT:
        return (left, bottom, left + face, top)
    return (left - bend.lap, bottom, right + bend.lap, bottom + face if part.side is Side.HEAD else top)


def moved(box: Box, across: float, up: float) -> Box:
    """Return a box moved across and up [in]."""
    return (box[0] + across, box[1] + up, box[2] + across, box[3] + up)


def from_outside(box: Box, stand: Stand) -> Box:
    """Return a box of an opening as seen from outside, across from the left corner of the wall [in]."""
    left = stand.from_left or 0.0
    width = stand.frame[2]
    return (left + width - box[2], box[1], left + width - box[0], box[3])
