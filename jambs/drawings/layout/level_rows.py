"""Rows of dimensions above and below a view.

Texts stand on the dimension line, the name of a single dimension behind its value, else over it, else both past the
end of the row: the two are never parted. Of a row of several, one that is wider than its interval is pulled out into a
lane of its own past the line. Of two pulled-out texts the left one lies further out, so a leader never meets a text:
every text runs to the right of its own leader, and leaders further right end before they reach it.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from jambs.drawings.elements.boxes import Segment
from jambs.drawings.elements.lettering import text_width
from jambs.drawings.elements.paper import DESCENDER, Sizes
from jambs.drawings.elements.placed import Align, Dimension, Head, Leader, Lettering
from jambs.drawings.elements.view import Chain, Ink
from jambs.drawings.layout.along_rows import BETWEEN
from jambs.drawings.layout.chains import LengthTexts, Rows, Span, fresh_ends, spans_of, stops
from jambs.drawings.layout.spacing import slot
from jambs.geometry import Point

CLEAR_FOOT = 0.06
"""How far the leader of a text keeps from a line that runs as it does [in on paper]."""


def level_rows(chains: Sequence[Chain], *, base: float, outward: int, sizes: Sizes, texts_of: LengthTexts) -> Rows:
    """Lay rows above (``outward`` 1) or below (-1) a view, the first nearest to ``base``."""
    dimensions: list[Dimension] = []
    texts: list[Lettering] = []
    reach = base
    for number, chain in enumerate(chains):
        outer = stops(chains[number + 1 :], 0)
        row = _LevelRow(chain=chain, start=reach, outward=outward, sizes=sizes, texts_of=texts_of, outer=outer)
        dimensions += row.dimensions()
        texts += row.end_texts()
        reach = row.reach
    return Rows(dimensions=tuple(dimensions), texts=tuple(texts), reach=reach)


class _LevelRow:
    """One row above or below."""

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
        self.spans = spans_of(chain, axis=0, texts_of=texts_of)
        self.lift = sizes.gap + (0.5 + DESCENDER) * sizes.text
        above = self.lift + sizes.text * 0.55
        self.line = start + sizes.row if outward > 0 else start - sizes.row - above
        self.out_step = self.lift if outward > 0 else sizes.overshoot + 1.6 * sizes.gap + sizes.text * 0.55
        self.feet = [self._foot(span) for span in self.spans]
        self.lanes: list[int] = [0] * len(self.spans)
        self.places: list[float] = [0.0] * len(self.spans)
        self.name_at = self._named_along()
        self.name_over = None if self.name_at is not None else self._named_over()
        if self.name_over is not None and outward < 0:
            self.line -= sizes.pitch
        if self._has_words_on_line and outward > 0:
            self.line += sizes.gap / 2  # they reach down past it
        self.is_past_end = (
            self.name_at is None and self.name_over is None and bool(chain.after) and len(self.spans) == 1
        )
        if self.is_past_end:
            self.places[0] = self._past(self.spans[0].high, 1) + self._width(self.spans[0]) / 2
        elif self.name_at is None:
            self._place()

    def _width(self, span: Span) -> float:
        return self._text(span, (0.0, 0.0)).width

    def _text(self, span: Span, at: Point) -> Lettering:
        return Lettering(lines=(span.text.words,), at=at, height=self.sizes.text, ink=Ink.DIMENSION)

    def _named_along(self) -> float | None:
        """Put the value of a single dimension on its line with its name behind it, and return the middle of that.

        None where there is no name or no room for both: the name then stands past the end of the row.
        """
        if not self.chain.after or len(self.spans) != 1:
            return None
        (span,) = self.spans
        value, name = self._width(span), text_width(self.chain.after, height=self.sizes.text)
        whole = value + BETWEEN * self.sizes.gap + name
        middle = self._slot(span, whole / 2)
        if middle is None:
            return None
        self.places[0] = middle - (whole - value) / 2
        return middle + (whole - name) / 2

    def _named_over(self) -> float | None:
        """Return the middle of the name of a single dimension that stands over its value.

        None where there is no name, or either has no room within the interval.
        """
        if not self.chain.after or len(self.spans) != 1:
            return None
        (span,) = self.spans
        if self._slot(span, self._width(span) / 2) is None:
            return None
        return self._slot(span, text_width(self.chain.after, height=self.sizes.text) / 2)

    def _slot(self, span: Span, half: float) -> float | None:
        """Return the middle of texts on the line of an interval, clear of its ticks and of lines further out."""
        clear = self.sizes.overshoot * 1.2  # of the tick, which rises to the right
        return slot(
            span.middle,
            half=half,
            low=span.low + clear,
            high=span.high - clear / 3,
            lines=self.outer,
            clear=self.sizes.gap,
        )

    def _place(self) -> None:
        for index in reversed(range(len(self.spans))):
            span = self.spans[index]
            half = self._width(span) / 2
            inside = self._slot(span, half)
            if inside is None:
                self._pull_out(index, half)
            else:
                self.places[index] = inside

    def _pull_out(self, index: int, half: float) -> None:
        """Put one text into a lane past the line, to the right of its leader and past all leaders it covers."""
        start = self.feet[index]
        low = start + 2 * self.sizes.gap
        place = slot(low + half, half=half, low=low, high=float("inf"), lines=self.outer, clear=self.sizes.gap)
        self.places[index] = low + half if place is None else place
        end = self.places[index] + half + self.sizes.gap
        covered = [
            self.lanes[other]
            for other in range(index + 1, len(self.spans))
            if self.lanes[other] and self.feet[other] <= end
        ]
        self.lanes[index] = 1 + max(covered, default=0)

    def _lane(self, lane: int) -> float:
        """Return the height of the middle of a lane's texts."""
        if lane == 0:
            return self.line + self.lift
        steps = lane if self.outward > 0 else lane - 1
        return self.line + self.outward * (self.out_step + steps * self.sizes.lane)

    def _past(self, edge: float, way: int) -> float:
        """Return where words past an end of the row begin, past everything that crosses its level."""
        return max([edge * way, *(line * way for line in self.outer)]) * way + way * 3 * self.sizes.gap

    @property
    def _over(self) -> float:
        """The middle of a name over its value."""
        return self._lane(0) + self.sizes.pitch

    def dimensions(self) -> list[Dimension]:
        return [self._dimension(index, span) for index, span in enumerate(self.spans)]

    def _dimension(self, index: int, span: Span) -> Dimension:
        lane = self.lanes[index]
        text = self._text(span, (self.places[index], self.line if self.is_past_end else self._lane(lane)))
        return Dimension(
            start=span.interval.start,
            finish=span.interval.finish,
            is_vertical=False,
            line=((span.low, self.line), (span.high, self.line)),
            extensions=tuple(self._extension(point) for point in fresh_ends(self.spans, index)),
            text=text,
            leader=self._leader(index, text) if lane or self.is_past_end else None,
            value=span.high - span.low,
            is_nearest=span.text.is_nearest,
            is_rest=span.interval.is_rest,
        )

    def _extension(self, point: Point) -> Segment:
        x, y = point
        return (
            (x, y + self.outward * self.sizes.offset),
            (x, self.line + self.outward * self.sizes.overshoot),
        )

    def _foot(self, span: Span) -> float:
        """Return where the leader of a pulled-out text meets its interval.

        At its middle; where a line from a row further out runs there, midway to the next such line or the end.
        """
        near = CLEAR_FOOT * self.sizes.factor
        if all(abs(line - span.middle) >= near for line in self.outer):
            return span.middle
        stops = [span.low, *(line for line in self.outer if span.low < line < span.high), span.high]
        low, high = max(pairwise(stops), key=lambda pair: pair[1] - pair[0])
        return (low + high) / 2

    def _leader(self, index: int, text: Lettering) -> Leader:
        end = (text.at[0] - text.width / 2 - self.sizes.gap, text.at[1])
        foot = self.feet[index]
        past_end = (end, (self.spans[index].high, self.line))
        points = past_end if self.is_past_end else (end, (foot, text.at[1]), (foot, self.line))
        return Leader(points=points, head=Head.NONE, ink=Ink.DIMENSION)

    def end_texts(self) -> list[Lettering]:
        """Place the words before and after the row, past everything that crosses its level, or a name on its line."""
        texts = []
        after = self.chain.after
        middle = self.name_at if self.name_at is not None else self.name_over
        if middle is not None:
            at = (middle, self._lane(0) if self.name_over is None else self._over)
            texts.append(Lettering(lines=(after,), at=at, height=self.sizes.text, ink=Ink.NOTE))
            after = ""
        for words, align, edge, way in (
            (self.chain.before, Align.RIGHT, self.spans[0].low, -1),
            (after, Align.LEFT, self.spans[-1].high, 1),
        ):
            if words:
                at = (self._past(edge, way), self.line)
                if self.is_past_end and way > 0:
                    at = (at[0] + self._width(self.spans[0]) + BETWEEN * self.sizes.gap, self.line)
                texts.append(Lettering(lines=(words,), at=at, height=self.sizes.text, align=align, ink=Ink.NOTE))
        return texts

    @property
    def _has_words_on_line(self) -> bool:
        """Say whether words stand past an end of the row."""
        is_named = self.name_at is not None or self.name_over is not None
        return bool(self.chain.before) or (bool(self.chain.after) and not is_named)

    @property
    def reach(self) -> float:
        """How far out the row's texts and lines reach."""
        sizes = self.sizes
        if self.name_over is not None and self.outward > 0:
            return self._over + 0.6 * sizes.text
        last = self._lane(max(self.lanes)) if max(self.lanes) or self.outward > 0 else self.line
        beyond = 0.6 * sizes.text if self.outward > 0 else (0.5 + DESCENDER) * sizes.text
        if self.outward < 0 and not max(self.lanes) and not self._has_words_on_line:
            beyond = 0.0  # its texts stand over the line, nearer to the view
        return last + self.outward * max(beyond, sizes.overshoot)
