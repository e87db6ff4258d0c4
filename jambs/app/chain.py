"""The chain from a job to its kits; what cannot be built is told for all openings in one go."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from jambs.job import Job
from jambs.outside.house import PlannedHouse, plan_house
from jambs.outside.plan import OutsideError
from jambs.outside.returned_pieces import with_course_pieces
from jambs.parts.board.marks import NO_MARKS, MarkBook
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.kit.kit import Kit
from jambs.parts.make import PartsError, make_kit
from jambs.parts.readings.as_built import without_odd_readings
from jambs.place.placement import Placement
from jambs.place.rules import LeastHeatLoss
from jambs.place.solve import PlaceError, place_each, place_windows


class Unbuildable(Exception):
    """A job that reads well and yet cannot be built; ``sentences`` says why, for every opening."""

    def __init__(self, *sentences: str) -> None:
        super().__init__(*sentences)  # the arguments travel when another process raised it
        self.sentences = sentences


Unmade = Mapping[str, tuple[str, ...]]
"""Why openings cannot be placed or made, in sentences, by mark; all others can."""


def make_kits(job: Job, book: MarkBook = NO_MARKS) -> tuple[Kit, ...]:
    """Place every window of a job and make its parts, every reading believed; ``book``: the marks that were given.

    Raises:
        Unbuildable: some opening cannot be placed or made.
    """
    return kits_at(placed_by_rule(job), job, book)


def placed_by_rule(job: Job) -> tuple[Placement, ...]:
    """Place every window of a job, by the study of heat where a rule asks for it.

    Raises:
        Unbuildable: some opening cannot be placed.
    """
    return placed(job, _heat_study(job))


def planned(kits: Sequence[Kit], job: Job) -> PlannedHouse:
    """Plan a house from its kits.

    Raises:
        Unbuildable: its outside cannot be planned.
    """
    try:
        return plan_house(kits, job)
    except OutsideError as error:
        raise Unbuildable(*error.sentences(job.units)) from None


def kits_as_cut(job: Job) -> tuple[CutKit, ...]:
    """Make the kits of a job as their cut sheets have them.

    Raises:
        Unbuildable: some opening cannot be made, or the outside cannot be planned.
    """
    return planned(make_kits(job), job).kits


def placed(job: Job, least_heat_loss: LeastHeatLoss | None = None) -> tuple[Placement, ...]:
    """Place every window of a job; the heat study is made where a rule asks for it and none is given.

    Raises:
        Unbuildable: some opening cannot be placed.
    """
    try:
        return place_windows(job, least_heat_loss=least_heat_loss or _heat_study(job))
    except PlaceError as error:
        raise Unbuildable(*error.sentences(job.units)) from None


def _heat_study(job: Job) -> LeastHeatLoss | None:
    """Return the heat study where a position rule asks for it; it loads numpy and scipy."""
    if not any(opening.position.least_heat_loss for opening in job.openings):
        return None
    from jambs.study.placement_study import least_heat_loss

    return least_heat_loss(job)


def placed_each(job: Job) -> tuple[tuple[Placement, ...], Unmade]:
    """Place the windows of a job that can be placed, by the study of heat where a rule asks for it; and say why not."""
    placements, faults = place_each(job, least_heat_loss=_heat_study(job))
    said: dict[str, tuple[str, ...]] = defaultdict(tuple)
    for one in faults:
        for mark in one.marks:
            said[mark] += tuple(finding.sentence(job.units) for finding in one.findings)
    return placements, dict(said)


def kits_at(placements: Iterable[Placement], job: Job, book: MarkBook = NO_MARKS) -> tuple[Kit, ...]:
    """Make the parts of placed windows; ``book``: the marks that were given.

    Raises:
        Unbuildable: some opening cannot be made.
    """
    kits, unmade = each_kit_at(placements, job, book)
    raise_where_unmade(unmade)
    return kits


def raise_where_unmade(unmade: Unmade, unplanned: Sequence[str] = ()) -> None:
    """Go on only where every opening was made; ``unplanned``: why parts of the outside were not planned, if so.

    Raises:
        Unbuildable: something was not; each sentence once.
    """
    if unmade or unplanned:
        made = (sentence for said in unmade.values() for sentence in said)
        raise Unbuildable(*dict.fromkeys((*made, *unplanned)))


def as_held(job: Job, placements: Iterable[Placement]) -> Job:
    """Return a job whose openings have the readings that those placed have: without what was set aside.

    What is trimmed as one with others is made by theirs too.
    """
    held = {one.opening.mark: one.opening for one in placements}
    return replace(job, openings=tuple(held.get(one.mark, one) for one in job.openings))


def each_kit_at(placements: Iterable[Placement], job: Job, book: MarkBook = NO_MARKS) -> tuple[tuple[Kit, ...], Unmade]:
    """Make the parts of those placed windows that can be made; and say why others cannot."""
    placements = tuple(placements)
    job = as_held(job, placements)
    kits: list[Kit] = []
    unmade: dict[str, tuple[str, ...]] = {}
    for placement in placements:
        try:
            kits.append(make_kit(without_odd_readings(placement, units=job.units), job, book))
        except (PartsError, PlaceError) as error:  # the second: a neighbor that it is trimmed as one with
            unmade[placement.opening.mark] = error.sentences(job.units)
    return with_course_pieces(kits, job), unmade
