"""Curves of heat, damp and sun over the flange plane, from the study that ``jambs compare`` prints.

Between the positions that the study computes a curve is straight. Every point that is shown lies on the shop's grid
and carries its own text, so that a browser has nothing to work out. Loads numpy and scipy.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path

from jambs.job import read_job
from jambs.job.models.site import site_of
from jambs.length import ROUND_OFF, Units, decimal_text, share_text
from jambs.study.at_position import subject_of
from jambs.study.candidates import Effects, effects_of
from jambs.study.regions.region import StudyError
from jambs.study.sweep import PositionSweep, Studied, sweep_positions
from jambs.values import Record
from jambs.wall.planes import stack_wall

UNCERTAIN = "Gray is what the calculation leaves open; wood, frames and air are uncertain by more."
Point = tuple[float, float, float, float]
"""Flange plane [in], value, and what it may be at the least and at the most, by the calculation alone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Curve:
    """A value over the flange plane, where the study computed it; ``text`` prints the value."""

    name: str
    points: tuple[Point, ...]
    text: Callable[[float], str]


def curves_of(file: Path, draft: str, mark: str) -> Record:
    """Return the curves of one opening as a draft of its job has it; ``said``: what they say, or why there are none."""
    job = read_job(file, draft=draft)
    opening = next(one for one in job.openings if one.mark == mark)
    try:
        studied = Studied(subject_of(opening, stack_wall(opening.wall, grid=job.shop.grid), job))
        sweep = sweep_positions(studied)
        site = site_of(job.site, units=job.units)
        facings = () if opening.faces_deg is None else (opening.faces_deg,)
        effects = [effects_of(studied.subject, one, site, facings) for one in sweep.positions]
    except StudyError as error:
        return {"said": " ".join(error.sentences(job.units)), "curves": [], "least": None}
    first, last = studied.count(studied.low), studied.count(studied.high)
    steps = [studied.plane(count) for count in range(first, last + 1)]
    said = _said(sweep, job.units)
    curves = [_record(one, steps) for one in _curves(effects)]
    return {"said": said, "least": sweep.least.flange_plane, "curves": [one for one in curves if one["points"]]}


def _said(sweep: PositionSweep, units: Units) -> str:
    """Say where the heat is least, and how far to trust it."""
    return f"{_least_words(sweep, units)} {UNCERTAIN}"


def _least_words(sweep: PositionSweep, units: Units) -> str:
    at = units.text(sweep.least.flange_plane)
    if len(sweep.positions) == 1:
        return f"Heat with the flange plane at {at}, the only place where it could be worked out."
    low, high = (units.text(one) for one in sweep.band)
    return f"Least heat with the flange plane at {at}; from {low} to {high} it costs nearly the same."


def _curves(effects: Sequence[Effects]) -> Iterator[Curve]:
    yield Curve(
        name="heat through the joint of window and wall",
        points=tuple(_bounded(one.at.flange_plane, one.at.heat, one.at.heat_half_width) for one in effects),
        text=lambda value: f"{decimal_text(value, 2)} W/K",
    )
    yield Curve(
        name="indoor humidity at which water condenses, coldest place",
        points=tuple(_bounded(one.at.flange_plane, one.surfaces.sweats_above) for one in effects),
        text=share_text,
    )
    for season in ("winter", "summer"):
        suns = ((one.at.flange_plane, getattr(one.sun[0], season) if one.sun else None) for one in effects)
        lit = tuple(_bounded(plane, value) for plane, value in suns if value is not None)
        yield Curve(name=f"sun of the {season} that reaches the glass", points=lit, text=share_text)


def _bounded(plane: float, value: float, half_width: float = 0.0) -> Point:
    return plane, value, value - half_width, value + half_width


def _record(curve: Curve, steps: Sequence[float]) -> Record:
    """Return a curve on the grid: plane, value, least, most, text; and the range that it is drawn in."""
    found = [point for step in steps if (point := _between(curve.points, step)) is not None]
    values = [value for point in found for value in point[1:]] or [0.0]
    low, high = min(values), max(values)
    room = max(high - low, ROUND_OFF) * 0.08
    return {
        "name": curve.name,
        "range": [low - room, high + room],
        "points": [[*(round(number, 5) for number in point), curve.text(point[1])] for point in found],
    }


def _between(points: Sequence[Point], plane: float) -> Point | None:
    """Return the point of a curve at a plane, straight between its neighbors; nothing outside of it."""
    if len(points) == 1:
        return points[0] if abs(points[0][0] - plane) <= ROUND_OFF else None
    for near, far in pairwise(points):
        if near[0] - ROUND_OFF <= plane <= far[0] + ROUND_OFF:
            share = (plane - near[0]) / (far[0] - near[0]) if far[0] > near[0] else 0.0
            value, low, high = (one + share * (other - one) for one, other in zip(near[1:], far[1:], strict=True))
            return plane, value, low, high
    return None
