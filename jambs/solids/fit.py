"""The fit report of an opening: do the parts, as sawn, go together, and is the opening what was asked?"""

from __future__ import annotations

import math
from dataclasses import dataclass

from jambs.job.models.openings import Job
from jambs.length import Units
from jambs.parts.casing_plane import NAILED_ON
from jambs.parts.kinds import Where
from jambs.solids.clashes import clashes
from jambs.solids.inside_joints import inside_joints
from jambs.solids.inside_measures import inside_measures
from jambs.solids.model import KitSolids, Solid
from jambs.solids.outside_joints import outside_joints
from jambs.solids.outside_measures import outside_measures
from jambs.solids.part_checks import bench_faults
from jambs.solids.report import TIGHT, Clash, JointCheck, Measure, sized, sized_area, sized_volume


@dataclass(frozen=True, slots=True, kw_only=True)
class FitReport:
    """What was found on the solids of one opening.

    ``faults``: plain sentences, which parts, where, by how much; none where everything fits.
    ``notes``: what is not shown as it will be made, and what tolerance was given to a wall out of plane.
    """

    mark: str
    measures: tuple[Measure, ...]
    joints: tuple[JointCheck, ...]
    clashes: tuple[Clash, ...]
    faults: tuple[str, ...]
    notes: tuple[str, ...]

    @property
    def fits(self) -> bool:
        """Say whether the kit goes together as it should."""
        return not self.faults


def fit_report(solids: KitSolids) -> FitReport:
    """Measure the solids of an opening: clashes, joints, sizes, volumes, grain; say every fault in a sentence.

    On a planned kit everything is held to a thousandth of an inch. On a measured kit joints of the casing may be off by
    what the wall is out of plane: four straight boards cannot follow a twisted wall, the rest is planed or shimmed.
    """
    found = clashes(solids.solids, tolerance=lambda one, two: TIGHT + max(_lean(one, solids), _lean(two, solids)))
    joints = (*inside_joints(solids), *outside_joints(solids))
    measures = (*inside_measures(solids), *outside_measures(solids))
    job, mark = solids.job, solids.mark
    faults = (
        *bench_faults(solids),
        *(clash_sentence(one, job.units) for one in found),
        *(joint_sentence(one, mark, job.units) for one in joints if not one.is_right),
        *(measure_sentence(one, mark, job.units) for one in measures if not one.is_right),
    )
    notes = (*solids.notes, *slack_notes(solids, job))
    return FitReport(mark=mark, measures=measures, joints=joints, clashes=found, faults=faults, notes=notes)


def _lean(solid: Solid, solids: KitSolids) -> float:
    """How much a solid leans over the others because it was hung on a measured wall [in].

    Outside it also stands off, over a sill that has fallen farther there.
    """
    if solid.part is None or solid.part.kind not in NAILED_ON:
        return 0.0
    if solid.part.where is Where.INTERIOR:
        return solids.inside_slack.lean_of(solid.part)
    trim = solids.kit.placement.opening.exterior
    slope = trim.sill.slope if trim and trim.sill else 0.0
    return solids.outside_slack.lean_of(solid.part) + solids.outside_slack.hollow * math.tan(math.radians(slope))


def clash_sentence(clash: Clash, units: Units) -> str:
    """Say which two parts take the same room, and how much."""
    box = " x ".join(sized(size, units) for size in sorted(clash.box))
    volume = sized_volume(clash.volume, units)
    return f"{clash.one} and {clash.two} take the same room: {volume} in a box of {box}."


def joint_sentence(joint: JointCheck, mark: str, units: Units) -> str:
    """Say which joint does not close, and how far its faces stand apart or overlap."""
    asked, found = sized_area(joint.asked, units), sized_area(joint.found, units)
    text = f"{mark}: {joint.name} should touch over {asked} but touch over {found}"
    if joint.gap is None:
        return f"{text}; no faces meet there."
    if abs(joint.gap) <= TIGHT:
        return f"{text}."
    apart = "apart" if joint.gap > 0 else "into each other"
    return f"{text}; they stand {sized(abs(joint.gap), units)} {apart}."


def measure_sentence(measure: Measure, mark: str, units: Units) -> str:
    """Say which measure is wrong, and by how much."""
    if measure.is_angle:
        return f"{mark}: {measure.name} is {measure.found:.3f}°, it should be {measure.asked:.3f}°."
    asked, found = sized(measure.asked, units), sized(measure.found, units)
    off = measure.found - measure.asked
    size, more = sized(abs(off), units), "more" if off > 0 else "less"
    return f"{mark}: {measure.name} is {found} on the solids, it should be {asked}: {size} {more}."


def slack_notes(solids: KitSolids, job: Job) -> tuple[str, ...]:
    """Say what tolerance was given to a wall that is out of plane, and why."""
    sides = {"inside": solids.inside_slack, "outside": solids.outside_slack}
    return tuple(
        f"The measured wall is out of plane {where}: casing joints are held to {sized(TIGHT + slack.gap, job.units)}, "
        "not to a thousandth; the casing is flat and lies on the highest edges, plane or shim the rest."
        for where, slack in sides.items()
        if slack.gap > 0
    )
