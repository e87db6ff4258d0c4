"""Interior extension jambs: head, legs and bottom from the frame to the finished face.

Boards run clockwise round the opening as seen from inside: left leg bottom → top, head left → right, right leg top →
bottom, bottom right → left. Every board has its opening face as face, its straight near edge at the frame and its far
edge at the room; so none is mirrored.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from jambs.geometry import HALF_RIGHT_DEG, Vector
from jambs.job.models.trim import InteriorStyle, InteriorTrim, Joint
from jambs.parts.clear import ClearOpening
from jambs.parts.cuts import Crosscut, Cut, End, EndBevel, EndRabbet, Rip, Scribe, Taper
from jambs.parts.kinds import PartKind, Where
from jambs.parts.kit import FittedSide
from jambs.parts.part import Part, PartBlank, Seat
from jambs.sides import Side

MITER_DEG = HALF_RIGHT_DEG
TOWARD_ROOM: Vector = (0.0, 0.0, -1.0)


class _EndCut(Enum):
    """How one end of a jamb is cut."""

    SQUARE = 1
    RABBET = 2
    MITER = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class _Board:
    """One jamb before it is cut: length, what happens at each end, where its start sits."""

    side: Side
    length: float
    start: _EndCut
    finish: _EndCut
    corner: Vector
    along: Vector
    through: Vector
    fitted: FittedSide
    is_turned: bool


def interior_jambs(
    clear: ClearOpening, sides: dict[Side, FittedSide], trim: InteriorTrim, inside_edge: float, proud: float
) -> tuple[Part, ...]:
    """Make the extension jamb boards of one opening; ``inside_edge``: depth of the frame's inside edge, ``proud``: past
    the finished wall [in].
    """
    boards = [_head(clear, sides, trim), _left(clear, sides, trim), _right(clear, sides, trim)]
    if trim.style is InteriorStyle.PICTURE_FRAMED:
        boards.append(_bottom(clear, sides, trim))
    return tuple(_cut(board, trim, inside_edge, proud) for board in boards)


def _leg_ends(trim: InteriorTrim) -> tuple[float, _EndCut, float, _EndCut]:
    """What a leg adds to the clear height at its bottom and its top [in], and how each end is cut."""
    thickness, has_bottom = trim.jamb.thickness, trim.style is InteriorStyle.PICTURE_FRAMED
    added = {
        Joint.HEAD_OVER_LEGS: (0.0, _EndCut.SQUARE),
        Joint.LEGS_THROUGH: (thickness, _EndCut.SQUARE),
        Joint.RABBET: (trim.jamb.rabbet_depth or 0.0, _EndCut.SQUARE),
        Joint.MITER: (thickness, _EndCut.MITER),
    }[trim.jamb.joint]
    return (*(added if has_bottom else (0.0, _EndCut.SQUARE)), *added)


def _across_ends(trim: InteriorTrim) -> tuple[float, _EndCut]:
    """What head and bottom add to the clear width at each end [in], and how the ends are cut."""
    return {
        Joint.HEAD_OVER_LEGS: (trim.jamb.thickness, _EndCut.SQUARE),
        Joint.LEGS_THROUGH: (0.0, _EndCut.SQUARE),
        Joint.RABBET: (trim.jamb.thickness, _EndCut.RABBET),
        Joint.MITER: (trim.jamb.thickness, _EndCut.MITER),
    }[trim.jamb.joint]


def _left(clear: ClearOpening, sides: dict[Side, FittedSide], trim: InteriorTrim) -> _Board:
    low, low_end, high, high_end = _leg_ends(trim)
    return _Board(
        side=Side.LEFT,
        length=clear.height + low + high,
        start=low_end,
        finish=high_end,
        corner=(clear.left, clear.bottom - low, 0.0),
        along=(0.0, 1.0, 0.0),
        through=(-1.0, 0.0, 0.0),
        fitted=sides[Side.LEFT],
        is_turned=False,
    )


def _right(clear: ClearOpening, sides: dict[Side, FittedSide], trim: InteriorTrim) -> _Board:
    low, low_end, high, high_end = _leg_ends(trim)
    return _Board(
        side=Side.RIGHT,
        length=clear.height + low + high,
        start=high_end,
        finish=low_end,
        corner=(clear.right, clear.top + high, 0.0),
        along=(0.0, -1.0, 0.0),
        through=(1.0, 0.0, 0.0),
        fitted=sides[Side.RIGHT],
        is_turned=True,
    )


def _head(clear: ClearOpening, sides: dict[Side, FittedSide], trim: InteriorTrim) -> _Board:
    added, end = _across_ends(trim)
    return _Board(
        side=Side.HEAD,
        length=clear.width + 2 * added,
        start=end,
        finish=end,
        corner=(clear.left - added, clear.top, 0.0),
        along=(1.0, 0.0, 0.0),
        through=(0.0, 1.0, 0.0),
        fitted=sides[Side.HEAD],
        is_turned=False,
    )


def _bottom(clear: ClearOpening, sides: dict[Side, FittedSide], trim: InteriorTrim) -> _Board:
    added, end = _across_ends(trim)
    return _Board(
        side=Side.SILL,
        length=clear.width + 2 * added,
        start=end,
        finish=end,
        corner=(clear.right + added, clear.bottom, 0.0),
        along=(-1.0, 0.0, 0.0),
        through=(0.0, -1.0, 0.0),
        fitted=sides[Side.SILL],
        is_turned=True,
    )


def _cut(board: _Board, trim: InteriorTrim, inside_edge: float, proud: float) -> Part:
    first, last = board.fitted.start_depth + proud, board.fitted.finish_depth + proud
    start, finish = (last, first) if board.is_turned else (first, last)
    cuts: list[Cut] = [Rip(width=max(start, finish))]
    if board.fitted.is_tapered:
        cuts.append(Taper(start_width=start, finish_width=finish))
    cuts += [Crosscut(length=board.length), *_end_cuts(board, trim)]
    x, y, _ = board.corner
    scribe = board.fitted.scribe_allowance
    return Part(
        kind=PartKind.EXTENSION_JAMB,
        side=board.side,
        where=Where.INTERIOR,
        blank=PartBlank(stock=trim.jamb.stock, thickness=trim.jamb.thickness),
        cuts=tuple(cuts),
        touches=(Scribe(most=scribe),) if scribe else (),
        seat=Seat(origin=(x, y, inside_edge), along=board.along, across=TOWARD_ROOM, through=board.through),
    )


def _end_cuts(board: _Board, trim: InteriorTrim) -> list[Cut]:
    cuts: list[Cut] = []
    for end, how in ((End.START, board.start), (End.FINISH, board.finish)):
        if how is _EndCut.RABBET:
            cuts.append(EndRabbet(end=end, along=trim.jamb.thickness, depth=trim.jamb.rabbet_depth or 0.0))
        if how is _EndCut.MITER:
            cuts.append(EndBevel(end=end, angle_deg=MITER_DEG, face_short=True))
    return cuts
