"""Casing round an opening, inside or outside: legs, head and bottom, mitered or butted.

The near edge of every piece is its inner edge, its face the one people see. Pieces run so that no board is mirrored:
inside clockwise as seen from inside, outside counter-clockwise.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from jambs.job.models.openings import Job
from jambs.job.models.trim import CasingEntry, Corner
from jambs.length import decimal_text, length_text
from jambs.parts.part import Crosscut, Cut, Edge, End, EndBevel, Miter, Part, Rip, Seat, Vector, Where
from jambs.parts.shapes import make_part, trapezoid

MITER_DEG = 45.0


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
    position: str
    inner: float
    start: str
    finish: str
    inner_start: tuple[float, float]
    along: Vector
    across: Vector
    overhang: float = 0.0


def casing(opening: CasedOpening, entry: CasingEntry, where: Where, job: Job) -> tuple[Part, ...]:
    """Make the casing of one side of the wall: head, left leg, right leg, and a bottom where the opening has one."""
    pieces = [_head(opening, entry, where), *_legs(opening, entry, where)]
    if opening.has_bottom:
        pieces.append(_bottom(opening, entry, where))
    return tuple(_cut(piece, opening, entry, where, job) for piece in pieces)


def outside_width(opening: CasedOpening, entry: CasingEntry) -> float:
    """From the outer edge of one leg to that of the other [in]."""
    return opening.width + 2 * entry.width


def _corner(entry: CasingEntry) -> str:
    return "miter" if entry.corner is Corner.MITER else "square"


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
    along: Vector = (1.0, 0.0, 0.0) if inside else (-1.0, 0.0, 0.0)
    corner = _corner(entry)
    return _Piece(
        position="head", inner=inner, start=corner, finish=corner,
        inner_start=(start_x, opening.top), along=along, across=(0.0, 1.0, 0.0),
    )  # fmt: skip


def _bottom(opening: CasedOpening, entry: CasingEntry, where: Where) -> _Piece:
    inner, out = _across_inner(opening, entry)
    inside = where is Where.INTERIOR
    start_x = opening.right + out if inside else opening.left - out
    along: Vector = (-1.0, 0.0, 0.0) if inside else (1.0, 0.0, 0.0)
    corner = _corner(entry)
    return _Piece(
        position="bottom", inner=inner, start=corner, finish=corner,
        inner_start=(start_x, opening.bottom), along=along, across=(0.0, -1.0, 0.0),
    )  # fmt: skip


def _legs(opening: CasedOpening, entry: CasingEntry, where: Where) -> list[_Piece]:
    top = _corner(entry)
    bottom = _corner(entry) if opening.has_bottom else ("slope" if opening.slope_deg else "square")
    inside = where is Where.INTERIOR
    pieces = []
    right_bottom = opening.bottom if opening.right_bottom is None else opening.right_bottom
    for position, x, out, up, low in (
        ("left leg", opening.left, -1.0, inside, opening.bottom),
        ("right leg", opening.right, 1.0, not inside, right_bottom),
    ):
        pieces.append(
            _Piece(
                position=position,
                inner=opening.top - low,
                start=bottom if up else top,
                finish=top if up else bottom,
                inner_start=(x, low if up else opening.top),
                along=(0.0, 1.0 if up else -1.0, 0.0),
                across=(out, 0.0, 0.0),
            )
        )
    return pieces


def _cut(piece: _Piece, opening: CasedOpening, entry: CasingEntry, where: Where, job: Job) -> Part:
    before = entry.width if piece.start == "miter" else 0.0
    after = entry.width if piece.finish == "miter" else 0.0
    # The face of a leg on a sloping sill reaches lower than its back.
    drop = (
        entry.thickness * math.tan(math.radians(opening.slope_deg)) if "slope" in (piece.start, piece.finish) else 0.0
    )
    lead = drop if piece.start == "slope" else 0.0
    inner = piece.inner + drop
    length = before + inner + after
    outline = trapezoid((before, before + inner), (0.0, length), entry.width)
    x, y = piece.inner_start
    out_of_wall = -1.0 if where is Where.INTERIOR else 1.0
    shift = before + lead
    origin = (
        x - piece.along[0] * shift,
        y - piece.along[1] * shift,
        opening.back + out_of_wall * entry.thickness,
    )
    return make_part(
        "casing",
        piece.position,
        where,
        job=job,
        stock=entry.stock,
        thickness=entry.thickness,
        outline=outline,
        cuts=(Rip(width=entry.width), Crosscut(length=length), *_end_cuts(piece, opening)),
        ends=_ends(piece, opening, inner, length, job),
        work=_work(piece, entry),
        seat=Seat(origin=origin, along=piece.along, across=piece.across, through=(0.0, 0.0, -out_of_wall)),
    )


def _end_cuts(piece: _Piece, opening: CasedOpening) -> tuple[Cut, ...]:
    cuts: list[Cut] = []
    for end, how in ((End.START, piece.start), (End.FINISH, piece.finish)):
        if how == "miter":
            cuts.append(Miter(end=end, angle_deg=MITER_DEG, long_edge=Edge.FAR))
        if how == "slope":
            cuts.append(EndBevel(end=end, angle_deg=opening.slope_deg))
    return tuple(cuts)


def _ends(piece: _Piece, opening: CasedOpening, inner: float, length: float, job: Job) -> str:
    inner_text = length_text(inner, units=job.units)
    if piece.start == piece.finish == "miter":
        return f"miter 45° both ends; short point {inner_text}"
    slope = decimal_text(opening.slope_deg, 1)
    words = {
        "square": "square",
        "miter": f"miter 45°, short point {inner_text}",
        "slope": f"beveled {slope}° to the sill, face long",
    }
    if piece.start == piece.finish:
        return f"{words[piece.start]} both ends"
    top, bottom = (piece.start, piece.finish) if piece.along[1] < 0 else (piece.finish, piece.start)
    return f"top {words[top]}; bottom {words[bottom]}"


def _work(piece: _Piece, entry: CasingEntry) -> tuple[str, ...]:
    if entry.back_bevel_deg and "miter" in (piece.start, piece.finish):
        return (f"back bevel the miters {decimal_text(entry.back_bevel_deg, 1)}°",)
    return ()
