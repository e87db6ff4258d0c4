"""Exterior extension jambs: head and legs from the frame, less a sealant joint, to the trim plane."""

from __future__ import annotations

import math

from jambs.job.models.openings import Job
from jambs.job.models.trim import ExteriorTrim
from jambs.length import decimal_text, length_text
from jambs.parts.clear import ClearOpening
from jambs.parts.kit import FittedSide
from jambs.parts.part import Crosscut, Cut, Edge, End, Miter, Part, Rip, Seat, Taper, Vector, Where
from jambs.parts.shapes import make_part, tapered

OUTWARD: Vector = (0.0, 0.0, 1.0)


def exterior_jambs(
    clear: ClearOpening,
    sides: dict[str, FittedSide],
    trim: ExteriorTrim,
    outside_edge: float,
    slope_deg: float,
    job: Job,
) -> tuple[Part, ...]:
    """Make head and legs; ``outside_edge``: depth of the frame's outside edge [in].

    ``clear.bottom`` is the height of the sill's top at the frame's outside edge; the legs are cut to the slope.
    """
    start = outside_edge + trim.sealant_joint
    return (
        _head(clear, sides["head"], trim, start, job),
        _leg("left leg", clear, sides["left"], trim, start, slope_deg, job),
        _leg("right leg", clear, sides["right"], trim, start, slope_deg, job),
    )


def _head(clear: ClearOpening, side: FittedSide, trim: ExteriorTrim, start: float, job: Job) -> Part:
    thickness, joint = trim.jamb.thickness, trim.sealant_joint
    length = clear.width + 2 * thickness
    # The board starts at the right, the side is measured left → right.
    first, last = side.finish_depth - joint, side.start_depth - joint
    return make_part(
        "exterior extension jamb",
        "head",
        Where.EXTERIOR,
        job=job,
        stock=trim.jamb.stock,
        thickness=thickness,
        outline=tapered(length, first, last),
        cuts=(*_widths(first, last), Crosscut(length=length)),
        ends="square both ends",
        work=_taper_words(first, last, "right", "left", job),
        seat=Seat(
            origin=(clear.right + thickness, clear.top, start),
            along=(-1.0, 0.0, 0.0),
            across=OUTWARD,
            through=(0.0, 1.0, 0.0),
        ),
    )


def _leg(
    position: str, clear: ClearOpening, side: FittedSide, trim: ExteriorTrim, start: float, slope_deg: float, job: Job
) -> Part:
    """The left leg starts at the top, the right leg at the bottom: boards are never mirrored."""
    is_left = position == "left leg"
    joint, tangent = trim.sealant_joint, math.tan(math.radians(slope_deg))
    bottom_width, top_width = side.start_depth - joint, side.finish_depth - joint
    long_side = clear.height + (joint + bottom_width) * tangent
    short_side = long_side - bottom_width * tangent
    if is_left:
        outline = ((0.0, 0.0), (short_side, 0.0), (long_side, bottom_width), (0.0, top_width))
        origin, along = (clear.left, clear.top, start), (0.0, -1.0, 0.0)
    else:
        drop = long_side - short_side
        outline = ((drop, 0.0), (long_side, 0.0), (long_side, top_width), (0.0, bottom_width))
        origin, along = (clear.right, clear.top - long_side, start), (0.0, 1.0, 0.0)
    widths = (top_width, bottom_width) if is_left else (bottom_width, top_width)
    return make_part(
        "exterior extension jamb",
        position,
        Where.EXTERIOR,
        job=job,
        stock=trim.jamb.stock,
        thickness=trim.jamb.thickness,
        outline=outline,
        cuts=(*_widths(*widths), Crosscut(length=long_side), *_slope_cut(is_left, slope_deg)),
        ends=_ends(short_side, slope_deg, job),
        work=_taper_words(bottom_width, top_width, "bottom", "top", job),
        seat=Seat(
            origin=origin,
            along=along,
            across=OUTWARD,
            through=(-1.0 if is_left else 1.0, 0.0, 0.0),
        ),
    )


def _widths(start: float, finish: float) -> tuple[Cut, ...]:
    rip: tuple[Cut, ...] = (Rip(width=max(start, finish)),)
    return rip if start == finish else (*rip, Taper(start_width=start, finish_width=finish))


def _slope_cut(is_left: bool, slope_deg: float) -> tuple[Cut, ...]:
    if not slope_deg:
        return ()
    return (Miter(end=End.FINISH if is_left else End.START, angle_deg=slope_deg, long_edge=Edge.FAR),)


def _ends(short_side: float, slope_deg: float, job: Job) -> str:
    if not slope_deg:
        return "square both ends"
    short = length_text(short_side, units=job.units)
    slope = decimal_text(slope_deg, 1)
    return f"top square; bottom cut {slope}° to the sill, long point outside, {short} on the frame side"


def _taper_words(first: float, last: float, first_at: str, last_at: str, job: Job) -> tuple[str, ...]:
    if first == last:
        return ()
    narrow, at = (first, first_at) if first < last else (last, last_at)
    return (f"taper the outer edge to {length_text(narrow, units=job.units)} at the {at}",)
