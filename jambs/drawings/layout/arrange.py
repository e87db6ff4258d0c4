"""Arrange a view at a scale: rows of dimensions, columns of call-outs, stacks, marks, title; nothing touches.

Beside the view a corridor is kept for leaders and extension lines. Left and right of it stand rows of dimensions, and
above or below their levels the call-outs. Level rows follow as near to the view as those leave room, the stack past all
of that, then the title.
A mark that does not fit inside its shape, or that a leader would cross, becomes a call-out.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from jambs.drawings.elements.boxes import Box, Segment, boxes_joined, crossing
from jambs.drawings.elements.lettering import text_width, wrapped
from jambs.drawings.elements.paper import BOLD_IS_WIDER, DESCENDER, JOINED, TITLE_HEIGHT, Scale, Sizes, scale_line
from jambs.drawings.elements.placed import (
    Align,
    Dimension,
    Leader,
    Lettering,
    PlacedTag,
    PlacedView,
    RadialDimension,
    Rule,
)
from jambs.drawings.elements.view import CallOut, Chain, Ink, View, ViewSide
from jambs.drawings.layout.callouts import Column, PlacedCallout, column_call_outs, stack_call_outs
from jambs.drawings.layout.chains import LengthText, LengthTexts, Rows, upright_rows
from jambs.drawings.layout.level_rows import level_rows
from jambs.drawings.layout.marks import broken_for, place_marks
from jambs.drawings.layout.tags import place_tags
from jambs.length import FINE, Grid, Units

NEARER = (0.0, 0.25, 0.5, 0.75)
"""Where level rows are tried, as shares of the way from the view past everything that stands beside it."""
TITLE_ROOM = 3.8
"""Width on paper at which a title is broken, where the view is no wider [in]."""


def dimension_texts(grid: Grid, *, with_unit: bool = True) -> LengthTexts:
    """Return how a job prints the text of a dimension: ``5 1/2"``, ``139.7 mm``; inches have their mark."""
    mark = with_unit or grid.units is Units.INCH

    def texts_of(value: float, is_stated: bool) -> LengthText:
        said, on_grid = (one.text(value, mark=mark) for one in (grid.fine if is_stated else grid, grid))
        return LengthText(said, is_nearest=said == on_grid)

    return texts_of


RADIUS = "R "
"""Before the value of a radius (ISO 129-1, from memory)."""


def _with_radius(call_out: CallOut, texts_of: LengthTexts) -> CallOut:
    """Write the radius of an arc that a call-out dimensions."""
    if call_out.arc is None:
        return call_out
    text = texts_of(call_out.arc.radius, call_out.arc.is_stated)
    arc = replace(call_out.arc, is_stated=not text.is_nearest)
    return replace(call_out, lines=(f"{RADIUS}{text.words}",), arc=arc)


def arrange(view: View, *, scale: Scale, units: Units, with_unit: bool = True) -> PlacedView:
    """Put every text and line of a view in its place at one scale.

    ``with_unit``: dimensions say their unit; where a title block says it for all of them they need not.
    """
    sizes = Sizes(scale.factor, scale.text)
    texts_of = dimension_texts(view.grid or FINE[units], with_unit=with_unit)
    view = replace(view, call_outs=tuple(_with_radius(one, texts_of) for one in view.call_outs))
    ways = [_arrange_round(view, away_from, sizes=sizes, texts_of=texts_of) for away_from in _ways(view)]
    sides, level = min(ways, key=lambda parts: _height(view, *parts)) if len(ways) > 1 else ways[0]
    dimensions = (*sides.dimensions, *level.dimensions)
    texts = (*sides.texts, *level.texts)
    leaders = (*sides.leaders, *level.leaders)
    words = [*(one.text.box for one in dimensions), *(text.box for text in texts)]
    lines = [line for one in dimensions for line in one.segments]
    lines += [line for one in leaders for line in one.segments]
    tags = place_tags(view.tags, view.shapes, boxes=[view.core, *words], lines=lines, sizes=sizes)
    body = boxes_joined([view.core, *words, *map(_segment_box, lines), *(tag.box for tag in tags)])
    number_at, title, rules = _title(view, scale=scale, body=body, sizes=sizes)
    circles = [number_at.box] if number_at else []
    box = boxes_joined([body, *circles, *(text.box for text in title)]).grown(sizes.gap)
    return PlacedView(
        name=view.name,
        title=view.title,
        kind=view.kind,
        scale=scale,
        shapes=broken_for(view.shapes, [*(mark.box for mark in sides.marks), *(tag.box for tag in tags)]),
        fills=view.fills,
        dimensions=dimensions,
        radials=sides.radials,
        texts=(*(text for text in texts if text not in [one.text for one in sides.radials]), *title),
        leaders=tuple(leader for leader in leaders if leader not in [one.leader for one in sides.radials]),
        rules=rules,
        tags=tags,
        number_at=number_at,
        box=box,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Part:
    """Some of what a view holds, in its place; texts and leaders of ``radials`` are among all."""

    dimensions: tuple[Dimension, ...] = ()
    texts: tuple[Lettering, ...] = ()
    leaders: tuple[Leader, ...] = ()
    radials: tuple[RadialDimension, ...] = ()
    marks: tuple[Lettering, ...] = ()


def _boxes(dimensions: Sequence[Dimension], texts: Sequence[Lettering], leaders: Sequence[Leader]) -> list[Box]:
    """Return the boxes of texts and of the ends of lines."""
    lines = [segment for one in dimensions for segment in one.segments]
    lines += [segment for leader in leaders for segment in leader.segments]
    boxes = [one.text.box for one in dimensions] + [text.box for text in texts]
    return boxes + [_segment_box(line) for line in lines]


def _arrange_round(
    view: View, away_from: ViewSide | None, *, sizes: Sizes, texts_of: LengthTexts
) -> tuple[_Part, _Part]:
    """Arrange what stands beside a view and what is above and below it."""
    sides = _arrange_sides(view, away_from, sizes=sizes, texts_of=texts_of)
    return sides, _arrange_level(view, sides, sizes=sizes, texts_of=texts_of)


def _height(view: View, *parts: _Part) -> float:
    beside = [box for one in parts for box in _boxes(one.dimensions, one.texts, one.leaders)]
    return boxes_joined([view.core, *beside]).height


def _ways(view: View) -> tuple[ViewSide | None, ...]:
    """Return the sides that call-outs are tried to keep away from.

    From names of layers they have to; level rows at one side alone come nearer to the view where they do.
    """
    if view.stack:
        return (view.stack.side,)
    level = {chain.side for chain in view.chains if chain.intervals} & {ViewSide.TOP, ViewSide.BOTTOM}
    is_beside = any(chain.side not in (ViewSide.TOP, ViewSide.BOTTOM) for chain in view.chains if chain.intervals)
    return (None, level.pop()) if len(level) == 1 and is_beside and view.call_outs else (None,)


def _segment_box(segment: Segment) -> Box:
    (x0, y0), (x1, y1) = segment
    left, right = (x0, x1) if x0 < x1 else (x1, x0)
    low, high = (y0, y1) if y0 < y1 else (y1, y0)
    return Box(left, low, right, high)


def _chains(view: View, side: ViewSide) -> list[Chain]:
    return [chain for chain in view.chains if chain.side is side and chain.intervals]


def _arrange_sides(view: View, away_from: ViewSide | None, *, sizes: Sizes, texts_of: LengthTexts) -> _Part:
    core = view.core
    left = upright_rows(
        _chains(view, ViewSide.LEFT),
        base=core.left - sizes.corridor,
        outward=-1,
        sizes=sizes,
        texts_of=texts_of,
    )
    right = upright_rows(
        _chains(view, ViewSide.RIGHT),
        base=core.right + sizes.corridor,
        outward=1,
        sizes=sizes,
        texts_of=texts_of,
    )
    inside = [
        extension
        for chain in view.chains
        for interval in chain.intervals
        for extension in _runs(chain.side, core, interval.start, interval.finish)
    ]
    return _marks_and_columns(view, left, right, away_from, inside=inside, sizes=sizes)


def _runs(side: ViewSide, core: Box, *points: tuple[float, float]) -> list[Segment]:
    """Return the way of extension lines across the shapes."""
    ends = {ViewSide.LEFT: core.left, ViewSide.RIGHT: core.right, ViewSide.BOTTOM: core.bottom, ViewSide.TOP: core.top}
    if side in (ViewSide.LEFT, ViewSide.RIGHT):
        return [(point, (ends[side], point[1])) for point in points]
    return [(point, (point[0], ends[side])) for point in points]


def _marks_and_columns(
    view: View, left: Rows, right: Rows, away_from: ViewSide | None, *, inside: list[Segment], sizes: Sizes
) -> _Part:
    """Place marks inside the view and the rest beside it; a mark in the way of a leader goes out too."""
    placed = place_marks(view, lines=inside, sizes=sizes)
    while True:
        out = [mark.call_out for number, mark in enumerate(view.marks) if number not in placed]
        columns = _columns(view, [*view.call_outs, *out], left, right, away_from, sizes)
        lines = [line for column in columns for leader in column.leaders for line in leader.segments]
        hit = [number for number, one in placed.items() if any(one.text.box.is_hit_by(line) for line in lines)]
        if not hit:
            break
        for number in hit:
            del placed[number]
    pointers = [one.leader for one in placed.values() if one.leader]
    return _Part(
        dimensions=(*left.dimensions, *right.dimensions),
        texts=(
            *left.texts,
            *right.texts,
            *(one.text for one in placed.values()),
            *(text for column in columns for text in column.texts),
        ),
        leaders=(*pointers, *(leader for column in columns for leader in column.leaders)),
        radials=tuple(one for column in columns for one in column.radials),
        marks=tuple(one.text for one in placed.values()),
    )


def _columns(
    view: View,
    call_outs: Sequence[CallOut],
    left: Rows,
    right: Rows,
    away_from: ViewSide | None,
    sizes: Sizes,
) -> tuple[PlacedCallout, PlacedCallout]:
    core = view.core
    middle = core.center[0]
    on_left = [one for one in call_outs if _is_left(one, middle)]
    on_right = [one for one in call_outs if not _is_left(one, middle)]
    near = core.left - 0.5 * sizes.corridor, core.right + 0.5 * sizes.corridor
    return (
        column_call_outs(
            on_left, column=_column(near[0], -1, view, left, away_from), sizes=sizes, widest=view.widest_words
        ),
        column_call_outs(
            on_right, column=_column(near[1], 1, view, right, away_from), sizes=sizes, widest=view.widest_words
        ),
    )


def _is_left(call_out: CallOut, middle: float) -> bool:
    return call_out.side is ViewSide.LEFT if call_out.side else call_out.target[0] < middle


def _column(edge: float, outward: int, view: View, rows: Rows, away_from: ViewSide | None) -> Column:
    core, taken = view.core, None
    if rows.dimensions:
        boxes = _boxes(rows.dimensions, (), ())
        taken = (min(box.bottom for box in boxes), max(box.top for box in boxes))
    return Column(
        edge=edge,
        outward=outward,
        low=core.bottom,
        high=core.top,
        taken=taken,
        away_from=away_from,
        has_names=view.stack is not None,
    )


def _arrange_level(view: View, sides: _Part, *, sizes: Sizes, texts_of: LengthTexts) -> _Part:
    """Lay level rows clear of everything that stands beside the view, and the stack past it."""
    core = view.core
    beside = boxes_joined([core, *_boxes(sides.dimensions, sides.texts, sides.leaders)])
    space = 0.5 * sizes.corridor
    bases = {ViewSide.TOP: (beside.top + space, 1), ViewSide.BOTTOM: (beside.bottom - space, -1)}
    dimensions: list[Dimension] = []
    texts: list[Lettering] = []
    leaders: list[Leader] = []
    for side, (base, outward) in bases.items():
        start = (core.top if outward > 0 else core.bottom) + outward * space
        chains = _chains(view, side)
        rows = _rows_clear(chains, (start, base), outward, sides, sizes=sizes, texts_of=texts_of)
        dimensions += rows.dimensions
        texts += rows.texts
        if view.stack and view.stack.side is side:
            if rows.dimensions:
                raise ValueError(f"view {view.name!r}: a stack and level dimensions cannot share the {side} side")
            end = core.top if side is ViewSide.TOP else core.bottom
            stacked = stack_call_outs(view.stack, wall_end=end, base=base, sizes=sizes, widest=view.widest_names)
            texts += stacked.texts
            leaders += stacked.leaders
    return _Part(dimensions=tuple(dimensions), texts=tuple(texts), leaders=tuple(leaders))


def _rows_clear(
    chains: Sequence[Chain],
    ends: tuple[float, float],
    outward: int,
    sides: _Part,
    *,
    sizes: Sizes,
    texts_of: LengthTexts,
) -> Rows:
    """Lay level rows between the view and where they pass everything beside it, as near as nothing touches."""
    near, far = ends
    lines = [line for one in sides.dimensions for line in one.segments]
    lines += [line for one in sides.leaders for line in one.segments]
    lines = [line for line in lines if any(y * outward > near * outward for _, y in line)]
    boxes = [text.box for text in (*(one.text for one in sides.dimensions), *sides.texts)]
    boxes = [box for box in boxes if max(box.bottom * outward, box.top * outward) > near * outward]
    for share in NEARER if chains and (lines or boxes) else ():
        base = near + share * (far - near)
        rows = level_rows(chains, base=base, outward=outward, sizes=sizes, texts_of=texts_of)
        if _is_clear(rows, lines, boxes, sizes):
            return rows
    return level_rows(chains, base=far, outward=outward, sizes=sizes, texts_of=texts_of)


def _is_clear(rows: Rows, lines: Sequence[Segment], boxes: Sequence[Box], sizes: Sizes) -> bool:
    """Say whether rows touch no texts and no lines of what else is there.

    Their extension lines run as far at least wherever the rows lie farther out.
    """
    texts = [text.box.grown(sizes.gap) for text in (*(one.text for one in rows.dimensions), *rows.texts)]
    own = [one.line for one in rows.dimensions]
    own += [line for one in rows.dimensions if one.leader for line in one.leader.segments]
    return not (
        any(text.overlaps(box) for text in texts for box in boxes)
        or any(text.is_hit_by(line) for text in texts for line in lines)
        or any(box.grown(sizes.gap).is_hit_by(line) for box in boxes for line in own)
        or any(crossing(one, two) for one in own for two in lines)
    )


def _title(
    view: View, *, scale: Scale, body: Box, sizes: Sizes
) -> tuple[PlacedTag | None, tuple[Lettering, ...], tuple[Rule, ...]]:
    """Place the title, where there is one, under the view with a rule below it, then the scale and the remarks.

    Before it stands the circle with the number of the view, where it has one.
    """
    if not view.title:
        return None, (), ()
    height = TITLE_HEIGHT * sizes.factor
    room = max(TITLE_ROOM * sizes.factor, body.width)
    lines = tuple(wrapped(view.title, width=room / BOLD_IS_WIDER, height=height))
    first = body.left
    left = first + (2 * sizes.tag + 2 * sizes.gap if view.number else 0.0)
    title = Lettering(lines=lines, at=(left, 0.0), height=height, align=Align.LEFT, bold=True, ink=Ink.TITLE)
    title_y = body.bottom - 0.08 * sizes.factor - title.tall / 2
    title = replace(title, at=(left, title_y))
    rule_y = title_y - title.tall / 2 - height * DESCENDER - 0.02 * sizes.factor
    wide = max(sizes.remark, body.right - left)
    remarks = _short_joined((scale_line(scale), *view.remarks), width=wide, height=sizes.text)
    below = tuple(line for one in remarks for line in wrapped(one, width=wide, height=sizes.text))
    small = Lettering(lines=below, at=(left, 0.0), height=sizes.text, align=Align.LEFT, ink=Ink.NOTE)
    small_y = rule_y - sizes.gap - 0.05 * sizes.text - small.tall / 2
    small = Lettering(lines=below, at=(left, small_y), height=sizes.text, align=Align.LEFT, ink=Ink.NOTE)
    rule = Rule(segment=((left, rule_y), (left + max(title.width, small.width), rule_y)))
    middle = (first + sizes.tag, min(rule_y, body.bottom - sizes.gap - sizes.tag))
    circle = PlacedTag(of=view.name, center=middle, radius=sizes.tag, line=(middle, middle))
    return circle if view.number else None, (title, small), (rule,)


def _short_joined(remarks: Sequence[str], *, width: float, height: float) -> list[str]:
    """Write remarks that follow each other into one line where they fit it; whole sentences keep lines of their own."""
    lines: list[str] = []
    for one in remarks:
        both = f"{lines[-1]}{JOINED}{one}" if lines else one
        if lines and not lines[-1].endswith(".") and text_width(both, height=height) <= width:
            lines[-1] = both
        else:
            lines.append(one)
    return lines
