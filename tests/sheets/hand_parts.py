"""Boards made by hand: an inside, an outside, a buck."""

from __future__ import annotations

from dataclasses import replace

from jambs.length import GRIDS
from jambs.parts.part import (
    Crosscut,
    Edge,
    End,
    EndRabbet,
    Groove,
    Miter,
    Part,
    Pocket,
    Rip,
    Seat,
    Taper,
    Where,
)

UP = (0.0, 1.0, 0.0)
RIGHT = (1.0, 0.0, 0.0)
IN = (0.0, 0.0, -1.0)


def make_part(number: int, mark: str = "W01", **changes: object) -> Part:
    """Return a plain board by hand: an upright leg of the interior jamb."""
    width = float(changes.get("width", 4.71875))  # type: ignore[arg-type]
    length = float(changes.get("length", 42.25))  # type: ignore[arg-type]
    part = Part(
        mark=f"{mark}-{number}",
        name="extension jamb",
        position="left leg",
        where=Where.INTERIOR,
        stock="poplar",
        board="1x6 poplar",
        thickness=0.75,
        width=width,
        length=length,
        outline=((0.0, 0.0), (length, 0.0), (length, width), (0.0, width)),
        profile=((0.0, 0.0), (width, 0.0), (width, 0.75), (0.0, 0.75)),
        cuts=(Rip(width=width), Crosscut(length=length)),
        ends="square both ends",
        seat=Seat(origin=(2.375, 2.875, 4.6875), along=UP, across=IN, through=(-1.0, 0.0, 0.0)),
    )
    return replace(part, **changes)  # type: ignore[arg-type]


def _sides_and_head(mark: str, start: int, **common: object) -> list[Part]:
    head = {"position": "head", "seat": Seat(origin=(0.0, 45.0, 4.7), along=RIGHT, across=IN, through=UP)}
    return [
        make_part(start, mark, **{**common, **head}),
        make_part(start + 1, mark, **{**common, "position": "left leg"}),
        make_part(start + 2, mark, **{**common, "position": "right leg"}),
    ]


def interior_parts(mark: str = "W01") -> list[Part]:
    """Return eight parts of a picture-framed inside."""
    rabbet = (
        EndRabbet(end=End.START, along=0.75, depth=0.375),
        EndRabbet(end=End.FINISH, along=0.75, depth=0.375),
    )
    jamb = {"name": "extension jamb"}
    work = ('rabbet 3/4" × 3/8" deep across the face at both ends',)
    legs = _sides_and_head(mark, 1, **jamb)
    boards = [
        replace(
            legs[0],
            length=32.25,
            work=work,
            cuts=(*legs[0].cuts, *rabbet),
            pockets=(Pocket(low=(0, 0, 0), high=(0.75, 4.71875, 0.375)),),
        ),
        legs[1],
        legs[2],
        replace(legs[0], mark=f"{mark}-4", position="bottom", length=32.25, work=work, cuts=(*legs[0].cuts, *rabbet)),
    ]
    miters = (
        Miter(end=End.START, angle_deg=45.0, long_edge=Edge.FAR),
        Miter(end=End.FINISH, angle_deg=45.0, long_edge=Edge.FAR),
    )
    for number, (position, length) in enumerate(
        (("head", 38.125), ("left leg", 49.375), ("right leg", 49.375), ("bottom", 38.125)), start=5
    ):
        short = length - 7
        boards.append(
            make_part(
                number,
                mark,
                name="casing",
                position=position,
                width=3.5,
                length=length,
                board="1x4 poplar",
                ends=f"miter 45° both ends, short point {GRIDS['1/32'].text(short)}",
                cuts=(Rip(width=3.5), *miters),
            )
        )
    return boards


def exterior_parts(mark: str = "W01", start: int = 9) -> list[Part]:
    """Return eight parts of the outside."""
    cedar = {"where": Where.EXTERIOR, "stock": "cedar"}
    jambs = _sides_and_head(mark, start, **cedar, name="exterior jamb", width=1.5, board="1x4 cedar", length=45.625)
    jambs[1:] = [
        replace(leg, ends="square at the top, 10° bevel at the bottom, long side to the inside") for leg in jambs[1:]
    ]
    sill = make_part(
        start + 3,
        mark,
        **cedar,
        name="sill",
        position="sill",
        thickness=1.5,
        width=3.84375,
        length=46.5,
        board="2x6 cedar",
        ends="square both ends",
        work=(
            "bevel both edges 10° so that they stand plumb",
            'notch both ends 5 1/4" × 1 17/32" for the casing',
            'drip kerf 1/4" × 1/4" in the back, 1/2" from the front edge',
        ),
        cuts=(Rip(width=3.84375), Crosscut(length=46.5), Groove(edge=Edge.FAR, from_edge=0.5, width=0.25, depth=0.25)),
    )
    casing = _sides_and_head(
        mark, start + 4, **cedar, name="exterior casing", width=4.5, board="5/4x6 cedar", thickness=1.0, length=49.0
    )
    flashing = make_part(
        start + 7,
        mark,
        where=Where.EXTERIOR,
        stock="flashing",
        name="head flashing",
        position="head",
        board="aluminum flashing",
        thickness=1 / 32,
        width=4.5,
        length=46.5,
        is_wood=False,
        work=('bend: 3" up, 1" out, 1/2" down with a hem',),
    )
    return [*jambs, sill, *casing, flashing]


def buck_parts(mark: str = "W01", start: int = 17) -> list[Part]:
    """Return four parts of an outboard buck."""
    lumber = {
        "where": Where.BUCK,
        "stock": "framing lumber",
        "board": "2x4 framing lumber",
        "name": "outboard buck",
        "thickness": 1.5,
        "width": 2.75,
    }
    parts = _sides_and_head(mark, start, **lumber, length=48.0)
    return [*parts, replace(parts[0], mark=f"{mark}-{start + 3}", position="sill")]


def tapered(part: Part, start: float, finish: float) -> Part:
    """Return a part with a tapered far edge."""
    wide = max(start, finish)
    return replace(part, width=wide, cuts=(Taper(start_width=start, finish_width=finish), part.cuts[-1]))
