"""Parts of a kit by what they are, and their marks as they stand on labels."""

from __future__ import annotations

from collections.abc import Iterable

from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.listing import marks_listed
from jambs.parts.board.part import Part
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.kit.kit import FigureKind


def parts_of(kit: CutKit, kind: PartKind, where: Where) -> tuple[Part, ...]:
    """Return the parts of a kind that a kit has in one of its sets."""
    return tuple(part for part in kit.parts if part.kind is kind and part.where is where)


def marks_text(parts: Iterable[Part]) -> str:
    """Return the marks of parts, as they stand on their labels."""
    return marks_listed(part.mark for part in parts)


def frame_reveal_of(kit: CutKit) -> float:
    """What the frame shows inside, as it comes out where the clear opening is on the shop's grid [in]."""
    asked = kit.placement.opening.interior.frame_reveal
    return next((one.value for one in kit.figures if one.kind is FigureKind.FRAME_REVEAL), asked)


def legs_reach_the_floor(kit: CutKit) -> bool:
    """Say whether a liner buck stands on the finished floor: it is set in a door before any floor is laid."""
    return kit.placement.opening.floor_below_frame is not None and bool(parts_of(kit, PartKind.LINER_BUCK, Where.BUCK))
