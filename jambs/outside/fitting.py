"""How each opening is closed and fastened: bent metal and the order of laps, the fasteners of its trim and buck.

Planned for every opening, whatever the job says of its outside; what it leaves open is assumed and marked so.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from jambs.fasten.plan import FastenerLine
from jambs.findings import Finding, Subject
from jambs.flashing.make import Flashings, make_flashings
from jambs.job.models.openings import Job
from jambs.outside.fastener_line import InstallFastener
from jambs.outside.trim_fasteners import buck_and_casing, too_short, trim_fasteners
from jambs.parts.kit.kit import Kit

FLASHING = "flashing"
"""The section of the job file without which no metal is bent: the head flashing is then a plain strip."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitting:
    """One opening as it is put in: metal and laps, fasteners.

    ``outboard``: lines of casing and buck, of which the published table may say something; ``findings``: of fasteners.
    """

    mark: str
    flashings: Flashings
    fasteners: tuple[InstallFastener, ...]
    outboard: tuple[FastenerLine, ...]
    findings: tuple[Finding, ...]

    @property
    def of_opening(self) -> tuple[Finding, ...]:
        """What there is to know of the opening itself, not of its wall."""
        about = Subject.opening(self.mark)
        return tuple(one for one in (*self.flashings.findings, *self.findings) if one.subject == about)


def plan_fittings(kits: Sequence[Kit], job: Job) -> tuple[Fitting, ...]:
    """Plan how each opening is closed and fastened."""
    return tuple(_fitting(kit, job) for kit in kits)


def flashings_of(kit: Kit, job: Job) -> Flashings:
    """Make the bent metal of one opening; without a section of the job for it the head flashing is a plain strip."""
    entry = job.outside.flashing if FLASHING in job.outside.model_fields_set else None
    return make_flashings(kit, entry, job.units)


def _fitting(kit: Kit, job: Job) -> Fitting:
    fasteners, outboard = trim_fasteners(kit, job), buck_and_casing(kit, job)
    found = [finding for line in outboard for finding in line.findings]
    return Fitting(
        mark=kit.mark,
        flashings=flashings_of(kit, job),
        fasteners=fasteners,
        outboard=outboard,
        findings=(*found, *too_short(fasteners, Subject.opening(kit.mark), job.units)),
    )
