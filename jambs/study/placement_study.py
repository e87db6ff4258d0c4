"""The placement comparison of a job: each wall by itself, and each window type in it at every honest position."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from jambs.findings import Finding, Subject
from jambs.job.models.exterior_trim import ExteriorTrim
from jambs.job.models.openings import Assumed, Job, Opening
from jambs.job.models.site import Site, site_of
from jambs.length import ROUND_OFF
from jambs.parts.make import PartsError
from jambs.place.choose import LimitClash, asked_by, within_limits
from jambs.place.limits import SAME_PLANE
from jambs.place.placement import Placement
from jambs.place.rules import LeastHeatLoss, RuleError
from jambs.place.solve import PlaceError
from jambs.place.unit_findings import MullNotComputed
from jambs.section.metals import metal_of
from jambs.study.at_position import WindowInWall, study_at, subject_of
from jambs.study.candidates import OWN, Candidate, Effects, Wish, effects_of, weigh, wishes
from jambs.study.details import DetailChange, compare_drawn_details
from jambs.study.findings import PositionNotStudied, WindowNotStudied
from jambs.study.regions.region import StudyError
from jambs.study.shape_findings import StudiedByItsBox
from jambs.study.sweep import PositionSweep, Studied, least_plane, sweep_positions
from jambs.study.wall.wall_report import WallReport, wall_report
from jambs.study.window_words import metal_assumed
from jambs.wall.planes import WallPlanes


@dataclass(frozen=True, slots=True, kw_only=True)
class WindowComparison:
    """One window type in one wall. Computed for ``subject.opening``, the commonest size of ``marks``.

    ``curve``: what every position of the sweep does. ``details``: changes at the job's own position, what is planned
    first. ``facings``: the ways its openings face [degrees from north].
    """

    subject: WindowInWall
    marks: tuple[str, ...]
    facings: tuple[float, ...]
    sweep: PositionSweep
    curve: tuple[Effects, ...]
    candidates: tuple[Candidate, ...]
    details: tuple[DetailChange, ...]

    @property
    def assumed(self) -> tuple[Assumed, ...]:
        """What nobody stated of wall and window."""
        subject = self.subject
        return tuple(dict.fromkeys((*subject.wall.assumed, *subject.window.assumed, *of_metal(subject.opening))))


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacementStudy:
    """Walls and windows of a job in the order in which they come; ``left_out``: what was not studied, and why."""

    job: Job
    site: Site
    walls: tuple[WallReport, ...]
    windows: tuple[WindowComparison, ...]
    left_out: tuple[Finding, ...]


def study_placements(placements: Sequence[Placement], job: Job) -> PlacementStudy:
    """Compare the positions of every window type in every wall of a job."""
    site = site_of(job.site, units=job.units)
    left_out: list[Finding] = [*_at_mulls(placements), *of_shapes(placements)]
    walls, windows = [], []
    for planes in {one.planes.wall.name: one.planes for one in placements}.values():
        about = Subject.wall(planes.wall.name)
        try:
            walls.append(wall_report(planes, site, units=job.units))
        except StudyError as error:
            left_out += error.about(about).findings
            continue
        for name, group in _by_window(placements, planes.wall.name):
            try:
                windows.append(_compared(group, job, site))
            except StudyError as error:
                left_out.append(WindowNotStudied(subject=about, window=name, why=error.findings))
    return PlacementStudy(job=job, site=site, walls=tuple(walls), windows=tuple(windows), left_out=tuple(left_out))


def _at_mulls(placements: Sequence[Placement]) -> Iterator[Finding]:
    for placement in placements:
        yield from (one for one in placement.findings if isinstance(one, MullNotComputed))


def of_shapes(placements: Sequence[Placement]) -> Iterator[Finding]:
    """Name every opening that is no rectangle, and what is computed for its box."""
    for placement in placements:
        if shape := placement.opening.shape:
            about, kind = Subject.opening(placement.opening.mark), shape.kind.value
            yield StudiedByItsBox(subject=about, shape=kind, is_arched=shape.is_arched)


def of_metal(opening: Opening) -> tuple[Assumed, ...]:
    """Say of what the bent metal outside was taken to be, where neither job nor the name of its sheet tells it."""
    returns = opening.exterior.returns if opening.exterior else None
    if returns is None or not (found := metal_of(returns)).is_assumed:
        return ()
    return (metal_assumed(returns.material, found.metal.kind, found.metal.conductivity),)


def _by_window(placements: Sequence[Placement], wall: str) -> Iterator[tuple[str, list[Placement]]]:
    """Yield the openings of each window type in a wall; those of other trim outside, another section, by themselves."""
    found: dict[tuple[str, ExteriorTrim | None], list[Placement]] = {}
    for placement in placements:
        if placement.planes.wall.name == wall:
            found.setdefault((placement.opening.window_name, placement.opening.exterior), []).append(placement)
    yield from ((name, group) for (name, _), group in found.items())


def _compared(group: Sequence[Placement], job: Job, site: Site) -> WindowComparison:
    lead = _commonest(group)
    subject = subject_of(lead.opening, lead.planes, job)
    sweep = sweep_positions(studied := Studied(subject))
    own = _own(group, lead)
    within = _least_within(studied, [one.opening for one in group])
    least = sweep.least.flange_plane
    wanted = wishes(subject, own=own, least=least, least_within=_another_plane(within, than=least))
    facings = _facings(group)
    candidates = weigh(subject, wanted, site, facings)
    planned = next(one for one in candidates if abs(one.flange_plane - lead.flange_plane) < SAME_PLANE)
    return WindowComparison(
        subject=subject,
        marks=tuple(one.opening.mark for one in group),
        facings=facings,
        sweep=sweep,
        curve=tuple(effects_of(subject, one, site, facings) for one in sweep.positions),
        candidates=candidates,
        details=compare_drawn_details(subject, planned.effects.at) if planned.effects else (),
    )


def _commonest(group: Sequence[Placement]) -> Placement:
    """The first opening of the commonest frame size at the commonest position; a rectangle where there is one.

    Sun and daylight of a shape go by the rectangle round it.
    """
    rectangles = [one for one in group if one.opening.shape is None] or group

    def kind(one: Placement) -> tuple[Any, ...]:
        return (round(one.flange_plane, 3), one.opening.frame.width, one.opening.frame.height)

    most = Counter(map(kind, rectangles)).most_common(1)[0][0]
    return next(one for one in rectangles if kind(one) == most)


def _own(group: Sequence[Placement], lead: Placement) -> list[Wish]:
    """The job's own position, and those of openings with another one, by their marks."""
    found = [Wish(name=OWN, flange_plane=lead.flange_plane)]
    others: dict[float, list[str]] = {}
    for one in group:
        if abs(one.flange_plane - lead.flange_plane) >= SAME_PLANE:
            others.setdefault(round(one.flange_plane, 4), []).append(one.opening.mark)
    found += [Wish(name=f"{OWN} for {', '.join(marks)}", flange_plane=plane) for plane, marks in others.items()]
    return found


def _another_plane(plane: float | None, *, than: float) -> float | None:
    """Return a plane where it is not the same one as another [in]; nothing where there is none."""
    return None if plane is None or abs(plane - than) < SAME_PLANE else plane


def _least_within(studied: Studied, openings: Sequence[Opening]) -> float | None:
    """Flange plane of least heat within the limits [in]; None where they clash or nothing can be built between."""
    try:
        low, high = within_limits(openings, studied.subject.planes, studied.subject.job)
        return least_plane(studied, low.low, high.high)
    except (LimitClash, StudyError):
        return None


def least_heat_loss(job: Job) -> LeastHeatLoss:
    """Return the study that the position rule of that name asks for; each window type in a wall is computed once.

    With other trim, inside or outside, another section is computed, so it is another study.

    The study raises RuleError where wall or window cannot be studied.
    """
    known: dict[tuple[Any, ...], Studied] = {}

    def least(opening: Opening, planes: WallPlanes, low: float, high: float) -> float:
        size, trims = (opening.frame.width, opening.frame.height), (opening.interior, opening.exterior)
        key = (planes.wall.name, opening.window_name, *size, *trims)
        try:
            if key not in known:
                known[key] = Studied(subject_of(opening, planes, job))
            return least_plane(known[key], low, high)
        except StudyError as error:
            raise RuleError(PositionNotStudied(subject=asked_by(opening), why=error.findings)) from None

    return least


@dataclass(frozen=True, slots=True, kw_only=True)
class Planned:
    """What the openings of one window type in one wall do at their own planned position; None where not studied."""

    wall: str
    window: str
    marks: tuple[str, ...]
    flange_plane: float
    facings: tuple[float, ...]
    effects: Effects | None


def planned_effects(placements: Sequence[Placement], job: Job) -> tuple[Planned, ...]:
    """Compute the planned positions alone, in the order in which they come; the first opening stands for its like."""
    site = site_of(job.site, units=job.units)
    return tuple(_planned(group, job, site) for group in _alike(placements))


def _alike(placements: Sequence[Placement]) -> list[list[Placement]]:
    """Group what has one window type in one wall at one plane, a plane being one whatever a sum leaves over.

    What differs in trim outside has another section, and stands for no other.
    """
    groups: list[list[Placement]] = []
    for one in placements:
        for group in groups:
            if _is_alike(one, group[0]):
                group.append(one)
                break
        else:
            groups.append([one])
    return groups


def _is_alike(one: Placement, other: Placement) -> bool:
    names = [(each.planes.wall.name, each.opening.window_name) for each in (one, other)]
    if names[0] != names[1] or one.opening.exterior != other.opening.exterior:
        return False
    return abs(one.flange_plane - other.flange_plane) < ROUND_OFF


def _planned(group: Sequence[Placement], job: Job, site: Site) -> Planned:
    lead, facings = group[0], _facings(group)
    try:
        subject = subject_of(lead.opening, lead.planes, job)
        effects = effects_of(subject, study_at(subject, lead.flange_plane), site, facings)
    except (StudyError, PlaceError, PartsError):
        effects = None
    return Planned(
        wall=lead.planes.wall.name,
        window=lead.opening.window_name,
        marks=tuple(one.opening.mark for one in group),
        flange_plane=lead.flange_plane,
        facings=facings,
        effects=effects,
    )


def _facings(group: Sequence[Placement]) -> tuple[float, ...]:
    return tuple(sorted({one.opening.faces_deg for one in group if one.opening.faces_deg is not None}))
