"""Which way layers dry; permeances are common practice, the arithmetic is by hand."""

import pytest

from jambs.study.wall.drying import drying, permeance_of
from jambs.study.wall.stack import US_PERM, HeatLayer, HeatStack


def membrane(name: str, perms: float | None) -> HeatLayer:
    return HeatLayer(name=name, thickness=0.0, resistance=0.0, permeance=None if perms is None else perms * US_PERM)


def blocked(*layers: HeatLayer) -> list[str]:
    return [each.layer.name for each in drying(HeatStack(layers=layers)) if each.is_blocked_both_ways]


def test_a_perm_by_definition() -> None:
    """Grain 64.79891 mg, hour, square foot, inch of mercury at 0 degC 3386.389 Pa."""
    assert pytest.approx(64.79891e6 / 3600 / 0.3048**2 / 3386.389, rel=1e-5) == US_PERM


def test_permeances_in_series_by_hand() -> None:
    """2 and 3 perm one behind the other: 1 / (1/2 + 1/3) = 1.2 perm."""
    assert permeance_of([membrane("a", 2), membrane("b", 3)]) == pytest.approx(1.2 * US_PERM, rel=1e-12)


def test_what_passes_nothing_lets_nothing_through_whatever_lies_beside_it() -> None:
    """0 perm: 1 / (1/0 + 1/3) is nothing."""
    assert permeance_of([membrane("foil", 0), membrane("b", 3), membrane("c", None)]) == 0.0
    assert permeance_of([]) == float("inf")


@pytest.mark.parametrize(("perms", "says"), [(1.0, "blocked"), (1.01, "yes")])
def test_a_side_is_open_past_one_perm(perms: float, says: str) -> None:
    """Vapor retarders of class II reach up to 1.0 perm, that included (IRC R202, definitions, from memory)."""
    found = drying(HeatStack(layers=(membrane("skin", perms), membrane("core", 5), membrane("foil", 0))))[1]
    assert f"dries inward {says} ({perms:.2f} perm" in found.words
    assert found.is_blocked_both_ways is (says == "blocked")


def test_polyethylene_inside_and_foil_outside_block_what_is_between() -> None:
    names = blocked(
        membrane("gypsum", 40), membrane("polyethylene", 0.06), membrane("sheathing", 1.5), membrane("foil", 0.03)
    )
    assert names == ["sheathing"]


def test_without_the_polyethylene_it_dries_inward() -> None:
    assert blocked(membrane("gypsum", 40), membrane("sheathing", 1.5), membrane("foil", 0.03)) == []


def test_several_middling_layers_block_together() -> None:
    """Each passes 1.5 perm, two together 0.75."""
    sides = membrane("a", 1.5), membrane("b", 1.5)
    assert "core" in blocked(*sides, membrane("core", 5), membrane("c", 1.5), membrane("d", 1.5))


def test_an_unknown_permeance_is_said_and_not_counted_as_open() -> None:
    found = drying(HeatStack(layers=(membrane("paint", None), membrane("core", 5), membrane("felt", 6))))[1]
    assert found.words == (
        "core (5.00 perm, 286 ng/s m2 Pa): dries inward unknown (a permeance is missing), "
        "outward yes (6.00 perm, 343 ng/s m2 Pa)."
    )


def test_a_known_vapor_barrier_blocks_whatever_else_is_unknown() -> None:
    assert blocked(
        membrane("paint", None), membrane("polyethylene", 0.06), membrane("core", 5), membrane("foil", 0)
    ) == ["core"]
