"""Casing round an opening, inside or outside: legs, head and bottom, mitered or butted.

The near edge of every piece is its inner edge, its face the one people see. Pieces run so that no board is mirrored:
inside clockwise as seen from inside, outside counter-clockwise.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum, auto

from jambs.geometry import DOWN, HALF_RIGHT_DEG, LEFT, RIGHT, UP, Vector, tangent
from jambs.job.models.trim import CasingEntry, Corner
from jambs.parts.board.cuts import Crosscut, Cut, Edge, End, EndBevel, Miter, Rip
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.parts.board.touches import BackBevel, Touch
from jambs.sides import Side

MITER_DEG = HALF_RIGHT_DEG


class _EndCut(Enum):
    """How one end of a piece of casing is cut."""

    SQUARE = auto()
    MITER = auto()
    SLOPE = auto()


@dataclass(frozen=True, slots=True, kw_only=True)
class CasedOpening:
    """Inner edges of the casing in wall coordinates [in], and the depth its back lies at.

    ``bottom``: y of the inner edge of a bottom casing, or of what the legs stand on.
    ``slope_deg``: slope of the sill they stand on. ``right_bottom``: ``bottom`` under the right leg, where the trim
    plane is deeper there than at the left and the sill has fallen farther; None where it is the same.
    """

    left: float
    right: float
    bottom: float
    top: float
    back: float
    has_bottom: bool
    slope_deg: float = 0.0
    right_bottom: float | None = None

    @property
    def width(self) -> float:
        """Between the inner edges of the legs [in]."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """From the inner edge of the head down to the bottom [in]."""
        return self.top - self.bottom


@dataclass(frozen=True, slots=True, kw_only=True)
class _Piece:
    side: Side
    inner: float
    start: _EndCut
    finish: _EndCut
    inner_start: tuple[float, float]
    along: Vector
    across: Vector

    @property
    def ends(self) -> tuple[tuple[End, _EndCut], tuple[End, _EndCut]]:
        """How the start and the finish are cut."""
        return (End.START, self.start), (End.FINISH, self.finish)


def casing(opening: CasedOpening, entry: CasingEntry, where: Where) -> tuple[Part, ...]:
    """Make the casing of one side of the wall: head, left leg, right leg, and a bottom where the opening has one."""
    pieces = [_head(opening, entry, where), *_legs(opening, entry, where)]
    if opening.has_bottom:
        pieces.append(_bottom(opening, entry, where))
    return tuple(_cut(piece, opening, entry, where) for piece in pieces)


def outside_width(opening: CasedOpening, entry: CasingEntry) -> float:
    """From the outer edge of one leg to that of the other [in]."""
    return opening.width + 2 * entry.width


def _corner(entry: CasingEntry) -> _EndCut:
    return _EndCut.MITER if entry.corner is Corner.MITER else _EndCut.SQUARE


def _across_inner(opening: CasedOpening, entry: CasingEntry) -> tuple[float, float]:
    """Inner length of head or bottom and how far it starts outside the inner edge of the legs [in]."""
    if entry.corner is Corner.MITER:
        return opening.width, 0.0
    out = entry.width + entry.overhang
    return opening.width + 2 * out, out


def _head(opening: CasedOpening, entry: CasingEntry, where: Where) -> _Piece:
    inner, out = _across_inner(opening, entry)
    inside = where is Where.INTERIOR
    start_x = opening.left - out if inside else opening.right + out
    along = RIGHT if inside else LEFT
    corner = _corner(entry)
    return _Piece(
        side=Side.HEAD, inner=inner, start=corner, finish=corner,
        inner_start=(start_x, opening.top), along=along, across=UP,
    )  # fmt: skip


def _bottom(opening: CasedOpening, entry: CasingEntry, where: Where) -> _Piece:
    inner, out = _across_inner(opening, entry)
    inside = where is Where.INTERIOR
    start_x = opening.right + out if inside else opening.left - out
    along = LEFT if inside else RIGHT
    corner = _corner(entry)
    return _Piece(
        side=Side.SILL, inner=inner, start=corner, finish=corner,
        inner_start=(start_x, opening.bottom), along=along, across=DOWN,
    )  # fmt: skip


def _legs(opening: CasedOpening, entry: CasingEntry, where: Where) -> list[_Piece]:
    top = _corner(entry)
    bottom = _corner(entry) if opening.has_bottom else (_EndCut.SLOPE if opening.slope_deg else _EndCut.SQUARE)
    inside = where is Where.INTERIOR
    pieces = []
    right_bottom = opening.bottom if opening.right_bottom is None else opening.right_bottom
    for side, x, out, up, low in (
        (Side.LEFT, opening.left, -1.0, inside, opening.bottom),
        (Side.RIGHT, opening.right, 1.0, not inside, right_bottom),
    ):
        pieces.append(
            _Piece(
                side=side,
                inner=opening.top - low,
                start=bottom if up else top,
                finish=top if up else bottom,
                inner_start=(x, low if up else opening.top),
                along=(0.0, 1.0 if up else -1.0, 0.0),
                across=(out, 0.0, 0.0),
            )
        )
    return pieces


def _cut(piece: _Piece, opening: CasedOpening, entry: CasingEntry, where: Where) -> Part:
    before, after = (entry.width if how is _EndCut.MITER else 0.0 for _, how in piece.ends)
    # The face of a leg on a sloping sill reaches lower than its back.
    drop = entry.thickness * tangent(opening.slope_deg) if _EndCut.SLOPE in (piece.start, piece.finish) else 0.0
    lead = drop if piece.start is _EndCut.SLOPE else 0.0
    length = before + (piece.inner + drop) + after
    x, y = piece.inner_start
    out_of_wall = -1.0 if where is Where.INTERIOR else 1.0
    shift = before + lead
    origin = (
        x - piece.along[0] * shift,
        y - piece.along[1] * shift,
        opening.back + out_of_wall * entry.thickness,
    )
    return Part(
        kind=PartKind.CASING,
        side=piece.side,
        where=where,
        blank=PartBlank(stock=entry.stock, thickness=entry.thickness),
        cuts=(Rip(width=entry.width), Crosscut(length=length), *_end_cuts(piece, opening)),
        touches=_touches(piece, entry),
        seat=Seat(origin=origin, along=piece.along, across=piece.across, through=(0.0, 0.0, -out_of_wall)),
    )


def _end_cuts(piece: _Piece, opening: CasedOpening) -> tuple[Cut, ...]:
    cuts: list[Cut] = []
    for end, how in piece.ends:
        if how is _EndCut.MITER:
            cuts.append(Miter(end=end, angle_deg=MITER_DEG, long_edge=Edge.FAR))
        if how is _EndCut.SLOPE:
            cuts.append(EndBevel(end=end, angle_deg=opening.slope_deg))
    return tuple(cuts)


def _touches(piece: _Piece, entry: CasingEntry) -> tuple[Touch, ...]:
    if entry.back_bevel_deg and _EndCut.MITER in (piece.start, piece.finish):
        return (BackBevel(angle_deg=entry.back_bevel_deg),)
    return ()
