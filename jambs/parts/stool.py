"""Stool and apron: the flat board at the sill the legs stand on, and the casing under it."""

from __future__ import annotations

from jambs.job.openings import Job
from jambs.job.trim import ApronEnds, ApronEntry, InteriorTrim, StoolEntry
from jambs.length import length_text
from jambs.parts.clear import ClearOpening
from jambs.parts.kit import Side
from jambs.parts.part import (
    Crosscut,
    Cut,
    Edge,
    EdgeRabbet,
    End,
    EndBevel,
    Notch,
    Part,
    Point,
    Rip,
    Seat,
    Taper,
    Where,
)
from jambs.parts.shapes import make_part, plain, square_profile

RETURN_DEG = 45.0


def stool_length(clear: ClearOpening, trim: InteriorTrim, stool: StoolEntry) -> float:
    """Horn end → horn end: clear width, casing reveals, casings and the horns past them [in]."""
    return clear.width + 2 * (trim.casing_reveal + trim.casing.width + stool.horn)


def make_stool(
    clear: ClearOpening, sill: Side, trim: InteriorTrim, stool: StoolEntry, inside_edge: float, job: Job
) -> Part:
    """Make the stool: its straight near edge at the frame, notched at both ends for the horns, its far edge the nosing.

    Width = depth at the sill + rabbet under the frame + casing thickness + nosing.
    """
    length = stool_length(clear, trim, stool)
    front = trim.casing.thickness + stool.nosing
    start_depth, finish_depth = sill.finish_depth + stool.rabbet, sill.start_depth + stool.rabbet
    notch = (length - clear.width - 2 * trim.jamb.thickness) / 2
    start, finish = start_depth + front, finish_depth + front
    x = (clear.left + clear.right + length) / 2
    return make_part(
        "stool",
        "sill",
        Where.INTERIOR,
        job=job,
        stock=stool.stock,
        thickness=stool.thickness,
        outline=_outline(length, start, finish, notch, start_depth, finish_depth),
        profile=_profile(max(start, finish), stool),
        cuts=_cuts(length, start, finish, notch, start_depth, finish_depth, stool),
        ends="square both ends",
        work=_work(length, start, finish, notch, start_depth, finish_depth, stool, job),
        seat=Seat(
            origin=(x, clear.bottom, inside_edge + stool.rabbet),
            along=(-1.0, 0.0, 0.0),
            across=(0.0, 0.0, -1.0),
            through=(0.0, -1.0, 0.0),
        ),
    )


def _outline(
    length: float, start: float, finish: float, notch: float, start_depth: float, finish_depth: float
) -> tuple[Point, ...]:
    return (
        (notch, 0.0),
        (length - notch, 0.0),
        (length - notch, finish_depth),
        (length, finish_depth),
        (length, finish),
        (0.0, start),
        (0.0, start_depth),
        (notch, start_depth),
    )


def _profile(width: float, stool: StoolEntry) -> tuple[Point, ...]:
    if not stool.rabbet:
        return square_profile(width, stool.thickness)
    step = stool.thickness / 2
    return (
        (stool.rabbet, 0.0),
        (width, 0.0),
        (width, stool.thickness),
        (0.0, stool.thickness),
        (0.0, step),
        (stool.rabbet, step),
    )


def _cuts(
    length: float,
    start: float,
    finish: float,
    notch: float,
    start_depth: float,
    finish_depth: float,
    stool: StoolEntry,
) -> tuple[Cut, ...]:
    cuts: list[Cut] = [Rip(width=max(start, finish))]
    if start != finish:
        cuts.append(Taper(start_width=start, finish_width=finish))
    cuts.append(Crosscut(length=length))
    cuts.append(Notch(end=End.START, edge=Edge.NEAR, along=notch, across=start_depth))
    cuts.append(Notch(end=End.FINISH, edge=Edge.NEAR, along=notch, across=finish_depth))
    if stool.rabbet:
        cuts.append(EdgeRabbet(edge=Edge.NEAR, across=stool.rabbet, depth=stool.thickness / 2))
    return tuple(cuts)


def _work(
    length: float,
    start: float,
    finish: float,
    notch: float,
    start_depth: float,
    finish_depth: float,
    stool: StoolEntry,
    job: Job,
) -> tuple[str, ...]:
    def text(size: float) -> str:
        return length_text(size, units=job.units)

    between = text(length - 2 * notch)
    if start_depth == finish_depth:
        lines = [f"notch both ends {text(notch)} long × {text(start_depth)} in from the frame edge; {between} between"]
    else:
        lines = [
            f"notch left end {text(notch)} long × {text(finish_depth)}, right end {text(notch)} long × "
            f"{text(start_depth)} in from the frame edge; {between} between"
        ]
    if start != finish:
        narrow, at = (start, "right") if start < finish else (finish, "left")
        lines.append(f"taper the room edge to {text(narrow)} at the {at}")
    if stool.rabbet:
        lines.append(f"rabbet the frame edge {text(stool.rabbet)} × {text(stool.thickness / 2)} deep, from the top")
    return tuple(lines)


def make_apron(clear: ClearOpening, trim: InteriorTrim, apron: ApronEntry, stool: StoolEntry, job: Job) -> Part:
    """Make the apron: casing outside → casing outside, under the stool."""
    length = clear.width + 2 * (trim.casing_reveal + trim.casing.width)
    returned = apron.ends is ApronEnds.RETURNED
    cuts: list[Cut] = [Rip(width=apron.width), Crosscut(length=length)]
    if returned:
        cuts += [EndBevel(end=end, angle_deg=RETURN_DEG) for end in (End.START, End.FINISH)]
    x = (clear.left + clear.right + length) / 2
    thickness = length_text(apron.thickness, units=job.units)
    return make_part(
        "apron",
        "sill",
        Where.INTERIOR,
        job=job,
        stock=apron.stock,
        thickness=apron.thickness,
        outline=plain(length, apron.width),
        cuts=tuple(cuts),
        ends="45° through the thickness both ends, face long" if returned else "square both ends",
        work=(f"2 returns, {thickness} long point, mitered from the same board before it is cut short",)
        if returned
        else (),
        seat=Seat(
            origin=(x, clear.bottom - stool.thickness, -apron.thickness),
            along=(-1.0, 0.0, 0.0),
            across=(0.0, -1.0, 0.0),
            through=(0.0, 0.0, 1.0),
        ),
    )
