"""A quantity over the position of the window: its least value and the band that costs nearly nothing."""

from dataclasses import dataclass

import numpy as np
from scipy.interpolate import CubicSpline

# The spline is searched at this spacing [m], ten times finer than anyone sets a window.
SEARCH_STEP = 0.0001


@dataclass(frozen=True, slots=True, kw_only=True)
class Curve:
    """Values at rising positions [m], with a cubic spline between them. Raises ValueError with under four positions."""

    positions: tuple[float, ...]
    values: tuple[float, ...]

    def __post_init__(self) -> None:
        if len(self.positions) < 4 or any(np.diff(self.positions) <= 0):
            raise ValueError(
                f"{len(self.positions)} positions, must be at least four, each greater than the one before. "
                "Ask for more positions (40 is usual)."
            )

    def at(self, position: float) -> float:
        """Value at a position. [m]"""
        return float(CubicSpline(self.positions, self.values)(position))

    @property
    def best(self) -> float:
        """Position of the least value. [m]"""
        places, values = self._searched()
        return float(places[np.argmin(values)])

    @property
    def least(self) -> float:
        """The least value."""
        return float(self._searched()[1].min())

    def band(self, excess: float) -> tuple[float, float]:
        """First and last position around the best one where the value is not more than `excess` over the least. [m]"""
        places, values = self._searched()
        beyond = np.flatnonzero(values > values.min() + excess)
        best = int(np.argmin(values))
        first = max((place + 1 for place in beyond if place < best), default=0)
        last = min((place - 1 for place in beyond if place > best), default=len(places) - 1)
        return float(places[first]), float(places[last])

    def _searched(self) -> tuple[np.ndarray, np.ndarray]:
        first, last = self.positions[0], self.positions[-1]
        places = np.linspace(first, last, int((last - first) / SEARCH_STEP) + 2)
        return places, CubicSpline(self.positions, self.values)(places)
