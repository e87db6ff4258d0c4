"""What a change of the detail does at one position: gap fill, buck, thickness of the jambs, insulation on the frame.

Each change is made to the job, its parts are made again and drawn again; what cannot be built says so.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from jambs.findings import Finding
from jambs.job.models.layers import BuckKind
from jambs.length import METERS_PER_INCH, MM_PER_INCH, Units
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.make import PartsError
from jambs.place.solve import PlaceError
from jambs.section.region import SectionCut
from jambs.study.at_position import AtPosition, WindowInWall, drawn_sides, kit_at
from jambs.study.detail_words import buck_words, jamb_words, lap_words
from jambs.study.heat.section_cut import CavityFilling
from jambs.study.regions.conductivities import STILL_AIR_CONDUCTIVITY, WOOD_CONDUCTIVITY
from jambs.study.regions.region import Block, BlockKind, StudyError

LAP_CONDUCTIVITY, LAP_THICKNESS = 0.034, 0.060
"""Of insulation lapped over the frame outside [W/mK], [m]."""
JAMBS = {Units.INCH: (1 / 2, 1 + 1 / 4), Units.MM: (12 / MM_PER_INCH, 32 / MM_PER_INCH)}
"""Thicknesses of extension jambs that are compared [in]."""
BUCKS = {Units.INCH: (3 / 4, 1 + 1 / 2), Units.MM: (20 / MM_PER_INCH, 45 / MM_PER_INCH)}
"""Thicknesses of bucks that are compared [in]."""
LAPS = (0.030, 0.050)
"""How far insulation is lapped over the frame [m]."""
REPLACED = (BlockKind.EXTERIOR_JAMB, BlockKind.EXTERIOR_METAL, BlockKind.SEALANT)
"""In the place of which it lies."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DetailChange:
    """A change of the detail in words, and what it does to the whole window.

    ``heat`` through the joint and its ``change`` [W/K]; ``coldest``: temperature factor of the coldest place.
    ``why_not``: why it cannot be built; the figures are None then.
    """

    words: str
    heat: float | None
    change: float | None
    coldest: float | None
    why_not: tuple[Finding, ...] = ()


Changed = Callable[[], AtPosition]


def compare_drawn_details(subject: WindowInWall, planned: AtPosition) -> tuple[DetailChange, ...]:
    """Compare changes of the detail with what is planned, at the same flange plane; what is planned comes first."""
    found = [_change("as planned", planned, planned)]
    for words, make in _changes(subject, planned):
        try:
            found.append(_fitting(_change(words, made := make(), planned), made, planned))
        except (StudyError, PlaceError, PartsError) as error:
            found.append(DetailChange(words=words, heat=None, change=None, coldest=None, why_not=error.findings))
    return tuple(found)


def _fitting(change: DetailChange, made: AtPosition, planned: AtPosition) -> DetailChange:
    """Take the figures away from a change that brings a new stop with it."""
    stops = tuple(stop for stop in made.stops if stop not in planned.stops)
    if not stops:
        return change
    return DetailChange(words=change.words, heat=None, change=None, coldest=None, why_not=stops)


def _change(words: str, found: AtPosition, planned: AtPosition) -> DetailChange:
    factors = [side.factors.coldest.temperature for side in found.sides]
    return DetailChange(words=words, heat=found.heat, change=found.heat - planned.heat, coldest=min(factors))


def _changes(subject: WindowInWall, planned: AtPosition) -> Iterator[tuple[str, Changed]]:
    yield "shim space left as still air", lambda: _filled(subject, planned, STILL_AIR_CONDUCTIVITY)
    yield "shim space packed with wood", lambda: _filled(subject, planned, WOOD_CONDUCTIVITY)
    yield from _bucks(subject, planned)
    yield from _jambs(subject, planned)
    if subject.opening.exterior is not None and _exterior_jambs(planned):
        bare = replace(subject, opening=replace(subject.opening, exterior=None, exterior_name=None))
        yield "no exterior jamb", lambda: _rebuilt(bare, planned)
        for lap in LAPS:
            yield lap_words(lap / METERS_PER_INCH, subject.job.units), _lapping(subject, planned, lap)


def _filled(subject: WindowInWall, planned: AtPosition, conductivity: float) -> AtPosition:
    sides = drawn_sides(subject, planned.kit, filling=CavityFilling(shim_space=conductivity))
    return replace(planned, sides=sides)


def _rebuilt(subject: WindowInWall, planned: AtPosition) -> AtPosition:
    kit = kit_at(subject, planned.flange_plane)
    return AtPosition(flange_plane=planned.flange_plane, kit=kit, sides=drawn_sides(subject, kit))


def _bucks(subject: WindowInWall, planned: AtPosition) -> Iterator[tuple[str, Changed]]:
    buck = planned.kit.placement.buck
    entry = subject.planes.wall.buck
    if buck is None or entry is None:
        return
    other = BuckKind.LINER if buck.kind is BuckKind.OUTBOARD else BuckKind.OUTBOARD
    kinds = [
        (buck.kind, thickness) for thickness in BUCKS[subject.job.units] if abs(thickness - buck.thickness) > 1 / 64
    ]
    for kind, thickness in [*kinds, (other, buck.thickness)]:
        changed = entry.model_copy(update={"kind": kind, "thickness": thickness})
        wall = replace(subject.planes.wall, buck=changed)
        made = replace(subject, planes=replace(subject.planes, wall=wall), opening=replace(subject.opening, wall=wall))
        words = buck_words(kind, thickness, subject.job.units)
        yield words, lambda made=made: _rebuilt(made, planned)  # type: ignore[misc]


def _jambs(subject: WindowInWall, planned: AtPosition) -> Iterator[tuple[str, Changed]]:
    for where, has_jambs in ((Where.INTERIOR, _interior_jambs), (Where.EXTERIOR, _exterior_jambs)):
        trim = getattr(subject.opening, where.value)
        if trim is None or not has_jambs(planned):
            continue
        for thickness in JAMBS[subject.job.units]:
            jamb = trim.jamb.model_copy(update={"thickness": thickness})
            changed = trim.model_copy(update={"jamb": jamb})
            made = replace(subject, opening=replace(subject.opening, **{where.value: changed}))
            words = jamb_words(where, thickness, subject.job.units)
            yield words, lambda made=made: _rebuilt(made, planned)  # type: ignore[misc]


def _interior_jambs(found: AtPosition) -> bool:
    """Say whether there are boards to make thicker: a wall returned to the frame in another crew's board has none."""
    return any(part.kind is PartKind.EXTENSION_JAMB for part in found.kit.parts)


def _exterior_jambs(found: AtPosition) -> bool:
    return any(block.kind is BlockKind.EXTERIOR_JAMB for side in found.sides for block in side.cut.blocks)


def _lapping(subject: WindowInWall, planned: AtPosition, lap: float) -> Changed:
    def lapped() -> AtPosition:
        sides = drawn_sides(subject, planned.kit, change=lambda side, solid: _lapped(side, solid, lap))
        return replace(planned, sides=sides)

    return lapped


def _lapped(side: SectionCut, solid: list[Block], lap: float) -> list[Block]:
    """Put insulation over the frame in place of the exterior jamb; the sill keeps its board."""
    if side is SectionCut.SILL:
        return solid
    kept = [block for block in solid if block.kind not in REPLACED]
    face = next(block.x0 for block in kept if block.kind is BlockKind.FRAME)
    insulation = Block(
        name="lapped insulation",
        conductivity=LAP_CONDUCTIVITY,
        x0=max(0.0, face - LAP_THICKNESS),
        x1=face,
        y0=0.0,
        y1=lap,
    )
    return [*kept, insulation]
