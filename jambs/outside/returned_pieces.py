"""Cladding that returns in courses, with the boards that its pieces are crosscut from: so many as courses pass it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from jambs.courses.cladding import CourseError
from jambs.courses.plan import plan_elevation
from jambs.courses.returned import ReturnedLeg, is_in_courses
from jambs.job import Job
from jambs.parts.board.boards import comes_out, same_stock
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.on_elevation import kits_on


def with_course_pieces(kits: Sequence[Kit], job: Job) -> tuple[Kit, ...]:
    """Return kits whose returns in courses know their pieces; where no elevation has the courses they stay as they are.

    Courses meet heads and sills of the whole elevation: ``kits`` are all of its openings.
    """
    if not any(is_in_courses(kit) and not _has_pieces(kit) for kit in kits):
        return tuple(kits)
    legs = {leg.mark: leg for leg in _returned(kits, job)}
    return tuple(
        replace(kit, parts=tuple(_with_pieces(part, legs, job) for part in kit.parts)) if is_in_courses(kit) else kit
        for kit in kits
    )


def _has_pieces(kit: Kit) -> bool:
    return any(part.blank.courses for part in kit.parts)


def _returned(kits: Sequence[Kit], job: Job) -> Iterator[ReturnedLeg]:
    """Yield the sides of all reveals in courses that can be planned; what keeps others from it the outside says."""
    for name, entry in job.outside.elevations.items():
        if entry.cladding and any(map(is_in_courses, kits_on(name, entry, kits))):
            try:
                yield from plan_elevation(name, entry, kits, job).returned
            except CourseError:
                continue


def _with_pieces(part: Part, legs: Mapping[str, ReturnedLeg], job: Job) -> Part:
    leg = legs.get(part.mark)
    if leg is None or not leg.widths:
        return part
    fits = [
        board
        for board in job.boards
        if same_stock(board, part.stock, part.thickness) and comes_out(board, max(leg.widths), job.shop)
    ]
    board = min(fits, key=lambda one: one.width, default=None)
    return replace(part, blank=replace(part.blank, courses=leg.widths, board=board))
