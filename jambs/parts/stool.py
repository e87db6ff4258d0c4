"""Stool and apron: the flat board at the sill the legs stand on, and the casing under it."""

from __future__ import annotations

from dataclasses import dataclass

from jambs.job.models.openings import Job
from jambs.job.models.trim import ApronEnds, ApronEntry, InteriorTrim, StoolEntry
from jambs.length import length_text
from jambs.parts.clear import ClearOpening
from jambs.parts.kit import FittedSide
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
from jambs.parts.shapes import CannotBeCut, make_part, plain, square_profile

RETURN_DEG = 45.0
LEAST_TONGUE = 1 / 8
"""The tongue that laps under the frame is at least this thick [in]; common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Sizes:
    """What a stool is cut to [in]; it starts at the right. ``step``: its top → the bottom of the frame."""

    length: float
    start_width: float
    finish_width: float
    notch: float
    start_depth: float
    finish_depth: float
    step: float

    @property
    def is_tapered(self) -> bool:
        return self.start_width != self.finish_width


def stool_length(clear: ClearOpening, trim: InteriorTrim, stool: StoolEntry) -> float:
    """Horn end → horn end: clear width, casing reveals, casings and the horns past them [in]."""
    return clear.width + 2 * (trim.casing_reveal + trim.casing.width + stool.horn)


def make_stool(
    clear: ClearOpening, sill: FittedSide, trim: InteriorTrim, stool: StoolEntry, inside_edge: float, job: Job
) -> Part:
    """Make the stool: its straight near edge at the frame, notched at both ends for the horns, its far edge the nosing.

    Width = depth at the sill + rabbet under the frame + casing thickness + nosing.

    Raises:
        CannotBeCut: the rabbet cannot lap under the frame.
    """
    sizes = _sizes(clear, sill, trim, stool)
    if stool.rabbet and sizes.step > stool.thickness - LEAST_TONGUE:
        raise CannotBeCut(
            f"the stool cannot lap under the frame: its top lies {length_text(sizes.step, units=job.units)} above the "
            f"bottom of the frame and it is {length_text(stool.thickness, units=job.units)} thick; "
            "leave the stool's rabbet out or make the stool thicker"
        )
    return make_part(
        "stool",
        "sill",
        Where.INTERIOR,
        job=job,
        stock=stool.stock,
        thickness=stool.thickness,
        outline=_outline(sizes),
        profile=_profile(sizes, stool),
        cuts=_cuts(sizes, stool),
        ends="square both ends",
        work=_work(sizes, stool, job),
        seat=Seat(
            origin=((clear.left + clear.right + sizes.length) / 2, clear.bottom, inside_edge + stool.rabbet),
            along=(-1.0, 0.0, 0.0),
            across=(0.0, 0.0, -1.0),
            through=(0.0, -1.0, 0.0),
        ),
    )


def _sizes(clear: ClearOpening, sill: FittedSide, trim: InteriorTrim, stool: StoolEntry) -> _Sizes:
    length = stool_length(clear, trim, stool)
    front = trim.casing.thickness + stool.nosing
    start, finish = sill.finish_depth + stool.rabbet, sill.start_depth + stool.rabbet
    return _Sizes(
        length=length,
        start_width=start + front,
        finish_width=finish + front,
        notch=(length - clear.width - 2 * trim.jamb.thickness) / 2,
        start_depth=start,
        finish_depth=finish,
        step=max(clear.bottom, 0.0),
    )


def _outline(sizes: _Sizes) -> tuple[Point, ...]:
    length, notch = sizes.length, sizes.notch
    return (
        (notch, 0.0),
        (length - notch, 0.0),
        (length - notch, sizes.finish_depth),
        (length, sizes.finish_depth),
        (length, sizes.finish_width),
        (0.0, sizes.start_width),
        (0.0, sizes.start_depth),
        (notch, sizes.start_depth),
    )


def _profile(sizes: _Sizes, stool: StoolEntry) -> tuple[Point, ...]:
    width, thickness = max(sizes.start_width, sizes.finish_width), stool.thickness
    if not stool.rabbet:
        return square_profile(width, thickness)
    lap, step = stool.rabbet, sizes.step
    return ((lap, 0.0), (width, 0.0), (width, thickness), (0.0, thickness), (0.0, step), (lap, step))


def _cuts(sizes: _Sizes, stool: StoolEntry) -> tuple[Cut, ...]:
    cuts: list[Cut] = [Rip(width=max(sizes.start_width, sizes.finish_width))]
    if sizes.is_tapered:
        cuts.append(Taper(start_width=sizes.start_width, finish_width=sizes.finish_width))
    cuts.append(Crosscut(length=sizes.length))
    for end, depth in ((End.START, sizes.start_depth), (End.FINISH, sizes.finish_depth)):
        cuts.append(Notch(end=end, edge=Edge.NEAR, along=sizes.notch, across=depth))
    if stool.rabbet:
        cuts.append(EdgeRabbet(edge=Edge.NEAR, across=stool.rabbet, depth=sizes.step))
    return tuple(cuts)


def _work(sizes: _Sizes, stool: StoolEntry, job: Job) -> tuple[str, ...]:
    def text(size: float) -> str:
        return length_text(size, units=job.units)

    notch, between = text(sizes.notch), text(sizes.length - 2 * sizes.notch)
    right, left = text(sizes.start_depth), text(sizes.finish_depth)
    ends = f"both ends {notch} long × {right}"
    if right != left:
        ends = f"left end {notch} long × {left}, right end {notch} long × {right}"
    lines = [f"notch {ends} in from the frame edge; {between} between"]
    if sizes.is_tapered:
        narrow, at = min((sizes.start_width, "right"), (sizes.finish_width, "left"))
        lines.append(f"taper the room edge to {text(narrow)} at the {at}")
    if stool.rabbet:
        lines.append(f"rabbet the frame edge {text(stool.rabbet)} × {text(sizes.step)} deep, from the top")
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
        ends="miter 45° both ends, long point on the face" if returned else "square both ends",
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
