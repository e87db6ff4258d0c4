"""A placed window becomes a kit: every part marked, every size checked."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from jambs.findings import Finding, Subject
from jambs.job.models.fields import Size
from jambs.job.models.openings import Assumed, Job
from jambs.job.models.path import has_two_legs, size_over_all
from jambs.job.models.shop import Shop
from jambs.length import Units
from jambs.parts.board.boards import blank_from_boards
from jambs.parts.board.cuts import CannotBeCut
from jambs.parts.board.marks import NO_MARKS, MarkBook
from jambs.parts.board.part import Part, sawn_of
from jambs.parts.board.together import Together
from jambs.parts.clad_checks import clad_findings
from jambs.parts.findings.kit_findings import BoardsNotListed, GluedFromStrips, NosingTooShort, SillFallsShort
from jambs.parts.findings.water import LEAST_DRIP, LEAST_FALL
from jambs.parts.fitted import PartsError, fit
from jambs.parts.inside import Inside, make_inside
from jambs.parts.inside_figures import gap_figures
from jambs.parts.jambs.box import box_findings, box_gaps, casing_findings, reveal_findings
from jambs.parts.jambs.buck import buck_parts
from jambs.parts.jambs.flare_checks import flare_findings
from jambs.parts.jambs.flat_jambs import flat_findings, told_of_flats, told_of_metal
from jambs.parts.jambs.panels import Paneled, paneled
from jambs.parts.jambs.shaped_jambs import clear_path
from jambs.parts.jambs.stack_checks import stack_findings
from jambs.parts.kit.cautions import cautions
from jambs.parts.kit.kit import Figure, FigureKind, Fitted, FittedSide, Kit, OpeningRun, RunMember
from jambs.parts.kit.left_on import left_on
from jambs.parts.mulls.mull import cover_findings, finished_findings
from jambs.parts.mulls.mull_box import box_findings as mull_box_findings
from jambs.parts.outside import make_outside
from jambs.parts.outside_trim import Outside
from jambs.parts.readings.as_built import is_measured
from jambs.parts.run import lent_by, off_plane_findings, run_findings, run_of
from jambs.parts.shapes.arch import Rack
from jambs.parts.shapes.clear import interior_clear
from jambs.parts.shapes.shape_checks import shape_findings
from jambs.parts.style_checks import style_findings
from jambs.parts.trim.cladding_returns import reveal_of
from jambs.parts.trim.sides import deepest
from jambs.parts.words.glue_words import glue_assumed
from jambs.parts.words.ply_words import ply_assumed
from jambs.place.flares import flares_at
from jambs.place.placement import Placement
from jambs.place.units import called
from jambs.place.weight_words import weight_text, weight_why
from jambs.sides import Side

__all__ = ("PartsError", "make_kit")


def make_kit(placement: Placement, job: Job, book: MarkBook = NO_MARKS) -> Kit:
    """Make all parts of one opening from its placement, by the measured depths where there are some.

    ``book``: the marks that were given; a part that has one keeps it.

    Raises:
        PartsError: nothing is left between the jambs, or stool or sill cannot lap under the frame.
    """
    about, fitted = Subject.opening(placement.opening.mark), fit(placement, job)
    run = run_of(fitted, job)
    made = _made(fitted, run, job, book)
    inside, outside, framed = made.inside, made.outside, made.framed
    lent, beside = lent_by(_others(run, job, book)) if run else ((), ())
    placement, inner, outer = fitted.placement, fitted.inner, fitted.outer
    clear, parts = _clear_size(inside, placement), framed.parts
    kit = Kit(
        placement=placement,
        parts=parts,
        is_measured=is_measured(placement.opening),
        clear_width=clear.width,
        clear_height=clear.height,
        room=inside.room,
        figures=_figures(placement, inside, outside, inner),
        findings=(
            *placement.findings,
            *fitted.findings,
            *_inside_findings(inside, fitted, parts, job, run),
            *_fall_findings(placement, deepest(outer), about),
            *style_findings(placement, parts, job.shop, job.units, fastened=job.outside.fasteners, lent=lent),
            *_flat_findings_outside(outside, placement),
            *_clad_findings(placement, outer, job.units),
            *shape_findings(placement, parts),
            *framed.findings,
            *_board_findings(parts, about),
            *run_findings(run, parts, lent),
        ),
        assumed=_assumed(placement, parts, job.shop, job.units),
        cautions=cautions(placement, parts, job.units, year_built=job.year_built, lent=lent),
        sides=inner,
        frames=inside.frames,
        drywall=inside.drywall,
        run=run,
        lent=lent,
        beside=beside,
        flat_outside=outside.flat,
    )
    return replace(kit, findings=(*kit.findings, *off_plane_findings(kit)))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Made:
    """The parts of one opening, inside and outside, and marked."""

    inside: Inside
    outside: Outside
    framed: Paneled


def _made(fitted: Fitted, run: OpeningRun | None, job: Job, book: MarkBook) -> _Made:
    try:
        inside, outside = _inside_and_outside(fitted, run, job)
        parts = (*inside.parts, *outside.parts, *buck_parts(fitted.placement))
        framed = _completed(fitted.placement, parts, inside, run, job, book)
    except CannotBeCut as error:
        about = Subject.opening(fitted.placement.opening.mark)
        raise PartsError(*dict.fromkeys(replace(one, subject=about) for one in error.findings)) from error
    return _Made(inside=inside, outside=outside, framed=framed)


def _inside_and_outside(fitted: Fitted, run: OpeningRun | None, job: Job) -> tuple[Inside, Outside]:
    """Make the parts of both sides, neither of which waits for the other.

    Raises:
        CannotBeCut: some cannot be made; all that is wrong with either side.
    """
    placement, shop, sides = fitted.placement, job.shop, Together()
    depth, rack = fitted.planned_depth, Rack(boards=job.boards, shop=shop)
    inside = sides.tried(
        lambda: make_inside(placement, fitted.inner, depth, shop=shop, limits=job.limits, boards=job.boards, run=run)
    )
    outside = sides.tried(lambda: make_outside(placement, fitted.outer, rack, job.limits, run))
    sides.settle()
    assert inside and outside
    return inside, outside


def _others(run: OpeningRun, job: Job, book: MarkBook) -> Iterator[tuple[RunMember, Sequence[Part]]]:
    """Make the parts of the other openings of a run, each in its own coordinates."""
    for at, member in enumerate(run.members):
        if at != run.at:
            yield member, _made(member.fitted, run.seen_from(at), job, book).framed.parts


def _clear_size(inside: Inside, placement: Placement) -> Size:
    """Width × height between the interior jambs [in]: of a shape from its lowest to its highest corner."""
    if placement.opening.shape is None:
        return Size(width=inside.clear.width, height=inside.clear.height)
    path = clear_path(placement.opening, inside.clear)
    box = size_over_all(path)
    return box if not has_two_legs(path) else Size(width=inside.clear.width, height=box.height)


def _completed(
    placement: Placement, parts: tuple[Part, ...], inside: Inside, run: OpeningRun | None, job: Job, book: MarkBook
) -> Paneled:
    """Mark the parts, say which board each comes out of, and of which stiles, rails and panels a jamb is made.

    Raises:
        CannotBeCut: panels are asked for and have no room.
    """
    opening, boards, shop = placement.opening, job.boards, job.shop
    parts = tuple(replace(part, opening=opening.mark) for part in parts)
    book = book.with_parts(part.identity for part in parts)
    blanks = (
        blank_from_boards(part, boards, shop, allowance=left_on(part, placement, shop, boards, run).width)
        for part in parts
    )
    marked = tuple(
        replace(part, mark=book.mark(part.identity), blank=blank) for part, blank in zip(parts, blanks, strict=True)
    )
    return paneled(marked, inside.frames, placement, job)


def _figures(
    placement: Placement, inside: Inside, outside: Outside, sides: dict[Side, FittedSide]
) -> tuple[Figure, ...]:
    gaps = box_gaps(inside.at_wall, placement)
    how = "as it stands" if placement.stands_as_measured else "planned"
    frame_depth = placement.opening.window.jamb_depth + placement.opening.window.frame_projection
    return (
        Figure(kind=FigureKind.INTERIOR_DEPTH, value=placement.interior_depth, note=f"finished face to frame, {how}"),
        Figure(kind=FigureKind.FRAME_DEPTH, value=frame_depth, note="inside edge to outside edge"),
        Figure(kind=FigureKind.EXTERIOR_DEPTH, value=placement.exterior_depth, note=f"frame to trim plane, {how}"),
        Figure(kind=FigureKind.FLANGE_PLANE, value=placement.flange_plane, note="from the finished face"),
        *inside.figures,
        *gap_figures(gaps, placement.opening.interior),
        *outside.figures,
    )


def _inside_findings(
    inside: Inside, fitted: Fitted, parts: Sequence[Part], job: Job, run: OpeningRun | None
) -> tuple[Finding, ...]:
    placement, sides = fitted.placement, fitted.inner
    least = job.limits.least_interior_depth
    return (
        *box_findings(box_gaps(inside.at_wall, placement), placement, job.shop.shim_space),
        *reveal_findings(interior_clear(placement.opening, job.shop.grid), placement),
        *casing_findings(inside.at_wall, placement, job.units, walled=run.walled if run else ()),
        *flare_findings(placement, sides, job.shop.framers_grid),
        *_flat_findings(inside, placement),
        *stack_findings(inside.frames, placement, parts, boards=job.boards, shop=job.shop, least=least),
        *cover_findings(inside.covers, placement.opening.mark),
        *mull_box_findings(inside.covers, placement.opening.mark),
        *finished_findings(inside.clear, placement.opening, job.shop.grid),
    )


def _flat_findings(inside: Inside, placement: Placement) -> Iterator[Finding]:
    opening = placement.opening
    if opening.shape and opening.shape.is_arched:
        flares = flares_at(opening.interior, placement.interior_depth)
        yield from flat_findings(opening, clear_path(opening, inside.clear), inside.frames, flares)


def _flat_findings_outside(outside: Outside, placement: Placement) -> Iterator[Finding]:
    opening = placement.opening
    if outside.flat and opening.exterior and opening.exterior.returns:
        yield told_of_metal(outside.flat, opening.mark, opening.exterior.frame_reveal)
    elif outside.flat and opening.exterior:
        yield told_of_flats(outside.flat, opening.mark, opening.exterior.frame_reveal, is_outside=True)


def _clad_findings(placement: Placement, outer: dict[Side, FittedSide], units: Units) -> Iterator[Finding]:
    trim = placement.opening.exterior
    if trim and trim.cladding_returns:
        yield from clad_findings(placement, reveal_of(outer, trim, trim.cladding_returns, units), units)


def _fall_findings(placement: Placement, exterior_depth: float, about: Subject) -> list[Finding]:
    trim = placement.opening.exterior
    sill = (trim.returns.sill if trim.returns else trim.sill) if trim else None
    if sill is None or exterior_depth <= 0:
        return []
    found: list[Finding] = []
    fall = math.tan(math.radians(sill.slope))
    if fall < LEAST_FALL:
        found.append(SillFallsShort(subject=about, fall=fall))
    if sill.nosing < LEAST_DRIP:
        found.append(NosingTooShort(subject=about, nosing=sill.nosing))
    return found


def _board_findings(made: Sequence[Part], about: Subject) -> list[Finding]:
    parts, found = [one for part in made for one in sawn_of(part)], list[Finding]()
    glued = tuple(part.mark for part in parts if part.strips and not part.is_laminated)
    if glued:
        found.append(GluedFromStrips(subject=about, marks=glued))
    missing = {(part.stock, part.thickness) for part in parts if part.is_wood and part.blank.board is None}
    if missing:
        found.append(BoardsNotListed(subject=about, boards=tuple(sorted(missing))))
    return found


def _assumed(placement: Placement, parts: Sequence[Part], shop: Shop, units: Units) -> tuple[Assumed, ...]:
    found = [*placement.opening.assumed]
    if placement.weight_is_assumed:
        found.append(
            Assumed(
                what=f"weight of the {called(placement.opening)}",
                value=weight_text(placement.weight, units),
                why=weight_why(placement.opening, units),
            )
        )
    if any((one.strips and not one.is_laminated) or part.frame_members for part in parts for one in sawn_of(part)):
        found += glue_assumed(shop, units)
    found += ply_assumed(parts, shop)
    return tuple(found)
