"""Rows of dimensions beside a view: where lines and texts go so that nothing touches.

Left and right, texts read level and stand beside the line; those taller than their interval go into one column further
out, spread evenly in their order, so their leaders do not cross. Extension lines of rows further out run through nearer
rows: texts keep clear of them.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from jambs.drawings.elements.boxes import Segment
from jambs.drawings.elements.paper import DESCENDER, Sizes
from jambs.drawings.elements.placed import Align, Dimension, Head, Leader, Lettering
from jambs.drawings.elements.view import Chain, Ink, Interval
from jambs.drawings.layout.along_rows import along_row
from jambs.drawings.layout.spacing import slot, spread_clear
from jambs.geometry import Point
from jambs.length import ROUND_OFF


@dataclass(frozen=True, slots=True)
class LengthText:
    """A length as it is printed; ``is_nearest``: on the shop's grid, and not as it was stated, which may be finer."""

    words: str
    is_nearest: bool = True


LengthTexts = Callable[[float, bool], LengthText]
"""How a length [in] is printed, one of a chain that states it or another."""


@dataclass(frozen=True, slots=True)
class Span:
    """An interval along the axis of its chain: low and high end, the interval it came from, and its text."""

    low: float
    high: float
    interval: Interval
    text: LengthText

    @property
    def middle(self) -> float:
        """Half-way."""
        return (self.low + self.high) / 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Rows:
    """The rows of one side: dimensions, other texts, and how far out they reach."""

    dimensions: tuple[Dimension, ...] = ()
    texts: tuple[Lettering, ...] = ()
    reach: float


def spans_of(chain: Chain, *, axis: int, texts_of: LengthTexts) -> list[Span]:
    """Return the intervals of a chain from low to high along axis 0 (x) or 1 (y).

    Raises:
        ValueError: two intervals of the row lie over each other.
    """
    ordered = []
    for interval in chain.intervals:
        low, high = sorted((interval.start, interval.finish), key=lambda point: point[axis])
        ordered.append(replace(interval, start=low, finish=high))
    ordered.sort(key=lambda one: (one.start[axis], one.finish[axis]))
    for before, one in pairwise(ordered):
        if one.start[axis] < before.finish[axis] - ROUND_OFF:
            raise ValueError(f"two dimensions of one row overlap at {one.start[axis]:g}; put them into two rows")
    return [_span(one, axis, chain.is_stated, texts_of) for one in ordered]


def _span(one: Interval, axis: int, is_stated: bool, texts_of: LengthTexts) -> Span:
    low, high = one.start[axis], one.finish[axis]
    text = texts_of(high - low, is_stated)
    return Span(low, high, one, replace(text, words=f"({text.words})") if one.is_rest else text)


def stops(chains: Sequence[Chain], axis: int) -> list[float]:
    """Return where chains begin and end dimensions along an axis."""
    return sorted(
        {point[axis] for chain in chains for interval in chain.intervals for point in (interval.start, interval.finish)}
    )


def fresh_ends(spans: Sequence[Span], index: int) -> list[Point]:
    """Return the ends of an interval that need an extension line: one shared with its neighbor has it already."""
    start, finish = spans[index].interval.start, spans[index].interval.finish
    is_shared = index > 0 and spans[index - 1].interval.finish == start
    return [finish] if is_shared else [start, finish]


def upright_rows(chains: Sequence[Chain], *, base: float, outward: int, sizes: Sizes, texts_of: LengthTexts) -> Rows:
    """Lay rows right (``outward`` 1) or left (-1) of a view, the first nearest to ``base``.

    Texts read level; those of a named dimension run along its line where they fit.
    """
    dimensions: list[Dimension] = []
    texts: list[Lettering] = []
    reach = base

    def words_of(length: float, is_stated: bool) -> str:
        return texts_of(length, is_stated).words

    for number, chain in enumerate(chains):
        outer = stops(chains[number + 1 :], 1)
        along = along_row(chain, start=reach, outward=outward, sizes=sizes, words_of=words_of, outer=outer)
        if along:
            text = texts_of(along.dimension.value, chain.is_stated)
            dimensions.append(replace(along.dimension, is_nearest=text.is_nearest))
            texts.append(along.name)
            reach = along.reach
            continue
        row = _UprightRow(chain=chain, start=reach, outward=outward, sizes=sizes, texts_of=texts_of, outer=outer)
        dimensions += row.dimensions()
        texts += row.names()
        reach = row.reach
    return Rows(dimensions=tuple(dimensions), texts=tuple(texts), reach=reach)


class _UprightRow:
    """One row at the left or the right."""

    def __init__(
        self,
        *,
        chain: Chain,
        start: float,
        outward: int,
        sizes: Sizes,
        texts_of: LengthTexts,
        outer: Sequence[float],
    ) -> None:
        self.chain, self.outward, self.sizes, self.outer = chain, outward, sizes, outer
        self.spans = spans_of(chain, axis=1, texts_of=texts_of)
        self.line = start + outward * sizes.row
        self.low, self.high = (0.5 + DESCENDER) * sizes.text, 0.55 * sizes.text
        self.beside = [self._beside(span) for span in self.spans]
        self.near = self.line + outward * 2 * sizes.gap
        widths = [self._width(span) for span, place in zip(self.spans, self.beside, strict=True) if place is not None]
        self.first_end = self.near + outward * (max(widths) + sizes.gap) if widths else self.near
        self.column = self.first_end + outward * 3 * sizes.gap
        self.pulled = self._pulled()

    def _width(self, span: Span) -> float:
        return self._text(span, (0.0, 0.0)).width

    def _text(self, span: Span, at: Point) -> Lettering:
        align = Align.LEFT if self.outward > 0 else Align.RIGHT
        return Lettering(lines=(span.text.words,), at=at, height=self.sizes.text, align=align, ink=Ink.DIMENSION)

    def _beside(self, span: Span) -> float | None:
        """Return the level of a text beside its interval, or None where it has to be pulled out."""
        clear = self.sizes.gap / 2
        return slot(
            span.middle,
            half=self.low,
            low=span.low + clear,
            high=span.high - clear,
            lines=self.outer,
            clear=self.sizes.gap,
        )

    def _pulled(self) -> dict[int, float]:
        pulled = [index for index, place in enumerate(self.beside) if place is None]
        levels = spread_clear(
            [self.spans[index].middle for index in pulled],
            pitch=self.sizes.pitch,
            half=self.low,
            lines=self.outer,
            clear=self.sizes.gap,
        )
        return dict(zip(pulled, levels, strict=True))

    def dimensions(self) -> list[Dimension]:
        return [self._dimension(index, span) for index, span in enumerate(self.spans)]

    def names(self) -> list[Lettering]:
        """Write the names of dimensions past their texts, that of the row past the last one's."""
        texts = [one.text for one in self.dimensions()]
        named = [(text, span.interval.name) for text, span in zip(texts, self.spans, strict=True)]
        return [self._name(text, words) for text, words in (*named, (texts[-1], self.chain.after)) if words]

    def _name(self, text: Lettering, words: str) -> Lettering:
        at = (text.at[0] + self.outward * (text.width + 2 * self.sizes.gap), text.at[1])
        return Lettering(lines=(words,), at=at, height=self.sizes.text, align=text.align, ink=Ink.NOTE)

    def _dimension(self, index: int, span: Span) -> Dimension:
        level = self.beside[index]
        is_beside = level is not None
        at = (self.near, level) if level is not None else (self.column, self.pulled[index])
        return Dimension(
            start=span.interval.start,
            finish=span.interval.finish,
            is_vertical=True,
            line=((self.line, span.low), (self.line, span.high)),
            extensions=tuple(self._extension(point) for point in fresh_ends(self.spans, index)),
            text=self._text(span, at),
            leader=None if is_beside else self._leader(span.middle, at[1]),
            value=span.high - span.low,
            is_nearest=span.text.is_nearest,
            is_rest=span.interval.is_rest,
        )

    def _extension(self, point: Point) -> Segment:
        x, y = point
        return (
            (x + self.outward * self.sizes.offset, y),
            (self.line + self.outward * self.sizes.overshoot, y),
        )

    def _leader(self, middle: float, level: float) -> Leader:
        end = (self.column - self.outward * self.sizes.gap, level)
        points = (end, (self.first_end, middle), (self.line, middle))
        return Leader(points=points, head=Head.NONE, ink=Ink.DIMENSION)

    @property
    def reach(self) -> float:
        """How far out the row's texts reach."""
        far = self.first_end
        if self.pulled:
            far = self.column + self.outward * max(self._width(self.spans[index]) for index in self.pulled)
        ends = [text.at[0] + self.outward * text.width for text in self.names()]
        return max([far, *ends], key=lambda end: end * self.outward)
