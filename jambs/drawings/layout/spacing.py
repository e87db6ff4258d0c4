"""Putting things in a row along one axis: slots that keep clear of lines, and even spreading."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from jambs.length import ROUND_OFF


def slot(ideal: float, *, half: float, low: float, high: float, lines: Sequence[float], clear: float) -> float | None:
    """Return the middle nearest to ``ideal`` for a thing of ``half`` its length between ``low`` and ``high``.

    It keeps ``clear`` of every line that crosses the axis. None where there is no such place.
    """
    reach = half + clear
    tries = [ideal, low + half, high - half]
    tries += [place for line in lines for place in (line - reach, line + reach)]
    good = [place for place in tries if _is_free(place, half, low, high, lines, reach)]
    return min(good, key=lambda place: (abs(place - ideal), place), default=None)


def _is_free(place: float, half: float, low: float, high: float, lines: Sequence[float], reach: float) -> bool:
    inside = low + half - ROUND_OFF <= place <= high - half + ROUND_OFF
    return inside and all(abs(place - line) >= reach - ROUND_OFF for line in lines)


def spread(wanted: Sequence[float], *, pitch: float) -> list[float]:
    """Move sorted places apart to at least ``pitch``, as little as possible, keeping their order."""
    return spread_sizes(wanted, sizes=[pitch] * len(wanted))


def spread_sizes(wanted: Sequence[float], *, sizes: Sequence[float]) -> list[float]:
    """Move the middles of things of some sizes apart until none overlap, as little as possible, keeping their order.

    Least sum of squares: places that push each other share the mean of what they want (pool adjacent violators).
    """
    steps = [(one + two) / 2 for one, two in itertools.pairwise(sizes)]
    offsets = list(itertools.accumulate(steps, initial=0.0))
    pools: list[tuple[float, int]] = []
    for place, offset in zip(wanted, offsets, strict=False):
        mean, count = place - offset, 1
        while pools and pools[-1][0] > mean:
            before, number = pools.pop()
            mean = (mean * count + before * number) / (count + number)
            count += number
        pools.append((mean, count))
    level = [mean for mean, count in pools for _ in range(count)]
    return [place + offset for place, offset in zip(level, offsets, strict=False)]


def spread_clear(
    wanted: Sequence[float], *, pitch: float, half: float, lines: Sequence[float], clear: float
) -> list[float]:
    """Spread sorted places as ``spread`` does, then step upward past lines that must not cross them."""
    placed: list[float] = []
    for place in spread(wanted, pitch=pitch):
        low = max(place, placed[-1] + pitch) if placed else place
        free = slot(low, half=half, low=low - half, high=float("inf"), lines=lines, clear=clear)
        placed.append(low if free is None else free)
    return placed
