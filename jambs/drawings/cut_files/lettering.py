"""Words and the grain arrow of a cut file: on the board where they can be read there, else above it; inches."""

from __future__ import annotations

from collections.abc import Sequence

from jambs.drawings.cut_files.layers import GRAIN, NOTE, CutLayer, Stroke, Words, Work
from jambs.geometry import Outline, Point
from jambs.parts.board.part import Part

LETTER = 0.85
"""Width of a letter as a share of its height, at most: words are kept within the board by it."""
LINE = 1.7
"""From one line of words to the next, in heights."""
TALLEST, LEAST = 0.3, 0.04
"""Letters on the board: the notes at their tallest, a mark at its least [in]."""
READ = 0.1
"""Notes on the board are at least so high: ISO 3098 begins little lower, at 2.5 mm and 1.8 mm (from memory) [in]."""
ABOVE = 0.2
"""Height of notes that stand above a board on which they would be lower [in]."""
MARK = 1.6
"""Height of the mark, in heights of the notes under it."""
ARROW_SHARE, ARROW_HEAD = 0.3, 0.12
"""The grain arrow: its length as a share of the board's, its head as a share of the arrow's."""
WORDS_SHARE = 0.6
"""Share of the board's length that words may take: ends are often notched or slanted."""
BAND_STEPS = 24
"""Shares of the length that are tried for words, and places at which each is held to the outline."""


def clear_band(outline: Outline, longest: int, count: int) -> tuple[float, float, float]:
    """Return where words stand tallest in an outline that bows: their share of its length, and from where to where up.

    ``longest``, ``count``: letters of the longest line, lines.
    """
    length = max(u for u, _ in outline)

    def band(share: float) -> tuple[float, float]:
        places = [length * (0.5 + share * at / BAND_STEPS) for at in range(-BAND_STEPS // 2, BAND_STEPS // 2 + 1)]
        rungs = [_rung(outline, u) for u in places]
        return max(low for low, _ in rungs), min(high for _, high in rungs)

    def letters(share: float) -> float:
        low, high = band(share)
        return min((high - low) / (LINE * (count + 4)), share * length / (longest * LETTER))

    best = max((number * WORDS_SHARE / BAND_STEPS for number in range(1, BAND_STEPS + 1)), key=letters)
    return (best, *band(best))


def _rung(outline: Outline, at: float) -> tuple[float, float]:
    """Return between what heights an outline lies at a place along it [in]."""
    edges = zip(outline, (*outline[1:], outline[0]), strict=True)
    met = [
        v0 + (v1 - v0) * (at - u0) / (u1 - u0)
        for (u0, v0), (u1, v1) in edges
        if min(u0, u1) <= at <= max(u0, u1) and u0 != u1
    ]
    return min(met), max(met)


def words_and_arrow(
    part: Part,
    lines: Sequence[str],
    middle: float,
    *,
    has_engraving_on: bool,
    across: float | None = None,
    low: float = 0.0,
    share: float = WORDS_SHARE,
) -> tuple[list[Stroke], tuple[Words, ...]]:
    """Return arrow, mark and notes, one below the other about the middle of the board; or the notes above it.

    ``low``: from the near edge to where words may begin [in]; ``share``: of the board's length that they may take.
    """
    wide = part.width if across is None else across
    length, room = part.length, 2 * min(middle, wide - middle)
    is_above = letters_high(part.mark, lines, room, share * length) < READ
    inside = () if is_above else lines
    height = max(letters_high(part.mark, inside, room, share * length), LEAST)
    pitch = LINE * height
    top = low + middle + pitch * (len(inside) + 3) / 2
    engrave = CutLayer(work=Work.ENGRAVE, is_on=has_engraving_on)
    left = length / 2 - _longest(part.mark, inside) * LETTER * height / 2
    mark = Words(layer=engrave, text=part.mark, at=(left, top - 2.5 * pitch), height=MARK * height)
    notes = [
        Words(layer=NOTE, text=line, at=(left, top - (number + 3.5) * pitch), height=height)
        for number, line in enumerate(inside)
    ]
    if is_above:
        notes = _above(
            lines, part.silhouettes.sizes.thickness if part.is_sawn_on_edge else part.silhouettes.sizes.width
        )
    return grain_arrow((length / 2, top - pitch / 2), min(ARROW_SHARE, share) * length, pitch), (mark, *notes)


def _longest(mark: str, lines: Sequence[str]) -> float:
    return max(MARK * len(mark), *(len(line) for line in lines)) if lines else MARK * len(mark)


def letters_high(mark: str, lines: Sequence[str], room: float, along: float) -> float:
    """Return how high letters are that fit ``room`` across the board under arrow and mark, and ``along`` it [in]."""
    return min(room / (LINE * (len(lines) + 4)), along / (_longest(mark, lines) * LETTER), TALLEST)


def _above(lines: Sequence[str], top: float) -> list[Words]:
    """Return notes above a board, ``top``: its upper edge [in]."""
    lowest = top + ABOVE
    return [
        Words(layer=NOTE, text=line, at=(0.0, lowest + number * LINE * ABOVE), height=ABOVE)
        for number, line in zip(reversed(range(len(lines))), lines, strict=True)
    ]


def grain_arrow(middle: Point, length: float, wide: float) -> list[Stroke]:
    """Return an arrow along the grain, pointing from the start end to the finish end."""
    (u, v), half = middle, length / 2
    head, side = min(ARROW_HEAD * length, 2 * wide), wide / 3
    tip = (u + half, v)
    return [
        Stroke(layer=GRAIN, points=((u - half, v), tip), is_closed=False),
        Stroke(layer=GRAIN, points=((tip[0] - head, v + side), tip, (tip[0] - head, v - side)), is_closed=False),
    ]
