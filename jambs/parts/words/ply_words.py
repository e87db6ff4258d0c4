"""A bent lamination in words: its plies, what they are resawn from, its form."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from jambs.job.models.openings import Assumed
from jambs.job.models.shop import Shop
from jambs.length import MM_PER_INCH, Grid, Units, decimal_text
from jambs.parts.board.arch_outline import arch_corners
from jambs.parts.board.bending_form import bending_form
from jambs.parts.board.part import Part
from jambs.parts.board.plies import ArcEnds, Plies

NEARLY_SQUARE_DEG = 0.05
"""Ends off square by less are square [degrees]."""
WHY = "the share by which n plies glued to one spring back, mechanics of beams; the job gives none: try it on a piece"


def ply_text(plies: Plies, units: Units) -> str:
    """Say how thick a planed ply is, as a caliper does."""
    return caliper_text(plies.thickness, units)


def caliper_text(thickness: float, units: Units) -> str:
    """Write a thickness to a thousandth of an inch or a hundredth of a millimeter."""
    if units is Units.MM:
        return f"{decimal_text(thickness * MM_PER_INCH, 2)} mm"
    return f'{decimal_text(thickness, 3)}"'


def resawn_words(part: Part, units: Units) -> str:
    """Say what the plies are resawn from, how thick off the saw, how many are over, and what they are planed to.

    ``resaw 2 strips 8 1/16" × 52" into 4 plies each, 0.138" off the saw (kerf 1/8" between two): 8, 1 to spare; plane 7
    to 0.107"``.
    """
    assert part.blank.plies and part.blank.board
    size = f"{units.text(part.strips[0])} × {units.text(part.blank.strip_length)}"
    strips = "1 strip" if len(part.strips) == 1 else f"{len(part.strips)} strips"
    plies = part.blank.plies
    made = plies.per_strip * len(part.strips)
    spare = f"{made - plies.count} to spare" if made > plies.count else "none to spare"
    sawn = f"{caliper_text(plies.resawn, units)} off the saw (kerf {units.text(plies.kerf)} between two)"
    return (
        f"resaw {strips} {size} into {plies.per_strip} plies each, {sawn}: {made}, {spare}; plane {plies.count} to "
        f"{ply_text(plies, units)}"
    )


def strip_size(part: Part) -> tuple[float, float, float]:
    """Thickness, width and length of a strip that plies are resawn from: what the saw is set to first [in]."""
    return part.blank.thickness, part.strips[0], part.blank.strip_length


def strips_first(part: Part, grid: Grid) -> str:
    """Say how many strips of the size beside it are sawn, and what is made of them: ``2 strips to saw; finished …``."""
    count = len(part.strips)
    size = " × ".join((grid.units.text(part.thickness), *(grid.text(one) for one in (part.width, part.length))))
    return f"{count} strip{'s' if count > 1 else ''} of this size to saw; finished {size} along the outer curve"


def bent_ends(part: Part) -> str:
    """Say how the ends of a bent lamination are sawn: square to the curve on their lines, or so far off square."""
    off = off_square_deg(part)
    if off < NEARLY_SQUARE_DEG:
        return f"saw both ends on the {_end_lines(part)} after bending"
    return f"saw both ends after bending {decimal_text(off, 1)}° off square to the curve"


def _end_lines(part: Part) -> str:
    """Name the lines at the ends of its arc: on the legs, on the diameter of a ring, on a sill or at the next arc."""
    return (part.blank.plies.ends if part.blank.plies else ArcEnds.SPRING_LINES).value


def _between(part: Part) -> str:
    is_half_ring = part.blank.plies is not None and part.blank.plies.ends is ArcEnds.DIAMETER
    return "from end to end" if is_half_ring else f"between the {_end_lines(part)}"


def off_square_deg(part: Part) -> float:
    """How far the ends of a bent lamination are off square to its curve [degrees]."""
    if part.is_bent_in_one:
        return 0.0  # it goes on from the legs
    found, center = arch_corners(part), part.arcs[0].center
    inner, outer = found.inner[1], found.outer[1]
    ways = (math.atan2(b[1] - a[1], b[0] - a[0]) for a, b in ((center, inner), (inner, outer)))
    radial, end = ways
    return math.degrees(abs(end - radial))


def lamination_words(part: Part, *, grid: Grid) -> Iterator[str]:
    """Say how a bent lamination is made, one line each."""
    plies = part.blank.plies
    if plies is None:
        return
    over = f"radius {grid.text(plies.form_radius)}"
    if plies.pieces:
        arcs = (f"{grid.text(radius)} along {grid.text(long)}" for radius, long in plies.pieces)
        over = f"several radii, from the left {', '.join(arcs)}"
    yield (
        f"glue over the form of {over} ({decimal_text(100 * plies.sprung, 1)} % of the "
        f"curvature springs back); inside {grid.text(plies.inner_length)}, outside {grid.text(part.length)} long "
        f"{_between(part)}, through {decimal_text(plies.sweep_deg, 1)}°"
    )
    wide, high = bending_form(part).size
    yield (
        f"the form: {grid.text(wide)} long over all, {grid.text(high)} high, at least {grid.text(part.strips[0])} deep "
        f"(as wide as the plies); center line and {_end_lines(part)} marked on it and on the plies: see the templates"
    )
    ends = f"on the {_end_lines(part)}" if off_square_deg(part) < NEARLY_SQUARE_DEG else "to their angle"
    yield f"when the glue is dry plane both edges to {grid.text(part.width)}, then saw the ends {ends}"


def ply_assumed(parts: Sequence[Part], shop: Shop) -> tuple[Assumed, ...]:
    """List the springback where the job does not give it, each once: pieces of other radii have other plies."""
    told = dict.fromkeys(f"{decimal_text(100 * part.blank.plies.sprung, 1)} %" for part in parts if part.blank.plies)
    if not told or shop.springback is not None:
        return ()
    return (Assumed(what="springback of bent laminations", value=" and ".join(told), why=WHY),)
