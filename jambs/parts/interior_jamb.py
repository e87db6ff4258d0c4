"""Interior extension jambs: head, legs and bottom from the frame to the finished face.

Boards run clockwise round the opening as seen from inside: left leg bottom → top, head left → right, right leg top →
bottom, bottom right → left. Every board has its opening face as face, its straight near edge at the frame and its far
edge at the room; so none is mirrored.
"""

from __future__ import annotations

from dataclasses import dataclass

from jambs.job.models.openings import Job
from jambs.job.models.trim import InteriorStyle, InteriorTrim, Joint
from jambs.length import length_text
from jambs.parts.clear import ClearOpening
from jambs.parts.kit import FittedSide
from jambs.parts.part import Crosscut, Cut, End, EndBevel, EndRabbet, Part, Pocket, Rip, Seat, Taper, Vector, Where
from jambs.parts.shapes import make_part, tapered

MITER_DEG = 45.0
TOWARD_ROOM: Vector = (0.0, 0.0, -1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Board:
    """One jamb before it is cut: length, what happens at each end, where its start sits."""

    position: str
    length: float
    start: str
    finish: str
    corner: Vector
    along: Vector
    through: Vector
    side: FittedSide
    is_turned: bool


def interior_jambs(
    clear: ClearOpening, sides: dict[str, FittedSide], trim: InteriorTrim, inside_edge: float, job: Job
) -> tuple[Part, ...]:
    """Make the extension jamb boards of one opening; ``inside_edge``: depth of the frame's inside edge [in]."""
    boards = [_head(clear, sides, trim), _left(clear, sides, trim), _right(clear, sides, trim)]
    if trim.style is InteriorStyle.PICTURE_FRAMED:
        boards.append(_bottom(clear, sides, trim))
    return tuple(_cut(board, trim, inside_edge, job) for board in boards)


def _leg_ends(trim: InteriorTrim) -> tuple[float, str, float, str]:
    """What a leg adds to the clear height at its bottom and its top [in], and how each end is cut."""
    thickness, has_bottom = trim.jamb.thickness, trim.style is InteriorStyle.PICTURE_FRAMED
    added = {
        Joint.HEAD_OVER_LEGS: (0.0, "square"),
        Joint.LEGS_THROUGH: (thickness, "square"),
        Joint.RABBET: (trim.jamb.rabbet_depth or 0.0, "square"),
        Joint.MITER: (thickness, "miter"),
    }[trim.jamb.joint]
    return (*(added if has_bottom else (0.0, "square")), *added)


def _across_ends(trim: InteriorTrim) -> tuple[float, str]:
    """What head and bottom add to the clear width at each end [in], and how the ends are cut."""
    return {
        Joint.HEAD_OVER_LEGS: (trim.jamb.thickness, "square"),
        Joint.LEGS_THROUGH: (0.0, "square"),
        Joint.RABBET: (trim.jamb.thickness, "rabbet"),
        Joint.MITER: (trim.jamb.thickness, "miter"),
    }[trim.jamb.joint]


def _left(clear: ClearOpening, sides: dict[str, FittedSide], trim: InteriorTrim) -> _Board:
    low, low_end, high, high_end = _leg_ends(trim)
    return _Board(
        position="left leg",
        length=clear.height + low + high,
        start=low_end,
        finish=high_end,
        corner=(clear.left, clear.bottom - low, 0.0),
        along=(0.0, 1.0, 0.0),
        through=(-1.0, 0.0, 0.0),
        side=sides["left"],
        is_turned=False,
    )


def _right(clear: ClearOpening, sides: dict[str, FittedSide], trim: InteriorTrim) -> _Board:
    low, low_end, high, high_end = _leg_ends(trim)
    return _Board(
        position="right leg",
        length=clear.height + low + high,
        start=high_end,
        finish=low_end,
        corner=(clear.right, clear.top + high, 0.0),
        along=(0.0, -1.0, 0.0),
        through=(1.0, 0.0, 0.0),
        side=sides["right"],
        is_turned=True,
    )


def _head(clear: ClearOpening, sides: dict[str, FittedSide], trim: InteriorTrim) -> _Board:
    added, end = _across_ends(trim)
    return _Board(
        position="head",
        length=clear.width + 2 * added,
        start=end,
        finish=end,
        corner=(clear.left - added, clear.top, 0.0),
        along=(1.0, 0.0, 0.0),
        through=(0.0, 1.0, 0.0),
        side=sides["head"],
        is_turned=False,
    )


def _bottom(clear: ClearOpening, sides: dict[str, FittedSide], trim: InteriorTrim) -> _Board:
    added, end = _across_ends(trim)
    return _Board(
        position="bottom",
        length=clear.width + 2 * added,
        start=end,
        finish=end,
        corner=(clear.right + added, clear.bottom, 0.0),
        along=(-1.0, 0.0, 0.0),
        through=(0.0, -1.0, 0.0),
        side=sides["sill"],
        is_turned=True,
    )


def _cut(board: _Board, trim: InteriorTrim, inside_edge: float, job: Job) -> Part:
    proud, thickness = job.shop.proud, trim.jamb.thickness
    first, last = board.side.start_depth + proud, board.side.finish_depth + proud
    start, finish = (last, first) if board.is_turned else (first, last)
    cuts: list[Cut] = [Rip(width=max(start, finish))]
    if board.side.is_tapered:
        cuts.append(Taper(start_width=start, finish_width=finish))
    cuts += [Crosscut(length=board.length), *_end_cuts(board, trim)]
    x, y, _ = board.corner
    return make_part(
        "extension jamb",
        board.position,
        Where.INTERIOR,
        job=job,
        stock=trim.jamb.stock,
        thickness=thickness,
        outline=tapered(board.length, start, finish),
        cuts=tuple(cuts),
        ends=_ends(board, trim, job),
        seat=Seat(origin=(x, y, inside_edge), along=board.along, across=TOWARD_ROOM, through=board.through),
        work=_work(board, start, finish, job),
        pockets=_pockets(board, trim, max(start, finish)),
    )


def _end_cuts(board: _Board, trim: InteriorTrim) -> list[Cut]:
    cuts: list[Cut] = []
    for end, how in ((End.START, board.start), (End.FINISH, board.finish)):
        if how == "rabbet":
            cuts.append(EndRabbet(end=end, along=trim.jamb.thickness, depth=trim.jamb.rabbet_depth or 0.0))
        if how == "miter":
            cuts.append(EndBevel(end=end, angle_deg=MITER_DEG, face_short=True))
    return cuts


def _pockets(board: _Board, trim: InteriorTrim, width: float) -> tuple[Pocket, ...]:
    depth, along = trim.jamb.rabbet_depth or 0.0, trim.jamb.thickness
    spans = {"start": (0.0, along), "finish": (board.length - along, board.length)}
    ends = {"start": board.start, "finish": board.finish}
    return tuple(
        Pocket(low=(low, 0.0, 0.0), high=(high, width, depth))
        for end, (low, high) in spans.items()
        if ends[end] == "rabbet"
    )


def _ends(board: _Board, trim: InteriorTrim, job: Job) -> str:
    rabbet = length_text(trim.jamb.rabbet_depth or 0.0, units=job.units)
    thickness = length_text(trim.jamb.thickness, units=job.units)
    words = {
        "square": "square",
        "rabbet": f"rabbet {thickness} wide, {rabbet} deep in the face",
        "miter": "miter 45° through the thickness, long point at the back",
    }
    low, high = ("top", "bottom") if board.is_turned else ("bottom", "top")
    if board.start == board.finish:
        return f"{words[board.start]} both ends"
    return f"{low} {words[board.start]}, {high} {words[board.finish]}"


def _work(board: _Board, start: float, finish: float, job: Job) -> tuple[str, ...]:
    return (*_taper_work(board, start, finish, job), *_scribe_work(board.side, job))


def _scribe_work(side: FittedSide, job: Job) -> tuple[str, ...]:
    if not side.scribe_allowance:
        return ()
    return (f"leave the room edge straight; scribe it to the wall, up to {_text(side.scribe_allowance, job)} off",)


def _taper_work(board: _Board, start: float, finish: float, job: Job) -> tuple[str, ...]:
    if not board.side.is_tapered:
        return ()
    across = "leg" not in board.position
    low, high = ("left", "right") if across else ("bottom", "top")
    first, last = (finish, start) if board.is_turned else (start, finish)
    narrow, at = (first, low) if first < last else (last, high)
    return (f"taper the room edge to {_text(narrow, job)} at the {at}",)


def _text(length: float, job: Job) -> str:
    return length_text(length, units=job.units)
