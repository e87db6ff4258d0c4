"""One window at one position: its parts are made, its sections cut, and what is drawn is computed."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import partial

from jambs.findings import Finding, Subject, urgent
from jambs.job.models.openings import Job, Opening
from jambs.length import METERS_PER_INCH
from jambs.parts.kit.kit import Kit
from jambs.parts.make import make_kit
from jambs.place.frame_path import frame_path
from jambs.place.solve import place_at
from jambs.section.cut import cut_sections
from jambs.section.region import SectionCut
from jambs.study.findings import TransmittanceNotToBeTrusted
from jambs.study.heat.cut import (
    PLAUSIBLE,
    HeatCut,
    LinearTransmittance,
    SurfaceFactors,
    corner_estimate,
    linear_transmittance,
    surface_factors,
)
from jambs.study.heat.films import SURFACE_FILMS
from jambs.study.heat.frame_alone import coldest_alone
from jambs.study.heat.section_cut import WALL_LENGTH, CavityFilling, section_cut, section_reference, with_films
from jambs.study.regions.grid import Fineness
from jambs.study.regions.region import Block, StudyError
from jambs.study.wall.wall_heat import HeatWall, heat_wall
from jambs.study.window_heat import WindowHeat, window_heat
from jambs.wall.planes import WallPlanes

DRAWN = Fineness(first=0.0042, growth=1.7, largest=0.06)
"""Grid for drawn sections."""
LIMITS_WITHIN, MEAN_WITHIN, FACTORS_WITHIN = 0.0015, 0.0001, 0.0033
"""What that grid errs by: half of the limits' difference and the mean of the limits [W/mK], temperature factors on the
warm side. Measured on the 24 sections of `test_drawn_sections` and on 63 of the examples, all openings at their planned
places: limits 0.00148 at the most, at a head with furring behind its return (under 0.0009 without returns), and
scikit-fem within them at every one; their mean 0.00007 off scikit-fem, factors 0.0032 off a grid four times finer.
`test_section_cut` and `test_drawn_sections` hold it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WindowInWall:
    """A window in a wall whose position is weighed: the opening as planned, without measured depths."""

    opening: Opening
    planes: WallPlanes
    job: Job
    wall: HeatWall
    window: WindowHeat


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnSide:
    """One side of the opening as drawn and computed. ``length``: how much of it a window has [m]."""

    side: SectionCut
    cut: HeatCut
    length: float
    transmittance: LinearTransmittance
    factors: SurfaceFactors


@dataclass(frozen=True, slots=True, kw_only=True)
class AtPosition:
    """What a window does with its flange on one plane [in]. A door has no sill here: its threshold is not computed.

    ``heat`` through the joint of window and wall, per degree [W/K], within ``heat_half_width`` by the calculation
    alone.
    """

    flange_plane: float
    kit: Kit
    sides: tuple[DrawnSide, ...]

    @property
    def heat(self) -> float:
        """Linear transmittance times length, over all sides. [W/K]"""
        return sum(side.transmittance.value * side.length for side in self.sides)

    @property
    def heat_half_width(self) -> float:
        """What the limits leave open. [W/K]"""
        return sum(side.transmittance.half_width * side.length for side in self.sides)

    @property
    def length(self) -> float:
        """Of all sides computed. [m]"""
        return sum(side.length for side in self.sides)

    @property
    def mean_transmittance(self) -> float:
        """Over all sides, weighted by their lengths. [W/(m K)]"""
        return self.heat / self.length

    @property
    def stops(self) -> tuple[Finding, ...]:
        """What has to be settled before this kit can be built."""
        return urgent((*self.kit.placement.findings, *self.kit.findings))

    def side(self, side: SectionCut) -> DrawnSide | None:
        """One side; None for the threshold of a door."""
        return next((one for one in self.sides if one.side is side), None)


def subject_of(opening: Opening, planes: WallPlanes, job: Job) -> WindowInWall:
    """Make ready what does not change with the position.

    Raises:
        StudyError: wall or window cannot be studied.
    """
    return WindowInWall(
        opening=replace(opening, measured=None, readings=None),
        planes=planes,
        job=job,
        wall=heat_wall(planes, units=job.units),
        window=window_heat(opening.window, units=job.units),
    )


def kit_at(subject: WindowInWall, flange_plane: float) -> Kit:
    """Make the kit with the flange on a plane. [in]

    Raises:
        PlaceError: the window cannot stand there.
        PartsError: its parts cannot be made.
    """
    return make_kit(place_at(subject.opening, subject.planes, flange_plane, subject.job), subject.job)


def study_at(subject: WindowInWall, flange_plane: float, *, fineness: Fineness | None = None) -> AtPosition:
    """Compute all sides with the flange on a plane [in].

    Raises:
        PlaceError: the window cannot stand there.
        PartsError: its parts cannot be made.
        StudyError: a section is open from the room to outdoors, or has a psi-value that nobody should trust.
    """
    kit = kit_at(subject, flange_plane)
    found = AtPosition(flange_plane=flange_plane, kit=kit, sides=drawn_sides(subject, kit, fineness=fineness))
    _refuse_implausible(found, subject)
    return found


def _refuse_implausible(found: AtPosition, subject: WindowInWall) -> None:
    for side in found.sides:
        if not side.transmittance.is_plausible:
            raise StudyError(
                TransmittanceNotToBeTrusted(
                    subject=Subject.opening(subject.opening.mark),
                    flange_plane=found.flange_plane,
                    side=side.side,
                    value=side.transmittance.value,
                    plausible=PLAUSIBLE,
                )
            )


def drawn_sides(
    subject: WindowInWall,
    kit: Kit,
    *,
    filling: CavityFilling | None = None,
    change: Callable[[SectionCut, list[Block]], list[Block]] | None = None,
    fineness: Fineness | None = None,
) -> tuple[DrawnSide, ...]:
    """Compute the sections of a kit; ``change`` may alter what is solid on a side."""
    frame = subject.opening.frame
    lengths = {SectionCut.JAMB: 2 * frame.height, SectionCut.HEAD: frame.width, SectionCut.SILL: frame.width}
    if subject.opening.shape:
        lengths = edge_lengths(subject.opening)
    found = []
    for section in cut_sections(kit, wall_length=WALL_LENGTH):
        block = subject.window.blocks[section.cut]
        altered = partial(change, section.cut) if change else None
        heat = section_cut(section, kit.placement, subject.wall, block, filling=filling, change=altered)
        reference = section_reference(heat, subject.wall, block)
        found.append(
            DrawnSide(
                side=section.cut,
                cut=heat,
                length=lengths[section.cut] * METERS_PER_INCH,
                transmittance=linear_transmittance(heat, reference, fineness=fineness or DRAWN),
                factors=surface_factors(with_films(heat, SURFACE_FILMS), fineness=fineness or DRAWN),
            )
        )
    return tuple(found)


def edge_lengths(opening: Opening) -> dict[SectionCut, float]:
    """Return how long the frame's edge is on each side of a shape, both legs together [in]."""
    lengths = dict.fromkeys((SectionCut.JAMB, SectionCut.HEAD, SectionCut.SILL), 0.0)
    for edge in frame_path(opening):
        cut = SectionCut.JAMB if edge.side.is_leg else SectionCut(edge.side.value)
        lengths[cut] += edge.length
    return lengths


def coldest_side(sides: Sequence[DrawnSide]) -> DrawnSide:
    """The side with the coldest place on its inside surfaces, glazing left out."""
    return min(sides, key=lambda one: one.factors.coldest.temperature)


def corner_side(found: AtPosition) -> SectionCut:
    """Whose corner with the jamb is estimated: the sill's, the head's where no sill is computed, as under a door."""
    return SectionCut.SILL if found.side(SectionCut.SILL) else SectionCut.HEAD


def sill_corner_estimate(subject: WindowInWall, found: AtPosition) -> float:
    """Estimate of the temperature factor in the corner of jamb and sill (head, where there is no sill).

    An estimate on the safe side of corners computed in three dimensions, not a limit.
    """
    jamb, other = found.side(SectionCut.JAMB), found.side(corner_side(found))
    assert jamb and other, "every opening is cut at jamb and head"
    alone = coldest_alone(subject.window.blocks[SectionCut.JAMB])
    return corner_estimate(jamb.factors.coldest.temperature, other.factors.coldest.temperature, alone)
