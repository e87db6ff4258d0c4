"""Does the jamb box go into the rough opening? The gap on every side, and by how much it fails."""

from __future__ import annotations

from collections.abc import Collection

from jambs.findings import Finding, Subject
from jambs.job.models.trim import InteriorStyle, InteriorTrim
from jambs.length import MM_PER_INCH, Units
from jambs.parts.board.boards import SAME_SIZE
from jambs.parts.findings.box_findings import (
    BoxDoesNotFit,
    CasingLapsShort,
    ReturnDoesNotFit,
    RevealRounded,
    RevealWiderThanFace,
)
from jambs.parts.shapes.clear import ClearOpening
from jambs.place.flares import flares_at
from jambs.place.placement import Placement, Sides
from jambs.sides import Side


def box_gaps(clear: ClearOpening, placement: Placement) -> Sides:
    """Back of each extension jamb → rough opening [in]; at a stool, its underside → the bottom of the opening.

    Along the wall, at the frame; the rough opening of flared jambs is framed along their backs, so it stays the same.
    """
    opening, shims = placement.opening, placement.shims
    flares, trim, frame = flares_at(opening.interior, placement.interior_depth), opening.interior, opening.frame
    thick = {side: flares.across(side, trim.lining_thickness) for side in Side}
    return Sides(
        left=shims.left + clear.left - thick[Side.LEFT],
        right=shims.right + frame.width - clear.right - thick[Side.RIGHT],
        head=shims.head + frame.height - clear.top - thick[Side.HEAD],
        sill=shims.sill + clear.bottom - _under(trim, thick[Side.SILL]),
    )


def _under(trim: InteriorTrim, lining: float) -> float:
    """What lies under the clear opening at the sill [in]: a stool, a tile on its bed, or the lining."""
    if trim.stool:
        return trim.stool.thickness
    return trim.tile_sill.thickness + trim.tile_sill.bed if trim.tile_sill else lining


def box_findings(gaps: Sides, placement: Placement, least: float) -> list[Finding]:
    """Find every side where the box has less than the least shim space [in]; a return may lie on the framing."""
    about, returns = Subject.opening(placement.opening.mark), placement.opening.interior.returns
    if returns:
        least = 0.0
    sides = {Side.LEFT: gaps.left, Side.RIGHT: gaps.right, Side.HEAD: gaps.head}
    if placement.opening.interior.style is not InteriorStyle.THREE_SIDED:
        sides[Side.SILL] = gaps.sill
    return [
        ReturnDoesNotFit(subject=about, side=side, short=-gap)
        if returns
        else BoxDoesNotFit(subject=about, side=side, gap=gap, least=least)
        for side, gap in sides.items()
        if gap < least - SAME_SIZE
    ]


def reveal_findings(clear: ClearOpening, placement: Placement) -> list[Finding]:
    """Find where a reveal cannot be had: against the frame's face, or over the edge of the jamb."""
    about, found = Subject.opening(placement.opening.mark), list[Finding]()
    asked, face = placement.opening.interior.frame_reveal, placement.opening.window.frame_face
    narrowest = min(face.left, face.right, face.head)
    if asked > narrowest + SAME_SIZE:
        found.append(RevealWiderThanFace(subject=about, reveal=asked, face=narrowest))
    if abs(clear.frame_reveal - asked) > SAME_SIZE:
        found.append(RevealRounded(subject=about, reveal=clear.frame_reveal, asked=asked))
    return found


LEAST_COVER = {Units.INCH: 0.5, Units.MM: 12 / MM_PER_INCH}
"""The casing covers the wall finish by at least this much past the rough opening [in]; common practice, no source."""


def casing_findings(
    clear: ClearOpening, placement: Placement, units: Units, *, walled: Collection[Side] = ()
) -> list[Finding]:
    """Find where the casing does not reach over the gap onto the wall; ``walled``: sides with a board over a wall."""
    opening, shims = placement.opening, placement.shims
    about, trim = Subject.opening(opening.mark), opening.interior
    if not trim.is_cased:
        return []
    reach = trim.casing_reveal + trim.casing.width
    # Of flared jambs casing and rough opening move out together.
    laps = {
        Side.LEFT: reach - clear.left - shims.left,
        Side.RIGHT: reach - (opening.frame.width - clear.right) - shims.right,
        Side.HEAD: reach - (opening.frame.height - clear.top) - shims.head,
    }
    if trim.style.has_bottom:
        laps[Side.SILL] = reach - clear.bottom - shims.sill
    return [
        CasingLapsShort(subject=about, side=side, lap=lap, least=LEAST_COVER[units])
        for side, lap in laps.items()
        if lap < LEAST_COVER[units] - SAME_SIZE and side not in walled
    ]
