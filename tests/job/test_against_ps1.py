"""Plywood against Voluntary Product Standard PS 1: a sheet may be as thick as its name, and the standard lets it be."""

from __future__ import annotations

import pytest
from published import inches, table

from jambs.job.reading.catalog import catalog_layers, find_layer

ROWS = table("ps1_plywood_thickness.csv")
PLYWOOD = [layer.name for layer in catalog_layers() if layer.name.startswith("plywood ")]


@pytest.mark.parametrize("name", PLYWOOD)
def test_plywood_is_within_its_performance_category(name: str) -> None:
    row = next(row for row in ROWS if f"plywood {row['perf_cat']}" == name)
    layer = find_layer(name)
    assert layer is not None and layer.thickness is not None
    assert inches(row["perf_cat"]) == layer.thickness
    assert float(row["min_in"]) <= layer.thickness <= float(row["max_in"])


def test_every_category_up_to_one_and_an_eighth_is_there() -> None:
    published = {f"plywood {row['perf_cat']}" for row in ROWS if inches(row["perf_cat"]) <= 1.125}
    assert published == set(PLYWOOD)
