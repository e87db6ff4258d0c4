"""An opening that is no rectangle held against saws and weather."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from jambs.arcs import arc_chords
from jambs.findings import Finding, Subject
from jambs.geometry import HALF_RIGHT_DEG, tangent
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.openings import Opening
from jambs.job.models.path import corner_turn_deg, is_arched, size_over_all
from jambs.job.models.shape import ShapeKind
from jambs.job.models.straight_round import greatest_off, straight_round
from jambs.length import ROUND_OFF
from jambs.outlines import area
from jambs.parts.board.cuts import EndBevel, Miter
from jambs.parts.board.kinds import PartKind, Where, told_name
from jambs.parts.board.part import Part
from jambs.parts.findings.arch_findings import (
    ArchMadeOfSegments,
    ArchOutsideNotLaidOut,
    BuckOfStraightBoards,
    RoundIsFramedSquare,
    SegmentedHead,
)
from jambs.parts.findings.shape_findings import HeadOutsideNotLaidOut, LowerEdgesHoldWater, SteeperThanSaws
from jambs.parts.findings.water import LEAST_FALL
from jambs.place.flares import flares_outside
from jambs.place.frame_path import frame_path, rough_path
from jambs.place.placement import Placement
from jambs.place.support import lined_by
from jambs.sides import Side

MOST_MITER_DEG = 50.0
"""A miter saw turns this far off square; common practice, no source."""
BLOCKS = {ShapeKind.FULL_ROUND: 4, ShapeKind.HALF_ROUND: 2, ShapeKind.QUARTER_ROUND: 1}
"""How many corners of its square framing lie open beside a curve."""
MOST_TILT_DEG = 45.0
"""A blade tilts this far off square; common practice, no source."""


def shape_findings(placement: Placement, parts: Sequence[Part]) -> Iterator[Finding]:
    """Find what has to be known of a shape; nothing of a rectangle."""
    opening = placement.opening
    if opening.shape is None:
        return
    about = Subject.opening(opening.mark)
    path, kind = frame_path(opening), opening.shape.kind.value
    is_round = all(edge.center for edge in path)
    yield from _framing(placement, about)
    for is_tilt, most in ((False, MOST_MITER_DEG), (True, MOST_TILT_DEG)):
        steep = {part.mark: angle for part in parts if (angle := _steepest(part, is_tilt=is_tilt)) > most + ROUND_OFF}
        if steep:
            angle = max(steep.values())
            yield SteeperThanSaws(subject=about, marks=tuple(steep), angle_deg=angle, most_deg=most, is_tilt=is_tilt)
    yield from _segments(parts, about)
    yield from _buck(placement, about)
    if opening.exterior is None:
        return
    is_cased, across = opening.exterior.returns is None, _flashing_across(placement, opening.exterior)
    along = tuple(map(_upper_edge, _over_the_head(parts)))
    if opening.shape.is_arched:
        yield ArchOutsideNotLaidOut(
            subject=about,
            shape=kind,
            is_round=is_round,
            has_legs=not opening.shape.is_cut_below(opening.frame),
            across=across,
            along=sum(along),
            is_cased=is_cased,
        )
    else:
        yield HeadOutsideNotLaidOut(subject=about, shape=kind, is_cased=is_cased, across=across, along=along)
    lining = (PartKind.EXTERIOR_JAMB, PartKind.METAL_RETURN)
    below = [part for part in parts if part.kind in lining and part.side is Side.SILL and part.runs]
    # Below a full round that flares the jambs fall outward.
    falls = tangent(flares_outside(opening, placement.exterior_depth).at(Side.SILL)) >= LEAST_FALL
    if below and not falls:
        marks = tuple(part.mark for part in below)
        yield LowerEdgesHoldWater(subject=about, marks=marks, is_metal=any(part.is_bent for part in below))


def _flashing_across(placement: Placement, trim: ExteriorTrim) -> float:
    """Girth of metal over the head: upstand, over what it lies on, front leg [in]."""
    over = trim.casing.thickness if trim.is_cased else placement.planes.cladding_depth
    return trim.head_flashing.upstand + over + trim.head_flashing.drip


def _over_the_head(parts: Sequence[Part]) -> list[Part]:
    """Return the casing that metal over the head lies on; of metal returns no blank is as long as its edge."""
    return [
        one for one in parts if one.where is Where.EXTERIOR and one.side is Side.HEAD and one.kind is PartKind.CASING
    ]


def _upper_edge(part: Part) -> float:
    """Length of the edge of a board that looks away from the opening, along its curve where it has one [in]."""
    chords = zip(part.arcs, arc_chords(part.curved_outline), strict=True) if part.arcs else ()
    outer = [2 * arc.radius * math.asin(chord / (2 * arc.radius)) for arc, chord in chords if not arc.side.is_hollow]
    return sum(outer) if outer else part.length


def is_framed_square(opening: Opening) -> bool:
    """Say whether the hole in the framing is a square with blocks across corners that lie open beside a curve."""
    shape = opening.shape
    return shape is not None and shape.kind in BLOCKS and shape.is_cut_below(opening.frame)


def _framing(placement: Placement, about: Subject) -> Iterator[Finding]:
    """Say how the hole round a full, half or quarter round is framed: its corner blocks are edges of an octagon."""
    opening = placement.opening
    if opening.shape is None or not is_framed_square(opening):
        return
    lined = lined_by(placement.opening, placement.buck)
    rough = rough_path(placement, lined)
    circle = next(edge.circle for edge in rough if edge.circle)
    box = placement.framing_opening if lined else size_over_all(rough)
    yield RoundIsFramedSquare(
        subject=about,
        shape=opening.shape.kind.value,
        width=box.width,
        height=box.height,
        radius=circle.radius,
        blocks=BLOCKS[opening.shape.kind],
        face=2 * circle.radius * math.tan(math.radians(HALF_RIGHT_DEG / 2)),
        cut=circle.radius * (2 - math.sqrt(2)),
    )


def _buck(placement: Placement, about: Subject) -> Iterator[Finding]:
    """Say how a buck goes round arcs."""
    buck = placement.buck
    path = rough_path(placement, buck.set_back) if buck else ()
    if not is_arched(path):
        return
    boards, arcs = straight_round(path), [edge for edge in path if edge.center]
    along = [edge for edge in boards if edge.side in {arc.side for arc in arcs}]
    turns = [
        corner_turn_deg(boards, i) for i, edge in enumerate(boards) if edge in along and boards[i - 1].side is edge.side
    ]
    yield BuckOfStraightBoards(subject=about, count=len(along), off=greatest_off(path), turn_deg=max(turns))


def _segments(parts: Sequence[Part], about: Subject) -> Iterator[Finding]:
    """Say of every curved head how many segments it is sawn from."""
    made = tuple(_segmented(parts))
    if made:
        yield ArchMadeOfSegments(subject=about, heads=made)


def _segmented(parts: Sequence[Part]) -> Iterator[SegmentedHead]:
    heads: dict[str, list[Part]] = {}
    for part in parts:
        if part.arcs and not part.is_laminated:
            heads.setdefault(told_name(part.name, part.where.value), []).append(part)
    for what, pieces in heads.items():
        middle = pieces[len(pieces) // 2]
        across = middle.thickness if middle.is_sawn_on_edge else middle.width
        angle = _steepest(middle, is_tilt=middle.is_sawn_on_edge)
        waste = 1 - sum(area(one.curved_outline) for one in pieces) / sum(one.length * across for one in pieces)
        yield SegmentedHead(what=what, count=len(pieces), half_deg=angle, waste=waste)


def _steepest(part: Part, *, is_tilt: bool) -> float:
    kind = EndBevel if is_tilt else Miter
    return max((cut.angle_deg for cut in part.cuts if isinstance(cut, kind)), default=0.0)
