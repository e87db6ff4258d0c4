"""Moisture and movement against the Wood Handbook, FPL-GTR-190 (2010): tables 4-2, 4-3 and 13-5, equation (13-2)."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from jambs.job.models.outside import Air, Sawn, WoodEntry
from jambs.parts.wood.moisture import equilibrium_moisture
from jambs.parts.wood.woods import WoodError, change_of_size, find_wood, wood_of, woods

TABLES = Path(__file__).parents[1] / "authorities" / "outside"

LOW_SATURATION = ("Cedar, northern white", "Cedar, western redcedar", "Redwood, old-growth")
"""Woods whose fibers are saturated at 22 to 24 %, not at 30 % (value from memory); checked by its effect below."""


def rows(name: str) -> list[dict[str, str]]:
    lines = (TABLES / name).read_text(encoding="utf-8").splitlines()
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))


@pytest.mark.parametrize("row", rows("equilibrium_moisture.csv"), ids=lambda row: f"{row['T_degF']}F-{row['RH_pct']}%")
def test_equilibrium_moisture(row: dict[str, str]) -> None:
    """Table 4-2 is computed from equation (4-5) and printed to 0.1: agrees within 0.07."""
    air = Air(temperature=f"{row['T_degF']} F", humidity=f"{row['RH_pct']} %")  # type: ignore[arg-type]
    assert equilibrium_moisture(air) == pytest.approx(float(row["EMC_table_pct"]), abs=0.07)


def test_celsius_is_the_same_air() -> None:
    warm, same = (Air.model_validate(text) for text in ("77 F, 45 %", "25 C, 45 %"))
    assert equilibrium_moisture(warm) == pytest.approx(equilibrium_moisture(same), abs=1e-9)


@pytest.mark.parametrize("row", rows("dimensional_change.csv"), ids=lambda row: row["species"])
def test_coefficients(row: dict[str, str]) -> None:
    """Table 13-5; rows marked memory are from memory, and the program says so wherever it uses them."""
    wood = find_wood(row["species"])
    assert wood is not None
    assert (wood.radial, wood.tangential) == (float(row["C_R"]), float(row["C_T"]))
    assert wood.is_sure == (row["status"] != "memory")


@pytest.mark.parametrize(
    "row",
    [row for row in rows("dimensional_change.csv") if row["shrink_T_pct"]],
    ids=lambda row: row["species"],
)
def test_coefficients_follow_from_the_shrinkage(row: dict[str, str]) -> None:
    """A second way: shrinkage S (table 4-3) is linear from saturation f to dry; per percent, of the size at 10 %."""
    saturation = 22 if row["species"] in LOW_SATURATION else 30
    wood = find_wood(row["species"])
    assert wood is not None
    for shrinkage, sawn in ((row["shrink_R_pct"], Sawn.QUARTER), (row["shrink_T_pct"], Sawn.FLAT)):
        slope = float(shrinkage) / 100 / saturation
        at_ten = 1 - slope * (saturation - 10)
        assert wood.across(sawn) == pytest.approx(slope / at_ten, abs=1.6e-5)


def test_pine_asks_which() -> None:
    with pytest.raises(WoodError, match=r'woods "pine": yards sell several woods by this name.*Pine, eastern white; '):
        wood_of("pine", {})
    stated = wood_of("pine", {"pine": WoodEntry(species="Pine, ponderosa")})
    assert stated is not None and stated.wood.species == "Pine, ponderosa"
    other = wood_of("larch", {})
    assert other is not None and other.wood.species == "Larch, western"


def test_worked_example_of_the_handbook() -> None:
    """Flat-grained white fir board, 232 mm wide, from 8 to 11 %: 1.705 mm (from memory, recomputed)."""
    wood = find_wood("Fir, white")
    assert wood is not None
    change = change_of_size(232, wood.across(Sawn.FLAT), start=8, finish=11)
    assert change == pytest.approx(1.705, abs=0.0005)
    assert change_of_size(232, wood.across(Sawn.FLAT), start=11, finish=8) == -change


def test_every_wood_is_found_by_all_its_names() -> None:
    for wood in woods():
        for name in (wood.species, *wood.aliases):
            assert find_wood(name.upper()) is wood
    assert len(woods()) == len(rows("dimensional_change.csv"))
