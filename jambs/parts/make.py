"""A placed window becomes a kit: every part marked, every size checked."""

from __future__ import annotations

import math
from dataclasses import replace

from jambs.findings import Finding, FindingsError, PlainFinding, Severity
from jambs.job.models.openings import Assumed, Job
from jambs.job.models.trim import InteriorStyle
from jambs.length import length_text
from jambs.parts.as_built import as_built, is_measured
from jambs.parts.boards import from_boards
from jambs.parts.box import box_findings, box_gaps, casing_findings, reveal_findings
from jambs.parts.buck import buck_parts
from jambs.parts.cautions import cautions
from jambs.parts.cut_words import unlisted_words
from jambs.parts.cuts import CannotBeCut
from jambs.parts.inside import Inside, make_inside
from jambs.parts.kinds import Side
from jambs.parts.kit import Figure, FittedSide, Kit
from jambs.parts.outside import Outside, make_outside
from jambs.parts.part import Part
from jambs.parts.sides import deepest, measured_sides, planned_sides
from jambs.parts.water import LEAST_DRIP, LEAST_FALL
from jambs.place.findings import weight_text
from jambs.place.placement import Placement, Sides


class PartsError(FindingsError):
    """An opening whose parts cannot be made."""


def make_kit(placement: Placement, job: Job) -> Kit:
    """Make all parts of one opening from its placement, by the measured depths where there are some.

    Raises:
        PartsError: nothing is left between the jambs, or stool or sill cannot lap under the frame.
    """
    placement, built_findings = as_built(placement, units=job.units)
    inner, inner_findings = _interior_sides(placement, job)
    outer, outer_findings = _exterior_sides(placement, job)
    try:
        inside = make_inside(placement, inner, job)
        outside = make_outside(placement, outer, job)
    except CannotBeCut as error:
        raise PartsError(_stop(f"{placement.opening.mark}: {error}.")) from error
    if inside.clear.width <= 0 or inside.clear.height <= 0:
        mark, faces = placement.opening.mark, placement.opening.frame
        text = (
            f"{mark}: nothing is left between the frame's faces in a frame of {_text(faces.width, job)} x "
            f"{_text(faces.height, job)}; check the frame size and frame_face."
        )
        raise PartsError(_stop(text))
    parts = _completed(placement, (*inside.parts, *outside.parts, *buck_parts(placement)), job)
    return Kit(
        placement=placement,
        parts=parts,
        is_measured=is_measured(placement.opening),
        clear_width=inside.clear.width,
        clear_height=inside.clear.height,
        figures=_figures(placement, inside, outside, inner),
        findings=(
            *placement.findings,
            *built_findings,
            *inner_findings,
            *outer_findings,
            *box_findings(box_gaps(inside.clear, placement), placement, job),
            *reveal_findings(inside.clear, placement, job),
            *casing_findings(inside.clear, placement, job),
            *_fall_findings(placement, job),
            *_board_findings(parts, job),
        ),
        assumed=_assumed(placement, job),
        cautions=cautions(placement, parts),
        sides=inner,
    )


def _stop(text: str) -> Finding:
    return PlainFinding(severity=Severity.STOP, text=text)


def _interior_sides(placement: Placement, job: Job) -> tuple[dict[Side, FittedSide], tuple[Finding, ...]]:
    measured = placement.opening.measured
    if measured is None:
        return planned_sides(placement.interior_depth), ()
    sides, findings = measured_sides(measured.interior_depth, job)
    shallow = min(min(side.start_depth, side.finish_depth) for side in sides.values())
    if shallow < job.limits.least_interior_depth:
        least = _text(job.limits.least_interior_depth, job)
        text = f"Measured depth of {_text(shallow, job)}: the shop mills none under {least}."
        findings = (*findings, PlainFinding(severity=Severity.STOP, text=text))
    off = deepest(sides) - placement.interior_depth
    if abs(off) > job.limits.taper:
        more = "deeper" if off > 0 else "less deep"
        text = f"Measured {_text(abs(off), job)} {more} than planned: check the position of the window and the tape."
        findings = (*findings, PlainFinding(severity=Severity.CHECK, text=text))
    return sides, findings


def _exterior_sides(placement: Placement, job: Job) -> tuple[dict[Side, FittedSide], tuple[Finding, ...]]:
    measured = placement.opening.measured
    if measured is None or measured.exterior_depth is None:
        return planned_sides(placement.exterior_depth), ()
    sides, findings = measured_sides(measured.exterior_depth, job)
    texts = ((one.severity, f"Outside: {one.sentence(job.units)}") for one in findings)
    outside = tuple(PlainFinding(severity=severity, text=text) for severity, text in texts)
    return {**planned_sides(placement.exterior_depth), **sides}, outside


def _completed(placement: Placement, parts: tuple[Part, ...], job: Job) -> tuple[Part, ...]:
    """Mark the parts and say which board each comes out of."""
    mark = placement.opening.mark
    return tuple(
        from_boards(replace(part, opening=mark, mark=f"{mark}-{number}"), job.boards, job.shop)
        for number, part in enumerate(parts, start=1)
    )


def _figures(
    placement: Placement, inside: Inside, outside: Outside, sides: dict[Side, FittedSide]
) -> tuple[Figure, ...]:
    gaps = box_gaps(inside.clear, placement)
    frame_depth = placement.opening.window.jamb_depth + placement.opening.window.frame_projection
    return (
        Figure(name="interior depth", value=placement.interior_depth, note="finished face to frame, planned"),
        Figure(name="frame depth", value=frame_depth, note="inside edge to outside edge"),
        Figure(name="exterior depth", value=placement.exterior_depth, note="frame to trim plane, planned"),
        Figure(name="flange plane", value=placement.flange_plane, note="from the finished face"),
        *inside.figures,
        Figure(name="shim space left", value=gaps.left, note="jamb box to rough opening"),
        Figure(name="shim space right", value=gaps.right, note="jamb box to rough opening"),
        Figure(name="shim space head", value=gaps.head, note="jamb box to rough opening"),
        *_sill_gap(placement, gaps),
        *outside.figures,
    )


def _sill_gap(placement: Placement, gaps: Sides) -> tuple[Figure, ...]:
    if placement.opening.interior.style is InteriorStyle.THREE_SIDED:
        return ()
    return (Figure(name="shim space sill", value=gaps.sill, note="jamb box or stool to rough opening"),)


def _fall_findings(placement: Placement, job: Job) -> list[Finding]:
    trim = placement.opening.exterior
    if trim is None or trim.sill is None or placement.exterior_depth <= 0:
        return []
    found: list[Finding] = []
    fall = math.tan(math.radians(trim.sill.slope))
    if fall < LEAST_FALL:
        text = f"The sill falls {fall * 100:.1f} %, less than the 6 % that building codes ask for."
        found.append(PlainFinding(severity=Severity.CHECK, text=text))
    if trim.sill.nosing < LEAST_DRIP:
        text = (
            f'The nosing stands {_text(trim.sill.nosing, job)} past the cladding; a drip wants at least 5 mm (3/16").'
        )
        found.append(PlainFinding(severity=Severity.CHECK, text=text))
    return found


def _board_findings(parts: tuple[Part, ...], job: Job) -> list[Finding]:
    found: list[Finding] = []
    glued = [part for part in parts if part.strips]
    if glued:
        marks = ", ".join(part.mark for part in glued)
        text = f"Glued up from strips, no board at hand is wide enough: {marks}."
        found.append(PlainFinding(severity=Severity.CHECK, text=text))
    missing = {unlisted_words(part, units=job.units) for part in parts if part.is_wood and part.blank.board is None}
    if missing:
        text = f"Not among the boards at hand: {'; '.join(sorted(missing))}."
        found.append(PlainFinding(severity=Severity.NOTE, text=text))
    return found


def _assumed(placement: Placement, job: Job) -> tuple[Assumed, ...]:
    found = [*placement.opening.assumed]
    if placement.weight_is_assumed:
        found.append(
            Assumed(
                what="weight of the window",
                value=weight_text(placement.weight, job.units),
                why="estimated from glass and frame; ask the maker",
            )
        )
    return tuple(found)


def _text(length: float, job: Job) -> str:
    return length_text(length, units=job.units)
