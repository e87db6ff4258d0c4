"""A wall by itself as a record: resistance, layers, temperatures, drying, dew point, a year of vapor."""

from __future__ import annotations

from jambs.job.models.site import temperature_text
from jambs.study.placement_study import PlacementStudy
from jambs.study.record.figures import assumed_record, figure, sentences, share
from jambs.study.wall.stack import US_INSIDE_FILM, US_OUTSIDE_FILM, US_PERM, US_RESISTANCE, HeatLayer
from jambs.study.wall.transmittance import WallResistance, us_resistance, us_transmittance
from jambs.study.wall.wall_report import WallReport
from jambs.values import Record, size

THIN = 1 / 32
"""Under this a layer's thickness is not printed [in]."""
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def wall_record(wall: WallReport, study: PlacementStudy) -> Record:
    """Return the record of one wall."""
    return {
        "name": wall.planes.wall.name,
        "thickness": size(wall.heat.outside_face, units=study.job.units),
        "resistance": _resistances(wall.resistance),
        "greatest_error": share(wall.resistance.greatest_error),
        "layers": _layers(wall, study),
        "outside_temperature": _temperature(wall.temperatures[-1], study),
        "outboard": share(wall.outboard),
        "dew_check": _dew_check(wall, study),
        "vapor": _vapor(wall),
        "no_vapor": f"not computed: {sentences(wall.no_vapor, study.job.units)}" if wall.no_vapor else None,
        "assumed": assumed_record(wall.heat.assumed),
    }


def _resistances(found: WallResistance) -> list[Record]:
    films = f"{found.inside_film:.2f} inside, {found.outside_film:.2f} outside (m²K/W)"
    us_films = f"R {US_INSIDE_FILM / US_RESISTANCE:.2f} inside, R {US_OUTSIDE_FILM / US_RESISTANCE:.2f} outside"
    lines = (
        ("clear wall, no framing", found.clear, films),
        ("with framing, ISO 6946 combined method", found.combined, films),
        ("with framing, US parallel path", found.parallel_path, us_films),
    )
    return [
        {
            "convention": words,
            "transmittance": figure(1 / resistance, "W/m2K", 3),
            "resistance": figure(resistance, "m2K/W", 2),
            "us_transmittance": figure(us_transmittance(1 / resistance), "Btu/h ft2 °F", 4),
            "us_resistance": figure(us_resistance(resistance), "h ft2 °F/Btu", 1),
            "films": by,
        }
        for words, resistance, by in lines
    ]


def _layers(wall: WallReport, study: PlacementStudy) -> list[Record]:
    ways = zip(wall.heat.stack.layers, wall.drying, wall.temperatures, strict=False)
    return [
        {
            "name": layer.name,
            "thickness": _thickness(placed.layer.thickness, study),
            "resistance": figure(layer.resistance, "m2K/W", 2),
            "us_resistance": figure(us_resistance(layer.resistance), "h ft2 °F/Btu", 1),
            "permeance": _permeance(layer),
            "inner_face": _temperature(temperature, study),
            "inward": _way(drying.inward, drying.limit),
            "outward": _way(drying.outward, drying.limit),
            "is_blocked_both_ways": drying.is_blocked_both_ways,
            "words": drying.words,
        }
        for placed, (layer, drying, temperature) in zip(wall.heat.placed, ways, strict=True)
    ]


def _thickness(length: float, study: PlacementStudy) -> Record:
    """Return a thickness with its text; a membrane is thin."""
    found = size(length, units=study.job.units) or {}
    return {**found, "text": "thin"} if length < THIN else found


def _permeance(layer: HeatLayer) -> Record | None:
    return None if layer.permeance is None else perms(layer.permeance)


def perms(permeance: float) -> Record:
    """Return a permeance with its text in US perms; the value is in ng/(s m2 Pa)."""
    return {"value": permeance, "unit": "ng/(s m2 Pa)", "text": f"{permeance / US_PERM:.2g} perm"}


def _way(permeance: float | None, limit: float) -> str:
    """Say in a few words whether a layer dries to one side."""
    if permeance is None:
        return "unknown"
    if permeance == float("inf"):
        return "freely"
    return f"{'blocked' if permeance <= limit else 'yes'}, {permeance / US_PERM:.2g} perm"


def _temperature(celsius: float, study: PlacementStudy) -> Record:
    return {"value": celsius, "unit": "degC", "text": temperature_text(celsius, study.job.units)}


def _dew_check(wall: WallReport, study: PlacementStudy) -> Record | None:
    check = wall.dew_check
    if check is None:
        return None
    face, point = (_temperature(one, study) for one in (check.temperature, check.dew_point))
    verdict = "stays above" if check.is_dry else "is NOT above"
    return {
        "layer": check.layer,
        "is_dry": check.is_dry,
        "temperature": face,
        "dew_point": point,
        "words": f"Inside face of {check.layer}: {face['text']}, {verdict} the dew point of the inside air, "
        f"{point['text']}. "
        + (
            "Air that leaks in does not condense there."
            if check.is_dry
            else "Inside air that leaks to it condenses there: keep the air barrier tight, or insulate more outside."
        ),
    }


def _vapor(wall: WallReport) -> Record | None:
    year = wall.vapor
    if year is None:
        return None
    return {
        "months": [
            {
                "month": MONTHS[month.month - 1],
                "total": figure(month.total, "kg/m2", 3),
                "planes": [{"plane": name, "water": figure(amount, "kg/m2", 3)} for name, amount in month.water],
            }
            for month in year.months
        ],
        "peak": figure(year.peak, "kg/m2", 3),
        "dries_out": year.dries_out,
    }
