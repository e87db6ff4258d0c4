"""The catalog names its source in every row, and every name in it leads to one material."""

from __future__ import annotations

import pytest

from jambs.job.models.layers import Role
from jambs.job.reading.catalog import (
    CatalogBoard,
    CatalogLayer,
    catalog_boards,
    catalog_layers,
    find_board,
    find_layer,
    plain_name,
)

STATUS = {"read", "memory"}


def test_every_row_names_its_source_and_how_it_was_had() -> None:
    rows: list[CatalogLayer | CatalogBoard] = [*catalog_layers(), *catalog_boards()]
    assert [row for row in rows if not row.source or row.status not in STATUS] == []


def test_rows_from_memory_say_so() -> None:
    silent = [one.name for one in catalog_layers() if one.status == "memory" and "memory" not in one.source]
    assert silent == []


def test_no_two_materials_share_a_name() -> None:
    names = [plain_name(name) for layer in catalog_layers() for name in {layer.name, *layer.aliases}]
    assert sorted(names) == sorted(set(names))
    boards = [plain_name(board.nominal) for board in catalog_boards()]
    assert sorted(boards) == sorted(set(boards))


@pytest.mark.parametrize("layer", catalog_layers(), ids=lambda layer: layer.name)
def test_values_are_plausible(layer: CatalogLayer) -> None:
    assert layer.thickness is None or 0.004 <= layer.thickness <= 12
    assert layer.conductivity is None or 0.02 <= layer.conductivity <= 1
    assert layer.permeance is None or layer.permeability is None, "one of the two, not both"
    assert (layer.role is Role.FRAMING) <= (layer.member_width is not None)


@pytest.mark.parametrize(
    ("written", "name"),
    [
        ("Plywood 1/2", "plywood 1/2"),
        ('plywood 1/2"', "plywood 1/2"),
        ("plywood 1 1/8", "plywood 1-1/8"),
        ("stud 2 x 6", "stud 2x6"),
        ("STUD 2×6", "stud 2x6"),
        ("glass fiber batt", "fiberglass batt"),
        ("wood fiber board", "wood-fiber board"),
        ("polyiso", "polyisocyanurate"),
        ("stud 45 x 145", "stud 45x145"),
    ],
)
def test_names_are_read_as_they_are_written(written: str, name: str) -> None:
    found = find_layer(written)
    assert found is not None and found.name == name


def test_what_is_not_there_is_not_found() -> None:
    assert find_layer("unobtainium") is None
    assert find_board("1x7") is None


def test_hardwood_and_softwood_of_one_nominal_differ() -> None:
    """5/4 hardwood is 1-1/16 surfaced (NHLA); 5/4x6 softwood is 1 dressed (PS 20)."""
    hardwood, softwood = find_board("5/4"), find_board("5/4 x 6")
    assert hardwood and softwood
    assert (hardwood.thickness, softwood.thickness) == (1 + 1 / 16, 1.0)
