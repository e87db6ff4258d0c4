"""What a wall does by itself: resistance, temperatures, dew point, ways to dry, a year of vapor."""

from __future__ import annotations

from dataclasses import dataclass, replace

from jambs.findings import Finding, Subject
from jambs.job.models.site import Site
from jambs.length import Units
from jambs.study.regions.region import StudyError
from jambs.study.wall.drying import Drying, drying
from jambs.study.wall.humidity import Climate, FaceCheck, check_inner_face
from jambs.study.wall.indoor_air import indoor_climates
from jambs.study.wall.stack import OUTSIDE_FILM, HeatStack
from jambs.study.wall.transmittance import WallResistance, outboard_fraction, plane_temperatures, wall_resistance
from jambs.study.wall.vapor import VaporYear, vapor_year
from jambs.study.wall.wall_heat import HeatWall, heat_wall
from jambs.study.wall_findings import NoMonthlyClimate, PermeancesNotKnown
from jambs.wall.planes import WallPlanes

VAPOR_INSIDE_FILM = 0.25
"""Inside film for the monthly profile [m2K/W]: ISO 13788, from memory; outside it is OUTSIDE_FILM."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WallReport:
    """A wall by itself, at this site.

    ``temperatures``: of every plane from the finished face out, away from framing, at the design temperature [degC].
    ``outboard``: resistance outside of the sheathing over that of all layers; None for a wall without sheathing.
    ``dew_check``: the first face that leaking inside air meets outside the framing. ``vapor``: None where
    ``no_vapor`` says what is missing.
    """

    planes: WallPlanes
    heat: HeatWall
    resistance: WallResistance
    temperatures: tuple[float, ...]
    outboard: float | None
    dew_check: FaceCheck | None
    drying: tuple[Drying, ...]
    vapor: VaporYear | None
    no_vapor: tuple[Finding, ...]


def wall_report(planes: WallPlanes, site: Site, *, units: Units) -> WallReport:
    """Report on a wall.

    Raises:
        StudyError: the wall has no framing.
    """
    wall = heat_wall(planes, units=units)
    climate = Climate(
        inside=site.indoor_temperature,
        inside_humidity=site.indoor_humidity,
        outside=site.design_outdoor_temperature,
    )
    face = _first_face(wall)
    vapor, no_vapor = _vapor(wall.stack, site, Subject.wall(planes.wall.name))
    return WallReport(
        planes=planes,
        heat=wall,
        resistance=wall_resistance(wall.stack),
        temperatures=plane_temperatures(
            wall.stack, inside=site.indoor_temperature, outside=site.design_outdoor_temperature
        ),
        outboard=outboard_fraction(wall.stack, wall.sheathing) if wall.is_sheathed else None,
        dew_check=check_inner_face(wall.stack, face, climate) if face else None,
        drying=drying(wall.stack),
        vapor=vapor,
        no_vapor=no_vapor,
    )


def _first_face(wall: HeatWall) -> str | None:
    """The sheathing; without one, the first layer outside the framing that has a thickness."""
    if wall.is_sheathed:
        return wall.sheathing
    layers = wall.stack.layers
    outside = layers[wall.stack.index(wall.sheathing) + 1 :]
    return next((layer.name for layer in outside if layer.thickness > 0), None)


def _vapor(stack: HeatStack, site: Site, about: Subject) -> tuple[VaporYear | None, tuple[Finding, ...]]:
    unknown = tuple(layer.name for layer in stack.layers if not layer.permeance)
    if not site.monthly_temperatures:
        return None, (NoMonthlyClimate(subject=about),)
    if unknown:
        return None, (PermeancesNotKnown(subject=about, layers=unknown),)
    filmed = replace(stack, inside_film=VAPOR_INSIDE_FILM, outside_film=OUTSIDE_FILM)
    try:
        return vapor_year(filmed, indoor_climates(site), site.monthly_humidities), ()
    except StudyError as error:
        return None, error.about(about).findings
