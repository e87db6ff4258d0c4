"""A kit held whole against its style: is something under the frame, do the legs stand, does the casing reach?"""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Sequence

from jambs.findings import Finding, Subject
from jambs.job.models.layers import Role
from jambs.job.models.openings import Opening
from jambs.job.models.outside import Fixed
from jambs.job.models.shop import Shop
from jambs.job.models.trim import InteriorStyle
from jambs.length import MM_PER_INCH, Units
from jambs.parts.board.boards import SAME_SIZE
from jambs.parts.board.edge_of import edge_of
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part, sawn_of
from jambs.parts.findings.built_up_findings import CrownPastCap
from jambs.parts.findings.style_findings import (
    KerfBehindCladding,
    LegsEndInAir,
    NarrowerThanSafe,
    NothingHoldsTrim,
    NothingUnderFrame,
    OuterCasingLapsShort,
    StoolHasNoDepth,
)
from jambs.parts.jambs.box import LEAST_COVER
from jambs.parts.kit.on_elevation import seen_box
from jambs.parts.trim.built_up import crown_past_cap
from jambs.place.frame_path import frame_path
from jambs.place.placement import Placement
from jambs.sides import Side

USUAL_LEAST_STRIP = {Units.INCH: 3 / 4, Units.MM: 20 / MM_PER_INCH}
"""Narrowest rip that is safe [in]; common practice, no source."""


def style_findings(
    placement: Placement,
    parts: Sequence[Part],
    shop: Shop,
    units: Units,
    *,
    fastened: Collection[Fixed],
    lent: Sequence[Part] = (),
) -> Iterator[Finding]:
    """Find what a complete kit lacks for its style.

    ``fastened``: what the job states fasteners of; ``lent``: boards of another opening that lie at this one too.
    """
    opening, about = placement.opening, Subject.opening(placement.opening.mark)
    kinds = {part.kind for part in (*parts, *lent)}
    if opening.interior.style is InteriorStyle.THREE_SIDED and not _is_door(opening):
        yield LegsEndInAir(subject=about)
    if opening.interior.stool and PartKind.STOOL not in kinds:
        yield StoolHasNoDepth(subject=about)
    is_closed_below = _is_door(opening) or (opening.shape is not None and opening.shape.is_cut_below(opening.frame))
    lined = {PartKind.EXTERIOR_JAMB, PartKind.CLADDING_RETURN}
    is_open_below = bool(lined & kinds) and PartKind.EXTERIOR_SILL not in kinds
    is_open_below |= bool(opening.exterior and opening.exterior.returns and not opening.exterior.returns.sill)
    if is_open_below and not is_closed_below:
        yield NothingUnderFrame(subject=about)
    if PartKind.EXTERIOR_SILL in kinds:
        yield from _kerf(opening, about)
    built = opening.interior.built_up
    if built and (past := crown_past_cap(built)) > SAME_SIZE:
        yield CrownPastCap(subject=about, past=past)
    yield from _nailer(placement, about, is_casing_fastened=Fixed.CASING in fastened)
    yield from _outer_laps(placement, (*parts, *lent), about, LEAST_COVER[units])
    yield from _narrow(parts, about, shop)


def _is_door(opening: Opening) -> bool:
    return opening.floor_below_frame is not None


def _kerf(opening: Opening, about: Subject) -> Iterator[Finding]:
    """The kerf lies along the sloping underside, set back from its front edge; the nosing is level."""
    sill = opening.exterior.sill if opening.exterior else None
    if sill is None or not (sill.drip_kerf.depth and sill.drip_kerf.width):
        return
    back = (sill.drip_kerf.set_back + sill.drip_kerf.width) * math.cos(math.radians(sill.slope))
    if back > sill.nosing + SAME_SIZE:
        yield KerfBehindCladding(subject=about, behind=back - sill.nosing)


def _nailer(placement: Placement, about: Subject, *, is_casing_fastened: bool) -> Iterator[Finding]:
    """Trim is held by what lies at the trim plane, by a buck that ends there, or by fasteners into the framing."""
    planes, buck = placement.planes, placement.buck
    reaches = buck is not None and abs(buck.outer - planes.trim_plane) < SAME_SIZE
    trim = placement.opening.exterior
    if trim is None or not trim.is_cased or reaches or is_casing_fastened:
        return
    behind = [one.layer for one in planes.layers if one.layer.role not in (Role.CLADDING, Role.MEMBRANE)]
    if behind[-1].role is Role.INSULATION:
        yield NothingHoldsTrim(subject=about, layer=behind[-1].name)


def _outer_laps(placement: Placement, parts: Sequence[Part], about: Subject, least: float) -> Iterator[Finding]:
    """Hold the outer edges of exterior casing against the edge of the wall, at the rough opening.

    Said once of a side, however many pieces or segments lie along it, by the one that laps least.
    """
    frame, shims = placement.opening.frame, placement.shims
    least_of: dict[Side, float] = {}
    for part in parts:
        if part.kind is not PartKind.CASING or part.where is not Where.EXTERIOR:
            continue
        left, bottom, right, top = seen_box(part)
        lap = {
            Side.LEFT: -shims.left - left,
            Side.RIGHT: right - frame.width - shims.right,
            Side.HEAD: top - frame.height - shims.head,
            Side.SILL: -shims.sill - bottom,
        }[part.side]
        if placement.opening.shape:
            lap = _lap_along_edge(part, placement)
        least_of[part.side] = min(lap, least_of.get(part.side, lap))
    for side, lap in least_of.items():
        if lap < least - SAME_SIZE:
            yield OuterCasingLapsShort(subject=about, side=side, lap=lap, least=least)


def _lap_along_edge(part: Part, placement: Placement) -> float:
    """How far a piece round a shape reaches past the rough opening, square to its edge [in]."""
    path = frame_path(placement.opening)
    edge = edge_of(part, path)
    points = [part.seat.at(0.0, part.width, 0.0)]
    if edge.center:
        points = [point for side in part.standing_outlines() for point in side]
    return max(edge.out((x, y)) for x, y, _ in points) - float(getattr(placement.shims, part.side.value))


def _narrow(parts: Sequence[Part], about: Subject, shop: Shop) -> Iterator[Finding]:
    """Find boards that are ripped narrower than the saw holds safely; one as wide as it is bought is not ripped."""
    least = USUAL_LEAST_STRIP[shop.grid.units] if shop.least_strip is None else shop.least_strip
    sawn = [one for part in parts for one in sawn_of(part)]
    narrow = [part for part in sawn if part.is_wood and part.width < least - SAME_SIZE and not _is_as_bought(part)]
    if narrow:
        marks = tuple(part.mark for part in narrow)
        yield NarrowerThanSafe(subject=about, marks=marks, width=min(part.width for part in narrow), least=least)


def _is_as_bought(part: Part) -> bool:
    board = part.blank.board
    return board is not None and abs(board.width - part.width) < SAME_SIZE
