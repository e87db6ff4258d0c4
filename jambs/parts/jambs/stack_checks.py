"""Stacked jamb frames held against what they are for: boards without glue, and something behind each to fasten to."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from jambs.findings import Finding, Subject
from jambs.job.models.shop import Board, Shop
from jambs.length import ROUND_OFF
from jambs.parts.board.boards import SAME_SIZE
from jambs.parts.board.kinds import PartKind
from jambs.parts.board.part import Part
from jambs.parts.findings.stack_findings import NothingBehindFrame, StackNotNeeded, StackStillGlued, WallFrameTooShallow
from jambs.parts.jambs.stack import at_hand, board_width
from jambs.parts.kit.kit import JambFrame
from jambs.place.placement import Placement


def stack_findings(
    frames: Sequence[JambFrame],
    placement: Placement,
    parts: Sequence[Part],
    *,
    boards: Sequence[Board],
    shop: Shop,
    least: float,
) -> Iterator[Finding]:
    """Find what stacked frames do not do; ``boards``: at hand, ``least``: depth the shop mills at the least [in]."""
    if len(frames) < 2:
        return
    about, count = Subject.opening(placement.opening.mark), len(frames)
    rip = sum(one.width for one in frames)
    single = board_width(rip + (shop.planned_allowance or 0.0), at_hand(placement.opening.interior, boards), shop)
    if single is not None:
        yield StackNotNeeded(subject=about, frames=count, rip=rip, board=single)
    glued = [part for part in parts if part.kind is PartKind.EXTENSION_JAMB and part.strips]
    if glued:
        marks = tuple(part.mark for part in glued)
        yield StackStillGlued(subject=about, frames=count, marks=marks, width=max(part.width for part in glued))
    if frames[-1].least_depth < least - ROUND_OFF:
        yield WallFrameTooShallow(subject=about, member=count, depth=frames[-1].least_depth, least=least)
    yield from (
        NothingBehindFrame(subject=about, member=one.member) for one in frames if not _is_backed(one, placement)
    )


def _is_backed(frame: JambFrame, placement: Placement) -> bool:
    """Say whether framing or buck lies behind a frame, over a part of its depth."""
    planes, buck = placement.planes, placement.buck
    solid = [(planes.stud_face, planes.sheathing_plane), *([(buck.inner, buck.outer)] if buck else [])]
    room, window = frame.edge - frame.width, frame.edge
    return any(min(window, outer) - max(room, inner) > SAME_SIZE for inner, outer in solid)
