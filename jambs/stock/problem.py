"""What is to be cut and what it can be cut from: pieces, stock, saw settings.

All sizes are whole numbers of one unit (1/64 in or 0.1 mm), all prices whole cents.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from jambs.findings import FindingsError, Subject


class LotKind(StrEnum):
    """How boards of one material are cut: lengths are only crosscut, boards and sheets are ripped first."""

    LENGTHS = "lengths"
    BOARDS = "boards"
    SHEETS = "sheets"


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """A part to cut: rough width across the grain, rough length along it.

    A piece with a mitered or beveled end (`is_mitered`) is as long as its long point; `miter_allowance` is what its
    slanted cuts take beyond a square kerf. A tapered piece is as wide as its wide end. A glued part is
    given as its strips. ``slants``: how far the short edge stands in from the long point at the start and at the
    finish, positive where the near edge is the long one; given where pieces may lie head to tail. ``ends``: widths
    at the start and at the finish of one that tapers and may be ripped beside another; (0, 0) of all others.
    """

    mark: str
    length: int
    width: int = 0
    count: int = 1
    is_mitered: bool = False
    miter_allowance: int = 0
    slants: tuple[int, int] = (0, 0)
    ends: tuple[int, int] = (0, 0)

    @property
    def sawn_length(self) -> int:
        """Length taken from the strip, without the square kerf."""
        return self.length + self.miter_allowance

    def laid(self, *, is_turned: bool) -> tuple[int, int]:
        """Slants at the start and at the finish as it lies: turned end for end, its edges change places too."""
        start, finish = self.slants
        return (-finish, -start) if is_turned else (start, finish)


@dataclass(frozen=True, slots=True, kw_only=True)
class Pair:
    """Two pieces head to tail in a strip: one slanted cut is the finish of the first and the start of the second.

    ``lap``: start of the second → finish of the first, both at their long points. Either may be turned end for end.
    ``across``: of two that taper the width of the strip in which they lie side by side, their slanted edges toward each
    other, else 0; the second is then turned end for end, or over about its length (``is_second_over``).
    """

    first: str
    second: str
    lap: int
    is_first_turned: bool = False
    is_second_turned: bool = False
    across: int = 0
    is_second_over: bool = False

    def ends_of_second(self, second: Piece) -> tuple[int, int]:
        """Widths of the second of two side by side at the start and at the finish of the strip."""
        start, finish = second.ends
        return (start, finish) if self.is_second_over else (finish, start)


@dataclass(frozen=True, slots=True, kw_only=True)
class StripBlank:
    """One length of a strip: a piece, or a pair of pieces head to tail; ``starts`` of its pieces from its own."""

    marks: tuple[str, ...]
    starts: tuple[int, ...]
    width: int
    sawn_length: int
    count: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Stock:
    """A board, length or sheet that can be had: actual sizes, price each, how many (None: no limit)."""

    name: str
    length: int
    price_cents: int
    width: int = 0
    supply: int | None = None
    on_hand: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class SawSettings:
    """What the saw takes: kerfs, the loss at the two edges and at each end, and its least safe strip."""

    crosscut_kerf: int
    rip_kerf: int = 0
    edge_loss: int = 0
    far_edge_loss: int = 0
    end_trim: int = 0
    least_strip: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class StockProblem:
    """One material and thickness, to be cut one way; ``pairs``: pieces that lie head to tail."""

    kind: LotKind
    pieces: tuple[Piece, ...]
    stock: tuple[Stock, ...]
    saw: SawSettings
    group: str = ""
    unit: str = "1/64 in"
    pairs: tuple[Pair, ...] = ()

    @property
    def subject(self) -> Subject:
        """The stock that findings of this problem are about."""
        return Subject.stock(self.group or "stock")

    @property
    def is_ripped(self) -> bool:
        """Whether boards are ripped into strips before they are crosscut."""
        return self.kind is not LotKind.LENGTHS

    def strip_width(self, piece: Piece) -> int:
        """Width of the strip a piece comes from; the same for all when nothing is ripped."""
        return piece.width if self.is_ripped else 0

    @property
    def blanks(self) -> tuple[StripBlank, ...]:
        """What is crosscut from the strips, in the order of the pieces."""
        known = {piece.mark: piece for piece in self.pieces}
        pairs = {pair.first: pair for pair in self.pairs}
        seconds = {pair.second for pair in self.pairs}
        return tuple(
            self._pair_blank(known, pairs[piece.mark]) if piece.mark in pairs else self._blank(piece)
            for piece in self.pieces
            if piece.mark not in seconds
        )

    def _blank(self, piece: Piece) -> StripBlank:
        return StripBlank(
            marks=(piece.mark,),
            starts=(0,),
            width=self.strip_width(piece),
            sawn_length=piece.sawn_length,
            count=piece.count,
        )

    def _pair_blank(self, known: Mapping[str, Piece], pair: Pair) -> StripBlank:
        first, second = known[pair.first], known[pair.second]
        if pair.across:
            return StripBlank(
                marks=(pair.first, pair.second),
                starts=(0, 0),
                width=pair.across,
                sawn_length=first.sawn_length,
                count=1,
            )
        start = first.length - pair.lap
        return StripBlank(
            marks=(pair.first, pair.second),
            starts=(0, start),
            width=self.strip_width(first),
            sawn_length=start + second.sawn_length,
            count=1,
        )


class StockFault(FindingsError):
    """Why nothing can be cut as asked: all faults, each with its cure."""
