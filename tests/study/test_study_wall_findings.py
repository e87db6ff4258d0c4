"""What the study of a wall refuses or leaves out: each appears, stays away just beside it, and reads well."""

from __future__ import annotations

import finding_rows
from cases import changed, job_of
from finding_rows import Row, codes_in, each
from refused import refused
from test_wall_report import MONTHS, report

from jambs.findings import Severity, Subject
from jambs.study import wall_findings
from jambs.study.wall.humidity import Climate, Criterion, required_factor, saturation_temperature
from jambs.study.wall.stack import HeatLayer, HeatStack
from jambs.study.wall.vapor import vapor_year
from jambs.study.wall.wall_heat import heat_wall
from jambs.wall.planes import stack_wall

AIR = Climate(inside=20, inside_humidity=0.5, outside=-10)
UNFRAMED = ["gypsum board 1/2", "plywood 3/4", "wood shingles"]
MAIN = Subject.wall("main")


def layer(
    name: str = "felt",
    *,
    resistance: float = 0.1,
    share: float = 0.0,
    framing: float | None = None,
    permeance: float | None = 40.0,
) -> HeatLayer:
    return HeatLayer(
        name=name,
        thickness=0.01,
        resistance=resistance,
        framing_resistance=framing,
        framing_fraction=share,
        permeance=permeance,
    )


def stack(*names: str) -> HeatStack:
    return HeatStack(layers=tuple(layer(name) for name in names))


def year(permeance: float | None, *, months: int = 12) -> object:
    return vapor_year(HeatStack(layers=(layer(permeance=permeance),)), [AIR] * months, [0.8] * 12)


def framed(*layers: object) -> object:
    job = job_of(changed(walls__main__layers=list(layers)) if layers else changed())
    return heat_wall(stack_wall(job.openings[0].wall, grid=job.shop.grid), units=job.units)


ROWS = [
    Row(
        code="layer-cannot-be",
        appears=refused(lambda: layer(share=1.0, framing=0.1)),
        quiet=refused(lambda: layer(share=0.99, framing=0.1)),
        inch='layer "felt": thickness 0.01 m, resistance 0.1 m2K/W, framing fraction 1.0; thickness and resistance '
        "must not be negative and the fraction must be from 0 to below 1. Give a membrane thickness 0 and resistance "
        "0.",
        severity=Severity.CHECK,
    ),
    Row(
        code="framing-without-resistance",
        appears=refused(lambda: layer(share=0.2, framing=0.0)),
        quiet=refused(lambda: layer(share=0.2, framing=0.1)),
        inch='layer "felt": framing fraction 0.2 but framing resistance 0.0, must be above zero. Give '
        "framing_resistance too.",
    ),
    Row(
        code="layer-without-resistance",
        appears=refused(lambda: layer(resistance=0.0).conductivity),
        quiet=refused(lambda: layer(resistance=0.001).conductivity),
        inch='layer "felt" has no resistance, so no conductivity. Leave it out of the cut.',
    ),
    Row(
        code="not-one-layer-of-name",
        appears=refused(lambda: stack("gypsum", "wool", "wool").index("wool")),
        quiet=refused(lambda: stack("gypsum", "wool").index("wool")),
        inch='the wall has 2 layers named "wool", must be one. Its layers: gypsum, wool, wool.',
    ),
    Row(
        code="humidity-out-of-range",
        appears=refused(lambda: Climate(inside=20, inside_humidity=1.01, outside=0)),
        quiet=refused(lambda: Climate(inside=20, inside_humidity=1.0, outside=0)),
        inch="relative humidity 1.01, must be over 0 and at most 1. Write 40 % as 0.40.",
    ),
    Row(
        code="no-vapor-pressure",
        appears=refused(lambda: saturation_temperature(0.0)),
        quiet=refused(lambda: saturation_temperature(1.0)),
        inch="vapor pressure 0.0 Pa, must be above zero. Give a humidity above zero.",
    ),
    Row(
        code="airs-alike",
        appears=refused(
            lambda: required_factor(Climate(inside=20, inside_humidity=0.5, outside=20), Criterion.MOLD),
        ),
        quiet=refused(lambda: required_factor(Climate(inside=20, inside_humidity=0.5, outside=19.9), Criterion.MOLD)),
        inch="indoors and outdoors are both at 20 °C: no temperature factor. Give a winter temperature.",
    ),
    Row(
        code="not-twelve-months",
        appears=refused(lambda: year(40.0, months=11)),
        quiet=refused(lambda: year(40.0)),
        inch="11 climates and 12 humidities, must be twelve of each.",
    ),
    Row(
        code="permeance-not-known",
        appears=refused(lambda: year(None)),
        quiet=refused(lambda: year(1.0)),
        inch='layer "felt": permeance None, must be known and above zero for the vapor profile. Give the permeance in '
        "ng/(s m2 Pa); for foil use 1.",
    ),
    Row(
        code="no-framing-layer",
        appears=refused(lambda: framed(*UNFRAMED)),
        quiet=refused(framed),
        inch="wall 'main' has no framing layer; the heat study needs one around the window.",
        about=MAIN,
    ),
    Row(
        code="no-monthly-climate",
        appears=lambda: report().no_vapor,
        quiet=lambda: report(site=MONTHS).no_vapor,
        inch="the job gives no monthly_temperatures and monthly_humidities under site",
        severity=Severity.NOTE,
        about=MAIN,
    ),
    Row(
        code="permeances-not-known",
        appears=lambda: report(site=MONTHS, walls__main__layers__2="plywood 3/4").no_vapor,
        quiet=lambda: report(site=MONTHS).no_vapor,
        inch="no permeance is known for plywood 3/4",
        about=MAIN,
    ),
]


@each(ROWS)
def test_it_appears_reads_well_and_stays_away(row: Row) -> None:
    finding_rows.check(row)


def test_every_code_has_its_row() -> None:
    assert codes_in(wall_findings) == {row.code for row in ROWS}
