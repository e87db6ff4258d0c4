"""Resistance and permeance of materials against the ASHRAE Handbook - Fundamentals.

Rows that the table marks as read gate the test; rows from memory are not used.
"""

from __future__ import annotations

import pytest
from published import table

from jambs.job.reading.catalog import find_layer

W_PER_M_K = 1.730735 / 12
"""One Btu in/(h ft2 F) in W/(m K): 1 Btu/(h ft F) is 1.730735 W/(m K) (international table Btu)."""

PUBLISHED = {(row["material"], row["quantity"]): row for row in table("ashrae_materials.csv")}

PER_INCH = {
    "plywood": "plywood 1/2",
    "softwood stud": "stud 2x6",
    "glass fibre batt": "fiberglass batt",
    "cellulose, dense": "cellulose",
    "EPS": "EPS",
    "XPS": "XPS",
}


@pytest.mark.parametrize(("published", "name"), PER_INCH.items())
def test_conductivity_is_one_over_resistance_per_inch(published: str, name: str) -> None:
    row = PUBLISHED[published, "R per in"]
    assert "memory" not in row["status"]
    layer = find_layer(name)
    assert layer is not None
    assert layer.conductivity == pytest.approx(W_PER_M_K / float(row["value"]), abs=0.0001)


WHOLE = {
    "gypsum board 1/2 in": "gypsum board 1/2",
    "gypsum board 5/8 in": "gypsum board 5/8",
    "wood shingles 16 in, 7-1/2 exposure": "wood shingles",
}


@pytest.mark.parametrize(("published", "name"), WHOLE.items())
def test_thickness_over_conductivity_is_the_published_resistance(published: str, name: str) -> None:
    row = PUBLISHED[published, "R"]
    assert row["status"] == "read"
    layer = find_layer(name)
    assert layer is not None and layer.thickness is not None and layer.conductivity is not None
    resistance = layer.thickness / layer.conductivity * W_PER_M_K
    assert resistance == pytest.approx(float(row["value"]), abs=0.005)


def test_wood_fiber_board_is_the_published_conductivity() -> None:
    layer = find_layer("wood-fiber board")
    assert layer is not None
    assert layer.conductivity == float(PUBLISHED["wood-fibre board", "W/mK"]["value"])


def test_permeance_is_within_the_published_range() -> None:
    felt, eps, wrap = find_layer("asphalt felt 15 lb"), find_layer("EPS"), find_layer("housewrap")
    assert felt and eps and wrap
    assert felt.permeance == float(PUBLISHED["asphalt felt 15 lb", "perm"]["value"])
    low, high = PUBLISHED["EPS 15 psi", "perm in"]["value"].split("-")
    assert eps.permeability is not None and float(low) <= eps.permeability <= float(high)
    assert eps.permeance_at(2.0) == eps.permeability / 2
    assert wrap.permeance is not None and 35 <= wrap.permeance <= 50, PUBLISHED["housewrap", "perm"]["value"]
