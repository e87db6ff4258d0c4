"""Cladding that returns to the frame: its boards in the reveal, the corner board's leg there, and furring behind both.

All lie in three layers round the opening, each with its head over its legs: furring behind, before it the returns from
the frame outward, and at the wall's corner the corner board, whose other leg is the casing. Where the corner is mitered
the legs run out to the face of the cladding; the head does too, square, under the head flashing.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from jambs.geometry import HALF_RIGHT_DEG, Plane
from jambs.job.models.cladding_returns import CladdingReturnsEntry, ReturnLaid
from jambs.job.models.exterior_trim import ExteriorJambEntry, ExteriorTrim
from jambs.length import MM_PER_INCH, Units
from jambs.parts.board.boards import SAME_SIZE
from jambs.parts.board.cuts import Cut, Edge, EdgeBevel, PlaneCut
from jambs.parts.board.kinds import Crew, PartKind
from jambs.parts.board.part import Part
from jambs.parts.jambs.exterior_jamb import exterior_jambs
from jambs.parts.kit.kit import FittedSide
from jambs.parts.shapes.clear import ClearOpening
from jambs.parts.trim.sides import planned_sides
from jambs.place.placement import Placement
from jambs.sides import LEGS, Side

LEAST_BEARING = {Units.INCH: 3 / 4, Units.MM: 20 / MM_PER_INCH}
"""Of the end of a board on the strip it is nailed to [in]; common practice, no source."""
LINED = (Side.HEAD, *LEGS)
"""The sides that cladding returns; a sill or a threshold lies along the fourth."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ReturnReveal:
    """What lines a reveal, out from the frame's outside edge [in].

    ``start``: where all of it begins, a sealant joint off. ``return_end``: where the returns end at a corner board, or
    the trim plane where they are mitered. ``trim_plane``: the least depth of it. ``strips``: where furring begins and
    ends, from the frame on.
    """

    start: float
    return_end: float
    trim_plane: float
    strips: tuple[tuple[float, float], ...]


def reveal_of(
    sides: dict[Side, FittedSide], trim: ExteriorTrim, entry: CladdingReturnsEntry, units: Units
) -> ReturnReveal:
    """Lay out a reveal by its least depth: the returns and the furring are as wide all round.

    The strip at the corner has all of its width; the one at the frame what is left, where that is worth a strip.
    """
    start, end = trim.sealant_joint, min(sides[side].least for side in LINED)
    board, wide = entry.corner_board, entry.furring.width
    at_corner = (max(end - wide, start), end)
    at_frame = (start, min(start + wide, at_corner[0]))
    has_two = at_frame[1] - start >= LEAST_BEARING[units] - SAME_SIZE
    return ReturnReveal(
        start=start,
        return_end=end - board.width - board.gap if board else end,
        trim_plane=end,
        strips=(at_frame, at_corner) if has_two else (at_corner,),
    )


def corner_clear(clear: ClearOpening, entry: CladdingReturnsEntry) -> ClearOpening:
    """Return the clear opening between the corner boards, which stand in front of thinner cladding."""
    past = corner_past(entry)
    return replace(clear, left=clear.left + past, right=clear.right - past, top=clear.top - past)


def corner_past(entry: CladdingReturnsEntry) -> float:
    """How far the corner board stands past the face of the returns, into the opening [in]."""
    return entry.corner_board.thickness - entry.thickness if entry.corner_board else 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class ReturnLayers:
    """Makes the layers of one reveal; ``clear.bottom``: where their feet are at the frame."""

    clear: ClearOpening
    sides: dict[Side, FittedSide]
    reveal: ReturnReveal
    placement: Placement
    trim: ExteriorTrim
    entry: CladdingReturnsEntry
    slope_deg: float

    def parts(self) -> tuple[Part, ...]:
        """Make returns, corner boards and furring; ``clear.bottom`` is where their feet are at the frame."""
        return (*self._returns(), *self._corner_boards(), *self._furring())

    def _layer(
        self, kind: PartKind, clear: ClearOpening, jamb: ExteriorJambEntry, start: float, sides: dict[Side, FittedSide]
    ) -> Iterable[Part]:
        """Lay boards along head and legs, from ``start`` to the depths of the sides [in off the frame]."""
        trim = self.trim.model_copy(update={"jamb": jamb, "sealant_joint": start})
        boards = exterior_jambs(clear, sides, trim, self.placement.outside_edge, self.slope_deg)
        return (replace(part, kind=kind) for part in boards)

    def _returns(self) -> Iterable[Part]:
        entry, reveal = self.entry, self.reveal
        sides = planned_sides(reveal.return_end)
        if entry.is_mitered:
            out = self.placement.planes.cladding_depth
            sides = {side: one.less(-out) for side, one in self.sides.items()}
        jamb = _board(entry.thickness, entry.stock)
        for part in self._layer(PartKind.CLADDING_RETURN, self.clear, jamb, reveal.start, sides):
            yield self._laid(part) if part.side.is_leg else part

    def _laid(self, leg: Part) -> Part:
        """Miter a leg where the corner is; in courses the siding crew cuts it piece by piece."""
        cuts: tuple[Cut, ...] = (*leg.cuts, _miter(leg)) if self.entry.is_mitered else leg.cuts
        in_courses = self.entry.laid is ReturnLaid.COURSES
        blank = replace(leg.blank, crew=Crew.SIDING) if in_courses else leg.blank
        return replace(leg, cuts=cuts, blank=blank)

    def _corner_boards(self) -> Iterable[Part]:
        board = self.entry.corner_board
        if board is None:
            return ()
        clear, start = corner_clear(self.clear, self.entry), self.reveal.return_end + board.gap
        return self._layer(PartKind.CORNER_BOARD, clear, _board(board.thickness, board.stock), start, self.sides)

    def _furring(self) -> Iterable[Part]:
        behind, furring, strips = self.entry.thickness, self.entry.furring, self.reveal.strips
        clear = replace(
            self.clear, left=self.clear.left - behind, right=self.clear.right + behind, top=self.clear.top + behind
        )
        jamb = _board(furring.thickness, furring.stock)
        for number, (start, end) in enumerate(strips, start=1):
            for part in self._layer(PartKind.RETURN_FURRING, clear, jamb, start, planned_sides(end)):
                yield replace(part, member=number, members=len(strips))


def _miter(leg: Part) -> Cut:
    """Return the miter along the outer edge, the face long; where the wall is out of parallel it follows the taper."""
    if leg.taper is None:
        return EdgeBevel(edge=Edge.FAR, angle_deg=HALF_RIGHT_DEG, face_short=False)
    start, finish = (0.0, leg.taper.start_width, 0.0), (leg.length, leg.taper.finish_width, 0.0)
    plane = Plane(start=start, finish=finish, way=(0.0, -1.0, 1.0), keep=(leg.length / 2, 0.0, 0.0))
    return PlaneCut(at=Edge.FAR, flat=plane)


def _board(thickness: float, stock: str) -> ExteriorJambEntry:
    return ExteriorJambEntry.model_construct(thickness=thickness, stock=stock, curved=None)
