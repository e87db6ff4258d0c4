"""Openings trimmed as one: where each stands from the one at hand, and what the boards over all of them go past.

The leftmost has the boards that lie on the wall: head casing, outer legs, stool, apron, exterior sill, flashing, and
the mull casings on the wall between. Every other has its own jambs, and lends nothing but its place.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

from jambs.findings import Finding, Subject
from jambs.geometry import added
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.layers import BuckKind
from jambs.job.models.openings import Job, Opening
from jambs.job.models.trim import Corner, InteriorTrim
from jambs.job.models.trim_run import TrimRun
from jambs.length import HALF_64TH, ROUND_OFF
from jambs.parts.board.cuts import CannotBeCut
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.findings.run_findings import (
    BucksMeetBetween,
    FramesOffStool,
    GoesPastNeighbors,
    JambsBehindBoards,
    NoRoomForMullCasing,
    TrimmedByAnother,
    WallHoldsNoTrimmers,
)
from jambs.parts.fitted import fit
from jambs.parts.kit.kit import Figure, FigureKind, Fitted, FittedSide, Kit, OpeningRun, RunMember, WallBetween
from jambs.parts.readings.as_built import is_read, without_odd_readings
from jambs.parts.shapes.clear import ClearOpening, made_clear
from jambs.parts.trim.casing import CasedOpening, casing
from jambs.parts.trim.casing_plane import farthest_behind
from jambs.place.placement import Placement
from jambs.place.solve import place_at
from jambs.sides import Side

OVER_ALL = (
    PartKind.CASING,
    PartKind.STOOL,
    PartKind.APRON,
    PartKind.MULL_CASING,
    PartKind.EXTERIOR_SILL,
    PartKind.HEAD_FLASHING,
)
"""What the leftmost opening has for all."""


def goes_past(part: Part) -> bool:
    """Say whether a board goes past several openings that are trimmed as one, or lies on the wall between two."""
    return part.kind in OVER_ALL and not (part.kind is PartKind.CASING and part.side.is_leg)


FOLLOWS_DEPTHS = (PartKind.STOOL, PartKind.EXTERIOR_SILL)
"""What goes past several openings and is as wide, at each, as the depth there asks."""
OFF_STOOL = 1 / 16 + HALF_64TH
"""A frame that stands off a straight stool by more leaves a gap or takes no tongue [in]; common practice, no source."""
TRIMMERS = 3.0
"""Two studs that carry the headers at both sides of a wall between, 1 1/2 in each (PS 20, dry) [in]."""


def run_of(fitted: Fitted, job: Job) -> OpeningRun | None:
    """Return the run in which a ``fitted`` opening stands; nothing where it is trimmed alone.

    The faces of two neighbors' jambs stand apart by a length on the shop's grid: the shims take what that moves.
    """
    own = fitted.placement.opening
    run, openings = own.run, {one.mark: one for one in job.openings}
    if run is None or not set(run.marks) <= openings.keys():
        return None
    members = [
        _member(fitted if mark == own.mark else _beside(openings[mark], fitted.placement, job), job)
        for mark in run.marks
    ]
    at = run.marks.index(own.mark)
    return OpeningRun(members=tuple(_spread(members, run, at, job)), at=at)


def _beside(opening: Opening, at_hand: Placement, job: Job) -> Fitted:
    other = place_at(opening, at_hand.planes, at_hand.flange_plane, job)
    return fit(without_odd_readings(other, units=job.units), job)


def _member(fitted: Fitted, job: Job) -> RunMember:
    return RunMember(fitted=fitted, clear=made_clear(fitted.placement.opening, job.shop.grid), x=0.0)


def _spread(members: Sequence[RunMember], run: TrimRun, at: int, job: Job) -> Iterator[RunMember]:
    """Set them apart along the wall, that at hand at 0."""
    xs = [0.0]
    for one, other, wall in zip(members, members[1:], run.walls, strict=False):
        beside = one.placement.opening.frame.width - one.clear.right + other.clear.left
        apart = job.shop.grid.round(beside + _to_hole(one, Side.RIGHT) + wall + _to_hole(other, Side.LEFT))
        xs.append(xs[-1] + one.clear.right + apart - other.clear.left)
    for member, x in zip(members, xs, strict=True):
        yield replace(member, x=x - xs[at])


def _to_hole(member: RunMember, side: Side) -> float:
    """Frame → edge of the hole in the framing at one side, a liner between them counted in [in]."""
    placement = member.placement
    lining = (placement.framing_opening.width - placement.opening.rough_opening.width) / 2
    return (placement.shims.left if side is Side.LEFT else placement.shims.right) + lining


def over_all(run: OpeningRun | None, clear: ClearOpening, clears: Sequence[ClearOpening] | None = None) -> ClearOpening:
    """Return what a board over all goes past, from the leftmost clear opening to the rightmost; alone its own [in].

    ``clears``: those of all openings, each from its own frame, where they are not the ones inside.
    """
    if run is None:
        return clear
    last = run.members[-1]
    right = (clears[-1] if clears else last.clear).right
    return replace(clear, right=last.x + right)


def walls_between(run: OpeningRun | None, clears: Sequence[ClearOpening] | None = None) -> tuple[WallBetween, ...]:
    """Return the walls between, from the face of one jamb to that of the next, left to right [in]."""
    if run is None:
        return ()
    faces = clears or [one.clear for one in run.members]
    pairs = zip(run.members, run.members[1:], faces, faces[1:], strict=False)
    return tuple(WallBetween(low=one.x + left.right, high=other.x + right.left) for one, other, left, right in pairs)


def sill_over_all(run: OpeningRun | None, sides: Mapping[Side, FittedSide]) -> FittedSide:
    """Return the depths at the ends of a stool: at the left corner of the first opening, at the right of the last."""
    if run is None:
        return sides[Side.SILL]
    start, finish = (
        run.members[0].fitted.inner[Side.SILL].start_depth,
        run.members[-1].fitted.inner[Side.SILL].finish_depth,
    )
    return FittedSide(start_depth=start, finish_depth=finish, is_tapered=start != finish)


def outer_over_all(run: OpeningRun | None, sides: dict[Side, FittedSide]) -> dict[Side, FittedSide]:
    """Return the exterior depths that a sill over all is made to: it reaches as far as the deepest asks."""
    if run is None:
        return sides
    deepest = max((one.fitted.outer[Side.SILL] for one in run.members), key=lambda side: side.greatest)
    return {**sides, Side.RIGHT: run.members[-1].fitted.outer[Side.RIGHT], Side.SILL: deepest}


def mulls_on_wall(
    walls: Sequence[WallBetween],
    cased: CasedOpening,
    reveal: float,
    trim: InteriorTrim | ExteriorTrim,
    where: Where,
) -> list[Part]:
    """Make the mull casings on the wall between: they stand between head and foot as legs do, a reveal off both jambs.

    None where the trim has no mull casing, whose thickness and stock they have.

    Raises:
        CannotBeCut: the reveals leave nothing of the wall between.
    """
    found, over = list[Part](), trim.mull_casing
    if over is None:
        return found
    around = trim.casing.model_copy(update={"thickness": over.thickness, "stock": over.stock})
    for member, wall in enumerate(walls, start=1):
        width = wall.width - 2 * reveal
        if width < HALF_64TH:
            about = Subject.opening("")
            raise CannotBeCut(NoRoomForMullCasing(subject=about, between=wall.width, reveal=reveal))
        board = around.model_copy(update={"width": width, "corner": Corner.BUTT, "overhang": 0.0})
        foot = cased.bottom + _share(cased, (wall.low + wall.high) / 2) * (_right_bottom(cased) - cased.bottom)
        beside = replace(cased, left=wall.high - reveal, bottom=foot, right_bottom=None)
        leg = next(part for part in casing(beside, board, where) if part.side is Side.LEFT)
        found.append(replace(leg, kind=PartKind.MULL_CASING, member=member, members=len(walls), is_on_wall=True))
    return found


def _right_bottom(cased: CasedOpening) -> float:
    return cased.bottom if cased.right_bottom is None else cased.right_bottom


def _share(cased: CasedOpening, x: float) -> float:
    return (x - cased.left) / cased.width


def lent_by(others: Iterable[tuple[RunMember, Sequence[Part]]]) -> tuple[tuple[Part, ...], tuple[Part, ...]]:
    """Return, as they lie from the opening at hand, the boards of others over all, and all their other boards."""
    lent, beside = list[Part](), list[Part]()
    for member, parts in others:
        for part in parts:
            seat = replace(part.seat, origin=added(part.seat.origin, (member.x, 0.0, 0.0)))
            (lent if part.kind in OVER_ALL else beside).append(replace(part, seat=seat))
    return tuple(lent), tuple(beside)


def run_figures(run: OpeningRun | None) -> tuple[Figure, ...]:
    """Return how far the jambs of neighbors stand apart, to be set by the tape."""
    if run is None:
        return ()
    return tuple(
        Figure(
            kind=FigureKind.WALL_BETWEEN,
            value=wall.width,
            note=f"face of the right jamb of {one.mark} to that of the left jamb of {other.mark}",
        )
        for one, other, wall in zip(run.members, run.members[1:], walls_between(run), strict=False)
    )


def _unread(run: OpeningRun, parts: Sequence[Part]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Return the marks of boards that follow depths read at some openings of a run and not at others, and of these."""
    waiting: dict[str, list[str]] = {}
    for part in parts:
        unread = [one.mark for one in run.members if not is_read(one.placement.opening, part.where)]
        if part.kind in FOLLOWS_DEPTHS and 0 < len(unread) < len(run.members):
            waiting[part.mark] = unread
    return tuple(waiting), tuple(one.mark for one in run.members if any(one.mark in some for some in waiting.values()))


def run_findings(run: OpeningRun | None, parts: Sequence[Part], lent: Sequence[Part]) -> list[Finding]:
    """Say whose the boards over all are; find walls that hold no trimmers, bucks that meet, frames off the stool.

    ``parts``: of the opening at hand; ``lent``: boards of the leftmost that lie at it too.
    """
    planned = run.hand.placement.opening.run if run else None
    if run is None or planned is None:
        return []
    about, found = Subject.opening(run.hand.mark), list[Finding]()
    if not run.is_lead:
        wood = tuple(part.mark for part in lent if part.is_wood)
        has_stool = any(part.kind is PartKind.STOOL for part in lent)
        return [TrimmedByAnother(subject=about, lead=run.lead, marks=wood, has_stool=has_stool)]
    apart = tuple(
        other.x - one.x - one.placement.opening.frame.width
        for one, other in zip(run.members, run.members[1:], strict=False)
    )
    past = tuple(part.mark for part in parts if part.is_wood and goes_past(part))
    others = tuple(one.mark for one in run.others)
    planned_here, unread = _unread(run, parts)
    found.append(
        GoesPastNeighbors(subject=about, marks=past, others=others, apart=apart, planned=planned_here, unread=unread)
    )
    thin = min(planned.walls)
    buck = run.hand.placement.buck
    bucks = 2 * (buck.set_back + buck.thickness) if buck and buck.kind is BuckKind.OUTBOARD else 0.0
    if thin < TRIMMERS - HALF_64TH:
        found.append(WallHoldsNoTrimmers(subject=about, wall=thin, least=TRIMMERS))
    if thin < bucks - HALF_64TH:
        found.append(BucksMeetBetween(subject=about, wall=thin, bucks=bucks))
    mark, off = max(_off_line(run), key=lambda one: abs(one[1]))
    if run.hand.placement.opening.interior.stool and abs(off) > OFF_STOOL:
        found.append(FramesOffStool(subject=about, mark=mark, off=off))
    return found


def _off_line(run: OpeningRun) -> Iterator[tuple[str, float]]:
    """Yield how much deeper each corner at the sill is than the straight line from the first to the last [in]."""
    sills = [(one, one.fitted.inner[Side.SILL]) for one in run.members if Side.SILL in one.fitted.inner]
    start, finish = sills[0][1].start_depth, sills[-1][1].finish_depth
    low, high = run.members[0].x + run.members[0].clear.left, run.members[-1].x + run.members[-1].clear.right
    for one, sill in sills:
        for x, depth in ((one.clear.left, sill.start_depth), (one.clear.right, sill.finish_depth)):
            yield one.mark, depth - (start + (one.x + x - low) / (high - low) * (finish - start))


DRAWN_DOWN = 1 / 8
"""Nails draw casing down on a jamb that ends behind it by so much at most [in]; common practice, no source."""


def off_plane_findings(kit: Kit) -> Iterator[Finding]:
    """Say where jambs of openings trimmed as one end behind the boards that lie over all of them; at the leftmost."""
    if kit.run is None or not kit.run.is_lead:
        return
    for where in (Where.INTERIOR, Where.EXTERIOR):
        found = farthest_behind(kit, where)
        if found and found[1] > DRAWN_DOWN + ROUND_OFF:
            mark, off = found
            yield JambsBehindBoards(
                subject=Subject.opening(kit.mark),
                is_outside=where is Where.EXTERIOR,
                mark=mark,
                off=off,
                most=DRAWN_DOWN,
            )
