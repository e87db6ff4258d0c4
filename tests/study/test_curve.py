"""The curve over positions against a parabola whose minimum is known."""

import numpy as np
import pytest
from retired_curve import Curve


def parabola(center: float) -> Curve:
    """2 (x - c)^2 + 0.01 from -0.04 to 0.2."""
    places = np.linspace(-0.04, 0.2, 12)
    return Curve(positions=tuple(map(float, places)), values=tuple(float(2 * (x - center) ** 2 + 0.01) for x in places))


def test_minimum_and_band() -> None:
    """2 (x - c)^2 = 0.005 at 50 mm on both sides; a cubic spline repeats a parabola exactly."""
    curve = parabola(0.0673)
    assert curve.best == pytest.approx(0.0673, abs=0.0001)
    assert curve.least == pytest.approx(0.01, abs=1e-7)
    assert curve.band(0.005) == pytest.approx((0.0173, 0.1173), abs=0.0002)
    assert curve.at(0.1) == pytest.approx(2 * 0.0327**2 + 0.01, abs=1e-9)


def test_band_that_reaches_the_end() -> None:
    assert parabola(0.0).band(0.005) == pytest.approx((-0.04, 0.05), abs=0.0002)
    assert parabola(0.3).best == pytest.approx(0.2)


def test_too_few_positions() -> None:
    with pytest.raises(ValueError, match="3 positions, must be at least four, each greater than the one before"):
        Curve(positions=(0, 1, 2), values=(0, 0, 0))
