"""What is usual is round in the units of the job: on a metric paper no 31.8 mm, on an inch paper no 1 31/32"."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from importlib import import_module
from pathlib import Path
from typing import Any

import pytest

from jambs.fasten.reach import find_sold
from jambs.job.models.shop import Limits, in_units
from jambs.length import FINE, GRIDS, MM_PER_INCH, OFF_GRID, Units
from jambs.outside.trim_fasteners import shim_places

PACKAGE = Path(__file__).parents[1] / "jambs"
ROOMS = ("job", "parts", "place", "fasten", "flashing", "courses", "movement", "outside", "neighbors", "sheets")


def usual_values() -> Iterator[tuple[str, Mapping[Units, float]]]:
    """Every constant that has a length for each unit, wherever it stands."""
    for path in sorted(path for room in ROOMS for path in (PACKAGE / room).rglob("*.py")):
        module = import_module(".".join(path.relative_to(PACKAGE.parent).with_suffix("").parts))
        for name, value in vars(module).items():
            if name.isupper():
                yield from ((f"{path.stem}.{name}{key}", one) for key, one in _pairs(value))


def _pairs(value: Any) -> Iterator[tuple[str, Mapping[Units, float]]]:
    if isinstance(value, dict) and set(value) == set(Units) and all(isinstance(one, float) for one in value.values()):
        yield "", value
    elif isinstance(value, dict):
        yield from ((f".{key}", pair) for key, inner in value.items() for _, pair in _pairs(inner))


VALUES = dict(usual_values())
THIN = 2.0
"""What is thinner is a ply [mm]."""


def test_they_are_found() -> None:
    assert {"fastener_line.JAMB_PENETRATION", "unstated.USUAL.flange_width", "box.LEAST_COVER"} <= set(VALUES)


@pytest.mark.parametrize("name", VALUES)
def test_a_usual_length_is_round_in_both_units(name: str) -> None:
    pair = VALUES[name]
    assert GRIDS["1/16"].holds(pair[Units.INCH]) or FINE[Units.INCH].holds(pair[Units.INCH])
    # Veneers and plies are sold by half a millimeter; nothing thicker is.
    grid = GRIDS["0.5 mm" if pair[Units.MM] * MM_PER_INCH < THIN else "1 mm"]
    assert grid.holds(pair[Units.MM])


def test_limits_that_a_metric_job_leaves_open_are_round() -> None:
    metric = in_units(Limits(), Units.MM)
    lengths = [value for key, value in metric if key not in ("weight", "sash_opening_deg", "escape")]
    assert [value * MM_PER_INCH for value in lengths] == pytest.approx([20, 300, 20, 200, 75, 25, 12, 6, 20])
    assert in_units(Limits(), Units.INCH) == Limits()


def test_a_limit_that_the_job_gives_stays_and_is_known_as_given() -> None:
    given = in_units(
        Limits.model_validate({"overhang": "100 mm", "escape": {"width": "500 mm"}}, context={"units": Units.MM}),
        Units.MM,
    )
    assert given.model_fields_set == {"overhang", "escape"}
    assert [given.overhang * MM_PER_INCH, given.escape.width * MM_PER_INCH] == pytest.approx([100, 500])
    assert given.escape.height * MM_PER_INCH == pytest.approx(610)


@pytest.mark.parametrize("fastener", ["long wood screw", "trim screw", "casing nail"])
def test_fasteners_are_sold_in_whole_millimeters_too(fastener: str) -> None:
    sold = find_sold(fastener, Units.MM)
    assert sold is not None
    assert all(FINE[Units.MM].holds(one) and (one * MM_PER_INCH) % 5 < OFF_GRID * 9 for one in sold.lengths)


def test_shims_start_at_a_round_place() -> None:
    """100 mm from a corner, or 4 in."""
    assert shim_places(1000 / MM_PER_INCH, GRIDS["1 mm"])[0] * MM_PER_INCH == pytest.approx(100)
    assert shim_places(40.0, GRIDS["1/32"])[0] == 4.0
