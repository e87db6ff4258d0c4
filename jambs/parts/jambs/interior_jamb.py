"""Interior extension jambs: head, legs and bottom from the frame to the finished face.

Boards run clockwise round the opening as seen from inside: left leg bottom → top, head left → right, right leg top →
bottom, bottom right → left. Every board has its opening face as face, its straight near edge at the frame and its far
edge at the room; so none is mirrored. The opening is a path (``opening_path.py``); of a stool or a floor it has the
edge and no board.
"""

from __future__ import annotations

from jambs.geometry import Point
from jambs.job.models.side_lines import TURNED
from jambs.job.models.trim import InteriorTrim, Joint
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part, PartBlank
from jambs.parts.board.touches import Scribe
from jambs.parts.kit.kit import FittedSide
from jambs.parts.shapes.clear import ClearOpening
from jambs.parts.shapes.opening_path import BoardPlanes, CornerJoint, PathEdge, path_boards
from jambs.parts.shapes.path_cuts import sawn_board
from jambs.place.flares import SQUARE, Flares
from jambs.sides import Side

PRINTED = (Side.HEAD, Side.LEFT, Side.RIGHT, Side.SILL)
"""The order in which the parts of an opening are listed."""


def interior_jambs(
    clear: ClearOpening,
    sides: dict[Side, FittedSide],
    trim: InteriorTrim,
    inside_edge: float,
    proud: float,
    flares: Flares = SQUARE,
) -> tuple[Part, ...]:
    """Make the extension jamb boards of one opening; ``inside_edge``: depth of the frame's inside edge, ``proud``: past
    the finished wall [in].
    """
    path = jamb_path(clear, sides, trim, proud, flares)
    boards = {board.edge.side: board for board in path_boards(path)}
    return tuple(_part(boards[side], sides[side], trim, inside_edge) for side in PRINTED if side in boards)


def jamb_path(
    clear: ClearOpening, sides: dict[Side, FittedSide], trim: InteriorTrim, proud: float, flares: Flares
) -> tuple[PathEdge, ...]:
    """Return the path of a clear opening, clockwise from the bottom of the left leg."""
    has_bottom = trim.style.has_bottom
    corners: dict[Side, Point] = {
        Side.LEFT: (clear.left, clear.bottom),
        Side.HEAD: (clear.left, clear.top),
        Side.RIGHT: (clear.right, clear.top),
        Side.SILL: (clear.right, clear.bottom),
    }
    return tuple(
        PathEdge(
            side=side,
            corner=corner,
            flare_deg=flares.at(side),
            joint=_joint(side, trim),
            rabbet=_rabbet_depth(side, trim),
            thickness=trim.jamb.thickness,
            depths=_depths(sides.get(side), proud, is_turned=side in TURNED),
            is_board=side is not Side.SILL or has_bottom,
        )
        for side, corner in corners.items()
    )


def _is_at_floor(side: Side, trim: InteriorTrim) -> bool:
    """Say whether the corner where a side starts is at the foot of a leg that stands on a stool or a floor."""
    return side in (Side.LEFT, Side.SILL) and not trim.style.has_bottom


def _joint(side: Side, trim: InteriorTrim) -> CornerJoint:
    """How the boards meet in the corner where a side starts; the level board comes after a leg at head and sill."""
    level_runs_through = trim.jamb.joint in (Joint.HEAD_OVER_LEGS, Joint.RABBET)
    if trim.jamb.joint is Joint.MITER and not _is_at_floor(side, trim):
        return CornerJoint.MITER
    if _is_at_floor(side, trim):
        level_runs_through = True
    is_level = side in (Side.HEAD, Side.SILL)
    return CornerJoint.AFTER_RUNS_THROUGH if is_level is level_runs_through else CornerJoint.BEFORE_RUNS_THROUGH


def _rabbet_depth(side: Side, trim: InteriorTrim) -> float:
    if trim.jamb.joint is not Joint.RABBET or _is_at_floor(side, trim):
        return 0.0
    return trim.jamb.rabbet_depth or 0.0


def _depths(fitted: FittedSide | None, proud: float, *, is_turned: bool) -> Point:
    """Return the depths at the start and the finish of a board [in]; of a side that has none, nothing."""
    if fitted is None:
        return (0.0, 0.0)
    first, last = fitted.start_depth + proud, fitted.finish_depth + proud
    return (last, first) if is_turned else (first, last)


def _part(board: BoardPlanes, fitted: FittedSide, trim: InteriorTrim, inside_edge: float) -> Part:
    sawn, scribe = sawn_board(board, inside_edge), fitted.scribe_allowance
    return Part(
        kind=PartKind.EXTENSION_JAMB,
        side=board.edge.side,
        where=Where.INTERIOR,
        blank=PartBlank(stock=trim.jamb.stock, thickness=trim.jamb.thickness),
        cuts=sawn.cuts,
        touches=(Scribe(most=scribe),) if scribe else (),
        seat=sawn.seat,
    )
