"""Indoor humidity month by month: as the job gives it, else by the humidity classes of ISO 13788.

The classes say how much more vapor the room's air holds than the air outdoors: most in frost, nothing from 20 degC on.
Edition of 2012, annex A, from memory; the limits are those of 2, 4, 6, 8 and 10 g of vapor in a cubic meter of air at
20 degC, by the law of gases, which a test holds them against.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import repeat

from jambs.job.models.site import Site
from jambs.study.wall.humidity import Climate, Criterion, required_factor, saturation_pressure

CLASS_EXCESS = {1: 270.0, 2: 540.0, 3: 810.0, 4: 1080.0, 5: 1360.0}
"""Greatest vapor excess of each class up to 0 degC outdoors [Pa]."""
EXCESS_ENDS = 20.0
"""Outdoor monthly mean from which on there is none [degC]."""
SAFETY = 1.10
"""What ISO 13788 multiplies the excess by."""
LEAST_DIFFERENCE = 1.0
"""Months nearer to the indoor temperature than this say nothing of a surface [K]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MoldLimit:
    """Least temperature factor (fRsi) that keeps the monthly mean at a surface at or under 80 %, of the worst month."""

    factor: float
    month: int


def indoor_climates(site: Site) -> tuple[Climate, ...]:
    """Indoor air and outdoor temperature of every month, January first; empty where the job gives no monthly means."""
    given = site.monthly_indoor_humidities or repeat(None)
    months = zip(site.monthly_temperatures, site.monthly_humidities, given, strict=False)
    return tuple(
        Climate(
            inside=site.indoor_temperature,
            inside_humidity=humidity if humidity is not None else class_humidity(site, outside, outside_humidity),
            outside=outside,
        )
        for outside, outside_humidity, humidity in months
    )


def class_humidity(site: Site, outside: float, outside_humidity: float) -> float:
    """Relative humidity indoors, 0 to 1, by the site's class, from the monthly means outdoors [degC], 0 to 1."""
    share = min(max((EXCESS_ENDS - outside) / EXCESS_ENDS, 0.0), 1.0)
    excess = SAFETY * CLASS_EXCESS[site.humidity_class] * share
    pressure = outside_humidity * saturation_pressure(outside) + excess
    return min(1.0, pressure / saturation_pressure(site.indoor_temperature))


def mold_limit(site: Site) -> MoldLimit | None:
    """The worst month of the year for a surface; None without monthly means, or where no month asks for anything."""
    needed = [
        MoldLimit(factor=required_factor(climate, Criterion.MOLD), month=month)
        for month, climate in enumerate(indoor_climates(site), start=1)
        if climate.inside - climate.outside > LEAST_DIFFERENCE
    ]
    return max(needed, key=lambda one: one.factor, default=None)
