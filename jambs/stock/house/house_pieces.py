"""Parts of all openings as pieces to cut: wide end, long point, strips to glue, width left where depths are planned."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from jambs.geometry import HALF_RIGHT_DEG
from jambs.job.models.openings import Job
from jambs.job.models.shop import Shop
from jambs.length import Units
from jambs.parts.board.cuts import Cut, EdgeBevel, EndBevel, Miter, PlaneCut, end_of
from jambs.parts.board.part import Part
from jambs.parts.kit.kit import Kit
from jambs.parts.kit.left_on import left_on
from jambs.parts.kit.planned import Waits, is_planned, waits_in, width_left_on
from jambs.stock.house.head_to_tail import slants_of
from jambs.stock.house.lumber import printed_steps, steps_up
from jambs.stock.house.side_by_side import ends_of
from jambs.stock.problem import Piece

STRIP_LETTERS = "abcdefghijklmnopqrstuvwxyz"


def course_letters(place: int) -> str:
    """Letters of a piece among those of one side: a to z, then aa."""
    turn, rest = divmod(place, len(STRIP_LETTERS))
    return (STRIP_LETTERS[turn - 1] if turn else "") + STRIP_LETTERS[rest]


@dataclass(frozen=True, slots=True, kw_only=True)
class CutPiece:
    """A piece and the part it is for; sizes as sawn first [in].

    ``width``: with the ``allowance`` that is left on where the depth is only planned; ``is_planned``: its width or
    its length may still change, of a part that ``waits`` for it; a piece of a course is long as that is wide.
    ``length``: long point to long point of one that is mitered or beveled. ``glued``: how
    many strips the part is glued up of, else 0; a strip holds what jointing takes and what is left on, its
    ``allowance`` is 0.
    ``longer``: what is left on the length, of a strip too. ``short``: how much less than may be needed at worst is left
    on the width, because no board at hand gives it.
    """

    piece: Piece
    part: Part
    width: float
    length: float
    allowance: float
    is_planned: bool
    waits: frozenset[Waits] = frozenset()
    longer: float = 0.0
    short: float = 0.0
    glued: int = 0

    @property
    def is_of_course(self) -> bool:
        """Say whether it is a piece of cladding in courses, whose length makes up the depth."""
        return bool(self.part.blank.courses)

    @property
    def words(self) -> str:
        """The part in trade words: ``extension jamb, left leg``, ``exterior casing, head``."""
        return self.part.told


def house_pieces(kits: Iterable[Kit], job: Job) -> tuple[CutPiece, ...]:
    """Return every wooden part of the house as pieces, in the order of openings and marks."""
    return tuple(piece for kit in kits for part in kit.parts for piece in _of_part(part, kit, job))


def _of_part(part: Part, kit: Kit, job: Job) -> Iterator[CutPiece]:
    if part.blank.courses:
        yield from _course_pieces(part, kit, job)
    elif part.is_wood:
        yield from _member_pieces(part, kit, job) if part.frame_members else _pieces(part, kit, job)


def _course_pieces(leg: Part, kit: Kit, job: Job) -> Iterator[CutPiece]:
    """Yield the pieces of cladding in courses, all as long as the return is deep, each out of a board of its course.

    Those at the foot and under the head are cut to fit where they are laid.
    """
    longer = width_left_on(leg, kit.placement.opening, job.shop)
    miters = [cut for cut in leg.cuts if isinstance(cut, EdgeBevel | PlaneCut) and end_of(cut) is None]
    for place, width in enumerate(leg.blank.courses):
        piece = Piece(
            mark=leg.mark + course_letters(place),
            length=printed_steps(leg.width + longer, grid=job.shop.grid),
            width=printed_steps(width, grid=job.shop.grid),
            is_mitered=bool(miters),
            miter_allowance=miter_allowance((HALF_RIGHT_DEG for _ in miters), job.shop, job.units),
        )
        yield CutPiece(
            piece=piece,
            part=leg,
            width=width,
            length=leg.width + longer,
            allowance=0.0,
            longer=longer,
            is_planned=bool(waits_in(kit, leg)),
        )


def _pieces(part: Part, kit: Kit, job: Job) -> Iterator[CutPiece]:
    """Yield the part, or the strips it is glued up of: those are wide and long enough as they are, and cut square."""
    left, waits = left_on(part, kit.placement, job.shop, job.boards, kit.run), waits_in(kit, part)
    wider = 0.0 if part.strips else left.width
    nests = job.shop.head_to_tail and not (part.strips or wider or left.length or waits or part.is_cut_to_opening)
    length = (part.blank.strip_length if part.strips else part.length) + left.length
    for place, width in enumerate(part.strips or (part.width,)):
        mark = part.mark + (STRIP_LETTERS[place] if part.strips else "")
        piece = _piece(mark, part, width + wider, length, job.shop, job.units)
        yield CutPiece(
            piece=replace(piece, slants=slants_of(part, job.units), ends=ends_of(part, job.shop)) if nests else piece,
            part=part,
            width=width + wider,
            length=length,
            allowance=wider,
            longer=left.length,
            short=0.0 if part.strips else left.short,
            is_planned=bool(waits),
            waits=waits,
            glued=len(part.strips),
        )


def _member_pieces(jamb: Part, kit: Kit, job: Job) -> Iterator[CutPiece]:
    """Yield stiles, rails and panels of a jamb, or the strips of a panel: as large as they are, whatever is left on."""
    waits = is_planned(jamb, kit.placement.opening)
    for part in jamb.frame_members:
        length = part.blank.strip_length if part.strips else part.length
        for place, width in enumerate(part.strips or (part.width,)):
            mark = part.mark + (STRIP_LETTERS[place] if part.strips else "")
            yield CutPiece(
                piece=_piece(mark, part, width, length, job.shop, job.units),
                part=part,
                width=width,
                length=length,
                allowance=0.0,
                is_planned=waits,
                glued=len(part.strips),
            )


def _piece(mark: str, part: Part, width: float, length: float, shop: Shop, units: Units) -> Piece:
    slanted = () if part.strips else tuple(cut for cut in part.cuts if end_of(cut))
    return Piece(
        mark=mark,
        length=printed_steps(length, grid=shop.grid),
        width=printed_steps(width, grid=shop.grid),
        is_mitered=bool(slanted),
        miter_allowance=miter_allowance((_slant_deg(cut, part) for cut in slanted), shop, units),
    )


def _slant_deg(cut: Cut, part: Part) -> float:
    """How far the cut of an end is off square, whichever way it leans [degrees]."""
    if isinstance(cut, Miter | EndBevel):
        return cut.angle_deg
    assert isinstance(cut, PlaneCut)
    return math.degrees(math.acos(abs(cut.plane(part.silhouettes.sizes).normal[0])))


def miter_allowance(angles_deg: Iterable[float], shop: Shop, units: Units) -> int:
    """Steps that a slanted cut takes along the grain beyond the square kerf: kerf (1 / cos - 1), the steepest end.

    Up to the shop's grid, so that running lengths can be read off a tape.
    """
    steepest = max(angles_deg, default=0.0)
    beyond = shop.kerf * (1 / math.cos(math.radians(steepest)) - 1)
    return steps_up(shop.grid.up(beyond), units=units)
