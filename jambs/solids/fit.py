"""The fit report of an opening: do the parts, as sawn, go together, and is the opening what was asked?"""

from __future__ import annotations

import math
from dataclasses import dataclass

from jambs.findings import Finding, Subject
from jambs.parts.board.kinds import PartKind, Where
from jambs.parts.board.part import Part
from jambs.parts.trim.casing_plane import nailed_on
from jambs.solids.clashes import clashes
from jambs.solids.findings import CasingJointsLoose, JointDoesNotClose, MeasureIsOff, PartsTakeSameRoom
from jambs.solids.inside_joints import inside_joints
from jambs.solids.inside_measures import inside_measures
from jambs.solids.model import KitSolids, Solid
from jambs.solids.mull_checks import mull_joints, mull_measures
from jambs.solids.outside_joints import outside_joints
from jambs.solids.outside_measures import outside_measures
from jambs.solids.part_checks import bench_faults
from jambs.solids.report import TIGHT, Clash, JointCheck, Measure
from jambs.solids.run_checks import run_joints, run_measures

SHOWN = TIGHT / 2
"""A tolerance that is wider by less is printed as the usual one [in]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FitReport:
    """What was found on the solids of one opening.

    ``faults``: which parts, where, by how much; none where everything fits.
    ``notes``: what is not shown as it will be made, and what tolerance was given to a wall out of plane.
    """

    mark: str
    measures: tuple[Measure, ...]
    joints: tuple[JointCheck, ...]
    clashes: tuple[Clash, ...]
    faults: tuple[Finding, ...]
    notes: tuple[Finding, ...]

    @property
    def fits(self) -> bool:
        """Say whether the kit goes together as it should."""
        return not self.faults


def fit_report(solids: KitSolids) -> FitReport:
    """Measure the solids of an opening: clashes, joints, sizes, volumes, grain; find every fault.

    On a planned kit everything is held to a thousandth of an inch. On a measured kit joints of the casing may be off by
    what the wall is out of plane: four straight boards cannot follow a twisted wall, the rest is planed or shimmed.
    """
    found = clashes(solids.everything, tolerance=lambda one, two: TIGHT + max(_lean(one, solids), _lean(two, solids)))
    joints = (*inside_joints(solids), *outside_joints(solids), *mull_joints(solids), *run_joints(solids))
    measures = (*inside_measures(solids), *outside_measures(solids), *mull_measures(solids), *run_measures(solids))
    about = Subject.opening(solids.mark)
    faults = (
        *bench_faults(solids),
        *(PartsTakeSameRoom(subject=about, clash=one) for one in found),
        *(JointDoesNotClose(subject=about, joint=one) for one in joints if not one.is_right),
        *(MeasureIsOff(subject=about, measure=one) for one in measures if not one.is_right),
    )
    notes = (*solids.notes, *slack_notes(solids))
    return FitReport(mark=solids.mark, measures=measures, joints=joints, clashes=found, faults=faults, notes=notes)


def _lean(solid: Solid, solids: KitSolids) -> float:
    """How much a solid leans over the others because it was hung on a measured wall [in].

    Outside it also stands off, over a sill that has fallen farther there; and where the wall leans across the width of
    a leg, the sill has fallen more at one edge of it than its foot was cut to.
    """
    if solid.part is None:
        return 0.0
    if solid.part.kind is PartKind.RETURN:
        return _leans_at_stool(solid.part, solids)
    if solid.part.kind not in nailed_on(solids.kit, solid.part.where):
        return 0.0
    if solid.part.where is Where.INTERIOR:
        return solids.inside_slack.lean_of(solid.part)
    trim = solids.kit.placement.opening.exterior
    fall = math.tan(math.radians(trim.sill.slope)) if trim and trim.sill else 0.0
    slack = solids.outside_slack
    return slack.lean_of(solid.part) + (slack.hollow + slack.slope * solid.part.width) * fall


def _leans_at_stool(board: Part, solids: KitSolids) -> float:
    """How much the tapered room edge of a return leans over the thickness of a stool, notched square to it [in]."""
    stools = [one.part.thickness for one in solids.parts if one.part and one.part.kind is PartKind.STOOL]
    if board.taper is None or not stools:
        return 0.0
    return abs(board.taper.finish_width - board.taper.start_width) / board.length * max(stools)


def slack_notes(solids: KitSolids) -> tuple[Finding, ...]:
    """Find what tolerance was given to a wall that is out of plane."""
    sides = {Where.INTERIOR: solids.inside_slack, Where.EXTERIOR: solids.outside_slack}
    about = Subject.opening(solids.mark)
    return tuple(
        CasingJointsLoose(subject=about, where=where, gap=slack.gap)
        for where, slack in sides.items()
        if slack.gap > SHOWN
    )
