"""Sizes on a fit report: what is asked and what is found read alike where only the noise of a sum is between them."""

from __future__ import annotations

import pytest

from jambs.length import Units
from jambs.solids.report import sized, sized_area, sized_volume


@pytest.mark.parametrize(("asked", "text"), [(4.6875, "4.688 in"), (0.1875, "0.188 in"), (0.0, "0.000 in")])
@pytest.mark.parametrize("noise", [0.0, 3e-13, -3e-13, 4e-8, -4e-8])
def test_what_is_found_is_told_as_what_is_asked(asked: float, text: str, noise: float) -> None:
    assert sized(asked + noise, Units.INCH) == text


def test_a_ten_thousandth_off_is_told_where_it_shows() -> None:
    """4.6875 - 0.0001 is nearer to 4.687; a thousandth below nothing is below nothing, half of it is not."""
    assert sized(4.6875 - 1e-4, Units.INCH) == "4.687 in"
    assert sized(-0.001, Units.INCH) == "-0.001 in" and sized(-0.0004, Units.INCH) == "0.000 in"


def test_metric_sizes_areas_and_volumes() -> None:
    assert sized(1.0, Units.MM) == "25.40 mm" and sized(-1e-9, Units.MM) == "0.00 mm"
    assert sized(0.125 / 25.4 - 1e-13, Units.MM) == sized(0.125 / 25.4 + 1e-13, Units.MM) == "0.12 mm"
    assert sized_area(1.0, Units.MM) == "645 mm²" and sized_area(-1e-9, Units.INCH) == "0.000 sq in"
    assert sized_volume(1.0, Units.MM) == "16387 mm³" and sized_volume(-1e-9, Units.INCH) == "0.0000 cu in"
