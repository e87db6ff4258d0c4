"""What counts of a wall: the ventilated space, strapping under insulation, what the job states of wood and fill."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from cases import changed, job_of

from jambs.job.reading.faults import JobFaults
from jambs.study.wall.stack import HeatLayer
from jambs.study.wall.transmittance import layer_temperatures, wall_resistance
from jambs.study.wall.wall_heat import HeatWall, heat_wall
from jambs.wall.planes import stack_wall

INCH = 0.0254
STRAPPED = [
    "gypsum board 1/2",
    {"material": "stud 2x6", "spacing": "16", "cavity": "fiberglass batt"},
    "plywood 1/2",
    {"material": "strapping 2x4", "spacing": "16", "cavity": "mineral wool batt"},
    {"material": "EPS", "thickness": "3"},
    {"material": "strapping 1x4", "spacing": "16"},
    "wood shingles",
]


def wall_of(layers: list[Any]) -> HeatWall:
    job = job_of(changed(walls__main__layers=layers))
    return heat_wall(stack_wall(job.openings[0].wall, grid=job.shop.grid), units=job.units)


def test_strapping_under_insulation_is_a_bridged_layer() -> None:
    """ISO 6946 combined method by hand: 3 1/2 of 16 in strapping, a quarter framing; the last strapping goes."""
    wall = wall_of(STRAPPED)
    gypsum, ply, eps = 0.5 * INCH / 0.1603, 0.5 * INCH / 0.1163, 3 * INCH / 0.0361
    batt, stud = 5.5 * INCH / 0.0459, 5.5 * INCH / 0.1154
    wool, strap = 1.5 * INCH / 0.035, 1.5 * INCH / 0.1154
    share = 3.5 / 16
    films = 0.26
    common = films + gypsum + ply + eps
    paths = [
        (0.75 * (1 - share), batt + wool),
        (0.25 * (1 - share), stud + wool),
        (0.75 * share, batt + strap),
        (0.25 * share, stud + strap),
    ]
    upper = 1 / sum(part / (common + own) for part, own in paths)
    lower = common + 1 / (0.75 / batt + 0.25 / stud) + 1 / ((1 - share) / wool + share / strap)
    found = wall_resistance(wall.stack)
    assert found.combined == pytest.approx((upper + lower) / 2, rel=1e-9)
    assert found.clear == pytest.approx(common + batt + wool, rel=1e-9)
    assert wall.left_out == ("strapping 1x4", "wood shingles")


def test_the_sheathing_under_strapping_and_boards_stays_warm() -> None:
    """Its inside face at 20 and -18 degC by hand; with the boards dropped it would be about 10 K colder."""
    wall = wall_of(STRAPPED)
    inside = 0.13 + 0.5 * INCH / 0.1603 + 5.5 * INCH / 0.0459
    by_hand = 20 - 38 * inside / wall.stack.clear_resistance
    place = wall.stack.index(wall.sheathing)
    assert layer_temperatures(wall.stack, inside=20, outside=-18)[place][0] == pytest.approx(by_hand, abs=1e-9)
    dropped = 20 - 38 * inside / (inside + 0.5 * INCH / 0.1163 + 0.13)
    assert by_hand > dropped + 8


def test_two_strappings_without_insulation_outside_of_them_are_one_ventilated_space() -> None:
    layers = [*STRAPPED[:3], STRAPPED[4], "counter battens 1x3", {"material": "strapping 1x4", "spacing": "16"}]
    wall = wall_of([*layers, "wood shingles"])
    assert wall.left_out == ("counter battens 1x3", "strapping 1x4", "wood shingles")
    assert wall.stack.layers[-1].name == "EPS"


def test_an_empty_strapping_under_insulation_is_still_air() -> None:
    layers = [*STRAPPED[:3], {"material": "strapping 1x4", "spacing": "16"}, STRAPPED[4], "wood shingles"]
    strapping = wall_of(layers).stack.layers[3]
    assert (strapping.resistance, strapping.framing_fraction) == pytest.approx((0.18, 3.5 / 16))
    # Vapor passes it freely: 5 cm of air, 195 ng/(s m Pa) of it (from memory), are 3900 ng/(s m² Pa).
    assert strapping.permeance == pytest.approx(0.195e3 / 0.05, rel=0.03)


def test_framing_share_and_conductivities_as_the_job_gives_them() -> None:
    """The published worked example has 9.5 % of studs; the catalog would have taken a quarter."""
    layers = [
        "gypsum board 1/2",
        {
            "material": "service cavity",
            "thickness": "1 1/2",
            "spacing": "16",
            "member_width": "1 1/2",
            "conductivity": "0.13",
            "cavity": {"material": "wood wool of ours", "conductivity": "0.038"},
        },
        {
            "material": "stud 2x6",
            "framing_share": "9.6 %",
            "cavity": {"material": "fiberglass batt", "conductivity": "0.032"},
        },
        "plywood 1/2",
        "wood shingles",
    ]
    service, studs = wall_of(layers).stack.layers[1:3]
    assert studs.framing_fraction == pytest.approx(0.096)
    assert studs.conductivity == pytest.approx(0.032)
    assert service.framing_fraction == pytest.approx(1.5 / 16)
    assert service.conductivity == pytest.approx(0.038)
    assert service.framing_resistance == pytest.approx(1.5 * INCH / 0.13)
    told = [one.what for one in wall_of(layers).assumed]
    assert not [what for what in told if "share" in what or "battens" in what]


@pytest.mark.parametrize(("spacing", "share"), [("16", 0.25), ("18", 0.25), ("18 1/8", 0.22), ("24", 0.22)])
def test_a_quarter_of_a_wall_is_framing_up_to_studs_18_inches_apart(spacing: str, share: float) -> None:
    """Usual US values for 16 and 24 in, from memory; between them the change is ours."""
    layers = [STRAPPED[0], {"material": "stud 2x6", "spacing": spacing, "cavity": "fiberglass batt"}, *STRAPPED[2:]]
    assert wall_of(layers).stack.layers[1].framing_fraction == share


def test_what_is_not_stated_of_members_is_said() -> None:
    layers = [*STRAPPED]
    layers[3] = {"material": "strapping 2x4", "cavity": "mineral wool batt"}
    layers[1:1] = [{"material": "service cavity", "thickness": "1 1/2"}]
    told = {one.what: one.value for one in wall_of(layers).assumed}
    assert told["share of members in strapping 2x4"] == "21.9 %"
    assert told["battens in service cavity"] == "none"


@pytest.mark.parametrize(("thickness", "is_told"), [("0.01", False), ("1/16", True)])
def test_a_layer_too_thin_for_the_grid_passes_heat_freely_and_its_conductivity_is_nobodys_question(
    thickness: str, is_told: bool
) -> None:
    """On a grid of 1/32 in 0.01 is nothing, whatever its role."""
    skin = {"material": "skin of ours", "role": "inside finish", "thickness": thickness}
    wall = wall_of([STRAPPED[0], skin, *STRAPPED[1:]])
    assert ("conductivity of skin of ours" in {one.what for one in wall.assumed}) is is_told
    assert (wall.stack.layers[1].resistance > 0) is is_told


@pytest.mark.parametrize(
    ("layer", "words"),
    [
        ({"material": "plywood 1/2", "framing_share": "10 %"}, "only framing, strapping and a service cavity have one"),
        ({"material": "stud 2x6", "framing_share": "80 %"}, "from 0 % to 60 %"),
        ({"material": "stud 2x6", "cavity": "straw of ours"}, "one of your own needs its conductivity"),
    ],
)
def test_a_share_or_fill_that_cannot_be_is_a_fault(layer: dict[str, str], words: str) -> None:
    with pytest.raises(JobFaults, match=words):
        wall_of(["gypsum board 1/2", layer, "stud 2x6", "wood shingles"])


def test_framing_without_a_share_is_no_second_way_through_a_layer() -> None:
    layer = HeatLayer(name="studs", thickness=0.1, resistance=2.5, framing_resistance=0.8, framing_fraction=0.0)
    assert layer.parts == ((1.0, 2.5),)
    assert len(replace(layer, framing_fraction=0.2).parts) == 2
