"""Positions of the parametric model side by side: heat, coldest corner, humidity, sun."""

from collections.abc import Sequence
from dataclasses import dataclass

from retired_cut import Detail, WallBuild
from retired_model import Installation, install, sill_corner_estimate

from jambs.study.heat.frame import FrameBlock
from jambs.study.regions.grid import Fineness
from jambs.study.regions.region import StudyError
from jambs.study.sun.daylight import SUMMER_MONTHS, WINTER_MONTHS, Reveal, beam_path, monthly_sun, sky_component
from jambs.study.wall.humidity import Criterion, greatest_humidity


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """A window and how its sides are built: overall frame `width` and `height` [m]."""

    width: float
    height: float
    frame: FrameBlock
    jamb: Detail
    sill: Detail
    head: Detail


@dataclass(frozen=True, slots=True, kw_only=True)
class Site:
    """Where the house stands and which way the wall faces (clockwise from north).

    `inside` and `design_outside` temperatures for the coldest corner [degC]; `degree_days` of a heating season [K d].
    """

    latitude_deg: float
    facing_deg: float
    inside: float
    design_outside: float
    degree_days: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PositionRow:
    """What one position does.

    `heat` that the installation of the whole window costs [W/K], within `heat_half_width` by the calculation alone;
    `coldest_corner` the least 2-D temperature factor of the three sides, on `coldest_side`; `sill_corner` the estimate
    where jamb and sill meet, not a limit; `winter_sun` and `summer_sun` the fraction of the clear-sky beam that reaches
    the glass, None when next to none reaches this wall; `sky` the sky component on the glass of an overcast day.
    """

    exterior_depth: float
    interior_depth: float
    jamb: Installation
    sill: Installation
    head: Installation
    heat: float
    heat_half_width: float
    heat_per_year: float
    coldest_side: str
    coldest_corner: float
    sill_corner: float
    sweats_above: float
    sill_corner_sweats_above: float
    mold_above: float
    winter_sun: float | None
    summer_sun: float | None
    sky: float


def compare_positions(
    wall: WallBuild,
    window: Window,
    site: Site,
    exterior_depths: Sequence[float],
    *,
    fineness: Fineness | None = None,
) -> tuple[PositionRow, ...]:
    """Rows for the positions in the order given. [m] Raises as `install` does."""
    return tuple(_row(wall, window, site, place, fineness) for place in exterior_depths)


def reveal_of(wall: WallBuild, window: Window, exterior_depth: float) -> Reveal:
    """The outside reveal before the glass, from the pane's outer face to the cladding face, between the jambs. [m]"""
    face, outer = window.frame.face, window.head
    return Reveal(
        width=window.width - 2 * face,
        height=window.height - 2 * face,
        recess=max(0.0, exterior_depth + window.frame.panel_start + wall.cladding),
        above=face - outer.exterior_jamb,
        beside=face - window.jamb.exterior_jamb,
    )


def _row(wall: WallBuild, window: Window, site: Site, place: float, fineness: Fineness | None) -> PositionRow:
    jamb, sill, head = (
        install(wall, window.frame, detail, place, fineness=fineness)
        for detail in (window.jamb, window.sill, window.head)
    )
    lengths = ((jamb, 2 * window.height), (sill, window.width), (head, window.width))
    heat = sum(side.transmittance.value * length for side, length in lengths)
    coldest = min((jamb, sill, head), key=lambda side: side.factors.corner)
    corner = sill_corner_estimate(window.frame, jamb, sill)
    reveal = reveal_of(wall, window, place)
    return PositionRow(
        exterior_depth=place,
        interior_depth=jamb.interior_depth,
        jamb=jamb,
        sill=sill,
        head=head,
        heat=heat,
        heat_half_width=sum(side.transmittance.half_width * length for side, length in lengths),
        heat_per_year=heat * site.degree_days * 24 / 1000,
        coldest_side=coldest.detail.side,
        coldest_corner=coldest.factors.corner,
        sill_corner=corner,
        sweats_above=_humidity(site, coldest.factors.corner, Criterion.CONDENSATION),
        sill_corner_sweats_above=_humidity(site, corner, Criterion.CONDENSATION),
        mold_above=_humidity(site, coldest.factors.corner, Criterion.MOLD),
        winter_sun=_sun(reveal, site, WINTER_MONTHS),
        summer_sun=_sun(reveal, site, SUMMER_MONTHS),
        sky=sky_component(reveal),
    )


def _humidity(site: Site, factor: float, criterion: Criterion) -> float:
    return greatest_humidity(factor, inside=site.inside, outside=site.design_outside, criterion=criterion)


def _sun(reveal: Reveal, site: Site, months: tuple[int, ...]) -> float | None:
    try:
        path = beam_path(months, latitude_deg=site.latitude_deg, facing_deg=site.facing_deg)
    except (StudyError, ValueError):
        return None
    return monthly_sun(reveal, path)
