"""Every size that is sawn is printed on the shop's grid, over all examples: a carpenter sets his stop by its marks.

A board of the drywall crew may carry half a millimeter of its own thickness or of its coat, as they were stated.
"""

from __future__ import annotations

import re
from fractions import Fraction
from pathlib import Path

import pytest

from jambs.app.chain import kits_as_cut
from jambs.job import read_job
from jambs.length import Grid, Units
from jambs.sheets.record import job_record
from jambs.values import Record

EXAMPLES = Path(__file__).parents[2] / "examples"
INCHES = re.compile(r'(?:(\d+) )?(\d+)/(\d+)"|(\d+)"')
MILLIMETERS = re.compile(r"(\d+(?:\.\d+)?) mm")
NOT_SAWN = ("seasonal change",)


def lengths_in(text: str, units: Units) -> list[Fraction]:
    """Every length in a sentence, in its units."""
    if units is Units.MM:
        return [Fraction(number) for number in MILLIMETERS.findall(text)]
    return [
        Fraction(int(alone)) if alone else int(whole or 0) + Fraction(int(top), int(bottom))
        for whole, top, bottom, alone in INCHES.findall(text)
    ]


def off_grid(text: str, grid: Grid) -> list[str]:
    return [text for length in lengths_in(text, grid.units) if length * grid.denominator % grid.numerator]


def sawn_texts(part: Record) -> list[str]:
    sizes = [part["width"]["text"], part["length"]["text"], part["ends"]]
    taper = [part["taper"][f"{end}_width"]["text"] for end in ("start", "finish")] if part["taper"] else []
    return [*sizes, *taper, *(line for line in part["work"] if not line.startswith(NOT_SAWN))]


def printed(name: str) -> tuple[Grid, list[Record]]:
    job = read_job(EXAMPLES / name)
    return job.shop.grid, job_record(kits_as_cut(job), job)["openings"]


@pytest.mark.parametrize("name", ["garden-studio", "gable-house", "hillside-house", "quarry-loft"])
def test_every_sawn_size_is_on_the_grid_of_the_shop(name: str) -> None:
    grid, openings = printed(name)
    parts = [part for opening in openings for part in opening["parts"] if part["is_wood"]]
    assert len(parts) > 5
    assert [(part["mark"], off) for part in parts for text in sawn_texts(part) for off in off_grid(text, grid)] == []


def test_figures_of_flares_and_shapes_are_on_the_grid_of_the_shop() -> None:
    grid, openings = printed("gable-house")
    figures = [(one["mark"], f"{fig['name']} {fig['size']['text']}") for one in openings for fig in one["figures"]]
    assert len(figures) > 40
    assert [(mark, off) for mark, text in figures for off in off_grid(text, grid)] == []


def test_a_length_off_the_grid_is_found() -> None:
    sixteenths, millimeters = Grid(Units.INCH, 1, 16), Grid(Units.MM, 1, 1)
    assert off_grid('long point 27 11/32", short point 26 7/16"', sixteenths)
    assert not off_grid('long point 27 3/8", short point 26"', sixteenths)
    assert off_grid("long point 83.2 mm", millimeters) and not off_grid("long point 83 mm", millimeters)
