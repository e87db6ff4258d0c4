"""Whether a frame of a size can have the shape that is asked for, in a sentence that says what would do."""

from __future__ import annotations

import math

from jambs.job.models.fields import Size
from jambs.job.models.shape import ShapeEntry, ShapeKind
from jambs.length import HALF_64TH, Units, length_text

LEAST_TURN_DEG = 2.0
"""Two edges that turn by less lie in a line [degrees]."""
LEAST_EDGE = 4.0
"""A frame's edge is at least this long, or no jamb and casing lie along it [in]; common practice, no source."""


def _raked(shape: ShapeEntry, frame: Size, units: Units) -> str:
    left, right = shape.height_left or 0.0, shape.height_right or 0.0
    if abs(max(left, right) - frame.height) > HALF_64TH:
        top, high = length_text(max(left, right), units=units), length_text(frame.height, units=units)
        return f"raked to {top} at its high side, but the frame is {high} high; write the height of frame there"
    if abs(left - right) < HALF_64TH:
        return "raked with both sides alike, which is a rectangle; leave shape out"
    return _short(min(left, right), "its low side", units)


def _gable(shape: ShapeEntry, frame: Size, units: Units) -> str:
    high = max(shape.height_left or 0.0, shape.height_right or 0.0)
    if high > frame.height - HALF_64TH:
        tall, top = length_text(high, units=units), length_text(frame.height, units=units)
        return f"the sides are {tall} high and the frame with its peak {top}; write sides lower than the frame"
    if not HALF_64TH < shape.peak(frame) < frame.width - HALF_64TH:
        at, wide = length_text(shape.peak(frame), units=units), length_text(frame.width, units=units)
        return f"peak_from_left is {at} in a frame {wide} wide; write a place between its sides, or raked"
    if min(_gable_turns(shape, frame)) < LEAST_TURN_DEG:
        return "the gable is so flat, or its peak so near a side, that two edges lie in a line; write another peak"
    return _short(min(shape.height_left or 0.0, shape.height_right or 0.0), "a side", units)


def _gable_turns(shape: ShapeEntry, frame: Size) -> tuple[float, float, float]:
    """How far a gable's outline turns where its head begins at the left, at its peak, and at the right [degrees]."""
    peak = shape.peak(frame)
    left = math.degrees(math.atan2(frame.height - (shape.height_left or 0.0), peak))
    right = math.degrees(math.atan2(frame.height - (shape.height_right or 0.0), frame.width - peak))
    return (90.0 - left, left + right, 90.0 - right)


def _octagon(shape: ShapeEntry, frame: Size, units: Units) -> str:
    if shape.cut is None and abs(frame.width - frame.height) > HALF_64TH:
        wide, high = (length_text(one, units=units) for one in (frame.width, frame.height))
        return f"a regular octagon is as wide as high, the frame is {wide} x {high}; give cut, or a square frame"
    least = min(frame.width, frame.height) - 2 * shape.cut_in(frame)
    return _short(min(least, shape.cut_in(frame) * 2**0.5), "an edge", units)


LEAST_ELLIPSE = 0.3
"""Least rise of an ellipse arch, as a share of half its span; flatter ones have ends too tight to saw; common practice,
no source."""
LEAST_PITCH_DEG = 15.0
"""A corner of a triangle is no sharper; common practice, no source [degrees]."""
LEAST_SPRING_DEG = 45.0
"""An arch without legs leaves its sill no flatter, or boards end in slivers; common practice, no source [degrees]."""
LEAST_RISE = 1.0
"""An arch rises at least so much, or it is a head that looks bowed [in]; common practice, no source."""


def _does_not_close(shape: ShapeEntry, frame: Size, units: Units) -> str:
    """Hold rise and spring line to the height of the frame, where either is given."""
    spring, high = shape.spring_line, length_text(frame.height, units=units)
    if spring is not None and spring > frame.height - HALF_64TH:
        at = length_text(spring, units=units)
        return (
            f"springs {at} up, over the crown of a frame {high} high; write a spring_line under it, so that the rise "
            "is what is left, or the rise alone"
        )
    if shape.rise is None or spring is None or abs(shape.rise + spring - frame.height) < HALF_64TH:
        return ""
    at, left = length_text(spring, units=units), length_text(max(frame.height - spring, 0.0), units=units)
    return (
        f"rises {length_text(shape.rise, units=units)} from a spring line {at} up, which does not close at the "
        f"crown of a frame {high} high; leave out rise, which is then {left}, or spring_line"
    )


def _arch(shape: ShapeEntry, frame: Size, units: Units) -> str:
    rise, half = shape.rise_in(frame), frame.width / 2
    found, most = length_text(rise, units=units), length_text(half, units=units)
    if said := _does_not_close(shape, frame, units):
        return said
    if shape.kind is ShapeKind.HALF_ROUND:
        if said := _half_round(shape, frame, units):
            return said
        return "" if shape.stands_on_spring_line(frame) else _short_leg(frame, rise, units)
    if rise > half + HALF_64TH:
        return (
            f"rises {found}, more than half its width, {most}: its arc would bulge past the legs; "
            f"{_half_round_instead(frame, units)}"
        )
    if rise > half - HALF_64TH:
        return f"rises {found}, which is half its width; {_half_round_instead(frame, units)}"
    if rise < LEAST_RISE:
        least = length_text(LEAST_RISE, units=units)
        return f"rises {found}; an arch here rises {least} or more: write a greater rise, or leave shape out"
    if shape.stands_on_spring_line(frame):
        return _too_flat(rise, frame, units)
    return _short(frame.height - rise, "a leg under the arc", units)


def _too_flat(rise: float, frame: Size, units: Units) -> str:
    """Hold an arch without legs to how steep it leaves the sill: ``tan(angle / 2)`` is its rise over half its width."""
    least = frame.width / 2 * math.tan(math.radians(LEAST_SPRING_DEG / 2))
    if rise >= least - HALF_64TH:
        return ""
    found, wanted, leg = (length_text(one, units=units) for one in (rise, least, rise + LEAST_EDGE))
    return (
        f"rises {found} without legs, so flat that jamb and casing end in slivers on the sill; write the frame "
        f"{wanted} high or more, or {leg} and rise: {found}, with legs"
    )


def _short_leg(frame: Size, rise: float, units: Units) -> str:
    """Say what would do where a half circle leaves its legs too short, or no room at all."""
    leg = frame.height - rise
    if leg >= LEAST_EDGE:
        return ""
    high, tall = (length_text(one, units=units) for one in (rise, rise + LEAST_EDGE))
    if leg < 0:
        wide, found = (length_text(one, units=units) for one in (frame.width, frame.height))
        return (
            f"is a half round {wide} wide and {found} high, lower than its half circle, {high}; write the frame {high} "
            "high, without legs, or segment arch"
        )
    found, least = (length_text(one, units=units) for one in (leg, LEAST_EDGE))
    return (
        f"a leg under the arc comes out {found} long; jamb and casing need {least}: write the frame {tall} high or "
        f"more, or {high}, without legs"
    )


def _half_round_instead(frame: Size, units: Units) -> str:
    """Say how the frame is written as a half round: with legs, or with none where it is as high as half its width."""
    half = frame.width / 2
    if frame.height > half + LEAST_EDGE - HALF_64TH:
        return "write half round"
    high = length_text(half, units=units)
    if abs(frame.height - half) < HALF_64TH:
        return "write half round, which needs no legs"
    return f"write half round, and the frame {high} high, without legs"


def _half_round(shape: ShapeEntry, frame: Size, units: Units) -> str:
    """Hold what is said of a half round to the half circle over its width."""
    half = frame.width / 2
    said = shape.rise if shape.spring_line is None else frame.height - shape.spring_line
    if said is None or abs(said - half) < HALF_64TH:
        return ""
    found, asked = length_text(said, units=units), length_text(half, units=units)
    return (
        f"is a half round that rises {found}; a half circle over this width rises {asked}: "
        "leave rise and spring_line out, or write segment arch"
    )


def _short(length: float, what: str, units: Units) -> str:
    if length >= LEAST_EDGE:
        return ""
    found, least = (length_text(one, units=units) for one in (max(length, 0.0), LEAST_EDGE))
    return f"{what} comes out {found} long; jamb and casing need {least}: write another size"


def _full_round(shape: ShapeEntry, frame: Size, units: Units) -> str:
    if abs(frame.width - frame.height) < HALF_64TH:
        return ""
    wide, high = (length_text(one, units=units) for one in (frame.width, frame.height))
    return (
        f"a full round is as wide as high, the frame is {wide} x {high}; write the frame {wide} x {wide}, or another "
        "shape: an oval is not made here"
    )


def _quarter_round(shape: ShapeEntry, frame: Size, units: Units) -> str:
    if abs(frame.width - frame.height) < HALF_64TH:
        return ""
    wide, high = (length_text(one, units=units) for one in (frame.width, frame.height))
    return f"a quarter round is as wide as high, the frame is {wide} x {high}; write the frame {wide} x {wide}"


def _ellipse_arch(shape: ShapeEntry, frame: Size, units: Units) -> str:
    rise, half = shape.rise_in(frame), frame.width / 2
    found, most = length_text(rise, units=units), length_text(half, units=units)
    if said := _does_not_close(shape, frame, units):
        return said
    if rise > half - LEAST_RISE:
        return f"rises {found} over a half width of {most}, which is no ellipse; write half round"
    if rise < half * LEAST_ELLIPSE:
        least = length_text(half * LEAST_ELLIPSE, units=units)
        return f"rises {found}; three arcs make an ellipse here from a rise of {least} on: write segment arch"
    return _short(frame.height - rise, "a leg under the arc", units)


def _triangle(shape: ShapeEntry, frame: Size, units: Units) -> str:
    peak = shape.peak(frame)
    if not -HALF_64TH < peak < frame.width + HALF_64TH:
        at, wide = length_text(peak, units=units), length_text(frame.width, units=units)
        return f"peak_from_left is {at} in a frame {wide} wide; write a place between its sides, or over one of them"
    pitches = [math.degrees(math.atan2(frame.height, run)) for run in (peak, frame.width - peak)]
    if min(pitches) < LEAST_PITCH_DEG:
        least = length_text(max(peak, frame.width - peak) * math.tan(math.radians(LEAST_PITCH_DEG)), units=units)
        return (
            f"rises so little that a corner is sharper than {LEAST_PITCH_DEG:g}°, where no board ends; write the frame "
            f"{least} high or more"
        )
    return _short(min(frame.width, frame.height), "an edge", units)


_MISFITS = {
    ShapeKind.RAKED: _raked,
    ShapeKind.GABLE: _gable,
    ShapeKind.OCTAGON: _octagon,
    ShapeKind.SEGMENT_ARCH: _arch,
    ShapeKind.HALF_ROUND: _arch,
    ShapeKind.FULL_ROUND: _full_round,
    ShapeKind.QUARTER_ROUND: _quarter_round,
    ShapeKind.ELLIPSE_ARCH: _ellipse_arch,
    ShapeKind.TRIANGLE: _triangle,
}


def misfit(shape: ShapeEntry, frame: Size, units: Units) -> str:
    """Say why a frame of this size cannot have the shape, and what would do; nothing where it can."""
    return _MISFITS[shape.kind](shape, frame, units)
