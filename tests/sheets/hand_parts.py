"""Boards made by hand: an inside, an outside, a buck."""

from __future__ import annotations

from dataclasses import replace

from jambs.job.models.shop import Board
from jambs.parts.board.cuts import Crosscut, Cut, Edge, EdgeBevel, End, EndRabbet, Groove, Miter, Notch, Rip, Taper
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part, PartBlank, Seat
from jambs.parts.board.touches import StripBend
from jambs.sides import Side

UP = (0.0, 1.0, 0.0)
DOWN = (0.0, -1.0, 0.0)
RIGHT = (1.0, 0.0, 0.0)
IN = (0.0, 0.0, -1.0)
OUT_TO = {
    Side.LEFT: (UP, (-1.0, 0.0, 0.0)),
    Side.RIGHT: (DOWN, RIGHT),
    Side.HEAD: (RIGHT, UP),
    Side.SILL: ((-1.0, 0.0, 0.0), DOWN),
}
"""The way of the grain and of the back of an interior jamb on each side."""


def make_part(
    number: int,
    mark: str = "W01",
    *,
    kind: PartKind = PartKind.EXTENSION_JAMB,
    side: Side = Side.LEFT,
    where: Where = Where.INTERIOR,
    stock: str = "poplar",
    nominal: str = "1x6",
    thickness: float = 0.75,
    width: float = 4.71875,
    length: float = 42.25,
    strips: tuple[float, ...] = (),
    more: tuple[Cut, ...] = (),
) -> Part:
    """Return a board by hand: by itself an upright leg of the interior jamb."""
    along, through = OUT_TO[side]
    board = Board(stock=stock, nominal=nominal, thickness=thickness, width=width)
    return Part(
        mark=f"{mark}-{number}",
        opening=mark,
        kind=kind,
        side=side,
        where=where,
        blank=PartBlank(stock=stock, thickness=thickness, board=board, strips=strips),
        cuts=(Rip(width=width), Crosscut(length=length), *more),
        seat=Seat(origin=(2.375, 2.875, 4.6875), along=along, across=IN, through=through),
    )


def interior_parts(mark: str = "W01") -> list[Part]:
    """Return eight parts of a picture-framed inside."""
    rabbet = tuple(EndRabbet(end=end, along=0.75, depth=0.375) for end in End)
    miters = tuple(Miter(end=end, angle_deg=45.0, long_edge=Edge.FAR) for end in End)
    boards = [
        make_part(1, mark, side=Side.HEAD, length=32.25, more=rabbet),
        make_part(2, mark),
        make_part(3, mark, side=Side.RIGHT),
        make_part(4, mark, side=Side.SILL, length=32.25, more=rabbet),
    ]
    for number, (side, length) in enumerate(
        ((Side.HEAD, 38.125), (Side.LEFT, 49.375), (Side.RIGHT, 49.375), (Side.SILL, 38.125)), start=5
    ):
        casing = make_part(
            number, mark, kind=PartKind.CASING, side=side, width=3.5, length=length, nominal="1x4", more=miters
        )
        boards.append(casing)
    return boards


def exterior_parts(mark: str = "W01", start: int = 9) -> list[Part]:
    """Return eight parts of the outside."""
    sides = (Side.HEAD, Side.LEFT, Side.RIGHT)
    jambs = [
        make_part(
            start + number,
            mark,
            kind=PartKind.EXTERIOR_JAMB,
            side=side,
            where=Where.EXTERIOR,
            stock="cedar",
            nominal="1x4",
            width=1.5,
            length=45.625,
            more=() if side is Side.HEAD else (Miter(end=End.START, angle_deg=10.0, long_edge=Edge.FAR),),
        )
        for number, side in enumerate(sides)
    ]
    sill = make_part(
        start + 3,
        mark,
        kind=PartKind.EXTERIOR_SILL,
        side=Side.SILL,
        where=Where.EXTERIOR,
        stock="cedar",
        nominal="2x6",
        thickness=1.5,
        width=3.84375,
        length=46.5,
        more=(
            EdgeBevel(edge=Edge.NEAR, angle_deg=10.0, face_short=False),
            EdgeBevel(edge=Edge.FAR, angle_deg=10.0, face_short=True),
            *(Notch(end=end, edge=Edge.NEAR, along=5.25, across=1.53125) for end in End),
            Groove(edge=Edge.FAR, from_edge=0.5, width=0.25, depth=0.25),
        ),
    )
    casing = [
        make_part(
            start + 4 + number,
            mark,
            kind=PartKind.CASING,
            side=side,
            where=Where.EXTERIOR,
            stock="cedar",
            nominal="5/4x6",
            width=4.5,
            thickness=1.0,
            length=49.0,
        )
        for number, side in enumerate(sides)
    ]
    flashing = make_part(
        start + 7, mark, kind=PartKind.HEAD_FLASHING, side=Side.HEAD, where=Where.EXTERIOR, width=4.5, length=46.5
    )
    bend = StripBend(upstand=3.0, top=1.0, drip=0.5, past_casing=0.25, gap_to_cladding=0.375)
    metal = PartBlank(stock="aluminum flashing", thickness=1 / 32, is_metal=True)
    return [*jambs, sill, *casing, replace(flashing, blank=metal, touches=(bend,))]


def buck_parts(mark: str = "W01", start: int = 17) -> list[Part]:
    """Return four parts of an outboard buck."""
    return [
        make_part(
            start + number,
            mark,
            kind=PartKind.OUTBOARD_BUCK,
            side=side,
            where=Where.BUCK,
            stock="framing lumber",
            nominal="2x4",
            thickness=1.5,
            width=2.75,
            length=48.0,
        )
        for number, side in enumerate((Side.HEAD, Side.LEFT, Side.RIGHT, Side.SILL))
    ]


def tapered(part: Part, start: float, finish: float) -> Part:
    """Return a part with a tapered far edge."""
    wide = max(start, finish)
    return replace(
        part, cuts=(Rip(width=wide), Taper(start_width=start, finish_width=finish), Crosscut(length=part.length))
    )
