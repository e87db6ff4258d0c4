"""Call-outs: texts beside a view with leaders that do not cross.

In a column beside the view all leaders start at one upright line, so two that cross get shorter in sum when they swap
places: swapping until none cross ends, because every swap shortens the sum.

In a stack at the end of a wall every leader goes straight out of its layer, then sideways to its text. The one
nearest to the middle goes furthest out, so it passes over the ends of those beside it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import accumulate, combinations

from jambs.drawings.elements.boxes import Segment, crossing
from jambs.drawings.elements.lettering import wrapped
from jambs.drawings.elements.paper import DESCENDER, Sizes
from jambs.drawings.elements.placed import Align, Head, Leader, Lettering, RadialDimension
from jambs.drawings.elements.view import CallOut, Ink, Stack, ViewSide
from jambs.drawings.layout.spacing import spread, spread_sizes
from jambs.geometry import Point

AIMINGS = 3
"""So often call-outs are laid out anew about the lines of radii that point at their centers."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedCallout:
    """Texts with their leaders; ``radials``: those of them that are dimensions of radii."""

    texts: tuple[Lettering, ...] = ()
    leaders: tuple[Leader, ...] = ()
    radials: tuple[RadialDimension, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """Where a column of call-outs may stand: its edge toward the view, the levels it keeps to, what it avoids.

    ``away_from``: where names of layers stand, that leaders must not meet, or rows of dimensions, which they would push
    out; None where nothing does. ``has_names``: it is the names of layers.
    """

    edge: float
    outward: int
    low: float
    high: float
    taken: tuple[float, float] | None = None
    away_from: ViewSide | None = None
    has_names: bool = False


def column_call_outs(call_outs: Sequence[CallOut], *, column: Column, sizes: Sizes, widest: float) -> PlacedCallout:
    """Place call-outs in one column beside the view, none wider than ``widest`` on paper [in]."""
    if not call_outs:
        return PlacedCallout()
    ordered, levels = _aimed([_wrapped(one, sizes, widest) for one in call_outs], column, sizes)
    edge = column.edge
    texts, leaders, radials = [], [], []
    for one, level in zip(ordered, levels, strict=True):
        start, elbow = edge + column.outward * sizes.shoulder, (edge, level)
        align = Align.LEFT if column.outward > 0 else Align.RIGHT
        at = (start + column.outward * sizes.gap, level)
        ink = Ink.DIMENSION if one.arc else Ink.NOTE
        texts.append(Lettering(lines=one.lines, at=at, height=sizes.text, align=align, ink=ink))
        head = Head.ARROW if one.on_edge else Head.DOT
        leaders.append(Leader(points=((start, level), elbow, one.target), head=head, ink=ink))
        if one.arc:
            arc = one.arc
            radials.append(
                RadialDimension(
                    center=arc.center,
                    leader=leaders[-1],
                    text=texts[-1],
                    value=arc.radius,
                    is_nearest=not arc.is_stated,
                )
            )
    return PlacedCallout(texts=tuple(texts), leaders=tuple(leaders), radials=tuple(radials))


def _aimed(call_outs: Sequence[CallOut], column: Column, sizes: Sizes) -> tuple[list[CallOut], list[float]]:
    """Return the call-outs and the levels of their texts; no two leaders cross.

    The line of a radius points at its center wherever it can (ISO 129-1, from memory): where no leader crosses it then.
    """
    settled = ordered, levels = _settled(call_outs, column, sizes)
    for _ in range(AIMINGS):
        aimed = [_aimed_at_center(one, (column.edge, level)) for one, level in zip(ordered, levels, strict=True)]
        if not _crossings(aimed, levels, column):
            return aimed, levels
        ordered, levels = _settled(aimed, column, sizes)
    return settled


def _aimed_at_center(call_out: CallOut, elbow: Point) -> CallOut:
    target = call_out.arc.toward(elbow) if call_out.arc else None
    return replace(call_out, target=target) if target else call_out


def _settled(call_outs: Sequence[CallOut], column: Column, sizes: Sizes) -> tuple[list[CallOut], list[float]]:
    """Return the call-outs from the lowest text up, and the levels of their texts; no two leaders cross.

    A text that changes its place takes its height along, so levels are laid out anew until none has to change. Where
    that does not end, neighbors change places as long as fewer leaders cross; where some still do, all texts are given
    the height of the tallest: then it ends.
    """
    ordered = sorted(call_outs, key=lambda one: (one.target[1], one.target[0]))
    for _ in ordered:
        levels = _levels(ordered, _rooms(ordered, sizes), column, sizes.gap)
        again = _uncrossed_order(ordered, levels, column)
        if again == ordered:
            return ordered, levels
        ordered = again
    tallest = max(_rooms(ordered, sizes))
    levels = _levels(ordered, [tallest] * len(ordered), column, sizes.gap)
    ordered = _uncrossed_order(ordered, levels, column)
    return _parted(ordered, column, sizes) or (ordered, levels)


def _parted(ordered: Sequence[CallOut], column: Column, sizes: Sizes) -> tuple[list[CallOut], list[float]] | None:
    """Let neighbors change places till no leaders cross, each text as high as it is; None where that leads nowhere."""
    best = _Order.of(ordered, column, sizes)
    while best.crossings:
        swaps = ([*ordered[:at], ordered[at + 1], ordered[at], *ordered[at + 2 :]] for at in range(len(ordered) - 1))
        other = min((_Order.of(one, column, sizes) for one in swaps), key=lambda one: one.crossings)
        if other.crossings >= best.crossings:
            return None
        best, ordered = other, other.call_outs
    return best.call_outs, best.levels


@dataclass(frozen=True, slots=True)
class _Order:
    """Call-outs from the lowest text up, the levels of their texts, and how many pairs of leaders cross."""

    call_outs: list[CallOut]
    levels: list[float]
    crossings: int

    @classmethod
    def of(cls, ordered: Sequence[CallOut], column: Column, sizes: Sizes) -> _Order:
        levels = _levels(ordered, _rooms(ordered, sizes), column, sizes.gap)
        return cls([*ordered], levels, _crossings(ordered, levels, column))


def _crossings(ordered: Sequence[CallOut], levels: Sequence[float], column: Column) -> int:
    leaders = [((column.edge, level), one.target) for one, level in zip(ordered, levels, strict=True)]
    return sum(crossing(one, two) for one, two in combinations(leaders, 2))


def _rooms(ordered: Sequence[CallOut], sizes: Sizes) -> list[float]:
    """Return what each text takes up and down."""
    return [_tall(one, sizes) + sizes.text for one in ordered]


def _uncrossed_order(ordered: Sequence[CallOut], levels: Sequence[float], column: Column) -> list[CallOut]:
    ports = uncrossed([one.target for one in ordered], [(column.edge, level) for level in levels])
    return [one for _, one in sorted(zip(ports, ordered, strict=True), key=lambda pair: pair[0])]


def _wrapped(call_out: CallOut, sizes: Sizes, widest: float) -> CallOut:
    """Break lines that are too long for a column beside a view."""
    lines = (
        piece for line in call_out.lines for piece in wrapped(line, width=widest * sizes.factor, height=sizes.text)
    )
    return replace(call_out, lines=tuple(lines))


def _tall(call_out: CallOut, sizes: Sizes) -> float:
    return sizes.text + (len(call_out.lines) - 1) * sizes.pitch


def _levels(ordered: Sequence[CallOut], rooms: Sequence[float], column: Column, gap: float) -> list[float]:
    """Return the levels of the texts, lowest first, above and below the dimensions; ``rooms``: what each takes up.

    The stretch away from the names of layers takes as many as there are and grows past the view; the other takes those
    that come first from its far end, as far as it has room: beside names those alone whose targets are on its side of
    the dimensions, so that leaders fan out. Without such names each goes to the side of its target.
    """
    wanted = [one.target[1] for one in ordered]
    if column.taken is None:
        return _ports(wanted, rooms, low=column.low, high=column.high, grows=0)
    some = 0.6 * max(rooms)
    below, above = column.taken[0] - 2 * gap, column.taken[1] + 2 * gap
    room_below, room_above = below - column.low + some, column.high - above + some
    middle = sum(column.taken) / 2
    if column.away_from is None:
        count = sum(level < middle for level in wanted)
    elif column.away_from is ViewSide.BOTTOM:
        least = middle if column.has_names else column.taken[1]
        count = min(_holds(room_below, rooms), sum(level < least for level in wanted))
    else:
        most = middle if column.has_names else column.taken[0]
        spare = min(_holds(room_above, rooms[::-1]), sum(level > most for level in wanted))
        count = len(ordered) - spare
    low, high = min(column.low, below), max(column.high, above)
    under = _ports(wanted[:count], rooms[:count], low=low, high=below, grows=-1)
    return under + _ports(wanted[count:], rooms[count:], low=above, high=high, grows=1)


def _holds(room: float, rooms: Sequence[float]) -> int:
    """Return how many of some things, in their order, a stretch has room for."""
    return sum(total <= room for total in accumulate(rooms))


def _ports(wanted: Sequence[float], rooms: Sequence[float], *, low: float, high: float, grows: int) -> list[float]:
    """Return the levels of the texts, lowest first; none outside low … high but at the end that may grow."""
    if not wanted:
        return []
    levels = spread_sizes([min(max(level, low), high) for level in wanted], sizes=rooms)
    over = levels[-1] + rooms[-1] / 2 - high
    under = low - (levels[0] - rooms[0] / 2)
    shift = 0.0
    if grows > 0:
        shift = max(under, min(0.0, -over))
    elif grows < 0:
        shift = -max(over, min(0.0, -under))
    return [level + shift for level in levels]


def uncrossed(targets: Sequence[Point], ports: Sequence[Point]) -> list[int]:
    """Return for each target the number of its port, so that no two straight leaders cross.

    Leaders that cross swap their ports; each swap shortens the sum of lengths, so this ends.
    """
    by_level = sorted(range(len(targets)), key=lambda index: (targets[index][1], targets[index][0]))
    order = [0] * len(targets)
    for number, index in enumerate(by_level):
        order[index] = number
    swapped = True
    while swapped:
        swapped = False
        for one, two in combinations(range(len(targets)), 2):
            first: Segment = (ports[order[one]], targets[one])
            second: Segment = (ports[order[two]], targets[two])
            if crossing(first, second):
                order[one], order[two] = order[two], order[one]
                swapped = True
    return order


def stack_call_outs(stack: Stack, *, wall_end: float, base: float, sizes: Sizes, widest: float) -> PlacedCallout:
    """Place the names of layers past the end of a wall at level ``wall_end``; texts start from level ``base``.

    ``widest``: where they are broken [in on paper].
    """
    outward = 1 if stack.side is ViewSide.TOP else -1
    entries = [
        _wrapped(replace(one, lines=(" ".join(one.lines),)), sizes, widest)
        for one in sorted(stack.entries, key=lambda one: one.target[0])
    ]
    risers = spread([one.target[0] for one in entries], pitch=0.06 * sizes.factor)
    half = len(entries) // 2
    levels = [*_stacked(entries[:half], sizes), *_stacked(entries[half:][::-1], sizes)[::-1]]
    texts, leaders = [], []
    for number, (one, riser) in enumerate(zip(entries, risers, strict=True)):
        is_left = number < half
        way = -1 if is_left else 1
        edge = (risers[0] if is_left else risers[-1]) + way * 0.15 * sizes.factor
        first = (0.6 if outward > 0 else 0.6 + DESCENDER) * sizes.text
        level = base + outward * (first + levels[number] + sizes.gap)
        align = Align.LEFT if way > 0 else Align.RIGHT
        at = (edge + way * sizes.gap, level)
        texts.append(Lettering(lines=one.lines, at=at, height=sizes.text, align=align, ink=Ink.NOTE))
        foot = (one.target[0], wall_end)
        points = ((edge, level), (riser, level), (riser, base), foot, one.target)
        leaders.append(Leader(points=points, head=Head.DOT))
    return PlacedCallout(texts=tuple(texts), leaders=tuple(leaders))


def _stacked(entries: Sequence[CallOut], sizes: Sizes) -> list[float]:
    """Return how far out the middles of texts stand that follow each other, from the first line of the first on."""
    tops = accumulate(_tall(one, sizes) + 0.7 * sizes.text for one in entries)
    return [
        top - 0.7 * sizes.text - (_tall(one, sizes) + sizes.text) / 2 for one, top in zip(entries, tops, strict=True)
    ]
