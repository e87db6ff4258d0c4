"""The honest candidates for a window's position, each with what it does; side by side, never one score."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from jambs.findings import Finding
from jambs.job.models.site import Site
from jambs.length import Units
from jambs.parts.board.kinds import PartKind
from jambs.parts.kit.kit import Kit
from jambs.parts.make import PartsError
from jambs.parts.words.cut_words import board_words
from jambs.place.alternatives import alternatives, broken_limits
from jambs.place.depths import exterior_depth, interior_depth
from jambs.place.limits import SAME_PLANE
from jambs.place.placement import Alternative
from jambs.place.reasons import BrokenLimit, PositionKind
from jambs.place.solve import PlaceError
from jambs.study.at_position import (
    AtPosition,
    WindowInWall,
    coldest_side,
    corner_side,
    kit_at,
    sill_corner_estimate,
    study_at,
)
from jambs.study.detail_words import best_board_words
from jambs.study.regions.region import StudyError
from jambs.study.sun.sun_at import SunAt, reveal_at, sky_at, sun_at
from jambs.study.wall.humidity import Criterion, greatest_humidity
from jambs.study.wall.indoor_air import MoldLimit, mold_limit

OWN = "the job's own"
LEAST = "least heat loss"
LEAST_WITHIN = "least heat loss within the limits"
SHORT = {
    PositionKind.ON_SHEATHING: "flange on the sheathing",
    PositionKind.SHARED_EQUALLY: "shared equally",
    PositionKind.EQUAL_DEPTHS: "equal depths",
    PositionKind.ON_TRIM_PLANE: "flange on the trim plane",
}
"""Names of the solver's alternatives as they head a column."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Surfaces:
    """How cold the inside gets, and the indoor humidity (0 to 1) at which it sweats at the design temperature.

    ``coldest`` and ``corner``: temperature factors of the coldest place of all inside surfaces but the glazing, on
    ``side``, block ``place``, and of where the frame meets the jamb there. ``estimate``: of the corner of jamb and
    ``estimate_side`` (the sill, or the head of a door), an estimate and no limit. ``temperature`` of the coldest place.
    [degC] ``mold``: what the worst month asks for; None where the job gives no monthly means.
    """

    side: str
    place: str
    coldest: float
    corner: float
    estimate: float
    estimate_side: str
    temperature: float
    sweats_above: float
    estimate_sweats_above: float
    mold: MoldLimit | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Effects:
    """What one position does to heat, damp and sun. ``heat_per_year`` [kWh] of one heating season."""

    at: AtPosition
    heat_per_year: float
    surfaces: Surfaces
    sun: tuple[SunAt, ...]
    sky: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Candidate:
    """A position that is weighed: flange plane and depths [in], the limits it breaks, what it does.

    ``kit``, its parts, is None where the window cannot be built there; ``why_not`` says why. ``effects`` is None there
    too, and where its figures are not to be trusted; ``refused`` says why.
    """

    names: tuple[str, ...]
    flange_plane: float
    interior_depth: float
    exterior_depth: float
    against: tuple[BrokenLimit, ...]
    effects: Effects | None
    kit: Kit | None
    why_not: tuple[Finding, ...] = ()
    refused: tuple[Finding, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Wish:
    """A plane [in] that is to be weighed, and its name."""

    name: str
    flange_plane: float


def wishes(subject: WindowInWall, *, own: Sequence[Wish], least: float, least_within: float | None) -> tuple[Wish, ...]:
    """The planes to weigh: the solver's alternatives, one of its boards, the least heat loss, the job's own."""
    weighed = alternatives(subject.opening, subject.planes, subject.job)
    short = [(SHORT.get(one.name.kind), one.flange_plane) for one in weighed]
    found = [Wish(name=name, flange_plane=plane) for name, plane in short if name is not None]
    found += _best_board(weighed, own, subject.job.units)
    found.append(Wish(name=LEAST, flange_plane=least))
    if least_within is not None:
        found.append(Wish(name=LEAST_WITHIN, flange_plane=least_within))
    return (*found, *own)


def _best_board(weighed: Sequence[Alternative], own: Sequence[Wish], units: Units) -> list[Wish]:
    """Of the jambs out of one board: the one that breaks fewest limits, then the nearest to the job's own."""
    boards = [(one, one.name.board) for one in weighed if one.name.board is not None]
    if not boards:
        return []
    near = own[0].flange_plane if own else boards[0][0].flange_plane
    best, width = min(boards, key=lambda one: (len(one[0].against), abs(one[0].flange_plane - near)))
    return [Wish(name=best_board_words(width, units), flange_plane=best.flange_plane)]


def weigh(subject: WindowInWall, wanted: Sequence[Wish], site: Site, facings: Sequence[float]) -> tuple[Candidate, ...]:
    """Compute every wish, inside → outside; wishes for one plane become one candidate."""
    groups: list[list[Wish]] = []
    for wish in sorted(wanted, key=lambda one: one.flange_plane):
        if groups and abs(groups[-1][0].flange_plane - wish.flange_plane) < SAME_PLANE:
            groups[-1].append(wish)
        else:
            groups.append([wish])
    return tuple(_candidate(subject, group, site, facings) for group in groups)


def _candidate(subject: WindowInWall, group: Sequence[Wish], site: Site, facings: Sequence[float]) -> Candidate:
    plane, opening = group[0].flange_plane, subject.opening
    effects, kit = None, None
    why_not: tuple[Finding, ...] = ()
    refused: tuple[Finding, ...] = ()
    try:
        kit = kit_at(subject, plane)
        effects = effects_of(subject, study_at(subject, plane), site, facings)
    except StudyError as error:
        refused = error.findings
    except (PlaceError, PartsError) as error:
        why_not = error.findings
    return Candidate(
        names=tuple(dict.fromkeys(wish.name for wish in group)),
        flange_plane=plane,
        interior_depth=interior_depth(opening.window, plane),
        exterior_depth=exterior_depth(opening.window, subject.planes, plane),
        against=broken_limits(plane, opening, subject.planes, subject.job),
        effects=effects,
        kit=kit,
        why_not=why_not,
        refused=refused,
    )


def effects_of(subject: WindowInWall, found: AtPosition, site: Site, facings: Sequence[float]) -> Effects:
    """What a computed position does at this site, for windows that face these ways [degrees from north]."""
    reveal = reveal_at(subject, found)
    return Effects(
        at=found,
        heat_per_year=found.heat * site.degree_days * 24 / 1000,
        surfaces=surfaces_of(subject, found, site),
        sun=tuple(sun_at(reveal, latitude_deg=site.latitude_deg, facing_deg=facing) for facing in facings),
        sky=sky_at(reveal),
    )


def surfaces_of(subject: WindowInWall, found: AtPosition, site: Site) -> Surfaces:
    """How cold the inside gets at the design temperature."""
    coldest = coldest_side(found.sides)
    estimate = sill_corner_estimate(subject, found)
    inside, outside = site.indoor_temperature, site.design_outdoor_temperature

    def sweats_above(factor: float) -> float:
        return greatest_humidity(factor, inside=inside, outside=outside, criterion=Criterion.CONDENSATION)

    factor = coldest.factors.coldest.temperature
    return Surfaces(
        side=coldest.side.value,
        place=coldest.factors.coldest.block,
        coldest=factor,
        corner=coldest.factors.corner,
        estimate=estimate,
        estimate_side=corner_side(found).value,
        temperature=outside + factor * (inside - outside),
        sweats_above=sweats_above(factor),
        estimate_sweats_above=sweats_above(estimate),
        mold=mold_limit(site),
    )


def boards_words(kit: Kit, kind: PartKind, *, units: Units) -> str:
    """The boards the parts of a kind come out of, in words; glued strips where none is wide enough."""
    parts = [part for part in kit.parts if part.kind is kind and part.is_wood]
    words = dict.fromkeys(
        board_words(part, units=units) + (f", {len(part.strips)} strips glued" if part.strips else "") for part in parts
    )
    return "; ".join(words)
