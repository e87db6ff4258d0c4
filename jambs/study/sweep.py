"""One window over all positions it can have in its wall: the curve, its least place, and the band beside it.

Every position is one the shop can set: the interior depth lies on its grid, and the parts are made and drawn there.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from jambs.findings import Finding, Subject
from jambs.length import METERS_PER_INCH, ROUND_OFF
from jambs.parts.make import PartsError
from jambs.place.limits import ranges
from jambs.place.solve import PlaceError
from jambs.study.at_position import AtPosition, WindowInWall, study_at
from jambs.study.findings import CurveJumps, NoPositionToStudy
from jambs.study.regions.grid import Fineness
from jambs.study.regions.region import StudyError
from jambs.study.resistance_rule import rule_position

JUMP = 0.03
"""Between neighbors of the sweep no side's psi-value changes more than this [W/(m K)]: a steeper step is no curve."""
BAND = 0.005
"""Positions within this of the least cost nearly nothing [W/(m K)]: half of what the input is uncertain by."""
POSITIONS = 24
"""Steps of the coarse sweep; the least place is then found between two of them, on the shop's grid."""


class Studied:
    """The positions of one window that were computed so far; none is computed twice."""

    def __init__(self, subject: WindowInWall, *, fineness: Fineness | None = None) -> None:
        self.subject = subject
        self.fineness = fineness
        self.found: dict[int, AtPosition | None] = {}
        self.refused: dict[int, tuple[Finding, ...]] = {}

    @property
    def low(self) -> float:
        """Least flange plane of the wall [in]: at the sheathing, or at the studs for a window without a flange."""
        return max(self._wall_range[0], self.subject.opening.window.jamb_depth)

    @property
    def high(self) -> float:
        """Greatest flange plane of the wall: at the trim plane. [in]"""
        return self._wall_range[1]

    @property
    def _wall_range(self) -> tuple[float, float]:
        whole = ranges(self.subject.opening, self.subject.planes, self.subject.job, proud_outside=False)[0]
        return whole.low, whole.high

    def count(self, flange_plane: float) -> int:
        """Steps of the shop's grid in the interior depth at a plane [in]."""
        return self.subject.job.shop.grid.count(flange_plane - self.subject.opening.window.jamb_depth)

    def plane(self, count: int) -> float:
        """Flange plane at a number of steps of interior depth. [in]"""
        return self.subject.opening.window.jamb_depth + self.subject.job.shop.grid.at(count)

    def at_count(self, count: int) -> AtPosition | None:
        """Compute one position on the grid; None where it cannot be built, or not be studied (``refused`` says why)."""
        if count not in self.found:
            self.found[count] = self._tried(count)
        return self.found[count]

    def _tried(self, count: int) -> AtPosition | None:
        try:
            return study_at(self.subject, self.plane(count), fineness=self.fineness)
        except StudyError as error:
            self.refused[count] = error.findings
        except (PlaceError, PartsError):
            pass
        return None

    def heat(self, count: int) -> float:
        """Heat through the joint at a position on the grid [W/K]; infinite where it has none."""
        found = self.at_count(count)
        return found.heat if found else float("inf")


@dataclass(frozen=True, slots=True, kw_only=True)
class PositionSweep:
    """All positions computed, inside → outside, and the one of least heat.

    ``band``: least and greatest flange plane [in] around it that cost at most BAND more on each meter.
    ``rule_plane``: where RULE_FRACTION of the wall's resistance lies inside the frame's middle [in], a cross-check;
    ``rule_excess``: what it costs over the least [W/(m K)], None where it was not within the positions.
    """

    positions: tuple[AtPosition, ...]
    least: AtPosition
    band: tuple[float, float]
    rule_plane: float
    rule_excess: float | None


def sweep_positions(studied: Studied) -> PositionSweep:
    """Compute positions evenly over the wall and find the least place among them.

    Raises:
        StudyError: the window cannot be built at any position.
    """
    plane = least_plane(studied, studied.low, studied.high)
    positions = tuple(found for _, found in sorted(studied.found.items()) if found)
    least = next(one for one in positions if one.flange_plane == plane)
    rule = _rule_plane(studied.subject)
    return PositionSweep(
        positions=positions,
        least=least,
        band=_band(positions, least),
        rule_plane=rule,
        rule_excess=_excess_at(positions, least, rule),
    )


def least_plane(studied: Studied, low: float, high: float) -> float:
    """Flange plane on the shop's grid with the least heat through the joint, between two planes [in].

    Raises:
        StudyError: the window cannot be built at any of them.
    """
    first, last = _counts(studied, max(low, studied.low), min(high, studied.high))
    coarse = sorted({round(first + (last - first) * step / POSITIONS) for step in range(POSITIONS + 1)})
    best = min(coarse, key=studied.heat)
    if studied.at_count(best) is None:
        about = Subject.opening(studied.subject.opening.mark)
        raise StudyError(NoPositionToStudy(subject=about, why=next(iter(studied.refused.values()), ())))
    _refuse_jumps(studied, coarse)
    place = coarse.index(best)
    return studied.plane(_narrowed(studied, coarse[max(place - 1, 0)], coarse[min(place + 1, len(coarse) - 1)], best))


def _refuse_jumps(studied: Studied, counts: Sequence[int]) -> None:
    for near, far in pairwise(studied.at_count(count) for count in counts):
        for side in near.sides if near and far else ():
            assert near and far
            other = far.side(side.side)
            change = abs(other.transmittance.value - side.transmittance.value) if other else 0.0
            if other and change > JUMP:
                raise StudyError(
                    CurveJumps(
                        subject=Subject.opening(studied.subject.opening.mark),
                        side=side.side,
                        planes=(near.flange_plane, far.flange_plane),
                        values=(side.transmittance.value, other.transmittance.value),
                    )
                )


def _counts(studied: Studied, low: float, high: float) -> tuple[int, int]:
    first, last = studied.count(low), studied.count(high)
    first += studied.plane(first) < low - ROUND_OFF
    last -= studied.plane(last) > high + ROUND_OFF
    return first, max(first, last)


def _narrowed(studied: Studied, low: int, high: int, best: int) -> int:
    """Look ever nearer on both sides of the best position, until both its neighbors cost more."""
    step = max(best - low, high - best)
    while True:
        step = max((step + 1) // 2, 1)
        found = min((best, max(best - step, low), min(best + step, high)), key=studied.heat)
        if found == best and step == 1:
            return best
        best = found


def _band(positions: Sequence[AtPosition], least: AtPosition) -> tuple[float, float]:
    most = least.mean_transmittance + BAND
    place = positions.index(least)
    inward = _crossing(tuple(reversed(positions[: place + 1])), most)
    return inward, _crossing(positions[place:], most)


def _crossing(positions: Sequence[AtPosition], most: float) -> float:
    """Flange plane at which the curve first passes a value, straight between positions; else the last one. [in]"""
    for near, far in pairwise(positions):
        if far.mean_transmittance > most:
            share = (most - near.mean_transmittance) / (far.mean_transmittance - near.mean_transmittance)
            return near.flange_plane + share * (far.flange_plane - near.flange_plane)
    return positions[-1].flange_plane


def _rule_plane(subject: WindowInWall) -> float:
    frame = next(iter(subject.window.blocks.values()))
    exterior_depth = rule_position(subject.wall.stack, frame.depth) / METERS_PER_INCH
    return subject.wall.outside_face - exterior_depth - subject.opening.window.frame_projection


def _excess_at(positions: Sequence[AtPosition], least: AtPosition, plane: float) -> float | None:
    for near, far in pairwise(positions):
        if near.flange_plane <= plane <= far.flange_plane:
            share = (plane - near.flange_plane) / (far.flange_plane - near.flange_plane)
            value = near.mean_transmittance + share * (far.mean_transmittance - near.mean_transmittance)
            return value - least.mean_transmittance
    return None
