"""Best filling of every capacity at once: a bounded knapsack over whole lengths."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

from jambs.stock.solver.core import Ints, Pattern


@dataclass(frozen=True, slots=True, kw_only=True)
class KnapsackFilling:
    """Best value for each capacity 0 .. top, and how to reach it."""

    best: npt.NDArray[Any]
    parts: tuple[tuple[int, int, int], ...]
    took: npt.NDArray[np.bool_]

    def pattern(self, capacity: int) -> Pattern:
        """A best filling of one capacity, as (item, count) sorted by item."""
        counts: dict[int, int] = {}
        for number in range(len(self.parts) - 1, -1, -1):
            if self.took[number, capacity]:
                item, copies, size = self.parts[number]
                counts[item] = counts.get(item, 0) + copies
                capacity -= size
        return tuple(sorted(counts.items()))


def split_copies(sizes: Ints, copies: Ints, top: int) -> list[tuple[int, int, int]]:
    """Each item as bundles of 1, 2, 4 ... copies: (item, copies, size); any count up to the limit is a sum."""
    parts = []
    for item, (size, count) in enumerate(zip(sizes.tolist(), copies.tolist(), strict=True)):
        left, bundle = min(count, top // size), 1
        while left > 0:
            bundle = min(bundle, left)
            parts.append((item, bundle, size * bundle))
            left -= bundle
            bundle *= 2
    return parts


def fill(sizes: Ints, values: npt.NDArray[Any], copies: Ints, top: int) -> KnapsackFilling:
    """Best fillings of all capacities up to `top`; whole values stay whole."""
    worth = values.tolist()
    parts = tuple(part for part in split_copies(sizes, copies, top) if worth[part[0]] > 0)
    best = np.zeros(top + 1, dtype=values.dtype)
    took = np.zeros((len(parts), top + 1), dtype=np.bool_)
    for number, (item, bundle, size) in enumerate(parts):
        with_it = best[: top + 1 - size] + worth[item] * bundle
        np.greater(with_it, best[size:], out=took[number, size:])
        np.maximum(best[size:], with_it, out=best[size:])
    return KnapsackFilling(best=best, parts=parts, took=took)


def best_values(sizes: Ints, values: npt.NDArray[Any], copies: Ints, top: int) -> npt.NDArray[Any]:
    """Only the values of `fill`."""
    worth = values.tolist()
    best = np.zeros(top + 1, dtype=values.dtype)
    for item, bundle, size in split_copies(sizes, copies, top):
        if worth[item] > 0:
            with_it = best[: top + 1 - size] + worth[item] * bundle
            np.maximum(best[size:], with_it, out=best[size:])
    return best
