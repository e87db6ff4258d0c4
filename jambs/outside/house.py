"""A whole house planned: its kits as they are cut, its outside, and the register of all that is to be known."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from jambs.findings import Finding
from jambs.job.models.openings import Job
from jambs.outside.fitting import Fitting
from jambs.outside.plan import OutsideError, PlannedOutside, plan_each_outside, with_outside
from jambs.outside.register import Paper, Register, Registered, make_register
from jambs.parts.kit.cut_kit import CutKit
from jambs.parts.kit.kit import Kit


@dataclass(frozen=True, slots=True, kw_only=True)
class Installing:
    """What the install sheet of one opening says beside its kit: how it is closed and fastened, what to know of it."""

    fitting: Fitting
    told: tuple[Registered, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedHouse:
    """All that papers are made of."""

    kits: tuple[CutKit, ...]
    outside: PlannedOutside
    register: Register

    @property
    def installing(self) -> dict[str, Installing]:
        """What the install sheets say beside the kits, by the mark of the opening."""
        return {
            one.mark: Installing(fitting=one, told=self.register.on(Paper.INSTALL_SHEET, mark=one.mark))
            for one in self.outside.fittings
        }


def plan_house(kits: Sequence[Kit], job: Job) -> PlannedHouse:
    """Plan a house from its kits.

    Raises:
        OutsideError: a cladding leaves no exposure, or a species is not in the table; all of them are told.
    """
    house, wrong = plan_each_house(kits, job)
    if wrong:
        raise OutsideError(*wrong)
    return house


def plan_each_house(kits: Sequence[Kit], job: Job) -> tuple[PlannedHouse, tuple[Finding, ...]]:
    """Plan a house with as much of its outside as can be planned; and find what keeps the rest from it."""
    outside, wrong = plan_each_outside(kits, job)
    cut = with_outside(kits, outside, job)
    return PlannedHouse(kits=cut, outside=outside, register=make_register(cut, outside, job)), wrong
