"""A placed window becomes a kit: every part marked, every size checked."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from jambs.findings import Finding, FindingsError, Subject
from jambs.job.models.fields import Size
from jambs.job.models.openings import Assumed, Job
from jambs.job.models.path import has_two_legs, size_over_all
from jambs.job.models.shop import Limits, Shop
from jambs.length import Units
from jambs.parts.board.boards import blank_from_boards
from jambs.parts.board.cuts import CannotBeCut
from jambs.parts.board.marks import NO_MARKS, MarkBook
from jambs.parts.board.part import Part, sawn_of
from jambs.parts.findings.kit_findings import BoardsNotListed, GluedFromStrips, NosingTooShort, SillFallsShort
from jambs.parts.findings.water import LEAST_DRIP, LEAST_FALL
from jambs.parts.inside import Inside, make_inside
from jambs.parts.inside_figures import gap_figures
from jambs.parts.jambs.box import box_findings, box_gaps, casing_findings, reveal_findings
from jambs.parts.jambs.buck import buck_parts
from jambs.parts.jambs.flare_checks import flare_findings
from jambs.parts.jambs.panels import Paneled, paneled
from jambs.parts.jambs.shaped_jambs import clear_path
from jambs.parts.jambs.stack_checks import stack_findings
from jambs.parts.kit.cautions import cautions
from jambs.parts.kit.kit import Figure, FigureKind, FittedSide, Kit
from jambs.parts.kit.left_on import left_on
from jambs.parts.mulls.mull import cover_findings, finished_findings
from jambs.parts.mulls.mull_box import box_findings as mull_box_findings
from jambs.parts.outside import Outside, make_outside
from jambs.parts.readings.as_built import as_built, is_measured
from jambs.parts.readings.lining import lining_of
from jambs.parts.readings.wall_findings import MeasuredOffPlan, MeasuredTooShallow
from jambs.parts.readings.where_it_stands import where_it_stands
from jambs.parts.shapes.arch import Rack
from jambs.parts.shapes.clear import interior_clear
from jambs.parts.shapes.shape_checks import shape_findings
from jambs.parts.style_checks import style_findings
from jambs.parts.trim.sides import deepest, fitted_sides, planned_sides, wall_findings
from jambs.parts.words.glue_words import glue_assumed
from jambs.parts.words.ply_words import ply_assumed
from jambs.place.checks import depth_findings
from jambs.place.findings import ExteriorTooShallow, FrameStandsProud, InteriorTooShallow, JambWiderThanBoards
from jambs.place.limits import SAME_PLANE
from jambs.place.placement import Placement
from jambs.place.weight_words import weight_text
from jambs.sides import Side


class PartsError(FindingsError):
    """An opening whose parts cannot be made."""


def make_kit(placement: Placement, job: Job, book: MarkBook = NO_MARKS) -> Kit:
    """Make all parts of one opening from its placement, by the measured depths where there are some.

    ``book``: the marks that were given; a part that has one keeps it.

    Raises:
        PartsError: nothing is left between the jambs, or stool or sill cannot lap under the frame.
    """
    about, planned_depth = Subject.opening(placement.opening.mark), placement.interior_depth
    placement, standing_findings = where_it_stands(placement, job)
    placement, built_findings = as_built(placement)
    inner, inner_findings = _interior_sides(placement, planned_depth, job.shop, job.limits)
    outer, outer_findings = _exterior_sides(placement, job.shop, job.limits)
    placement = _with_depths_as_built(placement, deepest(inner), deepest(outer), job)
    try:
        inside = make_inside(placement, inner, planned_depth, shop=job.shop, limits=job.limits, boards=job.boards)
        outside = make_outside(placement, outer, Rack(boards=job.boards, shop=job.shop), job.limits)
        made = (*inside.parts, *outside.parts, *buck_parts(placement))
        framed = _completed(placement, made, inside, job, book)
    except CannotBeCut as error:
        raise PartsError(*(replace(one, subject=about) for one in error.findings)) from error
    clear, parts = _clear_size(inside, placement), framed.parts
    return Kit(
        placement=placement,
        parts=parts,
        is_measured=is_measured(placement.opening),
        clear_width=clear.width,
        clear_height=clear.height,
        room=inside.room,
        figures=_figures(placement, inside, outside, inner),
        findings=(
            *placement.findings,
            *standing_findings,
            *built_findings,
            *inner_findings,
            *outer_findings,
            *_inside_findings(inside, placement, inner, parts, job),
            *_fall_findings(placement, deepest(outer), about),
            *style_findings(placement, parts, job.shop, job.units, fastened=job.outside.fasteners),
            *shape_findings(placement, parts),
            *framed.findings,
            *_board_findings(parts, about),
        ),
        assumed=_assumed(placement, parts, job.shop, job.units),
        cautions=cautions(placement, parts, job.units, year_built=job.year_built),
        sides=inner,
        frames=inside.frames,
        drywall=inside.drywall,
    )


def _clear_size(inside: Inside, placement: Placement) -> Size:
    """Width × height between the interior jambs [in]: of a shape from its lowest to its highest corner."""
    if placement.opening.shape is None:
        return Size(width=inside.clear.width, height=inside.clear.height)
    path = clear_path(placement.opening, inside.clear)
    box = size_over_all(path)
    return box if not has_two_legs(path) else Size(width=inside.clear.width, height=box.height)


Sided = tuple[dict[Side, FittedSide], tuple[Finding, ...]]
"""Depths by side, and what is to be known of them."""


OF_DEPTHS = (FrameStandsProud, JambWiderThanBoards, ExteriorTooShallow)
"""What is said of the depths alone: said again of those that the kit is made from."""


def _with_depths_as_built(placement: Placement, inside: float, outside: float, job: Job) -> Placement:
    """Let what is said of the depths follow those that the parts are made from [in], not those that were planned."""
    if placement.opening.measured is None:
        return placement
    others = (one for one in placement.findings if not isinstance(one, OF_DEPTHS))
    return replace(placement, findings=(*depth_findings(placement.opening, inside, outside, job), *others))


def _interior_sides(placement: Placement, planned_depth: float, shop: Shop, limits: Limits) -> Sided:
    """Return the depths inside by side; ``planned_depth``: what was planned before anything was read [in].

    Raises:
        PartsError: as planned they are less than the shop mills.
    """
    measured, about = placement.opening.measured, Subject.opening(placement.opening.mark)
    if measured is None or measured.interior_depth is None:
        depth, least = placement.interior_depth, limits.least_interior_depth
        if SAME_PLANE < depth < least - SAME_PLANE:
            raise PartsError(InteriorTooShallow(subject=about, depth=depth, least=least))
        return planned_sides(depth), ()
    sides = fitted_sides(measured.interior_depth, shop)
    linings = {side: lining_of(placement.opening.interior, side) for side in Side}
    findings = wall_findings(measured.interior_depth, shop, limits, about=about, linings=linings)
    shallow = min(side.least for side in sides.values())
    if shallow < limits.least_interior_depth:
        findings.append(MeasuredTooShallow(subject=about, depth=shallow, least=limits.least_interior_depth))
    read = {side: one for side, one in sides.items() if measured.interior_depth.has_read_ends(side)}
    off = deepest(read) - planned_depth if read else 0.0
    if abs(off) > limits.taper:
        findings.append(MeasuredOffPlan(subject=about, off=off))
    return sides, tuple(findings)


def _exterior_sides(placement: Placement, shop: Shop, limits: Limits) -> Sided:
    measured, about = placement.opening.measured, Subject.opening(placement.opening.mark)
    planned = planned_sides(placement.exterior_depth)
    if measured is None or measured.exterior_depth is None:
        return planned, ()
    findings = wall_findings(measured.exterior_depth, shop, limits, about=about, is_outside=True)
    return {**planned, **fitted_sides(measured.exterior_depth, shop)}, tuple(findings)


def _completed(placement: Placement, parts: tuple[Part, ...], inside: Inside, job: Job, book: MarkBook) -> Paneled:
    """Mark the parts, say which board each comes out of, and of which stiles, rails and panels a jamb is made.

    Raises:
        CannotBeCut: panels are asked for and have no room.
    """
    opening, boards, shop = placement.opening, job.boards, job.shop
    parts = tuple(replace(part, opening=opening.mark) for part in parts)
    book = book.with_parts(part.identity for part in parts)
    blanks = (
        blank_from_boards(part, boards, shop, allowance=left_on(part, placement, shop, boards).width) for part in parts
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
    inside: Inside, placement: Placement, sides: dict[Side, FittedSide], parts: Sequence[Part], job: Job
) -> tuple[Finding, ...]:
    least = job.limits.least_interior_depth
    return (
        *box_findings(box_gaps(inside.at_wall, placement), placement, job.shop.shim_space),
        *reveal_findings(interior_clear(placement.opening, job.shop.grid), placement),
        *casing_findings(inside.at_wall, placement, job.units),
        *flare_findings(placement, sides, job.shop.framers_grid),
        *stack_findings(inside.frames, placement, parts, boards=job.boards, shop=job.shop, least=least),
        *cover_findings(inside.covers, placement.opening.mark),
        *mull_box_findings(inside.covers, placement.opening.mark),
        *finished_findings(inside.clear, placement.opening, job.shop.grid),
    )


def _fall_findings(placement: Placement, exterior_depth: float, about: Subject) -> list[Finding]:
    trim = placement.opening.exterior
    if trim is None or trim.sill is None or exterior_depth <= 0:
        return []
    found: list[Finding] = []
    fall = math.tan(math.radians(trim.sill.slope))
    if fall < LEAST_FALL:
        found.append(SillFallsShort(subject=about, fall=fall))
    if trim.sill.nosing < LEAST_DRIP:
        found.append(NosingTooShort(subject=about, nosing=trim.sill.nosing))
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
                what="weight of the window",
                value=weight_text(placement.weight, units),
                why="estimated from glass and frame; ask the maker",
            )
        )
    if any((one.strips and not one.is_laminated) or part.frame_members for part in parts for one in sawn_of(part)):
        found += glue_assumed(shop, units)
    found += ply_assumed(parts, shop)
    return tuple(found)
